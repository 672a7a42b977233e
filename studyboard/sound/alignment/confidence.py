"""Which of the times that were found are certain."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from statistics import median

import numpy as np

from studyboard.sound.alignment.pieces import Activity
from studyboard.sound.alignment.recogniser import HeardWord

#: Two ways of listening that put a word this near each other (frames) are right together.
_AGREE = 12
#: How fast words may be said against the rest of the talk, for these words to be all that is said there.
_HURRIED, _LINGERING = 0.6, 1.7
#: Less time than this a letter is no word: it was squeezed in where there was no room (frames).
_SQUEEZED = 1.6
#: A single word that both hearings missed is certain with the ones beside it; more of them only if the sound fits them
#: as well as it does this share of the words that both have heard.
_ALONE = 1
_FIT = 0.2
#: Of so many words on both sides, this share must be agreed on: of another talk than the script some words agree, too.
_AROUND, _DENSE = 5, 0.5
#: Words at the very beginning and end, with certain ones on one side only: this many may be certain.
_AT_THE_EDGE = 3


@dataclass(slots=True)
class FoundWord:
    """When a spoken word is said (frames), how well the sound fits it, and whether its time is certain."""

    start: int
    end: int
    score: float
    sure: bool = False


def judge(
    said: Sequence[str],
    times: Sequence[FoundWord | None],
    at_first: Mapping[int, HeardWord],
    found: Activity,
    usual: float,
) -> None:
    """Set which times are certain: those on which both hearings agree, and what lies between and fits.

    said: the spoken words of the script; times: where the second hearing has them, None for those that are not said
    at_first: where the first hearing has those that it has heard; usual: seconds a letter of this presenter

    The first hearing chooses its words freely, the second is told them; that both come to the same time by chance is
    unlikely. Words that the first one has misheard are certain if they take the time that such words take, if none of
    them is squeezed, and, for several, if the sound fits them.
    """
    agreed = [
        word is not None and place in at_first and abs(word.start - at_first[place].start) <= _AGREE
        for place, word in enumerate(times)
    ]
    agreed = [yes and _is_dense(agreed, place) for place, yes in enumerate(agreed)]
    scores = [word.score for place, word in enumerate(times) if word is not None and agreed[place]]
    least = float(np.quantile(scores, _FIT)) if scores else 0.0
    for place, word in enumerate(times):
        if word is not None:
            word.sure = agreed[place]
    for first, last in _runs(agreed):
        words = [word for word in times[first:last] if word is not None]
        if len(words) < last - first:
            continue
        at_edge = first == 0 or last == len(times)
        if at_edge and (len(words) > _AT_THE_EDGE or len(words) == len(times)):
            continue
        if _fits(said, times, first, last, found, usual, least):
            for word in words:
                word.sure = True


def _is_dense(agreed: Sequence[bool], place: int) -> bool:
    near = agreed[max(0, place - _AROUND) : place + _AROUND + 1]
    return sum(near) >= _DENSE * len(near)


def _fits(
    said: Sequence[str],
    times: Sequence[FoundWord | None],
    first: int,
    last: int,
    found: Activity,
    usual: float,
    least: float,
) -> bool:
    """True where a run of words takes the time that it should, and sounds like them."""
    around = [word for word in times[max(0, first - 1) : last + 1] if word is not None]
    inside = [word for word in times[first:last] if word is not None]
    letters = sum(len(word) for word in said[max(0, first - 1) : last + 1])
    spoken = found.spoken_frames(around[0].start, around[-1].end)
    if not _HURRIED <= spoken / (100 * usual * letters) <= _LINGERING:
        return False
    if any(word.end - word.start < _SQUEEZED * len(text) for word, text in zip(inside, said[first:last], strict=True)):
        return False
    if len(inside) <= _ALONE:
        return True
    return median(word.score for word in inside) >= least


def _runs(agreed: Sequence[bool]) -> list[tuple[int, int]]:
    """The stretches that are not agreed, each with the place behind its last."""
    found: list[tuple[int, int]] = []
    for place, yes in enumerate(agreed):
        if yes:
            continue
        if found and found[-1][1] == place:
            found[-1] = (found[-1][0], place + 1)
        else:
            found.append((place, place + 1))
    return found
