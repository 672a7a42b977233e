"""What the actions of the menu “View” do."""

from __future__ import annotations

from studyboard.desk.command_group import CommandGroup


class ViewCommands(CommandGroup):
    """One method for each action of that menu, named as it."""

    def show_stage(self) -> None:
        """The window with only the board."""
        self._window.show_stage()

    def show_prompter(self) -> None:
        """The window with only the lines."""
        self._window.show_prompter()

    def full_screen(self) -> None:
        """The desk on the whole screen, or not."""
        window = self._window
        window.showNormal() if window.isFullScreen() else window.showFullScreen()

    def fold_all(self) -> None:
        """Only the lines on the way to the shown move."""
        self._window.lanes.fold_all()

    def unfold_all(self) -> None:
        """Every line."""
        self._window.lanes.unfold_all()

    def larger_text(self) -> None:
        """One step larger."""
        self._window.scale_text(1)

    def smaller_text(self) -> None:
        """One step smaller."""
        self._window.scale_text(-1)

    def reduce_motion(self) -> None:
        """Let nothing move by itself, or let it again."""
        self._window.look.reduce_motion(not self._window.look.reduced_motion)

    def show_wave(self) -> None:
        """The wave of a take below the ruler, or not."""
        self._window.show_wave(not self._window.wave_shown)
