"""The lanes of a page: a table with a row for each half-move and a column for each lane."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from studyboard.delivery.page.lines import Lines
from studyboard.delivery.page.shots import Shot, ShotKind
from studyboard.delivery.page.telling import move_text
from studyboard.delivery.video.strip import Lane, Strip
from studyboard.model.positions import Positions
from studyboard.model.study import Study


@dataclass(frozen=True, slots=True)
class Cell:
    """One place of a row, or several that look alike.

    span: columns that it takes up
    text: the move; empty where there is none
    shot: the step of the talk that tells it; None where the talk only passes through
    part: how many think pauses lie before it is told
    label: the side-line's, where it begins here
    look: the classes that the style sheet knows: a move of a "side" line, its "first", its last ("end"), or a "rail"
        through an empty place, from a lane on its left to one that begins on its right
    """

    span: int = 1
    text: str = ""
    shot: int | None = None
    part: int = 0
    label: str = ""
    look: str = ""


@dataclass(frozen=True, slots=True)
class Row:
    """One half-move of every lane; *number* is that of the move, such as “12” or “12…”."""

    number: str
    cells: tuple[Cell, ...]


@dataclass(frozen=True, slots=True)
class LaneTable:
    """All the lanes; *columns* of them lie beside each other."""

    columns: int
    rows: tuple[Row, ...]


def lane_table(study: Study, positions: Positions, steps: Sequence[Shot], lines: Lines) -> LaneTable:
    """Everything that the talk tells, each side-line level with the move that it replaces. O(size of the talk)."""
    lanes = Strip(study, positions, [shot.node for shot in steps]).lanes
    told: dict[int, int] = {}
    first_seen: dict[int, int] = {}
    for number, shot in enumerate(steps):
        first_seen.setdefault(shot.node, shot.part)
        if shot.kind is ShotKind.MOVE:
            told.setdefault(shot.node, number)
    cells: dict[int, dict[int, Cell]] = {}
    columns = 1
    column_of: dict[int, int] = {}
    for lane in lanes:
        columns = max(columns, lane.column + 1)
        column_of.update(dict.fromkeys(lane.nodes, lane.column))
        for place, node in enumerate(lane.nodes):
            first, end = place == 0, place == len(lane.nodes) - 1
            label = lines.label(lines.line_of(node)) if first and lane.column else ""
            look = "side" + " first" * first + " end" * end if lane.column else ""
            part = steps[told[node]].part if node in told else first_seen.get(node, 0)
            cell = Cell(1, move_text(positions, node), told.get(node), part, label, look)
            cells.setdefault(lane.level + place, {})[lane.column] = cell
    for lane in lanes:
        _lay_rail(study, lane, column_of, cells)
    board = positions.board(study.root)
    offset = 2 * board.fullmove_number - 2 + (not board.turn)
    levels = range(1, max(cells, default=0) + 1)
    rows = tuple(Row(_number(offset + level), _collapsed(cells.get(level, {}))) for level in levels)
    return LaneTable(columns, rows)


def _lay_rail(study: Study, lane: Lane, column_of: dict[int, int], cells: dict[int, dict[int, Cell]]) -> None:
    """The rail between a side-line and the lane that it branches off from, where it does not lie beside it."""
    if not lane.column or not lane.nodes:
        return
    parent = study.nodes[lane.nodes[0]].parent
    assert parent is not None, "what begins a side-line has a parent"
    row = cells[lane.level]
    for column in range(column_of.get(parent, 0) + 1, lane.column):
        row.setdefault(column, Cell(part=row[lane.column].part, look="rail"))


def _number(half_move: int) -> str:
    return f"{(half_move + 1) // 2}{'' if half_move % 2 else '…'}"


def _collapsed(row: dict[int, Cell]) -> tuple[Cell, ...]:
    """The cells of a row in order, with as few as possible for places where nothing is."""
    found: list[Cell] = []
    at = 0
    for column in sorted(row):
        if column > at:
            found.append(Cell(column - at))
        found.append(row[column])
        at = column + 1
    return tuple(found)
