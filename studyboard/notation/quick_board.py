"""A board that only finds and plays written moves, several times faster than one that lists all legal moves."""

from __future__ import annotations

from functools import cache
from typing import TypeAlias

import chess

from studyboard.notation.written_move import ANY_PIECE, CASTLES_LONG, CASTLES_SHORT, PASSES, WrittenMove

#: Pieces on the squares: 0 empty, 1-6 white pawn to king, 7-12 the same for Black.
_BLACK = 6
_PAWN, _KNIGHT, _BISHOP, _ROOK, _QUEEN, _KING = range(1, 7)

#: What has to be put back to take a move back: from, to, the piece, what was captured, castling rights,
#: en-passant square, whether the side to move was in check.
Undo: TypeAlias = "tuple[int, int, int, int, int, int, bool]"

_PASS = chess.Move.null()
_SHORT, _LONG = 1, 2
#: Castling rights are bits in the order of these rooks: White short and long, Black short and long.
_ROOKS = (chess.H1, chess.A1, chess.H8, chess.A8)
#: The rights that are left once a piece leaves or reaches the square.
_RIGHTS_KEPT = [15] * 64
for _square, _lost in ((0, 2), (7, 1), (4, 3), (56, 8), (63, 4), (60, 12)):
    _RIGHTS_KEPT[_square] = 15 & ~_lost

_Way: TypeAlias = "tuple[int, ...]"


def _ways() -> tuple[list[list[_Way | None]], list[_Way | None], list[bytes]]:
    """Geometry by `from * 64 + to`.

    For each piece type, the squares between, or None where it never moves so; then the squares from a king's square
    through another one to the edge, or None where they are not on one line; with the sliders that move along it.
    """
    reach: list[list[_Way | None]] = [[None] * 4096 for _ in range(7)]
    rays: list[_Way | None] = [None] * 4096
    sliders = [b""] * 4096
    steps = [(file, rank) for file in (-1, 0, 1) for rank in (-1, 0, 1) if file or rank]
    jumps = [(1, 2), (2, 1), (2, -1), (1, -2), (-1, -2), (-2, -1), (-2, 1), (-1, 2)]
    for square in range(64):
        for file, rank in jumps:
            to = _step(square, file, rank)
            if to is not None:
                reach[_KNIGHT][square * 64 + to] = ()
        for file, rank in steps:
            ray: list[int] = []
            to = _step(square, file, rank)
            while to is not None:
                ray.append(to)
                to = _step(to, file, rank)
            for place, to in enumerate(ray):
                way = tuple(ray[:place])
                for piece in (_BISHOP if file and rank else _ROOK, _QUEEN, *((_KING,) if not place else ())):
                    reach[piece][square * 64 + to] = way
                rays[square * 64 + to] = tuple(ray)
                sliders[square * 64 + to] = bytes((_BISHOP if file and rank else _ROOK, _QUEEN))
    return reach, rays, sliders


def _step(square: int, file: int, rank: int) -> int | None:
    file += square & 7
    rank += square >> 3
    return rank * 8 + file if 0 <= file < 8 and 0 <= rank < 8 else None


_REACH, _RAYS, _SLIDERS = _ways()
_PAWN_CHECKS = [
    [frozenset(s for f in (-1, 1) if (s := _step(square, f, up)) is not None) for square in range(64)] for up in (1, -1)
]


@cache
def move_between(origin: int, to: int, promotion: int = 0) -> chess.Move:
    """The move as a value; equal moves share one object, because a study holds thousands of them."""
    return chess.Move(origin, to, promotion or None)


