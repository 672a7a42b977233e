"""A presenter's pace, learnt from talks whose times are known.

A spoken line is taken to last as long as its syllables at one rate and its pauses by their kind. The published rates
say what to expect before anything is known, and each timed line moves that as far as it is worth (Bayesian linear
regression); a line that does not fit at all, because somebody coughed or the time is wrong, counts for little (Huber
weights). Few lines therefore leave the pace near the published one, with a wide range.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from studyboard.model.errors import StudyboardError
from studyboard.model.script import Pace, Part, words
from studyboard.model.study import Study
from studyboard.notation.narration.transcripts import transcript
from studyboard.timing.pace import Silence, weigh
from studyboard.timing.recorded import recorded_seconds
from studyboard.translation import tr

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

#: Fewer timed lines than this say nothing about a presenter.
LEAST_LINES = 4
#: How far presenters differ from the published pace: of the time of a syllable (share), and of each pause (s); common
#: practice: single paragraphs of one fluent talk lie between 140 and 235 words a minute around 185.
_SYLLABLE_SPREAD = 0.2
_PAUSE_SPREAD = (0.18, 0.35, 0.7)
#: How far one line strays from a good pace: a share of its length, and the rounding of times to whole seconds (s).
_STRAYS, _ROUNDING = 0.06, 0.45
_HUBER, _ROUNDS = 1.5, 25
#: Standard deviations on either side that hold nine tenths of a normal distribution.
_NINE_TENTHS = 1.645


class TooFewLinesError(StudyboardError):
    """A talk has too few lines with times to learn a pace from."""


@dataclass(frozen=True, slots=True)
class TimedLine:
    """A line and how long it took (s), with the silence after it."""

    text: str
    seconds: float


@dataclass(frozen=True, slots=True)
class PaceFit:
    """What the lines say of their presenter.

    pace: the most likely one
    words_per_minute: running, pauses included (1/min)
    syllables_per_second: articulation rate with its range, in which it lies with nine tenths of probability (1/s)
    lines: how many lines were used
    strays: mean distance of the lines from the pace, as a share of their length
    """

    pace: Pace
    words_per_minute: float
    syllables_per_second: float
    syllables_range: tuple[float, float]
    lines: int
    strays: float


@dataclass(frozen=True, slots=True)
class HeldOut:
    """How well the first half of a talk foretells the second.

    lines: of the second half
    mean_abs_error_s: by how much a line is missed on average (s)
    relative_error: the same as a share of each line's length, on average
    total_error: by how much the whole half is missed, as a share of its length; positive where it took less
    constant_rate_error: relative_error of the words per minute of the first half, for comparison
    """

    lines: int
    mean_abs_error_s: float
    relative_error: float
    total_error: float
    constant_rate_error: float


def timed_lines(text: str) -> tuple[TimedLine, ...]:
    """The lines of a transcript with times (`[m:ss]`, WebVTT, SRT) that have an end. O(length)."""
    talk = transcript(text)
    lines: list[TimedLine] = []
    for paragraph in talk.paragraphs:
        if paragraph.at is not None and paragraph.until is not None and paragraph.until > paragraph.at:
            lines.append(TimedLine(talk.text[paragraph.start : paragraph.end], paragraph.until - paragraph.at))
    return tuple(lines)


def recorded_lines(study: Study) -> tuple[TimedLine, ...]:
    """The spoken lines of a study as its latest takes have them; think pauses are taken off."""
    lines: list[TimedLine] = []
    for key, seconds in recorded_seconds(study).items():
        if isinstance(key, Part):
            text, think = study.line(key).spoken.text, 0.0
        elif key in study.nodes:
            text, think = study.nodes[key].spoken.text, study.nodes[key].think
        else:
            continue
        if text.strip() and seconds - think > 0:
            lines.append(TimedLine(text, seconds - think))
    return tuple(lines)


def fit_pace(lines: Sequence[TimedLine], expected: Pace | None = None) -> PaceFit:
    """The pace of whoever spoke these lines.

    expected: what to believe before the lines are seen; the published pace by default
    Raises TooFewLinesError for fewer than LEAST_LINES.
    """
    import numpy as np

    spoken = [line for line in lines if words(line.text)]
    if len(spoken) < LEAST_LINES:
        raise TooFewLinesError(
            tr(
                "A pace is learnt from {least} timed lines at least, and there are {count}. Times "
                "are written as [m:ss] before each paragraph, or come with WebVTT or SRT.",
                least=LEAST_LINES,
                count=len(spoken),
            )
        )
    believed = Pace() if expected is None else expected
    counts = np.array([_counts(line.text) for line in spoken], dtype=float)
    seconds = np.array([line.seconds for line in spoken], dtype=float)
    mean, spread = _believed(believed)
    noise = np.hypot(_STRAYS * seconds, _ROUNDING)
    weights = np.ones(len(spoken))
    found, covariance = mean, np.diag(spread**2)
    for _ in range(_ROUNDS):
        found, covariance = _posterior(counts, seconds, weights / noise**2, mean, spread)
        astray = np.abs(seconds - counts @ found) / noise
        before, weights = weights, np.minimum(1.0, _HUBER / np.maximum(astray, 1e-9))
        if np.abs(weights - before).max() < 1e-4:
            break
    pauses = np.maximum(found[1:], 0.0)
    syllable = max(float(found[0]), 0.05)
    wide = _NINE_TENTHS * float(np.sqrt(covariance[0, 0]))
    pace = replace(
        believed,
        syllables_per_second=1.0 / syllable,
        clause_pause=float(pauses[0]),
        sentence_pause=float(pauses[1]),
        paragraph_pause=float(pauses[2]),
    )
    said = sum(len(words(line.text)) for line in spoken)
    strays = float(np.mean(np.abs(seconds - counts @ np.array([syllable, *pauses])) / seconds))
    return PaceFit(
        pace=pace,
        words_per_minute=60.0 * said / float(seconds.sum()),
        syllables_per_second=1.0 / syllable,
        syllables_range=(1.0 / (syllable + wide), 1.0 / max(syllable - wide, 0.02)),
        lines=len(spoken),
        strays=strays,
    )


def held_out(lines: Sequence[TimedLine]) -> HeldOut:
    """Fit the first half of the lines, foretell the second. Raises TooFewLinesError where a half has too few."""
    import numpy as np

    spoken = [line for line in lines if words(line.text)]
    half = len(spoken) // 2
    first, second = spoken[:half], spoken[half:]
    fit = fit_pace(first)
    real = np.array([line.seconds for line in second])
    foretold = np.array([line_seconds(fit.pace, line.text) for line in second])
    rate = sum(line.seconds for line in first) / sum(len(words(line.text)) for line in first)
    constant = np.array([rate * len(words(line.text)) for line in second])
    missed = np.abs(foretold - real)
    return HeldOut(
        lines=len(second),
        mean_abs_error_s=float(missed.mean()),
        relative_error=float((missed / real).mean()),
        total_error=float((foretold.sum() - real.sum()) / real.sum()),
        constant_rate_error=float((np.abs(constant - real) / real).mean()),
    )


def line_seconds(pace: Pace, text: str) -> float:
    """How long a whole paragraph takes at this pace, with the pause after it (s)."""
    syllables, clauses, sentences, paragraphs = _counts(text)
    pauses = clauses * pace.clause_pause + sentences * pace.sentence_pause + paragraphs * pace.paragraph_pause
    return syllables / pace.syllables_per_second + pauses


def _counts(text: str) -> tuple[int, int, int, int]:
    """Syllables, ends of clauses, of sentences, and of paragraphs; the last word ends a paragraph."""
    weights = weigh(text)
    silences = [weight.silence for weight in weights]
    if silences:
        silences[-1] = Silence.PARAGRAPH
    return (
        sum(weight.syllables for weight in weights),
        silences.count(Silence.CLAUSE),
        silences.count(Silence.SENTENCE),
        silences.count(Silence.PARAGRAPH),
    )


def _believed(pace: Pace) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    import numpy as np

    syllable = 1.0 / pace.syllables_per_second
    mean = np.array([syllable, pace.clause_pause, pace.sentence_pause, pace.paragraph_pause])
    return mean, np.array([_SYLLABLE_SPREAD * syllable, *_PAUSE_SPREAD])


def _posterior(
    counts: NDArray[np.float64],
    seconds: NDArray[np.float64],
    precision: NDArray[np.float64],
    mean: NDArray[np.float64],
    spread: NDArray[np.float64],
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Mean and covariance of the times after the lines were seen, for known noise and a normal belief."""
    import numpy as np

    inverse = np.diag(1.0 / spread**2) + counts.T @ (precision[:, None] * counts)
    covariance = np.linalg.inv(inverse).astype(np.float64)
    found = covariance @ (mean / spread**2 + counts.T @ (precision * seconds))
    return found, covariance
