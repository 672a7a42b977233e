"""Where the talk has to be worked on next: beats without words, and think pauses."""

from __future__ import annotations

from collections.abc import Callable

from studyboard.model.beats import Beat, beats
from studyboard.model.order import VisitKind, running_order
from studyboard.model.script import BeatKey
from studyboard.model.study import Study


def is_unwritten(beat: Beat) -> bool:
    """True where the talk stops at a move and nothing is said; a think pause is meant to be silent."""
    return not beat.spoken and not beat.think


def asks_to_think(beat: Beat) -> bool:
    """True where the viewer is asked to find the next move."""
    return beat.think > 0


def next_beat(study: Study, at: BeatKey, wanted: Callable[[Beat], bool], step: int = 1) -> BeatKey | None:
    """The next beat of the running order (the one before, with step -1) that is *wanted*, seen from the row *at*.

    After the last one comes the first again. A row that is told with a later beat counts as that beat's; one that is
    not told, as the last told move before it. None where no beat is wanted. O(size of the tree).
    """
    order = beats(study, running_order(study))
    places: dict[BeatKey, int] = {}
    for place, beat in enumerate(order):
        for visit in beat.visits:
            if visit.kind is VisitKind.TELL:
                places.setdefault(visit.node, place)
        places[beat.key] = place
    found = [place for place, beat in enumerate(order) if wanted(beat)]
    if not found:
        return None
    last_before, first_after = _around(order, places, study, at)
    if step > 0:
        return order[next((place for place in found if place >= first_after), found[0])].key
    return order[next((place for place in reversed(found) if place <= last_before), found[-1])].key


def count(study: Study, wanted: Callable[[Beat], bool]) -> int:
    """How many beats of the running order are *wanted*."""
    return sum(map(wanted, beats(study, running_order(study))))


def _around(order: tuple[Beat, ...], places: dict[BeatKey, int], study: Study, at: BeatKey) -> tuple[int, int]:
    """The places of the beats just before and just after a row."""
    if at in places:
        place = places[at]
        return place - 1, place + 1 if order[place].key == at else place
    node = study.nodes[at].parent if isinstance(at, int) else None
    while node is not None and node not in places:
        node = study.nodes[node].parent
    last = -1 if node is None else places[node]
    return last, last + 1
