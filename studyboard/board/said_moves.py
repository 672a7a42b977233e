"""Moves in words: “knight f3”, “bishop takes e5”, “rook from a1 to d1”, “castle kingside”, “e8 promotes to a queen”."""

from __future__ import annotations

import re
from dataclasses import dataclass

import chess

from studyboard.board.moves import landing_square
from studyboard.board.naming import listed, piece_name, piece_on, side
from studyboard.model.errors import StudyboardError
from studyboard.translation import tr

_KINDS = {name: kind for kind, name in enumerate(chess.PIECE_NAMES) if name}
_SHORT = frozenset(("kingside", "king's", "king", "short", "right"))
_LONG = frozenset(("queenside", "queen's", "queen", "long", "left"))
_CASTLING = frozenset(("castle", "castles", "castling", "castled"))
_TAKING = frozenset(("takes", "take", "captures", "capture", "x"))
_BECOMING = frozenset(("promotes", "promote", "promoting", "becomes", "equals", "=", "makes"))
#: Words that people say and that do not matter.
_IDLE = frozenset(("to", "on", "from", "the", "a", "an", "goes", "go", "moves", "move", "at", "into", "with", "check"))
_IDLE_TOO = frozenset(("side", "file", "rank", "and", "plays", "play", "checkmate", "mate"))
_WORD = re.compile(r"[a-z']+|[1-8]|=|[^\sa-z1-8=']+")
_SQUARE = re.compile(r"[a-h][1-8]")
#: More moves than this are too many to be told.
_TOLD = 12


class MoveNotReadError(StudyboardError):
    """What was typed is no move that can be played here; the message says why.

    choices: what could be played instead, as a sentence; empty where that would say nothing
    """

    def __init__(self, reason: str, choices: str = "") -> None:
        super().__init__(reason)
        self.choices = choices


@dataclass(slots=True)
class _Said:
    """What the words leave open: anything that is None may be anything."""

    kind: chess.PieceType | None = None
    squares: tuple[chess.Square, ...] = ()
    file: int | None = None
    rank: int | None = None
    takes: bool = False
    taken: chess.PieceType | None = None
    promotion: chess.PieceType | None = None
    castling: bool = False
    short: bool | None = None


def read_said(board: chess.Board, text: str) -> chess.Move | None:
    """The legal move that these words mean; None where they are not words of a move, but perhaps its notation.

    Raises MoveNotReadError where they are words of a move that cannot be played, or of more than one.
    """
    said = _understood(text.lower())
    if said is None:
        return None
    if said.castling:
        return _castled(board, said)
    fitting = sorted(
        (move for move in board.legal_moves if _fits(board, move, said)),
        key=lambda move: (move.from_square, move.to_square),
    )
    if len(fitting) == 1:
        return fitting[0]
    if not fitting:
        raise MoveNotReadError(_none_words(board, said), choices_words(board, said.kind))
    promoting = {move.promotion for move in fitting}
    if len({(move.from_square, move.to_square) for move in fitting}) == 1 and len(promoting) > 1:
        square = chess.square_name(fitting[0].to_square)
        raise MoveNotReadError(tr("The pawn promotes on {square}: say to what, as in “{square} queen”.", square=square))
    told = [_way(board, move) for move in fitting[:_TOLD]]
    raise MoveNotReadError(tr("More than one move fits: {names}.", names=listed(told, "or")))


def _none_words(board: chess.Board, said: _Said) -> str:
    name = piece_name(said.kind or chess.PAWN)
    square = chess.square_name(said.squares[-1]) if said.squares else ""
    if said.takes:
        doing = tr("take on {square}", square=square) if square else tr("take anything like that")
    else:
        doing = tr("go to {square}", square=square) if square else tr("move like that")
    return tr("No {side} {name} can {doing}.", side=side(board.turn).lower(), name=name, doing=doing)


def choices_words(board: chess.Board, kind: chess.PieceType | None) -> str:
    """What pieces of this kind can play: ``"The knight on b1 can go to a3 or c3; the knight on g1 to f3 or h3."``

    Without a kind, or where none of that kind can move, empty.
    """
    if kind is None:
        return ""
    ways: dict[chess.Square, list[chess.Square]] = {}
    for move in board.legal_moves:
        if board.piece_type_at(move.from_square) == kind:
            squares = ways.setdefault(move.from_square, [])
            if (to := landing_square(board, move)) not in squares:
                squares.append(to)
    if not ways or sum(map(len, ways.values())) > _TOLD:
        return ""
    told: list[str] = []
    for origin, squares in sorted(ways.items()):
        names = listed([chess.square_name(to) for to in sorted(squares)], "or")
        piece = piece_on(kind, origin)
        told.append(
            tr("{piece} to {squares}", piece=piece, squares=names)
            if told
            else tr("{piece} can go to {squares}", piece=piece, squares=names)
        )
    words = "; ".join(told)
    return f"{words[0].upper()}{words[1:]}."


