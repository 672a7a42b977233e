"""Reads the script against the board while it is being written, off the window's thread."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from time import monotonic, sleep

from PySide6.QtCore import QObject, QThreadPool, QTimer, Signal

from studyboard.board.work import WorkCancelledError
from studyboard.desk.session import Session
from studyboard.desk.work_beside import WorkBeside
from studyboard.model.edits import ChangeLeft
from studyboard.model.left_query import LeftQuery
from studyboard.model.positions import Positions
from studyboard.model.script import BeatKey, FreeLine, Part, SpokenLine
from studyboard.model.study import Changed, Study
from studyboard.reading.findings import Finding, ReadThrough
from studyboard.reading.offers import Offer, offers
from studyboard.reading.read_through import read_line, read_through

#: How long the keyboard must rest before a line is read, and edits before the whole script is (ms).
_LINE_REST = 120
_SCRIPT_REST = 1500
#: How long the reading of the script holds still after each key, so that the desk never waits for it (s).
_STEP_ASIDE = 0.4
_LOOK_AGAIN = 0.05


@dataclass(frozen=True, slots=True)
class LineRead:
    """What was found in one line.

    key: whose line it is; text: the words that were read
    queries: statements that the board contradicts and that are not left
    offers: moves that are said and not on the tree
    """

    key: BeatKey
    text: str
    queries: tuple[Finding, ...]
    offers: tuple[Offer, ...]


class Proofreader(QObject):
    """The read-through that goes on beside the writing.

    State: what was found in the whole script when it was read last, and which reading is the newest; results of
    older ones are thrown away.

    line_read: one line has been read; carries a LineRead
    script_read: the whole script has been read; `queries` is new
    reading: whether the whole script is being read now
    """

    line_read = Signal(object)
    script_read = Signal()
    reading = Signal(bool)
    _line_done = Signal(int, object)
    _script_done = Signal(int, object)

    def __init__(self, session: Session, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._found = ReadThrough()
        self._line_number = 0
        self._script_number = 0
        self._wanted: tuple[BeatKey, SpokenLine] | None = None
        self._quiet_from = 0.0
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(2)
        self._line_rest = self._timer(_LINE_REST, self._read_line)
        self._script_rest = self._timer(_SCRIPT_REST, self._read_script)
        self._line_done.connect(self._take_line)
        self._script_done.connect(self._take_script)
        session.changed.connect(self._on_changed)
        session.stepped.connect(lambda _: self._step_aside())
        session.opened.connect(self._reopen)

    @property
    def queries(self) -> tuple[Finding, ...]:
        """Every query of the script that is not left, in the order of the talk."""
        return self._not_left(self._found.queries)

    @property
    def found(self) -> ReadThrough:
        """All that the last read-through of the script found."""
        return self._found

    def line_typed(self, key: BeatKey, line: SpokenLine) -> None:
        """A line is being written: read it when the keyboard rests."""
        self._step_aside()
        self._wanted = (key, line)
        self._line_rest.start()

    def read_soon(self) -> None:
        """Read the whole script when edits rest."""
        self._script_rest.start()

    def read_now(self) -> None:
        """Read the whole script without waiting for a rest."""
        self._script_rest.stop()
        self._read_script()

    def leave(self, finding: Finding) -> None:
        """Do not put this query again as long as its words stay the same; undo brings it back."""
        if finding.beat is None:
            return
        query = LeftQuery(finding.beat, finding.kind.value, finding.quote)
        left = {*self._session.study.left, query}
        ordered = sorted(left, key=lambda one: (str(one.beat), one.kind, one.quote))
        self._session.do(ChangeLeft(tuple(ordered)))

    def stop(self) -> None:
        """Throw away what is being read; returns when nothing is."""
        self._line_rest.stop()
        self._script_rest.stop()
        self._line_number += 1
        self._script_number += 1
        self._pool.waitForDone()

    def _on_changed(self, changed: Changed) -> None:
        self._step_aside()
        if changed.nodes or changed.parts:
            self._script_rest.start()
        if changed.left:
            self.script_read.emit()
            self._line_rest.start()

    def _read_line(self) -> None:
        if self._wanted is None:
            return
        key, line = self._wanted
        study = _with_line(self._session.study.snapshot(), key, line)
        self._line_number += 1
        number = self._line_number

        def work() -> None:
            positions = Positions(study)
            found = LineRead(key, line.text, read_line(study, positions, key).queries, offers(study, positions, key))
            self._line_done.emit(number, found)

        self._pool.start(WorkBeside(work))

    def _read_script(self) -> None:
        study = self._session.study.snapshot()
        self._script_number += 1
        number = self._script_number

        def work() -> None:
            try:
                found = read_through(study, cancelled=lambda: self._is_over(number))
            except WorkCancelledError:
                return
            self._script_done.emit(number, found)

        self.reading.emit(True)
        self._pool.start(WorkBeside(work))

    def _step_aside(self) -> None:
        self._quiet_from = monotonic() + _STEP_ASIDE

    def _is_over(self, number: int) -> bool:
        """Asked by the reading thread between beats: waits while somebody is at the keys, then says if it is over."""
        while monotonic() < self._quiet_from and number == self._script_number:
            sleep(_LOOK_AGAIN)
        return number != self._script_number

    def _take_line(self, number: int, found: LineRead) -> None:
        if number == self._line_number:
            self.line_read.emit(replace(found, queries=self._not_left(found.queries)))

    def _take_script(self, number: int, found: ReadThrough) -> None:
        if number == self._script_number:
            self._found = found
            self.reading.emit(False)
            self.script_read.emit()

    def _not_left(self, queries: tuple[Finding, ...]) -> tuple[Finding, ...]:
        left = self._session.study.left
        return tuple(
            query
            for query in queries
            if query.beat is None or LeftQuery(query.beat, query.kind.value, query.quote) not in left
        )

    def _reopen(self) -> None:
        self.stop()
        self._found = ReadThrough()
        self._wanted = None
        self._script_rest.start()
        self.script_read.emit()

    def _timer(self, rest: int, act: Callable[[], None]) -> QTimer:
        timer = QTimer(self)
        timer.setSingleShot(True)
        timer.setInterval(rest)
        timer.timeout.connect(act)
        return timer


def _with_line(study: Study, key: BeatKey, line: SpokenLine) -> Study:
    """The study as it would be with the line as it is written now."""
    if isinstance(key, Part):
        study.lines[key] = replace(study.lines.get(key, FreeLine()), spoken=line)
    elif key in study.nodes:
        study.nodes[key] = replace(study.nodes[key], spoken=line)
    return study
