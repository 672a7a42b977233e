from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from studyboard.model.jumps import asks_to_think, count, is_unwritten, next_beat
from studyboard.model.node import Place, Telling
from studyboard.model.script import BeatKey, Cue, Part, SpokenLine
from studyboard.model.study import Study

Node = Callable[[str], int]


def say(study: Study, node: int, *cues: int) -> None:
    spoken = SpokenLine("Here it is.", tuple(Cue(0, node=cue) for cue in cues))
    study.nodes[node] = replace(study.nodes[node], spoken=spoken)


def walk(study: Study, at: BeatKey, wanted: Callable[..., bool], step: int = 1) -> list[BeatKey]:
    found: list[BeatKey] = []
    while (key := next_beat(study, at, wanted, step)) is not None and key not in found:
        found.append(key)
        at = key
    return found


@pytest.fixture
def written(study: Study, node_of: Node) -> Study:
    """Everything is written but for 2...d6 in the first side-line and 3.Bb5."""
    for node in list(study.nodes):
        say(study, node)
    for san in ("d6", "Bb5"):
        study.nodes[node_of(san)] = replace(study.nodes[node_of(san)], spoken=SpokenLine())
    return study


def test_unwritten_beats_come_in_the_order_of_the_talk_and_round_again(written: Study, node_of: Node) -> None:
    assert walk(written, written.root, is_unwritten) == [node_of("d6"), node_of("Bb5")]
    assert next_beat(written, node_of("Bb5"), is_unwritten) == node_of("d6")
    assert walk(written, written.root, is_unwritten, -1) == [node_of("Bb5"), node_of("d6")]
    assert count(written, is_unwritten) == 2


def test_what_a_later_cue_plays_is_written(written: Study, node_of: Node) -> None:
    before = written.nodes[node_of("Bb5")].parent
    assert before is not None
    written.nodes[before] = replace(written.nodes[before], spoken=SpokenLine())
    say(written, node_of("Bb5"), before)
    assert walk(written, written.root, is_unwritten) == [node_of("d6")]


def test_what_is_not_told_need_not_be_written(written: Study, node_of: Node) -> None:
    line = node_of("c5")
    written.nodes[line] = replace(written.nodes[line], telling=Telling(Place.HIDDEN))
    assert walk(written, written.root, is_unwritten) == [node_of("Bb5")]
    assert next_beat(written, node_of("d6"), is_unwritten) == node_of("Bb5"), "from a line that is not told"


def test_a_silent_think_pause_is_meant_to_be_silent(written: Study, node_of: Node) -> None:
    node = node_of("Bb5")
    written.nodes[node] = replace(written.nodes[node], think=8.0)
    assert walk(written, written.root, is_unwritten) == [node_of("d6")]
    assert walk(written, written.root, asks_to_think) == [node]


def test_from_a_move_that_is_told_with_a_later_one_that_one_is_next(written: Study, node_of: Node) -> None:
    node = node_of("Bb5")
    before = written.nodes[node].parent
    assert before is not None
    written.nodes[before] = replace(written.nodes[before], spoken=SpokenLine())
    say(written, node, before)
    written.nodes[node] = replace(written.nodes[node], think=8.0)
    other = node_of("e4")
    written.nodes[other] = replace(written.nodes[other], think=5.0)
    assert next_beat(written, before, asks_to_think) == node
    assert next_beat(written, before, asks_to_think, -1) == other


def test_the_greeting_is_before_every_move(written: Study, node_of: Node) -> None:
    assert next_beat(written, Part.GREETING, is_unwritten) == node_of("d6")


def test_where_all_is_written_there_is_nowhere_to_go(study: Study) -> None:
    for node in list(study.nodes):
        say(study, node)
    assert next_beat(study, study.root, is_unwritten) is None
