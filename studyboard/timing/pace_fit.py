"""A presenter's pace, learnt from talks whose times are known.

A line is taken to last as long as its words at one rate, its pauses by their kind, and what stands around its moves.
The published rates say what to expect before anything is known: above all that whoever speaks slowly pauses longer
too. Each timed line moves that as far as it is worth (Bayesian linear regression); a line that does not fit at all,
because somebody coughed or the time is wrong, counts for little (Huber weights). Few lines therefore leave the pace
near the published one, with a wide range.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import hypot, sqrt
from typing import TYPE_CHECKING

from studyboard.model.errors import StudyboardError
from studyboard.model.script import Pace, words
from studyboard.timing.pace import Silence, in_side_line, weigh
from studyboard.timing.timed_lines import TimedLine
from studyboard.translation import tr

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

#: Fewer timed lines than this say nothing about a presenter.
LEAST_LINES = 4
#: How far presenters differ from the published pace: everything together (share), the time of a syllable and the pauses
#: each by itself (shares), the silence around a move (s), silent moves and returns (s), side-lines (share). Common
#: practice for the first: single paragraphs of one fluent talk lie between 140 and 235 words a minute around 185.
_TOGETHER = 0.15
_APART = (0.05, 0.3, 0.3, 0.3)
_AROUND_MOVES, _SILENT_MOVES, _RETURNS, _SIDE_LINES = 0.2, 0.6, 0.4, 0.06
#: Presenters dwell a little on moves, which the published rates of plain prose do not tell (s): our assumption.
_EXPECTED_AT_MOVES = 0.1
#: How far one line strays from a good pace: a share of its length, what adds up from word to word (s for a line of one
#: second, growing with the root of its length), and the rounding of both its ends to whole seconds (s).
_STRAYS, _WANDERS, _ROUNDING = 0.03, 0.2, 0.41
#: As many lines is that belief worth.
_BELIEVED_LINES = 8
#: Where nobody has put signs between the words, as many words stand between two commas, and between two sentences.
_WORDS_A_SIGN = 13.0
_HUBER, _ROUNDS = 1.5, 30
#: How far a presenter's pace moves from one day to the next (share): our assumption.
_DAY = 0.03
#: Standard deviations on either side that hold nine tenths of a normal distribution.
NINE_TENTHS = 1.645


class TooFewLinesError(StudyboardError):
    """A talk has too few lines with times to learn a pace from."""


@dataclass(frozen=True, slots=True)
class PaceFit:
    """What the lines say of their presenter.

    pace: the most likely one
    words_per_minute: running, pauses included (1/min)
    syllables_per_second: articulation rate with its range, in which it lies with nine tenths of probability (1/s)
    lines: how many lines were used
    strays: mean distance of the lines from the pace, as a share of their length
    drift: how much slower the end is told than the beginning, as a share, with its range likewise
    """

    pace: Pace
    words_per_minute: float
    syllables_per_second: float
    syllables_range: tuple[float, float]
    lines: int
    strays: float
    drift: float
    drift_range: tuple[float, float]


@dataclass(frozen=True, slots=True)
class HeldOut:
    """How well the first half of a talk foretells the second.

    lines: of the second half
    mean_abs_error_s: by how much a line is missed on average (s)
    relative_error: the same as a share of each line's length, on average
    total_error: by how much the whole half is missed, as a share of its length; positive where it took less
    total_range: how far it may be missed, as foretold with nine tenths of probability (share, on either side)
    constant_rate_error, constant_rate_total: the same of the words per minute of the first half, for comparison
    """

    lines: int
    mean_abs_error_s: float
    relative_error: float
    total_error: float
    total_range: float
    constant_rate_error: float
    constant_rate_total: float


def fit_pace(lines: Sequence[TimedLine], expected: Pace | None = None) -> PaceFit:
    """The pace of whoever spoke these lines.

    expected: what to believe before the lines are seen; the published pace by default
    Raises TooFewLinesError for fewer than LEAST_LINES.
    """
    import numpy as np

    spoken = _enough(lines)
    believed = Pace(move_pause=_EXPECTED_AT_MOVES) if expected is None else expected
    counts = np.array([_counts(line) for line in lines], dtype=float)
    seconds = np.array([line.seconds for line in lines], dtype=float)
    aside = np.array([line.side_line for line in lines])
    mean, prior = _believed(believed)
    belief = np.asarray(np.linalg.inv(prior), np.float64)
    found, covariance = mean, prior
    weights = np.ones(len(lines))
    whole = np.array([line.whole for line in lines])
    scale = 1.0
    free = np.ones(len(mean), dtype=bool)
    for _ in range(_ROUNDS):
        # Side-lines are slower by a share of what they take on the main line, as far as that is known.
        told_aside = np.where(aside, counts[:, :_PAUSES] @ found[:_PAUSES], 0.0)
        design: NDArray[np.float64] = np.column_stack([counts, told_aside])
        # What a line should take says how far it may stray: by what it took, one that was cut off would count for most.
        shape = _noise(np.maximum(design @ found, 0.5), whole)
        precision = np.asarray(weights / np.square(scale * shape), np.float64)
        found, covariance = _posterior(design, seconds, precision, mean, belief, free)
        free = free & ((found > 0) | _SIGNED)
        found = np.where(free | _SIGNED, found, 0.0)
        astray = np.abs(seconds - design @ found) / shape
        scale = _scale(astray, weights)
        before, weights = weights, np.minimum(1.0, _HUBER * scale / np.maximum(astray, 1e-9))
        if np.abs(weights - before).max() < 1e-4:
            break
    pace = _pace(believed, found)
    foretold = design @ found
    doubt = sqrt(float(design.sum(axis=0) @ covariance @ design.sum(axis=0))) / float(foretold.sum())
    long = float(np.median(seconds))
    stray = scale * float(_noise(np.array([long]), np.array([False]))[0]) / long
    pace = replace(pace, doubt=hypot(doubt, _DAY), stray=min(0.5, stray))
    drift, unsure = _drift(seconds, foretold, weights / (scale * shape) ** 2)
    wide = NINE_TENTHS * sqrt(float(covariance[0, 0]))
    syllable = 1.0 / pace.syllables_per_second
    return PaceFit(
        pace=pace,
        words_per_minute=60.0 * sum(len(words(line.text)) for line in spoken) / sum(line.seconds for line in spoken),
        syllables_per_second=pace.syllables_per_second,
        syllables_range=(1.0 / (syllable + wide), 1.0 / max(syllable - wide, 0.02)),
        lines=len(lines),
        strays=float(np.mean(np.abs(seconds - foretold) / seconds)),
        drift=drift,
        drift_range=(drift - NINE_TENTHS * unsure, drift + NINE_TENTHS * unsure),
    )


def held_out(lines: Sequence[TimedLine]) -> HeldOut:
    """Fit the first half of the lines, foretell the second. Raises TooFewLinesError where a half has too few."""
    import numpy as np

    spoken = [line for line in lines if words(line.text)]
    half = len(spoken) // 2
    first, second = spoken[:half], spoken[half:]
    fit = fit_pace(first)
    real = np.array([line.seconds for line in second])
    foretold = np.array([line_seconds(fit.pace, line) for line in second])
    rate = sum(line.seconds for line in first) / sum(len(words(line.text)) for line in first)
    constant = np.array([rate * len(words(line.text)) for line in second])
    missed = np.abs(foretold - real)
    return HeldOut(
        lines=len(second),
        mean_abs_error_s=float(missed.mean()),
        relative_error=float((missed / real).mean()),
        total_error=float((foretold.sum() - real.sum()) / real.sum()),
        total_range=NINE_TENTHS * whole_doubt(fit.pace, foretold),
        constant_rate_error=float((np.abs(constant - real) / real).mean()),
        constant_rate_total=float((constant.sum() - real.sum()) / real.sum()),
    )


def whole_doubt(pace: Pace, seconds: Sequence[float] | NDArray[np.float64]) -> float:
    """How far a talk of lines that are estimated at these seconds may come out, as a share of it (one deviation)."""
    total = float(sum(seconds))
    return hypot(pace.doubt, pace.stray * sqrt(float(sum(s * s for s in seconds))) / total) if total else 0.0


def line_seconds(pace: Pace, line: TimedLine) -> float:
    """How long a line should take at this pace, with the silence after it (s)."""
    pace = in_side_line(pace) if line.side_line else pace
    return float(sum(count * seconds for count, seconds in zip(_counts(line), _seconds(pace), strict=True)))


#: The figures of a pace in their order: a syllable, the pauses by their kind, around a move; then a silent move and a
#: return; then how much slower side-lines are, which alone may be less than nothing.
_PAUSES = 5
_SIGNED = [False] * 7 + [True]


def _counts(line: TimedLine) -> tuple[float, ...]:
    """What a line is made of: its syllables, clauses, sentences, paragraphs, moves said, silent moves, returns."""
    weights = weigh(line.text)
    silences = [weight.silence for weight in weights]
    if silences and line.closes:
        silences[-1] = Silence.PARAGRAPH
    unseen = len(weights) / _WORDS_A_SIGN if line.unmarked else 0.0
    return (
        sum(weight.length for weight in weights),
        silences.count(Silence.CLAUSE) + unseen,
        silences.count(Silence.SENTENCE) + unseen,
        silences.count(Silence.PARAGRAPH),
        sum(weight.move for weight in weights),
        line.silent_moves,
        line.returns,
    )


def _seconds(pace: Pace) -> tuple[float, ...]:
    """What each of those takes (s)."""
    return (
        1.0 / pace.syllables_per_second,
        pace.clause_pause,
        pace.sentence_pause,
        pace.paragraph_pause,
        pace.move_pause,
        pace.move_time,
        pace.back_time,
    )


def _pace(before: Pace, found: NDArray[np.float64]) -> Pace:
    syllable, clause, sentence, paragraph, move, silent, back, slower = (float(value) for value in found)
    return replace(
        before,
        syllables_per_second=1.0 / max(syllable, 0.05),
        clause_pause=clause,
        sentence_pause=sentence,
        paragraph_pause=paragraph,
        move_pause=move,
        move_time=silent,
        back_time=back,
        side_line_rate=1.0 / max(1.0 + slower, 0.5),
    )


def _believed(pace: Pace) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Mean and covariance of the figures before a line is seen."""
    import numpy as np

    mean = np.array([*_seconds(pace), 1.0 / pace.side_line_rate - 1.0])
    floor = np.array([*_seconds(Pace()), 0.0])
    apart = np.zeros(len(mean))
    apart[:4] = np.array(_APART) * np.maximum(mean, floor)[:4]
    apart[4:] = (_AROUND_MOVES, _SILENT_MOVES, _RETURNS, _SIDE_LINES)
    together = np.where(np.arange(len(mean)) < 4, mean, 0.0) * _TOGETHER
    return mean, np.diag(apart**2) + np.outer(together, together)


