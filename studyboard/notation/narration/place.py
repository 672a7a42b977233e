"""Positions that a talk may have reached, each with the moves that lead on from it and how well words fit them."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple, TypeAlias

import chess

from studyboard.notation.narration.forms import Form, Phrase
from studyboard.notation.narration.sense import attacked_from, best_gain, unlikelihood

#: A legal move and what it costs to understand the words as this move.
Fit: TypeAlias = "tuple[chess.Move, float]"

_UNSAID_CAPTURE, _UNSAID_PAWN_CAPTURE = 0.4, 0.9
_BARE_CAPTURE, _BARE_PIECE, _ANY_PIECE = 1.3, 3.6, 0.4
_UNNAMED_PIECE_TAKES = 0.3
_NO_NAME_FOR_PAWN = 0.3
_ELSEWHERE_THAN_LAST = 0.9
_NOT_BACKWARD = 0.9
_MOVES_ON = -0.35
_HINTED, _HINTED_BARE = -0.6, -2.8
_UNDERPROMOTED = 3.0
_VAGUE = 1.0
_VAGUE_PAWN, _ONE_STEP = 0.3, 0.9
_WRONG_COLOUR = 2.2
_NO_CHECK, _NO_MATE, _CHECKS = 1.5, 1.8, -0.6
_NEAR = 0.6
_DOUBT = 0.75
_MOST = 6.0
_MOVE_BITS = 15
_CASTLED = frozenset({chess.C1, chess.G1, chess.C8, chess.G8})


class _Step(NamedTuple):
    """One legal move with what a speaker says of it."""

    move: chess.Move
    piece: int
    taken: int
    castles: str


class _Facts:
    """What is known of one position with its last moves, shared by all ways that lead to it.

    State: its legal moves once they were asked for, by the piece and by the square, and what fits which words.
    """

    __slots__ = ("best_gain", "checks", "fits", "of", "stands", "to", "unlikely", "ways_on")

    def __init__(self) -> None:
        self.of: dict[tuple[int | None, bool], list[_Step]] = {}
        self.to: dict[int, list[_Step]] = {}
        self.fits: dict[int, tuple[float, tuple[Fit, ...]]] = {}
        self.checks: dict[int, bool] = {}
        self.best_gain: int | None = None
        self.unlikely: dict[tuple[int, int, int], float] = {}
        self.stands: dict[int, bool] = {}
        self.ways_on: tuple[chess.Move | None, list[chess.Move]] | None = None


class Answer(NamedTuple):
    """A move that some words fit. fit: the cost of the words; unlikely: how unlikely the move is."""

    fit: float
    unlikely: float
    place: Place


class Place:
    """A position on the way that a talk takes, known by the moves from the start.

    answers: what words can play here, by the number of their form; for whoever asks to remember
    last: the last move and how many there were as one number, the same for no other move at this distance

    State: the board, made when it is asked for; the facts are shared within one talk by the dictionary of the start.
    """

    __slots__ = (
        "_all_facts",
        "_board",
        "_facts",
        "_fits_last",
        "_gains",
        "answers",
        "last",
        "move",
        "number",
        "parent",
        "ply",
        "steps_to",
    )

    def __init__(self, number: int, parent: Place | None, move: chess.Move | None, board: chess.Board | None) -> None:
        self.number = number
        self.parent = parent
        self.move = move
        self.ply: int = 0 if parent is None else parent.ply + 1
        self.last: int = 0 if move is None else self.ply << _MOVE_BITS | _number_of(move)
        self.answers: dict[int, list[Answer]] = {}
        self.steps_to: dict[chess.Move, Place] = {}
        self._board = board
        self._facts: _Facts | None = None
        self._gains: tuple[int, int] | None = None
        self._fits_last: dict[int, tuple[float, float] | None] = {}
        self._all_facts: dict[tuple[object, ...], _Facts] = {} if parent is None else parent._all_facts

    def unlikelihood(self, move: chess.Move) -> float:
        """How unlikely a legal move is here at first sight, from 0 up, as a logarithm of odds.

        What could have been taken before and was not is not held against a move once more.
        """
        if self._gains is None:
            self._gains = self._new_gains()
        best, left_before = self._gains
        known = self._known().unlikely
        key = _number_of(move), best, left_before
        found = known.get(key)
        if found is None:
            found = known[key] = unlikelihood(self.board, move, best, left_before)
        return found

    def _new_gains(self) -> tuple[int, int]:
        """What can be won here and could not two moves ago, and what could be won and was not with the last move."""
        best = self.best_gain()
        if self.parent is None:
            return best, 0
        known_before = self.parent.parent is not None and best <= self.parent.parent.best_gain()
        return 0 if known_before else best, self.parent.best_gain()

    def best_gain(self) -> int:
        """What the side to move can win with one capture of a piece, in pawns."""
        facts = self._facts or self._known()
        if facts.best_gain is None:
            facts.best_gain = best_gain(self.board)
        return facts.best_gain

    def _known(self) -> _Facts:
        if self._facts is None:
            board = self.board
            key = (
                board.occupied_co[chess.WHITE],
                board.occupied_co[chess.BLACK],
                board.pawns,
                board.knights,
                board.bishops,
                board.rooks,
                board.queens,
                board.turn,
                board.castling_rights,
                board.ep_square,
                None if self.move is None else _number_of(self.move),
                self.capture_square,
                self.moved_before,
            )
            self._facts = self._all_facts.setdefault(key, _Facts())
        return self._facts

    @property
    def board(self) -> chess.Board:
        """The position; to be read only."""
        if self._board is None:
            assert self.parent is not None
            assert self.move is not None
            self._board = self.parent.board.copy(stack=False)
            self._board.push(self.move)
            self._board.clear_stack()
        return self._board

    @property
    def move_number(self) -> int:
        """The number of the move that is to be played here."""
        return self.board.fullmove_number

    @property
    def capture_square(self) -> int | None:
        """Where the last move took something, None where it did not."""
        if self.parent is None or self.move is None or not self.parent.board.is_capture(self.move):
            return None
        return self.move.to_square

    @property
    def moved_before(self) -> int | None:
        """Where the piece stands that moved last of those that are to move, None where that is not known."""
        before = None if self.parent is None else self.parent.move
        return before.to_square if before else None

    def only_move(self) -> chess.Move | None:
        """The one legal move, if there is only one."""
        return self._ways_on()[0]

    def recaptures(self) -> list[chess.Move]:
        """The moves that take back what has just taken."""
        return self._ways_on()[1]

    def _ways_on(self) -> tuple[chess.Move | None, list[chess.Move]]:
        facts = self._known()
        if facts.ways_on is None:
            moves = iter(self.board.generate_legal_moves())
            first = next(moves, None)
            only = first if first is not None and next(moves, None) is None else None
            square = self.capture_square
            taking = [] if square is None else [step.move for step in self._steps_to(square) if step.taken]
            facts.ways_on = only, taking
        return facts.ways_on

    def legal_moves(self) -> list[chess.Move]:
        """All legal moves."""
        return list(self.board.generate_legal_moves())

    def stands(self, phrase: Phrase) -> bool:
        """Do the words name a piece that stands on that very square, instead of one that goes there?"""
        stands = (self._facts or self._known()).stands
        known = stands.get(phrase.form_number)
        if known is None:
            known = stands[phrase.form_number] = self._stands(phrase.form)
        return known

    def fits(self, phrase: Phrase) -> tuple[float, tuple[Fit, ...]]:
        """What doubt costs here, and the legal moves that the words can mean, each with its cost."""
        facts = self._facts
        fits = (facts or self._known()).fits
        known = fits.get(phrase.form_number)
        if known is None:
            known = fits[phrase.form_number] = self._doubted(self._fit(phrase.form))
        return known

    def fits_last(self, phrase: Phrase) -> tuple[float, float] | None:
        """What doubt costs, and the cost of the words for the move that led here; None where they cannot mean it."""
        if phrase.form_number in self._fits_last:
            return self._fits_last[phrase.form_number]
        found = None
        if self.parent is not None and self.move is not None:
            doubt, fits = self.parent.fits(phrase)
            found = next(((doubt, fit) for move, fit in fits if move == self.move), None)
        self._fits_last[phrase.form_number] = found
        return found

    def _stands(self, form: Form) -> bool:
        square = form.to
        if square is None or form.capture or form.promotes or form.from_square is not None:
            return False
        piece = self.board.piece_type_at(square)
        return piece is not None and (form.bare or form.piece == piece)

    def _steps_of(self, piece: int | None, capture: bool) -> list[_Step]:
        """The moves of the pieces of one type, or of all; only those that take, or all."""
        facts = self._known()
        found = facts.of.get((piece, capture))
        if found is None:
            found = facts.of[piece, capture] = list(_steps_of(self.board, piece, capture))
        return found

    def _steps_to(self, square: int) -> list[_Step]:
        facts = self._known()
        found = facts.to.get(square)
        if found is None:
            found = facts.to[square] = list(_steps_to(self.board, square))
        return found

    def _doubted(self, fits: list[Fit]) -> tuple[float, tuple[Fit, ...]]:
        if len(fits) < 2:
            return 0.0, tuple(fit for fit in fits if fit[1] <= _MOST)
        least = min(cost for _, cost in fits)
        near = sum(1 for _, cost in fits if cost <= least + _NEAR)
        kept = sorted((fit for fit in fits if fit[1] <= _MOST), key=lambda fit: fit[1])
        return _DOUBT * math.log(near), tuple(kept)

    def _fit(self, form: Form) -> list[Fit]:
        fits: list[Fit] = []
        board = self.board
        if form.same:
            fits = [(move, 0.0) for move in self._mirrored()]
        elif form.castles:
            side = form.castles.removeprefix("both ")
            steps = [_step(board, move) for move in board.generate_castling_moves()]
            fits = [(s.move, 0.0) for s in steps if side in ("castles", "both", s.castles)]
        else:
            if form.to is not None and not _reached(board, form.to, form.piece):
                return fits
            steps = self._steps_of(form.piece, form.capture) if form.to is None else self._steps_to(form.to)
            last, before = self.capture_square, self.moved_before
            like = (board.piece_type_at(self.move.to_square) or 0) if self.move else 0
            for step in steps:
                if _allowed(form, step):
                    fits.append((step.move, _cost(form, step, last, board.turn, before, like)))
        if form.check:
            fits = [(move, cost + self._check_cost(move, form.mate)) for move, cost in fits]
            if form.vague:
                fits = [(move, cost) for move, cost in fits if self._gives_check(move)]
        if form.white is not None and form.white != board.turn:
            fits = [(move, cost + _WRONG_COLOUR) for move, cost in fits]
        return fits

    def _mirrored(self) -> list[chess.Move]:
        """The last move on the other side of the board, if it can be played."""
        if not self.move:
            return []
        move = chess.Move(chess.square_mirror(self.move.from_square), chess.square_mirror(self.move.to_square))
        return [move] if self.board.is_legal(move) else []

    def _gives_check(self, move: chess.Move) -> bool:
        checks, number = self._known().checks, _number_of(move)
        known = checks.get(number)
        if known is None:
            known = checks[number] = self.board.gives_check(move)
        return known

    def _check_cost(self, move: chess.Move, mate: bool) -> float:
        if not self._gives_check(move):
            return _NO_CHECK
        if not mate:
            return _CHECKS
        return _CHECKS if self._mates(move) else _NO_MATE

    def _mates(self, move: chess.Move) -> bool:
        board = self.board.copy(stack=False)
        board.push(move)
        return board.is_checkmate()


def _number_of(move: chess.Move) -> int:
    """The move as a number below 2 to the power of _MOVE_BITS; no two moves in one position have the same."""
    return move.from_square | move.to_square << 6 | (move.promotion or 0) << 12


def _reached(board: chess.Board, square: int, piece: int | None) -> bool:
    """Does a piece of this type, or of any, go to the square, if nothing keeps it from moving?"""
    us = board.turn
    own = board.occupied_co[us]
    if own & chess.BB_SQUARES[square]:
        return False
    if piece is not None and piece != chess.PAWN:
        return bool(attacked_from(piece, us, square, board.occupied) & board.pieces_mask(piece, us))
    if board.pawns & own & (chess.BB_FILES[square & 7] | chess.BB_PAWN_ATTACKS[not us][square]):
        return True
    return piece is None and bool(board.attackers_mask(us, square))


def _steps_of(board: chess.Board, piece: int | None, capture: bool) -> Iterator[_Step]:
    us = board.turn
    sources = board.occupied_co[us] if piece is None else board.pieces_mask(piece, us)
    moves = board.generate_legal_captures(sources) if capture else board.generate_legal_moves(sources)
    for move in moves:
        yield _step(board, move)


def _steps_to(board: chess.Board, square: int) -> Iterator[_Step]:
    """The legal moves to one square; only the pieces that could reach it at all are asked for them."""
    us = board.turn
    sources = board.attackers_mask(us, square) | (board.pawns & chess.BB_FILES[square & 7])
    if square in _CASTLED:
        sources |= board.kings
    sources &= board.occupied_co[us]
    if sources:
        for move in board.generate_legal_moves(sources, chess.BB_SQUARES[square]):
            yield _step(board, move)


def _step(board: chess.Board, move: chess.Move) -> _Step:
    piece = board.piece_type_at(move.from_square) or 0
    castles, taken = "", 0
    if piece == chess.KING and board.is_castling(move):
        castles = "short" if chess.square_file(move.to_square) > chess.square_file(move.from_square) else "long"
    else:
        taken = board.piece_type_at(move.to_square) or 0
        if not taken and piece == chess.PAWN and (move.to_square - move.from_square) & 7:
            taken = chess.PAWN
    return _Step(move, piece, taken, castles)


def _allowed(form: Form, step: _Step) -> bool:
    move = step.move
    if form.to is not None and move.to_square != form.to:
        return False
    if form.piece is not None and step.piece != form.piece:
        return False
    if form.from_square is not None and move.from_square != form.from_square:
        return False
    if form.from_file is not None and chess.square_file(move.from_square) != form.from_file:
        return False
    if form.from_rank is not None and chess.square_rank(move.from_square) != form.from_rank:
        return False
    if form.capture and not step.taken:
        return False
    if form.target is not None and step.taken != form.target:
        return False
    if form.target_file is not None and chess.square_file(move.to_square) != form.target_file:
        return False
    if form.promotes and not move.promotion:
        return False
    if form.promotion is not None and move.promotion != form.promotion:
        return False
    if step.castles and (form.piece != chess.KING or form.to is None):
        return False
    return not (form.exact and not form.capture and form.piece == chess.PAWN and step.taken)


def _cost(form: Form, step: _Step, last: int | None, turn: chess.Color, before: int | None, like: int) -> float:
    move = step.move
    cost = 0.0
    if form.piece is None and not form.bare and not form.capture and move.from_square == before:
        cost += _MOVES_ON
    if form.hint and step.piece == (like if form.hint == "same" else chess.QUEEN):
        cost += _HINTED_BARE if form.bare else _HINTED
    if form.bare:
        if step.piece == chess.PAWN:
            cost += _BARE_CAPTURE if step.taken else 0.0
        else:
            cost += _BARE_PIECE + (_UNSAID_CAPTURE if step.taken else 0.0)
    elif step.taken and not form.capture and not form.vague:
        cost += _UNSAID_PAWN_CAPTURE if step.piece == chess.PAWN and not form.exact else _UNSAID_CAPTURE
    if form.piece is None and not form.bare and form.to is not None and not form.capture and form.from_square is None:
        cost += _ANY_PIECE + (_NO_NAME_FOR_PAWN if step.piece == chess.PAWN else 0.0)
    if form.capture and form.piece is None and form.from_square is None and step.piece != chess.PAWN:
        cost += _UNNAMED_PIECE_TAKES
    if form.capture and form.to is None and move.to_square != last and not form.trades:
        cost += _ELSEWHERE_THAN_LAST + (1.2 if form.again else 0.0)
    elif form.again and move.to_square != last:
        cost += 1.5
    if move.promotion and form.promotion is None and move.promotion != chess.QUEEN:
        cost += _UNDERPROMOTED
    if form.vague:
        known = form.piece == chess.PAWN and form.from_file is not None
        cost += _VAGUE_PAWN + (_ONE_STEP if abs(move.to_square - move.from_square) == 8 else 0.0) if known else _VAGUE
    if form.back:
        forward = chess.square_rank(move.to_square) - chess.square_rank(move.from_square)
        if (forward if turn else -forward) >= 0:
            cost += _NOT_BACKWARD
    return cost
