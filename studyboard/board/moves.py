"""Which moves are legal, and what a move does to the pieces, for whoever shows a board."""

from __future__ import annotations

import re
from dataclasses import dataclass

import chess

from studyboard.model.errors import StudyboardError

#: The pieces that a pawn may become, the usual choice first (FIDE Laws of Chess, 3.7.3.3).
PROMOTIONS = (chess.QUEEN, chess.ROOK, chess.BISHOP, chess.KNIGHT)

_PIECE_LETTERS = {"K": chess.KING, "Q": chess.QUEEN, "R": chess.ROOK, "B": chess.BISHOP, "N": chess.KNIGHT}
_UCI = re.compile(r"[a-h][1-8]-?[a-h][1-8][qrbn]?", re.IGNORECASE)
_SAN = re.compile(r"([KQRBN]?)([a-h]?)([1-8]?)([x:]?)([a-h][1-8])(?:=?\(?([QRBN])\)?)?")
_NUMBER = re.compile(r"^\d+\s*(\.+|…)\s*")
_CASTLES = re.compile(r"[O0o](-?[O0o]){1,2}")


class MoveNotReadError(StudyboardError):
    """What was typed is no move that can be played here; the message says why."""


@dataclass(frozen=True, slots=True)
class Slide:
    """One piece going from one square to another.

    piece: as it leaves; a pawn that promotes slides as a pawn
    """

    piece: chess.Piece
    origin: chess.Square
    destination: chess.Square


@dataclass(frozen=True, slots=True)
class Rearrangement:
    """What it takes to get from one position to another.

    slides: pieces that go elsewhere
    gone: squares of pieces that disappear, in the first position
    come: squares of pieces that appear, in the second position
    """

    slides: tuple[Slide, ...]
    gone: tuple[chess.Square, ...]
    come: tuple[chess.Square, ...]

    def __bool__(self) -> bool:
        return bool(self.slides or self.gone or self.come)

    def reversed(self) -> Rearrangement:
        """The way back."""
        back = tuple(Slide(slide.piece, slide.destination, slide.origin) for slide in self.slides)
        return Rearrangement(back, self.come, self.gone)

    def without(self, origin: chess.Square) -> Rearrangement:
        """The same for all but the piece that leaves *origin*; what is gone is gone at once."""
        return Rearrangement(tuple(slide for slide in self.slides if slide.origin != origin), (), self.come)


def can_move(board: chess.Board, square: chess.Square) -> bool:
    """True where a piece of the side to move stands."""
    return board.color_at(square) == board.turn


def legal_targets(board: chess.Board, square: chess.Square) -> frozenset[chess.Square]:
    """Where the piece on *square* may legally go; for castling, the square that the king reaches."""
    return frozenset(
        landing_square(board, move) for move in board.generate_legal_moves(from_mask=chess.BB_SQUARES[square])
    )


def moves_between(board: chess.Board, origin: chess.Square, destination: chess.Square) -> tuple[chess.Move, ...]:
    """The legal moves that a piece put from one square on another can mean; several only where a pawn promotes.

    Castling is meant by the square that the king reaches or by the rook it castles with; a plain king move to that
    square comes first.
    """
    moves = list(board.generate_legal_moves(from_mask=chess.BB_SQUARES[origin]))
    plain = [move for move in moves if move.to_square == destination and not board.is_castling(move)]
    if plain:
        return tuple(sorted(plain, key=lambda move: PROMOTIONS.index(move.promotion) if move.promotion else 0))
    return tuple(
        move
        for move in moves
        if board.is_castling(move) and destination in (landing_square(board, move), _castling_rook(board, move)[0])
    )


def landing_square(board: chess.Board, move: chess.Move) -> chess.Square:
    """Where the piece that moves stands afterwards: for castling, the square that the king reaches."""
    if not board.is_castling(move):
        return move.to_square
    file = 6 if board.is_kingside_castling(move) else 2
    return chess.square(file, chess.square_rank(move.from_square))


