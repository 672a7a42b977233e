"""What the next take tells: from which beat to which, in one go or line by line."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QComboBox, QHBoxLayout, QLabel, QSpinBox, QWidget

from studyboard.desk.ruler_talk import beat_label
from studyboard.desk.session import Session
from studyboard.model.beats import Beat
from studyboard.translation import tr


class RecordRange(QWidget):
    """Chooses the beats to record.

    State: what stands in its fields; beats are counted from 1 there and from 0 everywhere else. As long as the last
    one is the end of the talk, it stays so when the talk grows.

    first_changed: the next take begins with another beat; carries its index
    """

    first_changed = Signal(int)

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._count = 0
        self.manner = QComboBox()
        self.manner.setAccessibleName(tr("How to record"))
        self.manner.addItem(tr("In one go"))
        self.manner.addItem(tr("Line by line"))
        self.manner.setToolTip(tr("Line by line, each spoken line is a take of its own, which Space begins and ends."))
        self.first = QSpinBox()
        self.first.setAccessibleName(tr("First beat to record"))
        self.last = QSpinBox()
        self.last.setAccessibleName(tr("Last beat to record"))
        self.told = QLabel("")
        self.told.setObjectName("quiet")
        self.pre_roll = QCheckBox(tr("Pre-roll"))
        self.pre_roll.setToolTip(
            tr("First hear the seconds before, as they were recorded, then go on speaking. Use headphones.")
        )
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        begin, end = QLabel(tr("Beats")), QLabel(tr("to"))
        for widget in (self.manner, begin, self.first, end, self.last):
            row.addWidget(widget)
        row.addWidget(self.told, 1)
        row.addWidget(self.pre_roll)
        self.first.valueChanged.connect(self._first_moved)
        self.last.valueChanged.connect(self._show_names)
        session.planned.connect(self.refresh)
        session.opened.connect(self._reset)
        self.refresh()

    @property
    def first_beat(self) -> int:
        """Index of the beat with which the next take begins."""
        return max(0, self.first.value() - 1)

    @property
    def last_beat(self) -> int | None:
        """Index of the beat with which the next take ends; None for the end of the talk."""
        beats = self._beats
        last = None if self.last.value() >= len(beats) else self.last.value() - 1
        if not self.by_line:
            return last
        end = line_end(beats, self.first_beat)
        return None if end + 1 >= len(beats) else end if last is None else min(end, last)

    @property
    def by_line(self) -> bool:
        """True where each spoken line is to be a take of its own."""
        return self.manner.currentIndex() == 1

    def set_first(self, beat: int) -> None:
        """Begin with the beat of this index, without telling."""
        self.first.blockSignals(True)
        self.first.setValue(beat + 1)
        self.first.blockSignals(False)
        if self.last.value() < self.first.value():
            self.last.setValue(self.first.value())
        self._show_names()

    def go_on(self) -> bool:
        """Line by line: the line behind the one that was just told; False where there is none to record."""
        last = self.last_beat
        if not self.by_line or last is None or last + 1 >= self.last.value():
            return False
        self.first.setValue(last + 2)
        return True

    def lock(self, locked: bool) -> None:
        """While a take is being recorded nothing can be changed."""
        for widget in (self.manner, self.first, self.last, self.pre_roll):
            widget.setEnabled(not locked)

    def refresh(self) -> None:
        """The talk has other beats now."""
        if not self._session.is_planned:
            return
        count = len(self._beats)
        to_end = self.last.value() >= self._count
        self._count = count
        for field in (self.first, self.last):
            field.blockSignals(True)
            field.setRange(1, max(1, count))
            field.blockSignals(False)
        if to_end:
            self.last.setValue(max(1, count))
        self._show_names()

    @property
    def _beats(self) -> Sequence[Beat]:
        return self._session.plan.beats

    def _reset(self) -> None:
        self._count = 0
        self.first.setValue(1)
        self.refresh()

    def _first_moved(self) -> None:
        if self.last.value() < self.first.value():
            self.last.setValue(self.first.value())
        self._show_names()
        self.first_changed.emit(self.first_beat)

    def _show_names(self) -> None:
        if self.first.value() > self.last.value():
            self.first.setValue(self.last.value())
        beats = self._beats if self._session.is_planned else ()
        names = [
            self._name(beats[number - 1]) for number in (self.first.value(), self.last.value()) if number <= len(beats)
        ]
        self.told.setText(" – ".join(dict.fromkeys(filter(None, names))))

    def _name(self, beat: Beat) -> str:
        return beat_label(self._session.positions, beat.key)


def line_end(beats: Sequence[Beat], first: int) -> int:
    """The last beat of the take that tells one line, from *first* on: silent beats belong to the line before them."""
    at = first
    while at + 1 < len(beats) and not beats[at].spoken:
        at += 1
    while at + 1 < len(beats) and not beats[at + 1].spoken:
        at += 1
    return at
