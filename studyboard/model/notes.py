"""Notes and the commands that programs leave in them."""

from __future__ import annotations

import re

_COMMAND = re.compile(r"\[%[^\[\]]*\]")
_SPACE = re.compile(r"[ \t]{2,}")


def plain_text(note: str) -> str:
    """The note as a reader should see it: without commands such as a clock reading in square brackets."""
    without = _COMMAND.sub(" ", note)
    lines = (_SPACE.sub(" ", line).strip() for line in without.splitlines())
    return "\n".join(lines).strip()


def command_text(note: str) -> str:
    """Only the commands of a note, in their order, unchanged."""
    return " ".join(_COMMAND.findall(note))
