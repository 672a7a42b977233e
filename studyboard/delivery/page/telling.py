"""What is said at one stop of the talk, with the moves at the words that play them."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, TypeAlias

import chess

from studyboard.delivery.nag_glyphs import nag_text
from studyboard.delivery.page.shots import Shot, ShotKind
from studyboard.delivery.printable import printable
from studyboard.delivery.typography import paragraphs, typeset
from studyboard.model.marks import MarkKind
from studyboard.model.positions import Positions
from studyboard.model.script import words
from studyboard.notation.labels import figurine
from studyboard.timing.timeline import Stretch


@dataclass(frozen=True, slots=True)
class MoveTag:
    """A move at the word that plays it; *shot* is the step of the talk that shows it."""

    shot: int
    text: str


@dataclass(frozen=True, slots=True)
class ReturnTag:
    """The board stepping back to a move; *text* is that move."""

    shot: int
    text: str


@dataclass(frozen=True, slots=True)
class Words:
    """Running text; with a kind where a mark of it appears at this word."""

    text: str
    mark: MarkKind | None = None


@dataclass(frozen=True, slots=True)
class NewParagraph:
    """A blank line in what is said."""


Token: TypeAlias = MoveTag | ReturnTag | Words | NewParagraph

#: Code points that are no characters; HTML forbids them: HTML Standard, 13.2.5, "noncharacter-in-input-stream".
_LAST_OF_PLANES: Final = "".join(
    chr(plane + last) for plane in range(0, 0x110000, 0x10000) for last in (0xFFFE, 0xFFFF)
)
_NO_CHARACTER: Final = re.compile(f"[\ufdd0-\ufdef{_LAST_OF_PLANES}]")


def shown(text: str) -> str:
    """Text of the author's, on one line, without what a page cannot hold."""
    return _NO_CHARACTER.sub("", printable(text))


def tokens(
    positions: Positions, stretch: Stretch, steps: Sequence[tuple[int, Shot]], *, follows: bool = False
) -> tuple[Token, ...]:
    """The line of one beat as it is read: its words, its moves before the words that play them, its returns.

    steps: the beat's shots with their numbers
    follows: a move stands right before it
    """
    texts, breaks = _set_words(stretch.spoken.text, positions.study.language)
    at_word = {cue.node: cue.word for cue in stretch.spoken.cues if cue.node is not None}
    tags: dict[int, list[Token]] = {}
    place = 0
    for number, shot in steps:
        if shot.kind is ShotKind.MOVE:
            place = min(len(texts), max(place, at_word.get(shot.node, 0)))
            tags.setdefault(place, []).append(MoveTag(number, numbered(positions, shot.node)))
        elif shot.kind is ShotKind.BACK:
            tags.setdefault(place, []).append(ReturnTag(number, numbered(positions, shot.node)))
    marked = _marked(positions, stretch)
    found: list[Token] = []
    for word in range(len(texts) + 1):
        if word in breaks and found:
            found.append(NewParagraph())
        for tag in tags.get(word, ()):
            after_move = isinstance(found[-1], MoveTag) if found else follows
            found.append(_shortened(positions, steps, tag) if after_move else tag)
        if word < len(texts):
            kind = marked.get(word)
            last = found[-1] if found else None
            if kind is None and isinstance(last, Words) and last.mark is None:
                found[-1] = Words(f"{last.text} {texts[word]}")
            else:
                found.append(Words(texts[word], kind))
    return tuple(found)


def move_text(positions: Positions, node: int) -> str:
    """The move with figurine and glyphs, without its number."""
    at = positions.study.nodes[node]
    san = "(pass)" if at.move == chess.Move.null() else figurine(positions.san(node))
    return san + nag_text(at.nags)


def numbered(positions: Positions, node: int) -> str:
    """The move with its number, such as “12… ♘xe5”; “the start” at the root."""
    at = positions.study.nodes[node]
    if at.parent is None:
        return "the start"
    board = positions.board(at.parent)
    return f"{board.fullmove_number}{'.' if board.turn else '…'} {move_text(positions, node)}"


def _shortened(positions: Positions, steps: Sequence[tuple[int, Shot]], tag: Token) -> Token:
    """Black's move right behind White's goes without its number, as in print."""
    if not isinstance(tag, MoveTag):
        return tag
    node = next(shot.node for number, shot in steps if number == tag.shot)
    return tag if positions.board(node).turn == chess.BLACK else MoveTag(tag.shot, move_text(positions, node))


def _set_words(text: str, language: str) -> tuple[list[str], set[int]]:
    """The words as they are set, and the numbers of those that begin a paragraph."""
    texts: list[str] = []
    breaks: set[int] = set()
    for block in paragraphs(text):
        plain = words(block)
        if texts and plain:
            breaks.add(len(texts))
        printed = words(typeset(" ".join(plain), language))
        # Every word keeps its number, for its cues.
        texts += [shown(word) for word in (printed if len(printed) == len(plain) else plain)]
    return texts, breaks


def _marked(positions: Positions, stretch: Stretch) -> dict[int, MarkKind]:
    if not isinstance(stretch.key, int):
        return {}
    marks = positions.study.nodes[stretch.key].marks
    cues = stretch.spoken.cues
    return {cue.word: marks[cue.mark].kind for cue in cues if cue.mark is not None and cue.mark < len(marks)}
