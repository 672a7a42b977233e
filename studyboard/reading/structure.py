"""Slips in how a talk is built: a line that does not say which move it tells, a question with two answers."""

from __future__ import annotations

from collections.abc import Callable

import chess

from studyboard.board.king_and_pawn import drawing_moves, winning_moves
from studyboard.board.mates import mate_in, mates_at_once, mating_moves
from studyboard.board.naming import counted, listed
from studyboard.model.beats import Beat
from studyboard.model.node import Place
from studyboard.model.order import VisitKind
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.reading.findings import Finding, Topic, Verdict
from studyboard.reading.mentions import Mention, Named
from studyboard.reading.scene import Scene
from studyboard.reading.words import claim_words

_SEVERAL = 3
_LONGEST_MATE = 3


def branch_finding(study: Study, positions: Positions, beat: Beat, scene: Scene) -> Finding | None:
    """A query where the first move of a beat is one of three or more that are told, and its line names none of it.

    A line names a move that says its piece, one of its squares, or what kind of move it is.
    """
    told = [visit.node for visit in beat.visits if visit.kind is VisitKind.TELL]
    if not told or not isinstance(beat.key, int):
        return None
    node = study.nodes[told[0]]
    if node.parent is None or node.move is None or not node.move or node.name:
        return None
    siblings = [study.nodes[child] for child in study.nodes[node.parent].children]
    shown = [n for n in siblings if n.telling.place is not Place.HIDDEN and (n.id == node.id or _is_told(study, n.id))]
    if len(shown) < _SEVERAL:
        return None
    board, move = positions.board(node.parent), node.move
    kind = board.piece_type_at(move.from_square)
    squares = {move.from_square, move.to_square}
    # “The pawn” tells nothing where pawns make two of the moves.
    alike = sum(board.piece_type_at(n.move.from_square) == kind == chess.PAWN for n in shown if n.move)
    for mention in scene.mentions if not board.is_castling(move) else ():
        if mention.what is Named.PIECE and mention.square in squares:
            return None
        if mention.what is Named.PIECE and mention.kind == kind and (alike < 2 or _of_file(mention, squares)):
            return None
        if mention.what is Named.SQUARE and mention.square in squares:
            return None
        if mention.what is Named.FILE and kind == chess.PAWN:
            return None
    if any(
        (said.phrase.form.capture or said.phrase.form.castles) and not scene.mood(said.phrase.anchor)
        for said in scene.said
    ):
        return None
    others = listed([board.san(n.move) for n in shown if n.move is not None and n.id != node.id])
    start, end = scene.span(0, len(scene.tokens))
    return Finding(
        scene.quote(0, min(8, len(scene.tokens))),
        Topic.BRANCH,
        Verdict.CONTRADICTED,
        "A move is told.",
        f"{counted(len(shown), 'move').capitalize()} are shown from this position; the line does not say that it tells "
        f"{board.san(move)} and not {others}.",
        f"Say the move: {board.san(move)}.",
        beat.key,
        start,
        end,
    )


def _of_file(mention: Mention, squares: set[chess.Square]) -> bool:
    """Does it say more than the sort of the piece: its file, or which of two it is?"""
    on = {chess.square_file(square) for square in squares}
    return mention.file in on or mention.vague or mention.other or mention.light is not None or mention.moves_to


def _is_told(study: Study, node: int) -> bool:
    """Has the line that begins with this node a word anywhere along it?"""
    while True:
        if study.nodes[node].spoken:
            return True
        if not study.nodes[node].children:
            return False
        node = study.nodes[node].children[0]


def think_finding(study: Study, positions: Positions, beat: Beat, *, cancelled: Callable[[], bool]) -> Finding | None:
    """What the board says to a think pause: whether the move that follows is the only one that does as much.

    Judged where that move mates in at most three or the ending is known, and where no move follows but several mate at
    once; otherwise left unchecked. Raises WorkCancelledError.
    """
    node = study.nodes[beat.node]
    board = positions.board(node.id)
    solution = next((study.nodes[child].move for child in node.children), None)
    if claim_words().hint("several_ways", beat.spoken.text.lower()):
        return _think(beat, Verdict.UNDECIDED, "The line says that there are several solutions.")
    if solution is None or not solution:
        mates = mates_at_once(board)
        if len(mates) > 1:
            names = listed([board.san(move) for move in mates])
            return _think(beat, Verdict.CONTRADICTED, f"{names} mate at once: there is more than one solution.")
        return _think(beat, Verdict.UNDECIDED, "No move follows the pause.")
    mate = None
    for moves in range(1, _LONGEST_MATE + 1):
        mate = mate_in(board, moves, cancelled=cancelled)
        if mate is not None:
            break
    known = winning_moves(board) or drawing_moves(board)
    if known and (mate is None or len(known) == 1):
        does = "wins" if winning_moves(board) else "draws"
        if solution not in known:
            return _think(
                beat, Verdict.CONTRADICTED, f"{board.san(solution)} follows, but {board.san(known[0])} {does}."
            )
        rest = [board.san(move) for move in known if move != solution]
        if rest:
            why = f"{board.san(solution)} is not the only solution: {listed(rest, 'or')} {does} as well."
            return _think(beat, Verdict.CONTRADICTED, why)
        return _think(beat, Verdict.CONFIRMED, f"{board.san(solution)} is the only move that {does}.")
    if mate is None:
        return _think(
            beat, Verdict.UNDECIDED, "It is no mate in three; whether another move is as good, the board does not say."
        )
    winners = mating_moves(board, mate.moves, cancelled=cancelled)
    length = counted(mate.moves, "move")
    if solution not in winners:
        why = f"{board.san(solution)} follows, but {board.san(winners[0])} mates in {length}."
        return _think(beat, Verdict.CONTRADICTED, why)
    others = listed([board.san(move) for move in winners if move != solution])
    if others:
        why = f"{board.san(solution)} is not the only solution: {others} mates in {length} as well."
        return _think(beat, Verdict.CONTRADICTED, why)
    return _think(beat, Verdict.CONFIRMED, f"{board.san(solution)} is the only move that mates in {length}.")


def _think(beat: Beat, verdict: Verdict, why: str) -> Finding:
    text = " ".join(beat.spoken.text.split())
    quote = text if len(text) <= 60 else f"…{text[-58:]}"
    do = "Ask for any of them, or choose another moment." if verdict is Verdict.CONTRADICTED else ""
    return Finding(
        quote, Topic.THINK, verdict, "There is one move to find.", why, do, beat.key, 0, len(beat.spoken.text)
    )
