"""A small study with everything that is published, and timelines made by hand."""

from __future__ import annotations

from collections.abc import Callable

import chess
import pytest

from studyboard.model.edits import ChangeLine, ChangeNode, add_move, apply
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.script import FreeLine, Part, SpokenLine, words
from studyboard.model.study import Study
from studyboard.timing.timeline import Source, Stretch, Timeline, WordTime

HEADERS = {
    "Event": "Harbour Club Winter Evening",
    "Site": "Harbour Club",
    "Date": "2024.01.17",
    "Round": "3",
    "White": "Halvorse, Maja",
    "Black": "Nduka, Ade",
    "Result": "0-1",
    "WhiteElo": "2104",
    "BlackElo": "2088",
}


class Author:
    """Writes a study: plays moves on its tree and fills in nodes, through edits as the desk does."""

    def __init__(self, headers: dict[str, str] | None = None) -> None:
        self.study = Study(HEADERS if headers is None else headers)

    def play(self, after: int, sans: str) -> list[int]:
        """Put these moves on the tree; the ids of their nodes."""
        board = chess.Board(self.study.headers.get("FEN", chess.STARTING_FEN))
        for step in self.study.path(after):
            move = self.study.nodes[step].move
            if move is not None:
                board.push(move)
        made = []
        for san in sans.split():
            move = board.parse_san(san)
            edit = add_move(self.study, after, move)
            apply(self.study, edit)
            board.push(move)
            after = edit.node
            made.append(after)
        return made

    def put(self, node: int, **values: object) -> None:
        """Set fields of a node; a text for `spoken` becomes a spoken line."""
        for field, value in values.items():
            if field == "spoken":
                value = SpokenLine(str(value))
            apply(self.study, ChangeNode(node, field, value))

    def say(self, part: Part, text: str) -> None:
        """Set a line that belongs to no move."""
        apply(self.study, ChangeLine(part, FreeLine(SpokenLine(text))))


def _mark(kind: MarkKind, squares: str) -> Mark:
    """A mark on squares given by their names."""
    return Mark(kind, tuple(chess.parse_square(square) for square in squares.split()))


@pytest.fixture
def author() -> Author:
    """A short talk: a game of six moves, a side-line with one inside it, marks, a think pause, notes."""
    author = Author()
    main = author.play(0, "e4 e5 Nf3 Nc6 Bc4 Nd4 Nxe5 Qg5 Nxf7 Qxg2 Rf1 Qxe4+ Be2 Nf3#")
    first = author.play(main[5], "O-O Nxf3+ Qxf3")
    author.play(first[0], "d6 Nxd4")
    author.say(Part.GREETING, "Good evening, and welcome to the Harbour Club.")
    author.say(Part.CLOSING, "So look at the board before you take what is offered.")
    author.say(Part.THANKS, "Thank you for listening.")
    author.put(main[5], spoken="Black offers a pawn. Do you take it?", nags=(5,), think=6.0)
    author.put(main[6], note="White takes, with Nf3-d4 out of reach.", nags=(2,))
    author.put(main[7], spoken="and now two things hang at once.", marks=(_mark(MarkKind.THREAT, "g5 g2"),))
    author.put(main[13], nags=(3,), note="A smothered king.")
    author.put(first[0], name="The quiet way", note="keeps the pawn for later.")
    author.put(first[0], marks=(_mark(MarkKind.GUARD, "f1 f2"),))
    author.put(first[2], nags=(16,))
    return author


def _stretch(key: int, start: float, text: str, *, rate: float = 0.35, think: float = 0.0) -> Stretch:
    """A beat that says *text*, *rate* seconds a word and a pause at its marks of punctuation."""
    at = start
    timed = []
    for number, word in enumerate(words(text)):
        timed.append(WordTime(at, at + rate, number, word))
        at += rate + (0.5 if word[-1] in ".?!" else 0.2 if word[-1] in ",;:" else 0.0)
    return Stretch(key, start, at, at + think + 0.4, think, key, 0, SpokenLine(text), tuple(timed), ())


def _talk(*texts: str, rate: float = 0.35) -> Timeline:
    """A timeline of beats that say these texts one after the other."""
    stretches: list[Stretch] = []
    at = 0.0
    for key, text in enumerate(texts):
        stretches.append(_stretch(key, at, text, rate=rate))
        at = stretches[-1].end
    return Timeline(Source.PLANNED, 0, tuple(stretches))


@pytest.fixture(scope="session")
def mark() -> Callable[..., Mark]:
    """Makes a mark on squares given by their names."""
    return _mark


@pytest.fixture(scope="session")
def stretch() -> Callable[..., Stretch]:
    """Makes a beat that says a text, a fixed time for each word and a pause at its marks of punctuation."""
    return _stretch


@pytest.fixture(scope="session")
def talk() -> Callable[..., Timeline]:
    """Makes a timeline of beats that say some texts one after the other."""
    return _talk
