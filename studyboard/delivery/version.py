"""What a delivery was made of, as digests: the same ones mean that the same would come out again."""

from __future__ import annotations

import json
from dataclasses import fields
from hashlib import sha256
from pathlib import Path
from typing import Any, Final

from studyboard.delivery.errors import DeliveryError
from studyboard.delivery.making import Talk
from studyboard.delivery.product import Ingredient, plain_options
from studyboard.model.codec import to_plain
from studyboard.model.script import Part
from studyboard.model.study import Study
from studyboard.timing.timeline import Stretch, Timeline
from studyboard.translation import tr

#: Fields of a node that only say how long it should take: what they come to is in the timeline.
_TIMING_ONLY: Final = ("intended", "locked")
#: Read at a time (bytes).
_PIECE: Final = 1 << 20


def ingredient_digests(talk: Talk) -> dict[Ingredient, str]:
    """A digest of each ingredient. O(size of the study and of its sound)."""
    return {
        Ingredient.SCRIPT: _digest(_script(talk.study)),
        Ingredient.TIMES: _digest(_times(talk.timeline)),
        Ingredient.QUERIES: _digest(sorted([str(one.beat), one.kind, one.quote] for one in talk.study.left)),
        Ingredient.SOUND: "" if talk.narration is None else talk.narration.digest(),
    }


def study_version(digests: dict[Ingredient, str]) -> str:
    """The version of a study: equal where everything that is published of it is."""
    return _digest([digests[Ingredient.SCRIPT], digests[Ingredient.TIMES], digests[Ingredient.SOUND]])


def options_digest(options: Any) -> str:
    """A digest of the options of a product, and of the user's own files that they name.

    Raises DeliveryError where one of these cannot be read.
    """
    plain: dict[str, Any] = plain_options(options)
    for field in fields(options):
        own = getattr(options, field.name)
        if isinstance(own, Path):
            try:
                plain[field.name] = file_digest(own)
            except OSError as reason:
                raise DeliveryError(
                    tr("{path} cannot be read: {reason}.", path=own, reason=reason.strerror or reason)
                ) from reason
    return _digest(plain)


def file_digest(path: Path) -> str:
    """SHA-256 of a file. Raises OSError."""
    found = sha256()
    with path.open("rb") as file:
        while piece := file.read(_PIECE):
            found.update(piece)
    return found.hexdigest()


def _script(study: Study) -> Any:
    nodes = []
    for number in sorted(study.nodes):
        plain = to_plain(study.nodes[number])
        nodes.append({name: value for name, value in plain.items() if name not in _TIMING_ONLY})
    lines = [(part.value, to_plain(study.lines[part].spoken)) for part in Part if part in study.lines]
    return [list(study.headers.items()), nodes, lines, study.language]


def _times(timeline: Timeline) -> Any:
    return [timeline.source.value, timeline.opening_node, [_stretch(one) for one in timeline.stretches]]


def _stretch(stretch: Stretch) -> Any:
    times = (stretch.start, stretch.speech_end, stretch.end, stretch.think)
    return [
        str(stretch.key),
        [_microseconds(one) for one in times],
        stretch.node,
        stretch.depth,
        [(_microseconds(word.at), _microseconds(word.until), word.word, word.text) for word in stretch.words],
        [(_microseconds(event.at), event.what.value, event.node, event.mark) for event in stretch.events],
    ]


def _microseconds(seconds: float) -> int:
    return round(seconds * 1_000_000)


def _digest(plain: Any) -> str:
    text = json.dumps(plain, ensure_ascii=True, separators=(",", ":"))
    return sha256(text.encode()).hexdigest()
