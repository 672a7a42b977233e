"""What to leave out so that a talk meets its slot: side-lines, by the seconds they take and by what depends on them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

import chess

from studyboard.model.beats import Beat
from studyboard.model.edits import ChangeNode, Edit, apply
from studyboard.model.errors import EditRefusedError
from studyboard.model.node import Place, Telling
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.notation.labels import move_label
from studyboard.timing.planner import Planner
from studyboard.translation import tr, tr_later

_LABEL = tr_later("Leave a side-line out of the talk")
#: Savings below this (s) are not worth a cut.
_LEAST = 1.0
#: Words with which a line refers to something that was shown elsewhere.
_REFERS = re.compile(
    r"\b(saw|seen|earlier|again|remember|as before|same (?:idea|trick|move|pattern)|side-?line|variation|"
    r"sahen|gesehen|vorhin|wieder|erinner\w*|dieselbe\w*|Nebenvariante|Variante)\b",
    re.IGNORECASE,
)
_PIECES: Mapping[int, str] = {
    chess.KNIGHT: "knight|N|Springer|S",
    chess.BISHOP: "bishop|B|Läufer|L",
    chess.ROOK: "rook|R|Turm|T",
    chess.QUEEN: "queen|Q|Dame|D",
    chess.KING: "king|K|König",
}
#: What may stand between a piece and its square when somebody speaks, or writes.
_BETWEEN = r"[ x]*(?:(?:takes|to|on|at|goes to|comes to|sacrifice on|schlägt|nach|auf)\s+)*"


class Dependence(StrEnum):
    """Why a side-line would be missed."""

    REFERRED = "referred"
    SOLUTION = "solution"
    THINK = "think"
    ANCHOR = "anchor"
    REPEATS = "repeats"
    MARKS = "marks"


#: How much each of them weighs against the seconds that a cut gains: our own assumption. Words that refer to what was
#: never shown are the worst.
_WEIGHTS: Mapping[Dependence, float] = {
    Dependence.REFERRED: 4.0,
    Dependence.SOLUTION: 3.0,
    Dependence.THINK: 2.0,
    Dependence.ANCHOR: 2.0,
    Dependence.REPEATS: 1.0,
    Dependence.MARKS: 0.5,
}


@dataclass(frozen=True, slots=True)
class Tie:
    """One thing that depends on a side-line.

    node: where that is; None where it is the line itself
    """

    why: Dependence
    node: int | None = None


@dataclass(frozen=True, slots=True)
class Cut:
    """One side-line that could be left out.

    start: its first node
    seconds: by how much the talk gets shorter, its return and what lies inside included (s)
    beats: how many beats are told in it
    ties: what depends on it
    enough: True where it is among those that together meet the slot
    """

    start: int
    seconds: float
    beats: int
    ties: tuple[Tie, ...]
    enough: bool = False

    @property
    def weight(self) -> float:
        """How much depends on it; 0.0 for nothing."""
        return sum(_WEIGHTS[tie.why] for tie in self.ties)

    @property
    def score(self) -> float:
        """What it is ranked by: seconds for each unit of what depends on it (s)."""
        return self.seconds / (1 + self.weight)

    @property
    def edit(self) -> Edit:
        """Takes it out of the talk; it stays on the tree and in print."""
        return ChangeNode(self.start, "telling", Telling(Place.HIDDEN), _LABEL)


def suggested_cuts(study: Study, positions: Positions | None = None) -> tuple[Cut, ...]:
    """Every side-line that is told, the best to leave out first. O(side-lines × script).

    The study itself is left as it is. Where there is a slot and the talk is over it, as few as possible of the best
    are marked that together bring it under. Raises EditRefusedError where no side-line is told.
    """
    positions = Positions(study) if positions is None else positions
    told = Planner().plan(study)
    starts = _told_starts(study, told.beats)
    if not starts:
        raise EditRefusedError(tr("No side-line is told, so there is nothing to leave out but lines of the main line."))
    whole = told.timeline.seconds
    trial, planner = study.snapshot(), Planner()
    planner.plan(trial)
    scene = _Scene(study, positions, told.beats)
    cuts = []
    for start in starts:
        cut = Cut(start, 0.0, 0, ())
        inverse, _ = apply(trial, cut.edit)
        seconds = whole - planner.plan(trial).timeline.seconds
        apply(trial, inverse)
        if seconds >= _LEAST:
            inside = {node.id for node in study.branch(start)}
            beats = sum(beat.key in inside for beat in told.beats)
            cuts.append(replace(cut, seconds=seconds, beats=beats, ties=tuple(scene.ties(start, inside))))
    cuts.sort(key=lambda cut: -cut.score)
    over = 0.0 if study.slot is None else whole - study.slot
    enough = _enough(study, cuts, over)
    return tuple(replace(cut, enough=cut.start in enough) for cut in cuts)


def _told_starts(study: Study, told: Sequence[Beat]) -> list[int]:
    """The first nodes of the side-lines that are told, in the order of telling."""
    found: dict[int, None] = {}
    for beat in told:
        for visit in beat.visits:
            if visit.depth and study.begins_side_line(visit.node):
                found.setdefault(visit.node)
    return list(found)


def _enough(study: Study, cuts: Sequence[Cut], over: float) -> set[int]:
    """Of the best cuts as many as bring the talk under its slot, and none of them in vain."""
    chosen: list[Cut] = []
    left = over
    for cut in cuts:
        if left <= 0:
            break
        way = set(study.path(cut.start))
        if any(other.start in way for other in chosen):
            continue
        # What lies inside a line that goes, goes with it.
        inside = [other for other in chosen if cut.start in study.path(other.start)]
        chosen = [other for other in chosen if other not in inside]
        chosen.append(cut)
        left -= cut.seconds - sum(other.seconds for other in inside)
    for cut in sorted(chosen, key=lambda cut: cut.score):
        if left + cut.seconds <= 0:
            chosen.remove(cut)
            left += cut.seconds
    return {cut.start for cut in chosen}


class _Scene:
    """What of a talk can depend on its side-lines, looked up once.

    State: nothing that changes.
    """

    def __init__(self, study: Study, positions: Positions, told: Sequence[Beat]) -> None:
        self._study = study
        self._positions = positions
        self._nodes = list(dict.fromkeys(visit.node for beat in told for visit in beat.visits))
        self._places: dict[str, list[int]] = {}
        for node in self._nodes:
            self._places.setdefault(positions.board(node).epd(), []).append(node)
        self._referring = [
            (node, study.nodes[node].spoken.text)
            for node in self._nodes
            if _REFERS.search(study.nodes[node].spoken.text)
        ]
        self._moved = [node for node in study.nodes.values() if node.telling.place is Place.MOVED]

    def ties(self, start: int, inside: set[int]) -> Iterator[Tie]:
        """What depends on the line that begins here."""
        nodes = self._study.nodes
        parent = nodes[start].parent
        if parent is not None and nodes[parent].think > 0:
            yield Tie(Dependence.SOLUTION, parent)
        told = [node for node in self._nodes if node in inside]
        if any(nodes[node].think > 0 for node in told):
            yield Tie(Dependence.THINK)
        for moved in self._moved:
            if moved.telling.anchor in inside and moved.id not in inside:
                yield Tie(Dependence.ANCHOR, moved.id)
        for node in self._repeats(told, inside):
            yield Tie(Dependence.REPEATS, node)
        if any(nodes[node].marks for node in told):
            yield Tie(Dependence.MARKS)
        for node in self._references(start, told, inside):
            yield Tie(Dependence.REFERRED, node)

    def _repeats(self, told: Sequence[int], inside: set[int]) -> Iterator[int]:
        """The first node outside at which a position of the line stands again."""
        for node in told:
            for other in self._places[self._positions.board(node).epd()]:
                if other not in inside:
                    yield other
                    return

    def _references(self, start: int, told: Sequence[int], inside: set[int]) -> Iterator[int]:
        """Lines outside that speak of something that is shown in this one only."""
        outside = {self._shape(node) for node in self._nodes if node not in inside}
        shapes = {self._shape(node) for node in told} - outside - {None}
        patterns = [shape for shape in shapes if shape is not None]
        name = self._study.nodes[start].name.strip()
        for node, text in self._referring:
            if node in inside:
                continue
            named = bool(name) and name.lower() in text.lower()
            if named or any(re.search(pattern, text) for pattern in patterns):
                yield node

    def _shape(self, node: int) -> str | None:
        """A pattern of how the move of a piece is said, None for pawns, whose moves are said in too many talks."""
        move = self._study.nodes[node].move
        if move is None or not move:
            return None
        piece = self._positions.board(node).piece_at(move.to_square)
        if piece is None or piece.piece_type not in _PIECES:
            return None
        square = chess.square_name(move.to_square)
        return rf"(?i:\b(?:{_PIECES[piece.piece_type]})){_BETWEEN}{square[0]}\s?{square[1]}\b"


def tie_words(positions: Positions, tie: Tie) -> str:
    """What depends on a side-line, in a sentence."""
    where = "" if tie.node is None else move_label(positions, tie.node)
    match tie.why:
        case Dependence.REFERRED:
            return tr("The line at {move} refers to it.", move=where)
        case Dependence.SOLUTION:
            return tr("It answers the think pause at {move}.", move=where)
        case Dependence.THINK:
            return tr("It has a think pause.")
        case Dependence.ANCHOR:
            return tr("The side-line {move} is told after it.", move=where)
        case Dependence.REPEATS:
            return tr("Its position stands again at {move}.", move=where)
        case Dependence.MARKS:
            return tr("Something is marked in it.")
