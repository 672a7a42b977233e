"""The booth offers the microphones that are plugged in, and says what to do where there is none."""

from __future__ import annotations

import os
import subprocess
import sys

import pytest
from PySide6.QtCore import QCoreApplication, QEvent
from pytestqt.qtbot import QtBot

from studyboard.sound.devices import DeviceWatch, Input, input_device, inputs
from studyboard.sound.errors import NoMicrophoneError
from tests.sound.virtual_microphone import SoundServer

PATIENCE = 10_000


def test_a_microphone_is_listed_with_the_name_that_people_know(sound_server: SoundServer, qapp: object) -> None:
    assert inputs() == (Input("microphone", "Microphone", is_default=True),)


def test_a_microphone_appears_when_it_is_plugged_in_and_goes_when_it_is_not(
    sound_server: SoundServer, qtbot: QtBot
) -> None:
    watch = DeviceWatch()
    with qtbot.waitSignal(watch.changed, timeout=PATIENCE):
        module = sound_server.plug_in("headset")
    assert [device.id for device in inputs()] == ["microphone", "headset"]
    with qtbot.waitSignal(watch.changed, timeout=PATIENCE):
        sound_server.unplug(module)
    assert [device.id for device in inputs()] == ["microphone"]


def test_a_watch_that_is_over_gives_its_connection_to_the_server_back(sound_server: SoundServer, qtbot: QtBot) -> None:
    def watch_and_stop() -> int:
        watch = DeviceWatch()
        watch.deleteLater()
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
        return len(sound_server.control("list", "short", "clients").splitlines())

    before = watch_and_stop()
    assert max(watch_and_stop() for _ in range(8)) <= before + 1


def test_a_microphone_that_is_gone_is_named(sound_server: SoundServer, qapp: object) -> None:
    with pytest.raises(NoMicrophoneError, match="The microphone lavalier is not plugged in"):
        input_device("lavalier")


def test_without_any_microphone_the_recorder_says_so_and_all_else_works(sound_server: SoundServer) -> None:
    told = asked(
        """
from studyboard.sound.recorder import Recorder
recorder = Recorder(lambda: 1 / 0)
for way in (recorder.listen, lambda: recorder.start("Take 1")):
    try:
        way()
    except StudyboardError as reason:
        print(type(reason).__name__, recorder.state, reason)
print(recorder.stamp(1, None))
recorder.close()
""",
        {"PULSE_SERVER": "unix:/nowhere/at/all"},
    )
    first, second, third = told.splitlines()
    assert first == second
    assert first.startswith("NoMicrophoneError closed No microphone was found")
    assert "apt install pipewire-pulse (or pulseaudio)" in first
    assert third == "None"


def test_with_loudspeakers_but_no_microphone_the_advice_is_to_plug_one_in(silent_server: SoundServer) -> None:
    told = asked("print(inputs())\ninput_device()", silent_server.environment)
    assert told.splitlines()[0] == "()"
    assert told.splitlines()[1].startswith("No microphone was found. Plug one in")


@pytest.fixture
def silent_server(sound_server: SoundServer) -> object:
    server = SoundServer()
    server.control("unload-module", "module-remap-source")
    yield server
    server.stop()


def asked(program: str, environment: dict[str, str]) -> str:
    """What a program of its own prints; Qt looks for a sound server only once in a process."""
    begin = """
from PySide6.QtCore import QCoreApplication
from studyboard.model.errors import StudyboardError
from studyboard.sound.devices import input_device, inputs
application = QCoreApplication([])
try:
"""
    body = "\n".join(f"    {line}" for line in program.splitlines())
    end = "\nexcept StudyboardError as reason:\n    print(reason)\n"
    done = subprocess.run(
        [sys.executable, "-c", begin + body + end], env=os.environ | environment, capture_output=True, text=True
    )
    assert done.returncode == 0, done.stderr
    return done.stdout
