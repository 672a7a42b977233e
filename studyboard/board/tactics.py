"""Tactics that stand on the board: forks, guards with too much to do, guards that can be removed, trapped pieces."""

from __future__ import annotations

from dataclasses import dataclass

import chess

from studyboard.board.exchange import best_exchange, exchange_after
from studyboard.board.naming import listed, the_piece
from studyboard.board.relations import attackers, worth


@dataclass(frozen=True, slots=True)
class Fork:
    """One piece that attacks several others, each of which it wins something by taking, or which must move.

    by: where it stands; targets: the dearest first
    """

    by: chess.Square
    targets: tuple[chess.Square, ...]


@dataclass(frozen=True, slots=True)
class Guard:
    """A piece on which the safety of others rests.

    square: where it stands; keeps: the pieces that could be taken with profit if it were gone
    """

    square: chess.Square
    keeps: tuple[chess.Square, ...]


@dataclass(frozen=True, slots=True)
class Exit:
    """A square to which a trapped piece can go, and the capture that loses it there."""

    move: chess.Move
    loss: int
    capture: chess.Move | None


@dataclass(frozen=True, slots=True)
class Trapped:
    """A piece that is lost wherever it goes.

    square: where it stands; exits: every legal move of it, with the capture that takes it there
    attacked_by: who attacks it now; none where it is only shut in
    """

    square: chess.Square
    exits: tuple[Exit, ...]
    attacked_by: tuple[chess.Square, ...]


def turned(board: chess.Board, colour: chess.Color) -> chess.Board | None:
    """The position with *colour* to move: itself, or with the turn passed; None where that leaves a king in check."""
    if board.turn == colour:
        return board
    if board.is_check():
        return None
    passed = board.copy(stack=False)
    passed.push(chess.Move.null())
    return passed


def forks(board: chess.Board, colour: chess.Color | None = None) -> tuple[Fork, ...]:
    """Forks and double attacks by one piece, of *colour* or both; pawns count as targets where nothing guards them."""
    found = []
    for side in chess.COLORS if colour is None else (colour,):
        for by in chess.scan_forward(board.occupied_co[side]):
            targets = [
                at
                for at in chess.scan_forward(board.attacks_mask(by) & board.occupied_co[not side])
                if _wins(board, by, at)
            ]
            if len(targets) > 1 and any(worth(board, at) > 1 for at in targets):
                found.append(Fork(by, tuple(sorted(targets, key=lambda at: -worth(board, at)))))
    return tuple(sorted(found, key=lambda fork: -sum(min(worth(board, at), 10) for at in fork.targets)))


def overloaded(board: chess.Board) -> tuple[Guard, ...]:
    """Guards that keep two or more attacked pieces of their side from being taken with profit."""
    return tuple(guard for guard in guards(board) if len(guard.keeps) > 1)


def removable(board: chess.Board) -> tuple[tuple[chess.Move, Guard], ...]:
    """Captures, by the side to move, of a guard: not at a loss, and what it kept then hangs (or it was the profit)."""
    found = []
    for guard in guards(board, not board.turn):
        for move in board.generate_legal_captures(to_mask=chess.BB_SQUARES[guard.square]):
            if exchange_after(board, move) >= 0:
                found.append((move, guard))
                break
    return tuple(found)


def guards(board: chess.Board, colour: chess.Color | None = None) -> tuple[Guard, ...]:
    """Pieces (no kings) of *colour* or both without which another piece of theirs could be taken with profit."""
    found = []
    for side in chess.COLORS if colour is None else (colour,):
        facing = turned(board, not side)
        if facing is None:
            continue
        attacked = [
            at
            for at in chess.scan_forward(board.occupied_co[side] & ~board.kings)
            if board.attackers_mask(not side, at) and not best_exchange(facing, at).gain
        ]
        kept: dict[chess.Square, list[chess.Square]] = {}
        for at in attacked:
            for guard in attackers(board, side, at):
                if board.piece_type_at(guard) == chess.KING:
                    continue
                without = facing.copy(stack=False)
                without.remove_piece_at(guard)
                if best_exchange(without, at).gain > 0 and without.is_valid():
                    kept.setdefault(guard, []).append(at)
        found += [Guard(guard, tuple(keeps)) for guard, keeps in kept.items()]
    return tuple(found)


