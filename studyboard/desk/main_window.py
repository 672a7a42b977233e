"""The desk's window: lanes or prompter on the left, board and spoken line on the right, the time ruler below."""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QByteArray, QPoint, QSettings, Qt, QTimer
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent, QGuiApplication, QKeySequence, QShortcut
from PySide6.QtWidgets import QMainWindow, QMenu, QWidget

from studyboard.desk import remembered
from studyboard.desk.arrangement import Arrangement
from studyboard.desk.board_mark_palette import MarkPalette
from studyboard.desk.board_view import BoardView
from studyboard.desk.commands import Commands
from studyboard.desk.edit_labels import label_words
from studyboard.desk.facts_line import FactsLine
from studyboard.desk.lanes_menu import lanes_menu
from studyboard.desk.lanes_pane import LanesPane
from studyboard.desk.line_editor import LineEditor
from studyboard.desk.line_playing import PlayedCues
from studyboard.desk.look import Look
from studyboard.desk.menus import add_look_menus, dress_menu, fill_menu_bar, fill_recent, make_actions, spec_of
from studyboard.desk.notice import Notice
from studyboard.desk.opened_words import problem_table, recovered_words
from studyboard.desk.performance import Performance
from studyboard.desk.session import Session
from studyboard.desk.shared_keys import BESIDE, share_keys
from studyboard.desk.style_sheet import style_sheet
from studyboard.desk.time_ruler import TimeRuler
from studyboard.desk.top_bar import TopBar, title
from studyboard.model.errors import StudyboardError
from studyboard.model.script import BeatKey, Part
from studyboard.store.recent import remember
from studyboard.store.study_file import StudyFile
from studyboard.timing.clock import clock, over_or_under
from studyboard.translation import tr

if TYPE_CHECKING:
    from studyboard.desk.booth import Booth
    from studyboard.desk.opening import Opened
    from studyboard.desk.prompter import Prompter
    from studyboard.desk.prompter_window import PrompterWindow
    from studyboard.desk.proofreading import Proofreading
    from studyboard.desk.script_tools import ScriptTools
    from studyboard.desk.stage import Stage
    from studyboard.desk.wave_pane import WavePane

#: Where in the settings the place of the desk on the screen is kept.
GEOMETRY = "desk/geometry"
#: The desk is on the screen before it begins to read the script (ms).
_PROOFREADS_AFTER = 300
_IN_RUN_THROUGH = ("advance", "retreat", "come_back", "start_or_stop")


