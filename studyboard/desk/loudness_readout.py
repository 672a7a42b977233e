"""How loud the voice is, in figures: beside the level meter, while somebody speaks."""

from __future__ import annotations

from PySide6.QtWidgets import QLabel, QWidget

from studyboard.sound.levels import SILENCE
from studyboard.sound.live_loudness import Reading
from studyboard.translation import tr


class LoudnessReadout(QLabel):
    """Loudness of the latest seconds (LUFS) and the highest true peak since it was reset (dBTP).

    State: that peak. Empty until there are readings, for which pyloudnorm has to be there.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._peak = SILENCE
        self.setAccessibleName(tr("Loudness"))
        self.setToolTip(tr("Loudness of the latest three seconds (ITU-R BS.1770), and the highest true peak so far"))

    def show_reading(self, reading: Reading) -> None:
        """Show a new reading."""
        self._peak = max(self._peak, reading.true_peak)
        if reading.short_term <= SILENCE:
            return
        loudness, peak = round(reading.short_term), round(self._peak)
        text = tr("{loudness} LUFS, peaks {peak} dBTP", loudness=_signed(loudness), peak=_signed(peak))
        if text != self.text():
            self.setText(text)

    def reset(self) -> None:
        """Forget the highest peak."""
        self._peak = SILENCE


def _signed(level: int) -> str:
    return f"−{-level}" if level < 0 else str(level)
