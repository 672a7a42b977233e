"""What one row of the lanes says: its move, the beginning of its spoken line, its signs."""

from __future__ import annotations

from dataclasses import dataclass
from html import escape

from studyboard.desk.lanes_times import RowTime
from studyboard.model.node import Node, Place
from studyboard.model.notes import plain_text
from studyboard.model.positions import Positions
from studyboard.model.script import BeatKey, Part
from studyboard.model.study import Study
from studyboard.notation.labels import move_label
from studyboard.timing.clock import clock
from studyboard.translation import tr, tr_later

#: As much of a spoken line as a row could ever show (characters).
_BEGINNING = 240

#: Glyphs that print for numeric annotation glyphs usually has; the numbers are those of the PGN standard (1994),
#: section 10, and of its common extension (22 and up), from memory.
_GLYPHS = {
    1: "!",
    2: "?",
    3: "!!",
    4: "??",
    5: "!?",
    6: "?!",
    7: "□",
    8: "□",
    10: "=",
    11: "=",
    13: "∞",
    14: "⩲",
    15: "⩱",
    16: "±",
    17: "∓",
    18: "+−",
    19: "−+",
    22: "⨀",
    23: "⨀",
    32: "⟳",
    33: "⟳",
    36: "→",
    37: "→",
    40: "↑",
    41: "↑",
    132: "⇆",
    133: "⇆",
    146: "N",
}

#: What stands in for glyphs that a font lacks.
PLAIN_GLYPHS = {"⩲": "+/=", "⩱": "=/+", "⨀": "zugzwang", "⟳": "development", "⇆": "counterplay", "□": "only"}

_PART_NAMES = {Part.GREETING: tr_later("Greeting"), Part.CLOSING: tr_later("Closing"), Part.THANKS: tr_later("Thanks")}


@dataclass(frozen=True, slots=True)
class RowText:
    """What one row says.

    label: the move with its number, or the name of the part
    glyphs: signs of judgement after it
    words: the beginning of its spoken line, without line breaks
    think: length of its think pause (s), 0.0 for none
    marks: how many marks are on the board here
    note: True where there is text for print
    white: True for a move of White's, False for Black's, None for no move
    """

    label: str
    glyphs: str
    words: str
    think: float
    marks: int
    note: bool
    white: bool | None


def node_row(study: Study, positions: Positions, node_id: int) -> RowText:
    """The row of one node."""
    node = study.nodes[node_id]
    return RowText(
        move_label(positions, node_id),
        glyphs(node.nags),
        beginning(node.spoken.text),
        node.think,
        len(node.marks),
        bool(plain_text(node.note) or plain_text(node.note_before)),
        None if node.parent is None else positions.board(node.parent).turn,
    )


def part_row(study: Study, part: Part) -> RowText:
    """The row of a part of the talk that belongs to no move."""
    return RowText(part_name(part), "", beginning(study.line(part).spoken.text), 0.0, 0, False, None)


def part_name(part: Part) -> str:
    """What the desk calls a part of the talk."""
    return tr(_PART_NAMES[part])


def seconds_in_words(time: RowTime | None) -> str:
    """How long a beat takes, for a screen reader; empty where it has no time of its own."""
    if time is None:
        return ""
    text = tr("{seconds} seconds", seconds=max(1, round(time.planned)))
    return tr("{text}, {over} over", text=text, over=max(1, round(time.over))) if time.over else text


def row_tool_tip(study: Study, key: BeatKey, row: RowText, time: RowTime | None) -> str:
    """The whole line of a row, its seconds and its note, as rich text."""
    spoken = study.line(key).spoken if isinstance(key, Part) else study.nodes[key].spoken
    note = "" if isinstance(key, Part) else plain_text(study.nodes[key].note)
    parts = [f"<b>{escape(row.label)}{escape(row.glyphs)}</b>"]
    if time is not None:
        parts[0] += f" &nbsp; {escape(_seconds_compared(time))}"
    parts += [f"<p style='white-space: pre-wrap'>{escape(text)}</p>" for text in (spoken.text.strip(),) if text]
    written = escape(tr("Note: {note}", note=note))
    parts += [f"<p style='white-space: pre-wrap'><i>{written}</i></p>"] if note else []
    return f"<div style='width: 360px'>{''.join(parts)}</div>"


def _seconds_compared(time: RowTime) -> str:
    if time.intended is None:
        return tr("{estimated:.1f} s estimated", estimated=time.estimated)
    return tr("{intended:g} s intended, {estimated:.1f} s estimated", intended=time.intended, estimated=time.estimated)


def glyphs(nags: tuple[int, ...]) -> str:
    """The signs for numeric annotation glyphs, those without one as “$n”: judgement of the move first, then others."""
    texts = [_GLYPHS.get(nag, f"${nag}") for nag in nags if nag]
    move = [text for text in texts if text[0] in "!?□"]
    rest = [text for text in texts if text[0] not in "!?□"]
    return "".join(move) + "".join(f" {text}" for text in rest)


def beginning(text: str) -> str:
    """The beginning of a spoken line on one line."""
    return " ".join(text[:_BEGINNING].split())


def short_seconds(seconds: float) -> str:
    """Seconds for a narrow column: “14 s”, or “1:05” from a minute on; anything at all is at least “1 s”."""
    if seconds <= 0:
        return ""
    return tr("{seconds} s", seconds=max(1, round(seconds))) if seconds < 59.5 else clock(seconds)


def heading_name(node: Node) -> str:
    """What the heading of a side-line calls it."""
    return node.name.strip() or tr("Side-line")


def telling_in_words(study: Study, positions: Positions, node: Node) -> str:
    """When a side-line is told, where that is not the usual place; empty where it is."""
    telling = node.telling
    if telling.place is Place.HIDDEN:
        return tr("not told")
    if telling.place is Place.BEFORE:
        return tr("told first")
    if telling.place is Place.MOVED and telling.anchor in study.nodes:
        assert telling.anchor is not None
        return tr("told after {move}", move=move_label(positions, telling.anchor))
    return ""
