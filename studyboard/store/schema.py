"""The tables of a study file in the current version of its schema."""

from __future__ import annotations

import sqlite3

#: What `PRAGMA application_id` says in every study file: the letters "StBd".
APPLICATION_ID = 0x53744264

#: What `PRAGMA user_version` says in a file of the schema below.
VERSION = 8

#: Lists of whole numbers are text, parted by blanks; lists of pairs and triples are JSON without blanks.
#: `coding` says how `data` holds its samples: as they are ("pcm") or as one FLAC file ("flac").
#: `beat` holds the id of a node or the name of a part of the talk, so it has no type of its own.
TABLES = """
CREATE TABLE setting (name TEXT PRIMARY KEY, value) WITHOUT ROWID;
CREATE TABLE header (position INTEGER PRIMARY KEY, name TEXT NOT NULL, value TEXT NOT NULL);
CREATE TABLE node (
    id INTEGER PRIMARY KEY,
    parent INTEGER,
    move TEXT,
    children TEXT NOT NULL,
    spoken TEXT NOT NULL,
    cues TEXT NOT NULL,
    note_before TEXT NOT NULL DEFAULT '',
    note TEXT NOT NULL,
    marks TEXT NOT NULL,
    nags TEXT NOT NULL,
    intended REAL,
    think REAL NOT NULL,
    place TEXT NOT NULL,
    anchor INTEGER,
    name TEXT NOT NULL DEFAULT '',
    locked INTEGER NOT NULL DEFAULT 0,
    mark_numbers TEXT NOT NULL DEFAULT ''
);
CREATE TABLE part (
    part TEXT PRIMARY KEY, spoken TEXT NOT NULL, cues TEXT NOT NULL, intended REAL,
    locked INTEGER NOT NULL DEFAULT 0
) WITHOUT ROWID;
CREATE TABLE pronunciation (word TEXT PRIMARY KEY, said TEXT NOT NULL) WITHOUT ROWID;
CREATE TABLE rehearsed (beat PRIMARY KEY, seconds REAL NOT NULL) WITHOUT ROWID;
CREATE TABLE rehearsal (at TEXT PRIMARY KEY, told TEXT NOT NULL) WITHOUT ROWID;
CREATE TABLE left_query (beat, kind TEXT NOT NULL, quote TEXT NOT NULL, PRIMARY KEY (beat, kind, quote)) WITHOUT ROWID;
CREATE TABLE take (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL,
    rate INTEGER NOT NULL,
    samples INTEGER NOT NULL,
    started TEXT NOT NULL,
    kept INTEGER NOT NULL,
    complete INTEGER NOT NULL,
    note TEXT NOT NULL DEFAULT '',
    origin TEXT NOT NULL DEFAULT '',
    left_out TEXT NOT NULL DEFAULT '',
    replaces TEXT NOT NULL DEFAULT '',
    room_tone TEXT NOT NULL DEFAULT '',
    said TEXT NOT NULL DEFAULT ''
);
CREATE TABLE take_choice (beat PRIMARY KEY, take INTEGER NOT NULL) WITHOUT ROWID;
CREATE TABLE take_event (
    take INTEGER NOT NULL, position INTEGER NOT NULL, samples INTEGER NOT NULL, rate INTEGER NOT NULL,
    node INTEGER NOT NULL, beat, PRIMARY KEY (take, position)
) WITHOUT ROWID;
CREATE TABLE recording (
    take INTEGER PRIMARY KEY, name TEXT NOT NULL, rate INTEGER NOT NULL, started TEXT NOT NULL,
    finished INTEGER NOT NULL,
    origin TEXT NOT NULL DEFAULT '',
    replaces TEXT NOT NULL DEFAULT ''
);
CREATE TABLE sound (
    take INTEGER NOT NULL, start INTEGER NOT NULL, samples INTEGER NOT NULL, data BLOB NOT NULL,
    coding TEXT NOT NULL DEFAULT 'pcm',
    PRIMARY KEY (take, start)
);
CREATE TABLE history (
    seq INTEGER PRIMARY KEY, label TEXT NOT NULL, at TEXT NOT NULL, forward TEXT NOT NULL, inverse TEXT NOT NULL
);
"""


def lay_tables(connection: sqlite3.Connection) -> None:
    """Make an empty database a study file without a study. Raises sqlite3.Error."""
    connection.execute("PRAGMA auto_vacuum = INCREMENTAL")
    connection.execute("PRAGMA journal_mode = WAL")
    connection.executescript(
        f"BEGIN IMMEDIATE; {TABLES} PRAGMA application_id = {APPLICATION_ID}; PRAGMA user_version = {VERSION}; COMMIT;"
    )