def safe_squares(board: chess.Board, square: chess.Square) -> tuple[chess.Square, ...]:
    """Where the piece on *square* could go, if it were its turn, without losing anything by captures there."""
    colour = board.color_at(square)
    facing = None if colour is None else turned(board, colour)
    if facing is None:
        return ()
    moves = facing.generate_legal_moves(chess.BB_SQUARES[square])
    return tuple(sorted({move.to_square for move in moves if exchange_after(facing, move) >= 0}))


def trapped(board: chess.Board, colour: chess.Color | None = None) -> tuple[Trapped, ...]:
    """Pieces (no kings, no pawns) that are attacked and lose something wherever they go, and where they stand."""
    return tuple(
        found
        for side in (chess.COLORS if colour is None else (colour,))
        for at in chess.scan_forward(board.occupied_co[side] & ~board.kings & ~board.pawns)
        if (found := shut_in(board, at)) is not None and found.attacked_by and _loses_where_it_stands(board, at)
    )


def shut_in(board: chess.Board, square: chess.Square) -> Trapped | None:
    """The piece on *square* with its exits, where every one of them loses something; attacked or not.

    None where it has a safe square, where its side is in check on the other side's turn, or where none stands.
    """
    colour = board.color_at(square)
    facing = None if colour is None else turned(board, colour)
    if facing is None or colour is None:
        return None
    exits = []
    for move in facing.generate_legal_moves(chess.BB_SQUARES[square]):
        balance = exchange_after(facing, move)
        if balance >= 0:
            return None
        after = facing.copy(stack=False)
        after.push(move)
        answer = best_exchange(after, move.to_square).moves
        exits.append(Exit(move, -balance, answer[0] if answer else None))
    return Trapped(square, tuple(exits), attackers(board, not colour, square))


def fork_words(board: chess.BaseBoard, fork: Fork) -> str:
    """``"The knight on c7 forks the king on e8 and the rook on a8."``"""
    words = f"{the_piece(board, fork.by)} forks {listed([the_piece(board, at) for at in fork.targets])}."
    return words[0].upper() + words[1:]


def guard_words(board: chess.BaseBoard, guard: Guard) -> str:
    """``"The queen on d8 alone keeps the rook on a8 and the pawn on d5."``"""
    words = f"{the_piece(board, guard.square)} alone keeps {listed([the_piece(board, at) for at in guard.keeps])}."
    return words[0].upper() + words[1:]


def trapped_words(board: chess.Board, piece: Trapped) -> str:
    """``"The bishop on a7 is trapped: on b8 the rook on d8 takes it."`` with every square it can go to."""
    name = the_piece(board, piece.square)
    if not piece.exits:
        return f"{name[0].upper()}{name[1:]} is trapped: it has no legal move."
    ways = []
    for way in piece.exits:
        to = chess.square_name(way.move.to_square)
        taker = f"{the_piece(board, way.capture.from_square)} takes it" if way.capture else "it is lost"
        ways.append(f"on {to} {taker}")
    return f"{name[0].upper()}{name[1:]} is trapped: {listed(ways)}."


def _wins(board: chess.Board, by: chess.Square, target: chess.Square) -> bool:
    """Does *by* threaten to win something by taking on *target*?"""
    if board.piece_type_at(target) == chess.KING:
        return True
    side = board.color_at(by) is True
    guarded = bool(board.attackers_mask(not side, target))
    if not guarded:
        return True
    return board.piece_type_at(by) != chess.KING and worth(board, target) > worth(board, by)


def _loses_where_it_stands(board: chess.Board, square: chess.Square) -> bool:
    facing = turned(board, not board.color_at(square))
    return facing is not None and best_exchange(facing, square).gain > 0
