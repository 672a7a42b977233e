"""Choosing how a sheet or a still is to be, and seeing it while one chooses."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import QSettings, Qt
from PySide6.QtWidgets import QDialogButtonBox, QPushButton
from pytestqt.qtbot import QtBot

from studyboard.delivery.items import PRODUCTS
from studyboard.delivery.product import Item
from studyboard.delivery.sheet_options import Paper, SheetOptions
from studyboard.delivery.still_options import StillDesign, StillOptions, StillShape
from studyboard.desk.deliver_window import DeliverWindow
from studyboard.desk.product_choices import ProductChoices, remember_options, remembered_options
from studyboard.desk.product_dialog import ProductDialog
from studyboard.desk.session import Session
from studyboard.store.study_file import StudyFile


@pytest.fixture
def session(example_file: StudyFile) -> Session:
    """A session without a window."""
    return Session(example_file)


def opened(qtbot: QtBot, item: Item, session: Session, options: object = None) -> ProductDialog:
    dialog = ProductDialog(item, options or PRODUCTS[item].options(), session)
    qtbot.addWidget(dialog)
    dialog.show()
    if dialog.pane is not None:
        pane = dialog.pane
        qtbot.waitUntil(lambda: pane.thumbs.count() > 0, timeout=60_000)
    return dialog


@pytest.mark.parametrize("item", list(PRODUCTS))
def test_every_product_can_be_shown_and_comes_back_as_it_was(qtbot: QtBot, item: Item) -> None:
    choices = ProductChoices(PRODUCTS[item], PRODUCTS[item].options())
    qtbot.addWidget(choices)
    assert choices.options() == PRODUCTS[item].options()
    assert set(choices.fields) == {control.field for control in PRODUCTS[item].controls}


def test_what_is_chosen_of_a_sheet_is_taken_over(qtbot: QtBot, session: Session) -> None:
    dialog = opened(qtbot, Item.SHEET, session)
    dialog.choices.choose("paper", Paper.LETTER)
    for field in ("large_print", "exercises"):
        qtbot.mouseClick(dialog.choices.fields[field], Qt.MouseButton.LeftButton)
    dialog.accept()
    assert dialog.options == SheetOptions(paper=Paper.LETTER, large_print=True, exercises=False)


def test_the_pages_are_seen_and_change_with_the_choices(qtbot: QtBot, session: Session) -> None:
    dialog = opened(qtbot, Item.SHEET, session)
    assert dialog.pane is not None
    thumbs = dialog.pane.thumbs
    before = thumbs.count()
    assert thumbs.item(0).text() == "Page 1"
    assert not thumbs.item(0).icon().isNull()
    dialog.choices.fields["large_print"].toggle()
    qtbot.waitUntil(lambda: thumbs.count() > before, timeout=60_000)
    dialog.reject()


def test_the_three_designs_are_seen_and_a_click_takes_one(qtbot: QtBot, session: Session) -> None:
    dialog = opened(qtbot, Item.STILL, session)
    assert dialog.pane is not None
    assert dialog.pane.thumbs.count() == len(StillDesign)
    dialog.pane.thumbs.setCurrentRow(2)
    assert dialog.choices.options().design is StillDesign.CORNER
    dialog.accept()
    assert dialog.options == StillOptions(design=StillDesign.CORNER)


def test_the_position_on_the_desk_can_be_taken_for_the_still(qtbot: QtBot, session: Session) -> None:
    session.show(list(session.study.main_line())[3])
    dialog = opened(qtbot, Item.STILL, session)
    button = next(one for one in dialog.choices.findChildren(QPushButton) if one.text() == "As on the board")
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
    assert dialog.choices.options().at.startswith("2. ")
    dialog.reject()


def test_a_move_that_is_not_there_is_told_while_one_writes(qtbot: QtBot, session: Session) -> None:
    dialog = opened(qtbot, Item.STILL, session)
    field = dialog.choices.fields["at"]
    field.setText("Qa8")
    qtbot.waitUntil(lambda: "Qa8" in dialog.problem.text(), timeout=60_000)
    field.setText("")
    qtbot.waitUntil(lambda: not dialog.problem.text(), timeout=60_000)
    dialog.reject()


def test_as_usual_puts_everything_back(qtbot: QtBot, session: Session) -> None:
    dialog = opened(qtbot, Item.STILL, session, StillOptions(shape=StillShape.BOTH, headline="A night", result=True))
    (box,) = dialog.findChildren(QDialogButtonBox)
    qtbot.mouseClick(box.button(QDialogButtonBox.StandardButton.RestoreDefaults), Qt.MouseButton.LeftButton)
    assert dialog.choices.options() == StillOptions()
    dialog.reject()


def test_choices_are_remembered_but_not_the_words_of_one_study(tmp_path: Path) -> None:
    settings = QSettings(str(tmp_path / "settings.ini"), QSettings.Format.IniFormat)
    still = PRODUCTS[Item.STILL]
    remember_options(settings, still, StillOptions(StillDesign.BAND, StillShape.BOTH, "A night", "12. Nf3", True))
    assert remembered_options(settings, still) == StillOptions(StillDesign.BAND, StillShape.BOTH, result=True)
    settings.setValue("deliver/options/still", '{"design": "of another version", "result": "yes"}')
    assert remembered_options(settings, still) == StillOptions()
    assert remembered_options(None, still) == StillOptions()
    for broken in ("{", "3", "[]"):
        settings.setValue("deliver/options/still", broken)
        assert remembered_options(settings, still) == StillOptions()


def test_a_delivery_is_as_it_was_chosen(qtbot: QtBot, session: Session, tmp_path: Path) -> None:
    window = DeliverWindow(session)
    qtbot.addWidget(window)
    for item, check in window.checks.items():
        check.setChecked(item is Item.STILL)
    window.options[Item.STILL] = StillOptions(shape=StillShape.BOTH)
    window.folder.setText(str(tmp_path / "out"))
    window.deliver()
    qtbot.waitUntil(lambda: window.open_button.isEnabled(), timeout=60_000)
    pictures = sorted(path.name for path in (tmp_path / "out").glob("*.png"))
    assert len(pictures) == 2
    assert pictures[0].endswith("-tall.png")
