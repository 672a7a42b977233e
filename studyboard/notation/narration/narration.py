"""What a reader has understood of a talk, as values."""

from __future__ import annotations

from dataclasses import dataclass

import chess


@dataclass(frozen=True, slots=True)
class SpokenMove:
    """One move as it was told.

    number: its own, from 1, in the order of telling; a move told again keeps its number
    after: the number of the move before it on the tree, 0 for the start
    move, san: the move
    depth: 0 on the main line, 1 in a side-line of it, and so on
    start, end: the words that play it, in characters of the text
    said: False where it was left unsaid and follows of itself; it then has the words of the move after it
    branches: True where a side-line begins with it
    beside: for such a one, the number of the last move that was told of the line that it leaves
    """

    number: int
    after: int
    move: chess.Move
    san: str
    depth: int
    start: int
    end: int
    said: bool = True
    branches: bool = False
    beside: int = 0


@dataclass(frozen=True, slots=True)
class SideLine:
    """after: the moves from the start to where it leaves; line: its moves; both in SAN."""

    after: tuple[str, ...]
    line: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldBeat:
    """One stop of the talk.

    at: when it begins (s), None without times
    until: when it ends (s), where that is known
    start, end: its words, in characters of the text
    text: the words
    moves: numbers of the moves that are played in it
    """

    at: float | None
    until: float | None
    start: int
    end: int
    text: str
    moves: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Mention:
    """A move or square that was named and not played. kind: plan, control, reason, elsewhere, threat …"""

    quote: str
    kind: str
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Unread:
    """Words that look like a move and could not be understood as one, and why."""

    text: str
    reason: str
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Narration:
    """A talk with everything that was understood of it.

    text: the talk without times and markup
    fen: the position from which it starts
    main_line: SAN
    moves: every move on the tree in the order of telling
    """

    text: str
    fen: str
    main_line: tuple[str, ...]
    side_lines: tuple[SideLine, ...]
    beats: tuple[ToldBeat, ...]
    mentions: tuple[Mention, ...]
    unread: tuple[Unread, ...]
    moves: tuple[SpokenMove, ...]
