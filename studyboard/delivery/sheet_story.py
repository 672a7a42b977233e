"""The talk as it is read: paragraphs of moves and text, side-lines, and the places of the diagrams."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Final

import chess

from studyboard.delivery.nag_glyphs import nag_text
from studyboard.delivery.title import result
from studyboard.delivery.typography import typeset
from studyboard.model.node import AFTER, Place
from studyboard.model.notes import plain_text
from studyboard.model.order import VisitKind, running_order
from studyboard.model.positions import Positions
from studyboard.model.script import Part, words
from studyboard.model.study import Study
from studyboard.notation.labels import figurine


class SheetText(StrEnum):
    """Which text is printed: the notes alone, or the notes and, more quietly, what is said."""

    NOTES = "notes"
    TALK = "talk"


class RunKind(StrEnum):
    """What a run of text in a paragraph is."""

    MOVE = "move"
    NOTE = "note"
    SPOKEN = "spoken"


@dataclass(frozen=True, slots=True)
class Run:
    """Text of one kind."""

    kind: RunKind
    text: str


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Runs that are set one after the other.

    depth: 0 on the main line, 1 in a side-line of it, and so on
    label: what the side-line that begins here is called (A, A1, A1a, …; a dot where it is nested deeper than
        that), else empty
    name: what the author calls it
    """

    depth: int
    runs: tuple[Run, ...]
    label: str = ""
    name: str = ""


@dataclass(frozen=True, slots=True)
class Diagram:
    """The position at a node.

    caption: what it shows
    task: what the reader is asked, else empty
    """

    node: int
    depth: int
    caption: str
    task: str = ""


_ENDS_SENTENCE: Final = re.compile(r"[.!?…][\"'”’»)\]]*$")
_BLANK_LINES: Final = re.compile(r"\n\s*\n")
_DEEPEST_LABEL: Final = 4
_NO_LABEL: Final = "·"


def story(study: Study, positions: Positions, text: SheetText = SheetText.TALK) -> tuple[Paragraph | Diagram, ...]:
    """The study in the order in which it is told. O(size of the study).

    Side-lines that the talk leaves out are for print: they stand after the move that they replace. There is a
    diagram at every node with marks or a think pause, at a start position that is not the usual one, and where the
    main line ends. The thanks are said, not printed.
    """
    teller = _Teller(study, positions, text)
    teller.tell()
    return tuple(teller.told)


