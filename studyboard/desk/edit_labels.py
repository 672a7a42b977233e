"""The labels of edits, which the study keeps in English, in the language of the desk."""

from __future__ import annotations

import re

from studyboard.board.marking import LABELS_OF_MARKS
from studyboard.model.marks import MarkKind
from studyboard.translation import tr, tr_later

#: What the kinds of marks are called: they stand in labels and on the buttons that draw them.
KIND_NAMES: dict[MarkKind, str] = {
    MarkKind.THREAT: tr_later("threat"),
    MarkKind.TARGET: tr_later("target"),
    MarkKind.ROUTE: tr_later("route"),
    MarkKind.KEY_SQUARE: tr_later("key square"),
    MarkKind.GUARD: tr_later("guard"),
}
_KINDS = "|".join(MarkKind)
_PATTERNS = tuple(
    (label, re.compile(re.escape(label).replace(re.escape("{kind}"), f"(?P<kind>{_KINDS})")))
    for label in LABELS_OF_MARKS
)


def kind_name(kind: MarkKind) -> str:
    """``"key square"``."""
    return tr(KIND_NAMES[kind])


def label_words(label: str) -> str:
    """An edit's label as the user reads it; one that is not known, from another version perhaps, as it is stored."""
    for pattern, made in _PATTERNS:
        found = made.fullmatch(label)
        if found is not None:
            return tr(pattern, kind=kind_name(MarkKind(found["kind"])))
    return tr(label)
