"""What a small trained model makes of the words around a move: that it goes on, leaves, comes back or is only named."""

from __future__ import annotations

import json
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Final

from studyboard.notation.narration.cues import Context
from studyboard.notation.narration.forms import Form, Phrase
from studyboard.notation.narration.tokens import Break, Token
from studyboard.resources_path import resource

#: What can be done with words that may say a move, in the order of the weights.
ACTIONS: Final = ("main", "side", "branch", "return", "named", "passed")
MAIN, SIDE, BRANCH, RETURN, NAMED, PASSED = range(len(ACTIONS))

_CLEAR = 1.2
_WINDOW = 14
_BEFORE_THE_SENTENCE = 10
_MOVE, _SQUARE, _NUMBER = "~move", "~square", "~number"
_STEPS = (0.05, 0.3, 0.55, 0.8)


@dataclass(frozen=True, slots=True)
class Hints:
    """A trained model.

    weights: for each feature what it adds to the score of each action
    usual: the logarithm of how often each action is right, whatever the words
    trust: the share of the model's opinion that the search takes over
    """

    weights: Mapping[str, Sequence[float]]
    usual: Sequence[float]
    trust: float

    def costs(self, features: Sequence[str]) -> tuple[float, ...]:
        """What each action costs more or less than usual, in the unit of the search."""
        scores = [0.0] * len(ACTIONS)
        for feature in features:
            known = self.weights.get(feature)
            if known is not None:
                for action, weight in enumerate(known):
                    scores[action] += weight
        most = max(scores)
        total = most + math.log(sum(math.exp(score - most) for score in scores))
        return tuple(self.trust * (usual - score + total) for score, usual in zip(scores, self.usual, strict=True))


@cache
def hints(language: str) -> Hints | None:
    """The model for a language by its two-letter code, None where none was trained."""
    try:
        path = resource("narration", f"{language}.hints.json")
    except FileNotFoundError:
        return None
    table = json.loads(path.read_text(encoding="utf-8"))
    return Hints(table["weights"], table["usual"], table["trust"])


def anchors_of(phrases: Sequence[Sequence[Phrase]]) -> dict[int, Phrase]:
    """The words on which it is decided what a phrase means, each with the clearest phrase that it anchors."""
    found: dict[int, Phrase] = {}
    for here in phrases:
        for phrase in here:
            known = found.get(phrase.anchor)
            if _is_rare(phrase.form):
                continue
            if phrase.cost < _CLEAR and (known is None or _better(phrase, known)):
                found[phrase.anchor] = phrase
    return found


def _is_rare(form: Form) -> bool:
    """Is it too rare to have been learned?"""
    return form.trades or form.same or (form.promotes and form.to is None)


def _better(phrase: Phrase, known: Phrase) -> bool:
    return (phrase.cost - 0.1 * (phrase.end - phrase.start)) < (known.cost - 0.1 * (known.end - known.start))


def features_of(
    tokens: Sequence[Token], contexts: Sequence[Context], anchors: Mapping[int, Phrase]
) -> dict[int, list[str]]:
    """For each anchor what is known about it, as names of features. O(anchors × window)."""
    words = [_plain(token) for token in tokens]
    covered = [False] * len(tokens)
    for phrase in anchors.values():
        if phrase.cost < 0.5 and not phrase.form.vague:
            for at in range(phrase.start, phrase.end):
                covered[at] = True
    starts = _starts(tokens)
    return {
        at: _features(at, phrase, tokens, words, covered, contexts, starts, anchors) for at, phrase in anchors.items()
    }


def _plain(token: Token) -> str:
    text = token.text
    if text.isdigit():
        return _NUMBER
    if any(letter.isdigit() for letter in text):
        return _SQUARE
    return text


def _starts(tokens: Sequence[Token]) -> list[int]:
    """For each word where its sentence begins."""
    found: list[int] = []
    start = 0
    for at, token in enumerate(tokens):
        if token.broken >= Break.SENTENCE:
            start = at
        found.append(start)
    return found


def _kind(form: Form) -> str:
    if form.castles:
        return "castles"
    if form.vague:
        return "vague"
    if form.exact:
        return "written"
    if form.bare:
        return "bare"
    if form.capture:
        return "takes on" if form.to is not None else "takes"
    if form.to is not None:
        return "piece" if form.piece is not None else "to"
    return "other"


