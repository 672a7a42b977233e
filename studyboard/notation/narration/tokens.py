"""A spoken text cut into words that keep their places in it."""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import IntEnum

_WORD = re.compile(
    r"""
      [0O]-[0O]-[0O](?![\w-]) | [0O]-[0O](?![\w-])                    # castling as it is written
    | [A-Z][a-h]?[1-8]?[x×]?[a-h][1-8](?:=?[A-Z])?(?![a-z0-9])          # moves as they are written
    | [a-h][x×][a-h][1-8](?:=?[A-Z](?![a-z]))?(?!\w)
    | [a-h][18]=?[A-Z](?!\w)
    | [a-hA-H][1-8](?=[a-hA-H][1-8](?![a-zA-Z0-9]))
    | [a-z][a-h]?[1-8]?[x×]?[a-h][1-8](?![a-z0-9])
    | [a-zA-Z][1-8](?![\w])
    | \d+(?:st|nd|rd|th)?(?=[A-Za-z]\b|\b|_)
    | [^\W\d_]+(?:['’ʼ][^\W\d_]+)*                                      # words, with their apostrophes
    | [\d]+
    | [=+#]
    """,
    re.VERBOSE,
)
_PARAGRAPH = re.compile(r"\n[ \t]*\n")
_SENTENCE = re.compile(r"[.!?…;]")
_CLAUSE = re.compile(r"[,:–—()\[\]]|(?<=\s)-+(?=\s)|\n[ \t]*\n")


class Break(IntEnum):
    """What stands between a word and the one before it."""

    NONE = 0
    CLAUSE = 1
    SENTENCE = 2
    PARAGRAPH = 3


@dataclass(frozen=True, slots=True)
class Token:
    """One word of the text.

    text: in lower case, with a plain apostrophe
    written: as it stands in the text
    start, end: where, in characters
    broken: what stands before it
    numbered: True for a number with a dot behind it, as the number of a move is written
    asked: a question ends just before it
    hyphened: it is joined to the word before by a hyphen
    opens, closes: a bracket opens or closes just before it
    """

    text: str
    written: str
    start: int
    end: int
    broken: Break
    numbered: bool = False
    asked: bool = False
    hyphened: bool = False
    opens: bool = False
    closes: bool = False


def tokens_of(text: str) -> tuple[Token, ...]:
    """The words of *text* in order; never raises. O(length)."""
    found: list[Token] = []
    end = 0
    for match in _WORD.finditer(text):
        written = match.group()
        between = text[end : match.start()]
        broken = Break.NONE if found else Break.PARAGRAPH
        if found:
            if _PARAGRAPH.search(between):
                broken = Break.PARAGRAPH
            elif _SENTENCE.search(between):
                broken = Break.CLAUSE if found[-1].numbered else Break.SENTENCE
            elif _CLAUSE.search(between):
                broken = Break.CLAUSE
        end = match.end()
        spelled = bool(found) and broken == Break.NONE and len(found[-1].text) == 1
        numbered = written.isdigit() and not spelled and _is_number_of_a_move(text, end)
        plain = written.lower().replace("’", "'").replace("ʼ", "'")
        found.append(
            Token(
                text=plain,
                written=written,
                start=match.start(),
                end=match.end(),
                broken=broken,
                numbered=numbered,
                asked="?" in between,
                hyphened=between == "-",
                opens="(" in between,
                closes=")" in between,
            )
        )
    return tuple(found)


def _is_number_of_a_move(text: str, end: int) -> bool:
    """Is the number that ends here followed by a dot, and then at once by more of the same sentence?"""
    return bool(re.match(r"\.(?:\.\.|…)?[ ]?[A-Za-z0O]", text[end : end + 6]))
