"""The desk's window: lanes or prompter on the left, board and spoken line on the right, the time ruler below."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QByteArray, QPoint, QSettings, Qt, QTimer
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent, QGuiApplication
from PySide6.QtWidgets import (
    QBoxLayout,
    QFrame,
    QHBoxLayout,
    QMainWindow,
    QMenu,
    QSplitter,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from studyboard.desk.board_mark_palette import MarkPalette
from studyboard.desk.board_view import BoardView
from studyboard.desk.commands import Commands
from studyboard.desk.facts_line import FactsLine
from studyboard.desk.lanes import Lanes
from studyboard.desk.line_editor import LineEditor
from studyboard.desk.look import Look
from studyboard.desk.menus import dress_menu, fill_menu_bar, make_actions, spec_of
from studyboard.desk.notice import Notice
from studyboard.desk.performance import Performance
from studyboard.desk.session import Session
from studyboard.desk.style_sheet import style_sheet
from studyboard.desk.time_ruler import TimeRuler
from studyboard.desk.top_bar import TopBar, title
from studyboard.model.errors import StudyboardError
from studyboard.model.script import Part
from studyboard.picture.palette import board_palette, board_palette_names
from studyboard.store.recent import recent_files, remember
from studyboard.store.study_file import StudyFile

if TYPE_CHECKING:
    from studyboard.desk.booth import Booth
    from studyboard.desk.opening import Opened
    from studyboard.desk.prompter import Prompter
    from studyboard.desk.stage import Stage

_MENU_OF_LANES = (
    ("edit_line", "edit_note"),
    ("promote", "demote", "make_main_line", "name_side_line"),
    ("tell_after", "tell_before", "tell_later", "hide_side_line"),
    ("cut_branch", "copy_branch", "paste_branch", "delete_branch"),
    ("copy_fen",),
)
#: Width of what stands beside the board (px).
_BESIDE = 132
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
        self._prompter_window: Prompter | None = None

        self.top_bar = TopBar(self.session, look)
        self.notice = Notice(look)
        self.lanes = Lanes(self.session, look)
        self._prompter: Prompter | None = None
        self._booth: Booth | None = None
        self.board_view = BoardView(self.session, look)
        self.mark_palette = MarkPalette(self.board_view, look)
        self.mark_palette.layout().setDirection(QBoxLayout.Direction.TopToBottom)
        self.facts = FactsLine(self.session, look)
        self.line_editor = LineEditor(self.session, look)
        self.ruler = TimeRuler(self.session, look)
        self._lay_out()

        self.commands = Commands(self)
        self.actions_by_name = make_actions(self, self.commands)
        self._menus = fill_menu_bar(self, self.actions_by_name)
        self._recent_menu = QMenu("&Recent", self)
        self._menus["&Study"].insertMenu(self.actions_by_name["save_as"], self._recent_menu)
        self._recent_menu.aboutToShow.connect(self._fill_recent)
        for name, menu in self._menus.items():
            menu.aboutToShow.connect(lambda name=name: dress_menu(name, self.actions_by_name, self.look))
        self._add_look_menus()
        self.setAcceptDrops(True)
        self._connect()
        self._dress()
        self._enable()
        self._show_title()
        self.resize(1366, 768)
        geometry = settings.value("desk/geometry")
        if isinstance(geometry, QByteArray):
            self.restoreGeometry(geometry)
        self.write_stage()
        self._show_beginning()
        remember(file.path)
        QTimer.singleShot(0, self, self._tell_recovered)

    # ---- what is made when it is first needed -----------------------------------------------------------------------

    @property
    def prompter(self) -> Prompter:
        """The prompter beside the board."""
        if self._prompter is None:
            from studyboard.desk.prompter import Prompter

            self._prompter = Prompter(self.session, self.performance, self.look)
            self._prompter.left.connect(self.write_stage)
            self._running.insertWidget(0, self._prompter, 1)
        return self._prompter

    @property
    def booth(self) -> Booth:
        """The booth below it."""
        if self._booth is None:
            from studyboard.desk.booth import Booth

            self._booth = Booth(self.session, self.performance, self.look)
            self._booth.played_to.connect(self._show_playback)
            self._booth.hide()
            self._running.addWidget(self._booth)
        return self._booth

    @property
    def recording(self) -> bool:
        """True while a take is being recorded."""
        return self._booth is not None and self._booth.recording

    # ---- stages of the day ------------------------------------------------------------------------------------------

    @property
    def stage(self) -> str:
        """Which stage is shown: "write", "rehearse" or "record"."""
        return self._stage

    def write_stage(self) -> None:
        """Lanes and the spoken line."""
        self._enter("write")
        self.lanes.setFocus()

    def rehearse_stage(self) -> None:
        """The prompter beside the board."""
        self._enter("rehearse")
        self.prompter.setFocus()

    def record_stage(self) -> None:
        """The prompter and the booth beside the board."""
        self._enter("record")
        self.prompter.setFocus()

    def start_or_stop(self) -> None:
        """Begin or end what the stage is for: the rehearsal or the recording."""
        if self.stage == "record":
            self.booth.start_or_stop()
            self.prompter.setFocus()
        elif self.performance.active:
            self.performance.stop()
        else:
            self.performance.start()

    def _enter(self, stage: str) -> None:
        self.line_editor.flush()
        if self.recording and stage != "record":
            self.tell("A take is being recorded: stop it first (Ctrl+Space).")
            self.top_bar.show_stage("record")
            return
        if stage == "write" and self.performance.active:
            self.performance.stop()
        self._stage = stage
        running = stage != "write"
        self._left.setCurrentIndex(1 if running else 0)
        if running:
            self.prompter.show()
        if stage == "record":
            self.booth.show()
        elif self._booth is not None:
            self._booth.hide()
            self._booth.close_down()
        self._line_card.setVisible(not running)
        self.mark_palette.setVisible(not running)
        self.facts.setVisible(not running)
        self.board_view.set_marking(False)
        self.top_bar.show_stage(stage)
        for name in _IN_RUN_THROUGH:
            self.actions_by_name[name].setEnabled(running)
        if not running:
            self.ruler.set_playhead(None)

    # ---- for the commands -------------------------------------------------------------------------------------------

    def tell(self, sentence: str) -> None:
        """Show a sentence over the desk for some seconds."""
        self.notice.tell(sentence)

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
        """Open a study or a PGN file, or say why not."""
        from studyboard.desk.opening import open_path

        path = Path(name)
        if path.resolve() == self.session.file.path.resolve():
            self.tell(f"“{path.name}” is what is on the desk.")
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
            self.tell("A take is being recorded: stop it first (Ctrl+Space).")
            return
        self.line_editor.flush()
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
        self.tell(f"Going on in “{Path(name).name}”.")

    def show_stage(self) -> None:
        """Open the window with only the board."""
        if self._stage_window is None:
            from studyboard.desk.stage import Stage

            self._stage_window = Stage(self.session, self.look)
        self._stage_window.show()
        self._stage_window.raise_()

    def show_prompter(self) -> None:
        """Open the window with only the lines to read."""
        if self._prompter_window is None:
            from studyboard.desk.prompter import Prompter

            window = Prompter(self.session, self.performance, self.look)
            window.setWindowTitle("Prompter")
            window.resize(900, 600)
            window.left.connect(window.close)
            self._prompter_window = window
        self._prompter_window.setStyleSheet(style_sheet(self.look))
        self._prompter_window.show()
        self._prompter_window.refresh()
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
        self.performance.stop()
        if self._booth is not None:
            self._booth.close_down()
        self.settings.setValue("desk/geometry", self.saveGeometry())
        for window in (self._stage_window, self._prompter_window):
            if window is not None:
                window.close()
        self.session.file.close()
        super().closeEvent(event)

    # ---- within -----------------------------------------------------------------------------------------------------

    def _lay_out(self) -> None:
        self._stage = "write"
        running = QWidget()
        self._running = QVBoxLayout(running)
        self._running.setContentsMargins(0, 0, 0, 0)
        self._running.setSpacing(12)
        self._left = QStackedWidget()
        self._left.addWidget(_card(self.lanes, margin=6))
        self._left.addWidget(running)

        board_card = QFrame(objectName="card")
        inside = QHBoxLayout(board_card)
        inside.setContentsMargins(8, 8, 8, 8)
        inside.setSpacing(10)
        inside.addWidget(self.board_view, 1)
        beside = QVBoxLayout()
        beside.setSpacing(8)
        beside.addWidget(self.facts, 1)
        beside.addWidget(self.mark_palette)
        inside.addLayout(beside)
        self.facts.setFixedWidth(_BESIDE)
        self.mark_palette.setFixedWidth(_BESIDE)
        self._line_card = _card(self.line_editor, margin=8)
        self._right = QSplitter(Qt.Orientation.Vertical)
        self._right.addWidget(board_card)
        self._right.addWidget(self._line_card)
        self._right.setStretchFactor(0, 1)
        self._right.setStretchFactor(1, 0)
        self._right.setSizes([400, 180])
        self._right.setChildrenCollapsible(False)
        self._right.setHandleWidth(10)

        self._middle = QSplitter(Qt.Orientation.Horizontal)
        self._middle.addWidget(self._left)
        self._middle.addWidget(self._right)
        self._middle.setStretchFactor(0, 4)
        self._middle.setStretchFactor(1, 3)
        self._middle.setSizes([760, 590])
        self._middle.setChildrenCollapsible(False)
        self._middle.setHandleWidth(12)

        central = QWidget(objectName="paper")
        layout = QVBoxLayout(central)
        layout.setContentsMargins(14, 4, 14, 8)
        layout.setSpacing(8)
        layout.addWidget(self.top_bar)
        layout.addWidget(self.notice)
        layout.addWidget(self._middle, 1)
        layout.addWidget(_card(self.ruler, margin=6))
        self.setCentralWidget(central)

    def _connect(self) -> None:
        session, performance = self.session, self.performance
        session.refused.connect(lambda sentence: self.notice.tell(sentence, stay=True))
        session.opened.connect(self._show_title)
        session.changed.connect(lambda changed: self._show_title() if changed.headers else None)
        session.changed.connect(lambda _: self._enable())
        session.stepped.connect(lambda _: self._enable())
        session.opened.connect(self._enable)
        self.top_bar.chosen.connect(lambda name: getattr(self.commands, name)())
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
        performance.ended.connect(self._run_ended)
        self.look.changed.connect(self._dress)

    def _add_look_menus(self) -> None:
        view = self._menus["&View"]
        view.addSeparator()
        themes = view.addMenu("&Theme")
        for name, label in (("system", "As the &system"), ("light", "&Light"), ("dark", "&Dark")):
            themes.addAction(label, lambda name=name: self.look.choose_theme(name))
        boards = view.addMenu("&Board colours")
        for name in board_palette_names():
            if name != "print":
                label = board_palette(name).title
                boards.addAction(label, lambda name=name: self.look.choose_board(name))

    def _dress(self) -> None:
        QGuiApplication.setPalette(self.look.palette())
        self.setStyleSheet(style_sheet(self.look))
        self.actions_by_name["reduce_motion"].setChecked(self.look.reduced_motion)

    def _enable(self) -> None:
        for name, action in self.actions_by_name.items():
            when = spec_of(name).when
            if when is not None:
                action.setEnabled(when(self.session))
        file = self.session.file
        undo, redo = file.undo_label, file.redo_label
        self.actions_by_name["undo"].setText(f"&Undo: {undo}" if undo else "&Undo")
        self.actions_by_name["redo"].setText(f"&Redo: {redo}" if redo else "&Redo")

    def _show_beginning(self) -> None:
        """The first thing that is said, where that is no move."""
        if self.session.study.line(Part.GREETING).spoken:
            self.lanes.choose_part(Part.GREETING)

    def _show_title(self) -> None:
        self.setWindowTitle(f"{title(self.session)} – Studyboard")
        self.setWindowFilePath(str(self.session.file.path))

    def _show_beat(self, index: int) -> None:
        stretches = self.session.timeline.stretches
        if not 0 <= index < len(stretches):
            return
        stretch = stretches[index]
        self.session.show(stretch.node)
        if isinstance(stretch.key, Part):
            self.lanes.choose_part(stretch.key)

    def _show_progress(self) -> None:
        """The playhead of a run-through: as far into its beat as that has been told."""
        run = self.performance.run
        if not self.performance.active or not run.beats:
            return
        start = sum(run.planned[: run.beat])
        self.ruler.set_playhead(start + min(run.planned[run.beat], run.beat_seconds(run.beat)))

    def _run_ended(self) -> None:
        self.ruler.set_playhead(None)
        run = self.performance.run
        if self.stage == "rehearse" and run.begun:
            from studyboard.timing.clock import clock, over_or_under

            told = run.elapsed
            against = "" if run.slot is None else f", {over_or_under(told - run.slot)}"
            self.tell(f"Rehearsed in {clock(told)}{against}. The seconds of each beat are kept beside the plan.")

    def _show_playback(self, played: object) -> None:
        if not isinstance(played, tuple):
            self.ruler.set_playhead(None)
            return
        _, seconds = played
        self.ruler.set_playhead(seconds)

    def _lanes_menu(self, node: int, where: QPoint) -> None:
        self.session.show(node)
        menu = QMenu(self)
        for group in _MENU_OF_LANES:
            for name in group:
                menu.addAction(self.actions_by_name[name])
            menu.addSeparator()
        menu.exec(where)

    def _fill_recent(self) -> None:
        self._recent_menu.clear()
        for path in recent_files():
            self._recent_menu.addAction(path.stem, lambda path=path: self.open_path(path))
        self._recent_menu.setEnabled(True)
        if self._recent_menu.isEmpty():
            self._recent_menu.addAction("Nothing yet").setEnabled(False)

    def _tell_recovered(self) -> None:
        recovered = self.session.file.recovered
        if recovered:
            names = ", ".join(take.name for take in recovered)
            self.notice.tell(
                f"The last recording was cut off. {names} was kept up to its last second; it is in the booth.",
                stay=True,
            )

    def tell_problems(self, opened: Opened) -> None:
        """Say what of the game could not be read."""
        problems = opened.problems
        if not problems:
            return
        first = problems[0]
        where = f"line {first.line}, column {first.column}"
        if len(problems) == 1:
            self.notice.tell(f"One place of the game could not be read ({where}): {first.message}", stay=True)
            return
        from studyboard.desk import help_texts

        rows = "".join(f"<tr><td>{p.line}:{p.column}</td><td>{p.message}</td></tr>" for p in problems)
        self.notice.tell(
            f"{len(problems)} places of the game could not be read; the first at {where}: {first.message}",
            stay=True,
            details=lambda: help_texts.show_text(self, "What could not be read", f"<table>{rows}</table>"),
        )


def _card(widget: QWidget, *, margin: int) -> QFrame:
    card = QFrame(objectName="card")
    layout = QVBoxLayout(card)
    layout.setContentsMargins(margin, margin, margin, margin)
    layout.addWidget(widget)
    return card
