"""The window that shows the whole talk as one continuous text."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QCloseEvent, QKeyEvent, QShowEvent
from PySide6.QtWidgets import QCheckBox, QMenu, QVBoxLayout, QWidget

from studyboard.desk.elided_label import ElidedLabel
from studyboard.desk.line_cues import Cued, mark_label
from studyboard.desk.line_figures import count_words
from studyboard.desk.line_tags import Tag
from studyboard.desk.look import Look
from studyboard.desk.rows_layout import RowsLayout
from studyboard.desk.script_sections import Labels, Section, heading, sections
from studyboard.desk.script_text import ScriptText
from studyboard.desk.session import Session
from studyboard.desk.spelling import Spelling
from studyboard.model.edits import ChangeLine, ChangeNode, Edit, Several
from studyboard.model.script import BeatKey, Part, SpokenLine
from studyboard.model.study import Changed
from studyboard.notation.labels import move_label
from studyboard.timing.clock import clock, over_or_under
from studyboard.translation import tr, tr_later
from studyboard.writing.written_words import WrittenWord


class ScriptWindow(QWidget):
    """The running order from the greeting to the thanks; each stop is stored as the line editor stores it.

    State: the sections as they are shown. The board follows the cursor, and the cursor follows the board while the
    keyboard is elsewhere.

    part_entered: the cursor is in a line that belongs to no move; carries the Part
    undo_wanted, redo_wanted: the keys for them were pressed in the text
    """

    part_entered = Signal(object)
    undo_wanted = Signal()
    redo_wanted = Signal()

    def __init__(self, session: Session, look: Look, spelling: Spelling, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._look = look
        self._spelling = spelling
        self._sections: list[Section] = []
        self._storing = False
        self._labels: Labels = {}
        self._unknown: dict[str, tuple[WrittenWord, ...]] = {}
        self.setObjectName("paper")
        self.setWindowTitle(tr("Script"))
        self.text = ScriptText(look, self._tag)
        self.silent = QCheckBox(tr("Also stops at which nothing is &said"))
        self.text.setPlaceholderText(
            tr("Nothing is said yet. Tick “Also stops at which nothing is said” to begin here.")
        )
        self.figures = ElidedLabel()
        self.figures.setAccessibleName(tr("Length of the talk"))
        foot = QWidget()
        row = RowsLayout(foot)
        row.add(self.figures, stretch=True)
        row.add(self.silent)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(10, 10, 10, 8)
        layout.addWidget(self.text, 1)
        layout.addWidget(foot)
        line = self.fontMetrics().height()
        self.resize(QSize(44 * line, 40 * line).boundedTo(self.screen().availableSize() * 0.9))
        self.text.rested.connect(self._store)
        self.text.section_entered.connect(self._follow)
        self.text.menu_opening.connect(self._offer)
        for wanted, told in ((self.text.undo_wanted, self.undo_wanted), (self.text.redo_wanted, self.redo_wanted)):
            wanted.connect(self.flush)
            wanted.connect(told)
        self.silent.toggled.connect(lambda _: self._rebuild())
        session.changed.connect(self._on_changed)
        session.opened.connect(self._reopen)
        session.stepped.connect(lambda _: self._follow_board())
        session.planned.connect(self._show_figures)
        spelling.renewed.connect(self._spell_anew)
        look.changed.connect(self._rebuild)

    def flush(self) -> None:
        """Store at once what was typed."""
        self.text.settle()

    def show_key(self, key: BeatKey, start: int = 0, end: int | None = None) -> bool:
        """Put the cursor into the line of a stop; False where it is not shown."""
        number = self._number(key)
        if number is None:
            return False
        self.text.put_cursor(number, start, end)
        return True

    def showEvent(self, event: QShowEvent) -> None:
        """The script as it is now, at the stop that the board shows."""
        super().showEvent(event)
        self._rebuild()
        self.show_key(self._session.node)
        self.text.setFocus()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Nothing that was typed is lost."""
        self.flush()
        super().closeEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape leaves, as it leaves the other windows."""
        if event.key() == Qt.Key.Key_Escape:
            self.close()
        else:
            super().keyPressEvent(event)

    # ---- what the study tells -------------------------------------------------------------------------------------

    def _on_changed(self, changed: Changed) -> None:
        if self._storing or not self.isVisible():
            return
        self.text.settle()
        self._update(changed)

    def _update(self, changed: Changed) -> None:
        """Write anew what reads differently, all of it only where stops have come, gone or moved."""
        if changed.headers:
            self._labels.clear()
        new = sections(self._session, self._labels, silent=self.silent.isChecked())
        if [(one.key, one.label, one.depth) for one in new] != [(s.key, s.label, s.depth) for s in self._sections]:
            self._rebuild()
            return
        self._sections = new
        touched: set[BeatKey] = {*changed.nodes, *changed.parts}
        for number, section in enumerate(new):
            if section.key in touched and self.text.script.line(number) != section.spoken:
                self.text.script.set_line(number, section.spoken)
            if section.key in touched or changed.settings:
                self.text.script.set_heading(number, heading(self._session, section, section.spoken.text))
        self.text.viewport().update()
        self._spell()

    def _rebuild(self) -> None:
        if not self.isVisible():
            return
        self.text.settle()
        key, character = self._here()
        scrolled = self.text.verticalScrollBar().value()
        self._sections = sections(self._session, self._labels, silent=self.silent.isChecked())
        self.text.write(
            [(heading(self._session, one, one.spoken.text), one.depth, one.spoken) for one in self._sections]
        )
        number = self._number(key)
        if number is not None:
            self.text.put_cursor(number, character)
            self.text.verticalScrollBar().setValue(scrolled)
        self._show_figures()
        self._spell()

    def _reopen(self) -> None:
        self._labels.clear()
        self._sections = []
        self._rebuild()

    def _follow_board(self) -> None:
        if self.isVisible() and not self.text.hasFocus():
            self.show_key(self._session.node)

    # ---- what the user does ---------------------------------------------------------------------------------------

    def _store(self, numbers: set[int]) -> None:
        """Store the lines of these sections; what was deleted from several of them comes back with one undo."""
        changed = Changed()
        edits: list[Edit] = []
        for number in sorted(number for number in numbers if number < len(self._sections)):
            key, line = self._sections[number].key, self.text.script.line(number)
            if line == self._sections[number].spoken:
                continue
            edits.append(self._edit(key, line))
            if isinstance(key, Part):
                changed.parts.add(key)
            else:
                changed.nodes.add(key)
        if not edits:
            return
        self._storing = True
        done = self._session.do(edits[0] if len(edits) == 1 else Several(tuple(edits), edits[0].label))
        self._storing = False
        if done:
            self._update(changed)
        else:
            self.text.try_again(numbers)

    def _edit(self, key: BeatKey, line: SpokenLine) -> Edit:
        label = tr_later("Write the spoken line")
        if isinstance(key, Part):
            return ChangeLine(key, replace(self._session.study.line(key), spoken=line), label)
        return ChangeNode(key, "spoken", line, label)

    def _follow(self, number: int) -> None:
        if not self.text.hasFocus() or number >= len(self._sections):
            return
        key = self._sections[number].key
        if isinstance(key, Part):
            self.part_entered.emit(key)
        else:
            self._session.show(key)

    def _offer(self, menu: QMenu, number: int, character: int) -> None:
        text = self.text.script.line(number).text
        self._spelling.offer(menu, text, character, lambda start, end, by: self.text.put_words(number, start, end, by))

    # ---- what is shown --------------------------------------------------------------------------------------------

    def _spell_anew(self) -> None:
        self._unknown.clear()
        self._spell()

    def _spell(self) -> None:
        if not self.isVisible():
            return
        places: list[tuple[int, int]] = []
        for number, section in enumerate(self._sections):
            text = section.spoken.text
            if text not in self._unknown:
                self._unknown[text] = self._spelling.unknown(text)
            for word in self._unknown[text]:
                start = self.text.script.place_of(number, word.start)
                places.append((start, self.text.script.place_of(number, word.end - 1) + 1))
        self.text.show_misspelt(places)

    def _show_figures(self) -> None:
        if not self.isVisible():
            return
        count = sum(count_words(section.spoken.text) for section in self._sections)
        seconds, slot = self._session.timeline.seconds, self._session.study.slot
        told = tr("{count} words · planned {length}", count=count, length=clock(seconds))
        self.figures.setText(told if slot is None else f"{told} · {over_or_under(seconds - slot)}")

    def _number(self, key: BeatKey | None) -> int | None:
        """The section of this stop, else the one in whose line this move is played."""
        here = (number for number, section in enumerate(self._sections) if section.key == key)
        played = (n for n, section in enumerate(self._sections) if any(cue.node == key for cue in section.spoken.cues))
        return next(here, None if key is None else next(played, None))

    def _here(self) -> tuple[BeatKey | None, int]:
        number = self.text.section
        if not 0 <= number < len(self._sections):
            return None, 0
        return self._sections[number].key, self.text.script.character_of(self.text.textCursor().position())

    def _tag(self, cued: Cued, number: int) -> Tag:
        study = self._session.study
        if cued.node is not None:
            there = cued.node in study.nodes
            return (
                Tag(move_label(self._session.positions, cued.node)) if there else Tag(tr("move not there"), gone=True)
            )
        key = self._sections[number].key if number < len(self._sections) else None
        marks = study.nodes[key].marks if isinstance(key, int) and key in study.nodes else ()
        if cued.mark is None or cued.mark >= len(marks):
            return Tag(tr("mark not there"), gone=True)
        return Tag(mark_label(marks[cued.mark]), marks[cued.mark].kind)
