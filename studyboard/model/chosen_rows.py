"""What is done to several rows of the script at once: one edit, taken back as one."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from studyboard.model.edits import ChangeLine, ChangeNode, Edit, RemoveBranch, Several
from studyboard.model.errors import EditRefusedError
from studyboard.model.node import Place, Telling
from studyboard.model.reading_order import tops
from studyboard.model.script import SILENT, BeatKey, Part
from studyboard.model.study import Study
from studyboard.translation import tr, tr_later

_HIDDEN = Telling(Place.HIDDEN)


def delete_chosen(study: Study, keys: Iterable[BeatKey]) -> Edit:
    """The edit that takes these nodes and everything after them off the tree; lines without a move stay.

    Raises EditRefusedError where the start position is one of them, or none is a node.
    """
    nodes = {key for key in keys if not isinstance(key, Part)}
    if study.root in nodes:
        raise EditRefusedError(tr("The start position cannot be deleted."))
    removals = tuple(RemoveBranch(node) for node in tops(study, nodes))
    if not removals:
        raise EditRefusedError(tr("No move is chosen that could be deleted."))
    return removals[0] if len(removals) == 1 else Several(removals, tr_later("Delete branches"))


def clear_chosen(study: Study, keys: Iterable[BeatKey]) -> Edit:
    """The edit after which nothing is said at these rows. Raises EditRefusedError where nothing is said already."""
    label = tr_later("Clear spoken lines")
    changes: list[Edit] = []
    for key in keys:
        if isinstance(key, Part):
            line = study.line(key)
            if line.spoken:
                changes.append(ChangeLine(key, replace(line, spoken=SILENT), label))
        elif study.nodes[key].spoken:
            changes.append(ChangeNode(key, "spoken", SILENT, label))
    if not changes:
        raise EditRefusedError(tr("Nothing is said here that could be cleared."))
    return changes[0] if len(changes) == 1 else Several(tuple(changes), label)


def tell_chosen(study: Study, keys: Iterable[BeatKey], telling: Telling) -> Edit:
    """The edit that tells the side-lines which hold these nodes at that place of the running order.

    Rows of the main line are passed by. Raises EditRefusedError where no side-line is among them, or all are told
    there already.
    """
    starts = dict.fromkeys(study.line_start(key) for key in keys if not isinstance(key, Part))
    side_lines = [start for start in starts if start != study.root]
    if not side_lines:
        raise EditRefusedError(tr("No side-line is chosen: the main line is always told."))
    label = tr_later("Change the running order")
    changes = [
        ChangeNode(start, "telling", telling, label) for start in side_lines if study.nodes[start].telling != telling
    ]
    if not changes:
        raise EditRefusedError(
            tr("It is not told as it is.") if telling == _HIDDEN else tr("It is told there already.")
        )
    return changes[0] if len(changes) == 1 else Several(tuple(changes), label)
