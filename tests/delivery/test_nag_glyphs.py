"""Annotation glyphs in print."""

from __future__ import annotations

import pytest

from studyboard.delivery.nag_glyphs import nag_text


@pytest.mark.parametrize(
    ("nags", "printed"),
    [
        ((), ""),
        ((1,), "!"),
        ((2,), "?"),
        ((3,), "!!"),
        ((4,), "??"),
        ((5,), "!?"),
        ((6,), "?!"),
        ((10,), " ="),
        ((14,), " ⩲"),
        ((15,), " ⩱"),
        ((16,), " ±"),
        ((17,), " ∓"),
        ((18,), " +−"),
        ((19,), " −+"),
        ((0,), ""),
        ((251,), " $251"),
        ((16, 1), "! ±"),
        ((1, 1), "!"),
    ],
)
def test_glyphs_by_number(nags, printed):
    """PGN standard (1994), section 10: $1-$6 of the move, $10 and $14-$19 of the position."""
    assert nag_text(nags) == printed
