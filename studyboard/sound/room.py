"""What is wrong with the sound of a room before anybody speaks in it: noise, hum of the mains, clicks."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from studyboard.sound.errors import require
from studyboard.sound.levels import CLIP_RUN, SILENCE
from studyboard.sound.pcm import FULL_SCALE, LOWEST, RATE

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

#: The mains of the world run at these frequencies (Hz), and stay within half a per cent of them: EN 50160 allows ±1 %
#: of 50 Hz for 99.5 % of the year, which is ±0.5 Hz.
MAINS = (50.0, 60.0)
_ASTRAY = 0.5
#: Harmonics that are looked for: a transformer hums at the second one most, dimmers buzz far above it.
_HARMONICS = 12
#: How far a line must stand out of its surroundings to be one (dB), and a single line to be called hum.
_STANDS_OUT, _ALONE = 9.0, 14.0
#: Length of the pieces whose spectra are averaged (s): lines 0.5 Hz apart are told from each other.
_PIECE = 2.0
#: Length of the blocks that are told noise from events by (s), and how far one must be above the middle one (dB).
_BLOCK = 0.1
_EVENT = 10.0
#: How far a click's edge must stand out of the noise (standard deviations): noise itself does so once in an age.
_EDGE = 12.0
_CLICK_APART = 0.02
#: Edges below this are no clicks that anybody hears (full scale is 1.0): -66 dBFS.
_FAINT = 0.0005
#: What is below this comes from no open microphone (dBFS): the noise of the best ones lies far above it.
NO_SIGNAL = -100.0


@dataclass(frozen=True, slots=True)
class Hum:
    """The mains, heard.

    mains: their frequency (Hz)
    level: all its harmonics together (dBFS, RMS)
    strongest: frequency of the strongest line (Hz)
    """

    mains: float
    level: float
    strongest: float


@dataclass(frozen=True, slots=True)
class RoomSound:
    """What was heard of a room in which nobody spoke.

    seconds: how long it was listened to
    noise: level of the steady part with its hum (dBFS, RMS), SILENCE where there is none
    without_hum: the same without the lines of the mains
    hum: the mains, where they stand out of the noise
    clicks: how many there were
    events: seconds in which something was much louder than the rest: a word, a door
    clipped: some of it was at full scale
    offset: how far the sound stands off the middle (share of full scale)
    """

    seconds: float
    noise: float
    without_hum: float
    hum: Hum | None
    clicks: int
    events: float
    clipped: bool
    offset: float

    @property
    def dead(self) -> bool:
        """True where no open microphone can have heard it: it is muted, or another one."""
        return self.noise <= NO_SIGNAL


def listen_to_room(sound: NDArray[np.int16], rate: int = RATE) -> RoomSound:
    """Judge a few seconds of 16-bit mono sound in which nobody spoke; at least two, better five.

    Raises SoundUnavailableError where scipy is missing, ValueError for less than a second.
    """
    require("scipy")
    import numpy as np

    if len(sound) < rate:
        raise ValueError("a room is judged by a second of sound at least")
    scaled = np.asarray(sound, np.float64) / -LOWEST
    offset = float(scaled.mean())
    around = scaled - offset
    powers = _powers(around, round(_BLOCK * rate))
    steady = float(np.median(powers))
    # What is as loud as an event counts for no noise: a cough does not make a room loud.
    calm = powers <= steady * 10 ** (_EVENT / 10)
    quiet = around[: len(powers) * round(_BLOCK * rate)].reshape(len(powers), -1)[calm].ravel()
    noise = float(np.mean(quiet**2))
    hum, hum_power = _hum(quiet, rate)
    return RoomSound(
        seconds=len(sound) / rate,
        noise=_level(noise),
        without_hum=_level(max(0.0, noise - hum_power)),
        hum=hum,
        clicks=_clicks(around, rate),
        events=float(np.count_nonzero(~calm)) * _BLOCK,
        clipped=_clipped(sound),
        offset=offset,
    )


def _powers(around: NDArray[Any], block: int) -> NDArray[Any]:
    whole = len(around) // block * block
    powers: NDArray[Any] = (around[:whole].reshape(-1, block) ** 2).mean(axis=1)
    return powers


def _hum(quiet: NDArray[Any], rate: int) -> tuple[Hum | None, float]:
    """The mains whose lines are the strongest, and their power; None and 0.0 where no lines stand out."""
    from scipy.signal import welch

    piece = min(len(quiet), round(_PIECE * rate))
    if piece < rate // 2:
        return None, 0.0
    frequencies, density = welch(quiet, rate, window="hann", nperseg=piece, detrend=False)
    width = float(frequencies[1])
    best: tuple[float, Hum] | None = None
    for mains in MAINS:
        lines = [
            (power, number * mains, above)
            for number in range(1, _HARMONICS + 1)
            for power, above in [_line(frequencies, density, number * mains, number)]
            if above >= _STANDS_OUT
        ]
        # One line of its own may be a fan; two, or a strong one at the mains or at twice that, are a transformer.
        sure = len(lines) > 1 or any(above >= _ALONE and at <= 2 * mains for _, at, above in lines)
        power = sum(one for one, _, _ in lines) * width
        own = any(at % 300 for _, at, _ in lines)
        if sure and own and (best is None or power > best[0]):
            best = power, Hum(mains, _level(power), max(lines)[1])
    return (best[1], best[0]) if best else (None, 0.0)


def _line(frequencies: NDArray[Any], density: NDArray[Any], at: float, number: int) -> tuple[float, float]:
    """What a line adds to the noise around it (per Hz), and how far it stands out of that (dB)."""
    import numpy as np

    near = np.abs(frequencies - at)
    reach = _ASTRAY * min(number, 4)
    line = near <= reach + 1.0
    beside = (near > reach + 1.5) & (near <= reach + 9.0) & (frequencies > 5.0)
    if not line.any() or not beside.any():
        return 0.0, SILENCE
    floor = float(np.median(density[beside]))
    peak = float(density[line].max())
    above = 10 * float(np.log10(peak / floor)) if floor > 0 and peak > 0 else (-SILENCE if peak > 0 else SILENCE)
    return max(0.0, float((density[line] - floor).sum())), above


def _clicks(around: NDArray[Any], rate: int) -> int:
    import numpy as np

    edges = np.abs(np.diff(around, 2))
    usual = float(np.median(edges)) / 0.6745
    places = np.flatnonzero(edges > max(_EDGE * usual, _FAINT))
    if not len(places):
        return 0
    return 1 + int(np.count_nonzero(np.diff(places) > _CLICK_APART * rate))


def _clipped(sound: NDArray[np.int16]) -> bool:
    import numpy as np

    full = (sound >= FULL_SCALE) | (sound <= LOWEST)
    return bool(np.convolve(full, np.ones(CLIP_RUN, int)).max(initial=0) >= CLIP_RUN)


def _level(power: float) -> float:
    import numpy as np

    return max(SILENCE, 10 * float(np.log10(power))) if power > 0 else SILENCE
