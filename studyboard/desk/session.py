"""The study that is open on the desk, announcing its changes to the windows that show it."""

from __future__ import annotations

from collections.abc import Callable, Generator, Iterable
from pathlib import Path
from time import thread_time

import chess
from PySide6.QtCore import QObject, QTimer, Signal

from studyboard.model.beats import Beat, beats
from studyboard.model.edits import Edit, add_move, try_move
from studyboard.model.errors import EditRefusedError, StudyboardError
from studyboard.model.order import running_order
from studyboard.model.positions import Positions
from studyboard.model.script import BeatKey
from studyboard.model.study import Changed, Study
from studyboard.store.study_file import StudyFile
from studyboard.timing.planner import Plan, Planner
from studyboard.timing.timeline import Timeline

#: How long edits must rest before the talk is timed again (ms).
_PLAN_REST = 120
#: How long the first piece of that work, and each other one, may take of the processor before the desk listens to its
#: keys again (s): a talk of a common length is planned in the first.
_FIRST, _SLICE = 0.020, 0.008


class Session(QObject):
    """One open study.

    State: the study file, the node that is shown, the rows of the script that are chosen together, the plan of the
    talk (made anew after edits have rested, piece by piece), and whether moves that are played are only tried: they
    come onto the tree, but not into the talk.
    `before_playing` is asked before a move is played, and returns True where it has done so in its own way.
    Widgets take a Session, listen to its signals, and change the study only through `do`.

    opened: another study has been opened
    changed: an edit was applied, taken back or done again; carries what was touched
    stepped: another node is shown; carries its id
    chose: other rows are chosen together, or none any more
    planned: the timeline has been made anew
    refused: something could not be done; carries a sentence for the user
    """

    opened = Signal()
    changed = Signal(object)
    stepped = Signal(int)
    chose = Signal()
    planned = Signal()
    refused = Signal(str)

    def __init__(self, file: StudyFile, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._file = file
        self._positions = Positions(file.study)
        self._node = file.study.root
        self._chosen: frozenset[BeatKey] = frozenset()
        self.trying = False
        self.before_playing: Callable[[chess.Move], bool] | None = None
        self._planner = Planner()
        self._plan: Plan | None = None
        self._planning: Generator[None, None, Plan] | None = None
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(_PLAN_REST)
        self._rest.timeout.connect(self.plan_now)
        self._go_on = QTimer(self)
        self._go_on.setSingleShot(True)
        self._go_on.timeout.connect(lambda: self._plan_on())

    @property
    def file(self) -> StudyFile:
        """The study file on disk; every edit goes through it."""
        return self._file

    @property
    def study(self) -> Study:
        """The study, to be read."""
        return self._file.study

    @property
    def positions(self) -> Positions:
        """The boards of the study's nodes."""
        return self._positions

    @property
    def node(self) -> int:
        """Id of the node that is shown."""
        return self._node

    @property
    def chosen(self) -> frozenset[BeatKey]:
        """Several rows of the script that are chosen together; empty where it is only the one that is shown."""
        return self._chosen

    @property
    def board(self) -> chess.Board:
        """The position that is shown, to be read."""
        return self._positions.board(self._node)

    @property
    def plan(self) -> Plan:
        """The plan of the talk as the study is now; what is still missing of it is done at once."""
        self._plan_until(lambda: False)
        assert self._plan is not None
        return self._plan

    @property
    def timeline(self) -> Timeline:
        """The planned timeline of the study as it is now."""
        return self.plan.timeline

    @property
    def beats(self) -> tuple[Beat, ...]:
        """The stops of the talk as the study is now, in the running order; the talk need not be timed for them."""
        return self.plan.beats if self.is_planned else beats(self.study, running_order(self.study))

    @property
    def is_planned(self) -> bool:
        """True where the plan needs no more work."""
        return self._plan is not None

    def plan_now(self) -> None:
        """Make the plan and announce it: at once where that takes a moment, else piece by piece beside the keys."""
        self._rest.stop()
        self._plan_on(_FIRST)

    def open(self, file: StudyFile) -> None:
        """Show another study; the old file is closed."""
        old, self._file = self._file, file
        self._positions = Positions(file.study)
        self._node = file.study.root
        self._chosen = frozenset()
        self._forget_plan()
        self._planner = Planner()
        if old is not file:
            old.close()
        self.opened.emit()
        self.stepped.emit(self._node)
        self.plan_now()

    def show(self, node: int | None) -> None:
        """Show this node, and choose no others; nothing happens for None or the node that is shown already."""
        if node is None or node == self._node or node not in self.study.nodes:
            return
        self.choose(())
        self._node = node
        self.stepped.emit(node)

    def choose(self, rows: Iterable[BeatKey]) -> None:
        """Choose these rows together, the one that is shown among them, or with none only that one."""
        chosen = frozenset(rows)
        if chosen != self._chosen:
            self._chosen = chosen
            self.chose.emit()

    def do(self, edit: Edit) -> bool:
        """Apply an edit and store it; where it is refused, say why and return False."""
        try:
            self._announce(self._file.do(edit))
        except StudyboardError as reason:
            self.refused.emit(str(reason))
            return False
        return True

    def keep(self, edit: Edit) -> bool:
        """As `do`, but undo passes it by: takes and rehearsals have happened."""
        try:
            self._announce(self._file.keep(edit))
        except StudyboardError as reason:
            self.refused.emit(str(reason))
            return False
        return True

    def attempt(self, make: Callable[..., Edit], *arguments: object) -> bool:
        """Do the edit that `make(study, *arguments)` returns; where it is refused, say why and return False."""
        try:
            edit = make(self.study, *arguments)
        except EditRefusedError as reason:
            self.refused.emit(str(reason))
            return False
        return self.do(edit)

    def undo(self) -> None:
        """Take the last edit back, and show where it was."""
        if self._file.can_undo:
            self._replay(self._file.undo)

    def redo(self) -> None:
        """Do again what was taken back, and show where."""
        if self._file.can_redo:
            self._replay(self._file.redo)

    def travel(self, edits: int) -> None:
        """Undo or redo until that many edits of the history are done."""
        done = sum(entry.done for entry in self._file.history())
        for _ in range(done, edits, -1):
            self.undo()
        for _ in range(done, edits):
            self.redo()

    def play(self, move: chess.Move) -> None:
        """Play a legal move on the shown position: step to it where it is on the tree, else add it there."""
        if not self.trying and self.before_playing is not None and self.before_playing(move):
            return
        child = self._positions.child_by_move(self._node, move)
        if child is None:
            edit, child = self._adding(move)
            if not self.do(edit):
                return
        self.show(child)

    def _adding(self, move: chess.Move) -> tuple[Edit, int]:
        if self.trying:
            return try_move(self.study, self._node, move)
        added = add_move(self.study, self._node, move)
        return added, added.node

    def save_as(self, path: Path) -> None:
        """Go on with a copy of the study under another name; a file that has it already is replaced."""
        copy = self._file.save_as(path, overwrite=True)
        node = self._node
        self.open(copy)
        self.show(node)

    def _replay(self, step: Callable[[], Changed]) -> None:
        try:
            changed = step()
        except StudyboardError as reason:
            self.refused.emit(str(reason))
            return
        self._announce(changed)
        there = sorted(changed.nodes & self.study.nodes.keys())
        if there and self._node not in there:
            # Of a branch that came back, its first move; of a change, the node itself.
            inside = (node for node in there if self.study.nodes[node].parent in changed.nodes)
            self.show(next(inside, there[0]))

    def _announce(self, changed: Changed) -> None:
        self._forget_plan()
        if any(key in changed.nodes and key not in self.study.nodes for key in self._chosen):
            self.choose(())
        if self._node not in self.study.nodes:
            shown = next((n for n in sorted(changed.nodes) if n in self.study.nodes), self.study.root)
            self._node = shown
            self.changed.emit(changed)
            self.stepped.emit(shown)
        else:
            self.changed.emit(changed)
        self._rest.start()

    def _forget_plan(self) -> None:
        self._plan = self._planning = None
        self._go_on.stop()

    def _plan_until(self, enough: Callable[[], bool]) -> bool:
        """Go on with the plan; True where it is made, False where it was enough before."""
        if self._plan is not None:
            return True
        self._planning = self._planning or self._planner.steps(self.study)
        try:
            while True:
                next(self._planning)
                if enough():
                    return False
        except StopIteration as done:
            self._plan, self._planning = done.value, None
        return True

    def _plan_on(self, seconds: float = _SLICE) -> None:
        if self._plan is None:
            until = thread_time() + seconds
            self._plan_until(lambda: thread_time() > until)
            # What is made of a long plan comes in a turn of its own.
            if self._plan is None or thread_time() > until:
                self._go_on.start()
                return
        self.planned.emit()
