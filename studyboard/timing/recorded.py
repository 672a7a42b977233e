"""The recorded timeline: how the talk did run, from the board events of a take."""

from __future__ import annotations

from dataclasses import replace

from studyboard.model.beats import Beat, beats
from studyboard.model.order import running_order
from studyboard.model.script import BeatKey
from studyboard.model.study import Study
from studyboard.model.takes import Take, TakeEvent
from studyboard.timing.plan import plan, time_beat
from studyboard.timing.timeline import BoardEvent, Happening, Source, Stretch, Timeline


def recorded(study: Study, take: Take) -> Timeline:
    """The timeline of one take: its beats as long as they took, its board events where they were stamped.

    Words are spread over their beat as the pace would have them. What the presenter did off the running order
    belongs to the beat before. Beats that are not in the study any more are left out of the words, not of the
    time. O(length of the take's events and of the script).
    """
    known = {beat.key: beat for beat in beats(study, running_order(study))}
    stretches: list[Stretch] = []
    shown: int | None = None
    for key, events, end in _runs(take):
        beat = known.get(key)
        stamped = _board_events(study, events, shown)
        shown = stamped[-1].node if stamped else shown
        if beat is not None:
            start = stretches[-1].end if stretches else 0.0
            stretches.append(_stretch(study, beat, stamped, start, end))
        elif stretches:
            last = stretches[-1]
            stretches[-1] = last.showing((*last.events, *stamped), end)
    return Timeline(Source.RECORDED, take.events[0].node if take.events else study.root, tuple(stretches))


def recorded_seconds(study: Study) -> dict[BeatKey, float]:
    """How long each beat took in the latest kept take that has it (s)."""
    seconds: dict[BeatKey, float] = {}
    for take in kept_takes(study):
        told: dict[BeatKey, float] = {}
        start = 0.0
        for key, _, end in _runs(take):
            told[key] = told.get(key, 0.0) + end - start
            start = end
        seconds |= told
    return seconds


def kept_takes(study: Study) -> list[Take]:
    """Takes that were not discarded, the oldest first."""
    return [take for _, take in sorted(study.takes.items()) if take.kept]


def talk(study: Study) -> Timeline:
    """The timeline that deliveries are made from: the latest kept take that tells every line, else the plan."""
    take = whole_take(study)
    return plan(study) if take is None else recorded(study, take)


def whole_take(study: Study) -> Take | None:
    """The latest kept take that tells every line; None where there is none."""
    lines = {beat.key for beat in beats(study, running_order(study)) if beat.spoken}
    for take in reversed(kept_takes(study)):
        if lines and lines <= {event.beat for event in take.events}:
            return take
    return None


def _runs(take: Take) -> list[tuple[BeatKey, list[TakeEvent], float]]:
    """The take cut where another beat begins, from its very start: the beat's key, its events, its end (s)."""
    runs: list[tuple[BeatKey, list[TakeEvent]]] = []
    for event in take.events:
        if event.beat is not None and (not runs or runs[-1][0] != event.beat):
            runs.append((event.beat, []))
        if runs:
            runs[-1][1].append(event)
    ends = [*(events[0].at.seconds for _, events in runs[1:]), take.length.seconds]
    return [(key, events, end) for (key, events), end in zip(runs, ends, strict=False)]


def _stretch(study: Study, beat: Beat, stamped: list[BoardEvent], start: float, end: float) -> Stretch:
    stretch = time_beat(study, beat, start, max(0.0, end - start))
    planned = [event for event in stretch.events if event.what in (Happening.MARK, Happening.THINK)]
    moved = {event.node: event.at for event in stamped}
    added = [replace(event, at=min(end, max(event.at, moved.get(event.node, event.at)))) for event in planned]
    return stretch.showing(sorted([*stamped, *added], key=lambda event: event.at), stretch.end)


def _board_events(study: Study, events: list[TakeEvent], shown: int | None) -> list[BoardEvent]:
    """What the board did, from what it showed before; nodes that are not in the study any more are left out."""
    found: list[BoardEvent] = []
    for event in events:
        node = study.nodes.get(event.node)
        if node is None:
            continue
        if node.parent is None or node.id == shown:
            what = Happening.CARD
        else:
            what = Happening.MOVE if shown in (None, node.parent) else Happening.BACK
        found.append(BoardEvent(event.at.seconds, what, node.id))
        shown = node.id
    return found
