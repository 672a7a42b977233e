"""A tag that is dragged by the pointer to another word of its line."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPointF
from PySide6.QtWidgets import QApplication

from studyboard.desk.line_cues import Cued
from studyboard.model.script import word_spans


@dataclass(slots=True)
class TagDrag:
    """What the pointer does with a tag, from the press to the release.

    State: which tag is held, where it was pressed (px), and the word over which it is; None until it has left its
    place.
    """

    cued: Cued
    pressed: QPointF
    word: int | None = None

    def begins_at(self, point: QPointF) -> bool:
        """True once the pointer has gone far enough to mean a drag."""
        return self.word is not None or (point - self.pressed).manhattanLength() >= QApplication.startDragDistance()


def word_near(text: str, character: int) -> int:
    """The word at this character of a line: the one that it is in, else the next one; their number after the last."""
    return sum(end <= character for _, end in word_spans(text))
