"""Claims about the game as a whole: whose move it is, move numbers, its length, who won, what is won or drawn."""

from __future__ import annotations

from typing import Final

import chess

from studyboard.board.material import material_words
from studyboard.board.mates import mate_in
from studyboard.board.naming import side
from studyboard.board.rights import draw_by_rule
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.claims_material import points, settled
from studyboard.reading.findings import Topic

#: A decisive game of at most this many moves is called a miniature: common practice.
MINIATURE = 25
#: A move number that is off by no more than this is taken for a slip, not for another moment of the game.
_NEAR = 3
#: So many words at the head of a line may still speak of the position before its first move.
_EARLY = 6
_WINS = {"1-0": chess.WHITE, "0-1": chess.BLACK}


def judge_turn(claim: Claim) -> list[Judgement]:
    """“White to move”."""
    who = claim.mention("side")
    if who is None or who.colour is None or claim.hinted("then_before"):
        return []
    scene = claim.scene
    boards = [scene.board(scene.board_index(claim.start))]
    start, end = scene.clause(claim.start)
    near = [step for step in scene.steps if start <= step.token < end or (not step.cued and step.token == 0)]
    if not scene.talk.think:
        boards += [step.before for step in near if step.before is not None and not step.cued and claim.start < _EARLY]
        boards += [step.board for step in near if step.token > claim.start]
    if any(board.turn == who.colour for board in boards):
        return confirmed(Topic.TURN, claim.quote(), f"It is {side(who.colour)}'s move.")
    return contradicted(Topic.TURN, claim.quote(), f"It is {side(boards[0].turn)}'s move.")


def judge_move_number(claim: Claim) -> list[Judgement]:
    """“On move 23”."""
    number = claim.mention("number")
    scene = claim.scene
    if number is None or scene.talk.part:
        return []
    steps = scene.steps
    numbers = {step.before.fullmove_number for step in steps if step.before is not None}
    board = scene.board(scene.board_index(claim.start))
    numbers.add(board.fullmove_number)
    if number.value in numbers:
        return confirmed(Topic.NUMBER, claim.quote(), f"This is move {number.value}.")
    near = scene.played_near(claim.start)
    told = scene.quote(*scene.clause(claim.start)).lower()
    if min(abs(number.value - here) for here in numbers) > _NEAR or scene.words.hint("wandering_past", told):
        return undecided(Topic.NUMBER, claim.quote(), "It may be said of another move of the game.")
    played = next((step.before for step in (*near, *reversed(steps)) if step.before is not None), board)
    return contradicted(Topic.NUMBER, claim.quote(), f"This is move {played.fullmove_number}.")


