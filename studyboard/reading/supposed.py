"""The positions that come of moves which a sentence supposes before a claim: “if the knight takes on e5, …”."""

from __future__ import annotations

from collections.abc import Sequence

import chess

from studyboard.board.tactics import turned
from studyboard.reading.claim import Claim
from studyboard.reading.imagined import before_moves
from studyboard.reading.moves_said import Said, legal_meanings, means
from studyboard.reading.scene import Scene

#: Words in the name of a move that no name of a place has.
_TO = frozenset({"to", "into", "onto"})


def supposed(claim: Claim) -> list[chess.Board] | None:
    """Every position to which the moves named before the claim in its sentence can lead; empty where none are.

    Moves that the line or the game has played suppose nothing. None where a move is named that cannot be played here.
    """
    moves = _unplayed(claim)
    if not moves:
        return []
    boards = [*claim.boards(), *before_moves(claim)]
    boards += [waiting for board in boards if (waiting := turned(board, not board.turn)) is not None]
    return next((found for board in boards if (found := _after(board, moves))), None)


def _unplayed(claim: Claim) -> list[Said]:
    scene = claim.scene
    start, _ = scene.sentence(claim.start)
    said = [one for one in scene.said if one.placed and start <= one.phrase.start and one.phrase.end <= claim.start]
    apart: list[Said] = []
    for one in said:
        if not _is_played(scene, one) and (not apart or apart[-1].phrase.end <= one.phrase.start):
            apart.append(one)
    return [one for one in apart if not _names_a_place(scene, one)]


def _is_played(scene: Scene, said: Said) -> bool:
    moves = ((step.before, step.move) for step in scene.steps)
    return any(before is not None and move and means(said.phrase.form, before, move) for before, move in moves)


def _names_a_place(scene: Scene, said: Said) -> bool:
    """“The knight on e5”, “the king has e5”: where something stands or could stand, and no move."""
    form = said.phrase.form
    to = any(token.text in _TO for token in scene.tokens[said.phrase.start : said.phrase.end])
    return form.bare or not (form.capture or form.castles or form.exact or to)


def _after(board: chess.Board, moves: Sequence[Said]) -> list[chess.Board]:
    """The positions after these moves, one after the other, from *board*; empty where one of them is not legal."""
    boards = [board]
    for said in moves:
        after = []
        for here in boards:
            for move in legal_meanings(said.phrase.form, here):
                after.append(here.copy(stack=False))
                after[-1].push(move)
        boards = after
    return boards
