"""From the words that were found in a recording to what the board does, and to what a take keeps of it."""

from __future__ import annotations

from collections.abc import Mapping

from studyboard.model.script import BeatKey, Part
from studyboard.model.study import Study
from studyboard.model.takes import SaidLine, Take
from studyboard.sound.alignment.aligned import AlignedWord, Alignment
from studyboard.sound.alignment.script_words import ScriptWord, script_words
from studyboard.timing.by_voice import VoicedMove, WordSaid, voiced_moves


def moves_of(study: Study, found: Alignment) -> tuple[VoicedMove, ...]:
    """What the board does when it follows the voice. O(size of the talk)."""
    said = {
        beat: tuple(WordSaid(word.start, word.end, word.sure) for word in words)
        for beat, words in _by_line(found).items()
    }
    return voiced_moves(study, said, found.seconds)


def words_of_take(study: Study, take: Take) -> tuple[ScriptWord, ...]:
    """The words that a take may tell: from its first beat to its last one, all of the talk where nothing is known."""
    script = script_words(study)
    told = {event.beat for event in take.events if event.beat is not None}
    places = [number for number, word in enumerate(script) if word.beat in told]
    return script[places[0] : places[-1] + 1] if places else script


def said_lines(study: Study, take: Take, found: Alignment) -> tuple[SaidLine, ...]:
    """The times of words as a take keeps them: of the lines in which some are certain, and only of those words."""
    lines: list[SaidLine] = []
    for beat, words in _by_line(found).items():
        if any(word.sure for word in words):
            starts = tuple(_samples(take, word.start) if word.sure else None for word in words)
            ends = tuple(_samples(take, word.end) if word.sure else None for word in words)
            lines.append(SaidLine(beat, _text(study, beat), starts, ends))
    return tuple(lines)


def _samples(take: Take, seconds: float) -> int:
    return min(round(seconds * take.rate), take.samples)


def _text(study: Study, beat: BeatKey) -> str:
    return (study.line(beat) if isinstance(beat, Part) else study.nodes[beat]).spoken.text


def _by_line(found: Alignment) -> Mapping[BeatKey, list[AlignedWord]]:
    lines: dict[BeatKey, list[AlignedWord]] = {}
    for word in found.words:
        lines.setdefault(word.beat, []).append(word)
    return lines
