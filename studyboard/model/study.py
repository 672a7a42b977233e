"""The study itself: everything that is kept in one study file except the sound."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import TYPE_CHECKING

import chess

from studyboard.model.errors import EditRefusedError
from studyboard.model.left_query import LeftQuery
from studyboard.model.node import Node
from studyboard.model.script import BeatKey, FreeLine, Pace, Part
from studyboard.model.takes import Take
from studyboard.translation import tr

if TYPE_CHECKING:
    from studyboard.model.rehearsals import Rehearsal

#: The seven tag roster of the PGN standard (1994), section 8.1.1, in its order, with its defaults.
SEVEN_TAG_ROSTER: Mapping[str, str] = MappingProxyType(
    {
        "Event": "?",
        "Site": "?",
        "Date": "????.??.??",
        "Round": "?",
        "White": "?",
        "Black": "?",
        "Result": "*",
    }
)

_CHESS_960 = frozenset({"chess960", "chess 960", "fischerandom", "fischer random", "fischerandom chess", "freestyle"})


@dataclass(slots=True)
class Changed:
    """Which parts of a study one edit has touched, so that the store and the desk look at no more than those."""

    nodes: set[int] = field(default_factory=set)
    headers: bool = False
    parts: set[Part] = field(default_factory=set)
    takes: set[int] = field(default_factory=set)
    rehearsed: bool = False
    left: bool = False
    settings: bool = False
    pronunciations: bool = False
    choices: bool = False

    def __bool__(self) -> bool:
        ticked = self.headers or self.rehearsed or self.left or self.settings or self.pronunciations or self.choices
        return bool(self.nodes or self.parts or self.takes or ticked)

    def add(self, other: Changed) -> None:
        """Take in what another edit has touched."""
        self.nodes |= other.nodes
        self.parts |= other.parts
        self.takes |= other.takes
        self.headers |= other.headers
        self.rehearsed |= other.rehearsed
        self.left |= other.left
        self.settings |= other.settings
        self.pronunciations |= other.pronunciations
        self.choices |= other.choices


class Study:
    """A game or position, its side-lines, its script and what is known of its takes.

    State: the values below, replaced by edits only (studyboard.model.edits); everything else reads.

    headers: PGN tag pairs in their order
    nodes: every node by id; `root` is the id of the start position
    lines: the spoken lines that belong to no move
    slot: the length that the talk should have (s), or None
    pace: how its presenter speaks
    takes: recordings by id
    chosen: the take in which a beat is heard, where the presenter has chosen one
    rehearsed: how long each beat took when it was last rehearsed (s)
    rehearsals: the log of all rehearsals, the oldest first
    left: queries of the read-through that the author leaves
    pronunciations: how words of the script are said, as the prompter shows it; by the word as it is written
    language: what the script is written in, such as "en_GB"; "" for the one of the desk
    words: spellings that are right in this script although no dictionary has them
    """

    __slots__ = (
        "chosen",
        "headers",
        "language",
        "left",
        "lines",
        "next_id",
        "next_take",
        "nodes",
        "pace",
        "pronunciations",
        "rehearsals",
        "rehearsed",
        "root",
        "slot",
        "takes",
        "words",
    )

    def __init__(self, headers: Mapping[str, str] | None = None) -> None:
        self.headers: dict[str, str] = dict(SEVEN_TAG_ROSTER if headers is None else headers)
        self.root = 0
        self.nodes: dict[int, Node] = {0: Node(0, None, None)}
        self.lines: dict[Part, FreeLine] = {}
        self.slot: float | None = None
        self.pace = Pace()
        self.takes: dict[int, Take] = {}
        self.chosen: dict[BeatKey, int] = {}
        self.rehearsed: dict[BeatKey, float] = {}
        self.rehearsals: tuple[Rehearsal, ...] = ()
        self.left: frozenset[LeftQuery] = frozenset()
        self.pronunciations: dict[str, str] = {}
        self.language = ""
        self.words: frozenset[str] = frozenset()
        self.next_id = 1
        self.next_take = 1
        start_board(self.headers)

    def snapshot(self) -> Study:
        """A copy that later edits leave as it is, for work in another thread. O(number of nodes)."""
        copy = Study(self.headers)
        copy.nodes = dict(self.nodes)
        copy.lines = dict(self.lines)
        copy.slot, copy.pace = self.slot, self.pace
        copy.takes, copy.rehearsed = dict(self.takes), dict(self.rehearsed)
        copy.rehearsals = self.rehearsals
        copy.chosen = dict(self.chosen)
        copy.left = self.left
        copy.pronunciations = dict(self.pronunciations)
        copy.language, copy.words = self.language, self.words
        copy.next_id, copy.next_take = self.next_id, self.next_take
        return copy

    def node(self, node_id: int) -> Node:
        """The node with this id; raises KeyError where there is none."""
        return self.nodes[node_id]

    def line(self, part: Part) -> FreeLine:
        """What is said at this part of the talk; an empty line where nothing is."""
        return self.lines.get(part, FreeLine())

    def main_line(self, start: int | None = None) -> Iterator[int]:
        """Ids from *start* (the root by default), always by the first child. O(length)."""
        node = self.nodes[self.root if start is None else start]
        yield node.id
        while node.children:
            node = self.nodes[node.children[0]]
            yield node.id

    def path(self, node_id: int) -> list[int]:
        """Ids from the root to this node, both included. O(length)."""
        found: list[int] = []
        at: int | None = node_id
        while at is not None:
            found.append(at)
            at = self.nodes[at].parent
        found.reverse()
        return found

    def ply(self, node_id: int) -> int:
        """Half-moves from the root to this node; 0 at the root. O(length)."""
        return len(self.path(node_id)) - 1

    def branch(self, node_id: int) -> Iterator[Node]:
        """This node and everything after it, parents before children, main move first. O(size)."""
        waiting = [node_id]
        while waiting:
            node = self.nodes[waiting.pop()]
            yield node
            waiting.extend(reversed(node.children))

    def begins_side_line(self, node_id: int) -> bool:
        """True where this node replaces its parent's main move."""
        parent = self.nodes[node_id].parent
        return parent is not None and self.nodes[parent].children[0] != node_id

    def line_start(self, node_id: int) -> int:
        """The first node of the line that this node belongs to: the root on the main line. O(length)."""
        at = node_id
        while not self.begins_side_line(at):
            parent = self.nodes[at].parent
            if parent is None:
                return at
            at = parent
        return at

    def on_main_line(self, node_id: int) -> bool:
        """True where this node can be reached from the root by first children alone. O(length)."""
        return self.line_start(node_id) == self.root


def start_board(headers: Mapping[str, str]) -> chess.Board:
    """The position at the root, from the FEN and Variant tags.

    Raises EditRefusedError where the FEN tag cannot be read or describes no position.
    """
    chess960 = headers.get("Variant", "").strip().lower() in _CHESS_960
    fen = headers.get("FEN", "").strip()
    if not fen:
        return chess.Board(chess960=chess960)
    try:
        return chess.Board(fen, chess960=chess960)
    except ValueError as reason:
        raise EditRefusedError(
            tr(
                "The FEN tag holds no position ({reason}). A position looks like “{example}”.",
                reason=reason,
                example=chess.STARTING_FEN,
            )
        ) from reason
