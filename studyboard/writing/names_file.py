"""Names to be thanked, read from a text file or a table."""

from __future__ import annotations

import csv
from collections.abc import Sequence
from pathlib import Path

from studyboard.translation import tr
from studyboard.writing.kept_text import NotKeptError, read_text

_TABLES = frozenset({".csv", ".tsv", ".tab"})
_WHOLE = ("name", "names", "full name", "credit", "credits", "player", "vollständiger name", "namen")
_GIVEN = ("given", "given name", "first", "first name", "firstname", "vorname")
_FAMILY = ("family", "family name", "last", "last name", "lastname", "surname", "nachname", "familienname")


def read_names(path: Path) -> tuple[str, ...]:
    """The names in a file, in their order, each once.

    A text file has one name in each line; lines that begin with # are left out. A table (CSV, parted by commas,
    semicolons or tabs) has them in the column called “name”, or in those for given and family names, else in the first
    column. Raises NotKeptError where the file is not there, cannot be read or holds no name.
    """
    if not path.is_file():
        raise NotKeptError(tr("There is no file “{path}” with names.", path=path))
    text = read_text(path)
    if "\0" in text:
        raise NotKeptError(tr("“{path}” is no text file.", path=path))
    found = _from_table(text) if path.suffix.lower() in _TABLES else _from_lines(text)
    names = tuple(dict.fromkeys(" ".join(name.split()) for name in found if name.strip()))
    if not names:
        raise NotKeptError(tr("“{path}” holds no name.", path=path))
    return names


def _from_lines(text: str) -> list[str]:
    return [line for line in text.splitlines() if not line.lstrip().startswith("#")]


def _from_table(text: str) -> list[str]:
    rows = [row for row in csv.reader(text.splitlines(), delimiter=_delimiter(text)) if any(row)]
    if not rows:
        return []
    head = [cell.strip().casefold() for cell in rows[0]]
    whole = _column(head, _WHOLE)
    if whole is not None:
        return [_cell(row, whole) for row in rows[1:]]
    given, family = _column(head, _GIVEN), _column(head, _FAMILY)
    if given is not None or family is not None:
        return [f"{_cell(row, given)} {_cell(row, family)}" for row in rows[1:]]
    return [_cell(row, 0) for row in rows]


def _delimiter(text: str) -> str:
    head = next((line for line in text.splitlines() if line.strip()), "")
    return max(",;\t", key=head.count)


def _column(head: Sequence[str], titles: Sequence[str]) -> int | None:
    return next((place for place, title in enumerate(head) if title in titles), None)


def _cell(row: Sequence[str], column: int | None) -> str:
    return row[column] if column is not None and column < len(row) else ""
