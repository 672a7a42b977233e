"""What a player is given to play: the talk, a take or a stretch, with the board's moves where they are heard."""

from __future__ import annotations

import chess
import numpy as np
import pytest

from studyboard.model.assembly import assembled
from studyboard.model.edits import ChangeNode, PutTake, add_move, apply
from studyboard.model.script import SpokenLine
from studyboard.model.study import Study
from studyboard.model.take_edits import leave_out
from studyboard.model.takes import SoundTime, Span, Take, TakeEvent
from studyboard.sound.reel import ReelShelf, raw_reel, take_reel, talk_reel

RATE = 1_000


class Shelf:
    """Takes in which every sample is its own number, and 10,000 more for each take."""

    def read_sound(self, take: int, start: int = 0, count: int | None = None) -> bytes:
        end = 9_000 if count is None else min(9_000, start + count)
        return (np.arange(start, end) + 10_000 * (take - 1)).astype("<i2").tobytes()

    def sound_chunks(self, take: int):
        yield self.read_sound(take)


@pytest.fixture
def study() -> Study:
    """Three beats in a take of nine seconds; the second one again in another take of two seconds."""
    made = Study()
    node = made.root
    for uci in ("e2e4", "e7e5", "g1f3"):
        edit = add_move(made, node, chess.Move.from_uci(uci))
        apply(made, edit)
        node = edit.node
        apply(made, ChangeNode(node, "spoken", SpokenLine("Something.")))
    for number, samples, starts in ((1, 9_000, ((0, 1), (3_000, 2), (6_000, 3))), (2, 2_000, ((0, 2),))):
        events = tuple(TakeEvent(SoundTime(at, RATE), beat, beat) for at, beat in starts)
        apply(made, PutTake(Take(number, f"Take {number}", RATE, samples, "2031-03-04T20:00:00+00:00", events)))
    return made


def shown(reel) -> list[tuple[int, int]]:
    return [(event.at.samples, event.node) for event in reel.events]


def test_the_talk_is_played_from_any_beat_on(study):
    assembly = assembled(study, lambda _: 1.0)
    assert shown(talk_reel(assembly)) == [(0, 1), (3_000, 2), (5_000, 3)]
    assert shown(talk_reel(assembly, 1)) == [(0, 2), (2_000, 3)]
    assert shown(talk_reel(assembly, 0, 1)) == [(0, 1), (3_000, 2)]


def test_a_take_is_played_with_its_cuts_and_the_board_knows_them(study):
    apply(study, leave_out(study.takes[1], Span(1_000, 2_000)))
    assert shown(take_reel(study, study.takes[1])) == [(0, 1), (2_000, 2), (5_000, 3)]
    assert shown(take_reel(study, study.takes[1], Span(500, 4_000))) == [(0, 1), (1_500, 2)]


def test_a_shelf_gives_the_sound_of_the_reel_that_was_put_on_last(study):
    shelf = ReelShelf(Shelf())
    first = shelf.put_on(raw_reel(study.takes[1], Span(1_000, 3_000)), study.takes)
    assert first.samples == 2_000
    heard = np.frombuffer(shelf.read_sound(first.id, 100, 50), "<i2")
    assert heard.tolist() == list(range(1_100, 1_150))
    second = shelf.put_on(raw_reel(study.takes[1], Span(0, 10)), study.takes)
    assert second.id != first.id
    assert shelf.read_sound(first.id, 0, 10) == b""
