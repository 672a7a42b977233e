"""The slower board, for positions that the quick one does not play: Chess960 and set-up positions that break a rule."""

from __future__ import annotations

import chess

from studyboard.notation.quick_board import QuickBoard, Undo
from studyboard.notation.written_move import ANY_PIECE, CASTLES_LONG, CASTLES_SHORT, PASSES, WrittenMove

_START = chess.Board()
_QUICK_START = QuickBoard(_START)
_NOTHING: Undo = (0, 0, 0, 0, 0, 0, False)


class RulesBoard:
    """The same behaviour as QuickBoard by listing legal moves with python-chess.

    State: a board with its last move on the stack.
    """

    __slots__ = ("_board",)

    def __init__(self, board: chess.Board) -> None:
        self._board = board

    def as_board(self) -> chess.Board:
        """The same position, to be read."""
        return self._board

    def find(self, written: WrittenMove) -> chess.Move | None:
        """The legal move that is meant; None where there is none, or more than one."""
        found = candidates(self._board, written)
        return found[0] if len(found) == 1 else None

    def play(self, move: chess.Move) -> Undo:
        """Play a legal move."""
        self._board.push(move)
        return _NOTHING

    def before(self, undo: Undo) -> RulesBoard:
        """A copy of this board with its last move taken back."""
        board = self._board.copy(stack=1)
        board.pop()
        return RulesBoard(board)

    def copy(self) -> RulesBoard:
        """The same position, to be played on independently."""
        return RulesBoard(self._board.copy(stack=1))


def reading_board(board: chess.Board) -> QuickBoard | RulesBoard:
    """The quickest board that plays by the rules from this position."""
    if board == _START and not board.chess960:
        return _QUICK_START.copy()
    return QuickBoard(board) if QuickBoard.fits(board) else RulesBoard(board.copy(stack=False))


def candidates(board: chess.Board, written: WrittenMove) -> list[chess.Move]:
    """Every legal move that *written* can mean; a promotion without a piece is one to a queen."""
    if written.piece == PASSES:
        return [] if board.is_check() else [chess.Move.null()]
    if written.piece in (CASTLES_SHORT, CASTLES_LONG):
        castles = board.is_kingside_castling if written.piece == CASTLES_SHORT else board.is_queenside_castling
        return [move for move in board.generate_castling_moves() if castles(move)]
    return [move for move in board.legal_moves if _means(board, written, move)]


def _means(board: chess.Board, written: WrittenMove, move: chess.Move) -> bool:
    origin = move.from_square
    piece = board.piece_type_at(origin)
    if written.origins is not None and origin not in written.origins:
        return False
    if board.is_castling(move):
        # In Chess960 the move of the rules goes to the rook; people also write where the king ends up.
        return piece == written.piece or written.piece == ANY_PIECE if _castles_by(board, written, move) else False
    if move.to_square != written.to or written.piece not in (ANY_PIECE, piece):
        return False
    if piece == chess.PAWN:
        file = written.file if written.file >= 0 else chess.square_file(written.to)
        if chess.square_file(origin) != file:
            return False
    promotion = written.promotion or (chess.QUEEN if move.promotion else 0)
    return promotion == (move.promotion or 0)


def _castles_by(board: chess.Board, written: WrittenMove, move: chess.Move) -> bool:
    if written.origins is None or len(written.origins) != 1 or written.promotion:
        return False
    file = 6 if board.is_kingside_castling(move) else 2
    lands = chess.square(file, chess.square_rank(move.from_square))
    return written.to == move.to_square or (written.to == lands and abs(lands - move.from_square) == 2)
