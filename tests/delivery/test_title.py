"""What a study is called in print and in file names."""

from __future__ import annotations

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from studyboard.delivery.title import date_in_words, file_stem, full_name, known, players, study_title, surname
from studyboard.model.study import Study


def test_players_and_event_make_the_title():
    headers = {"White": "Halvorse, Maja", "Black": "Nduka, Ade", "Event": "Harbour Club Winter Evening"}
    assert study_title(headers) == "Halvorse – Nduka, Harbour Club Winter Evening"


def test_what_is_not_known_is_left_out():
    assert study_title(Study().headers) == "Study"
    assert study_title({"White": "Halvorse, Maja", "Black": "?"}) == "Halvorse – Black"
    assert study_title({"Event": "Endings for Thursday"}) == "Endings for Thursday"
    assert players({"White": "?", "Black": ""}) == ""
    assert known({"Round": "-"}, "Round") == ""


def test_names_as_they_are_spoken():
    assert (surname("Nduka, Ade"), full_name("Nduka, Ade")) == ("Nduka", "Ade Nduka")
    assert (surname("Ade Nduka"), full_name("Ade Nduka")) == ("Ade Nduka", "Ade Nduka")
    assert full_name("Nduka,") == "Nduka"


@pytest.mark.parametrize(
    ("date", "words"),
    [
        ("2024.01.17", "17 January 2024"),
        ("2024.05.??", "May 2024"),
        ("2024.??.??", "2024"),
        ("????.??.??", ""),
        ("2024-05-07", "7 May 2024"),
        ("last winter", "last winter"),
        ("2024.13.40", "2024"),
    ],
)
def test_dates_in_words(date, words):
    assert date_in_words(date) == words


@pytest.mark.parametrize(
    ("title", "stem"),
    [
        ("Halvorse – Nduka, Harbour Club Winter Evening", "Halvorse-Nduka-Harbour-Club-Winter-Evening"),
        ("What’s next? A/B: <c> | d*", "Whats-next-A-B-c-d"),
        ("Ян Ковач, 漢字", "Ян-Ковач-漢字"),
        ("../../etc/passwd", "etc-passwd"),
        ("con", "study-con"),
        ("LPT1", "study-LPT1"),
        ("…", "study"),
        ("", "study"),
        ("v. 1.5.", "v-1.5"),
    ],
)
def test_file_names(title, stem):
    assert file_stem(title) == stem


@given(st.text(st.characters(exclude_categories=())))
@example("a" * 300)
@example(".hidden")
@example("nul.x")
def test_any_title_gives_a_name_that_every_file_system_takes(title):
    """Windows: reserved signs, device names, no dot or space at the end; Linux: at most 255 bytes. From memory."""
    stem = file_stem(title)
    assert stem
    assert len(stem.encode("utf-8", "surrogatepass")) <= 100
    assert not set(stem) & set('<>:"/\\|?* \x00')
    assert stem.isprintable()
    assert not stem.startswith((".", "-"))
    assert not stem.endswith((".", " ", "-"))
    assert stem.split(".")[0].upper() not in {"CON", "PRN", "AUX", "NUL", *(f"COM{n}" for n in range(10))}
