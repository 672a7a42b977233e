"""What assistive programs are told of the squares of a board, the rows of the lanes and the beats of the ruler."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Protocol

import chess
from PySide6.QtCore import QPoint, QPointF, QRect

from studyboard.desk.board_geometry import BoardPlace
from studyboard.desk.lanes_canvas import LaneCanvas, Spot
from studyboard.model.script import BeatKey
from studyboard.picture.describe import describe_square

ToPicture = Callable[[QPointF], QPointF]


class SquareParts:
    """The 64 squares, in the order in which one reads: from a8 to h8, then the ranks below it.

    board, place: what is shown now, and where
    cursor: where the keyboard is, None for nowhere
    """

    def __init__(
        self,
        board: Callable[[], chess.BaseBoard],
        place: Callable[[], BoardPlace],
        cursor: Callable[[], chess.Square | None],
    ) -> None:
        self._board, self._place, self._cursor = board, place, cursor

    def part_count(self) -> int:
        """See Parts."""
        return 64

    def part_name(self, index: int) -> str:
        """See Parts."""
        return describe_square(self._board(), _square(index))

    def part_rect(self, index: int) -> QRect:
        """See Parts."""
        return self._place().square_rect(_square(index)).toRect()

    def part_at(self, place: QPoint) -> int | None:
        """See Parts."""
        square = self._place().square_at(QPointF(place))
        return None if square is None else _square(square)

    def part_is_current(self, index: int) -> bool:
        """See Parts."""
        return self._cursor() == _square(index)


class RowParts:
    """The rows of the lanes that are not folded away, from the top, those of a level from left to right.

    State: their keys in that order, as long as the rows are laid out as they were.
    """

    def __init__(self, canvas: LaneCanvas, rect: Callable[[BeatKey], QRect], to_picture: ToPicture) -> None:
        self._canvas, self._rect, self._to_picture = canvas, rect, to_picture
        self._laid_out: object = None
        self._keys: list[BeatKey] = []
        self._index: dict[BeatKey, int] = {}

    def part_count(self) -> int:
        """See Parts."""
        return len(self._ordered())

    def part_name(self, index: int) -> str:
        """See Parts."""
        return self._canvas.row_in_words(self._ordered()[index])

    def part_rect(self, index: int) -> QRect:
        """See Parts."""
        return self._rect(self._ordered()[index])

    def part_at(self, place: QPoint) -> int | None:
        """See Parts."""
        at = self._to_picture(QPointF(place))
        target = self._canvas.target_at(at.x(), at.y())
        self._ordered()
        return self._index.get(target.key) if target is not None and target.spot is Spot.ROW else None

    def part_is_current(self, index: int) -> bool:
        """See Parts."""
        return self._ordered()[index] == self._canvas.current

    def _ordered(self) -> list[BeatKey]:
        layout = self._canvas.layout
        if layout is not self._laid_out:
            places: dict[BeatKey, tuple[int, int]] = {key: (row, lane) for key, (lane, row) in layout.cells.items()}
            places |= {part: (row, 0) for part, row in layout.parts.items()}
            self._keys = sorted(places, key=places.__getitem__)
            self._index = {key: index for index, key in enumerate(self._keys)}
            self._laid_out = layout
        return self._keys


class BeatWidget(Protocol):
    """What the beats need of the time ruler."""

    @property
    def current_beat(self) -> int | None: ...
    @property
    def beats(self) -> int: ...
    def beat_in_words(self, index: int) -> str: ...
    def block_rect(self, index: int) -> QRect | None: ...
    def beat_at(self, position: QPointF) -> int | None: ...


class BeatParts:
    """The beats of the talk in the order in which they are told."""

    def __init__(self, ruler: BeatWidget) -> None:
        self._ruler = ruler

    def part_count(self) -> int:
        """See Parts."""
        return self._ruler.beats

    def part_name(self, index: int) -> str:
        """See Parts."""
        return self._ruler.beat_in_words(index)

    def part_rect(self, index: int) -> QRect:
        """See Parts."""
        return self._ruler.block_rect(index) or QRect()

    def part_at(self, place: QPoint) -> int | None:
        """See Parts."""
        return self._ruler.beat_at(QPointF(place))

    def part_is_current(self, index: int) -> bool:
        """See Parts."""
        return self._ruler.current_beat == index


class MomentWidget(Protocol):
    """What the moments need of the wave of a take."""

    @property
    def moments(self) -> int: ...
    @property
    def current_moment(self) -> int | None: ...
    def moment_in_words(self, index: int) -> str: ...
    def moment_rect(self, index: int) -> QRect: ...


class MomentParts:
    """The moments of a take at which the board changes, in the order of time."""

    def __init__(self, wave: MomentWidget) -> None:
        self._wave = wave

    def part_count(self) -> int:
        """See Parts."""
        return self._wave.moments

    def part_name(self, index: int) -> str:
        """See Parts."""
        return self._wave.moment_in_words(index)

    def part_rect(self, index: int) -> QRect:
        """See Parts."""
        return self._wave.moment_rect(index)

    def part_at(self, place: QPoint) -> int | None:
        """See Parts."""
        return next((index for index in range(self._wave.moments) if self.part_rect(index).contains(place)), None)

    def part_is_current(self, index: int) -> bool:
        """See Parts."""
        return self._wave.current_moment == index


class SentenceParts:
    """Sentences that stand below each other in one widget.

    sentences, chosen: what they are now, and which one the keyboard is at
    rect: all of the widget, as long as it is not asked where in it a sentence stands
    """

    def __init__(
        self, sentences: Callable[[], Sequence[str]], chosen: Callable[[], int | None], rect: Callable[[], QRect]
    ) -> None:
        self._sentences, self._chosen, self._rect = sentences, chosen, rect

    def part_count(self) -> int:
        """See Parts."""
        return len(self._sentences())

    def part_name(self, index: int) -> str:
        """See Parts."""
        return self._sentences()[index]

    def part_rect(self, index: int) -> QRect:
        """See Parts."""
        return self._rect()

    def part_at(self, place: QPoint) -> int | None:
        """See Parts."""
        return None

    def part_is_current(self, index: int) -> bool:
        """See Parts."""
        return self._chosen() == index


def _square(index: int) -> chess.Square:
    """The square with this place in reading order, and the other way round."""
    return index ^ 0b111000
