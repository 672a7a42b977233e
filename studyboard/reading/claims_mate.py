"""Claims about mate and stalemate."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

import chess

from studyboard.board.mates import Mate, checking_moves, mate_in, mates_at_once
from studyboard.board.naming import counted, listed, side
from studyboard.board.tactics import turned
from studyboard.board.work import never_cancelled
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.findings import Topic, Verdict
from studyboard.reading.imagined import (
    before_moves,
    gives_mate,
    imagined_moves,
    landed_on,
    line_words,
    san_of,
    sans,
    way_out,
)
from studyboard.reading.mentions import Mention

#: Mates longer than this are not looked for; shorter ones take well under a second as a line is typed.
_LONGEST_MATE, _QUICK_MATE = 4, 2


def judge_mate(claim: Claim) -> list[Judgement]:
    """“Checkmate”, “is mate”."""
    topic = Topic.MATE
    for board in claim.boards():
        if board.is_checkmate():
            return confirmed(topic, claim.quote(), f"{side(board.turn)} is checkmated.", exact=True)
    if claim.hinted("mate_later_after"):
        return undecided(topic, claim.quote(), "It may be a mate that is to come.")
    imagined, once_more = imagined_moves(claim), imagined_moves(claim, again=True)
    for board, move in (*imagined, *once_more):
        if gives_mate(board, move):
            return confirmed(topic, claim.quote(), f"{board.san(move)}.", move.to_square)
    threatened = [*once_more, *imagined]
    if threatened and claim.hinted("threatened_mate_before"):
        board, move = threatened[0]
        why = f"{board.san(move)} would not be mate{way_out(board, move)}."
        return contradicted(topic, claim.quote(), why, move.to_square)
    tells = claim.hinted("mate_told_before") and not claim.hinted("mate_not_told_before")
    if imagined and tells:
        board, move = imagined[0]
        return contradicted(
            topic, claim.quote(), f"{board.san(move)} is not mate{way_out(board, move)}.", move.to_square
        )
    steps = claim.scene.played_near(claim.start)
    if not steps or not tells:
        return undecided(topic, claim.quote(), "It may be a mate that is to come.")
    board = steps[0].board
    if not board.is_check() and mate_in(board, 1) is not None:
        return undecided(topic, claim.quote(), "It is mate on the next move.")
    ways = listed([board.san(move) for move in list(board.legal_moves)[:3]], "or")
    why = (
        f"{san_of(steps[0])} is not mate: {ways} can be played."
        if board.is_check()
        else f"{san_of(steps[0])} is not mate, nor check."
    )
    return contradicted(topic, claim.quote(), why, *landed_on(steps[0]))


def judge_mated_on(claim: Claim) -> list[Judgement]:
    """“White was mated on g2”, where the game is over: the square of the last move, or of the king."""
    where, talk = claim.mention("square"), claim.scene.talk
    board = claim.scene.steps[-1].board if claim.scene.steps else claim.scene.start
    if where is None or not (talk.part or talk.ends_game) or not talk.game or not board.is_checkmate():
        return []
    if claim.hinted("mate_not_told_before") or not (claim.has("done") or claim.hinted("mate_told_before")):
        # “The threat of mate on f2 decided it.”
        return []
    last = talk.game[-1].to_square
    why = f"{side(board.turn)} is mated by the move to {chess.square_name(last)}."
    right = where.square in (last, board.king(board.turn))
    return (confirmed if right else contradicted)(Topic.SQUARE, claim.quote(), why, last)


def judge_mate_in(claim: Claim) -> list[Judgement]:
    """“Mate in two”, by a complete search."""
    number = claim.mention("number")
    moves = 1 if claim.has("one") else 0 if number is None else number.value
    topic = Topic.MATE
    if not 1 <= moves <= (_LONGEST_MATE if claim.deep else _QUICK_MATE):
        return undecided(topic, claim.quote(), "This search takes longer than a line is looked at.")
    who = claim.mention("who")
    boards = [*claim.boards(), *before_moves(claim)]
    found = claim.search(lambda cancelled: _mate_among(boards, moves, who, cancelled))
    if found is None:
        return undecided(topic, claim.quote(), "This search takes longer than a line is looked at.")
    board, mate = found.board, found.mate
    if found.waiting and board is not None:
        return confirmed(topic, claim.quote(), f"Whatever {side(board.turn)} plays, mate follows.")
    if board is not None and mate is not None:
        line, played = line_words(board, mate.line), sans(board, mate.line)
        if mate.moves == moves:
            return [Judgement(Verdict.CONFIRMED, topic, claim.quote(), line, (), played, True)]
        why = f"It is mate in {counted(mate.moves, 'move')} already: {line}"
        return [Judgement(Verdict.CONTRADICTED, topic, claim.quote(), why, (), played)]
    if found.threatened:
        return undecided(topic, claim.quote(), "It would be, if it were not the other side's turn.")
    whose = side(boards[0].turn if who is None else bool(who.colour))
    return contradicted(
        topic, claim.quote(), f"{whose} has no mate in {counted(moves, 'move')} here: every move was tried."
    )


@dataclass(frozen=True, slots=True)
class _Found:
    """A mate in so many moves: of the side to move on *board*, or (waiting) against it whatever it plays.

    threatened: there would be one, if it were the other side's turn
    """

    board: chess.Board | None = None
    mate: Mate | None = None
    waiting: bool = False
    threatened: bool = False


def _mate_among(boards: list[chess.Board], moves: int, who: Mention | None, cancelled: Callable[[], bool]) -> _Found:
    """A mate in *moves* in any of these positions, of the side that is said to have it; else a shorter one."""
    shorter = _Found()
    threatened = False
    for board in boards:
        ours = who is None or who.colour == board.turn
        mate = mate_in(board, moves, cancelled=cancelled) if ours else None
        if mate is not None and mate.moves == moves:
            return _Found(board, mate)
        if mate is None and moves > 1 and (who is None or not ours):
            after = mate_for_waiting(board, moves - 1, cancelled)
            also = None if ours or after is not None else mate_for_waiting(board, moves, cancelled)
            if moves in (after, also) or after == moves - 1:
                return _Found(board, waiting=True)
        if shorter.board is None and mate is not None:
            shorter = _Found(board, mate)
        if not ours and not threatened:
            facing = turned(board, not board.turn)
            threatened = facing is not None and mate_in(facing, moves, cancelled=cancelled) is not None
    return _Found(shorter.board, shorter.mate, threatened=threatened)


def mate_for_waiting(board: chess.Board, moves: int, cancelled: Callable[[], bool] = never_cancelled) -> int | None:
    """In how many moves (at most *moves*) the side to move is mated whatever it plays; None where it is not."""
    longest = 0
    replies = list(board.legal_moves)
    if not replies or moves < 1:
        return None
    for reply in replies:
        after = board.copy(stack=False)
        after.push(reply)
        mate = mate_in(after, moves, cancelled=cancelled)
        if mate is None:
            return None
        longest = max(longest, mate.moves)
    return longest


def judge_threatens_mate(claim: Claim) -> list[Judgement]:
    """“Threatens mate on f7”: mate at once, if it were the other side's turn again."""
    where = claim.mention("square") or claim.mention("on")
    square = None if where is None else where.square
    topic = Topic.MATE
    number = claim.mention("number")
    if number is not None and number.value != 1:
        return undecided(topic, claim.quote(), "Only mates on the next move are tried as threats.")
    checked = False
    who = claim.mention("who")
    for board in claim.boards():
        for facing in (turned(board, not board.turn), board):
            if facing is None or (who is not None and facing.turn != who.colour):
                continue
            checked = True
            for move in mates_at_once(facing):
                if square is None or move.to_square == square:
                    return confirmed(
                        topic, claim.quote(), f"The threat is {facing.san(move)}.", move.to_square, exact=True
                    )
    if not checked or claim.boards()[0].is_check():
        return undecided(topic, claim.quote(), "A check has to be answered first.")
    if square is not None and _mates_by_check(claim, square, who):
        return undecided(topic, claim.quote(), "A check there is followed by mate.")
    if square is None:
        waiting = turned(claim.boards()[0], not claim.boards()[0].turn)
        if waiting is not None and claim.search(lambda cancelled: mate_in(waiting, 2, cancelled=cancelled)) is not None:
            return undecided(topic, claim.quote(), "The threat is a mate in two.")
    place = "" if square is None else f" on {chess.square_name(square)}"
    what = "no move" if who is None else f"no move of {side(bool(who.colour))}'s"
    return contradicted(topic, claim.quote(), f"If nothing were done, {what} would give mate{place}.")


