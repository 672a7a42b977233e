"""Who is up what."""

import pytest

from studyboard.reading.findings import Verdict
from studyboard.reading.read_through import judge

MIDDLEGAME = "r1bq1rk1/pp2bppp/2n1pn2/3p4/2PP4/2N2N2/PP2BPPP/R1BQ1RK1 w - - 0 9"

KINDS = ("material", "number")


def _said(row):
    return row if isinstance(row, tuple) else (row, MIDDLEGAME)


@pytest.mark.parametrize(
    "row",
    [
        "Material is equal.",
        "White has seven pawns.",
        ("White is a pawn up.", "6k1/5ppp/8/8/8/8/4PPPP/6K1 w - - 0 1"),
        ("Black, a pawn down, plays on.", "6k1/5ppp/8/8/8/8/4PPPP/6K1 w - - 0 1"),
        ("White is the exchange up.", "6k1/5ppp/5n2/8/8/8/5PPP/R5K1 w - - 0 1"),
        ("White has three pawns for the bishop.", "6k1/8/5b2/8/8/8/5PPP/6K1 w - - 0 1"),
        ("Black has the bishop pair.", "r1bq1rk1/pp2bppp/2n1pn2/3p4/2PP4/2N2N2/PP2BPPP/R1BQ1RK1 w - - 0 9"),
        ("It is an ending with opposite coloured bishops.", "6k1/8/3b4/8/2B5/8/8/6K1 w - - 0 1"),
        ("The queens are off.", "6k1/8/3b4/8/2B5/8/8/6K1 w - - 0 1"),
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
        "Black is a pawn up.",
        "White has six pawns.",
        ("White is the exchange up.", "6k1/5ppp/5n2/8/8/8/4PPPP/6K1 w - - 0 1"),
        ("White is two pawns up.", "6k1/5ppp/8/8/8/8/4PPPP/6K1 w - - 0 1"),
        ("Material is level.", "6k1/5ppp/8/8/8/8/4PPPP/6K1 w - - 0 1"),
        ("White has the bishop pair.", "6k1/8/3b4/8/2B5/8/8/6K1 w - - 0 1"),
        ("The bishops are of the same colour, bishops of the same colour.", "6k1/8/3b4/8/2B5/8/8/6K1 w - - 0 1"),
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
        "White would be a pawn up.",
        "With the queens off, this would be dull.",
        "If Black takes, he is a pawn up.",
    ],
)
def test_what_is_not_said_of_the_position_is_left_alone(row):
    text, fen = _said(row)
    assert not judge(fen, text).queries


def test_a_list_that_leaves_some_out_confirms_no_number():
    found = judge(MIDDLEGAME, "White has six pawns, on a2, b2, c4, d4, f2 and g2.")
    assert not any("six pawns" in finding.quote for finding in found.confirmed)


def test_the_reason_counts_a_wing_as_the_words_do():
    fen = "4k3/4pppp/8/8/8/8/5PPP/4K3 w - - 0 1"
    (finding,) = judge(fen, "It is three pawns against three on the kingside.").confirmed
    where = "on the kingside without the e-file"
    assert finding.why == f"White has three pawns {where}. Black has three pawns {where}."
