"""The loudness of what is coming in, as it is shown while somebody speaks."""

from __future__ import annotations

import threading
from dataclasses import dataclass

from studyboard.sound.errors import SoundUnavailableError
from studyboard.sound.loudness import LoudnessMeter, scaled
from studyboard.sound.pcm import RATE, SAMPLE_BYTES

#: After so much sound the meter forgets the programme, of which nobody asks here (bytes): ten minutes.
_FORGOTTEN = 600 * RATE * SAMPLE_BYTES


@dataclass(frozen=True, slots=True)
class Reading:
    """What a level meter shows at one moment.

    momentary, short_term: loudness of the latest 0.4 s and 3 s (LUFS) as heard from two loudspeakers
    true_peak: the highest level since the reading before (dBTP)
    """

    momentary: float
    short_term: float
    true_peak: float


class LiveLoudness:
    """Loudness of a running microphone, in bounded memory.

    What measures it takes seconds to load on a slow machine, which happens beside the sound: there are no readings
    until then, nor where its packages are missing.

    State: the meter, once it is there.
    """

    def __init__(self) -> None:
        self._meter: LoudnessMeter | None = None
        self._fed = 0
        self._loading = threading.Thread(target=self._load, name="loudness", daemon=True)
        self._loading.start()

    def feed(self, pcm: bytes) -> None:
        """The next 16-bit mono sound at 48 kHz."""
        meter = self._meter
        if meter is None:
            return
        # A microphone may be open all day.
        self._fed += len(pcm)
        if self._fed > _FORGOTTEN:
            self._fed = 0
            meter.forget()
        meter.feed(scaled(pcm))

    def read(self) -> Reading | None:
        """The reading of this moment; None where there is none yet."""
        meter = self._meter
        return None if meter is None else Reading(meter.momentary, meter.short_term, meter.take_peak())

    def wait(self, seconds: float) -> bool:
        """Wait until readings are there; False where they are not after so long (s), or cannot be."""
        self._loading.join(seconds)
        return self._meter is not None

    def _load(self) -> None:
        try:
            self._meter = LoudnessMeter()
        except SoundUnavailableError:
            # The level in dBFS is shown without them; check-setup tells what to install.
            return
