"""Larger text for a test, and the old size after it."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication

from studyboard.desk.look import Look


@contextmanager
def text_scaled(look: Look, factor: float) -> Iterator[None]:
    """All text *factor* times as large as the system has it, until the end of the block."""
    before = QGuiApplication.font()
    font = QGuiApplication.font()
    font.setPointSizeF(font.pointSizeF() * factor)
    _take(look, font)
    try:
        yield
    finally:
        _take(look, before)


def _take(look: Look, font: object) -> None:
    QGuiApplication.setFont(font)  # type: ignore[arg-type]
    look.changed.emit()
    for _ in range(5):
        QApplication.processEvents()
