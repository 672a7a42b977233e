"""A recording cut into sections of which is known what words of the script they hold, and what they do not."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from studyboard.sound.alignment.pieces import Activity
from studyboard.sound.alignment.recogniser import HeardWord

#: How long a spoken word is at least and at most, from its letters (s): 25 letters a second are faster than anybody
#: reads, 3 slower.
_FASTEST, _SLOWEST = 0.035, 0.33
#: Speech between two words of the script that is shorter than this is a breath or a noise (s).
_NOTHING = 0.35
#: A section is cut where a silence is, when it has this many frames; and, without a silence, from the second on.
_LEAST, _MOST = 300, 3000


@dataclass(frozen=True, slots=True)
class Section:
    """Sound with nothing in it but these words.

    first, last: words of the script, the last one excluded; start, end: frames of the sound
    """

    first: int
    last: int
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Gap:
    """A place where script and sound part.

    first, last: words of the script that are not said there, the last one excluded
    start, end: what is said there instead (frames); equal where nothing is
    heard: indices of the heard words there
    """

    first: int
    last: int
    start: int
    end: int
    heard: range


def sections(
    script: Sequence[str], heard: Sequence[HeardWord], pairs: Sequence[tuple[int, int]], found: Activity
) -> tuple[list[Section], list[Gap]]:
    """What is to be aligned, and what cannot be. script: its spoken words; pairs: see matching.matches."""
    done: list[Section] = []
    gaps: list[Gap] = []
    end_of_sound = len(found.levels)
    first, start = 0, 0
    before = (-1, -1)
    for a, b in [*pairs, (len(script), len(heard))]:
        skipped, between = script[before[0] + 1 : a], range(before[1] + 1, b)
        since = heard[before[1]].end if before[1] >= 0 else 0
        until = heard[b].start if b < len(heard) else end_of_sound
        at_edge = before[1] < 0 or b == len(heard)
        if _parts(skipped, found, since, until):
            if before[0] >= first:
                done.append(Section(first, before[0] + 1, start, _outwards(found, since, until)))
            gaps.append(Gap(before[0] + 1, a, since, until, between))
            first, start = a, _inwards(found, since, until)
        elif not skipped and before[0] >= first and not at_edge and _may_cut(found, since, until, since - start):
            cut = (since + until) // 2
            done.append(Section(first, a, start, cut))
            first, start = a, cut
        before = (a, b)
    if first < len(script):
        done.append(Section(first, len(script), start, end_of_sound))
    return done, gaps


def _parts(skipped: Sequence[str], found: Activity, since: int, until: int) -> bool:
    """True where these words cannot be all that is said between two frames."""
    spoken = found.spoken_seconds(since / 100, until / 100)
    if not skipped:
        return spoken > _NOTHING
    letters = sum(len(word) for word in skipped)
    return not _FASTEST * letters <= spoken + 0.1 or spoken > _SLOWEST * letters + _NOTHING


def _may_cut(found: Activity, since: int, until: int, length: int) -> bool:
    if length < _LEAST:
        return False
    return until - since >= 20 or length > _MOST


def _outwards(found: Activity, since: int, until: int) -> int:
    """Where a section ends before a gap: with the silence after its last word, a fifth of a second at most."""
    end = since
    while end < min(until, since + 20) and not found.speaking[end]:
        end += 1
    return end


def _inwards(found: Activity, since: int, until: int) -> int:
    start = until
    while start > max(since, until - 20) and not found.speaking[start - 1]:
        start -= 1
    return start
