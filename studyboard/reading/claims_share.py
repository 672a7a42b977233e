"""Claims of how many of some pieces are so: “three of White's pawns are on dark squares”, “no pawn is doubled”."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final, TypeAlias

import chess

from studyboard.board.naming import counted, listed, sentence, the_piece
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.claims_inventory import BOTH
from studyboard.reading.claims_pawns import FEATURES
from studyboard.reading.findings import Topic
from studyboard.reading.mentions import Mention, Named
from studyboard.reading.parts_of_board import part_words, parts_meant
from studyboard.reading.referents import referents

_Test: TypeAlias = Callable[[chess.BaseBoard, chess.Square], bool]


def judge_share(claim: Claim) -> list[Judgement]:
    """“All of Black's pawns but one are on the kingside”, “of White's five pawns two are isolated”."""
    whole = claim.mention("whole")
    if whole is None or whole.kind is None or whole.square is not None or whole.other or claim.hinted("not_all_after"):
        return []
    if whole.file is not None or (claim.has("all") and not whole.plural) or claim.before().endswith(" and"):
        # “The a, f and h-pawns are all passed.”
        return []
    tests = _tests(claim)
    if not tests or (claim.has("feature") and whole.kind != chess.PAWN):
        return []
    wanted = _wanted(claim, whole)
    if wanted is None:
        return []
    first: tuple[chess.Board, list[chess.Square], list[chess.Square]] | None = None
    more = False
    for board in claim.boards():
        for colours in _owners(claim, whole):
            squares = [at for c in colours for at in board.pieces(whole.kind, c)]
            for test in tests:
                so = [at for at in squares if test(board, at)]
                first = first or (board, squares, so)
                if squares and wanted(board, squares, so):
                    return confirmed(Topic.PAWNS, claim.quote(), _words(claim, board, squares, so), *so, exact=True)
                more = more or (claim.has("number") and len(so) > _number(claim))
    if first is None or (more and not claim.hinted("only_so_many") and not claim.has("part")):
        return undecided(Topic.PAWNS, claim.quote(), "There are more of them.")
    board, squares, so = first
    return contradicted(Topic.PAWNS, claim.quote(), _words(claim, board, squares, so), *so)


def _tests(claim: Claim) -> list[_Test]:
    """What they are said to be, in each way in which it can be taken."""
    feature = FEATURES.get(claim.said("feature"))
    if feature is not None:
        return [feature]
    return [_within(area) for area in parts_meant(claim) if area != chess.BB_ALL]


def _within(area: chess.Bitboard) -> _Test:
    return lambda _, at: bool(chess.BB_SQUARES[at] & area)


def _owners(claim: Claim, whole: Mention) -> list[tuple[chess.Color, ...]]:
    """Whose pieces may be counted: of one side, or where none is named of either or both."""
    owner = claim.mention("side")
    colour = whole.colour if owner is None else owner.colour
    if colour is not None:
        return [(colour,)]
    return [BOTH, (chess.WHITE,), (chess.BLACK,)]


_Wanted: TypeAlias = Callable[[chess.Board, list[chess.Square], list[chess.Square]], bool]


def _wanted(claim: Claim, whole: Mention) -> _Wanted | None:
    """Whether the number of those that are so, among all of them, is the one that is said; None where none is said."""
    names = claim.scene.words.names.numbers
    words = [token.text for token in claim.scene.tokens[whole.start : whole.end]]
    total = next((names.index(word) for word in words[1:] if word in names), None)
    if claim.has("none") or words[0] == "no":
        return lambda _, every, so: not so
    if claim.has("number"):
        count = _number(claim)
        return lambda _, every, so: len(so) == count and total in (None, len(every))
    if claim.has("half"):
        return lambda _, every, so: 2 * len(so) == len(every) and total in (None, len(every))
    but = claim.mention("but")
    if but is not None and but.what is Named.PIECE:
        return lambda board, every, so: _all_but(claim, board, every, so, but)
    left = 0 if but is None else but.value
    if claim.has("all") or words[0] == "both":
        return lambda _, every, so: len(so) == len(every) - left and len(every) > 1 and total in (None, len(every))
    return None


def _number(claim: Claim) -> int:
    number = claim.mention("number")
    return 0 if number is None else number.value


def _all_but(claim: Claim, board: chess.Board, every: list[chess.Square], so: list[chess.Square], but: Mention) -> bool:
    left = set(every) - set(so)
    return len(left) == 1 and left <= set(referents(claim.scene, but, board))


def _words(claim: Claim, board: chess.Board, every: list[chess.Square], so: list[chess.Square]) -> str:
    """“Two of five pawns are isolated: the pawn on c4 and the pawn on e6.”"""
    areas = parts_meant(claim) if not claim.has("feature") else ()
    what = f" {claim.said('feature')}" if claim.has("feature") else part_words(areas[0])
    kind = chess.piece_name(board.piece_type_at(every[0]) or chess.PAWN) if every else "piece"
    if not so:
        return sentence(f"none of {counted(len(every), kind)} is{what}")
    names = listed([the_piece(board, at) for at in so])
    return sentence(f"{len(so)} of {counted(len(every), kind)} {'is' if len(so) == 1 else 'are'}{what}: {names}")


def judge_sole_feature(claim: Claim) -> list[Judgement]:
    """“Black's only isolated pawn is the one on d5”, “the only passed pawn that White has stands on a5”."""
    who, thing = claim.mention("side"), claim.mention("piece") or claim.mention("square")
    test = FEATURES.get(claim.said("feature"))
    pawn = claim.mention("sort")
    if thing is None or test is None or pawn is None or pawn.kind != chess.PAWN or thing.pronoun:
        return []
    colour = pawn.colour if who is None else who.colour
    colours = BOTH if colour is None else (colour,)
    boards = claim.boards()
    for board in boards:
        so = [at for c in colours for at in board.pieces(chess.PAWN, c) if test(board, at)]
        if len(so) == 1 and so[0] in referents(claim.scene, thing, board):
            why = sentence(f"{the_piece(board, so[0])} is {claim.said('feature')}")
            return confirmed(Topic.PAWNS, claim.quote(), why, *so)
    board = boards[0]
    every = [at for c in colours for at in board.pieces(chess.PAWN, c)]
    so = [at for at in every if test(board, at)]
    return contradicted(Topic.PAWNS, claim.quote(), _words(claim, board, every, so), *so)


JUDGES: Final[dict[str, Judge]] = {"share": judge_share, "sole_feature": judge_sole_feature}
