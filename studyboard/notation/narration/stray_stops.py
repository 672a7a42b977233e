"""Full stops that a transcribing machine has set in the middle of moves."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from studyboard.notation.narration.tokens import Break, Token
from studyboard.notation.narration.units import Unit

#: So many stops, and such a share of all, have to stand between what moves and its square: writers do that rarely.
_FEWEST, _SHARE = 3, 0.04
_PLAIN = 0.5
_MISHEARD_SQUARE = 1.0


def without_stray_stops(tokens: Sequence[Token], units: Sequence[Sequence[Unit]]) -> tuple[Token, ...]:
    """The words with only a comma where a stop cuts a move in two, if that happens often in the text. O(length)."""
    stops = sum(token.broken == Break.SENTENCE for token in tokens)
    stray = {at for at in range(1, len(tokens)) if _cuts_a_move(at, tokens, units)}
    if len(stray) < max(_FEWEST, _SHARE * stops):
        return tuple(tokens)
    return tuple(replace(token, broken=Break.CLAUSE) if at in stray else token for at, token in enumerate(tokens))


def _cuts_a_move(at: int, tokens: Sequence[Token], units: Sequence[Sequence[Unit]]) -> bool:
    """Does a stop stand between a piece or a capture and the square ahead of which it was said?"""
    if tokens[at].broken != Break.SENTENCE or tokens[at].asked:
        return False
    before = any(unit.kind in ("piece", "capture") and unit.end == at and unit.cost < _PLAIN for unit in units[at - 1])
    return before and any(unit.kind == "square" and unit.cost < _MISHEARD_SQUARE for unit in units[at])
