"""Ways through a talk up to some word, and which of them are kept."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum, auto
from operator import attrgetter

from studyboard.notation.narration.costs import COSTS, Width
from studyboard.notation.narration.forms import Phrase
from studyboard.notation.narration.place import Place


class How(Enum):
    """How a move or a name was understood."""

    GOES_ON = auto()
    BRANCHES = auto()
    RETURNS = auto()
    UNSAID = auto()
    NAMED = auto()


@dataclass(slots=True)
class Heard:
    """One thing that a reading has understood, linked to the one before; never changed, as many readings share it.

    phrase: the words
    place: the position after the move; for a name, the position in which it was named
    depth: 0 on the main line, 1 in a side-line of it, and so on
    named: for the name of a move, the position after that move
    """

    how: How
    phrase: Phrase
    place: Place
    depth: int
    before: Heard | None
    named: Place | None = None


@dataclass(slots=True)
class Line:
    """A line that a reading is in the middle of; never changed.

    root, tip: where it left, and how far it has come
    key: the tips of this line and of those around it as one number, by line_key
    """

    root: Place
    tip: Place
    key: int = 0


#: More positions than any talk reaches, as a power of two.
_KEY_BITS = 24
#: What stands for the lines around a main line.
NO_LINES = 1


def line_key(around: int, tip: Place) -> int:
    """The key of a line that has come to *tip*, inside of the lines with the key *around*."""
    return around << _KEY_BITS | tip.number


@dataclass(slots=True)
class Reading:
    """A way through the text up to some word; never changed, as it is taken further in many ways.

    lines: the main line and the side-lines that are open, the innermost last
    said_to: how far the words of the last move reach
    """

    cost: float
    lines: tuple[Line, ...]
    heard: Heard | None
    said_to: int


def cheapest(readings: Iterable[Reading], width: Width) -> list[Reading]:
    """The cheapest readings, and with them the cheapest few of each other shape that is not hopeless.

    Readings of one shape have as many open lines and have come as far on the main line. Without the others a dozen
    guesses at one doubtful word would crowd out the thought that a side-line has begun. Of those that do the same now
    and differ only in what lies long behind, a few are enough: most of what crowds out the right reading is one and the
    same story with ever other small doubts in it.
    """
    kept: list[Reading] = []
    shapes: dict[tuple[int, int], int] = {}
    alike: dict[tuple[int, int, int], int] = {}
    near = worst = 0.0
    for reading in sorted(readings, key=_BY_COST):
        if not kept:
            near, worst = reading.cost + width.near, reading.cost + COSTS.worst
        is_near = reading.cost <= near
        if reading.cost > worst or len(kept) >= (width.most if is_near else width.far):
            break
        main, tip = reading.lines[0].tip, reading.lines[-1].tip
        shape = len(reading.lines), main.ply
        now = len(reading.lines), main.last, tip.last
        of_shape, alike_now = shapes.get(shape, 0), alike.get(now, 0)
        few_alike = alike_now < (width.alike_near if is_near else width.alike_far)
        if few_alike and (len(kept) < width.whatever or of_shape < width.of_each_shape):
            kept.append(reading)
            shapes[shape] = of_shape + 1
            alike[now] = alike_now + 1
    return kept


_BY_COST = attrgetter("cost")
