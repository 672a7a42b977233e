"""Boards as one picture for other programs."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QColor

from studyboard.desk.copied_picture import MOST, boards_picture
from studyboard.desk.look import Look
from studyboard.model.positions import Positions
from tests.desk.lane_studies import find, study_of


@pytest.fixture
def positions() -> Positions:
    return Positions(study_of("1. e4 e5 2. Nf3 *"))


def test_every_board_has_its_caption_on_white_paper(positions: Positions, still_look: Look) -> None:
    still_look.choose_theme("dark")
    picture = boards_picture(positions, [find(positions.study, "e4"), find(positions.study, "e4", "e5")], still_look)
    assert picture.pixelColor(1, 1) == QColor("white")
    assert any(picture.pixelColor(x, 40).lightness() < 90 for x in range(24, 160)), "the move above the board"
    one = boards_picture(positions, [find(positions.study, "e4")], still_look)
    assert picture.width() == one.width()
    assert picture.copy(0, 0, one.width(), one.height() - 24) == one.copy(0, 0, one.width(), one.height() - 24)


def test_the_board_is_seen_from_the_side_that_is_asked_for(positions: Positions, still_look: Look) -> None:
    nodes = [find(positions.study, "e4")]
    assert boards_picture(positions, nodes, still_look) != boards_picture(positions, nodes, still_look, flipped=True)


def test_none_and_too_many_are_refused(positions: Positions, still_look: Look) -> None:
    for nodes in ([], [0] * (MOST + 1)):
        with pytest.raises(ValueError, match="1 to"):
            boards_picture(positions, nodes, still_look)
