"""The timing report: every beat with its intended, estimated and recorded seconds, against the slot."""

from __future__ import annotations

from dataclasses import dataclass

from studyboard.model.beats import beats
from studyboard.model.order import running_order
from studyboard.model.positions import Positions
from studyboard.model.script import Part
from studyboard.model.study import Study
from studyboard.timing.plan import estimate_beat
from studyboard.timing.recorded import recorded_seconds


@dataclass(frozen=True, slots=True)
class BeatTiming:
    """One beat of the report; seconds are None where nobody set or recorded them.

    node: id of the node that has the line, None for a line that belongs to no move
    san: its move, or the name of the part
    text: what is said
    intended, estimated, recorded, rehearsed: seconds
    """

    node: int | None
    san: str
    text: str
    intended: float | None
    estimated: float
    recorded: float | None
    rehearsed: float | None

    @property
    def planned(self) -> float:
        """What the plan counts with: the intended seconds, else the estimate (s)."""
        return self.estimated if self.intended is None else self.intended


@dataclass(frozen=True, slots=True)
class TimingReport:
    """The talk against its slot.

    slot: what it should take (s), None where none is set
    total: what the plan says (s)
    over: total minus slot (s), negative for under; None without a slot
    """

    slot: float | None
    total: float
    over: float | None
    beats: tuple[BeatTiming, ...]


def timing_report(study: Study, positions: Positions | None = None) -> TimingReport:
    """Every beat of the running order with its seconds. O(length of the script)."""
    positions = Positions(study) if positions is None else positions
    recorded = recorded_seconds(study)
    rows = tuple(
        BeatTiming(
            None if isinstance(beat.key, Part) else beat.key,
            beat.key.value if isinstance(beat.key, Part) else positions.san(beat.key),
            beat.spoken.text,
            beat.intended,
            estimate_beat(study.pace, beat),
            recorded.get(beat.key),
            study.rehearsed.get(beat.key),
        )
        for beat in beats(study, running_order(study))
    )
    total = sum(row.planned for row in rows)
    return TimingReport(study.slot, total, None if study.slot is None else total - study.slot, rows)
