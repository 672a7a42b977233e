"""The sound of a video, as whoever delivers hands it over."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Protocol


class Narration(Protocol):
    """Sound that begins with the talk: one channel of 16 bits.

    rate: samples a second
    """

    @property
    def rate(self) -> int:
        """Samples a second."""
        ...

    @property
    def notice(self) -> str:
        """What must be seen in the picture and stand in the file, such as that it is no real voice; "" for nothing."""
        ...

    def level(self, remark: Callable[[str], None], ask: Callable[[float], None] | None = None) -> None:
        """Work out, before `chunks`, what brings it to its loudness.

        remark: told why it is left, where it is; ask: told the share that is done, and may raise to end the work
        """
        ...

    def chunks(self) -> Iterator[bytes]:
        """The samples from the start, little-endian, in pieces of any length."""
        ...

    def digest(self) -> str:
        """The same where the same sound would come out of `chunks` again."""
        ...
