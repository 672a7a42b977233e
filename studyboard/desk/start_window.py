"""The window of the first start: the tour, a game, or an empty board."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtSvgWidgets import QSvgWidget
from PySide6.QtWidgets import QDialog, QFileDialog, QLabel, QPushButton, QVBoxLayout, QWidget

from studyboard.desk.acting_button import ActingButton
from studyboard.desk.folders import studies_folder
from studyboard.desk.look import Look
from studyboard.desk.opening import Opened, new_study, open_path
from studyboard.desk.style_sheet import style_sheet
from studyboard.example import example_study
from studyboard.model.errors import StudyboardError
from studyboard.model.study import Study
from studyboard.resources_path import resource
from studyboard.store.recent import recent_files
from studyboard.store.study_file import StudyFile
from studyboard.translation import tr

_RECENT_SHOWN = 5


class StartWindow(QDialog):
    """Asks what to begin with.

    opened: carries the Opened study; the window is closed then
    """

    opened = Signal(object)

    def __init__(self, look: Look, problem: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Studyboard")
        self.setAcceptDrops(True)
        self.setStyleSheet(style_sheet(look))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(32, 28, 32, 28)
        layout.setSpacing(10)
        icon = QSvgWidget(str(resource("icon.svg")))
        icon.setFixedSize(72, 72)
        layout.addWidget(icon, 0, Qt.AlignmentFlag.AlignHCenter)
        heading = QLabel(tr("What will you tell today?"))
        heading.setFont(look.spoken_font(1.8))
        heading.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        heading.setWordWrap(True)
        layout.addWidget(heading)
        layout.addSpacing(8)
        self.game_button = self._button(tr("Open a game or study…"), self._choose, primary=True)
        self.tour_button = self._button(tr("Take the tour: a finished talk"), self._tour)
        self.empty_button = self._button(tr("Begin with an empty board"), self._empty)
        for button in (self.game_button, self.tour_button, self.empty_button):
            layout.addWidget(button)
        recent = recent_files()[:_RECENT_SHOWN]
        if recent:
            layout.addSpacing(10)
            label = QLabel(tr("Or go on with"))
            label.setObjectName("quiet")
            layout.addWidget(label)
            for path in recent:
                layout.addWidget(self._button(path.stem, lambda path=path: self._open(path)))
        self.problem = QLabel(problem or tr("A PGN file can be dropped here too."))
        self.problem.setWordWrap(True)
        self.problem.setAccessibleName(tr("What went wrong"))
        self.problem.setObjectName("quiet")
        layout.addSpacing(6)
        layout.addWidget(self.problem)
        width = max(460, 30 * self.fontMetrics().height())
        screen = self.screen().availableSize()
        self.resize(QSize(width, layout.totalHeightForWidth(width)).boundedTo(screen * 0.95))

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Studies and PGN files can be dropped."""
        if event.mimeData().hasUrls() and event.mimeData().urls()[0].isLocalFile():
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Open what is dropped."""
        event.acceptProposedAction()
        self._open(Path(event.mimeData().urls()[0].toLocalFile()))

    def _button(self, label: str, act: object, *, primary: bool = False) -> QPushButton:
        button = QPushButton(label) if primary else ActingButton(label)
        button.setProperty("primary", primary)
        button.setMinimumHeight(36)
        button.clicked.connect(lambda: act())  # type: ignore[operator]
        return button

    def _choose(self) -> None:
        kinds = tr("Studies and games (*.studyboard *.pgn);;All files (*)")
        name, _ = QFileDialog.getOpenFileName(self, tr("Open"), str(Path.home()), kinds)
        if name:
            self._open(Path(name))

    def _open(self, path: Path) -> None:
        self._finish(lambda: open_path(path, self))

    def _tour(self) -> None:
        self._finish(lambda: Opened(tour_file()))

    def _empty(self) -> None:
        self._finish(lambda: Opened(new_study(Study())))

    def _finish(self, make: object) -> None:
        try:
            opened = make()  # type: ignore[operator]
        except StudyboardError as reason:
            self.problem.setText(str(reason))
            return
        if opened is not None:
            self.opened.emit(opened)
            self.accept()


def tour_file() -> StudyFile:
    """The example as a study of the user's own, to be tried out; made anew where it is missing.

    Raises StudyboardError where it cannot be stored or is open already.
    """
    try:
        path = studies_folder() / "Tour.studyboard"
    except OSError as reason:
        raise StudyboardError(
            tr("The folder for studies cannot be made: {reason}.", reason=reason.strerror or reason)
        ) from reason
    return StudyFile.open(path) if path.exists() else StudyFile.create(path, example_study())
