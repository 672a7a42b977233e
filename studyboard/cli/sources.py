"""Opening what the user named on the command line: a study, or a game of a PGN file."""

from __future__ import annotations

import sys
from dataclasses import dataclass
from pathlib import Path

from studyboard.model.errors import StudyboardError
from studyboard.model.study import Study
from studyboard.notation.pgn_games import GameEntry, index_games
from studyboard.notation.pgn_reader import GameRead, read_game_at
from studyboard.store.study_file import StudyFile

_SQLITE = b"SQLite format 3\x00"
_UTF_16 = (b"\xff\xfe", b"\xfe\xff")
_HEAD = 4096
_LISTED = 8


class NoSuchGameError(StudyboardError):
    """The file has no game of this number, or more than one to choose from."""


@dataclass(frozen=True, slots=True)
class Loaded:
    """What was opened. whole: False where part of a game could not be read, which has been reported by then."""

    study: Study
    whole: bool = True


def load_study(path: Path, number: int | None = None) -> Loaded:
    """The study in this file, or one made from a game of a PGN file. Raises StudyboardError."""
    if is_study(path):
        if number is not None:
            raise NoSuchGameError(f"{path} is a study and holds one game: leave --number out.")
        with StudyFile.open(path, read_only=True) as file:
            return Loaded(file.study)
    game = load_game(path, number)
    report_problems(path, game)
    return Loaded(game.study, whole=not game.problems)


def load_game(path: Path, number: int | None = None) -> GameRead:
    """One game of a PGN file; without a number, its only one. Raises StudyboardError."""
    head = _head(path)
    if b"\0" in head and not head.startswith(_UTF_16):
        raise NoSuchGameError(f"{path} is no text, so it cannot be PGN.")
    entries = index_games(path)
    if not entries:
        raise NoSuchGameError(f"{path} holds no game. A PGN file has tags in square brackets, then moves.")
    if number is None and len(entries) > 1:
        listed = "; ".join(_named(entry) for entry in entries[:_LISTED])
        more = "; …" if len(entries) > _LISTED else ""
        raise NoSuchGameError(f"{path} holds {len(entries)} games, choose one with --number: {listed}{more}")
    chosen = 1 if number is None else number
    if not 1 <= chosen <= len(entries):
        held = "1 game" if len(entries) == 1 else f"{len(entries)} games"
        raise NoSuchGameError(f"{path} holds {held}; there is no number {chosen}.")
    entry = entries[chosen - 1]
    game = read_game_at(path, entry)
    if len(game.study.nodes) == 1 and not entry.headers and game.problems:
        raise NoSuchGameError(f"{path} holds no game: neither a tag nor a move of it could be read.")
    return game


def report_problems(path: Path, game: GameRead) -> None:
    """Print what could not be read, one line each with its place, on standard error."""
    for problem in game.problems:
        print(f"{path}:{problem.line}:{problem.column}: {problem.message}", file=sys.stderr)


def print_remark(sentence: str) -> None:
    """Print something that the user should know of what was made, on standard error."""
    print(f"studyboard: {sentence}", file=sys.stderr)


def _named(entry: GameEntry) -> str:
    return f"{entry.number} {entry.headers.get('White', '?')} – {entry.headers.get('Black', '?')}"


def is_study(path: Path) -> bool:
    """True where the file is a study, by what it begins with or by its name. Raises StudyboardError."""
    return _head(path).startswith(_SQLITE) or path.suffix.lower() == ".studyboard"


def _head(path: Path) -> bytes:
    try:
        with path.open("rb") as stream:
            return stream.read(_HEAD)
    except OSError as reason:
        raise StudyboardError(f"{path} cannot be read: {reason.strerror or reason}.") from reason
