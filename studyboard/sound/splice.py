"""Which stretches of what a microphone hears belong to a take."""

from __future__ import annotations

from studyboard.sound.pcm import SAMPLE_BYTES


class Splice:
    """The stretches between start, pauses and stop, joined into one take.

    State: the spans of the microphone's samples that belong to the take, in order; the last one is open while
    recording goes on.
    """

    def __init__(self) -> None:
        self._spans: list[tuple[int, int | None]] = []

    @property
    def open(self) -> bool:
        """True while what is heard belongs to the take."""
        return bool(self._spans) and self._spans[-1][1] is None

    @property
    def end(self) -> int | None:
        """The microphone's sample at which the last span ends, None while it is open or where there is none."""
        return self._spans[-1][1] if self._spans else None

    def begin(self, sample: int) -> None:
        """From this sample of the microphone on, sound belongs to the take. Nothing happens where it already does."""
        if not self.open:
            self._spans.append((max(sample, self.end or 0), None))

    def cut(self, sample: int) -> None:
        """From this sample on, sound does not belong to the take. Nothing happens where it already does not."""
        if self.open:
            start = self._spans[-1][0]
            self._spans[-1] = (start, max(start, sample))

    def place(self, sample: int) -> int:
        """The sample of the take that a sample of the microphone becomes; between two spans, where they are joined."""
        return sum(max(0, (sample if end is None else min(sample, end)) - start) for start, end in self._spans)

    def keep(self, first: int, pcm: bytes) -> bytes:
        """The part that belongs to the take of 16-bit sound that begins at the microphone's sample *first*."""
        last = first + len(pcm) // SAMPLE_BYTES
        kept = []
        for start, end in self._spans:
            a, b = max(first, start), last if end is None else min(last, end)
            if a < b:
                kept.append(pcm[(a - first) * SAMPLE_BYTES : (b - first) * SAMPLE_BYTES])
        return b"".join(kept)