def _features(
    at: int,
    phrase: Phrase,
    tokens: Sequence[Token],
    words: Sequence[str],
    covered: Sequence[bool],
    contexts: Sequence[Context],
    starts: Sequence[int],
    anchors: Mapping[int, Phrase],
) -> list[str]:
    start, end, sentence = phrase.start, phrase.end, starts[at]
    kind = _kind(phrase.form)
    found = ["always", f"kind {kind}", f"doubt {_step(phrase.cost)}"]
    found += _of_cues(contexts[start], contexts[at])
    told = sum(1 for before in range(sentence, start) if before in anchors and covered[before])
    found.append(f"told {min(told, 3)}")
    broken = tokens[start].broken
    found.append(f"broken {broken.name}")
    if kind in ("bare", "piece", "takes", "to"):
        found += [f"{kind} broken {broken.name}", f"{kind} told {min(told, 1)}"]
    behind = tokens[end].broken if end < len(tokens) else Break.PARAGRAPH
    found.append(f"ends {behind.name}")
    if behind != Break.NONE:
        found.append(f"{broken.name} to {behind.name}")
    found += _before(start, sentence, tokens, words, covered)
    found += _behind(end, tokens, words, covered)
    if told == 0:
        found += _sentence_before(sentence, words, covered, starts)
    return found


def _step(value: float) -> int:
    return sum(value > step for step in _STEPS)


def _of_cues(lead: Context, context: Context) -> list[str]:
    branch, back = max(context.branch, lead.branch), max(context.back, lead.back)
    found = [
        f"cue branch {_step(branch)}",
        f"cue back {_step(back)}",
        f"cue other {_step(lead.alternative)}",
        f"cue against {_step(context.against / 2.5)}",
        f"cue branch {_step(branch)} against {_step(context.against / 2.5)}",
    ]
    if context.kind:
        found.append(f"cue {context.kind}")
    if lead.rejected > 0.3:
        found.append("cue rejected")
    return found


def _before(
    start: int, sentence: int, tokens: Sequence[Token], words: Sequence[str], covered: Sequence[bool]
) -> list[str]:
    found: list[str] = []
    nearest: list[str] = []
    clause, moves = True, 0
    seen: set[str] = set()
    if tokens[start].broken >= Break.CLAUSE:
        clause = False
        nearest.append("|")
    for at in range(start - 1, max(sentence, start - 1 - _WINDOW) - 1, -1):
        word = _MOVE if covered[at] else words[at]
        if len(nearest) < 3 and (word != _MOVE or not nearest or nearest[-1] != _MOVE):
            nearest.append(word)
            if tokens[at].broken >= Break.CLAUSE and len(nearest) < 3:
                nearest.append("|")
        if word == _MOVE:
            moves += not (at + 1 < start and covered[at + 1])
        else:
            where = "<" if clause and not moves else "<<" if not moves else "<<<"
            if where + word not in seen:
                seen.add(where + word)
                found.append(f"{where} {word}")
        if tokens[at].broken >= Break.CLAUSE:
            clause = False
    for length in range(1, len(nearest) + 1):
        found.append(f"-{length} " + " ".join(reversed(nearest[:length])))
    return found


def _behind(end: int, tokens: Sequence[Token], words: Sequence[str], covered: Sequence[bool]) -> list[str]:
    found: list[str] = []
    nearest: list[str] = []
    clause = True
    for at in range(end, min(len(tokens), end + _WINDOW)):
        if tokens[at].broken >= Break.SENTENCE:
            if len(nearest) < 3:
                nearest.append("." if not tokens[at].asked else "?")
            break
        if tokens[at].broken == Break.CLAUSE:
            clause = False
            if len(nearest) < 3:
                nearest.append("|")
        word = _MOVE if covered[at] else words[at]
        if len(nearest) < 3:
            nearest.append(word)
        if word == _MOVE:
            break
        found.append(f"{'>' if clause else '>>'} {word}")
    for length in range(1, len(nearest) + 1):
        found.append(f"+{length} " + " ".join(nearest[:length]))
    return found


def _sentence_before(sentence: int, words: Sequence[str], covered: Sequence[bool], starts: Sequence[int]) -> list[str]:
    """The last words of the sentence before, for the first move of a sentence."""
    if not sentence:
        return []
    begins = max(starts[sentence - 1], sentence - _BEFORE_THE_SENTENCE)
    said = {_MOVE if covered[at] else words[at] for at in range(begins, sentence)}
    return [f"before {word}" for word in sorted(said)]
