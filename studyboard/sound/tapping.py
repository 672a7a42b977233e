"""How late a microphone is, by the sound of a key that was pressed beside it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from studyboard.sound.errors import require
from studyboard.sound.latency import LONGEST, Delay, agreed
from studyboard.sound.pcm import LOWEST, RATE
from studyboard.translation import tr

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

#: A press is heard at most so much before the program knows of it (s): keyboards need up to some hundredths themselves.
_BEFORE = 0.04
#: The envelope of the sound is taken over so much (s); a tap stands out of its second by so much (dB), and begins where
#: it comes to this share of its height.
_ENVELOPE = 0.002
_STANDS_OUT = 15.0
_BEGINS = 0.25
#: So many taps must be heard, and so near must they agree (s): fingers and keyboards are no clocks.
_ENOUGH = 4
_AGREE = 0.012


def tapped_delay(sound: NDArray[np.int16], presses: Sequence[int], rate: int = RATE) -> Delay | None:
    """How late the sound of a key comes that went down at these samples; None where it was not heard.

    Below 0 is told as 0: then the keyboard is slower than the microphone. Raises UnsteadyDelayError where the taps do
    not agree, SoundUnavailableError where scipy is missing.
    """
    require("scipy")
    import numpy as np
    from scipy.signal import butter, sosfilt

    # Rumble of the desk comes before the click and after it.
    clicks = sosfilt(butter(4, 800, "highpass", fs=rate, output="sos"), np.asarray(sound, np.float64) / -LOWEST)
    size = round(_ENVELOPE * rate)
    envelope = np.sqrt(np.convolve(clicks**2, np.ones(size) / size)[: len(clicks)])
    late = []
    for press, following in zip(presses, (*presses[1:], None), strict=True):
        end = press + round(LONGEST * rate)
        found = _onset(envelope, press - round(_BEFORE * rate), end if following is None else min(end, following))
        if found is not None:
            late.append((found - press) / rate)
    apart = tr("The taps do not agree about the delay. Press firmly, and not too fast.")
    return agreed(late, _ENOUGH, _AGREE, apart)


def _onset(envelope: NDArray[Any], start: int, end: int) -> int | None:
    import numpy as np

    first = max(0, start)
    heard = envelope[first:end]
    if not len(heard):
        return None
    highest = float(heard.max())
    usual = float(np.median(heard))
    if highest <= 0 or highest < usual * 10 ** (_STANDS_OUT / 20):
        return None
    return first + int(np.argmax(heard >= _BEGINS * highest))
