"""The read-through of whole talks, of one line, and of any text."""

import chess
import pytest

from studyboard.board.work import WorkCancelledError
from studyboard.example import example_study
from studyboard.model.edits import AddMove, ChangeNode, apply
from studyboard.model.positions import Positions
from studyboard.model.script import Part, SpokenLine
from studyboard.model.study import Study
from studyboard.notation.pgn_reader import read_games
from studyboard.notation.talk_file import read_talk
from studyboard.reading.read_through import judge, read_line, read_through


def test_the_example_talk_has_no_query_and_much_that_is_confirmed():
    found = read_through(example_study())
    assert found.queries == ()
    assert len(found.confirmed) > 60


def test_every_finding_quotes_its_own_line():
    study = example_study()
    found = read_through(study)
    for finding in (*found.confirmed, *found.unchecked):
        text = (
            study.line(finding.beat).spoken.text
            if isinstance(finding.beat, Part)
            else study.nodes[finding.beat].spoken.text
        )
        assert 0 <= finding.start < finding.end <= len(text)


def test_one_line_is_read_alone():
    study = next(read_games("1. e4 e5 2. Nf3 *")).study
    study = read_talk('[[node]]\npath = "e4 e5 Nf3"\nspoken = "Knight f4, attacking e5."\n', study)
    (query,) = read_line(study, Positions(study), 3).queries
    assert query.quote == "Knight f4"


def test_a_hidden_line_can_be_read_too():
    study = next(read_games("1. e4 (1. d4) *")).study
    toml = '[[node]]\npath = "d4"\ntelling = "hidden"\nspoken = "Pawn to d5."\n'
    study = read_talk(toml, study)
    key = next(node.id for node in study.nodes.values() if node.spoken)
    assert [query.quote for query in read_line(study, Positions(study), key).queries] == ["Pawn to d5"]


def test_a_line_that_is_gone_has_no_findings():
    study = next(read_games("1. e4 *")).study
    assert read_line(study, Positions(study), 99).queries == ()
    assert read_line(study, Positions(study), Part.CLOSING).confirmed == ()


def test_any_text_beside_a_position():
    found = judge("6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1", "White to move. Rook a8 is mate. Black is a rook up.")
    assert [query.quote for query in found.queries] == ["Black is a rook up"]
    assert {finding.quote for finding in found.confirmed} >= {"White to move", "mate"}
    with pytest.raises(ValueError, match="position"):
        judge("no position", "White to move.")


@pytest.mark.parametrize(
    "text", ["", "   ", "…", "?!", "«»", "♞f6", "𝕏 " * 50, "knight " * 400, "e4 " * 400, "if " * 400]
)
def test_odd_texts_do_no_harm(text):
    judge(chess.Board(), text)


def test_progress_runs_to_the_end_and_it_can_be_stopped():
    shares = []
    study = example_study()
    read_through(study, progress=shares.append)
    assert shares[-1] == 1.0
    with pytest.raises(WorkCancelledError):
        read_through(study, cancelled=lambda: True)


def test_three_thousand_side_lines_inside_each_other_are_read():
    study, parent, board = Study(), 0, chess.Board()
    for _ in range(3000):
        hops = sorted(
            (move for move in board.legal_moves if board.piece_type_at(move.from_square) == chess.KNIGHT),
            key=chess.Move.uci,
        )
        for move in hops[:2]:
            apply(study, AddMove(parent, move, study.next_id))
        parent = study.next_id - 1
        board.push(hops[1])
    apply(study, ChangeNode(parent, "spoken", SpokenLine("Both queens are still on, and White is a rook up.")))
    (query,) = read_line(study, Positions(study), parent).queries
    assert query.quote == "White is a rook up"


def test_what_is_said_in_the_greeting_of_the_end_is_not_held_against_the_start():
    study = next(read_games('[White "Fern, A"]\n[Black "Moss, B"]\n[Result "0-1"]\n\n1. f3 e5 2. g4 Qh4# 0-1')).study
    toml = '[lines]\ngreeting = "Hello. In two moves somebody is checkmated."\nclosing = "So Fern wins the game."\n'
    found = read_through(read_talk(toml, study))
    assert [query.quote for query in found.queries] == ["Fern wins the game"]


@pytest.mark.parametrize(
    ("closing", "wrong"),
    [
        ("It all turned on one loose knight, and two white bishops decided the game.", []),
        ("Remember, nobody ever gave a check in this game.", ["nobody ever gave a check in this game"]),
        ("White never gave a single check.", []),
        ("White was mated on h4.", []),
        ("White was mated on g2.", ["mated on g2"]),
        ("It was mate on g4.", ["mate on g4"]),
        ("He guarded against mate on f2 all along.", []),
        ("The threat of mate on h7 decided the game.", []),
    ],
)
def test_a_closing_word_looks_back_on_the_whole_game(closing, wrong):
    study = next(read_games("1. f3 e5 2. g4 Qh4# 0-1")).study
    found = read_through(read_talk(f'[lines]\nclosing = "{closing}"\n', study))
    assert [query.quote for query in found.queries] == wrong
