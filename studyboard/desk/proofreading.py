"""The read-through at the desk: underlines, the bar under the line, the list of queries, and their answers."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from studyboard.desk.proofreader import LineRead, Proofreader
from studyboard.desk.queries_window import QueriesWindow
from studyboard.desk.query_bar import QueryBar
from studyboard.model.script import BeatKey, Part, SpokenLine
from studyboard.reading.findings import Finding
from studyboard.reading.offers import Offer, add_offer
from studyboard.translation import tr

if TYPE_CHECKING:
    from studyboard.desk.main_window import MainWindow


class Proofreading(QObject):
    """Ties the proofreader to the panes of one desk.

    State: what was found last in the line that is shown, and the list of queries once it was opened.
    """

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        self._session = window.session
        self._editor = window.line_editor
        self._found: LineRead | None = None
        self._list: QueriesWindow | None = None
        self.proofreader = Proofreader(window.session, self)
        self.bar = QueryBar(window.look)
        self._editor.add_below(self.bar)
        self._editor.line_shown.connect(self._line_shown)
        self.proofreader.line_read.connect(self._line_read)
        self.bar.shown.connect(self._query_shown)
        self.bar.fix_wanted.connect(self._fix)
        self.bar.leave_wanted.connect(self._leave)
        self.bar.add_wanted.connect(self._add)
        self._line_shown(self._editor.key, self._editor.text.line)
        self.proofreader.read_soon()

    def show_list(self) -> None:
        """Open the list of all queries, and read the script again."""
        self._editor.flush()
        if self._list is None:
            self._list = QueriesWindow(self._session, self.proofreader, self._window)
            self._list.chosen.connect(self._show_query)
        self._list.show()
        self._list.raise_()
        self.proofreader.read_now()

    def show_next(self) -> None:
        """The next query of this line, else of the talk."""
        queries = self.proofreader.queries
        if not queries:
            self._window.tell(tr("The read-through has no query."))
            return
        shown = self.bar.query
        if shown is not None and any(q.beat == shown.beat and q.start > shown.start for q in queries):
            self.bar.show_next()
            return
        order = [stretch.key for stretch in self._session.timeline.stretches]
        here = order.index(self._editor.key) if self._editor.key in order else -1
        ahead = (q for q in queries if q.beat in order and order.index(q.beat) > here)
        self._show_query(next(ahead, queries[0]))

    def stop(self) -> None:
        """Stop reading; returns when nothing is read any more."""
        self.proofreader.stop()

    def _line_shown(self, key: BeatKey, line: SpokenLine) -> None:
        self._editor.text.underline(())
        if not line:
            self.bar.show_found(None)
        self.proofreader.line_typed(key, line)

    def _line_read(self, found: LineRead) -> None:
        if self._is_shown(found):
            self._found = found
            self.bar.show_found(found)

    def _query_shown(self, query: Finding | None) -> None:
        found = self._found
        if found is None or not self._is_shown(found):
            return
        chosen = None if query is None else (query.start, query.end)
        self._editor.text.underline([(one.start, one.end) for one in found.queries], chosen)
        self._window.board_view.point_at(() if query is None else query.squares)

    def _is_shown(self, found: LineRead) -> bool:
        return found.key == self._editor.key and found.text == self._editor.text.line.text

    def _show_query(self, query: Finding) -> None:
        if isinstance(query.beat, Part):
            self._window.edit_part(query.beat)
        elif query.beat is not None:
            self._window.write_stage()
            self._session.show(query.beat)
            self._editor.focus_line()

    def _fix(self, query: Finding) -> None:
        if query.fix is not None:
            self._editor.text.replace_characters(query.fix.start, query.fix.end, query.fix.text)
            self._editor.flush()

    def _leave(self, query: Finding) -> None:
        # What was typed comes first in the history, so that undo brings the query back and not the words away.
        self._editor.flush()
        self.proofreader.leave(query)

    def _add(self, offer: Offer) -> None:
        self._editor.flush()
        if self._session.attempt(add_offer, offer):
            self._window.tell(tr("{label} is on the tree now. Ctrl+Z takes it off again.", label=offer.label))
            self.proofreader.line_typed(self._editor.key, self._editor.text.line)
