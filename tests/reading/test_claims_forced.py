"""Castling, only moves, moves that have to be played."""

import pytest

from studyboard.reading.findings import Verdict
from studyboard.reading.read_through import judge

MIDDLEGAME = "r1bq1rk1/pp2bppp/2n1pn2/3p4/2PP4/2N2N2/PP2BPPP/R1BQ1RK1 w - - 0 9"

KINDS = ("castling", "forced")


def _said(row):
    return row if isinstance(row, tuple) else (row, MIDDLEGAME)


@pytest.mark.parametrize(
    "row",
    [
        ("White can castle kingside.", "4k3/8/8/8/8/8/8/4K2R w K - 0 1"),
        ("Black can no longer castle.", "4k3/8/8/8/8/8/8/4K2R w K - 0 1"),
        ("Black has only one legal move.", "r5Qk/6pp/7N/8/8/8/6PP/6K1 b - - 0 1"),
        "White can no longer castle.",
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
        "White can castle kingside.",
        ("Black can no longer castle.", "4k2r/8/8/8/8/8/8/4K2R b Kk - 0 1"),
        ("White has only one legal move.", "6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1"),
        ("White has to take.", "6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1"),
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
        "That is probably White's only move here.",
        "He could castle next.",
    ],
)
def test_what_is_not_said_of_the_position_is_left_alone(row):
    text, fen = _said(row)
    assert not judge(fen, text).queries
