"""Captions as a WebVTT file (W3C, WebVTT: The Web Video Text Tracks Format)."""

from __future__ import annotations

from collections.abc import Iterable

from studyboard.delivery.caption_lines import Caption
from studyboard.delivery.chapters import Chapter
from studyboard.delivery.printable import printable


def webvtt_text(captions: Iterable[Caption], *, title: str = "") -> str:
    """The whole file, to be stored as UTF-8 without a byte-order mark.

    title: stands behind the signature, where the standard allows any text that holds no arrow
    """
    return _file(((caption.start, caption.end, caption.lines) for caption in captions), title)


def chapter_cues(chapters: Iterable[Chapter], *, title: str = "") -> str:
    """The chapters as a file of the same kind: one cue for each, its title in one line."""
    return _file(((round(one.start * 1000), round(one.end * 1000), (one.title,)) for one in chapters), title)


def _file(cues: Iterable[tuple[int, int, tuple[str, ...]]], title: str) -> str:
    """The file of these cues: start and end (ms), lines."""
    blocks = [signature(title)]
    for number, (start, end, texts) in enumerate(cues, start=1):
        lines = [escaped(line) for line in map(printable, texts) if line]
        if lines:
            blocks.append("\n".join((str(number), clock_line(start, end), *lines)))
    return "\n\n".join(blocks) + "\n"


def signature(title: str = "") -> str:
    """The first line of a file."""
    heading = printable(title).replace("-->", "→")
    return f"WEBVTT - {heading}" if heading else "WEBVTT"


def escaped(text: str) -> str:
    """Text as it stands inside a cue: without the signs that begin tags and character references."""
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")


def clock_line(start: int, end: int) -> str:
    """The line that says when a cue is shown (ms)."""
    return f"{_clock(start)} --> {_clock(end)}"


def _clock(milliseconds: int) -> str:
    seconds, rest = divmod(milliseconds, 1000)
    minutes, seconds = divmod(seconds, 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours:02}:{minutes:02}:{seconds:02}.{rest:03}"
