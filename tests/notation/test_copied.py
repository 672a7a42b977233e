"""What other programs get of chosen rows."""

from __future__ import annotations

import io
from dataclasses import replace

import chess
import chess.pgn
import pytest

from studyboard.model.positions import Positions
from studyboard.model.script import FreeLine, Part, SpokenLine
from studyboard.model.study import Study
from studyboard.notation.copied import rows_as_fen, rows_as_pgn, spoken_words
from studyboard.notation.pgn_reader import read_games

GAME = '[White "A"]\n[Result "1-0"]\n\n1. e4 e5 (1... c5 2. Nf3 (2. c3 d5) 2... d6) 2. Nf3 Nc6 1-0'


@pytest.fixture
def study() -> Study:
    study = next(read_games(GAME)).study
    for san, text in (("e5", "Black answers."), ("d6", "Solid."), ("Nc6", "The knight comes out.")):
        node = node_of(study, san)
        study.nodes[node] = replace(study.nodes[node], spoken=SpokenLine(text))
    side = node_of(study, "c5")
    study.nodes[side] = replace(study.nodes[side], name="The wing")
    study.lines[Part.GREETING] = FreeLine(SpokenLine("Good evening."))
    return study


def node_of(study: Study, san: str) -> int:
    positions = Positions(study)
    return next(node for node in study.nodes if positions.san(node) == san)


def test_words_stand_below_the_moves_that_lead_to_them(study: Study) -> None:
    assert spoken_words(study, Positions(study), [Part.GREETING, *study.nodes]) == (
        "Good evening.\n\n"
        "1. e4 e5\nBlack answers.\n\n"
        "The wing:\n\n"
        "1... c5 2. Nf3\n\n"
        "2. c3 d5\n\n"
        "2... d6\nSolid.\n\n"
        "2. Nf3 Nc6\nThe knight comes out."
    )


def test_of_one_row_all_after_it_is_copied_as_a_game_that_others_read(study: Study) -> None:
    text = rows_as_pgn(study, [node_of(study, "c5")])
    game = chess.pgn.read_game(io.StringIO(text))
    assert game is not None
    assert not game.errors
    assert [move.uci() for move in game.mainline_moves()] == ["e2e4", "c7c5", "g1f3", "d7d6"]
    assert sum(1 for node in game.mainline() for _ in node.variations[1:]) == 1, "with the side-line in it"
    assert game.headers["White"] == "A"
    assert game.headers["Result"] == "*", "the game went another way"
    assert "Solid." in text
    assert "Good evening." not in text


def test_of_several_rows_only_those_and_the_way_there(study: Study) -> None:
    text = rows_as_pgn(study, [node_of(study, "c3"), node_of(study, "d5"), Part.GREETING])
    game = chess.pgn.read_game(io.StringIO(text))
    assert game is not None
    assert [move.uci() for move in game.mainline_moves()] == ["e2e4", "c7c5", "c2c3", "d7d5"]
    assert all(len(node.variations) <= 1 for node in (game, *game.mainline()))
    assert "Good evening." in text


def test_the_whole_game_keeps_its_result(study: Study) -> None:
    assert '[Result "1-0"]' in rows_as_pgn(study, [study.root])
    assert rows_as_pgn(study, [node_of(study, "e5")]).rstrip().endswith("1-0")


def test_positions_are_copied_one_on_each_line_in_their_order(study: Study) -> None:
    lines = rows_as_fen(study, Positions(study), {node_of(study, "e5"), node_of(study, "e4"), Part.GREETING}).split(
        "\n"
    )
    assert [chess.Board(line).turn for line in lines] == [chess.BLACK, chess.WHITE]
