"""What lies where in the stage's picture: the board, the band of captions, and the margins that stay free."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from PySide6.QtCore import QRect, QRectF, QSize, Qt
from PySide6.QtGui import QColor

from studyboard.translation import tr, tr_later

#: Parts of the picture that every screen shows: EBU R 95, 16:9 production (from memory).
ACTION_SAFE, GRAPHICS_SAFE = 0.93, 0.90
#: Height of the band of captions, as a share of the picture's shorter side.
_BAND = 0.17


class StageShape(StrEnum):
    """The shape of the picture that is captured."""

    WIDE = "16:9"
    TALL = "9:16"
    SQUARE = "1:1"
    FREE = "free"


class StageGround(StrEnum):
    """What is behind the board: the paper of the theme, or one even colour for keying or cutting out."""

    PAPER = "paper"
    GREEN = "green"
    BLUE = "blue"
    BLACK = "black"
    WHITE = "white"


RATIOS = {StageShape.WIDE: (16, 9), StageShape.TALL: (9, 16), StageShape.SQUARE: (1, 1)}
SIZES = {
    StageShape.WIDE: QSize(1280, 720),
    StageShape.TALL: QSize(540, 960),
    StageShape.SQUARE: QSize(720, 720),
    StageShape.FREE: QSize(720, 720),
}
SHAPE_NAMES = {
    StageShape.WIDE: tr_later("Wide (16:9)"),
    StageShape.TALL: tr_later("Tall (9:16)"),
    StageShape.SQUARE: tr_later("Square (1:1)"),
    StageShape.FREE: tr_later("Free"),
}
GROUND_NAMES = {
    StageGround.PAPER: tr_later("Paper"),
    StageGround.GREEN: tr_later("Green, for keying"),
    StageGround.BLUE: tr_later("Blue, for keying"),
    StageGround.BLACK: tr_later("Black"),
    StageGround.WHITE: tr_later("White"),
}
#: Even colours far from those of boards, pieces and marks.
_COLORS = {
    StageGround.GREEN: "#00B140",
    StageGround.BLUE: "#0047BB",
    StageGround.BLACK: "#000000",
    StageGround.WHITE: "#FFFFFF",
}


def ground_color(ground: StageGround, paper: QColor) -> QColor:
    """The colour of the ground; *paper* is that of the theme."""
    return paper if ground is StageGround.PAPER else QColor(_COLORS[ground])


def choice_name(choice: StageShape | StageGround) -> str:
    """What a shape or a ground is called."""
    return tr(SHAPE_NAMES[choice]) if isinstance(choice, StageShape) else tr(GROUND_NAMES[choice])


@dataclass(frozen=True, slots=True)
class StagePlan:
    """Where things are in the window (px).

    picture: what is captured
    board: the square of the board
    band: where captions stand; empty without them
    """

    picture: QRect
    board: QRect
    band: QRect


def plan_stage(window: QSize, shape: StageShape, *, captions: bool) -> StagePlan:
    """The largest board inside the graphics-safe part of the picture, with the band of captions below it."""
    picture = _picture(window, shape)
    safe = inner(picture, GRAPHICS_SAFE).toRect()
    band = round(min(picture.width(), picture.height()) * _BAND) if captions else 0
    gap = band // 8
    side = max(1, min(safe.width(), safe.height() - band - gap))
    left = picture.x() + (picture.width() - side) // 2
    top = picture.y() + (picture.height() - side - band - gap) // 2
    board = QRect(left, top, side, side)
    below = QRect(safe.x(), board.bottom() + 1 + gap, safe.width(), band) if captions else QRect()
    return StagePlan(picture, board, below)


def inner(picture: QRect, share: float) -> QRectF:
    """The middle of the picture, that share of its width and height."""
    width, height = picture.width() * share, picture.height() * share
    return QRectF(
        picture.x() + (picture.width() - width) / 2, picture.y() + (picture.height() - height) / 2, width, height
    )


def _picture(window: QSize, shape: StageShape) -> QRect:
    if shape is StageShape.FREE:
        return QRect(0, 0, window.width(), window.height())
    wide, high = RATIOS[shape]
    size = QSize(wide, high).scaled(window, Qt.AspectRatioMode.KeepAspectRatio)
    return QRect(
        (window.width() - size.width()) // 2, (window.height() - size.height()) // 2, size.width(), size.height()
    )
