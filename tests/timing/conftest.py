"""A small study of our own with side-lines, and one of its takes, for the tests of timing."""

from __future__ import annotations

from collections.abc import Callable

import chess
import pytest

from studyboard.model.edits import ChangeLine, ChangeNode, Edit, add_move, apply
from studyboard.model.script import FreeLine, Part, SpokenLine
from studyboard.model.study import Study


class Author:
    """Writes a study: plays moves on it and sets what belongs to them.

    study: what is written
    """

    def __init__(self) -> None:
        self.study = Study()

    def play(self, *moves: str, after: int | None = None) -> int:
        """Put moves (UCI) one after the other on the tree; the id of the last one."""
        node = self.study.root if after is None else after
        for uci in moves:
            edit = add_move(self.study, node, chess.Move.from_uci(uci))
            self.edit(edit)
            node = edit.node
        return node

    def say(self, node: int, text: str, *cues: object) -> None:
        """Set the spoken line of a node."""
        self.change(node, spoken=SpokenLine(text, tuple(cues)))  # type: ignore[arg-type]

    def say_part(self, part: Part, text: str, intended: float | None = None) -> None:
        """Set a spoken line that belongs to no move."""
        self.edit(ChangeLine(part, FreeLine(SpokenLine(text), intended)))

    def change(self, node: int, **values: object) -> None:
        """Set fields of a node."""
        for field, value in values.items():
            self.edit(ChangeNode(node, field, value))

    def edit(self, edit: Edit) -> None:
        """Apply one edit."""
        apply(self.study, edit)


@pytest.fixture
def author() -> Author:
    """Somebody who writes a study."""
    return Author()


class Watch:
    """A clock that goes on when it is told to. now: what it shows (s)."""

    def __init__(self) -> None:
        self.now = 100.0

    def __call__(self) -> float:
        return self.now

    def wait(self, seconds: float) -> None:
        """Let time pass."""
        self.now += seconds


@pytest.fixture
def watch() -> Watch:
    """A clock in the hand of the test."""
    return Watch()


@pytest.fixture
def gambit(author: Author) -> Callable[[str], int]:
    """1.e4 e5 2.Nf3 Nc6 with the side-line 2.f4 exf4, a line for each move; gives the id of a move by its name."""
    ids = {"start": author.study.root}
    ids["e4"] = author.play("e2e4")
    ids["e5"] = author.play("e7e5", after=ids["e4"])
    ids["Nf3"] = author.play("g1f3", after=ids["e5"])
    ids["Nc6"] = author.play("b8c6", after=ids["Nf3"])
    ids["f4"] = author.play("f2f4", after=ids["e5"])
    ids["exf4"] = author.play("e5f4", after=ids["f4"])
    author.say(ids["e4"], "We begin with the king's pawn.")
    author.say(ids["e5"], "Black answers in kind.")
    author.say(ids["Nf3"], "The knight comes out.")
    author.say(ids["f4"], "There was another way, with the bishop's pawn.")
    author.say(ids["exf4"], "Black may take it.")
    author.say(ids["Nc6"], "And the pawn is covered.")
    return ids.__getitem__
