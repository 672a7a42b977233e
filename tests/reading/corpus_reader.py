"""The phrasings of tests/reading/corpus: sentences with a true and a false filling, beside a position, and their facts.

A file has sets; a set has templates ("said", one a line) and places. A place has a position ("fen"), perhaps moves of
which the last is played at the first word ("move"), and a filling with which the templates are true ("yes") and one
with which they are false ("no"); "holds" and "fails" are facts that python-chess can tell, see `fact`. Places take
turns: the first template stands beside the first place, the second beside the second.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import chess

from studyboard.model.study import Study
from studyboard.notation.talk_file import read_talk
from studyboard.reading.findings import ReadThrough
from studyboard.reading.read_through import judge, read_through

CORPUS = Path(__file__).parent / "corpus"
#: Beside this position sentences are read that say nothing of it.
QUIET = "r1bq1rk1/pp2bppp/2n1pn2/3p4/2PP4/2N2N2/PP2BPPP/R1BQ1RK1 w - - 0 9"
_VALUES = {chess.PAWN: 1, chess.KNIGHT: 3, chess.BISHOP: 3, chess.ROOK: 5, chess.QUEEN: 9, chess.KING: 0}


@dataclass(frozen=True)
class Phrasing:
    """One sentence beside a position; moves: played before, the last at its first word; true: whether it is so."""

    name: str
    topic: str
    fen: str
    moves: tuple[str, ...]
    text: str
    true: bool
    facts: str


def phrasings(path: Path) -> Iterator[Phrasing]:
    """Every sentence of a file, each template true and false beside the place whose turn it is."""
    for one in tomllib.loads(path.read_text(encoding="utf-8"))["set"]:
        places = one["place"]
        for number, template in enumerate(line for line in one["said"].splitlines() if line.strip()):
            place = places[number % len(places)]
            for filling, true in (("yes", True), ("no", False)):
                here: dict[str, Any] = {**place, **place[filling]}
                text = template
                for slot, words in here.items():
                    text = text.replace("{" + slot + "}", words) if isinstance(words, str) else text
                text = re.sub(r"(^|[.?!] )([a-z])", lambda found: found[1] + found[2].upper(), text)
                moves = tuple(here.get("move", "").split())
                facts = here["holds"] if true else here["fails"]
                yield Phrasing(one["name"], one["topic"], here["fen"], moves, text, true, facts)


def innocent() -> list[str]:
    """Sentences with words of the trade that say nothing of the board."""
    lines = (CORPUS / "innocent.txt").read_text(encoding="utf-8").splitlines()
    return [line for line in lines if line and not line.startswith("#")]


def board_of(phrasing: Phrasing) -> tuple[chess.Board, chess.Board]:
    """The position before its move and the one after."""
    board = chess.Board(phrasing.fen)
    before = board.copy()
    for san in phrasing.moves:
        before = board.copy()
        board.push_san(san)
    return before, board


def read(phrasing: Phrasing) -> ReadThrough:
    """What the read-through finds in it."""
    before, board = board_of(phrasing)
    if not phrasing.moves:
        return judge(board, phrasing.text)
    san = before.san(board.peek())
    study = Study({"FEN": before.fen(), "SetUp": "1"})
    return read_through(read_talk(f"[[node]]\npath = '{san}'\nspoken = '''{{{san}}}{phrasing.text}'''\n", study))


def fact(words: str, before: chess.Board, board: chess.Board) -> bool:
    """Facts joined by semicolons, told by python-chess alone; “not” before one denies it; none is true.

    Raises KeyError for a word that means nothing.
    """
    return all(_one(part.split(), before, board) for part in words.split(";") if part.strip())


def _one(words: list[str], before: chess.Board, board: chess.Board) -> bool:
    if words[0] == "not":
        return not _one(words[1:], before, board)
    name, *given = words
    squares = [chess.parse_square(word) for word in given if re.fullmatch("[a-h][1-8]", word)]
    colour = next((word == "w" for word in given if word in ("w", "b")), True)
    number = next((int(word) for word in given if word.isdigit()), 0)
    known = {
        "false": lambda: False,
        "sees": lambda: squares[1] in board.attacks(squares[0]),
        "loose": lambda: not board.is_attacked_by(bool(board.color_at(squares[0])), squares[0]),
        "guarded": lambda: board.is_attacked_by(bool(board.color_at(squares[0])), squares[0]),
        "shields": lambda: _shields(board, *squares),
        "stuck": lambda: _stuck(board, squares[0]),
        "points": lambda: _points(board, colour) - _points(board, not colour) == number,
        "exchange": lambda: _points(board, colour) - _points(board, not colour) == 2
        and len(board.pieces(chess.ROOK, colour)) > len(board.pieces(chess.ROOK, not colour)),
        "has": lambda: len(board.pieces(chess.PIECE_SYMBOLS.index(given[1].lower()), colour)) == number,
        "opposite": lambda: len({bool(chess.BB_LIGHT_SQUARES >> at & 1) for at in chess.SquareSet(board.bishops)}) == 2,
        "pair": lambda: len(board.pieces(chess.BISHOP, colour)) == 2,
        "check": board.is_check,
        "mate": board.is_checkmate,
        "mate_next": lambda: _mates_if_passed(board),
        "mate_in": lambda: _mates_in(board, number) and not _mates_in(board, number - 1),
        "turn": lambda: board.turn == colour,
        "castle": lambda: board.has_castling_rights(colour),
        "legal_before": lambda: before.legal_moves.count() == number,
        "passed": lambda: _passed(board, squares[0]),
        "doubled": lambda: len(board.pieces(chess.PAWN, colour) & chess.BB_FILES["abcdefgh".index(given[1])]) > 1,
        "open": lambda: not board.pawns & chess.BB_FILES["abcdefgh".index(given[0])],
    }  # fmt: skip
    return bool(known[name]())


def _shields(board: chess.Board, by: chess.Square, middle: chess.Square, behind: chess.Square) -> bool:
    without = board.copy()
    without.remove_piece_at(middle)
    return middle in board.attacks(by) and behind in without.attacks(by) and behind not in board.attacks(by)


def _stuck(board: chess.Board, square: chess.Square) -> bool:
    """Every square that it reaches is its own side's or attacked, no capture of a piece among them."""
    colour = bool(board.color_at(square))
    free = [to for to in board.attacks(square) if board.color_at(to) != colour]
    return not any(not board.is_attacked_by(not colour, to) for to in free)


