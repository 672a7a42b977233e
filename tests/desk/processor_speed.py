"""How fast this processor is just now, so that a limit of time means the same work on every machine."""

from __future__ import annotations

import json
import time
from dataclasses import dataclass, replace

#: What the quickest of 250 rounds took of the processor on a small cloud machine that others worked on too (s).
_ROUND = 0.0170


@dataclass(frozen=True, slots=True)
class _Value:
    number: int
    text: str
    near: tuple[int, ...] = ()


def slowness(rounds: int = 7) -> float:
    """How many times longer work takes here and now than on the machine that the limits were made for.

    It makes and compares small values, sorts them and writes them out, as the desk does; the middle of some rounds
    counts, in processor time.
    """
    taken = []
    for _ in range(rounds):
        start = time.thread_time()
        _work()
        taken.append(time.thread_time() - start)
    return sorted(taken)[rounds // 2] / _ROUND


def work_for(seconds: float) -> None:
    """Work that takes that long on the machine that the limits were made for."""
    for _ in range(round(seconds / _ROUND)):
        _work()


def _work() -> None:
    values = [_Value(number * 7919 % 1009, f"move {number}") for number in range(6000)]
    moved = [replace(value, near=(value.number, number)) for number, value in enumerate(values)]
    known = {value.text: value for value in sorted(moved, key=lambda value: value.number)}
    json.dumps([(value.number, value.text, value.near) for value in known.values()])
    assert sum(known[value.text] == value for value in values) == 0
