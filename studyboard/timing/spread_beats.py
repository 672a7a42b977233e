"""Beats spread over sound of which nobody knows where each of them begins, as the plan has them."""

from __future__ import annotations

from studyboard.model.edits import Edit, Several
from studyboard.model.errors import StudyboardError
from studyboard.model.script import BeatKey
from studyboard.model.study import Study
from studyboard.model.take_edits import ChangeTake, ChooseTake
from studyboard.model.takes import Events, SoundTime, Take, TakeEvent
from studyboard.timing.plan import plan
from studyboard.timing.timeline import Happening
from studyboard.translation import tr, tr_later

_ON_THE_BOARD = frozenset((Happening.MOVE, Happening.BACK, Happening.CARD))


def spread_beats(study: Study, length: SoundTime, first: BeatKey | None = None, last: BeatKey | None = None) -> Events:
    """What the board would show while sound of this length tells the beats from *first* to *last*.

    Each beat gets the share of the sound that it has of the plan, each move the place that it has in its beat. None
    stands for the first beat of the talk, or the last. Raises StudyboardError where there is no such beat, or *last*
    comes before *first*.
    """
    stretches = plan(study).stretches
    keys = [stretch.key for stretch in stretches]
    if not keys:
        raise StudyboardError(tr("There is nothing to tell yet: play a move or write a line first."))
    for key in (first, last):
        if key is not None and key not in keys:
            raise StudyboardError(tr("This beat is not told in the talk."))
    begin = 0 if first is None else keys.index(first)
    end = len(keys) - 1 if last is None else keys.index(last)
    if end < begin:
        raise StudyboardError(tr("The last beat comes before the first one."))
    told = stretches[begin : end + 1]
    planned = told[-1].end - told[0].start
    scale = length.samples / planned if planned > 0 else 0.0
    shown = stretches[begin - 1].node if begin else study.root
    events: list[TakeEvent] = []
    for stretch in told:
        moves = [(event.at, event.node) for event in stretch.events if event.what in _ON_THE_BOARD]
        if not moves or moves[0][0] > stretch.start:
            moves.insert(0, (stretch.start, shown))
        for at, node in moves:
            samples = min(length.samples - 1, round((at - told[0].start) * scale))
            events.append(TakeEvent(SoundTime(max(0, samples), length.rate), node, stretch.key))
        shown = stretch.node
    return tuple(events)


def only_spread(take: Take, beat: BeatKey) -> bool:
    """True where nobody knows how long this beat takes in a sound from elsewhere: its share is that of the plan."""
    if not take.origin or any(line.beat == beat for line in take.said):
        return False
    return len({event.beat for event in take.events}) > 1


def let_tell(study: Study, take: Take, beat: BeatKey) -> Edit:
    """The edit after which a take that told no beat tells this one, and is heard for it."""
    label = tr_later("Choose a take")
    events = spread_beats(study, take.length, beat, beat)
    return Several((ChangeTake(take.id, "events", events, label), ChooseTake(beat, take.id, label)), label)
