"""Everything that a page draws, defined once and used wherever it is needed: pieces, board, brackets, marks."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

import chess

from studyboard.model.marks import SQUARES_OF, Mark, MarkKind
from studyboard.model.positions import Positions
from studyboard.picture.geometry import corner, is_light
from studyboard.picture.hatch import hatch_lines
from studyboard.picture.marks import mark_drawings
from studyboard.picture.palette import BoardPalette, board_palette
from studyboard.picture.pieces import DEFAULT_SET, GRID, piece_code, piece_fragment
from studyboard.picture.primitives import Layer, Primitive, Segments, Stroke, Text
from studyboard.picture.scene import indication_scene, squares_scene
from studyboard.picture.svg import primitive_svg

_RIM: Final = "#FFFFFF"
_HATCHING: Final = 7
_NAMES: Final = "sans-serif"


class Drawings:
    """State: the marks that were asked for, each drawn once however often it is seen."""

    def __init__(self, piece_set: str = DEFAULT_SET) -> None:
        self._piece_set = piece_set
        self._palette = board_palette()
        self._marks: dict[tuple[str, str], int] = {}

    def marks_of(self, marks: Iterable[Mark]) -> tuple[int, ...]:
        """The numbers of the drawings of a position's marks, in the order of the marks."""
        drawn = tuple(marks)
        number_of = {
            one.mark: self._number(_inside(one.ground), _over(one.lines, one.number)) for one in mark_drawings(drawn)
        }
        return tuple(number_of[mark] for mark in drawn)

    def definitions(self) -> str:
        """All that was asked for, as the inside of an SVG element's definitions."""
        parts = [*self._pieces(), *self._board(), *self._signs()]
        for (under, over), number in self._marks.items():
            if under:
                parts.append(f'<g id="under-{number}">{under}</g>')
            parts.append(f'<g id="mark-{number}">{over}</g>')
        return "\n".join(parts)

    def has_ground(self) -> list[int]:
        """The numbers of those marks that have something under the pieces."""
        return [number for (under, _), number in self._marks.items() if under]

    def diagram(self, positions: Positions, node: int) -> str:
        """The inside of an SVG element that shows the position at a node with its marks."""
        board = positions.board(node)
        at = positions.study.nodes[node]
        numbers = self.marks_of(at.marks)
        grounded = set(self.has_ground())
        drawn = ['<use href="#board"/><use href="#names"/>']
        drawn += [f'<use href="#under-{number}"/>' for number in dict.fromkeys(numbers) if number in grounded]
        if at.move:
            drawn.append(_use("left", at.move.from_square))
            drawn.append(_use("reached", at.move.to_square))
        king = board.king(board.turn)
        if king is not None and board.is_check():
            drawn.append(_use("check", king))
        standing = sorted(board.piece_map().items(), key=lambda one: (-chess.square_rank(one[0]), one[0]))
        drawn += [_use(piece_code(piece), square) for square, piece in standing]
        drawn += [f'<use href="#mark-{number}"/>' for number in dict.fromkeys(numbers)]
        return "".join(drawn)

    def sample(self, kind: MarkKind) -> str:
        """The inside of an SVG element, 250 by 100, that shows a mark of this kind: for the legend."""
        least, _ = SQUARES_OF[kind]
        (one,) = mark_drawings((Mark(kind, (chess.A8, chess.C8) if least > 1 else (chess.A8,)),))
        # A line begins a little beside the middle of its first square; a square stands in the middle of the sample.
        return f'<g transform="translate({-25 if least > 1 else 75} 0)">{_inside((*one.ground, *one.lines))}</g>'

    def _number(self, under: str, over: str) -> int:
        return self._marks.setdefault((under, over), len(self._marks))

    def _pieces(self) -> list[str]:
        """Each piece, with a rim that only print shows: there the squares are hatched."""
        found = []
        for colour in chess.COLORS:
            for kind in chess.PIECE_TYPES:
                piece = chess.Piece(kind, colour)
                inside = piece_fragment(piece, self._piece_set, _RIM).replace("<g ", '<g class="rim" ', 1)
                found.append(f'<g id="{piece_code(piece)}">{inside.replace(chr(10), "")}</g>')
        return found

    def _board(self) -> list[str]:
        dark = [corner(square) for square in chess.SQUARES if not is_light(square)]
        squares = "".join(f"M{x * GRID:g} {y * GRID:g}h{GRID}v{GRID}h-{GRID}z" for x, y in dark)
        lines = tuple(line for x, y in dark for line in hatch_lines(x, y, count=_HATCHING))
        hatching = _inside((Segments(lines, Stroke("#4A4A4A", 0.022, cap="butt")),))
        side = 8 * GRID
        return [
            f'<g id="board"><path class="light" d="M0 0h{side}v{side}H0z"/><path class="dark" d="{squares}"/>'
            f'<g class="hatching">{hatching}</g><path class="frame" d="M0 0h{side}v{side}H0z"/></g>',
            f'<g id="names" class="names">{_inside(_names(self._palette, flipped=False))}</g>',
            f'<g id="names-turned" class="names">{_inside(_names(self._palette, flipped=True))}</g>',
        ]

    def _signs(self) -> list[str]:
        """What shows the last move and a check, each on the square in the top left corner."""
        brackets = indication_scene(chess.Board(None), last_move=chess.Move(chess.A8, chess.A8), palette=self._palette)
        half = len(brackets) // 2
        checked = chess.Board("k7/8/8/8/8/8/8/R6K b - - 0 1")
        return [
            f'<g id="left">{_inside(brackets[:half])}</g>',
            f'<g id="reached">{_inside(brackets[half:])}</g>',
            f'<g id="check">{_inside(indication_scene(checked, palette=self._palette))}</g>',
        ]


def _names(palette: BoardPalette, *, flipped: bool) -> Layer:
    return tuple(part for part in squares_scene(flipped=flipped, palette=palette) if isinstance(part, Text))


def _inside(layer: Iterable[Primitive]) -> str:
    return "".join(primitive_svg(part, font_family=_NAMES) for part in layer)


def _over(lines: Layer, number: Layer) -> str:
    # On a board that is turned, the marks are turned with it; the figures are turned back.
    return _inside(lines) + (f'<g class="figure">{_inside(number)}</g>' if number else "")


def _use(name: str, square: chess.Square) -> str:
    x, y = corner(square)
    return f'<use href="#{name}" x="{x * GRID:g}" y="{y * GRID:g}"/>'
