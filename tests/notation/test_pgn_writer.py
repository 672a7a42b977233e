"""What is written as PGN is read again as it was, and looks as the standard wants it."""

from __future__ import annotations

import io
from typing import Any

import chess
import chess.pgn
from hypothesis import given
from hypothesis import strategies as st

from studyboard.model.edits import ChangeHeaders, ChangeLine, ChangeNode, add_move, apply
from studyboard.model.positions import Positions
from studyboard.model.script import FreeLine, Part, SpokenLine
from studyboard.model.study import Study
from studyboard.notation.pgn_reader import read_games
from studyboard.notation.pgn_writer import pgn_remarks, pgn_text

_ANY_CHARACTER = st.characters(exclude_categories=("Cs",), exclude_characters="\r")
_TROUBLE = st.sampled_from(
    ["{", "}", "(", ")", ";", "%", "[", "]", "[%clk 0:01:02]", '[Event "x"]', "1-0", "*", "$3", "!", "  ", "\n", " % ",
     "e4", "12.", "\\", '"', "--", "a long enough run of plain words to make the line wrap somewhere in the middle"]
)  # fmt: skip

#: Notes as any reader leaves them: no white space around their lines.
notes = st.lists(st.one_of(_TROUBLE, st.text(_ANY_CHARACTER, max_size=12)), max_size=8).map(
    lambda pieces: "\n".join(line.strip(" \t") for line in " ".join(pieces).split("\n"))
)
_values = st.text(st.characters(exclude_categories=("Cs",), exclude_characters="\r\n"), max_size=300)
_names = st.from_regex(r"[A-Z][A-Za-z0-9_]{0,20}", fullmatch=True).filter(
    lambda name: name.lower() not in ("fen", "setup", "variant", "result")
)


@st.composite
def studies(draw: st.DrawFn, most: int = 25) -> Study:
    """Studies with side-lines anywhere, notes, glyphs and headers."""
    headers = Study().headers | draw(st.dictionaries(_names, _values, max_size=4))
    headers["Result"] = draw(st.sampled_from(["1-0", "0-1", "1/2-1/2", "*"]))
    headers["White"] = draw(_values)
    fens = [None, None, "4k3/P6P/8/3pP3/8/8/8/R3K2R w KQ d6 0 40", "r3k2r/8/8/8/4Pp2/8/6p1/4K3 b kq e3 5 9"]
    fen = draw(st.sampled_from(fens))
    if fen is not None:
        headers |= {"FEN": fen, "SetUp": "1"}
    study = Study(headers)
    positions = Positions(study)
    for choice, place, before, note, nags in draw(
        st.lists(
            st.tuples(
                st.integers(0, 1 << 16),
                st.integers(0, 4),
                st.one_of(st.just(""), notes),
                st.one_of(st.just(""), notes),
                st.lists(st.integers(0, 255), unique=True, max_size=3),
            ),
            max_size=most,
        )
    ):
        # Mostly onwards from the newest node, so that lines get long.
        ids = list(study.nodes)
        parent = ids[-1] if place else ids[choice % len(ids)]
        legal = list(positions.board(parent).legal_moves)
        taken = {study.nodes[child].move for child in study.nodes[parent].children}
        free = [move for move in legal if move not in taken]
        if not free:
            continue
        edit = add_move(study, parent, free[choice % len(free)])
        apply(study, edit)
        for field, value in (("note_before", before), ("note", note), ("nags", tuple(nags))):
            apply(study, ChangeNode(edit.node, field, value))
    apply(study, ChangeNode(study.root, "note", draw(notes)))
    return study


def content(study: Study) -> list[Any]:
    """What is on the tree, whatever the ids: parents before children, main move first."""
    return [
        (node.move, len(node.children), as_kept(node.note_before), as_kept(node.note), node.nags)
        for node in study.branch(study.root)
    ]


def as_kept(note: str) -> str:
    """A note as PGN can keep it: lines in which a brace would end the comment have full-width ones."""
    lines = note.split("\n")
    return "\n".join(line.replace("{", "｛").replace("}", "｝") if "}" in line else line for line in lines)


def read_one(text: str) -> Study:
    (game,) = read_games(text)
    assert not game.problems
    return game.study


