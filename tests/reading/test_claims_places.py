"""Where pieces stand, what they block, and where they can go."""

import pytest

from studyboard.reading.findings import Verdict
from studyboard.reading.read_through import judge

MIDDLEGAME = "r1bq1rk1/pp2bppp/2n1pn2/3p4/2PP4/2N2N2/PP2BPPP/R1BQ1RK1 w - - 0 9"

KINDS = ("square", "attack")


def _said(row):
    return row if isinstance(row, tuple) else (row, MIDDLEGAME)


@pytest.mark.parametrize(
    "row",
    [
        "White's dark-squared bishop stands on c1.",
        "The bishop on c1 can go to g5.",
        "The bishop on e2 blocks the e-file.",
        ("The king can go to f8 or h8.", "6k1/5ppp/8/8/8/8/8/R5K1 b - - 0 1"),
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
        "Black's dark-squared bishop stands on d6.",
        "The bishop on c1 can go to h5.",
        "The queen on d1 blocks the e-file.",
    ],
)
def test_what_is_false_is_queried(row):
    text, fen = _said(row)
    found = judge(fen, text)
    assert found.queries
    assert found.queries[0].verdict is Verdict.CONTRADICTED
    assert found.queries[0].why
    assert found.queries[0].do
