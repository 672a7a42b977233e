"""Text that can be shown."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.delivery.printable import printable


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("two\n\nlines", "two lines"),
        ("a\u2028b\x85c\td", "a b c d"),
        ("bell\x07 and null\x00", "bell and null"),
        ("half a pair \ud83d", "half a pair \N{REPLACEMENT CHARACTER}"),
        ("♘f3 – Ян, 漢字", "♘f3 – Ян, 漢字"),
    ],
)
def test_what_is_left_of_a_text(text, shown):
    assert printable(text) == shown


@given(st.text(st.characters()))
def test_any_text_becomes_one_line_that_can_be_stored(text):
    shown = printable(text)
    assert len(shown.splitlines()) <= 1
    assert shown.encode().decode() == shown == printable(shown)
