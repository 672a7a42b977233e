"""A study that begins with a position says what is wrong with one that cannot be played on."""

from __future__ import annotations

import pytest

from studyboard.model.errors import StudyboardError
from studyboard.model.position_study import position_study
from studyboard.model.positions import Positions


def test_a_position_becomes_a_study_that_begins_there():
    study = position_study("  4k3/8/8/8/8/8/4P3/4K3   b - - 5 31 ")
    assert study.headers["FEN"] == "4k3/8/8/8/8/8/4P3/4K3 b - - 5 31"
    assert study.headers["SetUp"] == "1"
    assert Positions(study).board(study.root).fullmove_number == 31


@pytest.mark.parametrize(
    ("fen", "reason"),
    [
        ("8/8/8/8/8/8/8/8 w - - 0 1", "the board is empty"),
        ("4k3/8/8/8/8/8/8/8 w - - 0 1", "there is no white king"),
        ("8/8/8/8/8/8/8/4K3 w - - 0 1", "there is no black king"),
        ("4k2k/8/8/8/8/8/8/4K3 w - - 0 1", "too many kings"),
        ("4k2P/8/8/8/8/8/8/4K3 w - - 0 1", "a pawn stands on the first or the last rank"),
        ("4k3/8/8/8/8/8/8/4RK2 w - - 0 1", "the side that is not to move stands in check"),
        ("4k3/8/8/8/8/8/8/4K3 w KQ - 0 1", "the castling rights do not fit"),
        ("hello", "holds no position"),
    ],
)
def test_what_is_wrong_with_a_position_is_said(fen, reason):
    with pytest.raises(StudyboardError, match=reason):
        position_study(fen)
