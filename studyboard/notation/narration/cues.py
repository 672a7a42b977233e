"""What the words around a move say about it: that it is played, imagined, planned, feared or only spoken of."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from studyboard.notation.narration.lexicon import CueSaying, Lexicon
from studyboard.notation.narration.tokens import Break, Token

#: How much of a cue's strength is left behind a comma, and how much a word takes away from it.
_BEHIND_A_COMMA = 0.45
_FADING = 0.035
_REACH_BACK = 1
_INTO_NEXT_SENTENCE = 0.6
_INTO_THE_ANSWER = 0.95
_STRUNG = 0.55
_LISTED = 0.85
_BETWEEN_STRUNG = 1
_LONGEST_MOVE = 6
_LED_AWAY = 0.5
_SPOKEN_OF = 0.12
_A_SQUARE = 2
_LOOK_BACK, _UNREAL = "look_back", 0.4
_NO_OBJECT = 0.2
_TRANSITIVE = frozenset({"control", "reason"})


_BRACKET = CueSaying((), "branch", False, 1.0, 4)
_END_OF_BRACKET = CueSaying((), "return", False, 1.0, 4)


#: "There are famous games with bishop b5 in this position" tells of it here.
_SAID_OF_HERE = CueSaying((), "branch", False, 1.0, 12)
_HERE_WITHIN = 9

_OTHER = "alternative"
_ANY_WORD = "*"
_ELSEWHERE = "elsewhere"
_LEADING = frozenset({"branch", "return", _OTHER})


@dataclass(slots=True)
class Context:
    """What is known about one word of the text from the words around it.

    branch, back: how strongly they speak for leaving the line, for coming back to it (0 to 1)
    home: here begin words that only somebody says who has left the line
    alternative: how strongly they speak for another move in place of the last one (0 to 1)
    rejected: how strongly they say that the move is tried only to be refuted (0 to 1)
    against: how strongly they speak against a move being played here
    kind: the kind of mention that they make of it, if they do
    """

    branch: float = 0.0
    back: float = 0.0
    home: bool = False
    alternative: float = 0.0
    rejected: float = 0.0
    against: float = 0.0
    kind: str = ""

    @property
    def passing(self) -> float:
        """The share of the usual cost at which a move named here may be passed over."""
        return max(_SPOKEN_OF, 1.0 - 0.45 * self.against)


def contexts_of(tokens: Sequence[Token], anchors: Sequence[int], words: Lexicon) -> list[Context]:
    """The context of each word.

    anchors: 2 where a square begins, 3 where it goes on, 1 for a piece or a capture, else 0
    """
    found = [Context() for _ in tokens]
    parted = [_parted(token, words) for token in tokens]
    joining = [token.text in words.joining for token in tokens]
    means = [any(saying.kind == "with" for saying in words.sayings.get(token.text, ())) for token in tokens]
    pieces = [any(saying.kind == "piece" for saying in words.sayings.get(token.text, ())) for token in tokens]
    covered = {False: 0, True: 0}
    spoken_for: set[int] = set()
    for at in range(len(tokens)):
        cues = [(cue, _end_of_cue(tokens, at, cue, words)) for cue in words.cues.get(tokens[at].text, ())]
        furthest = {way: max((end for cue, end in cues if cue.behind is way), default=0) for way in covered}
        for cue, behind in cues:
            if not behind or behind < furthest[cue.behind] or behind <= covered[cue.behind] or not cue.weight:
                continue
            if cue.kind == "return" and not cue.behind and _goes_to_a_square(tokens, anchors, behind, words):
                continue
            found[at].home = found[at].home or cue.home
            if cue.kind == _ELSEWHERE and not cue.behind and _speaks_of_here(tokens, behind, words):
                cue = _SAID_OF_HERE
            if cue.answered:
                answered = _is_answered(tokens, anchors, behind, behind + cue.reach, means)
                if not answered:
                    reason = replace(cue, kind="reason", means=True)
                    _colour(found, parted, anchors, behind, reason, joining, means, pieces)
                    continue
                for word in range(behind, min(answered, len(found))):
                    spoken_for.add(word)
            if cue.behind:
                _colour_back(found, tokens, anchors, at, cue, joining)
            elif cue.kind in _LEADING or cue.whole_sentence:
                _lead(found, tokens, parted, anchors, behind, cue)
            elif cue.kind == _LOOK_BACK and found[at].branch > _UNREAL:
                # "If Black had taken" says nothing of what was done before.
                continue
            elif not _is_about_a_word(tokens, behind, words):
                _colour(found, parted, anchors, behind, cue, joining, means, pieces)
        covered = {way: max(end, furthest[way]) for way, end in covered.items()}
    for at, token in enumerate(tokens):
        if token.opens or token.closes:
            _lead(found, tokens, parted, anchors, at, _BRACKET if token.opens else _END_OF_BRACKET)
    for at in spoken_for:
        found[at].against, found[at].kind = 0.0, ""
    for context in found:
        context.against *= 1.0 - _LED_AWAY * min(1.0, context.branch)
        if context.kind == _ELSEWHERE:
            # "There are famous games with bishop b5, but he played bishop e2": the speaker has come back to this game.
            context.against *= 1.0 - min(1.0, context.back)
    return found


def _goes_to_a_square(tokens: Sequence[Token], anchors: Sequence[int], behind: int, words: Lexicon) -> bool:
    """Does a cue like "goes back to" lead to a bare square, so that a piece comes back and not the speaker?"""
    kinds = {saying.kind for saying in words.sayings.get(tokens[behind - 1].text, ())}
    if not kinds & {"link", "back"}:
        return False
    if behind + 1 < len(tokens) and "link" in {s.kind for s in words.sayings.get(tokens[behind].text, ())}:
        behind += 1
    return behind < len(tokens) and anchors[behind] == _A_SQUARE and tokens[behind].broken == Break.NONE


def _speaks_of_here(tokens: Sequence[Token], start: int, words: Lexicon) -> bool:
    """Do the next words of the sentence say that it is this position of which they speak?"""
    for at in range(start, min(len(tokens), start + _HERE_WITHIN)):
        if tokens[at].broken >= Break.SENTENCE:
            return False
        if any(tuple(token.text for token in tokens[at : at + len(here)]) == here for here in words.here):
            return True
    return False


def _is_answered(tokens: Sequence[Token], anchors: Sequence[int], start: int, stop: int, means: Sequence[bool]) -> int:
    """Where "with" another move stands behind the move that a cue leads to, the end of that other move; else 0."""
    met = with_it = False
    for at in range(start, min(len(tokens), stop)):
        if tokens[at].broken >= Break.SENTENCE:
            return 0
        if anchors[at] == _A_SQUARE:
            if with_it:
                return at + 1
            met = True
        with_it = with_it or (met and means[at])
    return 0


def _is_about_a_word(tokens: Sequence[Token], at: int, words: Lexicon) -> bool:
    return at < len(tokens) and tokens[at].broken == Break.NONE and tokens[at].text in words.pronouns


def _parted(token: Token, words: Lexicon) -> Break:
    return Break.CLAUSE if token.broken == Break.NONE and token.text in words.parting else token.broken


def _end_of_cue(tokens: Sequence[Token], at: int, cue: CueSaying, words: Lexicon) -> int:
    """Behind which word the cue ends that begins here, 0 where it is not said.

    Adverbs may stand inside one that leads away or back: "was simply strong", "should probably have".
    """
    if tokens[at].broken < (Break.SENTENCE if cue.opening else Break.CLAUSE if cue.clause else Break.NONE):
        return 0
    behind = at
    for step, word in enumerate(cue.words):
        while step and cue.kind in _LEADING and _is_adverb_between(tokens, behind, word, words):
            behind += 1
        if behind >= len(tokens) or (step and tokens[behind].broken >= Break.SENTENCE):
            return 0
        text = tokens[behind].text
        if not (text.endswith(word[1:]) if word.startswith("*") else text == word):
            return 0
        behind += 1
    if cue.ends and behind < len(tokens) and tokens[behind].broken == Break.NONE:
        return 0
    return behind


def _is_adverb_between(tokens: Sequence[Token], at: int, wanted: str, words: Lexicon) -> bool:
    if at + 1 >= len(tokens) or tokens[at].text == wanted or wanted == _ANY_WORD:
        return False
    return tokens[at].broken == Break.NONE and words.is_adverb(tokens[at].text)


def _lead(
    found: list[Context],
    tokens: Sequence[Token],
    parted: Sequence[Break],
    anchors: Sequence[int],
    start: int,
    cue: CueSaying,
) -> None:
    """Pass a cue that leads into a move, or colours a sentence, on to the words behind it, as far as it reaches."""
    strength, met, crossed = cue.weight, False, False
    for at in range(start, min(len(found), start + cue.reach)):
        if parted[at] >= Break.SENTENCE and (at > start or cue.words):
            if met or crossed or parted[at] == Break.PARAGRAPH or cue.whole_sentence:
                return
            strength, crossed = strength * (_INTO_THE_ANSWER if tokens[at].asked else _INTO_NEXT_SENTENCE), True
        if parted[at] == Break.CLAUSE and met and not cue.whole_sentence:
            strength *= _BEHIND_A_COMMA
        if met and cue.kind == _OTHER and anchors[at] != 3:
            return
        _add(found[at], cue.kind, strength)
        if cue.rejects:
            found[at].rejected = max(found[at].rejected, strength)
        met = met or anchors[at] >= 2
        strength -= cue.weight * _FADING * (0.3 if cue.whole_sentence else 1.0)


def _colour(
    found: list[Context],
    parted: Sequence[Break],
    anchors: Sequence[int],
    start: int,
    cue: CueSaying,
    joining: Sequence[bool],
    means: Sequence[bool],
    pieces: Sequence[bool],
) -> None:
    """Pass a cue that makes a mention on to what it is about: one square, or several that are strung together."""
    strength, met, strung, between = cue.weight, 0, False, 0
    for at in range(start, min(len(found), start + cue.reach)):
        if parted[at] >= Break.SENTENCE and not (cue.listed and not met and parted[at] == Break.SENTENCE):
            return
        if parted[at] == Break.CLAUSE:
            if met and not (cue.listed and (anchors[at] or joining[at])):
                return
            strength *= _LISTED if cue.listed else _BEHIND_A_COMMA
            # "No longer pinned, it takes": a verb with a comma behind it has no object.
            strength *= _NO_OBJECT if at == start and cue.kind in _TRANSITIVE and not cue.listed else 1.0
            met, strung = 0, bool(met)
        if met >= 2 and anchors[at] != 3:
            if not joining[at]:
                return
            strength *= _LISTED if cue.listed else _STRUNG
            met, strung = 0, True
        if cue.means and means[at]:
            return
        if met == 1 and at and pieces[at] and pieces[at - 1]:
            # "Hitting the queen queen e7": a second piece begins something new.
            return
        between = 0 if anchors[at] or joining[at] else between + 1
        if strung and between > _BETWEEN_STRUNG:
            return
        _add(found[at], cue.kind, strength)
        met = max(met, anchors[at])
        strength -= cue.weight * _FADING


def _colour_back(
    found: list[Context],
    tokens: Sequence[Token],
    anchors: Sequence[int],
    at: int,
    cue: CueSaying,
    joining: Sequence[bool],
) -> None:
    """Pass a cue on to the move said just before it, or to two of them that are strung together."""
    for before in range(at - 1, max(-1, at - 2 - _REACH_BACK), -1):
        if tokens[before + 1].broken >= (Break.SENTENCE if cue.over_comma and before + 1 == at else Break.CLAUSE):
            return
        if anchors[before]:
            _colour_moves(found, tokens, anchors, before, cue, joining)
            return


def _colour_moves(
    found: list[Context],
    tokens: Sequence[Token],
    anchors: Sequence[int],
    end: int,
    cue: CueSaying,
    joining: Sequence[bool],
) -> None:
    left_square, whole, strength = False, False, cue.weight * 0.9
    for at in range(end, max(-1, end - _LONGEST_MOVE), -1):
        if left_square and anchors[at] >= 2:
            if cue.kind in _LEADING or not joining[at + 1] or not whole:
                return
            left_square, strength = False, strength * _LISTED
        _add(found[at], cue.kind, strength)
        whole = whole or anchors[at] >= 2
        left_square = left_square or (anchors[at] < 2 and at < end)
        if tokens[at].broken >= Break.CLAUSE:
            return


def _add(context: Context, kind: str, strength: float) -> None:
    if strength <= 0:
        return
    if kind == "branch":
        context.branch = 1.0 - (1.0 - min(1.0, context.branch)) * (1.0 - min(1.0, strength))
    elif kind == "return":
        context.back = 1.0 - (1.0 - min(1.0, context.back)) * (1.0 - min(1.0, strength))
    elif kind == _OTHER:
        context.alternative = max(context.alternative, strength)
    elif strength > context.against:
        context.against, context.kind = strength, kind