@given(studies())
def test_a_study_written_and_read_is_the_same_study(study):
    again = read_one(pgn_text(study, spoken=False))
    assert content(again) == content(study)
    # Section 7 of the standard: at most 255 characters.
    assert again.headers == {
        name: value if len(value) <= 255 else f"{value[:254]}…" for name, value in study.headers.items()
    }


@given(studies())
def test_writing_what_was_read_gives_the_same_text(study):
    text = pgn_text(study)
    assert pgn_text(read_one(text)) == text


@given(studies())
def test_lines_are_shorter_than_eighty_unless_one_word_or_one_brace_makes_them_longer(study):
    _, movetext = pgn_text(study).split("\n\n", 1)
    for line in movetext.split("\n"):
        assert len(line) < 80 or " " not in line or " %" in line or " [" in line or "  " in line


@given(st.lists(studies(most=6), max_size=4))
def test_games_written_one_after_the_other_are_found_again(many):
    text = "".join(map(pgn_text, many))
    assert [content(game.study) for game in read_games(text)] == [content(study) for study in many]


@given(studies(most=12))
def test_other_readers_find_the_same_moves(study):
    game = chess.pgn.read_game(io.StringIO(pgn_text(study, notes=False)))
    assert game is not None
    assert not game.errors
    theirs = [len(node.variations) for node in _walk(game)]
    assert theirs == [len(node.children) for node in study.branch(study.root)]


@given(studies(most=12))
def test_other_readers_find_every_word_of_the_notes(study):
    game = chess.pgn.read_game(io.StringIO(pgn_text(study)))
    assert game is not None
    theirs = "".join(node.comment for node in _walk(game))
    theirs += "".join(node.starting_comment for node in _walk(game) if node.parent is not None)
    ours = "".join(as_kept(node.note) + as_kept(node.note_before) for node in study.nodes.values())
    assert sorted("".join(theirs.split())) == sorted("".join(ours.split()))


def small_study(*sans: str) -> Study:
    """A study with these moves; “--” is a null move."""
    study = Study()
    board = chess.Board()
    at = study.root
    for san in sans:
        edit = add_move(study, at, board.push_san(san))
        apply(study, edit)
        at = edit.node
    return study


def test_a_plain_study_needs_no_remark():
    study = small_study("e4", "e5")
    apply(study, ChangeNode(1, "note", "The king's pawn {as ever."))
    apply(study, ChangeHeaders((("Annotator", "a" * 255),)))
    assert pgn_remarks(study) == ()
    assert f'[Annotator "{"a" * 255}"]' in pgn_text(study)


def test_a_tag_longer_than_the_standard_allows_is_cut_and_told():
    study = small_study("e4")
    apply(study, ChangeHeaders((("Annotator", "a" * 300),)))
    assert f'[Annotator "{"a" * 254}…"]' in pgn_text(study)
    assert pgn_remarks(study) == ("The Annotator tag has 300 characters and PGN allows 255: the rest was left out.",)


def test_a_brace_in_what_is_said_does_not_end_the_comment_for_any_reader():
    study = small_study("e4", "e5")
    said = "The set {d4, f4} is what he wants, and this line goes on for long enough to be broken in two."
    apply(study, ChangeNode(1, "spoken", SpokenLine(said)))
    apply(study, ChangeLine(Part.CLOSING, FreeLine(SpokenLine("Thank you :-}"))))
    text = pgn_text(study)
    game = chess.pgn.read_game(io.StringIO(text))
    assert game is not None
    first, last = game.mainline()
    assert " ".join(first.comment.split()) == said.replace("{", "｛").replace("}", "｝")
    assert last.comment == "Thank you :-｝"
    assert max(map(len, text.splitlines())) < 80
    assert pgn_remarks(study) == (
        "A “}” would end a comment of PGN: in 2 comments the braces were made full-width, “｛” and “｝”.",
    )
    assert pgn_remarks(study, spoken=False) == ()


def test_a_null_move_is_written_as_people_do_and_told():
    study = small_study("e4", "--", "d4")
    assert "1. e4 -- 2. d4 *" in pgn_text(study)
    assert pgn_remarks(study) == (
        "One move is a null move, written “--”: PGN knows none, and other programs may stop reading there.",
    )


def _walk(game):
    waiting = [game]
    while waiting:
        node = waiting.pop()
        yield node
        waiting.extend(reversed(node.variations))
