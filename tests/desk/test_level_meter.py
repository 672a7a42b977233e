"""The level meter: its figures can be read at every size."""

from __future__ import annotations

from itertools import pairwise

import pytest
from PySide6.QtGui import QFontMetrics
from pytestqt.qtbot import QtBot

from studyboard.desk.level_meter import LevelMeter
from studyboard.desk.look import Look
from tests.desk.text_size import text_scaled


@pytest.mark.parametrize("factor", [1.0, 1.5, 2.0])
@pytest.mark.parametrize("width", [140, 240, 600])
def test_no_figure_of_the_scale_lies_over_another(qtbot: QtBot, factor: float, width: int) -> None:
    look = Look()
    meter = LevelMeter(look)
    qtbot.addWidget(meter)
    with text_scaled(look, factor):
        meter.resize(width, meter.sizeHint().height())
        metrics = QFontMetrics(look.ui_font(0.78))
        figures = sorted(meter._scale(metrics))
        assert [text for _, text in figures][-1] == "0"
        for (left, text), (after, _) in pairwise(figures):
            assert left + metrics.horizontalAdvance(text) < after
        assert figures[0][0] >= 0


def test_a_wide_meter_shows_the_whole_scale(qtbot: QtBot) -> None:
    look = Look()
    meter = LevelMeter(look)
    qtbot.addWidget(meter)
    meter.resize(600, meter.sizeHint().height())
    assert len(meter._scale(QFontMetrics(look.ui_font(0.78)))) == 6


@pytest.mark.parametrize(
    ("peak", "rms", "words"), [(-60.0, -60.0, "silent"), (-50.0, -58.0, "too quiet"), (-12.0, -24.0, "good")]
)
def test_the_level_is_told_in_words(qtbot: QtBot, peak: float, rms: float, words: str) -> None:
    meter = LevelMeter(Look())
    qtbot.addWidget(meter)
    meter.show_level(peak, rms)
    assert meter.verdict == words
