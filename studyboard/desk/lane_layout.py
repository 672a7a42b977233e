"""Where every node of a tree stands in the lanes: which lane, and which row."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Collection, Iterator
from dataclasses import dataclass, field, replace
from operator import itemgetter

from studyboard.model.script import Part
from studyboard.model.study import Study

OPENING = tuple(part for part in Part if part.opens)
ENDING = tuple(part for part in Part if not part.opens)


@dataclass(frozen=True, slots=True)
class LaneLine:
    """One line of moves in its lane.

    start: id of its first node, the root for the main line
    lane: 0 for the main line, then to the right
    row: the row of its first node; a side-line is level with the move that it replaces
    nodes: ids from its first row to its last, without gaps
    branch: id of the node that it branches off, one row higher; None for the main line
    parent: start of the line that it branches off, None for the main line
    """

    start: int
    lane: int
    row: int
    nodes: tuple[int, ...]
    branch: int | None
    parent: int | None

    @property
    def last_row(self) -> int:
        """The row of its last node."""
        return self.row + len(self.nodes) - 1


@dataclass(frozen=True, slots=True)
class Branching:
    """A node at which side-lines leave its line.

    node: its id
    lane, row: where it stands
    shown: starts of the side-lines that are shown, from left to right
    folded: starts of those that are folded away
    reach: the lane of the last one that is shown; its own lane where none is
    track: which of the rails that run across below its row is its own, counted from the top; side-lines that leave
        the same node share it
    """

    node: int
    lane: int
    row: int
    shown: tuple[int, ...]
    folded: tuple[int, ...]
    reach: int
    track: int


@dataclass(frozen=True, slots=True)
class LaneLayout:
    """The lanes of one study with some side-lines folded away.

    cells: lane and row of every node that is shown, by id
    lines: every line that is shown, by the id of its first node; a line comes after the one it branches off
    branchings: by the id of the node at which side-lines leave
    parts: the row of each line that belongs to no move, all in lane 0
    lanes, rows: how many there are
    folded: what was folded away when it was laid out
    """

    cells: dict[int, tuple[int, int]]
    lines: dict[int, LaneLine]
    branchings: dict[int, Branching]
    parts: dict[Part, int]
    lanes: int
    rows: int
    folded: frozenset[int]
    _by_lane: list[list[LaneLine]] = field(repr=False)
    _first_rows: list[list[int]] = field(repr=False)
    _by_row: dict[int, list[Branching]] = field(repr=False)
    _children: dict[int, tuple[int, ...]] = field(repr=False)

    def line_at(self, lane: int, row: int) -> LaneLine | None:
        """The line whose node stands here, else the one whose heading does, or None."""
        if not 0 <= lane < self.lanes:
            return None
        lines = self._by_lane[lane]
        place = bisect_right(self._first_rows[lane], row)
        if place and lines[place - 1].last_row >= row:
            return lines[place - 1]
        return lines[place] if place < len(lines) and lines[place].row == row + 1 else None

    def headed_at(self, lane: int, row: int) -> LaneLine | None:
        """The side-line whose heading stands here, above its first node and perhaps below another line, or None."""
        line = self.line_at(lane, row + 1)
        return line if line is not None and line.row == row + 1 and line.branch is not None else None

    def node_at(self, lane: int, row: int) -> int | None:
        """Id of the node that stands here, or None."""
        line = self.line_at(lane, row)
        return line.nodes[row - line.row] if line is not None and row >= line.row else None

    def lines_between(self, lane: int, top: int, bottom: int) -> Iterator[LaneLine]:
        """The lines of one lane whose nodes or heading stand in the rows from *top* to *bottom*, downwards."""
        lines = self._by_lane[lane]
        place = max(0, bisect_right(self._first_rows[lane], top) - 1)
        while place < len(lines) and lines[place].row - 1 <= bottom:
            if lines[place].last_row >= top:
                yield lines[place]
            place += 1

    def branchings_in(self, row: int) -> list[Branching]:
        """The nodes of one row at which side-lines leave, from left to right."""
        return self._by_row.get(row, [])

    def tracks_below(self, row: int) -> int:
        """How many rails run across below each other between this row and the next."""
        return max((branching.track + 1 for branching in self.branchings_in(row) if branching.shown), default=0)

    def crossed_by(self, branching: Branching, lanes: range) -> Iterator[int]:
        """Those of the *lanes* whose own rail is crossed by the one that leads to these side-lines."""
        below = branching.row + 1
        for lane in range(max(branching.lane + 1, lanes.start), min(branching.reach, lanes.stop)):
            line = self.line_at(lane, below)
            if line is None or line.branch is None or line.row > below:
                continue
            if line.row < below or self.branchings[line.branch].track < branching.track:
                yield lane

    def line_of(self, node: int) -> LaneLine:
        """The line that a shown node belongs to. Raises KeyError where it is not shown."""
        lane, row = self.cells[node]
        line = self.line_at(lane, row)
        assert line is not None
        return line

    def still_fits(self, study: Study, touched: Collection[int]) -> bool:
        """True where an edit that touched these nodes has left the tree that is shown as it was."""
        nodes, known = study.nodes, self._children
        return all(node not in known or (node in nodes and nodes[node].children == known[node]) for node in touched)


def lay_out(study: Study, folded: Collection[int] = ()) -> LaneLayout:
    """Every node in a lane and a row, without those behind a folded side-line. O(size of the tree).

    folded: ids of the first nodes of side-lines that are folded away

    A row is a half-move, so a side-line is level with the move that it replaces. Lines are placed from the top
    downwards, and in each row from left to right, so that side-lines of one move stand in their order. Each takes
    the first lane to the right of its parent's in which its rows are free. A line may begin right below another:
    the row above then has room for its heading.
    """
    nodes = study.nodes
    cells: dict[int, tuple[int, int]] = {}
    children_of: dict[int, tuple[int, ...]] = {}
    lines: dict[int, LaneLine] = {}
    shut = frozenset(folded)
    splits: list[tuple[int, int, int]] = []
    last_rows: list[int] = []
    rows = 0
    row = len(OPENING)
    starting: dict[int, list[tuple[int, int, int | None]]] = {row: [(-1, study.root, None)]}
    while starting:
        for parent_lane, start, parent in sorted(starting.pop(row, ()), key=itemgetter(0)):
            node = nodes[start]
            branch = node.parent
            lane = parent_lane + 1
            while lane < len(last_rows) and last_rows[lane] >= row:
                lane += 1
            ids = [start]
            at = row
            children = children_of[start] = node.children
            cells[start] = (lane, at)
            while children:
                if len(children) > 1:
                    splits.append((node.id, at, start))
                    leaving = [(lane, child, start) for child in children[1:] if child not in shut]
                    if leaving:
                        starting.setdefault(at + 1, []).extend(leaving)
                at += 1
                node = nodes[children[0]]
                ids.append(node.id)
                cells[node.id] = (lane, at)
                children = children_of[node.id] = node.children
            lines[start] = LaneLine(start, lane, row, tuple(ids), branch, parent)
            end = at if branch is not None else at + len(ENDING)
            rows = max(rows, end + 1)
            last_rows[lane : lane + 1] = [end]
        row += 1

    main = lines[study.root]
    parts = {part: row for row, part in enumerate(OPENING)}
    parts |= {part: row for row, part in enumerate(ENDING, main.last_row + 1)}
    branchings, by_row = _branchings(study, lines, splits, shut)
    by_lane: list[list[LaneLine]] = [[] for _ in last_rows]
    for line in lines.values():
        by_lane[line.lane].append(line)
    first_rows = [[line.row for line in column] for column in by_lane]
    return LaneLayout(
        cells, lines, branchings, parts, len(by_lane), rows, shut, by_lane, first_rows, by_row, children_of
    )


def unfolded_for(study: Study, folded: Collection[int], node: int) -> frozenset[int]:
    """What may stay folded so that this node is shown. O(length of its path)."""
    return frozenset(folded).difference(study.path(node)) if folded else frozenset()


def _branchings(
    study: Study, lines: dict[int, LaneLine], splits: list[tuple[int, int, int]], shut: frozenset[int]
) -> tuple[dict[int, Branching], dict[int, list[Branching]]]:
    by_row: dict[int, list[Branching]] = {}
    for node, row, start in splits:
        side_lines = study.nodes[node].children[1:]
        shown = tuple(child for child in side_lines if child not in shut)
        folded = tuple(child for child in side_lines if child in shut)
        lane = lines[start].lane
        reach = lines[shown[-1]].lane if shown else lane
        by_row.setdefault(row, []).append(Branching(node, lane, row, shown, folded, reach, 0))
    for row, leaving in by_row.items():
        if len(leaving) > 1:
            by_row[row] = _on_tracks(leaving)
    return {branching.node: branching for leaving in by_row.values() for branching in leaving}, by_row


def _on_tracks(leaving: list[Branching]) -> list[Branching]:
    """The nodes of one row at which side-lines leave, from left to right, no rail of theirs lying on another.

    A rail runs below those that begin further right: so none crosses another where it begins.
    """
    placed: list[Branching] = []
    for branching in sorted(leaving, key=lambda branching: branching.lane, reverse=True):
        track = 0
        for other in reversed(placed):
            if other.lane >= branching.reach:
                break
            if other.shown:
                track = max(track, other.track + 1)
        placed.append(replace(branching, track=track) if track else branching)
    placed.reverse()
    return placed
