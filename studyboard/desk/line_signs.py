"""The signs under and behind the words of a text: queries, words that no dictionary has, what was searched for."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen, QTextCharFormat, QTextCursor, QTextDocument, QTextLine
from PySide6.QtWidgets import QTextEdit

from studyboard.desk.look import Look

_Underline = QTextCharFormat.UnderlineStyle

#: First to last cursor place, and whether it is the chosen one.
PlacedSpan = tuple[int, int, bool]

#: The layers from the lowest to the highest.
_LAYERS = ("spelling", "query", "found")


@dataclass(slots=True)
class _Sign:
    """One sign; its cursor goes along with what is typed before it."""

    cursor: QTextCursor
    chosen: bool


class LineSigns:
    """Keeps each kind of sign apart, and makes of all of them what Qt paints.

    State: where the signs of each layer stand. Layers differ by form and by colour: a query has a wavy line, an
    unknown word a dotted one, what was found a ground.
    """

    def __init__(self, look: Look) -> None:
        self._look = look
        self._layers: dict[str, list[_Sign]] = {layer: [] for layer in _LAYERS}

    def put(self, layer: str, document: QTextDocument, spans: Sequence[PlacedSpan]) -> bool:
        """Replace the signs of one layer; False where there were none and are none."""
        if not spans and not self._layers[layer]:
            return False
        last = document.characterCount() - 1
        signs: list[_Sign] = []
        for start, end, chosen in spans:
            cursor = QTextCursor(document)
            cursor.setPosition(min(start, last))
            cursor.setPosition(min(end, last), QTextCursor.MoveMode.KeepAnchor)
            signs.append(_Sign(cursor, chosen))
        self._layers[layer] = signs
        return True

    def selections(self) -> list[QTextEdit.ExtraSelection]:
        """What `setExtraSelections` takes."""
        made: list[QTextEdit.ExtraSelection] = []
        for layer, signs in self._layers.items():
            for sign in signs if layer != "spelling" else ():
                selection = QTextEdit.ExtraSelection()
                selection.cursor, selection.format = sign.cursor, self._form(layer, sign.chosen)
                made.append(selection)
        return made

    @property
    def misspelt(self) -> list[str]:
        """The words under which there is a dotted line."""
        return [sign.cursor.selectedText() for sign in self._layers["spelling"]]

    def paint_misspelt(self, text: QTextEdit) -> None:
        """Paint the dots under misspelt words on the text's viewport; Qt's own would be hardly seen in large type."""
        signs = self._layers["spelling"]
        if not signs:
            return
        painter = QPainter(text.viewport())
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        size = max(1.6, text.fontMetrics().height() / 12)
        pen = QPen(self._look.color("spelling"), size)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        pen.setDashPattern([0.01, 1.9])
        painter.setPen(pen)
        scrolled = QPointF(text.horizontalScrollBar().value(), text.verticalScrollBar().value())
        view = QRectF(text.viewport().rect())
        for sign in signs:
            place = _under(sign.cursor, size)
            if place is not None and view.intersects(place.translated(-scrolled)):
                place.translate(-scrolled)
                painter.drawLine(place.topLeft() + QPointF(size / 2, 0), place.topRight() - QPointF(size / 2, 0))

    def _form(self, layer: str, chosen: bool) -> QTextCharFormat:
        form = QTextCharFormat()
        if layer == "found":
            form.setBackground(self._look.color("selection" if chosen else "think_soft"))
            if chosen:
                form.setUnderlineStyle(_Underline.SingleUnderline)
                form.setUnderlineColor(self._look.color("accent"))
            return form
        form.setUnderlineStyle(_Underline.WaveUnderline)
        form.setUnderlineColor(self._look.color(layer))
        if chosen:
            form.setBackground(self._look.color("query_soft"))
        return form


def _under(cursor: QTextCursor, size: float) -> QRectF | None:
    """The stripe under the selected word, in its document; None where it is on two lines."""
    document, start, end = cursor.document(), cursor.selectionStart(), cursor.selectionEnd()
    block = document.findBlock(start)
    layout = block.layout()
    line = layout.lineForTextPosition(start - block.position())
    last = layout.lineForTextPosition(max(start, end - 1) - block.position())
    if start == end or not line.isValid() or not last.isValid() or line.lineNumber() != last.lineNumber():
        return None
    left, right = (_x(line, place - block.position()) for place in (start, end))
    corner = document.documentLayout().blockBoundingRect(block).topLeft()
    return QRectF(left, line.y() + line.ascent() + 1.3 * size, right - left, size).translated(corner)


def _x(line: QTextLine, place: int) -> float:
    found = line.cursorToX(place)
    # PySide6 hands back the place with the x, since Qt corrects it where it is beyond the end.
    return float(found[0]) if isinstance(found, tuple) else float(found)  # type: ignore[arg-type]
