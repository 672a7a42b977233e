"""Which moves are legal, and what a move does to the pieces, for whoever shows a board."""

from __future__ import annotations

from dataclasses import dataclass

import chess

#: The pieces that a pawn may become, the usual choice first (FIDE Laws of Chess, 3.7.3.3).
PROMOTIONS = (chess.QUEEN, chess.ROOK, chess.BISHOP, chess.KNIGHT)


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
