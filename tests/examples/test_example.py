"""The example talk is a whole talk, and what it says about the board is so.

Nothing of the program is used here: the files are read with python-chess and tomllib alone.
"""

from __future__ import annotations

import io
import re
import tomllib
from collections import Counter
from pathlib import Path
from typing import Any

import chess
import chess.pgn
import pytest

EXAMPLES = Path(__file__).resolve().parents[2] / "examples"
CUE = re.compile(r"\{([^}]*)\}")
#: Squares that a mark of each kind names: least and most.
MARK_SQUARES = {"threat": (2, 2), "guard": (2, 2), "target": (1, 1), "key": (1, 1), "route": (2, 64)}
#: Common practice.
PIECE_VALUES = {
    chess.PAWN: 1, chess.KNIGHT: 3, chess.BISHOP: 3, chess.ROOK: 5, chess.QUEEN: 9, chess.KING: 0,
}  # fmt: skip

Talk = dict[str, Any]
TreePath = tuple[str, ...]


@pytest.fixture(scope="module")
def talk() -> Talk:
    return tomllib.loads((EXAMPLES / "talk.toml").read_text(encoding="utf-8"))


@pytest.fixture(scope="module")
def game() -> chess.pgn.Game:
    told = chess.pgn.read_game(io.StringIO((EXAMPLES / "sail_loft_evening.pgn").read_text(encoding="ascii")))
    assert told is not None
    return told


@pytest.fixture(scope="module")
def main_line(game: chess.pgn.Game) -> TreePath:
    return tuple(node.san() for node in game.mainline())


@pytest.fixture(scope="module")
def entries(talk: Talk) -> dict[TreePath, Talk]:
    """What the talk says at each node, by the moves that lead there."""
    paths = [tuple(entry["path"].split()) for entry in talk["node"]]
    assert len(set(paths)) == len(paths), "two entries for one node"
    return dict(zip(paths, talk["node"], strict=True))


@pytest.fixture(scope="module")
def nodes(entries: dict[TreePath, Talk], main_line: TreePath) -> set[TreePath]:
    """Every node of the tree: the main line's and those on the way to an entry."""
    return {path[:length] for path in (*entries, main_line) for length in range(1, len(path) + 1)}


def board_after(path: TreePath) -> chess.Board:
    """The position after *path*; raises ValueError where a move is not legal."""
    board = chess.Board()
    for san in path:
        move = board.parse_san(san)
        assert board.san(move) == san, f"{san} is properly written {board.san(move)}"
        board.push(move)
    return board


def balance(board: chess.Board) -> int:
    """White's material less Black's, in pawns."""
    return sum(PIECE_VALUES[piece.piece_type] * (1 if piece.color else -1) for piece in board.piece_map().values())


def without_cues(line: str) -> str:
    return CUE.sub("", line)


def move_cues(entry: Talk) -> list[str]:
    return [cue for cue in CUE.findall(entry.get("spoken", "")) if not cue.startswith("mark ")]


def hidden_starts(entries: dict[TreePath, Talk]) -> list[TreePath]:
    return [path for path, entry in entries.items() if entry.get("telling") == "hidden"]


def is_hidden(path: TreePath, entries: dict[TreePath, Talk]) -> bool:
    return any(path[: len(start)] == start for start in hidden_starts(entries))


def leaves_main_line_at(path: TreePath, main_line: TreePath) -> int:
    """How many of the path's moves were played in the game."""
    return next(
        (ply for ply, (shown, played) in enumerate(zip(path, main_line, strict=False)) if shown != played), len(path)
    )


# --- the game -----------------------------------------------------------------------------------------------------


def test_the_game_lasts_twenty_to_thirty_moves(main_line: TreePath) -> None:
    assert 20 <= (len(main_line) + 1) // 2 <= 30


def test_the_game_ends_in_the_mate_that_is_claimed(game: chess.pgn.Game, main_line: TreePath) -> None:
    final = board_after(main_line)
    assert final.is_checkmate()
    assert final.result() == game.headers["Result"] == "1-0"


def test_the_game_is_written_in_export_format(game: chess.pgn.Game) -> None:
    """Portable Game Notation (1994): roster in order, other tags in order of name, lines under 80 columns."""
    text = (EXAMPLES / "sail_loft_evening.pgn").read_text(encoding="ascii")
    tags = re.findall(r"^\[(\w+) \"", text, flags=re.MULTILINE)
    assert tags[:7] == ["Event", "Site", "Date", "Round", "White", "Black", "Result"]
    assert tags[7:] == sorted(tags[7:])
    assert {"WhiteElo", "BlackElo"} <= set(tags)
    assert game.headers["Date"].startswith("2026.")
    assert all(len(line) < 80 for line in text.splitlines())
    assert not game.errors


