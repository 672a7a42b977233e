"""From the timeline to captions: which words stand together, on which line, from when to when."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import inf

from studyboard.model.script import BeatKey, words
from studyboard.timing.timeline import Stretch, Timeline, WordTime


@dataclass(frozen=True, slots=True)
class CaptionRule:
    """What a caption may be.

    characters: most characters on a line
    lines: most lines, 1 or 2
    longest: longest time on the screen (s)
    shortest: shortest time on the screen, where the talk leaves it (s)
    word: reading time of one word, where the talk leaves it (s)
    gap: least time between two captions (s)
    bridged: a pause inside a beat up to this length does not blank the screen (s)

    Two lines of at most 37 characters and 160-180 words a minute: BBC Subtitle Guidelines; 0.3 s a word: the
    same, from memory. The other figures are common practice.
    """

    characters: int = 37
    lines: int = 2
    longest: float = 7.0
    shortest: float = 1.0
    word: float = 0.3
    gap: float = 0.08
    bridged: float = 1.2

    def __post_init__(self) -> None:
        if self.characters < 8:
            raise ValueError("A caption line of less than 8 characters holds no sentence.")
        if self.lines not in (1, 2):
            raise ValueError("A caption has one line or two.")
        if min(self.longest, self.shortest, self.word) <= 0 or min(self.gap, self.bridged) < 0:
            raise ValueError("The times of a caption are longer than nothing.")


@dataclass(frozen=True, slots=True)
class Caption:
    """One caption: its lines and its time (ms from the start of the talk).

    beat: the beat whose words these are
    """

    start: int
    end: int
    lines: tuple[str, ...]
    beat: BeatKey


DEFAULT_RULE = CaptionRule()

# What it costs to cut after a word, from a sentence end to the middle of a thing that belongs together.
_SENTENCE, _CLAUSE, _PHRASE, _PLAIN, _BOUND, _TORN = 0.0, 3.0, 9.0, 15.0, 24.0, 60.0
_EACH_CAPTION = 6.0
_TWO_LINES = 1.0
_LINE_SHARE = 0.45
_UNBALANCED = 4.0
_TOP_HEAVY = 1.0
_SENTENCE_INSIDE = 6.0
_PAUSE_INSIDE = 5.0
_TOO_SHORT = 6.0

_SENTENCE_END = re.compile(r"[.!?…][\"'”’»)\]]*$")
_CLAUSE_END = re.compile(r"([,;:][\"'”’»)\]]*|[–—-])$")
_MOVE_NUMBER = re.compile(r"^\W*\d{1,3}(\.+|…)$")
_ABBREVIATION = re.compile(r"(?i)^\W*(e\.g|i\.e|vs|mr|mrs|ms|dr|st|no|cf|approx)\.$")
_JOINS = frozenset(
    words(
        "and but or nor so yet because although though if unless when while where which who whose that than then until "
        "since after before as with without to for from in into on onto at by of over under against between through"
    )
)
_LEANS = frozenset(
    words(
        "a an the this that these those his her its their my your our and but or nor so to of in on at by for from "
        "with into is are was were be has have had will would can could not no very white's black's"
    )
)


@dataclass(frozen=True, slots=True)
class _Token:
    """A word, or a piece of one that is longer than a line; glued: no space before it. Times in s."""

    text: str
    at: float
    until: float
    glued: bool
    cut: float


def captions(timeline: Timeline, rule: CaptionRule = DEFAULT_RULE) -> tuple[Caption, ...]:
    """The captions of the whole talk, in order; they never overlap. O(number of words).

    A caption never reaches from one beat into the next, and a beat without a spoken line has none. Words are
    neither dropped nor changed; only a word longer than a line is cut. Where words follow each other too fast
    for the reading time, the voice decides.
    """
    found: list[Caption] = []
    drafts = [draft for stretch in timeline.stretches for draft in _drafts(stretch, rule)]
    earliest = 0
    for place, draft in enumerate(drafts):
        start = max(_ms(draft.start), earliest)
        limit = _ms(draft.beat_end)
        wanted = max(draft.until, draft.start + max(rule.shortest, rule.word * draft.words))
        if place + 1 < len(drafts):
            following = drafts[place + 1]
            limit = min(limit, _ms(following.start) - _ms(rule.gap))
            if following.beat == draft.beat and following.start - draft.until <= rule.bridged:
                wanted = max(wanted, following.start)
        end = max(min(_ms(wanted), limit, start + _ms(rule.longest)), start + 1)
        found.append(Caption(start, end, draft.lines, draft.beat))
        earliest = end
    return tuple(found)


@dataclass(frozen=True, slots=True)
class _Draft:
    """A caption whose end is not decided yet; times in s."""

    start: float
    until: float
    beat_end: float
    words: int
    lines: tuple[str, ...]
    beat: BeatKey


def _drafts(stretch: Stretch, rule: CaptionRule) -> Iterator[_Draft]:
    tokens = _tokens(stretch, rule.characters)
    for first, behind in pairwise(_cuts(tokens, rule)):
        group = tokens[first:behind]
        yield _Draft(
            group[0].at,
            group[-1].until,
            stretch.end,
            sum(not token.glued for token in group),
            _lines(group, rule),
            stretch.key,
        )


def _tokens(stretch: Stretch, characters: int) -> list[_Token]:
    timed = _timed_words(stretch)
    tokens: list[_Token] = []
    at = stretch.start
    for place, word in enumerate(timed):
        # Times that run backwards can come from a clumsy alignment; captions must not.
        at = max(at, word.at)
        until = max(at, word.until)
        following = timed[place + 1].text if place + 1 < len(timed) else None
        pieces = _pieces(word.text, characters)
        for index, piece in enumerate(pieces):
            tokens.append(
                _Token(
                    piece,
                    at + (until - at) * index / len(pieces),
                    at + (until - at) * (index + 1) / len(pieces),
                    index > 0,
                    _cut_after(word.text, following) if index + 1 == len(pieces) else _TORN,
                )
            )
    return tokens


def _timed_words(stretch: Stretch) -> tuple[WordTime, ...]:
    """The words of a stretch; where they were not timed one by one, spread evenly over its speech."""
    if stretch.words:
        return tuple(word for word in stretch.words if word.text.strip())
    texts = words(stretch.spoken.text)
    if not texts:
        return ()
    each = max(0.0, stretch.speech_end - stretch.start) / len(texts)
    return tuple(
        WordTime(stretch.start + each * index, stretch.start + each * (index + 1), index, text)
        for index, text in enumerate(texts)
    )


def _pieces(word: str, characters: int) -> list[str]:
    """The word, cut only where it is longer than a line: after a hyphen or slash if one is near the end."""
    pieces: list[str] = []
    while len(word) > characters:
        near = max(word.rfind(sign, characters // 2, characters) for sign in "-/–_.")
        cut = near + 1 if near >= 0 else characters
        pieces.append(word[:cut])
        word = word[cut:]
    pieces.append(word)
    return pieces


def _cut_after(word: str, following: str | None) -> float:
    if following is None:
        return _SENTENCE
    if _MOVE_NUMBER.search(word) and following[:1].isalpha():
        return _BOUND
    if _SENTENCE_END.search(word) and not _ABBREVIATION.match(word):
        return _SENTENCE
    if _CLAUSE_END.search(word):
        # A single word between commas belongs to what is before it: "a big centre, please, …".
        return _PHRASE if re.search(r"\w[,;:]$", following) else _CLAUSE
    if word.strip("\"'“‘(").lower() in _LEANS:
        return _BOUND
    if following.strip("\"'“‘(,.").lower() in _JOINS or following[:1] in "–—":
        return _PHRASE
    return _PLAIN


def _cuts(tokens: Sequence[_Token], rule: CaptionRule) -> list[int]:
    """Where the captions begin and end, the cheapest way: [0, …, number of tokens]; [] without tokens."""
    if not tokens:
        return []
    room = rule.characters * rule.lines + rule.lines - 1
    best = [0.0, *([inf] * len(tokens))]
    came = [0] * (len(tokens) + 1)
    for behind in range(1, len(tokens) + 1):
        length = -1
        inside = 0.0
        following = tokens[behind].at if behind < len(tokens) else None
        for first in range(behind - 1, -1, -1):
            token = tokens[first]
            length += len(token.text) + 1 - (tokens[first + 1].glued if first + 1 < behind else 0)
            lasts = tokens[behind - 1].until - token.at
            if length > room or (lasts > rule.longest and behind - first > 1):
                break
            if first + 1 < behind:
                pause = tokens[first + 1].at - token.until
                inside += _PAUSE_INSIDE * pause + (_SENTENCE_INSIDE if token.cut == _SENTENCE else 0.0)
            broken = _line_break(tokens[first:behind], rule)
            if broken is None:
                continue
            on_screen = inf if following is None else following - token.at
            needed = max(rule.shortest, rule.word * (behind - first))
            cost = (
                best[first]
                + _EACH_CAPTION
                + inside
                + broken[0]
                + tokens[behind - 1].cut
                + _TOO_SHORT * max(0.0, needed - on_screen)
            )
            if cost < best[behind]:
                best[behind] = cost
                came[behind] = first
    cuts = [len(tokens)]
    while cuts[-1]:
        cuts.append(came[cuts[-1]])
    cuts.reverse()
    return cuts


def _line_break(group: Sequence[_Token], rule: CaptionRule) -> tuple[float, int] | None:
    """What the best division into lines costs and where the second line begins; None where it does not fit."""
    upto = [0]
    for token in group:
        upto.append(upto[-1] + len(token.text) + (1 if upto[-1] and not token.glued else 0))
    whole = upto[-1]
    best: tuple[float, int] | None = None
    if whole <= rule.characters:
        # A sentence end inside a single line reads worse than one at the end of the first of two lines.
        best = (sum(token.cut == _SENTENCE for token in group[:-1]) * _SENTENCE_INSIDE / 2, len(group))
    if rule.lines == 1:
        return best
    for place in range(1, len(group)):
        top = upto[place]
        bottom = whole - top - (0 if group[place].glued else 1)
        if top > rule.characters:
            break
        if bottom > rule.characters:
            continue
        cost = (
            _TWO_LINES
            + _LINE_SHARE * group[place - 1].cut
            + _UNBALANCED * abs(top - bottom) / rule.characters
            + (_TOP_HEAVY if top > bottom else 0.0)
        )
        if best is None or cost < best[0]:
            best = (cost, place)
    return best


def _lines(group: Sequence[_Token], rule: CaptionRule) -> tuple[str, ...]:
    found = _line_break(group, rule)
    assert found is not None, "only groups that fit are cut out"
    place = found[1]
    return tuple(_joined(part) for part in (group[:place], group[place:]) if part)


def _joined(group: Sequence[_Token]) -> str:
    return "".join(token.text if token.glued or place == 0 else f" {token.text}" for place, token in enumerate(group))


def _ms(seconds: float) -> int:
    return round(seconds * 1000)
