"""A whole talk written as data: side-lines, spoken lines, marks and times beside a game."""

from __future__ import annotations

import tomllib
from collections.abc import Callable
from dataclasses import replace
from typing import Any

import chess

from studyboard.model.errors import StudyboardError
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.node import Node, Place, Telling
from studyboard.model.positions import Positions
from studyboard.model.script import FreeLine, Part, SpokenLine
from studyboard.model.study import Study
from studyboard.notation.cued_text import parse_cued
from studyboard.notation.labels import move_label
from studyboard.notation.rules_board import candidates
from studyboard.notation.written_move import readings

_KINDS = {kind.value: kind for kind in MarkKind} | {"key": MarkKind.KEY_SQUARE}
_TELLINGS = {place.value: Telling(place) for place in Place if place is not Place.MOVED}


class TalkFileError(StudyboardError):
    """A talk file that cannot be read; the sentence names the node."""


def read_talk(toml: str, study: Study) -> Study:
    """A copy of *study*, the game, with everything that the talk file adds to it.

    The file is TOML: `slot` in seconds; a table `lines` with `greeting`, `closing`, `thanks`; and for each node a
    table in `node` with its `path` in SAN from the start, and as wanted `spoken` (with cues in braces, see
    cued_text), `note`, `note_before`, `marks` (“threat d8 h4”), `nags`, `think` and `intended` in seconds, `telling`
    (“before”, “after”, “hidden”) and `name`. Moves of a path that are not on the tree yet are added as side-lines.
    Raises TalkFileError.
    """
    try:
        talk = tomllib.loads(toml)
    except tomllib.TOMLDecodeError as reason:
        raise TalkFileError(f"The talk file is not valid TOML: {reason}.") from reason
    told = study.snapshot()
    try:
        _known(talk, ("slot", "language", "lines", "node"), "The talk file")
        told.slot = _seconds("slot", talk["slot"]) if "slot" in talk else None
        told.language = _text("language", talk["language"]) if "language" in talk else told.language
        lines = _table("lines", talk.get("lines", {}))
        _known(lines, [part.value for part in Part], "“lines”")
        for name, text in lines.items():
            told.lines[Part(name)] = FreeLine(SpokenLine(_text(name, text)))
    except ValueError as reason:
        raise TalkFileError(f"{reason} The talk file was not read.") from reason
    positions = Positions(told)
    for entry in _list("node", talk.get("node", [])):
        path = str(entry.get("path", "")) if isinstance(entry, dict) else ""
        try:
            _tell(told, positions, _table("node", entry), path)
        except (StudyboardError, ValueError) as reason:
            place = f"at “{path if len(path) <= 40 else '…' + path[-40:]}”" if path else "at the start position"
            raise TalkFileError(f"In the talk file, {place}: {reason}") from reason
    return told


def _tell(study: Study, positions: Positions, entry: dict[str, Any], path: str) -> None:
    _known(entry, ("path", "spoken", *_FIELDS), "A node")
    node_id = _walk(study, positions, path)
    fields = {name: read(name, entry[name]) for name, read in _FIELDS.items() if name in entry}
    study.nodes[node_id] = replace(study.nodes[node_id], **fields)
    if "spoken" in entry:
        spoken = parse_cued(study, positions, node_id, _text("spoken", entry["spoken"]))
        study.nodes[node_id] = replace(study.nodes[node_id], spoken=spoken)


def _walk(study: Study, positions: Positions, path: str) -> int:
    """The node at the end of a path in SAN; moves that are not on the tree yet are added."""
    node_id = study.root
    for san in path.split():
        board = positions.board(node_id)
        found = next((moves for moves in (candidates(board, meant) for meant in readings(san)) if moves), [])
        if len(found) != 1:
            what = "can be several moves" if found else "is not a legal move"
            raise ValueError(f"“{san}” {what} after {move_label(positions, node_id)}.")
        child = positions.child_by_move(node_id, found[0])
        node_id = _add(study, node_id, found[0]) if child is None else child
    return node_id


def _add(study: Study, parent: int, move: chess.Move) -> int:
    node_id = study.next_id
    study.next_id += 1
    study.nodes[node_id] = Node(node_id, parent, move)
    before = study.nodes[parent]
    study.nodes[parent] = replace(before, children=(*before.children, node_id))
    return node_id


def _known(table: dict[str, Any], names: Any, what: str) -> None:
    unknown = sorted(table.keys() - set(names))
    if unknown:
        raise ValueError(f"{what} has nothing called {' or '.join(f'“{name}”' for name in unknown)}.")


def _table(name: str, value: object) -> dict[str, Any]:
    if not isinstance(value, dict):
        raise ValueError(f"“{name}” should be a table.")
    return value


def _list(name: str, value: object) -> list[Any]:
    if not isinstance(value, list):
        raise TalkFileError(f"“{name}” should be written as [[{name}]], one for each node.")
    return value


def _text(name: str, value: object) -> str:
    if not isinstance(value, str):
        raise ValueError(f"“{name}” should be a text in quotes.")
    return value


def _seconds(name: str, value: object) -> float:
    if isinstance(value, bool) or not isinstance(value, (int, float)) or not 0 < value < 86_400:
        raise ValueError(f"“{name}” should be a number of seconds, more than none and less than a day.")
    return float(value)


def _think(name: str, value: object) -> float:
    return 0.0 if value == 0 else _seconds(name, value)


def _nags(name: str, value: object) -> tuple[int, ...]:
    nags = _list(name, value)
    if not all(isinstance(nag, int) and 0 <= nag <= 255 for nag in nags):
        raise ValueError(f"“{name}” should be numbers from 0 to 255.")
    return tuple(nags)


def _telling(name: str, value: object) -> Telling:
    if not isinstance(value, str) or value not in _TELLINGS:
        raise ValueError(f"“{name}” should be {' or '.join(f'“{word}”' for word in _TELLINGS)}.")
    return _TELLINGS[value]


def _marks(name: str, value: object) -> tuple[Mark, ...]:
    return tuple(_mark(_text(name, text)) for text in _list(name, value))


def _mark(text: str) -> Mark:
    kinds = [kind for kind in _KINDS if text == kind or text.startswith(f"{kind} ")]
    if not kinds:
        raise ValueError(f"“{text}” is no mark: it should begin with {', '.join(_KINDS)}.")
    kind = max(kinds, key=len)
    squares = text[len(kind) :].split()
    wrong = [square for square in squares if square not in chess.SQUARE_NAMES]
    if wrong:
        raise ValueError(f"“{text}” names “{wrong[0]}”, which is no square.")
    return Mark(_KINDS[kind], tuple(map(chess.parse_square, squares)))


_FIELDS: dict[str, Callable[[str, object], Any]] = {
    "note": _text,
    "note_before": _text,
    "name": _text,
    "marks": _marks,
    "nags": _nags,
    "think": _think,
    "intended": _seconds,
    "telling": _telling,
}
