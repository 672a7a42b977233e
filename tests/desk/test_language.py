"""The desk in German: all of it translated, nothing cut off, letters that choose used once, figures and dates."""

from __future__ import annotations

import ast
import importlib.util
import re
import shutil
import xml.etree.ElementTree as ElementTree
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from types import ModuleType

import chess
import pytest
from PySide6.QtCore import QCoreApplication, QLocale, QSettings, QTimer, QTranslator
from PySide6.QtWidgets import (
    QAbstractButton,
    QApplication,
    QCheckBox,
    QDialog,
    QLabel,
    QPushButton,
    QRadioButton,
    QWidget,
)
from pytestqt.qtbot import QtBot

import studyboard
from studyboard.board.facts import facts
from studyboard.board.marking import toggle_mark
from studyboard.desk.actions import ACTIONS
from studyboard.desk.edit_labels import label_words
from studyboard.desk.language import LANGUAGES, choose_language, language_in_use, speak
from studyboard.desk.look import Look
from studyboard.desk.main_window import MainWindow
from studyboard.desk.moments import moment
from studyboard.desk.start_window import StartWindow
from studyboard.model.marks import Mark, MarkKind
from studyboard.notation.spoken import describe_move
from studyboard.picture.describe import describe_board
from studyboard.reading.read_through import judge
from studyboard.resources_path import resource
from studyboard.timing.clock import over_or_under
from studyboard.translation import as_written, tr, translate_by, written_number
from tests.desk.text_size import text_scaled

_TS = sorted(resource("translations").glob("*.ts"))
_PLACEHOLDER = re.compile(r"\{[^{}]*\}")


@dataclass(frozen=True)
class Entry:
    """One text in a file of translations."""

    source: str
    translation: str
    finished: bool


def entries(path: Path) -> list[Entry]:
    """All texts of a .ts file."""
    return [
        Entry(
            message.findtext("source") or "",
            message.findtext("translation") or "",
            message.find("translation[@type]") is None,
        )
        for message in ElementTree.parse(path).iter("message")
    ]


