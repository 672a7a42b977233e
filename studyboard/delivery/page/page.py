"""The talk as one HTML file to click through, which needs no network and reads as an article without script."""

from __future__ import annotations

import base64
import hashlib
import json
from collections.abc import Sequence
from dataclasses import fields
from functools import cache
from typing import Any, Final

import chess
from jinja2 import Environment, FileSystemLoader, StrictUndefined, select_autoescape
from markupsafe import Markup

from studyboard.board.moves import captured_square, rearrangement_of
from studyboard.delivery.caption_lines import captions
from studyboard.delivery.language_tag import language_tag
from studyboard.delivery.page.article import Diagram, article
from studyboard.delivery.page.drawings import Drawings
from studyboard.delivery.page.lanes import lane_table
from studyboard.delivery.page.lines import Lines
from studyboard.delivery.page.media import Media
from studyboard.delivery.page.shots import Shot, shots
from studyboard.delivery.page.telling import MoveTag, NewParagraph, ReturnTag, shown
from studyboard.delivery.title import date_in_words, full_name, known, occasion, opening, players, result, study_title
from studyboard.delivery.webvtt import webvtt_text
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.picture.describe import describe_marks
from studyboard.picture.palette import Theme, board_palette, theme
from studyboard.resources_path import resource
from studyboard.timing.timeline import Timeline
from studyboard.translation import as_written

_POLICY: Final = "default-src 'none'; base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'"


def page_html(
    study: Study, positions: Positions, timeline: Timeline, *, media: Media | None = None, flipped: bool = False
) -> bytes:
    """The page as UTF-8; the same talk gives the same bytes. O(size of the talk).

    media: sound or video whose second 0 is that of the timeline
    flipped: the board is seen from Black's side at first

    Nothing in it is fetched from anywhere but the media, and its policy forbids everything else.
    """
    steps = shots(timeline)
    lines = Lines(study, [shot.node for shot in steps])
    drawings = Drawings()
    parts = article(study, positions, timeline, steps, lines)
    diagrams = {
        item.node: Markup(drawings.diagram(positions, item.node))
        for part in parts
        for block in part.blocks
        for item in block.content
        if isinstance(item, Diagram)
    }
    talk = _talk_data(study, positions, timeline, steps, drawings, flipped=flipped)
    style, script = _style(), _text("page.js")
    headers = {tag: shown(value) for tag, value in study.headers.items()}
    opening_words = [shown(part) for part in opening(study, positions)]
    with as_written():
        html: str = _template().render(
            title=study_title(headers),
            heading=_heading(headers, opening_words),
            language=language_tag(study.language),
            description=", ".join([*occasion(headers), *opening_words]),
            policy=_policy(style, script, media),
            style=Markup(style),
            script=Markup(script),
            parts=parts,
            lanes=lane_table(study, positions, steps, lines),
            definitions=Markup(drawings.definitions()),
            diagrams=diagrams,
            legend=_legend(study, steps, drawings),
            talk=Markup(_json(talk)),
            icon=_icon(),
            media=media,
            captions=_captions(timeline, headers, media),
            what={
                "diagram": Diagram,
                "move": MoveTag,
                "back": ReturnTag,
                "new": NewParagraph,
            },
        )
    return html.encode("utf-8", "replace")


def _heading(headers: dict[str, str], opening_words: list[str]) -> dict[str, Any]:
    """What stands above the talk: what is known of the game, and nothing where it is not."""
    sides = []
    for colour in ("White", "Black"):
        name = " ".join(part for part in (known(headers, f"{colour}Title"), full_name(known(headers, colour))) if part)
        sides.append({"colour": colour, "name": name, "rating": known(headers, f"{colour}Elo")})
    date = date_in_words(known(headers, "Date"))
    return {
        "name": players(headers) or known(headers, "Event") or "Study",
        "sides": sides if any(side["name"] for side in sides) else [],
        "occasion": [part for part in occasion(headers) if part != date],
        "date": date,
        "opening": opening_words,
        "result": result(headers),
        "annotator": full_name(known(headers, "Annotator")),
    }


def _talk_data(
    study: Study, positions: Positions, timeline: Timeline, steps: Sequence[Shot], drawings: Drawings, *, flipped: bool
) -> dict[str, Any]:
    """What the script needs: moves, steps, times and marks, as values that JSON knows."""
    number_of: dict[int, int] = {}
    moves: list[list[Any]] = []
    for shot in steps:
        for node in reversed([*_unknown(study, shot.node, number_of)]):
            number_of[node] = len(moves)
            parent = study.nodes[node].parent
            moves.append([-1 if parent is None else number_of[parent], _move_code(positions, node)])
    said: dict[int, str] = {}
    data = []
    for shot in steps:
        marks: tuple[Mark, ...] = study.nodes[shot.node].marks
        drawn = drawings.marks_of(marks) if shot.marks else ()
        appearing = []
        for when, index in shot.marks:
            if index < len(drawn):
                with as_written():
                    said[drawn[index]] = describe_marks((marks[index],))
                appearing.append([_seconds(when), drawn[index]])
        data.append([_seconds(shot.at), shot.kind.value[0], number_of[shot.node], shot.stretch, shot.part, *appearing])
    start = positions.board(study.root)
    return {
        "position": start.board_fen(),
        "white": start.turn,
        "number": start.fullmove_number,
        "moves": moves,
        "shots": data,
        "marks": [said.get(number, "") for number in range(max(said, default=-1) + 1)],
        "ground": drawings.has_ground(),
        "length": _seconds(timeline.seconds),
        "turned": flipped,
    }


