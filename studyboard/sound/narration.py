"""What the takes give to a delivery: the talk's sound, brought to the loudness that it is published with."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from hashlib import sha256

from studyboard.model.assembly import Assembly
from studyboard.model.takes import Take
from studyboard.sound.assembled import AssembledSound, SoundShelf
from studyboard.sound.errors import SoundUnavailableError
from studyboard.sound.levelling import Levelling, Target, fitted, levelled
from studyboard.sound.pcm import RATE, SAMPLE_BYTES
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

    @property
    def notice(self) -> str:
        """Nothing needs to be said of a real voice."""
        return ""

    def level(self, remark: Callable[[str], None], ask: Callable[[float], None] | None = None) -> None:
        """Work out what brings the sound to its loudness, in a pass or two over it; done the second time already.

        remark: told, in a sentence, why it is left as it was spoken, where it has to be
        ask: told again and again which share is done (0.0 to 1.0); what it raises ends the work
        """
        if not self._asked:
            self._left = self._fit(ask)
            self._asked = True
        if self._left:
            remark(self._left)

    def _fit(self, ask: Callable[[float], None] | None) -> str:
        """Why the sound is left as it was spoken; "" where it is not."""
        if self._target is None:
            return ""
        if self.rate != RATE:
            return tr("A take of {rate} samples a second keeps the loudness that it was spoken with.", rate=self.rate)
        try:
            self._levelling = fitted(self._passes(ask), self._target)
        except SoundUnavailableError as reason:
            return str(reason)
        return ""

    def _passes(self, ask: Callable[[float], None] | None) -> Callable[[], Iterator[bytes]]:
        """What gives the sound anew for each pass, and tells *ask* how far it is; each pass is half of what is left."""
        if ask is None:
            return self._sound.chunks
        begun = 0

        def one_pass() -> Iterator[bytes]:
            nonlocal begun
            before, half = 1 - 0.5**begun, 0.5 ** (begun + 1)
            begun += 1
            heard = 0
            for chunk in self._sound.chunks():
                heard += len(chunk) // SAMPLE_BYTES
                ask(before + half * min(1.0, heard / max(1, self._sound.samples)))
                yield chunk

        return one_pass

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
