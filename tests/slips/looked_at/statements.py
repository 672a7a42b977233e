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


# Added by slips author A.


def _before(board: chess.Board) -> tuple[chess.Board, chess.Move]:
    before = board.copy()
    return before, before.pop()


@statement("mover")
def _mover(board: chess.Board, side: str) -> bool:
    """The side that has just moved."""
    return board.turn != SIDES[side]


@statement("moved")
def _moved(board: chess.Board, symbol: str) -> bool:
    """The man that has just moved, with its colour."""
    before, move = _before(board)
    piece = before.piece_at(move.from_square)
    return piece is not None and piece.symbol() == symbol


@statement("from")
def _from(board: chess.Board, name: str) -> bool:
    return _before(board)[1].from_square == chess.parse_square(name)


@statement("to")
def _to(board: chess.Board, name: str) -> bool:
    return _before(board)[1].to_square == chess.parse_square(name)


@statement("captured")
def _captured(board: chess.Board, symbol: str) -> bool:
    """What the last move took, with its colour; `-` for nothing."""
    before, move = _before(board)
    if not before.is_capture(move):
        return symbol == "-"
    if before.is_en_passant(move):
        return symbol == ("p" if before.turn else "P")
    piece = before.piece_at(move.to_square)
    return piece is not None and piece.symbol() == symbol


@statement("castled")
def _castled(board: chess.Board, wing: str) -> bool:
    before, move = _before(board)
    return before.is_kingside_castling(move) if wing == "k" else before.is_queenside_castling(move)


@statement("attackers_are")
def _attackers_are(board: chess.Board, side: str, name: str, *names: str) -> bool:
    return sorted(board.attackers(SIDES[side], chess.parse_square(name))) == sorted(squares(names))


@statement("checkers_are")
def _checkers_are(board: chess.Board, *names: str) -> bool:
    return sorted(board.checkers()) == sorted(squares(names))


@statement("pinned_by")
def _pinned_by(board: chess.Board, name: str, by: str) -> bool:
    """Pinned to the king, and the pinning piece stands there."""
    square = chess.parse_square(name)
    side = board.color_at(square)
    return (
        side is not None
        and board.is_pinned(side, square)
        and chess.parse_square(by) in board.pin(side, square)
        and board.color_at(chess.parse_square(by)) == (not side)
    )


@statement("king_squares")
def _king_squares(board: chess.Board, side: str, *names: str) -> bool:
    """The squares to which that king may go, exactly these."""
    king = board.king(SIDES[side])
    mover = with_turn(board, SIDES[side])
    return sorted({m.to_square for m in mover.legal_moves if m.from_square == king}) == sorted(squares(names))


@statement("reaches")
def _reaches(board: chess.Board, name: str, target: str) -> bool:
    """The man on one square may legally go to the other, if its side is to move."""
    square = chess.parse_square(name)
    mover = with_turn(board, bool(board.color_at(square)))
    return any(m.from_square == square and m.to_square == chess.parse_square(target) for m in mover.legal_moves)


@statement("lined")
def _lined(board: chess.Board, *names: str) -> bool:
    """All on one file, rank or diagonal."""
    first, second, *rest = squares(names)
    return all(third in chess.SquareSet(chess.ray(first, second)) for third in rest) and bool(chess.ray(first, second))


@statement("light")
def _light(board: chess.Board, *names: str) -> bool:
    return all(bool(chess.BB_SQUARES[square] & chess.BB_LIGHT_SQUARES) for square in squares(names))


@statement("winner")
def _winner(board: chess.Board, side: str) -> bool:
    """Mate on the board, given by that side."""
    return board.is_checkmate() and board.turn != SIDES[side]


@statement("losing_capture")
def _losing_capture(board: chess.Board, name: str) -> bool:
    """Taking there does not win material for the side to move."""
    return not hangs(with_turn(board, board.turn), chess.parse_square(name))


@statement("only_capture")
def _only_capture(board: chess.Board) -> bool:
    """Every legal move is a capture."""
    return all(board.is_capture(move) for move in board.legal_moves)


@statement("men")
def _men(board: chess.Board, side: str, count: str) -> bool:
    """So many men in all, king and pawns too."""
    return chess.popcount(board.occupied_co[SIDES[side]]) == int(count)


@statement("minors_home")
def _minors_home(board: chess.Board, side: str, count: str) -> bool:
    """So many knights and bishops on the squares they began on."""
    rank = "1" if side == "w" else "8"
    wanted = {"b": chess.KNIGHT, "c": chess.BISHOP, "f": chess.BISHOP, "g": chess.KNIGHT}
    return sum(
        board.piece_at(chess.parse_square(file + rank)) == chess.Piece(kind, SIDES[side])
        for file, kind in wanted.items()
    ) == int(count)


def _line_of(board: chess.Board) -> list[tuple[str, str, chess.Move]]:
    """(symbol, SAN, move) of every move played to reach the position."""
    again = board.root()
    line = []
    for move in board.move_stack:
        piece = again.piece_at(move.from_square)
        line.append((piece.symbol() if piece else "", again.san(move), move))
        again.push(move)
    return line


@statement("played")
def _played(board: chess.Board, side: str, san: str) -> bool:
    """That side has played that move somewhere before."""
    return any(
        name.rstrip("+#") == san.rstrip("+#") and symbol.isupper() == (side == "w")
        for symbol, name, _ in _line_of(board)
    )


