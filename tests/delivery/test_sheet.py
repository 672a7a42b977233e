"""The study sheet as somebody who holds the PDF sees it."""

from __future__ import annotations

import io
from collections.abc import Iterator
from typing import Any

import numpy as np
import pypdf
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PIL import Image

from studyboard.delivery.errors import DeliveryError
from studyboard.delivery.sheet import sheet_pdf, sheet_pictures
from studyboard.delivery.sheet_options import Paper, SheetOptions, SheetText
from studyboard.model.edits import ChangeHeaders, ChangeLanguage, ChangeNode, apply
from studyboard.model.marks import MarkKind
from studyboard.model.study import Study

TOLD_THROUGH = SheetOptions(exercises=False)


def read(pdf: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(pdf))


def text_of(pdf: bytes) -> str:
    return " ".join(" ".join(page.extract_text().split()) for page in read(pdf).pages)


def alternative_texts(pdf: bytes) -> list[str]:
    """What a screen reader says of the pictures, in their order."""
    return [str(element["/Alt"]) for element in _elements(read(pdf)) if "/Alt" in element]


def _elements(reader: pypdf.PdfReader) -> Iterator[dict[str, Any]]:
    waiting = [reader.trailer["/Root"]["/StructTreeRoot"]["/K"]]
    while waiting:
        item = waiting.pop(0)
        item = item.get_object() if hasattr(item, "get_object") else item
        if isinstance(item, list):
            waiting[:0] = item
        elif isinstance(item, dict):
            yield item
            if "/K" in item:
                waiting.insert(0, item["/K"])


def resources(reader: pypdf.PdfReader, kind: str) -> list[Any]:
    """All fonts or all drawn objects of the file, those inside drawn objects too."""
    found, waiting = [], [page["/Resources"] for page in reader.pages]
    while waiting:
        held = waiting.pop().get_object()
        found += [item.get_object() for item in held.get(kind, {}).values()]
        drawn = [item.get_object() for item in held.get("/XObject", {}).values()]
        waiting += [item["/Resources"] for item in drawn if "/Resources" in item]
    return found


def test_the_title_the_players_and_the_occasion_are_on_top(author):
    text = text_of(sheet_pdf(author.study))
    for words in (
        "HARBOUR CLUB WINTER EVENING",
        "ROUND 3",
        "17 JANUARY 2024",
        "Halvorse – Nduka",
        "Maja Halvorse (2104) – Ade Nduka (2088)",
        "0–1",
    ):
        assert words in text


def test_every_move_can_be_read_and_copied_with_figurines(author):
    text = text_of(sheet_pdf(author.study))
    assert "1. e4 e5 2. ♘f3 ♘c6 3. ♗c4 ♘d4!?" in text
    assert "5. ♘xf7 ♕xg2 6. ♖f1 ♕xe4+ 7. ♗e2 ♘f3#!!" in text
    assert "A The quiet way: 4. O-O" in text
    assert "5. ♕xf3 ±" in text


def test_notes_and_spoken_lines_are_printed_and_the_talk_can_be_left_out(author):
    both = text_of(sheet_pdf(author.study))
    notes = text_of(sheet_pdf(author.study, options=SheetOptions(text=SheetText.NOTES)))
    assert "A smothered king." in both
    assert "A smothered king." in notes
    assert "Black offers a pawn. Do you take it?" in both
    assert "Black offers a pawn" not in notes


def test_there_is_a_diagram_at_every_marked_node_at_the_think_pause_and_at_the_end(author):
    pdf = sheet_pdf(author.study, options=TOLD_THROUGH)
    diagrams = [alt for alt in alternative_texts(pdf) if alt.startswith("Diagram")]
    assert [alt.split(".")[0] + alt.partition("…")[1] for alt in diagrams] == [
        "Diagram after 3… ♘d4…",
        "Diagram side-line A, after 4",
        "Diagram after 4… ♕g5…",
        "Diagram final position, after 7… ♘f3# · 0–1…",
    ]
    assert "Black: king e8, queen g5" in diagrams[2]
    assert "Threat from g5 to g2." in diagrams[2]
    assert "f1 guards f2." in diagrams[1]


def test_the_reader_is_asked_to_find_the_move(author):
    assert "White to move: find the move." in text_of(sheet_pdf(author.study))


def test_the_marks_that_were_used_are_explained(author):
    foot = read(sheet_pdf(author.study)).pages[0].extract_text()
    assert "threat" in foot
    assert "guard" in foot
    assert "target" not in foot
    for node in author.study.nodes.values():
        apply(author.study, ChangeNode(node.id, "marks", ()))
    assert "threat" not in text_of(sheet_pdf(author.study))


