"""The microphones and loudspeakers that the system offers."""

from __future__ import annotations

import sys
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from studyboard.sound.errors import NoMicrophoneError, require_multimedia

if TYPE_CHECKING:
    from PySide6.QtMultimedia import QAudioDevice


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
    require_multimedia()
    from PySide6.QtMultimedia import QMediaDevices

    found = (
        Input(_id(device), device.description() or _id(device), device.isDefault())
        for device in QMediaDevices.audioInputs()
    )
    return tuple(sorted(found, key=lambda device: not device.is_default))


def input_device(wanted: str | None = None) -> QAudioDevice:
    """Qt's device for the microphone with this id, or for the system's own choice.

    Raises NoMicrophoneError where it is not there, SoundUnavailableError where Qt cannot hear.
    """
    require_multimedia()
    from PySide6.QtMultimedia import QMediaDevices

    devices = QMediaDevices.audioInputs()
    if not devices:
        raise NoMicrophoneError(_nothing_there(bool(QMediaDevices.audioOutputs())))
    if wanted is None:
        default = QMediaDevices.defaultAudioInput()
        return devices[0] if default.isNull() else default
    for device in devices:
        if _id(device) == wanted:
            return device
    raise NoMicrophoneError(f"The microphone {wanted} is not plugged in. Plug it in, or choose another one.")


def output_device() -> QAudioDevice | None:
    """Qt's device for the system's loudspeakers, None where there are none. Raises SoundUnavailableError."""
    require_multimedia()
    from PySide6.QtMultimedia import QMediaDevices

    device = QMediaDevices.defaultAudioOutput()
    return None if device.isNull() else device


class DeviceWatch(QObject):
    """Tells when microphones come and go.

    changed: what `inputs()` returns may be different now
    """

    changed = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        """Raises SoundUnavailableError where Qt cannot hear."""
        super().__init__(parent)
        require_multimedia()
        from PySide6.QtMultimedia import QMediaDevices

        self._devices = QMediaDevices(self)
        self._devices.audioInputsChanged.connect(self.changed)


def _id(device: QAudioDevice) -> str:
    return bytes(device.id().data()).decode("utf-8", "replace")


def _nothing_there(can_play: bool) -> str:
    if sys.platform == "linux" and not can_play:
        return (
            "No microphone was found, and no loudspeaker either: probably no sound server is running. On Debian and"
            " Ubuntu, apt install pipewire-pulse (or pulseaudio) and log in again; everything but recording works"
            " without."
        )
    return (
        "No microphone was found. Plug one in, or switch it on in the system's sound settings, and try again;"
        " everything but recording works without."
    )
