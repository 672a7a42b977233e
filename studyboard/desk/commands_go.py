"""What the actions of the menu “Go” do."""

from __future__ import annotations

from collections.abc import Callable

from studyboard.desk.command_group import CommandGroup
from studyboard.model import jumps, stepping
from studyboard.model.beats import Beat
from studyboard.translation import tr


class GoCommands(CommandGroup):
    """One method for each action of that menu, named as it."""

    def forward(self) -> None:
        """The main move after this one."""
        self._session.show(stepping.forward(self._session.study, self._session.node))

    def back(self) -> None:
        """The move before."""
        self._session.show(stepping.back(self._session.study, self._session.node))

    def into_side_line(self) -> None:
        """The line beside this move."""
        self._session.show(stepping.next_line(self._session.study, self._session.node))

    def out_of_side_line(self) -> None:
        """Back towards the main line."""
        self._session.show(stepping.previous_line(self._session.study, self._session.node))

    def to_start(self) -> None:
        """The start position."""
        self._session.show(self._session.study.root)

    def to_end(self) -> None:
        """The last move of this line."""
        self._session.show(stepping.end_of_line(self._session.study, self._session.node))

    def next_beat(self) -> None:
        """The next stop of the talk."""
        self._window.step_beat(1)

    def previous_beat(self) -> None:
        """The stop before."""
        self._window.step_beat(-1)

    def next_unwritten(self) -> None:
        """The next stop at which nothing is said yet."""
        self._jump(jumps.is_unwritten, 1, tr("Everything that is told has its words."))

    def previous_unwritten(self) -> None:
        """The one before."""
        self._jump(jumps.is_unwritten, -1, tr("Everything that is told has its words."))

    def next_think(self) -> None:
        """The next think pause."""
        self._jump(jumps.asks_to_think, 1, tr("The talk has no think pause."))

    def previous_think(self) -> None:
        """The one before."""
        self._jump(jumps.asks_to_think, -1, tr("The talk has no think pause."))

    def _jump(self, wanted: Callable[[Beat], bool], step: int, none: str) -> None:
        self._window.line_editor.flush()
        key = jumps.next_beat(self._session.study, self._window.lanes.current, wanted, step)
        if key is None:
            self._window.tell(none)
            return
        if self._window.stage != "write":
            self._window.write_stage()
        self._window.lanes.go_to(key)
        self._window.tell(tr("{count} to go.", count=jumps.count(self._session.study, wanted)))
