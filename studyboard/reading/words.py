"""The words of claims in one language, read from resources/claims."""

from __future__ import annotations

import re
import threading
import time
import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

import chess

from studyboard.model.errors import StudyboardError
from studyboard.resources_path import resource

_ITEM = r"(?:(?:<before_count>) )*(?:§n\d+ )?(?:(?:<behind_count>) )*§p\d+"
_LIST = rf"{_ITEM}(?:(?: ,)?(?: <joins_count>|(?<=,)) {_ITEM})*"
_AMOUNT = (
    r"(?:§n\d+ |a |an |the |one )?"
    r"(?:clean |whole |full |minor |the |good |clear |more |extra |additional )*(?:§p\d+|exchange)"
)
_HOLDER = (
    r"(?:(?P<both><both_sides>|(?:both|each) of §p\d+|§c\d+ and §c\d+)|(?P<neither><neither>|neither of §p\d+)"
    r"|(?P<side>§c\d+)|(?P<piece>§p\d+))"
)
_PIECES = r"§p\d+(?:(?: ,)? (?:and|or|nor|and also|or even|as well as) §p\d+| , §p\d+)*"
_SQUARES = (
    r"§s\d+(?:(?: ,)? (?:and|or|nor)(?: also| another| a second)?(?: one)?(?: on| to| from)? §s\d+"
    r"| ,(?: on| to)? §s\d+)*"
)
_WHO = (
    r"(?:(?P<none><nobody>)(?: else)?|(?P<side>§c\d+)|(?P<same>and|but|or|which|that|who)"
    r"|(?:(?<!not )(?P<sole><alone>) )?"
    r"(?:(?P<neither>neither(?: of)?|none of|not one of) |both |either |any of )?@doers)"
    r"(?: (?!and\b)<adverb>)*"
)
_CAN = (
    r"(?:(?P<unable><unable>)|(?:<able>))"
    r"(?: (?!only\b)<adverb>)*(?: (?P<last>only))?(?: <adverb>)*"
)
_MACROS = (
    ("@who", _WHO),
    ("@can", _CAN),
    ("@doers", rf"(?P<doers>{_PIECES})"),
    ("@tool", rf"(?P<tool>{_PIECES})"),
    ("@to", rf"(?P<to>{_SQUARES})"),
    ("@holder", _HOLDER),
    (
        "@things",
        r"(?P<things>§[ps]\d+"
        r"(?:(?: ,)? (?:and|or|plus|as well as|but also) (?:, along the \w+ , )?"
        r"(?:also |even |then |by |at |on |both |all )?§[ps]\d+"
        r"| ,(?: by)? §[ps]\d+)*)",
    ),
    ("@piece", r"(?P<piece>§p\d+)"),
    ("@side", r"(?P<side>§c\d+)"),
    ("@times", r"(?P<times>once|twice|thrice|§n\d+ times)"),
    ("@number", r"(?P<number>§n\d+)"),
    ("@square", r"(?P<square>§[s]\d+)"),
    ("@file", r"(?P<file>§f\d+)"),
    ("@list2", rf"(?P<list2>(?:§c\d+ )?(?:(?:<before_count>) )*(?:{_LIST}|§n\d+(?: §c\d+)?(?: ones)?))"),
    ("@list", rf"(?P<list>{_LIST})"),
    (
        "@where",
        r"(?P<where><on_wing>|on §f\d+|on (?:the |his |her |its )?(?:<nth>) rank|on (?:the )?(?:<shades>) squares)",
    ),
    ("@kinds", r"(?P<kinds>§p\d+(?: (?:and|against|versus) §p\d+)*)"),
    *((f"@amount{n}", rf"(?P<amount{n}>{_AMOUNT})") for n in ("2", "3")),
    ("@amount", rf"(?P<amount>{_AMOUNT})"),
)


class ClaimWordsError(StudyboardError):
    """A file of words that cannot be used; the message names the pattern."""


