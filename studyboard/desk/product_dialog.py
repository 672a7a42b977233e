"""The dialog in which one product of a delivery is chosen in detail, and looked at where it is a picture."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Any, Final

from PySide6.QtCore import QSize, QThreadPool, QTimer, Signal
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QStyle,
    QVBoxLayout,
    QWidget,
)

from studyboard.delivery.items import PRODUCTS
from studyboard.delivery.product import Item
from studyboard.delivery.still_options import StillDesign, StillOptions
from studyboard.desk.dialog_buttons import DialogButtons
from studyboard.desk.picture_pane import PicturePane
from studyboard.desk.product_choices import ProductChoices
from studyboard.desk.session import Session
from studyboard.desk.video_preview import VideoPreview
from studyboard.desk.work_beside import WorkBeside
from studyboard.desk.yielding import Yielding
from studyboard.model.errors import StudyboardError
from studyboard.model.study import Study
from studyboard.notation.labels import move_label
from studyboard.timing.recorded import talk
from studyboard.translation import tr, tr_later

#: How long choices rest before they are shown (ms).
_REST = 200
_PAGE_PPI = 80.0


@dataclass(frozen=True, slots=True)
class _Preview:
    """What is shown of a product.

    make: its pictures, made beside the desk's thread
    name: what the pictures are called, with their {number} from 1; or a name for each
    field: the option that is set when one of them is chosen, to the value in its place; empty where none is
    """

    make: Callable[[Study, Any], list[bytes]]
    name: str | tuple[str, ...]
    field: str = ""
    values: tuple[Any, ...] = ()

    def names(self, count: int) -> list[str]:
        """What to call so many pictures."""
        if isinstance(self.name, str):
            return [tr(self.name, number=number + 1) for number in range(count)]
        return [tr(name) for name in self.name[:count]]


def _pages(study: Study, options: Any) -> list[bytes]:
    from studyboard.delivery.sheet import sheet_pictures

    return sheet_pictures(study, options=options, ppi=_PAGE_PPI)


def _stills(study: Study, options: StillOptions) -> list[bytes]:
    from studyboard.delivery.still import still_pictures

    shape = options.shape.each[0]
    designs = (replace(options, design=design, shape=shape) for design in StillDesign)
    return [still_pictures(study, options=one)[0].png for one in designs]


_PREVIEWS: Final[Mapping[Item, _Preview]] = MappingProxyType(
    {
        Item.SHEET: _Preview(_pages, tr_later("Page {number}")),
        Item.STILL: _Preview(
            _stills,
            (tr_later("Whole board"), tr_later("Band"), tr_later("Corner")),
            "design",
            tuple(StillDesign),
        ),
    }
)


class ProductDialog(QDialog):
    """Choices on the left and, of sheet, still and video, what comes of them on the right.

    State: which preview is the newest; what comes of older ones is thrown away. `options` is what was chosen when the
    dialog was accepted.
    """

    _made = Signal(int, object, str)

    def __init__(self, item: Item, options: Any, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._product = PRODUCTS[item]
        self._preview = _PREVIEWS.get(item)
        self.options = options
        self.setWindowTitle(tr("Options of “{product}”", product=tr(self._product.title)))
        self.choices = ProductChoices(self._product, options)
        if "at" in self.choices.fields:
            here = move_label(session.positions, session.node) if session.node != session.study.root else ""
            self.choices.add_beside("at", self._here(here), here)
        self.problem = QLabel("")
        self.problem.setObjectName("over")
        self.problem.setWordWrap(True)
        left = QVBoxLayout()
        choices = Yielding(self.choices)
        self.choices.ensurePolished()
        # With large text they are wider than a scrolling pane asks for; they scroll only upwards.
        bar = self.style().pixelMetric(QStyle.PixelMetric.PM_ScrollBarExtent)
        width = self.choices.minimumSizeHint().width() + bar
        choices.setMinimumWidth(min(width, self.screen().availableSize().width() // 2))
        left.addWidget(choices, 1)
        left.addWidget(self.problem)
        body = QHBoxLayout()
        body.setSpacing(18)
        body.addLayout(left, 2)
        self.pane: PicturePane | None = None
        if self._preview is not None:
            self.pane = PicturePane(tr("Preview"))
            self.pane.chosen.connect(self._take_picture)
            body.addWidget(self.pane, 3)
        self.video: VideoPreview | None = None
        if item is Item.VIDEO:
            study = session.study.snapshot()
            timeline = talk(study)
            # Where the desk stands at the start, a card would be seen.
            at = next((one.at for one in timeline.events if one.node == session.node), 0.0) or timeline.seconds / 3
            self.video = VideoPreview(study, timeline, self.choices.options, at)
            body.addWidget(self.video, 3)
        buttons = DialogButtons(
            QDialogButtonBox.StandardButton.Ok
            | QDialogButtonBox.StandardButton.Cancel
            | QDialogButtonBox.StandardButton.RestoreDefaults
        )
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        usual = buttons.button(QDialogButtonBox.StandardButton.RestoreDefaults)
        usual.setText(tr("As usual"))
        usual.clicked.connect(lambda: self.choices.show_options(self._product.options()))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(20, 18, 20, 18)
        layout.addLayout(body, 1)
        layout.addWidget(buttons)
        self._number = 0
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(_REST)
        self._rest.timeout.connect(self._look)
        self._made.connect(self._take)
        self.choices.changed.connect(self._changed)
        if self.video is not None:
            self._rest.timeout.connect(self.video.refresh)
        if self._preview is not None or self.video is not None:
            self.resize(QSize(900, 600).expandedTo(self.sizeHint()).boundedTo(self.screen().availableSize()))
        self._look()

    def accept(self) -> None:
        """Take over what is chosen, or say why it cannot be."""
        try:
            self.options = self.choices.options()
        except StudyboardError as reason:
            self.problem.setText(str(reason))
            return
        super().accept()

    def done(self, result: int) -> None:
        """However the dialog is left, nothing is made for it any more."""
        self._rest.stop()
        if self.video is not None:
            self.video.finish()
        self._number += 1
        self._pool.clear()
        self._pool.waitForDone()
        super().done(result)

    @staticmethod
    def _here(label: str) -> QPushButton:
        button = QPushButton(tr("As on the board"))
        button.setToolTip(tr("The position that stands on the desk now"))
        button.setEnabled(bool(label))
        return button

    def _changed(self) -> None:
        self._rest.start()

    def _look(self) -> None:
        """Make the preview anew, beside the desk's thread."""
        try:
            options = self.choices.options()
        except StudyboardError as reason:
            self.problem.setText(str(reason))
            return
        self.problem.setText("")
        preview = self._preview
        if preview is None or self.pane is None:
            return
        self._number += 1
        number, study = self._number, self._session.study.snapshot()
        self.pane.status.setText(tr("Being made …"))

        def work() -> None:
            try:
                pictures, reason = preview.make(study, options), ""
            except StudyboardError as problem:
                pictures, reason = [], str(problem)
            except Exception as problem:
                pictures, reason = [], tr("There is no preview: {reason}.", reason=problem)
            self._made.emit(number, pictures, reason)

        self._pool.clear()
        self._pool.start(WorkBeside(work))

    def _take(self, number: int, pictures: list[bytes], reason: str) -> None:
        preview = self._preview
        if number != self._number or preview is None or self.pane is None:
            return
        self.problem.setText(reason)
        current = None
        if preview.field:
            current = preview.values.index(getattr(self.choices.options(), preview.field))
        self.pane.show_pictures(pictures, preview.names(len(pictures)), current)

    def _take_picture(self, row: int) -> None:
        if self._preview is not None and self._preview.field:
            self.choices.choose(self._preview.field, self._preview.values[row])
