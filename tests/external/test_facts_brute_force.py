"""What a move covers and uncovers, forks, guards, trapped pieces and castling agree with counting everything out.

Positions are reached by random legal moves; python-chess is the referee. The definitions are common practice.
"""

import chess
from hypothesis import given, settings
from hypothesis import strategies as st

from studyboard.board.changes import cover_after
from studyboard.board.exchange import PIECE_VALUES
from studyboard.board.lines import relative_pins, uncovered
from studyboard.board.mates import mate_in
from studyboard.board.pawns import pawn_structure
from studyboard.board.rights import castling
from studyboard.board.tactics import forks, guards, safe_squares, trapped

_PLAYED = st.lists(st.integers(0, 500), min_size=4, max_size=90)


def _position(choices):
    board = chess.Board()
    for choice in choices:
        moves = list(board.legal_moves)
        if not moves:
            break
        captures = [move for move in moves if board.is_capture(move)]
        pool = captures if captures and choice % 3 == 0 else moves
        board.push(pool[choice % len(pool)])
    return board


def _most_won(board, square, forbidden=None):
    """The best by captures on *square* or none at all; *forbidden* is a square from which nobody takes."""
    best = 0
    for move in board.legal_moves:
        in_passing = board.is_en_passant(move)
        taken = move.to_square + (-8 if board.turn else 8) if in_passing else move.to_square
        if taken != square or not board.is_capture(move) or move.from_square == forbidden:
            continue
        won = PIECE_VALUES[board.piece_type_at(taken)]
        if move.promotion:
            won += PIECE_VALUES[move.promotion] - PIECE_VALUES[chess.PAWN]
        after = board.copy(stack=False)
        after.push(move)
        best = max(best, won - _most_won(after, move.to_square, forbidden))
    return best


def _comes_out(board, move):
    after = board.copy(stack=False)
    after.push(move)
    taken = 0
    if board.is_en_passant(move):
        taken = 1
    elif board.is_capture(move):
        taken = PIECE_VALUES[board.piece_type_at(move.to_square)]
    if move.promotion:
        taken += PIECE_VALUES[move.promotion] - 1
    return taken - _most_won(after, move.to_square)


def _crowded(board):
    """Squares with many attackers take long to count out."""
    return any(
        chess.popcount(board.attackers_mask(True, at) | board.attackers_mask(False, at)) > 6 for at in chess.SQUARES
    )


def _to_move(board, colour):
    if board.turn == colour:
        return board
    if board.is_check():
        return None
    passed = board.copy(stack=False)
    passed.push(chess.Move.null())
    return passed


@settings(max_examples=40, deadline=None)
@given(_PLAYED)
def test_a_move_changes_the_cover_of_exactly_these_squares(choices):
    board = _position(choices)
    for move in list(board.legal_moves):
        after = board.copy(stack=False)
        after.push(move)
        cover = cover_after(board, move)
        mine = [{at for at in chess.SQUARES if b.is_attacked_by(board.turn, at)} for b in (board, after)]
        theirs = [{at for at in chess.SQUARES if b.is_attacked_by(not board.turn, at)} for b in (board, after)]
        assert set(cover.abandoned) == mine[0] - mine[1] - {cover.piece}
        assert mine[1] - mine[0] <= set(cover.gained) | set(cover.opened)
        assert set(cover.opened) <= mine[1] - mine[0]
        assert set(cover.taken_away) == theirs[0] - theirs[1]
        assert set(cover.allowed) == theirs[1] - theirs[0]


def _first_hit(board, by, step):
    """The first piece that a slider meets in one direction, walking square by square."""
    file, rank = chess.square_file(by) + step[0], chess.square_rank(by) + step[1]
    while 0 <= file <= 7 and 0 <= rank <= 7:
        if board.piece_at(chess.square(file, rank)):
            return chess.square(file, rank)
        file, rank = file + step[0], rank + step[1]
    return None


