"""How late each microphone is, remembered on this machine."""

from __future__ import annotations

from PySide6.QtCore import QSettings

_GROUP = "sound_delays"
#: What can be remembered (s); what is longer was measured wrongly.
LONGEST = 0.65


def kept_delay(settings: QSettings | None, device: str | None) -> float | None:
    """The delay of the microphone with this id (s), or of the system's choice; None where none was measured."""
    if settings is None:
        return None
    settings.beginGroup(_GROUP)
    value = settings.value(_name(device))
    settings.endGroup()
    try:
        seconds = float(str(value))
    except ValueError:
        return None
    return seconds if 0 <= seconds <= LONGEST else None


def keep_delay(settings: QSettings, device: str | None, seconds: float | None) -> None:
    """Remember the delay of a microphone (s); None forgets it."""
    settings.beginGroup(_GROUP)
    if seconds is None:
        settings.remove(_name(device))
    else:
        settings.setValue(_name(device), f"{seconds:.6f}")
    settings.endGroup()


def _name(device: str | None) -> str:
    # A slash would make a group of what stands before it.
    return (device or "default").replace("/", "_").replace("\\", "_")
