"""The delivery window: what to publish and how, where to, and how far it is."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QSettings, QSize
from PySide6.QtGui import QCloseEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialog,
    QFileDialog,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QProgressBar,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from studyboard.delivery.items import PRODUCTS
from studyboard.delivery.product import Item, plain_options
from studyboard.delivery.video.narration import Narration
from studyboard.desk.acting_button import ActingButton
from studyboard.desk.delivered_files import DeliveredFiles, open_path
from studyboard.desk.delivery_choices import DeliveryChoices, keep_choices, kept_choices
from studyboard.desk.delivery_work import DeliveryWork
from studyboard.desk.product_choices import options_from, remember_options, remembered_options
from studyboard.desk.product_dialog import ProductDialog
from studyboard.desk.product_row import ProductRow
from studyboard.desk.session import Session
from studyboard.desk.yielding import Yielding
from studyboard.sound.levelling import TARGETS
from studyboard.sound.narration import TalkNarration
from studyboard.sound.scratch_voice import ScratchVoice
from studyboard.sound.synthesiser import find_synthesiser, require_synthesiser
from studyboard.store.sound import TakeSound
from studyboard.timing.clock import clock
from studyboard.timing.recorded import recorded_talk, talk
from studyboard.timing.timeline import Source
from studyboard.translation import tr, tr_later

_LOUDNESS = {
    "-18": tr_later("−18 LUFS, for online (AES TD1008); peaks under −1 dBTP"),
    "-23": tr_later("−23 LUFS, for broadcasting (EBU R 128); peaks under −1 dBTP"),
    "as-spoken": tr_later("As it was spoken"),
}
#: Least width of what stands in the window (px).
_WIDTH = 660


class DeliverWindow(QDialog):
    """Chooses, delivers with progress, can be stopped, opens the folder and gives the files away.

    State: the delivery that runs, and the sound that is open for it.
    """

    def __init__(self, session: Session, settings: QSettings | None = None, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._settings = settings
        self._work: DeliveryWork | None = None
        self._sound: TakeSound | None = None
        self.setWindowTitle(tr("Deliver"))
        self.rows = {item: ProductRow(product) for item, product in PRODUCTS.items()}
        self.checks: dict[Item, QCheckBox] = {item: row.check for item, row in self.rows.items()}
        #: How each product is to be.
        self.options = {item: remembered_options(settings, product) for item, product in PRODUCTS.items()}
        products = QWidget()
        listed = QVBoxLayout(products)
        listed.setContentsMargins(0, 0, 0, 0)
        listed.setSpacing(8)
        for item, row in self.rows.items():
            row.asked.connect(lambda item=item: self.choose(item))
            listed.addWidget(row)
        listed.addStretch(1)
        self.folder = QLineEdit()
        self.again = QCheckBox(tr("Make everything again"))
        self.bar = QProgressBar()
        self.status = QLabel(tr("Names, photographs and sponsors' material are the publisher's responsibility."))
        self.files = DeliveredFiles()
        layout = QVBoxLayout(self)
        layout.setContentsMargins(20, 18, 20, 18)
        layout.setSpacing(10)
        layout.addWidget(self._heading())
        layout.addWidget(Yielding(products), 1)
        layout.addLayout(self._where())
        layout.addLayout(self._loudness_row())
        self.scratch = QCheckBox(tr("Scratch voice in the video, marked in the picture"))
        self.scratch.setToolTip(tr("A speech synthesiser of the system speaks what is not recorded"))
        self.scratch.setVisible(recorded_talk(self._session.study) is None and find_synthesiser() is not None)
        layout.addWidget(self.scratch)
        self.bar.setRange(0, 1000)
        self.bar.setTextVisible(False)
        # A least width of the window itself would let larger text and longer languages be cut.
        self.bar.setMinimumWidth(_WIDTH)
        self.bar.setAccessibleName(tr("Progress of the delivery"))
        self.status.setObjectName("quiet")
        self.status.setWordWrap(True)
        self.files.setMaximumHeight(120)
        self.files.hide()
        layout.addWidget(self.bar)
        layout.addWidget(self.status)
        layout.addWidget(self.files)
        layout.addLayout(self._foot())
        self._bring_back()
        # All descriptions begin at one edge, however large the text.
        for check in self.checks.values():
            check.ensurePolished()
        widest = max(check.minimumSizeHint().width() for check in self.checks.values())
        for check in self.checks.values():
            check.setMinimumWidth(widest + 12)
        # By itself a dialog opens no higher than two thirds of the screen, which cuts large text.
        width = self.sizeHint().width()
        inside_width = products.sizeHint().expandedTo(QSize(width - 40, 0)).width()
        height = layout.totalMinimumSize().height() + products.heightForWidth(inside_width)
        self.resize(QSize(width, height).boundedTo(self.screen().availableSize()))

    def deliver(self) -> None:
        """Make what is ticked."""
        items = frozenset(item for item, check in self.checks.items() if check.isChecked())
        if not items:
            self.status.setText(tr("Nothing is ticked."))
            return
        if not self.folder.text().strip():
            self.status.setText(tr("Choose a folder to write into."))
            self.folder.setFocus()
            return
        self.folder.setText(str(self._folder()))
        self._keep_choices(items)
        self.files.clear()
        self.files.hide()
        for item, row in self.rows.items():
            row.status.setText(tr("waiting") if item in items else "")
        to = self._folder()
        study = self._session.study.snapshot()
        work = DeliveryWork(study, to, items, dict(self.options), self._narration(), self, again=self.again.isChecked())
        work.finished.connect(self._close_sound)
        work.progressed.connect(self._progress)
        work.finished.connect(self._done)
        self._work = work
        self._show_working(True)
        work.start()

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

    # What the window is made of.

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

    def _where(self) -> QHBoxLayout:
        self.folder.setText(str(self._default_folder()))
        self.folder.setAccessibleName(tr("Folder to write into"))
        choose = ActingButton(tr("Choose…"))
        choose.setAccessibleName(tr("Choose: {what}", what=tr("Folder to write into")))
        choose.clicked.connect(self._choose)
        self.again.setToolTip(tr("Else what lies there as it would be made again is kept."))
        where = QHBoxLayout()
        where.addWidget(QLabel(tr("Into")))
        where.addWidget(self.folder, 1)
        where.addWidget(choose)
        self._choose_button = choose
        return where

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

    def _foot(self) -> QHBoxLayout:
        self.deliver_button = QPushButton(tr("Deliver"))
        self.deliver_button.setDefault(True)
        self.deliver_button.clicked.connect(self.deliver)
        self.stop_button = ActingButton(tr("Stop"))
        self.stop_button.setEnabled(False)
        self.stop_button.clicked.connect(self.stop)
        self.open_button = ActingButton(tr("Open the folder"))
        self.open_button.setEnabled(False)
        self.open_button.clicked.connect(lambda: open_path(self._folder()))
        close = ActingButton(tr("Close"))
        close.clicked.connect(self.close)
        foot = QHBoxLayout()
        foot.addWidget(self.open_button)
        foot.addWidget(self.again)
        foot.addStretch(1)
        foot.addWidget(self.stop_button)
        foot.addWidget(self.deliver_button)
        foot.addWidget(close)
        return foot

    def choose(self, item: Item) -> None:
        """Ask how a product is to be; who has chosen that wants it too."""
        dialog = ProductDialog(item, self.options[item], self._session, self)
        if dialog.exec():
            self.options[item] = dialog.options
            remember_options(self._settings, PRODUCTS[item], dialog.options)
            self.checks[item].setChecked(True)

    # What is chosen.

    def _default_folder(self) -> Path:
        path = self._session.file.path
        base = path.parent if self._settings is None else Path(str(self._settings.value("deliver/folder", path.parent)))
        return base / tr("{stem} delivery", stem=path.stem)

    def _folder(self) -> Path:
        """The folder that is named; without a beginning it lies beside the study, for a desk stands nowhere."""
        return self._session.file.path.parent / Path(self.folder.text().strip()).expanduser()

    def _choose(self) -> None:
        folder = QFileDialog.getExistingDirectory(self, tr("Deliver into"), str(Path(self.folder.text()).parent))
        if folder:
            self.folder.setText(folder)

    def _bring_back(self) -> None:
        choices = None if self._settings is None else kept_choices(self._settings, self._session.file.path)
        if choices is None:
            return
        if choices.folder:
            self.folder.setText(choices.folder)
        if (place := self.loudness.findData(choices.loudness)) >= 0:
            self.loudness.setCurrentIndex(place)
        self.scratch.setChecked(choices.scratch_voice)
        for item, row in self.rows.items():
            row.check.setChecked(item.value in choices.items)
            plain = choices.options.get(item.value, {})
            self.options[item] = options_from(row.product, {**plain_options(self.options[item]), **plain})

    def _keep_choices(self, items: frozenset[Item]) -> None:
        if self._settings is None:
            return
        folder = self.folder.text()
        self._settings.setValue("deliver/folder", str(Path(folder).parent))
        self._settings.setValue("deliver/loudness", self.loudness.currentData())
        plain = {item.value: plain_options(one) for item, one in self.options.items()}
        choices = DeliveryChoices(
            tuple(item.value for item in Item if item in items),
            plain,
            folder,
            self.loudness.currentData(),
            self.scratch.isChecked(),
        )
        keep_choices(self._settings, self._session.file.path, choices)

    # How far it is.

    def _narration(self) -> Narration | None:
        """The sound of the takes that the talk is put together from; the plan has one only where that is ticked."""
        assembly = recorded_talk(self._session.study)
        if assembly is None:
            study = self._session.study.snapshot()
            wanted = self.scratch.isVisible() and self.scratch.isChecked()
            return ScratchVoice(study, talk(study), require_synthesiser()) if wanted else None
        self._sound = self._session.file.sound_writer()
        target = TARGETS[str(self.loudness.currentData())]
        return TalkNarration(self._sound, dict(self._session.study.takes), assembly, target)

    def _close_sound(self) -> None:
        if self._sound is not None:
            self._sound.close()
            self._sound = None

    def _progress(self, name: str, done: float, share: float) -> None:
        row = self.rows[Item(name)]
        row.status.setText(tr("{percent} %", percent=round(done * 100)))
        self.bar.setValue(round(share * 1000))
        if self._work is not None and not self._work.stop.is_set():
            self.status.setText(f"{tr(row.product.title)} …")

    def _done(self) -> None:
        work = self._work
        assert work is not None
        self._show_working(False)
        if work.problem:
            self.bar.setValue(0)
            self.status.setText(work.problem)
            for row in self.rows.values():
                row.status.setText("")
            return
        self.bar.setValue(1000)
        for item in work.items:
            kept = [one.kept for one in work.delivered if one.item is item]
            self.rows[item].status.setText(tr("not made") if not kept else tr("kept") if all(kept) else tr("made"))
        count, folder = len(work.delivered), self.folder.text()
        files = (
            tr("1 file is in {folder}.", folder=folder)
            if count == 1
            else tr("{count} files are in {folder}.", count=count, folder=folder)
        )
        kept_count = sum(one.kept for one in work.delivered)
        told = [files if count else tr("Nothing was made.")]
        if kept_count:
            told.append(tr("Kept, as nothing of it has changed: {count}.", count=kept_count))
        self.status.setText(" ".join([*told, *work.remarks]))
        self.files.show_files(work.delivered)
        self._make_room(bool(count))
        self.again.setChecked(False)
        self.open_button.setEnabled(True)
        self.open_button.setFocus()

    def _make_room(self, shown: bool) -> None:
        """Show or hide the files, in a window that is higher by them where the screen allows it."""
        if shown and not self.files.isVisible():
            room = self.screen().availableSize().height() - self.height()
            self.resize(self.width(), self.height() + max(0, min(self.files.maximumHeight() + 10, room)))
        self.files.setVisible(shown)

    def _show_working(self, working: bool) -> None:
        if working:
            # Before the button that has the focus is disabled, which would hand it on to any other.
            self.stop_button.setEnabled(True)
            self.stop_button.setFocus()
        else:
            self.deliver_button.setEnabled(True)
            self.deliver_button.setFocus()
        self.deliver_button.setEnabled(not working)
        self.stop_button.setEnabled(working)
        self.again.setEnabled(not working)
        # What is told at the end, and what is opened, is the folder that was delivered into.
        self.folder.setEnabled(not working)
        self._choose_button.setEnabled(not working)
        self.scratch.setEnabled(not working)
        self.loudness.setEnabled(not working and recorded_talk(self._session.study) is not None)
        for row in self.rows.values():
            row.set_working(working)
