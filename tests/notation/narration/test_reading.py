"""A talk is read back as its moves, whatever the way in which they are said."""

from __future__ import annotations

import chess
import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from studyboard.model.edits import add_move, apply
from studyboard.model.study import Study
from studyboard.notation.narration.errors import NarrationRefusedError
from studyboard.notation.narration.reading import read_narration

CASTLING = "r3k2r/3p4/8/8/8/8/3P4/R3K2R w KQkq - 0 1"
PROMOTION = "8/2P4k/8/8/8/8/8/K7 w - - 0 1"
KNIGHT = "4k3/8/3p4/8/4N3/8/8/4K3 w - - 0 1"
ROOKS = "2r2rk1/5ppp/8/8/8/8/5PPP/2R2RK1 w - - 0 1"
EN_PASSANT = "4k3/8/8/1pP5/8/8/8/4K3 w - b6 0 1"
CENTRE = "rnbqkbnr/ppp1pppp/8/3p4/4P3/8/PPPP1PPP/RNBQKBNR w KQkq - 0 2"

SAID = [
    (None, "pawn to e4 e5 knight to f3 knight c6 bishop to b5", "e4 e5 Nf3 Nc6 Bb5"),
    (None, "E4 E5 KNIGHT F3 KNIGHT C6 BISHOP C4 BISHOP C5 CASTLES", "e4 e5 Nf3 Nc6 Bc4 Bc5 O-O"),
    (None, "e four e five knight f three knight c six bishop b five", "e4 e5 Nf3 Nc6 Bb5"),
    (None, "echo four, charlie five, knight foxtrot three, delta six", "e4 c5 Nf3 d6"),
    (None, "night to f three, d five, pawn d for, night f six, bishop f for, see five", "Nf3 d5 d4 Nf6 Bf4 c5"),
    (None, "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 dxc6 5. O-O f6", "e4 e5 Nf3 Nc6 Bb5 a6 Bxc6 dxc6 O-O f6"),
    (
        None,
        "e4 e5 nf3 nc6 bc4 nf6 ng5 d5 exd5 nxd5 nxf7 kxf7 qf3+",
        "e4 e5 Nf3 Nc6 Bc4 Nf6 Ng5 d5 exd5 Nxd5 Nxf7 Kxf7 Qf3+",
    ),
    (None, "knight g1 to f3, knight g8 f6, knight b1-c3, d7-d5", "Nf3 Nf6 Nc3 d5"),
    (None, "e4 d5 e takes d5, queen takes. Knight c3, the queen comes home to d8.", "e4 d5 exd5 Qxd5 Nc3 Qd8"),
    (None, "e4 d5 takes, takes, and knight c3 hits the queen, queen a5", "e4 d5 exd5 Qxd5 Nc3 Qa5"),
    (None, "d4, knight f6, c4, g6, and White pushes the h-pawn to h4.", "d4 Nf6 c4 g6 h4"),
    (None, "e4 e5 knight f3 knight c6 bishop b5 knight g e7", "e4 e5 Nf3 Nc6 Bb5 Nge7"),
    (None, "e4 e5 f4 pawn takes pawn, bishop c4, queen to h4 check, king f1", "e4 e5 f4 exf4 Bc4 Qh4+ Kf1"),
    (CASTLING, "Both sides castle queenside", "O-O-O O-O-O"),
    (CASTLING, "White castles long, Black castles short", "O-O-O O-O"),
    (PROMOTION, "c8 equals queen", "c8=Q"),
    (PROMOTION, "and the pawn queens. King g6.", "c8=Q Kg6"),
    (PROMOTION, "White underpromotes to a knight", "c8=N"),
    (PROMOTION, "the pawn goes to c8 and becomes a rook", "c8=R"),
    (KNIGHT, "now on d6 the knight takes with check", "Nxd6+"),
    (KNIGHT, "and to g5 goes the knight", "Ng5"),
    (KNIGHT, "White captures on d6 with the knight, and it is check", "Nxd6+"),
    (ROOKS, "rook f to d1 rook takes c1 rook takes c1 and then h6", "Rfd1 Rxc1 Rxc1 h6"),
    (ROOKS, "Takes, takes, g3.", "Rxc8 Rxc8 g3"),
    (EN_PASSANT, "the pawn takes en passant", "cxb6"),
    (CENTRE, "the pawn on e4 takes the pawn on d5 and the queen recaptures", "exd5 Qxd5"),
    (CENTRE, "the pawns are exchanged on d5: e takes, queen takes", "exd5 Qxd5"),
    (CENTRE, "I take and he takes back", "exd5 Qxd5"),
]


