"""What to leave out so that the talk meets its slot, to be taken out of it line by line."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt, QThreadPool, Signal
from PySide6.QtWidgets import QDialog, QHBoxLayout, QLabel, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from studyboard.desk.acting_button import ActingButton
from studyboard.desk.session import Session
from studyboard.desk.work_beside import WorkBeside
from studyboard.model.edits import Edit, Several
from studyboard.model.errors import StudyboardError
from studyboard.model.study import Study
from studyboard.notation.labels import move_label
from studyboard.timing.clock import over_or_under
from studyboard.timing.cuts import Cut, suggested_cuts, tie_words
from studyboard.translation import tr, tr_later


class CutsWindow(QDialog):
    """Lists the side-lines that are told, the best to leave out first; Enter leaves one out, undo brings it back.

    State: the cuts as they were last found, and the number of the search that is going on.

    found: a search is over; carries its number and the cuts, or a sentence; comes from another thread
    """

    found = Signal(int, object)

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._cuts: tuple[Cut, ...] = ()
        self._search = 0
        self.setWindowTitle(tr("Suggested cuts"))
        line = self.fontMetrics().height()
        self.resize(QSize(36 * line, 26 * line).boundedTo(self.screen().availableSize() * 0.95))
        self.told = QLabel("")
        self.told.setObjectName("heading")
        self.told.setWordWrap(True)
        about = QLabel(
            tr(
                "Side-lines by the seconds they take and by how little depends on them. What is left out stays on the "
                "tree and in print."
            )
        )
        about.setObjectName("quiet")
        about.setWordWrap(True)
        self.list = QListWidget()
        self.list.setAccessibleName(tr("Side-lines to leave out, the best first"))
        self.list.setWordWrap(True)
        self.list.setSpacing(3)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.cut_button = ActingButton(tr("Leave it out"))
        self.all_button = ActingButton(tr("Leave out what it takes"))
        self.all_button.setToolTip(tr("All that are marked with a star, in one step"))
        self.undo_button = ActingButton(tr("Undo"))
        close = ActingButton(tr("Close"))
        foot = QHBoxLayout()
        foot.addWidget(self.cut_button)
        foot.addWidget(self.all_button)
        foot.addWidget(self.undo_button)
        foot.addStretch(1)
        foot.addWidget(close)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(20, 18, 20, 18)
        layout.setSpacing(10)
        layout.addWidget(self.told)
        layout.addWidget(about)
        layout.addWidget(self.list, 1)
        layout.addLayout(foot)
        self.cut_button.clicked.connect(self.cut)
        self.all_button.clicked.connect(self.cut_enough)
        self.undo_button.clicked.connect(self._session.undo)
        close.clicked.connect(self.close)
        self.list.itemActivated.connect(lambda _: self.cut())
        self.list.currentRowChanged.connect(self._show)
        self.found.connect(self._fill)
        session.changed.connect(self._look)
        self._show()
        self._look()

    def cut(self) -> None:
        """Leave the chosen side-line out of the talk."""
        cut = self._chosen()
        if cut is not None:
            self._session.do(cut.edit)

    def cut_enough(self) -> None:
        """Leave out as many as bring the talk under its slot."""
        edits: tuple[Edit, ...] = tuple(cut.edit for cut in self._cuts if cut.enough)
        if edits:
            self._session.do(Several(edits, tr_later("Leave side-lines out of the talk")))

    def _chosen(self) -> Cut | None:
        row = self.list.currentRow()
        return self._cuts[row] if 0 <= row < len(self._cuts) else None

    def _look(self) -> None:
        """Search anew, beside the desk's thread."""
        self._search += 1
        number, study = self._search, self._session.study.snapshot()
        self.undo_button.setEnabled(self._session.file.can_undo)
        QThreadPool.globalInstance().start(WorkBeside(lambda: self.found.emit(number, _cuts_of(study))))

    def _fill(self, number: int, found: tuple[Cut, ...] | str) -> None:
        if number != self._search:
            return
        row = max(0, self.list.currentRow())
        self._cuts = () if isinstance(found, str) else found
        self.list.clear()
        positions = self._session.positions
        for cut in self._cuts:
            ties = " ".join(tie_words(positions, tie) for tie in cut.ties) or tr("Nothing depends on it.")
            move = move_label(positions, cut.start)
            beats = tr("1 beat") if cut.beats == 1 else tr("{beats} beats", beats=cut.beats)
            gain = tr("{seconds:.0f} s", seconds=cut.seconds)
            star = "★ " if cut.enough else ""
            self.list.addItem(QListWidgetItem(f"{star}{move} · {gain} · {beats}\n{ties}"))
        self.list.setCurrentRow(min(row, self.list.count() - 1))
        self.told.setText(found if isinstance(found, str) else self._summary())
        self._show()

    def _summary(self) -> str:
        study = self._session.study
        if study.slot is None:
            return tr("No slot is set (Ctrl+T), so nothing says how much to leave out.")
        over = self._session.timeline.seconds - study.slot
        stars = [cut for cut in self._cuts if cut.enough]
        if not stars:
            return tr("The talk is {distance}.", distance=over_or_under(over))
        left = over - sum(cut.seconds for cut in stars)
        return tr(
            "The talk is {distance}; without those with a star it is {left}.",
            distance=over_or_under(over),
            left=over_or_under(left),
        )

    def _show(self) -> None:
        self.cut_button.setEnabled(self._chosen() is not None)
        self.all_button.setEnabled(any(cut.enough for cut in self._cuts))


def _cuts_of(study: Study) -> tuple[Cut, ...] | str:
    try:
        return suggested_cuts(study)
    except StudyboardError as reason:
        return str(reason)
