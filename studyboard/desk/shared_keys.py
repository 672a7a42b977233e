"""Which keys of the desk hold in the windows beside it, so that nobody has to go back to the desk for them."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QWidget

#: In the stage and in the prompter: to open the other one, to run through the talk and to step.
BESIDE = (
    *("show_stage", "show_prompter", "write", "rehearse", "record", "start_or_stop", "come_back"),
    *("forward", "back", "into_side_line", "out_of_side_line", "to_start", "to_end", "next_beat", "previous_beat"),
)
#: In the whole script as one text, whose own keys write.
IN_SCRIPT = (
    *("replace_in_script", "read_through", "spelling", "pronounce"),
    *("set_slot", "fit_to_slot", "show_history", "show_stage", "show_prompter"),
    *("larger_text", "smaller_text", "find_action", "quick_start", "shortcuts"),
)


def share_keys(window: QWidget, actions: Mapping[str, QAction], names: tuple[str, ...]) -> None:
    """Let the keys of these actions hold in *window* too."""
    window.addActions([actions[name] for name in names])
