"""Published problems, studies and traps come out as they are known to."""

import chess
import pytest

from studyboard.board.mates import mate_in, mating_moves
from studyboard.board.rights import draw_by_rule

# Morphy's problem and Lucena's smothered mate of 1497 as they stand in the collections, with their known first moves.
# Others are from memory; that each has one solution is shown by a complete search.
PROBLEMS = (
    ("Morphy", "kbK5/pp6/1P6/8/8/8/8/R7 w - - 0 1", 2, "Ra6"),
    ("smothered mate, Lucena 1497", "r6k/6pp/7N/8/2Q5/8/6PP/6K1 w - - 0 1", 2, "Qg8+"),
    ("back rank, textbook", "6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1", 1, "Ra8#"),
    ("smothered mate from the queen's side, textbook, from memory", "5r1k/6pp/8/6N1/2Q5/8/8/6K1 w - - 0 1", 4, "Nf7+"),
    ("Arabian mate, textbook, from memory", "7k/R7/5N2/8/8/8/8/6K1 w - - 0 1", 1, "Rh7#"),
    ("Boden's mate, textbook, from memory", "2kr4/3n4/2p5/8/5B2/8/4B3/6K1 w - - 0 1", 1, "Ba6#"),
    ("Blackburne's mate, textbook, from memory", "5rk1/7p/8/6N1/8/8/1BB5/6K1 w - - 0 1", 1, "Bxh7#"),
    ("Stamma's mate, from memory", "8/8/8/8/3N4/8/p1K5/k7 w - - 0 1", 1, "Nb3#"),
    ("epaulette, textbook, from memory", "3rkr2/8/5Q2/8/8/8/8/6K1 w - - 0 1", 1, "Qe6#"),
)


@pytest.mark.parametrize(("name", "fen", "moves", "key"), PROBLEMS)
def test_the_only_first_move_is_found(name, fen, moves, key):
    board = chess.Board(fen)
    mate = mate_in(board, moves)
    assert mate is not None, name
    assert mate.moves == moves
    assert [board.san(move) for move in mating_moves(board, moves)] == [key]
    for move in mate.line:
        assert board.is_legal(move)
        board.push(move)
    assert board.is_checkmate()


def test_legals_mate_is_mate_and_its_last_move_the_only_one():
    # Légal: 1.e4 e5 2.Nf3 d6 3.Bc4 Bg4 4.Nc3 g6 5.Nxe5 Bxd1 6.Bxf7+ Ke7 7.Nd5#.
    board = chess.Board()
    for san in ["e4", "e5", "Nf3", "d6", "Bc4", "Bg4", "Nc3", "g6", "Nxe5", "Bxd1"]:
        board.push_san(san)
    mate = mate_in(board, 2, checks_only=True)
    assert board.variation_san(list(mate.line)) == "6. Bxf7+ Ke7 7. Nd5#"
    assert [board.san(move) for move in mating_moves(board, 2)] == ["Bxf7+"]


def test_saavedras_queen_is_stalemate_and_his_rook_mates():
    # Saavedra 1895: 6.c8=Q Rc4+ 7.Qxc4 is stalemate, 6.c8=R Ra4 7.Kb3 wins.
    board = chess.Board("8/8/1KP5/3r4/8/8/8/k7 w - - 0 1")
    for san in ["c7", "Rd6+", "Kb5", "Rd5+", "Kb4", "Rd4+", "Kb3", "Rd3+", "Kc2", "Rd4"]:
        board.push_san(san)
    queen = board.copy()
    for san in ["c8=Q", "Rc4+", "Qxc4"]:
        queen.push_san(san)
    assert "stalemated" in draw_by_rule(queen)
    for san in ["c8=R", "Ra4", "Kb3"]:
        board.push_san(san)
    # White attacks the rook and threatens mate on c1; no answer meets both.
    for answer in list(board.legal_moves):
        after = board.copy()
        after.push(answer)
        takes = any(after.piece_type_at(move.to_square) == chess.ROOK for move in after.generate_legal_captures())
        assert takes or mating_moves(after, 1), board.san(answer)


@pytest.mark.parametrize(
    ("depth", "nodes"),
    [(1, 20), (2, 400), (3, 8902)],  # OEIS A048987
)
def test_perft_of_the_first_position(depth, nodes):
    assert _perft(chess.Board(), depth) == nodes


@pytest.mark.parametrize(
    ("fen", "depth", "nodes"),
    [
        # The positions with all special moves that move generators are checked with, counts from memory.
        ("r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R w KQkq - 0 1", 2, 2039),
        ("8/2p5/3p4/KP5r/1R3p1k/8/4P1P1/8 w - - 0 1", 3, 2812),
    ],
)
def test_perft_where_castling_promotion_and_en_passant_meet(fen, depth, nodes):
    assert _perft(chess.Board(fen), depth) == nodes


def _perft(board, depth):
    if depth == 0:
        return 1
    total = 0
    for move in board.legal_moves:
        board.push(move)
        total += _perft(board, depth - 1)
        board.pop()
    return total
