"""Castling and the king: who may castle and why not, how exposed a king is, draws by rule, only moves."""

from __future__ import annotations

from dataclasses import dataclass

import chess

from studyboard.board.naming import listed, side, squares_listed, the_piece
from studyboard.board.tactics import turned
from studyboard.translation import tr


@dataclass(frozen=True, slots=True)
class Castling:
    """Whether one side may castle on one wing.

    now: legal at once, if it is that side's turn or were
    right: the right is still there (neither king nor rook has moved)
    why: a sentence
    """

    now: bool
    right: bool
    why: str


@dataclass(frozen=True, slots=True)
class Exposure:
    """How open a king stands.

    shelter: squares of its own pawns next to it or in front, up to two ranks ahead on its file and beside it
    attacked: squares next to the king that the other side attacks
    open_files: files (0 for a) through or beside the king without a pawn of its own
    """

    shelter: tuple[chess.Square, ...]
    attacked: tuple[chess.Square, ...]
    open_files: tuple[int, ...]


def castling(board: chess.Board, colour: chess.Color, kingside: bool) -> Castling:
    """Whether *colour* may castle on this wing, with the reason. FIDE Laws of Chess, 3.8.2."""
    wing = tr("kingside") if kingside else tr("queenside")
    who = side(colour)
    right = board.has_kingside_castling_rights(colour) if kingside else board.has_queenside_castling_rights(colour)
    if not right:
        return Castling(
            False,
            False,
            tr("{who} has no right to castle {wing}: the king or that rook has moved or is gone.", who=who, wing=wing),
        )
    facing = turned(board, colour)
    if facing is not None:
        wanted = facing.is_kingside_castling if kingside else facing.is_queenside_castling
        if any(wanted(move) for move in facing.generate_castling_moves()):
            return Castling(True, True, tr("{who} may castle {wing}.", who=who, wing=wing))
    king = board.king(colour)
    if king is None:
        return Castling(False, False, tr("{who} has no king.", who=who))
    if board.attackers_mask(not colour, king):
        return Castling(False, True, tr("{who} is in check and cannot castle.", who=who))
    rank = chess.square_rank(king)
    corner = chess.square(7 if kingside else 0, rank)
    blocking = tuple(chess.scan_forward(chess.between(king, corner) & board.occupied))
    if blocking:
        between = listed([the_piece(board, at) for at in blocking])
        return Castling(
            False,
            True,
            tr("{who} cannot castle {wing} now: {between} in between.", who=who, wing=wing, between=between),
        )
    target = chess.square(6 if kingside else 2, rank)
    path = chess.between(king, target) | chess.BB_SQUARES[target]
    hit = [at for at in chess.scan_forward(path) if board.attackers_mask(not colour, at)]
    if not hit:
        # The other side is in check now, so that its turn cannot be passed; nothing else stands against it.
        return Castling(True, True, tr("{who} may castle {wing}.", who=who, wing=wing))
    passed = squares_listed(hit)
    passes = (
        tr("the king would pass over {squares}, which is attacked", squares=passed)
        if len(hit) == 1
        else tr("the king would pass over {squares}, which are attacked", squares=passed)
    )
    return Castling(False, True, tr("{who} cannot castle {wing} now: {passes}.", who=who, wing=wing, passes=passes))


def exposure(board: chess.BaseBoard, colour: chess.Color) -> Exposure | None:
    """How open the king of *colour* stands; None without a king."""
    king = board.king(colour)
    if king is None:
        return None
    file, rank = chess.square_file(king), chess.square_rank(king)
    files = [f for f in (file - 1, file, file + 1) if 0 <= f <= 7]
    ahead = [rank + step * (1 if colour else -1) for step in (0, 1, 2)]
    own = board.pieces_mask(chess.PAWN, colour)
    shelter = [chess.square(f, r) for f in files for r in ahead if 0 <= r <= 7 and own >> chess.square(f, r) & 1]
    attacked = [at for at in chess.scan_forward(chess.BB_KING_ATTACKS[king]) if board.attackers_mask(not colour, at)]
    return Exposure(tuple(shelter), tuple(attacked), tuple(f for f in files if not own & chess.BB_FILES[f]))


