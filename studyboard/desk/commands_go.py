"""What the actions of the menu “Go” do."""

from __future__ import annotations

from studyboard.desk.command_group import CommandGroup
from studyboard.model import stepping


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