def judge_game_length(claim: Claim) -> list[Judgement]:
    """“In twenty-seven moves”, said of the whole game."""
    number, talk = claim.mention("number"), claim.scene.talk
    if number is None or not (talk.part or talk.ends_game) or not talk.moves:
        return []
    if number.value == talk.moves:
        return confirmed(Topic.NUMBER, claim.quote(), f"The game has {talk.moves} moves.")
    if talk.part and (abs(number.value - talk.moves) <= max(5, talk.moves // 3)) and number.value > 4:
        return contradicted(Topic.NUMBER, claim.quote(), f"The game has {talk.moves} moves.")
    return undecided(Topic.NUMBER, claim.quote(), f"The game has {talk.moves} moves; something else may be counted.")


def judge_miniature(claim: Claim) -> list[Judgement]:
    """“A miniature”."""
    talk = claim.scene.talk
    if not talk.moves:
        return undecided(Topic.NUMBER, claim.quote(), "How long the game is, is not known.")
    if talk.moves <= MINIATURE and talk.result in _WINS:
        return confirmed(Topic.NUMBER, claim.quote(), f"The game has {talk.moves} moves.")
    if talk.moves > MINIATURE:
        return contradicted(
            Topic.NUMBER, claim.quote(), f"The game has {talk.moves} moves; a miniature has at most {MINIATURE}."
        )
    return undecided(Topic.NUMBER, claim.quote(), "The game was drawn, or its result is not known.")


def judge_result(claim: Claim) -> list[Judgement]:
    """“White resigned”, “the game was drawn”, where the talk speaks of the end."""
    talk = claim.scene.talk
    if not (talk.part or talk.ends_game) or talk.result == "*":
        return []
    if not talk.part and not any(claim.has(group) and claim.said(group) for group in ("lost", "drawn")):
        return []
    topic = Topic.RESULT
    winner = _WINS.get(talk.result)
    truth = f"{side(winner)} won." if winner is not None else "The game was drawn."
    if claim.said("drawn"):
        return confirmed(topic, claim.quote(), truth) if winner is None else contradicted(topic, claim.quote(), truth)
    if claim.said("mated"):
        if talk.part and claim.scene.steps:
            board = claim.scene.steps[-1].board
            if board.is_checkmate():
                return confirmed(topic, claim.quote(), truth)
        return []
    who = claim.mention("side") or claim.mention("piece")
    if who is None or who.colour is None or (who.kind is not None):
        return []
    if claim.said("won") in ("wins", "won") and not claim.hinted("game_won_after"):
        return []
    wanted = who.colour if claim.said("won") else not who.colour
    if winner is None:
        return contradicted(topic, claim.quote(), truth)
    return confirmed(topic, claim.quote(), truth) if winner == wanted else contradicted(topic, claim.quote(), truth)


def judge_winning(claim: Claim) -> list[Judgement]:
    """“White is winning”, “that's a draw”, said of a line that ends here."""
    topic = Topic.RESULT
    board = claim.boards()[0]
    if claim.scene.talk.part:
        return []
    if claim.said("draw"):
        rule = draw_by_rule(board)
        if rule is not None:
            return confirmed(topic, claim.quote(), rule)
        mate = mate_in(board, 2)
        if mate is not None:
            line = board.variation_san(list(mate.line))
            return contradicted(topic, claim.quote(), f"{side(board.turn)} mates: {line}.")
        return undecided(
            topic, claim.quote(), "No rule makes it a draw; whether it is one, the board alone does not say."
        )
    who = claim.mention("side") or claim.mention("piece")
    if who is None or who.colour is None or who.kind is not None:
        return undecided(topic, claim.quote(), "It is not clear who is meant.")
    colour = who.colour if not claim.said("losing") else not who.colour
    return judge_won(claim, board, colour)


def judge_won(claim: Claim, board: chess.Board, colour: chess.Color) -> list[Judgement]:
    """Does *colour* win here, as far as mates of two moves and the material can tell?"""
    topic = Topic.RESULT
    if board.is_checkmate():
        won = board.turn != colour
        words = f"{side(board.turn)} is checkmated."
        return confirmed(topic, claim.quote(), words) if won else contradicted(topic, claim.quote(), words)
    rule = draw_by_rule(board)
    if rule is not None:
        return contradicted(topic, claim.quote(), rule)
    mate = mate_in(board, 2)
    if mate is not None:
        line = f"{side(board.turn)} mates: {board.variation_san(list(mate.line))}."
        won = board.turn == colour
        return confirmed(topic, claim.quote(), line) if won else contradicted(topic, claim.quote(), line)
    balance = [points(after, colour) for after in settled(board)]
    if max(balance) >= 2 and min(balance) >= 2:
        return confirmed(topic, claim.quote(), material_words(board))
    if max(balance) <= -1 and mate_in(board, 2) is None:
        return contradicted(
            topic, claim.quote(), f"{material_words(settled(board)[-1])} No mate in two is there either."
        )
    return undecided(topic, claim.quote(), "Who is winning, the board alone does not say.")


JUDGES: Final[dict[str, Judge]] = {
    "turn": judge_turn,
    "move_number": judge_move_number,
    "game_length": judge_game_length,
    "miniature": judge_miniature,
    "result": judge_result,
    "winning": judge_winning,
}
