"""`delivery.json`: what lies in a folder, of which version of the study it was made, and whether it still is that."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass, field, replace
from pathlib import Path
from typing import Any, Final

from studyboard.delivery.product import Item
from studyboard.delivery.version import file_digest

NAME: Final = "delivery.json"
_FORMAT: Final = "studyboard delivery"
_VERSION: Final = 1


@dataclass(frozen=True, slots=True)
class FileRecord:
    """One file. bytes: its size; sha256: of its content; seconds: its length where it has one."""

    name: str
    bytes: int
    sha256: str
    seconds: float | None = None

    def lies_in(self, folder: Path) -> bool:
        """Whether it lies there as it was made. O(its size)."""
        path = folder / self.name
        try:
            return path.stat().st_size == self.bytes and file_digest(path) == self.sha256
        except OSError:
            return False


@dataclass(frozen=True, slots=True)
class ItemRecord:
    """One product as it was made.

    study: the version of the study that it was made of
    made_of: the digest of each of its ingredients
    options: as they were; options_digest: of these and of the user's own files among them
    program: by what it was made
    made_at: when (UTC, ISO 8601)
    remarks: what was told about it
    files: in the order of making
    """

    item: str
    study: str
    made_of: Mapping[str, str]
    options: Mapping[str, Any]
    options_digest: str
    program: str
    made_at: str
    remarks: tuple[str, ...] = ()
    files: tuple[FileRecord, ...] = ()

    def same_inputs(self, other: ItemRecord) -> bool:
        """Whether the same would come out again."""
        return (self.item, self.made_of, self.options_digest, self.program) == (
            other.item,
            other.made_of,
            other.options_digest,
            other.program,
        )


@dataclass(frozen=True, slots=True)
class Record:
    """What lies in a folder.

    title: of the study; study: its version; seconds: the length of the talk (s); source: planned or recorded
    items: by their names, in the order of making
    left: files of earlier deliveries which are not made any more and still lie there
    """

    title: str = ""
    study: str = ""
    seconds: float = 0.0
    source: str = ""
    items: Mapping[str, ItemRecord] = field(default_factory=dict)
    left: tuple[FileRecord, ...] = ()

    def file(self, name: str) -> FileRecord | None:
        """What is known of the file of this name."""
        for item in self.items.values():
            for one in item.files:
                if one.name == name:
                    return one
        return None


def read_record(folder: Path) -> Record | None:
    """What `delivery.json` in this folder says; None where there is none, or one that this program did not write."""
    try:
        plain = json.loads((folder / NAME).read_bytes())
        if (plain["format"], plain["version"]) != (_FORMAT, _VERSION):
            return None
        study = plain["study"]
        items = [_item(one) for one in plain["items"]]
        left = tuple(FileRecord(**one) for one in plain["left"])
        return Record(
            study["title"], study["version"], study["seconds"], study["source"], {one.item: one for one in items}, left
        )
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return None


def record_text(record: Record) -> str:
    """The file as it is written."""
    plain = {
        "format": _FORMAT,
        "version": _VERSION,
        "study": {
            "title": record.title,
            "version": record.study,
            "seconds": record.seconds,
            "source": record.source,
        },
        "items": [_plain(record.items[item]) for item in Item if item in record.items],
        "left": [asdict(one) for one in record.left],
    }
    return json.dumps(plain, indent=2, ensure_ascii=False) + "\n"


def joined(before: Record, now: Record, folder: Path) -> tuple[Record, tuple[str, ...]]:
    """The record after a delivery, and the names of files that are not made any more and were until now.

    before: the record of what lay there; now: of what was delivered, kept items among it
    """
    items = {**before.items, **now.items}
    names = {file.name for item in items.values() for file in item.files}
    gone = tuple(
        file
        for item in now.items
        if item in before.items
        for file in before.items[item].files
        if file.name not in names and (folder / file.name).exists()
    )
    left = tuple(file for file in before.left if file.name not in names and (folder / file.name).exists())
    return replace(now, items=items, left=(*left, *gone)), tuple(file.name for file in gone)


def _plain(item: ItemRecord) -> dict[str, Any]:
    return {
        "item": item.item,
        "study": item.study,
        "made_of": dict(item.made_of),
        "options": dict(item.options),
        "options_digest": item.options_digest,
        "program": item.program,
        "made_at": item.made_at,
        "remarks": list(item.remarks),
        "files": [asdict(one) for one in item.files],
    }


def _item(plain: dict[str, Any]) -> ItemRecord:
    files = tuple(FileRecord(**one) for one in plain["files"])
    return ItemRecord(**{**plain, "remarks": tuple(plain["remarks"]), "files": files})
