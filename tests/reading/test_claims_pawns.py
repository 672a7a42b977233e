"""Pawn structure and files."""

import pytest

from studyboard.reading.findings import Verdict
from studyboard.reading.read_through import judge

MIDDLEGAME = "r1bq1rk1/pp2bppp/2n1pn2/3p4/2PP4/2N2N2/PP2BPPP/R1BQ1RK1 w - - 0 9"

KINDS = ("pawns",)


def _said(row):
    return row if isinstance(row, tuple) else (row, MIDDLEGAME)


@pytest.mark.parametrize(
    "row",
    [
        ("The d-pawn is isolated.", "6k1/pp3ppp/4p3/8/3P4/8/PP3PPP/6K1 w - - 0 1"),
        ("White has a passed pawn.", "6k1/8/8/3P4/8/8/8/6K1 w - - 0 1"),
        ("Black has two pawn islands.", "6k1/pp3ppp/4p3/8/3P4/8/PP3PPP/6K1 w - - 0 1"),
        ("White has doubled pawns on the c-file.", "6k1/8/8/8/8/2P5/2P5/6K1 w - - 0 1"),
        ("The c-file is open.", "6k1/pp3ppp/4p3/8/3P4/8/PP3PPP/6K1 w - - 0 1"),
        ("White has a majority on the queenside.", "6k1/pp3ppp/8/8/8/8/PPP2PP1/6K1 w - - 0 1"),
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
        "The d-file is open.",
        "White has doubled pawns on the c-file.",
        ("The pawn on d4 is passed.", "6k1/pp3ppp/4p3/8/3P4/8/PP3PPP/6K1 w - - 0 1"),
        ("White has two pawn islands, two islands.", "6k1/8/8/8/8/2P5/2P5/6K1 w - - 0 1"),
        ("The pawn on c2 is isolated.", "6k1/8/8/8/8/3P4/2P5/6K1 w - - 0 1"),
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
        "White would like a passed pawn.",
        "If White takes on d5, the pawn on d5 will be isolated.",
    ],
)
def test_what_is_not_said_of_the_position_is_left_alone(row):
    text, fen = _said(row)
    assert not judge(fen, text).queries
