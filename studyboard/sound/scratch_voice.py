"""The plan, spoken by a synthesiser: to hear how long things are before anybody has recorded them."""

from __future__ import annotations

import tempfile
from collections.abc import Callable, Iterator
from contextlib import suppress
from hashlib import sha256
from typing import IO

from studyboard.model.script import words
from studyboard.model.study import Study
from studyboard.notation.spoken import speak_text, spoken_table
from studyboard.sound.pcm import RATE, SAMPLE_BYTES
from studyboard.sound.synthesiser import Synthesiser
from studyboard.timing.timeline import Stretch, Timeline
from studyboard.translation import tr
from studyboard.writing.pronunciation import hints_in

#: How near to its planned length a line is spoken (share); else it is spoken once more.
_NEAR = 0.04
_PIECE = 2 * RATE * SAMPLE_BYTES


class ScratchVoice:
    """A Narration of a plan; each line begins when the plan has it and takes as long, as far as it can be spoken so.

    State: the sound, in a file of the system's that has no name, once `level` has made it.
    """

    #: What is written into the picture and into the file, so that nobody takes it for the real one.
    notice = "scratch voice"

    def __init__(self, study: Study, timeline: Timeline, synthesiser: Synthesiser) -> None:
        self._study = study
        self._timeline = timeline
        self._synthesiser = synthesiser
        self._language = (study.language or "en").split("_")[0]
        self._file: IO[bytes] | None = None
        self._hurried = 0

    @property
    def rate(self) -> int:
        """Samples a second."""
        return RATE

    @property
    def samples(self) -> int:
        """Length of the whole plan (samples)."""
        return round(self._timeline.seconds * RATE)

    def level(self, remark: Callable[[str], None], ask: Callable[[float], None] | None = None) -> None:
        """Speak every line; done the second time already.

        remark: told that it is a scratch voice, and how many lines did not fit into their time
        ask: told which share is done; what it raises ends the work
        Raises SynthesiserError, SoundUnavailableError.
        """
        if self._file is None:
            file = tempfile.TemporaryFile(prefix="studyboard-")  # noqa: SIM115
            try:
                self._speak_into(file, ask)
            except BaseException:
                file.close()
                raise
            self._file = file
        remark(tr("The voice is a scratch voice, spoken by {name}: not for publishing.", name=self._synthesiser.name))
        if self._hurried == 1:
            remark(tr("One line could not be spoken in its planned time."))
        elif self._hurried:
            remark(tr("{count} lines could not be spoken in their planned time.", count=self._hurried))

    def chunks(self) -> Iterator[bytes]:
        """The samples from the start, once `level` has made them."""
        assert self._file is not None, "level() comes first"
        self._file.seek(0)
        while piece := self._file.read(_PIECE):
            yield piece

    def read_sound(self, _: int, start: int, count: int) -> bytes:
        """Sound from this sample on, for a Player."""
        assert self._file is not None, "level() comes first"
        self._file.seek(start * SAMPLE_BYTES)
        return self._file.read(count * SAMPLE_BYTES)

    def digest(self) -> str:
        """The same where the same would be spoken again."""
        found = sha256(f"{self._synthesiser.name} {self._language}".encode())
        for stretch in self._timeline.stretches:
            found.update(f"{stretch.start:.3f} {stretch.speech_end:.3f} {self._said(stretch)}\n".encode())
        return found.hexdigest()

    def _speak_into(self, file: IO[bytes], ask: Callable[[float], None] | None) -> None:
        written = 0
        for stretch in self._timeline.stretches:
            if ask is not None:
                ask(stretch.start / max(1.0, self._timeline.seconds))
            start, end = self._place(stretch)
            if start > written:
                file.write(bytes((start - written) * SAMPLE_BYTES))
                written = start
            room = max(0, round(stretch.end * RATE) - start)
            said = self._fitted(self._said(stretch), max(1, end - start), room)
            file.write(said)
            written += len(said) // SAMPLE_BYTES
        file.write(bytes(max(0, self.samples - written) * SAMPLE_BYTES))

    def _place(self, stretch: Stretch) -> tuple[int, int]:
        """The samples between which its line is planned to be said."""
        spoken = stretch.words
        begins = spoken[0].at if spoken else stretch.start
        return round(begins * RATE), round(stretch.speech_end * RATE)

    def _said(self, stretch: Stretch) -> str:
        """The line as it is read aloud: pronunciations as the prompter shows them, moves in words."""
        text = stretch.spoken.text
        for hint in reversed(list(hints_in(text, self._study.pronunciations))):
            text = text[: hint.start] + hint.said + text[hint.end :]
        # A language whose moves nobody has put into words yet is read as it is written.
        with suppress(FileNotFoundError):
            text = speak_text(text, spoken_table(self._language))
        return " ".join(text.split())

    def _fitted(self, text: str, wanted: int, room: int) -> bytes:
        """The line in about *wanted* samples, and never in more than *room*."""
        count = len(words(text))
        if not count:
            return b""
        pace = 60 * count * RATE / wanted
        said = self._synthesiser.say(text, self._language, pace)
        for _ in range(2):
            length = len(said) // SAMPLE_BYTES
            if not length or abs(length / wanted - 1) <= _NEAR:
                break
            pace *= length / wanted
            said = self._synthesiser.say(text, self._language, pace)
        if len(said) > room * SAMPLE_BYTES:
            self._hurried += 1
            said = said[: room * SAMPLE_BYTES]
        return said
