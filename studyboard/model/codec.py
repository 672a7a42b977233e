"""Values of the model as plain data (dicts, lists, strings, numbers) for a file, and back."""

from __future__ import annotations

from dataclasses import fields, is_dataclass
from enum import StrEnum
from typing import Any

import chess

from studyboard.model import edits, left_query, marks, node, script, takes

_TAG = "is"
_VALUES: dict[str, type[Any]] = {
    value.__name__: value
    for module in (edits, left_query, marks, node, script, takes)
    for value in vars(module).values()
    if isinstance(value, type) and (is_dataclass(value) or issubclass(value, StrEnum))
}


class UnknownValueError(ValueError):
    """Plain data that does not describe a value of the model."""


def to_plain(value: Any) -> Any:
    """Plain data for a value of the model: edits, nodes, marks, lines, takes, moves and tuples of them."""
    if value is None or isinstance(value, (bool, int, float)):
        return value
    if isinstance(value, StrEnum):
        return {_TAG: type(value).__name__, "value": value.value}
    if isinstance(value, str):
        return value
    if isinstance(value, chess.Move):
        return {_TAG: "Move", "uci": value.uci()}
    if isinstance(value, (tuple, list)):
        return [to_plain(item) for item in value]
    if is_dataclass(value) and type(value).__name__ in _VALUES:
        plain: dict[str, Any] = {_TAG: type(value).__name__}
        for field in fields(value):
            plain[field.name] = to_plain(getattr(value, field.name))
        return plain
    raise UnknownValueError(f"A {type(value).__name__} is no value of the model.")


def from_plain(plain: Any) -> Any:
    """The value that *plain* describes; lists become tuples. Raises UnknownValueError where it describes none."""
    if isinstance(plain, list):
        return tuple(from_plain(item) for item in plain)
    if not isinstance(plain, dict):
        return plain
    name = plain.get(_TAG)
    try:
        if name == "Move":
            return chess.Move.from_uci(plain["uci"])
        kind = _VALUES[str(name)]
        if issubclass(kind, StrEnum):
            return kind(plain["value"])
        return kind(**{key: from_plain(item) for key, item in plain.items() if key != _TAG})
    except (KeyError, TypeError, ValueError) as reason:
        raise UnknownValueError(f"This describes no value of the model: {name!r} ({reason}).") from reason
