"""Sentences about who attacks and who guards what, in every form of statement, true and false, for any position.

What is true is what python-chess says of the board: the squares of `Board.attackers`. Pieces that are pinned, stand
behind another piece of their line or have one behind them are left out, since speakers count those in either way.
"""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import dataclass

import chess

from studyboard.board.relations import attackers_with_support

_NUMBERS = ("no", "one", "two", "three")
_TIMES = ("", "once", "twice", "three times")


@dataclass(frozen=True, slots=True)
class Verb:
    """A verb in the forms of which the sentences are made, and the noun for who does it."""

    third: str
    base: str
    participle: str
    noun: str
    guards: bool


VERBS = (
    Verb("protects", "protect", "protected", "protector", guards=True),
    Verb("defends", "defend", "defended", "defender", guards=True),
    Verb("guards", "guard", "guarded", "guard", guards=True),
    Verb("supports", "support", "supported", "defender", guards=True),
    Verb("attacks", "attack", "attacked", "attacker", guards=False),
    Verb("hits", "hit", "hit", "attacker", guards=False),
    Verb("bothers", "bother", "bothered", "attacker", guards=False),
)

#: Of one piece {p} that does it or does not.
_OF_ONE = (
    "{P} {does} {t}.",
    "{T} is {done} by {p}.",
    "It is {p} that {does} {t}.",
    "What {does} {t} is {p}.",
    "What {does} {t}? {P}.",
    "{T}, which {p} {does}, stays where it is.",
    "{T}, {done} by {p}, stays where it is.",
    "{P}, which {does} {t}, stays where it is.",
    "{P} helps to {do} {t}.",
    "And {p} {does} {t} too, you see.",
    "Well, {p} already {does} {t}, so there is no hurry at all.",
)
#: Of one piece that alone does it.
_OF_ONE_ALONE = (
    "Only {p} {does} {t}.",
    "{P} alone {does} {t}.",
    "{T} is {done} by {p} alone.",
    "{T} is {done} only by {p}.",
    "{P} is the only {noun} of {t}.",
    "The only {noun} of {t} is {p}.",
    "Nobody but {p} {does} {t}.",
    "{P} is the only piece that {does} {t}.",
    "{P} {does} {t}, and nothing else does.",
    "Apart from {p} nothing {does} {t}.",
    "{T} has a single {noun}, {p}.",
)
#: Of nothing that does it.
_OF_NONE = (
    "Nothing {does} {t}.",
    "Nobody {does} {t}.",
    "Nothing of {side}'s {does} {t}.",
    "{T} is {done} by nothing.",
    "{T} isn't {done}.",
    "{T} is not {done} at all.",
)
#: Of so many that do it, and of so many in the plural.
_COUNTED = ("{T} is {done} {times}.", "{side} {does} {t} {times}.")
_COUNTED_SEVERAL = (
    "{T} has {number} {noun}s.",
    "{Number} of {side}'s men {do} {t}.",
    "{T} is {done} by {number} pieces.",
)
#: Of two that do it.
_OF_TWO = (
    "{P} and {q} {do} {t}.",
    "{P} and {q} both {do} {t}.",
    "Both {p} and {q} {do} {t}.",
    "{T} is {done} by {p} and {q}.",
    "{T} is {done} both by {p} and by {q}.",
    "{P} {does} {t}, and so does {q}.",
    "{P} {does} {t}, as does {q}.",
    "Not only {p} but also {q} {does} {t}.",
    "{P} together with {q} {does} {t}.",
)
_OF_NEITHER = ("Neither {p} nor {q} {does} {t}.",)


@dataclass(frozen=True, slots=True)
class Said:
    """A sentence, whether it is true of the position, and the form in which it is said."""

    form: str
    text: str
    true: bool


def sentences(board: chess.Board, verb: Verb, rng: random.Random) -> Iterator[Said]:
    """Every form of statement about one piece of the board, where there is one that can be spoken of."""
    targets = [at for at in board.piece_map() if board.piece_type_at(at) != chess.KING and _counts_plainly(board, at)]
    if not targets:
        return
    target = rng.choice(targets)
    side = board.color_at(target) is verb.guards
    doing = sorted(board.attackers(side, target))
    idle = [at for at, piece in board.piece_map().items() if piece.color == side and at not in (*doing, target)]
    if not idle:
        return
    words = _Words(board, verb, target, side)
    one, none = (rng.choice(doing) if doing else None), rng.choice(idle)
    for form in _OF_ONE:
        if one is not None:
            yield words.said(form, True, one)
        yield words.said(form, False, none)
    for form in _OF_ONE_ALONE:
        if one is not None:
            yield words.said(form, len(doing) == 1, one)
    for form in _OF_NONE:
        yield words.said(form, not doing)
    for count in range(1, len(_TIMES)):
        for form in (*_COUNTED, *(_COUNTED_SEVERAL if count > 1 else ())):
            yield words.said(form, count == len(doing), count=count)
    pairs = [(doing[0], doing[1], True)] if len(doing) > 1 else []
    if one is not None:
        pairs += [(one, none, False), (none, one, False)]
    for form in _OF_TWO:
        yield from (words.said(form, true, first, second) for first, second, true in pairs)
    for form in _OF_NEITHER:
        if one is not None:
            yield words.said(form, False, one, none)
        if len(idle) > 1:
            yield words.said(form, True, *rng.sample(idle, 2))


def random_position(rng: random.Random) -> chess.Board:
    """A position after some random moves, no check in it."""
    while True:
        board = chess.Board()
        for _ in range(rng.randint(16, 50)):
            moves = list(board.legal_moves)
            if not moves:
                break
            board.push(rng.choice(moves))
        if not board.is_check() and not board.is_game_over():
            return board


def _counts_plainly(board: chess.Board, at: chess.Square) -> bool:
    return all(
        len(attackers_with_support(board, colour, at)) == len(board.attackers(colour, at))
        and not any(board.is_pinned(colour, by) for by in board.attackers(colour, at))
        for colour in chess.COLORS
    )


@dataclass(frozen=True, slots=True)
class _Words:
    """What is put into the forms."""

    board: chess.Board
    verb: Verb
    target: chess.Square
    side: chess.Color

    def said(self, form: str, true: bool, first: chess.Square = 0, second: chess.Square = 0, *, count: int = 0) -> Said:
        verb, p, q, t = self.verb, self._name(first), self._name(second), self._name(self.target)
        text = form.format(
            p=p,
            q=q,
            t=t,
            P=_capital(p),
            T=_capital(t),
            does=verb.third,
            do=verb.base,
            done=verb.participle,
            noun=verb.noun,
            side="White" if self.side else "Black",
            number=_NUMBERS[count],
            Number=_capital(_NUMBERS[count]),
            times=_TIMES[count],
        )
        return Said(form, text, true)

    def _name(self, at: chess.Square) -> str:
        kind = self.board.piece_type_at(at)
        return "" if kind is None else f"the {chess.piece_name(kind)} on {chess.square_name(at)}"


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]
