"""Cutting a talk into beats: one run of moves of one line each, at the ends of sentences where that is possible."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from itertools import pairwise

from studyboard.notation.narration.narration import SpokenMove, ToldBeat
from studyboard.notation.narration.tokens import Break, Token
from studyboard.notation.narration.transcripts import Paragraph, Transcript


def told_beats(talk: Transcript, tokens: Sequence[Token], told: Sequence[SpokenMove]) -> tuple[ToldBeat, ...]:
    """The beats in order; together they hold every word of the talk.

    A paragraph is one beat, or several where it changes between lines: the cut is before the sentence in which the
    move of the other line is said, else before its clause, else before the move itself.
    """
    found: list[ToldBeat] = []
    starts = [token.start for token in tokens]
    number = 0
    for paragraph in talk.paragraphs:
        inside: list[SpokenMove] = []
        while number < len(told) and told[number].start < paragraph.end:
            inside.append(told[number])
            number += 1
        cuts = [paragraph.start, *_cuts(inside, paragraph, tokens, starts), paragraph.end]
        moves = iter([*inside])
        waiting = next(moves, None)
        for place, (start, end) in enumerate(pairwise(cuts)):
            played: list[int] = []
            while waiting is not None and (waiting.start < end or end == paragraph.end):
                played.append(waiting.number)
                waiting = next(moves, None)
            text = talk.text[start:end]
            begin = start + len(text) - len(text.lstrip())
            stop = end - (len(text) - len(text.rstrip()))
            at = paragraph.at if place == 0 else _time(paragraph, begin)
            until = paragraph.until if end == paragraph.end else _time(paragraph, end)
            found.append(ToldBeat(at, until, begin, stop, talk.text[begin:stop], tuple(played)))
    return tuple(found)


def _time(paragraph: Paragraph, place: int) -> float | None:
    """When a place inside a paragraph is reached, if it is spoken evenly (s)."""
    if paragraph.at is None or paragraph.until is None:
        return None
    share = (place - paragraph.start) / max(1, paragraph.end - paragraph.start)
    return paragraph.at + share * (paragraph.until - paragraph.at)


def _cuts(
    inside: Sequence[SpokenMove], paragraph: Paragraph, tokens: Sequence[Token], starts: Sequence[int]
) -> list[int]:
    cuts: list[int] = []
    for before, move in pairwise(inside):
        if move.after == before.number and not move.branches and move.depth == before.depth:
            continue
        cut = _cut(before, move, tokens, starts)
        if cut > (cuts[-1] if cuts else paragraph.start):
            cuts.append(cut)
    return cuts


def _cut(before: SpokenMove, move: SpokenMove, tokens: Sequence[Token], starts: Sequence[int]) -> int:
    first, last = bisect_left(starts, before.end), bisect_left(starts, move.start)
    for least in (Break.SENTENCE, Break.CLAUSE):
        for at in range(last, first - 1, -1):
            if tokens[at].broken >= least:
                return tokens[at].start
    return move.start
