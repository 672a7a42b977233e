"""Pieces, squares and sides in the words of a sentence, in the language of the desk."""

from __future__ import annotations

from collections.abc import Sequence

import chess

from studyboard.translation import tr, tr_later

_NUMBERS = (
    tr_later("no"),
    tr_later("one"),
    tr_later("two"),
    tr_later("three"),
    tr_later("four"),
    tr_later("five"),
    tr_later("six"),
    tr_later("seven"),
    tr_later("eight"),
    tr_later("nine"),
    tr_later("ten"),
)
#: Nouns that are counted in sentences which the desk shows, each with its plural.
_NOUNS = {
    tr_later("pawn"): tr_later("pawns"),
    tr_later("knight"): tr_later("knights"),
    tr_later("bishop"): tr_later("bishops"),
    tr_later("rook"): tr_later("rooks"),
    tr_later("queen"): tr_later("queens"),
    tr_later("king"): tr_later("kings"),
    tr_later("move"): tr_later("moves"),
    tr_later("pawn island"): tr_later("pawn islands"),
}
_SIDES = {chess.WHITE: tr_later("White"), chess.BLACK: tr_later("Black")}
_LAST = {"and": tr_later("{names} and {last}"), "or": tr_later("{names} or {last}")}


def piece_name(kind: chess.PieceType) -> str:
    """``"knight"``."""
    return tr(chess.piece_name(kind))


def piece_on(kind: chess.PieceType, square: chess.Square) -> str:
    """``"the knight on f6"``, whatever stands there."""
    return tr("the {piece} on {square}", piece=piece_name(kind), square=chess.square_name(square))


def the_piece(board: chess.BaseBoard, square: chess.Square) -> str:
    """``"the knight on f6"``; ``"the empty square f6"`` where nothing stands."""
    kind = board.piece_type_at(square)
    return piece_on(kind, square) if kind else tr("the empty square {square}", square=chess.square_name(square))


def their_piece(board: chess.BaseBoard, square: chess.Square) -> str:
    """``"White's knight on f6"``."""
    kind = board.piece_type_at(square)
    if not kind:
        return the_piece(board, square)
    return tr(
        "{side}'s {piece} on {square}",
        side=side(board.color_at(square) is True),
        piece=piece_name(kind),
        square=chess.square_name(square),
    )


def square_words(square: chess.Square) -> str:
    """``"f6"``."""
    return chess.square_name(square)


def side(colour: chess.Color) -> str:
    """``"White"`` or ``"Black"``."""
    return tr(_SIDES[colour])


def listed(names: Sequence[str], last: str = "and") -> str:
    """``"a, b and c"``; empty for none."""
    if len(names) < 2:
        return "".join(names)
    return tr(_LAST[last], names=", ".join(names[:-1]), last=names[-1])


def number_name(count: int) -> str:
    """``"two"``; figures above ten."""
    return tr(_NUMBERS[count]) if 0 <= count < len(_NUMBERS) else str(count)


def plural_name(kind: chess.PieceType) -> str:
    """``"knights"``."""
    return tr(_NOUNS[chess.piece_name(kind)])


def counted(count: int, name: str) -> str:
    """``"two pawns"``, ``"one pawn"``, ``"no pawns"``."""
    return f"{number_name(count)} {tr(name) if count == 1 else tr(_NOUNS.get(name, f'{name}s'))}"


def in_figures(count: int, name: str) -> str:
    """``"9 half-moves"``, ``"1 half-move"``, ``"0 half-moves"``."""
    return f"{count} {name}" if count == 1 else f"{count} {name}s"


def squares_listed(squares: Sequence[chess.Square]) -> str:
    """``"e4, f5 and g6"``."""
    return listed([chess.square_name(square) for square in squares])


def sentence(words: str) -> str:
    """The words with a capital and a full stop, everything else as it stands."""
    return f"{words[:1].upper()}{words[1:]}{'' if words.endswith(('.', '?', '!')) else '.'}"
