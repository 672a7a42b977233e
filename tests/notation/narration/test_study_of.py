"""A talk becomes a study that tells it in the same order, with its moves at their words."""

from __future__ import annotations

from studyboard.model.beats import Beat, beats
from studyboard.model.order import running_order
from studyboard.model.positions import Positions
from studyboard.model.script import Part, words
from studyboard.model.study import Study
from studyboard.notation.narration.reading import read_narration
from studyboard.notation.narration.study_of import narration_study

TALK = """
Good evening.

White plays e4, Black replies e5. If now knight f3, then knight c6. In the game White went for f4. Instead of the
pawn move, bishop c4 was quieter. Black takes, e takes f4.

That was all. Thank you.
"""


def study_and_beats(text: str) -> tuple[Study, tuple[Beat, ...]]:
    study = narration_study(read_narration(text))
    return study, beats(study, running_order(study))


def test_the_running_order_tells_the_talk_as_it_was_told() -> None:
    _, told = study_and_beats(TALK)
    assert " ".join(" ".join(beat.spoken.text for beat in told).split()) == " ".join(TALK.split())


def test_moves_and_side_lines_stand_on_the_tree() -> None:
    study, _ = study_and_beats(TALK)
    positions = Positions(study)
    main = [positions.san(node) for node in study.main_line()]
    assert main == ["", "e4", "e5", "f4", "exf4"]
    beginnings = {positions.san(n) for n in study.nodes if study.begins_side_line(n)}
    assert beginnings == {"Nf3", "Bc4"}


def test_cues_stand_at_the_words_that_play_the_moves() -> None:
    study, _ = study_and_beats(TALK)
    positions = Positions(study)
    spoken = next(node.spoken for node in study.nodes.values() if node.spoken.text.startswith("White plays"))
    said = words(spoken.text)
    assert [(said[cue.word], positions.san(cue.node)) for cue in spoken.cues if cue.node is not None] == [
        ("e4,", "e4"), ("e5.", "e5"),
    ]  # fmt: skip


def test_what_belongs_to_no_move_is_greeting_and_closing() -> None:
    study, _ = study_and_beats(TALK)
    assert study.line(Part.GREETING).spoken.text == "Good evening."
    assert study.line(Part.CLOSING).spoken.text == "That was all. Thank you."


def test_times_become_intended_seconds() -> None:
    study, told = study_and_beats("[0:00] Welcome.\n[0:05] e4.\n[0:12] And c5.\n[0:20] Knight f3.")
    assert [beat.intended for beat in told] == [5.0, 7.0, 8.0, None]
    assert len(study.nodes) == 4


def test_a_paragraph_that_changes_lines_is_cut_before_the_sentence_that_does() -> None:
    _, told = study_and_beats("e4 e5. A quiet start. If knight f3, then knight c6. But in the game f4 was played.")
    assert [beat.spoken.text for beat in told] == [
        "e4 e5. A quiet start.", "If knight f3, then knight c6.", "But in the game f4 was played.",
    ]  # fmt: skip


def test_a_game_that_is_given_keeps_its_headers_and_all_its_moves() -> None:
    game = narration_study(read_narration("e4 e5 knight f3 knight c6"))
    game.headers["White"] = "Pell, Imani"
    study = narration_study(read_narration("We look at knight f3.", game=game), game)
    assert study.headers["White"] == "Pell, Imani"
    assert len(list(study.main_line())) == 5
    assert len(game.nodes) == 5


def test_a_finish_that_was_not_played_is_named_so() -> None:
    game = narration_study(read_narration("f3 e5 g4"))
    text = "f3, e5, g4, and White gave up because of what comes next: if he had waited, queen h4 is mate."
    study = narration_study(read_narration(text, game=game), game)
    names = [study.nodes[node].name for node in study.main_line()]
    assert names[4:] in ([], ["not played"])
