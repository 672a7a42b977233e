"""Captions as a WebVTT file (W3C, WebVTT: The Web Video Text Tracks Format)."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable

from studyboard.delivery.caption_lines import Caption


def webvtt_text(captions: Iterable[Caption], *, title: str = "") -> str:
    """The whole file, to be stored as UTF-8 without a byte-order mark.

    title: stands behind the signature, where the standard allows any text that holds no arrow
    """
    heading = printable(title).replace("-->", "→")
    blocks = [f"WEBVTT - {heading}" if heading else "WEBVTT"]
    for number, caption in enumerate(captions, start=1):
        lines = [escaped(line) for line in map(printable, caption.lines) if line]
        if lines:
            blocks.append("\n".join((str(number), f"{_clock(caption.start)} --> {_clock(caption.end)}", *lines)))
    return "\n\n".join(blocks) + "\n"


def escaped(text: str) -> str:
    """Text as it stands inside a cue: without the signs that begin tags and character references."""
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")


def printable(text: str) -> str:
    """The text on one line, without characters that no caption can show; broken ones become U+FFFD."""
    shown = "".join(_shown(character) for character in text)
    return " ".join(shown.split())


def _shown(character: str) -> str:
    match unicodedata.category(character):
        case "Cc" | "Zl" | "Zp" | "Zs":
            return " " if character.isspace() else ""
        case "Cs":
            return "\N{REPLACEMENT CHARACTER}"
        case _:
            return character


def _clock(milliseconds: int) -> str:
    seconds, rest = divmod(milliseconds, 1000)
    minutes, seconds = divmod(seconds, 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours:02}:{minutes:02}:{seconds:02}.{rest:03}"
