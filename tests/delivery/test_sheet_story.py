"""The talk as it is read on paper."""

from __future__ import annotations

import chess

from studyboard.delivery.sheet_story import Diagram, Paragraph, RunKind, SheetText, story
from studyboard.model.edits import ChangeHeaders, ChangeNode, add_move, apply
from studyboard.model.node import Place, Telling
from studyboard.model.positions import Positions
from studyboard.model.study import Study


def told(study: Study, text: SheetText = SheetText.TALK) -> list[str]:
    """The story as lines of text: a label, then moves plain, notes in round and spoken lines in angle brackets."""
    signs = {RunKind.MOVE: "{}", RunKind.NOTE: "({})", RunKind.SPOKEN: "<{}>"}
    lines = []
    for block in story(study, Positions(study), text):
        match block:
            case Paragraph(depth, runs, label, name):
                start = [part for part in (">" * depth, label, name and f"{name}:") if part]
                lines.append(" ".join([*start, *(signs[run.kind].format(run.text) for run in runs)]))
            case Diagram(_, depth, caption, task):
                lines.append(" ".join(part for part in (">" * depth, f"[{caption}]", task) if part))
    return lines


def test_the_whole_talk(author):
    assert told(author.study) == [
        "<Good evening, and welcome to the Harbour Club.>",
        "1. e4 e5 2. ♘f3 ♘c6 3. ♗c4 ♘d4!? <Black offers a pawn. Do you take it?>",
        "[after 3… ♘d4] White to move: find the move.",
        "4. ♘xe5? (White takes, with ♘f3-d4 out of reach.)",
        "> A The quiet way: 4. O-O (keeps the pawn for later.)",
        "> [side-line A, after 4. O-O]",
        "> 4… ♘xf3+",
        ">> A1 4… d6 5. ♘xd4",
        "> 5. ♕xf3 ±",
        "4… ♕g5 <and now two things hang at once.>",
        "[after 4… ♕g5]",
        "5. ♘xf7 ♕xg2 6. ♖f1 ♕xe4+ 7. ♗e2 ♘f3#!! (A smothered king.)",
        "[final position, after 7… ♘f3# · 0–1]",
        "<So look at the board before you take what is offered.>",
    ]


def test_without_the_talk_the_notes_stand_alone(author):
    lines = told(author.study, SheetText.NOTES)
    assert not any("<" in line for line in lines)
    assert lines[0].startswith("1. e4 e5 2. ♘f3")
    assert "4. ♘xe5? (White takes, with ♘f3-d4 out of reach.)" in lines


def test_thanks_are_not_printed(author):
    assert not any("Thank you" in line for line in told(author.study))


def test_a_side_line_that_the_talk_leaves_out_is_printed(author):
    lines = told(author.study)
    author.put(next(node.id for node in author.study.nodes.values() if node.name), telling=Telling(Place.HIDDEN))
    assert told(author.study) == lines


def test_a_side_line_that_is_told_before_the_main_move_is_printed_before_it(author):
    author.put(next(node.id for node in author.study.nodes.values() if node.name), telling=Telling(Place.BEFORE))
    lines = told(author.study)
    assert lines.index("> A The quiet way: 4. O-O (keeps the pawn for later.)") < next(
        place for place, line in enumerate(lines) if line.startswith("4. ♘xe5?")
    )


def test_a_line_that_goes_on_in_the_middle_of_a_sentence_keeps_its_paragraph(author):
    author.put(9, spoken="White takes, of course,")
    author.put(10, spoken="and Black takes too.")
    assert "5. ♘xf7 <White takes, of course,> 5… ♕xg2 <and Black takes too.>" in told(author.study)


def test_a_study_from_a_position_shows_it_and_says_who_moves(author):
    position = type(author)({"FEN": "8/8/1KP5/3r4/8/8/8/k7 w - - 0 1", "SetUp": "1"})
    position.play(0, "c7 Rd6+")
    assert told(position.study) == [
        "[the start position, White to move]",
        "1. c7 ♖d6+",
        "[final position, after 1… ♖d6+]",
    ]


def test_a_study_without_moves_shows_its_position():
    study = Study()
    apply(study, ChangeNode(0, "note", "Where would you begin?"))
    assert told(study) == ["(Where would you begin?)", "[the start position, White to move]"]


def test_black_to_move_first_is_numbered_so(author):
    position = type(author)({"FEN": "4k3/8/8/8/8/8/4p3/4K3 b - - 0 31", "SetUp": "1"})
    position.play(0, "Kd7 Kxe2 Ke6")
    assert told(position.study)[1] == "31… ♔d7 32. ♔xe2 ♔e6"


def test_a_passed_turn_is_named(author):
    study = author.study
    apply(study, ChangeNode(0, "note", ""))
    end = list(study.main_line())[2]
    edit = add_move(study, end, chess.Move.null())
    apply(study, edit)
    assert any("2. (pass)" in line for line in told(study))


def test_a_note_before_the_move_and_notes_of_several_paragraphs(author):
    author.put(1, note_before="First of all.", note="One.\n\nTwo.")
    lines = told(author.study, SheetText.NOTES)
    assert lines[:4] == ["(First of all.)", "1. e4 (One.)", "(Two.)", "1… e5 2. ♘f3 ♘c6 3. ♗c4 ♘d4!?"]


def test_commands_of_other_programs_in_a_note_are_not_printed(author):
    author.put(2, note="[%clk 1:20:00] A plain reply.")
    assert any("(A plain reply.)" in line for line in told(author.study))


def test_the_result_is_only_given_where_it_is_known(author):
    apply(author.study, ChangeHeaders((("Result", "*"),)))
    assert "[final position, after 7… ♘f3#]" in told(author.study)


def test_side_lines_are_lettered_through_the_whole_sheet(author):
    study = author.study
    for place, reply in enumerate(["d6", "Nf6", "f5"]):
        author.play(1, reply)
        assert len(study.nodes[1].children) == place + 2
    labels = [line.split()[1] for line in told(study) if line.startswith("> ") and not line.startswith("> [")]
    assert labels[:4] == ["A", "B", "C", "D"]


def test_a_side_line_nested_three_thousand_deep_is_told():
    study = Study({"FEN": "4k3/8/8/8/8/8/8/R3K3 w - - 0 1", "SetUp": "1"})
    positions = Positions(study)
    at = study.root
    for _ in range(3000):
        first, second, *_ = sorted(positions.board(at).legal_moves, key=str)
        for move in (first, second):
            edit = add_move(study, at, move)
            apply(study, edit)
        at = edit.node
    blocks = story(study, positions)
    moves = sum(len(block.runs) for block in blocks if isinstance(block, Paragraph))
    assert moves == 6000
    assert max(block.depth for block in blocks) == 3000
