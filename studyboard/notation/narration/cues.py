"""What the words around a move say about it: that it is played, imagined, planned, feared or only spoken of."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from studyboard.notation.narration.lexicon import CueSaying, Lexicon
from studyboard.notation.narration.tokens import Break, Token

#: How much of a cue's strength is left behind a comma, and how much a word takes away from it.
_BEHIND_A_COMMA = 0.45
_FADING = 0.035
_REACH_BACK = 3
_SPOKEN_OF = 0.12


@dataclass(slots=True)
class Context:
    """What is known about one word of the text from the words around it.

    branch, back: how strongly they speak for leaving the line, for coming back to it (0 to about 1)
    against: how strongly they speak against a move being played here
    kind: the kind of mention that they make of it, if they do
    """

    branch: float = 0.0
    back: float = 0.0
    against: float = 0.0
    kind: str = ""

    @property
    def passing(self) -> float:
        """The share of the usual cost at which a move named here may be passed over."""
        return max(_SPOKEN_OF, 1.0 - 0.45 * self.against)


def contexts_of(tokens: Sequence[Token], anchors: Sequence[bool], words: Lexicon) -> list[Context]:
    """The context of each word. anchors: True for words that hold a square, a piece or a capture."""
    found = [Context() for _ in tokens]
    for at in range(len(tokens)):
        longest = 0
        for cue in words.cues.get(tokens[at].text, ()):
            if len(cue.words) < longest or not _said_here(tokens, at, cue.words):
                continue
            longest = max(longest, len(cue.words))
            if cue.behind:
                _colour_back(found, tokens, anchors, at, cue)
            else:
                _colour(found, tokens, anchors, at + len(cue.words), cue, words.joining)
    return found


def _said_here(tokens: Sequence[Token], at: int, phrase: tuple[str, ...]) -> bool:
    if at + len(phrase) > len(tokens):
        return False
    for step, word in enumerate(phrase):
        token = tokens[at + step]
        if token.text != word or (step and token.broken >= Break.SENTENCE):
            return False
    return True


def _colour(
    found: list[Context],
    tokens: Sequence[Token],
    anchors: Sequence[bool],
    start: int,
    cue: CueSaying,
    joining: frozenset[str],
) -> None:
    """Pass a cue on to the words behind it, as far as it reaches."""
    leads = cue.kind in ("branch", "return")
    strength, met, gap = cue.weight, False, 0
    for at in range(start, min(len(tokens), start + cue.reach)):
        token = tokens[at]
        if token.broken >= Break.SENTENCE and at > start:
            return
        if token.broken == Break.CLAUSE and not cue.whole_sentence and at > start:
            if met and not leads:
                return
            strength *= 1.0 if leads and not met else _BEHIND_A_COMMA
        if not cue.whole_sentence and not leads and met:
            gap = 0 if anchors[at] or token.text in joining else gap + 1
            if gap > 2:
                return
        _add(found[at], cue.kind, strength)
        met = met or anchors[at]
        strength -= cue.weight * _FADING * (0.3 if cue.whole_sentence else 1.0)


def _colour_back(
    found: list[Context], tokens: Sequence[Token], anchors: Sequence[bool], at: int, cue: CueSaying
) -> None:
    """Pass a cue on to the move said just before it."""
    steps = 0
    for before in range(at - 1, -1, -1):
        if tokens[before + 1].broken >= Break.CLAUSE or steps > _REACH_BACK + 2:
            return
        steps += 1
        if anchors[before]:
            last = before
            while last >= 0 and steps <= _REACH_BACK + 4:
                _add(found[last], cue.kind, cue.weight * 0.9)
                if tokens[last].broken >= Break.CLAUSE:
                    return
                last -= 1
                steps += 1
            return
        if steps > _REACH_BACK:
            return


def _add(context: Context, kind: str, strength: float) -> None:
    if strength <= 0:
        return
    if kind == "branch":
        context.branch = max(context.branch, strength)
    elif kind == "return":
        context.back = max(context.back, strength)
    elif strength > context.against:
        context.against, context.kind = strength, kind
