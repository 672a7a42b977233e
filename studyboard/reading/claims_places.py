"""Claims about where pieces stand, what they are in the way of, and where they can go."""

from __future__ import annotations

from typing import Final

import chess

from studyboard.board.naming import listed, sentence, the_piece
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.claims_inventory import holder
from studyboard.reading.claims_relations import doers, is_nowhere, target_words
from studyboard.reading.findings import Topic
from studyboard.reading.mentions import Named
from studyboard.reading.parts_of_board import KINGSIDE, QUEENSIDE
from studyboard.reading.referents import named_before, referents


def judge_stands(claim: Claim) -> list[Judgement]:
    """“The bishop stands on d6”."""
    thing, where = claim.mention("piece"), claim.mention("square")
    if thing is None or where is None or where.square is None or thing.square is not None:
        return []
    if thing.kind is None and (thing.pronoun not in ("it", "she") or claim.hinted("stands_loosely")):
        return []
    if claim.has("own") and "own" not in claim.quote().lower().split():
        # “E5 is taken by the knight”: captured, or occupied.
        return []
    boards = claim.boards()
    for board in boards:
        if where.square in referents(claim.scene, thing, board):
            return confirmed(
                Topic.SQUARE, claim.quote(), sentence(f"{the_piece(board, where.square)} is there"), where.square
            )
    found = referents(claim.scene, thing, boards[0])
    if not found and thing.kind is not None and thing.definite and is_nowhere(claim, thing):
        return contradicted(Topic.SQUARE, claim.quote(), f"There is no such {chess.piece_name(thing.kind)}.")
    if not found or (thing.kind is None and not named_before(claim.scene, thing.start)):
        return undecided(Topic.SQUARE, claim.quote(), "It is not clear which piece is meant.")
    places = listed([the_piece(boards[0], at) for at in found])
    return contradicted(Topic.SQUARE, claim.quote(), sentence(f"there is {places}"), where.square, *found)


def judge_has_there(claim: Claim) -> list[Judgement]:
    """“White has a rook on g7”."""
    thing, colours = claim.mention("there"), holder(claim)
    if thing is None or thing.kind is None or thing.square is None or thing.also or thing.plural or thing.moves_to:
        return []
    if thing.definite or thing.vague or colours is None or len(colours) != 1:
        return []
    piece, at = chess.Piece(thing.kind, colours[0]), thing.square
    for board in claim.boards():
        if board.piece_at(at) == piece:
            return confirmed(Topic.SQUARE, claim.quote(), sentence(f"{the_piece(board, at)} is there"), at)
    shown = [claim.scene.start, *(step.board for step in claim.scene.steps)]
    if any(board.piece_at(at) == piece for board in shown):
        return undecided(Topic.SQUARE, claim.quote(), "It stands there earlier or later in this line.")
    board = claim.boards()[0]
    why = f"{the_piece(board, at)} is there" if board.piece_at(at) else f"nothing stands on {chess.square_name(at)}"
    return contradicted(Topic.SQUARE, claim.quote(), sentence(why), at)


def judge_blocks(claim: Claim) -> list[Judgement]:
    """“The knight blocks the rook”, “… stands in front of the pawn”, “… blocks the d-file”."""
    things = claim.things() or claim.mentions("file")
    groups = claim.subjects()
    if not things or any(thing.pronoun for thing in things):
        return []
    thing = things[0]
    group = groups[0] if groups else []
    for board in claim.boards():
        for by in doers(claim, board, group):
            if board.piece_at(by) is None:
                continue
            if thing.what is Named.FILE:
                found = [by] if chess.square_file(by) == thing.file else []
            else:
                found = [at for at in referents(claim.scene, thing, board) if at != by and _in_the_way(board, by, at)]
            if found:
                why = f"{the_piece(board, by)} stands in the way of {target_words(board, found[0])}"
                return confirmed(Topic.ATTACK, claim.quote(), sentence(why), by, *found)
    board = claim.boards()[0]
    bys = doers(claim, board, group)
    if len(bys) != 1 or not (thing.what is Named.FILE or referents(claim.scene, thing, board)):
        return undecided(Topic.ATTACK, claim.quote(), "It is not clear which pieces are meant.")
    return contradicted(
        Topic.ATTACK, claim.quote(), sentence(f"{the_piece(board, bys[0])} does not stand in its way"), bys[0]
    )


