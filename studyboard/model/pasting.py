"""Branches copied and moved: what has to be done to a study to paste one elsewhere."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import chess

from studyboard.model.edits import ChangeNode, Edit, InsertBranch, RemoveBranch, Several
from studyboard.model.errors import EditRefusedError
from studyboard.model.node import Node
from studyboard.model.study import Study, start_board
from studyboard.translation import tr, tr_later


def paste(study: Study, branch: Sequence[Node], parent: int) -> Edit:
    """The edit that puts a copy of *branch* (a node and all after it, parents first) after *parent*.

    Every move must be legal there. Moves that are on the tree already are not doubled: what comes after them is
    added, and they take over words, notes and marks where they have none. Raises EditRefusedError with the first move
    that is not legal. O(size of the branch).
    """
    fresh = study.next_id
    target: dict[int, int] = {}
    boards: dict[int, chess.Board] = {}
    added: dict[int, Node] = {}
    edits: list[Edit] = []
    tops: list[int] = []
    start = _replay(study, parent)
    for number, node in enumerate(branch):
        if number == 0:
            at, before = parent, start
        else:
            assert node.parent is not None
            at, before = target[node.parent], boards[node.parent]
        move = node.move
        if move is None:
            raise EditRefusedError(tr("A start position cannot be pasted after a move."))
        if move not in before.legal_moves and (move or before.is_check()):
            number_text = f"{before.fullmove_number}{'.' if before.turn else '...'}"
            raise EditRefusedError(
                tr(
                    "This branch does not fit here: {number_text} {squares} is not a legal move.",
                    number_text=number_text,
                    squares=_squares(move),
                )
            )
        after = before.copy(stack=False)
        after.push(move)
        boards[node.id] = after
        same = next((c for c in _children(study, added, at) if _move(study, added, c) == move), None)
        if same is not None:
            target[node.id] = same
            if same in study.nodes:
                edits += _take_over(study.nodes[same], node)
            continue
        added[fresh] = replace(node, id=fresh, parent=at, children=())
        if at in added:
            added[at] = replace(added[at], children=(*added[at].children, fresh))
        else:
            tops.append(fresh)
        target[node.id] = fresh
        fresh += 1
    for top in tops:
        edits.append(
            InsertBranch(tuple(_retargeted(node, target) for node in _branch(added, top)), label=tr_later("Paste"))
        )
    if not edits:
        raise EditRefusedError(tr("All of this branch stands here already."))
    return Several(tuple(edits), tr_later("Paste a branch"))


def cut_and_paste(study: Study, node: int, parent: int) -> Edit:
    """The edit that moves the branch of *node* to another place, with its ids where nothing stands there yet.

    Raises EditRefusedError where it does not fit.
    """
    branch = tuple(study.branch(node))
    if any(inside.id == parent for inside in branch):
        raise EditRefusedError(tr("A branch cannot be pasted into itself."))
    if branch[0].parent == parent:
        raise EditRefusedError(tr("All of this branch stands here already."))
    merged = paste(study, branch, parent)
    cut = RemoveBranch(node)
    if any(study.nodes[child].move == branch[0].move for child in study.nodes[parent].children):
        return Several((merged, cut), tr_later("Move a branch"))
    return Several((cut, InsertBranch((replace(branch[0], parent=parent), *branch[1:]))), tr_later("Move a branch"))


def _squares(move: chess.Move) -> str:
    """The move by its squares: what stands on them elsewhere need not stand on them here."""
    if not move:
        return "passing"
    promotion = f"={chess.piece_symbol(move.promotion).upper()}" if move.promotion else ""
    return f"{chess.square_name(move.from_square)}–{chess.square_name(move.to_square)}{promotion}"


def why_not_there(study: Study, node: int, parent: int) -> str:
    """Why the branch of *node* cannot be moved to another place, in a sentence; empty where it can be."""
    try:
        cut_and_paste(study, node, parent)
    except EditRefusedError as reason:
        return str(reason)
    return ""


def _replay(study: Study, node_id: int) -> chess.Board:
    board = start_board(study.headers)
    for step in study.path(node_id):
        move = study.nodes[step].move
        if move is not None:
            board.push(move)
    board.clear_stack()
    return board


def _children(study: Study, added: dict[int, Node], node_id: int) -> list[int]:
    if node_id in added:
        return list(added[node_id].children)
    return [*study.nodes[node_id].children, *(n.id for n in added.values() if n.parent == node_id)]


def _move(study: Study, added: dict[int, Node], node_id: int) -> chess.Move | None:
    return (added[node_id] if node_id in added else study.nodes[node_id]).move


def _branch(added: dict[int, Node], top: int) -> list[Node]:
    found: list[Node] = []
    waiting = [top]
    while waiting:
        node = added[waiting.pop()]
        found.append(node)
        waiting.extend(reversed(node.children))
    return found


def _retargeted(node: Node, target: dict[int, int]) -> Node:
    """The node with its cues and its anchor pointing at the copies."""
    cues = tuple(
        replace(cue, node=target.get(cue.node, cue.node)) if cue.node is not None else cue for cue in node.spoken.cues
    )
    telling = node.telling
    if telling.anchor is not None:
        telling = replace(telling, anchor=target.get(telling.anchor, telling.anchor))
    return replace(node, spoken=replace(node.spoken, cues=cues), telling=telling)


def _take_over(here: Node, pasted: Node) -> list[Edit]:
    empty = Node(0, None, None)
    return [
        ChangeNode(here.id, name, getattr(pasted, name))
        for name in ("note_before", "note", "marks", "nags")
        if getattr(here, name) == getattr(empty, name) != getattr(pasted, name)
    ]
