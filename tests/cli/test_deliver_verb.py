"""Delivering from the command line: every item, alone and with the others."""

from __future__ import annotations

import io
import json
from collections.abc import Callable
from pathlib import Path

import chess.pgn
import pytest
import webvtt
from PIL import Image
from pypdf import PdfReader

from studyboard.model.edits import ChangeHeaders, ChangeNode
from studyboard.model.script import SpokenLine
from studyboard.store.study_file import StudyFile

ITEMS = {
    "--sheet": {".pdf"},
    "--captions": {".vtt", ".srt"},
    "--game": {".pgn"},
    "--still": {".png"},
    "--page": {".html"},
}


@pytest.fixture
def talk(study: Path) -> Path:
    """The study with a spoken line."""
    with StudyFile.open(study) as file:
        e4 = list(file.study.main_line())[1]
        file.do(ChangeNode(e4, "spoken", SpokenLine("Edda opens with the king's pawn, as she always does.")))
    return study


def _written(folder: Path) -> dict[str, Path]:
    return {path.suffix: path for path in _products(folder)}


def _products(folder: Path) -> list[Path]:
    """What was delivered; delivery.json tells of it and is not one of them."""
    return [path for path in folder.iterdir() if path.name != "delivery.json"]


@pytest.mark.parametrize("item", list(ITEMS))
def test_each_item_is_written_alone(say: Callable, talk: Path, tmp_path: Path, item: str) -> None:
    folder = tmp_path / "out"
    answer = say("deliver", talk, "--to", folder, item)
    assert (answer.status, answer.err) == (0, "")
    assert set(_written(folder)) == ITEMS[item]
    assert sorted(answer.out.splitlines()) == sorted(map(str, _products(folder)))


def test_everything_is_written_when_nothing_is_named(say: Callable, talk: Path, tmp_path: Path) -> None:
    folder = tmp_path / "out"
    report = json.loads(say("deliver", talk, "--to", folder, "--json").out)
    assert {Path(one["path"]).suffix for one in report["delivered"]} == set().union(*ITEMS.values(), {".txt"})
    quick = {"sheet", "captions", "game", "still", "chapters", "text", "page"}
    assert {one["item"] for one in report["delivered"]} == quick
    assert all(Path(one["path"]).stat().st_size > 0 for one in report["delivered"])


def test_other_programs_can_read_what_was_written(say: Callable, talk: Path, tmp_path: Path) -> None:
    folder = tmp_path / "out"
    say("deliver", talk, "--to", folder)
    written = _written(folder)
    assert "Marlow" in PdfReader(written[".pdf"]).pages[0].extract_text()
    assert "king's pawn" in " ".join(cue.text for cue in webvtt.read(str(written[".vtt"])))
    game = chess.pgn.read_game(io.StringIO(written[".pgn"].read_text(encoding="utf-8")))
    assert game is not None
    assert game.errors == []
    with Image.open(written[".png"]) as picture:
        assert picture.width == picture.height or picture.width > 500


@pytest.mark.parametrize(("paper", "points"), [("a4", (595, 842)), ("letter", (612, 792))])
def test_the_sheet_is_set_for_the_paper(
    say: Callable, talk: Path, tmp_path: Path, paper: str, points: tuple[int, int]
) -> None:
    # ISO 216: A4 is 210 x 297 mm; ANSI letter is 215.9 x 279.4 mm; a point is 1/72 inch.
    folder = tmp_path / "out"
    say("deliver", talk, "--to", folder, "--sheet", "--paper", paper)
    page = PdfReader(_written(folder)[".pdf"]).pages[0].mediabox
    assert (round(page.width), round(page.height)) == points


def test_the_sheet_is_set_as_it_was_chosen(say: Callable, talk: Path, tmp_path: Path) -> None:
    with StudyFile.open(talk) as file:
        file.do(ChangeNode(list(file.study.main_line())[1], "think", 6.0))

    def text(folder: str, *options: str) -> str:
        say("deliver", talk, "--to", tmp_path / folder, "--sheet", *options)
        return " ".join(page.extract_text() for page in PdfReader(_written(tmp_path / folder)[".pdf"]).pages)

    usual, through = text("usual"), text("through", "--told-through")
    assert "Exercise 1" in usual
    assert "Solutions" in usual
    assert "Notes" in usual
    assert "Exercise" not in through
    assert "Notes" not in text("bare", "--writing-lines", "0")
    assert "Edda opens" in usual
    assert "Edda opens" not in text("notes", "--sheet-text", "notes")
    assert text("large", "--large-print").count("page") > usual.count("page")


