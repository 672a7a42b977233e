"""Words in the language of a script, without a desk."""

from __future__ import annotations

import subprocess
import sys
from threading import Thread

import pytest

from studyboard.translation import as_written, in_language, tr, written_number

ALONE = """
import sys
from studyboard.translation import in_language, tr
with in_language("de_AT"):
    print(tr("Exercise {number}", number=3))
assert not any(name.startswith("PySide6") for name in sys.modules)
"""


@pytest.mark.parametrize("language", ["de", "de_DE", "de-CH", "DE"])
def test_german_is_spoken_for_as_long_as_it_lasts(language):
    with in_language(language):
        assert tr("Exercise {number}", number=3) == "Aufgabe 3"
        assert written_number(1234.5, ",.1f") == "1.234,5"
    assert tr("Exercise {number}", number=3) == "Exercise 3"


@pytest.mark.parametrize("language", ["", "en_GB", "xx", "../de", "…"])
def test_without_a_translation_it_is_english(language):
    with in_language(language):
        assert tr("Solutions") == "Solutions"
        assert written_number(1234.5, ",.1f") == "1,234.5"


def test_what_is_not_translated_stays_as_it_is():
    with in_language("de"):
        assert tr("A sentence that nobody has translated.") == "A sentence that nobody has translated."


def test_english_can_be_asked_for_within_it():
    with in_language("de"):
        with as_written():
            assert tr("Solutions") == "Solutions"
        assert tr("Solutions") == "Lösungen"


def test_other_threads_go_on_as_before():
    heard = []
    with in_language("de"):
        other = Thread(target=lambda: heard.append(tr("Solutions")))
        other.start()
        other.join()
    assert heard == ["Solutions"]


def test_qt_is_not_needed():
    run = subprocess.run([sys.executable, "-c", ALONE], capture_output=True, text=True, check=True)
    assert run.stdout.strip() == "Aufgabe 3"
