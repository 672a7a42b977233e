"""Claims about what a side may or must play: castling, only moves, captures that have to be made."""

from __future__ import annotations

from typing import Final

import chess

from studyboard.board.exchange import exchange_after
from studyboard.board.mates import mate_in
from studyboard.board.naming import counted, listed, side
from studyboard.board.rights import castling, only_move
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.findings import Topic
from studyboard.reading.imagined import before_moves
from studyboard.reading.mentions import Named
from studyboard.reading.referents import referents


def judge_castling_right(claim: Claim) -> list[Judgement]:
    """“Black can no longer castle”, “White can still castle kingside”, “has not castled”."""
    topic = Topic.CASTLING
    who = claim.mention("side") or claim.mention("piece")
    board = claim.boards()[0]
    wing = _said_wing(claim)
    wings = [True, False] if wing is None else [wing]
    if claim.has("nobody"):
        colours = list(chess.COLORS)
    elif who is None or (who.colour is None and who.what is Named.SIDE):
        return []
    else:
        colours = _colours(claim, who.colour, who.kind)
    if claim.hinted("castled_nowhere_after"):
        return []
    if not colours:
        colours = _side_before(claim)
    if not colours:
        return undecided(topic, claim.quote(), "It is not clear who is meant.")
    if claim.has("notyet") or claim.has("done"):
        wanted_all = claim.has("done")
        # “Black castled as well, and …” may be said before the words at which it is played.
        last = len(claim.scene.tokens) if claim.has("done") else claim.start
        castled = [claim.scene.castled(colour, last) for colour in colours]
        if any(known is None for known in castled):
            return undecided(topic, claim.quote(), "The moves before this position are not known.")
        right = all(
            bool(known) == wanted_all and (wing is None or (known == "k") == wings[0] or not known) for known in castled
        )
        why = f"{side(colours[0])} {'has castled' if castled[0] else 'has not castled'}{_wing(castled[0])}."
        return confirmed(topic, claim.quote(), why) if right else contradicted(topic, claim.quote(), why)
    states = [castling(board, colour, wing) for colour in colours for wing in wings]
    if claim.has("able"):
        without = next(
            (s for s, other in zip(states[::2], states[1::2], strict=False) if not (s.right or other.right)), None
        )
        if without is not None:
            return contradicted(topic, claim.quote(), without.why)
        return undecided(topic, claim.quote(), "Both have the right; whether it can be done now is not claimed.")
    denied = claim.has("no") or claim.has("nobody")
    if claim.has("rights"):
        kept = next((state for state in states if state.right), None)
        if kept is not None:
            return contradicted(topic, claim.quote(), f"{kept.why} The right is still there.")
        return confirmed(topic, claim.quote(), states[0].why)
    if denied:
        if any(state.now for state in states):
            return contradicted(topic, claim.quote(), next(state.why for state in states if state.now))
        if claim.hinted("for_good") and all(state.right for state in states):
            return contradicted(topic, claim.quote(), f"{states[0].why} The right is still there.")
        if not any(state.right for state in states) or claim.has("no"):
            return confirmed(topic, claim.quote(), states[0].why)
        return undecided(topic, claim.quote(), states[0].why)
    if any(state.now for state in states):
        return confirmed(topic, claim.quote(), next(state.why for state in states if state.now))
    if claim.has("at_once") or claim.hinted("at_once_after"):
        return contradicted(topic, claim.quote(), states[0].why)
    if any(state.right for state in states):
        return undecided(topic, claim.quote(), next(state.why for state in states if state.right))
    return contradicted(topic, claim.quote(), states[0].why)


def judge_only_move(claim: Claim) -> list[Judgement]:
    """“The only legal move”, “has only one legal move”."""
    topic = Topic.FORCED
    number = claim.mention("number")
    wanted = 1 if number is None else number.value
    legal = claim.hinted("legal") or claim.has("forced")
    boards = [*claim.boards(), *before_moves(claim)]
    for board in boards:
        count = board.legal_moves.count()
        if count == wanted:
            move = only_move(board)
            named = "" if move is None else f": {board.san(move)}"
            why = f"{side(board.turn)} has {counted(count, 'legal move')}{named}."
            return confirmed(topic, claim.quote(), why)
    board = before_moves(claim)[0] if before_moves(claim) else boards[0]
    count = board.legal_moves.count()
    if legal:
        ways = listed([board.san(move) for move in list(board.legal_moves)[:3]])
        return contradicted(
            topic,
            claim.quote(),
            f"{side(board.turn)} has {counted(count, 'legal move')}: {ways}{' …' if count > 3 else ''}.",
        )
    step = next(iter(claim.scene.played_near(claim.start)), None)
    if step is None or step.before is None or step.move is None or not step.before.is_check():
        return undecided(topic, claim.quote(), "Whether another move is as good, the board alone does not say.")
    best = exchange_after(step.before, step.move)
    for move in step.before.legal_moves:
        after = step.before.copy(stack=False)
        after.push(move)
        as_good = move != step.move and exchange_after(step.before, move) >= max(0, best)
        if as_good and _loses_nothing(after) and mate_in(after, 2) is None:
            why = f"{step.before.san(move)} is possible as well, and loses nothing at once."
            return contradicted(topic, claim.quote(), why, move.to_square)
    return undecided(topic, claim.quote(), "Whether another move is as good, the board alone does not say.")


