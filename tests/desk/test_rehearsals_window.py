"""The log of rehearsals on the desk: it fills by rehearsing, says what runs over, and teaches the pace."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from studyboard.desk.main_window import MainWindow
from studyboard.desk.rehearsals_window import RehearsalsWindow
from studyboard.model.rehearsals import AddRehearsal, BeatTold, Rehearsal
from studyboard.store.study_file import StudyFile


class Watch:
    """A clock that goes on when it is told to."""

    def __init__(self) -> None:
        self.now = 10.0

    def __call__(self) -> float:
        return self.now


def rehearsed(desk: MainWindow, day: int, slow: int) -> None:
    """A rehearsal in which everything takes as long as planned, and one beat half as long again."""
    told = tuple(
        BeatTold(one.key, one.seconds * (1.5 if number == slow else 1.0), one.seconds)
        for number, one in enumerate(desk.session.timeline.stretches)
    )
    desk.session.keep(AddRehearsal(Rehearsal(f"2030-05-{day:02}T20:00:00+02:00", told)))


@pytest.fixture
def window(desk: MainWindow, qtbot: QtBot) -> Iterator[RehearsalsWindow]:
    """The log, empty."""
    window = RehearsalsWindow(desk.session, desk.look, desk)
    qtbot.addWidget(window)
    window.show()
    yield window
    window.close()


def column(window: RehearsalsWindow, head: str) -> list[str]:
    heads = [window.table.horizontalHeaderItem(at).text() for at in range(window.table.columnCount())]
    return [window.table.item(row, heads.index(head)).text() for row in range(window.table.rowCount())]


def test_a_rehearsal_by_the_key_stands_in_the_log_and_in_the_file(
    window: RehearsalsWindow, desk: MainWindow, qtbot: QtBot
) -> None:
    assert "Nothing has been rehearsed yet" in window.told.text()
    assert not window.pace_button.isEnabled()
    watch = Watch()
    desk.performance.start(clock=watch)
    for _ in range(6):
        watch.now += 9.0
        desk.performance.advance()
    desk.performance.retreat()
    watch.now += 3.0
    desk.performance.stop()
    assert "Told once, in 0:57;" in window.told.text()
    assert "1" in column(window, "Begun anew")
    assert sum(float(text) for text in column(window, "Usually") if text) == pytest.approx(57.0, abs=0.3)
    path = desk.session.file.path
    with StudyFile.open(path, read_only=True) as reader:
        assert reader.study.rehearsals == desk.session.study.rehearsals != ()


def test_a_beat_that_runs_over_every_time_is_named(window: RehearsalsWindow, desk: MainWindow) -> None:
    for day in (1, 2, 3):
        rehearsed(desk, day, slow=0)
    assert "Running over: Greeting." in window.told.text()
    over = column(window, "Over or under")
    assert over[0].startswith("+")
    assert not any(over[1:])


def test_the_pace_is_learnt_and_undo_takes_it_back(window: RehearsalsWindow, desk: MainWindow, qtbot: QtBot) -> None:
    told = tuple(BeatTold(one.key, one.seconds * 1.2, one.seconds) for one in desk.session.timeline.stretches)
    desk.session.keep(AddRehearsal(Rehearsal("2030-05-01T20:00:00+02:00", told)))
    before, planned = desk.session.study.pace, desk.session.timeline.seconds
    qtbot.mouseClick(window.pace_button, Qt.MouseButton.LeftButton)
    assert "words a minute" in window.told.text()
    assert desk.session.study.pace.syllables_per_second < before.syllables_per_second
    assert desk.session.timeline.seconds > 1.05 * planned
    desk.session.undo()
    assert desk.session.study.pace == before


def test_a_rehearsal_that_went_wrong_is_forgotten(window: RehearsalsWindow, desk: MainWindow, qtbot: QtBot) -> None:
    rehearsed(desk, 1, slow=0)
    rehearsed(desk, 2, slow=1)
    window.table.setCurrentCell(0, 7)
    qtbot.mouseClick(window.forget_button, Qt.MouseButton.LeftButton)
    assert [one.at[:10] for one in desk.session.study.rehearsals] == ["2030-05-01"]


def test_what_runs_over_is_told_in_the_colour_of_the_theme(window: RehearsalsWindow, desk: MainWindow) -> None:
    rehearsed(desk, 1, slow=2)
    rehearsed(desk, 2, slow=2)
    for theme in ("dark", "light"):
        desk.look.choose_theme(theme)
        (over,) = [item for row in range(window.table.rowCount()) if (item := window.table.item(row, 3)).text()]
        assert over.foreground().color() == desk.look.color("over")
