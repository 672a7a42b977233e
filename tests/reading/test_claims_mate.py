"""Mate, mate in a number of moves, threats of mate, stalemate."""

import pytest

from studyboard.board.work import WorkCancelledError
from studyboard.model.study import Study
from studyboard.notation.talk_file import read_talk
from studyboard.reading.findings import Verdict
from studyboard.reading.read_through import judge, read_through

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


ITALIAN = "r1bqkb1r/ppp2ppp/2np1n2/4p1B1/2B1P3/5N2/PPPP1PPP/RN1QK2R {} KQkq - 0 5"


def test_a_search_is_left_in_the_middle_when_nobody_wants_it_any_more():
    study = Study({"SetUp": "1", "FEN": ITALIAN.format("w")})
    study = read_talk('[[node]]\npath = ""\nspoken = "White mates in four."\n', study)
    asked = []

    def cancelled():
        asked.append(True)
        return len(asked) > 3

    with pytest.raises(WorkCancelledError):
        read_through(study, cancelled=cancelled)
    assert len(asked) < 7


def test_a_search_that_takes_too_long_while_typing_is_left_unchecked():
    found = judge(ITALIAN.format("w"), "White mates in four.", deep=False)
    assert (found.queries, found.confirmed) == ((), ())
    assert found.unchecked


def test_mate_in_so_many_is_looked_for_on_the_side_that_is_named():
    lone = "6k1/5ppp/8/8/8/8/5PPP/3R2K1 {} - - 0 1"
    assert judge(lone.format("w"), "White mates in one.").confirmed
    assert judge(lone.format("w"), "Black mates in one.").queries
    assert not judge(lone.format("b"), "White mates in one.").queries
    assert judge(ITALIAN.format("b"), "White mates in two.").queries[0].why.startswith("White has no mate in two")
