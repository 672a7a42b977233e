"""Games of our own in files, and the program as one calls it."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from random import Random
from typing import NamedTuple

import chess
import pytest

import studyboard
from studyboard.cli import main

ONE_GAME = """\
[Event "Club evening"]
[Site "Old Customs House"]
[Date "2025.02.11"]
[Round "3"]
[White "Marlow, Edda"]
[Black "Quist, Torben"]
[Result "1-0"]

1. e4 {The king's pawn.} e5 2. Nf3 (2. f4 exf4 (2... d5 3. exd5 e4) 3. Nf3) 2... Nc6 3. Bc4 $1 Nd4
4. Nxe5 Qg5 5. Bxf7+ 1-0
"""


PROGRAM = (sys.executable, "-m", "studyboard")


def surroundings(**changes: str | None) -> dict[str, str]:
    """The environment of a process that runs the same copy of the program; None takes a variable away."""
    here = {**os.environ, "PYTHONPATH": str(Path(studyboard.__file__).parent.parent)}
    changed = {key: value for key, value in changes.items() if value is not None}
    return {key: value for key, value in here.items() if key not in changes} | changed


class Answer(NamedTuple):
    """What the program said. status: its exit status; out, err: what it printed."""

    status: int
    out: str
    err: str


@pytest.fixture
def say(capsys: pytest.CaptureFixture[str]) -> Callable[..., Answer]:
    """Calls the program inside this process, as its script does, with these words."""

    def run(*words: object) -> Answer:
        capsys.readouterr()
        try:
            status = main([str(word) for word in words])
        except SystemExit as stop:
            status = int(stop.code or 0)
        printed = capsys.readouterr()
        return Answer(status, printed.out, printed.err)

    return run


@pytest.fixture
def call(tmp_path: Path) -> Callable[..., Answer]:
    """Calls the program as a process of its own, in the folder of the test; keywords set its environment."""

    def run(*words: object, **environment: str | None) -> Answer:
        done = subprocess.run(
            [*PROGRAM, *map(str, words)],
            cwd=tmp_path,
            env=surroundings(**environment),
            capture_output=True,
            text=True,
            encoding="utf-8",
            timeout=120,
        )
        return Answer(done.returncode, done.stdout, done.stderr)

    return run


def _listen_to_interrupts() -> None:
    signal.signal(signal.SIGINT, signal.SIG_DFL)


@pytest.fixture
def start(tmp_path: Path) -> Iterator[Callable[..., subprocess.Popen[bytes]]]:
    """Starts the program as a process of its own which the test may interrupt; it is ended with the test.

    stdout: a file for its output, else a pipe
    """
    started: list[subprocess.Popen[bytes]] = []

    def run(*words: object, stdout: str | None = None) -> subprocess.Popen[bytes]:
        with open(stdout or os.devnull, "wb") as output:
            process = subprocess.Popen(
                [*PROGRAM, *map(str, words)],
                cwd=tmp_path,
                env=surroundings(),
                stdout=output if stdout else subprocess.PIPE,
                stderr=subprocess.PIPE,
                # A shell that runs the tests in the background has them ignore Ctrl+C, and their children too.
                preexec_fn=_listen_to_interrupts if os.name == "posix" else None,
            )
        started.append(process)
        return process

    yield run
    for process in started:
        process.kill()
        process.wait()
        for pipe in (process.stdout, process.stderr):
            if pipe is not None:
                pipe.close()


@pytest.fixture
def refused(say: Callable[..., Answer]) -> Callable[..., str]:
    """Asks for what cannot be done: one line on standard error, nothing on standard output; gives the line."""

    def run(*words: object) -> str:
        answer = say(*words)
        assert answer.status == 2
        assert answer.out == ""
        assert answer.err.startswith("studyboard: ")
        assert answer.err.count("\n") == 1
        assert "Traceback" not in answer.err
        return answer.err

    return run


@pytest.fixture
def game(tmp_path: Path) -> Path:
    """A PGN file with one game that has side-lines, one inside the other."""
    path = tmp_path / "game.pgn"
    path.write_text(ONE_GAME, encoding="utf-8")
    return path


@pytest.fixture
def games(tmp_path: Path) -> Path:
    """A PGN file with three games."""
    path = tmp_path / "games.pgn"
    texts = []
    for number, (white, black) in enumerate((("Ashdown", "Brel"), ("Cantor", "Dace"), ("Eke", "Fallow")), 1):
        texts.append(
            f'[Event "Evening"]\n[Round "{number}"]\n[White "{white}"]\n[Black "{black}"]\n[Result "*"]\n\n1. d4 d5 *\n'
        )
    path.write_text("\n".join(texts), encoding="utf-8")
    return path


@pytest.fixture
def study(say: Callable[..., Answer], game: Path, tmp_path: Path) -> Path:
    """A study made from the one game."""
    path = tmp_path / "evening.studyboard"
    assert say("new", path, "--game", game).status == 0
    return path


@pytest.fixture(scope="session")
def many_games(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A PGN file with 2,000 games of thirty to a hundred and twenty half-moves, played at random."""
    dice = Random(7)
    played = [_random_movetext(dice) for _ in range(40)]
    path = tmp_path_factory.mktemp("big") / "many.pgn"
    with path.open("w", encoding="utf-8") as file:
        for number in range(1, 2001):
            file.write(f'[Event "Marathon"]\n[Round "{number}"]\n[White "White {number}"]\n[Black "Black {number}"]\n')
            file.write(f'[Result "*"]\n\n{played[number % len(played)]} *\n\n')
    return path


def _random_movetext(dice: Random) -> str:
    board = chess.Board()
    movetext = []
    for _ in range(dice.randint(30, 120)):
        moves = list(board.legal_moves)
        if not moves:
            break
        move = dice.choice(moves)
        movetext.append(f"{board.fullmove_number}. {board.san(move)}" if board.turn else board.san(move))
        board.push(move)
    return " ".join(movetext)


@pytest.fixture(scope="session")
def deep_game(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A PGN file with one game of 3,000 variations, each inside the one before."""
    board = chess.Board()
    opened = []
    for _ in range(3000):
        knight_moves = [
            move
            for move in board.legal_moves
            if board.piece_type_at(move.from_square) == chess.KNIGHT and not board.is_capture(move)
        ]
        number = f"{board.fullmove_number}." if board.turn else f"{board.fullmove_number}..."
        opened.append(f"{number} {board.san(knight_moves[0])} ({number} {board.san(knight_moves[1])}")
        board.push(knight_moves[1])
        board.clear_stack()
    path = tmp_path_factory.mktemp("big") / "deep.pgn"
    path.write_text('[Event "Depth"]\n\n' + "\n".join(opened) + ")" * 3000 + " *\n", encoding="utf-8")
    return path
