"""A whole talk written as data: side-lines, spoken lines, marks and times beside a game."""

from __future__ import annotations

import tomllib
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

_KINDS = {kind.value: kind for kind in MarkKind} | {"key": MarkKind.KEY_SQUARE}
_KNOWN = {"path", "spoken", "note", "note_before", "marks", "nags", "think", "intended", "telling", "name"}


class TalkFileError(StudyboardError):
    """A talk file that cannot be read; the sentence names the node."""


def read_talk(toml: str, study: Study) -> Study:
    """A copy of *study*, the game, with everything that the talk file adds to it.

    The file is TOML: `slot` in seconds; a table `lines` with `greeting`, `closing`, `thanks`; and for each node a
    table in `node` with its `path` in SAN from the start, and as wanted `spoken` (with cues in braces, see
    cued_text), `note`, `note_before`, `marks` (“threat d8 h4”), `nags`, `think` and `intended` in seconds, `telling`
    (“before”, “hidden”) and `name`. Moves of a path that are not on the tree yet are added as side-lines. Raises
    TalkFileError.
    """
    try:
        talk = tomllib.loads(toml)
    except tomllib.TOMLDecodeError as reason:
        raise TalkFileError(f"The talk file is not valid TOML: {reason}.") from reason
    told = study.snapshot()
    told.slot = float(talk["slot"]) if "slot" in talk else None
    for name, text in talk.get("lines", {}).items():
        told.lines[Part(name)] = FreeLine(SpokenLine(str(text)))
    positions = Positions(told)
    for entry in talk.get("node", []):
        path = str(entry.get("path", ""))
        try:
            node_id = _walk(told, positions, path)
            told.nodes[node_id] = _told(told.nodes[node_id], entry)
            if "spoken" in entry:
                spoken = parse_cued(told, positions, node_id, str(entry["spoken"]))
                told.nodes[node_id] = replace(told.nodes[node_id], spoken=spoken)
        except (StudyboardError, ValueError, KeyError) as reason:
            raise TalkFileError(f"In the talk file, at “…{path[-40:]}”: {reason}") from reason
    return told


def _walk(study: Study, positions: Positions, path: str) -> int:
    """The node at the end of a path in SAN; moves that are not on the tree yet are added."""
    node_id = study.root
    for san in path.split():
        move = positions.board(node_id).parse_san(san)
        child = positions.child_by_move(node_id, move)
        node_id = _add(study, node_id, move) if child is None else child
    return node_id


def _add(study: Study, parent: int, move: chess.Move) -> int:
    node_id = study.next_id
    study.next_id += 1
    study.nodes[node_id] = Node(node_id, parent, move)
    before = study.nodes[parent]
    study.nodes[parent] = replace(before, children=(*before.children, node_id))
    return node_id


def _told(node: Node, entry: dict[str, Any]) -> Node:
    unknown = sorted(entry.keys() - _KNOWN)
    if unknown:
        raise TalkFileError(f"a node has nothing called {', '.join(unknown)}")
    telling = Telling(Place(entry["telling"])) if "telling" in entry else node.telling
    intended = entry.get("intended", node.intended)
    return replace(
        node,
        note=str(entry.get("note", node.note)),
        note_before=str(entry.get("note_before", node.note_before)),
        marks=tuple(_mark(text) for text in entry["marks"]) if "marks" in entry else node.marks,
        nags=tuple(int(nag) for nag in entry.get("nags", node.nags)),
        think=float(entry.get("think", node.think)),
        intended=None if intended is None else float(intended),
        telling=telling,
        name=str(entry.get("name", node.name)),
    )


def _mark(text: str) -> Mark:
    kind, _, squares = text.partition(" ")
    if kind not in _KINDS:
        raise TalkFileError(f"there is no mark called “{kind}”")
    return Mark(_KINDS[kind], tuple(chess.parse_square(square) for square in squares.split()))
