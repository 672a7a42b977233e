"""The recorded timeline: how the talk did run, from the board events of its takes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from studyboard.model.assembly import Assembly, HeardBeat, assembled
from studyboard.model.beats import Beat, beats
from studyboard.model.heard_take import tellings
from studyboard.model.order import running_order
from studyboard.model.said_words import said_words
from studyboard.model.script import BeatKey
from studyboard.model.study import Study
from studyboard.model.takes import Take
from studyboard.timing.plan import plan, time_beat
from studyboard.timing.said_stretch import KnownWord, with_known_words
from studyboard.timing.timeline import BoardEvent, Happening, Source, Stretch, Timeline


def recorded(study: Study, take: Take) -> Timeline:
    """The timeline of one take: its beats as long as they took, its board events where they were stamped.

    Words are where listening to the take has found them, else spread over their beat as the pace would have them.
    What the presenter did off the running order belongs to the beat before. Beats that are not in the study any more
    are left out of the words, not of the time. O(length of the take's events and of the script).
    """
    script = {beat.key: beat for beat in beats(study, running_order(study))}
    stretches: list[Stretch] = []
    shown: int | None = None
    for told in tellings(take):
        beat, end = script.get(told.beat), told.span.end / take.rate
        stamped = _board_events(study, [(event.at.seconds, event.node) for event in told.events], shown)
        shown = stamped[-1].node if stamped else shown
        if beat is not None:
            start = stretches[-1].end if stretches else 0.0
            known = [
                KnownWord(word.word, word.start / take.rate, word.end / take.rate)
                for word in said_words(take, beat.key, beat.spoken.text, told.span)
            ]
            stretches.append(_stretch(study, beat, stamped, start, end, known))
        elif stretches:
            last = stretches[-1]
            stretches[-1] = last.showing((*last.events, *stamped), end)
    return Timeline(Source.RECORDED, take.events[0].node if take.events else study.root, tuple(stretches))


def recorded_seconds(study: Study) -> dict[BeatKey, float]:
    """How long each beat is that a take tells, in the take in which it is heard (s)."""
    assembly = assembled(study, lambda _: 0.0)
    return {one.beat.key: one.samples / assembly.rate for one in assembly.beats if one.take is not None}


def kept_takes(study: Study) -> list[Take]:
    """Takes that were not discarded, the oldest first."""
    return [take for _, take in sorted(study.takes.items()) if take.kept]


def talk(study: Study) -> Timeline:
    """The timeline that deliveries are made from: the takes put together where they tell every line, else the plan."""
    assembly = recorded_talk(study)
    return plan(study) if assembly is None else assembled_timeline(study, assembly)


def recorded_talk(study: Study) -> Assembly | None:
    """The talk put together from its takes; None where a line is told in none of them."""
    assembly = put_together(study)
    return assembly if assembly.told else None


def put_together(study: Study) -> Assembly:
    """The talk put together from its takes, with a gap of the planned length at each beat that none of them tells."""
    return assembled(study, lambda beat: time_beat(study, beat, 0.0).seconds)


def assembled_timeline(study: Study, assembly: Assembly) -> Timeline:
    """The timeline of a talk that was put together from takes. O(its events and the size of the script).

    Every beat of the talk is in it once, as long as it is heard; words are spread as in `recorded`.
    """
    stretches: list[Stretch] = []
    shown: int | None = None
    at = 0
    for heard in assembly.beats:
        start, end = at / assembly.rate, (at + heard.samples) / assembly.rate
        if heard.take is None:
            stretches.append(time_beat(study, heard.beat, start, end - start))
            shown = heard.beat.node
        else:
            stamped = _board_events(study, [(start + one.at / assembly.rate, one.node) for one in heard.events], shown)
            shown = stamped[-1].node if stamped else shown
            known = [
                KnownWord(word.word, start + word.start / assembly.rate, start + word.end / assembly.rate)
                for word in heard.words
            ]
            stretches.append(_stretch(study, heard.beat, stamped, start, end, known))
        at += heard.samples
    return Timeline(Source.RECORDED, _opening_node(study, assembly.beats), tuple(stretches))


def _opening_node(study: Study, heard: tuple[HeardBeat, ...]) -> int:
    first = heard[0].events[:1] if heard else ()
    return first[0].node if first and first[0].node in study.nodes else study.root


def _stretch(
    study: Study, beat: Beat, stamped: list[BoardEvent], start: float, end: float, known: Sequence[KnownWord]
) -> Stretch:
    stretch = with_known_words(time_beat(study, beat, start, max(0.0, end - start)), known)
    planned = [event for event in stretch.events if event.what in (Happening.MARK, Happening.THINK)]
    moved = {event.node: event.at for event in stamped}
    added = [replace(event, at=min(end, max(event.at, moved.get(event.node, event.at)))) for event in planned]
    return stretch.showing(sorted([*stamped, *added], key=lambda event: event.at), stretch.end)


def _board_events(study: Study, events: list[tuple[float, int]], shown: int | None) -> list[BoardEvent]:
    """What the board did, from what it showed before; nodes that are not in the study any more are left out.

    events: when (s) the board showed which node
    """
    found: list[BoardEvent] = []
    for at, number in events:
        node = study.nodes.get(number)
        if node is None:
            continue
        if node.parent is None or node.id == shown:
            what = Happening.CARD
        else:
            what = Happening.MOVE if shown in (None, node.parent) else Happening.BACK
        found.append(BoardEvent(at, what, node.id))
        shown = node.id
    return found
