"""The study sheet among the products."""

from __future__ import annotations

from dataclasses import dataclass

from studyboard.delivery.making import Making
from studyboard.delivery.product import Choice, Ingredient, Item, Product
from studyboard.translation import tr_later


@dataclass(frozen=True, slots=True)
class SheetOptions:
    """paper: "a4" or "letter"."""

    paper: str = "a4"


def _make(making: Making, options: SheetOptions) -> None:
    # Typst is loaded where a sheet is set, and nowhere else.
    from studyboard.delivery.sheet import sheet_pdf

    making.write(".pdf", sheet_pdf(making.talk.study, making.talk.positions, paper=options.paper))


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
            (("a4", tr_later("A4 paper")), ("letter", tr_later("Letter paper"))),
        ),
    ),
)