@pytest.mark.parametrize(("fen", "text", "moves"), SAID)
def test_moves_are_read(fen: str | None, text: str, moves: str) -> None:
    assert " ".join(read_narration(text, fen=fen).main_line) == moves


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("e4 c5 knight f3, and Black wants to get e5 in next.", "plan"),
        ("e4 c5 knight f3 and the queen no longer covers g4.", "control"),
        ("e4 c5 c3, stopping knight d4.", "reason"),
        ("e4 c5. There is an old game with g3 and bishop g2.", "elsewhere"),
        ("e4 e5 queen h5, threatening mate on f7.", "threat"),
        ("e4 c5. Whenever White plays d4, Black takes it.", "condition"),
    ],
)
def test_what_is_not_played_stays_a_mention(text: str, kind: str) -> None:
    read = read_narration(text)
    assert kind in {mention.kind for mention in read.mentions}
    assert len(read.main_line) <= 3
    assert read.side_lines == ()


def lines(text: str) -> tuple[str, list[tuple[str, str]]]:
    read = read_narration(text)
    return " ".join(read.main_line), [(" ".join(line.after), " ".join(line.line)) for line in read.side_lines]


def test_a_side_line_is_left_where_the_game_goes_on() -> None:
    text = "e4 e5. If knight f3, then knight c6. But in the game f4, and e takes f4."
    assert lines(text) == ("e4 e5 f4 exf4", [("e4 e5", "Nf3 Nc6")])


def test_a_side_line_can_replace_the_move_that_was_played() -> None:
    text = "e4 e5 knight f3 knight f6. Instead of that he could have defended with knight c6. White took on e5."
    assert lines(text) == ("e4 e5 Nf3 Nf6 Nxe5", [("e4 e5 Nf3", "Nc6")])


def test_a_move_that_fits_only_the_main_line_ends_the_side_line() -> None:
    text = "d4 d5 bishop f4. For example c5, e3, c takes d4. Knight f6, e3, and bishop f5."
    assert lines(text) == ("d4 d5 Bf4 Nf6 e3 Bf5", [("d4 d5 Bf4", "c5 e3 cxd4")])


def test_side_lines_leave_side_lines() -> None:
    text = (
        "e4 c5 knight f3. Let's say d6, d4, c takes d4, knight takes d4, knight f6, knight c3, a6, or "
        "knight c6. But in the game Black chose e6."
    )
    main, side = lines(text)
    assert main == "e4 c5 Nf3 e6"
    assert ("e4 c5 Nf3 d6 d4 cxd4 Nxd4 Nf6 Nc3", "Nc6") in side


def test_later_words_decide_what_earlier_ones_meant() -> None:
    """Either knight can go to d7; which one went shows two moves later."""
    start = "d4 d5 c4 e6 knight c3 knight f6 bishop g5 knight d7 e3 "
    assert read_narration(start + "knight d5 was a dream. The knight on f6 is pinned. c6").main_line[7] in (
        "Nbd7",
        "Nfd7",
    )
    assert read_narration(start + "bishop takes f6 queen takes f6").main_line[7] == "Nbd7"
    assert read_narration(start + "bishop takes d8 king takes d8").main_line[7] == "Nfd7"


def game_of(*moves: str) -> Study:
    study = Study({"White": "Pell, Imani", "Black": "Garvey, Anton"})
    board, at = chess.Board(), study.root
    for san in moves:
        edit = add_move(study, at, board.push_san(san))
        apply(study, edit)
        at = edit.node
    return study


def test_a_game_that_is_known_is_followed_where_the_words_leave_moves_out() -> None:
    game = game_of("e4", "c5", "Nf3", "d6", "d4", "cxd4", "Nxd4")
    read = read_narration(
        "The usual Sicilian moves are played, and after d4 Garvey takes and Pell takes back.", game=game
    )
    assert read.main_line == ("e4", "c5", "Nf3", "d6", "d4", "cxd4", "Nxd4")
    assert [move.san for move in read.moves if move.said] == ["d4", "cxd4", "Nxd4"]


def test_a_known_game_turns_other_moves_into_side_lines() -> None:
    read = read_narration("e4 c5 knight c3 knight c6", game=game_of("e4", "c5", "Nf3", "Nc6"))
    assert read.main_line == ("e4", "c5", "Nf3", "Nc6")
    assert all(move.san != "Nc3" or move.depth == 1 for move in read.moves)


