"""Material that can be won by force: a search over checks, captures and direct threats, to a stated depth."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Final

import chess

from studyboard.board.exchange import PIECE_VALUES, best_exchange, value_taken
from studyboard.board.mates import checking_moves
from studyboard.board.naming import side
from studyboard.board.relations import worth
from studyboard.board.tactics import turned
from studyboard.board.work import CANCEL_EVERY, WorkCancelledError, never_cancelled
from studyboard.translation import tr

#: What mate counts in the search; a mate is worth more than all material.
MATE: Final = 500


@dataclass(frozen=True, slots=True)
class ForcedWin:
    """What the side to move wins, whatever the other side answers within the depth that was looked at.

    gain: pawns, against the material now; MATE for a mate
    line: the moves, against a defence that loses least
    depth: how many moves of the attacker were looked at
    """

    gain: int
    line: tuple[chess.Move, ...]
    depth: int


def forced_win(
    board: chess.Board,
    depth: int = 2,
    *,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] = never_cancelled,
) -> ForcedWin | None:
    """What the side to move wins by force with checks, captures and direct threats; None where it finds nothing.

    Every answer of the defender is tried, of the attacker only forcing moves, up to *depth* of them. Where the line
    ends, what either side can take at once counts; what a counter-threat would bring after that is not seen, so that a
    gain may be a pawn less in truth. progress gets shares of 0 to 1. Raises WorkCancelledError.
    """
    search = _Search(board.copy(stack=False), board.turn, cancelled, progress)
    start = search.balance()
    value, line = search.attack(depth, -MATE * 2, MATE * 2)
    if progress is not None:
        progress(1.0)
    gain = MATE if value >= MATE else value - start
    return ForcedWin(gain, tuple(line), depth) if gain > 0 and line else None


def forced_win_words(board: chess.Board, win: ForcedWin) -> str:
    """``"White wins 5 points by force: 1. Nc7+ Kd7 2. Nxa8."``; ``"White mates by force: …"``."""
    what = (
        tr("mates")
        if win.gain == MATE
        else tr("wins a pawn")
        if win.gain == 1
        else tr("wins {gain} points", gain=win.gain)
    )
    return tr(
        "{side} {what} by force: {line}.", side=side(board.turn), what=what, line=board.variation_san(list(win.line))
    )


@dataclass(slots=True)
class _Search:
    """State: the board, moved along the line that is looked at, and how many positions were seen."""

    board: chess.Board
    side: chess.Color
    cancelled: Callable[[], bool]
    progress: Callable[[float], None] | None = None
    visited: int = 0

    def balance(self) -> int:
        """Material of the attacker minus the other side's (pawns)."""
        board = self.board
        return sum(
            PIECE_VALUES[kind] * (len(board.pieces(kind, self.side)) - len(board.pieces(kind, not self.side)))
            for kind in chess.PIECE_TYPES[:-1]
        )

    def standing(self) -> int:
        """The balance, on the attacker's turn, when it saves its dearest piece and takes nothing.

        What else of the attacker's can then be taken with profit is counted as lost. In check, everything that can.
        """
        board = self.board
        waiting = turned(board, not board.turn)
        if waiting is None:
            waiting = board.copy(stack=False)
            waiting.turn, waiting.ep_square = not board.turn, None
            return self.balance() - max(_gains(waiting), default=0)
        theirs = sorted(_gains(waiting), reverse=True)
        return self.balance() - (theirs[1] if len(theirs) > 1 else 0)

    def taking(self, best: int) -> tuple[int, list[chess.Move]]:
        """The balance after the attacker's best capture and the answer to it; *best* where none is better.

        The line is the capture alone: what is taken back afterwards the figure knows, but it is not the only answer.
        """
        board = self.board
        balance, line = self.balance(), []
        for move in board.generate_legal_captures():
            won = value_taken(board, move)
            if balance + won <= best:
                continue
            board.push(move)
            kept = balance + won - max(_gains(board), default=0)
            board.pop()
            if kept > best:
                best, line = kept, [move]
        return best, line

    def attack(self, depth: int, alpha: int, beta: int) -> tuple[int, list[chess.Move]]:
        """The best the attacker reaches, who may also stop here."""
        self._count()
        best: int
        line: list[chess.Move]
        best, line = self.standing(), []
        if depth == 0:
            return self.taking(best)
        alpha = max(alpha, best)
        # Only the first call tells how far it is; deeper ones come too often to be worth it.
        progress, self.progress = self.progress, None
        moves = list(self._forcing())
        for number, move in enumerate(moves):
            if progress is not None:
                progress(number / len(moves))
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
            raise WorkCancelledError(tr("The search was stopped."))


def _gains(board: chess.Board) -> list[int]:
    """What the side to move wins by exchanges, one figure for each piece that it takes with profit."""
    theirs = board.occupied_co[not board.turn] & ~board.kings
    return [gain for at in chess.scan_forward(theirs) if (gain := best_exchange(board, at).gain) > 0]
