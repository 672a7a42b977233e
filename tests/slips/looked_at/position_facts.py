"""Facts of a position that the statements of a talk are judged by, worked out with python-chess alone."""

from __future__ import annotations

from functools import cache

import chess

VALUE = {chess.PAWN: 1, chess.KNIGHT: 3, chess.BISHOP: 3, chess.ROOK: 5, chess.QUEEN: 9, chess.KING: 100}


def with_turn(board: chess.Board, side: chess.Color) -> chess.Board:
    """A copy with *side* to move, nothing else changed but the en-passant square."""
    other = board.copy()
    if other.turn != side:
        other.turn = side
        other.ep_square = None
    return other


def exchange(board: chess.Board, square: int) -> int:
    """What the side to move wins at most by captures on *square* (pawns); legal moves only."""
    victim = board.piece_type_at(square)
    if victim is None:
        return 0
    takers = [move for move in board.legal_moves if move.to_square == square]
    if not takers:
        return 0
    move = min(takers, key=lambda taking: VALUE[board.piece_type_at(taking.from_square) or chess.PAWN])
    after = board.copy(stack=False)
    after.push(move)
    return max(0, VALUE[victim] - exchange(after, square))


def hangs(board: chess.Board, square: int) -> bool:
    """Whether the other side wins material by taking what stands on *square*."""
    return exchange(with_turn(board, not board.color_at(square)), square) > 0


def trapped(board: chess.Board, square: int) -> bool:
    """Whether every move of the piece on *square* loses material, captures on the way counted."""
    side = board.color_at(square)
    assert side is not None
    mover = with_turn(board, side)
    for move in mover.legal_moves:
        if move.from_square != square:
            continue
        gain = VALUE[mover.piece_type_at(move.to_square) or chess.PAWN] if mover.is_capture(move) else 0
        after = mover.copy(stack=False)
        after.push(move)
        if gain - exchange(after, move.to_square) >= 0:
            return False
    return True


def forced_mate(board: chess.Board, moves: int) -> bool:
    """Whether the side to move can force mate in at most *moves* moves; all moves are tried."""
    return any(mates(board, move, moves) for move in list(board.legal_moves))


def mates(board: chess.Board, move: chess.Move, moves: int) -> bool:
    """Whether *move* forces mate in at most *moves* moves, itself counted."""
    board.push(move)
    try:
        if board.is_checkmate():
            return True
        if moves == 1 or not any(board.legal_moves):
            return False
        for reply in list(board.legal_moves):
            board.push(reply)
            holds = forced_mate(board, moves - 1)
            board.pop()
            if not holds:
                return False
        return True
    finally:
        board.pop()


def keys(board: chess.Board, moves: int) -> list[str]:
    """The first moves that force mate in at most *moves* moves, in SAN."""
    return [board.san(move) for move in list(board.legal_moves) if mates(board, move, moves)]


@cache
def pawn_ending() -> frozenset[tuple[int, int, int, bool]]:
    """Won positions of White's king and pawn against king: (white king, pawn, black king, White to move)."""
    won: set[tuple[int, int, int, bool]] = set()
    kings = [set(chess.SquareSet(chess.BB_KING_ATTACKS[square])) for square in range(64)]
    places = [
        (white, pawn, black)
        for pawn in range(8, 56)
        for white in range(64)
        for black in range(64)
        if len({white, pawn, black}) == 3 and black not in kings[white]
    ]
    guarded = [set(chess.SquareSet(chess.BB_PAWN_ATTACKS[chess.WHITE][square])) for square in range(64)]
    growing = True
    while growing:
        growing = False
        for white, pawn, black in places:
            if (white, pawn, black, True) not in won and black not in guarded[pawn]:
                ahead = pawn + 8
                steps = [(square, pawn, black) for square in kings[white] - kings[black] - {pawn, black}]
                queens = (
                    ahead > 55 and ahead not in (white, black) and (ahead not in kings[black] or ahead in kings[white])
                )
                if ahead <= 55 and ahead not in (white, black):
                    steps.append((white, ahead, black))
                    if pawn < 16 and ahead + 8 not in (white, black):
                        steps.append((white, ahead + 8, black))
                if queens or any((*step, False) in won for step in steps):
                    won.add((white, pawn, black, True))
                    growing = True
            if (white, pawn, black, False) not in won:
                flights = kings[black] - kings[white] - guarded[pawn]
                if pawn in flights and pawn not in kings[white]:
                    continue
                flights -= {pawn}
                if flights and all((white, pawn, flight, True) in won for flight in flights):
                    won.add((white, pawn, black, False))
                    growing = True
    return frozenset(won)


def pawn_ending_is_won(board: chess.Board) -> bool:
    """Whether the side with the pawn wins its king-and-pawn ending."""
    pawns = board.pieces(chess.PAWN, chess.WHITE)
    if not pawns:
        board = board.mirror()
        pawns = board.pieces(chess.PAWN, chess.WHITE)
    if len(pawns) != 1 or chess.popcount(board.occupied) != 3:
        raise ValueError("not king and pawn against king")
    white, black = board.king(chess.WHITE), board.king(chess.BLACK)
    assert white is not None
    assert black is not None
    return (white, pawns.pop(), black, board.turn) in pawn_ending()


def files_of(board: chess.Board, side: chess.Color) -> list[int]:
    return [chess.square_file(square) for square in board.pieces(chess.PAWN, side)]


def is_passed(board: chess.Board, square: int) -> bool:
    side = board.color_at(square)
    if board.piece_type_at(square) != chess.PAWN:
        return False
    file, rank = chess.square_file(square), chess.square_rank(square)
    return not any(
        abs(chess.square_file(other) - file) <= 1
        and (chess.square_rank(other) > rank if side else chess.square_rank(other) < rank)
        for other in board.pieces(chess.PAWN, not side)
    )


def islands(board: chess.Board, side: chess.Color) -> int:
    files = set(files_of(board, side))
    return sum(file - 1 not in files for file in files)
