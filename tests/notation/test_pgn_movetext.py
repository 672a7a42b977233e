"""Movetext becomes a draft of a tree, with its main moves first whatever the variations repeat."""

from __future__ import annotations

import chess
import pytest

from studyboard.notation.pgn_draft import Draft
from studyboard.notation.pgn_movetext import MovetextReader


def draft(text: str, fen: str = chess.STARTING_FEN) -> Draft:
    reader = MovetextReader(text, chess.Board(fen))
    reader.read(0, len(text))
    return reader.finish()


def main_line(read: Draft) -> list[str]:
    line: list[str] = []
    node = 0
    while read.children[node]:
        node = read.children[node][0]
        line.append(read.moves[node].uci())
    return line


@pytest.mark.parametrize(
    "movetext",
    [
        "1. e4 e5 2. Nf3 Nc6",
        "1. e4 e5 (1... e5 2. f4 exf4) 2. Nf3 Nc6",
        "1. e4 (1. e4 e5 2. d4) 1... e5 (1... e5 2. c4 (2. f4) 2... c5) 2. Nf3 (2. Nf3 d6) Nc6",
        "(1. d4 d5) 1. e4 (1. e4 c5) e5 2. Nf3 Nc6 (2... Nc6 3. Bb5)",
        "1. e4 (1. e4 e5 2. Nf3 d6 3. d4) 1... e5 2. Nf3 Nc6",
    ],
)
def test_the_moves_outside_the_parentheses_are_the_main_line(movetext):
    assert main_line(draft(movetext))[:4] == ["e2e4", "e7e5", "g1f3", "b8c6"]


def test_parents_come_before_children_and_both_agree():
    read = draft("1. e4 e5 (1... c5 2. Nf3 (2. c3 d5) 2... d6) (1... e6) 2. Nf3")
    assert len(read.moves) == len(read.parents) == len(read.children)
    for node, children in enumerate(read.children):
        assert all(read.parents[child] == node < child for child in children)


@pytest.mark.parametrize(
    ("movetext", "result"), [("1. e4", None), ("1. e4 *", "*"), ("1/2", "1/2-1/2"), ("0-1", "0-1")]
)
def test_the_result_is_what_ends_the_moves(movetext, result):
    assert draft(movetext).result == result


def test_offsets_of_what_is_odd_point_at_it():
    text = "1. e4 zz e5 $999 ) 2. Ke5"
    assert [text[at:].split()[0] for at, _ in draft(text).odd] == ["zz", "$999", ")", "2."]


def test_a_variation_replaces_a_move_from_the_position_before_it_even_after_castling_captures_and_promotion():
    fen = "r3k2r/pP6/8/3pP3/8/8/8/R3K2R w KQkq d6 0 1"
    read = draft("1. exd6 (1. O-O Rd8) (1. bxa8=Q+ (1. b8=N) 1... Ke7 (1... Kf7)) 1... O-O (1... Rb8)", fen)
    assert read.odd == []
    assert len(read.moves) == 10
