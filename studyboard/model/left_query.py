"""Queries of the read-through that the author has looked at and decided to leave."""

from __future__ import annotations

from dataclasses import dataclass

from studyboard.model.script import BeatKey


@dataclass(frozen=True, slots=True)
class LeftQuery:
    """One query that is not put again as long as its words stay the same.

    beat: whose line it is in
    kind: what the query is about
    quote: the words of the line
    """

    beat: BeatKey
    kind: str
    quote: str
