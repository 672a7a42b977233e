"""What the takes give to a delivery: the talk's sound, brought to the loudness that it is published with."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from hashlib import sha256

from studyboard.model.assembly import Assembly
from studyboard.model.takes import Take
from studyboard.sound.assembled import AssembledSound, SoundShelf
from studyboard.sound.errors import SoundUnavailableError
from studyboard.sound.levelling import Levelling, Target, fitted, levelled
from studyboard.sound.pcm import RATE
from studyboard.translation import tr


class TalkNarration:
    """The sound of a talk that is put together from takes, from its beginning to its end.

    State: where the sound lies, and what brings it to its loudness.
    """

    def __init__(
        self,
        shelf: SoundShelf,
        takes: Mapping[int, Take],
        assembly: Assembly,
        target: Target | None = Target.ONLINE,
    ) -> None:
        """target: what it is published for; None leaves it as it was spoken. What is stored is never changed."""
        self._sound = AssembledSound(shelf, takes, assembly.sources, assembly.rate)
        self._levelling: Levelling | None = None
        self._target = target
        self._asked = False
        self._left: str = ""

    @property
    def rate(self) -> int:
        """Samples a second."""
        return self._sound.rate

    def level(self, remark: Callable[[str], None]) -> None:
        """Work out what brings the sound to its loudness, in a pass or two over it; done the second time already.

        remark: told, in a sentence, why it is left as it was spoken, where it has to be
        """
        if not self._asked:
            self._asked = True
            self._left = self._fit()
        if self._left:
            remark(self._left)

    def _fit(self) -> str:
        """Why the sound is left as it was spoken; "" where it is not."""
        if self._target is None:
            return ""
        if self.rate != RATE:
            return tr("A take of {rate} samples a second keeps the loudness that it was spoken with.", rate=self.rate)
        try:
            self._levelling = fitted(self._sound.chunks, self._target)
        except SoundUnavailableError as reason:
            return str(reason)
        return ""

    def chunks(self) -> Iterator[bytes]:
        """The samples from the start."""
        chunks = self._sound.chunks()
        return chunks if self._levelling is None else levelled(chunks, self._levelling)

    def digest(self) -> str:
        """The same where the same sound comes out again. O(length of the talk)."""
        found = sha256(f"{self.rate} {self._target}".encode())
        for chunk in self._sound.chunks():
            found.update(chunk)
        return found.hexdigest()
