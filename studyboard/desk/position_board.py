"""A board on which pieces are put by hand, with a tray of pieces beside it."""

from __future__ import annotations

import chess
from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, QSizeF, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPixmap,
    QResizeEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from studyboard.desk.board_accessible import show_as_picture
from studyboard.desk.board_announce import announce
from studyboard.desk.board_geometry import BoardPlace, fit_board
from studyboard.desk.board_signs import paint_cursor
from studyboard.desk.look import Look
from studyboard.desk.paint import PiecePixmaps, paint_scene
from studyboard.desk.painted_parts import SquareParts
from studyboard.picture.describe import describe_board, describe_square
from studyboard.picture.primitives import Bounds
from studyboard.picture.scene import board_bounds, pieces_scene, squares_scene
from studyboard.translation import tr

_KINDS = (chess.KING, chess.QUEEN, chess.ROOK, chess.BISHOP, chess.KNIGHT, chess.PAWN)
#: From the board to the tray, and the tray's width (squares).
_TRAY_GAP = 0.35
_TRAY_WIDTH = 2.0
_RIM = 4.0
_ARROWS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, 1),
    Qt.Key.Key_Down: (0, -1),
}
_EMPTYING = (Qt.Key.Key_Delete, Qt.Key.Key_Backspace, Qt.Key.Key_Space)


