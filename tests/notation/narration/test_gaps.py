"""A move that was left out does not spoil the rest of the talk."""

import chess

from studyboard.notation.narration.reading import read_narration


def test_the_moves_behind_a_gap_are_read() -> None:
    read = read_narration("e4 e5 knight f3 bishop b5 a6 bishop a4 knight f6 castles bishop e7 rook e1")
    assert read.main_line[:3] == ("e4", "e5", "Nf3")
    assert read.main_line[4:] == ("Bb5", "a6", "Ba4", "Nf6", "O-O", "Be7", "Re1")
    assert read.unread == ()
    board = chess.Board()
    for san in read.main_line:
        board.push_san(san)
    assert [move.said for move in read.moves].count(False) == 1