def test_pages_are_numbered(author, mark):
    for node in list(author.study.main_line()):
        author.put(node, marks=(mark(MarkKind.KEY_SQUARE, "d5"),))
    reader = read(sheet_pdf(author.study))
    pages = len(reader.pages)
    assert pages > 2
    for number, page in enumerate(reader.pages, start=1):
        assert f"page {number} of {pages}" in " ".join(page.extract_text().split())


@pytest.mark.parametrize(("paper", "millimetres"), [("a4", (210.0, 297.0)), ("letter", (215.9, 279.4))])
def test_the_paper_has_the_size_of_its_standard(author, paper, millimetres):
    """ISO 216 (A4), ANSI/ASME Y14.1 (letter)."""
    box = read(sheet_pdf(author.study, options=SheetOptions(paper=Paper(paper)))).pages[0].mediabox
    assert (float(box.width) / 72 * 25.4, float(box.height) / 72 * 25.4) == pytest.approx(millimetres, abs=0.2)


def test_a_paper_that_is_not_there_is_refused_in_words():
    with pytest.raises(DeliveryError, match="no paper “a5” here; the sheet can be printed on a4 or letter"):
        SheetOptions(paper="a5")


def test_diagrams_are_drawn_and_fonts_are_inside_so_that_any_printer_prints_the_same(author):
    reader = read(sheet_pdf(author.study))
    assert not [drawn for drawn in resources(reader, "/XObject") if drawn.get("/Subtype") == "/Image"]
    fonts = resources(reader, "/Font")
    assert fonts
    for font in fonts:
        (inner,) = font["/DescendantFonts"]
        descriptor = inner.get_object()["/FontDescriptor"].get_object()
        assert {"/FontFile2", "/FontFile3"} & set(descriptor)
    assert any("StudyboardFigurine" in font["/BaseFont"] for font in fonts)


def test_the_sheet_can_be_read_by_a_screen_reader(author):
    """PDF/UA-1 (ISO 14289-1), 7.1 and 7.2, from memory: tagged, with a title that is shown and a language."""
    root = read(sheet_pdf(author.study)).trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]
    assert root["/Lang"] == "en"
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]
    assert read(sheet_pdf(author.study)).metadata.title == "Halvorse – Nduka, Harbour Club Winter Evening"


def test_the_same_study_gives_the_same_bytes(author):
    assert sheet_pdf(author.study) == sheet_pdf(author.study)


def test_diagrams_can_be_seen_from_the_other_side(author):
    assert sheet_pdf(author.study, options=SheetOptions(flipped=True)) != sheet_pdf(author.study)


def test_a_study_of_which_nothing_is_known_is_a_sheet_with_its_position():
    text = text_of(sheet_pdf(Study()))
    assert "Study" in text
    assert "the start position, White to move" in text
    assert "?" not in text


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(text=st.text(st.characters(exclude_categories=()), max_size=60))
def test_whatever_is_written_a_sheet_comes_out(author, text):
    author.put(1, note=text, spoken=text, name=text)
    apply(author.study, ChangeHeaders((("Event", text), ("White", text), ("WhiteElo", text), ("Date", text))))
    assert read(sheet_pdf(author.study)).pages


@pytest.mark.parametrize("text", ["漢字", "👍 yes", "#strong[*a*] $x$ // b", "שלום", "a\x00b", "\ufeffc"])
def test_scripts_and_signs_of_all_kinds_are_survived(author, text):
    author.put(1, note=text)
    assert read(sheet_pdf(author.study)).pages


def test_words_that_typst_would_take_for_commands_are_printed_as_they_are(author):
    author.put(1, note="#strong[*a*] $x$ _b_")
    assert "#strong[*a*] $x$ _b_" in text_of(sheet_pdf(author.study))


def pages_of(pdf: bytes) -> list[str]:
    return [" ".join(page.extract_text().split()) for page in read(pdf).pages]


def test_a_think_pause_is_an_exercise_with_its_solution_on_the_last_page(author):
    first, *_, last = pages_of(sheet_pdf(author.study))
    assert "Exercise 1" in first
    assert "White to move: find the move." in first
    assert "Do you take it?" in first
    assert "♘xe5" not in first
    assert "with ♘f3-d4 out of reach" not in first
    assert last.startswith("Solutions Exercise 1 4. ♘xe5?")
    assert "with ♘f3-d4 out of reach" in last


def test_the_exercise_says_on_which_page_its_solution_is(author):
    pages = pages_of(sheet_pdf(author.study))
    assert f"Solution: page {len(pages)}" in pages[0]


