"""Reads PGN into studies: what is good is read, the rest is kept as notes and reported."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import TypeAlias

import chess

from studyboard.model.errors import EditRefusedError
from studyboard.model.node import Node
from studyboard.model.study import SEVEN_TAG_ROSTER, Study, start_board
from studyboard.notation.pgn_draft import Draft
from studyboard.notation.pgn_games import GameEntry, GameText, game_text_at, game_texts, loose_value
from studyboard.notation.pgn_movetext import MovetextReader
from studyboard.notation.pgn_tokens import BETWEEN, LOOSE_TAG, TAG, tag_name, tag_value
from studyboard.translation import tr

_Odd: TypeAlias = "list[tuple[int, str]]"
_CHESS = frozenset({"", "standard", "chess", "normal", "from position", "orthodox", "?", "-"})
_UNKNOWN = frozenset({"*", "?", "", "-"})


@dataclass(frozen=True, slots=True)
class Problem:
    """Something in a PGN file that could not be read as it stands.

    line, column: where, from 1
    message: what was found and what was done, in a sentence
    game_number: in which game of the file, from 1
    """

    line: int
    column: int
    message: str
    game_number: int


@dataclass(frozen=True, slots=True)
class GameRead:
    """One game of a PGN file as a study, with what could not be read. number: in its file, from 1."""

    study: Study
    problems: tuple[Problem, ...]
    number: int


def read_games(source: Path | bytes | str) -> Iterator[GameRead]:
    """Every game of a file, of its bytes, or of a text. Raises StudyboardError where a file cannot be read.

    Never raises for what stands in it: see GameRead.problems.
    """
    return map(read_game, game_texts(source))


def read_game_at(path: Path, entry: GameEntry) -> GameRead:
    """One game that index_games or iter_index found. Raises StudyboardError where the file is gone or changed."""
    return read_game(game_text_at(path, entry))


def read_game(game: GameText) -> GameRead:
    """The game in one piece of text."""
    text = game.text
    odd: _Odd = []
    foreword = _foreword(text)
    headers, places, moves = _read_tags(text, foreword, odd)
    board, unread = _start(headers, odd, places)
    reader = MovetextReader(text, board)
    if foreword:
        reader.read_foreword(0, foreword)
    if unread:
        reader.keep(unread)
        reader.leave_out(moves, len(text))
    else:
        reader.read(moves, len(text))
    draft = reader.finish()
    _settle_result(headers, draft.result, odd, places)
    odd += draft.odd
    odd.sort()
    return GameRead(_study(headers, draft), tuple(_problems(game, odd)), game.number)


def _foreword(text: str) -> int:
    """Where the tags begin, if something stands before them; else 0."""
    if text[:1] == "[" or LOOSE_TAG.match(text.lstrip(BETWEEN)):
        return 0
    match = LOOSE_TAG.search(text, text.find("\n") + 1)
    while match is not None:
        if text[match.start() - 1] == "\n":
            return match.start()
        match = LOOSE_TAG.search(text, match.end())
    return 0


def _read_tags(text: str, at: int, odd: _Odd) -> tuple[dict[str, str], dict[str, int], int]:
    """The tag pairs from *at* on, the seven of the roster first; where each stands, and where the movetext begins."""
    found: dict[str, str] = {}
    places: dict[str, int] = {}
    while True:
        begin = at
        while begin < len(text) and text[begin] in BETWEEN:
            begin += 1
        match = TAG.match(text, begin)
        if match is not None:
            name, value = tag_name(match[1]), tag_value(match[2])
        else:
            match = LOOSE_TAG.match(text, begin)
            if match is None:
                break
            name, value = tag_name(match[1]), loose_value(match[2])
            odd.append(
                (
                    begin,
                    tr('This tag is not written as [{name} "…"]; it was read as “{value}”.', name=name, value=value),
                )
            )
        at = match.end()
        if name not in found:
            found[name] = value
            places[name] = begin
        elif found[name] != value:
            odd.append(
                (
                    begin,
                    tr(
                        "A second {name} tag says “{value}”; the first one, “{found}”, was kept.",
                        name=name,
                        value=value,
                        found=found[name],
                    ),
                )
            )
    headers = {name: found.pop(name, default) for name, default in SEVEN_TAG_ROSTER.items()}
    headers.update(found)
    if "FEN" in headers:
        headers.setdefault("SetUp", "1")
    return headers, places, at


def _start(headers: dict[str, str], odd: _Odd, places: dict[str, int]) -> tuple[chess.Board, str]:
    """The start position; and, where the FEN tag describes none, that tag as text, taken out of *headers*."""
    variant = headers.get("Variant", "")
    try:
        board = start_board(headers)
    except EditRefusedError as reason:
        fen = headers.pop("FEN")
        headers.pop("SetUp", None)
        odd.append((places["FEN"], tr("{reason} The moves of this game were kept as a note.", reason=reason)))
        return start_board(headers), f"FEN: {fen}"
    if variant.strip().lower() not in _CHESS and not board.chess960:
        odd.append(
            (
                places["Variant"],
                tr("The Variant tag says “{variant}”; the moves were read by the rules of chess.", variant=variant),
            )
        )
    return board, ""


def _settle_result(headers: dict[str, str], marker: str | None, odd: _Odd, places: dict[str, int]) -> None:
    if marker is None or marker == headers["Result"]:
        return
    if headers["Result"].strip() in _UNKNOWN:
        headers["Result"] = marker
    elif marker != "*":
        said = tr(
            "The Result tag says “{result}” but the moves end with “{marker}”; the tag was kept.",
            result=headers["Result"],
            marker=marker,
        )
        odd.append((places["Result"], said))


def _study(headers: dict[str, str], draft: Draft) -> Study:
    study = Study(headers)
    moves, parents, children = draft.moves, draft.parents, draft.children
    nodes = study.nodes
    for node in range(1, len(moves)):
        nodes[node] = Node(node, parents[node], moves[node], tuple(children[node]))
    nodes[0] = Node(0, None, None, tuple(children[0]))
    for node in draft.notes.keys() | draft.before.keys() | draft.nags.keys():
        plain = nodes[node]
        nodes[node] = Node(
            node,
            plain.parent,
            plain.move,
            plain.children,
            note_before="\n".join(draft.before.get(node, ())),
            note="\n".join(draft.notes.get(node, ())),
            nags=tuple(draft.nags.get(node, ())),
        )
    study.next_id = len(moves)
    return study


def _problems(game: GameText, odd: _Odd) -> Iterator[Problem]:
    starts = [0, *(match.end() for match in re.finditer("\n", game.text))] if odd else []
    for at, message in odd:
        line = bisect_right(starts, at) - 1
        column = at - starts[line] + (1 if line else game.column)
        yield Problem(game.line + line, column, message, game.number)
