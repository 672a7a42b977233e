"""The annotated game as another program reads it."""

from __future__ import annotations

import io

import chess.pgn

from studyboard.delivery.game import game_pgn


def test_another_reader_finds_moves_side_lines_and_what_is_said(author):
    game = chess.pgn.read_game(io.StringIO(game_pgn(author.study).decode()))
    assert game is not None
    assert not game.errors
    assert [move.uci() for move in game.mainline_moves()][:4] == ["e2e4", "e7e5", "g1f3", "b8c6"]
    assert game.headers["White"] == "Halvorse, Maja"
    comments = [comment for node in [game, *game.mainline()] for comment in [str(node.comment)]]
    assert "Good evening, and welcome to the Harbour Club." in comments[0]
    assert "Black offers a pawn. Do you take it?" in comments[6]
    assert "A smothered king." in comments[14]
    fork = game.next().next().next().next().next().next()
    assert [child.san() for child in fork.variations] == ["Nxe5", "O-O"]


def test_text_that_cannot_be_encoded_does_not_stop_it(author):
    author.put(1, note="half a pair \ud83d here")
    assert b"half a pair ? here" in game_pgn(author.study)
