"""Which sample of a running recording belongs to this moment."""

from __future__ import annotations

from collections import deque


class SoundClock:
    """The clock of one microphone, told by its samples.

    Sound arrives in blocks, each of them after the moment at which it was heard and some later than others. Of the
    deliveries of the last seconds the promptest one is taken for the truth, so that neither a late block nor the slow
    drift of the sound card's crystal against the computer's clock moves a stamp.

    State: how much has been delivered, and when each of the latest deliveries would put sample 0.

    All moments are seconds of time.monotonic(). Not safe to share between threads without a lock.
    """

    #: How long a delivery is remembered (s): in this time a crystal that is 100 ppm off drifts by 0.2 ms.
    MEMORY = 2.0

    def __init__(self, rate: int, latency: float = 0.0, ahead: float = 4.0) -> None:
        """A clock of a microphone that has not delivered anything.

        rate: samples a second (Hz)
        latency: how long sound is under way from the microphone to its promptest delivery (s)
        ahead: how far the present can be ahead of what has been delivered (s): what the system's buffer holds
        """
        self._rate = rate
        self._latency = latency
        self._ahead = ahead
        self._delivered = 0
        self._told = 0
        self._zeros: deque[tuple[float, float]] = deque()

    @property
    def delivered(self) -> int:
        """Samples that have arrived."""
        return self._delivered

    def deliver(self, samples: int, now: float) -> None:
        """Take note that *samples* more have arrived."""
        self._delivered += samples
        zero = now - self._delivered / self._rate
        while self._zeros and self._zeros[-1][1] >= zero:
            self._zeros.pop()
        self._zeros.append((now, zero))
        while now - self._zeros[0][0] > self.MEMORY:
            self._zeros.popleft()

    def sample(self, when: float) -> int:
        """The sample that is heard at this moment, never less than was told before; 0 before any sound.

        A moment that lies a little back belongs to a sample that was delivered already, so that a stamp which is
        made late is not late itself.
        """
        self._told = max(self._told, self.at(when))
        return self._told

    def at(self, when: float) -> int:
        """The same, whatever was told before."""
        if not self._zeros:
            return 0
        heard = round((when - self._zeros[0][1] + self._latency) * self._rate)
        return max(0, min(heard, self._delivered + round(self._ahead * self._rate)))
