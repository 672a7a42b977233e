"""Writes a study as PGN in the export format of the standard (1994)."""

from __future__ import annotations

import re
from collections.abc import Generator, Iterable
from typing import TypeAlias

from studyboard.model.node import Node
from studyboard.model.positions import Positions
from studyboard.model.script import Part
from studyboard.model.study import SEVEN_TAG_ROSTER, Study
from studyboard.translation import tr

#: Section 8.2.1: lines of movetext with fewer than 80 characters.
_WIDTH = 79
#: Section 7: a string has at most 255 characters.
_LONGEST_VALUE = 255
#: Section 5: a brace ends a comment, whatever stands before it. Readers of PGN show these in its place.
_BRACES = str.maketrans("{}", "\N{FULLWIDTH LEFT CURLY BRACKET}\N{FULLWIDTH RIGHT CURLY BRACKET}")
_RESULTS = frozenset({"1-0", "0-1", "1/2-1/2", "*"})
_NOT_IN_A_NAME = re.compile(r"\W", re.ASCII)
_LINE_BREAKS = re.compile(r"[\r\n]+")
_SINGLE_SPACE = re.compile(r"(?<=\S) (?=\S)")
#: As many moves are written between two rests.
_MOVES = 40
_OPEN, _CLOSE = "(", ")"
_Step: TypeAlias = "str | tuple[int, bool]"


def pgn_text(study: Study, positions: Positions | None = None, *, spoken: bool = True, notes: bool = True) -> str:
    """The study as one game, ending with an empty line.

    spoken: spoken lines become comments, before the note of the same move
    notes: notes become comments

    With spoken=False, reading the text again gives the same headers, moves, notes and glyphs, but for what the
    standard has no room for; `pgn_remarks` tells where that is so. A value of a tag is cut at 255 characters. Line
    breaks part several comments. A line with a closing brace gets full-width braces: a comment to the end of the
    line could hold it as it is, but other readers, chess.pgn among them, skip such comments whole. A null move is
    written “--”, as is common practice.
    """
    pieces = pgn_pieces(study, positions, spoken=spoken, notes=notes)
    while True:
        try:
            next(pieces)
        except StopIteration as done:
            text: str = done.value
            return text


def pgn_pieces(
    study: Study, positions: Positions | None = None, *, spoken: bool = True, notes: bool = True
) -> Generator[None, None, str]:
    """As `pgn_text`, with rests on the way at which other work can be done; the study must not change meanwhile."""
    if positions is None:
        positions = Positions(study)
    movetext = _Movetext()
    said = _comments(study.line(part).spoken.text for part in Part if part.opens and spoken)
    movetext.comments(said + _node_comments(study.nodes[study.root], spoken, notes, before=notes))
    movetext.glyphs(study.nodes[study.root])
    yield from _write_tree(study, positions, movetext, spoken, notes)
    movetext.comments(_comments(study.line(part).spoken.text for part in Part if not part.opens and spoken))
    result = study.headers.get("Result", "*")
    movetext.word(result if result in _RESULTS else "*")
    yield
    return f"{_tags(study.headers)}\n{movetext.text()}\n"


def pgn_remarks(study: Study, *, spoken: bool = True, notes: bool = True) -> tuple[str, ...]:
    """What `pgn_text` puts otherwise than it stands in the study, or than the standard knows it; in sentences."""
    found = [
        tr(
            "The {name} tag has {count} characters and PGN allows {most}: the rest was left out.",
            name=name,
            count=len(value),
            most=_LONGEST_VALUE,
        )
        for name, value in study.headers.items()
        if len(value) > _LONGEST_VALUE
    ]
    texts = [study.line(part).spoken.text for part in Part if spoken]
    for node in study.nodes.values():
        texts += [node.spoken.text if spoken else "", *((node.note_before, node.note) if notes else ())]
    if braced := sum("}" in line for line in _comments(texts)):
        places = tr("one comment") if braced == 1 else tr("{braced} comments", braced=braced)
        found.append(
            tr(
                "A “}}” would end a comment of PGN: in {places} the braces were made full-width, “｛” and “｝”.",
                places=places,
            )
        )
    if nulls := sum(node.move is not None and not node.move for node in study.nodes.values()):
        moves = tr("One move is a null move") if nulls == 1 else tr("{nulls} moves are null moves", nulls=nulls)
        found.append(
            tr("{moves}, written “--”: PGN knows none, and other programs may stop reading there.", moves=moves)
        )
    return tuple(found)


