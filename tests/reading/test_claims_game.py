"""Whose move it is, and who wins."""

import pytest

from studyboard.reading.findings import Verdict
from studyboard.reading.read_through import judge

MIDDLEGAME = "r1bq1rk1/pp2bppp/2n1pn2/3p4/2PP4/2N2N2/PP2BPPP/R1BQ1RK1 w - - 0 9"

KINDS = ("turn", "result", "number")


def _said(row):
    return row if isinstance(row, tuple) else (row, MIDDLEGAME)


@pytest.mark.parametrize(
    "row",
    [
        "White to move.",
        "It's White's turn.",
        ("White is winning.", "6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - 0 1"),
        ("That's a draw.", "7k/8/6K1/8/8/8/8/5B2 b - - 0 1"),
        "On move nine White thinks.",
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
        "Black to move.",
        ("Black is winning.", "6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - 0 1"),
        ("That's a draw.", "6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1"),
        "On move eleven White thinks.",
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
        "White played the same on move thirty last year.",
        "White is slightly better.",
    ],
)
def test_what_is_not_said_of_the_position_is_left_alone(row):
    text, fen = _said(row)
    assert not judge(fen, text).queries
