"""The sound or the video that a page follows: beside it, or inside it."""

from __future__ import annotations

import base64
import os
from dataclasses import dataclass
from pathlib import Path
from typing import Final
from urllib.parse import quote

from studyboard.delivery.errors import DeliveryError
from studyboard.translation import tr

#: What browsers play, by ending: the system's own tables differ from each other.
_TYPES: Final = {
    ".mp4": "video/mp4",
    ".m4v": "video/mp4",
    ".webm": "video/webm",
    ".m4a": "audio/mp4",
    ".aac": "audio/aac",
    ".mp3": "audio/mpeg",
    ".ogg": "audio/ogg",
    ".oga": "audio/ogg",
    ".opus": "audio/ogg",
    ".flac": "audio/flac",
    ".wav": "audio/wav",
}


@dataclass(frozen=True, slots=True)
class Media:
    """Sound or video that begins with the talk.

    address: where the page finds it: relative to the page, or a data URL
    kind: its media type, such as "audio/mp4"
    """

    address: str
    kind: str

    @property
    def moving(self) -> bool:
        """Whether it is a video."""
        return self.kind.startswith("video/")

    @property
    def inside(self) -> bool:
        """Whether it is part of the page itself."""
        return self.address.startswith("data:")


def media_named(name: str) -> Media:
    """A file of this name in the folder of the page. Raises DeliveryError where browsers do not play its kind."""
    # A first part with a colon would be read as a scheme.
    return Media(quote(name, safe=""), _kind(Path(name)))


def media_beside(path: Path, page_folder: Path) -> Media:
    """A file that lies beside the page, or at a place that can be told from there.

    Raises DeliveryError where it is of a kind that browsers do not play, or cannot be told from there.
    """
    kind = _kind(path)
    try:
        relative = os.path.relpath(path.absolute(), page_folder.absolute())
    except ValueError as reason:  # another drive
        raise DeliveryError(
            tr("{path} cannot be told from {folder}: put it there.", path=path, folder=page_folder)
        ) from reason
    parts = Path(relative).parts
    # A first part with a colon would be read as a scheme.
    address = "/".join(quote(part, safe="") for part in parts)
    return Media(address, kind)


def media_inside(content: bytes, name: str) -> Media:
    """Sound or video as part of the page. Raises DeliveryError where browsers do not play its kind."""
    kind = _kind(Path(name))
    return Media(f"data:{kind};base64,{base64.b64encode(content).decode('ascii')}", kind)


def _kind(path: Path) -> str:
    kind = _TYPES.get(path.suffix.lower())
    if kind is None:
        kinds = ", ".join(sorted(ending[1:] for ending in _TYPES))
        raise DeliveryError(tr("A page cannot play {path}; it can play {kinds}.", path=path.name, kinds=kinds))
    return kind
