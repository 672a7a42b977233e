"""The README says what is so: its commands, its options and its keys."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from studyboard.cli import main
from studyboard.desk.actions import ACTIONS, MENUS

ROOT = Path(__file__).resolve().parent.parent
README = (ROOT / "README.md").read_text(encoding="utf-8")


def _row(first: str) -> str:
    """The row of a table whose first cell begins like this."""
    return next(line for line in README.splitlines() if line.startswith(f"| {first}"))


def test_ci_runs_the_command_that_the_readme_gives_word_for_word() -> None:
    (command,) = re.findall(r"^    (python -m pip install -e .* && python -m pytest)$", README, re.MULTILINE)
    assert f"    {command}\n" in (ROOT / ".ci" / "run").read_text(encoding="utf-8")


def test_every_verb_has_a_row(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit):
        main(["--help"])
    verbs = re.findall(r"^    ([a-z][a-z-]+)(?: |$)", capsys.readouterr().out, re.MULTILINE)
    assert {"open", "tour", "new", "timing", "deliver", "pgn", "check-setup"} <= set(verbs)
    assert [verb for verb in verbs if f"\n| `{verb}" not in README] == []


@pytest.mark.parametrize("verb", ["new", "timing", "readthrough", "deliver", "pgn", "check-setup"])
def test_every_option_of_a_verb_is_in_its_row(verb: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit):
        main([verb, "--help"])
    options = set(re.findall(r"--[a-z]+(?:-[a-z]+)*", capsys.readouterr().out)) - {"--help"}
    row = _row(f"`{verb}")
    if verb == "deliver":
        table = README.partition("| delivered |")[2].partition("\n\n")[0]
        row = f"{row}\n{table}"
    assert {option for option in options if f"{option}" not in row} == set()
    assert set(re.findall(r"--[a-z][a-z-]*", row)) <= options


@pytest.mark.parametrize("menu", MENUS)
def test_every_key_is_in_the_row_of_its_menu(menu: str) -> None:
    row = _row(f"{menu.replace('&', '')} |")
    told = re.findall(r"`([^`]+)`", row)
    assert told == [key for action in ACTIONS if action.menu == menu for key in action.keys]


def test_every_picture_and_page_that_it_points_to_is_there() -> None:
    for target in re.findall(r"\]\(([^)#]+)\)", README):
        assert (ROOT / target).is_file(), target
