"""The palette of marks: names and keys never lie over each other, and without room only the names go."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtGui import QFontMetricsF
from pytestqt.qtbot import QtBot

from studyboard.desk.board_mark_palette import MarkPalette
from studyboard.desk.board_marking import KINDS
from studyboard.desk.board_view import BoardView
from studyboard.desk.look import Look
from tests.desk.small_study import small_session
from tests.desk.text_size import text_scaled


@pytest.fixture
def palette(qtbot: QtBot, tmp_path: Path) -> MarkPalette:
    session, _ = small_session(tmp_path)
    look = Look()
    board = BoardView(session, look)
    qtbot.addWidget(board)
    palette = MarkPalette(board, look)
    palette.look = look  # type: ignore[attr-defined]
    palette.board = board  # type: ignore[attr-defined]
    qtbot.addWidget(palette)
    palette.show()
    return palette


@pytest.mark.parametrize("factor", [1.0, 1.5, 1.67, 2.0])
def test_a_name_ends_before_its_key_begins(palette: MarkPalette, factor: float) -> None:
    with text_scaled(palette.look, factor):  # type: ignore[attr-defined]
        palette.resize(palette.sizeHint())
        assert palette.named
        for kind in KINDS:
            button = palette.button(kind)
            metrics = QFontMetricsF(button.font())
            name_ends = button._sample.right() + 7 + metrics.horizontalAdvance(button.text())
            key_begins = button.width() - 7 - metrics.horizontalAdvance("8")
            assert name_ends < key_begins


@pytest.mark.parametrize("factor", [1.0, 2.0])
def test_where_it_is_narrow_samples_and_tool_tips_stay(palette: MarkPalette, factor: float) -> None:
    with text_scaled(palette.look, factor):  # type: ignore[attr-defined]
        palette.resize(palette.minimumSizeHint())
        assert not palette.named
        boxes = [palette.button(kind).geometry() for kind in KINDS] + [palette._wipe.geometry()]
        for number, box in enumerate(boxes):
            assert palette.rect().contains(box)
            assert not any(box.intersects(other) for other in boxes[:number])
        for kind in KINDS:
            button = palette.button(kind)
            assert button.toolTip().startswith(str(kind).capitalize())
            assert button.width() >= button.sample_size.width()


def test_height_decides_as_well_as_width(palette: MarkPalette) -> None:
    whole = palette.sizeHint()
    assert palette.height_within(whole.width(), whole.height()) == whole.height()
    assert palette.height_within(whole.width(), whole.height() - 1) < whole.height()
    assert palette.height_within(whole.width() - 1, whole.height()) < whole.height()
