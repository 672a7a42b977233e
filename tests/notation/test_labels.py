"""Moves as they are printed."""

from __future__ import annotations

import pytest

from studyboard.model.edits import ChangeNode, apply
from studyboard.model.positions import Positions
from studyboard.notation.labels import figurine, line_label, move_label, move_number
from studyboard.notation.pgn_reader import read_games

FROM_MOVE_31 = '[FEN "4k3/8/8/8/8/8/4P3/4K3 b - - 3 31"]\n\n31... Kd7 32. e4 -- *'


@pytest.fixture
def positions():
    return Positions(next(read_games("1. e4 e5 2. Nf3 Nc6 (2... Nf6 3. Nxe5 d6 4. Nf3) 3. Bb5 a6 *")).study)


def test_moves_carry_their_numbers(positions):
    assert [move_label(positions, node) for node in positions.study.main_line()] == [
        "Start", "1. e4", "1... e5", "2. Nf3", "2... Nc6", "3. Bb5", "3... a6",
    ]  # fmt: skip
    assert move_number(positions, 0) == ""


def test_numbers_go_on_from_a_set_up_position():
    positions = Positions(next(read_games(FROM_MOVE_31)).study)
    assert [move_label(positions, node) for node in (1, 2, 3)] == ["31... Kd7", "32. e4", "32... --"]


@pytest.mark.parametrize(
    ("san", "printed"),
    [
        ("Nxe5", "♘xe5"),
        ("bxc8=Q+", "bxc8=♕+"),
        ("O-O-O", "O-O-O"),
        ("Rbd1", "♖bd1"),
        ("b4", "b4"),
        ("Kd7", "♔d7"),
        ("Bb5", "♗b5"),
    ],
)
def test_letters_of_pieces_become_figurines_and_letters_of_files_do_not(san, printed):
    assert figurine(san) == printed


def test_a_line_is_called_by_its_first_moves(positions):
    nf6 = positions.study.nodes[3].children[1]
    assert line_label(positions, nf6) == "2... Nf6 3. Nxe5 d6 …"
    assert line_label(positions, nf6, moves=4) == "2... Nf6 3. Nxe5 d6 4. Nf3"
    assert line_label(positions, nf6, moves=1) == "2... Nf6 …"
    assert line_label(positions, 0) == "1. e4 e5 2. Nf3 …"


def test_a_line_with_a_name_is_called_by_it(positions):
    nf6 = positions.study.nodes[3].children[1]
    apply(positions.study, ChangeNode(nf6, "name", " The quiet answer "))
    assert line_label(positions, nf6) == "The quiet answer"


def test_an_empty_study_has_a_label_too():
    assert line_label(Positions(next(read_games('[White "A"]\n\n*')).study), 0) == "Start"
