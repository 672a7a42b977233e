"""The study sheet: the talk as a printed page, typeset by typst."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from typing import Any, Final

import chess
import typst

from studyboard.delivery.errors import DeliveryError
from studyboard.delivery.printable import printable
from studyboard.delivery.sheet_options import Paper, SheetOptions
from studyboard.delivery.sheet_story import Block, Diagram, Lesson, NewPage, Paragraph, lesson, story
from studyboard.delivery.title import date_in_words, full_name, known, occasion, opening, players, result, study_title
from studyboard.model.marks import SQUARES_OF, Mark, MarkKind
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.picture.describe import describe_board, describe_marks
from studyboard.picture.grey import grey_svg
from studyboard.picture.marks import ground_marks_scene, marks_scene
from studyboard.picture.palette import PRINT_BOARD, board_palette
from studyboard.picture.primitives import Bounds
from studyboard.picture.svg import board_svg, scene_svg
from studyboard.resources_path import resource
from studyboard.translation import in_language, tr

#: Sizes of the diagrams that are tried, largest first: a last page with three lines on it wastes paper.
_DIAGRAM_SCALES: Final = (1.0, 0.93, 0.86)

#: The em of a diagram's coordinates in large print (squares): 16 points on a diagram 112 mm wide.
_LARGE_COORDINATES: Final = 0.43

#: The day in the file's own data: fixed, so that the same study gives the same bytes (s since 1970).
_TIMESTAMP: Final = 0


_PAPERS: Final = {Paper.A4: "a4", Paper.LETTER: "us-letter"}


#: What a PDF says of itself where it is one for everybody: the schema of ISO 14289-1, 5, in its plain metadata.
ACCESSIBLE: Final = b"pdfuaid"


def sheet_pdf(study: Study, positions: Positions | None = None, options: SheetOptions | None = None) -> bytes:
    """The sheet as a tagged PDF; the same study gives the same bytes.

    Neither a network nor an installed font is needed, except for scripts that typst's own fonts do not hold.
    Raises DeliveryError where the sheet cannot be set.
    """
    document = _document(study, positions, options)
    # The fonts that typst brings cover Latin, Greek and Cyrillic. Only where they do not hold all of the text are
    # the computer's own fonts asked; and what no font holds is shown as a box, which PDF/UA does not allow.
    for own_fonts_only, accessible in ((True, True), (False, True), (False, False)):
        try:
            compiler = _laid_out(document, own_fonts_only=own_fonts_only)
            pdf = compiler.compile(format="pdf", timestamp=_TIMESTAMP, pdf_standards=["ua-1"] if accessible else [])
        except typst.TypstError as reason:
            refused = reason
        else:
            assert isinstance(pdf, bytes)
            return pdf
    raise DeliveryError(tr("The study sheet could not be typeset: {message}.", message=refused.message)) from refused


def sheet_pictures(
    study: Study, positions: Positions | None = None, options: SheetOptions | None = None, *, ppi: float = 72.0
) -> list[bytes]:
    """The same pages as PNG, to be looked at before they are printed.

    ppi: pixels to the inch
    """
    try:
        compiler = _laid_out(_document(study, positions, options), own_fonts_only=False)
        made = compiler.compile(format="png", ppi=ppi)
    except typst.TypstError as reason:
        raise DeliveryError(tr("The study sheet could not be typeset: {message}.", message=reason.message)) from reason
    # One page comes as bytes, several as a list.
    return [bytes(made)] if isinstance(made, bytes) else [bytes(page) for page in made or ()]


def _document(study: Study, positions: Positions | None, options: SheetOptions | None) -> str:
    data = sheet_data(study, positions or Positions(study), options or SheetOptions())
    return json.dumps(data, ensure_ascii=False)


def _laid_out(document: str, *, own_fonts_only: bool) -> typst.Compiler:
    """The sheet with diagrams as large as the smallest number of pages allows. Raises typst.TypstError."""

    def at(scale: float) -> tuple[int, typst.Compiler]:
        compiler = typst.Compiler(
            str(resource("sheet", "sheet.typ")),
            root=str(resource("sheet")),
            font_paths=[str(resource("fonts"))],
            ignore_system_fonts=own_fonts_only,
            sys_inputs={"sheet": document, "scale": str(scale)},
        )
        return int(json.loads(compiler.query("<pages>", field="value", one=True))), compiler

    largest, *between, smallest = _DIAGRAM_SCALES
    pages, chosen = at(largest)
    if pages > 1:
        fewest, compiler = at(smallest)
        if fewest < pages:
            chosen = next((compiler for count, compiler in map(at, between) if count == fewest), compiler)
    return chosen


def sheet_data(study: Study, positions: Positions, options: SheetOptions) -> dict[str, Any]:
    """Everything that the template needs, in values that JSON knows; its own words in the language of the script."""
    with in_language(study.language):
        headers = {tag: printable(value) for tag, value in study.headers.items()}
        if options.exercises:
            told = lesson(study, positions, options.text)
        else:
            told = Lesson(story(study, positions, options.text), (), ())
        kinds: set[MarkKind] = set()

        def blocks(of: Iterable[Block]) -> list[dict[str, Any]]:
            set_blocks: list[dict[str, Any]] = []
            for block in of:
                match block:
                    case Paragraph():
                        set_blocks.append(_paragraph(block))
                    case Diagram():
                        set_blocks.append(_diagram(study, positions, block, options))
                        kinds.update(mark.kind for mark in study.nodes[block.node].marks)
                    case NewPage(after):
                        set_blocks.append({"what": "page", "says": _goes_on(after)})
            return set_blocks

        return {
            "title": study_title(headers),
            "language": study.language[:2].lower() if study.language[:2].isalpha() else "en",
            "words": _words(),
            "heading": _heading(headers, [printable(part) for part in opening(study, positions)]),
            "paper": _PAPERS[options.paper],
            "large": options.large_print,
            "lines": options.writing_lines if options.exercises else 0,
            "blocks": blocks(told.told),
            "solutions": [{"number": one.number, "blocks": blocks(one.told)} for one in told.solutions],
            "after": blocks(told.after),
            "legend": [
                {"kind": _kind_name(kind), "svg": _sample(kind, coloured=options.coloured)}
                for kind in MarkKind
                if kind in kinds
            ],
        }


def _words() -> dict[str, str]:
    """The words of the template itself; {figures} are put in there."""
    return {
        "page": tr("page {page} of {pages}", page="{page}", pages="{pages}"),
        "exercise": tr("Exercise {number}", number="{number}"),
        "solution": tr("Solution: page {page}", page="{page}"),
        "solutions": tr("Solutions"),
        "notes": tr("Notes"),
        "sample": tr("sample of the mark"),
    }


def _goes_on(after: tuple[int, ...]) -> str:
    if len(after) == 1:
        return tr("The story goes on after exercise {number}.", number=after[0])
    return tr("The story goes on after exercises {numbers}.", numbers=", ".join(map(str, after)))


def _kind_name(kind: MarkKind) -> str:
    match kind:
        case MarkKind.THREAT:
            return tr("threat")
        case MarkKind.TARGET:
            return tr("target")
        case MarkKind.ROUTE:
            return tr("route")
        case MarkKind.KEY_SQUARE:
            return tr("key square")
        case MarkKind.GUARD:
            return tr("guard")


def _heading(headers: Mapping[str, str], opening_words: list[str]) -> dict[str, Any]:
    """The title block: what is known of the game, and nothing where it is not."""
    sides = []
    for colour in ("White", "Black"):
        name = full_name(known(headers, colour))
        rating = known(headers, f"{colour}Elo")
        title = known(headers, f"{colour}Title")
        sides.append({"name": " ".join(part for part in (title, name or tr(colour)) if part), "rating": rating})
    date = date_in_words(known(headers, "Date"), tr)
    annotator = full_name(known(headers, "Annotator"))
    where = occasion(headers, tr)
    return {
        "players": players(headers),
        "sides": sides if players(headers) else [],
        "occasion": [part.replace(" ", "\N{NO-BREAK SPACE}") if part == date else part for part in where],
        "opening": opening_words,
        "result": result(headers),
        "annotator": tr("told by {name}", name=annotator) if annotator else "",
    }


def _paragraph(paragraph: Paragraph) -> dict[str, Any]:
    return {
        "what": "paragraph",
        "depth": paragraph.depth,
        "label": paragraph.label,
        "name": printable(paragraph.name),
        "runs": [{"kind": run.kind.value, "text": printable(run.text)} for run in paragraph.runs],
    }


def _diagram(study: Study, positions: Positions, diagram: Diagram, options: SheetOptions) -> dict[str, Any]:
    node = study.nodes[diagram.node]
    board = positions.board(diagram.node)
    marks: tuple[Mark, ...] = node.marks
    svg = board_svg(
        board,
        marks=marks,
        last_move=node.move,
        flipped=options.flipped,
        palette=board_palette(PRINT_BOARD),
        font_family="Libertinus Serif",
        coordinate_size=_LARGE_COORDINATES if options.large_print else None,
    )
    if diagram.number:
        name = tr("Exercise {number}, {caption}.", number=diagram.number, caption=diagram.caption)
    else:
        name = tr("Diagram {caption}.", caption=diagram.caption)
    words = (name, describe_board(board), describe_marks(marks))
    return {
        "what": "diagram",
        "depth": diagram.depth,
        "caption": diagram.caption,
        "task": diagram.task,
        "number": diagram.number,
        "solved": diagram.solved,
        "alt": " ".join(part for part in words if part),
        "svg": svg if options.coloured else grey_svg(svg),
    }


def _sample(kind: MarkKind, *, coloured: bool) -> str:
    """A mark of this kind on an empty strip, to explain it."""
    least, _ = SQUARES_OF[kind]
    mark = Mark(kind, (chess.A1, chess.C1)[:least])
    left, width = (0.5, 2.1) if least > 1 else (0.0, 1.0)
    scene = (*ground_marks_scene((mark,)), *marks_scene((mark,)))
    svg = scene_svg(scene, Bounds(left, 7.0, width, 1.0), width=width * 100, title=kind.value, description="")
    return svg if coloured else grey_svg(svg)
