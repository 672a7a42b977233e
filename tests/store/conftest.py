"""What the tests of the store start from: a place, a clock that is set by hand, and a study with something of all."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import chess
import pytest

from studyboard.model.edits import (
    AddMove,
    ChangeHeaders,
    ChangeLanguage,
    ChangeLeft,
    ChangeLine,
    ChangeNode,
    ChangePace,
    ChangeRehearsed,
    ChangeSlot,
    ChangeWords,
    Edit,
    PutTake,
)
from studyboard.model.left_query import LeftQuery
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.node import Place, Telling
from studyboard.model.script import Cue, FreeLine, Pace, Part, SpokenLine
from studyboard.model.study import Changed, Study
from studyboard.model.take_edits import ChooseTake, leave_out, set_room_tone, write_note
from studyboard.model.takes import Replaced, SoundTime, Span, Take, TakeEvent


class HandClock:
    """A clock that only moves when it is told to."""

    def __init__(self) -> None:
        self.time = datetime(2030, 5, 17, 19, 30, tzinfo=UTC)

    def __call__(self) -> datetime:
        return self.time

    def wait(self, seconds: float) -> None:
        """Let time go by."""
        self.time += timedelta(seconds=seconds)


@pytest.fixture
def clock() -> HandClock:
    return HandClock()


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "evening.studyboard"


@pytest.fixture
def content() -> Callable[[Study], Any]:
    """Everything in a study, as a value that is equal for two studies only if all of it is."""

    def of(study: Study) -> Any:
        return {
            "headers": list(study.headers.items()),
            "root": study.root,
            "nodes": dict(study.nodes),
            "lines": [study.line(part) for part in Part],
            "slot": study.slot,
            "pace": study.pace,
            "takes": dict(study.takes),
            "chosen": dict(study.chosen),
            "rehearsed": dict(study.rehearsed),
            "rehearsals": study.rehearsals,
            "left": study.left,
            "language": study.language,
            "words": study.words,
        }

    return of


@pytest.fixture
def edits() -> tuple[Edit, ...]:
    """One edit of nearly every kind, to be made one after the other from an empty study."""
    headers = {"Event": "Club evening", "Site": "Room above the bakery", "White": "Ortwin, Hanne", "Result": "1-0"}
    event = TakeEvent(SoundTime(4_800, 48_000), 1, 1)
    greeting = TakeEvent(SoundTime(0, 48_000), 0, Part.GREETING)
    first = Take(1, "first try", 48_000, 96_000, "2030-05-17T21:30:00+02:00", (greeting, event))
    return (
        ChangeHeaders(tuple(headers.items())),
        AddMove(0, chess.Move.from_uci("e2e4"), 1),
        AddMove(1, chess.Move.from_uci("e7e5"), 2),
        AddMove(2, chess.Move.from_uci("g1f3"), 3),
        AddMove(2, chess.Move.from_uci("f2f4"), 4),
        AddMove(3, chess.Move.null(), 5),
        ChangeNode(1, "spoken", SpokenLine("She opens “with” the king’s pawn. ♟", (Cue(3, node=1), Cue(6, mark=0)))),
        ChangeNode(1, "marks", (Mark(MarkKind.KEY_SQUARE, (28,)), Mark(MarkKind.ROUTE, (6, 21, 36)))),
        ChangeNode(2, "note", "Printed;\nnot said: 'quotes' and \"more\", \0 and ñ."),
        ChangeNode(2, "note_before", "[%clk 1:30:00]"),
        ChangeNode(3, "nags", (1, 14)),
        ChangeNode(3, "intended", 12.5),
        ChangeNode(3, "think", 6.0),
        ChangeNode(4, "telling", Telling(Place.MOVED, 3)),
        ChangeNode(4, "name", "The gambit"),
        ChangeLine(Part.GREETING, FreeLine(SpokenLine("Good evening.", (Cue(1, mark=0),)), 2.0)),
        ChangeSlot(540.0),
        ChangePace(Pace(5.1, move_time=1.0)),
        ChangeLanguage("en_GB"),
        ChangeWords(("Ortwin", "fianchettoed")),
        ChangeRehearsed(((1, 4.25), (Part.GREETING, 1.75))),
        ChangeLeft((LeftQuery(1, "check", "with” the"), LeftQuery(Part.GREETING, "number", "on move three"))),
        PutTake(first),
        write_note(first, "the lorry at “with”"),
        leave_out(first, Span(500, 9_000)),
        set_room_tone(first, Span(20_000, 60_000)),
        PutTake(
            Take(2, "a word", 48_000, 9_000, first.started, origin="telephone.mov", replaces=Replaced(1, Span(9, 99)))
        ),
        ChooseTake(1, 1),
        ChooseTake(Part.GREETING, 1),
    )


@pytest.fixture
def study(edits: tuple[Edit, ...]) -> Study:
    made = Study()
    for edit in edits:
        edit.apply(made, Changed())
    return made
