"""Which words of a script are taken for misspelt, with the real dictionaries of the system."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from studyboard.example import example_study
from studyboard.model.script import Part
from studyboard.model.study import Study
from studyboard.writing import dictionaries
from studyboard.writing.dictionaries import NoDictionaryError, closest, languages, open_dictionary
from studyboard.writing.kept_text import CONFIG_DIR, NotKeptError
from studyboard.writing.spelling import Speller, keep_own_words, known_words, own_words
from studyboard.writing.written_words import word_at, written_words


@pytest.fixture(scope="module")
def english() -> Speller:
    return Speller(open_dictionary("en_US"), "en_US")


def unknown(speller: Speller, text: str) -> list[str]:
    return [word.text for word in speller.unknown(text)]


def test_misspelt_words_are_found_with_their_places(english: Speller) -> None:
    (word,) = english.unknown("The knihgt jumps, doesn't it?")
    assert (word.start, word.end, word.text) == (4, 10, "knihgt")
    assert "knight" in english.suggestions(word.text)


def test_an_apostrophe_of_either_kind_is_part_of_its_word(english: Speller) -> None:
    assert unknown(english, "It doesn’t work, it doesn't, and White’s king's alone.") == []
    assert unknown(english, "the players' rooks, ‘quoted’ and 'quoted'") == []


@pytest.mark.parametrize(
    "text",
    [
        "Nf3 exd5 O-O O-O-O 0-0 e4-e5 Rfd1+ b8=Q# Qxh7+!! 12... Nxe5",
        "the e4-square, the c3-knight and a7–g1",
        "at 21:30, on 2030-05-17, 12th, 3.5 points, 1-0, ½-½",
        "FIDE and ECO, A and B",
        "see www.example.com, someone@example.org or https://example.net/qwzx",
        "It is zugzwang, a fianchetto on the kingside, en passant, en prise.",
        "Good evening, {names}!",
    ],
)
def test_moves_squares_numbers_addresses_and_words_of_the_trade_are_never_marked(english: Speller, text: str) -> None:
    assert unknown(english, text) == []


def test_half_of_a_hyphenated_word_is_found(english: Speller) -> None:
    assert unknown(english, "a well-knwon idea") == ["knwon"]


def test_names_are_learnt_from_the_headers_and_others_are_not() -> None:
    speller = Speller(open_dictionary("en_US"), "en_US")
    text = "Qvortrup’s rook beats Zsombory of the Pfeilheim club, says Xandrasy."
    assert unknown(speller, text) == ["Qvortrup’s", "Zsombory", "Pfeilheim", "Xandrasy"]
    study = Study({"White": "Qvortrup, Ane", "Black": "Zsombory, Mil", "Event": "Pfeilheim Open", "Result": "*"})
    speller.learn(known_words(study))
    assert unknown(speller, text) == ["Xandrasy"]
    speller.learn(known_words(study, ["Lu Xandrasy"]))
    assert unknown(speller, text) == []
    speller.learn(())
    assert len(unknown(speller, text)) == 4


def test_words_of_the_study_and_words_with_a_pronunciation_are_right() -> None:
    speller = Speller(open_dictionary("en_US"), "en_US")
    study = Study()
    study.words, study.pronunciations = frozenset({"brilliancyprize"}), {"Xandrasy": "SHAN-drah-shee"}
    speller.learn(known_words(study))
    assert unknown(speller, "A Brilliancyprize for Xandrasy and Yandrasy.") == ["Yandrasy"]


def test_the_example_talk_has_no_misspelt_word(english: Speller) -> None:
    study = example_study()
    speller = Speller(open_dictionary("en_US"), "en_US")
    speller.learn(known_words(study))
    texts = [node.spoken.text for node in study.nodes.values()] + [study.line(part).spoken.text for part in Part]
    british = {"centre", "colour", "defence", "grey"}
    assert {word.text for text in texts for word in speller.unknown(text)} <= british


def test_german_has_its_own_words() -> None:
    if "de_DE" not in languages():
        pytest.skip("no German dictionary")
    german = Speller(open_dictionary("de_DE"), "de_DE")
    assert unknown(german, "Der Läufer steht auf dem Königsflügel, und Weiß rochiert in Zugzwang.") == []
    assert unknown(german, "Der Läufr zieht.") == ["Läufr"]


def test_a_missing_dictionary_says_what_to_install() -> None:
    with pytest.raises(NoDictionaryError, match=r"no dictionary of “xx_YY” on this system: apt install hunspell-xx-yy"):
        open_dictionary("xx_YY")


def test_without_the_library_spelling_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "enchant", None)
    with pytest.raises(NoDictionaryError, match="pip install pyenchant"):
        open_dictionary("en_US")
    assert dictionaries.languages() == ()


@pytest.mark.parametrize(
    ("wanted", "there", "taken"),
    [
        ("en_GB", ("de_DE", "en_GB", "en_US"), "en_GB"),
        ("de", ("de_AT", "de_DE", "en_US"), "de_DE"),
        ("de_CH", ("de_AT", "en_US"), "de_AT"),
        ("fr", ("de_DE",), "fr"),
        ("en", (), "en_US"),
    ],
)
def test_the_closest_language_is_taken(wanted: str, there: tuple[str, ...], taken: str) -> None:
    assert closest(wanted, there) == taken


def test_own_words_are_kept_for_all_studies(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(CONFIG_DIR, str(tmp_path / "not there yet"))
    assert own_words() == frozenset()
    keep_own_words(["Überraschungszug", "wow"])
    assert own_words() == {"Überraschungszug", "wow"}
    (tmp_path / "blocked").write_text("a file in the way of the folder", encoding="utf-8")
    monkeypatch.setenv(CONFIG_DIR, str(tmp_path / "blocked"))
    with pytest.raises(NotKeptError, match="cannot be written"):
        keep_own_words(["x"])


def test_the_word_at_a_place_of_the_text() -> None:
    text = "Imani’s rook, e4."
    assert [None if (word := word_at(text, at)) is None else word.text for at in (0, 7, 10, 12, 13, 14)] == [
        "Imani’s",
        "Imani’s",
        "rook",
        "rook",
        None,
        "e",
    ]
    assert [word.text for word in written_words(text)] == ["Imani’s", "rook"]
