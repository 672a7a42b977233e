"""The study sheet: the talk as a printed page, typeset by typst."""

from __future__ import annotations

import json
from collections.abc import Mapping
from enum import StrEnum
from typing import Any, Final

import chess
import typst

from studyboard.delivery.errors import DeliveryError
from studyboard.delivery.printable import printable
from studyboard.delivery.sheet_story import Diagram, Paragraph, SheetText, story
from studyboard.delivery.title import date_in_words, full_name, known, occasion, opening, players, result, study_title
from studyboard.model.marks import SQUARES_OF, Mark, MarkKind
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.picture.describe import describe_board, describe_marks
from studyboard.picture.marks import ground_marks_scene, marks_scene
from studyboard.picture.palette import PRINT_BOARD, board_palette
from studyboard.picture.primitives import Bounds
from studyboard.picture.svg import board_svg, scene_svg
from studyboard.resources_path import resource
from studyboard.translation import as_written, tr

#: Sizes of the diagrams that are tried, largest first: a last page with three lines on it wastes paper.
_DIAGRAM_SCALES: Final = (1.0, 0.95, 0.9, 0.86)

#: The day in the file's own data: fixed, so that the same study gives the same bytes (s since 1970).
_TIMESTAMP: Final = 0


class Paper(StrEnum):
    """A4 (ISO 216) or letter (ANSI)."""

    A4 = "a4"
    LETTER = "us-letter"


def sheet_pdf(
    study: Study,
    positions: Positions | None = None,
    *,
    paper: Paper | str = Paper.A4,
    text: SheetText = SheetText.TALK,
    flipped: bool = False,
) -> bytes:
    """The sheet as a tagged PDF; the same study gives the same bytes.

    paper: a Paper, or "a4" or "letter"
    text: which text is printed
    flipped: diagrams seen from Black's side

    Neither a network nor an installed font is needed, except for scripts that typst's own fonts do not hold.
    Raises DeliveryError where the sheet cannot be set.
    """
    data = sheet_data(study, positions or Positions(study), text=text, flipped=flipped)
    data["paper"] = _paper(paper).value
    document = json.dumps(data, ensure_ascii=False)
    # The fonts that typst brings cover Latin, Greek and Cyrillic. Only where they do not hold all of the text are
    # the computer's own fonts asked; and what no font holds is shown as a box, which PDF/UA does not allow.
    for own_fonts_only, accessible in ((True, True), (False, True), (False, False)):
        try:
            return _typeset(document, own_fonts_only=own_fonts_only, accessible=accessible)
        except typst.TypstError as reason:
            refused = reason
    raise DeliveryError(tr("The study sheet could not be typeset: {message}.", message=refused.message)) from refused


def _typeset(document: str, *, own_fonts_only: bool, accessible: bool) -> bytes:
    """The sheet with diagrams as large as the smallest number of pages allows. Raises typst.TypstError."""

    def laid_out(scale: float) -> tuple[int, typst.Compiler]:
        compiler = typst.Compiler(
            str(resource("sheet", "sheet.typ")),
            root=str(resource("sheet")),
            font_paths=[str(resource("fonts"))],
            ignore_system_fonts=own_fonts_only,
            sys_inputs={"sheet": document, "scale": str(scale)},
        )
        return int(json.loads(compiler.query("<pages>", field="value", one=True))), compiler

    largest, *between, smallest = _DIAGRAM_SCALES
    pages, chosen = laid_out(largest)
    if pages > 1:
        fewest, compiler = laid_out(smallest)
        if fewest < pages:
            fitting = (compiler for count, compiler in map(laid_out, between) if count == fewest)
            chosen = next(fitting, compiler)
    pdf = chosen.compile(format="pdf", timestamp=_TIMESTAMP, pdf_standards=["ua-1"] if accessible else [])
    assert isinstance(pdf, bytes)
    return pdf


def sheet_data(
    study: Study, positions: Positions, *, text: SheetText = SheetText.TALK, flipped: bool = False
) -> dict[str, Any]:
    """Everything that the template needs, in values that JSON knows."""
    headers = {tag: printable(value) for tag, value in study.headers.items()}
    blocks: list[dict[str, Any]] = []
    kinds: set[MarkKind] = set()
    for block in story(study, positions, text):
        if isinstance(block, Paragraph):
            blocks.append(_paragraph(block))
        else:
            blocks.append(_diagram(study, positions, block, flipped))
            kinds.update(mark.kind for mark in study.nodes[block.node].marks)
    return {
        "title": study_title(headers),
        "heading": _heading(headers),
        "blocks": blocks,
        "legend": [{"kind": kind.value, "svg": _sample(kind)} for kind in MarkKind if kind in kinds],
    }


def _paper(paper: Paper | str) -> Paper:
    if paper == "letter":
        return Paper.LETTER
    try:
        return Paper(paper)
    except ValueError:
        raise DeliveryError(
            tr("There is no paper “{paper}” here; the sheet can be printed on a4 or letter.", paper=paper)
        ) from None


def _heading(headers: Mapping[str, str]) -> dict[str, Any]:
    """The title block: what is known of the game, and nothing where it is not."""
    sides = []
    for colour in ("White", "Black"):
        name = full_name(known(headers, colour))
        rating = known(headers, f"{colour}Elo")
        title = known(headers, f"{colour}Title")
        sides.append({"name": " ".join(part for part in (title, name) if part), "rating": rating})
    date = date_in_words(known(headers, "Date"))
    return {
        "players": players(headers),
        "sides": sides if any(side["name"] for side in sides) else [],
        "occasion": [part.replace(" ", "\N{NO-BREAK SPACE}") if part == date else part for part in occasion(headers)],
        "opening": opening(headers),
        "result": result(headers),
        "annotator": full_name(known(headers, "Annotator")),
    }


def _paragraph(paragraph: Paragraph) -> dict[str, Any]:
    return {
        "what": "paragraph",
        "depth": paragraph.depth,
        "label": paragraph.label,
        "name": printable(paragraph.name),
        "runs": [{"kind": run.kind.value, "text": printable(run.text)} for run in paragraph.runs],
    }


def _diagram(study: Study, positions: Positions, diagram: Diagram, flipped: bool) -> dict[str, Any]:
    node = study.nodes[diagram.node]
    board = positions.board(diagram.node)
    marks: tuple[Mark, ...] = node.marks
    svg = board_svg(
        board,
        marks=marks,
        last_move=node.move,
        flipped=flipped,
        palette=board_palette(PRINT_BOARD),
        font_family="Libertinus Serif",
    )
    with as_written():
        words = (f"Diagram {diagram.caption}.", describe_board(board), describe_marks(marks))
    return {
        "what": "diagram",
        "depth": diagram.depth,
        "caption": diagram.caption,
        "task": diagram.task,
        "alt": " ".join(part for part in words if part),
        "svg": svg,
    }


def _sample(kind: MarkKind) -> str:
    """A mark of this kind on an empty strip, to explain it."""
    least, _ = SQUARES_OF[kind]
    mark = Mark(kind, (chess.A1, chess.C1)[:least])
    left, width = (0.5, 2.1) if least > 1 else (0.0, 1.0)
    scene = (*ground_marks_scene((mark,)), *marks_scene((mark,)))
    return scene_svg(scene, Bounds(left, 7.0, width, 1.0), width=width * 100, title=kind.value, description="")
