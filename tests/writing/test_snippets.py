"""Snippets are filled from the game and from a list of names, and kept for all studies."""

from __future__ import annotations

from pathlib import Path

import pytest

from studyboard.writing.kept_text import CONFIG_DIR, NotKeptError
from studyboard.writing.names_file import read_names
from studyboard.writing.snippets import (
    Filled,
    Snippet,
    fill,
    keep_snippets,
    listed,
    read_snippets,
    snippets_file,
    spoken_date,
    spoken_name,
)

HEADERS = {
    "Event": "Sail Loft Evening League",
    "Site": "?",
    "Date": "2030.05.17",
    "Round": "7",
    "White": "Pell, Imani",
    "Black": "Garvey, Anton",
}


def test_places_are_filled_as_they_are_said() -> None:
    text = "{White} against {black}, round {round} of the {event}, {date}. Thanks to {names}."
    assert fill(text, HEADERS, ["Ada Bo", "Cy", "Di"]) == Filled(
        "Imani Pell against Anton Garvey, round 7 of the Sail Loft Evening League, 17 May 2030. "
        "Thanks to Ada Bo, Cy and Di."
    )


def test_what_is_not_known_stays_and_is_told() -> None:
    assert fill("At {site}, thanks to {names}, {nobody} and {site}.", HEADERS) == Filled(
        "At {site}, thanks to {names}, {nobody} and {site}.", ("site", "names", "nobody")
    )


def test_german_has_its_own_words() -> None:
    assert fill("{date}, {names}", HEADERS, ["Ada", "Bo"], "de_DE").text == "17. Mai 2030, Ada und Bo"


@pytest.mark.parametrize(
    ("date", "said"),
    [("2030.05.17", "17 May 2030"), ("2030.05.??", "May 2030"), ("2030.??.??", "2030"), ("????.??.??", ""), ("?", "")],
)
def test_a_date_is_said_as_far_as_it_is_known(date: str, said: str) -> None:
    assert spoken_date(date) == said


def test_names_as_they_are_said() -> None:
    assert [spoken_name(name) for name in ("Pell, Imani", "Imani", "?", "")] == ["Imani Pell", "Imani", "", ""]
    assert [listed(names) for names in ([], ["Ada"], ["Ada", "Bo"])] == ["", "Ada", "Ada and Bo"]


@pytest.fixture
def config(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv(CONFIG_DIR, str(tmp_path / "config"))
    return tmp_path / "config"


def test_the_program_brings_some_until_there_are_own_ones(config: Path) -> None:
    assert read_snippets("en")[0].name == "Greeting"
    assert read_snippets("de_DE")[0].name == "Begrüßung"
    assert read_snippets("xx") == read_snippets("en")
    own = (Snippet("Grüße", "Hallo {white}\nund {black}!"),)
    keep_snippets(own)
    assert read_snippets("en") == own
    assert snippets_file().parent == config


@pytest.mark.parametrize("text", ["{", '[{"name": "x"}]', "[1]", "7"])
def test_a_file_that_holds_none_is_told_with_its_place_and_left_alone(config: Path, text: str) -> None:
    config.mkdir()
    snippets_file().write_text(text, encoding="utf-8")
    with pytest.raises(NotKeptError, match=r"snippets\.json” holds no snippets"):
        read_snippets()
    assert snippets_file().read_text(encoding="utf-8") == text


@pytest.mark.parametrize(
    ("name", "data", "names"),
    [
        ("a.txt", b"# crew\nAda Bo\n\n  Cy   Dee \nAda Bo\n", ("Ada Bo", "Cy Dee")),
        ("a.txt", "\ufeffÅsa\r\nBjörn\r\n".encode(), ("Åsa", "Björn")),
        ("a.txt", "Jörg\n".encode("cp1252"), ("Jörg",)),
        ("a.csv", b'role,Name\ncamera,Ada Bo\nsound,"Dee, Cy"\n', ("Ada Bo", "Dee, Cy")),
        ("a.csv", "Vorname;Nachname\nÅsa;Bo\nCy;\n".encode(), ("Åsa Bo", "Cy")),
        ("a.tsv", b"Ada\tcamera\nBo\tsound\n", ("Ada", "Bo")),
    ],
)
def test_names_are_read_from_text_and_tables(tmp_path: Path, name: str, data: bytes, names: tuple[str, ...]) -> None:
    (tmp_path / name).write_bytes(data)
    assert read_names(tmp_path / name) == names


@pytest.mark.parametrize(("name", "data"), [("a.txt", b"# nobody\n\n"), ("a.csv", b"name\n"), ("a.txt", b"\0\1\2")])
def test_a_file_without_names_is_refused(tmp_path: Path, name: str, data: bytes) -> None:
    (tmp_path / name).write_bytes(data)
    with pytest.raises(NotKeptError, match=r"holds no name|is no text file"):
        read_names(tmp_path / name)
    with pytest.raises(NotKeptError, match="There is no file"):
        read_names(tmp_path / "gone.txt")
