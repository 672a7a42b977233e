"""Forced mates: a complete search for mate in so many moves, or by checks alone, with the line that proves it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from typing import Final

import chess

from studyboard.board.naming import counted, side
from studyboard.board.work import CANCEL_EVERY, WorkCancelledError, never_cancelled
from studyboard.translation import tr

_REFUTATIONS_KEPT: Final = 6


@dataclass(frozen=True, slots=True)
class Mate:
    """A mate that cannot be prevented.

    moves: of the mating side, until mate
    line: the moves of both sides; the defence is one that lasts longest
    """

    moves: int
    line: tuple[chess.Move, ...]


def mate_in(
    board: chess.Board,
    most: int,
    *,
    checks_only: bool = False,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] = never_cancelled,
) -> Mate | None:
    """The shortest mate that the side to move can force in at most *most* moves; None where there is none.

    Complete: every move of both sides is tried; with *checks_only* every check of the attacker, and every answer.
    progress gets shares of 0 to 1 of the deepest search, and 1 when a mate is found. Raises WorkCancelledError. Draws
    by repetition and by the fifty-move rule are not considered.
    """
    search = _Search(board.copy(stack=False), checks_only, cancelled)
    for moves in range(1, most + 1):
        first = search.root(moves, progress if moves == most else None)
        if first is not None:
            if progress is not None:
                progress(1.0)
            return Mate(moves, search.line(moves))
    return None


def mate_words(board: chess.Board, mate: Mate) -> str:
    """``"White mates in two moves: 1. Qg8+ Rxg8 2. Nf7#."`` *board* is the position in which the mate was found."""
    return tr(
        "{side} mates in {moves}: {line}.",
        side=side(board.turn),
        moves=counted(mate.moves, "move"),
        line=board.variation_san(list(mate.line)),
    )


def mating_moves(
    board: chess.Board, most: int, *, cancelled: Callable[[], bool] = never_cancelled
) -> tuple[chess.Move, ...]:
    """All first moves by which the side to move forces mate in at most *most* moves. Raises WorkCancelledError."""
    search = _Search(board.copy(stack=False), False, cancelled)
    return tuple(move for move in list(search.board.legal_moves) if search.mates_by(move, most))


def mates_at_once(board: chess.Board) -> tuple[chess.Move, ...]:
    """All moves of the side to move that give mate. About a millisecond."""
    found = []
    after = board.copy(stack=False)
    for move in checking_moves(after):
        after.push(move)
        if not any(after.generate_legal_moves()):
            found.append(move)
        after.pop()
    return tuple(found)


def checking_moves(board: chess.Board) -> list[chess.Move]:
    """The legal moves of the side to move that give check; exact."""
    king = board.king(not board.turn)
    if king is None:
        return []
    ours = board.occupied_co[board.turn]
    lines = chess.BB_RANK_ATTACKS[king][chess.BB_RANK_MASKS[king] & board.occupied]
    lines |= chess.BB_FILE_ATTACKS[king][chess.BB_FILE_MASKS[king] & board.occupied]
    diagonals = chess.BB_DIAG_ATTACKS[king][chess.BB_DIAG_MASKS[king] & board.occupied]
    moves: list[chess.Move] = []
    screens = _screens(board, king) & ours
    reach = (
        (board.knights, chess.BB_KNIGHT_ATTACKS[king]),
        (board.bishops, diagonals),
        (board.rooks, lines),
        (board.queens, lines | diagonals),
        (board.pawns, chess.BB_PAWN_ATTACKS[not board.turn][king]),
    )
    for pieces, squares in reach:
        mine = pieces & ours & ~screens
        if mine and squares:
            moves += board.generate_legal_moves(mine, squares)
    back_rank = chess.BB_RANK_8 if board.turn else chess.BB_RANK_1
    pawns = board.pawns & ours & ~screens
    special = list(board.generate_legal_moves(pawns, back_rank)) if pawns else []
    special += board.generate_legal_moves(screens) if screens else []
    special += board.generate_legal_ep()
    special += board.generate_castling_moves()
    direct = [move for move in moves if not move.promotion]
    seen = set(direct)
    for move in special:
        if move not in seen and board.gives_check(move):
            seen.add(move)
            direct.append(move)
    return direct


def _screens(board: chess.Board, king: chess.Square) -> chess.Bitboard:
    """Pieces that stand alone between a slider of the side to move and the other king."""
    ours = board.occupied_co[board.turn]
    lines = chess.BB_RANK_ATTACKS[king][0] | chess.BB_FILE_ATTACKS[king][0]
    diagonals = chess.BB_DIAG_ATTACKS[king][0]
    sliders = ours & ((lines & (board.rooks | board.queens)) | (diagonals & (board.bishops | board.queens)))
    found = chess.BB_EMPTY
    for slider in chess.scan_forward(sliders):
        between = chess.between(king, slider) & board.occupied
        if between and chess.popcount(between) == 1:
            found |= between
    return found


@dataclass(slots=True)
class _Search:
    """One search from one position.

    State: what is known of positions that came up, which answers refuted an attacker's move last, and how much of the
    deepest search is done.
    """

    board: chess.Board
    checks_only: bool
    cancelled: Callable[[], bool]
    known: dict[tuple[object, int], chess.Move | None] = field(default_factory=dict)
    refuting: dict[int, list[chess.Move]] = field(default_factory=dict)
    visited: int = 0
    progress: Callable[[float], None] | None = None
    deepest: int = 0
    done: float = 0.0
    step: float = 0.0
    told: float = 0.0

    def root(self, moves: int, progress: Callable[[float], None] | None) -> chess.Move | None:
        """The first move that forces mate in at most *moves*."""
        candidates = list(self._candidates(moves))
        self.progress, self.deepest, self.told = progress, moves, 0.0
        found = None
        for number, move in enumerate(candidates):
            self.done, self.step = number / len(candidates), 1 / len(candidates)
            if self.mates_by(move, moves):
                found = move
                break
            self._tell((number + 1) / len(candidates))
        self.known[self.board._transposition_key(), moves] = found
        return found

    def mates_by(self, move: chess.Move, moves: int) -> bool:
        """Does this move of the side to move force mate in at most *moves*?"""
        self.board.push(move)
        lost = self._lost(moves - 1)
        self.board.pop()
        return lost

    def line(self, moves: int) -> tuple[chess.Move, ...]:
        """The moves of a mate in exactly *moves* that is known to be there, against a defence that lasts longest."""
        line: list[chess.Move] = []
        for left in range(moves, 0, -1):
            move = self._mating(left)
            assert move is not None
            self.board.push(move)
            line.append(move)
            if left == 1:
                break
            for answer in list(self.board.legal_moves):
                self.board.push(answer)
                if not any(self._mating(fewer) for fewer in range(1, left - 1)):
                    line.append(answer)
                    break
                self.board.pop()
        for _ in line:
            self.board.pop()
        return tuple(line)

    def _candidates(self, moves: int) -> Iterator[chess.Move]:
        checks = checking_moves(self.board)
        yield from checks
        if moves > 1 and not self.checks_only:
            known = set(checks)
            quiet = [move for move in self.board.legal_moves if move not in known]
            quiet.sort(key=lambda move: not self.board.is_capture(move))
            yield from quiet

    def _mating(self, moves: int) -> chess.Move | None:
        if moves == 1:
            self._count()
            return next((move for move in self._candidates(1) if self.mates_by(move, 1)), None)
        key = (self.board._transposition_key(), moves)
        if key in self.known:
            return self.known[key]
        self._count()
        candidates = self._candidates(moves)
        if self.progress is not None and moves == self.deepest - 1:
            candidates = self._counted(list(candidates))
        found = next((move for move in candidates if self.mates_by(move, moves)), None)
        self.known[key] = found
        return found

    def _counted(self, candidates: list[chess.Move]) -> Iterator[chess.Move]:
        """The second moves of the attacker, told as parts of the first one's share: one of those may take minutes."""
        for number, move in enumerate(candidates):
            self._tell(self.done + self.step * number / len(candidates))
            yield move

    def _tell(self, share: float) -> None:
        # Each answer to a first move begins its second moves anew; what was told is not taken back.
        if self.progress is not None and share > self.told:
            self.told = share
            self.progress(share)

    def _lost(self, moves: int) -> bool:
        """Is the side to move mated already, or in at most *moves* further moves whatever it plays?"""
        board = self.board
        if moves == 0:
            return board.is_check() and not any(board.generate_legal_moves())
        refuting = self.refuting.setdefault(moves, [])
        for answer in refuting:
            if board.is_legal(answer) and not self._answer_fails(answer, moves):
                if answer != refuting[0]:
                    refuting.remove(answer)
                    refuting.insert(0, answer)
                return False
        tried = set(refuting)
        any_answer = False
        for answer in board.generate_legal_moves():
            any_answer = True
            if answer not in tried and not self._answer_fails(answer, moves):
                refuting.insert(0, answer)
                del refuting[_REFUTATIONS_KEPT:]
                return False
        return any_answer or board.is_check()

    def _answer_fails(self, answer: chess.Move, moves: int) -> bool:
        self.board.push(answer)
        fails = self._mating(moves) is not None
        self.board.pop()
        return fails

    def _count(self) -> None:
        self.visited += 1
        if self.visited % CANCEL_EVERY == 0 and self.cancelled():
            raise WorkCancelledError(tr("The search was stopped."))
