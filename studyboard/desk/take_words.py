"""Takes and beats in words, as the lists of the booth and of the takes' window show them."""

from __future__ import annotations

from datetime import datetime

from studyboard.desk.moments import moment
from studyboard.desk.ruler_talk import beat_label
from studyboard.model.assembly import Assembly, HeardBeat
from studyboard.model.beat_takes import BeatTake, beats_of
from studyboard.model.positions import Positions
from studyboard.model.script import BeatKey
from studyboard.model.study import Study
from studyboard.model.takes import Take
from studyboard.timing.clock import clock
from studyboard.translation import tr


def take_text(take: Take) -> str:
    """One take in the list of all of them."""
    count = len(beats_of(take))
    beats = tr("1 beat") if count == 1 else tr("{beats} beats", beats=count)
    told = tr("some words") if take.replaces is not None else beats
    parts = [take.name, clock(take.length.seconds), told, moment(datetime.fromisoformat(take.started)), *_state(take)]
    return " · ".join(filter(None, parts))


def take_and_length(take: Take) -> str:
    """One take where one is chosen out of all of them."""
    return f"{take.name}  ·  {clock(take.length.seconds)}"


def take_words(study: Study, one: BeatTake, beat: BeatKey | None) -> str:
    """One take of a beat: how long the beat is in it, and whether it is heard."""
    take = one.take
    heard = ""
    if one.heard:
        by_hand = beat is not None and study.chosen.get(beat) == take.id
        heard = tr("heard, chosen") if by_hand else tr("heard")
    if one.is_loose:
        heard = tr("tells no beat yet")
    seconds = tr("{seconds:.1f} s", seconds=one.span.samples / take.rate)
    name = f"↳ {take.name}" if one.is_pickup else take.name
    when = moment(datetime.fromisoformat(take.started))
    return " · ".join(filter(None, [name, heard, seconds, when, *_state(take)]))


def beat_words(positions: Positions, assembly: Assembly, heard: HeardBeat, number: int) -> str:
    """One beat of the talk: its place, what it tells, and in which take it is heard."""
    study = positions.study
    label = beat_label(positions, heard.beat.key)
    if heard.take is None:
        state = tr("not recorded") if heard.beat.spoken else tr("silent, not recorded")
        return f"{number}  {label} · {state}"
    return f"{number}  {label} · {study.takes[heard.take].name} · {clock(heard.samples / assembly.rate)}"


def _state(take: Take) -> list[str]:
    return [
        tr("from {file}", file=take.origin) if take.origin else "",
        tr("cut") if take.left_out else "",
        "" if take.complete else tr("cut off, kept to its last second"),
        "" if take.kept else tr("discarded"),
        f"“{take.note}”" if take.note else "",
    ]
