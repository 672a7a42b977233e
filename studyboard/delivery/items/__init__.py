"""The table of products. A new one is a module here with its options and what makes it, and a line in this table."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from studyboard.delivery.items import captions, chapters, game, page, sheet, still, text, timeline, video
from studyboard.delivery.product import Item, Product

PRODUCTS: Final[Mapping[Item, Product]] = MappingProxyType(
    {
        module.PRODUCT.item: module.PRODUCT
        for module in (
            sheet,
            captions,
            game,
            still,
            chapters,
            text,
            video,
            page,
            timeline,
        )
    }
)
