"""The edits that were made, kept in the study file so that each can be taken back, today or next year."""

from __future__ import annotations

import json
import sqlite3
from dataclasses import dataclass
from datetime import datetime
from typing import cast

from studyboard.model.codec import from_plain, to_plain
from studyboard.model.edits import Edit

_POSITION = "history position"


@dataclass(frozen=True, slots=True)
class HistoryEntry:
    """One edit that was made.

    seq: its place, from 1
    label: what was done, in words
    when: when it was made; for a burst of typing, when its last letter was
    done: False where it is taken back at present
    """

    seq: int
    label: str
    when: datetime
    done: bool


class History:
    """The edits of one file in the order in which they were made, and how many of them are done.

    State: none but the rows, so that a transaction which fails takes it back too. What writes must be called inside
    a transaction of the caller. Everything raises sqlite3.Error; reading an edit raises UnknownValueError where the
    row describes none.
    """

    __slots__ = ("_connection",)

    def __init__(self, connection: sqlite3.Connection) -> None:
        self._connection = connection

    @property
    def position(self) -> int:
        """How many edits are done: the seq of the one that undo takes back, 0 where there is none."""
        row = self._connection.execute("SELECT value FROM setting WHERE name = ?", (_POSITION,)).fetchone()
        return 0 if row is None else int(row[0])

    @property
    def length(self) -> int:
        """How many edits there are, done or taken back."""
        return int(self._connection.execute("SELECT coalesce(max(seq), 0) FROM history").fetchone()[0])

    def label(self, seq: int) -> str | None:
        """What the edit with this seq did, None where there is none."""
        row = self._connection.execute("SELECT label FROM history WHERE seq = ?", (seq,)).fetchone()
        return None if row is None else str(row[0])

    def entries(self) -> list[HistoryEntry]:
        """Every edit, the oldest first."""
        position = self.position
        rows = self._connection.execute("SELECT seq, label, at FROM history ORDER BY seq")
        return [HistoryEntry(seq, label, datetime.fromisoformat(at), seq <= position) for seq, label, at in rows]

    def forward(self, seq: int) -> Edit:
        """The edit that does this entry again."""
        return self._edit("forward", seq)

    def inverse(self, seq: int) -> Edit:
        """The edit that takes this entry back."""
        return self._edit("inverse", seq)

    def add(self, edit: Edit, inverse: Edit, when: datetime) -> None:
        """Put an edit at the end; those that were taken back before are forgotten."""
        position = self.position
        self._connection.execute("DELETE FROM history WHERE seq > ?", (position,))
        self._connection.execute(
            "INSERT INTO history VALUES (?, ?, ?, ?, ?)",
            (position + 1, edit.label, when.isoformat(), _text(edit), _text(inverse)),
        )
        self.move_to(position + 1)

    def extend(self, edit: Edit, when: datetime) -> None:
        """Let the last edit end where *edit* leads; taking it back still leads to where it began."""
        self._connection.execute(
            "UPDATE history SET forward = ?, at = ? WHERE seq = ?", (_text(edit), when.isoformat(), self.position)
        )

    def move_to(self, position: int) -> None:
        """Note how many edits are done."""
        self._connection.execute("INSERT OR REPLACE INTO setting VALUES (?, ?)", (_POSITION, position))

    def _edit(self, column: str, seq: int) -> Edit:
        row = self._connection.execute(f"SELECT {column} FROM history WHERE seq = ?", (seq,)).fetchone()
        return cast(Edit, from_plain(json.loads(row[0])))


def _text(edit: Edit) -> str:
    return json.dumps(to_plain(edit), separators=(",", ":"))
