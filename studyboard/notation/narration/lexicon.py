"""The words of one language in which moves are said, read from its file of data."""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from typing import Any, TypeAlias

import chess

from studyboard.notation.narration.errors import NoSuchLanguageError
from studyboard.resources_path import resource

_PIECES = {
    "pawn": chess.PAWN,
    "knight": chess.KNIGHT,
    "bishop": chess.BISHOP,
    "rook": chess.ROOK,
    "queen": chess.QUEEN,
    "king": chess.KING,
}
#: What a misheard word costs more than the word itself, by what it stands for.
_MISHEARD = {
    "piece": 0.35,
    "plural": 0.0,
    "flank": 0.0,
    "letter": 0.45,
    "digit": 0.45,
    "square": 1.7,
    "capture": 0.6,
    "check": 0.3,
    "castles": 0.9,
}
#: What it costs that "the corner" is meant as the square where a move ends.
_CORNER = 0.8
_WEAK = 0.5
_SHORTEST_ADVERB = 4
_COMMA = " ,"

Value: TypeAlias = "int | str"


@dataclass(frozen=True, slots=True)
class Saying:
    """One phrase and what it can mean.

    words: the phrase, in lower case
    kind: "piece", "letter", "digit", "square", "capture", "motion", "link", "check", …
    value: which piece, file, rank, square; for other kinds their sort
    cost: how unlikely it is that this is meant by it
    """

    words: tuple[str, ...]
    kind: str
    value: Value
    cost: float = 0.0


@dataclass(frozen=True, slots=True)
class CueSaying:
    """A phrase that says what kind of thing the moves near it are.

    words: the phrase
    kind: "branch", "return", or the kind of a mention
    behind: True where the phrase follows the move
    weight: how strongly it says so
    reach: over how many words
    whole_sentence: True where it colours the rest of its sentence
    listed: True where it is about several moves with commas between them
    opening: True where it counts only at the beginning of a sentence
    clause: True where it counts only at the beginning of a clause
    means: True where "with" leads to what does it, and not to what it is done to
    home: True for a return that only somebody announces who has left the line
    rejects: True for leaving the line by a move that is at once refuted or advised against
    answered: True where it leads to a move only if "with" and another move follow it, and else makes a mention
    ends: True where a comma or more must stand behind it
    over_comma: True for one that follows the move and may stand behind a comma
    """

    words: tuple[str, ...]
    kind: str
    behind: bool
    weight: float
    reach: int
    whole_sentence: bool = False
    listed: bool = False
    opening: bool = False
    clause: bool = False
    home: bool = False
    means: bool = False
    rejects: bool = False
    answered: bool = False
    ends: bool = False
    over_comma: bool = False


@dataclass(frozen=True, slots=True)
class Lexicon:
    """The words of one language.

    sayings, cues: phrases by their first word
    san: letters of the pieces in written moves
    fillers: words that may stand anywhere inside a spoken move
    filler_endings: endings of further such words, as of adverbs
    adverbs: words that may stand inside a cue, besides those with the endings of fillers
    joining: words that string together what one cue is about
    parting: words that begin something new, as a comma does
    openers: words that open a further clause, so that what was named before them does not move behind them
    pronouns: words that can be what a cue is about
    here: phrases that say that it is this position of which they speak
    numerals: the numbers of moves, by their words
    """

    language: str
    sayings: Mapping[str, tuple[Saying, ...]]
    cues: Mapping[str, tuple[CueSaying, ...]]
    san: Mapping[str, int]
    fillers: frozenset[str] = field(default_factory=frozenset)
    filler_endings: tuple[str, ...] = ()
    adverbs: frozenset[str] = field(default_factory=frozenset)
    joining: frozenset[str] = field(default_factory=frozenset)
    parting: frozenset[str] = field(default_factory=frozenset)
    openers: frozenset[str] = field(default_factory=frozenset)
    pronouns: frozenset[str] = field(default_factory=frozenset)
    here: frozenset[tuple[str, ...]] = frozenset()
    numerals: Mapping[str, int] = field(default_factory=dict)

    def is_filler(self, word: str) -> bool:
        """May the word stand anywhere inside a spoken move without meaning anything?"""
        return word in self.fillers or self._ends_as_adverb(word)

    def is_adverb(self, word: str) -> bool:
        """May the word stand inside a cue without changing what it says?"""
        return word in self.adverbs or self._ends_as_adverb(word)

    def _ends_as_adverb(self, word: str) -> bool:
        return word.endswith(self.filler_endings) and len(word) > _SHORTEST_ADVERB


