"""What can be published: how it is called, what it is made of, how it can be chosen, and who makes it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, fields
from enum import Enum, StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeAlias

if TYPE_CHECKING:
    from studyboard.delivery.making import Making


class Item(StrEnum):
    """The products by the name that the command line and `delivery.json` have for them, in the order of making."""

    SHEET = "sheet"
    CAPTIONS = "captions"
    GAME = "game"
    STILL = "still"
    CHAPTERS = "chapters"
    TEXT = "text"
    VIDEO = "video"
    PAGE = "page"
    TIMELINE = "timeline"


class Ingredient(StrEnum):
    """What a product is made of besides its options; it is made anew only where one of these has changed.

    SCRIPT: headers, moves and their order of telling, spoken lines, notes, marks
    TIMES: the timeline
    SOUND: the narration
    QUERIES: which queries of the read-through are left
    """

    SCRIPT = "script"
    TIMES = "times"
    SOUND = "sound"
    QUERIES = "queries"


@dataclass(frozen=True, slots=True)
class Choice:
    """One of several.

    field: of the options; flag: on the command line; label: in the delivery window; help: on the command line
    values: what there is and how the delivery window calls it; the command line calls it as `str` does
    """

    field: str
    flag: str
    label: str
    help: str
    values: tuple[tuple[Any, str], ...]


@dataclass(frozen=True, slots=True)
class Tick:
    """Yes or no.

    ticked: the value that the field has where it is ticked, or its flag is given
    """

    field: str
    flag: str
    label: str
    help: str
    ticked: bool = True


@dataclass(frozen=True, slots=True)
class OwnFile:
    """A file of the user's, or None.

    pattern: which files are shown to choose from, such as "*.jinja"
    """

    field: str
    flag: str
    label: str
    help: str
    pattern: str


@dataclass(frozen=True, slots=True)
class Word:
    """Any text in one line; example: one for the command line's help, in capitals."""

    field: str
    flag: str
    label: str
    help: str
    example: str


#: What can be chosen of a product: command line and delivery window are both made from these.
Control: TypeAlias = Choice | Tick | OwnFile | Word


@dataclass(frozen=True, slots=True)
class Product:
    """One product.

    title, what: its name and one line about it in the delivery window, in words for `tr`
    help: the same for the command line
    options: a frozen dataclass whose values without arguments are the usual ones
    controls: what of the options can be chosen
    made_of: see Ingredient
    make: makes it; raises DeliveryError, and tells `Making.remark` why there is none
    refers_to: products whose files this one names, where they are delivered too; they stand before it in the table
    quick: False for what takes minutes or needs a library of an extra, and is made only where it is named
    """

    item: Item
    title: str
    what: str
    help: str
    options: Callable[[], Any]
    make: Callable[[Making, Any], None]
    made_of: frozenset[Ingredient]
    controls: tuple[Control, ...] = ()
    refers_to: frozenset[Item] = frozenset()
    quick: bool = True


@dataclass(frozen=True, slots=True)
class NoOptions:
    """The options of what has none."""


def plain_options(options: Any) -> dict[str, str | int | float | bool | None]:
    """The options by their names, in values that JSON knows."""
    found: dict[str, str | int | float | bool | None] = {}
    for field in fields(options):
        value = getattr(options, field.name)
        if isinstance(value, Enum):
            value = value.value
        found[field.name] = str(value) if isinstance(value, Path) else value
    return found
