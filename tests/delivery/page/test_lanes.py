"""The table of lanes."""

from __future__ import annotations

from hypothesis import given

from studyboard.delivery.page.lanes import lane_table
from studyboard.delivery.page.lines import Lines
from studyboard.delivery.page.shots import ShotKind, shots
from studyboard.model.positions import Positions
from studyboard.timing.plan import plan
from tests.desk.lane_studies import studies, study_of


def table_of(study):
    steps = shots(plan(study))
    return steps, lane_table(study, Positions(study), steps, Lines(study, [shot.node for shot in steps]))


def drawn(study) -> list[str]:
    """The table as text: a column of eight characters for each lane."""
    _, table = table_of(study)
    rows = []
    for row in table.rows:
        texts = (f"{cell.label} {cell.text}".strip() or "--" * (cell.look == "rail") for cell in row.cells)
        cells = "".join(f"{text:<{8 * cell.span}}" for text, cell in zip(texts, row.cells, strict=True))
        rows.append(f"{row.number:<4}{cells}".rstrip())
    return rows


def test_a_side_line_stands_level_with_the_move_that_it_replaces():
    assert drawn(study_of("1. e4 e5 (1... c5 2. Nf3 d6) 2. Nf3 (2. f4 exf4) Nc6 *")) == [
        "1   e4",
        "1…  e5      A c5",
        "2   ♘f3     ♘f3     B f4",
        "2…  ♘c6     d6      exf4",
    ]


def test_a_rail_leads_to_a_lane_that_has_moved_aside():
    assert drawn(study_of("1. e4 e5 2. Nf3 (2. f4 exf4 3. Nf3) (2. d4 exd4 3. c3) *"))[2:] == [
        "2   ♘f3     A f4    B d4",
        "2…          exf4    exd4",
        "3           ♘f3     c3",
    ]
    rows = drawn(study_of("1. e4 e5 2. Nf3 (2. f4 exf4 3. Nf3 g5 4. h4) Nc6 (2... d6 3. d4 exd4) *"))
    assert rows[3] == "2…  ♘c6     exf4    B d6"


def test_a_position_in_which_black_begins_is_numbered_as_it_should():
    study = study_of('[FEN "4k3/8/8/8/8/8/4p3/K7 b - - 0 31"]\n[SetUp "1"]\n\n31... e1=Q+ 32. Ka2 *')
    assert drawn(study) == ["31… e1=♕+", "32  ♔a2"]


@given(studies())
def test_every_move_that_is_told_has_one_place_that_leads_to_it(study):
    steps, table = table_of(study)
    first = {}
    for number, shot in enumerate(steps):
        if shot.kind is ShotKind.MOVE:
            first.setdefault(shot.node, number)
    cells = [cell for row in table.rows for cell in row.cells]
    assert sorted(cell.shot for cell in cells if cell.shot is not None) == sorted(first.values())
    assert all(sum(cell.span for cell in row.cells) <= table.columns for row in table.rows)
