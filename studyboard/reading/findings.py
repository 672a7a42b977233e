"""What the read-through has found: statements confirmed, contradicted or left unchecked."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

import chess

from studyboard.model.script import BeatKey


class Verdict(StrEnum):
    """What the board says to a statement."""

    CONFIRMED = "confirmed"
    CONTRADICTED = "contradicted"
    UNDECIDED = "unchecked"


class Topic(StrEnum):
    """What a statement is about."""

    SQUARE = "square"
    PIECE = "piece"
    COLOUR = "colour"
    CASTLING = "castling"
    MOVE = "move"
    CHECK = "check"
    MATE = "mate"
    MATERIAL = "material"
    ATTACK = "attack"
    PIN = "pin"
    FORK = "fork"
    HANGING = "hanging"
    TRAPPED = "trapped"
    PAWNS = "pawns"
    FORCED = "forced"
    NUMBER = "number"
    TURN = "turn"
    RESULT = "result"
    BRANCH = "branch"
    THINK = "think"


@dataclass(frozen=True, slots=True)
class Fix:
    """A change of the line that makes it true, where there is only one.

    start, end: characters of the line that are replaced; text: what is put there
    """

    start: int
    end: int
    text: str


@dataclass(frozen=True, slots=True)
class Finding:
    """One statement of a spoken line and what the board says to it.

    quote: the words; kind: what they are about; verdict: what came out
    claimed: what is said, as the program understood it; why: what is true, with the squares or the line that prove it
    do: what to do about it, for a query
    beat: whose line it is, None for a line without a study
    start, end: characters of the line
    squares: squares that prove it; line: moves in SAN that prove it
    fix: the change that mends it, where that is certain
    """

    quote: str
    kind: Topic
    verdict: Verdict
    claimed: str
    why: str
    do: str = ""
    beat: BeatKey | None = None
    start: int = 0
    end: int = 0
    squares: tuple[chess.Square, ...] = ()
    line: tuple[str, ...] = ()
    fix: Fix | None = None


@dataclass(frozen=True, slots=True)
class ReadThrough:
    """What a read-through of a line or of a whole study found, in the order of the talk."""

    queries: tuple[Finding, ...] = ()
    confirmed: tuple[Finding, ...] = ()
    unchecked: tuple[Finding, ...] = ()


def sorted_out(findings: list[Finding]) -> ReadThrough:
    """The findings by their verdict, each kind in the order in which it came."""
    by = {verdict: tuple(f for f in findings if f.verdict is verdict) for verdict in Verdict}
    return ReadThrough(by[Verdict.CONTRADICTED], by[Verdict.CONFIRMED], by[Verdict.UNDECIDED])
