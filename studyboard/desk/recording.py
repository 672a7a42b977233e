"""Recording at the desk: a take of some beats, or a pickup of some words, with what is heard before it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtCore import QObject, Signal

from studyboard.desk.performance import Performance
from studyboard.desk.record_range import RecordRange
from studyboard.desk.reel_player import ReelPlayer
from studyboard.desk.session import Session
from studyboard.model.edits import PutTake
from studyboard.model.errors import StudyboardError
from studyboard.model.take_edits import trim
from studyboard.model.takes import Replaced, Span, Take
from studyboard.sound.recorder import Recorder, RecorderState
from studyboard.sound.reel import Reel, take_reel, talk_reel
from studyboard.sound.speech_bounds import speech_bounds
from studyboard.timing.clock import clock
from studyboard.timing.recorded import put_together
from studyboard.translation import tr

#: How much is heard before a take that is punched in (s).
PRE_ROLL = 4.0
#: A pickup longer than this is kept as it is (s): nobody says one word for so long.
_LONGEST_PICKUP = 60.0


class Recording(QObject):
    """Makes takes at the desk.

    State: the recorder, made when it is first needed; the microphone that is to be taken; what the take is heard in
    place of that is to begin, or being recorded; whether its pre-roll is being heard; what went wrong with it.

    said: something is to be said; carries a sentence, and whether something is wrong
    kept: a take is over; carries it as it is in the study now, or None where nothing was recorded
    began: the recorder begins to record
    """

    said = Signal(str, bool)
    kept = Signal(object)
    began = Signal()

    def __init__(
        self,
        session: Session,
        performance: Performance,
        player: ReelPlayer,
        beats: RecordRange,
        make_recorder: Callable[[], Recorder],
        parent: QObject | None = None,
    ) -> None:
        """player: plays what is heard before; beats: says what a take is to tell; make_recorder: is called once"""
        super().__init__(parent)
        self._session = session
        self._performance = performance
        self._player = player
        self._range = beats
        self._make_recorder = make_recorder
        self.recorder: Recorder | None = None
        #: Id of the microphone, None for the system's choice.
        self.device: str | None = None
        self._replaces: Replaced | None = None
        self._rolling = False
        self._problem = ""
        player.finished.connect(self._rolled)
        performance.ended.connect(self._performance_ended)
        session.opened.connect(self._other_study)

    @property
    def active(self) -> bool:
        """True while a take is being recorded."""
        return self.recorder is not None and self.recorder.state in (
            RecorderState.RECORDING,
            RecorderState.PAUSED,
            RecorderState.STOPPING,
        )

    @property
    def rolling(self) -> bool:
        """True while the pre-roll of a take is heard."""
        return self._rolling

    @property
    def is_pickup(self) -> bool:
        """True where the take that is recorded, or was last, is heard in place of some words."""
        return self._replaces is not None

    @property
    def problem(self) -> str:
        """What went wrong with the take, in a sentence; empty where nothing did."""
        return self._problem

    def make(self) -> bool:
        """Make the recorder, if there is none yet; False where that cannot be done, which is said."""
        if self.recorder is not None:
            return True
        try:
            recorder = self._make_recorder()
        except StudyboardError as reason:
            self.said.emit(str(reason), True)
            return False
        recorder.running.connect(self._begin_talk)
        recorder.stopped.connect(self._keep_take)
        recorder.failed.connect(self._failed)
        self.recorder = recorder
        return True

    def stop_everything(self) -> None:
        """End a running take and let go of the microphone; returns when everything is stored."""
        self._rolling = False
        self._player.pause()
        if self.recorder is not None:
            self.recorder.close()

    def start_or_stop(self) -> None:
        """Begin a take; end the one that is running, or leave off before it begins."""
        if self.active:
            self._performance.stop()
            self._stop()
        elif self._rolling:
            self.leave_off()
            self.said.emit(tr("Nothing was recorded."), False)
        else:
            self.begin()

    def leave_off(self) -> None:
        """Begin no take after the pre-roll."""
        if self._rolling:
            self._rolling = False
            self._player.pause()

    def begin(self) -> None:
        """Begin a take with the beat that the prompter shows; nothing happens while one is running.

        Where a pre-roll is wanted, that is heard first; pressed once more meanwhile, the take begins at once.
        """
        if self.active:
            return
        if not self._performance.run.stops:
            self.said.emit(tr("There is nothing to tell yet: play a move or write a line first."), True)
            return
        self._replaces = None
        roll = None if self._rolling or not self._range.pre_roll.isChecked() else self._reel_before()
        self._begin_after(roll)

    def say_again(self, take: Take, span: Span) -> None:
        """Begin a pickup: what is said until it is stopped is heard in place of this stretch of a take.

        The seconds before it are heard first.
        """
        if self.active:
            return
        self._rolling = False
        self._replaces = Replaced(take.id, span)
        before = max(0, span.start - round(PRE_ROLL * take.rate))
        roll = take_reel(self._session.study, take, Span(before, span.start)) if before < span.start else None
        self._begin_after(roll if roll is not None and roll.sources else None)

    def _reel_before(self) -> Reel | None:
        """The last seconds before the beat with which the take begins; None where they are not recorded."""
        first = self._range.first_beat
        assembly = put_together(self._session.study)
        if not 0 < first <= len(assembly.beats) or assembly.beats[first - 1].take is None:
            return None
        begin, samples = first, 0
        while begin > 0 and samples < PRE_ROLL * assembly.rate and assembly.beats[begin - 1].take is not None:
            begin -= 1
            samples += assembly.beats[begin].samples
        return talk_reel(assembly, begin, first - 1)

    def _begin_after(self, roll: Reel | None) -> None:
        """Begin the take, once the pre-roll was heard if there is one."""
        if self.active or not self.make():
            return
        self._performance.stop()
        if roll is None:
            self._record()
            return
        self._rolling = True
        listen = tr("Listen, and go on speaking where it ends.")
        at_once = "" if self.is_pickup else tr("Space begins at once.")
        self.said.emit(f"{listen} {at_once}".strip(), False)
        # Only the end of it: a beat may be long.
        length = sum(source.samples for source in roll.sources)
        self._player.eject()
        self._player.play(roll, max(0, length - round(PRE_ROLL * roll.rate)))
        if not self._player.playing:
            self._record()

    def _record(self) -> None:
        assert self.recorder is not None
        self._rolling = False
        self._player.pause()
        # What was rehearsed until now is over: only what is said into the microphone belongs to the take.
        self._performance.stop()
        if self._replaces is None:
            self._performance.get_ready(self._range.first_beat)
        self._problem = ""
        self.began.emit()
        name = tr("Take {next_take}", next_take=self._session.study.next_take)
        if self._replaces is not None:
            name = tr("Pickup {number}", number=self._session.study.next_take)
        try:
            self.recorder.start(name, self.device, self._replaces)
        except StudyboardError as reason:
            self.said.emit(str(reason), True)

    def _stop(self) -> None:
        if self.recorder is not None and self.active:
            self.recorder.stop()

    def _begin_talk(self) -> None:
        """The first sound is there: the talk begins."""
        if self.recorder is not None and self.active and self._replaces is None:
            self._performance.start(self.recorder, last=self._range.last_beat)

    def _performance_ended(self) -> None:
        if self._replaces is None:
            self._stop()

    def _keep_take(self, take: Take | None) -> None:
        if self._performance.active:
            self._performance.stop()
        if take is None:
            self.said.emit(self._problem or tr("Nothing was recorded."), True)
            self.kept.emit(None)
            return
        take = self._trimmed(take)
        length = clock(take.length.seconds)
        if not self._session.keep(PutTake(take)):
            self.said.emit(
                tr(
                    "{name} ({length}) could not be put into the list; its sound is in the study and comes back when "
                    "the study is opened again.",
                    name=take.name,
                    length=length,
                ),
                True,
            )
            return
        if self._problem:
            self.said.emit(
                tr("{problem} {name} is kept: {length}.", problem=self._problem, name=take.name, length=length),
                True,
            )
        else:
            self.said.emit(
                tr("{name} is kept: {length}. Play it, discard it, or record another.", name=take.name, length=length),
                False,
            )
        self.kept.emit(take)

    def _trimmed(self, take: Take) -> Take:
        """A pickup without the silence before and behind its words, which can be brought back."""
        if take.replaces is None or take.length.seconds > _LONGEST_PICKUP:
            return take
        try:
            spoken = speech_bounds(self._session.file.sound.read_sound(take.id), take.rate)
            return take if spoken is None else replace(take, left_out=trim(take, spoken).value)
        except StudyboardError:
            return take

    def _rolled(self) -> None:
        """The pre-roll was heard."""
        if self._rolling:
            self._record()

    def _other_study(self) -> None:
        self._rolling = False
        self._replaces = None

    def _failed(self, sentence: str) -> None:
        self._problem = sentence
        self.said.emit(sentence, True)
