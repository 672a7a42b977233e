"""Who attacks, guards and looks at what."""

import pytest

from studyboard.reading.findings import Verdict
from studyboard.reading.read_through import judge

MIDDLEGAME = "r1bq1rk1/pp2bppp/2n1pn2/3p4/2PP4/2N2N2/PP2BPPP/R1BQ1RK1 w - - 0 9"

KINDS = ("attack", "hanging")


def _said(row):
    return row if isinstance(row, tuple) else (row, MIDDLEGAME)


@pytest.mark.parametrize(
    "row",
    [
        "The c-pawn attacks the pawn on d5.",
        "The knight on c3 defends d5.",
        "Black's knight on f6 guards d5 and e4.",
        "The pawn on d4 is protected twice, by the knight and by the queen.",
        "The bishop on e7 looks at b4.",
        "The queen on d8 protects the pawn on d5.",
        "Black's queen is not attacked.",
        ("The rook on a5 is hanging.", "6k1/8/8/r7/8/8/8/Q5K1 w - - 0 1"),
        ("Nothing protects the rook on a5.", "6k1/8/8/r7/8/8/8/Q5K1 w - - 0 1"),
    ],
)
def test_what_is_true_is_confirmed(row):
    text, fen = _said(row)
    found = judge(fen, text)
    assert not found.queries
    assert any(finding.kind in KINDS for finding in found.confirmed)


@pytest.mark.parametrize(
    "row",
    [
        "White's knight on c3 attacks the pawn on e6.",
        "The bishop on e2 attacks the knight on f6.",
        "The pawn on d5 is attacked three times.",
        "White's queen attacks the knight on c6.",
        "The pawn on c4 is hanging.",
        ("The queen attacks the pawn on h7.", "6k1/7p/8/8/8/8/8/Q5K1 w - - 0 1"),
        ("The rook on a5 is protected by the king.", "6k1/8/8/r7/8/8/8/Q5K1 w - - 0 1"),
    ],
)
def test_what_is_false_is_queried(row):
    text, fen = _said(row)
    found = judge(fen, text)
    assert found.queries
    assert found.queries[0].verdict is Verdict.CONTRADICTED
    assert found.queries[0].why
    assert found.queries[0].do


@pytest.mark.parametrize(
    "row",
    [
        "If White takes on d5, the pawn on d5 will be attacked by the bishop.",
        "The plan is knight e5, attacking f7.",
        "White's pawn on c4 is hanging, or is it?",
        "It attacks the pawn.",
    ],
)
def test_what_is_not_said_of_the_position_is_left_alone(row):
    text, fen = _said(row)
    assert not judge(fen, text).queries


def test_a_king_that_cannot_go_somewhere_is_not_what_is_covered():
    board = "4k3/8/8/8/8/8/4r3/4K2R w - - 0 1"
    covered = {
        square: [f.quote for f in judge(board, f"The king cannot go to {square}, as the rook covers it.").confirmed]
        for square in ("d1", "d2")
    }
    assert "covers it" in covered["d2"]
    assert "covers it" not in covered["d1"]
