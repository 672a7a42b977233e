"""Claims about what has to be played: only moves, captures and blocks that cannot be avoided, kings that must move."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

import chess

from studyboard.board.exchange import exchange_after
from studyboard.board.king_and_pawn import drawing_moves, winning_moves
from studyboard.board.mates import mate_in
from studyboard.board.naming import counted, listed, side
from studyboard.board.rights import only_move
from studyboard.notation.narration.tokens import Token
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.findings import Topic
from studyboard.reading.imagined import before_moves
from studyboard.reading.mentions import Mention, Named

#: So many words a phrase may have that leaves nothing else to do.
_PHRASE: Final = 6


def judge_only_move(claim: Claim) -> list[Judgement]:
    """“The only legal move”, “has two legal moves”, “has no legal move”."""
    topic = Topic.FORCED
    if claim.hinted("listed_replies_before"):
        # “He can put the queen on f1 or on b1, and nothing else is legal.”
        return []
    number = claim.mention("number")
    wanted = 0 if claim.has("zero") else 1 if number is None else number.value
    legal = claim.hinted("legal") or claim.has("forced") or claim.has("zero") or claim.has("counted")
    boards = [*claim.boards(), *before_moves(claim)]
    for board in boards:
        count = board.legal_moves.count()
        if count > 1 if claim.has("several") else count == wanted:
            return confirmed(topic, claim.quote(), _legal_words(board))
    board = before_moves(claim)[0] if before_moves(claim) else boards[0]
    count = board.legal_moves.count()
    checked = next((board for board in boards if board.is_check()), None)
    if claim.has("in_check") and checked is not None:
        return contradicted(topic, claim.quote(), _legal_words(checked))
    if claim.has("choice") and count > wanted:
        return undecided(topic, claim.quote(), _legal_words(board))
    if legal or claim.has("choice"):
        return contradicted(topic, claim.quote(), _legal_words(board))
    if number is not None and number.value != 1:
        return undecided(topic, claim.quote(), _legal_words(board))
    step = next(iter(claim.scene.played_near(claim.start)), None)
    if step is None or step.before is None or step.move is None or not step.before.is_check():
        return undecided(topic, claim.quote(), "Whether another move is as good, the board alone does not say.")
    best = exchange_after(step.before, step.move)
    for move in step.before.legal_moves:
        if move != step.move and _is_fine(step.before, move, best):
            why = f"{step.before.san(move)} is possible as well, and loses nothing at once."
            return contradicted(topic, claim.quote(), why, move.to_square)
    return undecided(topic, claim.quote(), "Whether another move is as good, the board alone does not say.")


def judge_sorts_of_moves(claim: Claim) -> list[Judgement]:
    """“Five answers, three of them king moves”, “two replies, one of them a capture”."""
    number, some, by = claim.mention("number"), claim.mention("some"), claim.mention("by")
    if number is None or some is None or (by is not None and (by.kind is None or by.square is not None)):
        return []
    seen: tuple[chess.Board, int] | None = None
    for board in [*before_moves(claim), *claim.boards()]:
        moves = list(board.legal_moves)
        if by is None:
            these = [move for move in moves if board.is_capture(move)]
        else:
            these = [move for move in moves if board.piece_type_at(move.from_square) == by.kind]
        if len(moves) == number.value and len(these) == some.value:
            return confirmed(Topic.NUMBER, claim.quote(), _legal_words(board))
        if len(moves) == number.value:
            seen = (board, len(these))
    if seen is None:
        # How many there are in all is judged by itself.
        return []
    sort = "capture" if by is None else f"{chess.piece_name(by.kind or chess.KING)} move"
    return contradicted(Topic.NUMBER, claim.quote(), f"{_legal_words(seen[0])} {counted(seen[1], sort).capitalize()}.")


def judge_one_wins(claim: Claim) -> list[Judgement]:
    """“Only one move wins”, “two moves draw”, in an ending of which the table knows everything."""
    number = claim.mention("number")
    wanted = 1 if number is None else number.value
    seen: list[tuple[chess.Board, list[chess.Move]]] = []
    find = drawing_moves if claim.said("does").startswith(("draw", "hold", "save")) else winning_moves
    for board in [*claim.boards(), *before_moves(claim)]:
        moves = find(board)
        if moves:
            seen.append((board, moves))
            if len(moves) == wanted:
                return confirmed(Topic.FORCED, claim.quote(), _these_do(board, moves, claim.said("does")))
    if not seen:
        return undecided(Topic.FORCED, claim.quote(), "Whether another move is as good, the board alone does not say.")
    return contradicted(Topic.FORCED, claim.quote(), _these_do(*seen[0], claim.said("does")))


def _these_do(board: chess.Board, moves: list[chess.Move], does: str) -> str:
    verb = "draw" if does.startswith(("draw", "hold", "save")) else "win"
    named = listed([board.san(move) for move in moves])
    return f"{counted(len(moves), 'move').capitalize()} {verb}{'s' if len(moves) == 1 else ''}: {named}."


def _legal_words(board: chess.Board) -> str:
    count = board.legal_moves.count()
    move = only_move(board)
    if move is not None:
        return f"{side(board.turn)} has one legal move: {board.san(move)}."
    ways = listed([board.san(move) for move in list(board.legal_moves)[:3]])
    named = f": {ways}{' …' if count > 3 else ''}" if count else ""
    return f"{side(board.turn)} has {counted(count, 'legal move')}{named}."


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
            targets = {square} if square is not None else set(board.checkers())
            moves = [m for m in moves if m.to_square in targets and board.is_capture(m)]
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
    """“Has to take”, “must take the rook”, “is forced to capture with the king”."""
    if claim.hinted("denied_before"):
        return []
    topic = Topic.FORCED
    boards = [*before_moves(claim), *claim.boards()]
    target, by = claim.mention("target"), claim.mention("by")
    if (target is not None and target.pronoun) or (target is not None and target.what is not Named.PIECE):
        target = None
    for board in boards:
        moves = list(board.legal_moves)
        if moves and all(_takes(board, move, target, by) for move in moves):
            return confirmed(topic, claim.quote(), _legal_words(board))
    if not any(_takes(board, move, target, by) for board in boards for move in board.generate_legal_captures()):
        sure = target is None and by is None and not claim.hinted("must_later_after")
        if sure or all(board.is_check() for board in boards):
            return contradicted(topic, claim.quote(), f"There is no such capture. {_legal_words(boards[0])}")
    ruled = _ruled(claim)
    if ruled and not claim.hinted("must_later_after"):
        judged = contradicted(topic, claim.quote(), _legal_words(claim.boards()[0]))
        return [replace(one, reach=ruled) for one in judged]
    return undecided(
        topic, claim.quote(), "Other moves are legal; whether they are as good, the board alone does not say."
    )


def _ruled(claim: Claim) -> tuple[int, int] | None:
    """From where to where the claim is said, with words that leave nothing else: “he has no choice, he has to take”."""
    tokens, rule = claim.scene.tokens, claim.scene.words.hints["by_rule"]
    start, end = claim.scene.sentence(claim.start)
    heads = [at for at in range(start, end) if rule.match(_words(tokens[at : min(at + _PHRASE, end)]))]
    return (min(heads), max(heads) + 1) if heads else None


def _words(tokens: Sequence[Token]) -> str:
    return " ".join(token.text for token in tokens)


def _takes(board: chess.Board, move: chess.Move, target: Mention | None, by: Mention | None) -> bool:
    if not board.is_capture(move):
        return False
    if target is not None and target.kind not in (None, board.piece_type_at(move.to_square)):
        return False
    return by is None or by.kind in (None, board.piece_type_at(move.from_square))


def judge_must_move(claim: Claim) -> list[Judgement]:
    """“The king must move”, “Black has to move the king”."""
    if claim.hinted("denied_before"):
        return []
    topic = Topic.FORCED
    who = claim.mention("piece") if claim.has("self") else claim.mention("moved")
    if who is None or who.kind != chess.KING:
        return []
    boards = [*claim.boards(), *before_moves(claim)]
    for board in boards:
        moves = list(board.legal_moves)
        if moves and all(board.piece_type_at(move.from_square) == chess.KING for move in moves):
            return confirmed(topic, claim.quote(), f"{side(board.turn)} has no other legal move.")
    for board in boards:
        others = [move for move in board.legal_moves if board.piece_type_at(move.from_square) != chess.KING]
        fine = next((move for move in others if _is_fine(board, move)), None) if board.is_check() else None
        if fine is not None:
            return contradicted(topic, claim.quote(), f"{board.san(fine)} is legal too.", fine.to_square)
        if not len(others) < board.legal_moves.count():
            return contradicted(topic, claim.quote(), f"The king cannot move. {_legal_words(board)}")
    return undecided(topic, claim.quote(), "Whether it has to, the board alone does not say.")


def judge_must_block(claim: Claim) -> list[Judgement]:
    """“Black has to block”, “the bishop must interpose on e8”."""
    if claim.hinted("denied_before"):
        return []
    topic = Topic.FORCED
    named = [m for m in (claim.mention("by"), claim.mention("piece")) if m is not None and m.kind not in (None, 6)]
    square = claim.mention("square")
    seen = [board for board in [*claim.boards(), *before_moves(claim)] if board.is_check()]
    if not seen:
        return undecided(topic, claim.quote(), "Nobody is in check.")
    for board in seen:
        moves = list(board.legal_moves)
        if moves and all(_blocks(board, move, named, square) for move in moves):
            return confirmed(topic, claim.quote(), _legal_words(board))
    board = seen[0]
    moves = list(board.legal_moves)
    if moves and not any(_blocks(board, move, named, square) for move in moves):
        return contradicted(topic, claim.quote(), f"That cannot be done. {_legal_words(board)}")
    other = next((m for m in moves if not _blocks(board, m, named, square) and _is_fine(board, m)), None)
    if other is None:
        return undecided(topic, claim.quote(), _legal_words(board))
    return contradicted(topic, claim.quote(), f"{board.san(other)} is legal too.", other.to_square)


def _blocks(board: chess.Board, move: chess.Move, named: list[Mention], square: Mention | None) -> bool:
    kind = board.piece_type_at(move.from_square)
    if kind == chess.KING or move.to_square in board.checkers() or board.is_en_passant(move):
        return False
    return all(m.kind == kind for m in named) and (square is None or square.square == move.to_square)


def judge_no_choice(claim: Claim) -> list[Judgement]:
    """“Black has no choice”, “Black has a choice”: is there one legal move, or are there several?"""
    topic = Topic.FORCED
    counts = list(_counts([*before_moves(claim), *claim.boards()]))
    if claim.has("free"):
        if all(count < 2 for count in counts):
            return contradicted(topic, claim.quote(), _legal_words(claim.boards()[0]))
        return []
    if 1 in counts:
        return confirmed(topic, claim.quote(), "There is one legal move.")
    return []


def _counts(boards: list[chess.Board]) -> Iterator[int]:
    return (board.legal_moves.count() for board in boards)


def _is_fine(board: chess.Board, move: chess.Move, least: int = 0) -> bool:
    """Does this move lose nothing at once: no material, and no mate in two?"""
    if exchange_after(board, move) < max(0, least):
        return False
    after = board.copy(stack=False)
    after.push(move)
    return _loses_nothing(after) and mate_in(after, 2) is None


def _loses_nothing(board: chess.Board) -> bool:
    """Can the side to move win nothing by captures?"""
    return all(exchange_after(board, move) <= 0 for move in board.generate_legal_captures())


JUDGES: Final[dict[str, Judge]] = {
    "one_wins": judge_one_wins,
    "sorts_of_moves": judge_sorts_of_moves,
    "only_move": judge_only_move,
    "only_piece": judge_only_piece,
    "must_take": judge_must_take,
    "must_move": judge_must_move,
    "must_block": judge_must_block,
    "no_choice": judge_no_choice,
}
