"""The verb takes."""

from __future__ import annotations

import json
import sys
from collections import Counter
from pathlib import Path

from rich.console import Console
from rich.table import Table
from rich.text import Text

from studyboard.cli.progress import progress_of
from studyboard.cli.sources import print_remark
from studyboard.model.assembly import Assembly, holders
from studyboard.model.beats import Beat
from studyboard.model.edits import PutTake
from studyboard.model.errors import StudyboardError
from studyboard.model.positions import Positions
from studyboard.model.script import BeatKey, Part
from studyboard.model.study import Study
from studyboard.model.take_edits import without_sound
from studyboard.model.takes import Take
from studyboard.notation.labels import move_label
from studyboard.sound.importing import import_sound
from studyboard.store.errors import StudyFileError, StudyInUseError
from studyboard.store.study_file import StudyFile
from studyboard.timing.clock import clock
from studyboard.timing.recorded import put_together
from studyboard.timing.spread_beats import spread_beats

#: So much of a take's name stands beside each beat, which leaves the other columns their room (characters).
_LONGEST_NAME = 20


def takes(
    path: Path, *, add: Path | None, name: str, first: str | None, last: str | None, purge: bool, as_json: bool
) -> int:
    """Print the takes of a study and which one is heard for each beat; before that, take in a sound file if wanted.

    purge: delete the sound of discarded takes for good, first of all
    1 where part of the file could not be read. Raises StudyboardError.
    """
    remark = ""
    if purge:
        _purge(path)
    added: int | None = None
    if add is None:
        if first is not None or last is not None or name:
            raise StudyboardError("--from, --to and --name say where a sound belongs: name it with --add.")
        study = _looked_at(path)
    else:
        with StudyFile.open(path) as file:
            study = file.study
            added, remark = _add(file, add, name, first, last)
    if as_json:
        print(json.dumps(_plain(study, added, remark), indent=2, ensure_ascii=False))
    else:
        _print(study, added)
    if remark:
        print_remark(remark)
    return 1 if remark else 0


def beat_named(study: Study, text: str) -> BeatKey:
    """The beat of this number in the talk (from 1), of this move as `timing` prints it, or of this part.

    Raises StudyboardError where there is none, or several.
    """
    told = [one.beat for one in put_together(study).beats]
    if text.isdecimal():
        if not 1 <= int(text) <= len(told):
            raise StudyboardError(f"The talk has {len(told)} beats; there is no number {text}.")
        return told[int(text) - 1].key
    positions = Positions(study)
    wanted = _squeezed(text)
    found = [beat.key for beat in told if wanted in (_squeezed(_label(positions, beat)), _move(positions, beat))]
    if len(found) == 1:
        return found[0]
    if found:
        raise StudyboardError(f"“{text}” is told {len(found)} times: give the number of the beat, or the move's too.")
    raise StudyboardError(f"No beat is called “{text}”. `studyboard takes STUDY` lists them with their numbers.")


def _looked_at(path: Path) -> Study:
    """The study as it is, with the take that a crash has cut off."""
    with StudyFile.open(path, read_only=True) as file:
        study, unfinished = file.study, file.unfinished
    if not unfinished:
        return study
    try:
        with StudyFile.open(path) as file:
            if file.recovered:
                print_remark(f"{file.recovered[-1].name} was cut off; what had been stored of it is kept")
            return file.study
    except StudyInUseError:
        print_remark("a take is being recorded just now; it is listed once that is finished")
    except StudyFileError as reason:
        print_remark(f"a take was cut off, and cannot be listed: {reason}")
    return study


def _add(file: StudyFile, sound: Path, name: str, first: str | None, last: str | None) -> tuple[int, str]:
    study = file.study
    begin = None if first is None else beat_named(study, first)
    # A sound that begins with a beat tells that one alone, unless it is said how far it goes.
    end = begin if last is None else beat_named(study, last)
    with progress_of("Reading") as progress:
        imported = import_sound(
            sound,
            file.sound,
            name,
            events=lambda length: spread_beats(study, length, begin, end),
            progress=progress,
        )
    file.keep(PutTake(imported.take))
    return imported.take.id, imported.remark


def _purge(path: Path) -> None:
    with StudyFile.open(path) as file:
        edit = without_sound(file.study)
        if edit is not None:
            file.keep(edit)
        freed = file.sound.purge_discarded()
    print_remark(f"{freed / 1e6:.1f} MB of discarded sound are deleted for good")


