"""The window of the takes: which one is heard for each beat, what is cut, what is said again."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtGui import QDragEnterEvent, QDropEvent, QHideEvent, QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QFileDialog,
    QListWidgetItem,
    QMessageBox,
    QWidget,
)

from studyboard.desk.look import Look
from studyboard.desk.reel_player import ReelPlayer
from studyboard.desk.ruler_talk import beat_label
from studyboard.desk.session import Session
from studyboard.desk.sound_import import SoundImport
from studyboard.desk.take_words import beat_words, take_words
from studyboard.desk.takes_face import TakesFace
from studyboard.model.assembly import Assembly, HeardBeat
from studyboard.model.beat_takes import BeatTake, beat_takes
from studyboard.model.edits import Edit
from studyboard.model.errors import StudyboardError
from studyboard.model.heard_take import HeardTake, heard_take, pickups
from studyboard.model.script import BeatKey
from studyboard.model.study import Changed
from studyboard.model.take_edits import (
    ChooseTake,
    bring_back,
    discard,
    leave_out,
    rename,
    set_room_tone,
    take_back,
    trim,
    without_sound,
    write_note,
)
from studyboard.model.takes import Span, Take
from studyboard.sound.importing import ENDINGS
from studyboard.sound.reel import raw_reel, take_reel, talk_reel
from studyboard.timing.clock import clock
from studyboard.timing.recorded import put_together
from studyboard.timing.spread_beats import let_tell
from studyboard.translation import tr

if TYPE_CHECKING:
    from studyboard.desk.booth import Booth

#: What of a take is shown before and behind a beat (s), and how much of a take at most.
_MARGIN, _MOST = 0.5, 300.0


class TakesWindow(TakesFace):
    """Beats on the left; on the right the takes of the one that is chosen, and the sound of one of them.

    State: the talk put together as it was last listed, what is being played, and whether a pickup is being recorded.
    """

    def __init__(self, session: Session, booth: Booth, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, parent)
        self._session = session
        self._booth = booth
        self._assembly: Assembly | None = None
        self._takes: tuple[BeatTake, ...] = ()
        self._heard_from: tuple[HeardTake, int] | None = None
        self._player = ReelPlayer(session, self)
        self._connect()
        self.refresh()

    def show_beat(self, number: int) -> None:
        """Choose the beat with this index."""
        self.refresh()
        if 0 <= number < self.beats.count():
            self.beats.setCurrentRow(number)

    def refresh(self) -> None:
        """The takes, or what is heard of them, have changed."""
        self._assembly = put_together(self._session.study)
        row = max(0, self.beats.currentRow())
        self.beats.blockSignals(True)
        self.beats.clear()
        for number, heard in enumerate(self._assembly.beats, 1):
            item = QListWidgetItem(beat_words(self._session.positions, self._assembly, heard, number))
            font = item.font()
            font.setItalic(heard.take is None)
            item.setFont(font)
            self.beats.addItem(item)
        self.beats.setCurrentRow(min(row, self.beats.count() - 1))
        self.beats.blockSignals(False)
        missing = len(self._assembly.missing)
        self.summary.setText(
            tr("Every line is told: {length}.", length=clock(self._assembly.samples / self._assembly.rate))
            if self._assembly.told
            else tr("{count} spoken lines are in no take.", count=missing)
        )
        self.play_talk_button.setEnabled(any(heard.take is not None for heard in self._assembly.beats))
        self._show_takes()

    def take_in(self, path: Path) -> None:
        """Make a take of a sound file."""
        heard = self._beat()
        window = SoundImport(self._session, path, None if heard is None else heard.beat.key, self)
        window.exec()
        if window.taken is not None:
            self.refresh()
            self.status.setText(window.remark or tr("{name} is taken in.", name=window.taken.name))

    # ---- what is chosen ---------------------------------------------------------------------------------------------

    def _beat(self) -> HeardBeat | None:
        row = self.beats.currentRow()
        return (
            self._assembly.beats[row] if self._assembly is not None and 0 <= row < len(self._assembly.beats) else None
        )

    def _chosen(self) -> BeatTake | None:
        row = self.takes.currentRow()
        return self._takes[row] if 0 <= row < len(self._takes) else None

    def _other_beat(self) -> None:
        self._takes = ()
        self._show_takes()

    def _show_takes(self) -> None:
        heard = self._beat()
        was = self._chosen()
        key: BeatKey | None = None if heard is None else heard.beat.key
        self._takes = () if key is None else beat_takes(self._session.study, key)
        label = "" if key is None else beat_label(self._session.positions, key)
        said = "" if heard is None else " ".join(heard.beat.spoken.text.split())
        self.heading.setText(label)
        self.line.setText(said or tr("Nothing is said here."))
        self.takes.blockSignals(True)
        self.takes.clear()
        for one in self._takes:
            item = QListWidgetItem(take_words(self._session.study, one, key))
            font = item.font()
            font.setBold(one.heard)
            font.setStrikeOut(not one.take.kept)
            item.setFont(font)
            self.takes.addItem(item)
        rows = [row for row, one in enumerate(self._takes) if was is not None and one.take.id == was.take.id]
        best = [row for row, one in enumerate(self._takes) if one.heard]
        self.takes.setCurrentRow((rows or best or [0])[0] if self._takes else -1)
        self.takes.blockSignals(False)
        self._show_take()

    def _show_take(self) -> None:
        one = self._chosen()
        for field in (self.name, self.note):
            field.setEnabled(one is not None)
        self.name.setText("" if one is None else one.take.name)
        self.note.setText("" if one is None else one.take.note)
        if one is None:
            self.wave.show_sound(Span(0, 1), 48_000, b"")
        else:
            take = one.take
            margin = round(_MARGIN * take.rate)
            start = max(0, one.span.start - margin)
            shown = Span(start, min(take.samples, one.span.end + margin, start + round(_MOST * take.rate)))
            try:
                pcm = self._session.file.sound.read_sound(take.id, shown.start, shown.samples)
            except StudyboardError as reason:
                pcm = b""
                self.status.setText(str(reason))
            anew = tuple(pickup.replaces.span for pickup in pickups(self._session.study, take) if pickup.replaces)
            self.wave.show_sound(shown, take.rate, pcm, take.left_out, anew)
        self._show_buttons()

    def _show_buttons(self) -> None:
        one, chosen = self._chosen(), self.wave.chosen
        recording = self._booth.recording or self._booth.about_to_record
        there = one is not None and not recording
        self.play_button.setText(tr("Pause") if self._player.playing else tr("Play"))
        self.play_button.setEnabled(there)
        open_again = one is not None and self._beat_choice() == one.take.id
        self.choose_button.setText(tr("Leave it open") if open_again else tr("Choose"))
        self.choose_button.setEnabled(there and one is not None and one.take.kept and not one.is_pickup)
        self.discard_button.setText(tr("Take back") if one is not None and not one.take.kept else tr("Discard"))
        self.discard_button.setEnabled(there)
        for button in (self.trim_button, self.leave_out_button, self.bring_back_button, self.room_button):
            button.setEnabled(there and chosen is not None)
        self.again_button.setText(tr("Stop") if recording else tr("Say it again"))
        self.again_button.setEnabled(recording or (there and chosen is not None))
        self.places.setText(self.wave.words if one is not None else "")
        self.purge_button.setEnabled(
            not recording and any(not take.kept and take.samples for take in self._session.study.takes.values())
        )

    def _beat_choice(self) -> int | None:
        heard = self._beat()
        return None if heard is None else self._session.study.chosen.get(heard.beat.key)

    # ---- acting -----------------------------------------------------------------------------------------------------

    def play(self) -> None:
        """Play what is chosen of the take, else its beat from the cursor on; or pause."""
        one = self._chosen()
        if self._player.playing:
            self._player.pause()
            return
        if one is None or self._booth.recording:
            return
        study, take = self._session.study, one.take
        span = self.wave.chosen or one.span
        reel = take_reel(study, take, span)
        if not reel.sources:
            # All of it is left out: then that is what somebody wants to hear.
            reel = raw_reel(take, span)
        heard = heard_take(study, take)
        whole = Span(0, max(1, take.samples))
        cursor = self.wave.cursor_sample
        at = heard.place(span, cursor) if self.wave.chosen is None and span.start < cursor < span.end else 0
        self._heard_from = (heard, heard.place(whole, span.start))
        self._player.eject()
        self._player.play(reel, at)

    def play_talk(self) -> None:
        """Play the talk as it is put together, from the beat that is chosen on; or pause."""
        if self._player.playing:
            self._player.pause()
            return
        if self._assembly is None or self._booth.recording:
            return
        self._heard_from = None
        self._player.eject()
        self._player.play(talk_reel(self._assembly, max(0, self.beats.currentRow())))

    def choose(self) -> None:
        """Let the beat be heard in the take that is chosen; chosen already, leave it to the program again."""
        one, heard = self._chosen(), self._beat()
        if one is None or heard is None or not self.choose_button.isEnabled():
            return
        beat, take = heard.beat.key, one.take
        if one.is_loose:
            self._do(lambda: let_tell(self._session.study, take, beat))
        else:
            self._do(lambda: ChooseTake(beat, None if self._beat_choice() == take.id else take.id))

    def discard_or_take_back(self) -> None:
        """Let the take be heard nowhere, or again."""
        one = self._chosen()
        if one is not None:
            self._player.eject()
            self._do(lambda: discard(one.take) if one.take.kept else take_back(one.take))

    def _cut(self, make: Callable[[Take, Span], Edit]) -> None:
        one, chosen = self._chosen(), self.wave.chosen
        if one is not None and chosen is not None:
            self._player.eject()
            self._do(lambda: make(one.take, chosen))

    def say_again(self) -> None:
        """Record what is chosen anew; pressed once more, stop."""
        one, chosen = self._chosen(), self.wave.chosen
        if self._booth.recording or self._booth.about_to_record:
            self._booth.start_or_stop()
        elif one is not None and chosen is not None:
            self._player.eject()
            self._booth.say_again(one.take, chosen)

    def _keep_name(self) -> None:
        one = self._chosen()
        if one is not None and self.name.text().strip() != one.take.name:
            self._do(lambda: rename(one.take, self.name.text()))

    def _keep_note(self) -> None:
        one = self._chosen()
        if one is not None and self.note.text() != one.take.note:
            self._do(lambda: write_note(one.take, self.note.text()))

    def _ask_to_purge(self) -> None:
        gone = [take for take in self._session.study.takes.values() if not take.kept and take.samples]
        question = QMessageBox(self)
        question.setWindowTitle(tr("Delete discarded sound"))
        question.setText(
            tr(
                "The sound of {names} is deleted for good. That cannot be undone.",
                names=", ".join(take.name for take in gone),
            )
        )
        delete = question.addButton(tr("Delete"), QMessageBox.ButtonRole.DestructiveRole)
        question.setDefaultButton(question.addButton(tr("Cancel"), QMessageBox.ButtonRole.RejectRole))
        question.exec()
        if question.clickedButton() is delete:
            self.purge()

    def purge(self) -> None:
        """Delete the sound of discarded takes for good."""
        self._player.eject()
        edit = without_sound(self._session.study)
        if edit is None or not self._session.keep(edit):
            return
        try:
            freed = self._session.file.sound.purge_discarded()
        except StudyboardError as reason:
            self.status.setText(str(reason))
            return
        self.status.setText(tr("{megabytes:.1f} MB are free again.", megabytes=freed / 1e6))

    def _choose_file(self) -> None:
        kinds = " ".join(f"*.{ending}" for ending in ENDINGS)
        name, _ = QFileDialog.getOpenFileName(
            self,
            tr("Take in a sound file"),
            str(self._session.file.path.parent),
            tr("Sound and video ({kinds});;All files (*)", kinds=kinds),
        )
        if name:
            self.take_in(Path(name))

    def _do(self, make: Callable[[], Edit]) -> None:
        self.status.setText("")
        try:
            edit = make()
        except StudyboardError as reason:
            self.status.setText(str(reason))
            return
        self._session.do(edit)

    # ---- listening to others ----------------------------------------------------------------------------------------

    def _study_changed(self, changed: Changed) -> None:
        if self.isVisible() and (changed.takes or changed.choices):
            self.refresh()

    def _booth_changed(self) -> None:
        """What is played would be recorded."""
        if self._booth.recording:
            self._player.pause()
        self._show_buttons()

    def _show_heard(self, sample: int) -> None:
        if self._heard_from is not None:
            heard, before = self._heard_from
            self.wave.show_heard(heard.own_place(before + sample))

    def _heard_out(self) -> None:
        self.wave.show_heard(None)
        self._show_buttons()

    def hideEvent(self, event: QHideEvent) -> None:
        """What is played stops with the window."""
        self._keep_note()
        self._player.pause()
        super().hideEvent(event)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Sound files can be dropped."""
        if event.mimeData().hasUrls() and event.mimeData().urls()[0].isLocalFile():
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Take in what is dropped."""
        event.acceptProposedAction()
        self.take_in(Path(event.mimeData().urls()[0].toLocalFile()))

    def _connect(self) -> None:
        self.beats.currentRowChanged.connect(self._other_beat)
        self.takes.currentRowChanged.connect(self._show_take)
        self.takes.itemActivated.connect(self.choose)
        self.wave.moved.connect(self._show_buttons)
        self.wave.play_wanted.connect(self.play)
        self.name.editingFinished.connect(self._keep_name)
        self.note.editingFinished.connect(self._keep_note)
        self.play_button.clicked.connect(self.play)
        self.choose_button.clicked.connect(self.choose)
        self.discard_button.clicked.connect(self.discard_or_take_back)
        self.trim_button.clicked.connect(lambda: self._cut(trim))
        self.leave_out_button.clicked.connect(lambda: self._cut(leave_out))
        self.bring_back_button.clicked.connect(lambda: self._cut(bring_back))
        self.room_button.clicked.connect(lambda: self._cut(set_room_tone))
        self.again_button.clicked.connect(self.say_again)
        self.play_talk_button.clicked.connect(self.play_talk)
        self.import_button.clicked.connect(self._choose_file)
        self.purge_button.clicked.connect(self._ask_to_purge)
        self.close_button.clicked.connect(self.close)
        self._player.heard.connect(self._show_heard)
        self._player.changed.connect(self._show_buttons)
        self._player.finished.connect(self._heard_out)
        self._player.told.connect(self.status.setText)
        self._player.failed.connect(self.status.setText)
        self._booth.said.connect(self.status.setText)
        self._booth.state_changed.connect(self._booth_changed)
        self._session.changed.connect(self._study_changed)
        self._session.opened.connect(self.refresh)
        for key, act in (
            (QKeySequence.StandardKey.Undo, self._session.undo),
            (QKeySequence.StandardKey.Redo, self._session.redo),
            (QKeySequence("Ctrl+Space"), self.say_again),
        ):
            QShortcut(QKeySequence(key), self, act)
