"""How many of which pieces words speak of: “two rooks, a bishop and five pawns”, “all eight pawns”, “both knights”."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import chess

from studyboard.board.naming import counted
from studyboard.reading.claim import Claim
from studyboard.reading.mentions import Mention, Named

_ITEM: Final = re.compile(r"((?:[a-z']+ )*)(?:§n(\d+) )?((?:[a-z']+ )*)§p(\d+)")
_BARE: Final = re.compile(r"§n(\d+)(?: §c\d+)?(?: ones)?$")
#: How many of each kind a side begins with (FIDE Laws of Chess, 2.2).
AT_FIRST: Final = {
    chess.PAWN: 8,
    chess.KNIGHT: 2,
    chess.BISHOP: 2,
    chess.ROOK: 2,
    chess.QUEEN: 1,
    chess.KING: 1,
}
_GROUPS: Final = {
    "minor": ((chess.KNIGHT, chess.BISHOP),),
    "heavy": ((chess.ROOK, chess.QUEEN),),
    "": ((chess.KNIGHT, chess.BISHOP), (chess.KNIGHT, chess.BISHOP, chess.ROOK, chess.QUEEN)),
}


@dataclass(frozen=True, slots=True)
class Thing:
    """Some pieces of one sort, with their number.

    kind: None for pieces of any kind; group: "minor", "heavy", "" for either
    count: how many; exact: no more than that; every: all of them that there were at first
    colour, light, file: of which side, on squares of which colour, on which file, where that is said
    plural: named in the plural
    """

    kind: chess.PieceType | None
    group: str
    count: int
    exact: bool
    every: bool = False
    colour: chess.Color | None = None
    light: bool | None = None
    file: int | None = None
    plural: bool = False

    @classmethod
    def several(cls, kind: chess.PieceType | None) -> Thing:
        """Some of a kind, whose number is not said."""
        return cls(kind, "", 1, False, plural=True)

    @property
    def name(self) -> str:
        """As it is named in a sentence."""
        if self.kind is not None:
            shade = {None: "", True: "light-squared ", False: "dark-squared "}[self.light]
            return f"{shade}{chess.piece_name(self.kind)}"
        return f"{self.group} piece".strip()

    def tallies(self, board: chess.BaseBoard, colours: Sequence[chess.Color], area: int = chess.BB_ALL) -> list[int]:
        """How many there are within *area*; two numbers where the words can be taken in two ways."""
        mask = area
        if self.light is not None:
            mask &= chess.BB_LIGHT_SQUARES if self.light else chess.BB_DARK_SQUARES
        if self.file is not None:
            mask &= chess.BB_FILES[self.file]
        sorts = _GROUPS[self.group] if self.kind is None else ((self.kind,),)
        return [
            sum(chess.popcount(board.pieces_mask(kind, c) & mask) for kind in kinds for c in colours) for kinds in sorts
        ]

    def fits(self, board: chess.BaseBoard, colours: Sequence[chess.Color], area: int = chess.BB_ALL) -> bool:
        """Are there so many?"""
        found = self.tallies(board, colours, area)
        return self.count in found if self.exact or not self.count else max(found) >= self.count


def things_named(claim: Claim, group: str, *, like: Thing | None = None) -> list[Thing]:
    """What a group counts; empty where one of its names is of a certain piece, or says no number.

    like: what a number alone counts
    """
    said = claim.said(group)
    bare = _BARE.search(said)
    if bare is not None and like is not None and "§p" not in said:
        return [_same(like, claim.scene.mentions[int(bare[1])].value)]
    found: list[Thing] = []
    for item in _ITEM.finditer(said):
        thing = _item(claim, item)
        if thing is None:
            # “…, he has two” begins the next clause.
            return found if found and said[: item.start()].rstrip().endswith(",") else []
        found.append(thing)
    return found


def things_behind_comma(claim: Claim, group: str) -> list[Thing]:
    """What is counted behind the last “, and” where the names before it belong to the clause that ends there."""
    comma, _, last = claim.said(group).rpartition(" , and ")
    items = list(_ITEM.finditer(last)) if comma else []
    if len(items) != 1:
        return []
    thing = _item(claim, items[0])
    return [] if thing is None else [thing]


def _item(claim: Claim, item: re.Match[str]) -> Thing | None:
    """What one item of a list counts."""
    number = None if item[2] is None else claim.scene.mentions[int(item[2])].value
    return _thing(claim, claim.scene.mentions[int(item[4])], number, f"{item[1]}{item[3]}".split())


def _thing(claim: Claim, mention: Mention, number: int | None, before: Sequence[str]) -> Thing | None:
    if (
        mention.square is not None
        or mention.pronoun
        or mention.comes_from is not None
        or mention.enemy
        or mention.other
    ):
        return None
    tokens = [token.text for token in claim.scene.tokens[mention.start : mention.end]]
    words = [*before, *tokens]
    if not is_plain(claim, mention):
        return None
    if {"extra", "additional", "spare"} & set(words):
        return None
    if mention.vague and not {"minor", "major", "heavy"} & set(words):
        return None
    table = claim.scene.words.names
    pairs = 2 if "pair" in before else 1
    inside = next((table.numbers.index(word) for word in tokens[1:] if word in table.numbers), None)
    at_first = 0 if mention.kind is None else AT_FIRST[mention.kind]
    every = False
    exact = True
    if number is not None or inside is not None:
        count = (number if number is not None else inside or 0) * pairs
        every = "all" in words
    elif "no" in words or "zero" in words or "neither" in words or "any" in words:
        count = 0
    elif pairs == 2:
        count = 2
    elif "both" in words:
        count, every = 2, True
    elif "all" in words:
        count, every = at_first, True
        if not mention.kind or not mention.plural:
            return None
    elif {"single", "only", "one", "lone", "last", "sole", "remaining"} & set(
        words if not mention.definite else tokens
    ) and not mention.plural:
        count = 1
    elif mention.plural:
        if mention.definite:
            return None
        count, exact = 1, False
    elif mention.definite and mention.light is None and not _some_file(mention, tokens):
        return None
    else:
        count, exact = 1, False
    group = "minor" if "minor" in words else "heavy" if {"major", "heavy"} & set(words) else ""
    return Thing(
        mention.kind,
        group,
        count,
        exact,
        every,
        mention.colour,
        mention.light,
        mention.file,
        mention.plural,
    )


def _some_file(mention: Mention, tokens: Sequence[str]) -> bool:
    """“A c-pawn”, which may or may not be there."""
    return mention.file is not None and tokens[0] in ("a", "an", "any")


def is_plain(claim: Claim, mention: Mention) -> bool:
    """Is it named as a piece and no more: no “attacker”, no “bad bishop”, of which there may be fewer?"""
    tokens = [token.text for token in claim.scene.tokens[mention.start : mention.end]]
    return not claim.scene.words.hint("qualified", " ".join(tokens))


def _same(like: Thing, count: int) -> Thing:
    return Thing(like.kind, like.group, count, True, False, None, like.light, like.file, True)


def cut_short(claim: Claim, group: str, things: Sequence[Thing]) -> bool:
    """Were there more names in the list than things, because the next clause begins among them?"""
    return 0 < len(things) < len(_ITEM.findall(claim.said(group)))


def listed_last(claim: Claim, group: str) -> int:
    """How many of the things of a list to leave out because the last of them begins the next clause."""
    return 1 if re.search(r" , (?:and |or )?(?:[a-z]+ )*(?:§n\d+ )?§p\d+$", claim.said(group)) else 0


def words_for(board: chess.BaseBoard, things: Sequence[Thing], colours: Sequence[chess.Color], area: int) -> str:
    """How many of these things there really are: “four rooks and a bishop”."""
    told = [counted(max(thing.tallies(board, colours, area)), thing.name) for thing in things]
    return told[0] if len(told) == 1 else f"{', '.join(told[:-1])} and {told[-1]}"


def is_number(claim: Claim, group: str) -> bool:
    """Does a group say a number?"""
    return any(m.what is Named.NUMBER for m in claim.mentions(group))
