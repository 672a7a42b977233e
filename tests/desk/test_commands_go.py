"""Jumping to what the talk still lacks."""

from __future__ import annotations

from studyboard.desk.main_window import MainWindow
from studyboard.model.edits import ChangeNode
from studyboard.model.script import SILENT


def test_the_next_move_without_words_is_shown_and_how_many_are_left(desk: MainWindow) -> None:
    study = desk.session.study
    said = [node for node in study.main_line() if study.nodes[node].spoken and not study.nodes[node].think]
    desk.session.do(ChangeNode(said[-1], "spoken", SILENT))
    desk.lanes.go_to(study.root)
    seen = []
    while desk.lanes.current not in seen:
        seen.append(desk.lanes.current)
        desk.actions_by_name["next_unwritten"].trigger()
    assert said[-1] in seen
    assert f"{len(seen) - 1} to go." in desk.notice.text
    assert all(not study.nodes[node].spoken for node in seen[1:] if isinstance(node, int))


def test_think_pauses_are_gone_through_both_ways(desk: MainWindow) -> None:
    study = desk.session.study
    asked = {node.id for node in study.nodes.values() if node.think}
    assert asked
    for name in ("next_think", "previous_think"):
        desk.lanes.go_to(study.root)
        seen = set()
        for _ in asked:
            desk.actions_by_name[name].trigger()
            seen.add(desk.lanes.current)
        assert seen == asked


def test_without_any_it_is_said_so(desk: MainWindow) -> None:
    for node in list(desk.session.study.nodes.values()):
        if node.think:
            desk.session.do(ChangeNode(node.id, "think", 0.0))
    here = desk.lanes.current
    desk.actions_by_name["next_think"].trigger()
    assert desk.notice.text == "The talk has no think pause."
    assert desk.lanes.current == here
