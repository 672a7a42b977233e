"""Pieces on one line: pins to a dearer piece, skewers, batteries and discovered attacks."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import chess

from studyboard.board.exchange import best_exchange
from studyboard.board.naming import the_piece
from studyboard.board.relations import worth
from studyboard.translation import tr


@dataclass(frozen=True, slots=True)
class Lined:
    """A slider, the first piece on one of its lines, and the next piece behind that one.

    by: the slider; front: the first piece; behind: the next
    """

    by: chess.Square
    front: chess.Square
    behind: chess.Square


@dataclass(frozen=True, slots=True)
class Battery:
    """Two pieces of one side that move along the same line, the one behind backing up the one in front.

    front, back: where they stand; aims: the squares beyond that the one in front sees on that line
    """

    front: chess.Square
    back: chess.Square
    aims: tuple[chess.Square, ...]


def lined_up(board: chess.BaseBoard, colour: chess.Color | None = None) -> Iterator[Lined]:
    """Every slider (of *colour*, or both) with the first two pieces on each of its lines."""
    sliders = board.queens | board.rooks | board.bishops
    if colour is not None:
        sliders &= board.occupied_co[colour]
    for by in chess.scan_forward(sliders):
        for front in chess.scan_forward(board.attacks_mask(by) & board.occupied):
            beyond = chess.ray(by, front) & board.occupied & ~chess.BB_SQUARES[by] & ~chess.BB_SQUARES[front]
            for behind in chess.scan_forward(beyond):
                if chess.between(by, behind) & board.occupied == chess.BB_SQUARES[front]:
                    yield Lined(by, front, behind)


def relative_pins(board: chess.Board) -> tuple[Lined, ...]:
    """Pieces that may leave their line, but at a price: their side would lose material on the square behind them.

    The piece behind is no king and worth more than the one in front. The price is what captures on its square win
    (`price_of_leaving`).
    """
    return tuple(line for line in lined_up(board) if _pins(board, line))


def skewers(board: chess.Board) -> tuple[Lined, ...]:
    """Attacks through a piece that has to go (a king, or one worth more than the slider) on one behind it.

    The piece behind is worth no more than the one in front, is no pawn, and once the front one has gone captures on its
    square win something that they do not win already.
    """
    found = []
    for line in lined_up(board):
        owner = board.color_at(line.by)
        if board.color_at(line.front) == owner or board.color_at(line.behind) == owner:
            continue
        front, behind = worth(board, line.front), worth(board, line.behind)
        forced = board.piece_type_at(line.front) == chess.KING or front > worth(board, line.by)
        if forced and 1 < behind <= front and price_of_leaving(board, line) > 0:
            found.append(line)
    return tuple(found)


def price_of_leaving(board: chess.Board, line: Lined) -> int:
    """What the slider's side wins on the square behind once the piece in front has gone (pawns).

    Both sides go on taking there; what can be won there anyhow does not count. A king in front goes where it is least.
    """
    there = board.copy(stack=False)
    there.turn = board.color_at(line.by) is True
    there.ep_square = None
    anyhow = best_exchange(there, line.behind).gain
    if board.piece_type_at(line.front) == chess.KING:
        prices = []
        for step in board.generate_legal_moves(chess.BB_SQUARES[line.front]):
            stepped = board.copy(stack=False)
            stepped.push(step)
            prices.append(best_exchange(stepped, line.behind).gain - anyhow)
        return min(prices, default=0)
    there.remove_piece_at(line.front)
    return best_exchange(there, line.behind).gain - anyhow


def batteries(board: chess.BaseBoard) -> tuple[Battery, ...]:
    """Every two pieces of one side on one line along which both move, nothing between, that looks at the other half."""
    found = []
    sliders = board.queens | board.rooks | board.bishops
    for back in chess.scan_forward(sliders):
        owner = board.color_at(back)
        for front in chess.scan_forward(board.attacks_mask(back) & sliders):
            if board.color_at(front) == owner and _same_motion(board, back, front):
                beyond = chess.ray(back, front) & ~chess.between(back, front) & board.attacks_mask(front)
                ahead = tuple(
                    square for square in chess.scan_forward(beyond) if chess.between(back, square) >> front & 1
                )
                if any((chess.square_rank(square) > 3) == owner for square in ahead):
                    found.append(Battery(front, back, ahead))
    return tuple(found)


def discoveries(board: chess.Board, colour: chess.Color) -> tuple[Lined, ...]:
    """Own pieces of *colour* that uncover an attack on something worth taking when they step aside.

    by: the slider behind; front: the piece that can step aside; behind: what is then attacked, a king, or a piece (no
    pawn) on whose square captures then win more than they do now. A piece that is pinned to its king uncovers nothing.
    """
    return tuple(
        line
        for line in lined_up(board, colour)
        if board.color_at(line.front) == colour != board.color_at(line.behind)
        and board.pin_mask(colour, line.front) == chess.BB_ALL
        and not _stays_on_line(board, line)
        and (
            board.piece_type_at(line.behind) == chess.KING
            or (worth(board, line.behind) > 1 and price_of_leaving(board, line) > 0)
        )
    )


def uncovered(before: chess.Board, move: chess.Move) -> tuple[Lined, ...]:
    """Attacks that *move* uncovers: by a slider that did not move, through a square that was left, on a piece.

    front: the square that was left; with en passant it can be that of the captured pawn.
    """
    colour = before.turn
    after = before.copy(stack=False)
    after.push(move)
    found = []
    sliders = after.occupied_co[colour] & before.occupied_co[colour] & (after.queens | after.rooks | after.bishops)
    for by in chess.scan_forward(sliders & ~chess.BB_SQUARES[move.to_square]):
        new = after.attacks_mask(by) & ~before.attacks_mask(by) & after.occupied_co[not colour]
        for behind in chess.scan_forward(new):
            left = chess.between(by, behind) & before.occupied & ~after.occupied
            if left:
                found.append(Lined(by, chess.lsb(left), behind))
    return tuple(found)


def relative_pin_words(board: chess.BaseBoard, pin: Lined) -> str:
    """``"The knight on f6 is pinned to the queen on d8 by the bishop on g5."``"""
    words = tr(
        "{front} is pinned to {behind} by {by}.",
        front=the_piece(board, pin.front),
        behind=the_piece(board, pin.behind),
        by=the_piece(board, pin.by),
    )
    return words[0].upper() + words[1:]


def discovery_words(board: chess.BaseBoard, line: Lined) -> str:
    """``"When the knight on d4 leaves, the rook on d1 attacks the queen on d8."``"""
    return tr(
        "When {front} leaves, {by} attacks {behind}.",
        front=the_piece(board, line.front),
        by=the_piece(board, line.by),
        behind=the_piece(board, line.behind),
    )


def skewer_words(board: chess.BaseBoard, skewer: Lined) -> str:
    """``"The bishop on g2 skewers the queen on d5 and the rook on a8 behind it."``"""
    front, behind = the_piece(board, skewer.front), the_piece(board, skewer.behind)
    words = tr(
        "{by} skewers {front} and {behind} behind it.", by=the_piece(board, skewer.by), front=front, behind=behind
    )
    return words[0].upper() + words[1:]


def battery_words(board: chess.BaseBoard, battery: Battery) -> str:
    """``"The queen on c2 and the bishop on d3 stand on one line."``"""
    words = tr(
        "{back} and {front} stand on one line.",
        back=the_piece(board, battery.back),
        front=the_piece(board, battery.front),
    )
    return words[0].upper() + words[1:]


def _pins(board: chess.Board, line: Lined) -> bool:
    owner = board.color_at(line.by)
    if board.color_at(line.front) == owner or board.color_at(line.behind) == owner:
        return False
    if board.piece_type_at(line.behind) == chess.KING or board.piece_type_at(line.front) == chess.KING:
        return False
    dearer = worth(board, line.behind) > worth(board, line.front)
    return dearer and not _stays_on_line(board, line) and price_of_leaving(board, line) > 0


def _stays_on_line(board: chess.BaseBoard, line: Lined) -> bool:
    """Can the front piece only move along the line, so that it never uncovers anything?"""
    own = board.occupied_co[board.color_at(line.front) is True]
    off = board.attacks_mask(line.front) & ~chess.ray(line.by, line.behind) & ~own
    if board.piece_type_at(line.front) != chess.PAWN:
        return not off
    foes = board.occupied_co[not board.color_at(line.front)]
    return chess.square_file(line.by) == chess.square_file(line.behind) and not off & foes


def _same_motion(board: chess.BaseBoard, back: chess.Square, by: chess.Square) -> bool:
    straight = chess.square_file(back) == chess.square_file(by) or chess.square_rank(back) == chess.square_rank(by)
    kinds = (chess.ROOK, chess.QUEEN) if straight else (chess.BISHOP, chess.QUEEN)
    return board.piece_type_at(by) in kinds and board.piece_type_at(back) in kinds
