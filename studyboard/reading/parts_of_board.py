"""Which part of the board is spoken of: a wing, a file, a rank, the squares of one shade."""

from __future__ import annotations

import re
from typing import Final

import chess

from studyboard.reading.claim import Claim
from studyboard.reading.mentions import Named

#: The files from the king's to the edge, as a wing.
KINGSIDE: Final = chess.BB_FILE_E | chess.BB_FILE_F | chess.BB_FILE_G | chess.BB_FILE_H
QUEENSIDE: Final = ~KINGSIDE & chess.BB_ALL
_CENTRE: Final = chess.BB_FILE_D | chess.BB_FILE_E
_FILE_BEFORE: Final = re.compile(r"§f(\d+)(?: ,)? (?:where|on which)$")


def parts_meant(claim: Claim) -> tuple[chess.Bitboard, ...]:
    """What the place named behind or right before the claim may be taken to be, the likeliest first.

    All squares where none is named; empty for a place of another sort.
    """
    hint, where = claim.scene.words.hint, claim.said("where")
    file = _FILE_BEFORE.search(claim.before())
    if file is not None and not where:
        return (chess.BB_FILES[claim.scene.mentions[int(file[1])].file or 0],)
    for text in (where, claim.before()):
        ending = text == claim.before()
        if hint("queen_wing", text) and (not ending or hint("wing_before", text)):
            return wings_meant(QUEENSIDE)
        if hint("king_wing", text) and (not ending or hint("wing_before", text)):
            return wings_meant(KINGSIDE)
        if text and not ending:
            return _named_part(claim, text)
        if text and hint("place_before", text):
            return ()
    return (chess.BB_ALL,)


def _named_part(claim: Claim, text: str) -> tuple[chess.Bitboard, ...]:
    """“On the d-file”, “on the fifth rank”, which may be counted from either side, “on dark squares”."""
    words = text.split()
    file = next((m for m in claim.mentions("where") if m.what is Named.FILE), None)
    if file is not None:
        return (chess.BB_FILES[file.file or 0],)
    ordinals = claim.scene.words.names.ordinals
    rank = next((ordinals.index(word) - 1 for word in words if word in ordinals[1:9]), None)
    if rank is not None:
        return (chess.BB_RANKS[rank], chess.BB_RANKS[7 - rank])
    if claim.scene.words.hint("light_squares", text):
        return (chess.BB_LIGHT_SQUARES,)
    return (chess.BB_DARK_SQUARES,) if claim.scene.words.hint("dark_squares", text) else ()


def wings_meant(area: chess.Bitboard) -> tuple[chess.Bitboard, ...]:
    """What a wing may be taken to be: half of the board, or that without the two files of the centre."""
    return (area, area & ~_CENTRE)


def part_words(area: chess.Bitboard) -> str:
    """“ on the kingside”; empty for the whole board."""
    if area == chess.BB_ALL:
        return ""
    if area in chess.BB_FILES:
        return f" on the {chess.FILE_NAMES[chess.BB_FILES.index(area)]}-file"
    if area in chess.BB_RANKS:
        return f" on rank {chess.BB_RANKS.index(area) + 1}"
    if area in (chess.BB_LIGHT_SQUARES, chess.BB_DARK_SQUARES):
        return f" on {'light' if area == chess.BB_LIGHT_SQUARES else 'dark'} squares"
    wing, centre_file = ("kingside", "e") if area & KINGSIDE else ("queenside", "d")
    return f" on the {wing}" if area & _CENTRE else f" on the {wing} without the {centre_file}-file"
