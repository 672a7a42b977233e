"""What the annotation glyphs of a move and of a position say."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType

#: Glyphs that judge the move (PGN standard of 1994, section 10: $1 to $6), best first.
MOVE_GLYPHS = (3, 1, 5, 6, 2, 4)

#: Glyphs that judge the position (the same section: $10, $13 to $19), from White winning to Black winning.
POSITION_GLYPHS = (18, 16, 14, 10, 13, 15, 17, 19)

#: Words after the standard's table of numeric annotation glyphs; the signs are those that are printed for them.
_WORDS: Mapping[int, tuple[str, str]] = MappingProxyType(
    {
        1: ("!", "good move"),
        2: ("?", "poor move"),
        3: ("!!", "very good move"),
        4: ("??", "very poor move"),
        5: ("!?", "speculative move"),
        6: ("?!", "questionable move"),
        10: ("=", "even"),
        13: ("∞", "unclear"),
        14: ("⩲", "White slightly better"),
        15: ("⩱", "Black slightly better"),
        16: ("±", "White better"),
        17: ("∓", "Black better"),
        18: ("+−", "White winning"),
        19: ("−+", "Black winning"),
    }
)


def glyph_words(nag: int) -> str:
    """Sign and words of a glyph: ``"!? speculative move"``; its number where it is none of the common ones."""
    sign, words = _WORDS.get(nag, (f"${nag}", ""))
    return f"{sign}  {words}".rstrip()


def with_glyph(nags: Sequence[int], chosen: int, among: Sequence[int]) -> tuple[int, ...]:
    """The glyphs with *chosen* in place of any of its kind; 0 takes that kind away. Others keep their order."""
    place = next((at for at, nag in enumerate(nags) if nag in among), len(nags))
    before = [nag for nag in nags[:place] if nag not in among]
    after = [nag for nag in nags[place:] if nag not in among]
    return (*before, *((chosen,) if chosen else ()), *after)
