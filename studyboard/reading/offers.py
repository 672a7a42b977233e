"""Moves that a spoken line names and that are not on the tree yet, to be offered as side-lines."""

from __future__ import annotations

import re
from dataclasses import dataclass

import chess

from studyboard.model.beats import beats
from studyboard.model.edits import AddMove, Edit, Several
from studyboard.model.order import VisitKind, running_order
from studyboard.model.positions import Positions
from studyboard.model.script import Part, word_spans
from studyboard.model.study import Study
from studyboard.translation import tr_later

#: How far along the tree a line may name moves before they count as another line (half-moves).
_KNOWN = 12
#: Only moves that are said in full are offered: “the queen could take” is more often a reason than a line.
_SQUARE = re.compile(r"[a-h] ?(?:[1-8]|one|two|three|four|five|six|seven|eight)\b|castle", re.IGNORECASE)


#: The label of the edit that adds an offered move.
LABEL = tr_later("Add {move} as it was said")


@dataclass(frozen=True, slots=True)
class Offer:
    """One move that could be added, with the moves on the way to it that are missing too.

    start, end: characters of the line that name it
    parent: id of the last node on the way that is on the tree
    moves: what would be added after it
    label: the last of them as a move with its number
    """

    start: int
    end: int
    parent: int
    moves: tuple[chess.Move, ...]
    label: str


def offers(study: Study, positions: Positions, key: int | Part) -> tuple[Offer, ...]:
    """The moves of one spoken line that are not on the tree, in the order of its words. Some 10 ms."""
    if isinstance(key, Part) or key not in study.nodes or not study.nodes[key].spoken:
        return ()
    first = _begins_at(study, key)
    start = study.nodes[first].parent
    if start is None:
        return ()
    text = study.nodes[key].spoken.text
    known = [study.nodes[node].move for node in study.main_line(first)][:_KNOWN]
    spans = word_spans(text)
    found: list[Offer] = []
    board, ahead = positions.board(start), [move for move in known if move is not None]
    # The label above is asked for where nothing is read: only here is it worth loading how talks are understood.
    from studyboard.notation.narration.while_typing import moves_in_line

    for said in moves_in_line(board, text, known=ahead):
        span = spans[said.first][0], spans[said.last][1]
        node, missing = _follow(positions, start, (*said.after, said.move))
        offered = any(offer.moves == missing and offer.parent == node for offer in found)
        if missing and not offered and _SQUARE.search(text, *span):
            found.append(Offer(*span, node, missing, _label(positions, node, missing)))
    return tuple(found)


def add_offer(study: Study, offer: Offer) -> Edit:
    """The edit that puts the offered moves on the tree."""
    edits: list[Edit] = []
    parent = offer.parent
    for number, move in enumerate(offer.moves):
        edits.append(AddMove(parent, move, study.next_id + number))
        parent = study.next_id + number
    return Several(tuple(edits), LABEL.format(move=offer.label))


def _begins_at(study: Study, key: int) -> int:
    """The first node of the beat that this line tells."""
    for beat in beats(study, running_order(study)):
        if beat.key == key:
            return next(visit.node for visit in beat.visits if visit.kind is VisitKind.TELL)
    return key


def _follow(positions: Positions, start: int, moves: tuple[chess.Move, ...]) -> tuple[int, tuple[chess.Move, ...]]:
    """The last node that these moves reach on the tree, and the moves that are missing after it."""
    node = start
    for number, move in enumerate(moves):
        child = positions.child_by_move(node, move)
        if child is None:
            return node, moves[number:]
        node = child
    return node, ()


def _label(positions: Positions, node: int, moves: tuple[chess.Move, ...]) -> str:
    board = positions.board(node).copy(stack=False)
    for move in moves[:-1]:
        board.push(move)
    return f"{board.fullmove_number}{'.' if board.turn else '...'} {board.san(moves[-1])}"