@pytest.fixture
def collecting() -> ModuleType:
    """The script that collects texts, with Qt's tools in reach."""
    spec = importlib.util.spec_from_file_location("collect", resource("translations") / "collect.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.fixture
def german(qtbot: QtBot) -> Iterator[None]:
    """German for everything that is made in this test, and English again after it."""
    application, locale = QApplication.instance(), QLocale()
    assert application is not None
    before = set(application.findChildren(QTranslator))
    speak(application, "de")
    yield
    for translator in set(application.findChildren(QTranslator)) - before:
        QCoreApplication.removeTranslator(translator)
        translator.deleteLater()
    translate_by(str)
    QLocale.setDefault(locale)


def test_every_language_but_english_has_its_file() -> None:
    assert [path.stem for path in _TS] == sorted(code for code, _ in LANGUAGES if code != "en")


@pytest.mark.parametrize("path", _TS, ids=lambda path: path.stem)
def test_collecting_the_texts_again_finds_nothing_missing(path: Path, collecting: ModuleType, tmp_path: Path) -> None:
    copy = Path(shutil.copy(path, tmp_path))
    collecting.collect(copy)
    untranslated = [entry.source for entry in entries(copy) if not entry.finished or not entry.translation]
    assert untranslated == []
    assert {entry.source for entry in entries(copy)} == {entry.source for entry in entries(path)}


def test_no_text_stands_where_the_collecting_does_not_look() -> None:
    """Qt's tool passes over calls inside f-strings."""
    known = {entry.source for entry in entries(_TS[0])}
    passed_over = [
        call.args[0].value
        for path in (Path(studyboard.__file__).parent).rglob("*.py")
        for call in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(call, ast.Call) and isinstance(call.func, ast.Name) and call.func.id in ("tr", "tr_later")
        if isinstance(call.args[0], ast.Constant) and call.args[0].value not in known
    ]
    assert passed_over == []


@pytest.mark.parametrize("path", _TS, ids=lambda path: path.stem)
def test_what_the_desk_loads_is_made_of_what_was_translated(path: Path, collecting: ModuleType, tmp_path: Path) -> None:
    collecting.compile_(path, tmp_path / "made.qm")
    made, shipped = QTranslator(), QTranslator()
    assert made.load(str(tmp_path / "made.qm"))
    assert shipped.load(str(path.with_suffix(".qm")))
    for entry in entries(path):
        assert shipped.translate("", entry.source) == made.translate("", entry.source) == entry.translation


@pytest.mark.parametrize("path", _TS, ids=lambda path: path.stem)
def test_translations_keep_placeholders_blanks_and_letters_that_choose(path: Path) -> None:
    for entry in entries(path):
        ours, theirs = set(_PLACEHOLDER.findall(entry.source)), set(_PLACEHOLDER.findall(entry.translation))
        assert ours == theirs, entry
        assert entry.source[:1].isspace() == entry.translation[:1].isspace(), entry
        assert entry.source[-1:].isspace() == entry.translation[-1:].isspace(), entry
        assert re.findall("<[^>]*>", entry.source) == re.findall("<[^>]*>", entry.translation), entry


def test_the_settings_choose_the_language(settings: QSettings) -> None:
    choose_language(settings, "de")
    assert language_in_use(settings) == "de"


@pytest.mark.parametrize("language", ["en", "de"])
def test_letters_that_choose_are_used_once_in_every_menu(language: str, request: pytest.FixtureRequest) -> None:
    if language == "de":
        request.getfixturevalue("german")
    desk: MainWindow = request.getfixturevalue("desk")
    bar = [action.text() for action in desk.menuBar().actions()]
    assert repeated_letters(bar) == []
    for title, menu in desk._menus.items():
        menu.aboutToShow.emit()
        texts = [action.text().split(":")[0] for action in menu.actions() if not action.isSeparator()]
        assert repeated_letters(texts) == [], title


def repeated_letters(texts: list[str]) -> list[str]:
    """The letters that choose more than one of these."""
    letters = [found[1].lower() for text in texts if (found := re.search("&([^&])", text)) is not None]
    return [letter for letter in dict.fromkeys(letters) if letters.count(letter) > 1]


def test_the_menus_are_german(german: None, desk: MainWindow) -> None:
    bar = [action.text().replace("&", "") for action in desk.menuBar().actions()]
    assert bar[:4] == ["Studie", "Bearbeiten", "Varianten", "Skript"]
    english = {spec.text for spec in ACTIONS}
    same = [action.text() for action in desk.actions_by_name.values() if action.text() in english]
    assert set(same) <= {"&Prompter"}


def test_undo_says_in_german_what_it_takes_back(german: None, desk: MainWindow) -> None:
    node = desk.session.study.nodes[desk.session.node]
    desk.session.do(toggle_mark(node, Mark(MarkKind.KEY_SQUARE, (chess.E4,))))
    assert desk.actions_by_name["undo"].text().replace("&", "") == "Rückgängig: Schlüsselfeld zeichnen"
    assert desk.session.file.undo_label == "Draw a key square"


def test_every_label_of_an_edit_is_known(german: None) -> None:
    assert label_words("Promote a side-line") == "Nebenvariante aufwerten"
    assert label_words("Wipe a threat") == "Drohung wegwischen"
    assert label_words("Add 12... Nf6 as it was said") == "12... Nf6 hinzufügen, wie gesagt"
    assert label_words("From another version") == "From another version"


def test_what_can_be_counted_on_the_board_is_told_in_german(german: None) -> None:
    board = chess.Board("4k3/8/6p1/4N3/8/8/8/4K3 w - - 0 1")
    assert [fact.words for fact in facts(board)] == [
        "Bauer g6 hängt: Springer e5 schlägt, nichts deckt.",
        "Weiß hat einen Springer für einen Bauern (3 gegen 1 Punkte).",
    ]
    assert describe_board(board) == "Weiß: König e1, Springer e5. Schwarz: König e8, Bauer g6. Weiß am Zug."
    assert describe_move(board, board.parse_san("Nxg6")) == "Weiß: Springer von e5 schlägt auf g6: Bauer"
    assert over_or_under(-27) == "27 s zu kurz"


def test_the_read_through_keeps_to_the_language_of_the_script(german: None) -> None:
    text = "The knight on g5 attacks the king on e8, and White is a queen up."
    spoken = [finding.why for finding in judge(chess.Board(), text).queries]
    translate_by(str)
    assert spoken == [finding.why for finding in judge(chess.Board(), text).queries] != []


def test_figures_and_dates_follow_the_language(german: None) -> None:
    assert tr("{total:,} games", total=12345) == "12.345 Partien"
    assert tr("{seconds:.1f} s", seconds=2.5) == "2,5 s"
    assert written_number(0.5, "g") == "0,5"
    with as_written():
        assert tr("{seconds:.1f} s", seconds=2.5) == "2.5 s"
    assert moment(datetime(2026, 3, 31, 12, tzinfo=UTC)).startswith("31.03.26")


def test_what_stays_as_it_is_written_does_so_in_this_thread_only(german: None) -> None:
    with as_written():
        assert tr("bishop") == "bishop"
    assert tr("bishop") == "Läufer"


@pytest.mark.parametrize("factor", [1.0, 2.0])
def test_nothing_on_the_german_desk_is_cut(
    german: None, qtbot: QtBot, desk: MainWindow, still_look: Look, factor: float
) -> None:
    with text_scaled(still_look, factor):
        desk.resize(1366, 768)
        for stage in (desk.write_stage, desk.rehearse_stage, desk.record_stage):
            stage()
            QApplication.processEvents()
            assert cut_texts(desk) == []
        desk.write_stage()
        start = StartWindow(still_look)
        qtbot.addWidget(start)
        start.show()
        QApplication.processEvents()
        assert cut_texts(start) == []
        for name in ("edit_headers", "set_slot", "deliver", "new_from_position", "spelling", "pronounce"):
            assert cut_in_dialog(desk.commands.of(name)) == [], name


def cut_in_dialog(open_it: Callable[[], object]) -> list[str]:
    """The texts that are cut in the dialog that this opens; it is closed again."""
    cut: list[str] = []
    shown: list[QWidget] = []

    def look() -> None:
        dialog = QApplication.activeModalWidget()
        if dialog is None:
            return
        shown.append(dialog)
        for _ in range(5):
            QApplication.processEvents()
        cut.extend(cut_texts(dialog))
        if isinstance(dialog, QDialog):
            dialog.reject()
        else:
            dialog.close()

    QTimer.singleShot(0, look)
    open_it()
    assert shown
    return cut


def cut_texts(window: QWidget) -> list[str]:
    """The labels and buttons in which less than their whole text is seen, or which reach out of their window."""
    cut = []
    for widget in window.findChildren(QWidget):
        if not widget.isVisibleTo(window) or not isinstance(widget, QLabel | QAbstractButton) or not widget.text():
            continue
        narrow = isinstance(widget, QPushButton | QCheckBox | QRadioButton) or (
            isinstance(widget, QLabel) and not widget.wordWrap()
        )
        if narrow and widget.width() < widget.minimumSizeHint().width():
            cut.append(f"{widget.text()!r}: {widget.width()} of {widget.minimumSizeHint().width()} px")
        if (
            isinstance(widget, QLabel)
            and widget.wordWrap()
            and widget.height() + 4 < widget.heightForWidth(widget.width())
        ):
            cut.append(f"{widget.text()!r}: {widget.height()} of {widget.heightForWidth(widget.width())} px high")
    return cut
