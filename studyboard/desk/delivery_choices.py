"""What was chosen in the delivery window for a study, for the next time that it is delivered."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from PySide6.QtCore import QSettings

from studyboard.desk.remembered import study_group


@dataclass(frozen=True, slots=True)
class DeliveryChoices:
    """items: the names of the ticked ones; options: of each in plain values; folder: "" for the usual one.

    loudness: the name of what the voice is brought to
    scratch_voice: a plan is spoken by a synthesiser
    """

    items: tuple[str, ...]
    options: Mapping[str, Mapping[str, Any]] = field(default_factory=dict)
    folder: str = ""
    loudness: str = ""
    scratch_voice: bool = False


def keep_choices(settings: QSettings, study: Path, choices: DeliveryChoices) -> None:
    """Remember them."""
    plain = {
        "items": list(choices.items),
        "options": {item: dict(options) for item, options in choices.options.items()},
        "folder": choices.folder,
        "loudness": choices.loudness,
        "scratch_voice": choices.scratch_voice,
    }
    settings.setValue(f"{study_group(study)}/deliver", json.dumps(plain))


def kept_choices(settings: QSettings, study: Path) -> DeliveryChoices | None:
    """What is remembered of this study; None where nothing is, or nothing that can be read."""
    try:
        plain = json.loads(str(settings.value(f"{study_group(study)}/deliver", "")))
        options = {str(item): dict(one) for item, one in plain["options"].items()}
        return DeliveryChoices(
            tuple(str(item) for item in plain["items"]),
            options,
            str(plain["folder"]),
            str(plain["loudness"]),
            bool(plain.get("scratch_voice")),
        )
    except (ValueError, KeyError, TypeError, AttributeError):
        return None
