"""Moves as they are printed: with their numbers, with figurines, several as the name of a line."""

from __future__ import annotations

import re
from itertools import islice

from studyboard.model.positions import Positions
from studyboard.translation import tr

#: White's pieces for both sides, as printed books have them.
_FIGURINES = str.maketrans("KQRBN", "♔♕♖♗♘")

#: The letter of a piece before the square that it goes to (PGN standard, 8.2.3), or behind the sign of a promotion;
#: whole words such as “Be” or “Knight” have no square behind them.
_WRITTEN_PIECE = re.compile(
    r"(?<![A-Za-z])[KQRBN](?=[a-h]?[1-8]?[x:–-]?[a-h][1-8](?![A-Za-z0-9]))|(?<=[a-h][18]=)[QRBN]"
)


def move_label(positions: Positions, node_id: int) -> str:
    """The move of a node with its number, such as “12... Nxe5”; “Start” at the root."""
    node = positions.study.nodes[node_id]
    if node.parent is None:
        return "Start"
    return f"{move_number(positions, node_id)} {positions.san(node_id)}"


def move_number(positions: Positions, node_id: int) -> str:
    """The number of a node's move with its dots, such as “12.” or “12...”; empty at the root."""
    parent = positions.study.nodes[node_id].parent
    if parent is None:
        return ""
    board = positions.board(parent)
    return f"{board.fullmove_number}{'.' if board.turn else '...'}"


def figurine(san: str) -> str:
    """The move with a figurine in place of the letter of its piece."""
    return san.translate(_FIGURINES)


def with_figurines(text: str) -> str:
    """A text in which moves are written, such as “after Nf3 and exd8=Q+”, with figurines in place of their letters."""
    return _WRITTEN_PIECE.sub(lambda letter: letter[0].translate(_FIGURINES), text)


def line_label(positions: Positions, node_id: int, moves: int = 3) -> str:
    """What to call the line that begins at a node: the author's name for it, else its first few moves.

    moves: how many half-moves at most
    """
    study = positions.study
    name = study.nodes[node_id].name.strip()
    if name:
        return name
    line = list(islice((node for node in study.main_line(node_id) if node != study.root), moves + 1))
    words: list[str] = []
    for node in line[:moves]:
        white_moved = not positions.board(node).turn
        words.append(move_label(positions, node) if white_moved or not words else positions.san(node))
    return " ".join(words) + (" …" if len(line) > moves else "") if words else tr("Start")
