"""Letting the board of a take follow the voice: the recording is listened to, and what is not certain is listed."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt, QThreadPool, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QFormLayout,
    QHBoxLayout,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QProgressBar,
    QVBoxLayout,
    QWidget,
)

from studyboard.desk.acting_button import ActingButton
from studyboard.desk.ruler_talk import beat_label
from studyboard.desk.session import Session
from studyboard.desk.take_words import take_and_length
from studyboard.desk.work_beside import WorkBeside
from studyboard.model.errors import StudyboardError
from studyboard.model.script import BeatKey
from studyboard.model.take_edits import follow_the_voice
from studyboard.model.takes import Take
from studyboard.sound.alignment.aligned import Alignment, Departure, Unmatched
from studyboard.sound.alignment.beside import listen_beside
from studyboard.sound.alignment.following import moves_of, said_lines, words_of_take
from studyboard.sound.alignment.heard_sound import sound_of_take
from studyboard.sound.alignment.listening import ListeningStoppedError
from studyboard.sound.alignment.script_words import ScriptWord, can_be_heard
from studyboard.timing.by_voice import VoicedMove, board_by_voice
from studyboard.timing.clock import clock
from studyboard.timing.recorded import kept_takes
from studyboard.translation import tr

#: Most of a long line is enough to know which one it is (characters).
_QUOTED = 90


class ListenWindow(QDialog):
    """Listens to one take and shows what it found; one button then lets the board follow.

    State: the take that is listened to, and what was found in it.

    chosen: a place in the script was chosen; carries its beat
    advanced, heard, failed: what the listening thread tells: a share, the Alignment, a sentence
    """

    chosen = Signal(object)
    advanced = Signal(float)
    heard = Signal(object)
    failed = Signal(str)

    def __init__(self, session: Session, take: int | None = None, parent: QWidget | None = None) -> None:
        """take: id of the one to begin with; the newest one for None"""
        super().__init__(parent)
        self._session = session
        self._take: Take | None = None
        self._found: Alignment | None = None
        self._moves: tuple[VoicedMove, ...] = ()
        self._stopped = True
        self.setWindowTitle(tr("Let the board follow the voice"))
        self.told = QLabel(
            tr(
                "The take is listened to word by word. Moves then come at the words that they belong to, captions and "
                "marks too. Where a word is not found for certain, what was clicked stays."
            )
        )
        self.told.setWordWrap(True)
        self.takes = QComboBox()
        self.takes.setAccessibleName(tr("Take"))
        form = QFormLayout()
        form.addRow(tr("&Take:"), self.takes)
        self.bar = QProgressBar()
        self.bar.setRange(0, 1000)
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName(tr("Progress of listening"))
        self.summary = QLabel("")
        self.summary.setWordWrap(True)
        self.summary.setAccessibleName(tr("What was found"))
        self.list = QListWidget()
        self.list.setAccessibleName(tr("Places to look at"))
        self.list.setWordWrap(True)
        self.list.setSpacing(3)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.listen_button = ActingButton(tr("&Listen"))
        self.follow_button = ActingButton(tr("Let the board &follow"))
        self.follow_button.setProperty("primary", True)
        close = ActingButton(tr("Close"))
        foot = QHBoxLayout()
        foot.addWidget(self.listen_button)
        foot.addStretch(1)
        foot.addWidget(self.follow_button)
        foot.addWidget(close)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(20, 18, 20, 18)
        layout.setSpacing(10)
        layout.addWidget(self.told)
        layout.addLayout(form)
        layout.addWidget(self.bar)
        layout.addWidget(self.summary)
        layout.addWidget(self.list, 1)
        layout.addLayout(foot)
        line = self.fontMetrics().height()
        self.resize(QSize(38 * line, 30 * line).boundedTo(self.screen().availableSize() * 0.95))
        self.listen_button.clicked.connect(self.listen_or_stop)
        self.follow_button.clicked.connect(self.follow)
        close.clicked.connect(self.close)
        self.list.itemActivated.connect(self._choose)
        self.list.itemClicked.connect(self._choose)
        self.takes.currentIndexChanged.connect(self._forget)
        self.advanced.connect(lambda share: self.bar.setValue(round(1000 * share)))
        self.heard.connect(self._show_found)
        self.failed.connect(self._fail)
        session.changed.connect(lambda changed: self._fill(self._chosen_id()) if changed.takes else None)
        session.opened.connect(self.close)
        self._fill(take)
        self._show_buttons()
        self.listen_button.setFocus()

    @property
    def listening(self) -> bool:
        """True while the take is listened to."""
        return not self._stopped

    def listen_or_stop(self) -> None:
        """Begin to listen to the chosen take, or stop."""
        if self.listening:
            self._stopped = True
            self.listen_button.setEnabled(False)
            return
        take = self._session.study.takes.get(self._chosen_id() or 0)
        if take is None:
            return
        if not can_be_heard(self._session.study):
            self._fail(tr("Only English can be listened for, and this script is in another language."))
            return
        script = words_of_take(self._session.study, take)
        if not script:
            self._fail(tr("There is no spoken line that could be listened for."))
            return
        self._take, self._found = take, None
        self._stopped = False
        self.list.clear()
        self.bar.setValue(0)
        self.summary.setText(tr("Listening …"))
        self._show_buttons()
        QThreadPool.globalInstance().start(WorkBeside(lambda: self._listen(take, script)))

    def follow(self) -> None:
        """Let the board of the take follow what was heard; undo takes it back."""
        if self._take is None or self._found is None:
            return
        take = self._session.study.takes.get(self._take.id)
        if take is None:
            return
        events = board_by_voice(take, self._moves)
        lines = said_lines(self._session.study, take, self._found)
        if self._session.do(follow_the_voice(take, events, lines)):
            self._found = None
            self.summary.setText(
                tr("The board of {name} follows the voice. Undo brings back what was clicked.", name=take.name)
            )
            self._show_buttons()

    def done(self, result: int) -> None:
        """However the window is left, nobody waits for what is still listened to."""
        self._stopped = True
        super().done(result)

    # ---- in the listening thread ------------------------------------------------------------------------------------

    def _listen(self, take: Take, script: tuple[ScriptWord, ...]) -> None:
        try:
            sound = sound_of_take(self._session.file.sound, take)
            found = listen_beside(script, sound, self.advanced.emit, lambda: self._stopped)
        except ListeningStoppedError:
            self.failed.emit(tr("Listening was stopped; nothing has changed."))
        except StudyboardError as reason:
            self.failed.emit(str(reason))
        else:
            self.heard.emit(found)

    # ---- what comes of it -------------------------------------------------------------------------------------------

    def _show_found(self, found: Alignment) -> None:
        self._stopped = True
        self._found = found
        self._moves = moves_of(self._session.study, found)
        self.bar.setValue(1000)
        certain = sum(word.sure for word in found.words)
        moves = [move for move in self._moves if not move.back]
        at_words = sum(move.sure for move in moves)
        self.summary.setText(
            tr(
                "{certain} of {words} words are found for certain, and {at_words} of {moves} moves at their words.",
                certain=certain,
                words=len(found.words),
                at_words=at_words,
                moves=len(moves),
            )
        )
        for one in found.unmatched:
            item = QListWidgetItem(self._in_words(one))
            item.setData(Qt.ItemDataRole.UserRole, one.beat)
            self.list.addItem(item)
        if not certain:
            self.summary.setText(tr("Nothing of the script was found in this take: is it the right one?"))
            self._found = None
        self._show_buttons()
        if self._found is not None:
            self.follow_button.setFocus()

    def _fail(self, sentence: str) -> None:
        self._stopped = True
        self.bar.setValue(0)
        self.summary.setText(sentence)
        self._show_buttons()

    def _in_words(self, one: Unmatched) -> str:
        text = one.text if len(one.text) <= _QUOTED else one.text[:_QUOTED].rsplit(" ", 1)[0] + " …"
        at = clock(one.start)
        if one.kind is Departure.AD_LIBBED:
            return tr("{at}  Until {end} something is said that is not in the script.", at=at, end=clock(one.end))
        where = self._where(one.beat)
        if one.kind is Departure.SKIPPED:
            return tr("{at}  {where}: not said: “{text}”", at=at, where=where, text=text)
        if one.kind is Departure.REPEATED:
            return tr("{at}  {where}: said once more: “{text}”", at=at, where=where, text=text)
        return tr("{at}  {where}: not certain where this is said: “{text}”", at=at, where=where, text=text)

    def _where(self, beat: BeatKey | None) -> str:
        return "" if beat is None else beat_label(self._session.positions, beat)

    def _choose(self, item: QListWidgetItem) -> None:
        beat = item.data(Qt.ItemDataRole.UserRole)
        if beat is not None:
            self.chosen.emit(beat)

    # ---- takes ------------------------------------------------------------------------------------------------------

    def _fill(self, chosen: int | None) -> None:
        takes = kept_takes(self._session.study)
        self.takes.blockSignals(True)
        self.takes.clear()
        for take in reversed(takes):
            self.takes.addItem(take_and_length(take), take.id)
        self.takes.setCurrentIndex(max(0, self.takes.findData(chosen)))
        self.takes.blockSignals(False)
        if not takes:
            self.summary.setText(tr("There is no take yet: record one, or take in a sound file."))
        self._show_buttons()

    def _chosen_id(self) -> int | None:
        chosen = self.takes.currentData()
        return None if chosen is None else int(chosen)

    def _forget(self) -> None:
        self._found = None
        self.list.clear()
        self.summary.setText("")
        self.bar.setValue(0)
        self._show_buttons()

    def _show_buttons(self) -> None:
        self.takes.setEnabled(not self.listening)
        self.listen_button.setText(tr("&Stop") if self.listening else tr("&Listen"))
        self.listen_button.setEnabled(self.listening or self.takes.count() > 0)
        self.follow_button.setEnabled(self._found is not None and not self.listening)