def test_stills_are_made_as_they_were_chosen(say: Callable, talk: Path, tmp_path: Path) -> None:
    sizes = {"wide": [(1280, 720)], "tall": [(1080, 1920)], "both": [(1080, 1920), (1280, 720)]}
    for shape, expected in sizes.items():
        folder = tmp_path / shape
        options = ("--still", "--still-shape", shape, "--still-design", "band", "--headline", "Ein schöner Abend")
        answer = say("deliver", talk, "--to", folder, *options, "--still-at", "e4", "--still-result")
        assert (answer.status, answer.err) == (0, "")
        assert sorted(Image.open(path).size for path in _products(folder)) == expected


def test_a_move_for_the_still_that_is_not_played_is_refused_in_one_line(
    say: Callable, talk: Path, tmp_path: Path
) -> None:
    answer = say("deliver", talk, "--to", tmp_path / "out", "--still", "--still-at", "Qh8")
    assert answer.status == 2
    assert answer.err.startswith("studyboard: No move “Qh8” is in the study.")
    assert not (tmp_path / "out").exists()


def test_delivering_again_replaces_what_was_delivered(say: Callable, talk: Path, tmp_path: Path) -> None:
    folder = tmp_path / "out"
    say("deliver", talk, "--to", folder, "--game")
    (first,) = _products(folder)
    with StudyFile.open(talk) as file:
        file.do(ChangeNode(list(file.study.main_line())[2], "spoken", SpokenLine("A new line.")))
    say("deliver", talk, "--to", folder, "--game")
    assert _products(folder) == [first]
    assert "A new line." in first.read_text(encoding="utf-8")


def test_what_lies_there_as_it_would_be_made_is_kept_and_told(say: Callable, talk: Path, tmp_path: Path) -> None:
    folder = tmp_path / "out"
    first = say("deliver", talk, "--to", folder)
    before = {path: path.stat().st_mtime_ns for path in folder.iterdir()}
    second = say("deliver", talk, "--to", folder)
    assert second.out.splitlines() == [f"{line} (kept)" for line in first.out.splitlines()]
    assert (second.status, second.err) == (0, "")
    assert {path: path.stat().st_mtime_ns for path in folder.iterdir()} == before
    third = say("deliver", talk, "--to", folder, "--again")
    assert third.out == first.out
    assert {path: path.stat().st_mtime_ns for path in folder.iterdir()}.items().isdisjoint(before.items())


def test_a_game_is_delivered_without_making_a_study_of_it(say: Callable, games: Path, tmp_path: Path) -> None:
    folder = tmp_path / "out"
    assert say("deliver", games, "--number", 2, "--to", folder, "--game").status == 0
    (path,) = _products(folder)
    assert '[White "Cantor"]' in path.read_text(encoding="utf-8")


def test_an_unknown_paper_is_refused(say: Callable, talk: Path, tmp_path: Path) -> None:
    assert say("deliver", talk, "--to", tmp_path / "out", "--paper", "a5").status == 2
    assert not (tmp_path / "out").exists()


def test_no_bar_is_drawn_where_nobody_watches(call: Callable, talk: Path) -> None:
    answer = call("deliver", talk, "--to", "out")
    assert (answer.status, answer.err) == (0, "")


def test_a_talk_without_words_has_no_captions_and_says_so(say: Callable, study: Path, tmp_path: Path) -> None:
    folder = tmp_path / "out"
    answer = say("deliver", study, "--to", folder)
    assert set(_written(folder)) == {".pdf", ".pgn", ".png", ".txt", ".vtt", ".html"}
    assert not list(folder.glob("*.srt"))
    assert answer.status == 0
    assert answer.err == "studyboard: Nothing is said yet, so there are no captions. Write spoken lines first.\n"


def test_captions_that_were_asked_for_and_cannot_be_made_are_something_wrong(
    say: Callable, study: Path, tmp_path: Path
) -> None:
    answer = say("deliver", study, "--to", tmp_path / "out", "--captions", "--still", "--json")
    assert answer.status == 1
    report = json.loads(answer.out)
    assert [one["item"] for one in report["delivered"]] == ["still"]
    assert report["remarks"] == ["Nothing is said yet, so there are no captions. Write spoken lines first."]


def test_what_pgn_has_no_room_for_is_told(say: Callable, talk: Path, tmp_path: Path) -> None:
    with StudyFile.open(talk) as file:
        file.do(ChangeHeaders((("Annotator", "Long " * 60),)))
    told = "studyboard: The Annotator tag has 300 characters and PGN allows 255: the rest was left out.\n"
    delivered = say("deliver", talk, "--to", tmp_path / "out", "--game")
    printed = say("pgn", talk)
    assert (delivered.status, delivered.err) == (printed.status, printed.err) == (0, told)
    assert _written(tmp_path / "out")[".pgn"].read_text(encoding="utf-8") == printed.out
