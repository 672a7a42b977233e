"""Moves that a talk leaves out: the search passes the turn there, and this puts a legal move in its place."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import chess

from studyboard.notation.narration.forms import Phrase
from studyboard.notation.narration.place import Place
from studyboard.notation.narration.prepared import Prepared
from studyboard.notation.narration.readings import Heard, Line, Reading
from studyboard.notation.narration.search import Talk

_LOOKED_AHEAD = 80
#: What is rather left out than other moves, if nothing else decides.
_LIKELY = {chess.KNIGHT: 0.2, chess.PAWN: 0.15, chess.BISHOP: 0.1}


class _Filling:
    """One reading in which passed turns are being replaced.

    State: for each place of the reading the place that stands for it, None where there is none.
    """

    def __init__(self, talk: Talk, said: Prepared, heard: Sequence[Heard]) -> None:
        self._talk = talk
        self._said = said
        self._heard = heard
        self._stands_for: dict[int, Place | None] = {talk.start.number: talk.start}

    def place(self, place: Place) -> Place | None:
        """The place that stands for this one; None where no legal moves lead there."""
        missing: list[Place] = []
        at = place
        while at.number not in self._stands_for:
            missing.append(at)
            assert at.parent is not None
            at = at.parent
        for step in reversed(missing):
            assert step.parent is not None
            assert step.move is not None
            parent = self._stands_for[step.parent.number]
            move: chess.Move | None = step.move
            if parent is not None and not step.move:
                move = self._best(parent, step)
            elif parent is None or not parent.board.is_legal(step.move):
                move = None
            after = None if parent is None or move is None else self._talk.after(parent, move)
            self._stands_for[step.number] = after
        return self._stands_for[place.number]

    def last_place(self, place: Place) -> Place:
        """The place that stands for this one or for the nearest one before it."""
        found = self.place(place)
        while found is None:
            assert place.parent is not None
            place = place.parent
            found = self.place(place)
        return found

    def _best(self, parent: Place, gap: Place) -> chess.Move | None:
        """The move after which most of what is told behind the gap can be played; of several, what was named there."""
        lines = self._told_behind(gap)
        named = self._named_before(gap)
        best: tuple[float, chess.Move] | None = None
        for move in parent.legal_moves():
            after = self._talk.after(parent, move)
            playable = sum(_playable(after.board, line) for line in lines)
            hint = 0.5 if any(phrase.form.to == move.to_square for phrase in named) else 0.0
            hint += _LIKELY.get(parent.board.piece_type_at(move.from_square) or 0, 0.0)
            if best is None or playable + hint > best[0]:
                best = playable + hint, move
        return None if best is None else best[1]

    def _told_behind(self, gap: Place) -> list[list[chess.Move]]:
        lines: list[list[chess.Move]] = []
        for heard in self._heard:
            line: list[chess.Move] = []
            at: Place | None = heard.place
            while at is not None and at is not gap:
                assert at.move is not None or at.parent is None
                line.append(at.move or chess.Move.null())
                at = at.parent
            if at is gap and line:
                lines.append(line[::-1])
            if len(lines) >= _LOOKED_AHEAD:
                break
        return lines

    def _named_before(self, gap: Place) -> list[Phrase]:
        """What could have been a move in the words just before those that showed the gap."""
        start = end = 0
        for heard in self._heard:
            if heard.place is gap:
                end = heard.phrase.start
                break
            start = heard.phrase.end
        return [phrase for here in self._said.phrases[start:end] for phrase in here if phrase.form.to is not None]


def _playable(board: chess.Board, line: Sequence[chess.Move]) -> int:
    """1 where the whole line can be played from here; passed turns may stand for anything."""
    board = board.copy(stack=False)
    for move in line:
        if move and not board.is_legal(move):
            return 0
        board.push(move)
    return 1


def without_gaps(talk: Talk, said: Prepared, reading: Reading) -> Reading:
    """The same reading with a legal move wherever the turn was passed; what cannot be played then is left out."""
    heard: list[Heard] = []
    at = reading.heard
    while at is not None:
        heard.append(at)
        at = at.before
    heard.reverse()
    if all(h.place.move or h.place.parent is None for h in heard):
        return reading
    filling = _Filling(talk, said, heard)
    last: Heard | None = None
    for h in heard:
        place = filling.place(h.place)
        if place is not None:
            last = replace(h, place=place, before=last)
    lines = tuple(Line(filling.last_place(line.root), filling.last_place(line.tip)) for line in reading.lines)
    return replace(reading, lines=lines, heard=last)
