"""Rows of the script as text for other programs: words with their moves, PGN, FEN."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from studyboard.model.positions import Positions
from studyboard.model.reading_order import pruned, rows_in_order
from studyboard.model.script import BeatKey, Part
from studyboard.model.study import Study
from studyboard.notation.labels import move_label
from studyboard.notation.pgn_writer import pgn_text


def in_order(study: Study, keys: Collection[BeatKey]) -> tuple[BeatKey, ...]:
    """These rows in reading order. O(size of the tree)."""
    return tuple(key for key in rows_in_order(study) if key in keys)


def spoken_words(study: Study, positions: Positions, keys: Iterable[BeatKey]) -> str:
    """What is said at these rows, each line below the moves that lead to it; paragraphs with an empty line between.

    Moves that follow each other stand together. A side-line begins with its name, where it has one.
    """
    paragraphs: list[str] = []
    moves: list[str] = []
    before: BeatKey | None = None
    for key in in_order(study, set(keys)):
        goes_on = isinstance(key, int) and study.nodes[key].parent == before
        if moves and not goes_on:
            paragraphs.append(" ".join(moves))
            moves = []
        before = key
        if isinstance(key, Part):
            said = study.line(key).spoken.text.strip()
        else:
            node = study.nodes[key]
            said = node.spoken.text.strip()
            name = node.name.strip() if study.begins_side_line(key) else ""
            if name:
                paragraphs.append(f"{name}:")
            if node.parent is not None:
                moves.append(_move(positions, key, first=not moves))
        if said:
            paragraphs.append("\n".join(filter(None, (" ".join(moves), said))))
            moves = []
    if moves:
        paragraphs.append(" ".join(moves))
    return "\n\n".join(paragraphs)


def rows_as_pgn(study: Study, keys: Collection[BeatKey]) -> str:
    """One game in PGN: of a single row, the way there and all after it; of several, those and the way to them.

    What is said comes as comments. The result is that of the game where its
    last move is among them, else “*”.
    """
    nodes = [key for key in keys if not isinstance(key, Part)]
    whole = [node.id for node in study.branch(nodes[0])] if len(nodes) == 1 else nodes
    game = pruned(study, whole)
    game.lines = {part: study.line(part) for part in keys if isinstance(part, Part)}
    end = list(study.main_line())[-1]
    if list(game.main_line())[-1] != end:
        game.headers["Result"] = "*"
    return pgn_text(game, Positions(game))


def rows_as_fen(study: Study, positions: Positions, keys: Collection[BeatKey]) -> str:
    """The positions of these rows in FEN, one on each line, in reading order."""
    return "\n".join(positions.board(key).fen() for key in in_order(study, keys) if not isinstance(key, Part))


def _move(positions: Positions, node: int, *, first: bool) -> str:
    parent = positions.study.nodes[node].parent
    assert parent is not None
    return move_label(positions, node) if first or positions.board(parent).turn else positions.san(node)
