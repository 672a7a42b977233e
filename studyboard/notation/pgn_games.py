"""Where each game of a PGN file begins and ends, found without reading its moves."""

from __future__ import annotations

import mmap
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import TypeAlias

from studyboard.model.errors import StudyboardError
from studyboard.notation.pgn_tokens import LOOSE_TAG, TAG, decoded, tag_name, tag_value
from studyboard.translation import tr

#: Told how many bytes of how many are done.
Progress: TypeAlias = Callable[[int, int], None]
_Data: TypeAlias = "bytes | mmap.mmap"

_TAG_LINE = re.compile(rb"[ \t]*+\[[ \t]*+([A-Za-z]\w*+)(?=[ \t\":=])[^\n]*+(?:\n|\Z)")
_NEXT_TAG_LINE = re.compile(rb"\n(?:\xef\xbb\xbf)?[ \t]*+\[[ \t]*+[A-Za-z]\w*+[ \t\":=]")
_WHOLE_TAG = re.compile(rb'(?:\xef\xbb\xbf)?[ \t]*+\[[ \t]*+[A-Za-z]\w*+[ \t]++"')
_BLANK_THEN_TAG = re.compile(rb'\n[ \t\r]*+\n[ \t]*+\[[ \t]*[A-Za-z]\w*[ \t]+"')
_BLANK_LINE = re.compile(rb"\n[ \t\r]*\n\Z")
_CLOSING_BRACE = re.compile(rb"\}")
_ASIDE = re.compile(rb"\{|;[^\n]*+|^%[^\n]*+", re.MULTILINE)
#: Where a game without tags may begin: a move after a result, or move number one after an empty line.
_BARE_START = re.compile(
    rb"(?<![^\s)}])(?:1-0|0-1|1/2-1/2|\*)\s++(?=[0-9A-Za-z])(?!(?:1-0|0-1|1/2-1/2)\s)"
    rb"|(?<=\S)[ \t\r]*+\n[ \t\r]*+\n\s*+(?=1\s*+\.(?!\s*+\.))"
)
_MOVES = re.compile(rb"[a-h][1-8]|[O0]-[O0]|\d\s*+\.|1-0|0-1|1/2|\*")
_SKIPPED = re.compile(rb"(?:\s|\xef\xbb\xbf)*+")
_IN_MEMORY = 32 << 20


@dataclass(frozen=True, slots=True)
class GameEntry:
    """One game of a file, for a chooser.

    number: from 1
    line, column: where it begins, from 1
    offset, length: the same in bytes
    headers: its tag pairs
    """

    number: int
    line: int
    column: int
    offset: int
    length: int
    headers: dict[str, str]


@dataclass(frozen=True, slots=True)
class GameText:
    """The text of one game and where it begins in its file; `number`, `line` and `column` count from 1."""

    number: int
    line: int
    column: int
    text: str


def index_games(path: Path, progress: Progress | None = None) -> list[GameEntry]:
    """Every game of the file. Raises StudyboardError where it cannot be read."""
    return list(iter_index(path, progress))


def iter_index(path: Path, progress: Progress | None = None) -> Iterator[GameEntry]:
    """Every game of the file, one after the other, in constant memory. Raises StudyboardError, see index_games."""
    with _opened(path) as data:
        for number, line, column, start, moves, end in _spans(data):
            yield GameEntry(number, line, column, start, end - start, _headers(decoded(data[start:moves])))
            if progress is not None:
                progress(end, len(data))


def game_texts(source: Path | bytes | str) -> Iterator[GameText]:
    """The text of every game. A path is read piece by piece. Raises StudyboardError where it cannot be read."""
    if isinstance(source, Path):
        with _opened(source) as data:
            yield from _texts(data)
    else:
        yield from _texts(_plain(source.encode("utf-8", "replace") if isinstance(source, str) else source))


def game_text_at(path: Path, entry: GameEntry) -> GameText:
    """The text of one game that was found before. Raises StudyboardError where the file is gone or shorter now."""
    with _opened(path) as data:
        piece = data[entry.offset : entry.offset + entry.length]
        if len(piece) < entry.length:
            raise StudyboardError(
                tr("{name} has changed since its games were listed: list them again.", name=path.name)
            )
        return GameText(entry.number, entry.line, entry.column, decoded(piece))


def _texts(data: _Data) -> Iterator[GameText]:
    for number, line, column, start, _, end in _spans(data):
        yield GameText(number, line, column, decoded(data[start:end]))


class _opened:  # noqa: N801 - reads as a verb where it is used
    """The bytes of a file: a small one whole, a big one mapped."""

    def __init__(self, path: Path) -> None:
        self._path = path
        self._mapped: mmap.mmap | None = None

    def __enter__(self) -> _Data:
        try:
            with self._path.open("rb") as file:
                size = self._path.stat().st_size
                head = file.read(4)
                if size <= _IN_MEMORY or head[:2] in (b"\xff\xfe", b"\xfe\xff"):
                    return _plain(head + file.read())
                self._mapped = mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_READ)
                return self._mapped
        except OSError as reason:
            raise StudyboardError(
                tr("{path} cannot be read: {reason}.", path=self._path, reason=reason.strerror or reason)
            ) from reason

    def __exit__(self, *_: object) -> None:
        if self._mapped is not None:
            self._mapped.close()


def _plain(data: bytes) -> bytes:
    """The bytes with line ends that can be searched for, at the same offsets; UTF-16 becomes UTF-8."""
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        data = data.decode("utf-16", "replace").encode("utf-8", "replace")
    if b"\r" in data and b"\n" not in data:
        data = data.replace(b"\r", b"\n")
    return data