class PositionBoard(QWidget):
    """Asks for pieces to be put, moved and taken away; what comes of it is shown when it is told so.

    State: the position, which piece of the tray is chosen, what is dragged, and the keyboard's cursor.

    A piece is dragged from the tray or over the board, and off it to take it away; a click puts the chosen piece, or
    takes the same one away. The arrows move a cursor, a letter of FEN puts that piece there (capitals are White's),
    Delete empties the square.

    put: a piece (or None) belongs on a square
    moved: what stands on one square belongs on another
    """

    put = Signal(int, object)
    moved = Signal(int, int)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._board: chess.BaseBoard = chess.BaseBoard.empty()
        self._flipped = False
        self._chosen: chess.Piece | None = None
        self._cursor: chess.Square = chess.E4
        self._origin: chess.Square | None = None
        self._dragged: chess.Piece | None = None
        self._pressed = self._grip = QPointF()
        self._far = False
        self._place: BoardPlace | None = None
        self._pieces = PiecePixmaps()
        self.setAccessibleName(tr("Position"))
        show_as_picture(self, SquareParts(lambda: self._board, lambda: self.place, lambda: self._cursor))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMinimumSize(300, 240)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        look.changed.connect(self._relay)

    @property
    def chosen(self) -> chess.Piece | None:
        """The piece of the tray that a click puts."""
        return self._chosen

    @property
    def cursor_square(self) -> chess.Square:
        """The square of the keyboard's cursor."""
        return self._cursor

    def show_board(self, board: chess.Board) -> None:
        """Show this position."""
        self._board = board
        self.setAccessibleDescription(describe_board(board))
        self.update()

    def flip(self) -> None:
        """Turn the board round."""
        self._flipped = not self._flipped
        self._relay()

    @property
    def place(self) -> BoardPlace:
        """Where the squares are."""
        if self._place is None:
            board = board_bounds(palette=self._look.board_palette)
            whole = Bounds(board.x, board.y, board.width + _TRAY_GAP + _TRAY_WIDTH, board.height)
            room = QSizeF(self.size())
            side = min((room.width() - 2 * _RIM) / whole.width, (room.height() - 2 * _RIM) / whole.height)
            self._place = fit_board(
                QSizeF(side * board.width + 2 * _RIM, side * board.height + 2 * _RIM),
                self.devicePixelRatioF(),
                board,
                flipped=self._flipped,
                rim=_RIM,
            )
        return self._place

    def tray_rect(self, piece: chess.Piece) -> QRectF:
        """Where this piece lies in the tray: White's in the column beside the board, Black's beyond."""
        place = self.place
        left = place.rect.right() + _TRAY_GAP * place.side + (0 if piece.color == chess.WHITE else place.side)
        return QRectF(left, place.top + (_KINDS.index(piece.piece_type) + 1) * place.side, place.side, place.side)

    def sizeHint(self) -> QSize:
        """See QWidget."""
        return QSize(560, 440)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """See QWidget."""
        self._relay()

    def paintEvent(self, event: QPaintEvent) -> None:
        """See QWidget."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        place, palette = self.place, self._look.board_palette
        hidden = () if self._origin is None or not self._far else (self._origin,)
        painter.save()
        painter.translate(place.origin)
        paint_scene(painter, squares_scene(flipped=self._flipped, palette=palette), place.side)
        standing = pieces_scene(self._board, flipped=self._flipped, without=hidden, palette=palette)
        paint_scene(painter, standing, place.side, self._pieces)
        painter.restore()
        painter.setPen(QPen(QColor(palette.frame), 1.0))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(place.rect)
        for piece in self._tray():
            self._paint_tray(painter, piece)
        if self.hasFocus():
            paint_cursor(painter, self._cursor, place, self._look.color("focus"))
        if self._dragged is not None and self._far:
            half = QPointF(place.side / 2, place.side / 2)
            painter.drawPixmap(self._grip - half, self._pixmap(self._dragged))
        painter.end()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """See QWidget."""
        square = self.place.square_at(event.position())
        if event.button() == Qt.MouseButton.RightButton and square is not None:
            self._cursor = square
            self._empty(square)
        if event.button() != Qt.MouseButton.LeftButton:
            return
        self._pressed = self._grip = event.position()
        self._far = False
        if square is not None:
            self._cursor = square
            self._origin, self._dragged = square, self._board.piece_at(square)
        else:
            self._dragged = next((p for p in self._tray() if self.tray_rect(p).contains(event.position())), None)
        self.update()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """See QWidget."""
        if event.buttons() & Qt.MouseButton.LeftButton and self._dragged is not None:
            self._grip = event.position()
            self._far = self._far or (self._grip - self._pressed).manhattanLength() > max(4.0, self.place.side / 7)
            self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """See QWidget."""
        if event.button() != Qt.MouseButton.LeftButton:
            return
        origin, dragged, far = self._origin, self._dragged, self._far
        self._origin, self._dragged, self._far = None, None, False
        square = self.place.square_at(event.position())
        if far and dragged is not None:
            self._drop(origin, dragged, square)
        elif origin is not None and self._chosen is not None:
            self.put.emit(origin, None if self._board.piece_at(origin) == self._chosen else self._chosen)
        elif origin is None and dragged is not None:
            self.choose(None if dragged == self._chosen else dragged)
        self.update()

    def choose(self, piece: chess.Piece | None) -> None:
        """Let a click put this piece; None lets a click do nothing."""
        self._chosen = piece
        self.update()

    def event(self, event: QEvent) -> bool:
        """See QWidget."""
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent) and self._wants(event):
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """See QWidget."""
        key = Qt.Key(event.key())
        if not self._wants(event):
            super().keyPressEvent(event)
        elif key in _ARROWS:
            self._step(*_ARROWS[key])
        elif key in _EMPTYING:
            self._empty(self._cursor)
        else:
            self.put.emit(self._cursor, chess.Piece.from_symbol(event.text()))
            announce(self, lambda: describe_square(self._board, self._cursor))

    def focusInEvent(self, event: QFocusEvent) -> None:
        """See QWidget."""
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """See QWidget."""
        self.update()

    def _wants(self, event: QKeyEvent) -> bool:
        if event.modifiers() & ~(Qt.KeyboardModifier.ShiftModifier | Qt.KeyboardModifier.KeypadModifier):
            return False
        letter = event.text() != "" and event.text() in "KQRBNPkqrbnp"
        return letter or event.key() in _ARROWS or event.key() in _EMPTYING

    def _step(self, right: int, up: int) -> None:
        turn = -1 if self._flipped else 1
        file = min(7, max(0, chess.square_file(self._cursor) + right * turn))
        rank = min(7, max(0, chess.square_rank(self._cursor) + up * turn))
        self._cursor = chess.square(file, rank)
        announce(self, lambda: describe_square(self._board, self._cursor))
        self.update()

    def _empty(self, square: chess.Square) -> None:
        if self._board.piece_at(square) is not None:
            self.put.emit(square, None)
            announce(self, lambda: describe_square(self._board, square))

    def _drop(self, origin: chess.Square | None, piece: chess.Piece, square: chess.Square | None) -> None:
        if square is not None:
            self._cursor = square
        if origin is None:
            if square is not None:
                self.put.emit(square, piece)
        elif square is None:
            self.put.emit(origin, None)
        elif square != origin:
            self.moved.emit(origin, square)

    def _tray(self) -> tuple[chess.Piece, ...]:
        return tuple(chess.Piece(kind, colour) for colour in (chess.WHITE, chess.BLACK) for kind in _KINDS)

    def _paint_tray(self, painter: QPainter, piece: chess.Piece) -> None:
        box, palette = self.tray_rect(piece), self._look.board_palette
        painter.setPen(QPen(QColor(palette.frame), 1.0))
        painter.setBrush(QColor(palette.light if piece.color == chess.BLACK else palette.dark))
        painter.drawRect(box)
        if piece == self._chosen:
            # Chosen is told by a thick frame in two tones, not by its colour alone.
            for color, width in ((QColor(palette.light), 6.0), (self._look.color("accent"), 3.0)):
                pen = QPen(color, width)
                pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
                painter.setPen(pen)
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.drawRect(box.adjusted(3, 3, -3, -3))
        painter.drawPixmap(box.topLeft(), self._pixmap(piece))

    def _pixmap(self, piece: chess.Piece) -> QPixmap:
        halo = self._look.board_palette.piece_halo
        return self._pieces.pixmap(piece, self.place.side, self.devicePixelRatioF(), halo)

    def _relay(self) -> None:
        self._pieces.piece_set = self._look.piece_set
        self._place = None
        self.update()
