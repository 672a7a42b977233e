"""Bursts of typing, each of which is one edit of the history."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import TypeAlias

from studyboard.model.edits import ChangeLine, ChangeNode, Edit

#: A burst ends when nothing was typed for longer than this, and after its longest in any case.
REST = timedelta(seconds=2)
LONGEST = timedelta(seconds=30)

_TYPED_FIELDS = frozenset({"spoken", "note", "note_before", "name"})

#: What is typed into: the same for two edits only where the second may replace the first in the history.
Target: TypeAlias = tuple[object, ...]


@dataclass(frozen=True, slots=True)
class Burst:
    """Typing at one place: where, since when, and when its last letter came."""

    target: Target
    began: datetime
    last: datetime

    def joined_by(self, edit: Edit, now: datetime) -> Burst | None:
        """The burst with this edit in it, None where the edit is none of it."""
        rested = now - self.last
        if typed_into(edit) != self.target or not timedelta(0) <= rested <= REST or now - self.began > LONGEST:
            return None
        return replace(self, last=now)


def begun_by(edit: Edit, now: datetime) -> Burst | None:
    """The burst that this edit may be the first of, None where it is no typing."""
    target = typed_into(edit)
    return None if target is None else Burst(target, now, now)


def typed_into(edit: Edit) -> Target | None:
    """What an edit types into; None where it is no typing."""
    if isinstance(edit, ChangeNode) and edit.field in _TYPED_FIELDS:
        return edit.node, edit.field, edit.label
    if isinstance(edit, ChangeLine):
        return edit.part, edit.label
    return None
