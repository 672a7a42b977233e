"""Sentences without what is put in between commas: “her pawn was, with nothing before it, a passed pawn”."""

from __future__ import annotations

import re
from collections.abc import Iterator

from studyboard.reading.scene import Scene, Sentence


def without_asides(scene: Scene) -> Iterator[Sentence]:
    """Each sentence once for every aside in it, with the aside taken out; the seam is where it stood.

    An aside stands behind a word that cannot end a clause, or between a name and its verb.
    """
    for sentence in scene.sentences:
        for found in scene.words.hints["aside_between"].finditer(sentence.code):
            yield _cut(sentence, found)
            second = scene.words.hints["aside_between"].search(sentence.code, found.end("aside"))
            if second is not None and second.start("aside") == found.end("aside"):
                yield _cut(sentence, found, second.end("aside"))


def _cut(sentence: Sentence, found: re.Match[str], end: int | None = None) -> Sentence:
    start, stop = found.start("aside"), found.end("aside") if end is None else end
    code = sentence.code[:start] + sentence.code[stop:]
    places = tuple(
        (place if place < start else place - (stop - start), token)
        for place, token in sentence.places
        if place < start or place >= stop
    )
    return Sentence(sentence.start, sentence.end, code, places, seam=start)
