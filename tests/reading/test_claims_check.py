"""Checks, double checks, discovered checks."""

import pytest

from studyboard.reading.findings import Verdict
from studyboard.reading.read_through import judge

MIDDLEGAME = "r1bq1rk1/pp2bppp/2n1pn2/3p4/2PP4/2N2N2/PP2BPPP/R1BQ1RK1 w - - 0 9"

KINDS = ("check",)


def _said(row):
    return row if isinstance(row, tuple) else (row, MIDDLEGAME)


@pytest.mark.parametrize(
    "row",
    [
        ("The king is in check.", "4k3/8/8/8/8/8/4r3/4K3 w - - 0 1"),
        ("It's double check.", "4k3/8/8/8/7b/8/4r3/4K3 w - - 0 1"),
        ("Rook a8 is check.", "6k1/5pp1/8/8/8/8/8/R5K1 w - - 0 1"),
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
        "White's king is in check.",
        ("Rook a7 is check.", "6k1/5pp1/8/8/8/8/8/R5K1 w - - 0 1"),
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
        "Let's check what happens.",
        "White can give a check later.",
        "A check on h7 is always in the air.",
        "There are no checks.",
    ],
)
def test_what_is_not_said_of_the_position_is_left_alone(row):
    text, fen = _said(row)
    assert not judge(fen, text).queries
