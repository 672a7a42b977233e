"""Text as it can be shown and stored: on one line, without characters that nothing can display."""

from __future__ import annotations

import unicodedata


def printable(text: str) -> str:
    """The text on one line, white space made single and control characters dropped; broken ones become U+FFFD."""
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
