"""The complete example talk that the program ships."""

from __future__ import annotations

from pathlib import Path

from studyboard.model.study import Study
from studyboard.notation.pgn_reader import read_games
from studyboard.notation.talk_file import read_talk
from studyboard.resources_path import resource


def example_folder() -> Path:
    """The folder with the example's files, in a wheel and in a checkout alike."""
    try:
        return resource("examples")
    except FileNotFoundError:
        return Path(__file__).resolve().parent.parent / "examples"


def example_study() -> Study:
    """The example as a study, made from its game and its script."""
    folder = example_folder()
    game = next(read_games(folder / "sail_loft_evening.pgn"))
    return read_talk((folder / "talk.toml").read_text(encoding="utf-8"), game.study)
