"""The study sheet as somebody who holds the PDF sees it."""

from __future__ import annotations

import io
from collections.abc import Iterator
from typing import Any

import pypdf
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from studyboard.delivery.errors import DeliveryError
from studyboard.delivery.sheet import sheet_pdf
from studyboard.delivery.sheet_story import SheetText
from studyboard.model.edits import ChangeHeaders, ChangeNode, apply
from studyboard.model.marks import MarkKind
from studyboard.model.study import Study


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
    both, notes = text_of(sheet_pdf(author.study)), text_of(sheet_pdf(author.study, text=SheetText.NOTES))
    assert "A smothered king." in both
    assert "A smothered king." in notes
    assert "Black offers a pawn. Do you take it?" in both
    assert "Black offers a pawn" not in notes


def test_there_is_a_diagram_at_every_marked_node_at_the_think_pause_and_at_the_end(author):
    diagrams = [alt for alt in alternative_texts(sheet_pdf(author.study)) if alt.startswith("Diagram")]
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
    text = text_of(sheet_pdf(author.study))
    tail = text[text.index("look at the board before you take") :]
    assert "threat" in tail
    assert "guard" in tail
    assert "target" not in tail
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
    box = read(sheet_pdf(author.study, paper=paper)).pages[0].mediabox
    assert (float(box.width) / 72 * 25.4, float(box.height) / 72 * 25.4) == pytest.approx(millimetres, abs=0.2)


def test_a_paper_that_is_not_there_is_refused_in_words(author):
    with pytest.raises(DeliveryError, match="no paper “a5” here; the sheet can be printed on a4 or letter"):
        sheet_pdf(author.study, paper="a5")


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
    assert sheet_pdf(author.study, flipped=True) != sheet_pdf(author.study)


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