@dataclass(frozen=True, slots=True)
class Names:
    """How things are named.

    pieces: type (0 for any piece) and whether several are meant, by word
    majesty, hers: words for a king, and those before them that make a queen of it: “her majesty”
    pointing: determiners that point at what was named last: “that pawn”
    before_square: words behind which a square alone is a pawn's move
    after_capture: words that may follow “pawn takes” without making something else of it
    roles: pieces named by what they do to a square: “attacker”
    nouns_in_ing: words that are no verb behind “the king's”
    indefinite: names of none or of all, with which a verb may be joined: “nobody's guarding it”
    off: words behind a square that is taken away: “takes e5 from the knight”
    us: words for the speaker and those beside, with their verb: “we're”
    his: words for what belongs to a man; owning: to what was named last
    contracted: words behind “the bishop's” that make a verb of it: “the bishop's pinned”
    on, origin, to: words between a piece and the square where it stands, from which it came, to which it goes
    """

    pieces: Mapping[str, tuple[chess.PieceType, bool]]
    determiners: frozenset[str]
    definite: frozenset[str]
    hers: frozenset[str]
    majesty: frozenset[str]
    pointing: frozenset[str]
    adjectives: frozenset[str]
    other: frozenset[str]
    enemy: frozenset[str]
    wings: frozenset[str]
    pronouns: frozenset[str]
    white: frozenset[str]
    black: frozenset[str]
    file: frozenset[str]
    square: frozenset[str]
    roles: frozenset[str]
    nouns_in_ing: frozenset[str]
    indefinite: frozenset[str]
    off: frozenset[str]
    contracted: frozenset[str]
    on: tuple[tuple[str, ...], ...]
    origin: tuple[tuple[str, ...], ...]
    to: tuple[tuple[str, ...], ...]
    numbers: tuple[str, ...]
    tens: tuple[str, ...]
    ordinals: tuple[str, ...]
    me: tuple[str, ...]
    us: frozenset[str]
    my: frozenset[str]
    his: frozenset[str]
    owning: frozenset[str]
    tenths: tuple[str, ...]
    after_capture: frozenset[str]
    before_square: frozenset[str]


@dataclass(frozen=True, slots=True)
class ClaimWords:
    """The words of one language.

    patterns: compiled patterns by what they claim, in the order of the file
    moods: phrases that mark what is not said of the board, by mood
    names: how pieces, sides, squares and numbers are named
    hints: what stands around a statement and changes how it is taken, by name
    plain: ways of saying and what is put for them, in order; {name} in the latter is what a group has found
    """

    patterns: tuple[tuple[str, re.Pattern[str]], ...]
    moods: Mapping[str, frozenset[tuple[str, ...]]]
    names: Names
    hints: Mapping[str, re.Pattern[str]]
    plain: tuple[tuple[re.Pattern[str], str], ...] = ()

    def hint(self, name: str, text: str) -> bool:
        """Does what stands around a statement hold this hint? Raises KeyError for one that the file has not."""
        return self.hints[name].search(text) is not None


#: For how long compiling gives way after each pattern (s).
_WAY_GIVEN = 0.002


@cache
def claim_words(language: str = "en") -> ClaimWords:
    """The words of a language. Raises FileNotFoundError where the program ships none, ClaimWordsError if damaged."""
    table = tomllib.loads(resource("claims", f"{language}.toml").read_text(encoding="utf-8"))
    plain = tomllib.loads(resource("claims", f"{language}_plain.toml").read_text(encoding="utf-8"))
    return parse_claim_words({**table, "words": {**table["words"], **plain["words"]}, "plain": plain["plain"]})


def parse_claim_words(table: Mapping[str, Any]) -> ClaimWords:
    """The words that a file describes. Raises ClaimWordsError."""
    lists = _in_all_forms(table["words"], table.get("forms", {}))
    patterns = []
    for kind, sayings in table["claims"].items():
        for saying in sayings:
            patterns.append((str(kind), _compiled(str(saying), lists)))
    moods = {
        name: frozenset(tuple(phrase.split()) for phrase in phrases) for name, phrases in table.get("mood", {}).items()
    }
    hints = {name: re.compile(_with_lists(str(pattern), lists)) for name, pattern in table["hints"].items()}
    plain = tuple((_compiled(str(said), lists), str(means)) for said, means in table.get("plain", {}).get("say", ()))
    return ClaimWords(tuple(patterns), moods, _names(table["names"]), hints, plain)


