"""Words are found in the whole script, and replaced with every cue at its word."""

from __future__ import annotations

import chess
import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.model.edits import AddMove, ChangeLine, ChangeNode, apply
from studyboard.model.errors import EditRefusedError
from studyboard.model.node import Place as Told
from studyboard.model.node import Telling
from studyboard.model.script import Cue, FreeLine, Part, SpokenLine, word_spans, words
from studyboard.model.study import Study
from studyboard.writing.find_replace import Place, Search, find, replace_places, replaced, text_of


@pytest.fixture
def study() -> Study:
    """A greeting, two moves with lines, a hidden side-line, and notes."""
    made = Study()
    for edit in (
        AddMove(0, chess.Move.from_uci("e2e4"), 1),
        AddMove(1, chess.Move.from_uci("e7e5"), 2),
        AddMove(1, chess.Move.from_uci("c7c5"), 3),
        ChangeNode(3, "telling", Telling(Told.HIDDEN)),
        ChangeNode(1, "spoken", SpokenLine("The tower waits. Tower and towers!", (Cue(3, node=1),))),
        ChangeNode(2, "spoken", SpokenLine("Black's tower, Black’s king.")),
        ChangeNode(3, "spoken", SpokenLine("A hidden tower.")),
        ChangeNode(1, "note", "Tower, printed."),
        ChangeLine(Part.GREETING, FreeLine(SpokenLine("Welcome to the tower."), 4.0)),
    ):
        apply(made, edit)
    return made


def found(study: Study, search: Search) -> list[tuple[object, str, str]]:
    return [(p.key, p.field, text_of(study, p.key, p.field)[p.start : p.end]) for p in find(study, search)]


def test_places_come_in_the_order_of_the_talk_and_lines_that_are_not_told_last(study: Study) -> None:
    assert found(study, Search("tower")) == [
        (Part.GREETING, "spoken", "tower"),
        (1, "spoken", "tower"),
        (1, "spoken", "Tower"),
        (1, "spoken", "tower"),
        (2, "spoken", "tower"),
        (3, "spoken", "tower"),
    ]


def test_case_whole_words_and_notes_are_matters_of_choice(study: Study) -> None:
    assert [text for _, _, text in found(study, Search("Tower", match_case=True))] == ["Tower"]
    assert len(found(study, Search("tower", whole_words=True))) == 5
    assert (1, "note", "Tower") in found(study, Search("tower", notes=True))
    assert found(study, Search("")) == []
    assert [text for _, _, text in found(study, Search("black's"))] == ["Black's", "Black’s"]


def test_a_dot_is_a_dot_and_no_pattern(study: Study) -> None:
    assert found(study, Search("tower.")) == [(Part.GREETING, "spoken", "tower."), (3, "spoken", "tower.")]


def test_all_are_replaced_in_one_step_and_that_is_taken_back_in_one(study: Study) -> None:
    before = (dict(study.nodes), dict(study.lines))
    search = Search("tower", notes=True)
    inverse, _ = apply(study, replace_places(study, find(study, search), search, "rook"))
    assert study.node(1).spoken == SpokenLine("The rook waits. Rook and rooks!", (Cue(3, node=1),))
    assert study.node(1).note == "Rook, printed."
    assert study.line(Part.GREETING) == FreeLine(SpokenLine("Welcome to the rook."), 4.0)
    assert find(study, search) == ()
    apply(study, inverse)
    assert (study.nodes, study.lines) == before


def test_one_place_alone_is_replaced(study: Study) -> None:
    search = Search("tower")
    apply(study, replace_places(study, [Place(1, "spoken", 4, 9)], search, "big old rook"))
    assert study.node(1).spoken == SpokenLine("The big old rook waits. Tower and towers!", (Cue(5, node=1),))


def test_nothing_to_replace_is_refused(study: Study) -> None:
    with pytest.raises(EditRefusedError, match="Nothing was found"):
        replace_places(study, (), Search("x"), "y")


def test_a_cue_inside_what_is_replaced_stays_at_the_word_that_took_over() -> None:
    line = SpokenLine("then the white knight jumps", (Cue(3, node=1), Cue(4, node=2)))
    assert replaced(line, [(5, 21, "his horse")]).cues == (Cue(2, node=1), Cue(3, node=2))
    assert replaced(line, [(5, 21, "it")]).cues == (Cue(1, node=1), Cue(2, node=2))
    assert replaced(line, [(5, 22, "")]) == SpokenLine("then jumps", (Cue(1, node=1), Cue(1, node=2)))
    assert replaced(line, [(22, 27, "")]).cues == (Cue(3, node=1), Cue(4, node=2))


@given(
    text=st.text(alphabet="ab .\n", max_size=30),
    word=st.integers(0, 12),
    start=st.integers(0, 30),
    size=st.integers(1, 8),
    by=st.text(alphabet="xy ", max_size=8),
)
def test_a_cue_of_a_word_that_is_not_touched_stays_with_it(
    text: str, word: int, start: int, size: int, by: str
) -> None:
    line = SpokenLine(text, (Cue(min(word, len(words(text))), node=1),))
    start = min(start, len(text))
    end = min(start + size, len(text))
    after = replaced(line, [(start, end, by)] if end > start else [])
    assert after == after.sorted()
    assert after.text == (text[:start] + by + text[end:] if end > start else text)
    (old,), (new,) = line.cues, after.cues
    spans, new_spans = word_spans(text), word_spans(after.text)
    if old.word == len(spans):
        assert new.word == len(new_spans)
    elif spans[old.word][1] < start:
        assert new.word == old.word
    elif spans[old.word][0] > end:
        assert len(new_spans) - new.word == len(spans) - old.word
