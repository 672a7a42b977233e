"""Claims about the game as a whole: whose move it is, move numbers, its length, who won, what is won or drawn."""

from __future__ import annotations

from typing import Final

import chess

from studyboard.board.king_and_pawn import drawing_moves, ending_result, winning_moves
from studyboard.board.material import material_words
from studyboard.board.mates import mate_in
from studyboard.board.naming import side
from studyboard.board.rights import draw_by_rule
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.claims_material import after_best_capture, points
from studyboard.reading.findings import Topic, Verdict

#: A decisive game of at most this many moves is called a miniature: common practice.
MINIATURE = 25
#: A move number that is off by no more than this is taken for a slip, not for another moment of the game.
_NEAR = 3
#: So many words at the head of a line may still speak of the position before its first move.
_EARLY = 6
#: Smaller numbers of moves count other things as a rule: “in two moves”, “his third move”.
_FIRST_COUNTED = 5
#: Words that say who won or lost where nothing that is won or lost follows.
_BARE_WINS = frozenset({"wins", "won", "has won", "had won"})
_BARE_LOSSES = frozenset({"lost", "loses", "has lost", "had lost", "gave up", "gives up", "conceded", "concedes"})
#: So many minor pieces can give mate where there are no pawns.
_ENOUGH = 2
#: Who is so many points ahead, whatever can be taken next, does not draw.
_MUCH = 5
_WINS = {"1-0": chess.WHITE, "0-1": chess.BLACK}
DRAWN: Final = "1/2-1/2"


def judge_turn(claim: Claim) -> list[Judgement]:
    """“White to move”."""
    who, scene = claim.mention("side"), claim.scene
    colour = scene.players.speaker if claim.has("mine") else None if who is None else who.colour
    if colour is None or claim.hinted("then_before"):
        return []
    boards = [scene.board(scene.board_index(claim.start))]
    start, end = scene.clause(claim.start)
    near = [step for step in scene.steps if start <= step.token < end or (not step.cued and step.token == 0)]
    if not scene.talk.think:
        boards += [step.before for step in near if step.before is not None and not step.cued and claim.start < _EARLY]
        boards += [step.board for step in near if step.token > claim.start]
    if any(board.turn == colour for board in boards):
        return confirmed(Topic.TURN, claim.quote(), f"It is {side(colour)}'s move.")
    return contradicted(Topic.TURN, claim.quote(), f"It is {side(boards[0].turn)}'s move.")


def judge_move_number(claim: Claim) -> list[Judgement]:
    """“On move 23”, “it is move nine”, “the fourteenth move of the game”."""
    value = _number(claim)
    scene = claim.scene
    if value is None or scene.talk.part:
        return []
    if claim.has("ordinal") and value < _FIRST_COUNTED and not claim.match.group().endswith("of the game"):
        return []
    steps = scene.steps
    numbers = {step.before.fullmove_number for step in steps if step.before is not None}
    board = scene.board(scene.board_index(claim.start))
    numbers.add(board.fullmove_number)
    if value in numbers:
        return confirmed(Topic.NUMBER, claim.quote(), f"This is move {value}.")
    near = scene.played_near(claim.start)
    told = scene.quote(*scene.clause(claim.start)).lower()
    wanders = scene.words.hint("wandering_past", told)
    if not claim.has("sure") and (min(abs(value - here) for here in numbers) > _NEAR or wanders):
        return undecided(Topic.NUMBER, claim.quote(), "It may be said of another move of the game.")
    played = next((step.before for step in (*near, *reversed(steps)) if step.before is not None), board)
    return contradicted(Topic.NUMBER, claim.quote(), f"This is move {played.fullmove_number}.")


def _number(claim: Claim) -> int | None:
    """The number that is said, as “fourteen” or as “fourteenth”."""
    number = claim.mention("number")
    said = claim.said("ordinal")
    if not said:
        return None if number is None else number.value
    names = claim.scene.words.names
    tens = next((m.value for m in claim.mentions("ordinal")), 0)
    word = said.split()[-1]
    if word[:-2].isdigit():
        return int(word[:-2])
    if word in names.ordinals:
        return tens + names.ordinals.index(word)
    return 10 * (names.tenths.index(word) + 2) if word in names.tenths and not tens else None


def judge_moves_played(claim: Claim) -> list[Judgement]:
    """“Fourteen moves have been played”, “after thirteen moves” at the head of a sentence."""
    number, talk = claim.mention("number"), claim.scene.talk
    if number is None or talk.part or number.value < _FIRST_COUNTED or claim.hinted("relative_before"):
        return []
    boards = [claim.scene.board(claim.scene.board_index(claim.start)), *claim.boards()]
    boards += [step.before for step in claim.scene.steps if step.before is not None]
    # After White's fifth move one has seen four moves, or five.
    seen = {board.fullmove_number - (1 if board.turn else gone) for board in boards for gone in (0, 1)}
    if number.value in seen or (talk.ends_game and number.value == talk.moves):
        return confirmed(Topic.NUMBER, claim.quote(), f"{number.value} moves have been played.")
    if not claim.has("sure") and min(abs(number.value - here) for here in seen) > _NEAR:
        return undecided(Topic.NUMBER, claim.quote(), "It may be said of another moment of the game.")
    return contradicted(Topic.NUMBER, claim.quote(), f"This is move {boards[0].fullmove_number}.")


