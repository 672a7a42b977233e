from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from studyboard.model.chosen_rows import clear_chosen, delete_chosen, tell_chosen
from studyboard.model.edits import Edit, apply
from studyboard.model.errors import EditRefusedError
from studyboard.model.node import Place, Telling
from studyboard.model.script import SILENT, FreeLine, Part, SpokenLine
from studyboard.model.study import Study

Node = Callable[[str], int]
HIDDEN = Telling(Place.HIDDEN)


def done_and_taken_back(study: Study, edit: Edit) -> Callable[[], None]:
    """Apply the edit; the answer takes it back and looks whether all is as it was."""
    nodes, lines = dict(study.nodes), dict(study.lines)
    inverse, _ = apply(study, edit)

    def take_back() -> None:
        apply(study, inverse)
        assert study.nodes == nodes
        assert study.lines == lines

    return take_back


def test_branches_are_deleted_together_and_come_back_together(study: Study, node_of: Node) -> None:
    gone = [node_of("c5"), node_of("d6"), node_of("f4")]
    take_back = done_and_taken_back(study, delete_chosen(study, gone))
    assert len(study.nodes) == 14 - 5 - 2
    take_back()


def test_the_start_position_is_not_deleted(study: Study, node_of: Node) -> None:
    with pytest.raises(EditRefusedError, match="start position"):
        delete_chosen(study, [study.root, node_of("c5")])
    with pytest.raises(EditRefusedError, match="No move"):
        delete_chosen(study, [Part.GREETING])


def test_lines_are_cleared_with_those_that_belong_to_no_move(study: Study, node_of: Node) -> None:
    node = node_of("d5")
    study.nodes[node] = replace(study.nodes[node], spoken=SpokenLine("Black is well."))
    study.lines[Part.GREETING] = FreeLine(SpokenLine("Hello."), 4.0)
    take_back = done_and_taken_back(study, clear_chosen(study, [Part.GREETING, node, node_of("e4")]))
    assert study.nodes[node].spoken == SILENT
    assert study.line(Part.GREETING) == FreeLine(SILENT, 4.0)
    with pytest.raises(EditRefusedError, match="Nothing is said"):
        clear_chosen(study, [Part.GREETING, node])
    take_back()


def test_the_side_lines_that_hold_the_chosen_moves_are_hidden_and_told_again(study: Study, node_of: Node) -> None:
    rows = [node_of("d6"), node_of("e6"), node_of("e4")]
    take_back = done_and_taken_back(study, tell_chosen(study, rows, HIDDEN))
    hidden = {node.id for node in study.nodes.values() if node.telling == HIDDEN}
    assert hidden == {node_of("c5"), node_of("e6")}
    with pytest.raises(EditRefusedError, match="not told as it is"):
        tell_chosen(study, rows, HIDDEN)
    apply(study, tell_chosen(study, rows, Telling()))
    assert all(node.telling == Telling() for node in study.nodes.values())
    apply(study, tell_chosen(study, rows, HIDDEN))
    take_back()


def test_the_main_line_cannot_be_hidden(study: Study, node_of: Node) -> None:
    with pytest.raises(EditRefusedError, match="No side-line"):
        tell_chosen(study, [node_of("Bb5"), Part.GREETING], HIDDEN)
