"""Talks as they are kept in text files: plain text, lines with times, WebVTT and SRT."""

from __future__ import annotations

import re
from dataclasses import dataclass
from html import unescape

_TIMED_LINE = re.compile(r"^[ \t]*\[(?:(\d+):)?(\d{1,3}):(\d{2})(?:[.,](\d{1,3}))?\][ \t]*", re.MULTILINE)
_CAPTION = re.compile(
    r"(?:(\d+):)?(\d{1,2}):(\d{2})[.,](\d{1,3})[ \t]*-->[ \t]*(?:(\d+):)?(\d{1,2}):(\d{2})[.,](\d{1,3})"
)
_TAG = re.compile(r"</?[a-zA-Z0-9_.:]*(?:\s[^<>]*)?>|\{\\[^{}]*\}")
_BLANK = re.compile(r"\n[ \t]*(?:\n[ \t]*)+")
_SENTENCE_ENDS = re.compile(r"[.!?…][\"'”’)]*$")
_JOINED_FOR = 15.0
#: Captions that follow each other within this time follow at once (s).
_AT_ONCE = 0.05


@dataclass(frozen=True, slots=True)
class Paragraph:
    """A stretch of the talk.

    at: when it begins (s), None where the file has no times
    until: when it ends (s), where the file says so
    start, end: where it stands in the text, in characters
    """

    at: float | None
    until: float | None
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Transcript:
    """A talk as running text, and its paragraphs."""

    text: str
    paragraphs: tuple[Paragraph, ...]


def transcript(text: str) -> Transcript:
    """Read a talk of any of the four kinds; never raises. O(length).

    Captions (WebVTT of the W3C, SRT) are joined until a sentence ends, or for a quarter of a minute where nothing
    marks the end of one; times in lines are `[m:ss]` or `[h:mm:ss]`.
    """
    plain = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n").replace("\x00", "")
    if _CAPTION.search(plain):
        return _joined(_captions(plain))
    if _TIMED_LINE.search(plain):
        return _joined(_timed_lines(plain))
    return _joined([(None, None, part) for part in _BLANK.split(plain)])


def _joined(parts: list[tuple[float | None, float | None, str]]) -> Transcript:
    # Stretches with times are often cut anywhere; only paragraphs that somebody has made are paragraphs for the reader.
    between = "\n" if any(at is not None for at, _, _ in parts) else "\n\n"
    paragraphs: list[Paragraph] = []
    pieces: list[str] = []
    length = 0
    for at, until, part in parts:
        stripped = part.strip()
        if not stripped:
            continue
        if pieces:
            pieces.append(between)
            length += len(between)
        paragraphs.append(Paragraph(at, until, length, length + len(stripped)))
        pieces.append(stripped)
        length += len(stripped)
    text = "".join(pieces)
    return Transcript(text, tuple(paragraphs))


def _seconds(hours: str | None, minutes: str, seconds: str, fraction: str | None) -> float:
    thousandths = int((fraction or "0").ljust(3, "0"))
    return int(hours or 0) * 3600 + int(minutes) * 60 + int(seconds) + thousandths / 1000


def _timed_lines(text: str) -> list[tuple[float | None, float | None, str]]:
    found: list[tuple[float | None, float | None, str]] = []
    matches = list(_TIMED_LINE.finditer(text))
    found.append((None, None, text[: matches[0].start()]))
    for number, match in enumerate(matches):
        following = matches[number + 1] if number + 1 < len(matches) else None
        end = following.start() if following else len(text)
        at = _seconds(*match.groups())
        until = _seconds(*following.groups()) if following else None
        found.append((at, until if until is None or until >= at else None, _BLANK.sub("\n", text[match.end() : end])))
    return found


def _captions(text: str) -> list[tuple[float | None, float | None, str]]:
    """The captions with their times, those of one sentence joined; notes, styles and numbers are left out."""
    cues: list[tuple[float, float, str]] = []
    shown: list[str] = []
    for block in _BLANK.split(text):
        lines = block.split("\n")
        place = next((number for number, line in enumerate(lines) if _CAPTION.search(line)), None)
        if place is None:
            continue
        times = _CAPTION.search(lines[place])
        assert times is not None
        here = [unescape(_TAG.sub("", line)).strip() for line in lines[place + 1 :] if not _CAPTION.search(line)]
        here = [line for line in here if line]
        at, until = _seconds(*times.groups()[:4]), _seconds(*times.groups()[4:])
        rolls = bool(cues) and at <= cues[-1][1] + _AT_ONCE
        said = " ".join(here[_still_shown(shown, here) if rolls else 0 :])
        shown = here
        if said:
            cues.append((at, until, said))
    found: list[tuple[float | None, float | None, str]] = []
    open_since: float | None = None
    for at, until, said in cues:
        if open_since is None or at - open_since > _JOINED_FOR or at < open_since:
            found.append((at, until, said))
            open_since = at
        else:
            since, _, before = found[-1]
            found[-1] = (since, until, f"{before} {said}")
        if _SENTENCE_ENDS.search(said):
            open_since = None
    return [_until_the_next(found, place) for place in range(len(found))]


def _still_shown(before: list[str], here: list[str]) -> int:
    """How many lines of a caption the one before it has shown already, as in captions that roll up line by line."""
    most = min(len(before), len(here))
    # One line alone that is said twice is said twice; one that stands over another has rolled up.
    least = 1 if len(here) > 1 or len(before) > 1 else most + 1
    return next((count for count in range(most, least - 1, -1) if before[-count:] == here[:count]), 0)


def _until_the_next(
    found: list[tuple[float | None, float | None, str]], place: int
) -> tuple[float | None, float | None, str]:
    """A stretch that lasts until the next one begins, so that the silence between them is counted."""
    at, until, said = found[place]
    following = found[place + 1][0] if place + 1 < len(found) else None
    return at, until if following is None or at is None or following < at else following, said
