"""From the best reading of a talk to its moves: the main line, the side-lines, and what was told when."""

from __future__ import annotations

from collections.abc import Sequence

from studyboard.notation.narration.narration import SideLine, SpokenMove
from studyboard.notation.narration.place import Place
from studyboard.notation.narration.readings import Heard, How, Reading
from studyboard.notation.narration.search import Talk
from studyboard.notation.narration.tokens import Token


def heard_in_order(reading: Reading) -> list[Heard]:
    """Everything that was understood, from the beginning on."""
    found: list[Heard] = []
    heard = reading.heard
    while heard is not None:
        found.append(heard)
        heard = heard.before
    found.reverse()
    return found


def main_line(talk: Talk, reading: Reading) -> tuple[str, ...]:
    """The main line in SAN: the game's where it is known, else what was told."""
    if talk.game is not None:
        return tuple(san(place) for place in talk.game[1:])
    return path_to(reading.lines[0].tip)


def path_to(place: Place) -> tuple[str, ...]:
    """The moves from the start to a place, in SAN."""
    found: list[str] = []
    at: Place | None = place
    while at is not None and at.parent is not None:
        found.append(san(at))
        at = at.parent
    return tuple(reversed(found))


def san(place: Place) -> str:
    """The move that leads to a place."""
    assert place.parent is not None
    assert place.move is not None
    return place.parent.board.san(place.move)


def moves_told(reading: Reading, tokens: Sequence[Token]) -> tuple[SpokenMove, ...]:
    """Every move that was told, in order; a move that was told twice stands once, where it came first.

    A move from a position that no told move leads to (in a game that is known, where the talk jumps ahead) is told
    together with those before it.
    """
    numbers: dict[int, int] = {0: 0}
    found: list[SpokenMove] = []
    tips: dict[int, int] = {0: 0}
    for heard in heard_in_order(reading):
        if heard.how is How.NAMED:
            continue
        start = tokens[heard.phrase.start].start
        end = tokens[heard.phrase.end - 1].end
        missing: list[Place] = []
        at = heard.place
        while at.number not in numbers:
            missing.append(at)
            assert at.parent is not None
            at = at.parent
        for place in reversed(missing):
            assert place.parent is not None
            assert place.move is not None
            number = len(found) + 1
            numbers[place.number] = number
            last = place is heard.place
            branches = heard.how is How.BRANCHES and last
            found.append(
                SpokenMove(
                    number=number,
                    after=numbers[place.parent.number],
                    move=place.move,
                    san=san(place),
                    depth=heard.depth,
                    start=start,
                    end=end,
                    said=last and heard.how is not How.UNSAID,
                    branches=branches,
                    beside=tips.get(heard.depth - 1, 0) if branches else 0,
                )
            )
        tips[heard.depth] = numbers[heard.place.number]
    return tuple(found)


def side_lines(told: Sequence[SpokenMove]) -> tuple[SideLine, ...]:
    """The side-lines in the order in which they were begun."""
    by_number = {move.number: move for move in told}
    lines: list[list[SpokenMove]] = []
    ends: dict[int, list[SpokenMove]] = {}
    for move in told:
        if move.depth == 0:
            continue
        line = None if move.branches else ends.pop(move.after, None)
        if line is None:
            line = []
            lines.append(line)
        line.append(move)
        ends[move.number] = line
    return tuple(SideLine(_way(line[0].after, by_number), tuple(move.san for move in line)) for line in lines)


def _way(number: int, by_number: dict[int, SpokenMove]) -> tuple[str, ...]:
    found: list[str] = []
    while number:
        move = by_number[number]
        found.append(move.san)
        number = move.after
    return tuple(reversed(found))
