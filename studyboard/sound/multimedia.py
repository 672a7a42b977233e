"""Qt's sound, made ready before it is first used."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING

from studyboard.sound.errors import require

if TYPE_CHECKING:
    from PySide6.QtMultimedia import QAudioSink, QAudioSource

#: How much sound PulseAudio hands over at once (ms), and how much of it Qt plays in advance.
_PULSE_LATENCY = 20


def require_multimedia() -> None:
    """Make sure that Qt can hear and play sound. Raises SoundUnavailableError.

    Works around a fault of Qt's, seen with 6.9.3, 6.11.3 and 6.12.0: for a recording it asks PulseAudio to keep 21 ms
    of sound at most (`maxlength` of 1024 samples), so whenever the server itself is held up for longer, sound is lost.
    With a latency from the environment, libpulse asks for the longest queue instead. Playing is as before.
    """
    os.environ.setdefault("PULSE_LATENCY_MSEC", str(_PULSE_LATENCY))
    require("PySide6.QtMultimedia")


def has_stopped(stream: QAudioSource | QAudioSink) -> bool:
    """True where the device has let the stream down, or it was never begun."""
    # By its name: PySide6 has had two types of the same states since 6.10, which do not compare equal.
    return stream.state().name == "StoppedState"


def could_not_open(stream: QAudioSource | QAudioSink) -> bool:
    """True where the device refused to be used."""
    return stream.error().name == "OpenError"
