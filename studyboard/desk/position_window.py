"""The window in which a position is set up, with what is wrong with it told as one goes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import chess
from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence, QShortcut, QShowEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QRadioButton,
    QScrollArea,
    QSpinBox,
    QVBoxLayout,
    QWidget,
)

from studyboard.board import set_up as rules
from studyboard.board.set_up import EMPTY, SetUp, SetUpError
from studyboard.desk.acting_button import ActingButton
from studyboard.desk.board_announce import announce
from studyboard.desk.dialog_buttons import DialogButtons
from studyboard.desk.look import Look
from studyboard.desk.position_board import PositionBoard
from studyboard.desk.style_sheet import style_sheet
from studyboard.translation import tr, tr_later

_CASTLING = {
    "K": tr_later("White, kingside"),
    "Q": tr_later("White, queenside"),
    "k": tr_later("Black, kingside"),
    "q": tr_later("Black, queenside"),
}


class PositionWindow(QDialog):
    """Sets a position up.

    State: the position, and those before and after it for undo and redo, as far as this window has been open.
    """

    def __init__(self, look: Look, begin: SetUp, title: str, accept: str, parent: QWidget | None = None) -> None:
        """title: of the window; accept: what the button says that takes the position over."""
        super().__init__(parent)
        self._set_up = begin
        self._past: list[SetUp] = []
        self._future: list[SetUp] = []
        self._filling = False
        self._told = ""
        self.setWindowTitle(title)
        self.setStyleSheet(style_sheet(look))
        self.board = PositionBoard(look)
        self.board.put.connect(lambda square, piece: self.change(rules.with_piece(self._set_up, square, piece)))
        self.board.moved.connect(lambda origin, to: self.change(rules.with_move(self._set_up, origin, to)))
        self.verdict = QLabel()
        self.verdict.setWordWrap(True)
        self.verdict.setAccessibleName(tr("Whether it can be played on"))
        self.fen = QLineEdit()
        self.fen.setAccessibleName(tr("Position as FEN"))
        self.fen.setToolTip(tr("Write or paste a position here and press Enter."))
        self.fen.returnPressed.connect(self._read_fen)
        self._buttons = DialogButtons(QDialogButtonBox.StandardButton.Cancel)
        self.ok = self._buttons.addButton(accept, QDialogButtonBox.ButtonRole.AcceptRole)
        self._buttons.accepted.connect(self.accept)
        self._buttons.rejected.connect(self.reject)
        self._lay(self._fields())
        for keys, step in (("Ctrl+Z", self.undo), ("Ctrl+Shift+Z", self.redo), ("Ctrl+Y", self.redo)):
            QShortcut(QKeySequence(keys), self, step)
        room = self.screen().availableSize() * 0.95
        self.resize(QSize(920, 640).expandedTo(self.sizeHint()).boundedTo(room))
        self._fill()
        self.board.setFocus()

    @property
    def set_up(self) -> SetUp:
        """The position as it is now."""
        return self._set_up

    def change(self, to: SetUp) -> None:
        """Make this the position; undo brings the one before back."""
        if to != self._set_up:
            self._past.append(self._set_up)
            self._future.clear()
            self._set_up = to
        self._fill()

    def undo(self) -> None:
        """The position before the last change."""
        if self._past:
            self._future.append(self._set_up)
            self._set_up = self._past.pop()
            self._fill()

    def redo(self) -> None:
        """The position after it again."""
        if self._future:
            self._past.append(self._set_up)
            self._set_up = self._future.pop()
            self._fill()

    def copy(self) -> None:
        """Put the position on the clipboard."""
        QGuiApplication.clipboard().setText(rules.fen_of(self._set_up))

    def paste(self) -> None:
        """The position that is on the clipboard, or why that is none."""
        self.fen.setText(QGuiApplication.clipboard().text().strip())
        self._read_fen()

    def showEvent(self, event: QShowEvent) -> None:
        """The fields get the width that they need in the font of the window."""
        super().showEvent(event)
        self._scroll.setMinimumWidth(self._side.minimumSizeHint().width() + self._scroll.verticalScrollBar().width())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter in the field for FEN reads it, and nothing else."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.fen.hasFocus():
            return
        super().keyPressEvent(event)

    def _fields(self) -> QWidget:
        side = QWidget()
        column = QVBoxLayout(side)
        column.setContentsMargins(0, 0, 6, 0)
        self.turns = {chess.WHITE: QRadioButton(tr("&White")), chess.BLACK: QRadioButton(tr("&Black"))}
        row = QHBoxLayout()
        for colour, button in self.turns.items():
            button.setAccessibleName(tr("White to move") if colour else tr("Black to move"))
            button.clicked.connect(lambda _=False, colour=colour: self.change(rules.with_turn(self._set_up, colour)))
            row.addWidget(button)
        row.addStretch(1)
        column.addWidget(_heading(tr("To move")))
        column.addLayout(row)
        column.addWidget(_heading(tr("May still castle")))
        self.castling: dict[str, QCheckBox] = {}
        for right, name in _CASTLING.items():
            box = self.castling[right] = QCheckBox(tr(name))
            box.setAccessibleName(tr("May castle: {side}", side=tr(name)))
            box.clicked.connect(lambda on, right=right: self.change(rules.with_castling(self._set_up, right, on)))
            column.addWidget(box)
        self.en_passant = QComboBox()
        self.en_passant.activated.connect(self._choose_en_passant)
        self.number, self.quiet = _spin(1, 999), _spin(0, 150)
        self.number.valueChanged.connect(lambda _: self._count())
        self.quiet.valueChanged.connect(lambda _: self._count())
        for label, field in (
            (tr("&En passant on"), self.en_passant),
            (tr("Move &number"), self.number),
            (tr("&Quiet half-moves"), self.quiet),
        ):
            heading = _heading(label)
            heading.setBuddy(field)
            field.setAccessibleName(label.replace("&", ""))
            column.addWidget(heading)
            column.addWidget(field)
        self.quiet.setToolTip(tr("Half-moves since the last capture or pawn move."))
        grid = QGridLayout()
        for place, (label, told, act) in enumerate(self._acts()):
            acting = ActingButton(label)
            acting.setToolTip(told)
            acting.setAccessibleDescription(told)
            acting.clicked.connect(lambda _=False, act=act: act())
            grid.addWidget(acting, place // 2, place % 2)
            self.acts[label.replace("&", "")] = acting
        column.addSpacing(8)
        column.addLayout(grid)
        column.addStretch(1)
        return side

    def _acts(self) -> tuple[tuple[str, str, Callable[[], None]], ...]:
        """What each button says, what it does in words, and what it does."""
        self.acts: dict[str, QPushButton] = {}
        return (
            (tr("&Start"), tr("The start position of a game."), lambda: self.change(SetUp())),
            (tr("&Clear"), tr("Take all pieces away."), lambda: self.change(EMPTY)),
            (tr("&Mirror"), tr("The a-file for the h-file."), lambda: self.change(rules.mirrored(self._set_up))),
            (
                tr("E&xchange"),
                tr("White's pieces for Black's, seen from the other side."),
                lambda: self.change(rules.swapped(self._set_up)),
            ),
            (tr("&Undo"), tr("Take the last change back (Ctrl+Z)."), self.undo),
            (tr("&Redo"), tr("Do again what was taken back (Ctrl+Y)."), self.redo),
            (tr("C&opy FEN"), tr("Put the position on the clipboard."), self.copy),
            (tr("&Paste FEN"), tr("Take the position that is on the clipboard."), self.paste),
            (tr("&Flip"), tr("Show the board from the other side."), self.board.flip),
        )

    def _lay(self, fields: QWidget) -> None:
        scroll = QScrollArea()
        scroll.setWidgetResizable(True)
        scroll.setFrameShape(QScrollArea.Shape.NoFrame)
        # It follows the keyboard through its fields, and is no stop of its own.
        scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        scroll.setWidget(fields)
        self._scroll, self._side = scroll, fields
        scroll.viewport().setAutoFillBackground(False)
        fields.setAutoFillBackground(False)
        hint = QLabel(
            tr(
                "Drag pieces from the tray, or choose one there and click. On the board the arrows move a cursor; "
                "K, Q, R, B, N and P put White's pieces, small letters Black's, Delete takes one away."
            )
        )
        hint.setObjectName("quiet")
        hint.setWordWrap(True)
        upper = QHBoxLayout()
        upper.addWidget(self.board, 1)
        upper.addWidget(scroll)
        layout = QVBoxLayout(self)
        layout.addLayout(upper, 1)
        layout.addWidget(hint)
        layout.addWidget(self.fen)
        layout.addWidget(self.verdict)
        layout.addWidget(self._buttons)

    def _fill(self) -> None:
        """Show the position everywhere, and say what is wrong with it."""
        self._filling = True
        now = self._set_up
        self.board.show_board(rules.board_of(now))
        self.fen.setText(rules.fen_of(now))
        self.turns[now.turn].setChecked(True)
        possible = rules.possible_castling(now)
        for right, box in self.castling.items():
            box.setEnabled(right in possible)
            box.setChecked(right in now.castling)
        self.en_passant.clear()
        self.en_passant.addItem(tr("no square"), None)
        for square in rules.possible_en_passant(now):
            self.en_passant.addItem(chess.square_name(square), square)
        self.en_passant.setCurrentIndex(max(0, self.en_passant.findData(now.en_passant)))
        self.en_passant.setEnabled(self.en_passant.count() > 1)
        self.number.setValue(now.number)
        self.quiet.setValue(now.quiet)
        self.acts[tr("&Undo").replace("&", "")].setEnabled(bool(self._past))
        self.acts[tr("&Redo").replace("&", "")].setEnabled(bool(self._future))
        self._filling = False
        wrong = rules.problems(now)
        self.ok.setEnabled(not wrong)
        good = tr("This position can be played on.")
        self._tell(" ".join(wrong or (good, *rules.remarks(now))), wrong=bool(wrong))

    def _tell(self, words: str, *, wrong: bool) -> None:
        self.verdict.setObjectName("over" if wrong else "quiet")
        self.verdict.style().unpolish(self.verdict)
        self.verdict.style().polish(self.verdict)
        self.verdict.setText(f"{'✗' if wrong else '✓'} {words}")
        if words != self._told:
            self._told = words
            announce(self.verdict, lambda: words)

    def _read_fen(self) -> None:
        try:
            self.change(rules.set_up_of(self.fen.text()))
        except SetUpError as reason:
            self._tell(str(reason), wrong=True)

    def _choose_en_passant(self, index: int) -> None:
        self.change(replace(self._set_up, en_passant=self.en_passant.itemData(index)))

    def _count(self) -> None:
        if not self._filling:
            self.change(replace(self._set_up, number=self.number.value(), quiet=self.quiet.value()))


def _heading(text: str) -> QLabel:
    label = QLabel(text)
    label.setObjectName("quiet")
    label.setWordWrap(True)
    return label


def _spin(least: int, most: int) -> QSpinBox:
    spin = QSpinBox()
    spin.setRange(least, most)
    return spin
