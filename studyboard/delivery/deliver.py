"""Publishing: everything that was asked for is made first, then put into its place at once."""

from __future__ import annotations

import json
from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass, fields, replace
from datetime import UTC, datetime
from hashlib import sha256
from pathlib import Path
from types import MappingProxyType
from typing import Any, Final, TypeAlias

from studyboard import __version__
from studyboard.delivery.items import PRODUCTS
from studyboard.delivery.making import Beside, Making, Talk
from studyboard.delivery.placing import explained, free_name, put_in_place, workshop
from studyboard.delivery.product import Ingredient, Item, plain_options
from studyboard.delivery.record import NAME, FileRecord, ItemRecord, Record, joined, read_record, record_text
from studyboard.delivery.version import file_digest, ingredient_digests, options_digest, study_version
from studyboard.delivery.video.narration import Narration
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.timing.plan import plan
from studyboard.timing.timeline import Timeline
from studyboard.translation import tr


@dataclass(frozen=True, slots=True)
class Delivered:
    """One file that was published. kept: it was there already, and as it would be made again."""

    item: Item
    path: Path
    kept: bool = False


#: Told which item is being made, which share of it is done, and which of the whole delivery (0.0 to 1.0).
Progress: TypeAlias = Callable[[Item, float, float], None]

#: What is made where nothing is named: all that is quick.
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
    again: bool = False,
    progress: Progress | None = None,
    cancelled: Callable[[], bool] | None = None,
    remark: Callable[[str], None] | None = None,
) -> list[Delivered]:
    """Publish *items* into the folder *to*, which is made where it does not exist, and say so in its `delivery.json`.

    options: how each is to be, of the kind that its product has; the usual ones where nothing is said
    timeline: where the times come from; the plan where it is None
    narration: the sound, from second 0 of the timeline; None for a silent talk
    again: everything is made; else an item is kept where it lies there as it would be made again
    progress, cancelled: called from time to time from the thread that delivers
    remark: told, in sentences, what could not be made (no captions without words) and what was put otherwise

    Nothing is put into the folder before everything is made, so the files there always agree with each other. What
    lies there is replaced; a file that the user has changed since is kept under another name. Raises DeliveryError, in
    a sentence, where that is not possible, and DeliveryCancelledError where *cancelled* said so; both leave the folder
    as it was.
    """
    talk = Talk(study, timeline or plan(study), Positions(study), narration)
    before = read_record(to) or Record()
    run = _Run(talk, to, before, dict(options), again)
    wanted = [item for item in PRODUCTS if item in items]
    share_of = _shares(wanted, progress)
    now: dict[str, ItemRecord] = {}
    kept: set[Item] = set()
    made: list[str] = []
    with workshop(to) as shop:
        for item in wanted:
            making = Making(talk, shop, share_of(item), cancelled or (lambda: False), run.beside(item, now), to)
            making.ask(0.0)
            inputs = run.inputs(item, now)
            found = run.kept(item, inputs)
            if found is None:
                with explained(to):
                    PRODUCTS[item].make(making, run.options_of(item))
                    found = _recorded(inputs, making, shop)
                made.extend(file.name for file in making.files)
            else:
                kept.add(item)
            now[item] = found
            making.ask(1.0)
        record = Record(talk.title, run.version, talk.timeline.seconds, talk.timeline.source.value, now)
        record, gone = joined(before, record, to)
        remarks = [sentence for item in now.values() for sentence in item.remarks]
        remarks += run.about_the_rest(record, now, gone)
        aside = run.changed_by_hand({file.name: file.sha256 for item in now.values() for file in item.files}, made)
        remarks += [_put_aside(name, other) for name, other in aside.items()]
        if made or record != before:
            with explained(to):
                (shop / NAME).write_text(record_text(record), encoding="utf-8")
            # Last, so that it never says more than what is there.
            made.append(NAME)
        put_in_place(shop, to, made, aside=aside)
    if remark is not None:
        # Video, page and edit timeline may all have the same to say of the voice.
        for sentence in dict.fromkeys(remarks):
            remark(sentence)
    return [Delivered(item, to / file.name, item in kept) for item in wanted for file in now[item].files]


