"""The line that the presenter reads: as large as all of it can be seen, else moving along with the talk."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QEasingCurve, QPropertyAnimation, QSize, Qt
from PySide6.QtGui import QColor, QFont, QTextCharFormat, QTextCursor, QTextDocument
from PySide6.QtWidgets import QFrame, QTextEdit, QWidget

from studyboard.desk.look import Look
from studyboard.translation import tr

#: Largest and smallest type (times the size of controls), and the step between two sizes that are tried.
LARGEST, SMALLEST = 2.6, 1.0
_STEP = 0.05
#: Where the words that are due stand in a line that moves (share of the height), and how long it takes to move (ms).
_EYE_LEVEL = 0.3
_GLIDE = 600
#: Space around the text (px).
_MARGIN = 2


@dataclass(frozen=True, slots=True)
class Run:
    """Some of the line in one dress.

    words: where words of the spoken line begin in *text*
    ink, ground: theme tokens; "" for no ground
    """

    text: str
    words: tuple[int, ...] = ()
    ink: str = "ink"
    ground: str = ""
    strong: bool = False
    slanted: bool = False


class PrompterLine(QTextEdit):
    """Shows one spoken line; nothing in it can be clicked or edited.

    State: the line, its size, the least size that it may have, and which word is due.
    """

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._runs: tuple[Run, ...] = ()
        self._starts: list[int] = []
        self._factor = LARGEST
        self.least = SMALLEST
        self.setReadOnly(True)
        self.setTextInteractionFlags(Qt.TextInteractionFlag.NoTextInteraction)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setStyleSheet("QTextEdit { background: transparent; border: none; padding: 0; }")
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        # A bar would take width from the line that it makes longer.
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName(tr("The line to say now"))
        # Presses belong to the prompter: they go on in the talk.
        self.viewport().setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.document().setDocumentMargin(_MARGIN)
        self._glide = QPropertyAnimation(self.verticalScrollBar(), b"value", self)
        self._glide.setDuration(_GLIDE)
        self._glide.setEasingCurve(QEasingCurve.Type.InOutSine)

    def text(self) -> str:
        """The line without its dress."""
        return self.toPlainText()

    @property
    def factor(self) -> float:
        """How large the type is, in sizes of controls."""
        return self._factor

    @property
    def moves(self) -> bool:
        """True where the line is longer than can be seen at once."""
        return self.verticalScrollBar().maximum() > 0

    def show_runs(self, runs: Sequence[Run]) -> None:
        """Show another line from its beginning; the same one stays where it is."""
        if tuple(runs) == self._runs:
            return
        self._runs = tuple(runs)
        self._write()
        self._glide.stop()
        self.verticalScrollBar().setValue(0)

    def redress(self) -> None:
        """Take over the colours of the look as they are now."""
        self._write()

    def fit(self) -> float:
        """Set the largest type in which all is seen, else the smallest; which one it is."""
        self._factor = self.fitting(self.viewport().height())
        font = self._look.spoken_font(self._factor)
        if font != self.font():
            self.setFont(font)
            self._write()
        return self._factor

    def fitting(self, height: int) -> float:
        """The largest type in which all would be seen in this height (px), else the smallest."""
        width = self.viewport().width()
        document = self.document().clone()
        least, largest = self.least, max(LARGEST, self.least)
        steps = round((largest - least) / _STEP)
        low, high = 0, steps
        while low < high:
            middle = (low + high + 1) // 2
            if _height(document, self._look.spoken_font(least + middle * _STEP), width) <= height:
                low = middle
            else:
                high = middle - 1
        return least + low * _STEP

    def follow(self, word: float) -> None:
        """Bring the words that are due to where the eye is: *word* counts from 0, its fraction is the way through it.

        Where motion is reduced the line does not move until they have left the view.
        """
        bar = self.verticalScrollBar()
        if not self.moves or not self._starts:
            return
        top, height = self._place_of(word)
        view = self.viewport().height()
        if self._look.reduced_motion:
            if top < bar.value() or top + height > bar.value() + view:
                bar.setValue(round(top))
            return
        target = max(0, min(bar.maximum(), round(top - _EYE_LEVEL * view)))
        running = self._glide.state() == QPropertyAnimation.State.Running
        if target == (self._glide.endValue() if running else bar.value()):
            return
        self._glide.stop()
        self._glide.setStartValue(bar.value())
        self._glide.setEndValue(target)
        self._glide.start()

    def scroll_by(self, pixels: int) -> None:
        """Move the line by hand."""
        self._glide.stop()
        bar = self.verticalScrollBar()
        bar.setValue(bar.value() + pixels)

    def sees(self, word: int) -> bool:
        """True where the whole height of this word is in view."""
        top, height = self._line_of(self._starts[word])
        value = self.verticalScrollBar().value()
        return value <= top + 1 and top + height <= value + self.viewport().height() + 1

    def sizeHint(self) -> QSize:
        """Some lines in a comfortable size."""
        line = self.fontMetrics().lineSpacing()
        return QSize(20 * line, 6 * line)

    def minimumSizeHint(self) -> QSize:
        """Two lines in the smallest type."""
        line = round(self._look.ui_font(SMALLEST * 1.3).pointSizeF())
        return QSize(8 * line, 2 * line)

    # ---- within -----------------------------------------------------------------------------------------------------

    def _write(self) -> None:
        """Write the runs into the document, and keep where its words begin."""
        document = self.document()
        document.clear()
        document.setDefaultFont(self.font())
        document.setDocumentMargin(_MARGIN)
        cursor = QTextCursor(document)
        self._starts = []
        for run in self._runs:
            self._starts += [cursor.position() + start for start in run.words]
            cursor.insertText(run.text, self._dress(run))

    def _dress(self, run: Run) -> QTextCharFormat:
        dress = QTextCharFormat()
        dress.setForeground(QColor(self._look.color(run.ink)))
        if run.ground:
            dress.setBackground(QColor(self._look.color(run.ground)))
        if run.strong:
            dress.setFontWeight(QFont.Weight.DemiBold)
        dress.setFontItalic(run.slanted)
        return dress

    def _place_of(self, word: float) -> tuple[float, float]:
        """How far down the reading is, lines taken as a steady flow, and the height of a line (px)."""
        number = max(0, min(len(self._starts) - 1, int(word)))
        position = self._starts[number]
        after = self._starts[number + 1] if number + 1 < len(self._starts) else self.document().characterCount() - 1
        position = round(position + min(1.0, word - number) * (after - position))
        top, height = self._line_of(position)
        if self._look.reduced_motion:
            return top, height
        block = self.document().findBlock(position)
        line = block.layout().lineForTextPosition(position - block.position())
        through = (position - block.position() - line.textStart()) / max(1, line.textLength())
        return top + through * height, height

    def _line_of(self, position: int) -> tuple[float, float]:
        """Top and height of the line in which this place of the document stands (px)."""
        block = self.document().findBlock(position)
        line = block.layout().lineForTextPosition(position - block.position())
        top = self.document().documentLayout().blockBoundingRect(block).top()
        return top + line.y(), line.height()


def words_between(starts: Sequence[int], begin: int, end: int) -> tuple[int, ...]:
    """Where the words that begin from *begin* to before *end* begin, counted from *begin*."""
    first = bisect_right(starts, begin - 1)
    last = bisect_right(starts, end - 1)
    return tuple(start - begin for start in starts[first:last])


def _height(document: QTextDocument, font: QFont, width: int) -> float:
    document.setDefaultFont(font)
    document.setTextWidth(width)
    return document.size().height()
