"""The microphones and loudspeakers that the system offers."""

from __future__ import annotations

import sys
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal, Slot

from studyboard.sound.errors import NoMicrophoneError
from studyboard.sound.multimedia import require_multimedia
from studyboard.sound.pulse_server import PulseServer
from studyboard.translation import tr

if TYPE_CHECKING:
    from PySide6.QtMultimedia import QAudioDevice


#: How often the sound server is asked what is plugged in (ms).
_ASK = 1000


@dataclass(frozen=True, slots=True)
class Input:
    """A microphone or another source of sound.

    id: how the system knows it, also when it is plugged in again
    description: how it is shown to people
    is_default: True for the one that the system would take
    """

    id: str
    description: str
    is_default: bool


def inputs() -> tuple[Input, ...]:
    """The microphones that are there now, the system's own choice first.

    Needs a QCoreApplication. Raises SoundUnavailableError where Qt cannot hear.
    """
    return tuple(sorted(map(described, _plugged_in()), key=lambda device: not device.is_default))


def described(device: QAudioDevice) -> Input:
    """Qt's device in our own words."""
    return Input(_id(device), device.description() or _id(device), device.isDefault())


def input_device(wanted: str | None = None) -> QAudioDevice:
    """Qt's device for the microphone with this id, or for the system's own choice.

    Raises NoMicrophoneError where it is not there, SoundUnavailableError where Qt cannot hear.
    """
    require_multimedia()
    from PySide6.QtMultimedia import QMediaDevices

    devices = _plugged_in()
    if not devices:
        raise NoMicrophoneError(_nothing_there(bool(QMediaDevices.audioOutputs())))
    if wanted is None:
        return next((device for device in devices if device.isDefault()), devices[0])
    for device in devices:
        if _id(device) == wanted:
            return device
    raise NoMicrophoneError(
        tr("The microphone {wanted} is not plugged in. Plug it in, or choose another one.", wanted=wanted)
    )


def output_device() -> QAudioDevice | None:
    """Qt's device for the system's loudspeakers, None where there are none. Raises SoundUnavailableError."""
    require_multimedia()
    from PySide6.QtMultimedia import QMediaDevices

    device = QMediaDevices.defaultAudioOutput()
    return None if device.isNull() else device


class DeviceWatch(QObject):
    """Tells when microphones come and go.

    State: what was there when it was last looked.

    changed: what `inputs()` returns is different now
    """

    changed = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        """Raises SoundUnavailableError where Qt cannot hear."""
        super().__init__(parent)
        require_multimedia()
        from PySide6.QtMultimedia import QMediaDevices

        self._server = PulseServer()
        self._seen = _plugged_in_ids(self._server)
        self._devices = QMediaDevices(self)
        self._devices.audioInputsChanged.connect(self._look)
        self._asking = QTimer(self)
        self._asking.setInterval(_ASK)
        self._asking.timeout.connect(self._look)
        self._asking.start()
        # The server has room for few connections: give this one back with the watch.
        server = self._server
        self.destroyed.connect(lambda: server.close())

    @Slot()
    def _look(self) -> None:
        there = _plugged_in_ids(self._server)
        if there != self._seen:
            self._seen = there
            self.changed.emit()


def _plugged_in(server: PulseServer | None = None) -> list[QAudioDevice]:
    require_multimedia()
    from PySide6.QtMultimedia import QMediaDevices

    devices = QMediaDevices.audioInputs()
    asked = server or PulseServer()
    names = asked.names()
    if server is None:
        asked.close()
    # Where the server knows none of Qt's devices by their names, Qt hears through something else.
    if names is None or not any(_id(device) in names for device in (*devices, *QMediaDevices.audioOutputs())):
        return devices
    return [device for device in devices if _id(device) in names]


def _plugged_in_ids(server: PulseServer) -> frozenset[str]:
    return frozenset(_id(device) for device in _plugged_in(server))


def _id(device: QAudioDevice) -> str:
    return bytes(device.id().data()).decode("utf-8", "replace")


def _nothing_there(can_play: bool) -> str:
    if sys.platform == "linux" and not can_play:
        return tr(
            "No microphone was found, and no loudspeaker either: probably no sound server is "
            "running. On Debian and Ubuntu, apt install pipewire-pulse (or pulseaudio) and log in "
            "again; everything but recording works without."
        )
    return tr(
        "No microphone was found. Plug one in, or switch it on in the system's sound settings, "
        "and try again; everything but recording works without."
    )
