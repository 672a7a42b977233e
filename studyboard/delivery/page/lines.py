"""Which line each move belongs to, how deep it lies, and the letter that its side-line is called by."""

from __future__ import annotations

from collections.abc import Iterable

from studyboard.delivery.side_line_labels import side_line_label
from studyboard.model.study import Study


class Lines:
    """The lines of a talk, by the node that each begins with; the game's is the root.

    State: the line and the depth of every node, and the labels of those lines that are told, in the order of the talk:
    A, B, … in the game, A1, A2, … in A, A1a, … in A1.
    """

    def __init__(self, study: Study, told: Iterable[int]) -> None:
        """told: the nodes that the talk shows, in order. O(size of the study)."""
        self._line: dict[int, int] = {study.root: study.root}
        self._depth: dict[int, int] = {study.root: 0}
        for node in study.branch(study.root):
            for place, child in enumerate(node.children):
                self._line[child] = child if place else self._line[node.id]
                self._depth[child] = self._depth[node.id] + (place > 0)
        self._labels: dict[int, str] = {study.root: ""}
        count: dict[int, int] = {}
        for node_id in told:
            # A line is only reached through those that it branches off from, which may not have been shown yet.
            waiting: list[int] = []
            line = self._line[node_id]
            while line not in self._labels:
                waiting.append(line)
                parent = study.nodes[line].parent
                assert parent is not None, "only the root begins a line without a move before it"
                line = self._line[parent]
            for begun in reversed(waiting):
                count[line] = count.get(line, 0) + 1
                self._labels[begun] = side_line_label(self._labels[line], self._depth[begun], count[line])
                line = begun

    def line_of(self, node: int) -> int:
        """The first node of the line that a node belongs to: the root in the game."""
        return self._line[node]

    def depth(self, node: int) -> int:
        """0 in the game, 1 in a side-line of it, and so on."""
        return self._depth[node]

    def label(self, line: int) -> str:
        """What a line is called, by its first node; empty for the game."""
        return self._labels[line]
