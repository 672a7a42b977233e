"""The verb listen."""

from __future__ import annotations

import json
import sys
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from rich.console import Console
from rich.text import Text

from studyboard.cli.progress import progress_of
from studyboard.cli.sources import is_study, load_study, print_remark
from studyboard.model.edits import PutTake
from studyboard.model.errors import StudyboardError
from studyboard.model.positions import Positions
from studyboard.model.script import BeatKey, Part
from studyboard.model.study import Study
from studyboard.model.take_edits import follow_the_voice
from studyboard.model.takes import Take
from studyboard.notation.labels import move_label
from studyboard.sound.alignment.aligned import AlignedWord, Alignment, Departure, Unmatched
from studyboard.sound.alignment.following import moves_of, said_lines, words_of_take
from studyboard.sound.alignment.heard_sound import sound_of_file, sound_of_take
from studyboard.sound.alignment.listening import listen as listen_to
from studyboard.sound.alignment.script_words import can_be_heard, script_words
from studyboard.sound.importing import import_sound
from studyboard.store.study_file import StudyFile
from studyboard.timing.by_voice import VoicedMove, board_by_voice

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

_LISTED = 12


def listen(study: Path, sound: Path | None, take: int | None, number: int | None, *, keep: bool, as_json: bool) -> int:
    """Find the words of a study in a recording and print when they are said; 1 where not all of them are found.

    sound, take: a sound file, or a take of the study: one of the two
    keep: let the board of the take follow the voice; a sound file becomes a new take. Raises StudyboardError.
    """
    if (sound is None) == (take is None):
        raise StudyboardError("Name a sound file, or a take of the study with --take N: one of the two.")
    if (keep or take is not None) and not is_study(study):
        raise StudyboardError("Takes are kept in a study, and this is none: `studyboard new` makes one of a game.")
    if not keep and take is None:
        loaded = load_study(study, number)
        found = _found(loaded.study, _of_file(sound))
        moves = moves_of(loaded.study, found)
        return _report(Positions(loaded.study), found, moves, as_json=as_json, whole=loaded.whole)
    with StudyFile.open(study, read_only=not keep) as file:
        remark = ""
        if take is not None:
            recorded = file.study.takes.get(take)
            if recorded is None:
                raise StudyboardError(f"There is no take {take} in this study; `studyboard takes` lists them.")
            found = _found(file.study, sound_of_take(file.sound, recorded), recorded)
            moves = moves_of(file.study, found)
            if keep:
                events, said = board_by_voice(recorded, moves), said_lines(file.study, recorded, found)
                file.do(follow_the_voice(recorded, events, said))
        else:
            found = _found(file.study, _of_file(sound))
            moves = moves_of(file.study, found)
            remark = _kept_as_take(file, sound, found, moves)
        status = _report(Positions(file.study), found, moves, as_json=as_json, whole=not remark)
    if remark:
        print_remark(remark)
    return status


def _of_file(sound: Path | None) -> NDArray[np.int16]:
    assert sound is not None
    return sound_of_file(sound)


def _found(study: Study, samples: NDArray[np.int16], take: Take | None = None) -> Alignment:
    if not can_be_heard(study):
        raise StudyboardError(f"Only English can be listened for; this script is in “{study.language}”.")
    script = script_words(study) if take is None else words_of_take(study, take)
    if not script:
        raise StudyboardError("There is no spoken line in this study that could be listened for.")
    with progress_of("Listening") as progress:
        return listen_to(script, samples, progress)


def _kept_as_take(file: StudyFile, sound: Path | None, found: Alignment, moves: tuple[VoicedMove, ...]) -> str:
    """Take the sound in with its board and its words; what could not be read of it, in a sentence."""
    assert sound is not None
    imported = import_sound(sound, file.sound)
    take = imported.take
    told = replace(take, events=board_by_voice(take, moves), said=said_lines(file.study, take, found))
    file.keep(PutTake(told, "Take in a recording and let the board follow the voice"))
    return imported.remark


def _report(
    positions: Positions, found: Alignment, moves: tuple[VoicedMove, ...], *, as_json: bool, whole: bool
) -> int:
    if as_json:
        print(json.dumps(_plain(positions, found, moves), indent=2, ensure_ascii=False))
    else:
        _print(positions, found, moves)
    return 1 if found.unmatched or not whole else 0


def _plain(positions: Positions, found: Alignment, moves: tuple[VoicedMove, ...]) -> dict[str, object]:
    return {
        "seconds": round(found.seconds, 3),
        "sure": round(found.sure, 4),
        # What was not said takes no time; it is among the unmatched.
        "words": [_word(word) for word in found.words if word.sure or word.end > word.start],
        "moves": [_move(positions, move) for move in moves if not move.back],
        "returns": [_move(positions, move) for move in moves if move.back],
        "unmatched": [_departure(one) for one in found.unmatched],
    }


def _move(positions: Positions, move: VoicedMove) -> dict[str, object]:
    return {
        "san": _san(positions, move.node),
        "at": round(move.at, 3),
        "node": move.node,
        "beat": _beat(move.beat),
        "sure": move.sure,
    }


def _word(word: AlignedWord) -> dict[str, object]:
    return {
        "word": word.text,
        "start": round(word.start, 3),
        "end": round(word.end, 3),
        "sure": word.sure,
        "beat": _beat(word.beat),
        "index": word.word,
    }


def _departure(one: Unmatched) -> dict[str, object]:
    plain: dict[str, object] = {"kind": one.kind.value, "start": round(one.start, 3), "end": round(one.end, 3)}
    if one.beat is not None:
        plain |= {"text": one.text, "beat": _beat(one.beat), "index": one.word, "words": one.words}
    return plain


def _beat(beat: BeatKey) -> int | str:
    return beat.value if isinstance(beat, Part) else beat


def _san(positions: Positions, node: int) -> str | None:
    return None if positions.study.nodes[node].move is None else positions.san(node)


def _print(positions: Positions, found: Alignment, moves: tuple[VoicedMove, ...]) -> None:
    console = Console(highlight=False, soft_wrap=True)
    with console.capture() as printed:
        for move in moves:
            if positions.study.nodes[move.node].move is None:
                continue
            label = move_label(positions, move.node)
            doubt = "" if move.sure else "  (not certain)"
            console.print(Text(f"{_clock(move.at)}  {'back to ' if move.back else ''}{label}{doubt}"))
        for one in found.unmatched:
            console.print(Text(f"{_clock(one.start)}  {_sentence(one)}"))
        doubtful = sum(not word.sure for word in found.words)
        console.print(
            Text(
                f"{len(found.words) - doubtful} of {len(found.words)} words found for certain, {len(moves)} changes of "
                f"the board, {len(found.unmatched)} place{'' if len(found.unmatched) == 1 else 's'} to look at"
            )
        )
    sys.stdout.write(printed.get())


def _sentence(one: Unmatched) -> str:
    words = one.text.split()
    text = " ".join(words if len(words) <= _LISTED else [*words[:_LISTED], "…"])
    match one.kind:
        case Departure.SKIPPED:
            return f"not said: “{text}”"
        case Departure.REPEATED:
            return f"said once more: “{text}”"
        case Departure.AD_LIBBED:
            return f"until {_clock(one.end)} something is said that is not in the script"
        case Departure.DOUBTFUL:
            return f"not certain where this is said: “{text}”"


def _clock(seconds: float) -> str:
    return f"{int(seconds // 60):3d}:{seconds % 60:05.2f}"
