"""The prompter as a window of its own: mirrored for a glass, its type as large as the reader wants it."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QSettings, Qt
from PySide6.QtGui import QCloseEvent, QContextMenuEvent, QKeyEvent, QPainter
from PySide6.QtWidgets import QGraphicsEffect, QMenu, QVBoxLayout, QWidget

from studyboard.desk.look import Look
from studyboard.desk.performance import Performance
from studyboard.desk.prompter import Prompter
from studyboard.desk.prompter_line import SMALLEST
from studyboard.desk.screen_memory import bring_window_back, keep_window
from studyboard.desk.session import Session
from studyboard.translation import tr

_NAME = "prompter"
#: The least size of the type that can be asked for (times the size of controls), and how much one step changes it.
LEAST, MOST = SMALLEST, 5.0
_STEP = 0.4


class PrompterWindow(QWidget):
    """A prompter that stands on a screen of its own.

    State: whether it is mirrored, and the least size of its type; both are remembered for each set of screens.
    M mirrors, + and − change the type, F11 fills the screen, Escape leaves it, or closes the window.
    """

    def __init__(
        self,
        session: Session,
        look: Look,
        performance: Performance,
        settings: QSettings,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        self._settings = settings
        self.prompter = Prompter(session, performance, look)
        self.prompter.left.connect(self._leave)
        self.setWindowTitle(tr("Prompter"))
        self.setFocusProxy(self.prompter)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.prompter)
        self.resize(900, 600)
        self.mirrored = False
        self.type_size = LEAST
        chosen = bring_window_back(settings, _NAME, self, {"mirrored": False, "size": LEAST})
        self.mirror(chosen["mirrored"].lower() == "true")
        self.set_size(float(chosen["size"]))

    def mirror(self, mirrored: bool) -> None:
        """Show everything as in a mirror, to be read from the glass before the camera, or not."""
        self.mirrored = mirrored
        effect = _Mirror(self.prompter) if mirrored else None
        self.prompter.setGraphicsEffect(effect)  # type: ignore[arg-type]

    def set_size(self, size: float) -> None:
        """Ask for type of this size at least (times that of controls); a line too long for it moves along."""
        self.type_size = min(max(size, LEAST), MOST)
        self.prompter.set_least_type(self.type_size)

    def toggle_full_screen(self) -> None:
        """Fill the screen, or leave it."""
        if self.isFullScreen():
            self.showNormal()
        else:
            self.showFullScreen()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """See QWidget; what the prompter itself has no use for comes here."""
        match event.key():
            case Qt.Key.Key_M:
                self.mirror(not self.mirrored)
            case Qt.Key.Key_Plus | Qt.Key.Key_Equal:
                self.set_size(self.type_size + _STEP)
            case Qt.Key.Key_Minus:
                self.set_size(self.type_size - _STEP)
            case Qt.Key.Key_F11:
                self.toggle_full_screen()
            case Qt.Key.Key_Menu:
                self.menu().popup(self.mapToGlobal(QPoint(24, 24)))
            case _:
                super().keyPressEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """See QWidget."""
        self.menu().popup(event.globalPos())

    def menu(self) -> QMenu:
        """A new menu of everything that can be chosen here."""
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        mirrored = menu.addAction(tr("Mirrored (M)"))
        mirrored.setCheckable(True)
        mirrored.setChecked(self.mirrored)
        mirrored.toggled.connect(self.mirror)
        menu.addAction(tr("Larger type (+)")).triggered.connect(lambda: self.set_size(self.type_size + _STEP))
        menu.addAction(tr("Smaller type (−)")).triggered.connect(lambda: self.set_size(self.type_size - _STEP))
        full = menu.addAction(tr("Full screen (F11)"))
        full.setCheckable(True)
        full.setChecked(self.isFullScreen())
        full.triggered.connect(self.toggle_full_screen)
        return menu

    def closeEvent(self, event: QCloseEvent) -> None:
        """See QWidget."""
        keep_window(self._settings, _NAME, self, {"mirrored": self.mirrored, "size": self.type_size})
        super().closeEvent(event)

    def _leave(self) -> None:
        if self.isFullScreen():
            self.showNormal()
        else:
            self.close()


class _Mirror(QGraphicsEffect):
    """Draws a widget with left and right exchanged."""

    def draw(self, painter: QPainter) -> None:
        """See QGraphicsEffect."""
        pixmap = self.sourcePixmap(Qt.CoordinateSystem.LogicalCoordinates)
        if isinstance(pixmap, tuple):
            pixmap = pixmap[0]
        width = self.sourceBoundingRect().width()
        painter.save()
        painter.translate(width, 0)
        painter.scale(-1, 1)
        painter.drawPixmap(0, 0, pixmap)
        painter.restore()
