"""Where the squares of a board lie in a widget."""

from __future__ import annotations

import math
from dataclasses import dataclass

import chess
from PySide6.QtCore import QPointF, QRectF, QSizeF

from studyboard.picture.geometry import corner, square_at
from studyboard.picture.primitives import Bounds


@dataclass(frozen=True, slots=True)
class BoardPlace:
    """A board in a widget.

    left, top: of the corner of the eight by eight squares (px)
    side: of one square (px), a whole number of device pixels
    flipped: seen from Black's side
    """

    left: float
    top: float
    side: float
    flipped: bool

    @property
    def origin(self) -> QPointF:
        """The corner of the eight by eight squares."""
        return QPointF(self.left, self.top)

    @property
    def rect(self) -> QRectF:
        """All the squares."""
        return QRectF(self.left, self.top, 8 * self.side, 8 * self.side)

    def corner(self, square: chess.Square) -> QPointF:
        """Top left corner of *square*."""
        x, y = corner(square, flipped=self.flipped)
        return QPointF(self.left + x * self.side, self.top + y * self.side)

    def square_rect(self, square: chess.Square) -> QRectF:
        """The square's own rectangle."""
        return QRectF(self.corner(square), QSizeF(self.side, self.side))

    def centre(self, square: chess.Square) -> QPointF:
        """Centre of *square*."""
        return self.square_rect(square).center()

    def square_at(self, position: QPointF) -> chess.Square | None:
        """The square under a point of the widget; None off the board."""
        return square_at(
            (position.x() - self.left) / self.side, (position.y() - self.top) / self.side, flipped=self.flipped
        )


def fit_board(size: QSizeF, ratio: float, bounds: Bounds, *, flipped: bool, rim: float) -> BoardPlace:
    """The largest board whose squares are whole device pixels, in the middle of *size*.

    ratio: device pixels per px
    bounds: what the picture of the board takes, in squares
    rim: free space kept around it (px)
    """
    room = min((size.width() - 2 * rim) / bounds.width, (size.height() - 2 * rim) / bounds.height)
    side = max(1, math.floor(room * ratio)) / ratio

    def start(whole: float, part: float, before: float) -> float:
        return round(((whole - part * side) / 2 - before * side) * ratio) / ratio

    left = start(size.width(), bounds.width, bounds.x)
    top = start(size.height(), bounds.height, bounds.y)
    return BoardPlace(left, top, side, flipped)