def _understood(text: str) -> _Said | None:
    """What these words say of a move; None where there is a word among them that no move has, or no word at all."""
    said, spoken, becoming = _Said(), False, False
    for word in _words(text):
        if word in _IDLE or word in _IDLE_TOO or word in ("-", ","):
            spoken = spoken or word in _IDLE
        elif word in _CASTLING:
            said.castling = spoken = True
        elif said.castling or (word in (_SHORT | _LONG) - _KINDS.keys()):
            if word not in _SHORT | _LONG:
                return None
            said.short, spoken = word in _SHORT, True
        elif word in _KINDS:
            spoken = True
            _name(said, _KINDS[word], becoming)
        elif word in _TAKING:
            said.takes = True
        elif word in _BECOMING:
            becoming = True
        elif _SQUARE.fullmatch(word):
            said.squares = (*said.squares, chess.parse_square(word))
        elif len(word) == 1 and word in chess.FILE_NAMES:
            said.file = chess.FILE_NAMES.index(word)
        elif word in chess.RANK_NAMES:
            said.rank = chess.RANK_NAMES.index(word)
        else:
            return None
    if not spoken or (said.short is not None and not said.castling) or len(said.squares) > 2:
        return None
    return said if said.castling or said.kind is not None or said.squares else None


def _name(said: _Said, kind: chess.PieceType, becoming: bool) -> None:
    """A piece was named: the one that moves, the one that is taken, or what a pawn becomes."""
    if becoming or said.taken is not None or (said.squares and said.kind in (None, chess.PAWN)):
        said.promotion = kind
    elif said.takes:
        said.taken = kind
    elif said.kind is None:
        said.kind = kind


def _words(text: str) -> list[str]:
    """The words of a text; a square is one word, also where file and rank are written apart (“f 3”)."""
    found: list[str] = []
    for word in _WORD.findall(re.sub(r"([a-h])([1-8])", r" \1 \2 ", text)):
        if word in chess.RANK_NAMES and found and len(found[-1]) == 1 and found[-1] in chess.FILE_NAMES:
            found[-1] += word
        else:
            found.append(word)
    return found


def _fits(board: chess.Board, move: chess.Move, said: _Said) -> bool:
    if board.is_castling(move):
        return False
    kind = board.piece_type_at(move.from_square)
    origin, taken = move.from_square, board.piece_type_at(move.to_square)
    if board.is_en_passant(move):
        taken = chess.PAWN
    # A square alone, or with what becomes of a pawn, is a pawn's move, as in the notation of the game.
    wanted = said.kind if said.kind is not None or len(said.squares) == 2 else chess.PAWN
    return (
        wanted in (None, kind)
        and (not said.squares or move.to_square == said.squares[-1])
        and (len(said.squares) < 2 or origin == said.squares[0])
        and said.file in (None, chess.square_file(origin))
        and said.rank in (None, chess.square_rank(origin))
        and (not said.takes or taken is not None)
        and said.taken in (None, taken)
        and said.promotion in (None, move.promotion)
    )


def _castled(board: chess.Board, said: _Said) -> chess.Move:
    ways = [
        move
        for move in board.legal_moves
        if board.is_castling(move) and said.short in (None, board.is_kingside_castling(move))
    ]
    if len(ways) == 1:
        return ways[0]
    if ways:
        raise MoveNotReadError(tr("Say to which side: castle kingside, or castle queenside."))
    raise MoveNotReadError(cannot_castle(board.turn, said.short), choices_words(board, chess.KING))


def cannot_castle(colour: chess.Color, short: bool | None) -> str:
    """That *colour* cannot castle here, on the wing that was said or on either."""
    name = side(colour)
    if short is None:
        return tr("{side} cannot castle here.", side=name)
    if short:
        return tr("{side} cannot castle kingside here.", side=name)
    return tr("{side} cannot castle queenside here.", side=name)


def _way(board: chess.Board, move: chess.Move) -> str:
    words = tr(
        "{piece} from {origin} to {target}",
        piece=piece_name(board.piece_type_at(move.from_square) or chess.PAWN),
        origin=chess.square_name(move.from_square),
        target=chess.square_name(move.to_square),
    )
    return tr("{words}, a {piece}", words=words, piece=piece_name(move.promotion)) if move.promotion else words
