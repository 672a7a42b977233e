"""Which take is heard for each beat, and which part of it."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import replace

import chess
import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.model.assembly import Gap, assembled, heard_in, holders
from studyboard.model.beats import beats
from studyboard.model.edits import ChangeNode, PutTake, add_move, apply
from studyboard.model.errors import EditRefusedError
from studyboard.model.heard_take import Piece, heard_take
from studyboard.model.order import running_order
from studyboard.model.script import SpokenLine
from studyboard.model.study import Study
from studyboard.model.take_edits import ChooseTake, discard, leave_out, trim
from studyboard.model.takes import Replaced, SoundTime, Span, Take, TakeEvent

RATE = 100
MOVES = ("e2e4", "e7e5", "g1f3", "b8c6")


@pytest.fixture
def study() -> Study:
    """Four moves with a line each: the beats 1 to 4."""
    return spoken_study()


def spoken_study() -> Study:
    made = Study()
    node = made.root
    for uci in MOVES:
        edit = add_move(made, node, chess.Move.from_uci(uci))
        apply(made, edit)
        node = edit.node
        apply(made, ChangeNode(node, "spoken", SpokenLine("Something is said here.")))
    return made


def put(study: Study, number: int, seconds: float, *starts: tuple[float, int], **more: object) -> Take:
    """A take in which beats begin at these seconds."""
    events = tuple(TakeEvent(SoundTime(round(at * RATE), RATE), beat, beat) for at, beat in starts)
    take = Take(number, f"Take {number}", RATE, round(seconds * RATE), "2031-03-04T20:00:00+00:00", events)
    take = replace(take, **more)  # type: ignore[arg-type]
    apply(study, PutTake(take))
    return take


def heard(study: Study) -> list[tuple[int | None, list[tuple[int, int, int] | int]]]:
    """For each beat its take, and its pieces as (take, start, end) or the length of the gap."""
    found = []
    for one in assembled(study, lambda _: 2.0).beats:
        pieces = [
            source.samples if isinstance(source, Gap) else (source.take, source.span.start, source.span.end)
            for source in one.sources
        ]
        found.append((one.take, pieces))
    return found


def test_a_take_of_the_whole_talk_is_heard_from_beginning_to_end(study):
    put(study, 1, 10, (0.5, 1), (3, 2), (5, 3), (7, 4))
    assert heard(study) == [(1, [(1, 0, 300)]), (1, [(1, 300, 500)]), (1, [(1, 500, 700)]), (1, [(1, 700, 1000)])]
    assembly = assembled(study, lambda _: 2.0)
    assert assembly.sources == (Piece(1, Span(0, 1000)),)
    assert assembly.told
    assert assembly.samples == 1000


def test_a_punched_in_take_is_heard_for_its_beats_alone(study):
    put(study, 1, 10, (0, 1), (3, 2), (5, 3), (7, 4))
    put(study, 2, 5, (0, 2), (2.5, 3))
    assert [take for take, _ in heard(study)] == [1, 2, 2, 1]
    assert assembled(study, lambda _: 2.0).samples == 300 + 500 + 300


def test_beat_by_beat_needs_a_take_for_each(study):
    for beat in (1, 2, 3, 4):
        put(study, beat, beat, (0, beat))
        assert assembled(study, lambda _: 2.0).told == (beat == 4)
    assert heard(study) == [(beat, [(beat, 0, 100 * beat)]) for beat in (1, 2, 3, 4)]


def test_the_presenter_chooses_another_take_and_leaves_the_choice_to_the_program_again(study):
    put(study, 1, 10, (0, 1), (3, 2), (5, 3), (7, 4))
    put(study, 2, 5, (0, 2), (2.5, 3))
    apply(study, ChooseTake(2, 1))
    assert [take for take, _ in heard(study)] == [1, 1, 2, 1]
    apply(study, discard(study.takes[1]))
    assert [take for take, _ in heard(study)] == [None, 2, 2, None]
    apply(study, ChooseTake(2, None))
    assert [take for take, _ in heard(study)] == [None, 2, 2, None]


def test_what_no_take_tells_is_a_gap_and_named(study):
    put(study, 1, 5, (0, 1), (3, 3))
    assert heard(study)[1] == (None, [200])
    assembly = assembled(study, lambda _: 2.0)
    assert assembly.missing == (2, 4)
    assert not assembly.told


def test_a_take_that_was_stopped_in_the_middle_of_a_line_is_not_heard_for_it(study):
    put(study, 1, 10, (0, 1), (3, 2), (5, 3), (7, 4))
    put(study, 2, 3.2, (0, 2), (2.5, 3))
    assert [take for take, _ in heard(study)] == [1, 2, 1, 1]
    apply(study, ChooseTake(3, 2))
    assert [take for take, _ in heard(study)] == [1, 2, 2, 1]


def test_a_short_line_that_was_gone_on_from_is_whole(study):
    put(study, 1, 10, (0, 1), (3, 2), (5, 3), (7, 4))
    short = put(study, 2, 3.2, (0, 2), (2.5, 3))
    apply(study, PutTake(replace(short, events=(*short.events, TakeEvent(SoundTime(320, RATE), 3, None)))))
    assert [take for take, _ in heard(study)] == [1, 2, 2, 1]
    put(study, 3, 0.2, (0, 4), origin="telephone.mov")
    assert [take for take, _ in heard(study)] == [1, 2, 2, 3]


def test_a_cough_is_not_heard_and_the_board_moves_where_the_sound_does(study):
    put(study, 1, 10, (0, 1), (3, 2), (5, 3), (7, 4))
    apply(study, leave_out(study.takes[1], Span(350, 420)))
    assembly = assembled(study, lambda _: 2.0)
    assert assembly.beats[1].sources == (Piece(1, Span(300, 350)), Piece(1, Span(420, 500)))
    assert assembly.samples == 1000 - 70
    apply(study, leave_out(study.takes[1], Span(250, 350)))
    assembly = assembled(study, lambda _: 2.0)
    assert [event.at for event in assembly.beats[1].events] == [0]
    assert [one.samples for one in assembly.beats] == [250, 80, 200, 300]


def test_a_trimmed_take_is_not_heard_for_beats_that_were_cut_off(study):
    put(study, 1, 10, (0, 1), (3, 2), (5, 3), (7, 4))
    apply(study, trim(study.takes[1], Span(320, 690)))
    assert heard(study) == [(None, [200]), (1, [(1, 320, 500)]), (1, [(1, 500, 690)]), (None, [200])]


def test_a_pickup_is_heard_in_place_of_its_words_and_only_there(study):
    put(study, 1, 10, (0, 1), (3, 2), (5, 3), (7, 4))
    put(study, 2, 0.9, replaces=Replaced(1, Span(350, 400)))
    assert heard(study)[1] == (1, [(1, 300, 350), (2, 0, 90), (1, 400, 500)])
    assert holders(study).keys() == {1, 2, 3, 4}
    apply(study, trim(study.takes[2], Span(10, 60)))
    assert heard(study)[1] == (1, [(1, 300, 350), (2, 10, 60), (1, 400, 500)])
    put(study, 3, 0.4, replaces=Replaced(1, Span(390, 410)))
    assert heard(study)[1] == (1, [(1, 300, 390), (3, 0, 40), (1, 410, 500)]), "the newer one, where they overlap"
    apply(study, discard(study.takes[3]))
    apply(study, discard(study.takes[2]))
    assert heard(study)[1] == (1, [(1, 300, 500)])


def test_a_pickup_of_a_pickup_is_heard(study):
    put(study, 1, 10, (0, 1), (3, 2), (5, 3), (7, 4))
    put(study, 2, 1, replaces=Replaced(1, Span(350, 400)))
    put(study, 3, 0.3, replaces=Replaced(2, Span(20, 40)))
    assert heard(study)[1] == (1, [(1, 300, 350), (2, 0, 20), (3, 0, 30), (2, 40, 100), (1, 400, 500)])


def test_places_of_a_take_and_of_what_is_heard_of_it_belong_together(study):
    put(study, 1, 10, (0, 1), (3, 2), (5, 3), (7, 4))
    put(study, 2, 1, replaces=Replaced(1, Span(350, 400)))
    apply(study, leave_out(study.takes[1], Span(0, 100)))
    one = heard_take(study, study.takes[1])
    assert one.samples == 950
    for heard_at, own in ((0, 100), (249, 349), (250, 350), (300, 375), (350, 400), (949, 999), (950, 1000)):
        assert one.own_place(heard_at) == own
        assert one.place(Span(0, 1000), own) == heard_at


@given(st.data())
def test_every_beat_is_heard_once_and_lengths_add_up(data):
    study = spoken_study()
    for number in range(1, data.draw(st.integers(1, 4)) + 1):
        told = data.draw(st.lists(st.tuples(st.integers(0, 90), st.integers(1, 4)), max_size=6).map(sorted))
        put(study, number, data.draw(st.integers(1, 12)) * 10 / RATE, *((at / RATE, beat) for at, beat in told))
    for take in list(study.takes.values()):
        for start, end in data.draw(st.lists(st.tuples(st.integers(0, 60), st.integers(61, 119)), max_size=2)):
            # What would leave nothing of a take is refused; two stretches together may.
            with suppress(EditRefusedError):
                apply(study, leave_out(study.takes[take.id], Span(start, end)))
        if data.draw(st.booleans()):
            apply(study, ChooseTake(data.draw(st.integers(1, 4)), take.id))
        if take.id > 1 and data.draw(st.booleans()) and study.takes[1].samples > 20:
            apply(study, PutTake(replace(study.takes[take.id], replaces=Replaced(1, Span(5, 20)))))
    assembly = assembled(study, lambda _: 0.3)
    assert [one.beat for one in assembly.beats] == list(beats(study, running_order(study)))
    assert sum(source.samples for source in assembly.sources) == assembly.samples
    held = holders(study)
    for one in assembly.beats:
        holder = heard_in(study, one.beat.key, held.get(one.beat.key, ()))
        assert (holder is None) == (one.take is None)
        assert all(0 <= event.at <= one.samples for event in one.events)
        assert list(one.events) == sorted(one.events, key=lambda event: event.at)
        for source in one.sources:
            if isinstance(source, Piece):
                take = study.takes[source.take]
                assert 0 <= source.span.start < source.span.end <= take.samples
                assert all(source.span.end <= out.start or out.end <= source.span.start for out in take.left_out)
