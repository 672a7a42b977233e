"""A spoken line as text with its cues in between, and back."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TypeAlias

import chess

from studyboard.desk.edit_labels import kind_name
from studyboard.model.marks import Mark
from studyboard.model.order import VisitKind, running_order
from studyboard.model.script import Cue, SpokenLine, word_spans
from studyboard.model.study import Study


@dataclass(frozen=True, slots=True)
class Cued:
    """What a cue plays or shows, without its place.

    node: id of the node whose move is played, or None
    mark: index into the marks of the node that has the line, or None
    """

    node: int | None = None
    mark: int | None = None


Run: TypeAlias = "str | Cued"


def runs_of(line: SpokenLine) -> list[Run]:
    """The line as runs of text with each cue just before the word at which it comes, at the very end after the last."""
    line = line.sorted()
    spans = word_spans(line.text)
    end = len(line.text)
    runs: list[Run] = []
    done = 0
    for cue in line.cues:
        place = spans[cue.word][0] if cue.word < len(spans) else end
        if place > done:
            runs.append(line.text[done:place])
            done = place
        runs.append(Cued(cue.node, cue.mark))
    if done < len(line.text):
        runs.append(line.text[done:])
    return runs


def line_of(runs: Iterable[Run]) -> SpokenLine:
    """The spoken line that these runs make: a cue belongs to the word that it stands in or before."""
    text = ""
    placed: list[tuple[int, Cued]] = []
    for run in runs:
        if isinstance(run, Cued):
            placed.append((len(text), run))
        else:
            text += run
    ends = [end for _, end in word_spans(text)]
    cues = (Cue(sum(end <= place for end in ends), cued.node, cued.mark) for place, cued in placed)
    return SpokenLine(text, tuple(cues))


def cueable(study: Study, node: int) -> list[Cued]:
    """What a cue in the line of this node can play or show: the silent moves before it, its own move, its marks."""
    moves = [node] if study.node(node).move is not None else []
    run: list[int] = []
    for visit in running_order(study):
        if visit.kind is not VisitKind.TELL:
            run = []
            continue
        if visit.node == node:
            moves = [*run, *moves]
            break
        told = study.node(visit.node)
        silent = not told.spoken and not told.think and told.intended is None
        run = [*run, visit.node] if silent else []
    marks = [Cued(mark=index) for index in range(len(study.node(node).marks))]
    return [*(Cued(node=move) for move in moves), *marks]


def mark_label(mark: Mark) -> str:
    """A mark in the fewest words: ``"threat d6–h2"``."""
    return f"{kind_name(mark.kind)} {'–'.join(chess.square_name(square) for square in mark.squares)}"
