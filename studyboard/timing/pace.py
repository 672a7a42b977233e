"""How long a spoken line takes, from how fast its speaker is."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
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
_WRITTEN_MOVE = re.compile(r"(?:\d+\.+)?(?:[KQRBN]?[a-h]?[1-8]?x?[a-h][1-8](?:=?[QRBN])?|[O0]-[O0](?:-[O0])?)[+#!?]*")
_FILES, _RANKS = frozenset("abcdefgh"), frozenset(["one", "two", "three", "four", "five", "six", "seven", "eight"])
#: A long word takes longer than a short one of as many syllables: how fast speech is heard to be goes by syllables and
#: by sounds about evenly (H. R. Pfitzinger, "Local speech rate perception in German speech", 1999; from memory).
#: Sounds are counted as letters, of which a syllable has 3.3 in our own talks, letters of squares counted as two.
_LETTERS_A_SYLLABLE = 3.3


class Silence(IntEnum):
    """What kind of silence follows a word."""

    NONE = 0
    CLAUSE = 1
    SENTENCE = 2
    PARAGRAPH = 3


@dataclass(frozen=True, slots=True)
class Weight:
    """One word as the pace sees it.

    syllables: when spoken; silence: after it
    length: how long it takes, in syllables of average length
    move: True for the last word of a move or square that is said
    """

    syllables: int
    silence: Silence
    length: float = 0.0
    move: bool = False


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

    Syllables at the articulation rate, long ones longer, plus a pause for each clause, sentence, paragraph and move
    that is said. Moves and squares count as they are said: “Nf3” is “knight f three”.
    """
    return sum(_spoken(pace, weight) + _pause(pace, weight) for weight in weigh(text))


def speak(pace: Pace, text: str) -> Spoken:
    """When each word of *text* would be said at this pace. O(length of the text)."""
    spans: list[tuple[float, float]] = []
    at = 0.0
    end = 0.0
    for weight in weigh(text):
        end = at + _spoken(pace, weight)
        spans.append((at, end))
        at = end + _pause(pace, weight)
    return Spoken(tuple(spans), end, at)


def in_side_line(pace: Pace) -> Pace:
    """How the same presenter speaks in a side-line."""
    rate = pace.side_line_rate
    if rate == 1.0:
        return pace
    return replace(
        pace,
        syllables_per_second=pace.syllables_per_second * rate,
        clause_pause=pace.clause_pause / rate,
        sentence_pause=pace.sentence_pause / rate,
        paragraph_pause=pace.paragraph_pause / rate,
        move_pause=pace.move_pause / rate,
    )


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
        count, length = _spoken_length(token)
        weights.append(Weight(count, silence, length, _ends_move(token, matches[number - 1].group() if number else "")))
    return tuple(weights)


@lru_cache(maxsize=32768)
def _spoken_length(token: str) -> tuple[int, float]:
    """Syllables of a word when spoken, and how long it takes in syllables of average length."""
    said = _LETTERS.findall(speak_text(token))
    count = sum(syllables(word) for word in said)
    letters = sum(max(2, len(word)) for word in said)
    return count, (count + letters / _LETTERS_A_SYLLABLE) / 2


def _ends_move(token: str, before: str) -> bool:
    """True for “Nf3” and “f3”, and for the “three” of “f three”."""
    bare = token.strip(_CLOSERS + _SENTENCE_ENDS + _CLAUSE_ENDS + "([{“‘")
    if bare in _RANKS:
        return before.strip("([{“‘").lower() in _FILES
    return _WRITTEN_MOVE.fullmatch(bare) is not None


def _silence(token: str, after: str) -> Silence:
    """The silence after a word, from the sign that ends it; the full stop of a move's number is none."""
    bare = token.rstrip(_CLOSERS)
    if _MOVE_NUMBER.match(bare) and _MOVE.match(after):
        return Silence.NONE
    last = bare[-1:]
    if last and last in _SENTENCE_ENDS:
        return Silence.SENTENCE
    return Silence.CLAUSE if last and last in _CLAUSE_ENDS else Silence.NONE


def _spoken(pace: Pace, weight: Weight) -> float:
    return weight.length / pace.syllables_per_second


def _pause(pace: Pace, weight: Weight) -> float:
    pause = (0.0, pace.clause_pause, pace.sentence_pause, pace.paragraph_pause)[weight.silence]
    return pause + pace.move_pause if weight.move else pause