@statement("moves_by")
def _moves_by(board: chess.Board, symbol: str, count: str) -> bool:
    """So many moves have been made by men of that kind."""
    return sum(name == symbol for name, _, _ in _line_of(board)) == int(count)


@statement("safe_moves")
def _safe_moves(board: chess.Board, name: str, *names: str) -> bool:
    """The squares where that man is not taken with loss, exactly these."""
    square = chess.parse_square(name)
    mover = with_turn(board, bool(board.color_at(square)))
    safe = set()
    for move in list(mover.legal_moves):
        if move.from_square == square:
            after = mover.copy(stack=False)
            after.push(move)
            if not hangs(after, move.to_square):
                safe.add(move.to_square)
    return sorted(safe) == sorted(squares(names))


@statement("ahead")
def _ahead(board: chess.Board, side: str) -> bool:
    """That side has more material, counted 1, 3, 3, 5, 9."""
    value = {1: 1, 2: 3, 3: 3, 4: 5, 5: 9}
    total = sum(
        worth * (len(board.pieces(kind, True)) - len(board.pieces(kind, False))) for kind, worth in value.items()
    )
    return total > 0 if side == "w" else total < 0


@statement("between")
def _between(board: chess.Board, mid: str, one: str, two: str) -> bool:
    """A man on *mid* stands on the straight line between two squares."""
    middle, first, second = squares((mid, one, two))
    return board.piece_at(middle) is not None and middle in chess.SquareSet(chess.between(first, second))


@statement("castled_so")
def _castled_so(board: chess.Board, side: str, wing: str) -> bool:
    replay = board.root()
    for move in board.move_stack:
        if replay.turn == SIDES[side] and replay.is_castling(move):
            return replay.is_kingside_castling(move) == (wing == "k")
        replay.push(move)
    return False


@statement("played_so")
def _played_so(board: chess.Board, side: str, san: str) -> bool:
    replay = board.root()
    for move in board.move_stack:
        if replay.turn == SIDES[side] and replay.san(move) == san:
            return True
        replay.push(move)
    return False


@statement("moves_by_so")
def _moves_by_so(board: chess.Board, square: str, count: str) -> bool:
    """The man now on *square* has made so many moves in the game."""
    at = chess.parse_square(square)
    total = 0
    replay = board.copy()
    while replay.move_stack:
        move = replay.pop()
        if move.to_square == at:
            total += 1
            at = move.from_square
    return total == int(count)


@statement("checks_by")
def _checks_by(board: chess.Board, side: str, count: str) -> bool:
    replay = board.root()
    total = 0
    for move in board.move_stack:
        total += replay.turn == SIDES[side] and replay.gives_check(move)
        replay.push(move)
    return total == int(count)


@statement("captures")
def _captures(board: chess.Board, plies: str, count: str) -> bool:
    """So many captures in the last half-moves."""
    replay = board.copy()
    total = 0
    for _ in range(int(plies)):
        move = replay.pop()
        total += replay.is_capture(move)
    return total == int(count)


@statement("opposition")
def _opposition(board: chess.Board) -> bool:
    """The kings face each other with one square between."""
    one, two = board.king(chess.WHITE), board.king(chess.BLACK)
    assert one is not None
    assert two is not None
    return chess.square_distance(one, two) == 2 and len(chess.SquareSet(chess.between(one, two))) == 1


@statement("backward")
def _backward(board: chess.Board, name: str) -> bool:
    square = chess.parse_square(name)
    side = bool(board.color_at(square))
    if board.piece_type_at(square) != chess.PAWN:
        return False
    file, rank = chess.square_file(square), chess.square_rank(square)
    ahead = square + (8 if side else -8)
    beside = any(
        abs(chess.square_file(other) - file) == 1
        and (chess.square_rank(other) <= rank if side else chess.square_rank(other) >= rank)
        for other in board.pieces(chess.PAWN, side)
    )
    guarded = any(board.piece_type_at(other) == chess.PAWN for other in board.attackers(not side, ahead))
    return guarded and not beside


@statement("stays")
def _stays(board: chess.Board, square: str) -> bool:
    """The king on *square* may not move at all."""
    at = chess.parse_square(square)
    mover = with_turn(board, bool(board.color_at(at)))
    return not any(move.from_square == at for move in mover.legal_moves)


@statement("en_prise")
def _en_prise(board: chess.Board, side: str, square: str) -> bool:
    """Attacked by that side at least once and not defended."""
    at = chess.parse_square(square)
    return bool(board.attackers(SIDES[side], at)) and not board.attackers(not SIDES[side], at)


@statement("exchanged")
def _exchanged(board: chess.Board, symbol: str) -> bool:
    """No man of this kind is left on the board."""
    kind = chess.PIECE_SYMBOLS.index(symbol.lower())
    return not board.pieces(kind, chess.WHITE) and not board.pieces(kind, chess.BLACK)


@statement("men_so")
def _men_so(board: chess.Board, count: str) -> bool:
    return chess.popcount(board.occupied) == int(count)


@statement("mating_force")
def _mating_force(board: chess.Board, side: str) -> bool:
    """A pawn, a rook, a queen, or two minor pieces."""
    own = SIDES[side]
    if any(board.pieces(kind, own) for kind in (chess.PAWN, chess.ROOK, chess.QUEEN)):
        return True
    return len(board.pieces(chess.KNIGHT, own)) + len(board.pieces(chess.BISHOP, own)) >= 2