def test_german_is_read_with_its_own_words() -> None:
    text = (
        "e4, d5. e schlägt d5, Dame schlägt auf d5. Springer c3, Dame a5, d4, Springer f6, Läufer d2, c6, Springer f3."
    )
    assert " ".join(read_narration(text, language="de").main_line) == "e4 d5 exd5 Qxd5 Nc3 Qa5 d4 Nf6 Bd2 c6 Nf3"
    text = "e4, e5. Wenn Springer f3, dann Springer c6. In der Partie stattdessen f4, e schlägt f4."
    read = read_narration(text, language="de")
    assert (read.main_line, read.side_lines[0].line) == (("e4", "e5", "f4", "exf4"), ("Nf3", "Nc6"))


def test_words_that_say_an_impossible_move_are_reported() -> None:
    (unread,) = read_narration("e4 e5. Rook takes h8. Knight f3.").unread
    assert unread.text == "Rook takes h8"
    assert "No piece can do this" in unread.reason


@pytest.mark.parametrize("fen", ["nonsense", "8/8/8/8/8/8/8/8 w - - 0 1"])
def test_a_position_that_is_none_is_refused(fen: str) -> None:
    with pytest.raises(NarrationRefusedError, match="is no position"):
        read_narration("e4", fen=fen)


def test_a_talk_without_moves_has_none() -> None:
    read = read_narration("Good evening, and welcome. It rained all day.")
    assert (read.main_line, read.side_lines, read.unread) == ((), (), ())
    assert [beat.moves for beat in read.beats] == [()]


_WORDS = [
    *("knight", "night", "bishop", "rook", "rock", "queen", "king", "pawn", "a", "b", "be", "c", "see", "d", "e", "f"),
    *("g", "h", "1", "two", "too", "four", "for", "5", "six", "takes", "castles", "check", "mate", "if", "instead"),
    *("but", "in", "the", "game", ",", ".", "?", "e4", "Nf3", "d5", "exd5", "O-O", "promotes", "equals", "short"),
    *("both", "sides", "castle", "12.", "(", ")", "threatens", "move", "twenty", "or", "back"),
]


@settings(max_examples=60, deadline=None)
@given(st.one_of(st.text(max_size=200), st.lists(st.sampled_from(_WORDS), max_size=40).map(" ".join)))
def test_any_text_can_be_read(text: str) -> None:
    read = read_narration(text)
    board = chess.Board()
    for san in read.main_line:
        board.push_san(san)
    told = "".join(beat.text for beat in read.beats)
    assert "".join(told.split()) == "".join(read.text.split())


_PIECES = {chess.KNIGHT: "knight", chess.BISHOP: "bishop", chess.ROOK: "rook", chess.QUEEN: "queen", chess.KING: "king"}
_DIGITS = ("one", "two", "three", "four", "five", "six", "seven", "eight")


def _square(square: int, style: int) -> str:
    name = chess.square_name(square)
    return (name, f"{name[0]} {_DIGITS[int(name[1]) - 1]}", f"{name[0]} {name[1]}")[style]


def _spoken(board: chess.Board, move: chess.Move, style: int, to: bool) -> str:
    san = board.san(move).rstrip("+#")
    if board.is_castling(move):
        return "castles long" if san == "O-O-O" else "castles short"
    where = _square(move.to_square, style)
    piece = board.piece_type_at(move.from_square)
    takes = " takes " if board.is_capture(move) else " to " if to else " "
    if piece == chess.PAWN:
        said = f"{san[0]} takes {where}" if board.is_capture(move) else f"pawn to {where}" if to else where
        return f"{said} equals {_PIECES[move.promotion]}" if move.promotion else said
    told_apart = san[1:-2].replace("x", "")
    name = _PIECES[piece or chess.KING]
    if len(told_apart) == 1 and told_apart.isalpha():
        name += f" {told_apart}"
    elif told_apart:
        name += f" from {_square(move.from_square, style)}"
    return f"{name}{takes}{where}"


@settings(max_examples=25, deadline=None, phases=(Phase.explicit, Phase.reuse, Phase.generate))
@given(
    st.randoms(use_true_random=False),
    st.integers(0, 2),
    st.booleans(),
    st.booleans(),
    st.sampled_from([", ", ". ", " ", "; "]),
)
def test_the_moves_of_any_game_are_read_back(random, style: int, to: bool, numbered: bool, between: str) -> None:  # type: ignore[no-untyped-def]
    board = chess.Board()
    moves: list[str] = []
    said: list[str] = []
    while len(moves) < 24 and not board.is_game_over():
        move = random.choice(sorted(board.legal_moves, key=chess.Move.uci))
        number = f"{board.fullmove_number}. " if numbered and board.turn else ""
        said.append(number + _spoken(board, move, style, to))
        moves.append(board.san(move))
        board.push(move)
    assert list(read_narration(between.join(said)).main_line) == moves
