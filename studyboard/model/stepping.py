"""Stepping over the tree: which node comes next when the presenter goes on, back, into a side-line or out of it."""

from __future__ import annotations

from studyboard.model.study import Study


def forward(study: Study, node: int) -> int | None:
    """The main move after this node, or None at the end of its line."""
    children = study.nodes[node].children
    return children[0] if children else None


def back(study: Study, node: int) -> int | None:
    """The node before this one, or None at the root."""
    return study.nodes[node].parent


def next_line(study: Study, node: int) -> int | None:
    """The next side-line that replaces the same move as this node, or None where this is the last."""
    return _beside(study, node, 1)


def previous_line(study: Study, node: int) -> int | None:
    """Out to the left: the line before among those that replace the same move; inside a side-line, its first node.

    None on the main line.
    """
    start = study.line_start(node)
    if start == study.root:
        return None
    return start if start != node else _beside(study, node, -1)


def out_of_side_line(study: Study, node: int) -> int | None:
    """The main move that this side-line replaces, or None on the main line."""
    start = study.line_start(node)
    parent = study.nodes[start].parent
    return None if parent is None else study.nodes[parent].children[0]


def home(study: Study, node: int) -> int:
    """The last node of the main line on the way to this one."""
    at = node
    for step in study.path(node):
        if study.begins_side_line(step):
            break
        at = step
    return at


def end_of_line(study: Study, node: int) -> int:
    """The last node of the line that goes on from here."""
    *_, last = study.main_line(node)
    return last


def _beside(study: Study, node: int, step: int) -> int | None:
    parent = study.nodes[node].parent
    if parent is None:
        return None
    siblings = study.nodes[parent].children
    place = siblings.index(node) + step
    return siblings[place] if 0 <= place < len(siblings) else None
