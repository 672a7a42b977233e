"""A beat whose words were found in its recording: planned times become the true ones."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, replace

from studyboard.timing.timeline import Happening, Stretch, WordTime


@dataclass(frozen=True, slots=True)
class KnownWord:
    """A word of which the time is known. word: index in its line; at, until: when (s, as the stretch counts)"""

    word: int
    at: float
    until: float


def with_known_words(stretch: Stretch, known: Sequence[KnownWord]) -> Stretch:
    """The beat with its words where they are said; what is not known lies between what is, in proportion.

    Marks go with their words; a think pause begins when the speech has ended. O(length of the line).
    """
    planned = {word.word: word for word in stretch.words}
    knots: list[tuple[float, float]] = [(stretch.start, stretch.start)]
    for one in known:
        word = planned.get(one.word)
        at, until = max(one.at, knots[-1][1]), min(one.until, stretch.end)
        if word is None or at > until or word.at < knots[-1][0]:
            continue
        knots += [(word.at, at), (word.until, until)]
    if len(knots) == 1:
        return stretch
    after = stretch.speech_end - knots[-1][0]
    knots.append((stretch.speech_end, min(stretch.end, knots[-1][1] + after)))
    moved = tuple(
        WordTime(_moved(knots, word.at), _moved(knots, word.until), word.word, word.text) for word in stretch.words
    )
    speech_end = max([word.until for word in moved], default=stretch.speech_end)
    events = []
    for event in stretch.events:
        if event.what is Happening.THINK:
            at = min(stretch.end, max(event.at, speech_end))
        else:
            at = _moved(knots, event.at)
        events.append(replace(event, at=at))
    return replace(
        stretch,
        speech_end=speech_end,
        said=moved,
        shown=tuple(sorted(events, key=lambda event: event.at)),
        since=0.0,
    )


def _moved(knots: Sequence[tuple[float, float]], planned: float) -> float:
    """The true time of a planned one."""
    place = bisect_right(knots, planned, key=lambda knot: knot[0])
    if place == 0:
        return knots[0][1]
    before = knots[place - 1]
    if place == len(knots):
        return before[1] + planned - before[0]
    after = knots[place]
    if after[0] <= before[0]:
        return before[1]
    return before[1] + (planned - before[0]) * (after[1] - before[1]) / (after[0] - before[0])
