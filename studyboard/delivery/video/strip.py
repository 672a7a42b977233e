"""The moves that were told so far, side by side in their lanes, around the one that is on the board."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.notation.labels import figurine, move_number


@dataclass(frozen=True, slots=True)
class StripRow:
    """One move.

    column: 0 for the main line, the others to its right
    level: its half-move from the start, from 1; rows of one level stand beside each other
    first: it begins a side-line
    current: it is on the board
    lit: it is on the way from the start to the move on the board
    """

    column: int
    level: int
    node: int
    text: str
    number: str
    first: bool
    current: bool
    lit: bool


@dataclass(frozen=True, slots=True)
class Lane:
    """One line as it is laid: its column, its moves, and the level of the first of them."""

    column: int
    nodes: tuple[int, ...]
    level: int


class Strip:
    """The lanes of everything that a video tells.

    Only what was told already is ever shown: the moves that a viewer is asked to find must not be read off the strip.
    """

    def __init__(self, study: Study, positions: Positions, steps: Sequence[int]) -> None:
        """steps: the nodes that come on the board, in order."""
        self._study = study
        self._positions = positions
        self._told: dict[int, int] = {}
        for place, node in enumerate(steps):
            for known in reversed(study.path(node)):
                if known in self._told:
                    break
                self._told[known] = place
        self._lanes = self._lay_lanes()

    @property
    def lanes(self) -> tuple[Lane, ...]:
        """All the lanes, the main line's first."""
        return tuple(self._lanes)

    def rows(self, step: int, node: int, count: int, columns: int) -> tuple[StripRow, ...]:
        """The rows around a node, from the top down.

        step: how far the talk has come
        count: how many levels there is room for
        columns: how many lanes there is room for; where the node's own lane lies further right, only those that lead
            to it are shown, side by side, and of more than there is room for the innermost ones
        """
        path = set(self._study.path(node))
        level = len(path) - 1
        deepest = self._deepest(step)
        first = max(1, level - count + 1, min(level - round(0.7 * count), deepest - count + 1))
        place_of = self._columns(path, node, columns)
        found: dict[tuple[int, int], StripRow] = {}
        for number, lane in enumerate(self._lanes):
            column = place_of.get(number)
            if column is None:
                continue
            for place, at in enumerate(lane.nodes):
                row = lane.level + place
                if self._told.get(at, step + 1) > step or not first <= row < first + count:
                    continue
                found[column, row] = StripRow(
                    column=column,
                    level=row - first,
                    node=at,
                    text=figurine(self._positions.san(at)),
                    number=self._number(at, lane, place),
                    first=place == 0 and lane.column > 0,
                    current=at == node,
                    lit=at in path,
                )
        return tuple(sorted(found.values(), key=lambda row: (row.level, row.column)))

    def _columns(self, path: set[int], node: int, room: int) -> dict[int, int]:
        """In which column each lane that is shown stands, by the number of the lane."""
        own = next((lane.column for lane in reversed(self._lanes) if node in lane.nodes), 0)
        if own < room:
            return {number: lane.column for number, lane in enumerate(self._lanes) if lane.column < room}
        leading = [number for number, lane in enumerate(self._lanes) if not path.isdisjoint(lane.nodes)]
        leading.sort(key=lambda number: self._lanes[number].level)
        return {number: column for column, number in enumerate(leading[-room:])}

    def _number(self, node: int, lane: Lane, place: int) -> str:
        number = move_number(self._positions, node)
        black = number.endswith("...")
        if lane.column == 0 or place == 0:
            return f"{number[:-3]}…" if black and place == 0 else "" if black else number
        return "" if black else number

    def _deepest(self, step: int) -> int:
        """The last level of the main line that was told."""
        main = self._lanes[0].nodes if self._lanes else ()
        return sum(self._told.get(node, step + 1) <= step for node in main)

    def _lay_lanes(self) -> list[Lane]:
        study = self._study
        starts = sorted(
            (node for node in self._told if study.begins_side_line(node)), key=lambda node: self._told[node]
        )
        lanes = [self._lane(study.root, 0)]
        column_of = {study.root: 0, **dict.fromkeys(lanes[0].nodes, 0)}
        taken: dict[int, list[range]] = {}
        for start in starts:
            parent = study.nodes[start].parent
            assert parent is not None, "what begins a side-line has a parent"
            lane = self._lane(start, column_of.get(parent, 0) + 1)
            span = range(lane.level, lane.level + len(lane.nodes))
            while any(_overlap(span, other) for other in taken.get(lane.column, ())):
                lane = replace(lane, column=lane.column + 1)
            taken.setdefault(lane.column, []).append(span)
            lanes.append(lane)
            column_of.update(dict.fromkeys(lane.nodes, lane.column))
        return lanes

    def _lane(self, start: int, column: int) -> Lane:
        nodes = tuple(node for node in self._study.main_line(start) if node in self._told and node != self._study.root)
        return Lane(column, nodes, max(1, self._study.ply(start)))


def _overlap(one: range, other: range) -> bool:
    return one.start < other.stop and other.start < one.stop
