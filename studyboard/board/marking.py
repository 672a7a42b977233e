"""Adding and removing the marks of a node, so that the cues of its line keep showing the right ones."""

from __future__ import annotations

from dataclasses import replace

import chess

from studyboard.model.edits import ChangeNode, Edit, Several
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.node import Node
from studyboard.model.script import Cue

_SINGLE = frozenset((MarkKind.TARGET, MarkKind.KEY_SQUARE))


def drawn_mark(kind: MarkKind, origin: chess.Square, destination: chess.Square | None) -> Mark | None:
    """The mark of *kind* that is meant by drawing from one square to another.

    A mark of one square is meant by where the drawing ends; a mark between squares needs two. None where there is
    nothing to draw.
    """
    end = origin if destination is None else destination
    if kind in _SINGLE:
        return Mark(kind, (end,))
    return None if end == origin else Mark(kind, (origin, end))


def toggle_mark(node: Node, mark: Mark) -> Edit:
    """The edit that draws *mark* on this node, or wipes it away where it is drawn already.

    A route that begins where another ends lengthens it; the last leg of a route, drawn again, is wiped away.
    """
    if mark in node.marks:
        return remove_mark(node, node.marks.index(mark))
    if mark.kind is MarkKind.ROUTE:
        for index, other in enumerate(node.marks):
            if other.kind is not MarkKind.ROUTE:
                continue
            if other.squares[-2:] == mark.squares:
                return _put(node, index, replace(other, squares=other.squares[:-1]), "Shorten a route")
            if other.squares[-1] == mark.squares[0]:
                longer = replace(other, squares=(*other.squares, *mark.squares[1:]))
                return _put(node, index, longer, "Lengthen a route")
    return ChangeNode(node.id, "marks", (*node.marks, mark), f"Draw a {mark.kind}")


def remove_mark(node: Node, index: int) -> Edit:
    """The edit that wipes one mark away; its cue goes with it and later cues keep their marks.

    Raises IndexError where there is no such mark.
    """
    gone = node.marks[index]
    marks = (*node.marks[:index], *node.marks[index + 1 :])
    cues = tuple(
        replace(cue, mark=cue.mark - 1) if cue.mark is not None and cue.mark > index else cue
        for cue in node.spoken.cues
        if cue.mark != index
    )
    return _with_cues(node, marks, cues, f"Wipe a {gone.kind}")


def clear_marks(node: Node) -> Edit:
    """The edit that wipes all marks of the node away, with their cues."""
    cues = tuple(cue for cue in node.spoken.cues if cue.mark is None)
    return _with_cues(node, (), cues, "Wipe all marks")


def _with_cues(node: Node, marks: tuple[Mark, ...], cues: tuple[Cue, ...], label: str) -> Edit:
    change = ChangeNode(node.id, "marks", marks, label)
    if cues == node.spoken.cues:
        return change
    spoken = replace(node.spoken, cues=cues)
    return Several((change, ChangeNode(node.id, "spoken", spoken)), label)


def _put(node: Node, index: int, mark: Mark, label: str) -> Edit:
    return ChangeNode(node.id, "marks", (*node.marks[:index], mark, *node.marks[index + 1 :]), label)
