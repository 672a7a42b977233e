from __future__ import annotations

from collections.abc import Callable

from hypothesis import given

from studyboard.model.positions import Positions
from studyboard.model.reading_order import pruned, reading_order, rows_in_order, tops, way_between
from studyboard.model.script import Part
from studyboard.model.study import Study
from tests.desk.lane_studies import studies

Node = Callable[[str], int]


def test_nodes_come_in_the_order_in_which_a_book_prints_them(study: Study) -> None:
    positions = Positions(study)
    sans = " ".join(positions.san(node) for node in reading_order(study))
    assert sans.split() == ["e4", "e5", "c5", "Nf3", "c3", "d5", "d6", "e6", "Nf3", "f4", "exf4", "Nc6", "Bb5"]


@given(studies())
def test_every_node_comes_once_and_after_its_parent(study: Study) -> None:
    order = list(reading_order(study))
    places = {node: place for place, node in enumerate(order)}
    assert sorted(order) == sorted(study.nodes)
    assert all(node.parent is None or places[node.parent] < places[node.id] for node in study.nodes.values())


def test_lines_without_a_move_stand_around_the_moves(study: Study) -> None:
    rows = list(rows_in_order(study))
    assert rows[0] is Part.GREETING
    assert rows[-2:] == [Part.CLOSING, Part.THANKS]


def test_the_way_between_two_moves_of_a_line_passes_all_between(study: Study, node_of: Node) -> None:
    way = way_between(study, node_of("e5"), node_of("Bb5"))
    assert [study.nodes[key].parent for key in way[1:] if isinstance(key, int)] == list(way[:-1])
    assert (way[0], way[-1]) == (node_of("e5"), node_of("Bb5"))
    assert way_between(study, node_of("Bb5"), node_of("e5")) == way[::-1]


def test_the_way_to_the_next_side_line_leaves_out_the_move_at_which_they_part(study: Study, node_of: Node) -> None:
    assert way_between(study, node_of("c5"), node_of("e6")) == (node_of("c5"), node_of("e6"))


def test_the_way_goes_on_to_the_lines_without_a_move(study: Study, node_of: Node) -> None:
    assert way_between(study, node_of("Bb5"), Part.THANKS) == (node_of("Bb5"), Part.CLOSING, Part.THANKS)
    assert way_between(study, node_of("e4"), Part.GREETING) == (node_of("e4"), study.root, Part.GREETING)
    assert way_between(study, Part.CLOSING, Part.CLOSING) == (Part.CLOSING,)


def test_of_nodes_after_each_other_only_the_first_is_on_top(study: Study, node_of: Node) -> None:
    chosen = [node_of("d6"), node_of("exf4"), node_of("c5")]
    assert tops(study, chosen) == (node_of("c5"), node_of("exf4"))


def test_a_pruned_study_keeps_the_way_to_what_is_kept(study: Study, node_of: Node) -> None:
    kept = pruned(study, [node_of("d5")])
    positions = Positions(kept)
    assert [positions.san(node) for node in kept.main_line()] == ["", "e4", "c5", "c3", "d5"]
    assert len(kept.nodes) == 5
    assert len(study.nodes) == 14, "the study itself is as it was"
