"""Positions and talks that the tests of the read-through speak about."""

import pytest

from studyboard.notation.pgn_reader import read_games
from studyboard.notation.talk_file import read_talk
from studyboard.reading.findings import Verdict
from studyboard.reading.read_through import judge

#: A quiet middlegame, White to move: everything in it is easy to see.
MIDDLEGAME = "r1bq1rk1/pp2bppp/2n1pn2/3p4/2PP4/2N2N2/PP2BPPP/R1BQ1RK1 w - - 0 9"


@pytest.fixture
def verdict():
    """Which verdicts a text gets beside a position, as a set."""

    def of(text, fen=MIDDLEGAME, kind=None):
        found = judge(fen, text)
        everything = [*found.queries, *found.confirmed, *found.unchecked]
        return {finding.verdict for finding in everything if kind is None or finding.kind == kind}

    return of


@pytest.fixture
def told():
    """A study made from moves and lines: path of each node, and what is said there."""

    def make(pgn, *lines, headers="", **nodes):
        study = next(read_games(f"{headers}\n\n{pgn} *")).study
        toml = "\n".join(
            f"[[node]]\npath = {path!r}\nspoken = {spoken!r}\n{extra}"
            for path, spoken, *rest in lines
            for extra in (rest or [""])
        )
        return read_talk(toml, study)

    return make


CONFIRMED, CONTRADICTED, UNDECIDED = Verdict.CONFIRMED, Verdict.CONTRADICTED, Verdict.UNDECIDED
