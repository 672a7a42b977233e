"""The words of a PGN file: patterns for its tags, moves and comments, after sections 7 to 10 of the standard (1994)."""

from __future__ import annotations

import re
import sys

from studyboard.model.study import SEVEN_TAG_ROSTER

#: What stands between tokens: white space of any kind, the dots after move numbers, byte-order marks.
BETWEEN = "".join(chr(code) for code in range(0x3001) if chr(code).isspace()) + ".…\ufeff\u200b"
_BETWEEN = f"[{re.escape(BETWEEN)}]"
_IN_WORD = rf"[^{re.escape(BETWEEN)}(){{}};$!?\[\]]"

#: One token of the movetext with what stands before it; `lastindex` of a match says which of the kinds it is.
TOKEN = re.compile(
    rf"""
    {_BETWEEN}*+
    (?:
        (?: \d++ \s*+ \. {_BETWEEN}*+ )?
        (                                                         # 1 a move, perhaps
            (?: [a-hknqrA-HKNOPQRo♔-♟] {_IN_WORD}*+ (?: (?<=[18=])\([QRBNqrbn]\)[+\#]* )? (?: (?<=e)\.\s?p\b\.? )?
              | 0-0 (?:-0)? (?![-\d]) [+\#]*
              | -- (?!\d) | Z0 | @@@@ | 0000 (?![\d.]) )
        )
        ( [!?]* )                                                 # 2 its suffix
      | ( (?: 1-0 | 0-1 | 1/2(?:-1/2)? | ½(?:-½)? | \* ) (?! {_IN_WORD} ) ) # 3 a result
      | ( \d++ (?: \s*+ \.++ )? )                                 # 4 a move number alone
      | \{{ ( [^}}]*+ ) ( \}}? )                                  # 5, 6 a comment and whether it ends
      | ^% ( .*+ )                                                # 7 an escaped line
      | ; ( .*+ )                                                 # 8 a comment to the end of the line
      | ( \( )                                                    # 9
      | ( \) )                                                    # 10
      | \$ ( \d*+ )                                               # 11 a numeric annotation glyph
      | ( [!?]++ )                                                # 12 a suffix on its own
      | ( \[ [^\]\n]*+ \]? )                                      # 13 a tag where none belongs
      | ( {_IN_WORD}++ | . )                                      # 14 anything else
      | ( \Z )                                                    # 15 the end
    )
    """,
    re.VERBOSE | re.MULTILINE,
)
MOVE, RESULT, NUMBER, COMMENT, ESCAPED, LINE_COMMENT, OPENS, CLOSES = 2, 3, 4, 6, 7, 8, 9, 10
GLYPH, SUFFIX, STRAY_TAG, OTHER, END = 11, 12, 13, 14, 15

#: A move number with its dots, and a word that was meant to be a move though it is none, such as Nf9.
NUMBERED = re.compile(rf"{_BETWEEN}*+(\d{{1,6}})\s*+(\.[.\s]*+|…)")
LIKE_A_MOVE = re.compile(r"[KQRBNP]?[a-h]?\d?[-x:]?[A-Za-z]\d(?:=?[A-Za-z])?[+#]?")

#: A tag pair as the standard has it, and anything that was probably meant to be one.
TAG = re.compile(r'[ \t]*\[[ \t]*([A-Za-z0-9_]+)[ \t]*"((?:[^"\\\n]|\\.)*+)"[ \t]*\]')
LOOSE_TAG = re.compile(r'^[ \t]*+\[[ \t]*([A-Za-z][A-Za-z0-9_]*)(?=[ \t":=])[ \t:=]*+([^\n]*+)', re.MULTILINE)

#: The suffixes of section 8.2.3.8 as glyph numbers, and the signs of evaluation that books print (section 10).
SUFFIXES = {"!": 1, "?": 2, "!!": 3, "??": 4, "!?": 5, "?!": 6}
SIGNS = {
    "=": 10, "∞": 13, "+=": 14, "+/=": 14, "⩲": 14, "=+": 15, "=/+": 15, "⩱": 15, "+/-": 16, "±": 16,
    "-/+": 17, "∓": 17, "+-": 18, "-+": 19, "□": 7, "⊙": 22, "⨀": 22,
}  # fmt: skip
SIGN_AFTER_MOVE = re.compile(r"(.+?)(\+/?[-=]|[-=]/?\+|[=∞⩲⩱±∓□⊙⨀])")
EN_PASSANT = re.compile(r"e\.?\s?p\.?")

_BREAK = re.compile(r"[ \t]*\n[ \t]*")
_PARAGRAPH = re.compile(r"[ \t]*\n[ \t]*(?:\n[ \t]*)+")
_NAMES = {name.lower(): name for name in (*SEVEN_TAG_ROSTER, "FEN", "SetUp", "Variant", "ECO")}


def comment_text(raw: str) -> str:
    """The text of a brace comment: its line breaks are spaces, and an empty line in it parts two paragraphs."""
    if "\n" not in raw:
        return raw.strip(" \t")
    return "\n".join(_BREAK.sub(" ", part) for part in _PARAGRAPH.split(raw.strip(" \t\n")))


def tag_value(raw: str) -> str:
    """The value of a tag pair without its escapes (section 7)."""
    return raw if "\\" not in raw else re.sub(r'\\(["\\])', r"\1", raw)


def tag_name(raw: str) -> str:
    """The name of a tag in the case that the standard gives it, where it is one of the standard's own."""
    return sys.intern(_NAMES.get(raw.lower(), raw))


def decoded(data: bytes) -> str:
    """Text of one game: UTF-8, else Windows-1252, which holds the standard's Latin-1; line ends become \\n."""
    for encoding in ("utf-8", "cp1252", "latin-1"):
        try:
            text = data.decode(encoding)
        except UnicodeDecodeError:
            continue
        return text.replace("\r\n", "\n").replace("\r", "\n") if "\r" in text else text
    raise AssertionError("Latin-1 decodes everything.")
