"""Pieces that a line says to stand where they do not."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import chess

from studyboard.board.naming import listed, sentence, the_piece, their_piece
from studyboard.reading.findings import Finding, Fix, Topic, Verdict
from studyboard.reading.fixes import piece_fix, square_fix
from studyboard.reading.mentions import Mention, Named
from studyboard.reading.moods import Mood
from studyboard.reading.referents import fitting
from studyboard.reading.scene import Scene


@dataclass(frozen=True, slots=True)
class Known:
    """A move of the tree near a line, with the position in which it is played."""

    board: chess.Board
    move: chess.Move


def known_after(known: Known) -> chess.Board:
    """The position after a known move."""
    after = known.board.copy(stack=False)
    after.push(known.move)
    return after


def standing(scene: Scene, near: Sequence[Known], earlier: Sequence[chess.Board]) -> Iterator[Finding]:
    """Pieces that are said to stand on a square."""
    for mention in scene.mentions:
        if mention.what is not Named.PIECE or mention.square is None or mention.moves_to or not mention.definite:
            continue
        if mention.plural or mention.pronoun:
            continue
        led = " ".join(token.text for token in scene.tokens[max(0, mention.start - 3) : mention.start])
        if scene.words.hint("unreal_before", led):
            # “Without the bishop on g7”, “to put the knight on c5”.
            continue
        boards = [*scene.window(mention.start, wide=True), *(step.board for step in scene.steps), scene.start]
        here = scene.window(mention.start)[0]
        quote = scene.quote(mention.start, mention.end)
        if any(fitting(mention, board) for board in boards):
            yield _stands(
                scene, mention, Verdict.CONFIRMED, Topic.PIECE, f"{sentence(their_piece(here, mention.square))}", None
            )
            continue
        mood = (scene.mood(mention.start) | scene.mood(mention.end - 1)) & ~(Mood.NEGATIVE | Mood.QUESTION)
        past = mood & Mood.PAST and any(fitting(mention, board) for board in earlier)
        last = scene.steps[-1].board if scene.steps else scene.start
        comes = any(fitting(mention, known_after(known)) for known in near if known.board == last)
        comes = comes or _gives_check_there(scene, mention, here)
        if mood & ~Mood.PAST or past or comes or scene.talk.part or mention.vague or mention.comes_from is not None:
            yield _stands(scene, mention, Verdict.UNDECIDED, Topic.PIECE, f"{quote}: not on the board now.", None)
            continue
        yield _missing(scene, mention, here)


def _gives_check_there(scene: Scene, mention: Mention, board: chess.Board) -> bool:
    """“He has two checks, with the bishop on d7 and with the pawn on b5”: those that can be given."""
    start, _ = scene.sentence(mention.start)
    led = " ".join(token.text for token in scene.tokens[start : mention.start])
    if mention.square is None or not scene.words.hint("checks_with_before", led):
        return False
    moves = board.generate_legal_moves(to_mask=chess.BB_SQUARES[mention.square])
    return any(board.piece_type_at(move.from_square) == mention.kind and board.gives_check(move) for move in moves)


def _missing(scene: Scene, mention: Mention, board: chess.Board) -> Finding:
    assert mention.square is not None
    there = board.piece_at(mention.square)
    alike = list(fitting(_anywhere(mention), board))
    fix: Fix | None = None
    if there is not None and mention.kind == there.piece_type:
        topic, why = Topic.COLOUR, f"{their_piece(board, mention.square)} stands there."
    elif there is not None:
        topic, why = Topic.PIECE, sentence(f"{their_piece(board, mention.square)} stands there")
        if mention.kind is not None and (mention.colour in (None, there.color)):
            fix = piece_fix(scene, mention.start, mention.end, mention.kind, there.piece_type)
    else:
        topic = Topic.SQUARE
        places = listed([the_piece(board, at) for at in alike])
        why = sentence(f"{chess.square_name(mention.square)} is empty" + (f"; there is {places}" if places else ""))
        if len(alike) == 1:
            fix = square_fix(scene, mention.start, mention.end, mention.square, alike[0])
    return _stands(scene, mention, Verdict.CONTRADICTED, topic, why, fix)


def _stands(scene: Scene, mention: Mention, verdict: Verdict, topic: Topic, why: str, fix: Fix | None) -> Finding:
    start, end = scene.span(mention.start, mention.end)
    quote = scene.quote(mention.start, mention.end)
    do = "" if verdict is not Verdict.CONTRADICTED else f"Say “{fix.text}”." if fix else "Name what stands there."
    squares = () if mention.square is None else (mention.square,)
    return Finding(quote, topic, verdict, quote, why, do, scene.key, start, end, squares, (), fix)


def _anywhere(mention: Mention) -> Mention:
    return Mention(Named.PIECE, mention.start, mention.end, kind=mention.kind, colour=mention.colour)
