"""The talk as an article."""

from __future__ import annotations

from studyboard.delivery.page.article import Diagram, Paragraph, article
from studyboard.delivery.page.lines import Lines
from studyboard.delivery.page.shots import shots
from studyboard.delivery.page.telling import MoveTag, NewParagraph, ReturnTag, Words
from studyboard.model.edits import ChangeNode, apply
from studyboard.model.marks import MarkKind
from studyboard.model.node import Place, Telling
from studyboard.model.positions import Positions
from studyboard.model.script import Cue, SpokenLine
from studyboard.timing.plan import plan


def parts_of(study):
    timeline = plan(study)
    steps = shots(timeline)
    return article(study, Positions(study), timeline, steps, Lines(study, [shot.node for shot in steps]))


def read(item) -> str:
    """A paragraph, note or diagram as plain text, moves in brackets."""
    if isinstance(item, Diagram):
        return f"<{item.caption}>"
    if item.note:
        return f"({item.note})"
    words = []
    for stop in item.stops:
        for token in stop.tokens:
            match token:
                case MoveTag():
                    words.append(f"[{token.text}]")
                case ReturnTag():
                    words.append(f"[back to {token.text}]")
                case NewParagraph():
                    words.append("//")
                case Words():
                    words.append(f"*{token.text}*" if token.mark else token.text)
    return " ".join(words)


def all_read(study) -> list[list[str]]:
    return [[read(item) for block in part.blocks for item in block.content] for part in parts_of(study)]


def test_moves_stand_at_the_words_that_play_them_and_questions_cut_the_talk(author):
    first, second = all_read(author.study)
    assert first == [
        "Good evening, and welcome to the Harbour Club.",
        "[1. e4] [e5] [2. ♘f3] [♘c6] [3. ♗c4] [♘d4!?] Black offers a pawn. Do you take it?",
        "<After 3… ♘d4!?>",
    ]
    assert second[0] == "[4. ♘xe5?]"
    assert second[1] == "(White takes, with ♘f3-d4 out of reach.)"


def test_a_note_at_the_start_is_there_whether_something_is_said_there_or_not(author):
    root = author.study.root
    apply(author.study, ChangeNode(root, "note", "Played in the last round."))
    first, _ = all_read(author.study)
    assert first[1] == "(Played in the last round.)"
    assert first[2].startswith("[1. e4]")
    apply(author.study, ChangeNode(root, "spoken", SpokenLine("Here we are.")))
    first, _ = all_read(author.study)
    assert first[1:3] == ["Here we are.", "(Played in the last round.)"]


def test_german_is_set_with_the_quotation_marks_of_german(author):
    author.study.language = "de"
    *_, last = author.study.main_line()
    apply(author.study, ChangeNode(last, "note", 'Das "Abendspiel".'))
    apply(author.study, ChangeNode(last, "spoken", SpokenLine('Das heißt "Drossel".')))
    told = all_read(author.study)[-1]
    assert "(Das „Abendspiel“.)" in told
    assert any("Das heißt „Drossel“." in text for text in told)


def test_a_side_line_has_a_letter_its_name_and_a_way_back(author):
    blocks = [block for part in parts_of(author.study) for block in part.blocks]
    lines = [(block.depth, block.label, block.title) for block in blocks]
    assert (1, "A", "The quiet way") in lines
    assert (2, "A1", "4… d6") in lines
    begins = next(block for block in blocks if block.label == "A")
    assert read(begins.content[0]).startswith("[back to 3… ♘d4!?] [4. O-O]")


def test_what_is_asked_stands_under_the_diagram_and_before_the_next_part(author):
    first, second = parts_of(author.study)
    diagram = first.blocks[-1].content[-1]
    assert isinstance(diagram, Diagram)
    assert diagram.task == "White to move: find the move."
    assert diagram.words.startswith("White: king e1, queen d1")
    assert (first.question, second.question) == ("", "White to move: find the move.")


def test_the_word_of_a_mark_is_told_apart(author, mark):
    node = list(author.study.main_line())[2]
    author.put(node, marks=(mark(MarkKind.GUARD, "b8 c6"),))
    apply(author.study, ChangeNode(node, "spoken", SpokenLine("The knight guards this square.", (Cue(3, mark=0),))))
    assert "[1. e4] [e5] The knight guards *this* square." in all_read(author.study)[0]


def test_a_blank_line_begins_a_paragraph(author):
    author.put(author.study.root, spoken="One.\n\nTwo.")
    assert "One. // Two." in all_read(author.study)[0]


def test_hidden_side_lines_are_left_out(author):
    line = next(node.id for node in author.study.nodes.values() if node.name == "The quiet way")
    author.put(line, telling=Telling(Place.HIDDEN))
    assert all(not block.depth for part in parts_of(author.study) for block in part.blocks)


def test_sentences_over_several_moves_are_one_paragraph(author):
    main = list(author.study.main_line())
    author.put(main[1], spoken="White begins,")
    author.put(main[2], spoken="Black answers.")
    assert "[1. e4] White begins, [1… e5] Black answers." in all_read(author.study)[0]


def test_every_word_that_is_said_is_in_it(example):
    said = [word for stretch in plan(example).stretches for word in stretch.spoken.text.split()]
    shown = [
        word
        for part in parts_of(example)
        for block in part.blocks
        for item in block.content
        if isinstance(item, Paragraph)
        for stop in item.stops
        for token in stop.tokens
        if isinstance(token, Words)
        for word in token.text.split()
    ]
    assert len(shown) == len(said)


def test_an_unusual_start_has_a_diagram():
    from tests.delivery.conftest import HEADERS, Author

    author = Author(HEADERS | {"FEN": "kbK5/pp6/1P6/8/8/8/8/R7 w - - 0 1", "SetUp": "1"})
    author.play(0, "Ra6 bxa6 b7#")
    (part,) = parts_of(author.study)
    assert [read(item) for item in part.blocks[0].content] == [
        "<The start position>",
        "[1. ♖a6] [bxa6] [2. b7#]",
        "<The end, after 2. b7# · 0–1>",
    ]