def _mates_by_check(claim: Claim, square: chess.Square, who: Mention | None) -> bool:
    """Is there a check on that square after which every answer is mated on the next move?"""
    for board in claim.boards():
        for facing in (turned(board, not board.turn), board):
            if facing is None or (who is not None and facing.turn != who.colour):
                continue
            for move in checking_moves(facing):
                if move.to_square == square:
                    after = facing.copy(stack=False)
                    after.push(move)
                    if mate_for_waiting(after, 1) is not None:
                        return True
    return False


def judge_has_mate(claim: Claim) -> list[Judgement]:
    """“White has mate on a8”, “Black mates at once”, “the queen mates on h7”."""
    who, thing, where = claim.mention("who"), claim.mention("piece"), claim.mention("square")
    square = None if where is None else where.square
    topic = Topic.MATE
    if thing is not None and (thing.kind is None or thing.pronoun):
        return []
    checked = False
    for step in claim.scene.played_near(claim.start):
        fits = square in (None, step.landed) and (who is None or who.colour != step.board.turn)
        if step.board.is_checkmate() and fits:
            return confirmed(topic, claim.quote(), f"{side(step.board.turn)} is checkmated.", exact=True)
    for board in [*claim.boards(), *before_moves(claim)]:
        for facing in (board, turned(board, not board.turn)):
            if facing is None or (who is not None and facing.turn != who.colour):
                continue
            checked = True
            for move in mates_at_once(facing):
                kind = facing.piece_type_at(move.from_square)
                if square in (None, move.to_square) and (thing is None or thing.kind == kind):
                    return confirmed(topic, claim.quote(), f"{facing.san(move)}.", move.to_square)
    if not checked:
        return undecided(topic, claim.quote(), "A check has to be answered first.")
    place = "" if square is None else f" on {chess.square_name(square)}"
    whose = "No move" if who is None else f"No move of {side(bool(who.colour))}'s"
    return contradicted(topic, claim.quote(), f"{whose} gives mate{place}.")


def judge_stalemate(claim: Claim) -> list[Judgement]:
    """“Stalemate”."""
    for board in claim.boards():
        if board.is_stalemate():
            return confirmed(Topic.RESULT, claim.quote(), f"{side(board.turn)} is stalemated.", exact=True)
    for board, move in imagined_moves(claim):
        after = board.copy(stack=False)
        after.push(move)
        if after.is_stalemate():
            return confirmed(Topic.RESULT, claim.quote(), f"{board.san(move)} is stalemate.")
    if not claim.hinted("stalemate_told_before") or not claim.scene.played_near(claim.start):
        return undecided(Topic.RESULT, claim.quote(), "It may be a stalemate that could come.")
    board = claim.boards()[0]
    ways = listed([board.san(move) for move in list(board.legal_moves)[:3]], "or")
    return contradicted(Topic.RESULT, claim.quote(), f"{side(board.turn)} can move: {ways}.")


JUDGES: Final[dict[str, Judge]] = {
    "mate": judge_mate,
    "mated_on": judge_mated_on,
    "has_mate": judge_has_mate,
    "mate_in": judge_mate_in,
    "threatens_mate": judge_threatens_mate,
    "stalemate": judge_stalemate,
}
