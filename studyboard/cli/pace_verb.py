"""The verb pace."""

from __future__ import annotations

import json
from pathlib import Path

from studyboard.cli.sources import is_study, load_study
from studyboard.model.edits import ChangePace
from studyboard.model.errors import StudyboardError
from studyboard.store.study_file import StudyFile
from studyboard.timing.pace_fit import (
    LEAST_LINES,
    NINE_TENTHS,
    HeldOut,
    PaceFit,
    TooFewLinesError,
    fit_pace,
    held_out,
)
from studyboard.timing.timed_lines import recorded_lines, timed_lines


def pace(path: Path, *, keep_in: Path | None, as_json: bool) -> int:
    """Fit the pace of a talk or of a study's takes, print it, and keep it in a study if that is wanted."""
    lines = recorded_lines(load_study(path).study) if is_study(path) else timed_lines(_text(path))
    try:
        fit = fit_pace(lines)
    except TooFewLinesError as reason:
        if not is_study(path):
            raise
        raise StudyboardError(
            f"A pace is learnt from {LEAST_LINES} spoken lines at least whose times are known. Record more of them; "
            "sound that was taken in counts once `studyboard listen STUDY --take N --keep` has listened to it."
        ) from reason
    kept_out = held_out(lines) if len(lines) >= 2 * LEAST_LINES else None
    if keep_in is not None:
        with StudyFile.open(keep_in) as file:
            file.do(ChangePace(fit.pace, "Set the pace"))
    if as_json:
        print(json.dumps(_plain(fit, kept_out), indent=2))
    else:
        print(_words(fit, kept_out))
        if keep_in is not None:
            print(f"kept in {keep_in}")
    return 0


def _text(path: Path) -> str:
    return path.read_text(encoding="utf-8", errors="replace")


def _plain(fit: PaceFit, kept_out: HeldOut | None) -> dict[str, object]:
    pace = fit.pace
    return {
        "words_per_minute": round(fit.words_per_minute, 1),
        "syllables_per_second": round(fit.syllables_per_second, 2),
        "syllables_per_second_range": [round(value, 2) for value in fit.syllables_range],
        "clause_pause": round(pace.clause_pause, 2),
        "sentence_pause": round(pace.sentence_pause, 2),
        "paragraph_pause": round(pace.paragraph_pause, 2),
        "move_pause": round(pace.move_pause, 2),
        "side_line_rate": round(pace.side_line_rate, 3),
        "drift": round(fit.drift, 3),
        "drift_range": [round(value, 3) for value in fit.drift_range],
        "talk_range": round(NINE_TENTHS * pace.doubt, 3),
        "lines": fit.lines,
        "held_out": None
        if kept_out is None
        else {
            "lines": kept_out.lines,
            "mean_abs_error_s": round(kept_out.mean_abs_error_s, 2),
            "relative_error": round(kept_out.relative_error, 4),
            "total_error": round(kept_out.total_error, 4),
            "total_range": round(kept_out.total_range, 4),
            "constant_rate_relative_error": round(kept_out.constant_rate_error, 4),
            "constant_rate_total_error": round(kept_out.constant_rate_total, 4),
        },
    }


def _words(fit: PaceFit, kept_out: HeldOut | None) -> str:
    low, high = fit.syllables_range
    pace = fit.pace
    told = [
        f"{fit.words_per_minute:.0f} words a minute over {fit.lines} lines",
        f"{fit.syllables_per_second:.2f} syllables a second ({low:.2f} to {high:.2f} with 90 % probability)",
        f"pauses: {pace.clause_pause:.2f} s after a comma, {pace.sentence_pause:.2f} s after a sentence, "
        f"{pace.paragraph_pause:.2f} s after a paragraph, {pace.move_pause:.2f} s more at a move",
        *_aside(pace.side_line_rate),
        _drift_words(fit),
        f"a whole talk comes out within {100 * NINE_TENTHS * pace.doubt:.0f} % of its plan, nine times of ten",
    ]
    if kept_out is None:
        told.append("too few lines to tell how well it foretells others")
    else:
        told.append(
            f"fitted on the first half it misses a line of the second by {kept_out.mean_abs_error_s:.1f} s, "
            f"{100 * kept_out.relative_error:.1f} % (constant words a minute: "
            f"{100 * kept_out.constant_rate_error:.1f} %), and all of it by {100 * kept_out.total_error:+.1f} %"
        )
    return "\n".join(told)


def _aside(rate: float) -> list[str]:
    share = round(100 * (1 / rate - 1))
    return [] if not share else [f"side-lines take {abs(share)} % {'longer' if share > 0 else 'less'}"]


def _drift_words(fit: PaceFit) -> str:
    low, high = (100 * share for share in fit.drift_range)
    if low <= 0 <= high:
        return f"the pace stays the same over the talk, as far as can be told ({low:+.0f} to {high:+.0f} % at its end)"
    slower = "slower" if fit.drift > 0 else "faster"
    return f"the end is told {100 * abs(fit.drift):.0f} % {slower} than the beginning ({low:+.0f} to {high:+.0f} %)"
