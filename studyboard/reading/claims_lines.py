"""Claims about pieces on one line: on the same file, one behind the other, between two, lines that a move opens."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations, product
from typing import Final

import chess

from studyboard.board.lines import lined_up
from studyboard.board.naming import sentence, the_piece
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.claims_relations import attacks, doers, guards_own_or_square, looks, target_words
from studyboard.reading.findings import Topic
from studyboard.reading.mentions import Mention, Named
from studyboard.reading.referents import referents

_SLIDERS: Final = (chess.BISHOP, chess.ROOK, chess.QUEEN)


def judge_same_line(claim: Claim) -> list[Judgement]:
    """“The rook and the queen stand on the same file”."""
    first, second = claim.mention("piece"), claim.mention("other")
    if first is None or first.pronoun or (second is None and not first.plural) or (second and second.pronoun):
        return []
    seen: tuple[chess.Board, chess.Square, chess.Square] | None = None
    line = claim.said("line")
    for board in claim.boards():
        for a, b in _pairs(claim, board, first, second):
            if _shares(line, a, b):
                why = f"{target_words(board, a)} and {target_words(board, b)} do"
                return confirmed(Topic.ATTACK, claim.quote(), sentence(why), a, b)
            seen = seen or (board, a, b)
    if seen is None:
        return undecided(Topic.ATTACK, claim.quote(), "It is not clear which pieces are meant.")
    board, a, b = seen
    why = f"{target_words(board, a)} and {target_words(board, b)} are not on one {line}"
    return contradicted(Topic.ATTACK, claim.quote(), sentence(why), a, b)


def judge_holds_file(claim: Claim) -> list[Judgement]:
    """“The rook holds the b-file”, “the b-file is open, and the black rook holds it”: the piece stands on it."""
    file, who = _file_held(claim), claim.mention("piece")
    if file is None or who is None or who.kind not in (chess.ROOK, chess.QUEEN) or who.square is not None:
        return []
    seen: list[str] = []
    for board in claim.boards():
        squares = referents(claim.scene, who, board)
        on_it = [at for at in squares if chess.square_file(at) == file]
        if on_it:
            return confirmed(Topic.SQUARE, claim.quote(), sentence(f"{the_piece(board, on_it[0])} is on it"), *on_it)
        seen += [the_piece(board, at) for at in squares]
    if not seen:
        return []
    why = f"{seen[0]} is not on the {chess.FILE_NAMES[file]}-file"
    return contradicted(Topic.SQUARE, claim.quote(), sentence(why))


def _file_held(claim: Claim) -> int | None:
    """The file that is named, or that “it” means: named last in the sentence before who holds it."""
    named = claim.mention("file")
    if named is not None:
        return named.file
    who, held = claim.mention("piece"), claim.mention("held")
    if held is None or held.pronoun != "it":
        return None
    start = claim.sentence.start
    before = [m for m in claim.scene.mentions if who is not None and start <= m.start < who.start]
    return before[-1].file if before and before[-1].what is Named.FILE else None


def _pairs(
    claim: Claim, board: chess.Board, first: Mention, second: Mention | None
) -> Iterator[tuple[chess.Square, chess.Square]]:
    squares = referents(claim.scene, first, board)
    if second is None:
        yield from combinations(squares, 2)
        return
    yield from ((a, b) for a, b in product(squares, referents(claim.scene, second, board)) if a != b)


def _shares(line: str, a: chess.Square, b: chess.Square) -> bool:
    straight = chess.square_file(a) == chess.square_file(b), chess.square_rank(a) == chess.square_rank(b)
    if line == "file":
        return straight[0]
    if line in ("rank", "row"):
        return straight[1]
    if line in ("colour", "color"):
        return bool(chess.BB_LIGHT_SQUARES >> a & 1) == bool(chess.BB_LIGHT_SQUARES >> b & 1)
    on_line = bool(chess.ray(a, b))
    return on_line and not any(straight) if line == "diagonal" else on_line


def judge_along_line(claim: Claim) -> list[Judgement]:
    """“She protects the bishop along the fourth rank”: of those that do it, does one do it along that line?"""
    target, groups = claim.mention("target"), claim.subjects()
    if target is None or len(groups) != 1:
        return []
    wanted = _line_named(claim)
    sliding: list[tuple[chess.Board, chess.Square, chess.Square]] = []
    for board in claim.boards():
        for at in referents(claim.scene, target, board):
            for by in _could_do(claim, board, groups[0]):
                if not _does_it(claim, board, by, at):
                    continue
                if board.piece_type_at(by) not in _SLIDERS:
                    return []
                sliding.append((board, by, at))
    if not sliding:
        return []
    along = [pair for pair in sliding if all(chess.BB_SQUARES[square] & wanted for square in pair[1:])]
    board, by, at = (along or sliding)[0]
    why = sentence(f"the line runs from {the_piece(board, by)} to {target_words(board, at)}")
    return (confirmed if along else contradicted)(Topic.SQUARE, claim.quote(), why, by, at)


def _line_named(claim: Claim) -> chess.Bitboard:
    """The squares of the rank or the file that is named."""
    file, rank = claim.mention("file"), claim.said("rank")
    if rank:
        return chess.BB_RANKS[claim.scene.words.names.ordinals.index(rank) - 1]
    return chess.BB_EMPTY if file is None or file.file is None else chess.BB_FILES[file.file]


def _could_do(claim: Claim, board: chess.Board, group: list[Mention]) -> list[chess.Square]:
    """Who may do it: a guard is of the side of what it guards, whichever of its kind has moved last."""
    bys = set(doers(claim, board, group))
    if claim.scene.words.hint("counts_guards", claim.said("how")) and len(group) == 1:
        bys.update(referents(claim.scene, group[0], board))
    return sorted(bys)


def _does_it(claim: Claim, board: chess.Board, by: chess.Square, at: chess.Square) -> bool:
    """Does the piece attack or guard what is there, as is said of it, or look that way, whatever stands between?"""
    hint, how = claim.scene.words.hint, claim.said("how")
    attack, guard = hint("counts_attackers", how), hint("counts_guards", how)
    if attack == guard:
        return by != at and looks(board, by, at)
    return (attacks if attack else guards_own_or_square)(board, by, at)


def judge_behind(claim: Claim) -> list[Judgement]:
    """“The queen stands behind the bishop on the same diagonal”, “behind her, on that diagonal, is the pawn on c3”."""
    target = claim.mention("target")
    thing = claim.mention("piece")
    if target is None or (target.kind is None and not target.pronoun and target.square is None):
        return []
    groups = claim.subjects()
    line = claim.said("line") or "line"
    seen: tuple[chess.Board, chess.Square, chess.Square] | None = None
    for board in claim.boards():
        behind = (
            referents(claim.scene, thing, board)
            if thing is not None
            else doers(claim, board, groups[0] if groups else [])
        )
        for a, b in product(behind, referents(claim.scene, target, board)):
            if a == b or board.piece_at(a) is None:
                continue
            if _shares(line, a, b):
                why = f"{the_piece(board, a)} and {target_words(board, b)} are on one {line}"
                return confirmed(Topic.ATTACK, claim.quote(), sentence(why), a, b)
            seen = seen or (board, a, b)
    if seen is None or target.pronoun or target.plural:
        return undecided(Topic.ATTACK, claim.quote(), "It is not clear which pieces are meant.")
    board, a, b = seen
    why = f"{the_piece(board, a)} and {target_words(board, b)} are not on one {line}"
    return contradicted(Topic.ATTACK, claim.quote(), sentence(why), a, b)


def judge_between(claim: Claim) -> list[Judgement]:
    """“The knight stands between the rook and the king”."""
    thing, ends = claim.mention("piece"), claim.mentions("things")
    if thing is None or thing.pronoun or len(ends) != 2 or any(end.pronoun or end.plural for end in ends):
        return []
    seen: tuple[chess.Board, chess.Square] | None = None
    for board in claim.boards():
        for at in referents(claim.scene, thing, board):
            seen = seen or (board, at)
            for a, b in product(*(referents(claim.scene, end, board) for end in ends)):
                if chess.between(a, b) >> at & 1:
                    why = f"{the_piece(board, at)} is between {target_words(board, a)} and {target_words(board, b)}"
                    return confirmed(Topic.ATTACK, claim.quote(), sentence(why), at, a, b)
    if seen is None or not all(referents(claim.scene, end, seen[0]) for end in ends):
        return undecided(Topic.ATTACK, claim.quote(), "It is not clear which pieces are meant.")
    return contradicted(Topic.ATTACK, claim.quote(), sentence(f"{the_piece(*seen)} is not between them"), seen[1])


def judge_looks_through(claim: Claim) -> list[Judgement]:
    """“The bishop looks through the knight at the queen”."""
    front, behind = claim.mention("front"), claim.mention("behind")
    if front is None or behind is None or front.pronoun or behind.pronoun:
        return []
    groups = claim.subjects()
    for board in claim.boards():
        bys = doers(claim, board, groups[0] if groups else [])
        fronts, behinds = referents(claim.scene, front, board), referents(claim.scene, behind, board)
        for line in lined_up(board):
            # What stands behind may be a square, or further back.
            beyond = [at for at in behinds if chess.between(line.by, at) >> line.front & 1]
            if line.by in bys and line.front in fronts and beyond:
                why = f"{the_piece(board, line.front)} is between {the_piece(board, line.by)} and that"
                return confirmed(Topic.ATTACK, claim.quote(), sentence(why), line.by, line.front, beyond[0])
    board = claim.boards()[0]
    bys = doers(claim, board, groups[0] if groups else [])
    named = referents(claim.scene, front, board) and referents(claim.scene, behind, board)
    if len(bys) != 1 or not named:
        return undecided(Topic.ATTACK, claim.quote(), "It is not clear which pieces are meant.")
    return contradicted(
        Topic.ATTACK, claim.quote(), sentence(f"no line of {the_piece(board, bys[0])} goes through both"), bys[0]
    )


def judge_battery(claim: Claim) -> list[Judgement]:
    """“Queen and bishop form a battery”."""
    first, second = claim.mention("piece"), claim.mention("other")
    if first is None or second is None or first.pronoun or second.pronoun:
        return []
    seen: tuple[chess.Board, chess.Square, chess.Square] | None = None
    for board in claim.boards():
        for a, b in _pairs(claim, board, first, second):
            if board.color_at(a) != board.color_at(b):
                continue
            if board.attacks_mask(a) >> b & 1 and board.attacks_mask(b) >> a & 1:
                return confirmed(Topic.ATTACK, claim.quote(), sentence(f"{the_piece(board, a)} backs it up"), a, b)
            seen = seen or (board, a, b)
    if seen is None:
        return undecided(Topic.ATTACK, claim.quote(), "It is not clear which pieces are meant.")
    board, a, b = seen
    why = f"{the_piece(board, a)} and {the_piece(board, b)} do not back each other up"
    return contradicted(Topic.ATTACK, claim.quote(), sentence(why), a, b)


def judge_opens(claim: Claim) -> list[Judgement]:
    """“… opens the diagonal for the bishop”: does the move give a slider more squares?"""
    thing = claim.mention("piece")
    if thing is None or thing.kind not in _SLIDERS or not thing.definite or thing.pronoun:
        return []
    steps = claim.scene.played_near(claim.start)
    if not steps:
        return undecided(Topic.ATTACK, claim.quote(), "No move is played here.")
    found = False
    for step in steps:
        if step.before is None:
            continue
        for at in referents(claim.scene, thing, step.before):
            found = True
            if step.board.piece_at(at) and step.board.attacks_mask(at) & ~step.before.attacks_mask(at):
                why = f"{the_piece(step.board, at)} sees more than before"
                return confirmed(Topic.ATTACK, claim.quote(), sentence(why), at)
    if not found or thing.kind == chess.ROOK:
        # A rook may be given a file on which it does not stand yet.
        return undecided(Topic.ATTACK, claim.quote(), "It is not clear which piece is meant.")
    return contradicted(Topic.ATTACK, claim.quote(), "The move gives it no square that it did not see before.")


def judge_cuts_off(claim: Claim) -> list[Judgement]:
    """“… cuts the bishop off from f7”."""
    thing, target = claim.mention("piece"), claim.mention("target")
    if thing is None or target is None or thing.pronoun or target.pronoun or thing.kind not in _SLIDERS:
        return []
    if target.what is Named.PIECE and target.kind is None:
        return []
    groups = claim.subjects()
    bys: list[chess.Square] = []
    for board in claim.boards():
        bys = bys or doers(claim, board, groups[0] if groups else [])
        for at, to in product(referents(claim.scene, thing, board), referents(claim.scene, target, board)):
            between = chess.between(at, to)
            if any(between >> by & 1 for by in doers(claim, board, groups[0] if groups else [])):
                return confirmed(Topic.ATTACK, claim.quote(), "It stands between them.", at, to)
    if len(bys) != 1:
        return undecided(Topic.ATTACK, claim.quote(), "It is not clear which pieces are meant.")
    words = f"{the_piece(claim.boards()[0], bys[0])} is not between them"
    return contradicted(Topic.ATTACK, claim.quote(), sentence(words), bys[0])


JUDGES: Final[dict[str, Judge]] = {
    "holds_file": judge_holds_file,
    "same_line": judge_same_line,
    "along_line": judge_along_line,
    "behind": judge_behind,
    "between": judge_between,
    "looks_through": judge_looks_through,
    "battery": judge_battery,
    "opens": judge_opens,
    "cuts_off": judge_cuts_off,
}