def _plain(study: Study, added: int | None, remark: str) -> dict[str, object]:
    assembly, positions = put_together(study), Positions(study)
    held = holders(study)
    return {
        "added": added,
        "remark": remark,
        "takes": [_take_plain(take) for _, take in sorted(study.takes.items())],
        "beats": [
            {
                "number": number,
                "beat": _label(positions, one.beat),
                "take": one.take,
                "seconds": round(one.samples / assembly.rate, 2),
                "takes": [holder.take.id for holder in held.get(one.beat.key, ())],
            }
            for number, one in enumerate(assembly.beats, 1)
        ],
        "seconds": round(assembly.samples / assembly.rate, 2),
        "told": assembly.told,
    }


def _take_plain(take: Take) -> dict[str, object]:
    return {
        "take": take.id,
        "name": take.name,
        "seconds": round(take.length.seconds, 2),
        "left_out": [[round(span.start / take.rate, 3), round(span.end / take.rate, 3)] for span in take.left_out],
        "started": take.started,
        "origin": take.origin,
        "note": take.note,
        "kept": take.kept,
        "complete": take.complete,
        "replaces": None
        if take.replaces is None
        else {
            "take": take.replaces.take,
            "from": round(take.replaces.span.start / take.rate, 3),
            "to": round(take.replaces.span.end / take.rate, 3),
        },
    }


def _print(study: Study, added: int | None) -> None:
    assembly, positions = put_together(study), Positions(study)
    held, names = holders(study), _names(study)
    console = Console(highlight=False)
    with console.capture() as printed:
        if study.takes:
            console.print(_takes_table(study, added))
            console.print()
        table = Table(box=None, pad_edge=False)
        table.add_column("", justify="right", no_wrap=True)
        table.add_column("beat", no_wrap=True)
        table.add_column("heard in", no_wrap=True)
        table.add_column("seconds", justify="right", no_wrap=True)
        table.add_column("also in")
        for number, one in enumerate(assembly.beats, 1):
            others = [names[holder.take.id] for holder in held.get(one.beat.key, ())]
            name = "" if one.take is None else names[one.take]
            also = ", ".join(other for other in others if other != name)
            seconds = f"{one.samples / assembly.rate:.1f}" if one.take is not None else ""
            table.add_row(str(number), Text(_label(positions, one.beat)), Text(name), seconds, Text(also))
        console.print(table)
        console.print(_summary(assembly))
    sys.stdout.write(printed.get())


def _names(study: Study) -> dict[int, str]:
    """What each take is called, a long name shortened, with its number where another one is called the same."""
    short = {n: _shortened(take.name) for n, take in study.takes.items()}
    called = Counter(short.values())
    return {n: f"{name} ({n})" if called[name] > 1 else name for n, name in short.items()}


def _shortened(name: str) -> str:
    return name if len(name) <= _LONGEST_NAME else f"{name[: _LONGEST_NAME - 1].rstrip()}…"


def _takes_table(study: Study, added: int | None) -> Table:
    table = Table(box=None, pad_edge=False)
    table.add_column("", justify="right", no_wrap=True)
    table.add_column("take")
    table.add_column("length", justify="right", no_wrap=True)
    table.add_column("")
    for _, take in sorted(study.takes.items()):
        words = [
            "added now" if take.id == added else "",
            "" if take.kept else "discarded",
            "" if take.complete else "cut off",
            f"from {take.origin}" if take.origin else "",
            _pickup(study, take),
            take.note,
        ]
        table.add_row(str(take.id), Text(take.name), clock(take.length.seconds), Text("; ".join(filter(None, words))))
    return table


def _pickup(study: Study, take: Take) -> str:
    into = None if take.replaces is None else study.takes.get(take.replaces.take)
    return "" if into is None else f"some words of {into.name}, told anew"


def _summary(assembly: Assembly) -> str:
    if assembly.told:
        return f"total {clock(assembly.samples / assembly.rate)}; every line is told"
    told = sum(one.take is not None for one in assembly.beats)
    return f"{told} of {len(assembly.beats)} beats are told; {len(assembly.missing)} spoken lines are in no take"


def _label(positions: Positions, beat: Beat) -> str:
    return beat.key.value if isinstance(beat.key, Part) else move_label(positions, beat.key)


def _move(positions: Positions, beat: Beat) -> str:
    """The move alone, for those who leave its number out."""
    return _squeezed(_label(positions, beat).split(".")[-1].strip())


def _squeezed(text: str) -> str:
    return "".join(text.split())
