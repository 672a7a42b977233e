"""A spoken line that goes on over the next move: the move is played at one of its words instead of ending the beat."""

from __future__ import annotations

import chess

from studyboard.model.edits import ChangeNode, Edit, Several, add_move, apply
from studyboard.model.errors import EditRefusedError
from studyboard.model.order import VisitKind, running_order
from studyboard.model.script import SILENT, Cue, SpokenLine
from studyboard.model.study import Study
from studyboard.translation import tr, tr_later

_LABEL = tr_later("Play a move at a word")


def play_at_word(study: Study, node_id: int, move: chess.Move, line: SpokenLine, word: int) -> tuple[Edit, int]:
    """The edit that lets *line*, said at this node, go on over *move*, and the node that has the line then.

    line: the line as it is written now, stored or not
    word: index of the word at which the move is played; the number of words means after the last one

    The line goes over to the move's node, with the length that it should have; a cue keeps the move that it stood at.
    The move is put on the tree where it is not there yet. Raises EditRefusedError with the reason where the next move
    needs a line of its own. O(length of the running order).
    """
    node = study.nodes[node_id]
    if not line:
        raise EditRefusedError(tr("There are no words yet at which a move could be played."))
    if node.think:
        raise EditRefusedError(tr("The think pause here ends this line: the next move has one of its own."))
    if any(cue.mark is not None for cue in line.cues):
        raise EditRefusedError(tr("This line shows marks of its own move: the next move has a line of its own."))
    child = next((study.nodes[c] for c in node.children if study.nodes[c].move == move), None)
    if child is None and node.children:
        raise EditRefusedError(tr("This move begins a side-line: it has a line of its own."))
    if child is not None and (child.spoken or child.think or child.intended is not None):
        raise EditRefusedError(tr("The move that was played has a line of its own."))
    added = add_move(study, node_id, move)
    child_id = added.node if child is None else child.id
    cues = [cue for cue in line.cues if cue.node != child_id]
    if node.move is not None and all(cue.node != node_id for cue in cues):
        cues.append(Cue(0, node=node_id))
    grown = SpokenLine(line.text, (*cues, Cue(word, node=child_id))).sorted()
    edits: list[Edit] = [] if child is not None else [added]
    edits += [ChangeNode(node_id, "spoken", SILENT), ChangeNode(child_id, "spoken", grown)]
    for field, empty in (("intended", None), ("locked", False)):
        if getattr(node, field) != empty:
            edits += [ChangeNode(node_id, field, empty), ChangeNode(child_id, field, getattr(node, field))]
    edit = Several(tuple(edits), _LABEL)
    after = study.snapshot()
    apply(after, edit)
    if not _told_right_after(after, node_id, child_id):
        raise EditRefusedError(tr("This move is not told right after this one: it has a line of its own."))
    return edit, child_id


def _told_right_after(study: Study, node_id: int, child_id: int) -> bool:
    """True where nothing comes between the two in the talk, and the board does not step back either."""
    order = running_order(study)
    told = next((n for n, v in enumerate(order) if v.node == child_id and v.kind is VisitKind.TELL), None)
    if told is None:
        return False
    before = order[told - 1] if told else None
    if node_id == study.root:
        return before is None or before.kind is not VisitKind.TELL or before.node == node_id
    return before is not None and before.kind is VisitKind.TELL and before.node == node_id
