"""Where every node of a tree stands in the lanes: which lane, and which row."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Collection, Iterator
from dataclasses import dataclass, field

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
    """

    node: int
    lane: int
    row: int
    shown: tuple[int, ...]
    folded: tuple[int, ...]
    reach: int


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
        """The line whose nodes or heading (the row above its first node) stand here, or None."""
        if not 0 <= lane < self.lanes:
            return None
        place = bisect_right(self._first_rows[lane], row + 1) - 1
        if place < 0:
            return None
        line = self._by_lane[lane][place]
        return line if line.row - 1 <= row <= line.last_row else None

    def node_at(self, lane: int, row: int) -> int | None:
        """Id of the node that stands here, or None."""
        line = self.line_at(lane, row)
        return line.nodes[row - line.row] if line is not None and row >= line.row else None

    def lines_between(self, lane: int, top: int, bottom: int) -> Iterator[LaneLine]:
        """The lines of one lane whose nodes or heading stand in the rows from *top* to *bottom*, downwards."""
        lines = self._by_lane[lane]
        place = max(0, bisect_right(self._first_rows[lane], top + 1) - 1)
        while place < len(lines) and lines[place].row - 1 <= bottom:
            if lines[place].last_row >= top:
                yield lines[place]
            place += 1

    def branchings_in(self, row: int) -> list[Branching]:
        """The nodes of one row at which side-lines leave, from left to right."""
        return self._by_row.get(row, [])

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

    A row is a half-move, so a side-line is level with the move that it replaces. Its lane is the first one to
    the right of everything that stands in its rows, its heading's row (one higher) counted in. Side-lines that
    leave a line further down are placed first: nothing then stands between a side-line and the node that it
    leaves, so that no rail crosses a move or another rail.
    """
    nodes = study.nodes
    edge: list[int] = []
    cells: dict[int, tuple[int, int]] = {}
    children_of: dict[int, tuple[int, ...]] = {}
    lines: dict[int, LaneLine] = {}
    shut = frozenset(folded)
    splits: list[tuple[int, int, int]] = []
    todo: list[tuple[int, int, int | None]] = [(study.root, len(OPENING), None)]
    while todo:
        start, first_row, parent = todo.pop()
        ids = [start]
        node = nodes[start]
        branch = node.parent
        row = first_row
        leaving: list[tuple[int, int, int | None]] = []
        children = children_of[start] = node.children
        while children:
            if len(children) > 1:
                splits.append((node.id, row, start))
                leaving += [(child, row + 1, start) for child in reversed(children[1:]) if child not in shut]
            row += 1
            node = nodes[children[0]]
            ids.append(node.id)
            children = children_of[node.id] = node.children
        top, end = (0, row + len(ENDING) + 1) if branch is None else (first_row - 1, row + 1)
        if len(edge) < end:
            edge += [-1] * (end - len(edge))
        lane = max(edge[top:end]) + 1
        edge[top:end] = [lane] * (end - top)
        for place, node_id in enumerate(ids, first_row):
            cells[node_id] = (lane, place)
        lines[start] = LaneLine(start, lane, first_row, tuple(ids), branch, parent)
        todo += leaving

    main = lines[study.root]
    parts = {part: row for row, part in enumerate(OPENING)}
    parts |= {part: row for row, part in enumerate(ENDING, main.last_row + 1)}
    branchings, by_row = _branchings(study, lines, splits, shut)
    by_lane: list[list[LaneLine]] = [[] for _ in range(max(line.lane for line in lines.values()) + 1)]
    for line in lines.values():
        by_lane[line.lane].append(line)
    for column in by_lane:
        column.sort(key=lambda line: line.row)
    first_rows = [[line.row for line in column] for column in by_lane]
    return LaneLayout(
        cells, lines, branchings, parts, len(by_lane), len(edge), shut, by_lane, first_rows, by_row, children_of
    )


def unfolded_for(study: Study, folded: Collection[int], node: int) -> frozenset[int]:
    """What may stay folded so that this node is shown. O(length of its path)."""
    return frozenset(folded).difference(study.path(node)) if folded else frozenset()


def _branchings(
    study: Study, lines: dict[int, LaneLine], splits: list[tuple[int, int, int]], shut: frozenset[int]
) -> tuple[dict[int, Branching], dict[int, list[Branching]]]:
    found: dict[int, Branching] = {}
    by_row: dict[int, list[Branching]] = {}
    for node, row, start in splits:
        side_lines = study.nodes[node].children[1:]
        shown = tuple(child for child in side_lines if child not in shut)
        folded = tuple(child for child in side_lines if child in shut)
        lane = lines[start].lane
        reach = lines[shown[-1]].lane if shown else lane
        found[node] = Branching(node, lane, row, shown, folded, reach)
        by_row.setdefault(row, []).append(found[node])
    for row_of in by_row.values():
        row_of.sort(key=lambda branching: branching.lane)
    return found, by_row
