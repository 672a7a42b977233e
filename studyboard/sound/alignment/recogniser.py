"""The recogniser, which knows the words of one script and no others."""

from __future__ import annotations

import re
import tempfile
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cache, cached_property
from math import log
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from studyboard.sound.alignment.pieces import FRAME
from studyboard.sound.alignment.pronunciations import by_rule, pronunciation
from studyboard.sound.errors import require

#: For finding a path through known words. The default beams lose the path where a word is not said as expected; the
#: second set is tried where the first has lost it.
_BEAMS = ((1e-100, 1e-100, 1e-80), (1e-200, 1e-200, 1e-160))
#: How much of each probability the model of the script keeps for words that do not follow each other in it.
_OTHERWISE = 0.25
_LANGUAGE_WEIGHT = 9.0
_LEAST_SCORE = 1e-300
_NUMBERED = re.compile(r"\(\d+\)$")
#: Known words need silence around them to be found (samples).
_MARGIN = FRAME * 20


@dataclass(frozen=True, slots=True)
class HeardWord:
    """A word that was heard.

    start, end: when (frames of a hundredth of a second)
    score: how well the sound fits it, as the logarithm of a likelihood per frame; only to be compared with others
    """

    said: str
    start: int
    end: int
    score: float = 0.0


class Recogniser:
    """Hears the words of one script.

    State: the acoustic model with the pronunciations of the script's words; how words follow each other in it.
    """

    def __init__(self, lines: Sequence[Sequence[str]], hinted: frozenset[str] = frozenset()) -> None:
        """lines: what is said, line by line, in letters from a to z; hinted: words that are said as they are written

        Raises SoundUnavailableError where pocketsphinx is not installed.
        """
        require("pocketsphinx")
        self._lines = [list(line) for line in lines if line]
        self._hinted = hinted
        self._strict_ones: dict[int, Any] = {}

    def heard(self, sound: NDArray[np.int16]) -> list[HeardWord]:
        """What is said in a piece of sound, as far as it can be said with the words of the script."""
        if not self._lines:
            return []
        return [word for word in _recognised(self._free, sound) if word.said]

    def along(self, words: Sequence[str], sound: NDArray[np.int16]) -> list[HeardWord] | None:
        """When each of these words is said, if nothing else is said in this sound; None where they cannot be found."""
        padded = np.concatenate((_quiet(sound, 1), sound, _quiet(sound, 2)))
        for number in range(len(_BEAMS)):
            decoder = self._strict(number)
            decoder.set_align_text(" ".join(words))
            found = [
                replace(word, start=word.start - _MARGIN // FRAME, end=word.end - _MARGIN // FRAME)
                for word in _recognised(decoder, padded)
            ]
            if [word.said for word in found] == list(words):
                return found
        return None

    @cached_property
    def _free(self) -> Any:
        from pocketsphinx import NGramModel

        # Two more passes over what was heard would find one word in fifty more and take two thirds of the time again.
        decoder = self._decoder(lw=_LANGUAGE_WEIGHT, fwdflat=False, bestpath=False)
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "script.lm"
            path.write_text(_language(self._lines), encoding="ascii")
            decoder.add_lm("script", NGramModel(decoder.config, decoder.logmath, str(path)))
        decoder.activate_search("script")
        return decoder

    def _strict(self, number: int) -> Any:
        if number not in self._strict_ones:
            beam, phone_beam, word_beam = _BEAMS[number]
            self._strict_ones[number] = self._decoder(beam=beam, pbeam=phone_beam, wbeam=word_beam)
        return self._strict_ones[number]

    def _decoder(self, **options: float | bool) -> Any:
        from pocketsphinx import Decoder

        # With all of the dictionary it takes five seconds to get ready, and 300 MB.
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "script.dict"
            path.write_text(self._dictionary, encoding="ascii")
            return Decoder(hmm=str(_model() / "en-us"), dict=str(path), lm=None, loglevel="FATAL", **options)

    @cached_property
    def _dictionary(self) -> str:
        """The pronunciations of the script's words, several for some."""
        known = _known_words()

        def first(word: str) -> str | None:
            return known[word][0] if word in known else None

        lines: list[str] = []
        for word in sorted({word for line in self._lines for word in line}):
            by_letters = by_rule if word in self._hinted else lambda one: pronunciation(one, first)
            variants = known.get(word) or [by_letters(word)]
            lines += [f"{word}{f'({number})' if number > 1 else ''} {said}" for number, said in enumerate(variants, 1)]
        return "\n".join(lines) + "\n"


def _model() -> Path:
    from pocketsphinx import get_model_path

    return Path(get_model_path()) / "en-us"


@cache
def _known_words() -> dict[str, list[str]]:
    """Every word of the model's dictionary with its pronunciations."""
    known: dict[str, list[str]] = {}
    with (_model() / "cmudict-en-us.dict").open(encoding="utf-8") as lines:
        for line in lines:
            word, _, phones = line.strip().partition(" ")
            known.setdefault(_NUMBERED.sub("", word), []).append(phones)
    return known


def _recognised(decoder: Any, sound: NDArray[np.int16]) -> Iterator[HeardWord]:
    if len(sound) < FRAME * 10:
        return
    decoder.start_utt()
    decoder.process_raw(sound.tobytes(), False, True)
    decoder.end_utt()
    for segment in decoder.seg() or ():
        word = _NUMBERED.sub("", segment.word)
        if word[0] not in "<[+":
            start, end = segment.start_frame, segment.end_frame + 1
            yield HeardWord(word, start, end, log(max(segment.ascore, _LEAST_SCORE)) / (end - start))


def _quiet(sound: NDArray[np.int16], seed: int) -> NDArray[np.int16]:
    """Silence like that of this sound: as noisy as its quietest moments."""
    frames = sound[: len(sound) // FRAME * FRAME].reshape(-1, FRAME).astype(np.float32)
    size = float(np.sqrt(np.percentile(np.mean(frames**2, axis=1), 5))) if len(frames) else 1.0
    noise = np.random.default_rng(seed).standard_normal(_MARGIN) * max(1.0, size)
    return np.clip(noise, -32_768, 32_767).astype(np.int16)


def _language(lines: Sequence[Sequence[str]]) -> str:
    """How the words of the script follow each other, across its lines, as an ARPA language model."""
    from io import StringIO

    from pocketsphinx.lm import ArpaBoLM

    # The words alone once more: people begin and stop anywhere.
    text = " ".join(word for line in lines for word in line)
    model = ArpaBoLM(text=f"{text}\n", add_start=True, discount_mass=_OTHERWISE)
    model.compute()
    written = StringIO()
    model.write(written)
    return written.getvalue()
