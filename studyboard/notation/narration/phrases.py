"""Finding every group of words that may say a move, and what it demands of that move."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from studyboard.notation.narration.costs import COSTS
from studyboard.notation.narration.forms import Form, Phrase
from studyboard.notation.narration.lexicon import Lexicon
from studyboard.notation.narration.phrase_rules import COMPLETE, FURTHER_RULES, RULES, Part, Said
from studyboard.notation.narration.tokens import Break, Token
from studyboard.notation.narration.units import Unit

_LONGEST = 16
_LONGEST_SAYING = 4
_LANDMARK_REACH = 2
_PLAIN = 0.5
_CLEAR = 0.05
#: The square "a six" is doubtful, as "a" may be an article.
_SPELLED = 0.65
_PLURAL_REACH = 9
_PLURAL = -0.3
_MOST_COST = 2.6
_STRANGE_WORDS = 4
_PIECE_SOON = 3
_OBJECT_REACH = 4
_STRANGE, _FILLER, _LINK, _COMMA = 0.25, 0.03, 0.01, 0.35
_OF_ANOTHER_CLAUSE = frozenset({"piece", "square", "capture"})
_LINKS = frozenset({"motion", "link", "origin", "with", "back", "colour"})


def phrases_of(tokens: Sequence[Token], units: Sequence[Sequence[Unit]], words: Lexicon) -> list[tuple[Phrase, ...]]:
    """For each word the phrases that begin with it, each form once at its lowest cost."""
    return [
        tuple(_phrases_at(start, tokens, units, words, _left_out(start, tokens, units, words)))
        for start in range(len(tokens))
    ]


def _left_out(start: int, tokens: Sequence[Token], units: Sequence[Sequence[Unit]], words: Lexicon) -> float:
    """What it costs to begin a phrase here although the piece or file just ahead seems to belong to it."""
    kinds = {unit.kind for unit in units[start]}
    if start and tokens[start].broken == Break.NONE:
        letters = [unit for unit in units[start - 1] if unit.kind == "letter" and unit.end == start]
        if "capture" in kinds and any(unit.cost < _CLEAR for unit in letters):
            return COSTS.clear_letter_left_out
        file_before = any(unit.cost < _CLEAR or unit.value == 0 for unit in letters)
        if file_before and ("capture" in kinds or ("piece" in kinds and not words.is_filler(tokens[start - 1].text))):
            return COSTS.letter_left_out
        if "square" in kinds and _ends_here("capture", start, units) and not _ends_here("capture", start - 1, units):
            return COSTS.capture_left_out
        if "square" in kinds and _ends_here("with", start, units):
            # "I kick the knight with a3": the knight is not what moves.
            return 0.0
        if "piece" in kinds and _is_a_landmark(start, tokens, units, words):
            return COSTS.clear_piece_left_out
        if "piece" in kinds:
            return 0.0
    ahead = (
        start - 1 if start > 1 and "square" in kinds and _is_the_file_of_a_piece(start - 1, tokens, units) else start
    )
    for at in range(ahead, max(0, ahead - 4), -1):
        if tokens[at].broken >= Break.CLAUSE or tokens[at].text in words.parting:
            break
        before_kinds = {unit.kind for unit in units[at - 1] if unit.cost < 0.4}
        if "piece" in before_kinds:
            return COSTS.piece_left_out if _is_an_object(at - 1, tokens, units) else COSTS.clear_piece_left_out
        if not before_kinds & _LINKS and not words.is_filler(tokens[at - 1].text):
            break
    if (
        "square" in kinds
        and start
        and tokens[start].broken == Break.NONE
        and any(unit.kind == "link" for unit in units[start - 1])
    ):
        return COSTS.link_left_out
    return 0.0


def _is_the_file_of_a_piece(at: int, tokens: Sequence[Token], units: Sequence[Sequence[Unit]]) -> bool:
    """Does a word say from which file the piece just ahead of it comes: "knight b c3"?"""
    joined = tokens[at].broken == tokens[at + 1].broken == Break.NONE
    return joined and _is_a_file(at, units) and any(unit.kind == "piece" and unit.end == at for unit in units[at - 1])


def _ends_here(kind: str, at: int, units: Sequence[Sequence[Unit]]) -> bool:
    """Does something of this kind, clearly heard, end just ahead of a word?"""
    return any(
        unit.kind == kind and unit.end == at and unit.cost < _PLAIN
        for before in range(max(0, at - _LONGEST_SAYING), at)
        for unit in units[before]
    )


def _is_a_landmark(at: int, tokens: Sequence[Token], units: Sequence[Sequence[Unit]], words: Lexicon) -> bool:
    """Do words like "in front of" lead to the piece at a word, so that it says where another one goes?"""
    for before in range(at, max(0, at - _LANDMARK_REACH) - 1, -1):
        if _ends_here("landmark", before, units):
            return True
        if before == 0 or tokens[before].broken >= Break.CLAUSE or not words.is_filler(tokens[before - 1].text):
            return False
    return False


def _is_an_object(at: int, tokens: Sequence[Token], units: Sequence[Sequence[Unit]]) -> bool:
    """Does a capture stand ahead of the piece at a word, so that the piece may belong to that, as what is taken?"""
    for before in range(at - 1, max(-1, at - 1 - _OBJECT_REACH), -1):
        if tokens[before + 1].broken >= Break.CLAUSE:
            return False
        kinds = {unit.kind for unit in units[before]}
        if kinds & {"capture", "trade"}:
            return True
        if "square" in kinds:
            return False
    return False


def _phrases_at(
    start: int, tokens: Sequence[Token], units: Sequence[Sequence[Unit]], words: Lexicon, left_out: float
) -> Iterator[Phrase]:
    best: dict[tuple[int, Form], Phrase] = {}
    growing = [Part(Said.NOTHING, Form(), start, start, start, start, 0.0)]
    while growing:
        part = growing.pop()
        for grown, complete in _grown(part, tokens, units):
            growing.append(grown)
            if complete:
                key = (grown.end, grown.form)
                if key not in best or best[key].cost > grown.cost + left_out:
                    best[key] = Phrase(start, grown.end, grown.anchor, grown.form, grown.cost + left_out)
        passed = _passed(part, tokens, units, words)
        if passed is not None:
            growing.append(passed)
    for phrase in best.values():
        cut = _cut_short(phrase, tokens, units)
        yield replace(phrase, cost=phrase.cost + cut) if cut else phrase
    yield from _second_of_two(start, tokens, units, words)


def _cut_short(phrase: Phrase, tokens: Sequence[Token], units: Sequence[Sequence[Unit]]) -> float:
    """What it costs to end a capture although the square, or what takes, just behind seems to belong to it."""
    if not phrase.form.capture or phrase.end >= len(tokens):
        return 0.0
    says_with = tokens[phrase.end].broken == Break.NONE and any(unit.kind == "with" for unit in units[phrase.end])
    if phrase.form.piece is None and says_with and _names_a_piece(phrase.end + 1, tokens, units):
        return COSTS.square_left_out
    if phrase.form.to is not None:
        return 0.0
    kind = "digit" if phrase.form.target_file is not None else "square"
    at = phrase.end
    if kind == "square" and at + 1 < len(tokens) and tokens[at].broken == Break.NONE and _is_a_link(at, units):
        at += 1
    follows = any(unit.kind == kind and unit.cost < _SPELLED for unit in units[at])
    return COSTS.square_left_out if follows and tokens[at].broken == Break.NONE else 0.0


def _is_a_link(at: int, units: Sequence[Sequence[Unit]]) -> bool:
    return any(unit.kind == "link" and unit.end == at + 1 for unit in units[at])


def _names_a_piece(start: int, tokens: Sequence[Token], units: Sequence[Sequence[Unit]]) -> bool:
    for at in range(start, min(len(tokens), start + _PIECE_SOON)):
        if tokens[at].broken != Break.NONE:
            return False
        if any(unit.kind == "piece" and unit.cost < _PLAIN for unit in units[at]):
            return True
    return False


def _grown(part: Part, tokens: Sequence[Token], units: Sequence[Sequence[Unit]]) -> Iterator[tuple[Part, bool]]:
    if part.at >= len(tokens) or (part.at > part.start and tokens[part.at].broken >= Break.SENTENCE):
        return
    for unit in units[part.at]:
        cost = part.cost + unit.cost
        if part.apart and unit.kind in _OF_ANOTHER_CLAUSE and _names_one_thing(part):
            continue
        if part.at > part.start and tokens[part.at].broken == Break.CLAUSE:
            if part.said in (Said.SQUARE, Said.ON_THE_WAY) and unit.kind == "piece":
                continue
            cost += _COMMA
        if cost > _MOST_COST:
            continue
        for rules in (RULES, FURTHER_RULES):
            rule = rules.get(part.said)
            step = None if rule is None else rule(part, unit, part.at == part.end)
            if step is None:
                continue
            said, form, more = step
            if cost + more > _MOST_COST:
                continue
            decides = (
                unit.kind in ("square", "written")
                or (unit.kind != "piece" and form.to is None)
                or part.start == part.at
            )
            anchor = unit.start if decides and unit.kind not in ("check", "mate") else part.anchor
            complete = said in COMPLETE or form.vague or (said is Said.ON_THE_WAY and form.to is not None)
            moved = part.moved or unit.kind == "motion"
            yield Part(said, form, part.start, unit.end, unit.end, anchor, cost + more, moved=moved), complete


def _names_one_thing(part: Part) -> bool:
    """Has only a piece or only a square been said so far, and no movement that a further clause could finish?"""
    if part.said is Said.PIECE:
        return not part.moved
    return part.said in (Said.SQUARE, Said.ON_THE_WAY) and part.form.to is not None


def _passed(part: Part, tokens: Sequence[Token], units: Sequence[Sequence[Unit]], words: Lexicon) -> Part | None:
    """The phrase with its next word left out, where it can do without; motion and "from" are remembered."""
    if part.said in (Said.NOTHING, Said.FILE, Said.WITH_FILE, Said.CAPTURE_FILE, Said.SIDE) or part.at >= len(tokens):
        return None
    token = tokens[part.at]
    if token.broken >= Break.SENTENCE or part.at - part.start >= _LONGEST:
        return None
    cost = part.cost + (_COMMA if token.broken == Break.CLAUSE else 0.0)
    kinds = {unit.kind for unit in units[part.at] if unit.cost < 0.3}
    strange = part.strange
    if part.said is Said.PIECE and not part.moved and "with" in kinds:
        return None
    if part.said is Said.ON_THE_WAY and part.form.to is None and "with" in kinds:
        return None
    if part.form.to is not None and part.said in (Said.SQUARE, Said.ON_THE_WAY) and token.broken == Break.CLAUSE:
        return None
    if kinds & {"square", "written", "capture", "castles", "mate"}:
        return None
    landmark = "piece" in kinds and _is_a_landmark(part.at, tokens, units, words)
    if "piece" in kinds and part.said != Said.CAPTURE and not (landmark and part.said is Said.PIECE):
        return None
    if kinds & _LINKS or landmark:
        cost += _LINK
    elif words.is_filler(token.text):
        cost += _FILLER
    elif part.said is Said.PIECE and part.at == part.end and _is_a_file(part.at, units):
        cost += COSTS.letter_left_out
    else:
        cost += _STRANGE
        strange += 1
    if cost > _MOST_COST or strange > _STRANGE_WORDS:
        return None
    form = replace(part.form, back=True) if "back" in kinds else part.form
    return replace(
        part,
        form=form,
        at=part.at + 1,
        cost=cost,
        strange=strange,
        origin="origin" in kinds or (part.origin and "link" not in kinds),
        moved=part.moved or ("motion" in kinds and not part.apart),
        apart=part.apart or token.text in words.openers,
    )


def _is_a_file(at: int, units: Sequence[Sequence[Unit]]) -> bool:
    return any(unit.kind == "letter" and unit.cost < _CLEAR for unit in units[at])


def _second_of_two(
    start: int, tokens: Sequence[Token], units: Sequence[Sequence[Unit]], words: Lexicon
) -> Iterator[Phrase]:
    """The second square of "the knights come out to f3 and f6", as a move of the same kind of piece."""
    if tokens[start].text not in words.joining or start + 1 >= len(tokens):
        return
    for before in range(start - 1, max(-1, start - _PLURAL_REACH), -1):
        if tokens[before + 1].broken >= Break.CLAUSE:
            return
        for unit in units[before]:
            if unit.kind == "plural":
                for square in units[start + 1]:
                    if square.kind == "square":
                        form = Form(piece=int(unit.value), to=int(square.value))
                        yield Phrase(start, square.end, square.start, form, square.cost + _PLURAL)
                return
