"""The delivery window: options, a frame of the video, what is remembered, what is kept, and files to take along."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from pypdf import PdfReader
from PySide6.QtCore import QSettings, Qt
from PySide6.QtGui import QGuiApplication, QKeySequence
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from studyboard.delivery.items import PRODUCTS
from studyboard.delivery.items.text import TextOptions
from studyboard.delivery.product import Choice, Item, OwnFile, Tick, plain_options
from studyboard.delivery.sheet_options import Paper
from studyboard.delivery.still_options import StillOptions
from studyboard.delivery.video.options import Shape, VideoOptions
from studyboard.desk.deliver_window import DeliverWindow
from studyboard.desk.product_choices import options_from
from studyboard.desk.product_dialog import ProductDialog
from studyboard.desk.session import Session
from studyboard.model.edits import ChangeNode
from studyboard.model.script import SpokenLine
from studyboard.notation.labels import move_label
from studyboard.store.study_file import StudyFile

WAIT = 60_000


@pytest.fixture
def session(example_file: StudyFile) -> Session:
    return Session(example_file)


@pytest.fixture
def settings(tmp_path: Path) -> QSettings:
    return QSettings(str(tmp_path / "settings.ini"), QSettings.Format.IniFormat)


@pytest.fixture
def window(qtbot: QtBot, session: Session, settings: QSettings, tmp_path: Path) -> DeliverWindow:
    """The window with nothing ticked."""
    made = DeliverWindow(session, settings)
    qtbot.addWidget(made)
    made.folder.setText(str(tmp_path / "out"))
    tick(made)
    made.show()
    return made


def tick(window: DeliverWindow, *items: Item) -> None:
    for item, check in window.checks.items():
        check.setChecked(item in items)


def answering(monkeypatch: pytest.MonkeyPatch, choose: Callable[[ProductDialog], None]) -> None:
    """Let the next dialog of options be answered like this."""

    def answer(dialog: ProductDialog) -> int:
        dialog.show()
        choose(dialog)
        dialog.accept()
        return dialog.result()

    monkeypatch.setattr(ProductDialog, "exec", answer)


def delivered(qtbot: QtBot, window: DeliverWindow) -> None:
    qtbot.mouseClick(window.deliver_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: window.deliver_button.isEnabled(), timeout=WAIT)


@pytest.mark.parametrize("item", list(Item))
def test_every_choice_of_a_product_comes_back_from_plain_values(item: Item, tmp_path: Path) -> None:
    product = PRODUCTS[item]
    for control in product.controls:
        match control:
            case Choice():
                values = [value for value, _ in control.values]
            case Tick():
                values = [control.ticked, not control.ticked]
            case OwnFile():
                values = [tmp_path, None]
            case _:
                values = ["fr", ""]
        for value in values:
            options = product.options(**{control.field: value})
            assert options_from(product, plain_options(options)) == options


def test_a_product_is_delivered_as_was_chosen(
    qtbot: QtBot, window: DeliverWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    tick(window)
    answering(monkeypatch, lambda dialog: dialog.choices.choose("paper", Paper.LETTER))
    qtbot.mouseClick(window.rows[Item.SHEET].button, Qt.MouseButton.LeftButton)
    assert window.checks[Item.SHEET].isChecked()
    delivered(qtbot, window)
    (path,) = (tmp_path / "out").glob("*.pdf")
    assert round(PdfReader(path).pages[0].mediabox.width) == 612


def test_what_is_unchanged_is_kept_and_told(qtbot: QtBot, window: DeliverWindow, session: Session) -> None:
    tick(window, Item.GAME, Item.CHAPTERS, Item.SHEET)
    delivered(qtbot, window)
    states = {item: window.rows[item].status.text() for item in (Item.GAME, Item.CHAPTERS, Item.SHEET, Item.STILL)}
    assert states == {Item.GAME: "made", Item.CHAPTERS: "made", Item.SHEET: "made", Item.STILL: ""}
    delivered(qtbot, window)
    assert {window.rows[item].status.text() for item in (Item.GAME, Item.CHAPTERS, Item.SHEET)} == {"kept"}
    assert "Kept, as nothing of it has changed: 4." in window.status.text()
    assert all(window.files.item(row).text().endswith(" (kept)") for row in range(window.files.count()))
    node = list(session.study.main_line())[1]
    session.do(ChangeNode(node, "note", "Something new."))
    delivered(qtbot, window)
    assert {window.rows[item].status.text() for item in (Item.GAME, Item.SHEET)} == {"made"}
    window.again.setChecked(True)
    delivered(qtbot, window)
    assert window.rows[Item.CHAPTERS].status.text() == "made"
    assert not window.again.isChecked(), "everything is made again once, not from now on"


def test_choices_are_remembered_for_this_study_and_no_other(
    qtbot: QtBot, window: DeliverWindow, session: Session, settings: QSettings, tmp_path: Path
) -> None:
    usual = DeliverWindow(session, None)
    qtbot.addWidget(usual)
    tick(window, Item.GAME)
    window.options[Item.VIDEO] = VideoOptions(shape=Shape.TALL)
    window.options[Item.STILL] = StillOptions(headline="A night")
    window.loudness.setCurrentIndex(window.loudness.findData("-23"))
    delivered(qtbot, window)
    again = DeliverWindow(session, settings)
    qtbot.addWidget(again)
    assert [item for item, check in again.checks.items() if check.isChecked()] == [Item.GAME]
    assert again.folder.text() == str(tmp_path / "out")
    assert again.options[Item.VIDEO] == VideoOptions(shape=Shape.TALL)
    assert again.options[Item.STILL] == StillOptions(headline="A night")
    assert again.loudness.currentData() == "-23"
    with StudyFile.create(tmp_path / "other.studyboard", session.study.snapshot()) as file:
        other = DeliverWindow(Session(file), settings)
        qtbot.addWidget(other)
        assert {item: check.isChecked() for item, check in other.checks.items()} == {
            item: check.isChecked() for item, check in usual.checks.items()
        }
        assert other.options[Item.STILL] == StillOptions()
        assert other.folder.text() == str(tmp_path / "other delivery")


def test_settings_that_nobody_can_read_do_no_harm(
    qtbot: QtBot, session: Session, settings: QSettings, window: DeliverWindow
) -> None:
    tick(window, Item.GAME)
    delivered(qtbot, window)
    (group,) = {key.rpartition("/")[0] for key in settings.allKeys() if key.endswith("/deliver")}
    for nonsense in ("[", "{}", '{"items": 3, "options": [], "folder": null}', '{"items": [], "options": {"a": 1}}'):
        settings.setValue(f"{group}/deliver", nonsense)
        again = DeliverWindow(session, settings)
        qtbot.addWidget(again)
        assert again.checks[Item.SHEET].isChecked()


def test_a_frame_of_the_video_is_shown_at_the_moment_that_is_chosen(qtbot: QtBot, session: Session) -> None:
    dialog = ProductDialog(Item.VIDEO, VideoOptions(), session)
    qtbot.addWidget(dialog)
    dialog.show()
    preview = dialog.video
    assert preview is not None

    def seen() -> bytes:
        qtbot.waitUntil(lambda: not preview.busy and not preview.picture.pixmap().isNull(), timeout=WAIT)
        image = preview.picture.pixmap().toImage()
        return bytes(image.constBits())

    first, moment = seen(), preview.moment.text()
    preview.slider.setValue(0)
    title = seen()
    assert title != first
    assert preview.moment.text().startswith("0:00")
    assert preview.moment.text() != moment
    assert preview.picture.accessibleName() == "Frame of the video at 0:00"
    dialog.choices.choose("theme", "dark")
    qtbot.waitUntil(lambda: preview.busy)
    assert seen() != title
    wide = preview.picture.pixmap()
    assert wide.width() > wide.height()
    dialog.choices.choose("shape", Shape.TALL)
    qtbot.waitUntil(lambda: preview.busy)
    seen()
    assert preview.picture.pixmap().width() < preview.picture.pixmap().height()
    dialog.reject()


def test_the_frame_begins_where_the_desk_stands(qtbot: QtBot, session: Session) -> None:
    node = list(session.study.main_line())[20]
    session.show(node)
    dialog = ProductDialog(Item.VIDEO, VideoOptions(), session)
    qtbot.addWidget(dialog)
    assert dialog.video is not None
    assert dialog.video.moment.text().endswith(f" {move_label(session.positions, node)}")


def test_leaving_while_a_frame_is_painted_waits_for_it(qtbot: QtBot, session: Session) -> None:
    dialog = ProductDialog(Item.VIDEO, VideoOptions(), session)
    qtbot.addWidget(dialog)
    dialog.show()
    preview = dialog.video
    assert preview is not None
    qtbot.waitUntil(lambda: preview.busy)
    QTest.keyClick(dialog, Qt.Key.Key_Escape)
    assert not dialog.isVisible()
    assert not preview.busy


def test_files_can_be_dragged_out_and_copied(qtbot: QtBot, window: DeliverWindow, tmp_path: Path) -> None:
    tick(window, Item.GAME, Item.CHAPTERS)
    delivered(qtbot, window)
    assert window.files.dragEnabled()
    items = [window.files.item(row) for row in range(window.files.count())]
    dragged = {Path(url.toLocalFile()) for url in window.files.mimeData(items).urls()}
    assert dragged == {path for path in (tmp_path / "out").iterdir() if path.name != "delivery.json"}
    window.activateWindow()
    window.files.setFocus()
    window.files.selectAll()
    QTest.keySequence(window.files, QKeySequence(QKeySequence.StandardKey.Copy))
    copied = {Path(url.toLocalFile()) for url in QGuiApplication.clipboard().mimeData().urls()}
    assert copied == dragged


def test_a_video_tells_how_far_it_is_and_can_be_stopped(qtbot: QtBot, window: DeliverWindow, tmp_path: Path) -> None:
    tick(window, Item.GAME, Item.VIDEO)
    qtbot.mouseClick(window.deliver_button, Qt.MouseButton.LeftButton)
    states: set[str] = set()

    def under_way() -> bool:
        states.add(window.rows[Item.VIDEO].status.text())
        return len(states) > 3

    qtbot.waitUntil(under_way, timeout=WAIT)
    assert "waiting" in states
    assert window.rows[Item.GAME].status.text() == "100 %"
    assert window.status.text() == "Video …"
    assert not window.checks[Item.SHEET].isEnabled()
    assert window.stop_button.hasFocus() or not window.isActiveWindow()
    qtbot.mouseClick(window.stop_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: window.deliver_button.isEnabled(), timeout=WAIT)
    assert "nothing was changed" in window.status.text()
    assert not (tmp_path / "out").exists()
    assert {row.status.text() for row in window.rows.values()} == {""}


def test_a_template_with_a_mistake_is_told_with_its_line(
    qtbot: QtBot, window: DeliverWindow, session: Session, tmp_path: Path
) -> None:
    mine = tmp_path / "mine.jinja"
    mine.write_text("{{ title }}\n{{ tilte }}\n", encoding="utf-8")
    tick(window, Item.TEXT)
    window.options[Item.TEXT] = TextOptions(template=mine)
    delivered(qtbot, window)
    assert window.status.text().startswith(f"{mine}:2: ")
    assert not (tmp_path / "out").exists()


def test_a_line_that_was_changed_is_in_what_is_delivered(
    qtbot: QtBot, window: DeliverWindow, session: Session, tmp_path: Path
) -> None:
    session.do(ChangeNode(list(session.study.main_line())[1], "spoken", SpokenLine("Said just now.")))
    tick(window, Item.CAPTIONS)
    delivered(qtbot, window)
    (captions,) = (tmp_path / "out").glob("*.srt")
    assert "Said just now." in captions.read_text(encoding="utf-8")


def test_without_a_folder_nothing_is_delivered_and_it_is_asked_for(
    window: DeliverWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    somewhere = tmp_path / "somewhere"
    somewhere.mkdir()
    monkeypatch.chdir(somewhere)
    tick(window, Item.GAME)
    window.folder.setText(" ")
    window.deliver()
    assert window.status.text() == "Choose a folder to write into."
    assert window.deliver_button.isEnabled()
    assert not list(somewhere.iterdir())


def test_a_folder_without_a_beginning_lies_beside_the_study(
    qtbot: QtBot, window: DeliverWindow, session: Session
) -> None:
    tick(window, Item.GAME)
    window.folder.setText("evening")
    delivered(qtbot, window)
    folder = session.file.path.parent / "evening"
    assert window.folder.text() == str(folder)
    assert list(folder.glob("*.pgn"))


def test_the_folder_cannot_become_another_one_while_it_is_filled(qtbot: QtBot, window: DeliverWindow) -> None:
    tick(window, Item.GAME)
    qtbot.mouseClick(window.deliver_button, Qt.MouseButton.LeftButton)
    assert not window.folder.isEnabled()
    qtbot.waitUntil(lambda: window.deliver_button.isEnabled(), timeout=WAIT)
    assert window.folder.isEnabled()


def test_the_scratch_voice_is_remembered_for_the_study(
    qtbot: QtBot, window: DeliverWindow, session: Session, settings: QSettings
) -> None:
    tick(window, Item.GAME)
    window.scratch.setChecked(True)
    delivered(qtbot, window)
    again = DeliverWindow(session, settings)
    qtbot.addWidget(again)
    assert again.scratch.isChecked()
