"""One product being made: what it is made from, and where its files go."""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType
from typing import Any

from studyboard.delivery.errors import DeliveryCancelledError
from studyboard.delivery.product import Item
from studyboard.delivery.title import file_stem, study_title
from studyboard.delivery.video.narration import Narration
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.timing.timeline import Timeline
from studyboard.translation import tr


@dataclass(frozen=True, slots=True)
class Talk:
    """What everything is made from.

    timeline: where all times come from
    narration: its sound, from second 0 of the timeline; None where it is only planned
    """

    study: Study
    timeline: Timeline
    positions: Positions
    narration: Narration | None = None

    @property
    def title(self) -> str:
        """What the study is called."""
        return study_title(self.study.headers)

    @property
    def stem(self) -> str:
        """What the names of its files begin with."""
        return file_stem(self.title)


@dataclass(frozen=True, slots=True)
class MadeFile:
    """A file that was made. seconds: its length, where it has one (s)."""

    name: str
    seconds: float | None = None


@dataclass(frozen=True, slots=True)
class Beside:
    """Another product in the same folder.

    names: of its files; options: in plain values
    same_times: it was made of the timeline as it is now, so that what is at a second there is at that second here
    """

    names: tuple[str, ...]
    options: Mapping[str, Any]
    same_times: bool


class Making:
    """Where a product puts what it makes, and asks whether it should go on.

    State: the files and remarks so far.
    """

    def __init__(
        self,
        talk: Talk,
        folder: Path,
        share: Callable[[float], None] = lambda _: None,
        cancelled: Callable[[], bool] = lambda: False,
        beside: Mapping[Item, Beside] = MappingProxyType({}),
        to: Path | None = None,
    ) -> None:
        """folder: an empty one, from which the files go into their place when everything is made

        beside: what will lie beside of the products to which this one refers
        to: the place itself, to look into what lies there from before
        """
        self.talk = talk
        self.files: list[MadeFile] = []
        self.remarks: list[str] = []
        self.cancelled = cancelled
        self.beside = beside
        self.to = to or folder
        self._folder = folder
        self._share = share

    def write(self, ending: str, content: bytes | str, *, seconds: float | None = None) -> None:
        """Make a file with this content; texts are UTF-8. See `place`."""
        with self.place(ending, seconds=seconds).open("wb") as file:
            file.write(content.encode("utf-8", errors="replace") if isinstance(content, str) else content)
            file.flush()
            os.fsync(file.fileno())

    def place(self, ending: str, *, seconds: float | None = None) -> Path:
        """Where to write a file that is too large to be made in memory first.

        ending: what its name has behind that of the study: ".pdf", "-chapters.txt"
        seconds: its length, where it has one
        """
        name = f"{self.talk.stem}{ending}"
        self.files.append(MadeFile(name, seconds))
        return self._folder / name

    def remark(self, sentence: str) -> None:
        """Tell the user why something is missing or other than expected."""
        self.remarks.append(sentence)

    def ask(self, done: float) -> None:
        """Tell which share of this product is done (0.0 to 1.0). Raises DeliveryCancelledError where it should stop."""
        if self.cancelled():
            raise DeliveryCancelledError(tr("The delivery was stopped; nothing was changed."))
        self._share(done)