@cache
def lexicon(language: str) -> Lexicon:
    """The words of a language by its two-letter code (BCP 47). Raises NoSuchLanguageError where there is no file."""
    missing = NoSuchLanguageError(f"Moves cannot be read in the language “{language}”: there is no file of its words.")
    if not language.isalpha():
        raise missing
    try:
        path = resource("narration", f"{language}.toml")
    except FileNotFoundError as reason:
        raise missing from reason
    return parsed_lexicon(tomllib.loads(path.read_text(encoding="utf-8")))


def parsed_lexicon(table: Mapping[str, Any]) -> Lexicon:
    """The words that a file of data describes."""
    sayings: list[Saying] = []
    for kind in ("piece", "plural", "letter", "digit", "square", "flank"):
        sayings += _sayings(kind, table.get(kind, {}), 0.0)
        sayings += _sayings(kind, table.get("misheard", {}).get(kind, {}), _MISHEARD[kind])
    sayings += _sayings("square", table.get("corner", {}), _CORNER)
    plain_kinds = (
        "capture",
        "castles",
        "side",
        "promotes",
        "check",
        "mate",
        "colour",
        "motion",
        "link",
        "back",
        "origin",
        "neutral",
        "landmark",
        "trade",
        "instead",
        "same",
        "stands_for",
    )
    for kind in (*plain_kinds, "with", "number"):
        sayings += _sayings(kind, table.get(kind, {}), 0.0)
        sayings += _sayings(kind, table.get("misheard", {}).get(kind, {}), _MISHEARD.get(kind, 0.5))
    cues: list[CueSaying] = []
    for name, entry in table.get("cues", {}).items():
        kind = str(entry.get("kind", name))
        strong = CueSaying(
            words=(),
            kind=kind,
            behind=False,
            weight=float(entry["weight"]),
            reach=int(entry["reach"]),
            whole_sentence=bool(entry.get("whole_sentence")),
            listed=bool(entry.get("listed")),
            home=bool(entry.get("home")),
            means=bool(entry.get("means")),
            rejects=bool(entry.get("rejects")),
            answered=bool(entry.get("answered")),
        )
        weak = replace(strong, weight=strong.weight * _WEAK, whole_sentence=False)
        for key, cue in (
            ("before", strong),
            ("weak", weak),
            ("opening", replace(strong, opening=True)),
            ("clause", replace(strong, clause=True)),
            ("weak_opening", replace(weak, opening=True)),
            ("after", replace(strong, behind=True)),
            ("after_comma", replace(strong, behind=True, over_comma=True)),
            ("weak_after", replace(weak, behind=True)),
        ):
            cues += (_cue(cue, phrase) for phrase in entry.get(key, ()))
    fillers = frozenset(word for phrase in table.get("filler", {}).get("words", ()) for word in phrase.split())
    adverbs = frozenset(table.get("adverb", {}).get("words", ()))
    joining = frozenset(table.get("joining", {}).get("words", ()))
    parting = frozenset(table.get("parting", {}).get("words", ()))
    openers = frozenset(table.get("opener", {}).get("words", ()))
    pronouns = frozenset(table.get("pronoun", {}).get("words", ()))
    san = {letter: _PIECES[name] for name, letter in table.get("san", {}).items()}
    numerals = {word: int(number) for number, group in table.get("numeral", {}).items() for word in group}
    return Lexicon(
        language=str(table.get("language", "")),
        sayings=_by_first(sayings),
        cues=_by_first(cues),
        san=san,
        fillers=fillers,
        filler_endings=tuple(table.get("filler", {}).get("endings", ())),
        adverbs=adverbs,
        joining=joining,
        parting=parting,
        openers=openers,
        pronouns=pronouns,
        here=frozenset(tuple(phrase.split()) for phrase in table.get("here", {}).get("words", ())),
        numerals=numerals,
    )


def _cue(cue: CueSaying, phrase: str) -> CueSaying:
    words = tuple(phrase.removesuffix(_COMMA).split())
    return replace(cue, words=words, ends=phrase.endswith(_COMMA))


def _sayings(kind: str, table: Mapping[str, Iterable[str]], cost: float) -> list[Saying]:
    return [
        Saying(tuple(phrase.split()), kind, _value(kind, value), cost) for value in table for phrase in table[value]
    ]


def _value(kind: str, value: str) -> Value:
    if kind in ("piece", "plural"):
        return _PIECES[value]
    if kind in ("letter", "flank"):
        return "abcdefgh".index(value)
    if kind == "digit":
        return int(value) - 1
    if kind == "square":
        return chess.parse_square(value)
    return value


def _by_first(phrases: Iterable[Any]) -> dict[str, tuple[Any, ...]]:
    found: dict[str, list[Any]] = {}
    for phrase in phrases:
        found.setdefault(phrase.words[0], []).append(phrase)
    return {word: tuple(sorted(group, key=lambda p: -len(p.words))) for word, group in found.items()}