class MainWindow(QMainWindow):
    """The desk.

    State: the session, the run-through that is going on, which of the day's stages is shown, and the windows that
    were opened beside this one.
    """

    def __init__(self, file: StudyFile, look: Look, settings: QSettings, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.settings = settings
        self.look = look
        self.session = Session(file, self)
        self.performance = Performance(self.session, self)
        self._stage_window: Stage | None = None
        self._prompter_window: PrompterWindow | None = None

        self.top_bar = TopBar(self.session, look)
        self.notice = Notice(look)
        self.lanes_pane = LanesPane(self.session, look)
        self.lanes, self.find_bar = self.lanes_pane.lanes, self.lanes_pane.find_bar
        self._prompter: Prompter | None = None
        self._booth: Booth | None = None
        self._wave: WavePane | None = None
        self.board_view = BoardView(self.session, look)
        self.mark_palette = MarkPalette(self.board_view, look)
        self.facts = FactsLine(self.session, look)
        self.line_editor = LineEditor(self.session, look)
        self.played_cues = PlayedCues(self.session, self.line_editor, self.board_view, settings)
        self.ruler = TimeRuler(self.session, look)
        self._proofreading: Proofreading | None = None
        self._script_tools: ScriptTools | None = None
        self._arrangement = Arrangement(
            top=self.top_bar,
            notice=self.notice,
            lanes=self.lanes_pane,
            board=self.board_view,
            facts=self.facts,
            marks=self.mark_palette,
            line=self.line_editor,
            ruler=self.ruler,
        )
        self.setCentralWidget(self._arrangement)
        self._stage = "write"

        self.commands = Commands(self)
        self.actions_by_name = make_actions(self, self.commands)
        self._menus = fill_menu_bar(self, self.actions_by_name)
        recent = QMenu(tr("&Recent"), self)
        self._menus["&Study"].insertMenu(self.actions_by_name["save_as"], recent)
        recent.aboutToShow.connect(partial(fill_recent, recent, self.open_path))
        for name, menu in self._menus.items():
            menu.aboutToShow.connect(partial(dress_menu, name, self.actions_by_name, look))
        add_look_menus(self._menus["&View"], look, settings, self.tell)
        # Space goes on wherever the keyboard is, but only while a run-through is going on.
        self._go_on = QShortcut(QKeySequence(Qt.Key.Key_Space), self, self.performance.advance)
        self._go_on.setEnabled(False)
        self.setAcceptDrops(True)
        self._connect()
        self._dress()
        self._enable()
        self._enable_undo()
        self._show_title()
        self.resize(1366, 768)
        geometry = settings.value(GEOMETRY)
        if isinstance(geometry, QByteArray):
            self.restoreGeometry(geometry)
        self.write_stage()
        self._show_beginning()
        remember(file.path)
        QTimer.singleShot(0, self, self._tell_recovered)
        QTimer.singleShot(_PROOFREADS_AFTER, self, self._begin_proofreading)

    # ---- what is made when it is first needed -----------------------------------------------------------------------

    @property
    def prompter(self) -> Prompter:
        """The prompter beside the board."""
        if self._prompter is None:
            from studyboard.desk.focus_frame import FocusFrame
            from studyboard.desk.prompter import Prompter

            self._prompter = Prompter(self.session, self.performance, self.look)
            self._prompter.left.connect(self.write_stage)
            FocusFrame(self._prompter, self.look)
            self._arrangement.add_to_run_through(self._prompter, stretch=1)
        return self._prompter

    @property
    def booth(self) -> Booth:
        """The booth below it."""
        if self._booth is None:
            from studyboard.desk.booth import Booth

            self._booth = Booth(self.session, self.performance, self.look, settings=self.settings)
            self._booth.played_to.connect(self._show_playback)
            self._booth.busy.connect(self.prompter.setFocus)
            self._booth.hide()
            self._arrangement.add_to_run_through(self._booth, stretch=0)
        return self._booth

    @property
    def wave(self) -> WavePane:
        """The wave of a take below the ruler."""
        if self._wave is None:
            from studyboard.desk.wave_pane import WavePane

            self._wave = WavePane(self.session, self.look)
            self._wave.problem.connect(self.tell)
            self._wave.asked_to_listen.connect(self.follow_voice)
            self._wave.followed.connect(self._follow_take)
            self._arrangement.add_below_ruler(self._wave)
            self._arrangement.show_below_ruler(False)
        return self._wave

    @property
    def proofreading(self) -> Proofreading:
        """The read-through that goes on beside the writing."""
        if self._proofreading is None:
            from studyboard.desk.proofreading import Proofreading

            self._proofreading = Proofreading(self)
        return self._proofreading

    @property
    def script_tools(self) -> ScriptTools:
        """Spelling, snippets and what else helps in writing."""
        if self._script_tools is None:
            from studyboard.desk.script_tools import ScriptTools

            self._script_tools = ScriptTools(self)
        return self._script_tools

    @property
    def recording(self) -> bool:
        """True while a take is being recorded."""
        return self._booth is not None and self._booth.recording

    # ---- stages of the day ------------------------------------------------------------------------------------------

    @property
    def stage(self) -> str:
        """Which stage is shown: "write", "rehearse" or "record"."""
        return self._stage

    def show_wave(self, shown: bool) -> None:
        """Show the wave of a take below the ruler, or hide it."""
        wave = self.wave
        self._arrangement.show_below_ruler(shown)
        self.actions_by_name["show_wave"].setChecked(shown)
        if shown:
            wave.view.setFocus()
        else:
            self.ruler.setFocus()

    @property
    def wave_shown(self) -> bool:
        """True while it is seen."""
        return self._wave is not None and self._wave.isVisible()

    @property
    def wave_take(self) -> int | None:
        """Id of the take whose wave is seen; None where none is."""
        take = self._wave.take if self._wave is not None and self.wave_shown else None
        return None if take is None else take.id

    def follow_voice(self, take: int | None) -> None:
        """Open the window that listens to a take, the newest one for None, and lets its board follow the voice."""
        from studyboard.desk.listen_window import ListenWindow

        if self.recording:
            self.tell(tr("A take is being recorded: stop it first (Ctrl+Space)."))
            return
        self.line_editor.flush()
        dialog = ListenWindow(self.session, take, self)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.chosen.connect(self.lanes.go_to)
        dialog.show()

    def write_stage(self) -> None:
        """Lanes and the spoken line."""
        self._enter("write")
        self.lanes.setFocus()

    def rehearse_stage(self) -> None:
        """The prompter beside the board; the talk is at its beginning."""
        if self._enter("rehearse"):
            self.performance.begin_by = None
            self.performance.get_ready()
            self.prompter.setFocus()

    def record_stage(self) -> None:
        """The prompter and the booth beside the board; the talk is at its beginning, and Space begins a take."""
        if self.stage == "record":
            return
        if self._enter("record"):
            self.performance.stop()
            self.performance.begin_by = self.booth.begin
            self.performance.get_ready(self.booth.range.first_beat)
            self.prompter.setFocus()

    def start_or_stop(self) -> None:
        """Begin or end what the stage is for: the rehearsal or the recording."""
        if self.stage == "record":
            self.booth.start_or_stop()
        elif self.performance.active:
            self.performance.stop()
        else:
            self.performance.start()

    def _enter(self, stage: str) -> bool:
        self.line_editor.flush()
        if self.recording and stage != "record":
            self.tell(tr("A take is being recorded: stop it first (Ctrl+Space)."))
            self.top_bar.show_stage("record")
            return False
        if stage == "write" and self.performance.active:
            self.performance.stop()
        self._stage = stage
        running = stage != "write"
        if running:
            self.prompter.show()
            self._arrangement.show_run_through()
        else:
            self._arrangement.show_writing()
        if stage == "record":
            self.booth.show()
        elif self._booth is not None:
            self._booth.hide()
            self._booth.close_down()
        self.board_view.set_marking(False)
        self.top_bar.show_stage(stage)
        for name in _IN_RUN_THROUGH:
            self.actions_by_name[name].setEnabled(running)
        # While the talk is run through, the keyboard belongs to it, wherever the pointer plays a move.
        self.board_view.setFocusPolicy(Qt.FocusPolicy.NoFocus if running else Qt.FocusPolicy.StrongFocus)
        self.ruler.setFocusPolicy(Qt.FocusPolicy.NoFocus if running else Qt.FocusPolicy.StrongFocus)
        self.ruler.can_stretch = not running
        if not running:
            self.ruler.set_playhead(None)
        return True

    # ---- for the commands -------------------------------------------------------------------------------------------

    def tell(self, sentence: str) -> None:
        """Show a sentence over the desk for some seconds."""
        self.notice.tell(sentence)

    def dividers(self) -> QByteArray:
        """Where the dividers of the desk are."""
        return self._arrangement.dividers()

    def set_dividers(self, places: QByteArray) -> None:
        """Put the dividers where they were another day."""
        self._arrangement.set_dividers(places)

    def edit_part(self, part: Part) -> None:
        """Edit a line that belongs to no move."""
        self.write_stage()
        self.lanes.choose_part(part)
        self.line_editor.edit_part(part)
        self.line_editor.focus_line()

    def step_beat(self, step: int) -> None:
        """Show another stop of the running order, seen from the one that is shown."""
        stretches = self.session.timeline.stretches
        current = self.lanes.current
        here = next((number for number, stretch in enumerate(stretches) if stretch.key == current), None)
        if here is None:
            shown = (
                number
                for number, stretch in enumerate(stretches)
                if any(event.node == self.session.node for event in stretch.events)
            )
            here = next(shown, -1 if step > 0 else 0)
        if 0 <= here + step < len(stretches):
            self._show_beat(here + step)

    def open_path(self, name: str | Path) -> None:
        """Open a study or a PGN file, or take a sound file in, or say why not."""
        from studyboard.desk.opening import open_path
        from studyboard.sound.importing import ENDINGS

        path = Path(name)
        if path.suffix.lower().lstrip(".") in ENDINGS:
            self.booth.take_in(path)
            return
        if path.resolve() == self.session.file.path.resolve():
            self.tell(tr("“{name}” is what is on the desk.", name=path.name))
            return
        try:
            opened = open_path(path, self)
        except StudyboardError as reason:
            self.notice.tell(str(reason), stay=True)
            return
        if opened is not None:
            self.show_opened(opened)

    def show_opened(self, opened: Opened) -> None:
        """Put an opened study on the desk."""
        if self.recording:
            opened.file.close()
            self.tell(tr("A take is being recorded: stop it first (Ctrl+Space)."))
            return
        self.line_editor.flush()
        remembered.keep(self)
        if self._booth is not None:
            self._booth.close_down()
        self.session.open(opened.file)
        remember(opened.file.path)
        self.write_stage()
        self._show_beginning()
        self._tell_recovered()
        self.tell_problems(opened)

    def save_as(self, name: str) -> None:
        """Go on with a copy under another name."""
        self.line_editor.flush()
        try:
            self.session.save_as(Path(name))
        except StudyboardError as reason:
            self.notice.tell(str(reason), stay=True)
            return
        remember(Path(name))
        self.tell(tr("Going on in “{name}”.", name=Path(name).name))

    def show_stage(self) -> None:
        """Open the window with only the board."""
        if self._stage_window is None:
            from studyboard.desk.stage import Stage

            self._stage_window = Stage(self.session, self.look, self.performance, self.settings)
            share_keys(self._stage_window, self.actions_by_name, BESIDE)
        self._stage_window.show()
        self._stage_window.raise_()

    def show_prompter(self) -> None:
        """Open the window with only the lines to read."""
        if self._prompter_window is None:
            from studyboard.desk.prompter_window import PrompterWindow

            self._prompter_window = PrompterWindow(self.session, self.look, self.performance, self.settings)
            share_keys(self._prompter_window, self.actions_by_name, BESIDE)
        self._prompter_window.setStyleSheet(style_sheet(self.look))
        self._prompter_window.show()
        self._prompter_window.prompter.refresh()
        self._prompter_window.raise_()

    def scale_text(self, step: int) -> None:
        """Make all text one step larger or smaller, or (0) as large as it was last time."""
        size = float(str(self.settings.value("look/text_points", QGuiApplication.font().pointSizeF())))
        size = min(28.0, max(7.0, size + step))
        font = QGuiApplication.font()
        if size <= 0 or font.pointSizeF() <= 0:
            return
        font.setPointSizeF(size)
        QGuiApplication.setFont(font)
        self.settings.setValue("look/text_points", size)
        self.look.changed.emit()

    # ---- Qt ---------------------------------------------------------------------------------------------------------

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Studies and PGN files can be dropped."""
        if event.mimeData().hasUrls() and event.mimeData().urls()[0].isLocalFile():
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Open what is dropped."""
        path = event.mimeData().urls()[0].toLocalFile()
        event.acceptProposedAction()
        # The chooser must not open inside the other program's drag.
        QTimer.singleShot(0, self, lambda: self.open_path(path))

    def closeEvent(self, event: QCloseEvent) -> None:
        """Everything is stored already: end what is running and let go of the file."""
        self.line_editor.flush()
        remembered.keep(self)
        self.performance.stop()
        if self._proofreading is not None:
            self._proofreading.stop()
        if self._script_tools is not None:
            self._script_tools.stop()
        if self._booth is not None:
            self._booth.close_down()
        self.settings.setValue(GEOMETRY, self.saveGeometry())
        for window in (self._stage_window, self._prompter_window):
            if window is not None:
                window.close()
        self.session.file.close()
        super().closeEvent(event)

    # ---- within -----------------------------------------------------------------------------------------------------

    def _connect(self) -> None:
        session, performance = self.session, self.performance
        session.refused.connect(lambda sentence: self.notice.tell(sentence, stay=True))
        session.opened.connect(self._show_title)
        session.changed.connect(lambda changed: self._show_title() if changed.headers else None)
        session.changed.connect(lambda _: self._enable())
        session.changed.connect(lambda _: self._enable_undo())
        session.stepped.connect(lambda _: self._enable())
        session.chose.connect(self._enable)
        session.opened.connect(self._enable)
        session.opened.connect(self._enable_undo)
        self.top_bar.chosen.connect(lambda name: self.commands.of(name)())
        self.line_editor.told.connect(self.tell)
        self.actions_by_name["played_cues"].setChecked(self.played_cues.on)
        self.actions_by_name["legal_targets"].setChecked(self.board_view.targets_shown)
        self.actions_by_name["further_facts"].setChecked(self.facts.further)
        self.lanes.part_chosen.connect(self.line_editor.edit_part)
        self.lanes.part_chosen.connect(self.ruler.show_part)
        self.lanes.node_chosen.connect(lambda _: self.line_editor.edit_node())
        self.lanes.edit_requested.connect(lambda _: self.line_editor.focus_line())
        self.lanes.menu_requested.connect(self._lanes_menu)
        self.facts.pointed.connect(self.board_view.point_at)
        self.ruler.beat_chosen.connect(self._show_beat)
        self.board_view.marking_changed.connect(self.actions_by_name["marking"].setChecked)
        performance.ticked.connect(self._show_progress)
        performance.moved.connect(self._show_progress)
        performance.begun.connect(lambda: self._go_on.setEnabled(True))
        performance.ended.connect(self._run_ended)
        self.look.changed.connect(self._dress)

    def _dress(self) -> None:
        palette = self.look.palette()
        if palette != QGuiApplication.palette():
            QGuiApplication.setPalette(palette)
        # Where only the size of the text is another, Qt must still take the sheet up again to measure by it.
        self.setStyleSheet(style_sheet(self.look))
        self.actions_by_name["reduce_motion"].setChecked(self.look.reduced_motion)

    def _enable(self) -> None:
        for name, action in self.actions_by_name.items():
            when = spec_of(name).when
            if when is not None:
                action.setEnabled(when(self.session))

    def _enable_undo(self) -> None:
        """Undo and redo with what they would take back, and do again."""
        file = self.session.file
        for name, label in (("undo", file.undo_label), ("redo", file.redo_label)):
            action, text = self.actions_by_name[name], tr(spec_of(name).text)
            action.setText(f"{text}: {label_words(label)}" if label else text)
            action.setEnabled(label is not None)

    def _begin_proofreading(self) -> None:
        if self.isVisible():
            self.proofreading.proofreader.read_soon()
            _ = self.script_tools

    def _show_beginning(self) -> None:
        """Where the work on this study stood; at first, the first thing that is said, where that is no move."""
        if remembered.bring_back(self):
            return
        if self.session.study.line(Part.GREETING).spoken:
            self.lanes.choose_part(Part.GREETING)

    def _show_title(self) -> None:
        self.setWindowTitle(tr("{title} – Studyboard", title=title(self.session)))
        self.setWindowFilePath(str(self.session.file.path))

    def _show_beat(self, index: int) -> None:
        stretches = self.session.timeline.stretches
        if not 0 <= index < len(stretches):
            return
        stretch = stretches[index]
        if self.stage != "write" and not self.performance.active:
            self.performance.get_ready(index)
            return
        self.session.show(stretch.node)
        if isinstance(stretch.key, Part):
            self.lanes.choose_part(stretch.key)

    def _show_progress(self) -> None:
        """The playhead of a run-through: as far into its beat as that has been told."""
        if not self.performance.active or not self.performance.run.beats:
            return
        run = self.performance.run
        start = sum(run.planned[: run.beat])
        self.ruler.set_playhead(start + min(run.planned[run.beat], run.beat_seconds(run.beat)))

    def _run_ended(self) -> None:
        self._go_on.setEnabled(False)
        self.ruler.set_playhead(None)
        run = self.performance.run
        if self.stage == "rehearse" and run.begun:
            told = run.elapsed
            against = "" if run.slot is None else tr(", {distance}", distance=over_or_under(told - run.slot))
            self.tell(
                tr(
                    "Rehearsed in {length}{against}. The seconds of each beat are kept beside the plan.",
                    length=clock(told),
                    against=against,
                )
            )

    def _show_playback(self, played: object) -> None:
        if not isinstance(played, tuple):
            self.ruler.set_playhead(None)
            return
        _, seconds = played
        self.ruler.set_playhead(seconds)

    def _follow_take(self, beat: BeatKey | None) -> None:
        """A take is heard or gone through: the prompter and the lines that belong to no move follow, too."""
        if self.stage != "write":
            self.performance.follow(beat)
        elif isinstance(beat, Part):
            self.lanes.choose_part(beat)

    def _lanes_menu(self, key: BeatKey, where: QPoint) -> None:
        if key not in self.session.chosen:
            self.lanes.go_to(key)
        lanes_menu(self, key, self.actions_by_name).exec(where)

    def _tell_recovered(self) -> None:
        words = recovered_words(self.session.file.recovered)
        if words:
            self.notice.tell(words, stay=True)

    def tell_problems(self, opened: Opened) -> None:
        """Say what has to be said about a study that was just opened: unread places, or that it is read only."""
        problems = opened.problems
        if not opened.words:
            return

        def show_all() -> None:
            from studyboard.desk.help_texts import show_text

            show_text(self, tr("What could not be read"), problem_table(problems))

        details = show_all if len(problems) > 1 else None
        self.notice.tell(opened.words, stay=True, details=details)