def _points(board: chess.Board, colour: chess.Color) -> int:
    return sum(_VALUES[kind] * len(board.pieces(kind, colour)) for kind in _VALUES)


def _mates_if_passed(board: chess.Board) -> bool:
    passed = board.copy()
    passed.push(chess.Move.null())
    return _mates_in(passed, 1)


def _mates_in(board: chess.Board, moves: int) -> bool:
    if moves < 1:
        return False
    for move in list(board.legal_moves):
        board.push(move)
        done = board.is_checkmate() or (
            moves > 1
            and any(board.legal_moves)
            and all(_answered(board, reply, moves) for reply in list(board.legal_moves))
        )
        board.pop()
        if done:
            return True
    return False


def _answered(board: chess.Board, reply: chess.Move, moves: int) -> bool:
    board.push(reply)
    mated = _mates_in(board, moves - 1)
    board.pop()
    return mated


def _passed(board: chess.Board, square: chess.Square) -> bool:
    colour = bool(board.color_at(square))
    file, rank = chess.square_file(square), chess.square_rank(square)
    ahead = range(rank + 1, 8) if colour else range(rank)
    return not any(
        board.piece_at(at) == chess.Piece(chess.PAWN, not colour)
        for beside in (file - 1, file, file + 1) if 0 <= beside < 8
        for at in (chess.square(beside, r) for r in ahead)
    )  # fmt: skip
