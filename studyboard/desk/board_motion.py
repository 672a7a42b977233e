"""Pieces on their way from one position to the next."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import chess
from PySide6.QtCore import QEasingCurve, QObject, QPointF, QVariantAnimation, Signal

from studyboard.board.moves import Rearrangement
from studyboard.desk.board_geometry import BoardPlace
from studyboard.picture import motion

#: How long a move slides, and a return or any step that is not one move takes (ms).
SLIDE, RETURN = round(1000 * motion.SLIDE), round(1000 * motion.RETURN)
#: How long a piece that was put where it may not go takes to glide back (ms).
GLIDE_BACK = 160


@dataclass(frozen=True, slots=True)
class Figure:
    """A piece that is not painted at rest: where its square's corner is now (px), and how opaque it is."""

    piece: chess.Piece
    corner: QPointF
    opacity: float = 1.0


class BoardMotion(QObject):
    """The motion that is going on, if any.

    State: what changes, how far it has come (0 to 1), and whether it is a return. Finishing it jumps to the end.

    moved: paint again
    """

    moved = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._change = Rearrangement((), (), ())
        self._before = chess.BaseBoard.empty()
        self._after = chess.BaseBoard.empty()
        self._glide: tuple[chess.Piece, chess.Square, QPointF] | None = None
        self._returning = False
        self._clock = QVariantAnimation(self)
        self._clock.setStartValue(0.0)
        self._clock.setEndValue(1.0)
        self._clock.setEasingCurve(QEasingCurve.Type.InOutCubic)
        self._clock.valueChanged.connect(self._tick)
        self._clock.finished.connect(self._end)

    @property
    def running(self) -> bool:
        """True while something is on its way."""
        return self._clock.state() != QVariantAnimation.State.Stopped

    @property
    def returning(self) -> bool:
        """True while the board steps back from a side-line, or anywhere that is not one move away."""
        return self.running and self._returning

    @property
    def progress(self) -> float:
        """How far it has come, 0 to 1; 1 at rest."""
        return float(self._clock.currentValue()) if self.running else 1.0

    @property
    def clock(self) -> QVariantAnimation:
        """The clock that drives the motion."""
        return self._clock

    def begin(
        self, change: Rearrangement, before: chess.BaseBoard, after: chess.BaseBoard, *, returning: bool = False
    ) -> None:
        """Set the pieces on their way; whatever was going on is finished first."""
        self.finish()
        if not change and not returning:
            return
        self._change = motion.followable(change)
        self._before, self._after = before, after
        self._returning = returning
        self._run(RETURN if returning else SLIDE)

    def glide_back(self, piece: chess.Piece, home: chess.Square, corner: QPointF) -> None:
        """Let a piece that was put down at *corner* (px) glide back to its square."""
        self.finish()
        self._glide = (piece, home, corner)
        self._run(GLIDE_BACK)

    def finish(self) -> None:
        """Jump to the end of what is going on."""
        if self.running:
            self._clock.stop()
        self._end()

    @property
    def hidden(self) -> frozenset[chess.Square]:
        """Squares whose piece is not at rest yet."""
        if not self.running:
            return frozenset()
        if self._glide is not None:
            return frozenset((self._glide[1],))
        return motion.arriving(self._change)

    def figures(self, place: BoardPlace) -> Iterator[Figure]:
        """The pieces that are on their way, those below first."""
        if not self.running:
            return
        progress = self.progress
        if self._glide is not None:
            piece, home, corner = self._glide
            yield Figure(piece, _between(corner, place.corner(home), progress))
            return
        for moving in motion.moving_pieces(self._change, self._before, self._after, progress, flipped=place.flipped):
            yield Figure(moving.piece, place.origin + QPointF(moving.x, moving.y) * place.side, moving.opacity)

    def _run(self, milliseconds: int) -> None:
        self._clock.setDuration(milliseconds)
        self._clock.start()

    def _tick(self) -> None:
        self.moved.emit()

    def _end(self) -> None:
        self._change = Rearrangement((), (), ())
        self._glide = None
        self._returning = False
        self.moved.emit()


def _between(start: QPointF, end: QPointF, progress: float) -> QPointF:
    return start + (end - start) * progress
