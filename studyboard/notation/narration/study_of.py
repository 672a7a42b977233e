"""From what was understood of a talk to a study: moves on the tree, spoken lines with cues, times."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

import chess

from studyboard.model.node import Node, Place, Telling
from studyboard.model.position_study import position_study
from studyboard.model.script import Cue, FreeLine, Part, SpokenLine, word_spans
from studyboard.model.study import Study
from studyboard.notation.narration.narration import Narration, SpokenMove, ToldBeat

_NOT_PLAYED = "not played"
_BETWEEN_PARAGRAPHS = "\n\n"


@dataclass(slots=True)
class _Line:
    """A spoken line in the making: its text, its cues, and the seconds that its beats took."""

    text: str = ""
    cues: list[Cue] = field(default_factory=list)
    seconds: float | None = 0.0


def narration_study(narration: Narration, game: Study | None = None) -> Study:
    """The talk as a study. O(size of the talk and the game).

    game: the game that was given to the reader; the study is then a copy of it with the talk on it

    Every beat becomes the spoken line of the last node that is played in it, with a cue at the first word of each
    move. A beat without a move is said where the board stands; before the first move it is the greeting, and a
    paragraph at the end of the talk, back on the main line, is the closing. Times become intended seconds.
    """
    study = game.snapshot() if game is not None else _empty_study(narration.fen)
    by_number = {move.number: move for move in narration.moves}
    nodes = _put_on_tree(study, narration.moves)
    _set_right(study, len(narration.main_line))
    lines: dict[int | Part, _Line] = {}
    at: int | Part = Part.GREETING
    last_told = max((place for place, beat in enumerate(narration.beats) if beat.moves), default=-1)
    for place, beat in enumerate(narration.beats):
        if beat.moves:
            at = nodes[beat.moves[-1]]
        elif place > last_told >= 0 and _ends_on_main_line(narration.moves):
            at = Part.CLOSING
        _say(lines.setdefault(at, _Line()), beat, [(by_number[n], nodes[n]) for n in beat.moves])
    for key, line in lines.items():
        spoken = SpokenLine(line.text, tuple(line.cues)).sorted()
        seconds = line.seconds or None
        if isinstance(key, Part):
            study.lines[key] = FreeLine(spoken, seconds)
        else:
            study.nodes[key] = replace(study.nodes[key], spoken=spoken, intended=seconds)
    return study


def _empty_study(fen: str) -> Study:
    return Study() if fen == chess.STARTING_FEN else position_study(fen)


def _set_right(study: Study, played: int) -> None:
    """First children are told in their turn; what is told after the last move of the game is named as not played."""
    for node in list(study.nodes.values()):
        if node.children and study.nodes[node.children[0]].telling != Telling():
            first = node.children[0]
            study.nodes[first] = replace(study.nodes[first], telling=Telling())
    line = list(study.main_line())
    if len(line) > played + 1:
        beyond = line[played + 1]
        study.nodes[beyond] = replace(study.nodes[beyond], name=study.nodes[beyond].name or _NOT_PLAYED)


def _ends_on_main_line(moves: Sequence[SpokenMove]) -> bool:
    return bool(moves) and moves[-1].depth == 0


def _say(line: _Line, beat: ToldBeat, played: Sequence[tuple[SpokenMove, int]]) -> None:
    """Add a beat to a spoken line."""
    before = len(word_spans(line.text))
    ends = [end for _, end in word_spans(beat.text)]
    for move, node in played:
        word = bisect_right(ends, max(0, move.start - beat.start))
        line.cues.append(Cue(before + min(word, len(ends)), node))
    line.text = f"{line.text}{_BETWEEN_PARAGRAPHS}{beat.text}" if line.text else beat.text
    if line.seconds is not None:
        known = beat.at is not None and beat.until is not None
        line.seconds = line.seconds + beat.until - beat.at if known else None  # type: ignore[operator]


def _put_on_tree(study: Study, moves: Sequence[SpokenMove]) -> dict[int, int]:
    """Add every move that is not on the tree yet; the ids of their nodes by the numbers of the moves.

    The line that is told goes on by its first child; what leaves it comes behind, even where it was told before.
    """
    nodes = {0: study.root}
    for move in moves:
        parent = study.nodes[nodes[move.after]]
        known = next((child for child in parent.children if study.nodes[child].move == move.move), None)
        if known is None:
            known = _added(study, parent, move, nodes)
        nodes[move.number] = known
    return nodes


def _added(study: Study, parent: Node, move: SpokenMove, nodes: dict[int, int]) -> int:
    node = Node(study.next_id, parent.id, move.move)
    study.next_id += 1
    if move.branches:
        node = replace(node, telling=_telling(parent, nodes[move.beside]))
        place = len(parent.children)
    else:
        place = _before_those_that_branch(study, parent)
    children = (*parent.children[:place], node.id, *parent.children[place:])
    study.nodes[parent.id] = replace(parent, children=children)
    study.nodes[node.id] = node
    return node.id


def _telling(parent: Node, told_last: int) -> Telling:
    """When a side-line is told that leaves behind *parent*, while the line that it leaves has come to *told_last*."""
    if told_last == parent.id:
        return Telling(Place.BEFORE)
    if told_last in parent.children:
        return Telling(Place.AFTER)
    return Telling(Place.MOVED, told_last)


def _before_those_that_branch(study: Study, parent: Node) -> int:
    """The place of a move with which its line goes on: first, but for one that is there already."""
    first = study.nodes[parent.children[0]] if parent.children else None
    waits = first is not None and first.telling.place is Place.BEFORE
    return 0 if first is None or waits else len(parent.children)
