"""Choosing several rows of the lanes together."""

from __future__ import annotations

from typing import TYPE_CHECKING

from studyboard.desk.session import Session
from studyboard.model.reading_order import rows_in_order, way_between
from studyboard.model.script import BeatKey, Part

if TYPE_CHECKING:
    from studyboard.desk.lanes import Lanes


class Choosing:
    """The rows that are chosen together with the current one.

    State: the row from which they are counted; the rows themselves are in the session.
    """

    def __init__(self, lanes: Lanes, session: Session) -> None:
        self._lanes = lanes
        self._session = session
        self._start: BeatKey = session.node

    @property
    def rows(self) -> tuple[BeatKey, ...]:
        """The rows that a command acts on, in reading order: those that are chosen together, else the current one."""
        chosen = self._session.chosen
        if not chosen:
            return (self._lanes.current,)
        return tuple(key for key in rows_in_order(self._session.study) if key in chosen)

    def begin_at(self, key: BeatKey) -> None:
        """What is chosen next is counted from this row."""
        self._start = key

    def forget_gone(self) -> None:
        """Where the row from which they are counted is not on the tree any more, begin at the one that is shown."""
        if not isinstance(self._start, Part) and self._start not in self._session.study.nodes:
            self._start = self._session.node

    def up_to(self, key: BeatKey) -> None:
        """Choose all rows on the way from the one where choosing began, and go to this one."""
        start = self._start
        self._lanes.go_to(key)
        self._start = start
        self._session.choose(way_between(self._session.study, start, key) if start != key else ())

    def also(self, key: BeatKey) -> None:
        """Choose this row together with the others and go to it; where it is one of them already, no more."""
        chosen = self._session.chosen or frozenset((self._lanes.current,))
        if key not in chosen:
            self._lanes.go_to(key)
            self._session.choose((*chosen, key))
        elif len(chosen) > 1:
            rest = chosen - {key}
            if key == self._lanes.current:
                self._lanes.go_to(next(row for row in rows_in_order(self._session.study) if row in rest))
            self._session.choose(rest if len(rest) > 1 else ())

    def line(self) -> None:
        """Choose every row of the line that is current; once more, with all that branches off it."""
        study, current = self._session.study, self._lanes.current
        start = study.root if isinstance(current, Part) else study.line_start(current)
        parts = tuple(Part) if start == study.root else ()
        line: frozenset[BeatKey] = frozenset((*parts, *study.main_line(start)))
        branch: frozenset[BeatKey] = frozenset((*parts, *(node.id for node in study.branch(start))))
        self._session.choose(branch if self._session.chosen == line else line)
