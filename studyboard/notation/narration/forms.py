"""What a spoken phrase demands of the move that it means."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Form:
    """Constraints on one move; None and False demand nothing.

    piece: type of the piece that moves
    from_file, from_rank, from_square, to, to_file: where from and where to
    bare: only a square was said, which most often means a pawn
    capture, again: it takes; it takes back
    target, target_file: type of the piece that is taken, and its file
    promotion: type of the new piece; promotes: it promotes, to a queen if nothing else is said
    castles: "short", "long" or "castles" for either, with "both" for both players; empty for no castling
    check, mate: it gives check, it mates
    trades: both sides take, one after the other, or this is only the first of the two
    same: it does on its own side what the last move did
    back: the piece goes backwards, or back to where it came from
    vague: a piece was said to move, and not where
    exact: the move was written in notation, so what it leaves out is not so
    hint: the piece that a pronoun speaks for, where no piece is named: "queen", or "same" for that which moved last
    white: whose move it is, where the words say so
    """

    piece: int | None = None
    from_file: int | None = None
    from_rank: int | None = None
    from_square: int | None = None
    to: int | None = None
    to_file: int | None = None
    bare: bool = False
    capture: bool = False
    again: bool = False
    target: int | None = None
    target_file: int | None = None
    promotion: int | None = None
    promotes: bool = False
    castles: str = ""
    check: bool = False
    mate: bool = False
    trades: bool = False
    same: bool = False
    back: bool = False
    vague: bool = False
    exact: bool = False
    hint: str = ""
    white: bool | None = None

    @property
    def names_piece(self) -> bool:
        """Does it say what moves, or what is done, and not only where to?"""
        return bool(self.castles) or self.capture or (self.piece is not None and not self.vague)

    @property
    def names_all(self) -> bool:
        """Does it name a piece and a square, or castling, so that little more can be said?"""
        return bool(self.castles) or (self.to is not None and (self.piece is not None or self.bare))


@dataclass(frozen=True, slots=True)
class Phrase:
    """Words that may say one move.

    start, end: which words, end excluded
    anchor: the word that decides: the square, else the capture or the piece
    form: what they demand
    cost: how far the reading is from plain speech
    form_number: the same for the same demands within one talk, for quick look-up
    """

    start: int
    end: int
    anchor: int
    form: Form
    cost: float
    form_number: int = -1
