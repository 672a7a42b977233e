"""Captions to be translated: the original in a note, the translation below it, left to fill in."""

from __future__ import annotations

import re
from collections import defaultdict, deque
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from studyboard.delivery.caption_lines import Caption
from studyboard.delivery.printable import printable
from studyboard.delivery.webvtt import clock_line, signature

UNTRANSLATED: Final = "…"
"""What stands where a translation is missing. A cue without any text is left out by many readers."""

_NOTE: Final = "NOTE"
_BLANK: Final = re.compile(r"\n[ \t]*\n+")


@dataclass(frozen=True, slots=True)
class TranslationFile:
    """text: the whole WebVTT file; missing: how many captions of it are left to be translated."""

    text: str
    missing: int


def translation_file(captions: Sequence[Caption], *, title: str = "", before: str = "") -> TranslationFile:
    """The captions with their times, each with its words in a comment (W3C WebVTT: a block that begins with NOTE).

    before: the file as it was filled in so far; a translation goes along with the words that it is of, to wherever
        these are said now
    """
    filled = _translations(before)
    blocks = [
        signature(title),
        f"{_NOTE}\nTranslate each caption in place of “{UNTRANSLATED}”; its words stand above it. What is filled in "
        "stays where this file is delivered again.",
    ]
    missing = 0
    for number, caption in enumerate(captions, start=1):
        original = _original(caption)
        waiting = filled.get(original)
        translation = waiting.popleft() if waiting else UNTRANSLATED
        missing += translation == UNTRANSLATED
        blocks.append(f"{_NOTE}\n{original}")
        blocks.append(f"{number}\n{clock_line(caption.start, caption.end)}\n{translation}")
    return TranslationFile("\n\n".join(blocks) + "\n", missing)


def _original(caption: Caption) -> str:
    return "\n".join(printable(line).replace("-->", "→") for line in caption.lines)


def _translations(text: str) -> dict[str, deque[str]]:
    """What was filled in, by the words that it is of; the same words may be said more than once."""
    found: dict[str, deque[str]] = defaultdict(deque)
    original = None
    for block in _BLANK.split(text.replace("\r\n", "\n").replace("\r", "\n")):
        lines = block.strip("\n").split("\n")
        if lines[0].strip() == _NOTE:
            original = "\n".join(lines[1:])
            continue
        place = next((place for place, line in enumerate(lines) if "-->" in line), None)
        if place is not None and original is not None:
            translation = "\n".join(lines[place + 1 :]).strip("\n")
            if translation.strip() and translation.strip() != UNTRANSLATED:
                found[original].append(translation)
        original = None
    return found
