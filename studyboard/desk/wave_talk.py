"""What stands beside the wave of a take: its beats, its moves and its words, by the second of the take."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TypeVar

from studyboard.desk.ruler_talk import beat_label
from studyboard.model.positions import Positions
from studyboard.model.said_words import said_words
from studyboard.model.script import BeatKey
from studyboard.model.study import Study
from studyboard.model.takes import Take
from studyboard.timing.clock import clock
from studyboard.timing.recorded import recorded
from studyboard.timing.timeline import Happening
from studyboard.translation import tr, written_number


@dataclass(frozen=True, slots=True)
class WaveWord:
    """A word. at, until: when (s); found: False where its time is only reckoned from the pace"""

    at: float
    until: float
    text: str
    found: bool


@dataclass(frozen=True, slots=True)
class WaveBeat:
    """A beat of the take. start, end: where it lies (s); label: its move or part"""

    key: BeatKey
    start: float
    end: float
    label: str


@dataclass(frozen=True, slots=True)
class WaveMove:
    """The board changing. at: when (s); node, beat: what is shown, and what is told; label: the move"""

    at: float
    node: int
    beat: BeatKey | None
    label: str


Timed = TypeVar("Timed", WaveWord, WaveMove)


class WaveTalk:
    """One take, indexed for drawing and stepping.

    State: none that changes; made anew with every edit that touches it.
    """

    __slots__ = ("beats", "moves", "seconds", "words")

    def __init__(self, study: Study, positions: Positions, take: Take) -> None:
        self.seconds = take.length.seconds
        stretches = recorded(study, take).stretches
        self.beats = [
            WaveBeat(stretch.key, stretch.start, stretch.end, beat_label(positions, stretch.key))
            for stretch in stretches
        ]
        self.words: list[WaveWord] = []
        for stretch in stretches:
            found = {word.word for word in said_words(take, stretch.key, stretch.spoken.text)}
            self.words += [WaveWord(one.at, one.until, one.text, one.word in found) for one in stretch.words]
        backs = {
            (round(event.at, 3), event.node)
            for stretch in stretches
            for event in stretch.events
            if event.what is Happening.BACK
        }
        self.moves = [
            WaveMove(
                event.at.seconds,
                event.node,
                event.beat,
                self._label(positions, event.node, (round(event.at.seconds, 3), event.node) in backs),
            )
            for event in take.events
            if event.node in study.nodes
        ]

    def move_at(self, seconds: float) -> WaveMove | None:
        """What is on the board at this second; None before the first."""
        place = bisect_right(self.moves, seconds, key=lambda move: move.at)
        return self.moves[place - 1] if place else None

    def beat_at(self, seconds: float) -> WaveBeat | None:
        """The beat that is told at this second."""
        place = bisect_right(self.beats, seconds, key=lambda beat: beat.start)
        return self.beats[place - 1] if place else None

    def word_at(self, seconds: float) -> WaveWord | None:
        """The word that is said at this second; None in a pause."""
        place = bisect_right(self.words, seconds, key=lambda word: word.at)
        word = self.words[place - 1] if place else None
        return word if word is not None and seconds < word.until else None

    def stop_beyond(self, seconds: float, step: int, of: str) -> float | None:
        """The next (step 1) or last (−1) second before or after this one at which a word, move or beat begins.

        of: "words", "moves" or "beats"
        """
        starts = [self._start(one) for one in getattr(self, of)]
        if step > 0:
            return next((start for start in starts if start > seconds + 1e-4), None)
        return next((start for start in reversed(starts) if start < seconds - 1e-4), None)

    def told(self, seconds: float) -> str:
        """The place in words: time, beat, what is on the board, the word."""
        beat, move, word = self.beat_at(seconds), self.move_at(seconds), self.word_at(seconds)
        whole, tenths = divmod(round(10 * seconds), 10)
        parts = [f"{clock(whole)}{written_number(tenths / 10, '.1f')[1:]}"]
        if beat is not None:
            parts.append(tr("beat {label}", label=beat.label))
        if move is not None:
            parts.append(tr("on the board {label}", label=move.label))
        if word is not None:
            parts.append(f"“{word.text}”" if word.found else tr("about “{word}”", word=word.text))
        return ", ".join(parts)

    @staticmethod
    def _start(one: WaveWord | WaveBeat | WaveMove) -> float:
        return one.start if isinstance(one, WaveBeat) else one.at

    @staticmethod
    def _label(positions: Positions, node: int, back: bool) -> str:
        if positions.study.nodes[node].move is None:
            return tr("Start")
        label = positions.san(node)
        return f"↩ {label}" if back else label


def in_view(items: Sequence[Timed], first: float, last: float) -> Iterator[Timed]:
    """Those that begin between two seconds, and the one before them."""
    start = max(0, bisect_right(items, first, key=lambda one: one.at) - 1)
    for item in items[start:]:
        if item.at > last:
            return
        yield item
