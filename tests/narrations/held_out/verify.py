"""Check that the narrations of this folder agree with themselves: legal moves, every move told, quotes found once."""

from __future__ import annotations

import re
import sys
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import chess

KEYS = {"style", "source", "language", "fen", "main_line", "game", "text", "side_lines", "mentions"}
KINDS = {"plan", "control", "reason", "elsewhere", "threat", "condition", "look_back"}
HEARD_AS = {
    "one": "1", "two": "2", "three": "3", "four": "4", "for": "4", "five": "5", "six": "6",
    "seven": "7", "eight": "8", "be": "b", "ate": "8", "tree": "3", "too": "2", "see": "c",
    "sea": "c", "dee": "d", "gee": "g", "night": "knight", "rock": "rook", "pond": "pawn",
}  # fmt: skip
NAMES = {
    chess.PAWN: "pawn", chess.KNIGHT: "knight", chess.BISHOP: "bishop", chess.ROOK: "rook", chess.QUEEN: "queen",
    chess.KING: "king",
}  # fmt: skip
# Told in words that the check below does not know: “King's pawn, king's pawn”.
TOLD_OTHERWISE = {"with_times": ["e4", "e5"]}
TAKING = re.compile(r"take|took|captur|recaptur|swap|exchang|grab|snap|pick|whip|trade|eat")


def words_of(text: str) -> list[str]:
    """The spoken words, lower case, homophones undone, squares as one word; captions' times left out."""
    kept = [line for line in text.splitlines() if "-->" not in line and not line.strip().isdigit()]
    plain = re.sub(r"\[\d+:\d\d\]", " ", "\n".join(kept)).lower()
    words = [HEARD_AS.get(word, word) for word in re.findall(r"[a-z0-9]+", plain)]
    joined: list[str] = []
    for word in words:
        if re.fullmatch("[1-8]", word) and joined and re.fullmatch("[a-h]", joined[-1]):
            joined[-1] += word
        else:
            joined.append(word)
    return joined


def told_at(words: list[str], board: chess.Board, move: chess.Move) -> set[int]:
    """Places at which the move may be told: its target square, a word of taking, castling, or a piece moving on."""
    target = chess.square_name(move.to_square)
    piece = NAMES[board.piece_type_at(move.from_square) or chess.PAWN]
    places = set()
    for place, word in enumerate(words):
        near = words[max(0, place - 9) : place + 6]
        castling = board.is_castling(move) and word.startswith("castle")
        taking = board.is_capture(move) and TAKING.match(word)
        if word == target or castling or taking or (word == piece and target in near):
            places.add(place)
    return places


def cheapest_telling(words: list[str], board: chess.Board, moves: list[chess.Move]) -> list[str]:
    """The moves, in SAN, that no increasing run of places in the text can account for (as few as possible)."""
    board = board.copy()
    names: list[str] = []
    places: list[set[int]] = []
    for move in moves:
        names.append(board.san(move))
        places.append(told_at(words, board, move))
        board.push(move)
    # best[k]: the last place used when k moves are left out, with their names
    best: dict[int, tuple[int, list[str]]] = {0: (-1, [])}
    for name, at in zip(names, places, strict=True):
        following: dict[int, tuple[int, list[str]]] = {}
        for left_out, (last, lost) in best.items():
            later = [place for place in at if place > last]
            options = [(left_out + 1, (last, [*lost, name]))]
            if later:
                options.append((left_out, (min(later), lost)))
            for count, state in options:
                if count not in following or state[0] < following[count][0]:
                    following[count] = state
        best = following
    return best[min(best)][1]


def moves_of(value: str | list[str]) -> list[str]:
    return value.split() if isinstance(value, str) else list(value)


def play(board: chess.Board, sans: list[str]) -> list[chess.Move]:
    """Push the moves; raises ValueError where one is illegal or not written as the standard wants."""
    played = []
    for san in sans:
        move = board.parse_san(san)
        if board.san(move) != san:
            raise ValueError(f"{san} should be written {board.san(move)}")
        board.push(move)
        played.append(move)
    return played


def faults(name: str, told: dict[str, Any]) -> Iterator[str]:
    """Everything that is wrong with one file, in words."""
    if unknown := told.keys() - KEYS:
        yield f"unknown keys {sorted(unknown)}"
    start = chess.Board(told.get("fen", chess.STARTING_FEN))
    if not start.is_valid():
        yield "the position is not valid"
    words = words_of(told["text"])
    main = moves_of(told["main_line"])
    tree = {tuple(main[:length]) for length in range(len(main) + 1)}
    try:
        moves = play(start.copy(), main)
    except ValueError as reason:
        yield f"main line: {reason}"
        return
    lost = cheapest_telling(words, start, moves)
    if lost and lost != TOLD_OTHERWISE.get(name):
        yield f"main line: not told: {' '.join(lost)}"
    for entry in told.get("side_lines", []):
        after, line = moves_of(entry["after"]), moves_of(entry["line"])
        if tuple(after) not in tree:
            yield f"side-line {entry['line']}: leaves from a place that is not on the tree"
        if not line or (*after, line[0]) in tree:
            yield f"side-line {entry['line']}: its first move stands on the tree already"
        tree |= {(*after, *line[:length]) for length in range(len(line) + 1)}
        board = start.copy()
        try:
            play(board, after)
            moves = play(board.copy(), line)
        except ValueError as reason:
            yield f"side-line {entry['line']}: {reason}"
            continue
        if lost := cheapest_telling(words, board, moves):
            yield f"side-line {entry['line']}: not told: {' '.join(lost)}"
    running = " ".join(told["text"].split())
    for mention in told.get("mentions", []):
        if mention["kind"] not in KINDS:
            yield f"mention “{mention['quote']}”: no such kind"
        if running.count(mention["quote"]) != 1:
            yield f"mention “{mention['quote']}”: found {running.count(mention['quote'])} times"


def main(folder: Path) -> int:
    """Print each file's counts and faults; 1 if there are faults."""
    totals = [0, 0, 0, 0, 0]
    wrong = 0
    for path in sorted(folder.glob("*.toml")):
        told = tomllib.loads(path.read_text(encoding="utf-8"))
        sides = told.get("side_lines", [])
        main_line = moves_of(told["main_line"])
        of_main = {tuple(main_line[:length]) for length in range(len(main_line) + 1)}
        counts = [
            len(main_line),
            len(sides),
            sum(tuple(moves_of(side["after"])) not in of_main for side in sides),
            sum(len(moves_of(side["line"])) for side in sides),
            len(told.get("mentions", [])),
        ]
        totals = [total + count for total, count in zip(totals, counts, strict=True)]
        print(f"{path.stem:20} {counts[0]:4} half-moves, {counts[1]:2} side-lines ({counts[2]} nested, "
              f"{counts[3]:3} half-moves), {counts[4]:2} mentions, {len(words_of(told['text'])):4} words")  # fmt: skip
        for fault in faults(path.stem, told):
            wrong += 1
            print(f"    {fault}")
    print(f"{'all':20} {totals[0]:4} half-moves, {totals[1]:2} side-lines ({totals[2]} nested, "
          f"{totals[3]:3} half-moves), {totals[4]:2} mentions; {wrong} faults")  # fmt: skip
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]) if len(sys.argv) > 1 else Path(__file__).parent))
