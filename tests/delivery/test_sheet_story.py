"""The talk as it is read on paper."""

from __future__ import annotations

import chess

from studyboard.delivery.sheet_options import SheetText
from studyboard.delivery.sheet_story import Diagram, NewPage, Paragraph, RunKind, lesson, story
from studyboard.model.edits import ChangeHeaders, ChangeNode, add_move, apply
from studyboard.model.node import Place, Telling
from studyboard.model.positions import Positions
from studyboard.model.study import Study


def told(study: Study, text: SheetText = SheetText.TALK) -> list[str]:
    """The story as lines of text: a label, then moves plain, notes in round and spoken lines in angle brackets."""
    return as_lines(story(study, Positions(study), text))


def as_lines(blocks) -> list[str]:
    signs = {RunKind.MOVE: "{}", RunKind.NOTE: "({})", RunKind.SPOKEN: "<{}>"}
    lines = []
    for block in blocks:
        match block:
            case NewPage(after):
                lines.append(f"--- after {', '.join(map(str, after))}")
            case Diagram(_, depth, caption, _, number, solved) if number:
                lines.append(f"{'>' * depth}[{number}{'' if solved else ', unsolved'}: {caption}]")
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


def parts(study: Study, text: SheetText = SheetText.TALK) -> tuple[list[str], dict[int, list[str]], list[str]]:
    """The story, the solutions by number, and what comes after them."""
    told = lesson(study, Positions(study), text)
    return as_lines(told.told), {one.number: as_lines(one.told) for one in told.solutions}, as_lines(told.after)


def test_the_moves_that_answer_are_told_apart_and_the_rest_overleaf(author):
    story_told, solutions, after = parts(author.study)
    assert story_told[:4] == [
        "<Good evening, and welcome to the Harbour Club.>",
        "1. e4 e5 2. ♘f3 ♘c6 3. ♗c4 ♘d4!? <Black offers a pawn. Do you take it?>",
        "[1: after 3… ♘d4]",
        "--- after 1",
    ]
    assert story_told[4] == "4… ♕g5 <and now two things hang at once.>"
    assert solutions == {
        1: [
            "4. ♘xe5? (White takes, with ♘f3-d4 out of reach.)",
            "> A The quiet way: 4. O-O (keeps the pawn for later.)",
            "> [side-line A, after 4. O-O]",
            "> 4… ♘xf3+",
            ">> A1 4… d6 5. ♘xd4",
            "> 5. ♕xf3 ±",
        ]
    }
    assert after == []
    assert story_told[-1] == "<So look at the board before you take what is offered.>"


def test_nothing_is_lost_or_told_twice(author):
    whole = told(author.study)
    story_told, solutions, after = parts(author.study)
    apart = [*story_told, *(line for told in solutions.values() for line in told), *after]
    moves = sorted(word for line in whole for word in line.split())
    without = (line.replace("[1: ", "[") for line in apart if not line.startswith("---"))
    task = ["White", "to", "move:", "find", "the", "move."]
    assert sorted([word for line in without for word in line.split()] + task) == moves


def test_a_finish_of_a_few_moves_is_the_solution_to_its_end_and_the_closing_comes_after_it(author):
    main = list(author.study.main_line())
    author.put(main[6], think=0.0)
    author.put(main[9], think=8.0, note="Nothing but a check is left, ♕xg2.")
    story_told, solutions, after = parts(author.study)
    assert story_told[-1] == "[1: after 5. ♘xf7]"
    assert solutions[1][0] == "(Nothing but a check is left, ♕xg2.)"
    assert solutions[1][1].startswith("5… ♕xg2 6. ♖f1 ♕xe4+ 7. ♗e2 ♘f3#!!")
    assert after == ["<So look at the board before you take what is offered.>"]


def test_two_think_pauses_one_after_the_other(author):
    main = list(author.study.main_line())
    author.put(main[7], think=5.0)
    story_told, solutions, _ = parts(author.study)
    assert [line for line in story_told if line.startswith(("[1", "[2", "---"))] == [
        "[1: after 3… ♘d4]",
        "--- after 1",
        "[2: after 4. ♘xe5]",
        "--- after 2",
    ]
    assert solutions[1] == ["4. ♘xe5?"]
    assert solutions[2][-2].startswith("4… ♕g5")


def test_a_think_pause_in_a_side_line_is_answered_by_the_rest_of_it(author):
    main = list(author.study.main_line())
    author.put(main[6], think=0.0)
    side = author.study.nodes[main[6]].children[1]
    author.put(side, think=5.0)
    story_told, solutions, _ = parts(author.study)
    assert "> A The quiet way: 4. O-O" in story_told
    assert ">[1: side-line A, after 4. O-O]" in story_told
    assert solutions[1] == ["(keeps the pawn for later.)", "4… ♘xf3+", "> A1 4… d6 5. ♘xd4", "5. ♕xf3 ±"]
    assert story_told[story_told.index("--- after 1") + 1].startswith("4… ♕g5")


def test_what_is_told_between_question_and_answer_is_told_with_the_answer(author):
    main = list(author.study.main_line())
    author.play(main[5], "Bc5")
    story_told, solutions, _ = parts(author.study)
    assert not any("♗c5" in line for line in story_told)
    assert solutions[1][0].startswith("> A 3… ♗c5")


def test_a_think_pause_at_the_end_has_no_solution(author):
    end = list(author.study.main_line())[-1]
    author.put(list(author.study.main_line())[6], think=0.0)
    author.put(end, think=5.0, note="")
    story_told, solutions, after = parts(author.study)
    assert solutions == {}
    assert story_told[-1].startswith("[1, unsolved: final position")
    assert after == ["<So look at the board before you take what is offered.>"]


def test_a_position_to_be_solved_is_an_exercise(author):
    position = type(author)({"FEN": "8/8/1KP5/3r4/8/8/8/k7 w - - 0 1", "SetUp": "1"})
    position.play(0, "c7 Rd6+ Kb5")
    position.put(0, think=20.0, spoken="White to win.")
    assert parts(position.study) == (
        ["<White to win.>", "[1: the start position, White to move]"],
        {1: ["1. c7 ♖d6+ 2. ♔b5", "[final position, after 2. ♔b5]"]},
        [],
    )


def test_between_two_think_pauses_the_story_goes_on(author):
    game = type(author)({})
    main = game.play(0, "e4 e5 Nf3 Nc6 Bb5 a6 Ba4 Nf6 O-O Be7 Re1 b5 Bb3 d6 c3 O-O")
    for place, node in enumerate(main):
        game.put(node, spoken=f"Words {place}.")
    game.put(main[2], think=5.0)
    game.put(main[6], think=5.0)
    story_told, solutions, _ = parts(game.study)
    assert solutions == {1: ["2… ♘c6 <Words 3.>"], 2: ["4… ♘f6 <Words 7.>"]}
    assert [line.split()[0] for line in story_told if "Words" in line] == [
        "1.", "1…", "2.", "3.", "3…", "4.", "5.", "5…", "6.", "6…", "7.", "7…", "8.", "8…",
    ]  # fmt: skip