@settings(max_examples=40, deadline=None)
@given(_PLAYED)
def test_what_a_move_uncovers_is_what_other_sliders_meet_now_and_did_not_before(choices):
    board = _position(choices)
    straight, oblique = [(1, 0), (-1, 0), (0, 1), (0, -1)], [(1, 1), (1, -1), (-1, 1), (-1, -1)]
    steps = {chess.ROOK: straight, chess.BISHOP: oblique, chess.QUEEN: straight + oblique}
    for move in list(board.legal_moves):
        after = board.copy(stack=False)
        after.push(move)
        expected = set()
        for by, piece in board.piece_map().items():
            if piece.color != board.turn or piece.piece_type not in steps or after.piece_at(by) != piece:
                continue
            for step in steps[piece.piece_type]:
                hit = _first_hit(after, by, step)
                if hit is not None and after.color_at(hit) != piece.color and hit != _first_hit(board, by, step):
                    expected.add((by, hit))
        assert {(line.by, line.behind) for line in uncovered(board, move)} == expected, board.san(move)


@settings(max_examples=40, deadline=None)
@given(_PLAYED)
def test_forks_are_the_pieces_that_win_something_by_taking_in_two_ways(choices):
    board = _position(choices)
    if _crowded(board):
        return
    for colour in chess.COLORS:
        facing = _to_move(board, colour)
        if facing is None:
            continue
        won = {}
        for move in facing.legal_moves:
            if facing.is_capture(move) and not facing.is_en_passant(move) and _comes_out(facing, move) > 0:
                won.setdefault(move.from_square, set()).add(move.to_square)
        expected = {
            (by, frozenset(targets))
            for by, targets in won.items()
            if len(targets) > 1 and any(board.piece_type_at(at) != chess.PAWN for at in targets)
        }
        assert {(fork.by, frozenset(fork.targets)) for fork in forks(board, colour)} == expected


@settings(max_examples=40, deadline=None)
@given(_PLAYED)
def test_guards_are_the_pieces_without_which_something_falls(choices):
    board = _position(choices)
    if _crowded(board):
        return
    for colour in chess.COLORS:
        facing = _to_move(board, not colour)
        if facing is None:
            continue
        expected = set()
        for at in chess.SquareSet(board.occupied_co[colour] & ~board.kings):
            if _most_won(facing, at):
                continue
            for guard in chess.SquareSet(board.occupied_co[colour] & ~board.kings):
                if guard != at and _most_won(facing, at, guard):
                    expected.add((guard, at))
        assert {(guard.square, at) for guard in guards(board, colour) for at in guard.keeps} == expected


@settings(max_examples=40, deadline=None)
@given(_PLAYED)
def test_a_trapped_piece_loses_something_on_every_square(choices):
    board = _position(choices)
    if _crowded(board) or board.is_check():
        return
    for colour in chess.COLORS:
        facing, against = _to_move(board, colour), _to_move(board, not colour)
        expected = set()
        for at in chess.SquareSet(board.occupied_co[colour] & ~board.kings):
            moves = [move for move in facing.legal_moves if move.from_square == at]
            safe = {move.to_square for move in moves if _comes_out(facing, move) >= 0}
            assert set(safe_squares(board, at)) == safe
            if board.piece_type_at(at) != chess.PAWN and not safe and _most_won(against, at):
                expected.add(at)
        found = trapped(board, colour)
        assert {piece.square for piece in found} == expected
        for way in (way for piece in found for way in piece.exits):
            after = facing.copy(stack=False)
            after.push(way.move)
            assert way.capture in after.legal_moves
            assert way.capture.to_square == way.move.to_square
            assert way.loss == -_comes_out(facing, way.move) > 0


@settings(max_examples=40, deadline=None)
@given(_PLAYED)
def test_leaving_a_relative_pin_costs_something_on_the_square_behind(choices):
    board = _position(choices)
    if _crowded(board):
        return
    for pin in relative_pins(board):
        front, behind = board.piece_at(pin.front), board.piece_at(pin.behind)
        assert PIECE_VALUES[front.piece_type] < PIECE_VALUES[behind.piece_type]
        against = board.copy(stack=False)
        against.turn, against.ep_square = not front.color, None
        gone = against.copy(stack=False)
        gone.remove_piece_at(pin.front)
        assert _most_won(gone, pin.behind) > _most_won(against, pin.behind)