def judge_only_piece(claim: Claim) -> list[Judgement]:
    """“Only the queen can block”, “only the king can take”."""
    thing, verb = claim.mention("piece"), claim.said("verb")
    if thing is None or thing.kind is None:
        return []
    topic = Topic.FORCED
    seen: tuple[chess.Board, chess.Move] | None = None
    for board in claim.boards():
        moves = list(board.legal_moves)
        if verb in ("block", "interpose"):
            moves = [
                m
                for m in moves
                if board.is_check() and not board.is_capture(m) and m.from_square != board.king(board.turn)
            ]
        elif verb != "move":
            square = next((step.landed for step in claim.scene.played_near(claim.start)), None)
            moves = [m for m in moves if m.to_square == square and board.is_capture(m)]
        kinds = {board.piece_type_at(move.from_square) for move in moves}
        if kinds == {thing.kind}:
            return confirmed(topic, claim.quote(), f"{board.san(moves[0])} is the only such move.")
        other = next((move for move in moves if board.piece_type_at(move.from_square) != thing.kind), None)
        if other is not None and seen is None:
            seen = (board, other)
    if seen is None:
        return undecided(topic, claim.quote(), "It is not clear which moves are meant.")
    board, other = seen
    return contradicted(topic, claim.quote(), f"{board.san(other)} is possible.", other.from_square, other.to_square)


def judge_must_take(claim: Claim) -> list[Judgement]:
    """“Has to take”, “has to move the king”."""
    topic = Topic.FORCED
    boards = [*before_moves(claim), *claim.boards()]
    king = claim.has("king")
    if not king and not claim.has("take"):
        return []
    for board in boards:
        moves = list(board.legal_moves)
        if moves and all(
            board.piece_type_at(move.from_square) == chess.KING if king else board.is_capture(move) for move in moves
        ):
            return confirmed(topic, claim.quote(), f"{side(board.turn)} has no other legal move.")
    if king:
        for board in boards:
            others = [move for move in board.legal_moves if board.piece_type_at(move.from_square) != chess.KING]
            if board.is_check() and others:
                return contradicted(topic, claim.quote(), f"{board.san(others[0])} is legal too.", others[0].to_square)
        return undecided(topic, claim.quote(), "Nobody is in check.")
    if not any(any(board.generate_legal_captures()) for board in boards):
        return contradicted(topic, claim.quote(), f"There is nothing that {side(boards[0].turn)} could take.")
    return undecided(
        topic, claim.quote(), "Other moves are legal; whether they are as good, the board alone does not say."
    )


def _loses_nothing(board: chess.Board) -> bool:
    """Can the side to move win nothing by captures?"""
    return all(exchange_after(board, move) <= 0 for move in board.generate_legal_captures())


def _colours(claim: Claim, colour: chess.Color | None, kind: chess.PieceType | None) -> list[chess.Color]:
    """Whose castling is spoken of: the side named, or the one that can be meant by "he" or "the king"."""
    if colour is not None:
        return [colour]
    who = claim.mention("piece")
    if who is not None and kind == chess.KING:
        board = claim.boards()[0]
        kings = referents(claim.scene, who, board)
        if len(kings) == 1:
            return [bool(board.color_at(kings[0]))]
    return []


def _side_before(claim: Claim) -> list[chess.Color]:
    """The one side that the clauses before name, for “he” and “she”."""
    who = claim.mention("piece")
    if who is None or not who.pronoun:
        return []
    named = [
        m.colour
        for m in claim.scene.mentions
        if m.what is Named.SIDE and claim.sentence.start <= m.start < who.start and m.colour is not None
    ]
    return [named[-1]] if len(set(named)) == 1 else []


def _said_wing(claim: Claim) -> bool | None:
    """True for the king's side, False for the queen's, None where none is said."""
    words = claim.match.group()
    if claim.scene.words.hint("queen_wing", words):
        return False
    return True if claim.scene.words.hint("king_wing", words) else None


def _wing(castled: str | None) -> str:
    return {"k": " kingside", "q": " queenside"}.get(castled or "", "")


JUDGES: Final[dict[str, Judge]] = {
    "castling_right": judge_castling_right,
    "only_move": judge_only_move,
    "only_piece": judge_only_piece,
    "must_take": judge_must_take,
}
