"""The bar under the spoken line: one query at a time, or a move that could be added, with one key for each answer."""

from __future__ import annotations

from html import escape

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QLabel, QPushButton, QWidget

from studyboard.desk.announcing import announce
from studyboard.desk.look import Look
from studyboard.desk.proofreader import LineRead
from studyboard.desk.rows_layout import RowsLayout
from studyboard.reading.findings import Finding
from studyboard.reading.offers import Offer
from studyboard.translation import tr


class QueryBar(QWidget):
    """Shows what was found in the line that is written.

    State: the findings of that line, and which of its queries is shown.

    fix_wanted: mend the line as the query says; carries the Finding
    leave_wanted: leave the query; carries the Finding
    add_wanted: put the offered move on the tree; carries the Offer
    shown: another query is shown; carries the Finding, or None
    """

    fix_wanted = Signal(object)
    leave_wanted = Signal(object)
    add_wanted = Signal(object)
    shown = Signal(object)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._queries: tuple[Finding, ...] = ()
        self._offers: tuple[Offer, ...] = ()
        self._at = 0
        self.setAccessibleName(tr("Queries"))
        self._words = QLabel()
        self._words.setWordWrap(True)
        self._words.setTextFormat(Qt.TextFormat.RichText)
        self._next = QPushButton(tr("Next"))
        self._fix = QPushButton(tr("Fix"))
        self._leave = QPushButton(tr("Leave it"))
        self._add = QPushButton(tr("Add"))
        layout = RowsLayout(self, spacing=6)
        layout.add(self._words, stretch=True)
        for button in (self._next, self._fix, self._leave, self._add):
            layout.add(button)
        self._next.clicked.connect(self.show_next)
        self._fix.clicked.connect(self.fix)
        self._leave.clicked.connect(self.leave)
        self._add.clicked.connect(self.add)
        look.changed.connect(self._show)
        self._show()

    @property
    def query(self) -> Finding | None:
        """The query that is shown."""
        return self._queries[self._at] if self._at < len(self._queries) else None

    @property
    def offer(self) -> Offer | None:
        """The move that could be added, where no query is shown."""
        return self._offers[0] if self._offers and self.query is None else None

    @property
    def text(self) -> str:
        """What the bar says, without its markup."""
        return "" if self.isHidden() else self._words.accessibleName()

    def show_found(self, found: LineRead | None) -> None:
        """Show what was found in a line, or nothing."""
        queries = () if found is None else found.queries
        same = self.query is not None and self.query in queries
        self._at = queries.index(self.query) if same and self.query is not None else 0
        self._queries = queries
        self._offers = () if found is None else found.offers
        self._show()

    def show_next(self) -> None:
        """The next query of this line, the first one after the last."""
        if self._queries:
            self._at = (self._at + 1) % len(self._queries)
            self._show()

    def fix(self) -> None:
        """Mend the line, where it is certain how."""
        if self.query is not None and self.query.fix is not None:
            self.fix_wanted.emit(self.query)

    def leave(self) -> None:
        """Leave the query that is shown."""
        if self.query is not None:
            self.leave_wanted.emit(self.query)

    def add(self) -> None:
        """Put the offered move on the tree; also while a query is shown."""
        if self._offers:
            self.add_wanted.emit(self._offers[0])

    def _show(self) -> None:
        query, offer = self.query, self.offer
        self.setVisible(query is not None or offer is not None)
        self._next.setVisible(len(self._queries) > 1)
        self._fix.setVisible(query is not None and query.fix is not None)
        self._leave.setVisible(query is not None)
        self._add.setVisible(offer is not None)
        if query is not None:
            said = f"“{query.quote}”: {query.why}"
            count = (
                tr(" ({number} of {count})", number=self._at + 1, count=len(self._queries))
                if len(self._queries) > 1
                else ""
            )
            tip = query.do
        elif offer is not None:
            said, count = tr("{label} is not on the tree yet.", label=offer.label), ""
            tip = tr("Ctrl+Return adds it as a side-line.")
        else:
            said = count = tip = ""
        ink = self._look.color("query" if query is not None else "ink_quiet").name()
        self._words.setText(f"<span style='color:{ink}'>{escape(said)}{count}</span>")
        self._words.setAccessibleName(said)
        self._words.setToolTip(tip)
        if said:
            announce(self, said)
        self.shown.emit(query)
