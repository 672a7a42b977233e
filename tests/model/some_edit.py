"""Draws edits of every kind, for tests of what must stay true whatever an author does."""

from __future__ import annotations

from typing import Any

from hypothesis import assume
from hypothesis import strategies as st

from studyboard.model import edits, pasting, take_edits
from studyboard.model.edits import ChangeHeaders, ChangeNode, RemoveBranch, add_move
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.node import Place, Telling
from studyboard.model.positions import Positions
from studyboard.model.script import FreeLine, Pace, Part, SpokenLine
from studyboard.model.study import Study
from studyboard.model.takes import Span, Take

_TEXT = st.text(max_size=8)
_SPOKEN = st.builds(SpokenLine, _TEXT)
_VALUES: dict[str, st.SearchStrategy[Any]] = {
    "spoken": _SPOKEN,
    "note": _TEXT,
    "note_before": _TEXT,
    "name": _TEXT,
    "nags": st.lists(st.integers(0, 255), max_size=3).map(tuple),
    "marks": st.lists(st.builds(Mark, st.just(MarkKind.TARGET), st.tuples(st.integers(0, 63))), max_size=2).map(tuple),
    "think": st.floats(0, 60),
    "intended": st.none() | st.floats(0.1, 60),
    "telling": st.sampled_from([Telling(place) for place in Place if place is not Place.MOVED]),
}


def some_edit(draw: st.DrawFn, study: Study) -> edits.Edit:
    """An edit that may be refused, as the desk would make it."""
    node = draw(st.sampled_from(sorted(study.nodes)))
    kind = draw(st.integers(0, 13))
    if kind <= 3:
        moves = list(Positions(study).board(node).legal_moves)
        assume(moves)
        return add_move(study, node, moves[draw(st.integers(0, 7)) % len(moves)])
    if kind == 4:
        field = draw(st.sampled_from(sorted(_VALUES)))
        return ChangeNode(node, field, draw(_VALUES[field]))
    if kind == 5:
        return RemoveBranch(node)
    if kind == 6:
        return draw(st.sampled_from([edits.promote, edits.demote, edits.make_main_line]))(study, node)
    if kind == 7:
        assume(len(study.nodes) < 40)
        other = draw(st.sampled_from(sorted(study.nodes)))
        if draw(st.booleans()):
            return pasting.cut_and_paste(study, node, other)
        return pasting.paste(study, list(study.branch(node)), other)
    if kind == 8:
        tags = {"White": draw(_TEXT), "Annotator": draw(_TEXT)}
        return ChangeHeaders(tuple((study.headers | tags).items()))
    if kind == 9:
        return edits.ChangeLine(draw(st.sampled_from(Part)), FreeLine(draw(_SPOKEN), draw(st.none() | st.just(4.0))))
    if kind == 10:
        return draw(
            st.sampled_from([edits.ChangeSlot(None), edits.ChangeSlot(480.0), edits.ChangePace(Pace(move_time=0.5))])
        )
    if kind == 11:
        number = draw(st.integers(1, 3))
        take = Take(number, draw(_TEXT), 48_000, draw(st.integers(0, 99)), "2031-05-01T19:00:00+00:00")
        return draw(st.sampled_from([edits.PutTake(take), edits.DropTake(number)]))
    if kind == 12:
        number = draw(st.integers(1, 3))
        start = draw(st.integers(0, 50))
        span = Span(start, start + draw(st.integers(1, 50)))
        taken = study.takes.get(number)
        if taken is None or draw(st.booleans()):
            return take_edits.ChooseTake(draw(st.just(node) | st.sampled_from(Part)), draw(st.none() | st.just(number)))
        change = draw(st.sampled_from([take_edits.leave_out, take_edits.trim, take_edits.bring_back]))
        return change(taken, span)
    return edits.ChangeRehearsed(((node, draw(st.none() | st.floats(0, 9))), (Part.CLOSING, 3.0)))
