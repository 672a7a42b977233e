"""The stage: a window that shows only the board, for capture."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TypeVar

from PySide6.QtCore import QRect, QRectF, QSettings, Qt, Signal
from PySide6.QtGui import (
    QAction,
    QCloseEvent,
    QColor,
    QContextMenuEvent,
    QFontMetricsF,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QMenu, QWidget

from studyboard.desk.board_face import BoardFace
from studyboard.desk.look import Look
from studyboard.desk.performance import Performance
from studyboard.desk.screen_memory import bring_window_back, keep_window
from studyboard.desk.session import Session
from studyboard.desk.stage_captions import StageCaptions
from studyboard.desk.stage_layout import (
    ACTION_SAFE,
    GRAPHICS_SAFE,
    SIZES,
    StageGround,
    StagePlan,
    StageShape,
    choice_name,
    ground_color,
    inner,
    plan_stage,
)
from studyboard.translation import tr

_Choice = TypeVar("_Choice", StageShape, StageGround)
_NAME = "stage"
#: The lines of a caption fill this share of their band's height.
_LINE = 0.38


class Stage(QWidget):
    """Shows the session's board on a plain ground, in a picture of a chosen shape.

    State: shape, ground, whether captions stand below the board and whether the safe margins are drawn; it is
    remembered for each set of screens. F11 or a double click fills the screen and leaves it again; Escape leaves it,
    or closes the window; a right click offers the choices, so that nothing but the board is ever in the picture.
    Space and the keys of a presenter's remote drive the run-through from here too.

    closed: the window was closed
    """

    closed = Signal()

    def __init__(
        self,
        session: Session,
        look: Look,
        performance: Performance,
        settings: QSettings,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        self._look = look
        self._performance = performance
        self._settings = settings
        self._captions = StageCaptions(session, performance, self)
        self._board = BoardFace(session, look, self, rim=1.0)
        self._board.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self._board.setMinimumSize(1, 1)
        self.setWindowTitle(tr("Stage"))
        self.setAccessibleName(tr("Stage"))
        self.setMinimumSize(280, 280)
        self._shape = StageShape.WIDE
        self._ground = StageGround.PAPER
        self.captions_shown = self.margins_shown = False
        self._plan = plan_stage(SIZES[self._shape], self._shape, captions=False)
        self.resize(SIZES[self._shape])
        self._bring_back()
        self._captions.changed.connect(self._recaption)
        look.changed.connect(self.update)

    @property
    def board(self) -> BoardFace:
        """The board on the stage."""
        return self._board

    @property
    def shape(self) -> StageShape:
        """The shape of the picture."""
        return self._shape

    @property
    def ground(self) -> StageGround:
        """What is behind the board."""
        return self._ground

    @property
    def caption(self) -> tuple[str, ...]:
        """The lines of the caption that is shown; empty where none is."""
        return self._captions.lines if self.captions_shown else ()

    @property
    def plan(self) -> StagePlan:
        """Where picture, board and captions are."""
        return self._plan

    @property
    def picture(self) -> QRect:
        """The part of the window that is the picture (px)."""
        return self._plan.picture

    def set_shape(self, shape: StageShape) -> None:
        """Give the picture another shape; the window takes it too unless it fills the screen."""
        self._shape = shape
        if not self.isFullScreen():
            self.resize(SIZES[shape])
        self._lay()

    def set_ground(self, ground: StageGround) -> None:
        """Put another ground behind the board."""
        self._ground = ground
        self.update()

    def show_captions(self, shown: bool) -> None:
        """Show what is said below the board, or not."""
        self.captions_shown = shown
        self._captions.follow(shown)
        self._lay()

    def show_margins(self, shown: bool) -> None:
        """Draw the safe margins, to see what every screen shows. They are in the picture while they are drawn."""
        self.margins_shown = shown
        self.update()

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
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        # What is beside the picture is darker, so that its edge can be found when capturing.
        painter.fillRect(self.rect(), self._look.color("paper").darker(112))
        ground = ground_color(self._ground, self._look.color("paper"))
        painter.fillRect(self.picture, ground)
        if self.caption:
            self._paint_caption(painter)
        if self.margins_shown:
            self._paint_margins(painter)
        painter.end()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """See QWidget."""
        match event.key():
            case Qt.Key.Key_F11:
                self.toggle_full_screen()
            case Qt.Key.Key_Escape:
                self.showNormal() if self.isFullScreen() else self.close()
            case Qt.Key.Key_Space | Qt.Key.Key_PageDown if self._performance.active:
                self._performance.advance()
            case Qt.Key.Key_PageUp if self._performance.active:
                self._performance.retreat()
            case Qt.Key.Key_Menu:
                self.menu().popup(self.mapToGlobal(self.picture.center()))
            case _:
                super().keyPressEvent(event)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """See QWidget."""
        self.toggle_full_screen()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """See QWidget."""
        self.menu().popup(event.globalPos())

    def menu(self) -> QMenu:
        """A new menu of everything that can be chosen here."""
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self._add_choices(menu, StageShape, self._shape, self.set_shape)
        menu.addSeparator()
        self._add_choices(menu, StageGround, self._ground, self.set_ground)
        menu.addSeparator()
        for words, on, choose in (
            (tr("Captions below the board"), self.captions_shown, self.show_captions),
            (tr("Safe margins"), self.margins_shown, self.show_margins),
        ):
            action = menu.addAction(words)
            action.setCheckable(True)
            action.setChecked(on)
            action.toggled.connect(choose)
        menu.addAction(tr("Flip the board")).triggered.connect(self._board.flip)
        full = menu.addAction(tr("Full screen (F11)"))
        full.setCheckable(True)
        full.setChecked(self.isFullScreen())
        full.triggered.connect(self.toggle_full_screen)
        return menu

    def closeEvent(self, event: QCloseEvent) -> None:
        """See QWidget."""
        keep_window(self._settings, _NAME, self, self._choices())
        self.closed.emit()
        super().closeEvent(event)

    def _choices(self) -> dict[str, object]:
        return {
            "shape": self._shape.value,
            "ground": self._ground.value,
            "captions": self.captions_shown,
            "margins": self.margins_shown,
            "flipped": self._board.flipped,
        }

    def _bring_back(self) -> None:
        chosen = bring_window_back(self._settings, _NAME, self, self._choices())
        self._shape = StageShape(chosen["shape"])
        self._ground = StageGround(chosen["ground"])
        self.captions_shown = chosen["captions"].lower() == "true"
        self.margins_shown = chosen["margins"].lower() == "true"
        self._board.set_flipped(chosen["flipped"].lower() == "true")
        self._captions.follow(self.captions_shown)
        self._lay()

    def _lay(self) -> None:
        self._plan = plan_stage(self.size(), self._shape, captions=self.captions_shown)
        self._board.setGeometry(self._plan.board)
        self.update()

    def _recaption(self) -> None:
        if self.captions_shown:
            self.update(self._plan.band)

    def _paint_caption(self, painter: QPainter) -> None:
        """White on black, as captions are read most easily on any ground, as wide as their words."""
        band = self._plan.band
        font = self._look.ui_font()
        font.setPixelSize(max(8, round(band.height() * _LINE)))
        widest = max(QFontMetricsF(font).horizontalAdvance(line) for line in self.caption)
        if widest > band.width():
            font.setPixelSize(max(8, int(font.pixelSize() * band.width() / (widest + font.pixelSize()))))
        metrics = QFontMetricsF(font)
        painter.setFont(font)
        height = metrics.height()
        for number, line in enumerate(self.caption):
            width = metrics.horizontalAdvance(line) + height * 0.7
            box = QRectF(band.center().x() - width / 2, band.y() + number * height, width, height)
            painter.fillRect(box, QColor("#000000"))
            painter.setPen(QColor("#FFFFFF"))
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, line)

    def _paint_margins(self, painter: QPainter) -> None:
        for share, dash in ((ACTION_SAFE, [1.0, 0.0]), (GRAPHICS_SAFE, [6.0, 4.0])):
            # A dark line beside a light one is seen on every ground.
            for offset, color in ((0.0, "#000000"), (1.0, "#FFFFFF")):
                pen = QPen(QColor(color), 1.0)
                if share == GRAPHICS_SAFE:
                    pen.setDashPattern(dash)
                painter.setPen(pen)
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.drawRect(inner(self.picture, share).adjusted(offset, offset, -offset, -offset))

    @staticmethod
    def _add_choices(
        menu: QMenu, choices: Iterable[_Choice], chosen: _Choice, choose: Callable[[_Choice], None]
    ) -> None:
        def add(choice: _Choice) -> None:
            action = QAction(choice_name(choice), menu)
            action.setCheckable(True)
            action.setChecked(choice is chosen)
            action.triggered.connect(lambda: choose(choice))
            menu.addAction(action)

        for choice in choices:
            add(choice)