def _unknown(study: Study, node: int, known_nodes: dict[int, int]) -> Sequence[int]:
    """The node and those before it which are not known yet, the last first."""
    found: list[int] = []
    at: int | None = node
    while at is not None and at not in known_nodes:
        found.append(at)
        at = study.nodes[at].parent
    return found


def _move_code(positions: Positions, node: int) -> str:
    """What a move does to the pieces: “e2e4”, “e1g1,h1f1”, “e5d6xd5”, “e7e8=Q”, and “+” or “#” behind it."""
    at = positions.study.nodes[node]
    if at.move is None or at.parent is None or not at.move:
        return ""
    board = positions.board(at.parent)
    slides = rearrangement_of(board, at.move).slides
    code = ",".join(chess.square_name(slide.origin) + chess.square_name(slide.destination) for slide in slides)
    taken = captured_square(board, at.move)
    if taken is not None and taken != at.move.to_square:
        code += f"x{chess.square_name(taken)}"
    if at.move.promotion:
        code += f"={chess.piece_symbol(at.move.promotion).upper()}"
    after = positions.board(node)
    return code + ("#" if after.is_checkmate() else "+" if after.is_check() else "")


def _seconds(value: float) -> float:
    return round(value, 3)


def _json(value: object) -> str:
    """JSON that can stand inside a script element: nothing in it begins a tag or a comment."""
    text = json.dumps(value, ensure_ascii=True, separators=(",", ":"))
    return text.replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026")


def _legend(study: Study, steps: Sequence[Shot], drawings: Drawings) -> list[dict[str, Any]]:
    """The kinds of mark that the talk shows, each with what it looks like."""
    kinds = {study.nodes[shot.node].marks[index].kind for shot in steps for _, index in shot.marks}
    return [{"name": kind.value, "svg": Markup(drawings.sample(kind))} for kind in MarkKind if kind in kinds]


def _captions(timeline: Timeline, headers: dict[str, str], media: Media | None) -> str:
    """Captions of a video, as a data URL: pages that are opened from a disk may load no captions from beside them."""
    if media is None or not media.moving:
        return ""
    cues = captions(timeline)
    if not cues:
        return ""
    text = webvtt_text(cues, title=study_title(headers)).encode("utf-8", "replace")
    return f"data:text/vtt;base64,{base64.b64encode(text).decode('ascii')}"


def _policy(style: str, script: str, media: Media | None) -> str:
    rules = [
        _POLICY,
        f"script-src '{_digest(script)}'",
        f"style-src '{_digest(style)}'",
        "img-src data:",
        "font-src data:",
    ]
    if media is not None:
        sources = [*(["'self'"] if not media.inside else []), *(["data:"] if media.inside or media.moving else [])]
        rules.append(f"media-src {' '.join(sources)}")
    return "; ".join(rules)


def _digest(text: str) -> str:
    """How a policy names a script or a style that stands in the page (CSP Level 3)."""
    return f"sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode('ascii')}"


@cache
def _style() -> str:
    """The style sheet, with the colours of the program's own themes and its figurines."""
    font = base64.b64encode(resource("fonts", "StudyboardFigurine.otf").read_bytes()).decode("ascii")
    board = board_palette()
    light = _colours(theme("light")) + f"--light:{board.light};--dark:{board.dark};--frame:{board.frame};"
    dark = _colours(theme("dark"))
    return (
        _text("page.css")
        .replace("/*light*/", light)
        .replace("/*dark*/", dark)
        .replace("FIGURINES", f"data:font/otf;base64,{font}")
    )


def _colours(look: Theme) -> str:
    names = (one.name for one in fields(look) if one.name != "name")
    return "".join(f"--{name.replace('_', '-')}:{getattr(look, name)};" for name in names)


def _icon() -> str:
    """The picture in the browser's tab: without one, browsers ask the server for it."""
    svg = resource("icon.svg").read_bytes()
    return f"data:image/svg+xml;base64,{base64.b64encode(svg).decode('ascii')}"


@cache
def _text(name: str) -> str:
    return resource("page", name).read_text(encoding="utf-8")


@cache
def _template() -> Any:
    environment = Environment(
        loader=FileSystemLoader(resource("page")),
        autoescape=select_autoescape(default=True, default_for_string=True),
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    environment.tests["kind"] = isinstance
    return environment.get_template("page.html")
