"""When the board changes in a take of which the words are known: it follows the voice."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from studyboard.model.beats import Beat, beats
from studyboard.model.order import Visit, VisitKind, running_order
from studyboard.model.script import BeatKey
from studyboard.model.study import Study
from studyboard.model.takes import SoundTime, Take, TakeEvent

#: The board changes this much before a line begins to be said, half a pause at most (s): a beat begins in the pause.
_AHEAD = 0.04


@dataclass(frozen=True, slots=True)
class WordSaid:
    """One word of a line as it is said.

    start, end: when (s from the start of the sound); sure: False where that is a guess
    """

    start: float
    end: float
    sure: bool = True


@dataclass(frozen=True, slots=True)
class VoicedMove:
    """The board changing because of what is said.

    at: when (s from the start of the sound); node: what is shown from then on; beat: which one is being told
    back: True where the board steps back from a side-line or stays as it is, False for a move
    sure: False where the word for it was not found for certain
    """

    at: float
    node: int
    beat: BeatKey
    back: bool
    sure: bool


def voiced_moves(study: Study, said: Mapping[BeatKey, Sequence[WordSaid]], seconds: float) -> tuple[VoicedMove, ...]:
    """What the board does in a recording of the talk, in the order of time. O(size of the talk).

    said: the words of each line that is told in it; a line of which no word is certain counts as not told
    seconds: how long the recording is

    A move with a cue is played at its word. A move without one comes with the first word of its line, a step back
    just before that. Moves without a line are spread over the silence in which they are played. Beats before the
    first and after the last line that is told are left out, and so are lines that were skipped, with their moves.
    """
    told = _told(study, said)
    found: list[VoicedMove] = []
    ended = 0.0
    silent: list[Beat] = []
    begun = False
    for beat, words in told:
        if not words:
            if not beat.spoken and begun:
                silent.append(beat)
            continue
        start = max(ended, words[0].start - min(_AHEAD, (words[0].start - ended) / 2))
        found += _spread(silent, ended, start)
        silent = []
        found += _of_beat(study, beat, words, ended, start)
        ended, begun = max(found[-1].at, words[-1].end), True
    found += _spread(silent, ended, max(ended, seconds))
    return tuple(found)


def board_by_voice(take: Take, moves: Sequence[VoicedMove]) -> tuple[TakeEvent, ...]:
    """The board events of a take that follow the voice; where that is not certain, those that were clicked stay.

    What the presenter showed off the running order stays as well, with the way back from it.
    """
    clicked = {(event.node, event.beat): event for event in take.events if event.beat is not None}
    events: list[TakeEvent] = []
    for number, move in enumerate(moves):
        samples = round(move.at * take.rate)
        low = events[-1].at.samples if events else 0
        own = clicked.get((move.node, move.beat))
        if not move.sure and own is not None:
            later = next((one.at for one in moves[number + 1 :] if one.sure), None)
            high = take.samples if later is None else round(later * take.rate)
            samples = own.at.samples if low <= own.at.samples <= high else samples
        samples = min(max(low, samples), take.samples)
        events.append(TakeEvent(SoundTime(samples, take.rate), move.node, move.beat))
    aside = [
        event
        for number, event in enumerate(take.events)
        if event.beat is None or (number and take.events[number - 1].beat is None)
    ]
    return tuple(sorted([*events, *aside], key=lambda event: event.at.samples))


def _told(study: Study, said: Mapping[BeatKey, Sequence[WordSaid]]) -> list[tuple[Beat, Sequence[WordSaid]]]:
    """Every beat with its words where it is told, with none where it is silent or was skipped."""
    found: list[tuple[Beat, Sequence[WordSaid]]] = []
    for beat in beats(study, running_order(study)):
        words = said.get(beat.key, ())
        found.append((beat, words if any(word.sure for word in words) else ()))
    return found


def _of_beat(study: Study, beat: Beat, words: Sequence[WordSaid], ended: float, start: float) -> Iterator[VoicedMove]:
    cues = {cue.node: cue.word for cue in beat.spoken.cues if cue.node is not None}
    at, sure = start, words[0].sure
    if any(visit.kind is VisitKind.BACK for visit in beat.visits[:-1]):
        at = max(ended, min(start, words[0].start - study.pace.back_time))
    told = False
    for visit in beat.visits:
        if visit.kind is not VisitKind.TELL:
            if told:
                at, sure = max(at, words[-1].end + beat.think), words[-1].sure
            yield VoicedMove(at, visit.node, beat.key, True, sure)
            continue
        place = cues.get(visit.node)
        if place is None:
            when, certain = start, words[0].sure
        elif place < len(words):
            when, certain = words[place].start, words[place].sure
        else:
            when, certain = words[-1].end, words[-1].sure
        at, sure = max(at, start, when), certain
        told = True
        yield VoicedMove(at, visit.node, beat.key, visit.node == study.root, sure)


def _spread(silent: Sequence[Beat], start: float, end: float) -> Iterator[VoicedMove]:
    """Moves without a line, as far from each other as the silence lets them be."""
    visits: list[tuple[Beat, Visit]] = [(beat, visit) for beat in silent for visit in beat.visits]
    step = (end - start) / (len(visits) + 1)
    for number, (beat, visit) in enumerate(visits, 1):
        back = visit.kind is not VisitKind.TELL
        yield VoicedMove(start + number * step, visit.node, beat.key, back, False)
