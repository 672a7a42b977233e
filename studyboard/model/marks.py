"""What a presenter draws on the board, named by its meaning."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class MarkKind(StrEnum):
    """The meaning of a mark; how it looks is decided by the picture layer."""

    THREAT = "threat"
    TARGET = "target"
    ROUTE = "route"
    KEY_SQUARE = "key square"
    GUARD = "guard"


#: How many squares a mark of each kind names: (least, most); None is no upper bound.
SQUARES_OF: dict[MarkKind, tuple[int, int | None]] = {
    MarkKind.THREAT: (2, 2),
    MarkKind.TARGET: (1, 1),
    MarkKind.ROUTE: (2, None),
    MarkKind.KEY_SQUARE: (1, 1),
    MarkKind.GUARD: (2, 2),
}


@dataclass(frozen=True, slots=True)
class Mark:
    """One mark on the board.

    kind: its meaning
    squares: python-chess square numbers (0 is a1, 63 is h8), in the order in which they are drawn:
        from and to of a threat, guard and guarded square of a guard, every stop of a route
    number: its place in a sequence, shown beside it (1 for the first); None where it belongs to none

    Raises ValueError for squares that are off the board or too few or many for the kind, and for a number below 1.
    """

    kind: MarkKind
    squares: tuple[int, ...]
    number: int | None = None

    def __post_init__(self) -> None:
        least, most = SQUARES_OF[self.kind]
        if len(self.squares) < least or (most is not None and len(self.squares) > most):
            raise ValueError(f"A {self.kind} mark cannot have {len(self.squares)} squares.")
        if any(not 0 <= square < 64 for square in self.squares):
            raise ValueError(f"A {self.kind} mark names a square that is not on the board.")
        if self.number is not None and self.number < 1:
            raise ValueError("The numbers of marks begin with 1.")

    def draws_as(self, other: Mark) -> bool:
        """True for a mark of the same kind on the same squares, whatever its number."""
        return self.kind is other.kind and self.squares == other.squares
