"""The delivery window: what to publish, where to, and how far it is."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from threading import Event
from typing import Any

from PySide6.QtCore import QObject, QSettings, QSize, Qt, QThread, QUrl, Signal
from PySide6.QtGui import QCloseEvent, QDesktopServices
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialog,
    QFileDialog,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QListWidget,
    QProgressBar,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from studyboard.delivery.deliver import Delivered, deliver
from studyboard.delivery.errors import DeliveryCancelledError
from studyboard.delivery.items import PRODUCTS
from studyboard.delivery.product import Item
from studyboard.desk.product_choices import remember_options, remembered_options
from studyboard.desk.product_dialog import ProductDialog
from studyboard.desk.session import Session
from studyboard.desk.yielding import Yielding
from studyboard.model.errors import StudyboardError
from studyboard.model.study import Study
from studyboard.sound.levelling import TARGETS
from studyboard.sound.narration import TalkNarration
from studyboard.store.sound import TakeSound
from studyboard.timing.clock import clock
from studyboard.timing.recorded import recorded_talk, talk
from studyboard.timing.timeline import Source
from studyboard.translation import tr, tr_later


class _Delivery(QThread):
    """One delivery, off the window's thread.

    progressed: carries the item and the share that is done (0.0 to 1.0)
    """

    progressed = Signal(str, float)

    def __init__(
        self,
        study: Study,
        to: Path,
        items: frozenset[Item],
        options: Mapping[Item, Any],
        narration: TalkNarration | None,
        parent: QObject,
    ) -> None:
        super().__init__(parent)
        self._narration = narration
        self._study, self._to, self._items, self._options = study, to, items, options
        self.stop = Event()
        self.delivered: list[Delivered] = []
        self.remarks: list[str] = []
        self.problem = ""
        self.cancelled = False

    def run(self) -> None:
        """Deliver; what came of it is in the attributes."""
        try:
            self.delivered = deliver(
                self._study,
                self._to,
                self._items,
                timeline=talk(self._study),
                options=self._options,
                narration=self._narration,
                progress=lambda item, _, share: self.progressed.emit(str(item), share),
                cancelled=self.stop.is_set,
                remark=self.remarks.append,
            )
        except DeliveryCancelledError as reason:
            self.cancelled, self.problem = True, str(reason)
        except StudyboardError as reason:
            self.problem = str(reason)
        except Exception as reason:
            self.problem = tr("The delivery failed: {reason}. Nothing was changed.", reason=reason)


_LOUDNESS = {
    "-18": tr_later("−18 LUFS, for online (AES TD1008); peaks under −1 dBTP"),
    "-23": tr_later("−23 LUFS, for broadcasting (EBU R 128); peaks under −1 dBTP"),
    "as-spoken": tr_later("As it was spoken"),
}
#: Least width of what stands in the window (px).
_WIDTH = 580


class DeliverWindow(QDialog):
    """Chooses, delivers with progress, can be stopped, and opens the folder."""

    def __init__(self, session: Session, settings: QSettings | None = None, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._settings = settings
        self._work: _Delivery | None = None
        self._sound: TakeSound | None = None
        self.setWindowTitle(tr("Deliver"))
        self.checks: dict[Item, QCheckBox] = {}
        #: How each product is to be.
        self.options = {item: remembered_options(settings, product) for item, product in PRODUCTS.items()}
        self.option_buttons: dict[Item, QPushButton] = {}
        layout = QVBoxLayout(self)
        layout.setContentsMargins(20, 18, 20, 18)
        layout.setSpacing(10)
        layout.addWidget(self._heading())
        products = self._products()
        layout.addWidget(Yielding(products), 1)
        self.folder = QLineEdit(str(self._default_folder()))
        self.folder.setAccessibleName(tr("Folder to write into"))
        choose = QPushButton(tr("Choose…"))
        choose.clicked.connect(self._choose)
        where = QHBoxLayout()
        where.addWidget(QLabel(tr("Into")))
        where.addWidget(self.folder, 1)
        where.addWidget(choose)
        layout.addLayout(where)
        layout.addLayout(self._loudness_row())
        self.bar = QProgressBar()
        self.bar.setRange(0, 1000)
        self.bar.setTextVisible(False)
        # A least width of the window itself would let larger text and longer languages be cut.
        self.bar.setMinimumWidth(_WIDTH)
        self.bar.setAccessibleName(tr("Progress of the delivery"))
        self.status = QLabel(tr("Names, photographs and sponsors' material are the publisher's responsibility."))
        self.status.setObjectName("quiet")
        self.status.setWordWrap(True)
        self.files = QListWidget()
        self.files.setAccessibleName(tr("What was delivered"))
        self.files.setMaximumHeight(110)
        self.files.hide()
        self.files.itemActivated.connect(lambda item: _open(Path(item.data(Qt.ItemDataRole.UserRole))))
        layout.addWidget(self.bar)
        layout.addWidget(self.status)
        layout.addWidget(self.files)
        self.deliver_button = QPushButton(tr("Deliver"))
        self.deliver_button.setDefault(True)
        self.deliver_button.clicked.connect(self.deliver)
        self.stop_button = QPushButton(tr("Stop"))
        self.stop_button.setEnabled(False)
        self.stop_button.clicked.connect(self.stop)
        self.open_button = QPushButton(tr("Open the folder"))
        self.open_button.setEnabled(False)
        self.open_button.clicked.connect(lambda: _open(Path(self.folder.text())))
        close = QPushButton(tr("Close"))
        close.clicked.connect(self.close)
        foot = QHBoxLayout()
        foot.addWidget(self.open_button)
        foot.addStretch(1)
        foot.addWidget(self.stop_button)
        foot.addWidget(self.deliver_button)
        foot.addWidget(close)
        layout.addLayout(foot)
        # By itself a dialog opens no higher than two thirds of the screen, which cuts large text.
        width = self.sizeHint().width()
        inside = products.sizeHint().expandedTo(QSize(width - 40, 0)).width()
        height = layout.totalMinimumSize().height() + products.heightForWidth(inside)
        self.resize(QSize(width, height).boundedTo(self.screen().availableSize()))

    def _loudness_row(self) -> QHBoxLayout:
        """How loud the voice is published; without a take there is none."""
        self.loudness = QComboBox()
        for name in TARGETS:
            self.loudness.addItem(tr(_LOUDNESS[name]), name)
        chosen = "-18" if self._settings is None else str(self._settings.value("deliver/loudness", "-18"))
        self.loudness.setCurrentIndex(max(0, self.loudness.findData(chosen)))
        label = QLabel(tr("&Voice"))
        label.setBuddy(self.loudness)
        self.loudness.setAccessibleName(tr("Loudness of the voice"))
        self.loudness.setToolTip(tr("What is recorded is never changed: only what is delivered."))
        self.loudness.setEnabled(recorded_talk(self._session.study) is not None)
        row = QHBoxLayout()
        row.addWidget(label)
        row.addWidget(self.loudness, 1)
        return row

    def _products(self) -> QWidget:
        """A row for each product; they scroll where there is no room for all."""
        products = QWidget()
        rows = QVBoxLayout(products)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(8)
        for item, product in PRODUCTS.items():
            check = QCheckBox(tr(product.title))
            check.setChecked(product.quick)
            check.setToolTip(tr(product.what))
            note = QLabel(tr(product.what))
            note.setObjectName("quiet")
            note.setWordWrap(True)
            row = QHBoxLayout()
            check.setMinimumWidth(150)
            row.addWidget(check)
            row.addWidget(note, 1)
            if product.controls:
                row.addWidget(self._options_button(item))
            rows.addLayout(row)
            self.checks[item] = check
        rows.addStretch(1)
        return products

    def _options_button(self, item: Item) -> QPushButton:
        button = QPushButton(tr("Options…"))
        button.setAccessibleName(tr("Options of “{product}”", product=tr(PRODUCTS[item].title)))
        button.clicked.connect(lambda: self.choose(item))
        self.option_buttons[item] = button
        return button

    def choose(self, item: Item) -> None:
        """Ask how a product is to be; who has chosen that wants it too."""
        dialog = ProductDialog(item, self.options[item], self._session, self)
        if dialog.exec():
            self.options[item] = dialog.options
            remember_options(self._settings, PRODUCTS[item], dialog.options)
            self.checks[item].setChecked(True)

    def deliver(self) -> None:
        """Make what is ticked."""
        items = frozenset(item for item, check in self.checks.items() if check.isChecked())
        if not items:
            self.status.setText(tr("Nothing is ticked."))
            return
        if self._settings is not None:
            self._settings.setValue("deliver/folder", str(Path(self.folder.text()).parent))
            self._settings.setValue("deliver/loudness", self.loudness.currentData())
        self.files.clear()
        self.files.hide()
        work = _Delivery(
            self._session.study.snapshot(),
            Path(self.folder.text()),
            items,
            dict(self.options),
            self._narration(),
            self,
        )
        work.finished.connect(self._close_sound)
        work.progressed.connect(self._progress)
        work.finished.connect(self._done)
        self._work = work
        self._show_working(True)
        work.start()

    def _narration(self) -> TalkNarration | None:
        """The sound of the takes that the talk is put together from; the plan has none."""
        assembly = recorded_talk(self._session.study)
        if assembly is None:
            return None
        self._sound = self._session.file.sound_writer()
        target = TARGETS[str(self.loudness.currentData())]
        return TalkNarration(self._sound, dict(self._session.study.takes), assembly, target)

    def _close_sound(self) -> None:
        if self._sound is not None:
            self._sound.close()
            self._sound = None

    def stop(self) -> None:
        """Stop the delivery; nothing half-written stays."""
        if self._work is not None:
            self._work.stop.set()
            self.status.setText(tr("Stopping …"))

    def done(self, result: int) -> None:
        """However the window is left, a running delivery is stopped first."""
        self._finish_work()
        super().done(result)

    def closeEvent(self, event: QCloseEvent) -> None:
        """See `done`."""
        self._finish_work()
        super().closeEvent(event)

    def _finish_work(self) -> None:
        if self._work is not None and self._work.isRunning():
            self.stop()
            self._work.wait()

    def _heading(self) -> QLabel:
        timeline = talk(self._session.study)
        length, count = clock(timeline.seconds), len(timeline.stretches)
        beats = tr("1 beat") if count == 1 else tr("{beats} beats", beats=count)
        heading = QLabel(
            tr("{length} recorded, {beats}", length=length, beats=beats)
            if timeline.source is Source.RECORDED
            else tr("{length} planned, {beats}", length=length, beats=beats)
        )
        heading.setObjectName("heading")
        return heading

    def _default_folder(self) -> Path:
        path = self._session.file.path
        base = path.parent if self._settings is None else Path(str(self._settings.value("deliver/folder", path.parent)))
        return base / tr("{stem} delivery", stem=path.stem)

    def _choose(self) -> None:
        folder = QFileDialog.getExistingDirectory(self, tr("Deliver into"), str(Path(self.folder.text()).parent))
        if folder:
            self.folder.setText(folder)

    def _progress(self, item: str, share: float) -> None:
        self.bar.setValue(round(share * 1000))
        self.status.setText(f"{tr(PRODUCTS[Item(item)].title)} …")

    def _done(self) -> None:
        work = self._work
        assert work is not None
        self._show_working(False)
        if work.problem:
            self.bar.setValue(0)
            self.status.setText(work.problem)
            return
        self.bar.setValue(1000)
        count = len(work.delivered)
        folder = self.folder.text()
        files = (
            tr("1 file is in {folder}.", folder=folder)
            if count == 1
            else tr("{count} files are in {folder}.", count=count, folder=folder)
        )
        self.status.setText(" ".join([files if count else tr("Nothing was made."), *work.remarks]))
        for one in work.delivered:
            self.files.addItem(one.path.name)
            self.files.item(self.files.count() - 1).setData(Qt.ItemDataRole.UserRole, str(one.path))
        self.files.show()
        self.open_button.setEnabled(True)

    def _show_working(self, working: bool) -> None:
        self.deliver_button.setEnabled(not working)
        self.stop_button.setEnabled(working)
        for one in (*self.checks.values(), *self.option_buttons.values()):
            one.setEnabled(not working)
        self.loudness.setEnabled(not working and recorded_talk(self._session.study) is not None)


def _open(path: Path) -> None:
    QDesktopServices.openUrl(QUrl.fromLocalFile(str(path)))
