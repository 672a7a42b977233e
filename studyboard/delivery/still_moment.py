"""Which position stands for a study on its title picture."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

import chess

from studyboard.board.exchange import PIECE_VALUES
from studyboard.delivery.errors import DeliveryError
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.notation.finding import Sought, find
from studyboard.translation import tr

_BRILLIANT, _BLUNDER = 3, 4
_HELD: Final = 2
"""A gain counts that was not there so many half-moves before and still is after as many: taking back is none."""
_LATE: Final = 2 / 3


def still_node(study: Study, positions: Positions, *, spoilers: bool = False) -> int:
    """The main line's first think pause, else its most marked node (of several the last), else its decisive moment.

    spoilers: whether it may be the end of the game or a finished position
    """
    main = list(study.main_line())
    open_ones = [node for node in main[:-1] if not positions.board(node).is_game_over()] or main[:1]
    nodes = main if spoilers else open_ones
    asked = [node for node in nodes if study.nodes[node].think]
    if asked:
        return asked[0]
    marked = max(reversed(nodes), key=lambda node: len(study.nodes[node].marks))
    return marked if study.nodes[marked].marks else _decisive(study, positions, open_ones, main)


def node_at(study: Study, positions: Positions, move: str) -> int:
    """The node to which a move leads, written as one would search for it; of several, one of the main line, the first.

    Raises DeliveryError where there is none.
    """
    found = [match.key for match in find(study, positions, move, Sought.MOVE) if isinstance(match.key, int)]
    if not found:
        raise DeliveryError(
            tr("No move “{move}” is in the study. Write it with its number, such as “24. Qh6+”.", move=move)
        )
    return next((node for node in found if study.on_main_line(node)), found[0])


def _decisive(study: Study, positions: Positions, nodes: Sequence[int], main: Sequence[int]) -> int:
    """Before a brilliant move, after a blunder, else before the greatest lasting gain of material, else late."""
    for place, node in enumerate(main):
        nags = study.nodes[node].nags
        if place and (_BRILLIANT in nags or _BLUNDER in nags):
            chosen = main[place - 1] if _BRILLIANT in nags else node
            if chosen in nodes:
                return chosen
    balance = [_balance(positions.board(node)) for node in main]
    gains = []
    for place in range(1, len(nodes)):
        mover = 1 if positions.board(main[place - 1]).turn else -1
        held = min(mover * then for then in balance[place : place + _HELD + 1])
        had = max(mover * then for then in balance[max(0, place - _HELD) : place])
        gains.append((held - had, -place))
    greatest, place = max(gains, default=(0, 0))
    return main[-place - 1] if greatest > 0 else nodes[round(_LATE * (len(nodes) - 1))]


def _balance(board: chess.Board) -> int:
    """White's material less Black's (points)."""
    return sum(
        value * (len(board.pieces(kind, chess.WHITE)) - len(board.pieces(kind, chess.BLACK)))
        for kind, value in PIECE_VALUES.items()
        if kind != chess.KING
    )
