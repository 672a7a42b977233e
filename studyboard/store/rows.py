"""A study as the rows of its file, and back."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterable, Sequence
from dataclasses import fields
from functools import lru_cache
from typing import Any

import chess

from studyboard.model.errors import EditRefusedError
from studyboard.model.left_query import LeftQuery
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.node import AFTER, Node, Place, Telling
from studyboard.model.rehearsals import BeatTold, Rehearsal
from studyboard.model.script import SILENT, BeatKey, Cue, FreeLine, Pace, Part, SpokenLine
from studyboard.model.study import Changed, Study
from studyboard.model.takes import Replaced, SaidLine, SoundTime, Span, Take, TakeEvent
from studyboard.translation import tr

_NODE_COLUMNS = (
    "id, parent, move, children, spoken, cues, note_before, note, marks, nags, intended, think, place, anchor, name, "
    "locked, mark_numbers"
)
_TAKE_COLUMNS = "id, name, rate, samples, started, kept, complete, note, origin, left_out, replaces, room_tone, said"
_PACE = tuple(field.name for field in fields(Pace))


class RowsError(ValueError):
    """Rows that do not add up to a study."""


def read_study(connection: sqlite3.Connection) -> Study:
    """The study that the rows hold. Raises RowsError where they do not add up, sqlite3.Error. O(size of the study)."""
    try:
        study = _read_study(connection)
    except EditRefusedError as reason:
        raise RowsError(str(reason)) from reason
    except (KeyError, TypeError, ValueError, IndexError) as reason:
        raise RowsError(f"{type(reason).__name__}: {reason}") from reason
    _check_tree(study)
    return study


def everything(study: Study) -> Changed:
    """All parts of a study, as if one edit had touched them."""
    return Changed(
        nodes=set(study.nodes),
        headers=True,
        parts=set(Part),
        takes=set(study.takes),
        rehearsed=True,
        left=True,
        settings=True,
        pronunciations=True,
        choices=True,
    )


def write_changed(connection: sqlite3.Connection, study: Study, changed: Changed) -> None:
    """Bring the rows of what was touched up to the study, inside a transaction of the caller. Raises sqlite3.Error."""
    if changed.nodes:
        _write_nodes(connection, study, changed.nodes)
    if changed.headers:
        connection.execute("DELETE FROM header")
        connection.executemany(
            "INSERT INTO header VALUES (?, ?, ?)",
            [(position, name, value) for position, (name, value) in enumerate(study.headers.items())],
        )
    for part in changed.parts:
        _write_part(connection, part, study.line(part))
    for take in changed.takes:
        _write_take(connection, take, study.takes.get(take))
    if changed.rehearsed:
        connection.execute("DELETE FROM rehearsed")
        connection.executemany(
            "INSERT INTO rehearsed VALUES (?, ?)",
            [(_beat_value(beat), seconds) for beat, seconds in study.rehearsed.items()],
        )
        connection.execute("DELETE FROM rehearsal")
        connection.executemany(
            "INSERT INTO rehearsal VALUES (?, ?)", [(one.at, _told_text(one)) for one in study.rehearsals]
        )
    if changed.left:
        connection.execute("DELETE FROM left_query")
        connection.executemany(
            "INSERT INTO left_query VALUES (?, ?, ?)",
            [(_beat_value(query.beat), query.kind, query.quote) for query in study.left],
        )
    if changed.pronunciations:
        connection.execute("DELETE FROM pronunciation")
        connection.executemany("INSERT INTO pronunciation VALUES (?, ?)", list(study.pronunciations.items()))
    if changed.choices:
        connection.execute("DELETE FROM take_choice")
        connection.executemany(
            "INSERT INTO take_choice VALUES (?, ?)", [(_beat_value(beat), take) for beat, take in study.chosen.items()]
        )
    if changed.settings or changed.takes:
        _write_settings(connection, study)


def _told_text(rehearsal: Rehearsal) -> str:
    rows = [[_beat_value(one.beat), one.seconds, one.planned, one.restarts] for one in rehearsal.told]
    return json.dumps(rows, separators=(",", ":"))


def _told(text: str) -> tuple[BeatTold, ...]:
    return tuple(BeatTold(_beat(beat), *values) for beat, *values in json.loads(text))


def _write_nodes(connection: sqlite3.Connection, study: Study, nodes: Iterable[int]) -> None:
    here: list[Sequence[Any]] = []
    gone: list[tuple[int]] = []
    for number in nodes:
        node = study.nodes.get(number)
        if node is None:
            gone.append((number,))
        else:
            here.append(_node_row(node))
    if gone:
        connection.executemany("DELETE FROM node WHERE id = ?", gone)
    marks = ", ".join("?" * (_NODE_COLUMNS.count(",") + 1))
    connection.executemany(f"INSERT OR REPLACE INTO node ({_NODE_COLUMNS}) VALUES ({marks})", here)


def _node_row(node: Node) -> Sequence[Any]:
    return (
        node.id,
        node.parent,
        None if node.move is None else node.move.uci(),
        _numbers_text(node.children),
        node.spoken.text,
        _cues_text(node.spoken.cues),
        node.note_before,
        node.note,
        _marks_text(node.marks),
        _numbers_text(node.nags),
        node.intended,
        node.think,
        node.telling.place.value,
        node.telling.anchor,
        node.name,
        node.locked,
        _mark_numbers_text(node.marks),
    )


def _write_part(connection: sqlite3.Connection, part: Part, line: FreeLine) -> None:
    if line == FreeLine():
        connection.execute("DELETE FROM part WHERE part = ?", (part.value,))
    else:
        row = (part.value, line.spoken.text, _cues_text(line.spoken.cues), line.intended, line.locked)
        connection.execute("INSERT OR REPLACE INTO part VALUES (?, ?, ?, ?, ?)", row)


def _write_take(connection: sqlite3.Connection, number: int, take: Take | None) -> None:
    connection.execute("DELETE FROM take_event WHERE take = ?", (number,))
    if take is None:
        connection.execute("DELETE FROM take WHERE id = ?", (number,))
        return
    write_take_row(connection, take)
    write_events(connection, number, 0, take.events)
    connection.execute("DELETE FROM recording WHERE take = ? AND finished", (number,))


def write_take_row(connection: sqlite3.Connection, take: Take) -> None:
    """Store what is known of a take besides its events, inside a transaction of the caller."""
    row = (
        take.id,
        take.name,
        take.rate,
        take.samples,
        take.started,
        take.kept,
        take.complete,
        take.note,
        take.origin,
        _numbers_text(number for span in take.left_out for number in (span.start, span.end)),
        replaced_text(take.replaces),
        "" if take.room_tone is None else _numbers_text((take.room_tone.start, take.room_tone.end)),
        _said_text(take.said),
    )
    marks = ", ".join("?" * len(row))
    connection.execute(f"INSERT OR REPLACE INTO take ({_TAKE_COLUMNS}) VALUES ({marks})", row)


def replaced_text(replaced: Replaced | None) -> str:
    """What a pickup is heard in place of, as a column holds it: the take, the first sample, the one behind the last."""
    if replaced is None:
        return ""
    return _numbers_text((replaced.take, replaced.span.start, replaced.span.end))


def replaced_of(text: str) -> Replaced | None:
    """What a column of `replaced_text` says. Raises ValueError where it says nothing that makes sense."""
    if not text:
        return None
    take, start, end = map(int, text.split())
    return Replaced(take, Span(start, end))


def _said_text(lines: Iterable[SaidLine]) -> str:
    rows = [(_beat_value(line.beat), line.text, line.starts, line.ends) for line in lines]
    return json.dumps(rows, separators=(",", ":"), ensure_ascii=False) if rows else ""


def _said(text: str) -> tuple[SaidLine, ...]:
    if not text:
        return ()
    return tuple(
        SaidLine(_beat(beat), line, tuple(starts), tuple(ends)) for beat, line, starts, ends in json.loads(text)
    )


def write_events(connection: sqlite3.Connection, take: int, first: int, events: Iterable[TakeEvent]) -> None:
    """Store events of a take, the first of them at position *first*, inside a transaction of the caller."""
    connection.executemany(
        "INSERT INTO take_event VALUES (?, ?, ?, ?, ?, ?)",
        [
            (take, position, event.at.samples, event.at.rate, event.node, _beat_value(event.beat))
            for position, event in enumerate(events, first)
        ],
    )


def read_events(connection: sqlite3.Connection, take: int) -> tuple[TakeEvent, ...]:
    """The events of one take, in the order of time."""
    rows = connection.execute(
        "SELECT samples, rate, node, beat FROM take_event WHERE take = ? ORDER BY position", (take,)
    )
    return tuple(
        TakeEvent(SoundTime(samples, rate), node, None if beat is None else _beat(beat))
        for samples, rate, node, beat in rows
    )


def _write_settings(connection: sqlite3.Connection, study: Study) -> None:
    values: dict[str, Any] = {
        "root": study.root,
        "slot": study.slot,
        "next node": study.next_id,
        "next take": study.next_take,
    }
    values |= {"language": study.language, "words": "\n".join(sorted(study.words))}
    values |= {f"pace {name}": getattr(study.pace, name) for name in _PACE}
    connection.executemany("INSERT OR REPLACE INTO setting VALUES (?, ?)", list(values.items()))


def _read_study(connection: sqlite3.Connection) -> Study:
    headers = dict(connection.execute("SELECT name, value FROM header ORDER BY position").fetchall())
    settings = dict(connection.execute("SELECT name, value FROM setting").fetchall())
    study = Study(headers)
    study.root = settings["root"]
    study.slot = settings.get("slot")
    study.pace = Pace(**{name: settings[f"pace {name}"] for name in _PACE if f"pace {name}" in settings})
    study.language = settings.get("language", "")
    study.words = frozenset(settings.get("words", "").split("\n")) - {""}
    study.next_id = settings["next node"]
    study.next_take = settings["next take"]
    study.nodes = _read_nodes(connection)
    parts = connection.execute("SELECT part, spoken, cues, intended, locked FROM part")
    for part, text, cues, intended, locked in parts:
        study.lines[Part(part)] = FreeLine(_spoken(text, cues), intended, bool(locked))
    for beat, seconds in connection.execute("SELECT beat, seconds FROM rehearsed"):
        study.rehearsed[_beat(beat)] = seconds
    study.rehearsals = tuple(
        Rehearsal(at, _told(text)) for at, text in connection.execute("SELECT at, told FROM rehearsal ORDER BY at")
    )
    study.pronunciations = dict(connection.execute("SELECT word, said FROM pronunciation").fetchall())
    study.left = frozenset(
        LeftQuery(_beat(beat), kind, quote)
        for beat, kind, quote in connection.execute("SELECT beat, kind, quote FROM left_query")
    )
    for row in connection.execute(f"SELECT {_TAKE_COLUMNS} FROM take ORDER BY id").fetchall():
        take = _take(row, read_events(connection, row[0]))
        study.takes[take.id] = take
    for beat, number in connection.execute("SELECT beat, take FROM take_choice"):
        study.chosen[_beat(beat)] = number
    return study


def _take(row: Sequence[Any], events: tuple[TakeEvent, ...]) -> Take:
    number, name, rate, samples, started, kept, complete, note, origin, left_out, replaces, room_tone, said = row
    bounds = list(map(int, left_out.split()))
    spans = tuple(Span(start, end) for start, end in zip(bounds[::2], bounds[1::2], strict=True))
    tone = Span(*map(int, room_tone.split())) if room_tone else None
    return Take(
        number,
        name,
        rate,
        samples,
        started,
        events,
        bool(kept),
        bool(complete),
        note,
        origin,
        spans,
        replaced_of(replaces),
        tone,
        _said(said),
    )


def _read_nodes(connection: sqlite3.Connection) -> dict[int, Node]:
    nodes: dict[int, Node] = {}
    for row in connection.execute(f"SELECT {_NODE_COLUMNS} FROM node ORDER BY id"):
        number, parent, move, children, text, cues, before, note, *rest = row
        marks, nags, intended, think, place, anchor, name, locked, mark_numbers = rest
        nodes[number] = Node(
            number,
            parent,
            None if move is None else _move(move),
            tuple(map(int, children.split())) if children else (),
            _spoken(text, cues) if text or cues else SILENT,
            before,
            note,
            _marks(marks, mark_numbers) if marks else (),
            tuple(map(int, nags.split())) if nags else (),
            intended,
            think,
            AFTER if place == "after" else Telling(Place(place), anchor),
            name,
            bool(locked),
        )
    return nodes


def _check_tree(study: Study) -> None:
    """Raises RowsError unless every node but the root is the child of its parent, once."""
    nodes = study.nodes
    root = nodes.get(study.root)
    if root is None or root.parent is not None:
        raise RowsError(tr("the start position is missing"))
    children = 0
    for node in nodes.values():
        for number in node.children:
            child = nodes.get(number)
            if child is None or child.parent != node.id or child.move is None:
                raise RowsError(tr("node {number} is not where node {id} expects it", number=number, id=node.id))
            children += 1
    if children != len(nodes) - 1:
        raise RowsError(tr("{count} nodes belong nowhere", count=len(nodes) - 1 - children))
    if study.next_id <= max(nodes):
        raise RowsError(tr("ids of nodes would be given twice"))


def _numbers_text(numbers: Iterable[int]) -> str:
    return " ".join(map(str, numbers))


def _cues_text(cues: Iterable[Cue]) -> str:
    rows = [(cue.word, cue.node, cue.mark) for cue in cues]
    return json.dumps(rows, separators=(",", ":")) if rows else ""


@lru_cache(maxsize=1024)
def _marks_text(marks: tuple[Mark, ...]) -> str:
    rows = [(mark.kind.value, *mark.squares) for mark in marks]
    return json.dumps(rows, separators=(",", ":")) if rows else ""


def _mark_numbers_text(marks: Sequence[Mark]) -> str:
    """A number for each mark, 0 for one without; empty where none has one."""
    if not marks or not any(mark.number for mark in marks):
        return ""
    return _numbers_text(mark.number or 0 for mark in marks)


def _spoken(text: str, cues: str) -> SpokenLine:
    return SpokenLine(text, tuple(Cue(word, node, mark) for word, node, mark in json.loads(cues)) if cues else ())


def _marks(text: str, numbers: str) -> tuple[Mark, ...]:
    rows = json.loads(text)
    places = [int(number) or None for number in numbers.split()] if numbers else [None] * len(rows)
    return tuple(
        Mark(MarkKind(kind), tuple(squares), number) for (kind, *squares), number in zip(rows, places, strict=True)
    )


@lru_cache(maxsize=8192)
def _move(uci: str) -> chess.Move:
    return chess.Move.from_uci(uci)


def _beat_value(beat: BeatKey | None) -> int | str | None:
    return beat.value if isinstance(beat, Part) else beat


def _beat(value: int | str) -> BeatKey:
    return value if isinstance(value, int) else Part(value)
