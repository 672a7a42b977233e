"""Taking in a sound file: what it tells is asked, then it is read beside the desk."""

from __future__ import annotations

from pathlib import Path
from threading import Event

from PySide6.QtCore import QThread, Signal
from PySide6.QtGui import QCloseEvent
from PySide6.QtWidgets import QComboBox, QDialog, QHBoxLayout, QLabel, QProgressBar, QVBoxLayout, QWidget

from studyboard.desk.acting_button import ActingButton
from studyboard.desk.ruler_talk import beat_label
from studyboard.desk.session import Session
from studyboard.model.edits import PutTake
from studyboard.model.errors import StudyboardError
from studyboard.model.script import BeatKey
from studyboard.model.study import Study
from studyboard.model.takes import Take
from studyboard.sound.importing import ImportCancelledError, Imported, import_sound
from studyboard.store.sound import TakeSound
from studyboard.timing.spread_beats import spread_beats
from studyboard.translation import tr

#: Least width of what stands in the window (px).
_WIDTH = 460


class _Reading(QThread):
    """Reads one file into a study.

    progressed: carries the part that is done (0.0 to 1.0)
    """

    progressed = Signal(float)

    def __init__(
        self,
        path: Path,
        shelf: TakeSound,
        study: Study,
        told: tuple[BeatKey | None, BeatKey | None],
        parent: QWidget,
    ) -> None:
        super().__init__(parent)
        self._path, self._shelf, self._study, self._told = path, shelf, study, told
        self.stop = Event()
        self.imported: Imported | None = None
        self.problem = ""

    def run(self) -> None:
        """Read; what came of it is in the attributes."""
        try:
            self.imported = import_sound(
                self._path,
                self._shelf,
                events=lambda length: spread_beats(self._study, length, *self._told),
                progress=self.progressed.emit,
                cancelled=self.stop.is_set,
            )
        except ImportCancelledError:
            self.problem = ""
        except StudyboardError as reason:
            self.problem = str(reason)
        except Exception as reason:
            self.problem = tr("The file could not be taken in: {reason}.", reason=reason)
        finally:
            self._shelf.close()


class SoundImport(QDialog):
    """Asks what a sound file tells, and makes a take of it.

    taken: the take that was made, None as long as there is none
    remark: what could not be read, in a sentence
    """

    def __init__(self, session: Session, path: Path, beat: BeatKey | None, parent: QWidget | None = None) -> None:
        """beat: the one that it may tell"""
        super().__init__(parent)
        self._session = session
        self._path = path
        self._reading: _Reading | None = None
        self.taken: Take | None = None
        self.remark = ""
        self.setWindowTitle(tr("Take in a sound file"))
        about = QLabel(tr("“{name}” becomes a take. What does it tell?", name=path.name))
        about.setWordWrap(True)
        self.told = QComboBox()
        self.told.setAccessibleName(tr("What the sound tells"))
        if beat is not None:
            name = beat_label(session.positions, beat)
            self.told.addItem(tr("This beat alone: {beat}", beat=name), (beat, beat))
            self.told.addItem(tr("From this beat to the end: {beat}", beat=name), (beat, None))
        self.told.addItem(tr("The whole talk"), (None, None))
        hint = QLabel(
            tr(
                "Where it tells several beats, they are spread over it as the plan has them. "
                "You may publish only sound that you have the right to."
            )
        )
        hint.setObjectName("quiet")
        hint.setWordWrap(True)
        self.bar = QProgressBar()
        self.bar.setRange(0, 1000)
        self.bar.setTextVisible(False)
        self.bar.setMinimumWidth(_WIDTH)
        self.bar.setAccessibleName(tr("Progress of the reading"))
        self.status = QLabel("")
        self.status.setWordWrap(True)
        self.read_button = ActingButton(tr("Take it in"))
        self.read_button.setProperty("primary", True)
        self.read_button.clicked.connect(self.read)
        self.cancel_button = ActingButton(tr("Cancel"))
        self.cancel_button.clicked.connect(self.reject)
        foot = QHBoxLayout()
        foot.addStretch(1)
        foot.addWidget(self.read_button)
        foot.addWidget(self.cancel_button)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(20, 18, 20, 18)
        layout.setSpacing(10)
        for widget in (about, self.told, hint, self.bar, self.status):
            layout.addWidget(widget)
        layout.addLayout(foot)
        self.read_button.setFocus()

    def read(self) -> None:
        """Read the file; the window closes when all of it is there."""
        try:
            shelf = self._session.file.sound_writer()
        except StudyboardError as reason:
            self.status.setText(str(reason))
            return
        self.read_button.setEnabled(False)
        self.told.setEnabled(False)
        self.status.setText(tr("Reading …"))
        reading = _Reading(self._path, shelf, self._session.study.snapshot(), self.told.currentData(), self)
        reading.progressed.connect(lambda share: self.bar.setValue(round(share * 1000)))
        reading.finished.connect(self._done)
        self._reading = reading
        reading.start()

    def reject(self) -> None:
        """Stop the reading, with nothing kept, and close."""
        self._stop()
        super().reject()

    def closeEvent(self, event: QCloseEvent) -> None:
        """See `reject`."""
        self._stop()
        super().closeEvent(event)

    def _stop(self) -> None:
        reading, self._reading = self._reading, None
        if reading is not None:
            reading.stop.set()
            reading.wait()
            if reading.imported is not None:
                self._keep(reading.imported)

    def _done(self) -> None:
        reading, self._reading = self._reading, None
        if reading is None:
            return
        if reading.imported is not None:
            self._keep(reading.imported)
            self.accept()
            return
        self.read_button.setEnabled(True)
        self.told.setEnabled(True)
        self.bar.setValue(0)
        self.status.setText(reading.problem)

    def _keep(self, imported: Imported) -> None:
        if self._session.keep(PutTake(imported.take)):
            self.taken, self.remark = imported.take, imported.remark
