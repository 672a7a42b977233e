"""Claims about how often a piece has moved: “the white queen moved three times”, “it moves for the third time”."""

from __future__ import annotations

from typing import Final

import chess

from studyboard.board.moves import landing_square
from studyboard.board.naming import counted, side
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.findings import Topic

_ORDINALS: Final = {"second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6}
_TIMES: Final = {"once": 1, "twice": 2, "thrice": 3}


def judge_moved_times(claim: Claim) -> list[Judgement]:
    """“The black king moved twice”, said of a king or queen, by the moves up to here."""
    thing, number, talk = claim.mention("piece"), claim.mention("number"), claim.scene.talk
    times = claim.said("times")
    wanted = _TIMES.get(times) or (None if number is None else number.value)
    if thing is None or thing.kind not in (chess.KING, chess.QUEEN) or thing.plural or wanted is None:
        return []
    if thing.colour is None or talk.root is None:
        return undecided(Topic.NUMBER, claim.quote(), "It is not clear which piece is meant.")
    moves = talk.game if talk.part or talk.ends_game else _moves_so_far(claim)
    board, count = talk.root.copy(stack=False), 0
    for move in moves:
        count += board.turn == thing.colour and board.piece_type_at(move.from_square) == thing.kind
        board.push(move)
    why = f"{side(thing.colour)}'s {chess.piece_name(thing.kind)} has moved {counted(count, 'time')}."
    if count == wanted:
        return confirmed(Topic.NUMBER, claim.quote(), why)
    if not (talk.part or talk.ends_game) and count and count > wanted:
        return undecided(Topic.NUMBER, claim.quote(), why)
    return contradicted(Topic.NUMBER, claim.quote(), why)


def judge_time_of_moving(claim: Claim) -> list[Judgement]:
    """“The knight moves for the third time”: counted along the way of the piece that the line moves."""
    thing, talk = claim.mention("piece"), claim.scene.talk
    wanted = _ORDINALS.get(claim.said("ordinal"))
    step = next(iter(claim.scene.played_near(claim.start)), None)
    if wanted is None or talk.root is None or step is None or step.before is None or step.move is None:
        return []
    kind = step.before.piece_type_at(step.move.from_square)
    if thing is not None and thing.kind not in (None, kind):
        return []
    at, count = step.move.from_square, 1
    before: list[tuple[chess.Board, chess.Move]] = []
    board = talk.root.copy(stack=False)
    for move in _moves_so_far(claim):
        if board == step.before:
            break
        before.append((board.copy(stack=False), move))
        board.push(move)
    if board != step.before:
        return []
    for was, move in reversed(before):
        if landing_square(was, move) == at and was.color_at(move.from_square) == step.before.turn:
            at, count = move.from_square, count + 1
    why = f"It is move number {count} of this {chess.piece_name(kind or chess.PAWN)}."
    return (confirmed if count == wanted else contradicted)(Topic.NUMBER, claim.quote(), why)


def _moves_so_far(claim: Claim) -> list[chess.Move]:
    scene = claim.scene
    last = scene.board_index(scene.clause(claim.start)[1])
    return [*scene.talk.history, *(s.move for s in scene.steps[: last + 1] if s.move is not None and s.move)]


JUDGES: Final[dict[str, Judge]] = {"moved_times": judge_moved_times, "time_of_moving": judge_time_of_moving}
