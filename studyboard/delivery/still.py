"""A single picture of a position, as a PNG."""

from __future__ import annotations

from studyboard.delivery.errors import DeliveryError
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.picture.palette import DEFAULT_BOARD, board_palette
from studyboard.picture.svg import board_svg
from studyboard.translation import tr


def still_node(study: Study) -> int:
    """The position that stands for the study: the main line's first think pause, else its last marked node, else
    its end.
    """
    main = [study.nodes[node] for node in study.main_line()]
    asked = [node.id for node in main if node.think]
    marked = [node.id for node in main if node.marks]
    return asked[0] if asked else marked[-1] if marked else main[-1].id


def still_png(
    study: Study,
    positions: Positions,
    node: int | None = None,
    *,
    size: int = 1080,
    flipped: bool = False,
    palette: str = DEFAULT_BOARD,
) -> bytes:
    """The position at a node with its marks.

    node: its id; None for the one that stands for the study
    size: of the picture (px)

    Raises DeliveryError, which names the package to install, where the cairo library is missing.
    """
    shown = study.nodes[still_node(study) if node is None else node]
    svg = board_svg(
        positions.board(shown.id),
        marks=shown.marks,
        last_move=shown.move,
        flipped=flipped,
        palette=board_palette(palette),
        width=size,
    )
    try:
        import cairosvg
    except OSError as reason:  # cairocffi looks for the library as soon as it is imported
        raise DeliveryError(
            tr(
                "A picture needs the cairo library, which is missing here. It comes with the package "
                "libcairo2 (Debian, Ubuntu: “apt install libcairo2”; macOS: “brew install cairo”)."
            )
        ) from reason
    png: bytes = cairosvg.svg2png(bytestring=svg.encode(), output_width=size)
    return png
