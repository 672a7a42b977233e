"""Facts of a position that anyone can check on the board: checks, pieces that hang, pieces that are pinned."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

import chess

from studyboard.board.exchange import PIECE_VALUES, best_exchange
from studyboard.board.lines import Lined, relative_pin_words, relative_pins
from studyboard.board.material import material_words
from studyboard.board.naming import listed, side, the_piece
from studyboard.translation import tr


class FactKind(StrEnum):
    """What a fact is about."""

    END = "end"
    CHECK = "check"
    HANGS = "hangs"
    PINNED = "pinned"
    MATERIAL = "material"
    LINE = "line"
    FORK = "fork"
    GUARD = "guard"
    TRAPPED = "trapped"
    PAWNS = "pawns"
    BISHOPS = "bishops"
    CASTLING = "castling"
    COVER = "cover"
    DRAW = "draw"
    ONLY_MOVE = "only move"
    KING = "king"
    DISCOVERY = "discovery"


@dataclass(frozen=True, slots=True)
class Fact:
    """One fact in words.

    kind: what it is about
    words: one sentence
    squares: the squares that it names, the piece that it is about first
    """

    kind: FactKind
    words: str
    squares: tuple[chess.Square, ...] = ()


@dataclass(frozen=True, slots=True)
class Hanging:
    """A piece that can be taken with profit.

    square: where it stands
    by: the piece that takes first
    loss: what its side loses when both sides go on taking there (pawns)
    protected: whether anything can legally take back
    """

    square: chess.Square
    by: chess.Square
    loss: int
    protected: bool


@dataclass(frozen=True, slots=True)
class Pin:
    """A piece that cannot leave its line because its king stands behind it.

    square: where it stands; by: the piece that pins it; king: the king behind
    """

    square: chess.Square
    by: chess.Square
    king: chess.Square


def facts(board: chess.Board) -> tuple[Fact, ...]:
    """Everything that is known of this position, the most pressing first and the material last."""
    found = []
    if (ending := end_words(board)) is not None:
        found.append(Fact(FactKind.END, ending))
    elif (check := check_fact(board)) is not None:
        found.append(check)
    found += [Fact(FactKind.HANGS, hanging_words(board, hang), (hang.square, hang.by)) for hang in hanging(board)]
    found += [Fact(FactKind.PINNED, pin_words(board, pin), (pin.square, pin.by, pin.king)) for pin in pins(board)]
    found += [
        Fact(FactKind.PINNED, relative_pin_words(board, pin), (pin.front, pin.by, pin.behind))
        for pin in costly_pins(board)
    ]
    found.append(Fact(FactKind.MATERIAL, material_words(board)))
    return tuple(found)


def hanging(board: chess.Board) -> tuple[Hanging, ...]:
    """The pieces of both sides that can be taken with profit by captures on their square, the dearest first.

    For the side to move, what the other side could take if it were its turn; nothing while that side is in check,
    because the check has to be answered first. Only absolute pins and x-rays through the square count, not what
    happens elsewhere on the board.
    """
    found = list(_takeable(board))
    if not board.is_check():
        passed = board.copy(stack=False)
        passed.push(chess.Move.null())
        if not passed.was_into_check():
            found += _takeable(passed)
    return tuple(sorted(found, key=lambda hang: (-hang.loss, -_value(board, hang.square), hang.square)))


def pins(board: chess.BaseBoard) -> tuple[Pin, ...]:
    """All pieces that are pinned to their king, the dearest first. Exact; positions without a king have none."""
    found = []
    for colour in chess.COLORS:
        king = board.king(colour)
        if king is None:
            continue
        for square in chess.scan_forward(board.occupied_co[colour] & ~chess.BB_SQUARES[king]):
            line = board.pin_mask(colour, square)
            if line == chess.BB_ALL:
                continue
            beyond = line & board.occupied_co[not colour] & _sliders(board)
            by = next(
                pinner
                for pinner in chess.scan_forward(beyond)
                if chess.between(pinner, king) & board.occupied == chess.BB_SQUARES[square]
            )
            found.append(Pin(square, by, king))
    return tuple(sorted(found, key=lambda pin: (-_value(board, pin.square), pin.square)))


def costly_pins(board: chess.Board) -> tuple[Lined, ...]:
    """Pieces that may leave their line, but at a price: their side would lose material on the square behind them.

    The piece behind is worth more than the one in front and is no king. The price is what the captures on its square
    win, both sides going on taking there, once the piece in front is gone; what can be won there anyhow does not
    count. A piece that could take the one that pins it is not held, and one that is pinned to its king is in `pins`.
    """
    held = {pin.square for pin in pins(board)}
    found = [
        line
        for line in relative_pins(board)
        if line.front not in held and not board.attacks_mask(line.front) >> line.by & 1
    ]
    return tuple(sorted(found, key=lambda pin: (-_value(board, pin.behind), -_value(board, pin.front), pin.front)))


def check_fact(board: chess.Board) -> Fact | None:
    """Who gives check: ``"White is in check from the rook on e5."``; None where nobody does."""
    king = board.king(board.turn)
    checkers = tuple(board.checkers())
    if king is None or not checkers:
        return None
    names = [the_piece(board, square) for square in checkers]
    double = tr("double check") if len(checkers) > 1 else tr("check")
    words = tr("{side} is in {double} from {pieces}.", side=side(board.turn), double=double, pieces=listed(names))
    return Fact(FactKind.CHECK, words, (king, *checkers))


def end_words(board: chess.Board) -> str | None:
    """How the game has ended here: checkmate, stalemate, too little material to mate; None where it goes on."""
    if board.king(board.turn) is None or board.king(not board.turn) is None:
        return None
    if board.is_checkmate():
        return tr("{side} is checkmated.", side=side(board.turn))
    if board.is_stalemate():
        return tr("{side} is stalemated: the game is drawn.", side=side(board.turn))
    if board.is_insufficient_material():
        return tr("Neither side can give mate any more: the game is drawn.")
    return None


def hanging_words(board: chess.BaseBoard, hang: Hanging) -> str:
    """``"The rook on e5 hangs: the bishop on d6 takes it and nothing protects it."``

    Of a protected piece: ``"The bishop on d6 can take the rook on e5 with profit: White loses 2 points although it is
    protected."``
    """
    piece, taker = the_piece(board, hang.square), the_piece(board, hang.by)
    if not hang.protected:
        return tr("{piece} hangs: {taker} takes it and nothing protects it.", piece=_capital(piece), taker=taker)
    loss = tr("a pawn") if hang.loss == 1 else tr("{loss} points", loss=hang.loss)
    owner = side(board.color_at(hang.square) is True)
    return tr(
        "{taker} can take {piece} with profit: {owner} loses {loss} although it is protected.",
        taker=_capital(taker),
        piece=piece,
        owner=owner,
        loss=loss,
    )


def pin_words(board: chess.BaseBoard, pin: Pin) -> str:
    """``"The knight on f6 is pinned to its king by the bishop on g5."``"""
    return tr(
        "{piece} is pinned to its king by {by}.",
        piece=_capital(the_piece(board, pin.square)),
        by=the_piece(board, pin.by),
    )


def _takeable(board: chess.Board) -> list[Hanging]:
    """The pieces of the side that is not to move which the side to move takes with profit."""
    found = []
    theirs = board.occupied_co[not board.turn] & ~board.kings
    for square in chess.scan_forward(theirs):
        exchange = best_exchange(board, square)
        if exchange.gain > 0:
            first = exchange.moves[0]
            found.append(Hanging(square, first.from_square, exchange.gain, _can_take_back(board, first)))
    return found


def _can_take_back(board: chess.Board, capture: chess.Move) -> bool:
    after = board.copy(stack=False)
    after.push(capture)
    return any(after.generate_legal_captures(to_mask=chess.BB_SQUARES[capture.to_square]))


def _sliders(board: chess.BaseBoard) -> chess.Bitboard:
    return board.queens | board.rooks | board.bishops


def _value(board: chess.BaseBoard, square: chess.Square) -> int:
    kind = board.piece_type_at(square)
    return PIECE_VALUES[kind] if kind else 0


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]
