"""The numeric annotation glyphs of the PGN standard as chess books print them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import Final

#: Judgements of the move itself: set close to it. PGN standard (1994), section 10.
ON_THE_MOVE: Final[Mapping[int, str]] = MappingProxyType(
    {1: "!", 2: "?", 3: "!!", 4: "??", 5: "!?", 6: "?!", 7: " □", 8: " □"}
)

#: Judgements of the position: set after a space. PGN standard (1994), section 10, for what the numbers mean; the
#: signs are common practice. Where the standard tells White from Black and the sign does not, both have it.
ON_THE_POSITION: Final[Mapping[int, str]] = MappingProxyType(
    {
        10: "=",
        11: "=",
        12: "=",
        13: "∞",
        14: "⩲",
        15: "⩱",
        16: "±",
        17: "∓",
        18: "+−",
        19: "−+",
        20: "+−",
        21: "−+",
        22: "⊙",
        23: "⊙",
        32: "⟳",
        33: "⟳",
        36: "↑",
        37: "↑",
        40: "→",
        41: "→",
        44: "=/∞",
        45: "=/∞",
        132: "⇆",
        133: "⇆",
        136: "⊕",
        137: "⊕",
        138: "⊕",
        139: "⊕",
    }
)


def nag_text(nags: Iterable[int]) -> str:
    """What is printed behind a move: ``"!?"``, ``" ±"``; a number without a sign as the standard writes it.

    $0 means nothing and prints nothing.
    """
    numbers = [nag for nag in dict.fromkeys(nags) if nag]
    close = "".join(ON_THE_MOVE[nag] for nag in numbers if nag in ON_THE_MOVE)
    apart = "".join(f" {ON_THE_POSITION.get(nag, f'${nag}')}" for nag in numbers if nag not in ON_THE_MOVE)
    return close + apart
