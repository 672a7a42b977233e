"""The study sheet against PDF/UA-1 (ISO 14289-1), by a checker that is not ours and by clauses quoted from memory.

Checker: pdfua, which covers the part of the standard that it says it can decide (16 of 106 rules in version 0.1.3);
it does not certify conformance, and neither does this test.
"""

from __future__ import annotations

import io
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from typing import Any

import pdfua
import pypdf
import pytest

from studyboard.delivery.sheet import sheet_pdf
from studyboard.delivery.sheet_options import Paper, SheetOptions
from studyboard.example import example_study
from studyboard.model.study import Study

OPTIONS = {
    "usual": SheetOptions(),
    "large print": SheetOptions(large_print=True, paper=Paper.LETTER),
    "told through": SheetOptions(exercises=False, coloured=True),
}


@pytest.fixture(scope="module", params=OPTIONS)
def sheet(request: pytest.FixtureRequest) -> bytes:
    """The example's sheet."""
    return sheet_pdf(example_study(), options=OPTIONS[request.param])


def elements(pdf: bytes) -> Iterator[dict[str, Any]]:
    """The structure elements in the order in which they are read."""
    waiting = [pypdf.PdfReader(io.BytesIO(pdf)).trailer["/Root"]["/StructTreeRoot"]["/K"]]
    while waiting:
        item = waiting.pop(0)
        item = item.get_object() if hasattr(item, "get_object") else item
        if isinstance(item, list):
            waiting[:0] = item
        elif isinstance(item, dict):
            if "/S" in item:
                yield item
            if "/K" in item:
                waiting.insert(0, item["/K"])


def test_the_checker_finds_nothing(sheet: bytes, tmp_path: Path) -> None:
    (tmp_path / "sheet.pdf").write_bytes(sheet)
    report = pdfua.validate(str(tmp_path / "sheet.pdf"))
    assert [(found.rule_id, found.message) for found in report.findings] == []


def test_the_checker_would_find_what_is_wrong(sheet: bytes, tmp_path: Path) -> None:
    """A diagram without its words, and a file without its language: the checker is awake."""
    writer = pypdf.PdfWriter(clone_from=io.BytesIO(sheet))
    del writer.root_object["/Lang"]
    for reference in writer._objects:
        if isinstance(reference, dict) and reference.get("/S") == "/Figure":
            reference.pop("/Alt", None)
    writer.write(tmp_path / "worse.pdf")
    rules = {found.rule_id for found in pdfua.validate(str(tmp_path / "worse.pdf")).findings}
    assert {"UA-06-001", "UA-13-004"} <= rules


def test_it_says_that_it_is_made_for_the_standard(sheet: bytes) -> None:
    # Clause 5: the identification in the metadata.
    metadata = pypdf.PdfReader(io.BytesIO(sheet)).trailer["/Root"]["/Metadata"].get_data().decode()
    assert "<pdfuaid:part>1</pdfuaid:part>" in metadata


def test_every_figure_has_words_of_its_own(sheet: bytes) -> None:
    # Clause 7.3.
    figures = [str(one.get("/Alt", "")) for one in elements(sheet) if one["/S"] == "/Figure"]
    assert all(figures)
    diagrams = [words for words in figures if words.startswith(("Diagram", "Exercise"))]
    assert len(diagrams) > 15
    assert len(set(diagrams)) == len(diagrams)


def test_headings_begin_at_one_and_skip_no_level(sheet: bytes) -> None:
    # Clause 7.4.2.
    levels = [int(str(one["/S"])[2:]) for one in elements(sheet) if str(one["/S"])[:2] == "/H" and len(one["/S"]) == 3]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(later <= before + 1 for before, later in pairwise(levels))


def test_all_type_is_inside_the_file(sheet: bytes) -> None:
    # Clause 7.21.4.1.
    descriptors = [
        value
        for value in (reference.get_object() for reference in _all_objects(sheet))
        if isinstance(value, dict) and value.get("/Type") == "/FontDescriptor"
    ]
    assert descriptors
    assert all({"/FontFile", "/FontFile2", "/FontFile3"} & set(one) for one in descriptors)


def _all_objects(pdf: bytes) -> Iterator[Any]:
    reader = pypdf.PdfReader(io.BytesIO(pdf))
    for generation in reader.xref.values():
        for number in generation:
            yield pypdf.generic.IndirectObject(number, 0, reader)
    for number in reader.xref_objStm:
        yield pypdf.generic.IndirectObject(number, 0, reader)


def test_a_sheet_of_nothing_conforms_too(tmp_path: Path) -> None:
    (tmp_path / "sheet.pdf").write_bytes(sheet_pdf(Study()))
    assert not pdfua.validate(str(tmp_path / "sheet.pdf")).findings
