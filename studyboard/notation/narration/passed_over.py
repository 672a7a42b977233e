"""What a reading has passed over: moves that are only spoken of, and words that could not be understood."""

from __future__ import annotations

from collections.abc import Sequence

from studyboard.notation.narration.forms import Phrase
from studyboard.notation.narration.narration import Mention, Unread
from studyboard.notation.narration.prepared import Prepared
from studyboard.notation.narration.readings import How, Reading
from studyboard.notation.narration.understood import heard_in_order

_PLAIN = 0.8
_NAMES_SOMETHING = "name"
_MENTION = "mention"


def passed_over(text: str, reading: Reading, said: Prepared) -> tuple[tuple[Mention, ...], tuple[Unread, ...]]:
    """Mentions and unread words, in the order of the text.

    What is said as plainly as a move, with nothing around it that makes it a plan, a threat and so on, and is still
    played by no reading, is unread.
    """
    tokens = said.tokens
    heard = heard_in_order(reading)
    played = {word for h in heard if h.how is not How.NAMED for word in range(h.phrase.start, h.phrase.end)}
    named = {word for h in heard if h.how is How.NAMED for word in range(h.phrase.start, h.phrase.end)}
    mentions: list[Mention] = []
    unread: list[Unread] = []
    at = 0
    while at < len(tokens):
        phrase = _longest(said.phrases[at], played)
        if phrase is None or at in played:
            at += 1
            continue
        start, end = tokens[phrase.start].start, tokens[phrase.end - 1].end
        quote, context = text[start:end], said.contexts[phrase.anchor]
        if context.kind:
            mentions.append(Mention(quote, context.kind, start, end))
        elif all(word in named for word in range(phrase.start, phrase.end)):
            mentions.append(Mention(quote, _NAMES_SOMETHING, start, end))
        elif _says_a_move(phrase):
            unread.append(Unread(quote, _reason(reading, phrase), start, end))
        elif phrase.form.to is not None and phrase.cost < 0.3:
            mentions.append(Mention(quote, _MENTION, start, end))
        at = phrase.end
    return tuple(mentions), tuple(unread)


def _longest(phrases: Sequence[Phrase], played: set[int]) -> Phrase | None:
    """The longest plain phrase here with a square, a capture or castling in it, none of whose words plays a move."""
    best: Phrase | None = None
    for phrase in phrases:
        form = phrase.form
        if phrase.cost > _PLAIN or not (form.to is not None or form.capture or form.castles):
            continue
        if any(word in played for word in range(phrase.start, phrase.end)):
            continue
        if best is None or phrase.end > best.end:
            best = phrase
    return best


def _says_a_move(phrase: Phrase) -> bool:
    form = phrase.form
    if form.to is None:
        return bool(form.castles) and phrase.cost < 0.1
    return not form.bare and form.piece is not None and phrase.cost < 0.6


def _reason(reading: Reading, phrase: Phrase) -> str:
    tips = [line.tip for line in reading.lines]
    if any(tip.fits(phrase)[1] for tip in tips):
        return "It could be a move, but the rest of the talk does not follow from it."
    return "No piece can do this in any position that is talked about here."
