"""Tactics that stand on the board: forks, guards with too much to do, guards that can be removed, trapped pieces."""

from __future__ import annotations

from dataclasses import dataclass

import chess

from studyboard.board.exchange import best_exchange, exchange_after
from studyboard.board.naming import listed, sentence, squares_listed, the_piece
from studyboard.board.relations import attackers, could_take_part, worth
from studyboard.translation import tr


@dataclass(frozen=True, slots=True)
class Fork:
    """One piece that attacks several others, each of which it wins something by taking, or which must move.

    by: where it stands; targets: the dearest first
    taken_by: the piece that can take it with profit or for nothing, so that the fork can be met; None where none can
    """

    by: chess.Square
    targets: tuple[chess.Square, ...]
    taken_by: chess.Square | None = None


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
    pinned: whether it has no move because it is pinned to its king
    """

    square: chess.Square
    exits: tuple[Exit, ...]
    attacked_by: tuple[chess.Square, ...]
    pinned: bool = False


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
    """Forks and double attacks by one piece, of *colour* or both; pawns count as targets where nothing guards them.

    A target is a king in check, or a piece that *by* could legally take and come out ahead after the exchange there,
    if it were its turn. At least one of them is more than a pawn.
    """
    found = []
    for side in chess.COLORS if colour is None else (colour,):
        facing = board.copy(stack=False)
        facing.turn, facing.ep_square = side, None
        for by in chess.scan_forward(board.occupied_co[side]):
            targets = [
                at
                for at in chess.scan_forward(board.attacks_mask(by) & board.occupied_co[not side])
                if _wins(facing, by, at)
            ]
            if len(targets) > 1 and any(worth(board, at) > 1 for at in targets):
                targets.sort(key=lambda at: -worth(board, at))
                found.append(Fork(by, tuple(targets), _taker(board, by)))
    return tuple(sorted(found, key=lambda fork: -sum(min(worth(board, at), 10) for at in fork.targets)))


def overloaded(board: chess.Board) -> tuple[Guard, ...]:
    """Guards that keep two or more attacked pieces of their side from being taken with profit."""
    return tuple(guard for guard in guards(board) if len(guard.keeps) > 1)


def removable(board: chess.Board) -> tuple[tuple[chess.Move, Guard], ...]:
    """Captures, by the side to move, of a guard that loses nothing there; whatever takes back, what it kept then hangs.

    Guard.keeps has those pieces only.
    """
    found = []
    for guard in guards(board, not board.turn):
        for move in board.generate_legal_captures(to_mask=chess.BB_SQUARES[guard.square]):
            if exchange_after(board, move) >= 0 and (keeps := _hang_after(board, move, guard.keeps)):
                found.append((move, Guard(guard.square, keeps)))
                break
    return tuple(found)


def guards(board: chess.Board, colour: chess.Color | None = None) -> tuple[Guard, ...]:
    """Pieces (no kings) of *colour* or both without which another piece of theirs could be taken with profit.

    What they keep is what could be taken with profit if they took no part in the exchange on its square.
    """
    found = []
    for side in chess.COLORS if colour is None else (colour,):
        facing = turned(board, not side)
        if facing is None:
            continue
        kept: dict[chess.Square, list[chess.Square]] = {}
        for at in chess.scan_forward(board.occupied_co[side] & ~board.kings):
            if not board.attackers_mask(not side, at) or best_exchange(facing, at).gain:
                continue
            for guard in chess.scan_forward(board.occupied_co[side] & ~board.kings & ~chess.BB_SQUARES[at]):
                if not could_take_part(board, guard, at):
                    continue
                if best_exchange(facing, at, kept_out=chess.BB_SQUARES[guard]).gain > 0:
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
    """Pieces (no kings, no pawns) that are attacked and lose something wherever they go, and where they stand.

    None while a side is in check, which comes first.
    """
    if board.is_check():
        return ()
    return tuple(
        found
        for side in (chess.COLORS if colour is None else (colour,))
        for at in chess.scan_forward(board.occupied_co[side] & ~board.kings & ~board.pawns)
        if _loses_where_it_stands(board, at) and (found := shut_in(board, at)) is not None
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
    pinned = not exits and facing.pin_mask(colour, square) != chess.BB_ALL
    return Trapped(square, tuple(exits), attackers(board, not colour, square), pinned)


def fork_words(board: chess.BaseBoard, fork: Fork) -> str:
    """``"The knight on c7 forks the king on e8 and the rook on a8."``; with ``", but the queen on d8 can take it"``."""
    by, names = the_piece(board, fork.by), listed([the_piece(board, at) for at in fork.targets])
    if fork.taken_by is None:
        return sentence(tr("{by} forks {pieces}", by=by, pieces=names))
    taker = the_piece(board, fork.taken_by)
    return sentence(tr("{by} forks {pieces}, but {taker} can take it", by=by, pieces=names, taker=taker))


def guard_words(board: chess.BaseBoard, guard: Guard) -> str:
    """``"The queen on d8 guards the rook on a8 and the pawn on d5, and both need it."``"""
    need = {1: tr("which needs it"), 2: tr("and both need it")}.get(len(guard.keeps), tr("and all of them need it"))
    kept = listed([the_piece(board, at) for at in guard.keeps])
    return sentence(tr("{piece} guards {kept}, {need}", piece=the_piece(board, guard.square), kept=kept, need=need))


def removal_words(board: chess.Board, move: chess.Move, guard: Guard) -> str:
    """``"Bxf6 takes the guard of the pawn on d5."``"""
    return tr(
        "{move} takes the guard of {names}.",
        move=board.san(move),
        names=listed([the_piece(board, at) for at in guard.keeps]),
    )


def safe_words(board: chess.Board, square: chess.Square) -> str:
    """``"The knight on c3 can safely go to a4 and e2."``; ``"… has no safe square."``"""
    name, safe = the_piece(board, square), safe_squares(board, square)
    words = (
        tr("{name} can safely go to {squares}.", name=name, squares=squares_listed(safe))
        if safe
        else tr("{name} has no safe square.", name=name)
    )
    return words[0].upper() + words[1:]


def trapped_words(board: chess.Board, piece: Trapped) -> str:
    """``"The bishop on a7 is trapped: on b8 the rook on d8 takes it."`` with every square it can go to."""
    name = the_piece(board, piece.square)
    if not piece.exits:
        why = tr("it is pinned to its king and has no move") if piece.pinned else tr("it has no legal move")
        return sentence(tr("{piece} is trapped: {why}", piece=name, why=why))
    ways = []
    for way in piece.exits:
        to = chess.square_name(way.move.to_square)
        if way.capture:
            taker = the_piece(board, way.capture.from_square)
            ways.append(tr("on {square} {piece} takes it", square=to, piece=taker))
        else:
            ways.append(tr("on {square} it is lost", square=to))
    return sentence(tr("{piece} is trapped: {why}", piece=name, why=listed(ways)))


def _wins(facing: chess.Board, by: chess.Square, target: chess.Square) -> bool:
    """Does *by*, whose turn it is on *facing*, win something by taking on *target*? A king in check counts."""
    if facing.piece_type_at(target) == chess.KING:
        return True
    moves = facing.generate_legal_captures(chess.BB_SQUARES[by], chess.BB_SQUARES[target])
    return any(exchange_after(facing, move) > 0 for move in moves)


def _taker(board: chess.Board, by: chess.Square) -> chess.Square | None:
    """Who takes the piece on *by* and loses nothing there, if it were its side's turn."""
    facing = turned(board, not board.color_at(by))
    if facing is None:
        return None
    captures = facing.generate_legal_captures(to_mask=chess.BB_SQUARES[by])
    best = max(captures, key=lambda move: exchange_after(facing, move), default=None)
    return best.from_square if best is not None and exchange_after(facing, best) >= 0 else None


def _hang_after(board: chess.Board, capture: chess.Move, keeps: tuple[chess.Square, ...]) -> tuple[chess.Square, ...]:
    """Which of *keeps* can be taken with profit after *capture*, whichever piece takes back on that square, or none."""
    after = board.copy(stack=False)
    after.push(capture)
    answers = list(after.generate_legal_captures(to_mask=chess.BB_SQUARES[capture.to_square]))
    if not after.is_check():
        answers.append(chess.Move.null())
    hang = set(keeps)
    for answer in answers:
        after.push(answer)
        hang = {at for at in hang if best_exchange(after, at).gain > 0}
        after.pop()
    return tuple(sorted(hang))


def _loses_where_it_stands(board: chess.Board, square: chess.Square) -> bool:
    facing = turned(board, not board.color_at(square))
    return facing is not None and best_exchange(facing, square).gain > 0
