"""The statements that a file of claims may make about a position."""

from __future__ import annotations

from collections.abc import Callable

import chess
from position_facts import (
    files_of,
    forced_mate,
    hangs,
    is_passed,
    islands,
    keys,
    mates,
    pawn_ending_is_won,
    trapped,
    with_turn,
)

SIDES = {"w": chess.WHITE, "b": chess.BLACK}

Statement = Callable[..., bool]
STATEMENTS: dict[str, Statement] = {}


def statement(name: str) -> Callable[[Statement], Statement]:
    def keep(judge: Statement) -> Statement:
        STATEMENTS[name] = judge
        return judge

    return keep


def squares(names: tuple[str, ...]) -> list[int]:
    return [chess.parse_square(name) for name in names]


@statement("piece")
def _piece(board: chess.Board, square: str, symbol: str) -> bool:
    piece = board.piece_at(chess.parse_square(square))
    return piece is not None and piece.symbol() == symbol


@statement("empty")
def _empty(board: chess.Board, *names: str) -> bool:
    return all(board.piece_at(square) is None for square in squares(names))


@statement("attacks")
def _attacks(board: chess.Board, source: str, *names: str) -> bool:
    return all(square in board.attacks(chess.parse_square(source)) for square in squares(names))


@statement("attackers")
def _attackers(board: chess.Board, side: str, square: str, count: str) -> bool:
    return len(board.attackers(SIDES[side], chess.parse_square(square))) == int(count)


@statement("fork")
def _fork(board: chess.Board, source: str, *names: str) -> bool:
    side = board.color_at(chess.parse_square(source))
    return _attacks(board, source, *names) and all(board.color_at(square) == (not side) for square in squares(names))


@statement("through")
def _through(board: chess.Board, source: str, front: str, behind: str) -> bool:
    """A line piece looks at *front* and, with that gone, at *behind*; both are the other side's."""
    start, first, second = squares((source, front, behind))
    lifted = board.copy(stack=False)
    lifted.remove_piece_at(first)
    return (
        first in board.attacks(start)
        and second not in board.attacks(start)
        and second in lifted.attacks(start)
        and board.color_at(first) == board.color_at(second) == (not board.color_at(start))
    )


@statement("pinned")
def _pinned(board: chess.Board, name: str) -> bool:
    square = chess.parse_square(name)
    side = board.color_at(square)
    return side is not None and board.is_pinned(side, square)


@statement("check")
def _check(board: chess.Board) -> bool:
    return board.is_check()


@statement("double")
def _double(board: chess.Board) -> bool:
    return len(board.checkers()) == 2


@statement("discovered")
def _discovered(board: chess.Board) -> bool:
    return board.is_check() and board.peek().to_square not in board.checkers()


@statement("mate")
def _mate(board: chess.Board) -> bool:
    return board.is_checkmate()


@statement("stalemate")
def _stalemate(board: chess.Board) -> bool:
    return board.is_stalemate()


@statement("mate_in")
def _mate_in(board: chess.Board, moves: str) -> bool:
    """The side to move forces mate in exactly so many moves."""
    count = int(moves)
    return forced_mate(board, count) and (count == 1 or not forced_mate(board, count - 1))


@statement("keys")
def _keys(board: chess.Board, moves: str, *sans: str) -> bool:
    return sorted(keys(board, int(moves))) == sorted(sans)


@statement("threatens")
def _threatens(board: chess.Board, *sans: str) -> bool:
    """The side that has just moved would mate with each of these moves if the other passed."""
    passing = with_turn(board, not board.turn)
    return bool(sans) and not board.is_check() and all(san in keys(passing, 1) for san in sans)


@statement("threat_on")
def _threat_on(board: chess.Board, name: str) -> bool:
    """The side that has just moved threatens mate on that square."""
    passing = with_turn(board, not board.turn)
    square = chess.parse_square(name)
    return not board.is_check() and any(
        mates(passing, move, 1) for move in list(passing.legal_moves) if move.to_square == square
    )


@statement("balance")
def _balance(board: chess.Board, *parts: str) -> bool:
    """White's men less Black's, by kind: `balance P1 R-1`; kinds that are not named are equal."""
    wanted = {part[0]: int(part[1:]) for part in parts}
    return all(
        len(board.pieces(kind, chess.WHITE)) - len(board.pieces(kind, chess.BLACK))
        == wanted.get(chess.piece_symbol(kind).upper(), 0)
        for kind in chess.PIECE_TYPES
    )


@statement("count")
def _count(board: chess.Board, side: str, symbol: str, count: str) -> bool:
    kind = chess.PIECE_SYMBOLS.index(symbol.lower())
    return len(board.pieces(kind, SIDES[side])) == int(count)


@statement("opposite_bishops")
def _opposite_bishops(board: chess.Board) -> bool:
    light = [
        {bool(chess.BB_SQUARES[square] & chess.BB_LIGHT_SQUARES) for square in board.pieces(chess.BISHOP, side)}
        for side in chess.COLORS
    ]
    return len(light[0]) == len(light[1]) == 1 and light[0] != light[1]


