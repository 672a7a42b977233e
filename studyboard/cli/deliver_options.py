"""The options of the verb deliver, made from the table of products."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import Any

from studyboard.delivery.items import PRODUCTS
from studyboard.delivery.product import Choice, Control, Item, OwnFile, Tick, Word


def add_products(parser: argparse.ArgumentParser) -> None:
    """A switch for each product, and options for what can be chosen of it."""
    flags: set[str] = set()
    for item, product in PRODUCTS.items():
        group = parser.add_argument_group(item.value)
        group.add_argument(f"--{item}", action="append_const", dest="items", const=item, help=product.help)
        usual = product.options()
        for control in product.controls:
            # One flag may stand for the same choice of several products.
            if control.flag not in flags:
                flags.add(control.flag)
                _add(group, control, getattr(usual, control.field))


def chosen_options(arguments: argparse.Namespace) -> dict[Item, Any]:
    """The options of every product. Raises DeliveryError for a value that one refuses."""
    return {
        item: product.options(**{control.field: _value(arguments, control) for control in product.controls})
        for item, product in PRODUCTS.items()
    }


def _add(group: argparse._ArgumentGroup, control: Control, usual: Any) -> None:
    name = _destination(control)
    match control:
        case Choice():
            values = {str(value): value for value, _ in control.values}
            group.add_argument(
                control.flag,
                dest=name,
                choices=tuple(values),
                default=str(usual),
                help=f"{control.help}; {usual} if nothing is said",
            )
        case Tick():
            group.add_argument(control.flag, dest=name, action="store_true", help=control.help)
        case OwnFile():
            group.add_argument(control.flag, dest=name, type=Path, metavar="FILE", help=control.help)
        case Word():
            group.add_argument(control.flag, dest=name, default=usual, metavar=control.example, help=control.help)


def _value(arguments: argparse.Namespace, control: Control) -> Any:
    said = getattr(arguments, _destination(control))
    match control:
        case Choice():
            return next(value for value, _ in control.values if str(value) == said)
        case Tick():
            return said == control.ticked
        case _:
            return said


def _destination(control: Control) -> str:
    return f"of_{control.flag.strip('-').replace('-', '_')}"