def judge_end_move(claim: Claim) -> list[Judgement]:
    """“White resigned on move thirty-four”, “mate on move eleven”, said of the end of the game."""
    number, talk = _number(claim), claim.scene.talk
    if number is None or not talk.moves or not talk.part or claim.hinted("not_this_game"):
        return []
    # Whoever resigns may do so in place of the next move.
    if number == talk.moves or (number == talk.moves + 1 and not claim.has("after")):
        return confirmed(Topic.NUMBER, claim.quote(), f"The game has {talk.moves} moves.")
    return contradicted(Topic.NUMBER, claim.quote(), f"The game has {talk.moves} moves.")


def judge_game_length(claim: Claim) -> list[Judgement]:
    """“In twenty-seven moves”, said of the whole game."""
    number, talk = claim.mention("number"), claim.scene.talk
    if number is None or not (talk.part or talk.ends_game) or not talk.moves or claim.hinted("relative_before"):
        return []
    if number.value == talk.moves:
        return confirmed(Topic.NUMBER, claim.quote(), f"The game has {talk.moves} moves.")
    near = abs(number.value - talk.moves) <= max(5, talk.moves // 3) or claim.has("sure")
    if talk.part and near and number.value >= _FIRST_COUNTED:
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
    """“White resigned”, “the game was drawn”, “a win for Black”, where the talk speaks of the end."""
    talk = claim.scene.talk
    if not (talk.part or talk.ends_game) or talk.result == "*":
        return []
    topic = Topic.RESULT
    winner = _WINS.get(talk.result)
    truth = f"{side(winner)} won." if winner is not None else "The game was drawn."
    clause = claim.scene.quote(*claim.scene.sentence(claim.start)).lower()
    if claim.scene.words.hint("not_this_game", clause):
        return []
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
    if claim.said("won") in _BARE_WINS and not claim.hinted("game_won_after"):
        return []
    if claim.said("lost") in _BARE_LOSSES and not claim.hinted("game_over_after"):
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
    known = ending_result(board)
    if claim.said("draw"):
        if known is not None:
            return _known(claim, board, known, known == DRAWN)
        rule = draw_by_rule(board)
        if rule is not None:
            return confirmed(topic, claim.quote(), rule)
        mate = mate_in(board, 2)
        if mate is not None:
            line = board.variation_san(list(mate.line))
            return contradicted(topic, claim.quote(), f"{side(board.turn)} mates: {line}.")
        for colour in chess.COLORS:
            ahead = [points(after, colour) for after in after_best_capture(board)]
            if min(ahead) >= _MUCH and not _cannot_win(board, colour):
                return contradicted(topic, claim.quote(), material_words(board))
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
    known = ending_result(board)
    if known is not None:
        return _known(claim, board, known, _WINS.get(known) == colour)
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
    if _cannot_win(board, colour):
        why = f"With so little material {side(colour)} cannot win by force."
        return contradicted(topic, claim.quote(), why)
    balance = [points(after, colour) for after in after_best_capture(board)]
    if max(balance) >= 2 and min(balance) >= 2:
        return confirmed(topic, claim.quote(), material_words(board))
    if max(balance) <= -1 and mate_in(board, 2) is None:
        return contradicted(
            topic, claim.quote(), f"{material_words(after_best_capture(board)[-1])} No mate in two is there either."
        )
    return undecided(topic, claim.quote(), "Who is winning, the board alone does not say.")


def _known(claim: Claim, board: chess.Board, result: str, so: bool) -> list[Judgement]:
    """What the table of the ending says to a result that is claimed."""
    moves = winning_moves(board) if result != DRAWN else drawing_moves(board)
    on = f": {board.san(moves[0])}." if moves else "."
    winner = _WINS.get(result)
    why = f"With best play it is a draw{on}" if winner is None else f"With best play {side(winner)} wins{on}"
    verdict = Verdict.CONFIRMED if so else Verdict.CONTRADICTED
    return [Judgement(verdict, Topic.RESULT, claim.quote(), why, exact=True)]


def _cannot_win(board: chess.BaseBoard, colour: chess.Color) -> bool:
    """Has this side no pawn, and at most one knight or bishop? Mate cannot be forced with that (common knowledge)."""
    return not board.pieces_mask(chess.PAWN, colour) and (
        sum(len(board.pieces(kind, colour)) for kind in (chess.KNIGHT, chess.BISHOP)) < _ENOUGH
        and not board.pieces_mask(chess.ROOK, colour) | board.pieces_mask(chess.QUEEN, colour)
    )


JUDGES: Final[dict[str, Judge]] = {
    "turn": judge_turn,
    "move_number": judge_move_number,
    "moves_played": judge_moves_played,
    "end_move": judge_end_move,
    "game_length": judge_game_length,
    "miniature": judge_miniature,
    "result": judge_result,
    "winning": judge_winning,
}
