"""Study files of earlier schemas, brought up to the current one version at a time."""

from __future__ import annotations

import sqlite3
from collections.abc import Mapping
from types import MappingProxyType

from studyboard.store.connection import transaction
from studyboard.store.schema import VERSION

#: What leads from each version of the schema to the next one.
STEPS: Mapping[int, str] = MappingProxyType(
    {
        1: """
            ALTER TABLE node ADD COLUMN note_before TEXT NOT NULL DEFAULT '';
            ALTER TABLE node ADD COLUMN name TEXT NOT NULL DEFAULT '';
            CREATE TABLE rehearsed (beat PRIMARY KEY, seconds REAL NOT NULL) WITHOUT ROWID
        """,
        2: """
            CREATE TABLE left_query (
                beat, kind TEXT NOT NULL, quote TEXT NOT NULL, PRIMARY KEY (beat, kind, quote)
            ) WITHOUT ROWID
        """,
        3: """
            ALTER TABLE node ADD COLUMN locked INTEGER NOT NULL DEFAULT 0;
            ALTER TABLE part ADD COLUMN locked INTEGER NOT NULL DEFAULT 0;
            UPDATE node SET locked = intended IS NOT NULL;
            UPDATE part SET locked = intended IS NOT NULL;
            CREATE TABLE pronunciation (word TEXT PRIMARY KEY, said TEXT NOT NULL) WITHOUT ROWID
        """,
        4: """
            ALTER TABLE node ADD COLUMN mark_numbers TEXT NOT NULL DEFAULT ''
        """,
        5: """
            ALTER TABLE take ADD COLUMN note TEXT NOT NULL DEFAULT '';
            ALTER TABLE take ADD COLUMN origin TEXT NOT NULL DEFAULT '';
            ALTER TABLE take ADD COLUMN left_out TEXT NOT NULL DEFAULT '';
            ALTER TABLE take ADD COLUMN replaces TEXT NOT NULL DEFAULT '';
            ALTER TABLE take ADD COLUMN room_tone TEXT NOT NULL DEFAULT '';
            CREATE TABLE take_choice (beat PRIMARY KEY, take INTEGER NOT NULL) WITHOUT ROWID;
            ALTER TABLE recording ADD COLUMN origin TEXT NOT NULL DEFAULT '';
            ALTER TABLE recording ADD COLUMN replaces TEXT NOT NULL DEFAULT '';
            ALTER TABLE sound RENAME COLUMN pcm TO data;
            ALTER TABLE sound ADD COLUMN coding TEXT NOT NULL DEFAULT 'pcm'
        """,
        6: """
            ALTER TABLE take ADD COLUMN said TEXT NOT NULL DEFAULT ''
        """,
        7: """
            CREATE TABLE rehearsal (at TEXT PRIMARY KEY, told TEXT NOT NULL) WITHOUT ROWID
        """,
    }
)


def upgrade(connection: sqlite3.Connection, version: int) -> None:
    """Bring a database from *version* to the current one, each step in one transaction. Raises sqlite3.Error."""
    for step in range(version, VERSION):
        with transaction(connection):
            for statement in STEPS[step].split(";"):
                connection.execute(statement)
            connection.execute(f"PRAGMA user_version = {step + 1}")
