from __future__ import annotations

import pytest

from studyboard.notation.spoken_moves import written


@pytest.mark.parametrize(
    ("said", "move"),
    [
        ("knight f3", "Nf3"),
        ("knight to f three", "Nf3"),
        ("knight takes e five", "Nxe5"),
        ("knight b d two", "Nbd2"),
        ("rook one e three", "R1e3"),
        ("a takes b3", "axb3"),
        ("pawn takes b3", "Pxb3"),
        ("e eight promotes to a queen", "e8=Q"),
        ("queen takes h7 mate", "Qxh7"),
        ("castles", "O-O"),
        ("castles king-side", "O-O"),
        ("castles long", "O-O-O"),
        ("castling queenside", "O-O-O"),
        ("Nf3", "Nf3"),
        ("the knight on f3 is pinned", "the knight on f3 is pinned"),
        ("castles into it", "castles into it"),
        ("knight", "knight"),
        ("", ""),
    ],
)
def test_a_move_as_it_is_said_is_written_down_and_other_words_stay(said: str, move: str) -> None:
    assert written(said) == move
