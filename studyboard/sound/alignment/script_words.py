"""The script word by word, as it is said."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass

from studyboard.model.beats import beats
from studyboard.model.order import running_order
from studyboard.model.script import BeatKey, word_spans
from studyboard.model.study import Study
from studyboard.notation.spoken import speak_text
from studyboard.writing.pronunciation import hints_in

_SPOKEN = re.compile(r"[a-z]+(?:'[a-z]+)*'?")
_APOSTROPHES = str.maketrans({"’": "'", "‘": "'", "ʼ": "'"})
#: Letters that do not come apart into a plain one and an accent.
_PLAIN = str.maketrans({"ß": "ss", "æ": "ae", "œ": "oe", "ø": "o", "ł": "l", "đ": "d", "ð": "th", "þ": "th", "ı": "i"})


@dataclass(frozen=True, slots=True)
class ScriptWord:
    """One word of a spoken line.

    beat: whose line it is in; word: index in that line; text: as it is written
    said: the words that are spoken for it, in plain lower-case letters: “Nf3” is knight, f, three. A dash has none.
    hinted: True where the author has written down how it is said
    """

    beat: BeatKey
    word: int
    text: str
    said: tuple[str, ...]
    hinted: bool = False


def can_be_heard(study: Study) -> bool:
    """True where the script is in the language of the acoustic model: English, or nobody has said which."""
    return not study.language or study.language.lower().startswith("en")


def script_words(study: Study) -> tuple[ScriptWord, ...]:
    """Every word of the talk in the running order. O(length of the script)."""
    found: list[ScriptWord] = []
    for beat in beats(study, running_order(study)):
        found += line_words(beat.key, beat.spoken.text, study.pronunciations)
    return tuple(found)


def line_words(beat: BeatKey, text: str, pronunciations: dict[str, str] | None = None) -> list[ScriptWord]:
    """The words of one line (see model.script.words)."""
    hints = hints_in(text, pronunciations or {})
    found: list[ScriptWord] = []
    for number, (start, end) in enumerate(word_spans(text)):
        word = text[start:end]
        hint = next((hint for hint in hints if hint.start < end and start < hint.end), None)
        if hint is None:
            found.append(ScriptWord(beat, number, word, spoken_words(word)))
        else:
            # Several words with one pronunciation are said where the first of them stands.
            said = spoken_words(hint.said) if hint.start >= start else ()
            rest = spoken_words(text[hint.end : end]) if hint.end < end else ()
            owner = rest == ("s",)
            found.append(ScriptWord(beat, number, word, (said if owner else said + rest), True))
    return found


def spoken_words(text: str) -> tuple[str, ...]:
    """What is said for a piece of text: moves, squares and numbers in words, in letters from a to z."""
    said = unicodedata.normalize("NFD", speak_text(text).translate(_APOSTROPHES).lower().translate(_PLAIN))
    plain = "".join(letter for letter in said if not unicodedata.combining(letter))
    return tuple(word for word in _SPOKEN.findall(plain) if word.strip("'"))