class QuickBoard:
    """A position in which written moves are looked up and played.

    State: the squares and what else decides which moves are legal. Made from a valid position of ordinary chess
    (`QuickBoard.fits`); the rules themselves are checked against python-chess in the tests.
    """

    __slots__ = ("_black", "_castling", "_checked", "_en_passant", "_kings", "_squares")

    def __init__(self, board: chess.Board) -> None:
        self._squares = bytearray(64)
        for square, piece in board.piece_map().items():
            self._squares[square] = piece.piece_type + (0 if piece.color else _BLACK)
        self._black = not board.turn
        rights = board.clean_castling_rights()
        self._castling = sum(1 << bit for bit, rook in enumerate(_ROOKS) if rights >> rook & 1)
        self._en_passant = -1 if board.ep_square is None else board.ep_square
        self._kings = [self._squares.find(_KING), self._squares.find(_KING + _BLACK)]
        self._checked = board.is_check()

    @staticmethod
    def fits(board: chess.Board) -> bool:
        """True for a position that this board can play from."""
        return not board.chess960 and board.is_valid()

    def copy(self) -> QuickBoard:
        """The same position, to be played on independently."""
        other: QuickBoard = QuickBoard.__new__(QuickBoard)
        other._squares = self._squares[:]
        other._black = self._black
        other._castling = self._castling
        other._en_passant = self._en_passant
        other._kings = self._kings[:]
        other._checked = self._checked
        return other

    def as_board(self) -> chess.Board:
        """The same position with all the rules; its move numbers count from one."""
        board = chess.Board(None)
        board.turn = not self._black
        for square, code in enumerate(self._squares):
            if code:
                board.set_piece_at(square, chess.Piece((code - 1) % _BLACK + 1, code <= _BLACK))
        board.castling_rights = sum(
            chess.BB_SQUARES[rook] for bit, rook in enumerate(_ROOKS) if self._castling >> bit & 1
        )
        board.ep_square = self._en_passant if self._en_passant >= 0 else None
        return board

    def find(self, written: WrittenMove) -> chess.Move | None:
        """The legal move that is meant; None where there is none, or more than one."""
        piece = written.piece
        to = written.to
        if piece == _PAWN:
            return self._find_pawn_move(to, written.file, written.origins, written.promotion)
        if piece > _KING or piece == ANY_PIECE:
            return self._find_special(written)
        squares = self._squares
        at = squares[to]
        if self._black:
            if at > _BLACK:
                return None
            code = piece + _BLACK
        elif 0 < at <= _BLACK:
            return self._castling_written_out(written) if piece == _KING else None
        else:
            code = piece
        if written.promotion:
            return None
        reach = _REACH[piece]
        origins = written.origins
        found = None
        square = squares.find(code)
        while square >= 0:
            way = reach[square * 64 + to]
            if way is not None and (origins is None or square in origins):
                for between in way:
                    if squares[between]:
                        break
                else:
                    if self._safe(square, to, code):
                        if found is not None:
                            return None
                        found = move_between(square, to)
            square = squares.find(code, square + 1)
        if found is None and piece == _KING:
            return self._castling_written_out(written)
        return found

    def play(self, move: chess.Move) -> Undo:
        """Play a legal move; the return value takes it back (`before`)."""
        if not move:
            undo = (0, 0, 0, 0, self._castling, self._en_passant, self._checked)
            self._en_passant = -1
            self._black = not self._black
            return undo
        squares = self._squares
        origin = move.from_square
        to = move.to_square
        code = squares[origin]
        captured = squares[to]
        undo = (origin, to, code, captured, self._castling, self._en_passant, self._checked)
        black = self._black
        piece = code - _BLACK if black else code
        squares[origin] = 0
        squares[to] = code
        rare = False
        if piece == _PAWN:
            if to == self._en_passant and not captured and (to - origin) & 7:
                squares[to + (8 if black else -8)] = 0
                rare = True
            self._en_passant = (origin + to) >> 1 if to - origin in (16, -16) else -1
            if move.promotion:
                piece = move.promotion
                squares[to] = piece + _BLACK if black else piece
        else:
            self._en_passant = -1
            if piece == _KING:
                self._kings[black] = to
                if to - origin in (2, -2) and captured == 0:
                    rook, rook_to = (origin + 3, origin + 1) if to > origin else (origin - 4, origin - 1)
                    squares[rook_to] = squares[rook]
                    squares[rook] = 0
                    rare = True
        if self._castling:
            self._castling &= _RIGHTS_KEPT[origin] & _RIGHTS_KEPT[to]
        self._black = not black
        king = self._kings[not black]
        if rare:
            self._checked = self._attacked(king, black)
        else:
            self._checked = self._gives_check(piece, to, king, black) or self._opened(king, origin, black)
        return undo

    def before(self, undo: Undo) -> QuickBoard:
        """A copy of this board with its last move taken back."""
        other = self.copy()
        origin, to, code, captured, other._castling, other._en_passant, other._checked = undo
        other._black = not self._black
        if not code:
            return other
        squares = other._squares
        squares[origin] = code
        squares[to] = captured
        piece = code - _BLACK if other._black else code
        if piece == _KING:
            other._kings[other._black] = origin
            if to - origin in (2, -2):
                rook, rook_to = (origin + 3, origin + 1) if to > origin else (origin - 4, origin - 1)
                squares[rook] = squares[rook_to]
                squares[rook_to] = 0
        elif piece == _PAWN and to == other._en_passant and (to - origin) & 7:
            squares[to + (8 if other._black else -8)] = _PAWN if other._black else _PAWN + _BLACK
        return other

    def _find_pawn_move(self, to: int, file: int, origins: bytes | None, promotion: int) -> chess.Move | None:
        squares = self._squares
        black = self._black
        code = _PAWN + _BLACK if black else _PAWN
        back = 8 if black else -8
        origin = to + back
        if not 0 <= origin < 64:
            return None
        at = squares[to]
        if file < 0 or file == to & 7:
            if at:
                return None
            if squares[origin] != code:
                if to >> 3 != (4 if black else 3) or squares[origin]:
                    return None
                origin += back
                if squares[origin] != code:
                    return None
        else:
            origin += file - (to & 7)
            if file - (to & 7) not in (1, -1) or squares[origin] != code:
                return None
            if not (0 < at <= _BLACK if black else at > _BLACK) and (at or to != self._en_passant):
                return None
        if (origins is not None and origin not in origins) or not self._safe(origin, to, code):
            return None
        if to >> 3 in (0, 7):
            if promotion in (_PAWN, _KING):
                return None
            return move_between(origin, to, promotion or _QUEEN)
        return None if promotion else move_between(origin, to)

    def _find_special(self, written: WrittenMove) -> chess.Move | None:
        piece = written.piece
        if piece in (CASTLES_SHORT, CASTLES_LONG):
            return self._find_castling(piece == CASTLES_SHORT)
        if piece == PASSES:
            return None if self._checked else _PASS
        assert written.origins is not None
        code = self._squares[written.origins[0]]
        if (code > _BLACK) != self._black or not code:
            return None
        return self.find(
            WrittenMove((code - 1) % _BLACK + 1, written.to, written.origins, written.file, written.promotion)
        )

    def _castling_written_out(self, written: WrittenMove) -> chess.Move | None:
        """Castling written as the king's move over two squares."""
        king = self._kings[self._black]
        if written.origins != bytes((king,)) or written.to - king not in (2, -2) or written.promotion:
            return None
        return self._find_castling(written.to > king)

    def _find_castling(self, short: bool) -> chess.Move | None:
        black = self._black
        if self._checked or not self._castling & ((_SHORT if short else _LONG) << (2 if black else 0)):
            return None
        king = self._kings[black]
        squares = self._squares
        free = (king + 1, king + 2) if short else (king - 1, king - 2, king - 3)
        if any(squares[square] for square in free):
            return None
        if any(self._attacked(square, not black) for square in free[:2]):
            return None
        return move_between(king, free[1])

    def _safe(self, origin: int, to: int, code: int) -> bool:
        """Does the own king stay out of check when the piece goes there?"""
        black = self._black
        king = self._kings[black]
        squares = self._squares
        en_passant = to == self._en_passant and code == (_PAWN + _BLACK if black else _PAWN) and (to - origin) & 7
        if origin == king or self._checked or en_passant:
            captured = squares[to]
            squares[origin] = 0
            squares[to] = code
            taken = to + (8 if black else -8) if en_passant else to
            if en_passant:
                squares[taken] = 0
            safe = not self._attacked(to if origin == king else king, not black)
            if en_passant:
                squares[taken] = _PAWN if black else _PAWN + _BLACK
            squares[origin] = code
            squares[to] = captured
            return safe
        line = king * 64 + origin
        ray = _RAYS[line]
        if ray is None:
            return True
        for square in ray:
            if square == to:
                return True
            at = squares[square]
            if at and square != origin:
                enemy = at if black else at - _BLACK
                return enemy not in _SLIDERS[line] if enemy > 0 else True
        return True

    def _gives_check(self, piece: int, to: int, king: int, black: bool) -> bool:
        if piece == _PAWN:
            return king in _PAWN_CHECKS[black][to]
        way = _REACH[piece][to * 64 + king]
        if way is None:
            return False
        squares = self._squares
        for between in way:  # noqa: SIM110 - the innermost loop of the import
            if squares[between]:
                return False
        return True

    def _opened(self, king: int, origin: int, black: bool) -> bool:
        """Has a piece that left *origin* opened a line of its own side on the king?"""
        line = king * 64 + origin
        ray = _RAYS[line]
        if ray is None:
            return False
        squares = self._squares
        for square in ray:
            at = squares[square]
            if at:
                own = at - _BLACK if black else at
                return own > 0 and own in _SLIDERS[line]
        return False

    def _attacked(self, target: int, by_black: bool) -> bool:
        squares = self._squares
        shift = _BLACK if by_black else 0
        for square in _PAWN_CHECKS[not by_black][target]:
            if squares[square] == _PAWN + shift:
                return True
        for piece in (_KNIGHT, _BISHOP, _ROOK, _QUEEN, _KING):
            reach = _REACH[piece]
            code = piece + shift
            square = squares.find(code)
            while square >= 0:
                way = reach[square * 64 + target]
                if way is not None:
                    for between in way:
                        if squares[between]:
                            break
                    else:
                        return True
                square = squares.find(code, square + 1)
        return False
