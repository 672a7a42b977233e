"""The talk as it is read: paragraphs of moves and text, side-lines, diagrams and exercises, in their order."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Final, TypeAlias

import chess

from studyboard.delivery.exercises import Exercise, exercises
from studyboard.delivery.nag_glyphs import nag_text
from studyboard.delivery.sheet_options import SheetText
from studyboard.delivery.side_line_labels import side_line_label
from studyboard.delivery.title import result
from studyboard.delivery.typography import ends_sentence, paragraphs, typeset
from studyboard.model.node import AFTER, Place
from studyboard.model.notes import plain_text
from studyboard.model.order import VisitKind, running_order
from studyboard.model.positions import Positions
from studyboard.model.script import Part, words
from studyboard.model.study import Study
from studyboard.notation.labels import figurine
from studyboard.translation import in_language, tr


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
    number: that of the exercise, 0 where it is none
    solved: whether a solution of it is printed
    """

    node: int
    depth: int
    caption: str
    task: str = ""
    number: int = 0
    solved: bool = False


@dataclass(frozen=True, slots=True)
class NewPage:
    """The story goes on where nobody sees it who is still at work on an exercise.

    after: the numbers of the exercises before it
    """

    after: tuple[int, ...]


Block: TypeAlias = Paragraph | Diagram | NewPage


@dataclass(frozen=True, slots=True)
class Solution:
    """What answers the exercise of this number, in the order in which it is told."""

    number: int
    told: tuple[Paragraph | Diagram, ...]


@dataclass(frozen=True, slots=True)
class Lesson:
    """The talk with its think pauses as exercises.

    told: the story without the solutions
    solutions: of the exercises that have one
    after: what is said when everything is solved
    """

    told: tuple[Block, ...]
    solutions: tuple[Solution, ...]
    after: tuple[Paragraph | Diagram, ...]


_DEEPEST_LABEL: Final = 4
_NO_LABEL: Final = "·"


def story(study: Study, positions: Positions, text: SheetText = SheetText.TALK) -> tuple[Paragraph | Diagram, ...]:
    """The study in the order in which it is told. O(size of the study).

    Side-lines that the talk leaves out are for print: they stand after the move that they replace. There is a
    diagram at every node with marks or a think pause, at a start position that is not the usual one, and where the
    main line ends. The thanks are said, not printed. What stands beside the author's own words is in the language of
    the script.
    """
    teller = _Teller(study, positions, text)
    with in_language(study.language):
        teller.tell()
    return tuple(block for block in teller.told if not isinstance(block, NewPage))


def lesson(study: Study, positions: Positions, text: SheetText = SheetText.TALK) -> Lesson:
    """The same with its think pauses as numbered exercises, whose solutions are told apart. O(size of the study).

    Nothing comes after an exercise on its page, and the note of its position, which may say the move, is told with
    the solution.
    """
    teller = _Teller(study, positions, text, asking=True)
    with in_language(study.language):
        teller.tell()
    solutions = tuple(Solution(number, tuple(told)) for number, told in teller.solutions.items() if told)
    solved = {solution.number for solution in solutions}
    blocks = (
        replace(block, solved=block.number in solved) if isinstance(block, Diagram) and block.number else block
        for block in teller.told
    )
    return Lesson(tuple(blocks), solutions, tuple(teller.after))