def _noise(seconds: NDArray[np.float64], whole: NDArray[np.bool_]) -> NDArray[np.float64]:
    """How far lines of these lengths stray (s, one standard deviation)."""
    import numpy as np

    rounded = np.where(whole, _ROUNDING**2, 0.0)
    return np.asarray(np.sqrt((_STRAYS * seconds) ** 2 + _WANDERS**2 * seconds + rounded))


def _scale(astray: NDArray[np.float64], weights: NDArray[np.float64]) -> float:
    """How far the lines stray, in terms of what is expected of them; few lines leave that near one."""
    squares = float((weights * astray**2).sum()) + _BELIEVED_LINES
    return sqrt(squares / (float(weights.sum()) + _BELIEVED_LINES))


def _posterior(
    design: NDArray[np.float64],
    seconds: NDArray[np.float64],
    precision: NDArray[np.float64],
    mean: NDArray[np.float64],
    belief: NDArray[np.float64],
    free: NDArray[np.bool_],
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Mean and covariance of the figures after the lines were seen; those that are not free are held at nothing."""
    import numpy as np

    # A figure that is held is pulled to nothing by a belief that no line outweighs.
    held = np.diag(np.where(free, 0.0, 1e9))
    covariance = np.linalg.inv(belief + held + design.T @ (precision[:, None] * design)).astype(np.float64)
    found = covariance @ (belief @ mean + design.T @ (precision * seconds))
    return found, covariance


def _drift(
    seconds: NDArray[np.float64], foretold: NDArray[np.float64], precision: NDArray[np.float64]
) -> tuple[float, float]:
    """How much slower the end is told than the beginning (share), and how sure that is (one standard deviation)."""
    import numpy as np

    middle = np.cumsum(seconds) - seconds / 2
    place = middle / seconds.sum()
    place = place - float((precision * foretold**2 * place).sum() / (precision * foretold**2).sum())
    slope = foretold * place
    information = float((precision * slope**2).sum()) + 1.0 / 0.3**2
    return float((precision * slope * (seconds - foretold)).sum()) / information, sqrt(1.0 / information)


def _enough(lines: Sequence[TimedLine]) -> list[TimedLine]:
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
    return spoken
