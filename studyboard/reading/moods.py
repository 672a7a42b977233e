"""In which mood each word of a line is said: plainly, of the past, denied, asked, or only supposed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from enum import Flag, auto
from typing import TYPE_CHECKING

from studyboard.notation.narration.tokens import Break, Token
from studyboard.reading.mentions import Named

if TYPE_CHECKING:
    from studyboard.reading.scene import Scene

#: So few words are no sentence of their own: “With check!”
_FRAGMENT = 3


class Mood(Flag):
    """How something is said."""

    PLAIN = 0
    HYPOTHETICAL = auto()
    PAST = auto()
    NEGATIVE = auto()
    QUESTION = auto()


def moods_of(scene: Scene) -> list[Mood]:
    """How each word of a line is said."""
    tokens = scene.tokens
    found = [Mood.PLAIN] * len(tokens)
    table = scene.words.moods
    moods = (
        ("conditional", Mood.HYPOTHETICAL),
        ("sequence", Mood.HYPOTHETICAL),
        ("hypothetical", Mood.HYPOTHETICAL),
        ("irreal", Mood.HYPOTHETICAL),
        ("past", Mood.PAST),
        ("negative", Mood.NEGATIVE),
    )
    # “Once more” and “not only” set no mood, although one of their words alone would.
    plain = {word for words in _phrases(tokens, table.get("plain", frozenset())) for word in words}
    if _told_in_past(scene):
        # “The bishop was pinned”, where the moves are told in the past as well, is said of the position then.
        plain |= {at for at, token in enumerate(tokens) if scene.words.hint("was", token.text)}
    for name, mood in moods:
        for at, *_ in _phrases(tokens, table.get(name, frozenset())):
            if at not in plain and (name != "sequence" or _names_something(scene, at)):
                _colour(scene, found, at, mood, whole=name in ("conditional", "sequence"), back=name == "irreal")
    for sentence in scene.sentences:
        cued = any(step.cued and sentence.start <= step.token < sentence.end for step in scene.steps)
        told = any(scene.words.hint("tells", token.text) for token in tokens[sentence.start : sentence.end])
        if sentence.start and sentence.end - sentence.start <= _FRAGMENT and not cued and not told:
            # “He wants the queen on h4. With check!”
            for at in range(sentence.start, sentence.end):
                found[at] |= found[sentence.start - 1] & Mood.HYPOTHETICAL
        if scene.words.hint("unreal_head", sentence.code) or scene.words.hint("another_time", sentence.code):
            # “Were the queen on h5, …”, “Last year I lost a pawn here.”
            for at in range(sentence.start, sentence.end):
                found[at] |= Mood.HYPOTHETICAL
        last = tokens[sentence.end - 1].end
        asked = scene.text[last : last + 2].lstrip("\"'”’)")[:1] == "?"
        if asked or scene.words.hint("asks_inverted", sentence.code):
            for at in range(sentence.start, sentence.end):
                found[at] |= Mood.QUESTION
    return found


def _phrases(tokens: Sequence[Token], phrases: frozenset[tuple[str, ...]]) -> Iterator[range]:
    """The words of the longest of the phrases that begins at each word, where any does."""
    longest = max((len(phrase) for phrase in phrases), default=0)
    words = tuple(token.text for token in tokens)
    for at in range(len(words)):
        for end in range(min(at + longest, len(words)), at, -1):
            if words[at:end] in phrases:
                yield range(at, end)
                break


def _told_in_past(scene: Scene) -> bool:
    """Does the line tell all of it in the past: with verbs of the past, and none of the present?"""
    past = sum(scene.words.hint("past_verb", token.text) for token in scene.tokens)
    present = sum(scene.words.hint("present_verb", token.text) for token in scene.tokens)
    told = any(
        scene.words.hint("past_verb", token.text) and not scene.words.hint("was", token.text) for token in scene.tokens
    )
    return told and past > 3 * present and any(step.move is not None for step in scene.steps)


def _colour(scene: Scene, found: list[Mood], at: int, mood: Mood, *, whole: bool, back: bool) -> None:
    """How far a word that sets a mood reaches: to the end of its clause, of its sentence for a condition.

    A move that is played behind the word makes a fact of what was imagined; so does the side-line that begins with
    the line, for the condition that it is told with. The past and what denies reach backwards too.
    """
    start, end = scene.sentence(at) if whole else scene.clause(at)
    first = start if mood is not Mood.HYPOTHETICAL else at
    if back:
        # “A bishop on e7 would help” speaks of none that is there.
        first = max([start, *(step.token for step in scene.steps if step.cued and start < step.token <= at)])
    if mood is Mood.HYPOTHETICAL:
        shown = [step.token for step in scene.steps if step.cued and at < step.token < end]
        if shown:
            end = min(shown)
        opens = scene.depth and scene.sentence_of[at] == 0 and scene.steps and not scene.steps[-1].cued
        if whole and opens and scene.steps[-1].move is not None:
            end = at
        elif whole and not shown and _is_played(scene, at):
            # “{Kf3}If the king goes to f3, White wins”: what is supposed has been played.
            end = min(end, scene.clause(at)[1])
    reasons = mood is Mood.HYPOTHETICAL and not scene.words.hint("supposes", scene.tokens[at].text)
    told = next((n for n in range(at + 1, end) if scene.words.hint("reason", scene.tokens[n].text)), None)
    if reasons and told is not None:
        # “He cannot take because the bishop protects it”: the reason is a fact.
        end = told
    elif not whole and mood is Mood.HYPOTHETICAL and end == scene.clause(at)[1]:
        given = reasons and end < len(scene.tokens) and scene.words.hint("reason", scene.tokens[end].text)
        end = end if given else _continued(scene, end)
    if mood is Mood.NEGATIVE:
        # “The king cannot go there because the bishop covers it”: the reason is not denied, nor what it is for.
        causes = [n for n in range(start, end) if scene.words.hint("reason", scene.tokens[n].text)]
        first = max((n for n in causes if n < at), default=first)
        end = min((n for n in causes if n > at), default=end)
        # “Black has not castled and White has lost a rook”: the next side's clause begins without a comma.
        others = [n for n in range(start, end) if _next_side(scene, n)]
        first = max([first, *(n for n in others if n <= at)])
        end = min([end, *(n for n in others if n > at)])
    for token in range(first, end):
        found[token] |= mood


def _next_side(scene: Scene, at: int) -> bool:
    """Does the clause of a side that is named begin behind this word: “and White has …”?"""
    if not scene.words.hint("joins_clauses", scene.tokens[at].text):
        return False
    side = next((m for m in scene.mentions if m.start == at + 1 and m.what is Named.SIDE), None)
    return side is not None and side.end < len(scene.tokens) and scene.words.hint("tells", scene.tokens[side.end].text)


def _lists_further(scene: Scene, start: int) -> bool:
    """Does a clause go on with a list: “can put the queen on c8, the bishop on d8 or f8”?"""
    end = scene.clause(start)[1]
    first = start + 1 if scene.words.hint("lists_on", scene.tokens[start].text) else start
    placed = next((m for m in scene.mentions if m.start == first and m.kind and m.square is not None), None)
    if placed is None or placed.end > end:
        return False
    return placed.end == end or scene.words.hint("lists_on", scene.tokens[placed.end].text)


def _is_played(scene: Scene, at: int) -> bool:
    """Is the move that this clause supposes the one that is played at the word?"""
    start, end = scene.clause(at)
    landed = {step.landed for step in scene.steps if step.cued and start <= step.token <= at and step.move is not None}
    return any(start <= m.start < end and m.square is not None and m.square in landed for m in scene.mentions)


def _names_something(scene: Scene, at: int) -> bool:
    """Does the clause name a piece or a square? “When the knight takes” does, “when the smoke clears” does not."""
    start, end = scene.clause(at)
    named = any(start <= m.start < end and m.what in (Named.PIECE, Named.SQUARE) for m in scene.mentions)
    return named or any(start <= said.phrase.start < end for said in scene.said)


def _continued(scene: Scene, end: int) -> int:
    """Behind the clauses that hang on the one that ends here: “…, hitting the bishop”."""
    if 0 < end < len(scene.tokens) and ":" in scene.text[scene.tokens[end - 1].end : scene.tokens[end].start]:
        # What is wanted or would be follows the colon.
        stop = scene.sentence(end - 1)[1]
        return min([stop, *(step.token for step in scene.steps if step.cued and end <= step.token < stop)])
    while (
        end < len(scene.tokens)
        and scene.tokens[end].broken == Break.CLAUSE
        and (
            scene.tokens[end].text.endswith("ing")
            or _lists_further(scene, end)
            or scene.words.hint("hangs_on", " ".join(token.text for token in scene.tokens[end : end + 3]))
        )
        and not any(step.cued and step.token == end for step in scene.steps)
    ):
        end = scene.clause(end)[1]
    return end
