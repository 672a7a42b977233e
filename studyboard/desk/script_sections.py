"""The stops of the talk as sections of one text: their headings and what is said there."""

from __future__ import annotations

from dataclasses import dataclass

from studyboard.desk.lanes_rows import part_name
from studyboard.desk.line_figures import LineFigures, count_words
from studyboard.desk.session import Session
from studyboard.model.beats import Beat, beats
from studyboard.model.order import running_order
from studyboard.model.script import BeatKey, Part, SpokenLine
from studyboard.notation.labels import move_label
from studyboard.timing.pace import estimate
from studyboard.timing.plan import pace_of
from studyboard.translation import tr


@dataclass(frozen=True, slots=True)
class Section:
    """One stop of the talk.

    depth: 0 on the main line, 1 in a side-line of it, and so on
    intended, think: as of the beat (s)
    """

    key: BeatKey
    label: str
    depth: int
    spoken: SpokenLine
    intended: float | None
    think: float


#: What moves are called, by their nodes; a node's move never changes.
Labels = dict[int, str]


def sections(session: Session, labels: Labels, *, silent: bool) -> list[Section]:
    """Every stop in the order of the talk. O(length of the talk).

    labels: what was found out before, and takes what is new; to be emptied with another study or start position
    silent: also those at which nothing is said
    """
    study = session.study
    told = beats(study, running_order(study))
    stops = [_section(session, labels, beat) for beat in told if silent or beat.spoken or beat.think]
    return _with_ends(session, stops) if silent else stops


def heading(session: Session, section: Section, text: str) -> str:
    """What stands above a section whose words are *text*: where it is, how long it takes, over its length or not."""
    seconds = estimate(pace_of(session.study, section.key), text)
    figures = LineFigures(count_words(text), seconds, section.intended, section.think)
    return f"{section.label} · {figures}"


def _section(session: Session, labels: Labels, beat: Beat) -> Section:
    if isinstance(beat.key, Part):
        label = part_name(beat.key)
    else:
        known = labels.get(beat.key)
        if known is None:
            known = labels[beat.key] = move_label(session.positions, beat.key)
        label = known
        label = tr("{label} · side-line", label=label) if beat.depth else label
    return Section(beat.key, label, beat.depth, beat.spoken.sorted(), beat.intended, beat.think)


def _with_ends(session: Session, stops: list[Section]) -> list[Section]:
    """With the greeting, the start position, the closing and the thanks too, where the talk does not stop there yet."""
    study, there = session.study, {stop.key for stop in stops}

    def part(which: Part) -> list[Section]:
        line = study.line(which)
        return [] if which in there else [Section(which, part_name(which), 0, line.spoken, line.intended, 0.0)]

    before, after = part(Part.GREETING), [*part(Part.CLOSING), *part(Part.THANKS)]
    if study.root not in there:
        start = study.node(study.root)
        # Behind the greeting, wherever that comes from.
        place = 1 if stops and stops[0].key is Part.GREETING else 0
        root = Section(study.root, tr("Start"), 0, start.spoken.sorted(), start.intended, start.think)
        stops = [*stops[:place], root, *stops[place:]]
    if stops and stops[-1].key is Part.THANKS and after:
        return [*before, *stops[:-1], *after, stops[-1]]
    return [*before, *stops, *after]