def captured_square(board: chess.Board, move: chess.Move) -> chess.Square | None:
    """Where the piece stands that *move* takes; None where it takes none."""
    if board.is_en_passant(move):
        return chess.square(chess.square_file(move.to_square), chess.square_rank(move.from_square))
    return move.to_square if board.is_capture(move) else None


def rearrangement_of(board: chess.Board, move: chess.Move) -> Rearrangement:
    """What *move*, legal on *board*, does to the pieces: castling moves two, passing the turn none."""
    piece = board.piece_at(move.from_square)
    if not move or piece is None:
        return Rearrangement((), (), ())
    slides = [Slide(piece, move.from_square, landing_square(board, move))]
    if board.is_castling(move):
        origin, destination = _castling_rook(board, move)
        slides.append(Slide(chess.Piece(chess.ROOK, piece.color), origin, destination))
    taken = captured_square(board, move)
    return Rearrangement(tuple(slides), () if taken is None else (taken,), ())


def rearrangement_between(before: chess.BaseBoard, after: chess.BaseBoard) -> Rearrangement:
    """What it takes to get from one position to any other: equal pieces go to the nearest place, others come or go."""
    had, has = before.piece_map(), after.piece_map()
    leaving = {square: piece for square, piece in had.items() if has.get(square) != piece}
    arriving = {square: piece for square, piece in has.items() if had.get(square) != piece}
    pairs = sorted(
        (_way(piece, origin, destination), origin, destination)
        for origin, piece in leaving.items()
        for destination, other in arriving.items()
        if piece == other
    )
    slides = []
    for _, origin, destination in pairs:
        if origin in leaving and destination in arriving:
            slides.append(Slide(leaving.pop(origin), origin, destination))
            del arriving[destination]
    return Rearrangement(tuple(slides), tuple(sorted(leaving)), tuple(sorted(arriving)))


def read_move(board: chess.Board, typed: str) -> chess.Move:
    """The legal move that someone typed: ``Nf3``, ``nf3``, ``exd5``, ``e8=Q``, ``O-O``, ``0-0`` or ``g1f3``.

    A move number in front and signs behind it are passed over. Raises MoveNotReadError with the reason.
    """
    text = _NUMBER.sub("", typed.strip()).rstrip("+#!?").strip()
    if not text:
        raise MoveNotReadError("Type a move, such as Nf3 or g1f3.")
    if _CASTLES.fullmatch(text):
        return _read_castling(board, text)
    if _UCI.fullmatch(text):
        return _read_squares(board, text)
    for spelling in dict.fromkeys((text, text[0].upper() + text[1:])):
        match = _SAN.fullmatch(spelling)
        if match is None:
            continue
        try:
            return board.parse_san(_plain(match))
        except ValueError as reason:
            # A leading b may be the file or a bishop; the other spelling gets its turn before a reason is given.
            if spelling == text and text[0] == "b" and _SAN.fullmatch("B" + text[1:]):
                continue
            raise MoveNotReadError(_why_not(board, match, reason)) from reason
    raise MoveNotReadError(f"“{typed.strip()}” is not a move. Type one such as Nf3, exd5, O-O or g1f3.")


def _plain(match: re.Match[str]) -> str:
    letter, file, rank, takes, square, promotion = match.groups()
    return f"{letter}{file}{rank}{'x' if takes else ''}{square}{'=' + promotion if promotion else ''}"


def _read_castling(board: chess.Board, text: str) -> chess.Move:
    short = len(re.findall(r"[O0o]", text)) == 2
    try:
        return board.parse_san("O-O" if short else "O-O-O")
    except ValueError as reason:
        side = "kingside" if short else "queenside"
        raise MoveNotReadError(f"{_side(board.turn)} cannot castle {side} here.") from reason


