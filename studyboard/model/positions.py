"""The position at every node, kept along the lines that are looked at."""

from __future__ import annotations

from collections import OrderedDict

import chess

from studyboard.model.study import Study, start_board

_KEPT = 4096


class Positions:
    """Boards of a study by node id.

    State: the last few thousand boards that were asked for, so that a step forwards plays one move and a step
    back plays none. Ids are never used again and a node's move never changes, so only another start position
    makes them stale; that is noticed here.
    """

    __slots__ = ("_boards", "_sans", "_start", "study")

    def __init__(self, study: Study) -> None:
        self.study = study
        self._boards: OrderedDict[int, chess.Board] = OrderedDict()
        self._sans: dict[int, str] = {}
        self._start = self._start_tags()

    def board(self, node_id: int) -> chess.Board:
        """The position after this node's move: to be read, not played on (copy it for that).

        Raises KeyError where there is no such node. O(1) next to a node seen before, else O(length).
        """
        self._notice_new_start()
        boards, nodes = self._boards, self.study.nodes
        node = nodes[node_id]
        board = boards.get(node_id)
        if board is not None:
            boards.move_to_end(node_id)
            return board
        missing = [node]
        while board is None and node.parent is not None:
            node = nodes[node.parent]
            board = boards.get(node.id)
            if board is None:
                missing.append(node)
        if board is None:
            board = start_board(self.study.headers)
        while missing:
            node = missing.pop()
            board = board.copy(stack=False)
            if node.move is not None:
                board.push(node.move)
                board.clear_stack()
            boards[node.id] = board
        while len(boards) > _KEPT:
            boards.popitem(last=False)
        return board

    def san(self, node_id: int) -> str:
        """The move of this node in standard algebraic notation; empty at the root."""
        self._notice_new_start()
        node = self.study.nodes[node_id]
        known = self._sans.get(node_id)
        if known is not None:
            return known
        san = ""
        if node.move is not None and node.parent is not None:
            san = self.board(node.parent).san(node.move)
        self._sans[node_id] = san
        return san

    def child_by_move(self, node_id: int, move: chess.Move) -> int | None:
        """The child that this move leads to, or None where it is not on the tree yet."""
        nodes = self.study.nodes
        return next((child for child in nodes[node_id].children if nodes[child].move == move), None)

    def _start_tags(self) -> tuple[str | None, str | None]:
        return self.study.headers.get("FEN"), self.study.headers.get("Variant")

    def _notice_new_start(self) -> None:
        tags = self._start_tags()
        if tags != self._start:
            self._boards.clear()
            self._sans.clear()
            self._start = tags
