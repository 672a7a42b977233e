"""Telling a screen reader what has happened on the board."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import QWidget


def announce(widget: QWidget, words: Callable[[], str]) -> None:
    """Have *words* read out at the next pause; they are not even made where no screen reader listens."""
    if QAccessible.isActive() and (said := words()):
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(widget, said))
