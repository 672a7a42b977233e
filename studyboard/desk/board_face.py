"""The board as it is seen: the session's position, its marks, and the pieces on their way to it."""

from __future__ import annotations

from collections.abc import Callable, Collection

import chess
from PySide6.QtCore import QPointF, QRectF, QSize, QSizeF, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QPixmap, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from studyboard.desk.board_accessible import show_as_picture
from studyboard.desk.board_announce import announce
from studyboard.desk.board_geometry import BoardPlace, fit_board
from studyboard.desk.board_motion import BoardMotion
from studyboard.desk.board_signs import paint_pointed, paint_return
from studyboard.desk.board_words import position_words, step_words
from studyboard.desk.look import Look
from studyboard.desk.paint import PiecePixmaps, paint_scene
from studyboard.desk.painted_parts import SquareParts
from studyboard.desk.session import Session
from studyboard.model.marks import Mark
from studyboard.model.study import Changed
from studyboard.picture.marks import ground_marks_scene, marks_scene
from studyboard.picture.motion import Way, step_between
from studyboard.picture.primitives import Layer
from studyboard.picture.scene import board_bounds, indication_scene, pieces_scene, squares_scene
from studyboard.translation import tr

#: Least side of the whole widget (px).
LEAST = 240


class BoardFace(QWidget):
    """The session's board, to be looked at.

    State: which node is shown and how far its pieces have come; which way round the board is; which marks have
    appeared so far, and which squares are pointed at.

    flipped_changed: the board was turned round
    """

    flipped_changed = Signal(bool)

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None, *, rim: float = 0.0) -> None:
        """rim: free space kept around the board (px)."""
        super().__init__(parent)
        self._session = session
        self._look = look
        self._rim = rim
        self._flipped = False
        self._coordinates = True
        self._node = session.node
        self._board = session.board
        self._cued: int | Collection[int] | None = None
        self._pointed: tuple[chess.Square, ...] = ()
        self._pieces = PiecePixmaps()
        self._pieces.piece_set = look.piece_set
        self._ground: tuple[object, QPixmap] | None = None
        self._layers: dict[str, Layer] = {}
        self._place: BoardPlace | None = None
        self._motion = BoardMotion(self)

        self.setAccessibleName(tr("Board"))
        show_as_picture(self, SquareParts(lambda: self._board, lambda: self.place, lambda: self.keyboard_square))
        self.setMinimumSize(LEAST, LEAST)
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

        session.stepped.connect(self._on_stepped)
        session.opened.connect(self._on_opened)
        session.changed.connect(self._on_changed)
        look.changed.connect(self._relay)
        self._motion.moved.connect(self.update)
        self._describe()

    @property
    def board(self) -> chess.Board:
        """The position that is shown, to be read."""
        return self._board

    @property
    def keyboard_square(self) -> chess.Square | None:
        """The square that the keyboard is at, where there is a cursor."""
        return None

    @property
    def flipped(self) -> bool:
        """True where the board is seen from Black's side."""
        return self._flipped

    def set_flipped(self, flipped: bool) -> None:
        """Show the board from Black's or White's side."""
        if flipped != self._flipped:
            self._flipped = flipped
            self._settle()
            self._relay()
            self.flipped_changed.emit(flipped)

    def flip(self) -> None:
        """Turn the board round."""
        self.set_flipped(not self._flipped)

    def set_coordinates(self, shown: bool) -> None:
        """Name files and ranks, or not."""
        if shown != self._coordinates:
            self._coordinates = shown
            self._relay()

    def set_cued_marks(self, shown: int | Collection[int] | None) -> None:
        """Which marks of the node have appeared: the first so many, these indices, or all of them (None).

        Another step shows all of them again.
        """
        if shown != self._cued:
            self._cued = shown
            self._layers.clear()
            self._describe()
            self.update()

    @property
    def shown_marks(self) -> tuple[Mark, ...]:
        """The marks that are on the board now."""
        marks = self._session.study.node(self._node).marks
        if self._cued is None:
            return marks
        if isinstance(self._cued, int):
            return marks[: self._cued]
        return tuple(mark for index, mark in enumerate(marks) if index in self._cued)

    def point_at(self, squares: Collection[chess.Square]) -> None:
        """Outline these squares for as long as something else on the desk speaks of them; none ends it."""
        pointed = tuple(squares)
        if pointed != self._pointed:
            self._pointed = pointed
            self.update()

    @property
    def motion(self) -> BoardMotion:
        """The motion of the pieces; `finish` lets everything arrive."""
        return self._motion

    @property
    def place(self) -> BoardPlace:
        """Where the squares are."""
        if self._place is None:
            bounds = board_bounds(coordinates=self._coordinates, palette=self._look.board_palette)
            size, ratio = QSizeF(self.size()), self.devicePixelRatioF()
            self._place = fit_board(size, ratio, bounds, flipped=self._flipped, rim=self._rim)
        return self._place

    def sizeHint(self) -> QSize:
        """See QWidget."""
        return QSize(480, 480)

    def hasHeightForWidth(self) -> bool:
        """See QWidget."""
        return True

    def heightForWidth(self, width: int) -> int:
        """See QWidget."""
        return width

    def resizeEvent(self, event: QResizeEvent) -> None:
        """See QWidget."""
        self._settle()
        self._relay()

    def paintEvent(self, event: QPaintEvent) -> None:
        """See QWidget."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.drawPixmap(0, 0, self._ground_pixmap())
        self._paint_layers(painter, "ground", "indication")
        self._paint_under(painter)
        self._paint_standing(painter)
        # Marks come up as the pieces come to rest, so that nothing points at a piece that is not there yet.
        painter.setOpacity(self._motion.progress)
        self._paint_layers(painter, "marks")
        painter.setOpacity(1.0)
        paint_pointed(painter, self._pointed, self.place, self._look.board_palette)
        self._paint_over(painter)
        for figure in self._motion.figures(self.place):
            painter.setOpacity(figure.opacity)
            self._paint_piece(painter, figure.piece, figure.corner)
        painter.setOpacity(1.0)
        if self._motion.returning:
            paint_return(painter, self.place, self._motion.progress, self._look.color("accent"))
        self._paint_on_top(painter)
        painter.end()

    # For boards that are played on.

    def _paint_under(self, painter: QPainter) -> None:
        """Paint what lies under the pieces."""

    def _paint_over(self, painter: QPainter) -> None:
        """Paint what lies over the marks."""

    def _paint_on_top(self, painter: QPainter) -> None:
        """Paint what lies over everything."""

    def _lifted(self) -> set[chess.Square]:
        """Squares whose piece is not painted where it stands."""
        return set()

    def _put_by_hand(self) -> chess.Square | None:
        """The square from which a piece has just been carried to where it stands now."""
        return None

    def _settle(self) -> None:
        """Let everything arrive."""
        self._motion.finish()

    # What the session tells.

    def _on_stepped(self, node: int) -> None:
        before, was = self._board, self._node
        self._settle()
        self._node, self._board = node, self._session.board
        self._cued = None
        self._layers.clear()
        if not self._look.reduced_motion and self.isVisible():
            self._set_moving(was, before)
        self._describe()
        announce(self, lambda: step_words(self._session, was))
        self.update()

    def _set_moving(self, was: int, before: chess.Board) -> None:
        step = step_between(self._session.study, was, self._node, before, self._board)
        carried = self._put_by_hand() if step.way is Way.ON else None
        change = step.change if carried is None else step.change.without(carried)
        self._motion.begin(change, before, self._board, returning=step.way is Way.ELSEWHERE)

    def _on_opened(self) -> None:
        self._settle()
        self._node, self._board = self._session.node, self._session.board
        self._cued = None
        self._layers.clear()
        self._describe()
        self.update()

    def _on_changed(self, changed: Changed) -> None:
        if self._node not in self._session.study.nodes:
            return
        if changed.headers:
            self._board = self._session.positions.board(self._node)
        if changed.headers or self._node in changed.nodes:
            self._layers.clear()
            self._describe()
            self.update()

    # What is painted.

    def _relay(self) -> None:
        self._pieces.piece_set = self._look.piece_set
        if self._look.reduced_motion:
            self._motion.finish()
        self._place = None
        self._ground = None
        self._layers.clear()
        self.update()

    def _describe(self) -> None:
        self.setAccessibleDescription(position_words(self._session, self._node, self.shown_marks))

    def _ground_pixmap(self) -> QPixmap:
        ratio, place, palette = self.devicePixelRatioF(), self.place, self._look.board_palette
        key = (self.size(), ratio, place, palette, self._coordinates)
        if self._ground is None or self._ground[0] != key:
            pixmap = QPixmap(self.size() * ratio)
            pixmap.setDevicePixelRatio(ratio)
            pixmap.fill(Qt.GlobalColor.transparent)
            painter = QPainter(pixmap)
            painter.translate(place.origin)
            scene = squares_scene(flipped=self._flipped, coordinates=self._coordinates, palette=palette)
            paint_scene(painter, scene, place.side)
            if self._rim:
                # A hairline holds the board together where its light squares meet a light ground.
                hair = 1.0 / ratio
                painter.setPen(QPen(QColor(palette.frame), hair))
                painter.drawRect(QRectF(-hair / 2, -hair / 2, 8 * place.side + hair, 8 * place.side + hair))
            painter.end()
            self._ground = key, pixmap
        return self._ground[1]

    def _paint_layers(self, painter: QPainter, *names: str) -> None:
        painter.save()
        painter.translate(self.place.origin)
        for name in names:
            paint_scene(painter, self._layer(name), self.place.side, self._pieces)
        painter.restore()

    def _paint_standing(self, painter: QPainter) -> None:
        hidden = self._motion.hidden | self._lifted()
        if not hidden:
            self._paint_layers(painter, "pieces")
            return
        scene = pieces_scene(self._board, flipped=self._flipped, without=hidden, palette=self._look.board_palette)
        painter.save()
        painter.translate(self.place.origin)
        paint_scene(painter, scene, self.place.side, self._pieces)
        painter.restore()

    def _paint_piece(self, painter: QPainter, piece: chess.Piece, corner: QPointF) -> None:
        halo = self._look.board_palette.piece_halo
        painter.drawPixmap(corner, self._pieces.pixmap(piece, self.place.side, self.devicePixelRatioF(), halo))

    def _layer(self, name: str) -> Layer:
        layer = self._layers.get(name)
        if layer is None:
            layer = self._layers[name] = self._makers[name]()
        return layer

    @property
    def _makers(self) -> dict[str, Callable[[], Layer]]:
        flipped, palette = self._flipped, self._look.board_palette
        move = self._session.study.node(self._node).move
        return {
            "ground": lambda: ground_marks_scene(self.shown_marks, flipped=flipped),
            "indication": lambda: indication_scene(self._board, flipped=flipped, last_move=move, palette=palette),
            "pieces": lambda: pieces_scene(self._board, flipped=flipped, palette=palette),
            "marks": lambda: marks_scene(self.shown_marks, flipped=flipped),
        }
