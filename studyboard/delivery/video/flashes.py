"""Flashes: whether a video could hurt somebody whose brain answers to flickering light."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

CELLS: Final = (54, 96)
"""Rows and columns of the grid in which a picture is looked at; a tall picture has them the other way round."""

ALLOWED: Final = 3
"""Flashes in any one second that are allowed: WCAG 2.2, success criterion 2.3.1."""

_CHANGE: Final = 0.1
_DARK: Final = 0.8
_RED_CHANGE: Final = 20.0
_AREA: Final = 0.25
_FIELD: Final = 1 / 3

Grid = NDArray[np.float32]


@dataclass(frozen=True, slots=True)
class Flashing:
    """The first place at which there are too many flashes: when (s), and whether they are saturated red."""

    at: float
    red: bool


class FlashWatch:
    """Looks at the pictures of a video, in order, for general and red flashes as WCAG 2.2 defines them.

    A flash is a pair of opposing changes of relative luminance by a tenth of its range or more where the darker picture
    is below 0.80; a red flash is one that involves a saturated red. More than three within a second are too many
    where they cover a quarter of any ten degrees of the field of vision at once: 341 × 256 px of a picture of
    1024 × 768, a third of its width and height. Here every part of that size is looked at.

    State: per cell of the grid, where its light last turned, and when it turned the last times.
    """

    def __init__(self) -> None:
        self._light: _Turns | None = None
        self._red: _Turns | None = None

    def look(self, seconds: float, picture: NDArray[np.uint8]) -> Flashing | None:
        """Take in the picture that is shown from this second on.

        picture: rows × columns × (blue, green, red, …), already reduced to about CELLS
        """
        # sRGB to linear light: WCAG 2.2, definition of relative luminance.
        linear = _LINEAR[picture[..., 2::-1]]
        light = (linear @ np.array([0.2126, 0.7152, 0.0722], np.float32)).astype(np.float32)
        red, green, blue = (linear[..., channel] for channel in range(3))
        # Saturated red: R / (R + G + B) of at least 0.8; the change of (R - G - B) × 320 (from memory).
        total = red + green + blue
        saturated = (red >= 0.8 * total) & (total > 0)
        redness = np.where(saturated, np.maximum(0.0, (red - green - blue) * 320), 0.0).astype(np.float32)
        if self._light is None or self._red is None:
            self._light = _Turns(light, _CHANGE, _DARK)
            self._red = _Turns(redness, _RED_CHANGE, None)
            return None
        if self._light.turn(seconds, light):
            return Flashing(seconds, red=False)
        if self._red.turn(seconds, redness):
            return Flashing(seconds, red=True)
        return None


class _Turns:
    """Per cell: the last extreme, the way it was going, and the seconds of its last turns, the latest first."""

    def __init__(self, values: Grid, change: float, dark: float | None) -> None:
        self._change, self._dark = change, dark
        self._low, self._high = values.copy(), values.copy()
        self._way = np.zeros(values.shape, np.int8)
        # Four flashes are eight turns: from the first to the eighth within a second is one flash too many.
        self._times = np.full((2 * (ALLOWED + 1), *values.shape), -1e9, np.float64)

    def turn(self, seconds: float, values: Grid) -> bool:
        """Take in new values; True where too much of some part of the picture has flashed too often."""
        self._low = np.minimum(self._low, values)
        self._high = np.maximum(self._high, values)
        up = (values - self._low >= self._change) & (self._way != 1)
        down = (self._high - values >= self._change) & (self._way != -1)
        if self._dark is not None:
            up &= self._low < self._dark
            down &= values < self._dark
        turned = up | down
        if not turned.any():
            return False
        self._way = np.where(up, np.int8(1), np.where(down, np.int8(-1), self._way))
        self._low = np.where(turned, values, self._low)
        self._high = np.where(turned, values, self._high)
        self._times[:, turned] = np.roll(self._times[:, turned], 1, axis=0)
        self._times[0][turned] = seconds
        often = turned & (self._times[0] - self._times[-1] <= 1.0)
        return bool(often.any()) and _covers(often)


def _covers(often: NDArray[np.bool_]) -> bool:
    """Whether a quarter of any part of the size of the field is marked."""
    rows, columns = often.shape
    high, wide = max(1, round(rows * _FIELD)), max(1, round(columns * _FIELD))
    sums = np.zeros((rows + 1, columns + 1), np.int64)
    sums[1:, 1:] = often.cumsum(0).cumsum(1)
    inside = sums[high:, wide:] - sums[:-high, wide:] - sums[high:, :-wide] + sums[:-high, :-wide]
    return bool(inside.max() >= _AREA * high * wide)


def _linear_table() -> Grid:
    value = np.arange(256) / 255
    return np.where(value <= 0.04045, value / 12.92, ((value + 0.055) / 1.055) ** 2.4).astype(np.float32)


_LINEAR: Final = _linear_table()


def first_flashing(pictures: Iterable[tuple[float, NDArray[np.uint8]]]) -> Flashing | None:
    """The first place at which pictures, with their seconds, flash too often; None where nothing does."""
    watch = FlashWatch()
    for seconds, picture in pictures:
        found = watch.look(seconds, picture)
        if found is not None:
            return found
    return None
