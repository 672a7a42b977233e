"""Pieces, squares and sides in the words of a sentence."""

from __future__ import annotations

from collections.abc import Sequence

import chess

_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


def the_piece(board: chess.BaseBoard, square: chess.Square) -> str:
    """``"the knight on f6"``; ``"the empty square f6"`` where nothing stands."""
    kind = board.piece_type_at(square)
    return (
        f"the {chess.piece_name(kind)} on {chess.square_name(square)}"
        if kind
        else f"the empty square {chess.square_name(square)}"
    )


def their_piece(board: chess.BaseBoard, square: chess.Square) -> str:
    """``"White's knight on f6"``."""
    kind = board.piece_type_at(square)
    if not kind:
        return the_piece(board, square)
    return f"{side(board.color_at(square) is True)}'s {chess.piece_name(kind)} on {chess.square_name(square)}"


def square_words(square: chess.Square) -> str:
    """``"f6"``."""
    return chess.square_name(square)


def side(colour: chess.Color) -> str:
    """``"White"`` or ``"Black"``."""
    return chess.COLOR_NAMES[colour].capitalize()


def listed(names: Sequence[str], last: str = "and") -> str:
    """``"a, b and c"``; empty for none."""
    if len(names) < 2:
        return "".join(names)
    return f"{', '.join(names[:-1])} {last} {names[-1]}"


def counted(count: int, name: str) -> str:
    """``"two pawns"``, ``"one pawn"``, ``"no pawns"``."""
    number = _NUMBERS[count] if 0 <= count < len(_NUMBERS) else str(count)
    return f"{number} {name}" if count == 1 else f"{number} {name}s"


def in_figures(count: int, name: str) -> str:
    """``"9 half-moves"``, ``"1 half-move"``, ``"0 half-moves"``."""
    return f"{count} {name}" if count == 1 else f"{count} {name}s"


def squares_listed(squares: Sequence[chess.Square]) -> str:
    """``"e4, f5 and g6"``."""
    return listed([chess.square_name(square) for square in squares])


def sentence(words: str) -> str:
    """The words with a capital and a full stop, everything else as it stands."""
    return f"{words[:1].upper()}{words[1:]}{'' if words.endswith(('.', '?', '!')) else '.'}"
