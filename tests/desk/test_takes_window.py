"""The window in which takes are chosen and cut, worked with keys and buttons as a presenter does."""

from __future__ import annotations

import wave
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from studyboard.desk.main_window import MainWindow
from studyboard.desk.sound_import import SoundImport
from studyboard.desk.takes_window import TakesWindow
from studyboard.model.edits import PutTake
from studyboard.model.takes import Replaced, SoundTime, Span, Take, TakeEvent
from studyboard.timing.recorded import put_together

RATE = 48_000


def record(desk: MainWindow, seconds: float, *starts: tuple[float, int], replaces: Replaced | None = None) -> Take:
    """A take of noise in which beats (their numbers, from 0) begin at these seconds."""
    file, beats = desk.session.file, desk.session.beats
    number = file.sound.begin_take(
        f"Take {desk.session.study.next_take}", RATE, "2031-03-04T20:00:00+00:00", replaces=replaces
    )
    noise = np.random.default_rng(number).normal(0, 900, round(seconds * RATE)).astype("<i2").tobytes()
    file.sound.append_sound(number, noise)
    events = [TakeEvent(SoundTime(round(at * RATE), RATE), beats[beat].node, beats[beat].key) for at, beat in starts]
    file.sound.append_sound(number, b"", events)
    take = file.sound.finish_take(number)
    desk.session.keep(PutTake(take))
    return take


@pytest.fixture
def window(desk: MainWindow, qtbot: QtBot) -> Iterator[TakesWindow]:
    """Beats 1 to 3 in the first take, the second one again in the second; the window shows the second beat."""
    record(desk, 9.0, (0, 0), (3, 1), (6, 2))
    record(desk, 4.0, (0, 1))
    desk.actions_by_name["show_takes"].trigger()
    window = desk.booth._window
    assert window is not None
    window.show_beat(1)
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    yield window
    window.close()


def press(qtbot: QtBot, widget: QWidget, key: Qt.Key, times: int = 1, *, shift: bool = False) -> None:
    modifier = Qt.KeyboardModifier.ShiftModifier if shift else Qt.KeyboardModifier.NoModifier
    for _ in range(times):
        qtbot.keyClick(widget, key, modifier)


def rows(window: TakesWindow) -> list[str]:
    return [window.takes.item(row).text() for row in range(window.takes.count())]


def heard(desk: MainWindow, beat: int) -> tuple[int | None, float]:
    """The take in which a beat is heard, and for how long (s)."""
    one = put_together(desk.session.study).beats[beat]
    return one.take, one.samples / RATE


def test_every_beat_says_in_which_take_it_is_heard_or_that_it_is_not(window: TakesWindow) -> None:
    told = [window.beats.item(row).text() for row in range(4)]
    assert "Take 1 · 0:03" in told[0]
    assert "Take 2 · 0:04" in told[1]
    assert "not recorded" in told[3]
    assert "spoken lines are in no take" in window.summary.text()
    assert rows(window)[0].startswith("Take 2 · heard · 4.0 s")
    assert rows(window)[1].startswith("Take 1 · 3.0 s")


