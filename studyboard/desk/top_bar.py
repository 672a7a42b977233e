"""The bar over the desk: what is being worked on, how its time stands, and the four stages of the day."""

from __future__ import annotations

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from studyboard.desk.elided_label import ElidedLabel
from studyboard.desk.look import Look
from studyboard.desk.session import Session
from studyboard.timing.clock import clock, over_or_under
from studyboard.translation import tr, tr_later

#: The stages of the day: name of the action, label.
STAGES = (
    ("write", tr_later("Write")),
    ("rehearse", tr_later("Rehearse")),
    ("record", tr_later("Record")),
    ("deliver", tr_later("Deliver")),
)


class TopBar(QWidget):
    """Title, slot and stages.

    chosen: a stage was clicked; carries the name of its action
    """

    chosen = Signal(str)

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._look = look
        self._title = ElidedLabel()
        self._title.setAccessibleName(tr("Study"))
        self._slot = ElidedLabel()
        self._slot.setAccessibleName(tr("Length of the talk against its slot"))
        words = QVBoxLayout()
        words.setSpacing(1)
        words.addWidget(self._title)
        words.addWidget(self._slot)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(4, 0, 4, 0)
        layout.addLayout(words, 1)
        self._group = QButtonGroup(self)
        self._buttons: dict[str, QPushButton] = {}
        for name, label in STAGES:
            button = QPushButton(tr(label))
            button.setProperty("mode", True)
            button.setCheckable(name != "deliver")
            button.clicked.connect(lambda _=False, name=name: self.chosen.emit(name))
            if name != "deliver":
                self._group.addButton(button)
            self._buttons[name] = button
            layout.addWidget(button)
        self.show_stage("write")
        session.opened.connect(self._show_title)
        session.changed.connect(lambda changed: self._show_title() if changed.headers else None)
        session.planned.connect(self.refresh)
        look.changed.connect(self._dress)
        self._show_title()
        self._slot.setText(" ")
        # The talk is timed once the desk is on the screen.
        QTimer.singleShot(0, self, lambda: self._dress() if session.is_planned else session.plan_now())
        self._title.setFont(look.move_font(1.3))
        self._slot.setFont(look.ui_font())

    def show_stage(self, name: str) -> None:
        """Show which stage the desk is in."""
        self._buttons[name].setChecked(True)

    def refresh(self) -> None:
        """Show the study's title and time."""
        self._show_title()
        if not self._session.is_planned:
            return
        slot, total = self._session.study.slot, self._session.timeline.seconds
        planned = tr("planned {length}", length=clock(total))
        if slot is None:
            self._slot.setText(tr("{planned} · no slot set", planned=planned))
            self._slot.shorter = planned
        else:
            distance = over_or_under(total - slot)
            self._slot.setText(
                tr("Slot {slot} · {planned} · {distance}", slot=clock(slot), planned=planned, distance=distance)
            )
            self._slot.shorter = tr("Slot {slot} · {distance}", slot=clock(slot), distance=distance)
        over = slot is not None and total > slot + 0.5
        dress = f"color: {self._look.color('over' if over else 'ink_quiet').name()};"
        if dress != self._slot.styleSheet():
            self._slot.setStyleSheet(dress)

    def _show_title(self) -> None:
        self._title.setText(title(self._session))

    def _dress(self) -> None:
        self._title.setFont(self._look.move_font(1.3))
        self._slot.setFont(self._look.ui_font())
        self.refresh()


def title(session: Session) -> str:
    """What the study is called: its players and event, else its file's name."""
    headers = session.study.headers
    white, black = headers.get("White", "?"), headers.get("Black", "?")
    event = headers.get("Event", "?")
    if white in ("?", "") and black in ("?", ""):
        return event if event not in ("?", "") else session.file.path.stem
    players = f"{white} – {black}"
    return players if event in ("?", "") else f"{players}, {event}"
