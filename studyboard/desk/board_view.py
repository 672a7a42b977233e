"""The board that is played and drawn on."""

from __future__ import annotations

import chess
from PySide6.QtCore import QEvent, QPointF, Qt, Signal
from PySide6.QtGui import QContextMenuEvent, QFocusEvent, QKeyEvent, QMouseEvent, QPainter, QResizeEvent
from PySide6.QtWidgets import QWidget

from studyboard.board.moves import landing_square, moves_between
from studyboard.desk.board_announce import announce
from studyboard.desk.board_answers import BoardAnswers
from studyboard.desk.board_entry import MoveEntry
from studyboard.desk.board_face import BoardFace
from studyboard.desk.board_hand import BoardHand
from studyboard.desk.board_keys import BoardKeys
from studyboard.desk.board_marking import BoardMarking
from studyboard.desk.board_signs import paint_cursor, paint_frame, paint_held, paint_pointed, paint_targets
from studyboard.desk.look import Look
from studyboard.desk.paint import paint_scene
from studyboard.desk.promotion import PromotionChoice
from studyboard.desk.session import Session
from studyboard.model.marks import Mark, MarkKind
from studyboard.picture.describe import describe_square
from studyboard.picture.marks import ground_marks_scene, marks_scene
from studyboard.translation import tr

#: Free space around the board, in which the focus is shown (px).
_RIM = 4.0
_KEYBOARD_REASONS = (
    Qt.FocusReason.TabFocusReason,
    Qt.FocusReason.BacktabFocusReason,
    Qt.FocusReason.ShortcutFocusReason,
)


