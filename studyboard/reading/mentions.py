"""The pieces, squares, sides, files and numbers that a spoken line names."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field, replace
from enum import StrEnum

import chess

from studyboard.notation.narration.lexicon import lexicon
from studyboard.notation.narration.tokens import Break, Token
from studyboard.notation.narration.units import units_of
from studyboard.reading.words import ClaimWords, Names

#: A spelled square (“f five”) may cost at most this much to be taken as one: no misheard words.
_PLAIN_SQUARE = 0.2


class Named(StrEnum):
    """What a mention is of."""

    PIECE = "p"
    SQUARE = "s"
    SIDE = "c"
    NUMBER = "n"
    FILE = "f"


@dataclass(frozen=True, slots=True)
class Mention:
    """Words that name something.

    what: what it is; start, end: which words, end excluded; number: its place among the mentions of the line
    kind, colour, square, file: what is said of a piece; None where nothing is
    also: further squares of several pieces: “the pawns on g7 and h7”
    moves_to: True where the square is one that the piece goes to; comes_from: where it came from
    plural, definite, other, pronoun, enemy: how it is named
    light: True for a piece on light squares, False on dark ones
    vague: something else is said of it that the board cannot tell
    value: of a number
    """

    what: Named
    start: int
    end: int
    number: int = 0
    kind: chess.PieceType | None = None
    colour: chess.Color | None = None
    square: chess.Square | None = None
    file: int | None = None
    also: tuple[chess.Square, ...] = ()
    moves_to: bool = False
    comes_from: chess.Square | None = None
    plural: bool = False
    definite: bool = False
    other: bool = False
    pronoun: str = ""
    enemy: bool = False
    light: bool | None = None
    vague: bool = False
    value: int = 0


@dataclass(frozen=True, slots=True)
class Players:
    """Which words name which side, besides the words of the language: names from the headers.

    speaker: the side that the speaker had, where that is one of the players
    pronouns: which of the players “he” and “she” are, where the talk tells
    """

    words: Mapping[str, chess.Color] = field(default_factory=dict)
    speaker: chess.Color | None = None
    pronouns: Mapping[str, chess.Color] = field(default_factory=dict)


def players_of(headers: Mapping[str, str]) -> Players:
    """The names of the players, each word of them that only one has and that is no piece or other word of chess."""
    found: dict[str, set[chess.Color]] = {}
    for tag, colour in (("White", chess.WHITE), ("Black", chess.BLACK)):
        for word in headers.get(tag, "").replace(",", " ").split():
            plain = word.strip(".").lower()
            if len(plain) > 2:
                found.setdefault(plain, set()).add(colour)
    return Players({word: next(iter(colours)) for word, colours in found.items() if len(colours) == 1})


def with_speaker(players: Players, opening: str, words: ClaimWords) -> Players:
    """The players, with “I” and “my” for one of them where the opening words of the talk say which: “I was Black”."""
    said = opening.lower().replace("’", "'")
    colour = next(
        (c for c, hint in ((chess.WHITE, "i_white"), (chess.BLACK, "i_black")) if words.hint(hint, said)), None
    )
    if colour is None:
        named = (players.words.get(found[1]) for found in words.hints["i_named"].finditer(said))
        colour = next((side for side in named if side is not None), None)
    if colour is None:
        return players
    return spoken_by(players, colour, words.names)


def spoken_by(players: Players, colour: chess.Color, names: Names) -> Players:
    """The players, one of whom speaks."""
    return replace(players, words={**players.words, **dict.fromkeys(names.me, colour)}, speaker=colour)


def mentions_of(
    text: str, tokens: Sequence[Token], names: Names, players: Players, cued: Collection[int] = ()
) -> tuple[Mention, ...]:
    """Everything that *text*, cut into these tokens, names, in order, no two overlapping. O(words).

    cued: words at which a move is played; a square before such a word does not belong to a piece behind it.
    """
    hyphens = {at for at, token in enumerate(tokens) if text[token.end : token.end + 1] == "-"}
    return tuple(_Chunker(tokens, hyphens, names, players, frozenset(cued)).all())


class _Chunker:
    """Goes through the words once.

    State: the squares that words spell, the words with a hyphen behind them and those at which a move is played.
    """

    def __init__(
        self, tokens: Sequence[Token], hyphens: set[int], names: Names, players: Players, cued: frozenset[int]
    ) -> None:
        self.tokens = tokens
        self.hyphens = hyphens
        self.names = names
        self.players = players
        self.cued = cued
        self.squares: dict[int, tuple[chess.Square, int]] = {}
        for at, units in enumerate(units_of(tokens, lexicon("en"))):
            for unit in units:
                if unit.kind == "square" and unit.cost <= _PLAIN_SQUARE:
                    self.squares[at] = (int(unit.value), unit.end)

    def all(self) -> list[Mention]:
        found: list[Mention] = []
        at = 0
        while at < len(self.tokens):
            mention = self._piece(at) or self._pronoun(at) or self._square(at) or self._file(at) or self._side(at)
            mention = mention or self._number(at) or self._that_square(at, found)
            if mention is None:
                at += 1
                continue
            found.append(replace(mention, number=len(found)))
            at = mention.end
        return found

    def _that_square(self, at: int, found: Sequence[Mention]) -> Mention | None:
        """“That square”: the one that was named last."""
        if self._word(at) not in self.names.definite or self._word(at + 1) not in self.names.square:
            return None
        last = next((m.square for m in reversed(found) if m.square is not None), None)
        return None if last is None else Mention(Named.SQUARE, at, at + 2, square=last)

    def _word(self, at: int) -> str:
        return self.tokens[at].text if at < len(self.tokens) else ""

    def _joined(self, at: int) -> bool:
        """Does the word at *at* follow the one before without any sign between?"""
        return at < len(self.tokens) and self.tokens[at].broken == Break.NONE

    def _piece(self, start: int) -> Mention | None:
        names = self.names
        at = start
        if self._owns_list(start):
            return None
        mention = Mention(Named.PIECE, start, start)
        while at < len(self.tokens) and (at == start or self._joined(at)):
            word = self._word(at)
            colour, owner = self._owner(word)
            if at == start and word in names.determiners and not (word == "a" and at in self.hyphens):
                mention = replace(mention, definite=word in names.definite)
                mention = replace(mention, colour=self._whose(word))
            elif owner or (colour is not None and word in (*names.white, *names.black)):
                if colour is not None and mention.colour is not None:
                    return None
                mention = replace(mention, colour=colour, definite=mention.definite or owner)
            elif word in names.enemy:
                mention = replace(mention, enemy=True)
            elif word in names.other:
                mention = replace(mention, other=True)
            elif word in ("light", "dark") and self._word(at + 1) in ("squared", "square", "colored", "coloured"):
                mention = replace(mention, light=word == "light")
                at += 1
            elif word in names.wings and self._word(at + 1) not in names.contracted:
                mention = replace(mention, vague=True)
            elif at > start and (file := self._own_pawn(at)) is not None:
                mention = replace(mention, file=file, definite=True)
            elif word in names.adjectives or (
                word in names.numbers[2:9]
                and not self._is_side(at - 1)
                and at > start
                and (self._word(start) in names.determiners or self._owner(self._word(start))[1])
            ):
                pass
            elif (
                at in self.squares
                and self.squares[at][1] == at + 1 < len(self.tokens)
                and self._kind(self._word(self.squares[at][1]))
            ):
                square, after = self.squares[at]
                if not self._joined(after) or after in self.cued:
                    return None
                mention = replace(mention, square=square, definite=True)
                at = after - 1
            elif len(word) == 1 and word in "abcdefgh" and self._kind(self._word(at + 1)) and self._is_file(at, start):
                mention = replace(mention, file="abcdefgh".index(word), definite=True)
            else:
                break
            at += 1
        kind = self._kind(self._word(at)) if at == start or self._joined(at) else None
        if kind is None and self._word(at).endswith("'s") and self._is_of_verb(at + 1):
            # “The bishop's pinned.”
            kind = self._kind(self._word(at).removesuffix("'s")) if at == start or self._joined(at) else None
            if kind is None or not kind[0]:
                return None
            return replace(mention, kind=kind[0], plural=False, end=at + 1)
        if kind is None:
            return None
        piece, plural = kind
        if self._word(at) in names.majesty and self._word(start) in names.hers:
            piece = chess.QUEEN
        if mention.file is not None and piece != chess.PAWN:
            mention = replace(mention, file=None, vague=True)
        mention = replace(mention, kind=piece or None, plural=plural, end=at + 1)
        return self._placed(mention)

    def _is_of_verb(self, at: int) -> bool:
        """Does the word make a verb of the “'s” before it: “the bishop's pinned”, “the king's touching it”?"""
        word, names = self._word(at), self.names
        return word in names.contracted or (word.endswith("ing") and word not in names.nouns_in_ing)

    def _whose(self, word: str) -> chess.Color | None:
        """The side of a player that “my”, “his” or “her” speaks of, where the talk tells who that is."""
        names, players = self.names, self.players
        if word in names.my:
            return players.speaker
        return players.pronouns.get("he" if word in names.his else "she" if word in names.hers else "")

    def _own_pawn(self, at: int) -> int | None:
        """The file of “the king pawn” and “the queen pawn”; None where the words name no such pawn."""
        royal, pawn = self._kind(self._word(at)), self._kind(self._word(at + 1))
        if pawn != (chess.PAWN, False) or not self._joined(at + 1):
            return None
        return {(chess.KING, False): 4, (chess.QUEEN, False): 3}.get(royal or (0, False))

    def _owns_list(self, at: int) -> bool:
        """Does a name with a capital begin what that side has: “…, Black queen and bishop”?"""
        token = self.tokens[at]
        capital = token.written[:1].isupper() and token.broken == Break.CLAUSE and self._is_side(at)
        return capital and self._kind(self._word(at + 1)) is not None and self._word(at + 2) == "and"

    def _is_side(self, at: int) -> bool:
        """Is this word the bare name of a side: “Black two knights” are two that Black has?"""
        return self._word(at) in (*self.names.white, *self.names.black)

    def _is_file(self, at: int, start: int) -> bool:
        """Is this letter a file, and not the article? The article stands before a space, the file before a hyphen."""
        if self._word(at) != "a":
            return True
        if at > start and at not in self.hyphens:
            # “Black a rook”, “White's a piece up”, “only a pawn” have the article.
            kind = self._kind(self._word(at + 1))
            led = self._word(start) in self.names.determiners or self._owner(self._word(start)) != (None, False)
            if self._is_side(at - 1) or kind is None or kind[0] != chess.PAWN or not led:
                return False
        return at > start or (at + 1 < len(self.tokens) and at in self.hyphens)

    def _placed(self, mention: Mention) -> Mention:
        """With the square that follows: “on f6”, “from b8”, “to f3”, or the square alone."""
        at = mention.end
        if not self._joined(at) or self._word(at - 1) in self.names.roles:
            # “A third attacker on d5” stands elsewhere.
            return mention
        if at in self.squares:
            square, end = self.squares[at]
            if mention.square is None and not mention.plural:
                return replace(mention, square=square, end=end, moves_to=not mention.definite)
            return mention
        for phrases, kind in ((self.names.on, "on"), (self.names.origin, "from"), (self.names.to, "to")):
            for phrase in phrases:
                end = at + len(phrase)
                if end in self.squares and self._says(at, phrase) and self._joined(end):
                    square, after = self.squares[end]
                    if kind == "to" and self._takes_from(after):
                        return mention
                    if kind == "from":
                        return replace(mention, comes_from=square, end=after, definite=True)
                    if mention.square is not None:
                        return mention
                    placed = replace(mention, square=square, end=after, moves_to=kind == "to")
                    return self._several(placed) if mention.plural and kind == "on" else placed
        if self._word(at) == "on":
            step = at + 2 if self._word(at + 1) in ("the", "his", "her", "its") else at + 1
            letter = self._word(step)
            if len(letter) == 1 and letter in "abcdefgh" and self._word(step + 1) in self.names.file:
                return replace(mention, file="abcdefgh".index(letter), end=step + 2)
        return mention

    def _takes_from(self, at: int) -> bool:
        """Do the words behind a square tell that it is taken from somebody: “takes g7 and g8 from him”?"""
        while self._word(at) == "and" and at + 1 in self.squares:
            at = self.squares[at + 1][1]
        return self._word(at) in self.names.off

    def _several(self, mention: Mention) -> Mention:
        """With the further squares: “, g7 and h7”."""
        while mention.end < len(self.tokens):
            at = mention.end + (self._word(mention.end) == "and")
            if at not in self.squares or self.tokens[mention.end].broken > Break.CLAUSE:
                break
            square, end = self.squares[at]
            mention = replace(mention, also=(*mention.also, square), end=end)
        return mention

    def _says(self, at: int, phrase: tuple[str, ...]) -> bool:
        return all(self._word(at + step) == word and self._joined(at + step) for step, word in enumerate(phrase))

    def _kind(self, word: str) -> tuple[chess.PieceType, bool] | None:
        return self.names.pieces.get(word)

    def _owner(self, word: str) -> tuple[chess.Color | None, bool]:
        """The side that a word names, and whether it owns what follows."""
        bare = word.removesuffix("'s").removesuffix("'")
        owner = bare != word
        if bare in self.names.white:
            return chess.WHITE, owner
        if bare in self.names.black:
            return chess.BLACK, owner
        if bare in self.players.words and owner:
            return self.players.words[bare], True
        return None, False

    def _pronoun(self, at: int) -> Mention | None:
        word = self._word(at)
        if word in self.names.definite and self._word(at + 1) == "one" and self._joined(at + 1):
            on = at + 3 if self._word(at + 2) in ("on", "at") else at + 2
            if on == at + 3 and on in self.squares and self._joined(at + 2):
                # “The one on g3”.
                square, end = self.squares[on]
                return Mention(Named.PIECE, at, end, square=square, definite=True)
            if word in ("that", "this"):
                return Mention(Named.PIECE, at, at + 2, pronoun="it")
        bare = word.removesuffix("'s").removesuffix("'re").removesuffix("'ve")
        if bare not in self.names.pronouns:
            return None
        return Mention(Named.PIECE, at, at + 1, pronoun=bare, plural=bare in ("them", "they"))

    def _square(self, at: int) -> Mention | None:
        start = at
        if self._word(at) == "the" and self._joined(at + 1):
            at += 1
            if self._word(at) in ("square", "point") and self._joined(at + 1):
                at += 1
        if at not in self.squares:
            return None
        square, end = self.squares[at]
        if self._word(end) in self.names.square and self._joined(end):
            end += 1
        return Mention(Named.SQUARE, start, end, square=square)

    def _file(self, at: int) -> Mention | None:
        start = at
        if self._word(at) == "the" and self._joined(at + 1):
            at += 1
        letter = self._word(at)
        file = self._word(at + 1).removesuffix("'s")
        if len(letter) == 1 and letter in "abcdefgh" and file in self.names.file:
            return Mention(Named.FILE, start, at + 2, file="abcdefgh".index(letter))
        return None

    def _side(self, at: int) -> Mention | None:
        word = self._word(at)
        bare = word.removesuffix("'s").removesuffix("'")
        colour = None
        if self._joined(at + 1) and self._word(at + 1) in self.names.square and self._word(at + 1).endswith("s"):
            # “On white squares” speaks of no side.
            return None
        if bare in self.names.white:
            colour = chess.WHITE
        elif bare in self.names.black:
            colour = chess.BLACK
        elif bare in self.players.words:
            colour = self.players.words[bare]
        if colour is None:
            return None
        end = at + 1
        # First name and family name stand for one side.
        while self._joined(end) and self.players.words.get(self._word(end).removesuffix("'s")) == colour:
            end += 1
        return Mention(Named.SIDE, at, end, colour=colour)

    def _number(self, at: int) -> Mention | None:
        word = self._word(at)
        if word.isdecimal() and len(word) < 4:
            return Mention(Named.NUMBER, at, at + 1, value=int(word))
        if word in self.names.numbers and not (self._word(at - 1) == "no" and at and self._joined(at)):
            return Mention(Named.NUMBER, at, at + 1, value=self.names.numbers.index(word))
        if word in self.names.tens:
            value = 10 * (self.names.tens.index(word) + 2)
            ones = self._word(at + 1)
            if ones in self.names.numbers[1:10] and self._joined(at + 1):
                return Mention(Named.NUMBER, at, at + 2, value=value + self.names.numbers.index(ones))
            return Mention(Named.NUMBER, at, at + 1, value=value)
        return None