class _Run:
    """What one delivery starts from: ingredients, options, and what lies in the folder."""

    def __init__(self, talk: Talk, to: Path, before: Record, options: dict[Item, Any], again: bool) -> None:
        self._to, self._before, self._again = to, before, again
        self._options = options
        self._digests = ingredient_digests(talk)
        self.version = study_version(self._digests)

    def options_of(self, item: Item) -> Any:
        """How a product is to be."""
        return self._options.get(item) or PRODUCTS[item].options()

    def beside(self, item: Item, now: Mapping[str, ItemRecord]) -> dict[Item, Beside]:
        """The products to which one can refer: those of this delivery, and those that lie there from before."""
        found: dict[Item, Beside] = {}
        for other in PRODUCTS[item].refers_to:
            record = now.get(other) or self._before.items.get(other)
            if record is not None and record.files:
                names = tuple(one.name for one in record.files)
                if other in now or all((self._to / name).exists() for name in names):
                    found[other] = Beside(
                        names, record.options, record.made_of.get(Ingredient.TIMES) == self._digests[Ingredient.TIMES]
                    )
        return found

    def inputs(self, item: Item, now: Mapping[str, ItemRecord]) -> ItemRecord:
        """The record of an item that is not made yet."""
        options = self.options_of(item)
        return ItemRecord(
            item.value,
            self.version,
            self._made_of(item, now),
            _told_options(options),
            options_digest(options),
            f"studyboard {__version__}",
            datetime.now(UTC).isoformat(timespec="seconds"),
        )

    def kept(self, item: Item, inputs: ItemRecord) -> ItemRecord | None:
        """The record of an item that need not be made again; None where it has to be."""
        last = self._before.items.get(item)
        if self._again or last is None or not last.same_inputs(inputs):
            return None
        return last if all(file.lies_in(self._to) for file in last.files) else None

    def changed_by_hand(self, new: Mapping[str, str], names: Collection[str]) -> dict[str, str]:
        """What would be replaced although the user has changed it since, and the name under which it is kept.

        new: digests of the files that take their place, by their names
        """
        found: dict[str, str] = {}
        for name in names:
            last = self._before.file(name)
            path = self._to / name
            # The new content itself is there where a process was killed before it could say so.
            if last is not None and path.is_file() and file_digest(path) not in (last.sha256, new[name]):
                found[name] = free_name(self._to, name)
        if read_record(self._to) is None and (self._to / NAME).is_file():
            found[NAME] = free_name(self._to, NAME)
        return found

    def about_the_rest(self, record: Record, now: Mapping[str, ItemRecord], gone: Collection[str]) -> list[str]:
        """What is to be told of the files that lie there and were not asked for."""
        told = []
        stale = [
            file.name
            for item in PRODUCTS
            if item in record.items and item not in now
            for file in record.items[item].files
            if record.items[item].made_of != self._made_of(item, now) and (self._to / file.name).exists()
        ]
        if stale:
            told.append(
                tr("Made of an earlier version of the study, and not made again: {names}.", names=_listed(stale))
            )
        if gone:
            told.append(tr("No longer made, and left where they are: {names}.", names=_listed(gone)))
        return told

    def _made_of(self, item: Item, now: Mapping[str, ItemRecord]) -> dict[str, str]:
        product = PRODUCTS[item]
        found = {one.value: self._digests[one] for one in sorted(product.made_of)}
        if product.refers_to:
            beside = {
                other.value: [one.names, dict(one.options), one.same_times]
                for other, one in self.beside(item, now).items()
            }
            found["beside"] = sha256(json.dumps(beside, sort_keys=True).encode()).hexdigest()
        return found


def _told_options(options: Any) -> dict[str, Any]:
    """The options as the record tells them: of the user's own files the names, for folders are nobody's business."""
    own = {field.name: getattr(options, field.name) for field in fields(options)}
    names = {name: path.name for name, path in own.items() if isinstance(path, Path)}
    return {**plain_options(options), **names}


def _recorded(inputs: ItemRecord, making: Making, shop: Path) -> ItemRecord:
    """The record of an item that has just been made."""
    files = tuple(
        FileRecord(file.name, (shop / file.name).stat().st_size, file_digest(shop / file.name), file.seconds)
        for file in making.files
    )
    return replace(inputs, remarks=tuple(making.remarks), files=files)


def _put_aside(name: str, other: str) -> str:
    return tr(
        "“{name}” had been changed since it was delivered: what you changed is kept as “{other}”.",
        name=name,
        other=other,
    )


def _listed(names: Collection[str]) -> str:
    return ", ".join(names)


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
