"""The dialogs of the desk: choosing a game, headers, slot, delivery, and the window of the first start."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import QDialog, QLabel, QPushButton
from pytestqt.qtbot import QtBot

from studyboard.delivery.product import Item
from studyboard.desk import application
from studyboard.desk.deliver_window import DeliverWindow
from studyboard.desk.game_chooser import GameChooser
from studyboard.desk.headers_dialog import HeadersDialog
from studyboard.desk.look import Look
from studyboard.desk.main_window import MainWindow
from studyboard.desk.opening import Opened
from studyboard.desk.queries_window import QueriesWindow
from studyboard.desk.session import Session
from studyboard.desk.slot_dialog import SlotDialog, seconds_of
from studyboard.desk.start_window import StartWindow
from studyboard.example import example_folder
from studyboard.model.edits import ChangeNode
from studyboard.model.errors import StudyboardError
from studyboard.model.script import SpokenLine
from studyboard.model.study import Study
from studyboard.notation.pgn_games import index_games
from studyboard.store.recent import remember
from studyboard.store.study_file import StudyFile
from tests.desk.text_size import text_scaled


@pytest.fixture
def session(example_file: StudyFile) -> Session:
    """A session without a window."""
    return Session(example_file)


def test_the_chooser_finds_a_game_by_any_word_of_its_tags(qtbot: QtBot) -> None:
    path = example_folder() / "round.pgn"
    entries = index_games(path)
    chooser = GameChooser(path, entries)
    qtbot.addWidget(chooser)
    chooser.show()
    assert chooser.table.model().rowCount() == 6
    qtbot.keyClicks(chooser.filter, "garvey 1-0")
    assert chooser.table.model().rowCount() == 1
    chosen = chooser.chosen()
    assert chosen is not None
    assert chosen.headers["White"] == "Pell, Imani"


def test_the_chooser_says_when_nothing_is_found(qtbot: QtBot) -> None:
    path = example_folder() / "round.pgn"
    chooser = GameChooser(path, index_games(path))
    qtbot.addWidget(chooser)
    qtbot.keyClicks(chooser.filter, "nobody of this name")
    assert chooser.chosen() is None
    assert not chooser.choose_button.isEnabled()
    assert chooser.count.text() == "0 of 6 games"


def test_the_chooser_leaves_empty_what_nobody_knows(qtbot: QtBot, tmp_path: Path) -> None:
    path = tmp_path / "old.pgn"
    path.write_text(
        '[Event "?"]\n[Date "????.??.??"]\n[Round "?"]\n[White "Pell"]\n[Black "?"]\n\n1. e4 *\n\n'
        '[Event "Cup"]\n[Date "1998.??.??"]\n[White "Pell"]\n[Black "Garvey"]\n\n1. d4 *\n',
        encoding="utf-8",
    )
    chooser = GameChooser(path, index_games(path))
    qtbot.addWidget(chooser)
    shown = chooser.table.model()
    rows = [[str(shown.index(row, column).data()) for column in range(1, 7)] for row in range(2)]
    assert rows == [["Pell", "", "", "", "", ""], ["Pell", "Garvey", "", "Cup", "", "1998"]]


def test_a_tag_is_changed_and_undone(qtbot: QtBot, session: Session) -> None:
    dialog = HeadersDialog(session)
    qtbot.addWidget(dialog)
    rows = {dialog.table.item(row, 0).text(): row for row in range(dialog.table.rowCount())}
    dialog.table.item(rows["Event"], 1).setText("Winter Cup")
    dialog.accept()
    assert session.study.headers["Event"] == "Winter Cup"
    session.undo()
    assert session.study.headers["Event"] == "Sail Loft Evening League"


def test_the_opening_is_named_by_its_positions_and_stored_with_the_dialog(qtbot: QtBot, session: Session) -> None:
    dialog = HeadersDialog(session)
    qtbot.addWidget(dialog)
    dialog.name_opening.click()
    assert "Opening" not in session.study.headers
    dialog.accept()
    assert session.study.headers["ECO"] == "B22"
    assert session.study.headers["Opening"].startswith("Sicilian Defence, Alapin Variation")


def test_a_start_position_that_cannot_be_is_refused_and_the_dialog_stays(qtbot: QtBot, session: Session) -> None:
    refused: list[str] = []
    session.refused.connect(refused.append)
    dialog = HeadersDialog(session)
    qtbot.addWidget(dialog)
    dialog.show()
    dialog._add("FEN", "not a position")
    dialog.accept()
    assert dialog.isVisible()
    assert refused
    assert "FEN" not in session.study.headers


@pytest.mark.parametrize(
    ("text", "seconds"),
    [
        ("8:30", 510),
        ("1:05:00", 3900),
        ("9", 540),
        ("9 min", 540),
        ("500 s", 500),
        ("7,5", 450),
        ("soon", None),
        ("", None),
    ],
)
def test_lengths_as_people_write_them(text: str, seconds: float | None) -> None:
    assert seconds_of(text) == seconds


def test_a_slot_that_is_none_is_asked_again(qtbot: QtBot) -> None:
    dialog = SlotDialog(480.0, 470.0)
    qtbot.addWidget(dialog)
    dialog.show()
    dialog._field.clear()
    qtbot.keyClicks(dialog._field, "whenever")
    dialog.accept()
    assert dialog.isVisible()
    dialog._field.clear()
    qtbot.keyClicks(dialog._field, "9:15")
    dialog.accept()
    assert dialog.result() == QDialog.DialogCode.Accepted
    assert dialog.slot == 555.0


def test_delivering_writes_what_is_ticked_and_lists_it(qtbot: QtBot, session: Session, tmp_path: Path) -> None:
    window = DeliverWindow(session)
    qtbot.addWidget(window)
    window.folder.setText(str(tmp_path / "out"))
    assert not window.checks[Item.VIDEO].isChecked()
    for item, check in window.checks.items():
        check.setChecked(item in (Item.SHEET, Item.CAPTIONS, Item.GAME))
    qtbot.mouseClick(window.deliver_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: window.open_button.isEnabled(), timeout=30_000)
    names = {path.suffix for path in (tmp_path / "out").iterdir()}
    assert names == {".pdf", ".vtt", ".srt", ".pgn", ".json"}
    assert window.files.count() == 4


def test_a_folder_that_cannot_be_written_is_told(qtbot: QtBot, session: Session, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way", encoding="utf-8")
    window = DeliverWindow(session)
    qtbot.addWidget(window)
    window.folder.setText(str(tmp_path / "file" / "out"))
    window.deliver()
    qtbot.waitUntil(lambda: window.deliver_button.isEnabled(), timeout=30_000)
    assert window.bar.value() == 0
    assert "file" in window.status.text()


def test_captions_that_cannot_be_made_without_words_are_told(qtbot: QtBot, tmp_path: Path) -> None:
    with StudyFile.create(tmp_path / "silent.studyboard", Study()) as file:
        window = DeliverWindow(Session(file))
        qtbot.addWidget(window)
        window.folder.setText(str(tmp_path / "out"))
        for item, check in window.checks.items():
            check.setChecked(item in (Item.CAPTIONS, Item.GAME))
        window.deliver()
        qtbot.waitUntil(lambda: window.open_button.isEnabled(), timeout=30_000)
        assert window.status.text() == (
            f"1 file is in {tmp_path / 'out'}. Nothing is said yet, so there are no captions. Write spoken lines first."
        )
        assert window.files.count() == 1


def test_nothing_ticked_delivers_nothing(qtbot: QtBot, session: Session, tmp_path: Path) -> None:
    window = DeliverWindow(session)
    qtbot.addWidget(window)
    for check in window.checks.values():
        check.setChecked(False)
    window.folder.setText(str(tmp_path / "out"))
    window.deliver()
    assert not (tmp_path / "out").exists()


def test_the_first_start_offers_the_tour(
    qtbot: QtBot, still_look: Look, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("STUDYBOARD_STUDIES", str(tmp_path))
    start = StartWindow(still_look)
    qtbot.addWidget(start)
    start.show()
    opened: list[Opened] = []
    start.opened.connect(opened.append)
    qtbot.mouseClick(start.tour_button, Qt.MouseButton.LeftButton)
    assert opened[0].file.path == tmp_path / "Tour.studyboard"
    assert opened[0].file.study.headers["White"] == "Pell, Imani"
    opened[0].file.close()


def test_the_first_start_offers_an_empty_board(
    qtbot: QtBot, still_look: Look, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("STUDYBOARD_STUDIES", str(tmp_path))
    start = StartWindow(still_look)
    qtbot.addWidget(start)
    opened: list[Opened] = []
    start.opened.connect(opened.append)
    qtbot.mouseClick(start.empty_button, Qt.MouseButton.LeftButton)
    assert list(opened[0].file.study.nodes) == [0]
    opened[0].file.close()


def test_the_names_of_the_columns_are_read_with_large_text(qtbot: QtBot, still_look: Look) -> None:
    with text_scaled(still_look, 2.0):
        path = example_folder() / "round.pgn"
        chooser = GameChooser(path, index_games(path))
        qtbot.addWidget(chooser)
        header = chooser.table.horizontalHeader()
        metrics = QFontMetrics(header.font())
        for column in range(1, header.count()):
            name = str(header.model().headerData(column, Qt.Orientation.Horizontal))
            if column != 4:
                assert header.sectionSize(column) > metrics.horizontalAdvance(name)


def test_the_first_query_is_chosen_and_return_does_not_read_again(qtbot: QtBot, desk: MainWindow) -> None:
    session = desk.session
    node = session.study.node(session.study.root).children[0]
    session.do(ChangeNode(node, "spoken", SpokenLine("White has a rook on g7. The knight on h6 is black.")))
    proofreader = desk.proofreading.proofreader
    window = QueriesWindow(session, proofreader)
    qtbot.addWidget(window)
    window.show()
    proofreader.read_now()
    qtbot.waitUntil(lambda: window.list.count() > 0, timeout=15_000)
    assert window.list.currentRow() == 0
    assert not any(button.isDefault() for button in window.findChildren(QPushButton))


def test_the_heading_of_the_start_window_is_whole_with_large_text(qtbot: QtBot, still_look: Look) -> None:
    with text_scaled(still_look, 2.0):
        window = StartWindow(still_look)
        qtbot.addWidget(window)
        window.show()
        qtbot.waitExposed(window)
        for label in window.findChildren(QLabel):
            assert label.height() >= label.heightForWidth(label.width()) - 1


def test_enter_takes_what_has_the_focus_at_the_first_start(
    qtbot: QtBot, still_look: Look, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("STUDYBOARD_STUDIES", str(tmp_path))
    start = StartWindow(still_look)
    qtbot.addWidget(start)
    opened: list[Opened] = []
    start.opened.connect(opened.append)
    start.show()
    start.tour_button.setFocus()
    qtbot.keyClick(start.tour_button, Qt.Key.Key_Return)
    assert [one.file.path.stem for one in opened] == ["Tour"]
    opened[0].file.close()


def test_down_chooses_the_next_game_from_the_field_at_once(qtbot: QtBot) -> None:
    path = example_folder() / "round.pgn"
    chooser = GameChooser(path, index_games(path))
    qtbot.addWidget(chooser)
    chooser.show()
    chooser.activateWindow()
    chooser.filter.setFocus()
    qtbot.waitUntil(chooser.filter.hasFocus)
    qtbot.keyClick(chooser.filter, Qt.Key.Key_Down)
    chosen = chooser.chosen()
    assert chosen is not None
    assert chosen.headers["White"] == "Quayle, Desmond"
    assert chooser.table.hasFocus()
    assert all(button.icon().isNull() for button in chooser.findChildren(QPushButton))


def test_the_first_window_says_why_it_is_not_the_last_study(
    qtbot: QtBot, still_look: Look, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("STUDYBOARD_STATE_DIR", str(tmp_path / "state"))
    study = StudyFile.create(tmp_path / "Tonight.studyboard", Study())
    remember(study.path)
    with pytest.raises(StudyboardError) as refused:
        application._last()
    study.close()
    start = StartWindow(still_look, str(refused.value))
    qtbot.addWidget(start)
    assert "“Tonight.studyboard” is already open" in start.problem.text()
