"""Pieces on their way: where each of them is at one moment of a step, for every picture that moves."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum
from itertools import pairwise
from typing import Final

import chess

from studyboard.board.moves import Rearrangement, rearrangement_between, rearrangement_of
from studyboard.model.study import Study
from studyboard.picture.geometry import corner

SLIDE: Final = 0.2
"""How long a move slides (s)."""

RETURN: Final = 0.42
"""How long a return, or any step that is not one move, takes (s)."""

_FOLLOWABLE: Final = 10

_CORNERS: Final = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0), (0.0, 0.0))


@dataclass(frozen=True, slots=True)
class MovingPiece:
    """A piece that is not at rest: the top left corner of its square now (board units), and how opaque it is."""

    piece: chess.Piece
    x: float
    y: float
    opacity: float = 1.0


class Way(Enum):
    """How another position comes on the board: by one move, by taking one back, or by neither."""

    ON = "on"
    BACK = "back"
    ELSEWHERE = "elsewhere"


@dataclass(frozen=True, slots=True)
class Step:
    """What the board does when another position comes on it: which way, and what happens to the pieces."""

    way: Way
    change: Rearrangement


def step_between(study: Study, was: int, node: int, before: chess.Board, after: chess.Board) -> Step:
    """How the pieces get from the position of one node to that of another."""
    here, there = study.nodes[node], study.nodes.get(was)
    if here.parent == was and here.move is not None:
        return Step(Way.ON, rearrangement_of(before, here.move))
    if there is not None and there.parent == here.id and there.move is not None:
        return Step(Way.BACK, rearrangement_of(after, there.move).reversed())
    return Step(Way.ELSEWHERE, rearrangement_between(before, after))


def unwound(progress: float) -> tuple[tuple[float, float], ...]:
    """A line around a square of side 1, of which less and less is left, as the board steps back.

    From the top left corner with the clock; empty when the motion has come to its end (1).
    """
    points = [_CORNERS[0]]
    left = 4.0 * (1.0 - progress)
    for (x, y), (to_x, to_y) in pairwise(_CORNERS):
        part = min(1.0, left)
        if part <= 0:
            break
        points.append((x + (to_x - x) * part, y + (to_y - y) * part))
        left -= 1.0
    return tuple(points) if len(points) > 1 else ()


def followable(change: Rearrangement) -> Rearrangement:
    """The same with pieces that fade instead of sliding where more slide at once than the eye can follow."""
    if len(change.slides) <= _FOLLOWABLE:
        return change
    gone = tuple(slide.origin for slide in change.slides) + change.gone
    come = tuple(slide.destination for slide in change.slides) + change.come
    return Rearrangement((), gone, come)


def eased(share: float) -> float:
    """How far a motion has come after this share of its time: slow, fast, slow (a cubic curve)."""
    share = max(0.0, min(1.0, share))
    return 4 * share**3 if share < 0.5 else 1 - (2 - 2 * share) ** 3 / 2


def arriving(change: Rearrangement) -> frozenset[chess.Square]:
    """Squares whose piece is not at rest until the motion ends."""
    return frozenset((*(slide.destination for slide in change.slides), *change.come))


def moving_pieces(
    change: Rearrangement, before: chess.BaseBoard, after: chess.BaseBoard, progress: float, *, flipped: bool = False
) -> Iterator[MovingPiece]:
    """The pieces that are on their way when the motion has come this far (0 to 1), those below first."""
    for square in change.gone:
        piece = before.piece_at(square)
        if piece is not None:
            yield MovingPiece(piece, *corner(square, flipped=flipped), max(0.0, min(1.0, 2.0 - 2.0 * progress)))
    for square in change.come:
        piece = after.piece_at(square)
        if piece is not None:
            yield MovingPiece(piece, *corner(square, flipped=flipped), progress)
    for slide in change.slides:
        x, y = corner(slide.origin, flipped=flipped)
        to_x, to_y = corner(slide.destination, flipped=flipped)
        yield MovingPiece(slide.piece, x + (to_x - x) * progress, y + (to_y - y) * progress)
