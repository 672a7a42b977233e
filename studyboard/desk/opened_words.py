"""What is said about a study that has just been opened: takes that were cut off, places that could not be read."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape
from typing import TYPE_CHECKING

from studyboard.model.takes import Take
from studyboard.translation import tr

if TYPE_CHECKING:
    from studyboard.notation.pgn_reader import Problem


def recovered_words(takes: Sequence[Take]) -> str:
    """That recordings were cut off and kept; empty where none was."""
    if not takes:
        return ""
    names = ", ".join(take.name for take in takes)
    return tr(
        "The last recording was cut off. {names} was kept up to its last second; it is in the booth.", names=names
    )


def problem_words(problems: Sequence[Problem]) -> str:
    """How many places of the game could not be read, and the first one; empty where there are none."""
    if not problems:
        return ""
    first = problems[0]
    where = tr("line {line}, column {column}", line=first.line, column=first.column)
    if len(problems) == 1:
        return tr("One place of the game could not be read ({where}): {message}", where=where, message=first.message)
    return tr(
        "{count} places of the game could not be read; the first at {where}: {message}",
        count=len(problems),
        where=where,
        message=first.message,
    )


def problem_table(problems: Sequence[Problem]) -> str:
    """All of them with their places, as HTML."""
    rows = (f"<tr><td>{p.line}:{p.column}</td><td>{escape(p.message)}</td></tr>" for p in problems)
    return f"<table cellpadding='4'>{''.join(rows)}</table>"
