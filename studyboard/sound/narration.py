"""What a take gives to a delivery: its sound, brought to the loudness that it is published with."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from hashlib import sha256

from studyboard.model.takes import Take
from studyboard.sound.errors import SoundUnavailableError
from studyboard.sound.levelling import Levelling, Target, fitted, levelled
from studyboard.sound.pcm import RATE
from studyboard.store.sound import TakeSound
from studyboard.translation import tr


class TakeNarration:
    """The sound of one take, from its beginning to its end.

    State: where the sound lies, and what brings it to its loudness.
    """

    def __init__(self, shelf: TakeSound, take: Take, target: Target | None = Target.ONLINE) -> None:
        """target: what it is published for; None leaves it as it was spoken. What is stored is never changed."""
        self._shelf = shelf
        self._take = take
        self._levelling: Levelling | None = None
        self._target = target
        self._asked = False
        self._left: str = ""

    @property
    def rate(self) -> int:
        """Samples a second."""
        return self._take.rate

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
            self._levelling = fitted(lambda: self._shelf.sound_chunks(self._take.id), self._target)
        except SoundUnavailableError as reason:
            return str(reason)
        return ""

    def chunks(self) -> Iterator[bytes]:
        """The samples from the start."""
        chunks = self._shelf.sound_chunks(self._take.id)
        return chunks if self._levelling is None else levelled(chunks, self._levelling)

    def digest(self) -> str:
        """The same where the same sound comes out again. O(length of the take)."""
        found = sha256(f"{self._take.rate} {self._target}".encode())
        for chunk in self._shelf.sound_chunks(self._take.id):
            found.update(chunk)
        return found.hexdigest()
