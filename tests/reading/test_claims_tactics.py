"""Pins, forks, skewers and trapped pieces."""

import pytest

from studyboard.reading.findings import Verdict
from studyboard.reading.read_through import judge

MIDDLEGAME = "r1bq1rk1/pp2bppp/2n1pn2/3p4/2PP4/2N2N2/PP2BPPP/R1BQ1RK1 w - - 0 9"

KINDS = ("pin", "fork", "trapped")


def _said(row):
    return row if isinstance(row, tuple) else (row, MIDDLEGAME)


@pytest.mark.parametrize(
    "row",
    [
        ("The knight on f6 is pinned to the king by the bishop on g5.", "3q4/4k3/5n2/6B1/8/8/8/6K1 w - - 0 1"),
        ("The knight forks the king and the rook.", "r3k3/2N5/8/8/8/8/8/4K3 b - - 0 1"),
        ("The bishop skewers the king and the rook.", "7r/6k1/8/8/8/8/8/B5K1 b - - 0 1"),
        ("The bishop on a7 is trapped.", "2r3k1/B1p5/1p6/8/8/8/8/4K3 b - - 0 1"),
        ("The king has exactly one square.", "7k/R7/8/8/8/8/8/6K1 b - - 0 1"),
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
        "The knight on f6 is pinned.",
        "The knight on c3 is pinned to the king.",
        ("The king has three squares.", "7k/R7/8/8/8/8/8/6K1 b - - 0 1"),
        ("The bishop on c1 is trapped.", "6k1/8/8/8/8/8/8/2B3K1 w - - 0 1"),
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
        "The knight would be pinned after bishop g5.",
        "White wants a fork on c7.",
    ],
)
def test_what_is_not_said_of_the_position_is_left_alone(row):
    text, fen = _said(row)
    assert not judge(fen, text).queries
