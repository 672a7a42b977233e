"""The verb new with a narration: a study from a talk in words."""

from __future__ import annotations

import codecs
import json
from pathlib import Path

from studyboard.board.naming import in_figures
from studyboard.cli.sources import load_game, report_problems
from studyboard.model.errors import StudyboardError
from studyboard.notation.narration.narration import Narration
from studyboard.notation.narration.reading import read_narration
from studyboard.notation.narration.study_of import narration_study
from studyboard.store.study_file import StudyFile


def new_from_narration(
    path: Path,
    talk: Path,
    game: Path | None,
    number: int | None,
    fen: str | None,
    *,
    as_json: bool,
    language: str = "en",
) -> int:
    """Make a study from a talk, with its game or from a position; 1 where something in it could not be read.

    Raises StudyboardError where the talk, the game or the position cannot be read at all.
    """
    if number is not None and game is None:
        raise StudyboardError("--number chooses a game of a PGN file: it goes with --game.")
    text = _text(talk)
    problems = 0
    given = None
    if game is not None:
        read = load_game(game, number)
        report_problems(game, read)
        problems = len(read.problems)
        given = read.study
    narration = read_narration(text, game=given, fen=fen, language=language)
    study = narration_study(narration, given)
    with StudyFile.create(path, study):
        pass
    if as_json:
        print(json.dumps({"study": str(path), **report(narration)}, indent=2, ensure_ascii=False))
    else:
        _print_report(path, narration)
    return 1 if narration.unread or problems or not narration.moves else 0


def report(narration: Narration) -> dict[str, object]:
    """What was understood, as plain data.

    after: the moves from the start to where a side-line leaves; at: seconds from the start of the talk, or null
    """
    by_number = {move.number: move for move in narration.moves}
    return {
        "main_line": list(narration.main_line),
        "side_lines": [{"after": list(line.after), "line": list(line.line)} for line in narration.side_lines],
        "beats": [
            {
                "at": None if beat.at is None else round(beat.at, 2),
                "text": beat.text,
                "moves": [by_number[number].san for number in beat.moves],
            }
            for beat in narration.beats
        ],
        "mentions": [{"text": mention.quote, "kind": mention.kind} for mention in narration.mentions],
        "unread": [{"text": unread.text, "reason": unread.reason} for unread in narration.unread],
    }


def _text(talk: Path) -> str:
    try:
        data = talk.read_bytes()
    except OSError as reason:
        raise StudyboardError(f"{talk} cannot be read: {reason.strerror or reason}.") from reason
    if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        return data.decode("utf-16", errors="replace")
    if b"\0" in data:
        raise StudyboardError(f"{talk} is no text. A talk is plain text, WebVTT or SRT.")
    return data.decode("utf-8-sig", errors="replace")


def _print_report(path: Path, narration: Narration) -> None:
    side = sum(len(line.line) for line in narration.side_lines)
    counts = (
        in_figures(len(narration.main_line), "half-move"),
        f"{in_figures(len(narration.side_lines), 'side-line')} with {side}",
        in_figures(len(narration.beats), "beat"),
        f"{in_figures(len(narration.unread), 'place')} not read",
    )
    print(f"{path}: {', '.join(counts)}")
    for unread in narration.unread:
        print(f"  “{unread.text}”: {unread.reason}")
