"""A program that is killed at any moment loses no edit that was made and at most the last second of sound.

The kill is a real one (SIGKILL) of a real process that edits and records at once, a hundred times over on one file.
A killed process is not a power cut: that `synchronous = FULL` also survives one is SQLite's promise, and is only
checked here to be asked for.
"""

from __future__ import annotations

import random
import sqlite3
import subprocess
import sys
import threading
from dataclasses import dataclass, field
from pathlib import Path

import pytest

from studyboard.store.connection import connect
from studyboard.store.study_file import StudyFile

KILLS = 100
RATE = 48_000

#: Plays moves and gives each a note, while another thread records; says what is safe as soon as it is.
AT_WORK = """
import random, sys, threading
import chess
from studyboard.model.edits import AddMove, ChangeNode
from studyboard.model.takes import SoundTime, TakeEvent
from studyboard.store.study_file import StudyFile

said = threading.Lock()
def say(*words):
    with said:
        print(*words, flush=True)

file = StudyFile.open(sys.argv[1])
writer = file.sound_writer()
writer.get_ready()
take = writer.begin_take("cut off", 48_000, "2030-05-17T21:30:00+02:00")
say("take", take)

def record():
    for second in range(10_000):
        event = TakeEvent(SoundTime(second * 48_000, 48_000), 0, 0)
        writer.append_sound(take, random.Random(second).randbytes(48_000) + bytes(48_000), (event,))
        say("sound", second + 1)

threading.Thread(target=record, daemon=True).start()
moves = [chess.Move.from_uci(uci) for uci in ("g1f3", "g8f6", "f3g1", "f6g8")]
while True:
    node = file.study.next_id
    file.do(AddMove(node - 1, moves[node % 4], node))
    say("move", node)
    file.do(ChangeNode(node, "note", f"note {node}"))
    say("note", node)
    if node % 5 == 0:
        file.undo()
        say("undo", node)
        file.redo()
        say("redo", node)
"""


@dataclass(slots=True)
class Safe:
    """What the process said was on the disk before it was killed.

    take: the one that it was recording; seconds: of its sound; move: the last node; notes: nodes that have one for
    sure (of those whose note is taken back and given again, only the ones where both was done)
    """

    take: int
    seconds: int = 0
    move: int = 0
    notes: set[int] = field(default_factory=set)


def work_until_killed(path: Path, seconds: float) -> Safe:
    """Let a process work on the file for so many seconds, then kill it."""
    process = subprocess.Popen([sys.executable, "-c", AT_WORK, str(path)], stdout=subprocess.PIPE, text=True)
    assert process.stdout is not None
    safe = Safe(int(process.stdout.readline().split()[1]))
    killer = threading.Timer(seconds, process.kill)
    killer.start()
    for line in process.stdout:
        if not line.endswith("\n"):
            continue
        kind, number = line.split()[0], int(line.split()[1])
        if kind == "sound":
            safe.seconds = number
        elif kind == "move":
            safe.move = number
        elif kind == "redo" or (kind == "note" and number % 5):
            safe.notes.add(number)
    killer.join()
    process.wait()
    return safe


def test_a_hundred_kills_lose_no_edit_and_at_most_a_second_of_sound(tmp_path):
    path = tmp_path / "evening.studyboard"
    StudyFile.create(path).close()
    rng = random.Random(20_300_517)
    last, takes, recorded = 0, 0, 0
    notes: set[int] = set()
    for _ in range(KILLS):
        safe = work_until_killed(path, rng.uniform(0.0, 0.15))
        connection = connect(path, "look")
        assert connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        connection.close()
        with StudyFile.open(path) as file:
            nodes = file.study.nodes
            last = max(last, safe.move)
            assert max(nodes) in (last, last + 1), "no more than the one edit that was under way is open"
            last = max(nodes)
            assert sorted(nodes) == list(range(last + 1))
            notes |= safe.notes
            assert [number for number in notes if nodes[number].note != f"note {number}"] == []

            length = file.sound.length(safe.take)
            assert safe.seconds * RATE <= length <= (safe.seconds + 1) * RATE
            if length:
                takes += 1
                recorded += length // RATE
                (recovered,) = file.recovered
                assert (recovered.id, recovered.samples, recovered.complete) == (safe.take, length, False)
                assert len(recovered.events) == length // RATE
                second = length // RATE - 1
                known = random.Random(second).randbytes(RATE) + bytes(RATE)
                assert file.sound.read_sound(safe.take, second * RATE) == known
            assert len(file.study.takes) == takes
    assert last > KILLS, "hardly anything was done before the kills"
    assert recorded > KILLS
    with StudyFile.open(path) as file:
        while file.can_redo:  # the last kill may have come between taking an edit back and doing it again
            file.redo()
        entries = len(file.history())
        for _ in range(entries):
            file.undo()
        assert not file.can_undo
        assert list(file.study.nodes) == [0]
        assert file.study.nodes[0].children == ()
        for _ in range(entries):
            file.redo()
        assert max(file.study.nodes) == last


#: Opens and closes the file over and over, recovering a take each time.
OPENING = """
import sys
from studyboard.store.study_file import StudyFile
with StudyFile.open(sys.argv[1], read_only=True) as file:
    file.sound.get_ready()
print("ready", flush=True)
while True:
    with StudyFile.open(sys.argv[1]) as file:
        take = file.sound.begin_take("again", 8_000, "2030-05-17T21:30:00+02:00")
        file.sound.append_sound(take, bytes(16_000))
"""


def test_kills_while_opening_recovering_and_closing_do_no_harm(tmp_path):
    path = tmp_path / "evening.studyboard"
    StudyFile.create(path).close()
    rng = random.Random(41)
    takes = 0
    for _ in range(KILLS // 4):
        process = subprocess.Popen([sys.executable, "-c", OPENING, str(path)], stdout=subprocess.PIPE)
        assert process.stdout is not None
        process.stdout.readline()
        killer = threading.Timer(rng.uniform(0.0, 0.1), process.kill)
        killer.start()
        process.communicate()
        killer.join()
        with StudyFile.open(path) as file:
            assert len(file.study.takes) >= takes
            takes = len(file.study.takes)
            assert sorted(file.study.takes) == [take for take in sorted(file.study.takes) if file.sound.length(take)]
    assert takes > 0


@pytest.mark.parametrize("mode", ["rw", "look"])
def test_every_commit_is_asked_to_survive_a_power_cut(tmp_path, mode):
    path = tmp_path / "evening.studyboard"
    StudyFile.create(path).close()
    connection = connect(path, mode)
    assert connection.execute("PRAGMA synchronous").fetchone() == (2,)
    assert connection.execute("PRAGMA journal_mode").fetchone() == ("wal",)
    connection.close()


def test_a_copy_of_a_killed_file_with_its_log_has_everything(tmp_path):
    path = tmp_path / "evening.studyboard"
    StudyFile.create(path).close()
    safe = work_until_killed(path, 0.1)
    away = tmp_path / "away"
    away.mkdir()
    for name in (path.name, f"{path.name}-wal"):
        (path.parent / name).rename(away / name)
    with StudyFile.open(away / path.name, read_only=True) as file:
        assert len(file.study.nodes) - 1 >= safe.move
    connection = sqlite3.connect(away / path.name)
    assert connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
    connection.close()