class _Teller:
    """State: what is told already, the paragraph being written, and the letters given to side-lines."""

    def __init__(self, study: Study, positions: Positions, text: SheetText) -> None:
        self.told: list[Paragraph | Diagram] = []
        self._study = study
        self._positions = positions
        self._talk = text is SheetText.TALK
        *_, self._last = study.main_line()
        self._runs: list[Run] = []
        self._depth = 0
        self._label = ""
        self._name = ""
        self._labels = [""]
        self._lines_of: dict[str, int] = {}

    def tell(self) -> None:
        visits = running_order(_all_told(self._study))
        opening = [visit for visit in visits if visit.part is not None and visit.part.opens]
        closing = [visit for visit in visits if visit.part is not None and not visit.part.opens]
        for visit in opening:
            self._free_line(visit.part)
        self._root()
        for visit in visits:
            if visit.kind is VisitKind.TELL and visit.node != self._study.root:
                self._move(visit.node, visit.depth)
        self._open(0)
        for visit in closing:
            self._free_line(visit.part)
        self._close()

    def _free_line(self, part: Part | None) -> None:
        if self._talk and part is not None and part is not Part.THANKS:
            self._texts(RunKind.SPOKEN, self._study.line(part).spoken.text)
            self._close()

    def _root(self) -> None:
        root = self._study.nodes[self._study.root]
        usual = self._positions.board(root.id).fen() == chess.STARTING_FEN
        self._texts(RunKind.NOTE, plain_text(root.note_before))
        if self._talk:
            self._texts(RunKind.SPOKEN, root.spoken.text)
            self._close()
        self._texts(RunKind.NOTE, plain_text(root.note))
        self._close()
        if root.marks or root.think or not usual or not root.children:
            turn = "White" if self._positions.board(root.id).turn == chess.WHITE else "Black"
            self._diagram(root.id, f"the start position, {turn} to move")

    def _move(self, node_id: int, depth: int) -> None:
        node = self._study.nodes[node_id]
        if self._study.begins_side_line(node_id):
            self._open(depth, self._next_label(depth), node.name.strip())
        elif depth != self._depth:
            self._open(depth)
        if before := plain_text(node.note_before):
            self._texts(RunKind.NOTE, before)
            if depth == 0:
                self._close()
        follows = bool(self._runs) and self._runs[-1].kind is RunKind.MOVE
        self._runs.append(Run(RunKind.MOVE, self._with_number(node_id, always=not follows)))
        spoken = node.spoken.text if self._talk else ""
        note = plain_text(node.note)
        self._texts(RunKind.SPOKEN, spoken)
        if depth == 0 and self._runs[-1:] and _ENDS_SENTENCE.search(self._runs[-1].text.rstrip()) and spoken.strip():
            self._close()
        self._texts(RunKind.NOTE, note)
        if depth == 0 and note:
            self._close()
        if node.marks or node.think or node_id == self._last:
            self._diagram(node_id, self._caption(node_id))

    def _texts(self, kind: RunKind, text: str) -> None:
        """Add text; a blank line in it begins another paragraph of the same line."""
        for place, block in enumerate(_BLANK_LINES.split(text.strip())):
            flowing = " ".join(words(block))
            if not flowing:
                continue
            if place:
                self._close()
            self._runs.append(Run(kind, typeset(flowing)))

    def _diagram(self, node_id: int, caption: str) -> None:
        self._close()
        node = self._study.nodes[node_id]
        board = self._positions.board(node_id)
        side = "White" if board.turn == chess.WHITE else "Black"
        task = f"{side} to move: find the move." if node.think else ""
        self.told.append(Diagram(node_id, self._depth, caption, task))

    def _caption(self, node_id: int) -> str:
        after = f"after {self._with_number(node_id, glyphs=False)}"
        if node_id != self._last:
            label = self._labels[self._depth] if 0 < self._depth < len(self._labels) else ""
            return f"side-line {label}, {after}" if label else after
        ended = result(self._study.headers)
        return f"final position, {after}" + (f" · {ended}" if ended else "")

    def _open(self, depth: int, label: str = "", name: str = "") -> None:
        self._close()
        self._depth, self._label, self._name = depth, label, name

    def _close(self) -> None:
        if self._runs:
            self.told.append(Paragraph(self._depth, tuple(self._runs), self._label, self._name))
            self._runs = []
            self._label = self._name = ""

    def _next_label(self, depth: int) -> str:
        del self._labels[depth:]
        above = self._labels[-1]
        if depth > _DEEPEST_LABEL or len(self._labels) < depth:
            return _NO_LABEL
        count = self._lines_of[above] = self._lines_of.get(above, 0) + 1
        label = above + (str(count) if depth % 2 == 0 else _letters(count) if depth == 1 else _letters(count).lower())
        self._labels.append(label)
        return label

    def _with_number(self, node_id: int, *, always: bool = True, glyphs: bool = True) -> str:
        node = self._study.nodes[node_id]
        assert node.parent is not None
        board = self._positions.board(node.parent)
        san = "(pass)" if node.move == chess.Move.null() else figurine(self._positions.san(node_id))
        move = san + nag_text(node.nags) if glyphs else san
        if board.turn == chess.WHITE:
            return f"{board.fullmove_number}. {move}"
        return f"{board.fullmove_number}… {move}" if always else move


def _all_told(study: Study) -> Study:
    """A copy in which no side-line is hidden."""
    copy = Study(study.headers)
    copy.root, copy.lines = study.root, dict(study.lines)
    copy.nodes = {
        key: replace(node, telling=AFTER) if node.telling.place is Place.HIDDEN else node
        for key, node in study.nodes.items()
    }
    return copy


def _letters(count: int) -> str:
    """A, B, … Z, AA, AB, …"""
    text = ""
    while count:
        count, rest = divmod(count - 1, 26)
        text = chr(ord("A") + rest) + text
    return text
