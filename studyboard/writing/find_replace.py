"""Finds words in the whole script and puts others in their place, with every cue staying at its word."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from studyboard.model.edits import ChangeLine, ChangeNode, Edit, Several
from studyboard.model.errors import EditRefusedError
from studyboard.model.order import running_order
from studyboard.model.script import BeatKey, Cue, Part, SpokenLine, word_spans
from studyboard.model.study import Study
from studyboard.translation import tr, tr_later

#: The texts of a node, in the order in which they are searched.
_SPOKEN, _NOTES = "spoken", ("note_before", "note")


@dataclass(frozen=True, slots=True)
class Search:
    """What is searched for.

    notes: also in the notes for print
    """

    text: str
    match_case: bool = False
    whole_words: bool = False
    notes: bool = False


@dataclass(frozen=True, slots=True)
class Place:
    """Where something was found.

    field: "spoken", or "note_before" or "note" of a node
    start, end: in characters of that text
    """

    key: BeatKey
    field: str
    start: int
    end: int


def find(study: Study, search: Search) -> tuple[Place, ...]:
    """Every place, in the order of the talk, then those in lines that are not told. O(size of the script)."""
    pattern = _pattern(search)
    if pattern is None:
        return ()
    fields = (_NOTES[0], _SPOKEN, _NOTES[1]) if search.notes else (_SPOKEN,)
    return tuple(
        Place(key, field, found.start(), found.end())
        for key in script_order(study)
        for field in fields
        if isinstance(key, int) or field == _SPOKEN
        for found in pattern.finditer(text_of(study, key, field))
        if found.end() > found.start()
    )


def script_order(study: Study) -> Iterator[BeatKey]:
    """Parts and told nodes in the order of the talk, then the nodes that are not told."""
    seen: set[BeatKey] = set()
    for visit in running_order(study):
        key: BeatKey = visit.node if visit.part is None else visit.part
        if key not in seen:
            seen.add(key)
            yield key
    yield from (node.id for node in study.branch(study.root) if node.id not in seen)


def text_of(study: Study, key: BeatKey, field: str = _SPOKEN) -> str:
    """One text of the script."""
    if isinstance(key, Part):
        return study.line(key).spoken.text
    node = study.nodes[key]
    return node.spoken.text if field == _SPOKEN else str(getattr(node, field))


def replace_places(study: Study, places: Iterable[Place], search: Search, by: str) -> Edit:
    """The edit that puts *by* in these places, as one step. Raises EditRefusedError where there are none.

    Where case does not matter, a word with a capital gets a capital.
    """
    edits: list[Edit] = []
    ordered = sorted(places, key=lambda place: (str(place.key), place.field, place.start))
    for (key, field), group in groupby(ordered, key=lambda place: (place.key, place.field)):
        text = text_of(study, key, field)
        pieces = [(p.start, p.end, _as_found(text[p.start : p.end], search, by)) for p in group]
        edits.append(_edit(study, key, field, pieces))
    if not edits:
        raise EditRefusedError(tr("Nothing was found that could be replaced."))
    return Several(tuple(edits), tr_later("Replace in the script"))


def replaced(line: SpokenLine, pieces: Sequence[tuple[int, int, str]]) -> SpokenLine:
    """The line with other text in some places; a cue stays at its word, and inside a place at the word that took over.

    pieces: start, end and new text of each place, in characters, in their order and apart from each other
    """
    old = line.text
    text, done = "", 0
    placed: list[tuple[int, int, int, int]] = []
    for start, end, by in pieces:
        text += old[done:start]
        placed.append((start, end, len(text), len(text) + len(by)))
        text += by
        done = end
    text += old[done:]
    starts, new_starts = ([start for start, _ in word_spans(one)] for one in (old, text))
    ends = [end for _, end in word_spans(text)]
    cues: list[Cue] = []
    for cue in line.sorted().cues:
        place = starts[cue.word] if cue.word < len(starts) else len(old)
        moved = _moved(place, placed, starts, new_starts)
        cues.append(replace(cue, word=sum(end <= moved for end in ends) if place < len(old) else len(ends)))
    return SpokenLine(text, tuple(cues))


def _moved(place: int, placed: Sequence[tuple[int, int, int, int]], starts: list[int], new_starts: list[int]) -> int:
    """Where in the new text this place of the old one is."""
    shift = 0
    for start, end, new_start, new_end in placed:
        if place < start:
            break
        if place < end:
            number = sum(start <= other < place for other in starts)
            inside = [other for other in new_starts if new_start <= other < new_end] or [new_start]
            return new_start if number == 0 else inside[min(number, len(inside) - 1)]
        shift = new_end - end
    return place + shift


def _edit(study: Study, key: BeatKey, field: str, pieces: Sequence[tuple[int, int, str]]) -> Edit:
    if isinstance(key, Part):
        line = study.line(key)
        return ChangeLine(key, replace(line, spoken=replaced(line.spoken, pieces)))
    if field == _SPOKEN:
        return ChangeNode(key, field, replaced(study.nodes[key].spoken, pieces))
    return ChangeNode(key, field, replaced(SpokenLine(text_of(study, key, field)), pieces).text)


def _pattern(search: Search) -> re.Pattern[str] | None:
    if not search.text:
        return None
    # Apostrophes are typed straight and printed curved.
    wanted = re.sub("['’]", "['’]", re.escape(search.text))
    if search.whole_words:
        wanted = rf"(?<!\w){wanted}(?!\w)"
    return re.compile(wanted, 0 if search.match_case else re.IGNORECASE)


def _as_found(found: str, search: Search, by: str) -> str:
    if search.match_case or not by or not found[:1].isupper() or search.text[:1].isupper():
        return by
    return by[0].upper() + by[1:]
