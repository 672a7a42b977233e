"""Values of the model survive as plain data, which is how a file keeps them."""

from __future__ import annotations

import json

import chess
import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.model import edits, take_edits
from studyboard.model.codec import UnknownValueError, from_plain, to_plain
from studyboard.model.marks import SQUARES_OF, Mark, MarkKind
from studyboard.model.node import Node, Place, Telling
from studyboard.model.script import Cue, FreeLine, Pace, Part, SpokenLine
from studyboard.model.takes import Replaced, SoundTime, Span, Take, TakeEvent

_NUMBER = st.integers(0, 1 << 40)
_SECONDS = st.floats(0, 1e6)
_MOVE = st.builds(
    chess.Move, st.integers(0, 63), st.integers(0, 63), st.sampled_from([None, chess.QUEEN, chess.KNIGHT])
).filter(lambda move: move.from_square != move.to_square) | st.just(chess.Move.null())
_CUE = st.builds(Cue, _NUMBER, node=_NUMBER) | st.builds(Cue, _NUMBER, mark=_NUMBER)
_SPOKEN = st.builds(SpokenLine, st.text(), st.lists(_CUE, max_size=3).map(tuple))
_MARK = st.sampled_from(MarkKind).flatmap(
    lambda kind: st.lists(st.integers(0, 63), min_size=SQUARES_OF[kind][0], max_size=SQUARES_OF[kind][1] or 6).map(
        lambda squares: Mark(kind, tuple(squares))
    )
)
_TELLING = st.sampled_from([Telling(place) for place in Place if place is not Place.MOVED]) | _NUMBER.map(
    lambda anchor: Telling(Place.MOVED, anchor)
)
_NODE = st.builds(
    Node, _NUMBER, st.none() | _NUMBER, st.none() | _MOVE, st.lists(_NUMBER, max_size=3).map(tuple), _SPOKEN,
    st.text(), st.text(), st.lists(_MARK, max_size=2).map(tuple), st.lists(st.integers(0, 255)).map(tuple),
    st.none() | _SECONDS, _SECONDS, _TELLING, st.text(),
)  # fmt: skip
_BEAT = _NUMBER | st.sampled_from(Part)
_EVENT = st.builds(TakeEvent, st.builds(SoundTime, _NUMBER, _NUMBER), _NUMBER, st.none() | _BEAT)
_EVENTS = st.lists(_EVENT, max_size=2).map(tuple)
_SPAN = st.builds(lambda start, samples: Span(start, start + samples), _NUMBER, st.integers(1, 1 << 30))
_TAKE = st.builds(
    Take, _NUMBER, st.text(), _NUMBER, _NUMBER, st.text(), _EVENTS, st.booleans(), st.booleans(), st.text(), st.text(),
    st.lists(_SPAN, max_size=2).map(tuple), st.none() | st.builds(Replaced, _NUMBER, _SPAN), st.none() | _SPAN,
)  # fmt: skip
_EDIT = st.one_of(
    st.builds(edits.AddMove, _NUMBER, _MOVE, _NUMBER),
    st.builds(edits.InsertBranch, st.lists(_NODE, min_size=1, max_size=3).map(tuple)),
    st.builds(edits.RemoveBranch, _NUMBER),
    st.builds(edits.MoveChild, _NUMBER, _NUMBER),
    st.builds(edits.ChangeNode, _NUMBER, st.just("marks"), st.lists(_MARK, max_size=2).map(tuple)),
    st.builds(edits.ChangeNode, _NUMBER, st.just("telling"), _TELLING),
    st.builds(edits.ChangeNode, _NUMBER, st.just("spoken"), _SPOKEN),
    st.builds(edits.ChangeHeaders, st.lists(st.tuples(st.text(), st.text())).map(tuple)),
    st.builds(edits.ChangeLine, st.sampled_from(Part), st.builds(FreeLine, _SPOKEN, st.none() | _SECONDS)),
    st.builds(edits.ChangePace, st.builds(Pace, st.floats(0.1, 20), *[_SECONDS] * 5)),
    st.builds(edits.ChangeSlot, st.none() | _SECONDS),
    st.builds(edits.PutTake, _TAKE),
    st.builds(edits.DropTake, _NUMBER),
    st.builds(take_edits.ChooseTake, _BEAT, st.none() | _NUMBER),
    st.builds(take_edits.ChangeTake, _NUMBER, st.just("left_out"), st.lists(_SPAN, max_size=2).map(tuple)),
    st.builds(edits.ChangeRehearsed, st.lists(st.tuples(_BEAT, st.none() | _SECONDS)).map(tuple)),
)


@given(_EDIT | _NODE | st.builds(edits.Several, st.lists(_EDIT, max_size=3).map(tuple)))
def test_every_value_comes_back_from_a_file_as_it_was(value):
    assert from_plain(json.loads(json.dumps(to_plain(value)))) == value


@pytest.mark.parametrize(
    "plain",
    [
        {},
        {"is": "Nothing"},
        {"is": "Cue"},
        {"is": "Cue", "word": -1, "node": 1},
        {"is": "Cue", "word": 1, "node": 1, "x": 2},
        {"is": "Move", "uci": "z9"},
        {"is": "Move"},
        {"is": "Place", "value": "nowhere"},
        {"is": "Mark", "kind": {}, "squares": []},
        {"is": None},
        {"is": ["list"]},
        [{"is": "Cue"}],
    ],
)
def test_data_that_describes_no_value_is_refused(plain):
    with pytest.raises(UnknownValueError):
        from_plain(plain)


def test_a_value_from_elsewhere_is_refused():
    with pytest.raises(UnknownValueError, match="A object is no value of the model"):
        to_plain(object())
    with pytest.raises(UnknownValueError):
        to_plain({"a": 1})


def test_what_a_node_has_nothing_of_is_left_out_and_what_is_left_out_is_nothing():
    bare = Node(7, 3, chess.Move.from_uci("e2e4"))
    plain = to_plain(bare)
    assert set(plain) == {"is", "id", "parent", "move"}
    written_out = plain | {"note": "", "children": [], "marks": [], "think": 0.0, "intended": None, "locked": False}
    assert from_plain(plain) == from_plain(written_out) == bare
    assert to_plain(Node(7, 3, None, think=2.0))["think"] == 2.0
