"""The editor of the spoken line at the shown node, or of a line that belongs to no move."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QPoint, Qt, QTimer, Signal
from PySide6.QtGui import QAction, QHideEvent, QTextCursor
from PySide6.QtWidgets import (
    QMenu,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from studyboard.desk.announcing import announce
from studyboard.desk.elided_label import ElidedLabel
from studyboard.desk.lanes_rows import part_name
from studyboard.desk.line_cues import Cued, cueable, mark_label
from studyboard.desk.line_figures import LineFigures, count_words
from studyboard.desk.line_foot import LineFoot
from studyboard.desk.line_note import NoteEditor
from studyboard.desk.line_seconds import SecondsField
from studyboard.desk.line_tags import Tag
from studyboard.desk.line_text import LineText
from studyboard.desk.look import Look
from studyboard.desk.one_row_label import OneRowLabel
from studyboard.desk.rows_layout import RowsLayout
from studyboard.desk.session import Session
from studyboard.model.edits import ChangeLine, ChangeNode, Edit
from studyboard.model.node import Node
from studyboard.model.script import BeatKey, Part, SpokenLine, words
from studyboard.model.study import Changed
from studyboard.notation.labels import move_label
from studyboard.timing.fit import intend
from studyboard.timing.pace import estimate
from studyboard.timing.plan import pace_of
from studyboard.translation import tr, tr_later

#: How long typing must rest before it is stored (ms).
_REST = 300
_SPOKEN_LABEL = tr_later("Write the spoken line")
_NOTE_LABEL = tr_later("Write a note")


class LineEditor(QWidget):
    """Writes what is said, and beside it what is printed.

    State: whose line is shown, and which of its texts have been typed into since they were stored. Typing is stored
    when it rests, when the keyboard goes elsewhere, and before another line is shown; `flush` stores it at once. Lines
    that could not be stored, on a full disk for instance, are kept here and tried again with each flush.

    line_shown: another line is shown, or the shown one reads differently now; carries its key and the SpokenLine
    told: something was done that the user should know of; carries a sentence
    """

    line_shown = Signal(object, object)
    told = Signal(str)

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._look = look
        self._key: BeatKey = session.node
        self._typed: set[str] = set()
        self._unstored: dict[BeatKey, SpokenLine] = {}
        self._storing = False
        self.setAccessibleName(tr("Line"))

        self._heading = ElidedLabel()
        self._heading.setObjectName("heading")
        self._figures = OneRowLabel()
        self._figures.setAccessibleName(tr("Length of the line"))
        self._text = LineText(look, self._tag)
        self._text.setPlaceholderText(tr("What do you say here?"))
        self._note = NoteEditor(look)
        self._foot = LineFoot()
        self._intended, self._think = self._foot.intended, self._foot.think
        self._cue, self._print = self._foot.cue, self._foot.note
        self._pages = QStackedWidget()
        self._pages.addWidget(self._text)
        self._pages.addWidget(self._note)
        self._lay()

        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(_REST)
        self._rest.timeout.connect(self.flush)
        self._text.edited.connect(lambda: self._on_typed("spoken"))
        self._note.edited.connect(lambda: self._on_typed("note"))
        self._note.nags_chosen.connect(self._on_nags)
        self._text.left.connect(self.flush)
        self._text.tag_moved.connect(self.flush)
        self._note.left.connect(self.flush)
        self._intended.changed.connect(self._on_intended)
        self._think.changed.connect(self._on_think)
        self._cue.clicked.connect(self._offer_cues)
        self._print.toggled.connect(self._on_print)
        session.stepped.connect(self._on_stepped)
        session.changed.connect(self._on_changed)
        session.opened.connect(self._on_opened)
        look.changed.connect(self._dress)
        self._dress()
        self._show()

    @property
    def key(self) -> BeatKey:
        """Whose line is shown: a node or a part of the talk."""
        return self._key

    @property
    def text(self) -> LineText:
        """Where the line is written."""
        return self._text

    @property
    def note(self) -> NoteEditor:
        """Where the note is written."""
        return self._note

    @property
    def intended(self) -> SecondsField:
        """The intended length (s)."""
        return self._intended

    @property
    def think(self) -> SecondsField:
        """The think pause (s)."""
        return self._think

    @property
    def heading(self) -> str:
        """What is being written."""
        return self._heading.text()

    @property
    def figures(self) -> str:
        """Words and seconds, as they are shown."""
        return self._figures.text()

    def edit_part(self, part: Part) -> None:
        """Write the line of a part of the talk, until the board steps elsewhere."""
        self.flush()
        self._key = part
        self._print.setChecked(False)
        self._show()

    def edit_node(self) -> None:
        """Write the line of the shown node again."""
        self.flush()
        self._key = self._session.node
        self._show()

    def focus_line(self) -> None:
        """Put the keyboard into the spoken line, at its end where it was nowhere yet."""
        self._print.setChecked(False)
        if self._text.textCursor().position() == 0:
            self._text.moveCursor(QTextCursor.MoveOperation.End)
        self._text.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def focus_note(self) -> None:
        """Put the keyboard into the note of the shown node."""
        if isinstance(self._key, Part):
            self.edit_node()
        self._print.setChecked(True)
        self._note.after_field.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def insert_cue(self, node: int) -> None:
        """Put the cue that plays this node's move at the cursor; it is taken away from where it was before."""
        self._insert(Cued(node=node))

    def insert_mark_cue(self, mark: int) -> None:
        """Put the cue that shows this mark of the node at the cursor."""
        self._insert(Cued(mark=mark))

    def insert_next_cue(self) -> None:
        """Put a cue at the cursor for the first move or mark of this beat that has none yet."""
        waiting = [cued for cued in self._cueable() if cued not in self._text.cued]
        if waiting:
            self._insert(waiting[0])
        else:
            self._session.refused.emit(tr("Every move and mark of this beat has its cue already."))

    def shift_cue(self, step: int) -> None:
        """Move the cue at the cursor by so many words, and say at which word it is now."""
        if not self._text.shift_cue(step):
            self.told.emit(tr("There is no cue at the cursor."))
            return
        self.flush()
        said, word = words(self._text.line.text), self._text.word
        if word < len(said):
            announce(self._text.viewport(), tr("Cue at “{word}”", word=said[word]))
        else:
            announce(self._text.viewport(), tr("Cue after the last word"))

    def put_cursor_behind(self, cued: Cued) -> None:
        """Put the keyboard into the line, right behind the tag that plays or shows this."""
        self._text.setFocus(Qt.FocusReason.OtherFocusReason)
        self._text.put_cursor_behind(cued)

    def add_below(self, widget: QWidget) -> None:
        """Put something between the line and its seconds."""
        layout = self.layout()
        assert isinstance(layout, QVBoxLayout)
        layout.insertWidget(2, widget)

    def flush(self) -> None:
        """Store what has been typed and not been stored yet."""
        self._rest.stop()
        self._intended.commit()
        self._think.commit()
        typed, self._typed = self._typed, set()
        self._store_again("spoken" in typed)
        if not typed or not self._there():
            return
        self._storing = True
        if "spoken" in typed:
            self._store_spoken(self._text.line)
        if "note" in typed and isinstance(self._key, int):
            node = self._session.study.node(self._key)
            for field, text in (("note_before", self._note.before), ("note", self._note.after)):
                if getattr(node, field) != text:
                    self._session.do(ChangeNode(node.id, field, text, _NOTE_LABEL))
        self._storing = False
        self._show_print()

    def _store_again(self, typed_here: bool) -> None:
        """Try again to store what could not be, but for the shown line where it was typed into meanwhile."""
        for key, spoken in list(self._unstored.items()):
            if key == self._key and typed_here:
                continue
            self._storing = True
            gone = not isinstance(key, Part) and key not in self._session.study.nodes
            if gone or self._session.do(self._edit(key, spoken)):
                del self._unstored[key]
            self._storing = False

    def hideEvent(self, event: QHideEvent) -> None:
        """See QWidget."""
        self.flush()
        super().hideEvent(event)

    # What the session tells.

    def _on_stepped(self, node: int) -> None:
        if node != self._key:
            self.flush()
            self._key = node
            self._show()

    def _on_opened(self) -> None:
        self._typed.clear()
        self._unstored.clear()
        self._rest.stop()
        self._key = self._session.node
        self._show()

    def _on_changed(self, changed: Changed) -> None:
        if self._storing:
            return
        if changed.settings:
            self._show_figures()
        if not self._there():
            return
        # What was typed meanwhile is the newer; it is stored over the change, which stays in the history.
        self.flush()
        touched = self._key in changed.parts if isinstance(self._key, Part) else self._key in changed.nodes
        if touched:
            self._load(self._text.change_line)
        elif changed.nodes or changed.headers:
            self._text.refresh_tags()

    # What the user does.

    def _on_typed(self, what: str) -> None:
        self._typed.add(what)
        self._rest.start()
        self._show_figures()
        if what == "spoken":
            self.line_shown.emit(self._key, self._text.line)

    def _on_intended(self, intended: float | None) -> None:
        if not self._there():
            return
        self._storing = True
        self._session.do(intend(self._session.study, self._key, intended))
        self._storing = False
        self._show_figures()

    def _on_think(self, think: float | None) -> None:
        if isinstance(self._key, Part) or not self._there():
            return
        self._storing = True
        self._session.do(ChangeNode(self._key, "think", think or 0.0, tr_later("Set the think pause")))
        self._storing = False
        self._show_figures()

    def _on_nags(self, nags: tuple[int, ...]) -> None:
        self.flush()
        if isinstance(self._key, int) and self._there():
            self._session.do(ChangeNode(self._key, "nags", nags, tr_later("Choose a glyph")))

    def _on_print(self, shown: bool) -> None:
        self.flush()
        self._pages.setCurrentWidget(self._note if shown else self._text)
        if shown and self._print.hasFocus():
            self._note.after_field.setFocus(Qt.FocusReason.OtherFocusReason)
        self._cue.setVisible(not shown)
        self._show_heading()

    def _offer_cues(self) -> None:
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        for cued in self._cueable():
            tag = self._tag(cued)
            action = QAction(tag.words, menu)
            action.setCheckable(True)
            action.setChecked(cued in self._text.cued)
            action.triggered.connect(lambda _=False, cued=cued: self._insert(cued))
            menu.addAction(action)
        if menu.isEmpty():
            menu.addAction(tr("No move or mark here")).setEnabled(False)
        menu.popup(self._cue.mapToGlobal(QPoint(0, -menu.sizeHint().height())))

    def _insert(self, cued: Cued) -> None:
        self._print.setChecked(False)
        self._text.insert_cued(cued)
        self._text.setFocus(Qt.FocusReason.OtherFocusReason)
        self.flush()

    # What is shown.

    def _there(self) -> bool:
        return isinstance(self._key, Part) or self._key in self._session.study.nodes

    def _node(self) -> Node | None:
        return None if isinstance(self._key, Part) else self._session.study.nodes.get(self._key)

    def _spoken(self) -> tuple[SpokenLine, float | None]:
        """The line as it was typed last, stored or not, and its intended seconds."""
        spoken, intended = self._stored()
        return self._unstored.get(self._key, spoken), intended

    def _stored(self) -> tuple[SpokenLine, float | None]:
        node = self._node()
        if node is not None:
            return node.spoken, node.intended
        if isinstance(self._key, Part):
            line = self._session.study.line(self._key)
            return line.spoken, line.intended
        return SpokenLine(), None

    def _store_spoken(self, spoken: SpokenLine) -> None:
        if spoken == self._stored()[0] or self._session.do(self._edit(self._key, spoken)):
            self._unstored.pop(self._key, None)
        else:
            self._unstored[self._key] = spoken

    def _edit(self, key: BeatKey, spoken: SpokenLine) -> Edit:
        if isinstance(key, Part):
            return ChangeLine(key, replace(self._session.study.line(key), spoken=spoken), _SPOKEN_LABEL)
        return ChangeNode(key, "spoken", spoken, _SPOKEN_LABEL)

    def _show(self) -> None:
        self._load(self._text.set_line)
        node = self._node()
        self._think.setEnabled(node is not None)
        self._cue.setEnabled(node is not None)
        self._print.setEnabled(node is not None)
        self._show_heading()

    def _load(self, show_line: object) -> None:
        spoken, intended = self._spoken()
        if self._text.line != spoken.sorted():
            show_line(spoken)  # type: ignore[operator]
        node = self._node()
        if node is not None:
            self._note.show_node(node)
        self._intended.show_seconds(intended)
        self._think.show_seconds((node.think if node is not None else 0.0) or None)
        self._typed.clear()
        self._text.refresh_tags()
        self._show_figures()
        self._show_print()
        self.line_shown.emit(self._key, spoken)

    def _show_heading(self) -> None:
        if isinstance(self._key, Part):
            self._heading.setText(tr("{part}: said {when}", part=part_name(self._key), when=tr(_WHEN[self._key])))
            return
        label = self._label(self._key)
        self._heading.setText(
            tr("Note for print at {label}", label=label)
            if self._print.isChecked()
            else tr("Spoken line at {label}", label=label)
        )
        self._text.setAccessibleName(self._heading.text())

    def _show_figures(self) -> None:
        text = self._text.line.text
        think = 0.0 if isinstance(self._key, Part) else self._think.seconds or 0.0
        seconds = estimate(pace_of(self._session.study, self._key), text)
        figures = LineFigures(count_words(text), seconds, self._intended.seconds, think)
        self._figures.setText(str(figures))
        self._figures.setStyleSheet(f"color: {self._look.color('over' if figures.over else 'ink_quiet').name()};")

    def _show_print(self) -> None:
        node = self._node()
        written = node is not None and bool(node.note or node.note_before or node.nags)
        self._foot.show_note(written)

    def _cueable(self) -> list[Cued]:
        return [] if isinstance(self._key, Part) or not self._there() else cueable(self._session.study, self._key)

    def _tag(self, cued: Cued) -> Tag:
        if cued.node is not None:
            there = cued.node in self._session.study.nodes
            return Tag(self._label(cued.node)) if there else Tag(tr("move not there"), gone=True)
        node = self._node()
        marks = node.marks if node is not None else ()
        if cued.mark is None or cued.mark >= len(marks):
            return Tag(tr("mark not there"), gone=True)
        return Tag(mark_label(marks[cued.mark]), marks[cued.mark].kind)

    def _label(self, node: int) -> str:
        return move_label(self._session.positions, node) or tr("the start")

    def _lay(self) -> None:
        top = RowsLayout()
        top.add(self._heading, stretch=True)
        top.add(self._figures)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(6, 2, 6, 2)
        layout.setSpacing(8)
        layout.addLayout(top)
        layout.addWidget(self._pages, 1)
        layout.addWidget(self._foot)
        for before, after in (
            (self._text, self._intended),
            (self._intended, self._think),
            (self._think, self._cue),
            (self._cue, self._print),
        ):
            QWidget.setTabOrder(before, after)

    def _dress(self) -> None:
        self._text.dress()
        self._show_figures()


_WHEN = {
    Part.GREETING: tr_later("before the first move"),
    Part.CLOSING: tr_later("after the last move"),
    Part.THANKS: tr_later("at the very end"),
}
