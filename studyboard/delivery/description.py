"""The text that stands beside a video: summary, chapters, the moves, credits and thanks, through a template."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Sequence
from pathlib import Path
from types import TracebackType
from typing import Any, Final

import chess
from jinja2 import StrictUndefined, TemplateError, TemplateSyntaxError, UndefinedError
from jinja2.exceptions import SecurityError
from jinja2.sandbox import SandboxedEnvironment

from studyboard.delivery.chapters import chapters
from studyboard.delivery.errors import DeliveryError
from studyboard.delivery.printable import printable
from studyboard.delivery.title import date_in_words, full_name, known, occasion, opening, players, result, study_title
from studyboard.model.positions import Positions
from studyboard.model.script import Part, words
from studyboard.model.study import Study, start_board
from studyboard.timing.clock import clock
from studyboard.timing.timeline import Source, Timeline
from studyboard.translation import in_language, tr, tr_later

#: Tags that say who did something, and what that is called; the first is of the PGN standard (1994), 9.6.2.
_CREDITS: Final = (
    ("Annotator", tr_later("Told by")),
    ("Analysis", tr_later("Analysis")),
    ("Photographer", tr_later("Photographs")),
)
_ECO: Final = re.compile(r"[A-E]\d\d")
_MOVE_NUMBER: Final = re.compile(r"(\d+\.+) ")
#: What CommonMark 0.31, 2.4, lets a backslash take the meaning from, as far as it has one inside a line.
_MARKDOWN: Final = re.compile(r"([\\`*_\[\]<>#&~|])")
#: At the beginning of a line a number with a full stop would begin a list (CommonMark 0.31, 5.2).
_LIST_NUMBER: Final = re.compile(r"^(\d+)([.)])", re.MULTILINE)


def description(context: dict[str, Any], template: Path) -> str:
    """The text that a template makes of a context, ending in one line break.

    A template is Jinja, in a sandbox: it can read nothing but the context and change nothing at all. Raises
    DeliveryError, with the file and the line, where the template asks for what there is not or is none.
    """
    try:
        source = template.read_text(encoding="utf-8-sig")
    except OSError as reason:
        raise DeliveryError(tr("{path} cannot be read: {reason}.", path=template, reason=reason.strerror)) from reason
    except UnicodeDecodeError as reason:
        raise DeliveryError(tr("{path} is no text in UTF-8.", path=template)) from reason
    environment = SandboxedEnvironment(
        undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True, keep_trailing_newline=False, autoescape=False
    )
    environment.filters |= {"md": _markdown, "wrapped": _wrapped}
    try:
        code = environment.compile(source, template.name, str(template))
        made = environment.template_class.from_code(environment, code, environment.make_globals(None))
        text = made.render(context)
    except TemplateSyntaxError as reason:
        raise _refused(template, reason.lineno, reason.message or str(reason)) from reason
    except (UndefinedError, SecurityError, TemplateError) as reason:
        raise _refused(template, _line(reason.__traceback__, template), reason.message or str(reason)) from reason
    except Exception as reason:
        # Whatever else an expression of the user's can do wrong: divide by nothing, add words to numbers.
        raise _refused(template, _line(reason.__traceback__, template), str(reason)) from reason
    return "\n".join(line.rstrip() for line in text.strip().splitlines()) + "\n"


def description_context(
    study: Study, positions: Positions, timeline: Timeline, names: Sequence[str] = ()
) -> dict[str, Any]:
    """Everything that a template can use, in plain values; README.md explains them. What is not the author's own words
    is in the language of the script.

    names: people to be thanked, from a list of the user's
    """
    with in_language(study.language):
        return _context(study, positions, timeline, names)


def _context(study: Study, positions: Positions, timeline: Timeline, names: Sequence[str]) -> dict[str, Any]:
    headers = {tag: printable(value) for tag, value in study.headers.items()}
    spoken = {part.value: printable(study.line(part).spoken.text) for part in Part}
    found = chapters(study, positions, timeline)
    length = clock(timeline.seconds)
    lanes = {study.line_start(stretch.node) for stretch in timeline.stretches if not isinstance(stretch.key, Part)}
    counts = {
        "side_lines": len(lanes - {study.root}),
        "think_pauses": sum(stretch.think > 0 for stretch in timeline.stretches),
        "words": sum(len(words(stretch.spoken.text)) for stretch in timeline.stretches),
    }
    context: dict[str, Any] = {
        "title": printable(study_title(headers)),
        "players": players(headers),
        "white": _side(headers, "White"),
        "black": _side(headers, "Black"),
        "event": known(headers, "Event"),
        "site": known(headers, "Site"),
        "round": known(headers, "Round"),
        "date": date_in_words(known(headers, "Date"), tr),
        "result": result(headers),
        **_opening(study, positions),
        "headers": headers,
        "talk": {
            "seconds": round(timeline.seconds, 3),
            "length": length,
            "recorded": timeline.source is Source.RECORDED,
            "language": study.language,
            **counts,
        },
        "chapters": [
            {"start": one.start, "end": one.end, "clock": clock(int(one.start)), "title": printable(one.title)}
            for one in found
        ],
        "game": _game(study, headers),
        "credits": [
            {"role": tr(role), "name": full_name(known(headers, tag))} for tag, role in _CREDITS if known(headers, tag)
        ],
        **spoken,
        "headings": {
            "chapters": tr("Chapters"),
            "game": tr("The game"),
            "credits": tr("Credits"),
            "thanks": tr("Thanks"),
        },
        "names": [printable(name) for name in names],
    }
    context["summary"] = _summary(context, headers)
    return context


def _opening(study: Study, positions: Positions) -> dict[str, str]:
    parts = [printable(part) for part in opening(study, positions)]
    eco = parts.pop(0) if parts and _ECO.fullmatch(parts[0]) else ""
    return {"opening": ", ".join(parts), "eco": eco}


def _side(headers: dict[str, str], colour: str) -> dict[str, str]:
    return {
        "name": full_name(known(headers, colour)),
        "title": known(headers, f"{colour}Title"),
        "rating": known(headers, f"{colour}Elo"),
    }


def _game(study: Study, headers: dict[str, str]) -> dict[str, Any]:
    """The moves that were played, as one text and one by one."""
    board = start_board(study.headers)
    moves = [move for node in study.main_line() if (move := study.nodes[node].move) is not None]
    text = board.variation_san(moves) if moves else ""
    sans = []
    for move in moves:
        sans.append(board.san(move))
        board.push(move)
    outcome = headers.get("Result", "*")
    shown = f"{text} {outcome}" if text and outcome in ("1-0", "0-1", "1/2-1/2") else text
    return {"moves": shown, "sans": sans, "count": (len(sans) + 1) // 2, "fen": _set_up(study)}


def _set_up(study: Study) -> str:
    """The position that the game begins with; "" for the usual one."""
    fen = start_board(study.headers).fen()
    return "" if fen == chess.STARTING_FEN else fen


def _summary(context: dict[str, Any], headers: dict[str, str]) -> str:
    """Two or three sentences: the game and its occasion, the opening, what the talk has."""
    white, black = context["white"], context["black"]
    sides = [f"{side['name']} ({side['rating']})" if side["rating"] else side["name"] for side in (white, black)]
    sentences = []
    where = occasion(headers, tr)
    if all(sides):
        where.insert(0, tr("{white} against {black}", white=sides[0], black=sides[1]))
    if where:
        sentences.append(f"{', '.join(where)}.")
    if context["opening"]:
        named = f"{context['opening']} ({context['eco']})" if context["eco"] else context["opening"]
        sentences.append(tr("Opening: {name}.", name=named))
    talk, moves = context["talk"], context["game"]["count"]
    parts = [
        _counted(moves, tr("1 move"), tr("{count} moves", count=moves)),
        _counted(talk["side_lines"], tr("1 side-line"), tr("{count} side-lines", count=talk["side_lines"])),
        _counted(
            talk["think_pauses"],
            tr("1 pause to find the move"),
            tr("{count} pauses to find the move", count=talk["think_pauses"]),
        ),
    ]
    told = [part for part in parts if part]
    if told and talk["seconds"]:
        seconds = round(talk["seconds"])
        length = (
            tr("{time} minutes", time=talk["length"]) if seconds >= 60 else tr("{seconds} seconds", seconds=seconds)
        )
        several = tr("{first} and {last}", first=", ".join(told[:-1]), last=told[-1]) if len(told) > 1 else told[0]
        sentences.append(f"{length}: {several}.")
    return " ".join(sentences)


def _counted(count: int, one: str, several: str) -> str:
    return "" if not count else one if count == 1 else several


def _wrapped(text: object, width: int = 78) -> str:
    """The text in lines of at most so many characters; a move stays with its number."""
    bound = _MOVE_NUMBER.sub("\\1\N{NO-BREAK SPACE}", str(text))
    lines = textwrap.wrap(bound, width, break_long_words=False, break_on_hyphens=False)
    return "\n".join(lines).replace("\N{NO-BREAK SPACE}", " ")


def _markdown(text: object) -> str:
    """The text so that CommonMark shows it as it is."""
    return _LIST_NUMBER.sub(r"\1\\\2", _MARKDOWN.sub(r"\\\1", str(text)))


def _line(trace: TracebackType | None, template: Path) -> int | None:
    """The line of the template at which something went wrong, from the end of its traceback."""
    found = None
    while trace is not None:
        if trace.tb_frame.f_code.co_filename == str(template):
            found = trace.tb_lineno
        trace = trace.tb_next
    return found


def _refused(template: Path, line: int | None, why: str) -> DeliveryError:
    place = f"{template}:{line}" if line else str(template)
    return DeliveryError(tr("{place}: the template cannot be used: {why}.", place=place, why=why.rstrip(".")))