def _read_squares(board: chess.Board, text: str) -> chess.Move:
    squares = text.replace("-", "").lower()
    origin, destination = chess.parse_square(squares[:2]), chess.parse_square(squares[2:4])
    moves = moves_between(board, origin, destination)
    promotion = chess.PIECE_SYMBOLS.index(squares[4]) if len(squares) == 5 else None
    fitting = [move for move in moves if move.promotion == promotion]
    if fitting:
        return fitting[0]
    if moves:
        raise MoveNotReadError(
            f"The pawn promotes on {squares[2:4]}: say to what, as in {squares[:4]}q."
            if promotion is None
            else f"The move from {squares[:2]} to {squares[2:4]} promotes no pawn."
        )
    piece = board.piece_at(origin)
    if piece is None:
        raise MoveNotReadError(f"There is no piece on {squares[:2]}.")
    if piece.color != board.turn:
        owner = _side(piece.color)
        raise MoveNotReadError(f"It is {_side(board.turn)}'s move; the piece on {squares[:2]} is {owner}'s.")
    name = chess.piece_name(piece.piece_type)
    if board.is_pseudo_legal(chess.Move(origin, destination)):
        raise MoveNotReadError(f"The {name} on {squares[:2]} cannot go to {squares[2:4]}: {_king_danger(board)}.")
    raise MoveNotReadError(f"The {name} on {squares[:2]} cannot go to {squares[2:4]}.")


def _why_not(board: chess.Board, match: re.Match[str], reason: ValueError) -> str:
    letter, file, rank, _, square_name, promotion = match.groups()
    kind = _PIECE_LETTERS.get(letter, chess.PAWN)
    name, square = chess.piece_name(kind), chess.parse_square(square_name)
    side = _side(board.turn)
    candidates = [
        move
        for move in board.pseudo_legal_moves
        if move.to_square == square and board.piece_type_at(move.from_square) == kind
    ]
    legal = [move for move in candidates if board.is_legal(move)]
    if isinstance(reason, chess.AmbiguousMoveError):
        origins = sorted({chess.square_name(move.from_square) for move in legal})
        example = f"{origins[0]}{square_name}"
        return f"More than one {name} can go to {square_name}: say from {_either(origins)}, as in {example}."
    if kind == chess.PAWN and any(move.promotion for move in legal) and not promotion:
        return f"The pawn promotes on {square_name}: say to what, as in {match[0]}=Q."
    if promotion and legal and not any(move.promotion for move in legal):
        return f"No pawn promotes on {square_name}."
    if not board.pieces(kind, board.turn):
        return f"{side} has no {name}."
    if legal:
        where = f"on {file}{rank}" if file and rank else f"on the {file}-file" if file else f"on rank {rank}"
        return f"No {name} {where} can go to {square_name}." if file or rank else f"{match[0]} is not legal here."
    if candidates:
        return f"The {name} cannot go to {square_name}: {_king_danger(board)}."
    return f"No {side.lower()} {name} can go to {square_name}."


def _king_danger(board: chess.Board) -> str:
    return "the king is in check" if board.is_check() else "the king would be in check"


def _either(names: list[str]) -> str:
    return f"{', '.join(names[:-1])} or {names[-1]}"


def _way(piece: chess.Piece, origin: chess.Square, destination: chess.Square) -> int:
    """How far a piece seems to go; a pawn rather comes from its own file than from beside."""
    if piece.piece_type == chess.PAWN:
        files = abs(chess.square_file(origin) - chess.square_file(destination))
        return 8 * files + abs(chess.square_rank(origin) - chess.square_rank(destination))
    if piece.piece_type == chess.KNIGHT:
        return chess.square_knight_distance(origin, destination)
    return chess.square_manhattan_distance(origin, destination)


def _castling_rook(board: chess.Board, move: chess.Move) -> tuple[chess.Square, chess.Square]:
    """Where the rook of a castling move stands and where it goes."""
    short = board.is_kingside_castling(move)
    rank = chess.square_rank(move.from_square)
    destination = chess.square(5 if short else 3, rank)
    if board.piece_at(move.to_square) == chess.Piece(chess.ROOK, board.turn):
        return move.to_square, destination
    return chess.square(7 if short else 0, rank), destination


def _side(colour: chess.Color) -> str:
    return chess.COLOR_NAMES[colour].capitalize()