class _Teller:
    """State: what is told already and apart from it, the paragraph being written, and the letters of side-lines."""

    def __init__(self, study: Study, positions: Positions, text: SheetText, *, asking: bool = False) -> None:
        self.told: list[Block] = []
        self.solutions: dict[int, list[Paragraph | Diagram]] = {}
        self.after: list[Paragraph | Diagram] = []
        self._visits = running_order(_all_told(study))
        self._exercises = {one.node: one for one in exercises(study, self._visits)} if asking else {}
        self._answers = {node: one for one in self._exercises.values() for node in one.solution}
        self._asked: list[int] = []
        self._write: Callable[[Paragraph | Diagram], None] = self.told.append
        self._answering: Exercise | None = None
        self._depth_of = {visit.node: visit.depth for visit in self._visits if visit.node in self._exercises}
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
        visits = self._visits
        opening = [visit for visit in visits if visit.part is not None and visit.part.opens]
        closing = [visit for visit in visits if visit.part is not None and not visit.part.opens]
        for visit in opening:
            self._free_line(visit.part)
        self._root()
        for visit in visits:
            if visit.kind is VisitKind.TELL and visit.node != self._study.root:
                self._move(visit.node, visit.depth)
        self._open(0)
        # Where nothing but words comes after an exercise, they are read once it is solved.
        self._write = self.after.append if self._asked else self.told.append
        self._answering = None
        for visit in closing:
            self._free_line(visit.part)
        self._close()

    def _turn_to(self, node_id: int) -> None:
        """Go on in the solution that this node belongs to, or in the story."""
        exercise = self._answers.get(node_id)
        if exercise is not None:
            if exercise is not self._answering:
                self._close()
                self._answering = exercise
                self._write = self._solution(exercise).append
            return
        self._answer_by_the_move(node_id)
        if self._answering is not None or self._asked:
            self._close()
            self._answering = None
            self._write = self.told.append
        if self._asked:
            self.told.append(NewPage(tuple(self._asked)))
            self._asked.clear()

    def _answer_by_the_move(self, node_id: int) -> None:
        """Where the very next move has a think pause too, the move alone is the solution of the one before."""
        before = self._exercises.get(self._study.nodes[node_id].parent or self._study.root)
        if before is not None and not before.solution and node_id == self._study.nodes[before.node].children[0]:
            move = Run(RunKind.MOVE, self._with_number(node_id))
            self._solution(before).append(Paragraph(0, (move,)))

    def _solution(self, exercise: Exercise) -> list[Paragraph | Diagram]:
        return self.solutions.setdefault(exercise.number, [])

    def _note(self, node_id: int) -> None:
        """The note of a position; of an exercise, it begins the solution, because it may say it."""
        text = plain_text(self._study.nodes[node_id].note)
        exercise = self._exercises.get(node_id)
        if exercise is None or not text:
            self._texts(RunKind.NOTE, text)
            return
        self._close()
        write, depth = self._write, self._depth
        self._write = self._solution(exercise).append
        self._open(0)
        self._texts(RunKind.NOTE, text)
        self._open(depth)
        self._write = write

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
        self._note(root.id)
        self._close()
        if root.marks or root.think or not usual or not root.children:
            white = self._positions.board(root.id).turn == chess.WHITE
            self._diagram(
                root.id, tr("the start position, White to move") if white else tr("the start position, Black to move")
            )

    def _move(self, node_id: int, depth: int) -> None:
        node = self._study.nodes[node_id]
        self._turn_to(node_id)
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
        self._texts(RunKind.SPOKEN, spoken)
        if depth == 0 and self._runs[-1:] and ends_sentence(self._runs[-1].text) and spoken.strip():
            self._close()
        self._note(node_id)
        if depth == 0 and plain_text(node.note):
            self._close()
        if node.marks or node.think or node_id == self._last:
            self._diagram(node_id, self._caption(node_id))

    def _texts(self, kind: RunKind, text: str) -> None:
        """Add text; a blank line in it begins another paragraph of the same line."""
        for place, block in enumerate(paragraphs(text)):
            flowing = " ".join(words(block))
            if not flowing:
                continue
            if place:
                self._close()
            self._runs.append(Run(kind, typeset(flowing, self._study.language)))

    def _diagram(self, node_id: int, caption: str) -> None:
        self._close()
        node = self._study.nodes[node_id]
        board = self._positions.board(node_id)
        task = ""
        if node.think:
            task = tr("White to move: find the move.") if board.turn else tr("Black to move: find the move.")
        exercise = self._exercises.get(node_id)
        number = 0
        if exercise is not None:
            number = exercise.number
            self._asked.append(number)
        self._write(Diagram(node_id, self._depth - self._home(), caption, task, number))

    def _caption(self, node_id: int) -> str:
        move = self._with_number(node_id, glyphs=False)
        if node_id != self._last:
            label = self._labels[self._depth] if 0 < self._depth < len(self._labels) else ""
            return (
                tr("side-line {label}, after {move}", label=label, move=move)
                if label
                else tr("after {move}", move=move)
            )
        ended = result(self._study.headers)
        return tr("final position, after {move}", move=move) + (f" · {ended}" if ended else "")

    def _open(self, depth: int, label: str = "", name: str = "") -> None:
        self._close()
        self._depth, self._label, self._name = depth, label, name

    def _close(self) -> None:
        if self._runs:
            depth = max(0, self._depth - self._home())
            self._write(Paragraph(depth, tuple(self._runs), self._label, self._name))
            self._runs = []
            self._label = self._name = ""

    def _home(self) -> int:
        """The depth that counts as the main line where the text is written to: in a solution, that of its exercise."""
        return 0 if self._answering is None else self._depth_of[self._answering.node]

    def _next_label(self, depth: int) -> str:
        del self._labels[depth:]
        above = self._labels[-1]
        if depth > _DEEPEST_LABEL or len(self._labels) < depth:
            return _NO_LABEL
        count = self._lines_of[above] = self._lines_of.get(above, 0) + 1
        label = side_line_label(above, depth, count)
        self._labels.append(label)
        return label

    def _with_number(self, node_id: int, *, always: bool = True, glyphs: bool = True) -> str:
        node = self._study.nodes[node_id]
        assert node.parent is not None
        board = self._positions.board(node.parent)
        san = tr("(pass)") if node.move == chess.Move.null() else figurine(self._positions.san(node_id))
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
