"""The smallest pieces of PGN."""

from __future__ import annotations

import pytest

from studyboard.notation.pgn_tokens import BETWEEN, TOKEN, comment_text, decoded, tag_name, tag_value


@pytest.mark.parametrize(
    ("raw", "text"),
    [
        ("", ""),
        (" plain ", "plain"),
        ("two  spaces stay", "two  spaces stay"),
        ("one\ntwo", "one two"),
        ("one  \n\t two", "one two"),
        ("\n one\n", "one"),
        ("one\n\ntwo", "one\ntwo"),
        ("one \n \n \n two\nthree", "one\ntwo three"),
    ],
)
def test_line_breaks_in_a_comment_are_spaces_and_an_empty_line_parts_paragraphs(raw, text):
    assert comment_text(raw) == text


@pytest.mark.parametrize(
    ("raw", "value"),
    [(r"plain", "plain"), (r"\"x\"", '"x"'), (r"a\\b", r"a\b"), (r"a\b", r"a\b"), (r"\\\"", '\\"')],
)
def test_only_quotes_and_backslashes_are_escaped_in_tags(raw, value):
    assert tag_value(raw) == value


def test_names_of_the_standard_get_its_case_and_others_keep_theirs():
    assert [tag_name(name) for name in ("white", "FEN", "fen", "setup", "eCo", "mySite")] == [
        "White", "FEN", "FEN", "SetUp", "ECO", "mySite",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("data", "text"),
    [
        (b"plain\r\nlines\rhere\n", "plain\nlines\nhere\n"),
        ("é “x”".encode(), "é “x”"),
        ("é “x”".encode("cp1252"), "é “x”"),
        (b"\x81\x8d", "\x81\x8d"),
    ],
)
def test_bytes_become_text_in_the_encoding_that_fits(data, text):
    assert decoded(data) == text


def test_every_character_of_a_text_belongs_to_one_token_or_stands_between_two():
    text = "1. e4!? {a} (1. d4 $1) 1-0 ;rest\n%esc\n[x] ~ e8(Q)+ 0-0-0 .. \ufeff"
    at = 0
    for match in TOKEN.finditer(text):
        assert match.start() == at
        at = match.end()
    assert at == len(text)
    assert " " in BETWEEN