def judge_blocked(claim: Claim) -> list[Judgement]:
    """“The bishop is blocked by its own pawn on e5”."""
    thing, by = claim.mention("piece") or claim.mention("file"), claim.mention("by")
    if thing is None or by is None or thing.pronoun or by.pronoun:
        return []
    seen: tuple[chess.Board, chess.Square, list[chess.Square]] | None = None
    for board in claim.boards():
        targets = [] if thing.what is Named.FILE else referents(claim.scene, thing, board)
        for at in referents(claim.scene, by, board):
            seen = seen or (board, at, targets)
            if thing.what is Named.FILE and chess.square_file(at) == thing.file:
                return confirmed(Topic.ATTACK, claim.quote(), sentence(f"{the_piece(board, at)} is on it"), at)
            found = next((to for to in targets if to != at and _in_the_way(board, at, to)), None)
            if found is not None:
                why = f"{the_piece(board, at)} stands in the way of {target_words(board, found)}"
                return confirmed(Topic.ATTACK, claim.quote(), sentence(why), at, found)
    if seen is None or (thing.what is not Named.FILE and not seen[2]) or thing.kind == chess.KNIGHT:
        return undecided(Topic.ATTACK, claim.quote(), "It is not clear which pieces are meant.")
    board, at, _ = seen
    return contradicted(
        Topic.ATTACK, claim.quote(), sentence(f"{target_words(board, at)} does not stand in its way"), at
    )


def _in_the_way(board: chess.Board, by: chess.Square, at: chess.Square) -> bool:
    """Is *by* the first piece on a line of the slider on *at*, or right in front of the pawn there, or next to it?"""
    kind = board.piece_type_at(at)
    if kind == chess.PAWN:
        step = 8 if board.color_at(at) else -8
        return by in (at + step, at + 2 * step)
    if kind in (chess.BISHOP, chess.ROOK, chess.QUEEN):
        return bool(board.attacks_mask(at) & chess.BB_SQUARES[by])
    # A square or a king is screened by whatever stands on a line from it.
    return bool(chess.SquareSet.ray(by, at))


def judge_wing(claim: Claim) -> list[Judgement]:
    """“Both kings are on the queenside”."""
    kingside = claim.said("wing") == "kingside"
    return _judge_area(claim, Topic.CASTLING, KINGSIDE if kingside else QUEENSIDE)


def judge_on_file(claim: Claim) -> list[Judgement]:
    """“Both kings are on the g-file”, “the queen stands on the d-file”."""
    file = claim.mention("file")
    if file is None or file.file is None:
        return []
    return _judge_area(claim, Topic.SQUARE, chess.BB_FILES[file.file])


def _judge_area(claim: Claim, topic: Topic, area: chess.Bitboard) -> list[Judgement]:
    """Does the piece that is named stand within these squares; of several, all of them or all of one side's?"""
    thing = claim.mention("piece")
    if thing is None or thing.kind in (None, chess.PAWN) or thing.square is not None:
        return []
    if thing.vague or not thing.definite:
        return []
    boards = claim.boards()
    for board in boards:
        squares = referents(claim.scene, thing, board)
        inside = [at for at in squares if chess.BB_SQUARES[at] & area]
        if inside and (not thing.plural or _all_of_them(board, squares, inside)):
            return confirmed(topic, claim.quote(), listed([the_piece(board, at) for at in inside]), *inside)
    squares = referents(claim.scene, thing, boards[0])
    if not squares:
        return undecided(topic, claim.quote(), "It is not clear which piece is meant.")
    places = listed([the_piece(boards[0], at) for at in squares])
    return contradicted(topic, claim.quote(), sentence(f"there is {places}"), *squares)


def _all_of_them(board: chess.Board, squares: list[chess.Square], inside: list[chess.Square]) -> bool:
    """Are all of them inside, or several of one side and all that it has?"""
    sides = [[at for at in squares if board.color_at(at) == colour] for colour in chess.COLORS]
    return len(inside) == len(squares) or any(len(men) > 1 and set(men) <= set(inside) for men in sides)


JUDGES: Final[dict[str, Judge]] = {
    "has_there": judge_has_there,
    "stands": judge_stands,
    "blocks": judge_blocks,
    "blocked": judge_blocked,
    "wing": judge_wing,
    "on_file": judge_on_file,
}