def test_the_round_holds_the_told_game_and_five_others(game: chess.pgn.Game) -> None:
    handle = io.StringIO((EXAMPLES / "round.pgn").read_text(encoding="ascii"))
    games = list(iter(lambda: chess.pgn.read_game(handle), None))
    assert len(games) == 6
    assert not any(one.errors for one in games)
    assert [node.san() for node in games[0].mainline()] == [node.san() for node in game.mainline()]
    people = [one.headers[colour] for one in games for colour in ("White", "Black")]
    assert len(set(people)) == 12
    assert {one.headers["Result"] for one in games} == {"1-0", "0-1", "1/2-1/2"}
    lengths = {sum(1 for _ in one.mainline()) for one in games}
    assert min(lengths) <= 50
    assert max(lengths) >= 120
    for one in games:
        final = one.end().board()
        if final.is_checkmate():
            assert final.result() == one.headers["Result"]


# --- the talk -----------------------------------------------------------------------------------------------------


def test_every_path_is_legal_and_properly_written(entries: dict[TreePath, Talk]) -> None:
    for path in entries:
        board_after(path)


def test_the_talk_greets_closes_and_thanks(talk: Talk) -> None:
    assert set(talk["lines"]) == {"greeting", "closing", "thanks"}
    assert all(talk["lines"].values())


def test_the_words_take_seven_to_nine_minutes(talk: Talk) -> None:
    """At 160-180 words per minute (E. Rodero, Text & Talk 32(3), 2012), with the think pauses."""
    spoken = [entry.get("spoken", "") for entry in talk["node"]] + list(talk["lines"].values())
    words = sum(len(without_cues(line).split()) for line in spoken)
    silent = sum(entry.get("think", 0.0) for entry in talk["node"])
    assert 1150 <= words <= 1350
    assert words / 180 * 60 + silent >= 7 * 60
    assert words / 160 * 60 + silent <= 9 * 60
    assert 7 * 60 <= talk["slot"] <= 9 * 60


def test_there_are_side_lines_and_one_inside_another(nodes: set[TreePath], main_line: TreePath) -> None:
    starts = set()
    nested = set()
    for path in nodes:
        length = leaves_main_line_at(path, main_line)
        if length == len(path) - 1:
            starts.add(path)
    for start in starts:
        children = Counter(path[:-1] for path in nodes if path[: len(start)] == start and len(path) > len(start))
        nested |= {parent for parent, count in children.items() if count > 1}
    assert len(starts) >= 5
    assert nested


def test_side_lines_are_told_after_before_and_not_at_all(entries: dict[TreePath, Talk], main_line: TreePath) -> None:
    tellings = {path: entry["telling"] for path, entry in entries.items() if "telling" in entry}
    assert set(tellings.values()) == {"before", "hidden"}
    for path in tellings:
        assert leaves_main_line_at(path, main_line) == len(path) - 1, "not the first move of a side-line"
    for path, entry in entries.items():
        if is_hidden(path, entries):
            assert "spoken" not in entry


def test_every_cue_names_a_move_of_its_own_run(entries: dict[TreePath, Talk]) -> None:
    """The moves cued in a line are the last ones of its path, each once and in the order of play."""
    for path, entry in entries.items():
        cues = move_cues(entry)
        assert list(path[len(path) - len(cues) :]) == cues, entry["path"]
        for cue in cues:
            assert path.count(cue) == 1, f"{cue} could be either of two moves"


def test_every_move_that_is_shown_has_a_line_or_is_cued_in_one(
    entries: dict[TreePath, Talk], nodes: set[TreePath]
) -> None:
    told: Counter[TreePath] = Counter()
    for path, entry in entries.items():
        if "spoken" in entry:
            cues = move_cues(entry)
            told[path] += 1
            told.update(path[:length] for length in range(len(path) - len(cues) + 1, len(path)))
    assert {path for path in nodes if not is_hidden(path, entries)} == set(told)
    assert set(told.values()) == {1}


def test_a_cue_stands_directly_before_a_word(entries: dict[TreePath, Talk]) -> None:
    for entry in entries.values():
        line = entry.get("spoken", "")
        assert not re.search(r"\}(?![\w'])", line), line
        assert not re.search(r"\w\{", line), line


def test_marks_name_real_squares_and_their_cues_real_marks(entries: dict[TreePath, Talk]) -> None:
    marked = 0
    for path, entry in entries.items():
        marks = entry.get("marks", [])
        marked += bool(marks)
        for mark in marks:
            kind, *squares = mark.split()
            least, most = MARK_SQUARES[kind]
            assert least <= len(squares) <= most, mark
            assert all(square in chess.SQUARE_NAMES for square in squares), mark
        for cue in CUE.findall(entry.get("spoken", "")):
            if cue.startswith("mark "):
                assert 1 <= int(cue.removeprefix("mark ")) <= len(marks), path
    assert marked >= 6


