"""Telling a screen reader what has just become current in a widget that paints itself."""

from __future__ import annotations

from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent, QAccessibleEvent
from PySide6.QtWidgets import QWidget


def announce(widget: QWidget, text: str) -> None:
    """Make *text* the widget's description and, where the widget has the keyboard, have it read out."""
    if widget.accessibleDescription() == text:
        return
    widget.setAccessibleDescription(text)
    if widget.hasFocus() and QAccessible.isActive():
        QAccessible.updateAccessibility(QAccessibleEvent(widget, QAccessible.Event.DescriptionChanged))
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(widget, text))
