"""What each pane of the desk is for, told where one asks “What is this?”."""

from __future__ import annotations

from typing import TYPE_CHECKING

from studyboard.translation import tr

if TYPE_CHECKING:
    from studyboard.desk.main_window import MainWindow


def explain(window: MainWindow) -> None:
    """Give every pane of the desk its explanation."""
    window.lanes.setWhatsThis(
        tr(
            "<b>Lanes.</b> One row for each half-move: the main line in the first lane, each side-line in a lane of "
            "its own, level with the move that it replaces. The arrows step; Enter goes to the spoken line. Shift and "
            "Ctrl choose several rows; a branch is dragged to another place, or onto another move; Ctrl+F finds."
        )
    )
    window.board_view.setWhatsThis(
        tr(
            "<b>Board.</b> Play a move with the pointer, or type it. A move that is not on the tree yet becomes a "
            "side-line. Enter shows a cursor for the arrow keys; M draws marks; F2 shows what a piece does. A right "
            "click has what can be done with a square."
        )
    )
    window.facts.setWhatsThis(
        tr("<b>Facts.</b> What can be counted on the board: material, what hangs and what is pinned, with the reason.")
    )
    window.mark_palette.setWhatsThis(
        tr(
            "<b>Marks.</b> What is drawn on the board at this move, by its meaning: the keys 1 to 5 choose, 6 numbers "
            "what is drawn. With Shift a drawn mark is put elsewhere; a right click alters or wipes it."
        )
    )
    window.line_editor.setWhatsThis(
        tr(
            "<b>Spoken line.</b> What you say at this move. The small tags are cues: the words at which moves are "
            "played and marks appear. What the board contradicts is underlined."
        )
    )
    window.ruler.setWhatsThis(
        tr(
            "<b>Time ruler.</b> The whole talk to scale, side-lines hung below the main line, the slot as a line. Drag "
            "the end of a beat to set its length; Ctrl and the wheel, or + and −, zoom."
        )
    )
    window.top_bar.setWhatsThis(tr("<b>The day.</b> Write, rehearse, record and deliver, one after the other."))