@settings(max_examples=40, deadline=None)
@given(_PLAYED)
def test_pawn_structure_is_counted_square_by_square(choices):
    board = _position(choices)
    for colour in chess.COLORS:
        ahead = 1 if colour else -1
        places = {c: [divmod(at, 8)[::-1] for at in board.pieces(chess.PAWN, c)] for c in chess.COLORS}
        own, foes = places[colour], places[not colour]
        found = pawn_structure(board, colour)
        passed = [(f, r) for f, r in own if not any(abs(f - g) < 2 and (s - r) * ahead > 0 for g, s in foes)]
        alone = [(f, r) for f, r in own if not any(abs(f - g) == 1 for g, _ in own)]
        backward = [
            (f, r)
            for f, r in own
            if (f, r) not in alone
            and not any(abs(f - g) == 1 and (s - r) * ahead <= 0 for g, s in own)
            and any(abs(f - g) == 1 and s == r + 2 * ahead for g, s in foes)
        ]
        for squares, expected in ((found.passed, passed), (found.isolated, alone), (found.backward, backward)):
            assert sorted(divmod(at, 8)[::-1] for at in squares) == sorted(expected)
        assert found.doubled == tuple(f for f in range(8) if sum(g == f for g, _ in own) > 1)
        files = sorted({f for f, _ in own})
        assert found.islands == sum(f - 1 not in files for f in files)


@settings(max_examples=40, deadline=None)
@given(_PLAYED)
def test_castling_is_possible_exactly_where_it_is_a_legal_move(choices):
    board = _position(choices)
    for colour in chess.COLORS:
        facing = board.copy(stack=False)
        facing.turn, facing.ep_square = colour, None
        sans = {facing.san(move).rstrip("+#") for move in facing.legal_moves if facing.is_castling(move)}
        for kingside, san in ((True, "O-O"), (False, "O-O-O")):
            assert castling(board, colour, kingside).now == (san in sans)


def _mates(board, moves):
    """Plain search: does the side to move mate in at most so many moves?"""
    for move in board.legal_moves:
        after = board.copy(stack=False)
        after.push(move)
        if after.is_checkmate():
            return True
        if moves > 1 and any(after.legal_moves):
            answers = []
            for answer in after.legal_moves:
                later = after.copy(stack=False)
                later.push(answer)
                answers.append(later)
                if not _mates(later, moves - 1):
                    break
            else:
                return True
    return False


@st.composite
def _bare_kings(draw):
    """Few pieces around a king, so that mates in two are common and plain search is quick."""
    board = chess.Board(None)
    squares = draw(st.lists(st.integers(0, 63), min_size=6, max_size=6, unique=True))
    corner = draw(st.sampled_from((chess.A8, chess.H8, chess.D8, chess.A5)))
    board.set_piece_at(corner, chess.Piece(chess.KING, chess.BLACK))
    names = ["K", *draw(st.lists(st.sampled_from("QRRBNPn"), min_size=2, max_size=5))]
    for square, name in zip([at for at in squares if at != corner], names, strict=False):
        board.set_piece_at(square, chess.Piece.from_symbol(name))
    return board


@settings(max_examples=60, deadline=None)
@given(_bare_kings())
def test_mates_in_two_are_those_of_a_plain_search(board):
    if not board.is_valid():
        return
    found = mate_in(board, 2)
    shortest = next((moves for moves in (1, 2) if _mates(board, moves)), None)
    assert (None if found is None else found.moves) == shortest
    if found is not None:
        for move in found.line:
            assert move in board.legal_moves
            board.push(move)
        assert board.is_checkmate()
        assert len(found.line) == 2 * found.moves - 1
