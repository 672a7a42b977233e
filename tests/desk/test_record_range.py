"""Which beats the next take tells."""

from __future__ import annotations

import pytest
from pytestqt.qtbot import QtBot

from studyboard.desk.main_window import MainWindow
from studyboard.desk.record_range import RecordRange, line_end


@pytest.fixture
def fields(desk: MainWindow, qtbot: QtBot) -> RecordRange:
    """Its fields, on the example talk."""
    widget = RecordRange(desk.session)
    qtbot.addWidget(widget)
    desk.session.plan_now()
    widget.refresh()
    return widget


def test_at_first_all_of_the_talk_is_told(fields: RecordRange, desk: MainWindow) -> None:
    assert (fields.first_beat, fields.last_beat) == (0, None)
    assert fields.last.value() == len(desk.session.beats)
    assert fields.told.text().startswith("Greeting – ")


def test_the_last_beat_never_comes_before_the_first(fields: RecordRange) -> None:
    fields.last.setValue(5)
    fields.first.setValue(9)
    assert (fields.first_beat, fields.last_beat) == (8, 8)
    fields.last.setValue(3)
    assert (fields.first_beat, fields.last_beat) == (2, 2)


def test_line_by_line_goes_through_the_lines_and_stops_at_the_last(fields: RecordRange) -> None:
    fields.last.setValue(3)
    fields.manner.setCurrentIndex(1)
    assert (fields.first_beat, fields.last_beat) == (0, 0)
    assert fields.go_on()
    assert (fields.first_beat, fields.last_beat) == (1, 1)
    assert fields.go_on()
    assert not fields.go_on()
    assert fields.first_beat == 2


def test_while_recording_nothing_can_be_changed(fields: RecordRange) -> None:
    fields.lock(True)
    assert not fields.first.isEnabled()
    fields.lock(False)
    assert fields.first.isEnabled()


def test_silent_beats_belong_to_the_line_before_them(desk: MainWindow) -> None:
    beats = desk.session.beats
    for first in range(len(beats)):
        end = line_end(beats, first)
        assert sum(bool(beat.spoken) for beat in beats[first : end + 1]) <= 1
        assert end + 1 == len(beats) or beats[end + 1].spoken
