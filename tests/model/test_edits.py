"""Every edit can be taken back, and one that makes no sense leaves the study as it was."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import chess
import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.model import edits, pasting
from studyboard.model.codec import from_plain, to_plain
from studyboard.model.edits import AddMove, ChangeHeaders, ChangeNode, RemoveBranch, Several, add_move, apply
from studyboard.model.errors import EditRefusedError
from studyboard.model.positions import Positions
from studyboard.model.script import Cue, Part, SpokenLine
from studyboard.model.study import Study
from studyboard.notation.pgn_reader import read_games
from tests.model.some_edit import some_edit

E4 = chess.Move.from_uci("e2e4")


def content(study: Study) -> dict[str, Any]:
    """Everything an author has made; the counters for fresh ids only ever grow."""
    return {
        "headers": list(study.headers.items()),
        "nodes": dict(study.nodes),
        "lines": {part: study.line(part) for part in Part},
        "slot": study.slot,
        "pace": study.pace,
        "takes": dict(study.takes),
        "rehearsed": dict(study.rehearsed),
        "rehearsals": study.rehearsals,
        "left": study.left,
        "pronunciations": dict(study.pronunciations),
        "language": study.language,
        "words": study.words,
    }


def sans(study: Study, start: int | None = None) -> list[str]:
    positions = Positions(study)
    return [positions.san(node.id) for node in study.branch(study.root if start is None else start)][start is None :]


def test_taking_a_move_off_the_tree_and_back_keeps_its_place_and_all_that_follows(study, node_of):
    before = content(study)
    inverse, changed = apply(study, RemoveBranch(node_of("c5")))
    assert "c5" not in sans(study)
    assert "d6" not in sans(study)
    assert len(changed.nodes) == 6
    apply(study, inverse)
    assert content(study) == before


@pytest.mark.parametrize(
    ("edit", "sentence"),
    [
        (RemoveBranch(0), "start position cannot be deleted"),
        (RemoveBranch(999), "not on the tree any more"),
        (AddMove(999, E4, 50), "not on the tree any more"),
        (AddMove(0, E4, 50), "on the tree already"),
        (AddMove(0, chess.Move.from_uci("d2d4"), 1), "on the tree already"),
        (edits.MoveChild(0, 0), "no place among others"),
        (edits.MoveChild(1, 7), "no such place"),
        (ChangeNode(1, "parent", 5), "nothing called “parent”"),
        (ChangeNode(999, "note", "x"), "not on the tree any more"),
        (edits.ChangeSlot(0.0), "longer than nothing"),
        (edits.ChangeSlot(float("nan")), "longer than nothing"),
        (edits.DropTake(9), "no such take"),
        (edits.ChangeWords(("two words",)), "one word"),
        (ChangeHeaders((("FEN", "nonsense"),)), "holds no position"),
        (ChangeHeaders((("FEN", "4k3/8/8/8/8/8/8/4K3 w - - 0 1"),)), "cannot change while moves stand"),
        (Several((ChangeNode(1, "note", "x"), RemoveBranch(999))), "not on the tree any more"),
    ],
)
def test_an_edit_that_makes_no_sense_says_why_and_changes_nothing(study, edit, sentence):
    before = content(study)
    with pytest.raises(EditRefusedError, match=sentence):
        apply(study, edit)
    assert content(study) == before


def test_promoting_a_side_line_swaps_it_with_the_line_before_it(study, node_of):
    apply(study, edits.promote(study, node_of("e6")))
    assert study.nodes[node_of("e4")].children == (node_of("e5"), node_of("e6"), node_of("c5"))
    apply(study, edits.promote(study, node_of("e6")))
    assert study.on_main_line(node_of("e6"))
    with pytest.raises(EditRefusedError, match="main line already"):
        edits.promote(study, node_of("e6"))


def test_promoting_from_the_middle_of_a_side_line_promotes_the_whole_of_it(study, node_of):
    apply(study, edits.promote(study, node_of("exf4")))
    assert study.on_main_line(node_of("exf4"))


def test_demoting_the_main_line_makes_its_first_side_line_the_main_one(study, node_of):
    apply(study, edits.demote(study, node_of("e5")))
    assert study.on_main_line(node_of("c5"))
    with pytest.raises(EditRefusedError, match="no side-line below"):
        edits.demote(study, node_of("e6"))
    with pytest.raises(EditRefusedError, match="no side-line below"):
        edits.demote(study, study.root)


def test_making_a_nested_line_the_main_line_turns_every_branch_on_the_way(study, node_of):
    before = content(study)
    inverse, _ = apply(study, edits.make_main_line(study, node_of("d5")))
    assert study.on_main_line(node_of("d5"))
    apply(study, inverse)
    assert content(study) == before
    with pytest.raises(EditRefusedError):
        edits.make_main_line(study, node_of("Bb5"))


def test_pasting_a_branch_where_its_first_moves_stand_adds_only_what_is_new(study, node_of):
    other = next(read_games("1. e4 e5 2. Nf3 {good} Nc6 3. Bc4 (3. d4) *")).study
    edit = pasting.paste(study, list(other.branch(1)), study.root)
    before = content(study)
    inverse, _ = apply(study, edit)
    nc6 = study.nodes[node_of("Nc6")]
    assert [study.nodes[child].move for child in nc6.children] == [
        chess.Move.from_uci("f1b5"), chess.Move.from_uci("f1c4"), chess.Move.from_uci("d2d4"),
    ]  # fmt: skip
    assert study.nodes[nc6.parent].note == "good"
    apply(study, inverse)
    assert content(study) == before


def read(movetext: str) -> tuple[Study, dict[str, int]]:
    """The study, and its first node for each move as it is written."""
    study = next(read_games(movetext)).study
    positions = Positions(study)
    return study, {positions.san(node.id): node.id for node in reversed(list(study.branch(study.root)))}


def test_a_pasted_branch_cues_its_own_moves_and_marks():
    study, ids = read("1. e4 e5 (1... e6) 2. f4 (2. d4 d6) 2... a6 *")
    f4, a6 = ids["f4"], ids["a6"]
    apply(study, ChangeNode(a6, "spoken", SpokenLine("And a quiet answer.", (Cue(0, node=f4), Cue(1, node=a6)))))
    apply(study, pasting.paste(study, list(study.branch(f4)), ids["e6"]))
    (copy,) = study.nodes[ids["e6"]].children
    (answer,) = study.nodes[copy].children
    assert {copy, answer}.isdisjoint({f4, a6})
    assert study.nodes[answer].spoken.cues == (Cue(0, node=copy), Cue(1, node=answer))
    assert study.nodes[a6].spoken.cues == (Cue(0, node=f4), Cue(1, node=a6))


def test_pasting_refuses_the_first_move_that_cannot_be_played_there(study, node_of):
    before = content(study)
    with pytest.raises(EditRefusedError, match=r"does not fit here: 3\. "):
        pasting.paste(study, list(study.branch(node_of("f4"))), node_of("exf4"))
    assert content(study) == before


def test_pasting_what_stands_there_already_is_refused(study, node_of):
    with pytest.raises(EditRefusedError, match="stands here already"):
        pasting.paste(study, list(study.branch(node_of("f4"))), node_of("e5"))


def test_a_branch_that_is_moved_keeps_its_ids_and_goes_back():
    study, ids = read("1. e4 e5 (1... e6 2. c4) 2. f4 (2. d4 d6) 2... a6 *")
    before = content(study)
    inverse, _ = apply(study, pasting.cut_and_paste(study, ids["f4"], ids["e6"]))
    assert study.nodes[ids["f4"]].parent == ids["e6"]
    assert study.nodes[ids["e6"]].children == (ids["c4"], ids["f4"])
    assert study.on_main_line(ids["d4"])
    apply(study, inverse)
    assert content(study) == before


def test_a_branch_that_is_moved_to_where_it_stands_in_part_is_merged():
    study, ids = read("1. e4 e5 (1... e6 2. f4 h6) 2. f4 a6 *")
    before = content(study)
    inverse, _ = apply(study, pasting.cut_and_paste(study, study.nodes[ids["e5"]].children[0], ids["e6"]))
    assert sans(study) == ["e4", "e5", "e6", "f4", "h6", "a6"]
    apply(study, inverse)
    assert content(study) == before


def test_a_branch_that_cannot_be_moved_stays():
    study, ids = read("1. e4 e5 (1... e6) 2. d4 exd4 *")
    before = content(study)
    with pytest.raises(EditRefusedError, match=r"does not fit here: 2\.\.\. e5–d4 is not a legal move"):
        pasting.cut_and_paste(study, ids["d4"], ids["e6"])
    with pytest.raises(EditRefusedError, match="stands here already"):
        pasting.cut_and_paste(study, ids["d4"], ids["e5"])
    with pytest.raises(EditRefusedError, match="into itself"):
        pasting.cut_and_paste(study, ids["d4"], ids["exd4"])
    assert content(study) == before


def test_notes_become_spoken_lines_and_commands_stay_in_the_note(study, node_of):
    e5, nf3 = node_of("e5"), node_of("Nf3")
    apply(study, ChangeNode(e5, "note", "The usual answer. [%clk 0:01:02]"))
    apply(study, ChangeNode(e5, "note_before", "And now"))
    apply(study, ChangeNode(nf3, "note", "has words"))
    apply(study, ChangeNode(nf3, "spoken", SpokenLine("Said.")))
    before = content(study)
    inverse, _ = apply(study, edits.notes_to_spoken(study, list(study.nodes)))
    node = study.nodes[e5]
    assert node.spoken.text == "And now The usual answer."
    assert (node.note_before, node.note) == ("", "[%clk 0:01:02]")
    assert study.nodes[nf3].note == "has words"
    apply(study, inverse)
    assert content(study) == before
    with pytest.raises(EditRefusedError, match="No note"):
        edits.notes_to_spoken(study, [node_of("Bb5")])


@given(st.data())
def test_any_edits_taken_back_give_the_same_study_and_done_again_the_same_result(data):
    study = Study()
    history: list[edits.Edit] = []
    seen = [content(study)]
    for _ in range(data.draw(st.integers(1, 15))):
        try:
            inverse, changed = apply(study, some_edit(data.draw, study))
        except EditRefusedError:
            assert content(study) == seen[-1]
            continue
        assert changed.nodes >= {
            node for node in study.nodes.keys() | seen[-1]["nodes"].keys()
            if study.nodes.get(node) != seen[-1]["nodes"].get(node)
        }  # fmt: skip
        _check_tree(study)
        # What is kept in a file is the edit as plain data.
        history.append(from_plain(to_plain(inverse)))
        seen.append(content(study))
    redo: list[edits.Edit] = []
    for inverse, before in zip(reversed(history), reversed(seen[:-1]), strict=True):
        again, _ = apply(study, inverse)
        redo.append(again)
        assert content(study) == before
    for again, after in zip(reversed(redo), seen[1:], strict=True):
        apply(study, again)
        assert content(study) == after


def _check_tree(study: Study) -> None:
    """Parents and children agree, every node can be reached, and every move is legal where it stands."""
    positions = Positions(study)
    reached = {node.id: node for node in study.branch(study.root)}
    assert reached == study.nodes
    for node in study.nodes.values():
        moves = [study.nodes[child].move for child in node.children]
        assert len(set(moves)) == len(moves)
        assert all(study.nodes[child].parent == node.id for child in node.children)
        assert all(move in positions.board(node.id).legal_moves for move in moves)
        assert node.id < study.next_id


def test_a_study_of_three_thousand_moves_deep_is_pasted_and_moved_without_recursion():
    study = Study()
    cycle = [chess.Move.from_uci(uci) for uci in ("g1f3", "g8f6", "f3g1", "f6g8")]
    at = study.root
    for number in range(3_000):
        edit = add_move(study, at, cycle[number % 4])
        apply(study, edit)
        at = edit.node
    branch = [replace(node) for node in study.branch(1)]
    apply(study, pasting.paste(study, branch, at))
    assert len(study.nodes) == 6_001
