"""Edits: every change of a study as a value; applying one returns the edit that takes it back."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, fields, replace
from operator import attrgetter
from typing import Any, Protocol

import chess

from studyboard.model.errors import EditRefusedError
from studyboard.model.left_query import LeftQuery
from studyboard.model.node import AFTER, Node, Place, Telling
from studyboard.model.notes import command_text, plain_text
from studyboard.model.script import BeatKey, FreeLine, Pace, Part, SpokenLine
from studyboard.model.study import Changed, Study, start_board
from studyboard.model.takes import Take
from studyboard.translation import tr, tr_later

#: The fields of a node that an author may set; the tree itself changes by the other edits.
NODE_FIELDS = frozenset(field.name for field in fields(Node)) - {"id", "parent", "move", "children"}
_NODE_NAMES = tuple(field.name for field in fields(Node))
_values_of = attrgetter(*_NODE_NAMES)


class Edit(Protocol):
    """One change of a study, as a value.

    label: what was done, in words, for the undo history
    """

    @property
    def label(self) -> str: ...

    def apply(self, study: Study, changed: Changed) -> Edit:
        """Change *study*, note in *changed* what was touched, and return the inverse.

        Raises EditRefusedError, with the study as it was, where the change makes no sense.
        """
        ...


def apply(study: Study, edit: Edit) -> tuple[Edit, Changed]:
    """Apply one edit: its inverse, and what it has touched. Raises EditRefusedError with nothing changed."""
    changed = Changed()
    inverse = edit.apply(study, changed)
    return inverse, changed


@dataclass(frozen=True, slots=True)
class AddMove:
    """Put a move on the tree. node: the id it gets; place: where among its siblings, -1 for last."""

    parent: int
    move: chess.Move
    node: int
    place: int = -1
    label: str = tr_later("Add a move")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        return InsertBranch((Node(self.node, self.parent, self.move),), self.place).apply(study, changed)


@dataclass(frozen=True, slots=True)
class InsertBranch:
    """Put a whole branch on the tree. nodes: its nodes, the first one on top; place: -1 for last."""

    nodes: tuple[Node, ...]
    place: int = -1
    label: str = tr_later("Insert a branch")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        top = self.nodes[0]
        if top.parent is None or top.parent not in study.nodes:
            raise EditRefusedError(tr("The place where this branch belongs is not on the tree any more."))
        if any(node.id in study.nodes for node in self.nodes):
            raise EditRefusedError(tr("This branch is on the tree already."))
        parent = study.nodes[top.parent]
        if any(study.nodes[child].move == top.move for child in parent.children):
            raise EditRefusedError(tr("This move is on the tree already."))
        place = len(parent.children) if self.place < 0 else self.place
        children = (*parent.children[:place], top.id, *parent.children[place:])
        study.nodes[parent.id] = replace(parent, children=children)
        study.nodes.update((node.id, node) for node in self.nodes)
        study.next_id = max(study.next_id, *(node.id + 1 for node in self.nodes))
        changed.nodes.add(parent.id)
        changed.nodes.update(node.id for node in self.nodes)
        changed.settings = True
        return RemoveBranch(top.id, label=self.label)


@dataclass(frozen=True, slots=True)
class RemoveBranch:
    """Take a node and everything after it off the tree."""

    node: int
    label: str = tr_later("Delete a branch")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        top = _node(study, self.node)
        if top.parent is None:
            raise EditRefusedError(tr("The start position cannot be deleted."))
        parent = study.nodes[top.parent]
        branch = tuple(study.branch(top.id))
        place = parent.children.index(top.id)
        study.nodes[parent.id] = replace(parent, children=_without(parent.children, top.id))
        for node in branch:
            del study.nodes[node.id]
        changed.nodes.add(parent.id)
        changed.nodes.update(node.id for node in branch)
        return InsertBranch(branch, place, label=self.label)


@dataclass(frozen=True, slots=True)
class MoveChild:
    """Give a node another place among its siblings; place 0 makes it the main move."""

    node: int
    place: int
    label: str = tr_later("Reorder side-lines")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        node = _node(study, self.node)
        if node.parent is None:
            raise EditRefusedError(tr("The start position has no place among others."))
        parent = study.nodes[node.parent]
        was = parent.children.index(node.id)
        if not 0 <= self.place < len(parent.children):
            raise EditRefusedError(tr("There is no such place among the moves played here."))
        others = _without(parent.children, node.id)
        study.nodes[parent.id] = replace(parent, children=(*others[: self.place], node.id, *others[self.place :]))
        changed.nodes.add(parent.id)
        return MoveChild(node.id, was, self.label)


@dataclass(frozen=True, slots=True)
class ChangeNode:
    """Set one field of a node (see NODE_FIELDS) to another value."""

    node: int
    field: str
    value: Any
    label: str = tr_later("Change a node")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        if self.field not in NODE_FIELDS:
            raise EditRefusedError(tr("A node has nothing called “{field}” that could be set.", field=self.field))
        node = _node(study, self.node)
        was = getattr(node, self.field)
        # As `replace` does, which takes three times as long: one edit may change every node.
        values = list(_values_of(node))
        values[_NODE_NAMES.index(self.field)] = self.value
        study.nodes[node.id] = Node(*values)
        changed.nodes.add(node.id)
        return ChangeNode(node.id, self.field, was, self.label)


@dataclass(frozen=True, slots=True)
class ChangeHeaders:
    """Replace the tag pairs, in this order."""

    headers: tuple[tuple[str, str], ...]
    label: str = tr_later("Change the headers")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        headers = dict(self.headers)
        was = tuple(study.headers.items())
        board = start_board(headers)
        if board != start_board(study.headers) and study.nodes[study.root].children:
            raise EditRefusedError(tr("The start position cannot change while moves stand on the tree."))
        study.headers = headers
        changed.headers = True
        return ChangeHeaders(was, self.label)


@dataclass(frozen=True, slots=True)
class ChangeLine:
    """Set what is said at one part of the talk that belongs to no move."""

    part: Part
    line: FreeLine
    label: str = tr_later("Change the script")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        was = study.line(self.part)
        study.lines[self.part] = self.line
        changed.parts.add(self.part)
        return ChangeLine(self.part, was, self.label)


@dataclass(frozen=True, slots=True)
class ChangeSlot:
    """Set the length that the talk should have (s), or None."""

    slot: float | None
    label: str = tr_later("Set the slot")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        if self.slot is not None and not 0 < self.slot < 86_400:
            raise EditRefusedError(tr("A slot is longer than nothing and shorter than a day."))
        was, study.slot = study.slot, self.slot
        changed.settings = True
        return ChangeSlot(was, self.label)


@dataclass(frozen=True, slots=True)
class ChangePace:
    """Set how the presenter speaks."""

    pace: Pace
    label: str = tr_later("Set the pace")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        was, study.pace = study.pace, self.pace
        changed.settings = True
        return ChangePace(was, self.label)


@dataclass(frozen=True, slots=True)
class PutTake:
    """Add a take, or replace what is known of it."""

    take: Take
    label: str = tr_later("Keep a take")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        was = study.takes.get(self.take.id)
        study.takes[self.take.id] = self.take
        study.next_take = max(study.next_take, self.take.id + 1)
        changed.takes.add(self.take.id)
        return DropTake(self.take.id, self.label) if was is None else PutTake(was, self.label)


@dataclass(frozen=True, slots=True)
class DropTake:
    """Forget a take; its sound stays in the file until it is purged."""

    take: int
    label: str = tr_later("Drop a take")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        if self.take not in study.takes:
            raise EditRefusedError(tr("There is no such take."))
        was = study.takes.pop(self.take)
        changed.takes.add(self.take)
        return PutTake(was, self.label)


@dataclass(frozen=True, slots=True)
class ChangeRehearsed:
    """Set how long beats took in rehearsal (s), by beat; None forgets one."""

    seconds: tuple[tuple[BeatKey, float | None], ...]
    label: str = tr_later("Keep a rehearsal")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        was = tuple((key, study.rehearsed.get(key)) for key, _ in self.seconds)
        for key, seconds in self.seconds:
            if seconds is None:
                study.rehearsed.pop(key, None)
            else:
                study.rehearsed[key] = seconds
        changed.rehearsed = True
        return ChangeRehearsed(was, self.label)


@dataclass(frozen=True, slots=True)
class ChangeLeft:
    """Set which queries of the read-through are left."""

    left: tuple[LeftQuery, ...]
    label: str = tr_later("Leave a query")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        was = tuple(sorted(study.left, key=lambda query: (str(query.beat), query.kind, query.quote)))
        study.left = frozenset(self.left)
        changed.left = True
        return ChangeLeft(was, self.label)


@dataclass(frozen=True, slots=True)
class ChangePronunciations:
    """Set how words are said, by the word as it is written; None forgets one."""

    hints: tuple[tuple[str, str | None], ...]
    label: str = tr_later("Change a pronunciation")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        if any(not word.strip() for word, _ in self.hints):
            raise EditRefusedError(tr("A pronunciation belongs to a word."))
        was = tuple((word, study.pronunciations.get(word)) for word, _ in self.hints)
        for word, said in self.hints:
            if said is None:
                study.pronunciations.pop(word, None)
            else:
                study.pronunciations[word] = said
        changed.pronunciations = True
        return ChangePronunciations(was, self.label)


@dataclass(frozen=True, slots=True)
class ChangeLanguage:
    """Set what the script is written in, such as "en_GB"; "" for the language of the desk."""

    language: str
    label: str = tr_later("Set the language of the script")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        was, study.language = study.language, self.language
        changed.settings = True
        return ChangeLanguage(was, self.label)


@dataclass(frozen=True, slots=True)
class ChangeWords:
    """Set which spellings are right in this script although no dictionary has them."""

    words: tuple[str, ...]
    label: str = tr_later("Change the words of this study")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        if any(not word or word.split() != [word] for word in self.words):
            raise EditRefusedError(tr("What is added to the words of a study is one word without blanks."))
        was = tuple(sorted(study.words))
        study.words = frozenset(self.words)
        changed.settings = True
        return ChangeWords(was, self.label)


@dataclass(frozen=True, slots=True)
class Several:
    """Edits that belong together: all of them or none."""

    edits: tuple[Edit, ...]
    label: str = tr_later("Several changes")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        inverses: list[Edit] = []
        for edit in self.edits:
            try:
                inverses.append(edit.apply(study, changed))
            except EditRefusedError:
                for inverse in reversed(inverses):
                    inverse.apply(study, changed)
                raise
        return Several(tuple(reversed(inverses)), self.label)


def add_move(study: Study, parent: int, move: chess.Move) -> AddMove:
    """The edit that puts *move* after *parent* with a fresh id."""
    return AddMove(parent, move, study.next_id)


def promote(study: Study, node: int) -> Edit:
    """One step towards the main line: the line that holds *node* changes places with the one before it.

    Raises EditRefusedError where it is the main line already.
    """
    start = study.line_start(node)
    if start == study.root:
        raise EditRefusedError(tr("This is the main line already."))
    return _told(study, start, MoveChild(start, _place(study, start) - 1, tr_later("Promote a side-line")))


def demote(study: Study, node: int) -> Edit:
    """One step away from the main line: *node* changes places with the sibling after it.

    Raises EditRefusedError where there is none.
    """
    siblings = _siblings(study, node)
    place = siblings.index(node) if node in siblings else -1
    if place < 0 or place + 1 >= len(siblings):
        raise EditRefusedError(tr("There is no side-line below this one to change places with."))
    return MoveChild(node, place + 1, tr_later("Demote a line"))


def make_main_line(study: Study, node: int) -> Edit:
    """The edit that makes every move up to *node* a main move. Raises EditRefusedError where they all are."""
    edits = tuple(
        _told(study, step, MoveChild(step, 0))
        for step in study.path(node)
        if step != study.root and _siblings(study, step)[0] != step
    )
    if not edits:
        raise EditRefusedError(tr("This is the main line already."))
    return Several(edits, tr_later("Make this the main line"))


def _told(study: Study, node: int, move: MoveChild) -> Edit:
    """The move, and with it that the line is told again where it becomes the main line."""
    if move.place > 0 or study.nodes[node].telling.place is not Place.HIDDEN:
        return move
    return Several((move, ChangeNode(node, "telling", AFTER)), move.label)


def try_move(study: Study, parent: int, move: chess.Move) -> tuple[Edit, int]:
    """The edit that puts *move* after *parent* without telling it, and the id that it gets."""
    added = add_move(study, parent, move)
    hide = ChangeNode(added.node, "telling", Telling(Place.HIDDEN))
    return Several((added, hide), tr_later("Try a move")), added.node


def notes_to_spoken(study: Study, nodes: Iterable[int]) -> Edit:
    """The edit that makes the notes of these nodes their spoken lines, where they have none yet.

    Commands in square brackets, which other programs leave in comments, stay in the note. Raises EditRefusedError
    where there is nothing to turn.
    """
    edits: list[Edit] = []
    for node in (study.nodes[node_id] for node_id in nodes):
        said = " ".join(filter(None, (plain_text(node.note_before), plain_text(node.note))))
        if said and not node.spoken:
            edits.append(ChangeNode(node.id, "spoken", SpokenLine(said)))
            edits.append(ChangeNode(node.id, "note_before", command_text(node.note_before)))
            edits.append(ChangeNode(node.id, "note", command_text(node.note)))
    if not edits:
        raise EditRefusedError(tr("No note here could become a spoken line."))
    return Several(tuple(edits), tr_later("Turn notes into spoken lines"))


def _node(study: Study, node_id: int) -> Node:
    try:
        return study.nodes[node_id]
    except KeyError:
        raise EditRefusedError(tr("This node is not on the tree any more.")) from None


def _without(children: tuple[int, ...], child: int) -> tuple[int, ...]:
    return tuple(other for other in children if other != child)


def _siblings(study: Study, node_id: int) -> tuple[int, ...]:
    parent = _node(study, node_id).parent
    return () if parent is None else study.nodes[parent].children


def _place(study: Study, node_id: int) -> int:
    return _siblings(study, node_id).index(node_id)
