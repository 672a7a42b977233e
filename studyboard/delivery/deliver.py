"""Publishing: everything that was asked for is made first, then put into its place at once."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType
from typing import Any, Final, TypeAlias

from studyboard.delivery.items import PRODUCTS
from studyboard.delivery.making import Making, Talk
from studyboard.delivery.placing import explained, put_in_place, workshop
from studyboard.delivery.product import Item
from studyboard.delivery.video.narration import Narration
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.timing.plan import plan
from studyboard.timing.timeline import Timeline


@dataclass(frozen=True, slots=True)
class Delivered:
    """One file that was published."""

    item: Item
    path: Path


#: Told which item is being made, which share of it is done, and which of the whole delivery (0.0 to 1.0).
Progress: TypeAlias = Callable[[Item, float, float], None]

#: What is made where nothing is named: all but what takes minutes.
QUICK: Final = frozenset(item for item, product in PRODUCTS.items() if product.quick)

#: How much longer what takes minutes takes than anything else, so that a bar for all of it runs evenly.
_SLOW: Final = 30.0


def deliver(
    study: Study,
    to: Path,
    items: Collection[Item] = QUICK,
    *,
    options: Mapping[Item, Any] = MappingProxyType({}),
    timeline: Timeline | None = None,
    narration: Narration | None = None,
    progress: Progress | None = None,
    cancelled: Callable[[], bool] | None = None,
    remark: Callable[[str], None] | None = None,
) -> list[Delivered]:
    """Publish *items* into the folder *to*, which is made where it does not exist; files there are replaced.

    options: how each is to be, of the kind that its product has; the usual ones where nothing is said
    timeline: where the times come from; the plan where it is None
    narration: the sound, from second 0 of the timeline; None for a silent talk
    progress, cancelled: called from time to time from the thread that delivers
    remark: told, in sentences, what could not be made (no captions without words) and what was put otherwise

    Nothing is put into the folder before everything is made, so the files there always agree with each other.
    Raises DeliveryError, in a sentence, where that is not possible, and DeliveryCancelledError where *cancelled*
    said so; both leave the folder as it was.
    """
    wanted = [item for item in PRODUCTS if item in items]
    talk = Talk(study, timeline or plan(study), Positions(study), narration)
    made: list[tuple[Item, str]] = []
    remarks: list[str] = []
    share_of = _shares(wanted, progress)
    with workshop(to) as shop:
        for item in wanted:
            product = PRODUCTS[item]
            making = Making(talk, shop, share_of(item), cancelled or (lambda: False))
            making.ask(0.0)
            with explained(to):
                product.make(making, options.get(item) or product.options())
            making.ask(1.0)
            made.extend((item, file.name) for file in making.files)
            remarks.extend(making.remarks)
        put_in_place(shop, to, [name for _, name in made])
    if remark is not None:
        for sentence in remarks:
            remark(sentence)
    return [Delivered(item, to / name) for item, name in made]


def _shares(wanted: list[Item], progress: Progress | None) -> Callable[[Item], Callable[[float], None]]:
    """For each item, what tells its share together with that of the whole delivery."""
    weights = {item: 1.0 if PRODUCTS[item].quick else _SLOW for item in wanted}
    whole = sum(weights.values())

    def of(item: Item) -> Callable[[float], None]:
        before = sum(weights[earlier] for earlier in wanted[: wanted.index(item)])

        def tell(done: float) -> None:
            if progress is not None:
                progress(item, done, min(1.0, (before + weights[item] * done) / whole))

        return tell

    return of
