"""Claims about what could be played: pawns to be pushed, captures that mate, the squares of a piece in a corner."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import Final

import chess

from studyboard.board.mates import mate_in
from studyboard.board.naming import counted, sentence, side, the_piece
from studyboard.board.tactics import turned
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.claims_mate import mate_for_waiting
from studyboard.reading.findings import Topic
from studyboard.reading.imagined import before_moves
from studyboard.reading.mentions import Mention, Named
from studyboard.reading.referents import referents, side_meant

#: How many squares a piece reaches from the corner of an empty board.
_FROM_CORNER: Final = {chess.KNIGHT: 2, chess.BISHOP: 7, chess.ROOK: 14, chess.QUEEN: 21, chess.KING: 3}


def judge_can_push(claim: Claim) -> list[Judgement]:
    """“He might push the b-pawn”: queried where no pawn that can be meant has a move forward."""
    thing = claim.mention("piece")
    if thing is None or thing.kind != chess.PAWN or thing.plural or not thing.definite:
        return []
    if thing.file is None and (thing.square is None or thing.moves_to):
        return []
    who = claim.mention("who")
    colour = thing.colour if thing.colour is not None or who is None else side_meant(claim.scene, who)
    stuck: tuple[chess.Board, chess.Square] | None = None
    for board in [*claim.boards(), *before_moves(claim)]:
        for at in referents(claim.scene, thing, board):
            owner = bool(board.color_at(at))
            facing = turned(board, owner) if colour in (None, owner) else None
            if facing is None:
                continue
            pushed = next(
                (m for m in facing.generate_legal_moves(chess.BB_SQUARES[at]) if not facing.is_capture(m)), None
            )
            if pushed is not None:
                return confirmed(Topic.MOVE, claim.quote(), f"{facing.san(pushed)} can be played.", at)
            stuck = stuck or (board, at)
    if stuck is None:
        return undecided(Topic.MOVE, claim.quote(), "It is not clear which pawn is meant.")
    why = sentence(f"{the_piece(*stuck)} cannot go forward")
    return contradicted(Topic.MOVE, claim.quote(), why, stuck[1])


def judge_takes_mate(claim: Claim) -> list[Judgement]:
    """“One more move, and I take on h2 and he's mated”: is any capture there mate, if it were that side's turn?"""
    where = claim.mention("square")
    king = claim.mention("king")
    if where is None or where.square is None or (king is not None and king.kind not in (None, chess.KING)):
        return []
    if king is not None and (king.square is not None or king.moves_to):
        return []
    tried: tuple[chess.Board, chess.Move] | None = None
    boards = claim.boards()
    if any(board.is_checkmate() for board in boards):
        return []
    for board in [*boards, *before_moves(claim)]:
        for facing in (board, turned(board, not board.turn)):
            for move in (
                () if facing is None else facing.generate_legal_captures(to_mask=chess.BB_SQUARES[where.square])
            ):
                assert facing is not None
                after = facing.copy(stack=False)
                after.push(move)
                if after.is_checkmate():
                    return confirmed(Topic.MATE, claim.quote(), f"{facing.san(move)}.", move.to_square)
                tried = tried or (after, move)
    if tried is None:
        return undecided(Topic.MATE, claim.quote(), "Nothing can be taken there now.")
    after, move = tried
    reply = next(iter(after.legal_moves), None)
    out = "" if reply is None else f": {after.san(reply)} can be played"
    return contradicted(Topic.MATE, claim.quote(), f"Taking there is not mate{out}.", move.to_square)


def judge_mated_next(claim: Claim) -> list[Judgement]:
    """“Black is mated next move whatever he does”."""
    who = claim.mention("side") or claim.mention("piece")
    colour = None if who is None else side_meant(claim.scene, who)
    if claim.has("it"):
        colour = claim.boards()[0].turn
    if colour is None:
        return []
    for board in claim.boards():
        mated = mate_for_waiting(board, 1) == 1 if board.turn == colour else mate_in(board, 1) is not None
        if mated:
            return confirmed(Topic.MATE, claim.quote(), f"Whatever {side(colour)} plays, mate follows.")
    board = claim.boards()[0]
    for move in board.legal_moves if board.turn == colour else ():
        after = board.copy(stack=False)
        after.push(move)
        if mate_in(after, 1) is None:
            return contradicted(
                Topic.MATE, claim.quote(), f"After {board.san(move)} there is no mate on the next move."
            )
    return contradicted(Topic.MATE, claim.quote(), "No move mates here.")


def judge_in_corner(claim: Claim) -> list[Judgement]:
    """“A knight in the corner has three squares”: so many on an empty board."""
    thing, number = claim.mention("piece"), claim.mention("number")
    if thing is None or number is None or thing.what is not Named.PIECE or thing.kind not in _FROM_CORNER:
        return []
    true = _FROM_CORNER[thing.kind]
    why = f"A {chess.piece_name(thing.kind)} in the corner has {counted(true, 'square')}."
    return (confirmed if number.value == true else contradicted)(Topic.NUMBER, claim.quote(), why)


def judge_one_of_squares(claim: Claim) -> list[Judgement]:
    """“The king has six squares, and e3 is one of them”."""
    where, thing = claim.mention("square"), _whose_squares(claim)
    if where is None or where.square is None or thing is None:
        return []
    denied = claim.has("no") or claim.scene.words.hint("is_not", claim.match.group())
    seen: tuple[chess.Board, chess.Square] | None = None
    for board in [*claim.boards(), *before_moves(claim)]:
        meant = sorted(referents(claim.scene, thing, board), key=lambda at: board.color_at(at) != board.turn)
        # Of two kings, the one whose turn it is.
        for at in meant[:1] if thing.kind == chess.KING else meant:
            facing = turned(board, bool(board.color_at(at)))
            if facing is None:
                continue
            if seen is not None and board.color_at(at) != seen[0].color_at(seen[1]):
                continue
            goes = any(facing.generate_legal_moves(chess.BB_SQUARES[at], chess.BB_SQUARES[where.square]))
            if goes != denied:
                return confirmed(Topic.MOVE, claim.quote(), _can_go(board, at, where.square, goes), at)
            seen = seen or (board, at)
    if seen is None:
        return undecided(Topic.MOVE, claim.quote(), "It is not clear which piece is meant.")
    return contradicted(Topic.MOVE, claim.quote(), _can_go(*seen, where.square, denied), seen[1])


def _can_go(board: chess.Board, at: chess.Square, to: chess.Square, goes: bool) -> str:
    return sentence(f"{the_piece(board, at)} {'can' if goes else 'cannot'} go to {chess.square_name(to)}")


def _whose_squares(claim: Claim) -> Mention | None:
    """The piece whose squares were counted before, in this sentence or the one before: “the king has six squares”."""
    scene = claim.scene
    start, _ = scene.sentence(claim.start)
    first = scene.sentence(start - 1)[0] if start else 0
    before = [m for m in scene.mentions if first <= m.start < claim.start]
    for thing, number in reversed(list(pairwise(before))):
        after = " ".join(token.text for token in scene.tokens[number.end : number.end + 3])
        if number.what is Named.NUMBER and thing.kind is not None and scene.words.hint("squares_after", after):
            return thing
    return None


def judge_can_put(claim: Claim) -> list[Judgement]:
    """“On e2 he can put the rook or the knight”, “can put the queen on c8”: is there such an answer to the check?"""
    where = claim.mention("square")
    # Where nobody is in check, it may be said of a plan that takes several moves.
    board = claim.boards()[0]
    if not board.is_check():
        return []
    for thing in claim.mentions("things"):
        to = thing.square if where is None else where.square
        if thing.kind is None or thing.plural or to is None or thing.also:
            return []
        if not _reaches(board, thing, to):
            why = f"No {chess.piece_name(thing.kind)} can go to {chess.square_name(to)}."
            found = contradicted(Topic.PIECE, claim.quote(), why, to)
            return [replace(one, reach=(claim.start, thing.end)) for one in found]
    return confirmed(Topic.PIECE, claim.quote(), "All of them can go there.")


def judge_reply_listed(claim: Claim) -> list[Judgement]:
    """“There are three legal replies: …, or the king steps up to d7”: is it legal?"""
    thing, where = claim.mention("piece"), claim.mention("square")
    if not claim.hinted("replies_before") or thing is None or thing.kind is None or thing.pronoun:
        return []
    to = thing.square if where is None else where.square
    if to is None or (where is None and not thing.moves_to):
        return []
    boards = [*claim.boards(), *before_moves(claim)]
    told = f"The {chess.piece_name(thing.kind)} {{}} go to {chess.square_name(to)}."
    if any(_reaches(board, thing, to) for board in boards):
        return confirmed(Topic.MOVE, claim.quote(), told.format("can"), to)
    return contradicted(Topic.MOVE, claim.quote(), told.format("cannot"), to)


def _reaches(board: chess.Board, thing: Mention, to: chess.Square) -> bool:
    """Has the side to move a legal move of such a piece to this square?"""
    return any(
        board.piece_type_at(move.from_square) == thing.kind
        and thing.colour in (None, board.turn)
        and thing.comes_from in (None, move.from_square)
        and thing.file in (None, chess.square_file(move.from_square))
        for move in board.generate_legal_moves(to_mask=chess.BB_SQUARES[to])
    )


JUDGES: Final[dict[str, Judge]] = {
    "can_push": judge_can_push,
    "takes_mate": judge_takes_mate,
    "mated_next": judge_mated_next,
    "in_corner": judge_in_corner,
    "one_of_squares": judge_one_of_squares,
    "can_put": judge_can_put,
    "reply_listed": judge_reply_listed,
}
