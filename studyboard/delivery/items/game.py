"""The annotated game among the products."""

from __future__ import annotations

from studyboard.delivery.game import game_pgn
from studyboard.delivery.making import Making
from studyboard.delivery.product import Ingredient, Item, NoOptions, Product
from studyboard.notation.pgn_writer import pgn_remarks
from studyboard.translation import tr_later


def _make(making: Making, options: NoOptions) -> None:
    for sentence in pgn_remarks(making.talk.study):
        making.remark(sentence)
    making.write(".pgn", game_pgn(making.talk.study, making.talk.positions))


PRODUCT = Product(
    Item.GAME,
    tr_later("Annotated game"),
    tr_later("PGN with the spoken lines as comments"),
    "the annotated game (PGN)",
    NoOptions,
    _make,
    frozenset({Ingredient.SCRIPT}),
)
