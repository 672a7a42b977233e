"""The planned timeline: how the talk will run, from the pace and the intended seconds, before anyone has spoken."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from studyboard.model.beats import Beat, beats
from studyboard.model.order import Visit, VisitKind, running_order
from studyboard.model.script import BeatKey, Pace, Part, words
from studyboard.model.study import Study
from studyboard.timing.pace import estimate, in_side_line, speak
from studyboard.timing.timeline import BoardEvent, Happening, Source, Stretch, Timeline, WordTime


@dataclass(frozen=True, slots=True)
class Layout:
    """Where the sections of one beat lie (s from its start).

    speech: start and end of its spoken line
    steps: seconds between moves that are played without a word
    think: start and end of its think pause
    end: its end, after the returns that may follow at the very end of the talk
    """

    speech: tuple[float, float]
    steps: float
    think: tuple[float, float]
    end: float


def plan(study: Study) -> Timeline:
    """The timeline of the whole talk as it is planned. O(length of the script)."""
    order = running_order(study)
    stretches: list[Stretch] = []
    at = 0.0
    for beat in beats(study, order):
        stretch = time_beat(study, beat, at)
        stretches.append(stretch)
        at = stretch.end
    return Timeline(Source.PLANNED, study.root, tuple(stretches))


def estimate_beat(pace: Pace, beat: Beat) -> float:
    """How long a beat takes if nobody insists on a length (s).

    Returns to the line before, the spoken line or the silent moves, then the think pause.
    """
    backs = returns(beat)
    told = sum(visit.kind is VisitKind.TELL for visit in beat.visits)
    spoken = estimate(_in_lane(pace, beat), beat.spoken.text) if beat.spoken else told * pace.move_time
    return backs * pace.back_time + spoken + beat.think


def pace_of(study: Study, key: BeatKey) -> Pace:
    """How its presenter tells this beat: side-lines at a pace of their own."""
    aside = not isinstance(key, Part) and not study.on_main_line(key)
    return in_side_line(study.pace) if aside else study.pace


def _in_lane(pace: Pace, beat: Beat) -> Pace:
    return in_side_line(pace) if beat.depth else pace


def time_beat(study: Study, beat: Beat, start: float, seconds: float | None = None) -> Stretch:
    """One beat in time, from second *start* of the talk.

    seconds: its length where that is known, from a take; else its intended length, else the estimate. A line that
    does not fit into the length is squeezed; what is left over is silence at the end.
    """
    return _from_zero(study, beat, beat.intended if seconds is None else seconds).moved(start)


def _from_zero(study: Study, beat: Beat, seconds: float | None) -> Stretch:
    layout = _lay_out(study.pace, beat, seconds)
    begin, end = layout.speech
    word_times: tuple[WordTime, ...] = ()
    if beat.spoken.text:
        line = speak(_in_lane(study.pace, beat), beat.spoken.text)
        squeeze = (end - begin) / line.speech_end if line.speech_end else 1.0
        word_times = tuple(
            WordTime(begin + a * squeeze, begin + b * squeeze, number, text)
            for number, ((a, b), text) in enumerate(zip(line.words, words(beat.spoken.text), strict=True))
        )
    events = sorted(_events(study, beat, layout, word_times), key=lambda event: event.at)
    asked = layout.think[1] - layout.think[0]
    return Stretch(beat.key, 0.0, end, layout.end, asked, beat.node, beat.depth, beat.spoken, word_times, tuple(events))


def _lay_out(pace: Pace, beat: Beat, seconds: float | None) -> Layout:
    natural = estimate_beat(pace, beat)
    total = natural if seconds is None else max(seconds, 0.0)
    think = min(beat.think, total)
    share = min(1.0, (total - think) / (natural - beat.think)) if natural > beat.think else 1.0
    lead = _leading_returns(beat) * pace.back_time * share
    trail = (returns(beat) - _leading_returns(beat)) * pace.back_time * share
    speech = speak(_in_lane(pace, beat), beat.spoken.text).speech_end * share if beat.spoken else 0.0
    think_end = total - trail
    think_start = min(max(think_end - think, lead + speech), think_end)
    return Layout((lead, lead + speech), pace.move_time * share, (think_start, think_end), total)


def returns(beat: Beat) -> int:
    """Returns of a beat that take time: those which follow each other at once are one."""
    if len(beat.visits) == 1:
        return int(beat.visits[0].kind is VisitKind.BACK)
    count = 0
    before: Visit | None = None
    for visit in beat.visits:
        if visit.kind is VisitKind.BACK and (before is None or before.kind is not VisitKind.BACK):
            count += 1
        before = visit
    return count


def _leading_returns(beat: Beat) -> int:
    return int(beat.visits[0].kind is VisitKind.BACK and len(beat.visits) > 1)


def _events(study: Study, beat: Beat, layout: Layout, word_times: tuple[WordTime, ...]) -> Iterator[BoardEvent]:
    cues = {cue.node: cue.word for cue in beat.spoken.cues if cue.node is not None}
    begin, end = layout.speech
    at = 0.0
    told: int | None = None
    for visit in beat.visits:
        if visit.kind is VisitKind.BACK:
            if told is not None:
                at = layout.think[1]
            yield BoardEvent(at, Happening.BACK, visit.node)
            continue
        if visit.kind is VisitKind.LINE:
            yield BoardEvent(0.0, Happening.CARD, visit.node)
            continue
        if visit.node in cues:
            at = max(at, _at_word(cues[visit.node], word_times, end))
        elif told is None or beat.spoken:
            at = max(at, begin)
        else:
            at += layout.steps
        told = visit.node
        what = Happening.CARD if visit.node == study.root else Happening.MOVE
        yield BoardEvent(at, what, visit.node)
        yield from _marks(study, beat, visit, at, word_times, end)
    if beat.think and told is not None:
        yield BoardEvent(layout.think[0], Happening.THINK, told)


def _marks(
    study: Study, beat: Beat, visit: Visit, at: float, word_times: tuple[WordTime, ...], end: float
) -> Iterator[BoardEvent]:
    marks = study.nodes[visit.node].marks
    cues = {cue.mark: cue.word for cue in beat.spoken.cues if cue.mark is not None} if visit.node == beat.key else {}
    appearing = (
        (max(at, _at_word(cues[number], word_times, end)) if number in cues else at, number)
        for number in range(len(marks))
    )
    for when, number in sorted(appearing):
        yield BoardEvent(when, Happening.MARK, visit.node, number)


def _at_word(word: int, word_times: tuple[WordTime, ...], end: float) -> float:
    return word_times[word].at if word < len(word_times) else end