def test_threats_reach_an_opponents_piece_and_guards_a_square_of_their_own(entries: dict[TreePath, Talk]) -> None:
    for path, entry in entries.items():
        board = board_after(path)
        for mark in entry.get("marks", []):
            kind, *names = mark.split()
            squares = [chess.parse_square(name) for name in names]
            if kind not in {"threat", "guard"}:
                continue
            owner = board.color_at(squares[0])
            assert squares[1] in board.attacks(squares[0]), f"{mark} after {entry['path']}"
            if kind == "threat":
                assert board.color_at(squares[1]) is (not owner), f"{mark} after {entry['path']}"
            else:
                assert board.color_at(squares[1]) in {owner, None}, f"{mark} after {entry['path']}"


def test_numbers_of_judgement_are_in_the_range_of_the_standard(entries: dict[TreePath, Talk]) -> None:
    given = [nag for entry in entries.values() for nag in entry.get("nags", [])]
    assert given
    assert all(1 <= nag <= 255 for nag in given)


def test_there_are_notes_for_print_alone(entries: dict[TreePath, Talk]) -> None:
    assert sum(1 for entry in entries.values() if "note" in entry) >= 4


# --- the think pause ----------------------------------------------------------------------------------------------


def mates_in(board: chess.Board, moves: int) -> list[chess.Move]:
    """The first moves with which the side to move mates in at most *moves* moves."""
    solutions = []
    for move in list(board.legal_moves):
        if moves == 1 and not board.gives_check(move):
            continue
        board.push(move)
        if board.is_checkmate() or (moves > 1 and every_reply_loses(board, moves - 1)):
            solutions.append(move)
        board.pop()
    return solutions


def every_reply_loses(board: chess.Board, moves: int) -> bool:
    replies = list(board.legal_moves)
    # A capture is the likeliest way out, so it is tried first.
    for reply in sorted(replies, key=board.is_capture, reverse=True):
        board.push(reply)
        lost = mates_soon(board, moves)
        board.pop()
        if not lost:
            return False
    return bool(replies)


def mates_soon(board: chess.Board, moves: int) -> bool:
    return bool(mates_in(board, moves))


def test_the_viewer_is_asked_for_a_move_that_is_then_shown(entries: dict[TreePath, Talk], main_line: TreePath) -> None:
    paused = {path: entry["think"] for path, entry in entries.items() if "think" in entry}
    assert paused
    for path, seconds in paused.items():
        assert 3.0 <= seconds <= 20.0
        assert main_line[: len(path)] == path
        assert len(main_line) > len(path)
        assert "mate in three" in entries[path]["spoken"]


def test_the_think_pause_has_exactly_one_solution(entries: dict[TreePath, Talk], main_line: TreePath) -> None:
    (path,) = (path for path, entry in entries.items() if "think" in entry)
    board = board_after(path)
    assert not mates_in(board, 2)
    assert [board.san(move) for move in mates_in(board, 3)] == [main_line[len(path)]]


# --- what is said -------------------------------------------------------------------------------------------------


def at(main_line: TreePath, move: str, *side_line: str) -> chess.Board:
    """The board after the game's *move* ("16" is White's, "16..." Black's) and then *side_line*."""
    number = int(move.rstrip("."))
    return board_after(main_line[: 2 * number - (not move.endswith("..."))] + side_line)


def attackers(board: chess.Board, colour: chess.Color, square: str) -> set[str]:
    return {chess.square_name(found) for found in board.attackers(colour, chess.parse_square(square))}


def test_the_bishop_on_d7_takes_the_queens_guard_from_d5(main_line: TreePath) -> None:
    assert attackers(at(main_line, "15"), chess.BLACK, "d5") == {"e6", "d8"}
    assert attackers(at(main_line, "15..."), chess.BLACK, "d5") == {"e6"}
    assert attackers(at(main_line, "16..."), chess.BLACK, "d5") == {"e6", "f5"}
    assert attackers(at(main_line, "17..."), chess.BLACK, "d5") == {"e6"}


def test_taking_on_d5_at_once_is_one_move_too_early(main_line: TreePath) -> None:
    assert not attackers(at(main_line, "15...", "Bxd5", "exd5"), chess.WHITE, "d5")
    assert attackers(at(main_line, "16"), chess.WHITE, "d5") == {"c4", "d1"}


