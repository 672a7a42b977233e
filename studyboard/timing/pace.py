"""How long a spoken line takes, from how fast its speaker is."""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import IntEnum
from functools import lru_cache

from studyboard.model.script import Pace
from studyboard.notation.spoken import speak_text
from studyboard.timing.syllables import syllables

_TOKEN = re.compile(r"\S+")
_LETTERS = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)*")
_CLOSERS = "\"'”’»)]}"
_SENTENCE_ENDS = ".?!…"
_CLAUSE_ENDS = ",;:–—"
_MOVE_NUMBER = re.compile(r"\d+\.+$")
_MOVE = re.compile(r"[KQRBN]?[a-h]?[1-8]?x?[a-h][1-8]|[O0]-[O0]|\.\.")


class Silence(IntEnum):
    """What kind of silence follows a word."""

    NONE = 0
    CLAUSE = 1
    SENTENCE = 2
    PARAGRAPH = 3


@dataclass(frozen=True, slots=True)
class Weight:
    """One word as the pace sees it: its syllables when spoken, and the silence after it."""

    syllables: int
    silence: Silence


@dataclass(frozen=True, slots=True)
class Spoken:
    """When each word of a line is said.

    words: start and end of each word (s from the start of the line)
    speech_end: end of the last word (s)
    seconds: the whole line, with the silence after its last word (s)
    """

    words: tuple[tuple[float, float], ...]
    speech_end: float
    seconds: float


def estimate(pace: Pace, text: str) -> float:
    """Estimated length of *text* when spoken, with the silence after its last word (s); 0.0 for an empty line.

    Syllables at the articulation rate, plus a pause for each clause, sentence and paragraph. Moves and squares
    count as they are said: “Nf3” is “knight f three”.
    """
    weights = weigh(text)
    spoken = sum(weight.syllables for weight in weights) / pace.syllables_per_second
    return spoken + sum(_pause(pace, weight.silence) for weight in weights)


def speak(pace: Pace, text: str) -> Spoken:
    """When each word of *text* would be said at this pace. O(length of the text)."""
    spans: list[tuple[float, float]] = []
    at = 0.0
    end = 0.0
    for weight in weigh(text):
        end = at + weight.syllables / pace.syllables_per_second
        spans.append((at, end))
        at = end + _pause(pace, weight.silence)
    return Spoken(tuple(spans), end, at)


@lru_cache(maxsize=4096)
def weigh(text: str) -> tuple[Weight, ...]:
    """The words of *text* (see model.script.words) with their syllables and silences; the pace plays no part."""
    weights: list[Weight] = []
    matches = list(_TOKEN.finditer(text))
    for number, match in enumerate(matches):
        token = match.group()
        after = matches[number + 1] if number + 1 < len(matches) else None
        silence = _silence(token, after.group() if after else "")
        if after and text.count("\n", match.end(), after.start()) >= 2:
            silence = Silence.PARAGRAPH
        weights.append(Weight(_syllables(token), silence))
    return tuple(weights)


@lru_cache(maxsize=32768)
def _syllables(token: str) -> int:
    return sum(syllables(word) for word in _LETTERS.findall(speak_text(token)))


def _silence(token: str, after: str) -> Silence:
    """The silence after a word, from the sign that ends it; the full stop of a move's number is none."""
    bare = token.rstrip(_CLOSERS)
    if _MOVE_NUMBER.match(bare) and _MOVE.match(after):
        return Silence.NONE
    last = bare[-1:]
    if last and last in _SENTENCE_ENDS:
        return Silence.SENTENCE
    return Silence.CLAUSE if last and last in _CLAUSE_ENDS else Silence.NONE


def _pause(pace: Pace, silence: Silence) -> float:
    return (0.0, pace.clause_pause, pace.sentence_pause, pace.paragraph_pause)[silence]
