"""Where columns and pages end: no line alone, no diagram torn from its words."""

from __future__ import annotations

import io
import re
from collections import defaultdict

import pypdf
import pytest

from studyboard.delivery.sheet import sheet_pdf
from studyboard.delivery.sheet_options import Paper, SheetOptions
from studyboard.delivery.sheet_story import Diagram, story
from studyboard.example import example_study
from studyboard.model.positions import Positions

#: Reading a page's text back takes seconds: of papers and sizes, each is tried once.
SHEETS = pytest.mark.parametrize(("paper", "large"), [(Paper.A4, False), (Paper.LETTER, True)])


def lines(pdf: bytes, large: bool) -> list[tuple[int, int, float, str]]:
    """Every line of text, from the top: its page, its column, the height of its baseline (pt), and its words."""
    found = []
    for number, page in enumerate(pypdf.PdfReader(io.BytesIO(pdf)).pages):
        pieces: list[tuple[float, float, str]] = []

        def visit(text: str, cm: list[float], tm: list[float], _font: object, _size: float, to=pieces) -> None:
            if text.strip():
                x, y = tm[4] * cm[0] + tm[5] * cm[2] + cm[4], tm[4] * cm[1] + tm[5] * cm[3] + cm[5]
                to.append((x, y, text.strip()))

        page.extract_text(visitor_text=visit)
        middle = float(page.mediabox.width) / 2
        here: dict[tuple[int, int], list[tuple[float, str]]] = defaultdict(list)
        for x, y, text in pieces:
            here[int(not large and x > middle), round(y)].append((x, text))
        in_order = sorted(here.items(), key=lambda item: (item[0][0], -item[0][1]))
        found += [(number, column, y, " ".join(text for _, text in sorted(line))) for (column, y), line in in_order]
    return found


@SHEETS
def test_no_line_of_a_paragraph_stands_alone_at_the_end_or_the_beginning_of_a_column(author, paper, large):
    """Each paragraph is one word over and over, so that each line says to which it belongs."""
    words = [f"{chr(97 + number % 26)}{chr(97 + number // 26)}quo" for number in range(40)]
    story = "\n\n".join(" ".join([word] * (7 + 19 * number % 61)) for number, word in enumerate(words))
    author.put(0, note=story)
    pdf = sheet_pdf(author.study, options=SheetOptions(paper=paper, large_print=large))
    places: dict[str, dict[tuple[int, int], int]] = defaultdict(lambda: defaultdict(int))
    for page, column, _, text in lines(pdf, large):
        for word in words:
            if word in text.split():
                places[word][page, column] += 1
    assert set(places) == set(words)
    torn = {word: dict(where) for word, where in places.items() if len(where) > 1}
    assert torn, "no paragraph went over the end of a column, so nothing was tried"
    for word, where in torn.items():
        assert min(where.values()) >= 2, (word, where)


@SHEETS
def test_every_diagram_is_whole_and_has_its_caption_below_it(paper, large):
    """The ranks, the files and the caption follow each other in one column of one page."""
    options = SheetOptions(paper=paper, large_print=large)
    study = example_study()
    placed = lines(sheet_pdf(study, options=options), large)
    captions = [
        place
        for place, (*_, text) in enumerate(placed)
        if re.match(r"(after|final position|side-line) ?.*\d+ ?[.…]", text) and not text.endswith(".")
    ]
    told = story(study, Positions(study))
    assert len(captions) == sum(isinstance(block, Diagram) for block in told) > 20
    for place in captions:
        above = placed[place - 9 : place]
        assert [text for *_, text in above] == [*"87654321", "a b c d e f g h"]
        assert len({one[:2] for one in placed[place - 9 : place + 1]}) == 1


@SHEETS
def test_a_heading_is_followed_by_what_it_stands_over(paper, large):
    pdf = sheet_pdf(example_study(), options=SheetOptions(paper=paper, large_print=large))
    placed = lines(pdf, large)
    for page, column, y, text in placed:
        if text.strip() in ("Exercise 1", "Solutions"):
            below = [one for one in placed if one[:2] == (page, column) and one[2] < y and "page" not in one[3]]
            assert below, text


@SHEETS
def test_the_question_stands_with_its_exercise(paper, large):
    placed = lines(sheet_pdf(example_study(), options=SheetOptions(paper=paper, large_print=large)), large)
    asked = [one[:2] for one in placed if "Now it’s your turn" in one[3] or one[3] == "Exercise 1"]
    assert asked[0] == asked[1]


def test_a_question_of_several_pages_is_set_whole(author):
    question = " ".join(f"word{number}" for number in range(2500))
    author.put(list(author.study.main_line())[6], spoken=question)
    reader = pypdf.PdfReader(io.BytesIO(sheet_pdf(author.study)))
    text = " ".join(" ".join(page.extract_text().replace("-\n", "").split()) for page in reader.pages)
    assert len(set(re.findall(r"word\d+", text))) > 2400
