"""The stops of the talk, and which moves of the board each of them covers."""

from __future__ import annotations

from studyboard.model.beats import beats
from studyboard.model.edits import ChangeLine, ChangeNode, RemoveBranch, apply
from studyboard.model.node import Place, Telling
from studyboard.model.order import running_order
from studyboard.model.script import Cue, FreeLine, Part, SpokenLine


def cut(study):
    return beats(study, running_order(study))


def say(study, node, text, *cued):
    apply(study, ChangeNode(node, "spoken", SpokenLine(text, tuple(Cue(0, node=move) for move in cued))))


def shown(study, told):
    return [told(beat.visits) for beat in cut(study)]


def test_without_words_every_move_is_a_beat_and_a_return_goes_with_what_follows(study, told):
    assert shown(study, told) == [
        "e4", "e5", "[e4] c5", "Nf3", "[c5] c3", "d5", "[Nf3] d6", "[e4] e6", "[e5] Nf3", "[e5] f4", "exf4",
        "[Nf3] Nc6", "Bb5",
    ]  # fmt: skip


def test_a_silent_move_that_a_later_line_plays_belongs_to_that_line(study, node_of, told):
    say(study, node_of("Bb5"), "Two moves at once.", node_of("Nc6"), node_of("Bb5"))
    assert shown(study, told)[-1] == "[Nf3] Nc6 Bb5"
    assert cut(study)[-1].key == node_of("Bb5")
    assert cut(study)[-1].node == node_of("Bb5")


def test_a_move_with_words_of_its_own_stays_a_beat_even_where_a_later_line_cues_it(study, node_of, told):
    say(study, node_of("Nc6"), "A knight.")
    say(study, node_of("Bb5"), "Two moves.", node_of("Nc6"), node_of("Bb5"))
    assert shown(study, told)[-2:] == ["[Nf3] Nc6", "Bb5"]


def test_a_think_pause_and_an_intended_time_make_a_beat_of_a_silent_move(study, node_of, told):
    say(study, node_of("Bb5"), "Two moves.", node_of("Nc6"), node_of("Bb5"))
    apply(study, ChangeNode(node_of("Nc6"), "think", 8.0))
    assert shown(study, told)[-2:] == ["[Nf3] Nc6", "Bb5"]
    assert cut(study)[-2].think == 8.0
    apply(study, ChangeNode(node_of("Nc6"), "think", 0.0))
    apply(study, ChangeNode(node_of("Nc6"), "intended", 3.0))
    assert cut(study)[-2].intended == 3.0


def test_a_return_between_a_silent_move_and_the_line_that_cues_it_keeps_them_apart(study, node_of, told):
    say(study, node_of("Nc6"), "After the side-line.", node_of("Nf3"))
    assert "[e5] Nf3" in shown(study, told)


def test_a_return_at_the_very_end_goes_with_the_last_beat(study, node_of, told):
    apply(study, RemoveBranch(node_of("Bb5")))
    apply(study, ChangeNode(node_of("f4"), "telling", Telling(Place.MOVED, node_of("Nc6"))))
    last = cut(study)[-1]
    assert told(last.visits) == "exf4 [Nc6]"
    assert (last.key, last.node) == (node_of("exf4"), node_of("Nc6"))


def test_a_beat_says_how_deep_in_side_lines_it_is(study, node_of):
    depths = {beat.key: beat.depth for beat in cut(study)}
    assert [depths[node_of(san)] for san in ("e4", "c5", "c3", "d5", "d6", "Bb5")] == [0, 1, 2, 2, 1, 0]


def test_the_parts_of_the_talk_are_beats_with_their_own_times(study):
    apply(study, ChangeLine(Part.GREETING, FreeLine(SpokenLine("Hello."), 4.0)))
    first = cut(study)[0]
    assert (first.key, first.spoken.text, first.intended, first.think) == (Part.GREETING, "Hello.", 4.0, 0.0)
    assert first.node == study.root


def test_no_visits_give_no_beats(study):
    assert beats(study, ()) == ()
