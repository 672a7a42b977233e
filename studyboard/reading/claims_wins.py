"""Claims about what a move wins: what was just taken, what can be taken next, what is won by force."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Final

import chess

from studyboard.board.exchange import PIECE_VALUES, best_exchange
from studyboard.board.forced_wins import ForcedWin, forced_win
from studyboard.board.material import material_words
from studyboard.board.moves import captured_square
from studyboard.board.naming import side
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.claims_material import EXCHANGE, KINDS, MINOR, amounts, is_up, settled
from studyboard.reading.findings import Topic


def judge_wins(claim: Claim) -> list[Judgement]:
    """“Wins a pawn”: what was just taken, or can be taken next."""
    things = amounts(claim, definite=True)
    if not things:
        return []
    count, thing = things[0]
    steps = claim.scene.played_near(claim.start)
    topic = Topic.MATERIAL
    taken: list[str] = []
    for step in steps:
        if step.before is None or step.move is None:
            continue
        square = captured_square(step.before, step.move)
        kind = None if square is None else step.before.piece_type_at(square)
        if kind is not None:
            name = chess.piece_name(kind)
            taken.append(name)
            if thing in (name, MINOR if name in ("knight", "bishop") else name):
                return confirmed(topic, claim.quote(), f"{step.before.san(step.move)} takes a {name}.")
            if thing == EXCHANGE and name == "rook":
                return confirmed(topic, claim.quote(), f"{step.before.san(step.move)} takes a rook.")
    for board in claim.boards():
        for facing in (board, _passed(board)):
            if facing is None:
                continue
            for square in chess.scan_forward(facing.occupied_co[not facing.turn] & ~facing.kings):
                gain = best_exchange(facing, square).gain
                name = chess.piece_name(facing.piece_type_at(square) or chess.PAWN)
                fits = thing in (name, MINOR if name in ("knight", "bishop") else name) or (
                    thing == EXCHANGE and name == "rook"
                )
                if gain > 0 and fits:
                    return confirmed(
                        topic,
                        claim.quote(),
                        f"The {name} on {chess.square_name(square)} can be taken with profit.",
                        square,
                    )
    if claim.said("wins") == "won" and thing == EXCHANGE:
        after = settled(claim)
        if any(is_up(board, colour, things) for board in after for colour in chess.COLORS):
            return confirmed(topic, claim.quote(), material_words(after[-1]))
        return contradicted(topic, claim.quote(), material_words(claim.boards()[0]))
    kind = KINDS.get(thing)
    if claim.deep and count == 1:
        value = 2 if thing == EXCHANGE else PIECE_VALUES[kind or chess.KNIGHT]
        for board in claim.boards():
            win = claim.search(partial(_wins_by_force, board))
            if win is not None and win.gain >= value:
                line = board.variation_san(list(win.line))
                return confirmed(topic, claim.quote(), f"{side(board.turn)} wins material by force: {line}.")
    if (
        kind is not None
        and count == 1
        and all(not board.pieces_mask(kind, colour) for board in claim.boards(wide=True) for colour in chess.COLORS)
    ):
        return contradicted(topic, claim.quote(), f"There is no {thing} on the board.")
    if (
        kind is not None
        and taken
        and claim.said("wins") in ("wins", "picks up", "pockets", "nets", "collects")
        and thing not in taken
    ):
        return contradicted(topic, claim.quote(), f"What is taken is a {taken[0]}.")
    return undecided(topic, claim.quote(), "What is won in the end, the board alone does not say.")


def _wins_by_force(board: chess.Board, cancelled: Callable[[], bool]) -> ForcedWin | None:
    return forced_win(board, 2, cancelled=cancelled)


def _passed(board: chess.Board) -> chess.Board | None:
    if board.is_check():
        return None
    passed = board.copy(stack=False)
    passed.push(chess.Move.null())
    return passed


JUDGES: Final[dict[str, Judge]] = {"wins": judge_wins}
