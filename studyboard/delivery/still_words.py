"""What stands on a title picture, and type that is as large as its room allows."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from studyboard.delivery.printable import printable
from studyboard.delivery.still_options import StillOptions
from studyboard.delivery.title import full_name, known, occasion, players, result
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.notation.labels import figurine, move_number
from studyboard.picture.lettering import LINE, Letterer, Lettering
from studyboard.translation import tr

_LONG_WORD: Final = re.compile(r"\w{13,}")
_STEPS: Final = 12
_LONGEST: Final = 240
"""No text of a still has room for more signs than this."""
#: A piece of text between two places where a line can end; signs of East Asian scripts each end one.
_UNBROKEN: Final = re.compile(r"[⺀-鿿가-힣豈-﫿＀-￯]|(?:[^\s\u00AD\u200B⺀-鿿가-힣豈-﫿＀-￯]|\u00A0)+")
_NO_BREAK: Final = "\N{NO-BREAK SPACE}"
_ONE_LINE: Final = 24
_NARROW: Final = 0.28
"""The width of an average letter of the narrowest text (em)."""
_SPACE_OF_NO_WIDTH: Final = "\N{ZERO WIDTH SPACE}"
_SOFT_HYPHEN: Final = "\N{SOFT HYPHEN}"
_MUCH_SMALLER: Final = 0.7


@dataclass(frozen=True, slots=True)
class StillWords:
    """The words of a still; what is not known is empty.

    call: whose move it is where the viewer is asked, else the move that led there
    white, black: the players by their full names
    occasions: where and when it was played, from all that is known down to the least
    """

    headline: str
    call: str
    asks: bool
    white: str
    black: str
    occasions: tuple[str, ...]
    result: str


def still_words(study: Study, positions: Positions, node: int, options: StillOptions) -> StillWords:
    """The words for the position at a node. The headline is the event, else the players, where none was given."""
    headers = {tag: printable(value) for tag, value in study.headers.items()}
    event, both = known(headers, "Event"), players(headers)
    headline = printable(options.headline) or event or both or "Study"
    board = positions.board(node)
    asks = bool(study.nodes[node].think) or study.nodes[node].move is None
    if asks:
        call = tr("White to move") if board.turn else tr("Black to move")
    else:
        call = f"{move_number(positions, node).replace('...', '…')} {figurine(positions.san(node))}"
    white, black = (full_name(known(headers, tag)) or (tr(tag) if both else "") for tag in ("White", "Black"))
    return StillWords(
        headline,
        call,
        asks,
        white,
        black,
        _occasions({**headers, "Event": "" if event == headline else event}),
        result(headers) if options.result else "",
    )


def _occasions(headers: Mapping[str, str]) -> tuple[str, ...]:
    """Event, round, site and date as far as they are known; then without the site, the round, the date."""
    found = []
    for missing in ((), ("Site",), ("Site", "Round"), ("Site", "Round", "Date")):
        parts = occasion({tag: value for tag, value in headers.items() if tag not in missing}, tr)
        found.append(f"{_NO_BREAK * 2}·{_NO_BREAK} ".join(_kept_together(part) for part in parts))
    return tuple(dict.fromkeys(text for text in found if text))


def _kept_together(part: str) -> str:
    """A date or a round does not go over the end of a line; what is long may."""
    return part.replace(" ", _NO_BREAK) if len(part) <= _ONE_LINE else part


@dataclass(frozen=True, slots=True)
class Fitted:
    """Text as it is set, its width and height (px), and whether some of it had to be left out."""

    lettering: Lettering
    width: int
    height: int
    shortened: bool = False


def fitted(letterer: Letterer, wanted: Lettering, room: tuple[int, int], least: float, *, tear: bool = False) -> Fitted:
    """The text as large as it fits into a room of this width and height (px), in as many lines as it takes.

    wanted: the text at its largest size
    least: the smallest size that can be read (px); what has no room at that size is torn within words, and at last
        ends with an ellipsis
    tear: words may be torn earlier where the text becomes much larger so
    """
    width, height = room
    if len(wanted.text) > _LONGEST:
        cut = replace(wanted, text=f"{wanted.text[: _LONGEST - 1].rstrip()}…")
        return replace(fitted(letterer, cut, room, least, tear=tear), shortened=True)
    sizes = [round(wanted.size * (least / wanted.size) ** (step / _STEPS), 1) for step in range(_STEPS + 1)]
    whole = _largest(letterer, wanted, sizes, width, height)
    if whole is not None and not (tear and whole.lettering.size < _MUCH_SMALLER * wanted.size):
        return whole
    torn = replace(wanted, text=_torn(wanted.text))
    found = _largest(letterer, torn, sizes if tear else sizes[-1:], width, height)
    if whole is not None and (found is None or found.lettering.size < whole.lettering.size / _MUCH_SMALLER):
        return whole
    if found is not None:
        return found
    smallest = replace(wanted, text=_torn_anywhere(wanted.text), size=sizes[-1], width=float(width))
    found = _first_that_fits(letterer, [smallest], height)
    if found is not None:
        return found
    shorter = [replace(smallest, text=f"{smallest.text[:length].rstrip()}…") for length in _lengths(smallest.text)]
    found = _first_that_fits(letterer, shorter, height)
    assert found is not None, "an ellipsis alone fits into any room"
    return replace(found, shortened=True)


def _largest(letterer: Letterer, wanted: Lettering, sizes: Sequence[float], width: int, height: int) -> Fitted | None:
    """The text at the largest of these sizes at which it fits; None where it fits at none."""
    # Set at once, which is quicker; sizes at which there is clearly too much text are not tried.
    tries = [
        replace(wanted, size=size, width=float(width))
        for size in sizes
        if len(wanted.text) * (_NARROW * size) * size * LINE <= width * height or size == sizes[-1]
    ]
    pieces = _unbroken(wanted)
    letterer.prepare([*pieces, *tries])
    widest = max((float(letterer.size(piece)[0]) for piece in pieces), default=0.0)
    return _first_that_fits(letterer, [one for one in tries if widest * one.size <= width * wanted.size], height)


def _first_that_fits(letterer: Letterer, tries: Sequence[Lettering], height: int) -> Fitted | None:
    letterer.prepare(tries)
    for lettering in tries:
        wide, tall = letterer.size(lettering)
        if tall <= height:
            return Fitted(lettering, wide, tall)
    return None


def _unbroken(wanted: Lettering) -> list[Lettering]:
    """The longest pieces that cannot be broken, at the size that is wanted."""
    pieces = sorted(set(_UNBROKEN.findall(wanted.text)), key=len, reverse=True)[:8]
    return [replace(wanted, text=piece, width=None) for piece in pieces]


def _torn(text: str) -> str:
    """The text with places in its long words where a hyphen may stand at the end of a line."""
    return _LONG_WORD.sub(lambda match: re.sub(r"\w{5}(?=\w{4})", rf"\g<0>{_SOFT_HYPHEN}", match[0]), text)


def _torn_anywhere(text: str) -> str:
    """The text with places where a line may end within anything that is long."""
    return re.sub(r"\S{6}(?=\S)", rf"\g<0>{_SPACE_OF_NO_WIDTH}", text)


def _lengths(text: str) -> list[int]:
    """Shorter and shorter lengths, down to none."""
    found, length = [], len(text)
    while length > 0:
        length = int(length * 0.9)
        found.append(length)
    return found