def _in_all_forms(lists: Mapping[str, Sequence[str]], forms: Mapping[str, Any]) -> dict[str, Sequence[str]]:
    """The lists of words, those of verbs with each phrase in all the forms of the verb with which it begins."""
    forms_of: Mapping[str, Sequence[str]] = forms.get("of", {})
    found = dict(lists)
    for name in forms.get("lists", ()):
        said: list[str] = []
        for phrase in lists[name]:
            verb, _, rest = phrase.partition(" ")
            said += [phrase, *(f"{form} {rest}".rstrip() for form in forms_of.get(verb, ()))]
        found[name] = list(dict.fromkeys(said))
    return found


def _give_way() -> None:
    """Beside the desk's thread: let it have the interpreter, which compiling would keep from it for a second in all."""
    if threading.current_thread() is not threading.main_thread():
        time.sleep(_WAY_GIVEN)


def _names(table: Mapping[str, Sequence[str]]) -> Names:
    pieces: dict[str, tuple[chess.PieceType, bool]] = {}
    for kind, name in enumerate(("piece", *chess.PIECE_NAMES[1:])):
        pieces |= dict.fromkeys(table[str(name)], (kind, False))
        pieces |= dict.fromkeys(table[f"{name}s"], (kind, True))

    def one(name: str) -> frozenset[str]:
        return frozenset(table[name])

    def several(name: str) -> tuple[tuple[str, ...], ...]:
        return tuple(sorted((tuple(phrase.split()) for phrase in table[name]), key=len, reverse=True))

    return Names(
        pieces=pieces,
        determiners=one("determiners"),
        definite=one("definite"),
        hers=one("hers"),
        majesty=one("majesty"),
        pointing=one("pointing"),
        adjectives=one("adjectives"),
        other=one("other"),
        enemy=one("enemy"),
        wings=one("wings"),
        pronouns=one("pronouns"),
        white=one("white"),
        black=one("black"),
        file=one("file"),
        square=one("square"),
        roles=one("roles"),
        nouns_in_ing=one("nouns_in_ing"),
        indefinite=one("indefinite"),
        off=one("off"),
        contracted=one("contracted"),
        on=several("on"),
        origin=several("origin"),
        to=several("to"),
        numbers=tuple(table["numbers"]),
        tens=tuple(table["tens"]),
        ordinals=tuple(table["ordinals"]),
        me=tuple(table["me"]),
        us=one("us"),
        my=one("my"),
        his=one("his"),
        owning=one("owning"),
        tenths=tuple(table["tenths"]),
        after_capture=one("after_capture"),
        before_square=one("before_square"),
    )


def _with_lists(saying: str, lists: Mapping[str, Sequence[str]]) -> str:
    """A pattern with the phrases of its lists in place of their names."""

    def choices(found: re.Match[str]) -> str:
        if found[1] not in lists:
            raise ClaimWordsError(f"The pattern “{saying}” names a list of words that is not there: {found[1]}.")
        longest_first = sorted(dict.fromkeys(lists[found[1]]), key=len, reverse=True)
        return f"(?:{'|'.join(re.escape(phrase).replace(chr(92) + ' ', ' ') for phrase in longest_first)})"

    # A list is written <name>, and a named group (?P<name>: only the first is one of ours.
    return re.sub(r"(?<!\?P)<(\w+)>", choices, saying)


def _compiled(saying: str, lists: Mapping[str, Sequence[str]]) -> re.Pattern[str]:
    text = _with_lists(saying, lists)
    text = re.sub(r"\((?!\?)", "(?:", text)
    for macro, expression in _MACROS:
        expanded = _with_lists(expression, lists) if macro in text else ""
        while macro in text:
            # A name stands for the first thing of its sort; the others are found and not named.
            used = set(re.findall(r"\(\?P<(\w+)>", text))
            taken = "|".join(sorted(used)) or "(?!)"
            once = re.sub(rf"\(\?P<(?:{taken})>", "(?:", expanded)
            text = text.replace(macro, once, 1)
    _give_way()
    try:
        return re.compile(rf"(?<![\w§'-])(?:{text})(?![\w'-])")
    except re.error as reason:
        raise ClaimWordsError(f"The pattern “{saying}” cannot be used: {reason}.") from reason