def _tags(headers: dict[str, str]) -> str:
    """Section 8.1: the seven tag roster in its order, then the others in ASCII order of their names."""
    pairs = {**SEVEN_TAG_ROSTER, **headers}
    if "FEN" in pairs:
        pairs.setdefault("SetUp", "1")
    names = [*SEVEN_TAG_ROSTER, *sorted(pairs.keys() - SEVEN_TAG_ROSTER.keys())]
    return "".join(f'[{_NOT_IN_A_NAME.sub("_", name)} "{_escaped(pairs[name])}"]\n' for name in names)


def _escaped(value: str) -> str:
    if len(value) > _LONGEST_VALUE:
        value = f"{value[: _LONGEST_VALUE - 1]}…"
    return _LINE_BREAKS.sub(" ", value).replace("\\", "\\\\").replace('"', '\\"')


def _write_tree(
    study: Study, positions: Positions, movetext: _Movetext, spoken: bool, notes: bool
) -> Generator[None, None, None]:
    """Every move after the root: the main move, the variations that replace it, then on from the main move."""
    # A step is a parenthesis, or a node with whether its move is to be written (else: what follows it).
    todo: list[_Step] = [(study.root, False)]
    opening = False
    written = 0
    while todo:
        step = todo.pop()
        if isinstance(step, str):
            opening = step is _OPEN
            if opening:
                movetext.open()
            else:
                movetext.close()
            continue
        node = study.nodes[step[0]]
        if step[1]:
            _write_move(node, positions, movetext, opening, spoken, notes)
            opening = False
            written += 1
            if written % _MOVES == 0:
                yield
        elif node.children:
            main, *side_lines = node.children
            following: list[_Step] = [(main, True)]
            for side_line in side_lines:
                following += [_OPEN, (side_line, True), (side_line, False), _CLOSE]
            following.append((main, False))
            todo.extend(reversed(following))


def _write_move(
    node: Node, positions: Positions, movetext: _Movetext, opening: bool, spoken: bool, notes: bool
) -> None:
    assert node.parent is not None
    board = positions.board(node.parent)
    before = _comments([node.note_before] if notes else [])
    if before and opening:
        movetext.comments(before)
        before = []
    # Section 8.2.2.2: Black's move has a number only where something stands between it and White's.
    if board.turn or movetext.interrupted or before:
        movetext.word(f"{board.fullmove_number}{'.' if board.turn else '...'}")
    # A comment between the number and the move is one before the move; without a number it would belong to the last.
    movetext.comments(before)
    movetext.word(positions.san(node.id))
    movetext.glyphs(node)
    movetext.comments(_node_comments(node, spoken, notes))


def _node_comments(node: Node, spoken: bool, notes: bool, before: bool = False) -> list[str]:
    texts = [node.note_before if before else "", node.spoken.text if spoken else "", node.note if notes else ""]
    return _comments(texts)


def _comments(texts: Iterable[str]) -> list[str]:
    """One comment for every line of every text that is not empty."""
    return [line for text in texts if text for line in text.replace("\r\n", "\n").replace("\r", "\n").split("\n")]


class _Movetext:
    """Movetext being written.

    State: units between which a line may be broken.
    """

    def __init__(self) -> None:
        self._units: list[str] = []
        self._opened = ""
        self.interrupted = True

    def word(self, text: str) -> None:
        """A move, a move number or a result."""
        self._add(text)
        self.interrupted = False

    def glyphs(self, node: Node) -> None:
        """The numeric annotation glyphs of the node."""
        for nag in node.nags:
            self._add(f"${nag}")

    def open(self) -> None:
        """Begin a variation."""
        self._opened += "("
        self.interrupted = True

    def close(self) -> None:
        """End a variation."""
        if len(self._units[-1]) >= _WIDTH:
            self._add(")")
        else:
            self._units[-1] += ")"
        self.interrupted = True

    def comments(self, lines: list[str]) -> None:
        """Comments of one line each."""
        for line in lines:
            self.interrupted = True
            pieces: list[str] = []
            for piece in _SINGLE_SPACE.split(line.translate(_BRACES) if "}" in line else line):
                # At the beginning of a line these would be an escape (section 6) and, to some readers, a tag.
                if pieces and piece[:1] in ("%", "["):
                    pieces[-1] += f" {piece}"
                else:
                    pieces.append(piece)
            pieces[0] = f"{{{pieces[0]}"
            pieces[-1] += "}"
            for piece in pieces:
                self._add(piece)

    def text(self) -> str:
        """The lines, each with its line break."""
        lines: list[str] = []
        line = ""
        for unit in self._units:
            if line and len(line) + 1 + len(unit) > _WIDTH:
                lines.append(line)
                line = unit
            else:
                line = f"{line} {unit}" if line else unit
        if line:
            lines.append(line)
        return "".join(f"{line}\n" for line in lines)

    def _add(self, text: str) -> None:
        self._units.append(self._opened + text)
        self._opened = ""
