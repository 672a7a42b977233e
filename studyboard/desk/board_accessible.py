"""The board as assistive programs see it: a picture with a name, a description, and what stands over it."""

from __future__ import annotations

from functools import cache

from PySide6.QtCore import QCoreApplication, QObject, QPoint, QRect
from PySide6.QtGui import QAccessible, QAccessibleInterface, QAccessibleObject
from PySide6.QtWidgets import QWidget

#: A dynamic property that marks the widgets which are pictures.
_PROPERTY = "pictureOfABoard"


class PictureInterface(QAccessibleObject):
    """A widget that is a picture; Qt itself takes a widget that paints itself for an empty pane."""

    def __init__(self, widget: QWidget) -> None:
        super().__init__(widget)
        self._widget = widget

    def role(self) -> QAccessible.Role:
        """See QAccessibleInterface."""
        return QAccessible.Role.Graphic

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
        return len(self._over())

    def child(self, index: int) -> QAccessibleInterface | None:  # type: ignore[override]
        """See QAccessibleInterface."""
        over = self._over()
        return QAccessible.queryAccessibleInterface(over[index]) if 0 <= index < len(over) else None

    def indexOfChild(self, child: QAccessibleInterface) -> int:
        """See QAccessibleInterface."""
        over = self._over()
        return over.index(child.object()) if child.object() in over else -1

    def _over(self) -> list[QObject]:
        """The widgets that stand over the picture now, such as the field for typed moves."""
        return [child for child in self._widget.children() if isinstance(child, QWidget) and child.isVisible()]


def show_as_picture(widget: QWidget) -> None:
    """Have assistive programs told that this widget is a picture."""
    _install()
    widget.setProperty(_PROPERTY, True)


@cache
def _install() -> None:
    QAccessible.installFactory(_interface)


def _interface(key: str, of: QObject) -> QAccessibleInterface | None:
    return PictureInterface(of) if isinstance(of, QWidget) and of.property(_PROPERTY) else None
