"""Widgets that paint themselves as assistive programs see them: name, description, parts, and what is over them."""

from __future__ import annotations

from functools import cache
from weakref import WeakKeyDictionary

from PySide6.QtCore import QCoreApplication, QObject, QPoint, QRect
from PySide6.QtGui import QAccessible, QAccessibleInterface, QAccessibleObject
from PySide6.QtWidgets import QAbstractScrollArea, QWidget

from studyboard.desk.parts_accessible import NoParts, PartInterface, PartObject, PartObjects, Parts

#: A dynamic property that marks the widgets which paint themselves: what each of their parts is.
_PROPERTY = "paintsItself"
#: What a widget is whose parts are these.
_WHOLE = {
    QAccessible.Role.StaticText: QAccessible.Role.Graphic,
    QAccessible.Role.ListItem: QAccessible.Role.List,
    QAccessible.Role.Paragraph: QAccessible.Role.Document,
}


class PictureInterface(QAccessibleObject):
    """A picture, a list or a document; Qt itself takes a widget that paints itself for an empty pane."""

    def __init__(self, widget: QWidget, part_role: QAccessible.Role) -> None:
        super().__init__(widget)
        self._widget = widget
        self._role = _WHOLE[part_role]

    def role(self) -> QAccessible.Role:
        """See QAccessibleInterface."""
        return self._role

    def state(self) -> QAccessible.State:
        """See QAccessibleInterface."""
        state = QAccessible.State()
        state.focusable = bool(self._widget.focusPolicy().value)
        state.focused = self._widget.hasFocus()
        state.invisible = not self._widget.isVisible()
        return state

    def text(self, what: QAccessible.Text) -> str:
        """See QAccessibleInterface."""
        if what == QAccessible.Text.Name:
            return self._widget.accessibleName()
        return self._widget.accessibleDescription() if what == QAccessible.Text.Description else ""

    def rect(self) -> QRect:
        """See QAccessibleInterface."""
        return QRect(self._widget.mapToGlobal(QPoint(0, 0)), self._widget.size())

    def parent(self) -> QAccessibleInterface:
        """See QAccessibleInterface."""
        above = self._widget.parentWidget() or QCoreApplication.instance() or self._widget
        return QAccessible.queryAccessibleInterface(above)

    def childCount(self) -> int:
        """See QAccessibleInterface."""
        return len(self._parts()) + len(self._over())

    def child(self, index: int) -> QAccessibleInterface | None:  # type: ignore[override]
        """The parts come first, then what stands over them."""
        parts, over = self._parts(), self._over()
        part = parts.at(index)
        if part is not None:
            return QAccessible.queryAccessibleInterface(part)
        index -= len(parts)
        return QAccessible.queryAccessibleInterface(over[index]) if 0 <= index < len(over) else None

    def indexOfChild(self, child: QAccessibleInterface) -> int:
        """See QAccessibleInterface."""
        found, over = child.object(), self._over()
        if isinstance(found, PartObject):
            return found.index if found.widget is self._widget else -1
        return len(self._parts()) + over.index(found) if found in over else -1

    def childAt(self, x: int, y: int) -> QAccessibleInterface | None:  # type: ignore[override]
        """See QAccessibleInterface."""
        place = QPoint(x, y)
        over = next((w for w in self._over() if w.rect().contains(w.mapFromGlobal(place))), None)
        found = over or self._parts().at_point(place)
        return None if found is None else QAccessible.queryAccessibleInterface(found)

    def _parts(self) -> PartObjects:
        return _parts[self._widget]

    def _over(self) -> list[QWidget]:
        """The widgets that stand over the picture now, such as the field for typed moves."""
        return [
            child
            for child in self._widget.children()
            if isinstance(child, QWidget)
            and child.isVisible()
            and not (isinstance(self._widget, QAbstractScrollArea) and child is self._widget.viewport())
        ]


#: The parts of each widget that paints itself.
_parts: WeakKeyDictionary[QWidget, PartObjects] = WeakKeyDictionary()


def show_as_picture(widget: QWidget, squares: Parts) -> None:
    """Have assistive programs told that this widget is a picture, with what is on each of its squares."""
    _show(widget, squares, QAccessible.Role.StaticText)


def show_as_list(widget: QWidget, rows: Parts) -> None:
    """Have assistive programs told that this widget is a list of these rows."""
    _show(widget, rows, QAccessible.Role.ListItem)


def show_as_document(widget: QWidget) -> None:
    """Have assistive programs told that this widget is something to be read, made of the widgets in it."""
    _show(widget, NoParts(), QAccessible.Role.Paragraph)


def _show(widget: QWidget, parts: Parts, part_role: QAccessible.Role) -> None:
    _install()
    _parts[widget] = PartObjects(widget, parts)
    widget.setProperty(_PROPERTY, part_role.value)


@cache
def _install() -> None:
    QAccessible.installFactory(_interface)


def _interface(key: str, of: QObject) -> QAccessibleInterface | None:
    if isinstance(of, PartObject):
        return PartInterface(of, QAccessible.Role(of.widget.property(_PROPERTY)))
    if not isinstance(of, QWidget) or of.property(_PROPERTY) is None:
        return None
    return PictureInterface(of, QAccessible.Role(of.property(_PROPERTY)))
