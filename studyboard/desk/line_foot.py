"""What stands under a spoken line: its lengths, the cue button, and the way to its note."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QWidget

from studyboard.desk.line_seconds import SecondsField
from studyboard.desk.rows_layout import RowsLayout
from studyboard.translation import tr


class LineFoot(QWidget):
    """Lengths and buttons in one row, in two where the width is short."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.intended = SecondsField(tr("Intended length of this beat"), tr("as estimated"))
        self.intended.setToolTip(tr("How long this beat should take. Empty: as long as the words take at your pace."))
        self.think = SecondsField(tr("Think pause after the line"), tr("none"))
        self.think.setToolTip(tr("Silence after the line in which the viewer is asked to find the move."))
        self.cue = QPushButton(tr("Cue"))
        self.cue.setToolTip(
            tr(
                "Put a cue at the cursor: a move is played, or a mark appears, at the word that follows. "
                "Playing the next move on the board while the cursor is in the line does the same."
            )
        )
        self.note = QPushButton()
        self.note.setCheckable(True)
        rows = RowsLayout(self)
        rows.add(_labelled(tr("Lasts"), self.intended))
        rows.add(_labelled(tr("Think pause"), self.think))
        gap = QWidget()
        rows.add(gap, stretch=True)
        rows.add(self.cue)
        rows.add(self.note)

    def show_note(self, written: bool) -> None:
        """Say on its button whether there is a note."""
        self.note.setText(tr("Note for print •") if written else tr("Note for print"))
        self.note.setAccessibleName(tr("Note for print, written") if written else tr("Note for print, empty"))


def _labelled(words: str, field: SecondsField) -> QWidget:
    pair = QWidget()
    layout = QHBoxLayout(pair)
    layout.setContentsMargins(0, 0, 0, 0)
    layout.setSpacing(6)
    label = QLabel(words)
    label.setObjectName("quiet")
    label.setBuddy(field)
    layout.addWidget(label)
    layout.addWidget(field)
    return pair
