"""The title picture of a talk: a position, its marks, the players and a headline, as a PNG."""

from __future__ import annotations

from dataclasses import dataclass
from io import BytesIO
from typing import TYPE_CHECKING

from studyboard.delivery.errors import DeliveryError
from studyboard.delivery.still_moment import node_at, still_node
from studyboard.delivery.still_options import StillOptions, StillShape
from studyboard.delivery.still_words import still_words
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.translation import in_language, tr

if TYPE_CHECKING:
    from studyboard.delivery.still_designs import PaintedStill


@dataclass(frozen=True, slots=True)
class Still:
    """One picture. shortened: its headline or a name had to be cut, because there is no room for so much."""

    shape: StillShape
    png: bytes
    shortened: bool


def still_pictures(
    study: Study, positions: Positions | None = None, options: StillOptions | None = None
) -> list[Still]:
    """The pictures of the shapes that were asked for; the same study gives the same bytes.

    Raises DeliveryError where the position is not in the study, and one that names the package to install where the
    cairo library is missing.
    """
    options = options or StillOptions()
    made = []
    for shape in options.shape.each:
        painted = painted_still(study, positions or Positions(study), options, shape)
        png = BytesIO()
        painted.canvas.surface.write_to_png(png)
        made.append(Still(shape, png.getvalue(), painted.shortened))
    return made


def painted_still(
    study: Study, positions: Positions, options: StillOptions, shape: StillShape, *, worded: bool = True
) -> PaintedStill:
    """One picture on its canvas, and where its texts stand.

    worded: False leaves the texts out, to see what lies behind them
    """
    try:
        # cairocffi looks for the library as soon as it is imported.
        from studyboard.delivery.still_designs import paint_still
    except OSError as reason:
        raise DeliveryError(
            tr(
                "A picture needs the cairo library, which is missing here. It comes with the package "
                "libcairo2 (Debian, Ubuntu: “apt install libcairo2”; macOS: “brew install cairo”)."
            )
        ) from reason
    node = (
        node_at(study, positions, options.at) if options.at else still_node(study, positions, spoilers=options.result)
    )
    with in_language(study.language):
        words = still_words(study, positions, node, options)
    return paint_still(study.nodes[node], positions.board(node), words, options, shape, worded=worded)
