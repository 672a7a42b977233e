"""A microphone is pulled out of a running take and plugged in again, on a real sound server."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from studyboard.desk.main_window import MainWindow
from tests.sound import virtual_microphone
from tests.sound.ramp import Ramp, heard
from tests.sound.virtual_microphone import SoundServer

sound_server = virtual_microphone.sound_server
PATIENCE = 20_000


def space(qtbot: QtBot) -> None:
    """The key goes to whatever has the keyboard."""
    widget = QApplication.focusWidget()
    assert widget is not None
    qtbot.keyClick(widget, Qt.Key.Key_Space)


def test_a_take_whose_microphone_is_pulled_out_is_kept_and_one_key_goes_on_when_it_is_back(
    sound_server: SoundServer, desk: MainWindow, qtbot: QtBot
) -> None:
    numpy = pytest.importorskip("numpy")
    cable = sound_server.plug_in("spare")
    ramp = Ramp(sound_server)
    desk.record_stage()
    booth = desk.booth
    qtbot.waitUntil(lambda: booth.devices.findData("spare") >= 0, timeout=PATIENCE)
    booth.devices.setCurrentIndex(booth.devices.findData("spare"))
    booth.devices.activated.emit(booth.devices.currentIndex())
    desk.prompter.setFocus()
    space(qtbot)
    qtbot.waitUntil(lambda: desk.performance.active, timeout=PATIENCE)
    while desk.performance.beat < 2:
        space(qtbot)
    told = desk.performance.run.beats[2].key
    qtbot.waitUntil(lambda: booth.recorder.samples > 48_000, timeout=PATIENCE)

    sound_server.unplug(cable)
    qtbot.waitUntil(lambda: "“spare” is gone" in booth.status.text(), timeout=PATIENCE)
    assert "is kept: 0:0" in booth.status.text()
    (first,) = desk.session.study.takes.values()
    assert first.samples >= 48_000
    assert first.complete
    assert not desk.performance.active
    assert desk.performance.beat == 2, "the prompter stays at the beat that was being told"

    cable = sound_server.plug_in("spare")
    qtbot.waitUntil(lambda: "“spare” is back" in booth.status.text(), timeout=PATIENCE)
    assert booth.devices.currentData() == "spare"
    space(qtbot)
    qtbot.waitUntil(lambda: desk.performance.active, timeout=PATIENCE)
    assert booth.recorder.device.id == "spare"
    qtbot.waitUntil(lambda: booth.recorder.samples > 24_000, timeout=PATIENCE)
    booth.start_or_stop()
    qtbot.waitUntil(lambda: not desk.recording and not desk.performance.active, timeout=PATIENCE)
    takes = sorted(desk.session.study.takes.values(), key=lambda take: take.id)
    assert len(takes) == 2
    assert takes[1].events[0].beat == told
    for take in takes:
        sound = numpy.frombuffer(desk.session.file.sound.read_sound(take.id), "<i2")
        found = heard([sound])
        assert found.lost == 0
        assert found.torn == 0
        assert found.ramp > 0.4 * 48_000
    ramp.end()
    sound_server.unplug(cable)
    booth.close_down()


def test_a_microphone_that_is_pulled_out_between_takes_is_missed_and_taken_again(
    sound_server: SoundServer, desk: MainWindow, qtbot: QtBot
) -> None:
    cable = sound_server.plug_in("other")
    desk.record_stage()
    booth = desk.booth
    qtbot.waitUntil(lambda: booth.devices.findData("other") >= 0, timeout=PATIENCE)
    booth.devices.setCurrentIndex(booth.devices.findData("other"))
    booth.devices.activated.emit(booth.devices.currentIndex())
    qtbot.waitUntil(lambda: booth.recorder.device is not None and booth.recorder.device.id == "other", timeout=PATIENCE)
    sound_server.unplug(cable)
    qtbot.waitUntil(lambda: "“other” is gone" in booth.status.text(), timeout=PATIENCE)
    qtbot.waitUntil(lambda: booth.recorder.device is not None, timeout=PATIENCE)
    cable = sound_server.plug_in("other")
    qtbot.waitUntil(lambda: "“other” is back" in booth.status.text(), timeout=PATIENCE)
    assert booth.recorder.device.id == "other"
    sound_server.unplug(cable)
    booth.close_down()
