"""A small study for tests of single widgets: a few moves, a side-line, a pawn about to promote."""

from __future__ import annotations

from pathlib import Path

import chess

from studyboard.desk.session import Session
from studyboard.model.study import Study
from studyboard.store.study_file import StudyFile

MAIN_LINE = ("e4", "e5", "Nf3", "Nc6", "Bc4", "Bc5")
SIDE_LINE = ("Nf6", "d3")


def open_session(folder: Path, fen: str | None = None) -> Session:
    """A session on a new study file, at its start position."""
    headers = {"White": "Aino Salo", "Black": "Teo Marsh"}
    if fen is not None:
        headers |= {"SetUp": "1", "FEN": fen}
    return Session(StudyFile.create(folder / "small.studyboard", Study(headers)))


def play(session: Session, *sans: str) -> int:
    """Play these moves from the shown position; the node that is reached."""
    for san in sans:
        session.play(session.board.parse_san(san))
    return session.node


def small_session(folder: Path) -> tuple[Session, dict[str, int]]:
    """A session whose study has a main line and a side-line to its last move, shown at the start; nodes by SAN."""
    session = open_session(folder)
    nodes = {"start": session.node}
    for san in MAIN_LINE:
        nodes[san] = play(session, san)
    session.show(nodes["Bc4"])
    for san in SIDE_LINE:
        nodes[san] = play(session, san)
    session.show(nodes["start"])
    return session, nodes


def squares(names: str) -> tuple[int, ...]:
    """The squares with these names."""
    return tuple(chess.parse_square(name) for name in names.split())
