"""The verbs and their options, and how the program ends."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Sequence
from contextlib import suppress
from io import TextIOWrapper
from pathlib import Path

from studyboard import __version__
from studyboard.model.errors import StudyboardError

GOOD, FOUND_SOMETHING, CANNOT = 0, 1, 2

_VERBS = ("open", "tour", "new", "timing", "pace", "takes", "readthrough", "listen", "deliver", "pgn", "check-setup")
_CAUTION = (
    "Engine and archive help is for finished games: the event's and the arbiter's rules come first, and live rounds "
    "may have a broadcast delay. Names, photographs and sponsors' material are the publisher's responsibility."
)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one verb, or open the desk; the exit status: 0 good, 1 found something wrong, 2 cannot be done."""
    # Qt would name every optional library that it does without; what the program needs, check-setup tells.
    os.environ.setdefault("QT_LOGGING_RULES", "qt.multimedia.symbolsresolver=false")
    _write_unicode()
    words = list(sys.argv[1:] if arguments is None else arguments)
    if not words or (words[0] not in _VERBS and not words[0].startswith("-")):
        words.insert(0, "open")
    try:
        options = _parser(deep="deliver" in words).parse_args(words)
        status = int(options.run(options))
        sys.stdout.flush()
        return status
    except StudyboardError as reason:
        print(f"studyboard: {reason}", file=sys.stderr)
        return CANNOT
    except BrokenPipeError:
        # The reader of a pipe has gone, as with `| head`: not an error of ours, and nothing more can be printed.
        _let_go_of_output()
        return GOOD
    except OSError as reason:
        where = f"{reason.filename}: " if reason.filename else ""
        print(f"studyboard: {where}{reason.strerror or reason}", file=sys.stderr)
        _let_go_of_output()
        return CANNOT
    except KeyboardInterrupt:
        print("studyboard: stopped; nothing was left half-written", file=sys.stderr)
        return 130


def main_desk() -> int:
    """Open the desk from a menu or by a double click: the arguments are files."""
    return main(["open", "--from-menu", *sys.argv[1:]])


