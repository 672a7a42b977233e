"""How the answers to what one asks of a position look on the board: frames, signs and lines over the pieces."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final, Literal

from studyboard.board.on_demand import Answer, Aspect
from studyboard.picture.geometry import centre, corner
from studyboard.picture.marks import INK, PAPER, RIM
from studyboard.picture.primitives import Circle, Fill, Layer, Point, Polygon, Polyline, Primitive, Segments, Stroke

_BLUE, _GREEN, _VERMILION = "#0072B2", "#009E73", "#D55E00"


@dataclass(frozen=True, slots=True)
class AnswerStyle:
    """How the squares of one aspect are drawn.

    colour: from the palette of M. Okabe and K. Ito (Color Universal Design, 2008), ``#rrggbb``; always cased in paper
    width: of the frame's line (squares), 0.0 for no frame
    dash: dashes and gaps (squares); empty for a solid line
    inset: from the square's edge to the frame (squares), so that two frames of one square do not meet
    double: whether a thin line of paper runs inside the frame's line
    sign: what stands in a corner of the square
    look: the same in words, for the legend
    """

    colour: str
    width: float
    look: str
    dash: tuple[float, ...] = ()
    inset: float = 0.05
    double: bool = False
    sign: Literal["", "plus", "minus", "tick", "wedge"] = ""


ANSWER_STYLES: Final[Mapping[Aspect, AnswerStyle]] = MappingProxyType(
    {
        Aspect.SUBJECT: AnswerStyle(INK, 0.075, "thick frame"),
        Aspect.ATTACKS: AnswerStyle(_BLUE, 0.055, "solid frame"),
        Aspect.GUARDS: AnswerStyle(_GREEN, 0.1, "double frame", double=True),
        Aspect.ATTACKED_BY: AnswerStyle(_VERMILION, 0.055, "dashed frame", (0.17, 0.08), 0.14),
        Aspect.GUARDED_BY: AnswerStyle(_GREEN, 0.06, "frame of dots", (0.001, 0.11), 0.14),
        Aspect.SAFE: AnswerStyle(_GREEN, 0.0, "tick", sign="tick"),
        Aspect.COVERED: AnswerStyle(_BLUE, 0.055, "solid frame with a plus", sign="plus"),
        Aspect.GIVEN_UP: AnswerStyle(_BLUE, 0.06, "frame of dots with a minus", (0.001, 0.11), sign="minus"),
        Aspect.FOE_COVERED: AnswerStyle(_VERMILION, 0.055, "dashed frame with a plus", (0.17, 0.08), 0.14, sign="plus"),
        Aspect.FOE_GIVEN_UP: AnswerStyle(
            _VERMILION, 0.05, "dashes and dots with a minus", (0.14, 0.06, 0.04, 0.06), 0.14, sign="minus"
        ),
        Aspect.OPENED: AnswerStyle(INK, 0.0, "thin line with a ring at its end", (0.09, 0.06)),
        Aspect.HANGS: AnswerStyle(_VERMILION, 0.0, "filled wedge", sign="wedge"),
    }
)
"""Look of each aspect; line and sign tell them apart where colours cannot."""

_FIRST: Final = (Aspect.SUBJECT, Aspect.OPENED)


def answers_scene(answers: Iterable[Answer], *, flipped: bool = False) -> Layer:
    """Everything that the answers show, to be drawn over pieces and marks."""
    asked = tuple(answers)
    drawn: list[Primitive] = []
    for answer in sorted(asked, key=lambda answer: answer.aspect not in _FIRST):
        style = ANSWER_STYLES[answer.aspect]
        for start, end in answer.lines:
            drawn.extend(_line(style, centre(start, flipped=flipped), centre(end, flipped=flipped)))
        if not answer.lines:
            for square in answer.squares:
                drawn.extend(square_scene(answer.aspect, corner(square, flipped=flipped)))
    return tuple(drawn)


def square_scene(aspect: Aspect, at: Point) -> Layer:
    """How one square of this aspect is drawn, its top left corner at *at*; for OPENED a piece of its line."""
    style = ANSWER_STYLES[aspect]
    x, y = at
    if aspect is Aspect.OPENED:
        return _line(style, (x + 0.05, y + 0.5), (x + 0.95, y + 0.5))
    return (*_frame(style, x, y), *_sign(style, x, y))


def _frame(style: AnswerStyle, x: float, y: float) -> Layer:
    if not style.width:
        return ()
    near, far = style.inset + style.width / 2, 1 - style.inset - style.width / 2
    box = ((x + near, y + near), (x + far, y + near), (x + far, y + far), (x + near, y + far))
    cap: Literal["butt", "round"] = "round" if style.dash[:1] == (0.001,) else "butt"
    inner = (Polygon(box, stroke=Stroke(PAPER, style.width * 0.34, join="miter")),) if style.double else ()
    return (
        Polygon(box, stroke=Stroke(PAPER, style.width + RIM, join="miter")),
        Polygon(box, stroke=Stroke(style.colour, style.width, style.dash, cap, "miter")),
        *inner,
    )


def _sign(style: AnswerStyle, x: float, y: float) -> Layer:
    """Plus and minus stand in the upper left corner, or the lower one for the other side; the rest on the right."""
    arms: tuple[tuple[Point, ...], ...]
    left, top = x + 0.19, y + (0.81 if style.inset > 0.1 else 0.19)
    match style.sign:
        case "plus":
            arms = (((left - 0.07, top), (left + 0.07, top)), ((left, top - 0.07), (left, top + 0.07)))
        case "minus":
            arms = (((left - 0.07, top), (left + 0.07, top)),)
        case "tick":
            points = ((x + 0.72, y + 0.82), (x + 0.79, y + 0.9), (x + 0.92, y + 0.7))
            return Polyline(points, Stroke(PAPER, 0.075 + RIM)), Polyline(points, Stroke(style.colour, 0.075))
        case "wedge":
            wedge = ((x + 0.68, y + 0.05), (x + 0.96, y + 0.05), (x + 0.82, y + 0.31))
            return (Polygon(wedge, Fill(style.colour), Stroke(PAPER, RIM, join="miter")),)
        case _:
            return ()
    return (
        Circle(left, top, 0.125, Fill(PAPER), Stroke(style.colour, 0.03)),
        Segments(arms, Stroke(style.colour, 0.05, cap="butt")),
    )


def _line(style: AnswerStyle, start: Point, end: Point) -> Layer:
    points = (start, end)
    return (
        Polyline(points, Stroke(PAPER, 0.05 + RIM)),
        Polyline(points, Stroke(style.colour, 0.05, style.dash, "butt")),
        Circle(*end, 0.09, Fill(PAPER), Stroke(style.colour, 0.045)),
    )
