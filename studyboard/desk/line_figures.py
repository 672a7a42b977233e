"""The figures beside a spoken line: its words, how long they take, and how long they should."""

from __future__ import annotations

from dataclasses import dataclass

from studyboard.model.script import words
from studyboard.translation import tr, written_number


@dataclass(frozen=True, slots=True)
class LineFigures:
    """What is said of a line's length.

    words: how many; estimated: how long they take (s); intended: how long they should (s), or None; think: the pause
    after them (s)
    """

    words: int
    estimated: float
    intended: float | None
    think: float

    @property
    def over(self) -> float:
        """How much longer the line is than it should be (s); 0.0 where it fits."""
        return 0.0 if self.intended is None else max(0.0, round(self.estimated - self.intended, 1))

    def __str__(self) -> str:
        """``"13 words · 5.1 s · set to 10 s"``"""
        parts = [
            tr("1 word") if self.words == 1 else tr("{words} words", words=self.words),
            tr("{seconds:.1f} s", seconds=self.estimated),
        ]
        if self.intended is not None:
            over = tr(", {over:.1f} s too short", over=self.over) if self.over else ""
            parts.append(tr("set to {seconds} s{over}", seconds=_short(self.intended), over=over))
        if self.think:
            parts.append(tr("think {seconds} s", seconds=_short(self.think)))
        return " · ".join(parts)


def count_words(text: str) -> int:
    """How many words a line has; a sign that stands alone, such as a dash, is none."""
    return sum(any(letter.isalnum() for letter in word) for word in words(text))


def _short(seconds: float) -> str:
    return written_number(round(seconds, 1), "g")
