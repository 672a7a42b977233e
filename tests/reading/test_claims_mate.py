"""Mate, mate in a number of moves, threats of mate, stalemate."""

import pytest

from studyboard.reading.findings import Verdict
from studyboard.reading.read_through import judge

MIDDLEGAME = "r1bq1rk1/pp2bppp/2n1pn2/3p4/2PP4/2N2N2/PP2BPPP/R1BQ1RK1 w - - 0 9"

KINDS = ("mate", "result")


def _said(row):
    return row if isinstance(row, tuple) else (row, MIDDLEGAME)


@pytest.mark.parametrize(
    "row",
    [
        ("Mate in one.", "6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1"),
        ("White to play, mate in two.", "kbK5/pp6/1P6/8/8/8/8/R7 w - - 0 1"),
        ("White threatens mate on a8.", "6k1/5ppp/8/8/8/8/8/R5K1 b - - 0 1"),
        ("Rook a8 is mate.", "6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1"),
        ("It is stalemate.", "7k/5Q2/6K1/8/8/8/8/8 b - - 0 1"),
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
        "White threatens mate on h7.",
        "White has mate in two.",
        ("Rook a8 is mate.", "6k1/5pp1/8/8/8/8/8/R5K1 w - - 0 1"),
        ("Mate in two.", "6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1"),
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
        "Nobody gets mated tonight.",
        "White would love to give mate on h7.",
        "Who is going to be mated?",
    ],
)
def test_what_is_not_said_of_the_position_is_left_alone(row):
    text, fen = _said(row)
    assert not judge(fen, text).queries
