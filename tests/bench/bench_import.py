"""Prints how fast PGN is read, next to chess.pgn.read_game alone on the same file."""

from __future__ import annotations

import random
import sys
import tempfile
import time
from pathlib import Path

import chess
import chess.pgn

from studyboard.notation.pgn_games import index_games
from studyboard.notation.pgn_reader import read_games

GAMES = 2_000
PLIES = 84
NESTED = 3_000


def made_up_games(count: int, annotated: bool = False, seed: int = 7) -> str:
    """Legal games of made-up players, the same ones each time: some captures, the rest is chance.

    annotated: with a comment, a glyph or a short variation after some of the moves
    """
    chance = random.Random(seed)
    return "\n".join(_game(chance, number, annotated) for number in range(1, count + 1))


def _game(chance: random.Random, number: int, annotated: bool) -> str:
    board = chess.Board()
    words: list[str] = []
    while board.ply() < PLIES and not board.is_game_over():
        moves = list(board.legal_moves)
        takes = [move for move in moves if board.is_capture(move)]
        move = chance.choice(takes if takes and chance.random() < 0.3 else moves)
        if board.turn:
            words.append(f"{board.fullmove_number}.")
        before = board.copy(stack=False)
        words.append(board.san_and_push(move))
        if annotated and board.ply() % 5 == 0:
            words += _annotation(chance, before)
    result = board.result()
    lines: list[str] = [""]
    for word in (*words, result):
        if len(lines[-1]) + len(word) > 78:
            lines.append("")
        lines[-1] += f" {word}" if lines[-1] else word
    tags = {
        "Event": "Riverside Club Evening",
        "Site": "Upper Room",
        "Date": f"2031.{number % 12 + 1:02}.{number % 28 + 1:02}",
        "Round": str(number),
        "White": f"Player {number}",
        "Black": f"Guest {number * 7 % 911}",
        "Result": result,
    }
    return "".join(f'[{name} "{value}"]\n' for name, value in tags.items()) + "\n" + "\n".join(lines) + "\n"


def _annotation(chance: random.Random, board: chess.Board) -> list[str]:
    if chance.random() < 0.5:
        return ["$14", "{A", "remark", "of", "ten", "or", "so", "quite", "ordinary", "words", "here.}"]
    words: list[str] = []
    for _ in range(4):
        moves = list(board.legal_moves)
        if moves:
            words += [
                f"{board.fullmove_number}{'.' if board.turn else '...'}",
                board.san_and_push(chance.choice(moves)),
            ]
    return [f"({words[0]}", *words[1:-1], f"{words[-1]})"]


def nested_variations(depth: int) -> str:
    """One game in which each variation holds the next: the second move of each is replaced in the one inside it."""
    board = chess.Board()
    words: list[str] = []
    for _ in range(depth + 1):
        quiet = [move for move in board.legal_moves if not board.is_capture(move) and not board.gives_check(move)]
        knights = [move for move in quiet if board.piece_type_at(move.from_square) == chess.KNIGHT] + quiet
        played, instead = knights[:2]
        number = f"{board.fullmove_number}{'.' if board.turn else '...'}"
        words.append(f"{number} {board.san(played)} ({number} {board.san(instead)}")
        board.push(instead)
    return " ".join(words) + ")" * (depth + 1) + " *"


def _timed(label: str, work) -> float:  # type: ignore[no-untyped-def]
    began = time.perf_counter()
    what = work()
    seconds = time.perf_counter() - began
    print(f"{label:<52} {seconds:8.3f} s   {what}")
    return seconds


def _read_by_chess(path: Path) -> str:
    count = 0
    with path.open(encoding="utf-8") as file:
        while chess.pgn.read_game(file) is not None:
            count += 1
    return f"{count} games"


def _read_by_us(path: Path) -> str:
    return f"{sum(len(game.study.nodes) for game in read_games(path))} nodes"


def main() -> None:
    """Make the files, read them, print."""
    with tempfile.TemporaryDirectory() as folder:
        for name, annotated in (("plain", False), ("annotated", True)):
            path = Path(folder) / f"{name}.pgn"
            path.write_text(made_up_games(GAMES, annotated), encoding="utf-8")
            size = path.stat().st_size / 1e6
            print(f"{GAMES} {name} games of up to {PLIES} half-moves, {size:.2f} MB; Python {sys.version.split()[0]}")
            theirs = _timed("chess.pgn.read_game", lambda path=path: _read_by_chess(path))
            ours = _timed("read_games, studies built", lambda path=path: _read_by_us(path))
            print(f"    {GAMES / theirs:.0f} against {GAMES / ours:.0f} games/s: {theirs / ours:.2f} times the speed")
            _timed("index_games", lambda path=path: f"{len(index_games(path))} games")
        deep = nested_variations(NESTED)
        _timed(f"{NESTED} nested variations", lambda: f"{len(next(read_games(deep)).study.nodes)} nodes")


if __name__ == "__main__":
    main()
