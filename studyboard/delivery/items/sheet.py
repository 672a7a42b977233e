"""The study sheet among the products."""

from __future__ import annotations

from studyboard.delivery.making import Making
from studyboard.delivery.product import Choice, Ingredient, Item, Product, Tick
from studyboard.delivery.sheet_options import WRITING_LINES, Paper, SheetOptions, SheetText
from studyboard.translation import tr, tr_later


def _make(making: Making, options: SheetOptions) -> None:
    # Typst is loaded where a sheet is set, and nowhere else.
    from studyboard.delivery.sheet import ACCESSIBLE, sheet_pdf

    pdf = sheet_pdf(making.talk.study, making.talk.positions, options)
    if ACCESSIBLE not in pdf:
        making.remark(
            tr("No font of this computer holds some of the letters: they are boxes on the sheet, and it is not PDF/UA.")
        )
    making.write(".pdf", pdf)


PRODUCT = Product(
    Item.SHEET,
    tr_later("Study sheet"),
    tr_later("PDF to print: the game, its side-lines, notes and diagrams"),
    "the study sheet (PDF)",
    SheetOptions,
    _make,
    frozenset({Ingredient.SCRIPT}),
    (
        Choice(
            "paper",
            "--paper",
            tr_later("Paper"),
            "paper of the sheet",
            ((Paper.A4, tr_later("A4 paper")), (Paper.LETTER, tr_later("Letter paper"))),
        ),
        Choice(
            "text",
            "--sheet-text",
            tr_later("Text"),
            "what is printed of the script",
            ((SheetText.TALK, tr_later("Notes and what is said")), (SheetText.NOTES, tr_later("Notes alone"))),
        ),
        Choice(
            "writing_lines",
            "--writing-lines",
            tr_later("Lines to write on"),
            "ruled lines below each exercise",
            tuple((lines, str(lines)) for lines in WRITING_LINES),
        ),
        Tick(
            "large_print",
            "--large-print",
            tr_later("Large print: 18 points, one column"),
            "large print: 18 points, one column",
        ),
        Tick(
            "exercises",
            "--told-through",
            tr_later("Told right through, without exercises"),
            "moves that a think pause asks for are told where they come; else on the last page, as solutions",
            ticked=False,
        ),
        Tick(
            "coloured",
            "--marks-in-colour",
            tr_later("Marks in their colours, not in greys"),
            "marks in their colours, not in greys",
        ),
        Tick(
            "flipped",
            "--from-black",
            tr_later("Seen from Black's side"),
            "the boards of sheet, still, video and page seen from Black's side",
        ),
    ),
)
