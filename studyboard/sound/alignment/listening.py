"""Listening to a recording of the talk: when is each word of the script said?"""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np
from numpy.typing import NDArray

from studyboard.model.errors import StudyboardError
from studyboard.sound.alignment.aligned import AlignedWord, Alignment, Departure, Unmatched
from studyboard.sound.alignment.confidence import FoundWord, judge
from studyboard.sound.alignment.matching import matches
from studyboard.sound.alignment.pieces import FRAME, RATE, activity, pieces, with_floor
from studyboard.sound.alignment.recogniser import HeardWord, Recogniser
from studyboard.sound.alignment.script_words import ScriptWord
from studyboard.sound.alignment.sections import Gap, Section, seconds_a_letter, sections

#: Share of the time that the first hearing takes of the whole, about.
_FIRST = 0.8


class ListeningStoppedError(StudyboardError):
    """Whoever waited for it does not want it any more."""


def listen(
    script: Sequence[ScriptWord],
    sound: NDArray[np.int16],
    progress: Callable[[float], None] = lambda _: None,
    stopped: Callable[[], bool] = lambda: False,
) -> Alignment:
    """Find the words of the script in a recording.

    First the recording is heard freely, with the words of the script and a liking for their order; what was heard is
    compared with the script, so that left out, repeated and added words are found; then each section of which the
    words are certain is heard once more along exactly these words, which gives their times to a hundredth of a second.

    sound: 16-bit samples at pieces.RATE, one channel
    progress: told the share that is done, 0.0 to 1.0; stopped: asked between pieces

    Raises SoundUnavailableError where pocketsphinx is missing, ListeningStoppedError where it was stopped.
    """
    said = [word for one in script for word in one.said]
    hinted = frozenset(word for one in script if one.hinted for word in one.said)
    recogniser = Recogniser(_lines(script), hinted)
    found = activity(sound)
    clear = with_floor(sound, found)
    heard: list[HeardWord] = []
    for start, end in pieces(found):
        if stopped():
            raise ListeningStoppedError("")
        if found.speaking[start:end].any():
            piece = recogniser.heard(clear[start * FRAME : end * FRAME])
            heard += [HeardWord(word.said, word.start + start, word.end + start) for word in piece]
        progress(_FIRST * end / max(1, len(found.levels)))
    pairs = matches(said, [word.said for word in heard])
    whole, gaps = sections(said, heard, pairs, found)
    times: list[FoundWord | None] = [None] * len(said)
    at_first = {a: heard[b] for a, b in pairs}
    for section in whole:
        if stopped():
            raise ListeningStoppedError("")
        _follow(recogniser, said, section, clear, at_first, times)
        progress(_FIRST + (1 - _FIRST) * section.last / max(1, len(said)))
    judge(said, times, at_first, found, seconds_a_letter(said, heard, pairs, found))
    for one in times:
        if one is not None:
            one.start = found.onset(one.start, one.end)
    words = _written(script, times, len(sound) / RATE)
    unmatched = [*_departures(script, said, heard, gaps), *_doubtful(words, script)]
    unmatched.sort(key=lambda one: (one.start, one.end))
    return Alignment(tuple(words), tuple(unmatched), len(sound) / RATE)


def _lines(script: Sequence[ScriptWord]) -> list[list[str]]:
    lines: list[list[str]] = []
    before: object = None
    for word in script:
        if not lines or word.beat != before:
            lines.append([])
        lines[-1] += word.said
        before = word.beat
    return lines


def _follow(
    recogniser: Recogniser,
    said: Sequence[str],
    section: Section,
    sound: NDArray[np.int16],
    at_first: dict[int, HeardWord],
    times: list[FoundWord | None],
) -> None:
    """Hear one section along its words; where they cannot be found, as they were heard at first."""
    words = said[section.first : section.last]
    along = recogniser.along(words, sound[section.start * FRAME : section.end * FRAME])
    for place in range(section.first, section.last):
        if along is not None:
            word = along[place - section.first]
            times[place] = FoundWord(section.start + word.start, section.start + word.end, word.score)
        elif place in at_first:
            times[place] = FoundWord(at_first[place].start, at_first[place].end, at_first[place].score)


def _written(script: Sequence[ScriptWord], times: Sequence[FoundWord | None], seconds: float) -> list[AlignedWord]:
    """The words as they are written, with the times of what is said for them."""
    found: list[AlignedWord] = []
    place = 0
    at = 0.0
    for word in script:
        spoken = [one for one in times[place : place + len(word.said)] if one is not None]
        lacks = len(spoken) < len(word.said)
        place += len(word.said)
        if spoken:
            start, at = max(at, spoken[0].start / 100), max(at, spoken[-1].end / 100)
            sure = spoken[0].sure and not lacks
            found.append(AlignedWord(word.beat, word.word, word.text, start, max(start, at), sure))
        else:
            # What is not spoken, such as a dash, is as certain as the word before it.
            sure = not word.said and (not found or found[-1].sure)
            found.append(AlignedWord(word.beat, word.word, word.text, at, at, sure))
    return found


def _departures(
    script: Sequence[ScriptWord], said: Sequence[str], heard: Sequence[HeardWord], gaps: Sequence[Gap]
) -> list[Unmatched]:
    """What was skipped, repeated or added."""
    owners = [number for number, word in enumerate(script) for _ in word.said]
    found: list[Unmatched] = []
    for gap in gaps:
        start, end = gap.start / 100, gap.end / 100
        if gap.first < gap.last:
            places = sorted(set(owners[gap.first : gap.last]))
            found += _of_lines(script, places, Departure.SKIPPED, start, end)
        spoken = end - start > 0.35 and len(gap.heard) > 0
        if spoken:
            again = _said_before(said, [heard[place].said for place in gap.heard], gap.first)
            if again is not None:
                places = sorted(set(owners[again[0] : again[1]]))
                found += _of_lines(script, places, Departure.REPEATED, start, end)
            else:
                found.append(Unmatched(Departure.AD_LIBBED, start, end))
    return found


def _said_before(said: Sequence[str], heard: Sequence[str], place: int) -> tuple[int, int] | None:
    """Which words just before or after *place* these are once more; None where they are not."""
    window = range(max(0, place - 3 * len(heard) - 6), min(len(said), place + 3 * len(heard) + 6))
    pairs = matches([said[at] for at in window], heard)
    if len(pairs) < max(2, 0.5 * len(heard)):
        return None
    return window[pairs[0][0]], window[pairs[-1][0]] + 1


def _doubtful(words: Sequence[AlignedWord], script: Sequence[ScriptWord]) -> list[Unmatched]:
    found: list[Unmatched] = []
    run: list[int] = []
    for number in range(len(words) + 1):
        if number < len(words) and not words[number].sure and words[number].end > words[number].start:
            run.append(number)
        elif run:
            found += _of_lines(script, run, Departure.DOUBTFUL, words[run[0]].start, words[run[-1]].end)
            run = []
    return found


def _of_lines(
    script: Sequence[ScriptWord], places: Sequence[int], kind: Departure, start: float, end: float
) -> list[Unmatched]:
    """One entry for each line that these words are in."""
    found: list[Unmatched] = []
    for place in places:
        word = script[place]
        if found and found[-1].beat == word.beat:
            last = found[-1]
            text = f"{last.text} {word.text}"
            found[-1] = Unmatched(kind, start, end, text, last.beat, last.word, last.words + 1)
        else:
            found.append(Unmatched(kind, start, end, word.text, word.beat, word.word, 1))
    return found
