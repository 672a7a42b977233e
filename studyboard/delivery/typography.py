"""Typed text as it is set in print: figurines, curved quotation marks, dashes and dots."""

from __future__ import annotations

import re
from typing import Final

from studyboard.notation.labels import figurine

_SAN_PIECE: Final = re.compile(r"\b[KQRBN](?=[a-h]?[1-8]?x?[a-h][1-8](?!\w))")
_SIGNS: Final = (
    (re.compile(r"(?<=\w)'(?=\w)"), "’"),
    (re.compile(r"(?<!\S)'|(?<=[(\[“–—-])'"), "‘"),
    (re.compile(r"'"), "’"),
    (re.compile(r'(?<!\S)"|(?<=[(\[‘–—-])"'), "“"),
    (re.compile(r'"'), "”"),
    (re.compile(r"\.\.\."), "…"),
    (re.compile(r"(?<=\s)--?(?=\s)|(?<=\w)--(?=\w)"), "–"),
)

_ENDS_SENTENCE: Final = re.compile(r"[.!?…][\"'“”’«»)\]]*\s*$")
_BLANK_LINES: Final = re.compile(r"\n\s*\n")
_ENGLISH_QUOTE: Final = re.compile(r"“([^“”„]*)”")


def figured(text: str) -> str:
    """Text in which the moves that it quotes have figurines for letters: ``"Nf3"`` becomes ``"♘f3"``."""
    return _SAN_PIECE.sub(lambda match: figurine(match[0]), text)


def typeset(text: str, language: str = "en") -> str:
    """Text as a printer would set it; English usage, and the quotation marks of German where that is the language."""
    for sign, printed in _SIGNS:
        text = sign.sub(printed, text)
    if language[:2].lower() == "de":
        text = _ENGLISH_QUOTE.sub(lambda match: f"„{match[1]}“", text)
    return figured(text)


def ends_sentence(text: str) -> bool:
    """Whether a sentence ends with this text."""
    return _ENDS_SENTENCE.search(text) is not None


def paragraphs(text: str) -> list[str]:
    """The parts of a text between its blank lines."""
    return _BLANK_LINES.split(text.strip())
