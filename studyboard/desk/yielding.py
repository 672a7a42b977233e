"""A pane that scrolls where its room is short, instead of asking its window for more."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QSize, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QApplication, QFrame, QScrollArea, QSizePolicy, QWidget

#: A pane gets the width that it needs up to this one (px), and at least the height of so many lines of text.
_WIDTH_MOST = 520
_LINES_LEAST = 3.5


class Yielding(QScrollArea):
    """Shows a widget whole where it fits; it is shown and hidden with the widget.

    What gets the keyboard is scrolled into view.

    laid_out: the widget is about to be laid out anew
    """

    laid_out = Signal()

    #: False while the widget is being taken over, and once this one is being destroyed.
    _follows = False

    def __init__(self, widget: QWidget, parent: QWidget | None = None, lines: float = _LINES_LEAST) -> None:
        """lines: the height that it has at least, in lines of text"""
        super().__init__(parent)
        self._lines = lines
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        self.setObjectName("yielding")
        self.setStyleSheet("#yielding, #yielding_view { background: transparent; }")
        self.viewport().setObjectName("yielding_view")
        self.viewport().setAutoFillBackground(False)
        # A widget that has no window yet counts as hidden; only one that was sent away is to stay so.
        sent_away = widget.isHidden() and widget.testAttribute(Qt.WidgetAttribute.WA_WState_ExplicitShowHide)
        ground = widget.autoFillBackground()
        self._pane = widget
        self.setWidget(widget)
        # A scroll area lets its widget fill its ground.
        widget.setAutoFillBackground(ground)
        widget.setHidden(sent_away)
        if sent_away:
            self.hide()
        self._follows = True
        application = QApplication.instance()
        if isinstance(application, QApplication):
            application.focusChanged.connect(self._follow_focus)

    def sizeHint(self) -> QSize:
        """As large as the widget likes to be, in its present width."""
        hint = self._pane.sizeHint()
        return hint.expandedTo(QSize(0, self._needed)) if self._needed > 0 else hint

    def minimumSizeHint(self) -> QSize:
        """Enough to find one's way in it."""
        least = self._pane.minimumSizeHint()
        lines = round(self._lines * self.fontMetrics().lineSpacing())
        return QSize(min(least.width(), _WIDTH_MOST), min(least.height(), lines))

    @property
    def short_by(self) -> int:
        """How much more height it takes until nothing scrolls up and down (px)."""
        room = self.maximumViewportSize()
        return max(0, self._least(room.width()).height() - room.height())

    @property
    def spare(self) -> int:
        """How much height it could do without and still not scroll up and down (px)."""
        room = self.maximumViewportSize()
        return max(0, room.height() - self._least(room.width()).height())

    @property
    def _needed(self) -> int:
        """The height that wrapped words need in this width (px), negative where it does not matter."""
        return self._pane.heightForWidth(self.width()) if self.isVisible() else -1

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width may need another height."""
        super().resizeEvent(event)
        self._stretch()
        if event.size().width() != event.oldSize().width():
            self.updateGeometry()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Be there when the widget is, and as large as it asks for."""
        if self._follows and watched is self._pane:
            if event.type() == QEvent.Type.ShowToParent:
                self.show()
            elif event.type() == QEvent.Type.HideToParent:
                self.hide()
            elif event.type() == QEvent.Type.LayoutRequest:
                self.updateGeometry()
                self._stretch()
                self.laid_out.emit()
        return super().eventFilter(watched, event)

    def _stretch(self) -> None:
        """Make the widget as large as the view, but no smaller than it can be.

        A resizable scroll area would ask for the height that wrapped words like to have, not for the least.
        """
        room = self.maximumViewportSize()
        size = room.expandedTo(self._least(room.width()))
        if size.height() > room.height():
            width = room.width() - self.verticalScrollBar().sizeHint().width()
            size = QSize(width, room.height()).expandedTo(self._least(width))
        self._pane.resize(size)

    def _least(self, width: int) -> QSize:
        least = self._pane.minimumSizeHint()
        layout = self._pane.layout()
        if layout is None or not layout.hasHeightForWidth():
            return least
        return QSize(least.width(), layout.minimumHeightForWidth(max(width, least.width())))

    def _follow_focus(self, _: QWidget | None, now: QWidget | None) -> None:
        if now is not None and self._pane.isAncestorOf(now):
            self.ensureWidgetVisible(now, 4, 4)
