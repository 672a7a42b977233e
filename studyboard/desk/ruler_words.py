"""What is told of a beat on the time ruler: to a screen reader, and beside the pointer."""

from __future__ import annotations

from html import escape

from studyboard.desk.board_words import move_words
from studyboard.desk.lanes_rows import beginning, part_name
from studyboard.desk.ruler_talk import Talk, beat_label
from studyboard.desk.session import Session
from studyboard.model.script import Part
from studyboard.timing.clock import clock
from studyboard.translation import tr

#: As much of a line stands beside the pointer (characters).
_MOST = 90


def told_words(session: Session, talk: Talk | None, index: int | None, slot: str) -> str:
    """A beat in words: its place, its move, when it is told, and how the talk lies against its slot."""
    stretch = talk.stretches[index] if talk is not None and index is not None else None
    if talk is None or index is None or stretch is None:
        return tr("No beat is told here.")
    told = f"{part_name(stretch.key) if isinstance(stretch.key, Part) else move_words(session, stretch.key)}."
    locked = tr("Its length is locked.") if talk.locked[index] else ""
    words = tr(
        "Beat {index} of {total}: {told} From {start}, {seconds} seconds. {locked} {slot}",
        index=index + 1,
        total=len(talk.stretches),
        told=told,
        start=clock(stretch.start),
        seconds=max(1, round(stretch.seconds)),
        locked=locked,
        slot=slot,
    )
    return " ".join(words.split())


def tool_tip(session: Session, talk: Talk, index: int) -> str:
    """Move, seconds and the beginning of the line, as HTML."""
    stretch = talk.stretches[index]
    words = beginning(stretch.spoken.text)
    words = f"<br>{escape(words[:_MOST])}{'…' if len(words) > _MOST else ''}" if words else ""
    think = tr(", of it {think:g} s to think", think=stretch.think) if stretch.think else ""
    locked = tr(", locked") if talk.locked[index] else ""
    when = tr(
        "{start}, {seconds:.1f} s{think}{locked}",
        start=clock(stretch.start),
        seconds=stretch.seconds,
        think=think,
        locked=locked,
    )
    return f"<b>{escape(beat_label(session.positions, stretch.key))}</b> &nbsp; {when}{words}"
