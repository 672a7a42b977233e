"""The labels of edits, which the study keeps in English, in the language of the desk."""

from __future__ import annotations

import re

from studyboard.board.marking import LABELS_OF_MARKS
from studyboard.model.marks import MarkKind
from studyboard.reading.offers import LABEL as LABEL_OF_OFFERS
from studyboard.translation import tr, tr_later

#: What the kinds of marks are called: they stand in labels and on the buttons that draw them.
KIND_NAMES: dict[MarkKind, str] = {
    MarkKind.THREAT: tr_later("threat"),
    MarkKind.TARGET: tr_later("target"),
    MarkKind.ROUTE: tr_later("route"),
    MarkKind.KEY_SQUARE: tr_later("key square"),
    MarkKind.GUARD: tr_later("guard"),
}
_WORDS = {"kind": "|".join(MarkKind), "move": ".+"}


def _pattern(label: str) -> re.Pattern[str]:
    """Finds a label that has been filled in, and with what."""
    parts = re.split(r"\{(\w+)\}", label)
    made = [f"(?P<{part}>{_WORDS[part]})" if place % 2 else re.escape(part) for place, part in enumerate(parts)]
    return re.compile("".join(made))


_FILLED_IN = tuple((label, _pattern(label)) for label in (*LABELS_OF_MARKS, LABEL_OF_OFFERS))


def kind_name(kind: MarkKind) -> str:
    """``"key square"``."""
    return tr(KIND_NAMES[kind])


def label_words(label: str) -> str:
    """An edit's label as the user reads it; one that is not known, from another version perhaps, as it is stored."""
    for text, pattern in _FILLED_IN:
        found = pattern.fullmatch(label)
        if found is not None:
            words = found.groupdict()
            return tr(text, **{name: tr(word) if name == "kind" else word for name, word in words.items()})
    return tr(label)
