"""The tree of one game while its movetext is being read."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

import chess


@dataclass(slots=True)
class Draft:
    """A tree under construction; ids are indexes, 0 is the root.

    moves, parents, children: by id; the root has a null move and the parent -1
    notes, before, nags: by id, only where there are any
    result: the game's termination marker, if there was one
    odd: what could not be understood: offset in the text and a sentence
    """

    moves: list[chess.Move] = field(default_factory=lambda: [chess.Move.null()])
    parents: list[int] = field(default_factory=lambda: [-1])
    children: list[list[int]] = field(default_factory=lambda: [[]])
    notes: dict[int, list[str]] = field(default_factory=dict)
    before: dict[int, list[str]] = field(default_factory=dict)
    nags: dict[int, list[int]] = field(default_factory=dict)
    result: str | None = None
    odd: list[tuple[int, str]] = field(default_factory=list)

    def join(self, parent: int, move: chess.Move, leads: bool) -> tuple[int, bool]:
        """The node of *move* after *parent*, and whether the line that plays it leads the way from there.

        Equal moves are the same node. The line that made a node leads: its next move is the main one, wherever a
        variation that repeats its moves has been before it.
        """
        siblings = self.children[parent]
        for node in siblings:
            if self.moves[node] == move:
                if leads:
                    siblings.remove(node)
                    siblings.insert(0, node)
                return node, leads
        node = len(self.moves)
        self.moves.append(move)
        self.parents.append(parent)
        self.children.append([])
        siblings.insert(0 if leads else len(siblings), node)
        return node, True

    def add_notes(self, node: int, texts: Iterable[str]) -> None:
        """Add comments after a move."""
        for text in texts:
            self.notes.setdefault(node, []).append(text)

    def add_notes_before(self, node: int, texts: Iterable[str]) -> None:
        """Add comments before a move."""
        for text in texts:
            self.before.setdefault(node, []).append(text)

    def add_nags(self, node: int, nags: Iterable[int]) -> None:
        """Add glyphs to a move, each of them once."""
        known = self.nags.setdefault(node, [])
        known += [nag for nag in dict.fromkeys(nags) if nag not in known]

    def report(self, at: int, sentence: str) -> None:
        """Add something that could not be understood, with its offset in the text."""
        self.odd.append((at, sentence))
