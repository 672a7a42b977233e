"""Values of the model as plain data (dicts, lists, strings, numbers) for a file, and back."""

from __future__ import annotations

from dataclasses import fields, is_dataclass
from enum import StrEnum
from functools import lru_cache
from typing import Any

import chess

from studyboard.model import edits, left_query, marks, node, rehearsals, script, take_edits, takes

_TAG = "is"
_VALUES: dict[str, type[Any]] = {
    value.__name__: value
    for module in (edits, left_query, marks, node, rehearsals, script, take_edits, takes)
    for value in vars(module).values()
    if isinstance(value, type) and (is_dataclass(value) or issubclass(value, StrEnum))
}
_FIELDS = {kind: tuple(field.name for field in fields(kind)) for kind in _VALUES.values() if is_dataclass(kind)}
#: What most nodes have nothing of; a whole branch is a good deal shorter without. What is absent is read as this.
_UNWRITTEN: dict[str, Any] = {
    field.name: field.default for field in fields(node.Node) if field.name not in ("id", "parent", "move")
}
#: What JSON has itself; most of a large edit is of these, and needs no call.
_JSON = frozenset((type(None), bool, int, float, str))


class UnknownValueError(ValueError):
    """Plain data that does not describe a value of the model."""


def to_plain(value: Any) -> Any:
    """Plain data for a value of the model: edits, nodes, marks, lines, takes, moves and tuples of them."""
    kind = type(value)
    if kind in _JSON:
        return value
    if kind in _FIELDS:
        plain: dict[str, Any] = {_TAG: kind.__name__}
        for name in _FIELDS[kind]:
            item = getattr(value, name)
            if kind is node.Node and name in _UNWRITTEN and _same(item, _UNWRITTEN[name]):
                continue
            plain[name] = item if type(item) in _JSON else to_plain(item)
        return plain
    if isinstance(value, StrEnum):
        return {_TAG: kind.__name__, "value": value.value}
    if isinstance(value, (bool, int, float, str)):
        return value
    if isinstance(value, chess.Move):
        return {_TAG: "Move", "uci": value.uci()}
    if isinstance(value, (tuple, list)):
        return [item if type(item) in _JSON else to_plain(item) for item in value]
    raise UnknownValueError(f"A {kind.__name__} is no value of the model.")


def from_plain(plain: Any) -> Any:
    """The value that *plain* describes; lists become tuples. Raises UnknownValueError where it describes none."""
    if isinstance(plain, list):
        return tuple([item if type(item) in _JSON else from_plain(item) for item in plain])
    if not isinstance(plain, dict):
        return plain
    name = plain.get(_TAG)
    try:
        if name == "Move":
            return _move(plain["uci"])
        kind = _VALUES[str(name)]
        if kind not in _FIELDS:
            return kind(plain["value"])
        values = {key: item if type(item) in _JSON else from_plain(item) for key, item in plain.items() if key != _TAG}
        return kind(**values)
    except (KeyError, TypeError, ValueError) as reason:
        raise UnknownValueError(f"This describes no value of the model: {name!r} ({reason}).") from reason


def _same(value: Any, other: Any) -> bool:
    return value is other or (type(value) is type(other) and bool(value == other))


@lru_cache(maxsize=8192)
def _move(uci: str) -> chess.Move:
    return chess.Move.from_uci(uci)