def exposure_words(board: chess.BaseBoard, colour: chess.Color) -> str | None:
    """``"Black's king on g8 has no pawn of its own on the g- or h-file, and White attacks f7 and h7 beside it."``

    None where each file through or beside the king has its pawn and nothing beside the king is attacked.
    """
    state, king = exposure(board, colour), board.king(colour)
    if state is None or king is None or not (state.open_files or state.attacked):
        return None
    foe, hit = side(not colour), squares_listed(state.attacked)
    name = tr("{side}'s king on {square}", side=side(colour), square=chess.square_name(king))
    if not state.open_files:
        return tr("{foe} attacks {squares} beside {king}.", foe=foe, squares=hit, king=name)
    files = listed([f"{'abcdefgh'[file]}-" for file in state.open_files], "or")
    if not state.attacked:
        return tr("{king} has no pawn of its own on the {files}file.", king=name, files=files)
    return tr(
        "{king} has no pawn of its own on the {files}file, and {foe} attacks {squares} beside it.",
        king=name,
        files=files,
        foe=foe,
        squares=hit,
    )


def king_squares(board: chess.Board, colour: chess.Color) -> tuple[chess.Square, ...]:
    """Where the king of *colour* could legally go, if it were its turn; castling left aside."""
    king = board.king(colour)
    if king is None:
        return ()
    facing = board
    if board.turn != colour:
        # Passing the turn out of check is against the rules, but where this king can go does not depend on that.
        facing = board.copy(stack=False)
        facing.turn, facing.ep_square = colour, None
    moves = facing.generate_legal_moves(chess.BB_SQUARES[king])
    return tuple(sorted(move.to_square for move in moves if not facing.is_castling(move)))


def only_move(board: chess.Board) -> chess.Move | None:
    """The one legal move; None where there are none or several."""
    moves = board.generate_legal_moves()
    first = next(moves, None)
    return first if first is not None and next(moves, None) is None else None


def only_move_words(board: chess.Board) -> str | None:
    """``"Black has one legal move: Rxg8."``; None where there are none or several."""
    move = only_move(board)
    return (
        None if move is None else tr("{side} has one legal move: {move}.", side=side(board.turn), move=board.san(move))
    )


def draw_by_rule(board: chess.Board) -> str | None:
    """Which rule makes this position a draw, in words; None where none does.

    FIDE Laws of Chess: 5.2.1 stalemate, 5.2.2 dead position (too little material), 9.3 and 9.6.2 the fifty and
    seventy-five moves, 9.2 and 9.6.1 repetitions, which need the moves before: they count where the board has them. Of
    dead positions only those are known in which no material could mate, not those in which every pawn is blocked.
    """
    if board.king(chess.WHITE) is None or board.king(chess.BLACK) is None:
        return None
    if board.is_stalemate():
        return tr("{side} is stalemated: the game is drawn.", side=side(board.turn))
    if board.is_insufficient_material():
        return tr("Neither side can give mate any more: the game is drawn.")
    if board.is_seventyfive_moves():
        return tr("Seventy-five moves without a capture or a pawn move: the game is drawn.")
    if board.is_fifty_moves():
        return tr("Fifty moves without a capture or a pawn move: either side may claim a draw.")
    if board.is_repetition(5):
        return tr("The position has come up five times: the game is drawn.")
    if board.is_repetition(3):
        return tr("The position has come up three times: either side may claim a draw.")
    return None


def bishops_words(board: chess.BaseBoard) -> str | None:
    """How the bishops stand to each other, where each side has exactly one; None elsewhere."""
    if any(chess.popcount(board.pieces_mask(chess.BISHOP, colour)) != 1 for colour in chess.COLORS):
        return None
    colours = tr("opposite colours") if opposite_bishops(board) else tr("the same colour")
    return tr("The bishops move on {colours}.", colours=colours)


def opposite_bishops(board: chess.BaseBoard) -> bool:
    """Has each side exactly one bishop, and do they move on different colours?"""
    white, black = (board.pieces_mask(chess.BISHOP, colour) for colour in chess.COLORS)
    if chess.popcount(white) != 1 or chess.popcount(black) != 1:
        return False
    return bool(white & chess.BB_LIGHT_SQUARES) != bool(black & chess.BB_LIGHT_SQUARES)


def has_bishop_pair(board: chess.BaseBoard, colour: chess.Color) -> bool:
    """Has this side bishops on both colours?"""
    bishops = board.pieces_mask(chess.BISHOP, colour)
    return bool(bishops & chess.BB_LIGHT_SQUARES) and bool(bishops & chess.BB_DARK_SQUARES)