def _spans(data: _Data) -> Iterator[tuple[int, int, int, int, int, int]]:
    """For each game: number, line, column, and offsets of its start, its movetext and its end."""
    ends = _Ends(data)
    number, line, counted, tags = 0, 1, 0, 0
    start = _skip(data, 0)
    while start < len(data):
        number += 1
        line += data[counted:start].count(b"\n")
        counted = start
        column = len(decoded(data[data.rfind(b"\n", 0, start) + 1 : start]).lstrip("\ufeff")) + 1
        moves = _after_tags(data, start)
        if moves != start or tags <= moves:
            tags = ends.next_tags(moves)
        end = ends.bare_start(moves, tags)
        if moves == start and end < len(data) and _MOVES.search(data, start, end) is None:
            # A foreword: text before the first tags that holds no moves belongs to the game after it.
            moves = _after_tags(data, end)
            tags = ends.next_tags(moves)
            end = ends.bare_start(moves, tags)
        yield number, line, column, start, moves, end
        start = _skip(data, end)


def _skip(data: _Data, at: int) -> int:
    match = _SKIPPED.match(data, at)
    return at if match is None else match.end()


def _after_tags(data: _Data, at: int) -> int:
    """Where the tags end that begin at *at*. Tags after an empty line go on, unless one of them comes again."""
    names: set[bytes] = set()
    while True:
        begin = _skip(data, at) if names else at
        match = _TAG_LINE.match(data, begin)
        if match is None:
            return at
        if match[1] in names and data[at:begin].count(b"\n") > 1:
            return at
        names.add(match[1])
        # The line break stays outside, so that an empty line can be told from none.
        at = match.end() - 1 if match[0].endswith(b"\n") else match.end()


class _Next:
    """Where a pattern is found next.

    State: the last answer, so that asking for it from every game of a file costs one walk over the file.
    """

    def __init__(self, data: _Data, pattern: re.Pattern[bytes]) -> None:
        self._data = data
        self._pattern = pattern
        self._asked = self._found = -1

    def after(self, at: int) -> int:
        """The first place from *at* on; the end of the data where there is none."""
        if not self._asked <= at <= self._found:
            match = self._pattern.search(self._data, at)
            self._found = len(self._data) if match is None else match.start()
        self._asked = at
        return self._found


class _Ends:
    """Finds where the movetext of a game ends. State: what was found last, see _Next."""

    def __init__(self, data: _Data) -> None:
        self._data = data
        self._tag_line = _Next(data, _NEXT_TAG_LINE)
        self._closing_brace = _Next(data, _CLOSING_BRACE)
        self._blank_then_tag = _Next(data, _BLANK_THEN_TAG)

    def next_tags(self, moves: int) -> int:
        """Where the next tags begin after the movetext that begins at *moves*; the end of the data if nowhere."""
        outside = at = moves
        while True:
            line_break = self._tag_line.after(at)
            if line_break == len(self._data):
                return line_break
            comment = self._comment_over(outside, line_break + 1)
            if comment is None:
                return line_break + 1
            outside = at = comment

    def bare_start(self, moves: int, end: int) -> int:
        """Where the next game without tags begins inside this movetext; *end* if none does."""
        data = self._data
        outside, depth, empty = moves, 0, True
        for match in _BARE_START.finditer(data, moves, end):
            place = match.start()
            if place < outside:
                continue
            before = _movetext(data, outside, place)
            depth += before.count(b"(") - before.count(b")")
            empty = empty and not before.strip()
            comment = self._comment_over(outside, place + 1)
            outside = place if comment is None else comment
            if comment is None and depth <= 0 and (match[0].strip() or not empty):
                return match.end()
        return end

    def _comment_over(self, outside: int, place: int) -> int | None:
        """The end of the comment that holds *place*, if one does; *outside* is a place before it in no comment.

        A comment that is never closed, or only after an empty line and a tag, has lost its brace and holds no tags.
        """
        data = self._data
        while any(data.find(sign, outside, place) >= 0 for sign in (b"{", b";", b"\n%")):
            match = _ASIDE.search(data, outside, place)
            if match is None:
                return None
            outside = match.end()
            if match[0] != b"{":
                if outside < place:
                    continue
                line_end = data.find(b"\n", place)
                return line_end if line_end >= 0 else len(data)
            closing = self._closing_brace.after(outside)
            if closing < place:
                outside = closing + 1
                continue
            if _WHOLE_TAG.match(data, place) and _BLANK_LINE.search(data[max(outside, place - 200) : place]):
                return None
            lost = closing == len(data) or closing > self._blank_then_tag.after(place)
            return None if lost else closing + 1
        return None


def _movetext(data: _Data, start: int, end: int) -> bytes:
    """The bytes from start to end without comments."""
    pieces: list[bytes] = []
    while True:
        match = _ASIDE.search(data, start, end)
        if match is None:
            pieces.append(data[start:end])
            return b" ".join(pieces)
        pieces.append(data[start : match.start()])
        closing = data.find(b"}", match.end(), end) if match[0] == b"{" else match.end() - 1
        start = end if closing < 0 else closing + 1


def _headers(tags: str) -> dict[str, str]:
    found: dict[str, str] = {}
    for name, value in TAG.findall(tags):
        found.setdefault(tag_name(name), tag_value(value))
    for match in LOOSE_TAG.finditer(tags) if tags.count("[") > len(found) else ():
        if TAG.match(match[0]) is None:
            found.setdefault(tag_name(match[1]), loose_value(match[2]))
    return found


def loose_value(raw: str) -> str:
    """What a broken tag was probably meant to hold: the text without its outer quotes and bracket."""
    return tag_value(raw.strip().removesuffix("]").strip().removeprefix('"').removesuffix('"'))
