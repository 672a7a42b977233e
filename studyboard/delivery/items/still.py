"""The still among the products."""

from __future__ import annotations

from studyboard.delivery.making import Making
from studyboard.delivery.product import Ingredient, Item, NoOptions, Product
from studyboard.delivery.still import still_png
from studyboard.translation import tr_later


def _make(making: Making, options: NoOptions) -> None:
    making.write(".png", still_png(making.talk.study, making.talk.positions))


PRODUCT = Product(
    Item.STILL,
    tr_later("Still"),
    tr_later("PNG of the first think pause, else of the final position"),
    "a picture of the position that stands for the study (PNG)",
    NoOptions,
    _make,
    frozenset({Ingredient.SCRIPT}),
)
