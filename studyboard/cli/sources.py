"""Opening what the user named on the command line: a study, or a game of a PGN file."""

from __future__ import annotations

import sys
from pathlib import Path

from studyboard.model.errors import StudyboardError
from studyboard.model.study import Study
from studyboard.notation.pgn_games import GameEntry, index_games
from studyboard.notation.pgn_reader import GameRead, read_game_at
from studyboard.store.study_file import StudyFile

_SQLITE = b"SQLite format 3\x00"
_LISTED = 8


class NoSuchGameError(StudyboardError):
    """The file has no game of this number, or more than one to choose from."""


def load_study(path: Path, number: int | None = None) -> Study:
    """The study in this file, or one made from a game of a PGN file. Raises StudyboardError."""
    if _is_study(path):
        if number is not None:
            raise NoSuchGameError(f"{path} is a study and holds one game: leave --number out.")
        with StudyFile.open(path, read_only=True) as file:
            return file.study
    game = load_game(path, number)
    report_problems(path, game)
    return game.study


def load_game(path: Path, number: int | None = None) -> GameRead:
    """One game of a PGN file; without a number, its only one. Raises StudyboardError."""
    try:
        entries = index_games(path)
    except OSError as reason:
        raise StudyboardError(f"{path} cannot be read: {reason.strerror or reason}.") from reason
    if not entries:
        raise NoSuchGameError(f"{path} holds no game. A PGN file has tags in square brackets, then moves.")
    if number is None and len(entries) > 1:
        listed = "; ".join(_named(entry) for entry in entries[:_LISTED])
        more = "; …" if len(entries) > _LISTED else ""
        raise NoSuchGameError(f"{path} holds {len(entries)} games, choose one with --number: {listed}{more}")
    chosen = 1 if number is None else number
    if not 1 <= chosen <= len(entries):
        raise NoSuchGameError(f"{path} holds {len(entries)} games; there is no number {chosen}.")
    return read_game_at(path, entries[chosen - 1])


def report_problems(path: Path, game: GameRead) -> None:
    """Print what could not be read, one line each with its place, on standard error."""
    for problem in game.problems:
        print(f"{path}:{problem.line}:{problem.column}: {problem.message}", file=sys.stderr)


def _named(entry: GameEntry) -> str:
    return f"{entry.number} {entry.headers.get('White', '?')} – {entry.headers.get('Black', '?')}"


def _is_study(path: Path) -> bool:
    try:
        with path.open("rb") as stream:
            head = stream.read(len(_SQLITE))
    except OSError as reason:
        raise StudyboardError(f"{path} cannot be opened: {reason.strerror or reason}.") from reason
    return head == _SQLITE or path.suffix.lower() == ".studyboard"
