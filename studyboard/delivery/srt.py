"""Captions as a SubRip file, as players have agreed to read it; it was never written down as a standard."""

from __future__ import annotations

import re
from collections.abc import Iterable

from studyboard.delivery.caption_lines import Caption
from studyboard.delivery.printable import printable

# Players take these for tags and hide them, and the format has no way of escaping.
_TAG_START = re.compile(r"<(?=[A-Za-z/!])")


def srt_text(captions: Iterable[Caption]) -> str:
    """The whole file, to be stored as UTF-8.

    SubRip cannot escape, and players hide what they take for a tag (<b>) or a command ({…}). So that every word is
    seen, an arrow, a sign that would begin a tag, a brace and a backslash are replaced by signs that look alike and
    that every font has. An invisible joiner behind the sign would keep it as it is, but pysubs2 for one hides
    whatever stands in braces all the same. The WebVTT file, which can escape, has the signs themselves.
    """
    blocks: list[str] = []
    for caption in captions:
        lines = [_plain(line) for line in map(printable, caption.lines) if line]
        if lines:
            clock = f"{_clock(caption.start)} --> {_clock(caption.end)}"
            blocks.append("\n".join((str(len(blocks) + 1), clock, *lines)) + "\n")
    return "\n".join(blocks)


def _plain(line: str) -> str:
    without = line.replace("-->", "→").replace("{", "(").replace("}", ")").replace("\\", "∖")
    return _TAG_START.sub("‹", without)


def _clock(milliseconds: int) -> str:
    seconds, rest = divmod(milliseconds, 1000)
    minutes, seconds = divmod(seconds, 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours:02}:{minutes:02}:{seconds:02},{rest:03}"
