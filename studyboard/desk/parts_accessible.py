"""Things that a widget paints itself, such as squares, rows and beats, as assistive programs find them one by one."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtCore import QObject, QPoint, QRect
from PySide6.QtGui import QAccessible, QAccessibleInterface, QAccessibleObject
from PySide6.QtWidgets import QWidget


class Parts(Protocol):
    """What a widget tells of its parts; they are counted from 0 and asked for anew each time."""

    def part_count(self) -> int:
        """How many there are now."""
        ...

    def part_name(self, index: int) -> str:
        """One in words."""
        ...

    def part_rect(self, index: int) -> QRect:
        """Where it is in the widget; empty where it is out of view."""
        ...

    def part_at(self, place: QPoint) -> int | None:
        """The one at this point of the widget."""
        ...

    def part_is_current(self, index: int) -> bool:
        """True for the one that the keyboard is at."""
        ...


class NoParts:
    """Of a widget that is made of other widgets alone."""

    def part_count(self) -> int:
        """See Parts."""
        return 0

    def part_name(self, index: int) -> str:
        """See Parts."""
        return ""

    def part_rect(self, index: int) -> QRect:
        """See Parts."""
        return QRect()

    def part_at(self, place: QPoint) -> int | None:
        """See Parts."""
        return None

    def part_is_current(self, index: int) -> bool:
        """See Parts."""
        return False


class PartObject(QObject):
    """Stands for one part of a widget; Qt keeps what it tells for as long as this lives."""

    def __init__(self, widget: QWidget, parts: Parts, index: int) -> None:
        super().__init__(widget)
        self.widget, self.parts, self.index = widget, parts, index

    @property
    def there(self) -> bool:
        """False where the widget has fewer parts by now."""
        return self.index < self.parts.part_count()


class PartInterface(QAccessibleObject):
    """One part as assistive programs see it."""

    def __init__(self, part: PartObject, role: QAccessible.Role) -> None:
        super().__init__(part)
        self._part = part
        self._role = role

    def role(self) -> QAccessible.Role:
        """See QAccessibleInterface."""
        return self._role

    def state(self) -> QAccessible.State:
        """See QAccessibleInterface."""
        state, part = QAccessible.State(), self._part
        there = part.there
        current = there and part.parts.part_is_current(part.index)
        state.selectable = True
        state.selected = current
        state.focused = current and part.widget.hasFocus()
        state.invisible = not there or not part.widget.isVisible()
        state.offscreen = there and part.parts.part_rect(part.index).isEmpty()
        return state

    def text(self, what: QAccessible.Text) -> str:
        """See QAccessibleInterface."""
        named = what == QAccessible.Text.Name and self._part.there
        return self._part.parts.part_name(self._part.index) if named else ""

    def rect(self) -> QRect:
        """See QAccessibleInterface."""
        part = self._part
        rect = part.parts.part_rect(part.index) if part.there else QRect()
        return QRect(part.widget.mapToGlobal(rect.topLeft()), rect.size()) if not rect.isEmpty() else QRect()

    def parent(self) -> QAccessibleInterface:
        """See QAccessibleInterface."""
        return QAccessible.queryAccessibleInterface(self._part.widget)

    def childCount(self) -> int:
        """See QAccessibleInterface."""
        return 0

    def child(self, index: int) -> QAccessibleInterface | None:  # type: ignore[override]
        """See QAccessibleInterface."""
        return None

    def indexOfChild(self, child: QAccessibleInterface) -> int:
        """See QAccessibleInterface."""
        return -1


class PartObjects:
    """The parts of one widget that have been asked for so far.

    State: one object for each of them.
    """

    def __init__(self, widget: QWidget, parts: Parts) -> None:
        self._widget, self._parts = widget, parts
        self._made: dict[int, PartObject] = {}

    def __len__(self) -> int:
        return self._parts.part_count()

    def at(self, index: int) -> PartObject | None:
        """The part with this number; None where there is none."""
        if not 0 <= index < len(self):
            return None
        if index not in self._made:
            self._made[index] = PartObject(self._widget, self._parts, index)
        return self._made[index]

    def at_point(self, place: QPoint) -> PartObject | None:
        """The part under a point of the screen."""
        index = self._parts.part_at(self._widget.mapFromGlobal(place))
        return None if index is None else self.at(index)
