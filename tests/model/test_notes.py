"""Notes without the commands that programs leave in them, and the commands alone."""

from __future__ import annotations

import pytest

from studyboard.model.notes import command_text, plain_text


@pytest.mark.parametrize(
    ("note", "plain", "commands"),
    [
        ("", "", ""),
        ("A good move.", "A good move.", ""),
        ("[%clk 0:01:02]", "", "[%clk 0:01:02]"),
        ("Good. [%clk 0:01:02] Really.", "Good. Really.", "[%clk 0:01:02]"),
        ("[%a 1][%b 2] both", "both", "[%a 1] [%b 2]"),
        ("one\n[%a 1]\ntwo", "one\n\ntwo", "[%a 1]"),
        ("[see the note] stays", "[see the note] stays", ""),
        ("[%unclosed stays", "[%unclosed stays", ""),
    ],
)
def test_a_reader_sees_the_words_and_the_commands_are_kept_apart(note, plain, commands):
    assert plain_text(note) == plain
    assert command_text(note) == commands
