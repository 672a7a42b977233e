"""Finding an action by what it does: a field to type into, and every action that answers."""

from __future__ import annotations

from collections.abc import Mapping
from html import escape

from PySide6.QtCore import QEvent, QObject, QSize, Qt
from PySide6.QtGui import QAction, QKeyEvent, QKeySequence
from PySide6.QtWidgets import (
    QApplication,
    QDialog,
    QLabel,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QVBoxLayout,
    QWidget,
)

from studyboard.desk.actions import ACTIONS, ActionSpec
from studyboard.translation import tr

_IN_LIST = (Qt.Key.Key_Up, Qt.Key.Key_Down, Qt.Key.Key_PageUp, Qt.Key.Key_PageDown)


def plain_label(spec: ActionSpec) -> str:
    """What an action is called, without the sign of its letter and the dots of its dialog."""
    return tr(spec.text).replace("&", "").rstrip("…")


def answering(typed: str) -> list[ActionSpec]:
    """The actions that have every typed word in their label, menu or help; those with it in the label come first."""
    wanted = typed.casefold().split()
    found: list[tuple[int, int, ActionSpec]] = []
    for place, spec in enumerate(ACTIONS):
        label = plain_label(spec).casefold()
        about = f"{label} {tr(spec.menu).replace('&', '').casefold()} {tr(spec.help).casefold()}"
        if all(word in about for word in wanted):
            begins = sum(any(part.startswith(word) for part in label.split()) for word in wanted)
            inside = sum(word in label for word in wanted)
            found.append((-2 * begins - inside, place, spec))
    return [spec for _, _, spec in sorted(found, key=lambda entry: entry[:2])]


class ActionFinder(QDialog):
    """Lists the actions that answer to what is typed.

    State: the action that was chosen, or None.
    """

    def __init__(self, actions: Mapping[str, QAction], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._actions = actions
        self.chosen: QAction | None = None
        self.setWindowTitle(tr("Find an action"))
        line = self.fontMetrics().height()
        self.resize(QSize(34 * line, 24 * line).boundedTo(self.screen().availableSize() * 0.95))
        self.field = QLineEdit()
        self.field.setPlaceholderText(tr("What do you want to do?"))
        self.field.setAccessibleName(tr("What do you want to do?"))
        self.field.setClearButtonEnabled(True)
        self.list = QListWidget()
        self.list.setAccessibleName(tr("Actions"))
        self.list.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        layout = QVBoxLayout(self)
        layout.addWidget(self.field)
        layout.addWidget(self.list, 1)
        self.field.installEventFilter(self)
        self.field.textChanged.connect(self._fill)
        self.field.returnPressed.connect(self._choose)
        self.list.itemClicked.connect(lambda _: self._choose())
        self._fill("")

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The arrows go through the list while one types."""
        pressed = event.key() if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress else None
        if watched is self.field and pressed in _IN_LIST:
            QApplication.sendEvent(self.list, event)
            return True
        return super().eventFilter(watched, event)

    def _fill(self, typed: str) -> None:
        self.list.clear()
        for spec in answering(typed):
            action = self._actions[spec.name]
            keys = ", ".join(key.toString(QKeySequence.SequenceFormat.NativeText) for key in action.shortcuts())
            words = QLabel(_row(spec, keys, now=action.isEnabled()))
            words.setContentsMargins(8, 5, 8, 5)
            words.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
            item = QListWidgetItem()
            item.setData(Qt.ItemDataRole.UserRole, spec.name)
            item.setData(Qt.ItemDataRole.AccessibleTextRole, f"{plain_label(spec)}. {keys} {tr(spec.help)}")
            item.setSizeHint(words.sizeHint())
            if not action.isEnabled():
                item.setFlags(item.flags() & ~Qt.ItemFlag.ItemIsEnabled)
            self.list.addItem(item)
            self.list.setItemWidget(item, words)
        enabled = (row for row in range(self.list.count()) if self.list.item(row).flags() & Qt.ItemFlag.ItemIsEnabled)
        self.list.setCurrentRow(next(enabled, -1))

    def _choose(self) -> None:
        item = self.list.currentItem()
        if item is not None and item.flags() & Qt.ItemFlag.ItemIsEnabled:
            self.chosen = self._actions[item.data(Qt.ItemDataRole.UserRole)]
            self.accept()


def _row(spec: ActionSpec, keys: str, *, now: bool) -> str:
    menu = escape(tr(spec.menu).replace("&", ""))
    keys = f" &nbsp; <b>{escape(keys)}</b>" if keys else ""
    label = escape(plain_label(spec))
    label = f"<b>{label}</b>" if now else tr("{action} (not here)", action=label)
    return f"{label} &nbsp; {menu}{keys}<br>{escape(tr(spec.help))}"
