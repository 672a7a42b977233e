"""Changes of a line that make it true, where there is only one: another square, another piece."""

from __future__ import annotations

import chess

from studyboard.reading.findings import Fix
from studyboard.reading.scene import Scene


def square_fix(scene: Scene, start: int, end: int, wrong: chess.Square, right: chess.Square) -> Fix | None:
    """Another square in these words (end excluded); None where the wrong one is not written in one word."""
    for token in scene.tokens[start:end]:
        if token.text == chess.square_name(wrong):
            return Fix(token.start, token.end, chess.square_name(right))
    return None


def piece_fix(scene: Scene, start: int, end: int, wrong: chess.PieceType | None, right: chess.PieceType) -> Fix | None:
    """Another piece in these words (end excluded); None where the wrong one is not named."""
    for token in scene.tokens[start:end]:
        if wrong is not None and scene.words.names.pieces.get(token.text) == (wrong, False):
            name = chess.piece_name(right)
            return Fix(token.start, token.end, name.capitalize() if token.written[0].isupper() else name)
    return None
