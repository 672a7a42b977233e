"""The moves that are said in a line while it is being typed."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass

import chess

from studyboard.model.script import word_spans
from studyboard.notation.narration.gaps import without_gaps
from studyboard.notation.narration.lexicon import lexicon
from studyboard.notation.narration.prepared import prepared
from studyboard.notation.narration.readings import How
from studyboard.notation.narration.search import Talk
from studyboard.notation.narration.understood import heard_in_order


@dataclass(frozen=True, slots=True)
class MoveInLine:
    """A move that a line says.

    first, last: its words, as indices into the words of the line (studyboard.model.script.words); both included
    after: the moves that lead to it from the position in which the line begins
    move: the move itself
    side_line: True where it is told beside the moves that are known, or beside what the line has told before
    """

    first: int
    last: int
    after: tuple[chess.Move, ...]
    move: chess.Move
    side_line: bool


def moves_in_line(
    board: chess.Board, text: str, *, known: Sequence[chess.Move] = (), language: str = "en"
) -> tuple[MoveInLine, ...]:
    """The moves that are said in *text*, in order; quick enough for every key that is pressed in one line.

    board: the position in which the line begins, before its first move
    known: the moves that follow there on the tree, by first children; a line that says them means them

    A move that is not on the tree yet can then be offered as a side-line. Raises NoSuchLanguageError.
    """
    said = prepared(text, lexicon(language))
    talk = Talk(said, board.copy(stack=False), known or None, beyond=True)
    spans = word_spans(text)
    starts, ends = [start for start, _ in spans], [end for _, end in spans]
    found: list[MoveInLine] = []
    for heard in heard_in_order(without_gaps(talk, said, talk.best_reading())):
        if heard.how is How.NAMED or heard.place.move is None:
            continue
        first = said.tokens[heard.phrase.start].start
        last = said.tokens[heard.phrase.end - 1].end
        way: list[chess.Move] = []
        at = heard.place.parent
        while at is not None and at.move is not None:
            way.append(at.move)
            at = at.parent
        way.reverse()
        words = bisect_right(ends, first), bisect_left(starts, last) - 1
        found.append(MoveInLine(*words, tuple(way), heard.place.move, heard.depth > 0))
    return tuple(found)
