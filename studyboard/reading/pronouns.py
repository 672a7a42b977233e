"""Which of the players “he” and “she” are, from the way in which the talk itself speaks of them."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable
from dataclasses import replace

import chess

from studyboard.reading.mentions import Players, spoken_by
from studyboard.reading.words import Names

_WORD = re.compile(r"[.!?;:]+|[a-z][a-z'-]*")
_TITLES = {"mr": "he", "mrs": "she", "miss": "she", "ms": "she", "sir": "he", "lady": "she", "madam": "she"}
#: “Ludo tucks his king away” tells who Ludo is; “Ludo checks her king” does not.
_OWN_KING = re.compile(
    r"\b(?P<name>[a-z][\w-]*) (?P<verb>[a-z]+s|[a-z]+ed|put|brought|took|ran|hid)(?: \w+)?"
    r" (?P<whose>his|her) (?:own \w+|king)\b"
)
_HOSTILE = re.compile(r"check|chase|attack|hunt|hit|pin|mate|threaten|harass|drive|take|took|want|need|force")
#: A title is worth so many pronouns; so many are needed, and so many times those that say the contrary.
_TITLE, _ENOUGH, _CLEAR = 3, 3, 3
#: “{Be7}His bishop goes back”: the one who plays at this word.
_PRONOUN = {"he": "he", "his": "he", "she": "she", "her": "she", "he's": "he", "she's": "she"}
_SIGNS = '.,;:!?…“”"()'


def with_sides_heard(players: Players, acting: Iterable[tuple[str, chess.Color]], names: Names) -> Players:
    """The players, with the speaker among them where “I” is said at the moves of one side, and who “he” or “she” is.

    acting: the words at which moves are played, with who plays them
    """
    said = Counter((word.lower().replace("’", "'").strip(_SIGNS), colour) for word, colour in acting)
    mine = {colour: sum(said[word, colour] for word in names.me) for colour in chess.COLORS}
    speaker = players.speaker
    if speaker is None:
        speaker = max(mine, key=lambda colour: mine[colour])
        if mine[speaker] < _ENOUGH or mine[speaker] < _CLEAR * mine[not speaker]:
            return players
        players = spoken_by(players, speaker, names)
    if not players.pronouns:
        votes = {
            (one, c): sum(said[word, c] for word in _PRONOUN if _PRONOUN[word] == one)
            for one in ("he", "she")
            for c in chess.COLORS
        }
        told = {one: not speaker for one in ("he", "she") if votes[one, not speaker] > _CLEAR * votes[one, speaker]}
        if len(told) == 1:
            return replace(players, pronouns=told)
    return players


def with_pronouns(players: Players, lines: Iterable[str], acting: Iterable[tuple[str, chess.Color]] = ()) -> Players:
    """The players, with “he” and “she” where the talk calls one of them so and the other one otherwise.

    lines: the talk; acting: the words at which moves are played, with who plays them
    """
    votes: Counter[tuple[str, chess.Color]] = Counter()
    for line in lines:
        named: list[chess.Color] = []
        since, title = 0, ""
        for word in _WORD.findall(line.lower().replace("’", "'")):
            if not word[0].isalpha():
                named, since = (named[-1:] if len(set(named)) == 1 else []), 0
                continue
            since += 1
            bare = word.removesuffix("'s")
            colour = players.words.get(bare)
            if colour is not None:
                named = [*named, colour] if since > 1 or not named else [colour]
                if title:
                    votes[title, colour] += _TITLE
            elif bare in ("he", "she") and len(set(named)) == 1:
                votes[bare, named[-1]] += 1
            title = _TITLES.get(word, "")
        for owner in _OWN_KING.finditer(line.lower()):
            colour = players.words.get(owner["name"])
            if colour is not None and not _HOSTILE.match(owner["verb"]):
                votes["he" if owner["whose"] == "his" else "she", colour] += 1
    for word, colour in acting:
        spoken = _PRONOUN.get(word.lower().strip(_SIGNS))
        if spoken is not None:
            votes[spoken, colour] += 1
    for he in chess.COLORS:
        right = votes["he", he] and votes["she", not he]
        agree = votes["he", he] + votes["she", not he]
        if right and agree >= _ENOUGH and agree >= _CLEAR * (votes["he", not he] + votes["she", he]):
            return replace(players, pronouns={"he": he, "she": not he})
    return players
