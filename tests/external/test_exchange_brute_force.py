"""Exchanges and pins agree with counting everything out, on random positions.

The definitions are those of the trade (common practice): an exchange is a series of captures on one square that either
side may stop; a pinned piece is one whose removal would leave its king attacked along a line.
"""

import chess
from hypothesis import given, settings
from hypothesis import strategies as st

from studyboard.board.exchange import PIECE_VALUES, best_exchange
from studyboard.board.facts import pins

_PLAYED = st.lists(st.integers(0, 500), min_size=4, max_size=90)


def _position(choices):
    """A position reached by legal moves, captures preferred now and then so that boards get open."""
    board = chess.Board()
    for choice in choices:
        moves = list(board.legal_moves)
        if not moves:
            break
        captures = [move for move in moves if board.is_capture(move)]
        pool = captures if captures and choice % 3 == 0 else moves
        board.push(pool[choice % len(pool)])
    return board


def _brute(board, square):
    """The best that the side to move gets by capturing on *square* or not, counted by playing every capture out."""
    best = 0
    for move in board.legal_moves:
        if move.to_square != square or not board.is_capture(move) or board.is_en_passant(move):
            continue
        won = PIECE_VALUES[board.piece_type_at(square)]
        if move.promotion:
            won += PIECE_VALUES[move.promotion] - PIECE_VALUES[chess.PAWN]
        after = board.copy(stack=False)
        after.push(move)
        best = max(best, won - _brute(after, square))
    return best


@settings(max_examples=40, deadline=None)
@given(_PLAYED)
def test_exchanges_are_exact(choices):
    board = _position(choices)
    for square in chess.scan_forward(board.occupied_co[not board.turn] & ~board.kings):
        if board.ep_square is not None and board.piece_type_at(square) == chess.PAWN:
            continue
        if chess.popcount(board.attackers_mask(True, square) | board.attackers_mask(False, square)) > 6:
            continue
        assert best_exchange(board, square).gain == _brute(board, square), (board.fen(), chess.square_name(square))


@settings(max_examples=60, deadline=None)
@given(_PLAYED)
def test_pins_are_exactly_the_pieces_whose_removal_gives_check_along_a_line(choices):
    board = _position(choices)
    found = {(pin.square, pin.king) for pin in pins(board)}
    expected = set()
    for colour in chess.COLORS:
        king = board.king(colour)
        before = board.attackers_mask(not colour, king)
        for square in chess.scan_forward(board.occupied_co[colour] & ~chess.BB_SQUARES[king]):
            without = board.copy(stack=False)
            without.remove_piece_at(square)
            if without.attackers_mask(not colour, king) & ~before:
                expected.add((square, king))
    assert found == expected, board.fen()
