"""The help inside the program."""

from __future__ import annotations

from html import escape

from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QTextBrowser, QVBoxLayout, QWidget

from studyboard import __version__
from studyboard.desk.actions import ACTIONS, MENUS, ActionSpec
from studyboard.desk.dialog_buttons import DialogButtons
from studyboard.setup_check import check_setup
from studyboard.translation import tr, tr_later

_STEPS = (
    (
        tr_later("Open a game"),
        tr_later("Drop a PGN file on the desk or choose Study › Open. A study is made of it and stored at once."),
    ),
    (
        tr_later("Place it"),
        tr_later("Fill in players, event and date under Study › Headers; they head the sheet and the captions."),
    ),
    (
        tr_later("Add side-lines"),
        tr_later("Play another move on the board: it becomes a side-line in a lane of its own."),
    ),
    (
        tr_later("Write"),
        tr_later(
            "Each move has its spoken line on the right. The next move that you play while the cursor is in the line "
            "is played at that word; drag its tag to another one, or put a cue with Ctrl+K. Greeting, closing and "
            "thanks are under Script."
        ),
    ),
    (
        tr_later("Time it"),
        tr_later("Set the slot with Ctrl+T. The ruler below shows the talk to scale and how much it is over or under."),
    ),
    (
        tr_later("Rehearse and record"),
        tr_later(
            "Ctrl+2 and Ctrl+3. Space begins and goes on, Ctrl+Space stops; move pieces to wander off, Backspace comes "
            "back. Takes are stored second by second while you speak."
        ),
    ),
    (
        tr_later("Deliver"),
        tr_later(
            "Ctrl+4 makes video, captions, study sheet, page and more, all from the same timeline. What has not "
            "changed since the last time is kept."
        ),
    ),
)


def quick_start() -> str:
    """The day in seven steps, as HTML."""
    steps = "".join(f"<li><p><b>{escape(tr(name))}.</b> {escape(tr(text))}</p></li>" for name, text in _STEPS)
    stored = tr("There is nothing to save: every change is stored when it is made.")
    return f"<ol>{steps}</ol><p>{escape(stored)}</p>"


def keys() -> str:
    """Every action with its keys, as HTML."""
    rows = ""
    for menu in MENUS:
        rows += f"<tr><td colspan='3'><p><b>{escape(tr(menu).replace('&', ''))}</b></p></td></tr>"
        rows += "".join(_row(spec) for spec in ACTIONS if spec.menu == menu)
    return f"<table cellpadding='3'>{rows}</table>"


def setup() -> str:
    """What is installed and what is missing, as HTML."""
    rows = "".join(
        f"<tr><td>{'✓' if finding.good else '✗'}</td><td><b>{escape(finding.name)}</b></td>"
        f"<td>{escape(finding.detail)}{'' if finding.good else '<br>' + escape(finding.remedy)}</td></tr>"
        for finding in check_setup()
    )
    return f"<table cellpadding='4'>{rows}</table>"


def about() -> str:
    """Version, licence and cautions, as HTML."""
    parts = (
        tr("A position-study board with a timed script."),
        tr("Free software under the GNU General Public License, version 3 or later. It comes without any warranty."),
        tr(
            "<b>Fair play.</b> Engine and archive help is for finished games: the event's and the arbiter's rules come "
            "first, and live rounds may have a broadcast delay."
        ),
        tr("<b>Rights.</b> Names, photographs and sponsors' material are the publisher's responsibility."),
    )
    return f"<h3>Studyboard {__version__}</h3>" + "".join(f"<p>{part}</p>" for part in parts)


def show_text(parent: QWidget, title: str, html: str) -> None:
    """Show a text to read until it is left."""
    text_window(parent, title, html).exec()


def text_window(parent: QWidget, title: str, html: str) -> QDialog:
    """A text to read, with one button to go back."""
    dialog = QDialog(parent)
    dialog.setWindowTitle(title)
    dialog.resize(620, 560)
    text = QTextBrowser()
    text.setHtml(html)
    text.setOpenExternalLinks(False)
    text.setAccessibleName(title)
    buttons = DialogButtons(QDialogButtonBox.StandardButton.Close)
    buttons.rejected.connect(dialog.reject)
    layout = QVBoxLayout(dialog)
    layout.addWidget(text)
    layout.addWidget(buttons)
    return dialog


def _row(spec: ActionSpec) -> str:
    label = tr(spec.text).replace("&", "").rstrip("…")
    keys_text = tr(" or ").join(_native(keys) for keys in spec.keys)
    return f"<tr><td>{escape(label)}</td><td><b>{escape(keys_text)}</b></td><td>{escape(tr(spec.help))}</td></tr>"


def _native(keys: str) -> str:
    """Keys by the names that stand on the keyboard."""
    return QKeySequence(keys).toString(QKeySequence.SequenceFormat.NativeText)
