"""What this machine remembers of each microphone: how late it is, and that the room was checked with it."""

from __future__ import annotations

from datetime import datetime

from PySide6.QtCore import QSettings

_DELAYS, _CHECKED = "sound_delays", "room_checks"
#: What can be remembered (s); what is longer was measured wrongly.
LONGEST = 0.65


def kept_delay(settings: QSettings | None, device: str | None) -> float | None:
    """The delay of the microphone with this id (s), or of the system's choice; None where none was measured."""
    if settings is None:
        return None
    try:
        seconds = float(str(settings.value(f"{_DELAYS}/{_name(device)}")))
    except ValueError:
        return None
    return seconds if 0 <= seconds <= LONGEST else None


def keep_delay(settings: QSettings, device: str | None, seconds: float | None) -> None:
    """Remember the delay of a microphone (s); None forgets it."""
    key = f"{_DELAYS}/{_name(device)}"
    if seconds is None:
        settings.remove(key)
    else:
        settings.setValue(key, f"{seconds:.6f}")


def note_check(settings: QSettings, device: str | None, verdict: str) -> None:
    """Write down that the room was checked with this microphone, now."""
    settings.setValue(
        f"{_CHECKED}/{_name(device)}", f"{datetime.now().astimezone().isoformat(timespec='seconds')} {verdict}"
    )


def was_checked(settings: QSettings, device: str | None) -> bool:
    """True where a room was ever checked with this microphone."""
    return settings.contains(f"{_CHECKED}/{_name(device)}")


def _name(device: str | None) -> str:
    # A slash would make a group of what stands before it.
    return (device or "default").replace("/", "_").replace("\\", "_")
