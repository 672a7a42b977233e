"""A take is what was heard between start, pauses and stop, joined without a gap."""

from __future__ import annotations

from array import array
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from studyboard.sound.pcm import pcm_of
from studyboard.sound.splice import Splice

HEARD = pcm_of(array("h", range(1_000)))


def part(first: int, last: int) -> bytes:
    return HEARD[first * 2 : last * 2]


def test_only_what_lies_between_start_and_stop_is_kept() -> None:
    splice = Splice()
    splice.begin(100)
    splice.cut(250)
    assert splice.keep(0, HEARD) == part(100, 250)
    assert splice.place(50) == 0
    assert splice.place(180) == 80
    assert splice.place(900) == 150


def test_a_pause_is_left_out_to_the_sample() -> None:
    splice = Splice()
    splice.begin(100)
    splice.cut(200)
    assert not splice.open
    splice.begin(600)
    assert splice.open
    assert splice.keep(0, HEARD) == part(100, 200) + part(600, 1_000)
    assert splice.place(400) == 100
    assert splice.place(650) == 150


def test_before_a_start_nothing_is_kept() -> None:
    assert Splice().keep(0, HEARD) == b""
    assert Splice().place(10) == 0
    assert Splice().end is None


def test_stopping_twice_changes_nothing() -> None:
    splice = Splice()
    splice.begin(10)
    splice.cut(20)
    splice.cut(30)
    assert splice.end == 20


@given(
    st.lists(st.integers(0, 1_000), max_size=8, unique=True).map(sorted),
    st.lists(st.integers(0, 1_000), max_size=20).map(sorted),
)
def test_a_take_is_the_same_however_its_sound_was_cut_into_blocks(turns: list[int], edges: list[int]) -> None:
    splice = Splice()
    for number, turn in enumerate(turns):
        if number % 2:
            splice.cut(turn)
        else:
            splice.begin(turn)
    bounds = [0, *edges, 1_000]
    blocks = [splice.keep(a, part(a, b)) for a, b in pairwise(bounds)]
    assert b"".join(blocks) == splice.keep(0, HEARD)
    assert len(splice.keep(0, HEARD)) // 2 == splice.place(1_000)
    for edge in edges:
        assert splice.place(edge) == len(splice.keep(0, part(0, edge))) // 2
