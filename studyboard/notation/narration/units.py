"""What each word of a spoken text can stand for: a piece, a square, a capture, and so on, misheard ones included."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

import chess

from studyboard.notation.narration.forms import Form
from studyboard.notation.narration.lexicon import Lexicon, Value
from studyboard.notation.narration.tokens import Break, Token

_SQUARE = re.compile(r"([a-h])([1-8])")
_WRITTEN = re.compile(r"([^\W\d_]?)([a-h]?)([1-8]?)([x×]?)([a-h][1-8])(?:=?([^\W\d_]))?")
_APART = 0.15
#: "Rook d to e1" hardly means d2.
_TO_A_SQUARE = 0.6
#: The letter that is an article too, and what it costs where it can hardly be one.
_ARTICLE, _PLAIN_LETTER = "a", 0.0
_IN_SAYINGS = frozenset({"capture", "check", "mate", "piece", "castles", "trade"})
_POSSESSIVE = 0.4
_ALLOWANCE = 0.65
_DOUBT = 3.0
_LOWER_CASE_PIECE = 0.3


@dataclass(frozen=True, slots=True)
class Unit:
    """One reading of one or a few words.

    kind: as in the lexicon, besides "written" for a move in algebraic notation
    value: which piece, file, rank, square …; for a written move 0
    start, end: which words, end excluded
    cost: how unlikely the reading is
    form: what a written move says
    """

    kind: str
    value: Value
    start: int
    end: int
    cost: float
    form: Form | None = None


def units_of(tokens: Sequence[Token], words: Lexicon) -> list[tuple[Unit, ...]]:
    """For each word the readings that begin with it. O(words × phrases with the same first word)."""
    found: list[list[Unit]] = [_said(tokens, at, words) for at in range(len(tokens))]
    for at, here in enumerate(found):
        here += _squares(tokens, at, found)
        here += _written(tokens[at], at, words)
    return _heard_as_well_as(_misheard_share(found), found)


def _misheard_share(found: Sequence[Sequence[Unit]]) -> float:
    """The share of misheard ones among the pieces and squares that stand together, as a measure of the whole text."""
    plain = misheard = 0
    for at, here in enumerate(found):
        pieces = [unit.cost for unit in here if unit.kind == "piece"]
        for cost in pieces:
            squares = [unit.cost for unit in found[at + 1] if unit.kind == "square"] if at + 1 < len(found) else []
            if squares and cost + min(squares) > _APART + 0.05:
                misheard += 1
            elif squares:
                plain += 1
    return misheard / (plain + misheard + _DOUBT)


def _heard_as_well_as(share: float, found: Sequence[Sequence[Unit]]) -> list[tuple[Unit, ...]]:
    """The units, with misheard words cheaper where there are many of them."""
    factor = 1.0 - _ALLOWANCE * share
    return [tuple(replace(unit, cost=unit.cost * factor) if unit.cost else unit for unit in here) for here in found]


def _said(tokens: Sequence[Token], at: int, words: Lexicon) -> list[Unit]:
    token = tokens[at]
    if token.numbered:
        return []
    found: dict[tuple[str, Value], Unit] = {}
    bare = token.text.removesuffix("'s")
    for text in {token.text, bare}:
        for saying in words.sayings.get(text, ()):
            end = at + len(saying.words)
            if len(saying.words) > 1 and not _goes_on(tokens, at, saying.words):
                continue
            cost = saying.cost + (_POSSESSIVE if text != token.text else 0.0)
            if saying.kind == "letter" and len(text) == 1 and end < len(tokens) and tokens[end].hyphened:
                cost = 0.0
            unit = Unit(saying.kind, saying.value, at, end, cost)
            key = (saying.kind, saying.value)
            if key not in found or found[key].end < end or found[key].cost > unit.cost:
                found[key] = unit
    # The longest saying is what is meant: "takes up a post" takes nothing.
    idioms = [unit.end for unit in found.values() if unit.kind in ("neutral", "motion")]
    longest = max(idioms, default=at)
    return [unit for unit in found.values() if unit.kind not in _IN_SAYINGS or unit.end >= longest]


def _goes_on(tokens: Sequence[Token], at: int, phrase: tuple[str, ...]) -> bool:
    if at + len(phrase) > len(tokens):
        return False
    return all(
        tokens[at + step].text == word and tokens[at + step].broken < Break.SENTENCE
        for step, word in enumerate(phrase)
        if step
    )


def _behind_a_square(at: int, found: Sequence[Sequence[Unit]]) -> bool:
    return any(unit.kind == "square" and unit.end == at for here in found[max(0, at - 2) : at] for unit in here)


def _squares(tokens: Sequence[Token], at: int, found: Sequence[Sequence[Unit]]) -> list[Unit]:
    """Squares that are written in one ("f5"), in two ("f 5"), or spelled ("f five", "be for")."""
    whole = _SQUARE.fullmatch(tokens[at].text)
    if whole:
        return [Unit("square", chess.parse_square(whole.group()), at, at + 1, 0.0)]
    if at + 1 >= len(tokens) or tokens[at + 1].broken != Break.NONE:
        return []
    # "A four" right behind another square is no article with a number.
    alone = tokens[at].text == _ARTICLE and _behind_a_square(at, found)
    leads_on = at + 2 < len(tokens) and _leads_to_a_square(tokens[at + 2])
    squares: dict[int, Unit] = {}
    for letter in found[at]:
        if letter.kind != "letter" or letter.end != at + 1:
            continue
        for digit in found[at + 1]:
            if digit.kind == "digit" and digit.end == at + 2:
                square = chess.square(int(letter.value), int(digit.value))
                cost = min(letter.cost, _PLAIN_LETTER) if alone else letter.cost
                cost += _TO_A_SQUARE * (leads_on and digit.cost > 0)
                unit = Unit("square", square, at, at + 2, cost + digit.cost + _APART)
                if square not in squares or squares[square].cost > unit.cost:
                    squares[square] = unit
    return list(squares.values())


def _leads_to_a_square(token: Token) -> bool:
    return token.broken == Break.NONE and _SQUARE.fullmatch(token.text) is not None


def _written(token: Token, at: int, words: Lexicon) -> list[Unit]:
    """Moves in algebraic notation; in lower case the letter of a piece may be small as well."""
    if token.text in ("o-o", "0-0", "o-o-o", "0-0-0"):
        return [Unit("written", 0, at, at + 1, 0.0, Form(castles="long" if len(token.text) > 3 else "short"))]
    found: list[Unit] = []
    if len(token.text) < 3:
        return found
    for written, cost in {token.written: 0.0, token.written[0].upper() + token.written[1:]: _LOWER_CASE_PIECE}.items():
        match = _WRITTEN.fullmatch(written)
        if not match:
            continue
        letter, file, rank, takes, to, promoted = match.groups()
        if letter and letter not in words.san and letter in "abcdefgh" and not file:
            letter, file = "", letter
        piece = chess.PAWN if not letter else words.san.get(letter)
        if piece is None or (piece == chess.PAWN and file and not takes):
            continue
        promotion = words.san.get(promoted.upper()) if promoted else None
        form = Form(
            piece=piece,
            to=chess.parse_square(to),
            from_file="abcdefgh".index(file) if file else None,
            from_rank=int(rank) - 1 if rank else None,
            capture=bool(takes),
            promotion=promotion,
            exact=True,
        )
        found.append(Unit("written", 0, at, at + 1, cost, form))
    return found
