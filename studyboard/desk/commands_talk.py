"""What the actions of the menu “Talk” do."""

from __future__ import annotations

from studyboard.desk.command_group import CommandGroup
from studyboard.translation import tr


class TalkCommands(CommandGroup):
    """One method for each action of that menu, named as it."""

    def write(self) -> None:
        """Lanes, board and the spoken line."""
        self._window.write_stage()

    def rehearse(self) -> None:
        """The prompter beside the board."""
        self._window.rehearse_stage()

    def record(self) -> None:
        """The prompter and the booth beside the board."""
        self._window.record_stage()

    def advance(self) -> None:
        """The next thing on the board."""
        self._window.performance.advance()

    def retreat(self) -> None:
        """The thing before."""
        self._window.performance.retreat()

    def come_back(self) -> None:
        """Back to where the talk was left."""
        self._window.performance.come_back()

    def start_or_stop(self) -> None:
        """The rehearsal or the recording."""
        self._window.start_or_stop()

    def show_takes(self) -> None:
        """Which take is heard for each beat, and what of it."""
        self._window.booth.open_takes()

    def check_room(self) -> None:
        """Noise, hum and level, told before the first take."""
        self._window.booth.check_room()

    def measure_delay(self) -> None:
        """How late the microphone is."""
        self._window.booth.measure_delay()

    def follow_voice(self) -> None:
        """Listen to a take, so that its moves come at their words."""
        self._window.follow_voice(self._window.wave_take)

    def show_rehearsals(self) -> None:
        """The log of rehearsals."""
        from studyboard.desk.rehearsals_window import RehearsalsWindow

        RehearsalsWindow(self._session, self._window.look, self._window).exec()

    def hear_plan(self) -> None:
        """Have the plan spoken by a synthesiser."""
        from studyboard.desk.plan_voice_window import PlanVoiceWindow

        if self._window.recording:
            self._window.tell(tr("A take is being recorded: stop it first (Ctrl+Space)."))
            return
        self._window.line_editor.flush()
        PlanVoiceWindow(self._session, self._window).exec()