def test_the_story_goes_on_overleaf(author):
    pages = pages_of(sheet_pdf(author.study))
    assert pages[1].startswith("The story goes on after exercise 1. 4… ♕g5")


def test_told_through_there_are_neither_exercises_nor_solutions(author):
    text = text_of(sheet_pdf(author.study, options=TOLD_THROUGH))
    assert "Exercise" not in text
    assert "Solution" not in text
    assert text.index("find the move.") < text.index("4. ♘xe5?") < text.index("4… ♕g5")


def test_there_are_lines_to_write_on_as_many_as_were_asked_for(author):
    none, four = (sheet_pdf(author.study, options=SheetOptions(writing_lines=count)) for count in (0, 4))
    assert "Notes" in text_of(four)
    assert "Notes" not in text_of(none)
    with pytest.raises(DeliveryError, match="has 0, 2, 4, 6, 8, 12 lines to write on, not 13"):
        SheetOptions(writing_lines=13)


def sizes_of_text(pdf: bytes) -> set[float]:
    """The sizes of all type on all pages (points)."""
    found: set[float] = set()

    def visit(text: str, _cm: object, tm: list[float], _font: object, size: float) -> None:
        if text.strip():
            found.add(round(abs(size * tm[0]), 1))

    for page in read(pdf).pages:
        page.extract_text(visitor_text=visit)
    return found


@pytest.mark.parametrize("paper", list(Paper))
def test_large_print_is_nowhere_smaller_than_sixteen_points(author, paper):
    """UKAAF and RNIB, clear and large print: 16 points at least, 18 preferred; no italics, no capitals. From memory."""
    pdf = sheet_pdf(author.study, options=SheetOptions(large_print=True, paper=paper))
    sizes = sizes_of_text(pdf)
    assert min(sizes) >= 15.9
    assert 18.0 in sizes
    assert not any("Italic" in font["/BaseFont"] for font in resources(read(pdf), "/Font"))
    assert "Harbour Club Winter Evening" in text_of(pdf)
    assert min(sizes_of_text(sheet_pdf(author.study))) < 9


def is_grey(picture: bytes) -> bool:
    pixels = np.asarray(Image.open(io.BytesIO(picture)).convert("RGB")).astype(int)
    return int((pixels.max(axis=2) - pixels.min(axis=2)).max()) == 0


def test_the_sheet_is_printed_in_greys_unless_colours_are_asked_for(author, mark):
    author.put(0, marks=tuple(mark(kind, "d5 e6" if kind in LINES else "d4") for kind in MarkKind))
    assert all(is_grey(page) for page in sheet_pictures(author.study))
    coloured = sheet_pictures(author.study, options=SheetOptions(coloured=True))
    assert not all(is_grey(page) for page in coloured)


LINES = (MarkKind.THREAT, MarkKind.ROUTE, MarkKind.GUARD)


def test_the_pages_can_be_looked_at_before_they_are_printed(author):
    pages = sheet_pictures(author.study, ppi=36)
    assert len(pages) == len(read(sheet_pdf(author.study)).pages)
    assert Image.open(io.BytesIO(pages[0])).size == (298, 421)


@pytest.mark.parametrize("large", [False, True])
def test_every_diagram_has_an_alternative_text_that_does_not_give_the_answer(author, large):
    pdf = sheet_pdf(author.study, options=SheetOptions(large_print=large))
    texts = alternative_texts(pdf)
    asked = next(text for text in texts if text.startswith("Exercise 1, after 3… ♘d4."))
    assert "White: king e1" in asked
    assert "Last move" not in asked
    diagrams = [text for text in texts if text.startswith(("Exercise", "Diagram"))]
    assert len(diagrams) == 4


def test_the_sheet_speaks_the_language_of_the_script(author):
    apply(author.study, ChangeLanguage("de_DE"))
    author.put(5, note='Er sagte "nein" und zog.')
    pdf = sheet_pdf(author.study)
    first, *_, last = pages_of(pdf)
    assert "RUNDE 3" in first
    assert "17. JANUAR 2024" in first
    assert "Aufgabe 1" in first
    assert "Weiß am Zug: Welcher Zug ist es?" in first
    assert "„nein“" in first
    assert "Drohung" in first
    assert last.startswith("Lösungen Aufgabe 1 4. ♘xe5?")
    assert read(pdf).trailer["/Root"]["/Lang"] == "de"
    assert "Weiß: König e1, Dame d1" in next(text for text in alternative_texts(pdf) if text.startswith("Aufgabe 1"))
    english = ["Exercise", "Solution", "Notes", "page", "after", "threat"]
    assert not set(english) & set(" ".join(pages_of(pdf)).split())