def _let_go_of_output() -> None:
    """Where nothing more can be printed, Python would say so once more at its end, with an exit status of its own."""
    try:
        sys.stdout.flush()
    except OSError:
        with suppress(OSError, ValueError):
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _write_unicode() -> None:
    """What is printed may hold any letter: names of players, and of files that are no text in this language."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            encoding = stream.encoding if stream.isatty() else "utf-8"
            stream.reconfigure(encoding=encoding, errors="backslashreplace")


def _parser(*, deep: bool) -> argparse.ArgumentParser:
    """deep: with what can be chosen of each product, which takes a while to look up."""
    parser = argparse.ArgumentParser(
        prog="studyboard",
        description="A position-study board with a timed script. With a study, a PGN file or nothing: opens the desk.",
        epilog=_CAUTION,
    )
    parser.add_argument("--version", action="version", version=f"studyboard {__version__}")
    verbs = parser.add_subparsers(title="verbs", metavar="VERB", required=True)

    opened = verbs.add_parser("open", help="open the desk (the verb can be left out)")
    opened.add_argument("file", nargs="?", type=Path, metavar="STUDY|PGN")
    # Nobody reads standard error after a double click: what is wrong is then shown in a window.
    opened.add_argument("--from-menu", action="store_true", help=argparse.SUPPRESS)
    opened.set_defaults(run=_open)

    tour = verbs.add_parser("tour", help="the demo: the desk on the example; with no screen, its delivery into ./tour")
    tour.set_defaults(run=_tour)

    new = verbs.add_parser("new", help="make a study from a game, a position or a talk in words")
    new.add_argument("study", type=Path, metavar="STUDY")
    source = new.add_mutually_exclusive_group()
    source.add_argument("--game", type=Path, metavar="G.pgn", help="a file with games in PGN")
    source.add_argument("--fen", metavar="FEN", help="a position")
    new.add_argument(
        "--narration",
        type=Path,
        metavar="TALK.txt",
        help="a talk: plain text, lines starting [m:ss], WebVTT or SRT; its moves are read, with the game or without",
    )
    new.add_argument("--language", default="en", metavar="CODE", help="the language of the talk (en, de)")
    new.add_argument("--number", type=int, metavar="N", help="which game of the file, from 1")
    new.add_argument("--json", action="store_true", help="print the report as JSON")
    new.set_defaults(run=_new)

    timing = verbs.add_parser("timing", help="every beat: intended, estimated, recorded seconds; slot, over or under")
    _study(timing)
    timing.add_argument("--json", action="store_true", help="print the report as JSON")
    timing.add_argument(
        "--cuts", action="store_true", help="side-lines to leave out, by the seconds they take and what depends on them"
    )
    timing.set_defaults(run=_timing)

    pace = verbs.add_parser("pace", help="learn the presenter's pace from a timed talk, or from the takes of a study")
    pace.add_argument(
        "talk", type=Path, metavar="TALK.txt|STUDY", help="lines starting [m:ss], WebVTT, SRT; or a study"
    )
    pace.add_argument("--keep-in", type=Path, metavar="STUDY", help="set it as the pace of this study")
    pace.add_argument("--json", action="store_true", help="print the report as JSON")
    pace.set_defaults(run=_pace)

    takes = verbs.add_parser(
        "takes", help="the takes of a study, and which one is heard for each beat; adds a sound file"
    )
    takes.add_argument("study", type=Path, metavar="STUDY")
    takes.add_argument("--add", type=Path, metavar="SOUND", help="a sound file, or a video with sound, as a new take")
    takes.add_argument(
        "--name", default="", metavar="NAME", help="what that take is called; the file's name if not said"
    )
    takes.add_argument(
        "--from", dest="first", metavar="BEAT", help="the beat that it tells: its number, move or part; all if not said"
    )
    takes.add_argument(
        "--to", dest="last", metavar="BEAT", help="the last beat that it tells; --from alone if not said"
    )
    takes.add_argument("--purge", action="store_true", help="delete the sound of discarded takes for good")
    takes.add_argument("--json", action="store_true", help="print the report as JSON")
    takes.set_defaults(run=_takes)

    reading = verbs.add_parser("readthrough", help="check what is said against the board")
    reading.add_argument("study", type=Path, nargs="?", metavar="STUDY", help="a study, or a PGN file")
    reading.add_argument("--number", type=int, metavar="N", help="with a PGN file: which game, from 1")
    reading.add_argument("--fen", metavar="FEN", help="instead of a study: a position, with --say")
    reading.add_argument("--say", metavar="TEXT", help="what is said of that position; - reads it from standard input")
    reading.add_argument("--all", action="store_true", help="print what is confirmed or left unchecked too")
    reading.add_argument("--json", action="store_true", help="print the report as JSON")
    reading.set_defaults(run=_readthrough)

    listening = verbs.add_parser("listen", help="find when each word of the script is said in a recording")
    _study(listening)
    listening.add_argument("sound", type=Path, nargs="?", metavar="SOUND", help="a sound file, or a video with sound")
    listening.add_argument("--take", type=int, metavar="N", help="in place of a file: a take of the study")
    listening.add_argument(
        "--keep", action="store_true", help="let the board of the take follow the voice; a file becomes a new take"
    )
    listening.add_argument("--json", action="store_true", help="print the report as JSON")
    listening.set_defaults(run=_listen)

    deliver = verbs.add_parser(
        "deliver", help="write all that is published of studies: video, captions, sheet, page and more"
    )
    deliver.add_argument("studies", type=Path, nargs="+", metavar="STUDY", help="studies, or PGN files of one game")
    deliver.add_argument("--number", type=int, metavar="N", help="with a PGN file: which game, from 1")
    deliver.add_argument("--to", type=_folder, required=True, metavar="DIR", help="the folder to write into")
    deliver.add_argument(
        "--parallel", type=_count, metavar="N", help="so many of several studies at once; all processors but one"
    )
    deliver.add_argument(
        "--again", action="store_true", help="make everything, also what lies there as it would be made again"
    )
    deliver.add_argument(
        "--loudness",
        choices=("-18", "-23", "as-spoken"),
        default="-18",
        help="of the recorded voice in LUFS, peaks under -1 dBTP: -18 online (AES TD1008), -23 broadcast (EBU R 128)",
    )
    deliver.add_argument(
        "--scratch-voice",
        action="store_true",
        help="the video of a talk that is not recorded is spoken by the system's synthesiser, and marked so",
    )
    if deep:
        from studyboard.cli.deliver_options import add_products

        add_products(deliver)
    deliver.add_argument("--json", action="store_true", help="print the report as JSON")
    deliver.set_defaults(run=_deliver)

    pgn = verbs.add_parser("pgn", help="the annotated game on standard output")
    _study(pgn)
    pgn.add_argument("--no-spoken", action="store_true", help="leave the spoken lines out")
    pgn.set_defaults(run=_pgn)

    setup = verbs.add_parser("check-setup", help="what is installed, what is missing, and what brings it")
    setup.add_argument("--json", action="store_true", help="print the report as JSON")
    setup.set_defaults(run=_check_setup)
    return parser


def _study(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("study", type=Path, metavar="STUDY", help="a study, or a PGN file")
    parser.add_argument("--number", type=int, metavar="N", help="with a PGN file: which game, from 1")


def _count(text: str) -> int:
    if not text.isdecimal() or not int(text):
        raise argparse.ArgumentTypeError(f"{text} is no number from 1")
    return int(text)


def _folder(text: str) -> Path:
    # What a shell makes of a variable that is not set; the path of it would be wherever the shell happens to stand.
    if not text.strip():
        raise argparse.ArgumentTypeError("no folder is named")
    return Path(text)


# Each verb is imported when it runs: `check-setup` must work where nothing else does, and the start stays quick.


def _open(options: argparse.Namespace) -> int:
    from studyboard.cli.desk import open_desk

    return open_desk(options.file, from_menu=options.from_menu)


def _tour(_: argparse.Namespace) -> int:
    from studyboard.cli.desk import tour

    return tour()


def _new(options: argparse.Namespace) -> int:
    if options.narration is not None:
        from studyboard.cli.narration_verb import new_from_narration

        return new_from_narration(
            options.study,
            options.narration,
            options.game,
            options.number,
            options.fen,
            as_json=options.json,
            language=options.language,
        )
    if options.game is None and options.fen is None:
        raise StudyboardError("A study is made from --game, --fen or --narration: name one of them.")
    from studyboard.cli.study_verbs import new

    return new(options.study, options.game, options.number, options.fen, as_json=options.json)


def _timing(options: argparse.Namespace) -> int:
    from studyboard.cli.timing_verb import timing

    return timing(options.study, options.number, cuts=options.cuts, as_json=options.json)


def _takes(options: argparse.Namespace) -> int:
    from studyboard.cli.takes_verb import takes

    return takes(
        options.study,
        add=options.add,
        name=options.name,
        first=options.first,
        last=options.last,
        purge=options.purge,
        as_json=options.json,
    )


def _pace(options: argparse.Namespace) -> int:
    from studyboard.cli.pace_verb import pace

    return pace(options.talk, keep_in=options.keep_in, as_json=options.json)


def _listen(options: argparse.Namespace) -> int:
    from studyboard.cli.listen_verb import listen

    return listen(options.study, options.sound, options.take, options.number, keep=options.keep, as_json=options.json)


def _readthrough(options: argparse.Namespace) -> int:
    from studyboard.cli.readthrough_verb import readthrough

    return readthrough(
        options.study, options.number, options.fen, options.say, whole_report=options.all, as_json=options.json
    )


def _deliver(options: argparse.Namespace) -> int:
    from studyboard.cli.deliver_options import chosen_options
    from studyboard.cli.deliver_verb import deliver_studies

    return deliver_studies(
        options.studies,
        options.number,
        options.to,
        options.items or (),
        options=chosen_options(options),
        again=options.again,
        parallel=options.parallel,
        loudness=options.loudness,
        scratch_voice=options.scratch_voice,
        as_json=options.json,
    )


def _pgn(options: argparse.Namespace) -> int:
    from studyboard.cli.study_verbs import pgn

    return pgn(options.study, options.number, spoken=not options.no_spoken)


def _check_setup(options: argparse.Namespace) -> int:
    from studyboard.cli.setup_verb import print_setup

    return print_setup(as_json=options.json)