def test_the_material_is_as_told(main_line: TreePath) -> None:
    assert balance(at(main_line, "19")) == 1
    assert balance(at(main_line, "23")) == 3 - 5
    assert balance(at(main_line, "17", "Rxf3", "gxf3")) == 5 - 3
    declined = ("Bf5", "Qb3+", "Qd5", "Qxd5+", "Nxd5", "Rxh7")
    assert balance(at(main_line, "21", *declined)) == 2
    unplayed = ("Qb6", "Qg7+", "Ke8", "Nxf6+", "Kd8", "Qf8+", "Kc7", "Qxe7")
    assert balance(at(main_line, "23", *unplayed)) == 3 + 3


def test_only_the_king_guards_h7_when_queen_and_rook_look_at_it(main_line: TreePath) -> None:
    board = at(main_line, "20")
    assert attackers(board, chess.WHITE, "h7") == {"c2", "h5"}
    assert attackers(board, chess.BLACK, "h7") == {"g8"}


def test_the_pawn_on_g6_shuts_the_diagonal_until_it_takes(main_line: TreePath) -> None:
    assert "c2" not in attackers(at(main_line, "21"), chess.WHITE, "h7")
    assert "c2" in attackers(at(main_line, "21..."), chess.WHITE, "h7")


def test_the_rook_on_h5_could_have_run_to_e5_or_c5(main_line: TreePath) -> None:
    board = at(main_line, "20...")
    for square in ("e5", "c5"):
        assert board.is_legal(chess.Move.from_uci(f"h5{square}"))
        assert not attackers(board, chess.BLACK, square)


@pytest.mark.parametrize("move", ["22", "25"])
def test_the_king_has_exactly_one_square(main_line: TreePath, move: str) -> None:
    assert at(main_line, move).legal_moves.count() == 1


def test_the_tempting_check_leads_to_a_repetition(main_line: TreePath) -> None:
    board = at(main_line, "22...", "Qh8+", "Ng8")
    for _ in range(2):
        for san in ("Nh7+", "Kf7", "Ng5+", "Kf8"):
            board.push_san(san)
    assert board.is_repetition(3)


def test_the_other_mates_that_are_mentioned_are_mates(main_line: TreePath) -> None:
    assert at(main_line, "21", "Bf5", "Qb3+", "Kh8", "Rxh7#").is_checkmate()
    assert at(main_line, "23", "Rh6", "Qf7#").is_checkmate()
    assert at(main_line, "24", "Kg8", "Qg7#").is_checkmate()
    assert at(main_line, "26", "Kg8", "Qg7#").is_checkmate()


def test_the_knight_on_g5_is_attacked_alone_and_then_protected(main_line: TreePath) -> None:
    hanging = at(main_line, "23...")
    assert attackers(hanging, chess.BLACK, "g5") == {"f5"}
    assert not attackers(hanging, chess.WHITE, "g5")
    assert attackers(at(main_line, "24"), chess.WHITE, "g5") == {"h6"}


def test_the_bishop_on_d7_keeps_the_queen_from_the_mating_knight(main_line: TreePath) -> None:
    final = at(main_line, "27")
    assert not attackers(final, chess.BLACK, "d6")
    final.remove_piece_at(chess.D7)
    assert attackers(final, chess.BLACK, "d6") == {"d8"}


def test_the_mating_knight_is_the_one_from_b1(main_line: TreePath) -> None:
    board = chess.Board()
    square, visited = chess.B1, []
    for san in main_line:
        move = board.parse_san(san)
        if move.from_square == square:
            square = move.to_square
            visited.append(chess.square_name(square))
        board.push(move)
    assert visited == ["d2", "e4", "g3", "h5", "g7", "f5", "d6"]


def test_the_rook_on_f1_never_moves_after_castling(main_line: TreePath) -> None:
    board = chess.Board()
    for san in main_line:
        move = board.parse_san(san)
        assert move.from_square != chess.F1 or board.piece_type_at(chess.F1) != chess.ROOK
        board.push(move)
    assert board.piece_at(chess.F1) == chess.Piece(chess.ROOK, chess.WHITE)


def test_the_greeting_agrees_with_the_headers(talk: Talk, game: chess.pgn.Game, main_line: TreePath) -> None:
    greeting = talk["lines"]["greeting"]
    for colour in ("White", "Black"):
        family_name, given_name = game.headers[colour].split(", ")
        assert f"{given_name} {family_name}" in greeting
    assert "more than two hundred points below him" in greeting
    assert int(game.headers["BlackElo"]) - int(game.headers["WhiteElo"]) > 200
    assert "twenty-seven moves" in greeting
    assert (len(main_line) + 1) // 2 == 27
