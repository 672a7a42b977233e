"""Drawing, altering and removing the marks of a node, so that its cues and numbers keep showing the right ones."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import pairwise

import chess

from studyboard.model.edits import ChangeNode, Edit, Several
from studyboard.model.errors import EditRefusedError
from studyboard.model.marks import SQUARES_OF, Mark, MarkKind
from studyboard.model.node import Node
from studyboard.model.script import Cue
from studyboard.model.study import Study
from studyboard.translation import tr, tr_later

#: Labels of edits that name a kind of mark; LABELS_OF_MARKS is for whoever translates labels.
_DRAW, _WIPE, _MOVE = LABELS_OF_MARKS = (
    tr_later("Draw a {kind}"),
    tr_later("Wipe a {kind}"),
    tr_later("Move a {kind}"),
)
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


def toggle_mark(node: Node, mark: Mark, *, numbered: bool = False) -> Edit:
    """The edit that draws *mark* on this node, or wipes it away where it is drawn already.

    A route that begins where another ends lengthens it; the last leg of a route, drawn again, is wiped away. A new
    mark that is to be *numbered* goes on from the highest number there is.
    """
    for index, other in enumerate(node.marks):
        if other.draws_as(mark):
            return remove_mark(node, index)
    if mark.kind is MarkKind.ROUTE:
        for index, other in enumerate(node.marks):
            if other.kind is not MarkKind.ROUTE:
                continue
            if other.squares[-2:] == mark.squares:
                return _put(node, index, replace(other, squares=other.squares[:-1]), tr_later("Shorten a route"))
            if other.squares[-1] == mark.squares[0]:
                longer = replace(other, squares=(*other.squares, *mark.squares[1:]))
                return _put(node, index, longer, tr_later("Lengthen a route"))
    if numbered:
        mark = replace(mark, number=_highest(node.marks) + 1)
    return ChangeNode(node.id, "marks", (*node.marks, mark), _DRAW.format(kind=mark.kind))


def remove_mark(node: Node, index: int) -> Edit:
    """The edit that wipes one mark away; its cue goes with it, later cues keep their marks, later numbers close up.

    Raises IndexError where there is no such mark.
    """
    gone = node.marks[index]
    marks = renumbered((*node.marks[:index], *node.marks[index + 1 :]))
    cues = tuple(
        replace(cue, mark=cue.mark - 1) if cue.mark is not None and cue.mark > index else cue
        for cue in node.spoken.cues
        if cue.mark != index
    )
    return _with_cues(node, marks, cues, _WIPE.format(kind=gone.kind))


def clear_marks(node: Node) -> Edit:
    """The edit that wipes all marks of the node away, with their cues."""
    cues = tuple(cue for cue in node.spoken.cues if cue.mark is None)
    return _with_cues(node, (), cues, tr_later("Wipe all marks"))


def stop_at(marks: Sequence[Mark], square: chess.Square) -> tuple[int, int] | None:
    """The mark that one takes hold of on *square*, and which of its squares that is: ``(index, stop)``.

    The mark that was drawn last, and of each mark its end before its beginning; None where no mark has this square.
    """
    for index in range(len(marks) - 1, -1, -1):
        squares = marks[index].squares
        for stop in range(len(squares) - 1, -1, -1):
            if squares[stop] == square:
                return index, stop
    return None


def moved_stop(mark: Mark, stop: int, square: chess.Square) -> Mark | None:
    """*mark* with one of its squares moved to *square*; None where two stops that follow each other would be one."""
    squares = (*mark.squares[:stop], square, *mark.squares[stop + 1 :])
    if any(here == there for here, there in pairwise(squares)):
        return None
    return replace(mark, squares=squares)


def move_stop(node: Node, index: int, stop: int, square: chess.Square) -> Edit:
    """The edit that moves one square of a mark, such as the tip of a threat; its cue and its number stay with it.

    Raises EditRefusedError where nothing would be left to draw, or the same mark is drawn already.
    """
    moved = moved_stop(node.marks[index], stop, square)
    if moved is None:
        raise EditRefusedError(tr("A mark cannot go from a square to itself."))
    _refuse_twin(node, index, moved)
    return _put(node, index, moved, _MOVE.format(kind=moved.kind))


def kinds_for(mark: Mark) -> tuple[MarkKind, ...]:
    """The other kinds that *mark* could become: from several squares to one, but not from one square to several."""
    return tuple(kind for kind in MarkKind if kind is not mark.kind and SQUARES_OF[kind][0] <= len(mark.squares))


def change_kind(node: Node, index: int, kind: MarkKind) -> Edit:
    """The edit that gives a mark another meaning; its cue and its number stay with it.

    A mark of one square stays where the old one ended; a threat or a guard keeps the beginning and the end of a route.
    Raises EditRefusedError where the kind needs more squares than the mark has, or the same mark is drawn already.
    """
    mark = node.marks[index]
    least, most = SQUARES_OF[kind]
    if len(mark.squares) < least:
        raise EditRefusedError(tr("A {kind} goes from one square to another: draw it anew.", kind=tr(kind)))
    squares = mark.squares
    if most is not None and len(squares) > most:
        squares = squares[-1:] if most == 1 else (squares[0], squares[-1])
    changed = replace(mark, kind=kind, squares=squares)
    _refuse_twin(node, index, changed)
    return _put(node, index, changed, tr_later("Change what a mark means"))


def number_marks(node: Node) -> Edit:
    """The edit that numbers all marks of the node in the order in which they were drawn.

    Where all of them have their number already it takes the numbers off. Raises EditRefusedError where there are none.
    """
    if not node.marks:
        raise EditRefusedError(tr("There are no marks here to be numbered."))
    if all(mark.number is not None for mark in node.marks):
        return ChangeNode(node.id, "marks", _unnumbered(node.marks), tr_later("Take the numbers off the marks"))
    numbered = tuple(replace(mark, number=place) for place, mark in enumerate(node.marks, 1))
    return ChangeNode(node.id, "marks", numbered, tr_later("Number the marks"))


def number_mark(node: Node, index: int) -> Edit:
    """The edit that gives one mark the next number, or takes its number off; the others close up."""
    mark = node.marks[index]
    number = _highest(node.marks) + 1 if mark.number is None else None
    marks = (*node.marks[:index], replace(mark, number=number), *node.marks[index + 1 :])
    label = tr_later("Take the number off a mark") if number is None else tr_later("Number a mark")
    return ChangeNode(node.id, "marks", renumbered(marks), label)


def renumbered(marks: tuple[Mark, ...]) -> tuple[Mark, ...]:
    """The marks with their numbers closed up to 1, 2, 3, in the same order."""
    order = sorted((mark.number, index) for index, mark in enumerate(marks) if mark.number is not None)
    places = {index: place for place, (_, index) in enumerate(order, 1)}
    return tuple(replace(mark, number=places.get(index)) for index, mark in enumerate(marks))


def copy_marks(study: Study, source: int, targets: Iterable[int]) -> Edit:
    """The edit that draws the marks of one node on others too, beside those that they have; cues are not copied.

    Raises EditRefusedError where the node has no marks, where there is nowhere to copy them to, or where all of them
    are drawn there already.
    """
    marks = study.node(source).marks
    if not marks:
        raise EditRefusedError(tr("There are no marks here to be copied."))
    nodes = [study.node(target) for target in targets]
    if not nodes:
        raise EditRefusedError(tr("There is no move here to copy the marks to."))
    edits: list[Edit] = []
    for node in nodes:
        more = tuple(mark for mark in marks if not any(mark.draws_as(other) for other in node.marks))
        if more:
            last = _highest(node.marks)
            more = tuple(
                mark if mark.number is None else replace(mark, number=last + mark.number) for mark in renumbered(more)
            )
            edits.append(ChangeNode(node.id, "marks", (*node.marks, *more)))
    if not edits:
        raise EditRefusedError(tr("These marks are drawn there already."))
    return Several(tuple(edits), tr_later("Copy marks"))


def _highest(marks: Iterable[Mark]) -> int:
    return max((mark.number or 0 for mark in marks), default=0)


def _unnumbered(marks: Iterable[Mark]) -> tuple[Mark, ...]:
    return tuple(replace(mark, number=None) for mark in marks)


def _refuse_twin(node: Node, index: int, mark: Mark) -> None:
    if any(mark.draws_as(other) for at, other in enumerate(node.marks) if at != index):
        raise EditRefusedError(tr("The same mark is drawn there already."))


def _with_cues(node: Node, marks: tuple[Mark, ...], cues: tuple[Cue, ...], label: str) -> Edit:
    change = ChangeNode(node.id, "marks", marks, label)
    if cues == node.spoken.cues:
        return change
    spoken = replace(node.spoken, cues=cues)
    return Several((change, ChangeNode(node.id, "spoken", spoken)), label)


def _put(node: Node, index: int, mark: Mark, label: str) -> Edit:
    return ChangeNode(node.id, "marks", (*node.marks[:index], mark, *node.marks[index + 1 :]), label)
