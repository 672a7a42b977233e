"""Positions of a talk: which legal moves some words can mean there."""

import random
from collections.abc import Iterator

import chess
import pytest

from studyboard.notation.narration.forms import Form, Phrase
from studyboard.notation.narration.place import Place


def _positions(games: int) -> Iterator[chess.Board]:
    chance = random.Random(4)
    for _ in range(games):
        board = chess.Board()
        while not board.is_game_over() and board.ply() < 120:
            board.push(chance.choice(list(board.legal_moves)))
            if chance.random() < 0.2:
                yield board.copy(stack=False)


def _meant(board: chess.Board, form: Form) -> list[chess.Move]:
    _, fits = Place(0, None, None, board).fits(Phrase(0, 1, 0, form, 0.0))
    return sorted((move for move, _ in fits), key=str)


def _legal(board: chess.Board, piece: int | None, to: int | None, *, capture: bool = False) -> list[chess.Move]:
    return sorted(
        (
            move
            for move in board.legal_moves
            if not board.is_castling(move)
            and (piece is None or board.piece_type_at(move.from_square) == piece)
            and (to is None or move.to_square == to)
            and (not capture or board.is_capture(move))
        ),
        key=str,
    )


@pytest.mark.parametrize("piece", [None, *chess.PIECE_TYPES])
def test_a_piece_and_a_square_mean_every_legal_move_of_such_a_piece_to_it(piece):
    for board in _positions(6):
        for square in chess.SQUARES:
            assert _meant(board, Form(piece=piece, to=square)) == _legal(board, piece, square), board.fen()


@pytest.mark.parametrize("piece", [None, *chess.PIECE_TYPES])
def test_a_capture_without_a_square_means_every_legal_capture(piece):
    for board in _positions(12):
        meant = _meant(board, Form(piece=piece, capture=True))
        assert meant == _legal(board, piece, None, capture=True), board.fen()


def test_castling_means_the_castling_moves_that_are_legal():
    for board in _positions(20):
        castling = [move for move in board.legal_moves if board.is_castling(move)]
        assert _meant(board, Form(castles="castles")) == sorted(castling, key=str)


def test_castling_to_one_side_means_no_other():
    board = chess.Board("r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 0 1")
    assert _meant(board, Form(castles="long")) == [chess.Move.from_uci("e1c1")]


def test_the_words_for_the_last_move_cost_what_they_cost_as_that_move():
    start = Place(0, None, None, chess.Board())
    after = Place(1, start, chess.Move.from_uci("g1f3"), None)
    said = Phrase(0, 2, 1, Form(piece=chess.KNIGHT, to=chess.F3), 0.0, 5)
    assert after.fits_last(said) == (0.0, start.fits(said)[1][0][1])
    assert after.fits_last(Phrase(0, 2, 1, Form(piece=chess.KNIGHT, to=chess.C3), 0.0, 6)) is None
