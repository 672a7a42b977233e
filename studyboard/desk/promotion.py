"""The choice of the piece that a pawn becomes."""

from __future__ import annotations

import chess
from PySide6.QtCore import QEvent, QSize, Qt, Signal
from PySide6.QtGui import QIcon, QKeyEvent
from PySide6.QtWidgets import QFrame, QToolButton, QVBoxLayout, QWidget

from studyboard.board.moves import PROMOTIONS
from studyboard.board.naming import piece_name
from studyboard.desk.board_geometry import BoardPlace
from studyboard.desk.look import Look
from studyboard.desk.paint import piece_pixmap
from studyboard.translation import tr

_KEYS = {
    Qt.Key.Key_Q: chess.QUEEN,
    Qt.Key.Key_R: chess.ROOK,
    Qt.Key.Key_B: chess.BISHOP,
    Qt.Key.Key_N: chess.KNIGHT,
}


class PromotionChoice(QFrame):
    """Four pieces over the file on which a pawn promotes.

    State: the colour of the pawn and which piece has the focus. Q, R, B and N choose, arrows and Enter too; Escape
    or a click elsewhere cancels.

    chosen: carries the piece type
    cancelled: nothing was chosen
    """

    chosen = Signal(int)
    cancelled = Signal()

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look
        self._host = parent
        self.setObjectName("promotion")
        self.setAccessibleName(tr("Promote the pawn to"))
        self._color = chess.WHITE
        layout = QVBoxLayout(self)
        layout.setContentsMargins(3, 3, 3, 3)
        layout.setSpacing(1)
        self._buttons: list[QToolButton] = []
        for kind in PROMOTIONS:
            button = QToolButton()
            button.setAccessibleName(tr("Promote to {piece}", piece=piece_name(kind)))
            button.setToolTip(f"{piece_name(kind).capitalize()} ({chess.piece_symbol(kind).upper()})")
            button.setAutoRaise(True)
            button.clicked.connect(lambda _=False, kind=kind: self._choose(kind))
            button.installEventFilter(self)
            layout.addWidget(button)
            self._buttons.append(button)
        self.hide()

    def ask(self, color: chess.Color, square: chess.Square, place: BoardPlace) -> None:
        """Offer the pieces of *color* over the file of *square*, the queen on the square itself."""
        self._color = color
        side = max(place.side, 36.0)
        ratio = self.devicePixelRatioF()
        downwards = place.corner(square).y() < place.rect.center().y()
        layout = self.layout()
        for row, (kind, button) in enumerate(zip(PROMOTIONS, self._buttons, strict=True)):
            button.setIcon(QIcon(piece_pixmap(chess.Piece(kind, color), side, ratio, piece_set=self._look.piece_set)))
            button.setIconSize(QSize(round(side), round(side)))
            button.setFixedSize(round(side), round(side))
            if layout is not None:
                layout.removeWidget(button)
                if isinstance(layout, QVBoxLayout):
                    layout.insertWidget(row if downwards else 0, button)
        palette = self._look.board_palette
        self.setStyleSheet(
            f"#promotion {{ background: {palette.light}; border: 2px solid {palette.frame}; border-radius: 6px; }}"
            f"#promotion QToolButton {{ border: 2px solid transparent; border-radius: 4px; padding: 0; }}"
            f"#promotion QToolButton:hover {{ background: {palette.dark}; }}"
            f"#promotion QToolButton:focus {{ border-color: {palette.last_move}; background: {palette.dark}; }}"
        )
        self.adjustSize()
        corner = place.corner(square)
        left = corner.x() + (place.side - self.width()) / 2
        top = corner.y() - 5 if downwards else corner.y() + place.side + 5 - self.height()
        left = max(0.0, min(left, self._host.width() - self.width()))
        top = max(0.0, min(top, self._host.height() - self.height()))
        self.move(round(left), round(top))
        self.show()
        self.raise_()
        self._buttons[0].setFocus(Qt.FocusReason.PopupFocusReason)

    def button(self, kind: chess.PieceType) -> QToolButton:
        """The button that chooses this piece."""
        return self._buttons[PROMOTIONS.index(kind)]

    def cancel(self) -> None:
        """Choose nothing."""
        if self.isVisible():
            self.hide()
            self.cancelled.emit()

    def eventFilter(self, watched: object, event: QEvent) -> bool:
        """Keys of the buttons."""
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.ShortcutOverride:
            event.accept()
            return True
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            return self._key(event)
        return super().eventFilter(watched, event)  # type: ignore[arg-type]

    def _key(self, event: QKeyEvent) -> bool:
        key = Qt.Key(event.key())
        if key in _KEYS:
            self._choose(_KEYS[key])
        elif key == Qt.Key.Key_Escape:
            self.cancel()
        elif key in (Qt.Key.Key_Down, Qt.Key.Key_Up, Qt.Key.Key_Tab, Qt.Key.Key_Backtab):
            self._step(1 if key in (Qt.Key.Key_Down, Qt.Key.Key_Tab) else -1)
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space):
            focused = next((kind for kind in PROMOTIONS if self.button(kind).hasFocus()), chess.QUEEN)
            self._choose(focused)
        return True

    def _step(self, by: int) -> None:
        shown = sorted(self._buttons, key=lambda button: button.y())
        here = next((at for at, button in enumerate(shown) if button.hasFocus()), 0)
        shown[(here + by) % len(shown)].setFocus(Qt.FocusReason.TabFocusReason)

    def _choose(self, kind: chess.PieceType) -> None:
        self.hide()
        self.chosen.emit(kind)
