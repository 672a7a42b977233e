"""Claims of endgame talks: how far a pawn is from queening, who has the opposition."""

from __future__ import annotations

from typing import Final

import chess

from studyboard.board.naming import counted, listed, sentence, side, the_piece
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.claims_inventory import holder
from studyboard.reading.findings import Topic
from studyboard.reading.mentions import Named
from studyboard.reading.referents import salient


def steps_left(board: chess.BaseBoard, square: chess.Square) -> tuple[int, ...]:
    """How many squares a pawn is from queening, and how many moves where it may still take two steps at once."""
    colour = bool(board.color_at(square))
    rank = chess.square_rank(square) if colour else 7 - chess.square_rank(square)
    return (6, 5) if rank == 1 else (7 - rank,)


def judge_steps(claim: Claim) -> list[Judgement]:
    """“The pawn needs three more moves”, “one step from queening”."""
    number = claim.mention("number")
    wanted = 1 if number is None else number.value
    who = claim.mention("piece") or claim.mention("pawn")
    becomes = claim.mention("as")
    if becomes is not None and becomes.kind != chess.QUEEN:
        return []
    if who is not None and who.kind not in (None, chess.PAWN):
        return []
    seen: list[tuple[chess.Board, chess.Square]] = []
    for board in claim.boards():
        if who is not None and who.what is Named.PIECE:
            pawns = [at for at in salient(claim.scene, who, board) if board.piece_type_at(at) == chess.PAWN]
        elif claim.has("bare"):
            # “The pawn moves up, two steps from queening.”
            pawns = [at for at in claim.movers() if board.piece_type_at(at) == chess.PAWN]
        else:
            owner = holder(claim) or chess.COLORS
            pawns = [at for colour in owner for at in board.pieces(chess.PAWN, colour)]
        for at in pawns:
            if wanted in steps_left(board, at):
                told = counted(steps_left(board, at)[0], "step")
                return confirmed(Topic.NUMBER, claim.quote(), sentence(f"{the_piece(board, at)} is {told} away"), at)
            seen.append((board, at))
    if not seen or (who is None and not claim.has("bare")) or len({at for _, at in seen}) > 1:
        return undecided(Topic.NUMBER, claim.quote(), "It is not clear which pawn is meant.")
    board, at = seen[0]
    steps = listed([str(n) for n in steps_left(board, at)], "or")
    why = sentence(f"{the_piece(board, at)} needs {steps} to queen")
    return contradicted(Topic.NUMBER, claim.quote(), why, at)


def opposition(board: chess.Board) -> chess.Color | None:
    """Who has the direct opposition: whose king faces the other across one square while the other is to move."""
    kings = (board.king(chess.WHITE), board.king(chess.BLACK))
    if kings[0] is None or kings[1] is None:
        return None
    files = abs(chess.square_file(kings[0]) - chess.square_file(kings[1]))
    ranks = abs(chess.square_rank(kings[0]) - chess.square_rank(kings[1]))
    return not board.turn if {files, ranks} in ({0, 2}, {2}) else None


def judge_opposition(claim: Claim) -> list[Judgement]:
    """“White has the opposition”: queried where the kings face each other and the other side has it."""
    colours = holder(claim)
    if not colours or len(colours) != 1:
        return []
    topic = Topic.TURN
    boards = claim.boards()
    held = [opposition(board) for board in boards]
    if colours[0] in held:
        return confirmed(topic, claim.quote(), f"The kings face each other and {side(not colours[0])} is to move.")
    if held[0] is None:
        return undecided(topic, claim.quote(), "The kings do not face each other across one square.")
    return contradicted(topic, claim.quote(), f"{side(held[0])} has the opposition: {side(boards[0].turn)} is to move.")


JUDGES: Final[dict[str, Judge]] = {"steps_to_queen": judge_steps, "opposition": judge_opposition}
