"""Moves that someone types, in the notation of the game or in words."""

from __future__ import annotations

import re

import chess

from studyboard.board.moves import moves_between
from studyboard.board.naming import listed, piece_name
from studyboard.board.naming import side as named_side
from studyboard.board.said_moves import MoveNotReadError, cannot_castle, choices_words, read_said
from studyboard.translation import tr

__all__ = ["MoveNotReadError", "read_move"]

_PIECE_LETTERS = {"K": chess.KING, "Q": chess.QUEEN, "R": chess.ROOK, "B": chess.BISHOP, "N": chess.KNIGHT}
_UCI = re.compile(r"[a-h][1-8]-?[a-h][1-8][qrbn]?", re.IGNORECASE)
_SAN = re.compile(r"([KQRBN]?)([a-h]?)([1-8]?)([x:]?)([a-h][1-8])(?:=?\(?([QRBNqrbn])\)?)?")
#: Figurines of either colour, by the letters that stand for them.
_FIGURINES = str.maketrans("♔♕♖♗♘♚♛♜♝♞", "KQRBNKQRBN", "♙♟\ufe0e\ufe0f")
_NUMBER = re.compile(r"^\d+\s*(\.+|…)\s*")
_CASTLES = re.compile(r"[O0o](-?[O0o]){1,2}")


def read_move(board: chess.Board, typed: str) -> chess.Move:
    """The legal move that someone typed: ``Nf3``, ``nf3``, ``exd5``, ``e8=Q``, ``O-O``, ``0-0``, ``g1f3``, or in words.

    A move number in front and signs behind it are passed over; see said_moves for words. Raises MoveNotReadError with
    the reason and what could be played instead.
    """
    text = _NUMBER.sub("", typed.strip()).rstrip("+#!?").strip().translate(_FIGURINES)
    if not text:
        raise MoveNotReadError(tr("Type a move, such as Nf3 or g1f3."))
    if (said := read_said(board, text)) is not None:
        return said
    text = "".join(text.split())
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
            raise MoveNotReadError(_why_not(board, match, reason), _instead(board, match)) from reason
    raise MoveNotReadError(tr("“{text}” is not a move. Type one such as Nf3, exd5, O-O or g1f3.", text=typed.strip()))


def _plain(match: re.Match[str]) -> str:
    letter, file, rank, takes, square, promotion = match.groups()
    return f"{letter}{file}{rank}{'x' if takes else ''}{square}{'=' + promotion if promotion else ''}"


def _read_castling(board: chess.Board, text: str) -> chess.Move:
    short = len(re.findall(r"[O0o]", text)) == 2
    try:
        return board.parse_san("O-O" if short else "O-O-O")
    except ValueError as reason:
        raise MoveNotReadError(cannot_castle(board.turn, short)) from reason


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
            tr(
                "The pawn promotes on {square}: say to what, as in {example}.",
                square=squares[2:4],
                example=f"{squares[:4]}q",
            )
            if promotion is None
            else tr("The move from {origin} to {target} promotes no pawn.", origin=squares[:2], target=squares[2:4])
        )
    piece = board.piece_at(origin)
    if piece is None:
        raise MoveNotReadError(tr("There is no piece on {square}.", square=squares[:2]))
    if piece.color != board.turn:
        owner = named_side(piece.color)
        raise MoveNotReadError(
            tr(
                "It is {side}'s move; the piece on {square} is {owner}'s.",
                side=named_side(board.turn),
                square=squares[:2],
                owner=owner,
            )
        )
    name = piece_name(piece.piece_type)
    if board.is_pseudo_legal(chess.Move(origin, destination)):
        raise MoveNotReadError(
            tr(
                "The {name} on {origin} cannot go to {target}: {why}.",
                name=name,
                origin=squares[:2],
                target=squares[2:4],
                why=_king_danger(board),
            ),
            choices_words(board, piece.piece_type),
        )
    raise MoveNotReadError(
        tr("The {name} on {origin} cannot go to {target}.", name=name, origin=squares[:2], target=squares[2:4]),
        choices_words(board, piece.piece_type),
    )


def _why_not(board: chess.Board, match: re.Match[str], reason: ValueError) -> str:
    letter, file, rank, _, square_name, promotion = match.groups()
    kind = _PIECE_LETTERS.get(letter, chess.PAWN)
    name, square = piece_name(kind), chess.parse_square(square_name)
    side = named_side(board.turn)
    candidates = [
        move
        for move in board.pseudo_legal_moves
        if move.to_square == square and board.piece_type_at(move.from_square) == kind
    ]
    legal = [move for move in candidates if board.is_legal(move)]
    if isinstance(reason, chess.AmbiguousMoveError):
        origins = sorted({chess.square_name(move.from_square) for move in legal})
        example = f"{origins[0]}{square_name}"
        return tr(
            "More than one {name} can go to {square}: say from {names}, as in {example}.",
            name=name,
            square=square_name,
            names=listed(origins, "or"),
            example=example,
        )
    if kind == chess.PAWN and any(move.promotion for move in legal) and not promotion:
        return tr(
            "The pawn promotes on {square}: say to what, as in {example}.", square=square_name, example=f"{match[0]}=Q"
        )
    if promotion and legal and not any(move.promotion for move in legal):
        return tr("No pawn promotes on {square}.", square=square_name)
    if not board.pieces(kind, board.turn):
        return tr("{side} has no {name}.", side=side, name=name)
    if legal:
        if not file and not rank:
            return tr("{move} is not legal here.", move=match[0])
        if file and rank:
            return tr(
                "No {name} on {file}{rank} can go to {square}.", name=name, file=file, rank=rank, square=square_name
            )
        if file:
            return tr("No {name} on the {file}-file can go to {square}.", name=name, file=file, square=square_name)
        return tr("No {name} on rank {rank} can go to {square}.", name=name, rank=rank, square=square_name)
    if candidates:
        return tr(
            "The {name} cannot go to {square}: {why}.",
            name=name,
            square=square_name,
            why=_king_danger(board),
        )
    return tr("No {side} {name} can go to {square}.", side=side.lower(), name=name, square=square_name)


def _instead(board: chess.Board, match: re.Match[str]) -> str:
    """What the pieces of that kind can play, unless one of them can go there and only was not named well enough."""
    kind, square = _PIECE_LETTERS.get(match[1], chess.PAWN), chess.parse_square(match[5])
    moves = board.generate_legal_moves(board.pieces_mask(kind, board.turn), chess.BB_SQUARES[square])
    return "" if any(moves) else choices_words(board, kind)


def _king_danger(board: chess.Board) -> str:
    return tr("the king is in check") if board.is_check() else tr("the king would be in check")