class BoardView(BoardFace):
    """The session's board, with a hand that plays moves and a pen that draws marks.

    State: what the hand holds and whether it is shown where that may go, which promotion is being asked for, whether
    marks are drawn and of which kind, which typed move is shown before it is played, and what somebody has asked.

    marking_changed: drawing marks was turned on or off
    mark_kind_changed: another kind of mark is drawn from now on
    """

    marking_changed = Signal(bool)
    mark_kind_changed = Signal(object)

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(session, look, parent, rim=_RIM)
        self._hand = BoardHand(lambda: self._board, self)
        self._marking = BoardMarking(session, self)
        self._keys = BoardKeys(self, self._hand, self._marking)
        self._answers = BoardAnswers(session, self)
        self._targets_shown = True
        self._promotion = PromotionChoice(look, self)
        self._entry = MoveEntry(lambda: self._board, look, self)
        self._asking: tuple[chess.Square, chess.Square] | None = None
        self._carried: chess.Square | None = None
        self._typed: chess.Move | None = None
        self._pressed = QPointF()
        self._focus_ring = False
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

        self._hand.changed.connect(self._on_hand)
        self._hand.played.connect(self._on_played)
        self._hand.let_go.connect(self._on_let_go)
        self._marking.changed.connect(self.update)
        self._answers.changed.connect(self.update)
        self._marking.turned.connect(self._on_marking)
        self._marking.kind_changed.connect(self.mark_kind_changed)
        self._promotion.chosen.connect(self._on_promotion)
        self._promotion.cancelled.connect(self._on_promotion_cancelled)
        self._entry.entered.connect(self._play)
        self._entry.previewed.connect(self._on_typed)
        self._entry.closed.connect(self._take_focus)

    @property
    def keyboard_square(self) -> chess.Square | None:
        """See BoardFace."""
        return self._hand.cursor

    @property
    def marking(self) -> bool:
        """True while pressing on the board draws marks."""
        return self._marking.on

    def set_marking(self, on: bool) -> None:
        """Turn the drawing of marks on or off."""
        self._marking.turn(on)

    @property
    def mark_kind(self) -> MarkKind:
        """The kind of mark that is drawn."""
        return self._marking.kind

    def set_mark_kind(self, kind: MarkKind) -> None:
        """Draw marks of this kind from now on."""
        self._marking.choose(kind)

    def clear_marks(self) -> None:
        """Wipe all marks of the shown node away."""
        self._marking.clear()

    @property
    def pen(self) -> BoardMarking:
        """What draws, alters and wipes the marks of the shown node."""
        return self._marking

    @property
    def node_marks(self) -> tuple[Mark, ...]:
        """All marks of the shown node, those too that have not appeared yet."""
        return self._session.study.node(self._node).marks

    @property
    def targets_shown(self) -> bool:
        """True where the board shows where a held piece may go."""
        return self._targets_shown

    def show_targets(self, shown: bool) -> None:
        """Show where a held piece may go, or do not."""
        self._targets_shown = shown
        self.update()

    @property
    def answers(self) -> BoardAnswers:
        """What the board shows because somebody asked."""
        return self._answers

    @property
    def asked_square(self) -> chess.Square:
        """The square that is meant where none is named: the keyboard's, else the one that was moved to last."""
        cursor = self._hand.cursor
        return self._start_square() if cursor is None else cursor

    def ask_square(self, square: chess.Square) -> None:
        """Show what the piece on this square does; while that is shown, the keyboard's cursor asks on."""
        self._settle()
        self._answers.ask_square(square)
        if self._answers.shown and self.focusPolicy() is not Qt.FocusPolicy.NoFocus:
            self._take_focus()
            self._hand.begin_picking(square)

    def ask_move(self) -> bool:
        """Show what the last move has changed; False where none has been played."""
        self._settle()
        return self._answers.ask_move()

    @property
    def hand(self) -> BoardHand:
        """The piece that is held."""
        return self._hand

    @property
    def entry(self) -> MoveEntry:
        """The field in which a move is typed."""
        return self._entry

    @property
    def promotion(self) -> PromotionChoice:
        """The choice of the piece that a pawn becomes."""
        return self._promotion

    def begin_entry(self, text: str = "") -> None:
        """Open the field in which a move is typed."""
        self._settle()
        self._entry.begin(text)

    def begin_picking(self) -> None:
        """Show the keyboard's cursor on the square that was moved to last, or on the king of the side to move."""
        self._hand.begin_picking(self._start_square())

    def _start_square(self) -> chess.Square:
        node = self._session.study.node(self._node)
        if node.move and node.parent is not None:
            return landing_square(self._session.positions.board(node.parent), node.move)
        king = self._board.king(self._board.turn)
        return king if king is not None else chess.E4

    def describe_cursor(self) -> None:
        """Tell a screen reader what is under the cursor; where a square is asked about, ask about this one instead."""
        cursor = self._hand.cursor
        if cursor is None:
            return
        if self._answers.square is not None and self._answers.square != cursor:
            self._answers.ask_square(cursor)
        else:
            announce(self, lambda: describe_square(self._board, cursor))

    def say(self, words: str) -> None:
        """Tell a screen reader something."""
        announce(self, lambda: words)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """See QWidget."""
        super().resizeEvent(event)
        if self._entry.isVisible():
            self._entry.place()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """See QWidget."""
        if event.button() != Qt.MouseButton.LeftButton:
            event.ignore()
            return
        self._answers.end()
        self._promotion.cancel()
        self._motion.finish()
        self._focus_ring = False
        square = self.place.square_at(event.position())
        if not self._marking.on:
            self._pressed = event.position()
            self._hand.press(square)
        elif square is not None:
            holds = event.modifiers() & Qt.KeyboardModifier.ShiftModifier and self._marking.take_hold(square)
            if not holds:
                self._marking.begin(square)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """See QWidget."""
        if not event.buttons() & Qt.MouseButton.LeftButton:
            return
        if self._marking.on:
            self._marking.reach(self.place.square_at(event.position()))
        elif self._hand.grip is not None or _far(event.position() - self._pressed, self.place.side):
            self._hand.drag(event.position())

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """See QWidget."""
        if event.button() != Qt.MouseButton.LeftButton:
            return
        square = self.place.square_at(event.position())
        if not self._marking.on:
            self._hand.release(square, event.position())
        elif square is None:
            self._marking.cancel()
        else:
            self._marking.reach(square)
            self._marking.finish()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Everything that can be done with the square under the pointer, or under the keyboard's cursor."""
        from studyboard.desk.board_menu import square_menu

        by_keyboard = event.reason() is QContextMenuEvent.Reason.Keyboard
        square = self.asked_square if by_keyboard else self.place.square_at(QPointF(event.pos()))
        where = self.mapToGlobal(self.place.centre(square).toPoint()) if by_keyboard and square else event.globalPos()
        square_menu(self, square).popup(where)

    def event(self, event: QEvent) -> bool:
        """See QWidget."""
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent) and self._keys.wants(event):
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """See QWidget."""
        if not self._keys.press(event):
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """See QWidget."""
        self._focus_ring = event.reason() in _KEYBOARD_REASONS
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """See QWidget."""
        self._focus_ring = False
        if event.reason() != Qt.FocusReason.PopupFocusReason and self._asking is None:
            self._hand.end_picking()
        self.update()

    # What the hand and the pen tell.

    def _on_hand(self) -> None:
        if self._hand.grip is not None:
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
        elif self._marking.on:
            self.setCursor(Qt.CursorShape.CrossCursor)
        elif self._hand.held is not None:
            self.setCursor(Qt.CursorShape.OpenHandCursor)
        else:
            self.unsetCursor()
        self.update()

    def _on_marking(self, on: bool) -> None:
        self._hand.drop()
        self._on_hand()
        announce(self, lambda: tr("Marking on") if on else tr("Marking off"))
        self.marking_changed.emit(on)

    def _on_played(self, origin: chess.Square, destination: chess.Square) -> None:
        moves = moves_between(self._board, origin, destination)
        if len(moves) > 1:
            self._asking = origin, destination
            self._promotion.ask(self._board.turn, destination, self.place)
            self.update()
        elif moves:
            self._carried = origin if self._hand.dragged else None
            self._play(moves[0])

    def _on_let_go(self, origin: chess.Square, position: QPointF) -> None:
        piece = self._board.piece_at(origin)
        if piece is not None and not self._look.reduced_motion:
            self._motion.glide_back(piece, origin, position - self._half)
        self.update()

    def _on_promotion(self, kind: chess.PieceType) -> None:
        asking, self._asking = self._asking, None
        self._take_focus()
        if asking is None:
            return
        chosen = [move for move in moves_between(self._board, *asking) if move.promotion == kind]
        if chosen:
            self._carried = asking[0]
            self._play(chosen[0])

    def _on_promotion_cancelled(self) -> None:
        self._asking = None
        self._take_focus()
        self.update()

    def _take_focus(self) -> None:
        self.setFocus(Qt.FocusReason.OtherFocusReason)

    def _on_typed(self, move: chess.Move | None) -> None:
        self._typed = move
        self.update()

    def _play(self, move: chess.Move) -> None:
        self._hand.drop()
        self._session.play(move)
        self._carried = None
        if self._hand.cursor is not None:
            self._hand.begin_picking(move.to_square)

    # What the face asks for.

    def _settle(self) -> None:
        super()._settle()
        self._hand.drop()
        self._marking.cancel()
        self._asking = None
        self._promotion.cancel()

    def _put_by_hand(self) -> chess.Square | None:
        return self._carried

    def _lifted(self) -> set[chess.Square]:
        lifted = set(self._asking or ())
        if self._hand.held is not None and self._hand.grip is not None:
            lifted.add(self._hand.held)
        return lifted

    def _paint_under(self, painter: QPainter) -> None:
        place, palette, grip = self.place, self._look.board_palette, self._hand.grip
        if self._hand.held is not None:
            paint_held(painter, self._hand.held, place, palette)
            hovered = self._hand.cursor if grip is None else place.square_at(grip)
            if self._targets_shown:
                paint_targets(painter, self._hand.targets, self._board.occupied, hovered, place, palette)
        if not self._answers.shown:
            # Under the marks, whose numbers it would cover; what is asked for frames whole squares as it does itself.
            paint_cursor(painter, self._hand.cursor, place, self._look.color("focus"))

    def _paint_over(self, painter: QPainter) -> None:
        place, palette = self.place, self._look.board_palette
        if self._typed:
            paint_pointed(painter, (self._typed.to_square, self._typed.from_square), place, palette)
        if self._answers.shown:
            painter.save()
            painter.translate(place.origin)
            paint_scene(painter, self._answers.scene(flipped=self._flipped), place.side)
            painter.restore()
        mark = self._marking.preview
        if mark is not None:
            painter.save()
            painter.setOpacity(0.75)
            painter.translate(place.origin)
            paint_scene(painter, ground_marks_scene((mark,), flipped=self._flipped), place.side)
            paint_scene(painter, marks_scene((mark,), flipped=self._flipped), place.side)
            painter.restore()
        if self._answers.shown:
            paint_cursor(painter, self._hand.cursor, place, self._look.color("focus"))

    def _paint_on_top(self, painter: QPainter) -> None:
        if self._asking is not None and (piece := self._board.piece_at(self._asking[0])) is not None:
            self._paint_piece(painter, piece, self.place.corner(self._asking[1]))
        held, grip = self._hand.held, self._hand.grip
        if held is not None and grip is not None and (piece := self._board.piece_at(held)) is not None:
            self._paint_piece(painter, piece, grip - self._half)
        if self._focus_ring or self._marking.on:
            paint_frame(painter, self.place, self._look.color("focus" if self._focus_ring else "accent"))

    @property
    def _half(self) -> QPointF:
        return QPointF(self.place.side / 2, self.place.side / 2)


def _far(way: QPointF, side: float) -> bool:
    """Whether the pointer has gone far enough for a drag: a seventh of a square."""
    return way.manhattanLength() > max(4.0, side / 7)
