"""What the actions of the menu “Lines” do."""

from __future__ import annotations

from PySide6.QtWidgets import QInputDialog

from studyboard.desk.command_group import CommandGroup
from studyboard.model import chosen_rows, edits
from studyboard.model.node import Place, Telling
from studyboard.model.script import Part
from studyboard.notation.labels import move_label
from studyboard.translation import tr, tr_later


class LinesCommands(CommandGroup):
    """One method for each action of that menu, named as it."""

    def promote(self) -> None:
        """One step towards the main line."""
        self._session.attempt(edits.promote, self._session.node)

    def demote(self) -> None:
        """One step away from it."""
        self._session.attempt(edits.demote, self._session.node)

    def make_main_line(self) -> None:
        """All the way to the main line."""
        self._session.attempt(edits.make_main_line, self._session.node)

    def name_side_line(self) -> None:
        """Ask for the heading of the lane."""
        start = self._session.study.node(self._session.study.line_start(self._session.node))
        name, given = QInputDialog.getText(
            self._window, tr("Name the side-line"), tr("Heading of its lane"), text=start.name
        )
        if given:
            self._session.do(edits.ChangeNode(start.id, "name", name.strip(), tr_later("Name a side-line")))

    def tell_after(self) -> None:
        """The usual place."""
        self._tell(Telling())

    def tell_before(self) -> None:
        """Before the main move."""
        self._tell(Telling(Place.BEFORE))

    def hide_side_line(self) -> None:
        """Out of the talk; it stays on the tree and in print."""
        self._tell(Telling(Place.HIDDEN))

    def tell_later(self) -> None:
        """Ask after which main move it is told."""
        study = self._session.study
        start = study.line_start(self._session.node)
        inside = {node.id for node in study.branch(start)}
        branching = study.node(start).parent
        assert branching is not None
        choices = [node for node in study.main_line(branching) if node not in inside and node != branching]
        labels = [move_label(self._session.positions, node) for node in choices]
        if not choices:
            self._window.tell(tr("There is no later move after which it could be told."))
            return
        label, given = QInputDialog.getItem(
            self._window, tr("Tell the side-line later"), tr("After the move"), labels, editable=False
        )
        if given:
            later = Telling(Place.MOVED, choices[labels.index(label)])
            self._session.attempt(chosen_rows.tell_chosen, (start,), later)

    def _tell(self, telling: Telling) -> None:
        rows = self._window.lanes.choosing.rows
        if all(isinstance(row, Part) for row in rows):
            rows = (self._session.node,)
        self._session.attempt(chosen_rows.tell_chosen, rows, telling)