@statement("pair")
def _pair(board: chess.Board, side: str) -> bool:
    return len(board.pieces(chess.BISHOP, SIDES[side])) >= 2 > len(board.pieces(chess.BISHOP, not SIDES[side]))


@statement("hangs")
def _hangs(board: chess.Board, *names: str) -> bool:
    return all(hangs(board, square) for square in squares(names))


@statement("loose")
def _loose(board: chess.Board, *names: str) -> bool:
    return all(not board.attackers(bool(board.color_at(square)), square) for square in squares(names))


@statement("trapped")
def _trapped(board: chess.Board, name: str) -> bool:
    return trapped(board, chess.parse_square(name))


@statement("mobility")
def _mobility(board: chess.Board, name: str, count: str) -> bool:
    square = chess.parse_square(name)
    mover = with_turn(board, bool(board.color_at(square)))
    return sum(move.from_square == square for move in mover.legal_moves) == int(count)


@statement("passed")
def _passed(board: chess.Board, *names: str) -> bool:
    return all(is_passed(board, square) for square in squares(names))


@statement("isolated")
def _isolated(board: chess.Board, name: str) -> bool:
    square = chess.parse_square(name)
    files = files_of(board, bool(board.color_at(square)))
    file = chess.square_file(square)
    return board.piece_type_at(square) == chess.PAWN and file - 1 not in files and file + 1 not in files


@statement("doubled")
def _doubled(board: chess.Board, side: str, file: str) -> bool:
    return files_of(board, SIDES[side]).count("abcdefgh".index(file)) >= 2


@statement("islands")
def _islands(board: chess.Board, side: str, count: str) -> bool:
    return islands(board, SIDES[side]) == int(count)


@statement("majority")
def _majority(board: chess.Board, side: str, files: str) -> bool:
    own = sum("abcdefgh"[file] in files for file in files_of(board, SIDES[side]))
    return own > sum("abcdefgh"[file] in files for file in files_of(board, not SIDES[side]))


@statement("open")
def _open(board: chess.Board, file: str) -> bool:
    return all("abcdefgh".index(file) not in files_of(board, side) for side in chess.COLORS)


@statement("half_open")
def _half_open(board: chess.Board, side: str, file: str) -> bool:
    number = "abcdefgh".index(file)
    return number not in files_of(board, SIDES[side]) and number in files_of(board, not SIDES[side])


@statement("right")
def _right(board: chess.Board, side: str, wing: str) -> bool:
    """The right to castle is not lost."""
    if wing == "k":
        return board.has_kingside_castling_rights(SIDES[side])
    return board.has_queenside_castling_rights(SIDES[side])


@statement("castles")
def _castles(board: chess.Board, side: str, wing: str) -> bool:
    """Castling is possible at this moment."""
    mover = with_turn(board, SIDES[side])
    castling = mover.is_kingside_castling if wing == "k" else mover.is_queenside_castling
    return any(castling(move) for move in mover.legal_moves)


@statement("legal")
def _legal(board: chess.Board, san: str) -> bool:
    try:
        board.parse_san(san)
    except ValueError:
        return False
    return True


@statement("only")
def _only(board: chess.Board, *sans: str) -> bool:
    return sorted(board.san(move) for move in board.legal_moves) == sorted(sans)


@statement("takers")
def _takers(board: chess.Board, name: str, count: str) -> bool:
    """So many legal captures on that square."""
    return sum(move.to_square == chess.parse_square(name) for move in board.legal_moves) == int(count)


@statement("legal_moves")
def _legal_moves(board: chess.Board, count: str) -> bool:
    return board.legal_moves.count() == int(count)


@statement("number")
def _number(board: chess.Board, count: str) -> bool:
    """The number of the move just played."""
    return board.fullmove_number - (board.turn == chess.WHITE) == int(count)


@statement("turn")
def _turn(board: chess.Board, side: str) -> bool:
    return board.turn == SIDES[side]


@statement("last")
def _last(board: chess.Board, san: str) -> bool:
    """The move just played."""
    before = board.copy()
    move = before.pop()
    return before.san(move) == san


@statement("pawn_ending_won")
def _pawn_ending_won(board: chess.Board) -> bool:
    return pawn_ending_is_won(board)


@statement("only_win")
def _only_win(board: chess.Board, *sans: str) -> bool:
    """In a king-and-pawn ending: the only moves after which it is still won."""
    winning = []
    for move in list(board.legal_moves):
        name = board.san(move)
        board.push(move)
        if pawn_ending_is_won(board):
            winning.append(name)
        board.pop()
    return sorted(winning) == sorted(sans)


@statement("length")
def _length(board: chess.Board, count: str) -> bool:
    """The game has so many moves; to be used at the end."""
    return (board.ply() + 1) // 2 == int(count)
