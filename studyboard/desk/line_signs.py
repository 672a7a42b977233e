"""The signs under and behind the words of a text: queries, words that no dictionary has, what was searched for."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtGui import QTextCharFormat, QTextCursor, QTextDocument
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
            for sign in signs:
                selection = QTextEdit.ExtraSelection()
                selection.cursor, selection.format = sign.cursor, self._form(layer, sign.chosen)
                made.append(selection)
        return made

    def _form(self, layer: str, chosen: bool) -> QTextCharFormat:
        form = QTextCharFormat()
        if layer == "found":
            form.setBackground(self._look.color("selection" if chosen else "think_soft"))
            if chosen:
                form.setUnderlineStyle(_Underline.SingleUnderline)
                form.setUnderlineColor(self._look.color("accent"))
            return form
        form.setUnderlineStyle(_Underline.WaveUnderline if layer == "query" else _Underline.DotLine)
        form.setUnderlineColor(self._look.color(layer))
        if layer == "query" and chosen:
            form.setBackground(self._look.color("query_soft"))
        return form
