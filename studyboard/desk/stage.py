"""The stage: a window that shows only the board, for capture."""

from __future__ import annotations

from enum import StrEnum

from PySide6.QtCore import QRect, QSize, Qt, Signal
from PySide6.QtGui import (
    QAction,
    QCloseEvent,
    QContextMenuEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
)
from PySide6.QtWidgets import QMenu, QWidget

from studyboard.desk.board_face import BoardFace
from studyboard.desk.look import Look
from studyboard.desk.session import Session
from studyboard.translation import tr


class StageShape(StrEnum):
    """The shape of the picture that is captured."""

    WIDE = "16:9"
    TALL = "9:16"
    SQUARE = "1:1"
    FREE = "free"


_RATIOS = {StageShape.WIDE: (16, 9), StageShape.TALL: (9, 16), StageShape.SQUARE: (1, 1)}
_SIZES = {
    StageShape.WIDE: QSize(1280, 720),
    StageShape.TALL: QSize(540, 960),
    StageShape.SQUARE: QSize(720, 720),
    StageShape.FREE: QSize(720, 720),
}
#: The board's share of the picture's shorter side.
_SHARE = 0.92


class Stage(QWidget):
    """Shows the session's board on a plain ground, in a picture of a chosen shape.

    State: the shape. F11 or a double click fills the screen and leaves it again; Escape leaves it, or closes the
    window; a right click offers the shapes, so that nothing but the board is ever in the picture.

    closed: the window was closed
    """

    closed = Signal()

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        self._look = look
        self._shape = StageShape.WIDE
        self._board = BoardFace(session, look, self, rim=1.0)
        self._board.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setWindowTitle(tr("Stage"))
        self.setAccessibleName(tr("Stage"))
        self.setMinimumSize(280, 280)
        self.resize(_SIZES[self._shape])
        look.changed.connect(self.update)

    @property
    def board(self) -> BoardFace:
        """The board on the stage."""
        return self._board

    @property
    def shape(self) -> StageShape:
        """The shape of the picture."""
        return self._shape

    def set_shape(self, shape: StageShape) -> None:
        """Give the picture another shape; the window takes it too unless it fills the screen."""
        self._shape = shape
        if not self.isFullScreen():
            self.resize(_SIZES[shape])
        self._lay()

    @property
    def picture(self) -> QRect:
        """The part of the window that is the picture (px)."""
        if self._shape is StageShape.FREE:
            return self.rect()
        wide, high = _RATIOS[self._shape]
        size = QSize(wide, high).scaled(self.size(), Qt.AspectRatioMode.KeepAspectRatio)
        return QRect(
            (self.width() - size.width()) // 2, (self.height() - size.height()) // 2, size.width(), size.height()
        )

    def toggle_full_screen(self) -> None:
        """Fill the screen, or leave it."""
        if self.isFullScreen():
            self.showNormal()
        else:
            self.showFullScreen()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """See QWidget."""
        self._lay()

    def paintEvent(self, event: QPaintEvent) -> None:
        """See QWidget."""
        painter = QPainter(self)
        # What is beside the picture is darker, so that its edge can be found when capturing.
        painter.fillRect(self.rect(), self._look.color("paper").darker(112))
        painter.fillRect(self.picture, self._look.color("paper"))
        painter.end()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """See QWidget."""
        if event.key() == Qt.Key.Key_F11:
            self.toggle_full_screen()
        elif event.key() == Qt.Key.Key_Escape:
            if self.isFullScreen():
                self.showNormal()
            else:
                self.close()
        else:
            super().keyPressEvent(event)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """See QWidget."""
        self.toggle_full_screen()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """See QWidget."""
        self.menu().popup(event.globalPos())

    def menu(self) -> QMenu:
        """A new menu of the shapes and of what is shown."""
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        for shape in StageShape:
            action = QAction(_label(shape), menu)
            action.setCheckable(True)
            action.setChecked(shape is self._shape)
            action.triggered.connect(lambda _=False, shape=shape: self.set_shape(shape))
            menu.addAction(action)
        menu.addSeparator()
        flip = menu.addAction(tr("Flip the board"))
        flip.triggered.connect(self._board.flip)
        full = menu.addAction(tr("Full screen (F11)"))
        full.setCheckable(True)
        full.setChecked(self.isFullScreen())
        full.triggered.connect(self.toggle_full_screen)
        return menu

    def closeEvent(self, event: QCloseEvent) -> None:
        """See QWidget."""
        self.closed.emit()
        super().closeEvent(event)

    def _lay(self) -> None:
        picture = self.picture
        side = max(1, round(min(picture.width(), picture.height()) * _SHARE))
        self._board.setMinimumSize(1, 1)
        self._board.setGeometry(
            picture.x() + (picture.width() - side) // 2, picture.y() + (picture.height() - side) // 2, side, side
        )
        self.update()


def _label(shape: StageShape) -> str:
    return (
        tr("Free")
        if shape is StageShape.FREE
        else {"16:9": tr("Wide"), "9:16": tr("Tall"), "1:1": tr("Square")}[shape] + f" ({shape})"
    )
