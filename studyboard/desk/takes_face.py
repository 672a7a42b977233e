"""What the window of the takes consists of, and where it stands."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import (
    QDialog,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QListWidget,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from studyboard.desk.acting_button import ActingButton
from studyboard.desk.elided_label import ElidedLabel
from studyboard.desk.look import Look
from studyboard.desk.take_wave import TakeWave
from studyboard.translation import tr


class TakesFace(QDialog):
    """Lists, fields, the wave and the buttons; what they do is said by the window that is made of it."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.setWindowTitle(tr("Takes"))
        self.setAcceptDrops(True)
        self._make_widgets()
        self._lay_out()

    def _make_widgets(self) -> None:
        self.beats = QListWidget()
        self.beats.setAccessibleName(tr("Beats of the talk"))
        self.summary = QLabel("")
        self.summary.setObjectName("quiet")
        self.summary.setWordWrap(True)
        self.heading = QLabel("")
        self.heading.setObjectName("heading")
        self.line = ElidedLabel()
        self.line.setFont(self._look.spoken_font())
        self.takes = QListWidget()
        self.takes.setAccessibleName(tr("Takes of this beat"))
        self.wave = TakeWave(self._look)
        self.places = QLabel("")
        self.places.setObjectName("quiet")
        self.name = QLineEdit()
        self.name.setAccessibleName(tr("Name of this take"))
        self.note = QLineEdit()
        self.note.setPlaceholderText(tr("Note on this take"))
        self.note.setAccessibleName(tr("Note on this take"))
        self.status = QLabel("")
        self.status.setWordWrap(True)
        self.status.setAccessibleName(tr("What has happened"))
        self.play_button = ActingButton(tr("Play"))
        self.choose_button = ActingButton(tr("Choose"))
        self.choose_button.setToolTip(tr("The beat is heard in this take; else in the newest one."))
        self.discard_button = ActingButton(tr("Discard"))
        self.trim_button = ActingButton(tr("Trim to it"))
        self.trim_button.setToolTip(tr("Only the chosen stretch of the take is heard."))
        self.leave_out_button = ActingButton(tr("Leave it out"))
        self.leave_out_button.setToolTip(tr("The chosen stretch is not heard; nothing is deleted."))
        self.bring_back_button = ActingButton(tr("Bring it back"))
        self.again_button = ActingButton(tr("Say it again"))
        self.again_button.setToolTip(tr("Record the chosen words anew; they are heard in place of these."))
        self.room_button = ActingButton(tr("Room tone"))
        self.room_button.setToolTip(tr("The chosen stretch is the silence of the room that gaps are filled with."))
        self.play_talk_button = ActingButton(tr("Play the talk"))
        self.play_talk_button.setToolTip(tr("From this beat on, as it is put together from its takes."))
        self.import_button = ActingButton(tr("Take in a file …"))
        self.purge_button = ActingButton(tr("Delete discarded …"))
        self.purge_button.setToolTip(tr("Deletes the sound of discarded takes for good, to free room on the disk."))
        self.close_button = ActingButton(tr("Close"))

    def _lay_out(self) -> None:
        left = QWidget()
        column = QVBoxLayout(left)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.beats, 1)
        column.addWidget(self.summary)
        acts = QGridLayout()
        acts.setSpacing(8)
        rows = (
            (self.play_button, self.choose_button, self.discard_button),
            (self.leave_out_button, self.bring_back_button, self.trim_button),
            (self.again_button, self.room_button),
        )
        for number, row in enumerate(rows):
            for place, button in enumerate(row):
                acts.addWidget(button, number, place)
        right = QWidget()
        column = QVBoxLayout(right)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self.heading)
        column.addWidget(self.line)
        column.addWidget(self.takes, 2)
        named = QHBoxLayout()
        named.setSpacing(8)
        named.addWidget(self.name, 1)
        named.addWidget(self.note, 2)
        column.addLayout(named)
        column.addWidget(self.wave, 3)
        column.addWidget(self.places)
        column.addLayout(acts)
        self.split = QSplitter(Qt.Orientation.Horizontal)
        self.split.addWidget(left)
        self.split.addWidget(right)
        self.split.setStretchFactor(1, 1)
        self.split.setChildrenCollapsible(False)
        self.split.setHandleWidth(12)
        foot = QHBoxLayout()
        foot.addWidget(self.play_talk_button)
        foot.addWidget(self.import_button)
        foot.addWidget(self.purge_button)
        foot.addStretch(1)
        foot.addWidget(self.close_button)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(20, 18, 20, 18)
        layout.setSpacing(10)
        layout.addWidget(self.split, 1)
        layout.addWidget(self.status)
        layout.addLayout(foot)
        line = self.fontMetrics().height()
        self.split.setSizes([18 * line, 38 * line])
        self.resize(QSize(58 * line, 38 * line).boundedTo(self.screen().availableSize() * 0.95))
