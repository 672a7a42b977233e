"""All lanes of a study as one picture, of which only the part in view is painted."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from enum import Enum
from html import escape

from PySide6.QtGui import QPainter

from studyboard.desk.board_words import move_words
from studyboard.desk.lane_layout import Branching, LaneLayout, LaneLine, lay_out, unfolded_for
from studyboard.desk.lanes_drag import Beside, Onto, drop_at
from studyboard.desk.lanes_drop_paint import paint_beside, paint_onto, paint_words
from studyboard.desk.lanes_geometry import RAIL, TEXT, Box, LaneGeometry, lane_geometry, part_in_row
from studyboard.desk.lanes_paint import CellState, LanePainter
from studyboard.desk.lanes_rails import Rails, paint_rails
from studyboard.desk.lanes_rows import (
    RowText,
    heading_name,
    node_row,
    part_name,
    part_row,
    row_tool_tip,
    seconds_in_words,
    short_seconds,
    telling_in_words,
)
from studyboard.desk.lanes_times import LaneTimes
from studyboard.desk.look import Look
from studyboard.desk.session import Session
from studyboard.model.node import Place
from studyboard.model.script import BeatKey, Part
from studyboard.model.study import Changed
from studyboard.translation import tr


class Spot(Enum):
    """What lies under the pointer."""

    ROW = "row"
    HEADING = "heading"
    KNOB = "knob"


@dataclass(frozen=True, slots=True)
class Target:
    """Something that the pointer can be over.

    key: for a ROW the node or part, for a HEADING the first node of its side-line, for a KNOB the node at which
        side-lines leave
    """

    spot: Spot
    key: BeatKey


class LaneCanvas:
    """The lanes of the study that a session shows.

    State: what is folded; the layout and its pixels, made anew only when the tree, the fonts or the width change;
    the texts of rows that were looked at; the current row and the way to it.

    current: the node or part whose row is current
    hovered: what is under the pointer
    focused: the lanes have the keyboard
    drop: where a branch that is being dragged would go
    held: the first node of that branch
    found: the rows in which what is sought was found
    """

    def __init__(self, session: Session, look: Look, width: int) -> None:
        self._session = session
        self._look = look
        self._painter = LanePainter(look)
        self._width = width
        self._share = 1
        self._rows: dict[BeatKey, RowText] = {}
        self._times: LaneTimes | None = None
        self.current: BeatKey = session.node
        self.hovered: Target | None = None
        self.focused = False
        self.drop: Beside | Onto | None = None
        self.held: int | None = None
        self.found: frozenset[BeatKey] = frozenset()
        self._pointer = (0.0, 0.0)
        self.layout: LaneLayout
        self.geometry: LaneGeometry
        self._lay_out(())

    # -- what changes

    def reopen(self) -> None:
        """Another study is open."""
        self.forget_rows()
        self.current = self._session.node
        self.hovered = None
        self._lay_out(())

    def forget_rows(self) -> None:
        """Read everything that rows say again when it is next looked at."""
        self._rows.clear()
        self._times = None

    def take_in(self, changed: Changed) -> bool:
        """Take an edit in; True where rows have moved."""
        study = self._session.study
        if changed.headers or len(changed.nodes) > 64:
            self._rows.clear()
        touched: set[BeatKey] = {*changed.nodes, *changed.parts}
        for key in touched:
            self._rows.pop(key, None)
        if not isinstance(self.current, Part):
            self.current = self._session.node
        if not self.layout.still_fits(study, changed.nodes):
            folded = [n for n in self.layout.folded if n in study.nodes and study.begins_side_line(n)]
            self._lay_out(folded)
            return True
        tops = self.geometry.tops
        self._measure()
        self._find_way()
        self._find_hidden()
        return self.geometry.tops != tops

    def retime(self) -> None:
        """The talk has been timed anew."""
        self._times = LaneTimes(self._session.study, self._session.plan)

    def relook(self) -> None:
        """The look has changed."""
        self._painter.refresh()
        self._measure()

    def resize(self, width: int) -> None:
        """The view is that wide now (px)."""
        if width != self._width:
            self._width = width
            self._measure()

    def go(self, key: BeatKey) -> bool:
        """Make this row the current one; True where side-lines on the way to it had to be unfolded."""
        self.current = key
        if not isinstance(key, Part) and key not in self.layout.cells:
            self._lay_out(unfolded_for(self._session.study, self.layout.folded, key))
            return True
        self._find_way()
        return False

    def fold(self, side_lines: Iterable[int]) -> None:
        """Fold these side-lines away, by their first nodes."""
        self._lay_out(self.layout.folded.union(side_lines))

    def unfold(self, side_lines: Iterable[int]) -> None:
        """Show these side-lines again."""
        self._lay_out(self.layout.folded.difference(side_lines))

    def _lay_out(self, folded: Collection[int]) -> None:
        self.layout = lay_out(self._session.study, frozenset(folded))
        # Lanes keep their width while some are folded, so that the knob stays under the pointer.
        self._share = max(self._share, self.layout.lanes) if self.layout.folded else self.layout.lanes
        self._measure()
        self._find_way()
        self._find_hidden()

    def _measure(self) -> None:
        self.geometry = lane_geometry(self._session.study, self.layout, self._painter.heights, self._width, self._share)

    def _find_way(self) -> None:
        """For each line on the way to the current node: the last row that lies on it."""
        way: dict[int, int] = {}
        at: int | None = self._session.study.root if isinstance(self.current, Part) else self.current
        while at is not None and at in self.layout.cells:
            line = self.layout.line_of(at)
            way[line.start] = self.layout.cells[at][1]
            at = line.branch
        self._way = {} if isinstance(self.current, Part) else way

    def _find_hidden(self) -> None:
        """The lines that are not told, themselves or with a line that they branch off."""
        nodes = self._session.study.nodes
        hidden: set[int] = set()
        for line in self.layout.lines.values():
            if line.parent is not None and (line.parent in hidden or nodes[line.start].telling.place is Place.HIDDEN):
                hidden.add(line.start)
        self._hidden = hidden

    def drag(self, branch: int, x: float, y: float) -> None:
        """The branch with this first node is held over this point of the picture."""
        self.held, self._pointer = branch, (x, y)
        self.drop = drop_at(self._session.study, self.layout, self.geometry, branch, x, y, self.drop)

    def end_drag(self) -> None:
        """Nothing is held any more."""
        self.drop = self.held = None

    # -- where things are

    @property
    def strip_height(self) -> int:
        """The height of the strip with the names of lanes (px)."""
        return self._painter.heights.small + 16

    def box_of(self, key: BeatKey) -> Box | None:
        """The cell of a node or part, or None where it is not shown."""
        cell = (0, self.layout.parts[key]) if isinstance(key, Part) else self.layout.cells.get(key)
        return None if cell is None else self._cell(*cell)

    def _cell(self, lane: int, row: int) -> Box:
        return self.geometry.cell(lane, row, headed=self.layout.headed_at(lane, row) is not None)

    def knob_of(self, node: int) -> Box | None:
        """Where the side-lines that leave at this node are folded, or None where none leaves."""
        branching = self.layout.branchings.get(node)
        return None if branching is None else self.geometry.knob(branching.lane, branching.row)

    def heading_of(self, side_line: int) -> Box | None:
        """The heading of a side-line, by its first node, or None where it is not shown."""
        line = self.layout.lines.get(side_line)
        return None if line is None or line.branch is None else self.geometry.heading(line.lane, line.row)

    def target_at(self, x: float, y: float) -> Target | None:
        """What lies at this point of the picture."""
        if not 0 <= y < self.geometry.height:
            return None
        layout, geometry = self.layout, self.geometry
        lane, row = geometry.lane_at(x), geometry.row_at(y)
        for branching in layout.branchings_in(row):
            if branching.lane == lane and geometry.knob(lane, row).holds(x, y):
                return Target(Spot.KNOB, branching.node)
        if not geometry.left_of(lane) <= x < geometry.left_of(lane) + geometry.width_of(lane):
            return None
        part = part_in_row(layout, lane, row)
        if part is not None:
            return Target(Spot.ROW, part) if geometry.cell(lane, row).holds(x, y) else None
        headed = layout.headed_at(lane, row)
        if headed is not None and geometry.heading(lane, headed.row).holds(x, y):
            return Target(Spot.HEADING, headed.start)
        node = layout.node_at(lane, row)
        return None if node is None else Target(Spot.ROW, node)

    # -- in words

    def in_words(self) -> str:
        """The current row for someone who does not see it: the move, what is said, how long it takes."""
        chosen = len(self._session.chosen)
        together = tr("{rows} rows are chosen.", rows=chosen) if chosen > 1 else ""
        return f"{self.row_in_words(self.current)} {together}".strip()

    def row_in_words(self, key: BeatKey) -> str:
        """Any row for someone who does not see it: the move, what is said, how long it takes."""
        name = part_name(key) if isinstance(key, Part) else move_words(self._session, key)
        time = None if self._times is None else self._times.time_of(key)
        said = self._row(key).words or tr("Nothing is said here.")
        return " ".join(filter(None, (name and f"{name}.", said, seconds_in_words(time))))

    def tool_tip(self, target: Target | None) -> str:
        """The whole line of a row, its seconds and its note, as rich text; empty where there is nothing to say."""
        study = self._session.study
        if target is None:
            return ""
        if target.spot is Spot.KNOB:
            branching = self.layout.branchings.get(target.key) if not isinstance(target.key, Part) else None
            return "" if branching is None else tr("Fold side-lines") if branching.shown else tr("Show side-lines")
        if target.spot is Spot.HEADING and not isinstance(target.key, Part):
            name, details = self._heading(self.layout.lines[target.key])
            return " · ".join(
                filter(None, (f"<b>{escape(name)}</b>", escape(details), tr("drag to reorder, or onto another move")))
            )
        time = None if self._times is None else self._times.time_of(target.key)
        return row_tool_tip(study, target.key, self._row(target.key), time)

    # -- painting

    def paint(self, p: QPainter, left: int, top: int, width: int, height: int) -> None:
        """Paint the part of the picture whose top left corner is at *left*, *top*; the painter is moved there."""
        geometry, layout = self.geometry, self.layout
        first, last = geometry.row_at(top), geometry.row_at(top + height)
        lanes = range(geometry.lane_at(left), geometry.lane_at(left + width) + 1)
        paint_rails(p, self._look, Rails(layout, geometry, self._way, self._hidden), lanes, first, last)
        for row in range(first, last + 1):
            for branching in layout.branchings_in(row):
                if branching.lane in lanes:
                    self._knob(p, branching)
        for lane in lanes:
            for line in layout.lines_between(lane, first, last):
                self._line(p, line, first, last)
        if lanes[0] == 0:
            for part, row in layout.parts.items():
                if first <= row <= last:
                    self._part(p, part, row)
        if self.held is not None:
            self._drop(p, left, width)

    def _drop(self, p: QPainter, left: int, width: int) -> None:
        """Where what is held would go, and in words beside the pointer."""
        assert self.held is not None
        label, drop = self._row(self.held).label, self.drop
        words = label
        if isinstance(drop, Beside):
            row = self.layout.lines[drop.side_line].row
            paint_beside(p, self._look, drop.x, self.geometry.heading(0, row).top, self.geometry.tops[row + 1])
        elif drop is not None:
            box = self.box_of(drop.node)
            after = self._row(drop.node).label
            words = tr("{move} after {other}", move=label, other=after) if not drop.why_not else tr("does not fit here")
            if box is not None:
                paint_onto(p, self._look, box, bool(drop.why_not))
        refused = isinstance(drop, Onto) and bool(drop.why_not)
        paint_words(p, self._look, *self._pointer, words, range(left, left + width), refused)

    def paint_strip(self, p: QPainter, left: int, top: int, width: int) -> None:
        """The names of the lines that fill the lanes below the strip, where their headings are out of view."""
        height = self.strip_height
        self._painter.strip(p, width, height)
        if self._session.chosen:
            words = tr("{rows} chosen", rows=len(self._session.chosen))
            width = self._painter.strip_count(p, width, height, words)
        row = self.geometry.row_at(top)
        for lane in range(self.geometry.lane_at(left), self.geometry.lane_at(left + width) + 1):
            line = self.layout.line_at(lane, row)
            if lane and (line is None or self.geometry.heading(lane, line.row).top + 6 >= top):
                continue
            name = self._strip_name(line) if lane and line else tr("Main line")
            x = self.geometry.left_of(lane) + TEXT - left
            end = x + self.geometry.width_of(lane) - TEXT - RAIL
            # The name of a lane that is cut off moves in, while there is room for it.
            x, end = max(x, RAIL), min(end, width - RAIL)
            self._painter.strip_name(p, x, end - x, height, name, main=lane == 0)

    def _strip_name(self, line: LaneLine) -> str:
        """The name of a side-line; where it has none, the move that it begins with."""
        name = self._session.study.nodes[line.start].name.strip()
        return name or f"{heading_name(self._session.study.nodes[line.start])} {self._row(line.start).label}"

    def _knob(self, p: QPainter, branching: Branching) -> None:
        hovered = self.hovered == Target(Spot.KNOB, branching.node)
        on_way = any(side_line in self._way for side_line in branching.shown)
        knob = self.geometry.knob(branching.lane, branching.row)
        folded = 0 if branching.shown else len(branching.folded)
        self._painter.knob(p, knob, "accent" if on_way or hovered else "side_line", folded, hovered)

    def _line(self, p: QPainter, line: LaneLine, first: int, last: int) -> None:
        geometry = self.geometry
        hidden = line.start in self._hidden
        if line.branch is not None and first <= line.row - 1 <= last:
            name, details = self._heading(line)
            hovered = self.hovered == Target(Spot.HEADING, line.start)
            box = geometry.heading(line.lane, line.row)
            self._painter.heading(p, box, name, details, hidden, hovered)
        reached = self._way.get(line.start, -1)
        x = geometry.rail_of(line.lane)
        token = "side_line" if line.lane else "rail"
        for row in range(max(first, line.row), min(last, line.last_row) + 1):
            node_id = line.nodes[row - line.row]
            state = CellState(
                current=self.current == node_id,
                on_path=row <= reached,
                hovered=self.hovered == Target(Spot.ROW, node_id),
                hidden=hidden,
                focused=self.focused,
                chosen=node_id in self._session.chosen,
                found=node_id in self.found,
                held=self.held == node_id,
            )
            text = self._row(node_id)
            time, scale = (None, 1.0) if self._times is None else (self._times.time_of(node_id), self._times.scale)
            middle = geometry.middle_of(row)
            self._painter.cell(p, self._cell(line.lane, row), middle, text, time, scale, state)
            self._painter.disc(p, x, middle, text.white, token, state)

    def _heading(self, line: LaneLine) -> tuple[str, str]:
        """What the heading of a side-line says: its name; how long it takes and when it is told."""
        study = self._session.study
        node = study.nodes[line.start]
        details = [telling_in_words(study, self._session.positions, node)]
        if line.start not in self._hidden and self._times is not None:
            details.insert(0, short_seconds(self._times.side_lines.get(line.start, 0.0)))
        return heading_name(node), " · ".join(filter(None, details))

    def _part(self, p: QPainter, part: Part, row: int) -> None:
        state = CellState(
            current=self.current == part,
            hovered=self.hovered == Target(Spot.ROW, part),
            focused=self.focused,
            chosen=part in self._session.chosen,
            found=part in self.found,
        )
        text = self._row(part)
        box, middle = self.geometry.cell(0, row), self.geometry.middle_of(row)
        if not text.words:
            self._painter.placeholder(p, box, middle, text.label, tr("Nothing is said here yet"), state)
            self._painter.chosen(p, self.geometry.rail_of(0), middle, state)
            return
        time, scale = (None, 1.0) if self._times is None else (self._times.time_of(part), self._times.scale)
        self._painter.cell(p, box, middle, text, time, scale, state)
        self._painter.chosen(p, self.geometry.rail_of(0), middle, state)

    def _row(self, key: BeatKey) -> RowText:
        found = self._rows.get(key)
        if found is None:
            study = self._session.study
            row = part_row(study, key) if isinstance(key, Part) else node_row(study, self._session.positions, key)
            found = self._rows[key] = row
        return found
