"""Where the keys lead: on, back, to the side-lines, and out of them."""

from __future__ import annotations

import pytest

from studyboard.model import stepping
from studyboard.model.positions import Positions


@pytest.mark.parametrize(
    ("step", "start", "end"),
    [
        (stepping.forward, "e4", "e5"),
        (stepping.forward, "c5", "Nf3"),
        (stepping.forward, "Bb5", None),
        (stepping.next_line, "e5", "c5"),
        (stepping.next_line, "c5", "e6"),
        (stepping.next_line, "e6", None),
        (stepping.next_line, "e4", None),
        (stepping.previous_line, "e6", "c5"),
        (stepping.previous_line, "c5", "e5"),
        (stepping.previous_line, "e5", None),
        (stepping.previous_line, "d6", "c5"),
        (stepping.previous_line, "d5", "c3"),
        (stepping.out_of_side_line, "exf4", "Nf3"),
        (stepping.out_of_side_line, "d6", "e5"),
        (stepping.out_of_side_line, "e6", "e5"),
        (stepping.out_of_side_line, "Bb5", None),
        (stepping.home, "d5", "e4"),
        (stepping.home, "exf4", "e5"),
        (stepping.home, "Bb5", "Bb5"),
        (stepping.end_of_line, "e4", "Bb5"),
        (stepping.end_of_line, "c5", "d6"),
        (stepping.end_of_line, "e6", "e6"),
    ],
)
def test_each_key_leads_where_its_name_says(study, step, start, end):
    # The main line is looked at first, so that “Nf3” is the one that the test means by where it stands.
    positions = Positions(study)
    main = {positions.san(node): node for node in reversed(list(study.main_line()))}
    others = {positions.san(node.id): node.id for node in reversed(list(study.branch(study.root)))}
    found = step(study, main.get(start, others[start]))
    assert (None if found is None else positions.san(found)) == end


def test_the_root_is_where_back_ends_and_the_last_move_where_the_line_does(study, node_of):
    assert stepping.back(study, node_of("e4")) == study.root
    assert stepping.back(study, study.root) is None
    assert stepping.end_of_line(study, study.root) == node_of("Bb5")
    for step in (stepping.next_line, stepping.previous_line, stepping.out_of_side_line):
        assert step(study, study.root) is None
    assert stepping.home(study, study.root) == study.root


def test_back_is_the_way_forward_taken_back(study):
    for node in study.nodes.values():
        for child in node.children:
            assert stepping.back(study, child) == node.id
