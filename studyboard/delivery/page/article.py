"""The talk as an article: parts between think pauses, the game and its side-lines, paragraphs, notes, diagrams."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import groupby

import chess

from studyboard.delivery.page.lines import Lines
from studyboard.delivery.page.shots import Shot, ShotKind
from studyboard.delivery.page.telling import MoveTag, Token, Words, numbered, shown, tokens
from studyboard.delivery.title import result
from studyboard.delivery.typography import ends_sentence, typeset
from studyboard.model.notes import plain_text
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.picture.describe import describe_board, describe_marks
from studyboard.timing.timeline import Stretch, Timeline
from studyboard.translation import as_written


@dataclass(frozen=True, slots=True)
class Stop:
    """One beat as it is read. *number* is that of the beat."""

    number: int
    tokens: tuple[Token, ...]


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Beats that make up whole sentences; a note is for print and for this page, and never said."""

    stops: tuple[Stop, ...] = ()
    note: str = ""


@dataclass(frozen=True, slots=True)
class Diagram:
    """A position where the talk stops.

    caption: what it shows, moves with figurines
    words: the whole position, for those who do not see it
    task: what the reader is asked, else empty
    """

    node: int
    caption: str
    words: str
    task: str


@dataclass(slots=True)
class Block:
    """A run of the talk in one line.

    depth: 0 in the game, 1 in a side-line of it, and so on
    label: what the side-line that begins here is called (A, A1, A1a, …), else empty
    title: the author's name for it, else its first move
    """

    depth: int
    label: str = ""
    title: str = ""
    content: list[Paragraph | Diagram] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class Part:
    """What is told up to a think pause; from the second part on the reader asks for it.

    question: the task before it, empty for the first part
    """

    number: int
    question: str
    blocks: tuple[Block, ...]


def article(
    study: Study, positions: Positions, timeline: Timeline, steps: Sequence[Shot], lines: Lines
) -> tuple[Part, ...]:
    """The parts of the talk in order. O(length of the talk).

    Side-lines that the talk leaves out are left out here too; the sheet has them.
    """
    writer = _Writer(study, positions, lines)
    shots_of = {
        number: tuple((place, shot) for place, shot in group)
        for number, group in groupby(enumerate(steps), key=lambda pair: pair[1].stretch)
    }
    for number, stretch in enumerate(timeline.stretches):
        writer.stop(number, stretch, shots_of.get(number, ()))
    return writer.finished()


class _Writer:
    """State: the parts that are written, the block and the paragraph that are being written, diagrams that wait."""

    def __init__(self, study: Study, positions: Positions, lines: Lines) -> None:
        self._study = study
        self._positions = positions
        self._lines = lines
        self._parts: list[Part] = []
        self._blocks: list[Block] = []
        self._line: int | None = None
        self._begun: set[int] = {study.root}
        self._stops: list[Stop] = []
        self._waiting: list[Diagram] = []
        self._drawn: set[int] = set()
        self._question = ""
        self._next_question = ""
        self._at_start = True
        *_, self._last = study.main_line()

    def stop(self, number: int, stretch: Stretch, steps: Sequence[tuple[int, Shot]]) -> None:
        """Write one beat."""
        study = self._study
        if self._next_question:
            self._close_part()
        self._go_to(self._lines.line_of(stretch.key) if isinstance(stretch.key, int) else study.root)
        if number == 0 and self._positions.board(study.root).fen() != chess.STARTING_FEN:
            self._blocks[-1].content.append(self._diagram(study.root, asked=False))
        moved = [shot.node for _, shot in steps if shot.kind is ShotKind.MOVE]
        if stretch.key == study.root:
            moved.insert(0, study.root)
        elif isinstance(stretch.key, int) and self._at_start:
            # The talk goes by the start position without a word; what is written there comes before the first move.
            self._note(study.nodes[study.root].note_before)
            self._note(study.nodes[study.root].note)
        self._at_start = self._at_start and not isinstance(stretch.key, int)
        for node in moved:
            self._note(study.nodes[node].note_before)
        follows = bool(self._stops) and isinstance(self._stops[-1].tokens[-1], MoveTag)
        told = tokens(self._positions, stretch, steps, follows=follows)
        if told:
            self._stops.append(Stop(number, told))
        self._waiting += [self._diagram(node, asked=asked) for node, asked in self._drawn_at(stretch, moved)]
        notes = [study.nodes[node].note for node in moved]
        in_game = self._blocks[-1].depth == 0
        if stretch.think or not isinstance(stretch.key, int) or (_ends(told) and (in_game or self._waiting)):
            self._close_paragraph()
        for note in notes:
            self._note(note)
        if any(shot.kind is ShotKind.THINK for _, shot in steps):
            self._next_question = self._task(stretch.node)

    def finished(self) -> tuple[Part, ...]:
        """The parts, when every beat is written."""
        self._close_part()
        return tuple(self._parts)

    def _go_to(self, line: int) -> None:
        """Let what follows stand in this line."""
        if line == self._line and self._blocks:
            return
        self._close_paragraph()
        self._line = line
        depth = self._lines.depth(line)
        if line in self._begun:
            self._blocks.append(Block(depth))
            return
        self._begun.add(line)
        title = shown(self._study.nodes[line].name) or numbered(self._positions, line)
        self._blocks.append(Block(depth, self._lines.label(line), title))

    def _close_paragraph(self) -> None:
        if self._stops:
            self._blocks[-1].content.append(Paragraph(tuple(self._stops)))
            self._stops = []
        if self._waiting:
            self._blocks[-1].content += self._waiting
            self._waiting = []

    def _close_part(self) -> None:
        self._close_paragraph()
        blocks = tuple(block for block in self._blocks if block.content)
        self._parts.append(Part(len(self._parts), self._question, blocks))
        self._question, self._next_question = self._next_question, ""
        self._blocks = []
        self._line = None

    def _note(self, text: str) -> None:
        plain = shown(plain_text(text))
        if plain:
            self._close_paragraph()
            self._blocks[-1].content.append(Paragraph(note=typeset(plain, self._study.language)))

    def _drawn_at(self, stretch: Stretch, moved: Sequence[int]) -> Iterator[tuple[int, bool]]:
        """The nodes of which there is a diagram here, each with whether the reader is asked for the next move."""
        for node in dict.fromkeys((*moved, stretch.node)):
            asked = stretch.think > 0 and node == stretch.node
            drawn = asked or (node in moved and bool(self._study.nodes[node].marks or node == self._last))
            if drawn and node not in self._drawn:
                yield node, asked

    def _diagram(self, node: int, *, asked: bool) -> Diagram:
        self._drawn.add(node)
        marks = self._study.nodes[node].marks
        with as_written():
            said = " ".join(
                part for part in (describe_board(self._positions.board(node)), describe_marks(marks)) if part
            )
        return Diagram(node, self._caption(node), said, self._task(node) if asked else "")

    def _caption(self, node: int) -> str:
        if node == self._study.root:
            return "The start position"
        if node != self._last:
            return f"After {numbered(self._positions, node)}"
        ended = result(self._study.headers)
        return f"The end, after {numbered(self._positions, node)}" + (f" · {ended}" if ended else "")

    def _task(self, node: int) -> str:
        return f"{'White' if self._positions.board(node).turn else 'Black'} to move: find the move."


def _ends(told: Sequence[Token]) -> bool:
    """Whether what was said ends a sentence."""
    last = told[-1] if told else None
    return isinstance(last, Words) and ends_sentence(last.text)
