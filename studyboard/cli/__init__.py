"""The command line: one verb per step of the day."""

from studyboard.cli.main import main, main_desk

__all__ = ["main", "main_desk"]