def test_enter_on_another_take_lets_the_beat_be_heard_in_it_and_undo_takes_that_back(
    window: TakesWindow, desk: MainWindow, qtbot: QtBot
) -> None:
    window.takes.setFocus()
    press(qtbot, window.takes, Qt.Key.Key_Down)
    press(qtbot, window.takes, Qt.Key.Key_Return)
    assert heard(desk, 1) == (1, 3.0)
    assert "heard, chosen" in rows(window)[1]
    assert window.choose_button.text() == "Leave it open"
    qtbot.keyClick(window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert heard(desk, 1) == (2, 4.0)


def test_a_stretch_that_is_chosen_by_keys_is_left_out_and_brought_back(
    window: TakesWindow, desk: MainWindow, qtbot: QtBot
) -> None:
    window.wave.setFocus()
    press(qtbot, window.wave, Qt.Key.Key_Home)
    press(qtbot, window.wave, Qt.Key.Key_PageDown)
    press(qtbot, window.wave, Qt.Key.Key_Right, 10, shift=True)
    assert "Chosen: 1.00 to 1.50 s, 0.50 s long." in window.places.text()
    qtbot.mouseClick(window.leave_out_button, Qt.MouseButton.LeftButton)
    assert heard(desk, 1) == (2, 3.5)
    assert "cut" in rows(window)[0]
    assert window.wave.chosen == Span(RATE, RATE + RATE // 2), "still chosen, to be brought back"
    qtbot.mouseClick(window.bring_back_button, Qt.MouseButton.LeftButton)
    assert heard(desk, 1) == (2, 4.0)


def test_trimming_keeps_what_is_chosen_with_the_pointer(window: TakesWindow, desk: MainWindow, qtbot: QtBot) -> None:
    wave, y = window.wave, window.wave.height() // 3
    left, right = (QPoint(round(wave.width() * share), y) for share in (0.25, 0.75))
    qtbot.mousePress(wave, Qt.MouseButton.LeftButton, pos=left)
    qtbot.mouseMove(wave, right)
    qtbot.mouseRelease(wave, Qt.MouseButton.LeftButton, pos=right)
    chosen = wave.chosen
    assert chosen is not None
    assert chosen.samples / RATE == pytest.approx(2.0, abs=0.1)
    qtbot.mouseClick(window.trim_button, Qt.MouseButton.LeftButton)
    assert heard(desk, 1) == (2, chosen.samples / RATE)


def test_nothing_that_is_left_of_a_take_is_refused_with_a_sentence(
    window: TakesWindow, desk: MainWindow, qtbot: QtBot
) -> None:
    window.wave.choose(Span(0, 4 * RATE))
    qtbot.mouseClick(window.leave_out_button, Qt.MouseButton.LeftButton)
    assert "Discard it instead" in window.status.text()
    assert heard(desk, 1) == (2, 4.0)


def test_a_discarded_take_stays_in_sight_and_can_be_taken_back(
    window: TakesWindow, desk: MainWindow, qtbot: QtBot
) -> None:
    qtbot.mouseClick(window.discard_button, Qt.MouseButton.LeftButton)
    assert heard(desk, 1) == (1, 3.0)
    assert "discarded" in rows(window)[0]
    assert window.discard_button.text() == "Take back"
    assert not window.choose_button.isEnabled()
    qtbot.mouseClick(window.discard_button, Qt.MouseButton.LeftButton)
    assert heard(desk, 1) == (2, 4.0)


def test_a_note_is_kept_with_the_take(window: TakesWindow, desk: MainWindow, qtbot: QtBot) -> None:
    window.note.setFocus()
    qtbot.keyClicks(window.note, "a lorry")
    press(qtbot, window.note, Qt.Key.Key_Return)
    assert desk.session.study.takes[2].note == "a lorry"
    assert "“a lorry”" in rows(window)[0]


def test_a_take_gets_another_name_and_never_none(window: TakesWindow, desk: MainWindow, qtbot: QtBot) -> None:
    window.name.setFocus()
    window.name.setText("The calm one")
    press(qtbot, window.name, Qt.Key.Key_Return)
    assert rows(window)[0].startswith("The calm one · heard")
    window.name.setText("  ")
    press(qtbot, window.name, Qt.Key.Key_Return)
    assert "needs a name" in window.status.text()
    assert desk.session.study.takes[2].name == "The calm one"


def test_discarded_sound_is_deleted_for_good(window: TakesWindow, desk: MainWindow, qtbot: QtBot) -> None:
    assert not window.purge_button.isEnabled()
    qtbot.mouseClick(window.discard_button, Qt.MouseButton.LeftButton)
    assert window.purge_button.isEnabled()
    window.purge()
    assert "MB are free again" in window.status.text()
    assert desk.session.file.sound.length(2) == 0
    assert len(rows(window)) == 1
    desk.session.undo()
    assert heard(desk, 1) == (1, 3.0)


def test_a_take_that_tells_no_beat_is_offered_everywhere_and_can_be_let_tell_one(
    window: TakesWindow, desk: MainWindow, qtbot: QtBot
) -> None:
    loose = record(desk, 2.0)
    window.beats.setCurrentRow(4)
    assert "tells no beat yet" in rows(window)[0]
    qtbot.mouseClick(window.choose_button, Qt.MouseButton.LeftButton)
    assert heard(desk, 4) == (loose.id, 2.0)
    assert "heard, chosen" in rows(window)[0]
    desk.session.undo()
    assert heard(desk, 4)[0] is None


def test_a_pickup_is_listed_under_its_take_and_heard(window: TakesWindow, desk: MainWindow) -> None:
    record(desk, 1.5, replaces=Replaced(2, Span(RATE, 2 * RATE)))
    assert [row.split(" · ")[:2] for row in rows(window)[:2]] == [["Take 2", "heard"], ["↳ Take 3", "heard"]]
    assert heard(desk, 1) == (2, 4.5)


def test_another_beat_shows_the_take_in_which_it_is_heard(window: TakesWindow) -> None:
    window.takes.setCurrentRow(1)
    window.beats.setCurrentRow(0)
    assert window.takes.currentRow() == 0
    assert rows(window)[0].startswith("Take 1 · heard")
    assert window.wave.words.startswith("At 0.00 s")


def test_a_beat_without_a_take_offers_nothing_to_do_with_one(window: TakesWindow) -> None:
    window.beats.setCurrentRow(5)
    for button in (window.play_button, window.choose_button, window.discard_button, window.again_button):
        assert not button.isEnabled()


def test_a_sound_file_that_is_opened_becomes_a_take_of_the_beat(
    window: TakesWindow, desk: MainWindow, qtbot: QtBot, tmp_path: Path
) -> None:
    pytest.importorskip("av")
    path = tmp_path / "telephone.wav"
    with wave.open(str(path), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(16_000)
        file.writeframes(np.random.default_rng(1).normal(0, 900, 32_000).astype("<i2").tobytes())
    dialog = SoundImport(desk.session, path, desk.session.beats[3].key, window)
    qtbot.addWidget(dialog)
    dialog.show()
    assert "This beat alone" in dialog.told.currentText()
    with qtbot.waitSignal(dialog.accepted, timeout=20_000):
        qtbot.mouseClick(dialog.read_button, Qt.MouseButton.LeftButton)
    assert dialog.taken is not None
    take, seconds = heard(desk, 3)
    assert take == dialog.taken.id
    assert seconds == pytest.approx(2.0, abs=0.02)
    assert "telephone" in window.beats.item(3).text()


def test_a_file_without_sound_says_so_and_another_can_be_chosen(
    window: TakesWindow, desk: MainWindow, qtbot: QtBot, tmp_path: Path
) -> None:
    pytest.importorskip("av")
    path = tmp_path / "notes.mp3"
    path.write_text("no sound at all")
    dialog = SoundImport(desk.session, path, None, window)
    qtbot.addWidget(dialog)
    dialog.show()
    qtbot.mouseClick(dialog.read_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: "“notes.mp3”" in dialog.status.text(), timeout=20_000)
    assert dialog.read_button.isEnabled()
    dialog.reject()
    assert dialog.taken is None
