"""A recording cut into sections of which is known what words of the script they hold, and what they do not."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

from studyboard.sound.alignment.pieces import Activity
from studyboard.sound.alignment.recogniser import HeardWord

#: How fast a stretch may be told against the rest of the talk (seconds a letter, as a ratio): told in less time, words
#: of it were left out; in more, something else was said there too. Single words of a calm reader vary by a third.
_HURRIED, _LINGERING = 0.7, 1.7
#: Speech between two words of the script that is shorter than this is a breath or a noise (s).
_NOTHING = 0.35
#: A word of so few letters is too short to tell whether it was left out.
_TOO_SHORT = 3
#: How fast people read where nothing is known yet (seconds a letter): 15 letters a second.
_USUAL = 0.067
#: A section is cut in a pause when it has this many frames; and, without a pause, from the second on.
_LEAST, _MOST = 300, 3000
#: A silence that a section may be cut in (frames).
_PAUSE = 20


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
    usual = seconds_a_letter(script, heard, pairs, found)
    end_of_sound = len(found.levels)
    first, start = 0, 0
    before = (-1, -1)
    for a, b in [*pairs, (len(script), len(heard))]:
        between = range(before[1] + 1, b)
        since = heard[before[1]].end if before[1] >= 0 else 0
        until = heard[b].start if b < len(heard) else end_of_sound
        whole_since = heard[before[1]].start if before[1] >= 0 else 0
        whole_until = heard[b].end if b < len(heard) else end_of_sound
        left_out = script[before[0] + 1 : a]
        around = script[max(0, before[0]) : a + 1]
        spoken, inside = found.spoken_frames(whole_since, whole_until), found.spoken_frames(since, until)
        if _parts(left_out, around, spoken / 100, inside / 100, usual):
            if before[0] >= first:
                done.append(Section(first, before[0] + 1, start, _outwards(found, since, until)))
            gaps.append(Gap(before[0] + 1, a, since, until, between))
            first, start = a, _inwards(found, since, until)
        elif not left_out and before[0] >= max(0, first) and b < len(heard):
            length = since - start
            if length >= _LEAST and (until - since >= _PAUSE or length > _MOST):
                cut = (since + until) // 2
                done.append(Section(first, a, start, cut))
                first, start = a, cut
        before = (a, b)
    if first < len(script):
        done.append(Section(first, len(script), start, end_of_sound))
    return done, gaps


def seconds_a_letter(
    script: Sequence[str], heard: Sequence[HeardWord], pairs: Sequence[tuple[int, int]], found: Activity
) -> float:
    """How fast this presenter speaks: the median over the words that were recognised (s a letter)."""
    lengths = [
        found.spoken_frames(heard[b].start, heard[b].end) / 100 / len(script[a])
        for a, b in pairs
        if len(script[a]) > _TOO_SHORT
    ]
    return median(lengths) if len(lengths) >= 10 else _USUAL


def _parts(left_out: Sequence[str], around: Sequence[str], spoken: float, inside: float, usual: float) -> bool:
    """True where script and sound part: too little or too much is said for these words and the two beside them.

    spoken: how long somebody speaks, the words beside included; inside: between those (s)
    """
    expected = usual * sum(len(word) for word in around)
    if spoken - _LINGERING * expected > _NOTHING and inside > _NOTHING:
        return True
    return sum(len(word) for word in left_out) > _TOO_SHORT and spoken < _HURRIED * expected


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
