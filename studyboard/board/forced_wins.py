"""Material that can be won by force: a search over checks, captures and direct threats, to a stated depth."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Final

import chess

from studyboard.board.exchange import PIECE_VALUES, best_exchange
from studyboard.board.mates import checking_moves
from studyboard.board.relations import worth
from studyboard.board.tactics import turned
from studyboard.board.work import CANCEL_EVERY, WorkCancelledError, never_cancelled

#: What mate counts in the search; a mate is worth more than all material.
MATE: Final = 500


@dataclass(frozen=True, slots=True)
class ForcedWin:
    """What the side to move wins at least, whatever the other side plays.

    gain: pawns, against the material now; MATE for a mate
    line: the moves, against a defence that loses least
    depth: how many moves of the attacker were looked at
    """

    gain: int
    line: tuple[chess.Move, ...]
    depth: int


def forced_win(
    board: chess.Board, depth: int = 2, *, cancelled: Callable[[], bool] = never_cancelled
) -> ForcedWin | None:
    """What the side to move wins by force with checks, captures and direct threats; None where it finds nothing.

    A lower bound: every answer of the defender is tried, of the attacker only forcing moves, up to *depth* of them;
    at the end the best exchange on one square counts, for either side. Raises WorkCancelledError.
    """
    search = _Search(board.copy(stack=False), board.turn, cancelled)
    start = search.balance()
    value, line = search.attack(depth, -MATE * 2, MATE * 2)
    gain = MATE if value >= MATE else value - start
    return ForcedWin(gain, tuple(line), depth) if gain > 0 and line else None


@dataclass(slots=True)
class _Search:
    """State: the board, moved along the line that is looked at, and how many positions were seen."""

    board: chess.Board
    side: chess.Color
    cancelled: Callable[[], bool]
    visited: int = 0

    def balance(self) -> int:
        """Material of the attacker minus the other side's (pawns)."""
        board = self.board
        return sum(
            PIECE_VALUES[kind] * (len(board.pieces(kind, self.side)) - len(board.pieces(kind, not self.side)))
            for kind in chess.PIECE_TYPES[:-1]
        )

    def settled(self) -> int:
        """The balance, on the attacker's turn, when it makes its best exchange or saves its dearest piece.

        What else of the attacker's can then be taken with profit is counted as lost.
        """
        mine = max(_gains(self.board), default=0)
        waiting = turned(self.board, not self.board.turn)
        theirs = sorted(_gains(waiting), reverse=True) if waiting is not None else []
        lost = theirs[0] if mine and theirs else theirs[1] if len(theirs) > 1 else 0
        return self.balance() + (max(mine - lost, 0) if mine else -lost)

    def attack(self, depth: int, alpha: int, beta: int) -> tuple[int, list[chess.Move]]:
        """The best the attacker reaches, who may also stop here."""
        self._count()
        best, line = self.settled(), _first_exchange(self.board)
        alpha = max(alpha, best)
        if depth == 0:
            return best, line
        for move in self._forcing():
            self.board.push(move)
            value, answers = self.defend(depth - 1, alpha, beta)
            self.board.pop()
            if value > best:
                best, line = value, [move, *answers]
            alpha = max(alpha, best)
            if alpha >= beta:
                break
        return best, line

    def defend(self, depth: int, alpha: int, beta: int) -> tuple[int, list[chess.Move]]:
        """The least the defender can keep the attacker to."""
        self._count()
        board = self.board
        worst, line = MATE * 2, []
        for move in self._answers():
            board.push(move)
            value, further = self.attack(depth, alpha, beta)
            board.pop()
            if value < worst:
                worst, line = value, [move, *further]
            beta = min(beta, worst)
            if alpha >= beta:
                break
        if line:
            return worst, line
        return (MATE + depth, []) if board.is_check() else (0, [])

    def _forcing(self) -> Iterator[chess.Move]:
        board = self.board
        checks = checking_moves(board)
        yield from checks
        known = set(checks)
        captures = [move for move in board.generate_legal_captures() if move not in known]
        captures.sort(key=lambda move: -worth(board, move.to_square))
        yield from captures
        known.update(captures)
        for move in board.legal_moves:
            if move not in known and self._threatens(move):
                yield move

    def _threatens(self, move: chess.Move) -> bool:
        """Does the piece that moves attack something dearer than itself, or something loose?"""
        board = self.board
        kind = board.piece_type_at(move.from_square) or chess.PAWN
        board.push(move)
        targets = board.attacks_mask(move.to_square) & board.occupied_co[board.turn] & ~board.kings
        found = any(
            worth(board, at) > PIECE_VALUES[kind] or (worth(board, at) > 1 and not board.attackers_mask(board.turn, at))
            for at in chess.scan_forward(targets)
        )
        board.pop()
        return found

    def _answers(self) -> list[chess.Move]:
        """All legal moves, captures of the dearest first."""
        board = self.board
        return sorted(board.legal_moves, key=lambda move: (-worth(board, move.to_square), board.is_capture(move)))

    def _count(self) -> None:
        self.visited += 1
        if self.visited % CANCEL_EVERY == 0 and self.cancelled():
            raise WorkCancelledError("The search was stopped.")


def _gains(board: chess.Board) -> list[int]:
    """What the side to move wins by exchanges, one figure for each piece that it takes with profit."""
    theirs = board.occupied_co[not board.turn] & ~board.kings
    return [gain for at in chess.scan_forward(theirs) if (gain := best_exchange(board, at).gain) > 0]


def _first_exchange(board: chess.Board) -> list[chess.Move]:
    """The moves of the most profitable exchange of the side to move; none where nothing can be won."""
    theirs = board.occupied_co[not board.turn] & ~board.kings
    exchanges = [best_exchange(board, at) for at in chess.scan_forward(theirs)]
    best = max(exchanges, key=lambda exchange: exchange.gain, default=None)
    return list(best.moves) if best is not None and best.gain > 0 else []
