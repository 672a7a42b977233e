"""The board changes at the words of the presenter; what was clicked stays where they were not found."""

from __future__ import annotations

import chess
import pytest

from studyboard.model.edits import ChangeLine, ChangeNode, add_move, apply
from studyboard.model.script import Cue, FreeLine, Part, SpokenLine
from studyboard.model.study import Study
from studyboard.model.takes import SoundTime, Take, TakeEvent
from studyboard.timing.by_voice import WordSaid, board_by_voice, voiced_moves

RATE = 1000


@pytest.fixture
def study() -> Study:
    """1.e4 e5 (1...c5) 2.Nf3: a greeting, a line with a cue for each move, a side-line, a move without a line."""
    study = Study()
    for parent, uci in ((0, "e2e4"), (1, "e7e5"), (2, "g1f3"), (1, "c7c5"), (3, "b8c6")):
        apply(study, add_move(study, parent, chess.Move.from_uci(uci)))
    apply(study, ChangeLine(Part.GREETING, FreeLine(SpokenLine("Good evening."))))
    apply(
        study, ChangeNode(2, "spoken", SpokenLine("White plays, and black answers.", (Cue(0, node=1), Cue(4, node=2))))
    )
    apply(study, ChangeNode(4, "spoken", SpokenLine("This was possible.")))
    apply(study, ChangeNode(3, "spoken", SpokenLine("Now the knight.", (Cue(2, node=3),))))
    return study


def said(*starts: float, sure: bool = True) -> tuple[WordSaid, ...]:
    return tuple(WordSaid(start, start + 0.2, sure) for start in starts)


SAID = {
    Part.GREETING: said(0.5, 0.8),
    2: said(2.0, 2.4, 2.8, 3.2, 3.6),
    4: said(5.0, 5.4, 5.8),
    3: said(8.0, 8.4, 8.8),
}


def test_moves_are_played_at_their_words(study: Study) -> None:
    moves = voiced_moves(study, SAID, 12.0)
    at = {(move.node, move.beat): move.at for move in moves}
    assert at[2, 2] == pytest.approx(3.6)
    assert at[3, 3] == pytest.approx(8.8)
    assert at[1, 2] == pytest.approx(2.0, abs=0.05)
    assert [move.at for move in moves] == sorted(move.at for move in moves)


def test_the_board_steps_back_from_a_side_line_before_the_next_line_begins(study: Study) -> None:
    moves = voiced_moves(study, SAID, 12.0)
    backs = [move for move in moves if move.back and move.beat == 3]
    assert backs
    assert all(6.0 <= move.at < 8.0 for move in backs)


def test_a_line_that_is_not_said_brings_nothing_onto_the_board(study: Study) -> None:
    moves = voiced_moves(study, {**SAID, 4: said(5.0, 5.4, 5.8, sure=False)}, 12.0)
    assert 4 not in {move.node for move in moves}
    assert 3 in {move.node for move in moves}


def test_moves_without_a_line_are_spread_over_the_silence(study: Study) -> None:
    (last,) = [move for move in voiced_moves(study, SAID, 12.0) if move.node == 5]
    assert 9.0 < last.at < 12.0
    assert not last.sure


def test_what_was_clicked_stays_where_the_word_is_not_certain(study: Study) -> None:
    events = tuple(
        TakeEvent(SoundTime(samples, RATE), node, beat)
        for samples, node, beat in ((2500, 1, 2), (4000, 2, 2), (9500, 3, 3), (11_000, 5, 5))
    )
    take = Take(1, "one", RATE, 12_000, "2030-05-17T21:30:00+02:00", events)
    doubtful = {**SAID, 2: (*said(2.0, 2.4, 2.8, 3.2), WordSaid(3.6, 3.8, sure=False))}
    found = board_by_voice(take, voiced_moves(study, doubtful, 12.0))
    at = {(event.node, event.beat): event.at.samples for event in found}
    assert at[2, 2] == 4000
    assert at[3, 3] == pytest.approx(8800)
    assert at[5, 5] == 11_000
    assert [event.at.samples for event in found] == sorted(event.at.samples for event in found)


def test_wandering_off_stays_with_the_way_back(study: Study) -> None:
    aside = (
        TakeEvent(SoundTime(2000, RATE), 1, 2),
        TakeEvent(SoundTime(6500, RATE), 5, None),
        TakeEvent(SoundTime(7000, RATE), 4, 4),
    )
    take = Take(1, "one", RATE, 12_000, "2030-05-17T21:30:00+02:00", aside)
    found = board_by_voice(take, voiced_moves(study, SAID, 12.0))
    assert aside[1] in found
    assert aside[2] in found
