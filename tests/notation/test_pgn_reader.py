"""What is good in a file is read, the rest is kept and reported with its place."""

from __future__ import annotations

import random

import chess
import pytest
from hypothesis import given
from hypothesis import strategies as st

from studyboard.model.errors import StudyboardError
from studyboard.model.positions import Positions
from studyboard.notation.pgn_reader import GameRead, read_games
from studyboard.notation.pgn_writer import pgn_text


def read(source: str | bytes) -> GameRead:
    (game,) = read_games(source)
    return game


def tree(game: GameRead) -> str:
    """The tree in one string: notes in brackets, before and after, glyphs as numbers, side-lines in parentheses."""
    study = game.study
    positions = Positions(study)
    words: list[str] = []
    todo: list[tuple[int, str]] = [(study.root, "")]
    while todo:
        node_id, sign = todo.pop()
        if sign:
            words.append(sign)
            continue
        node = study.nodes[node_id]
        words += [f"<{node.note_before}>"] if node.note_before else []
        words += [positions.san(node_id)] if node.parent is not None else []
        words += [f"${nag}" for nag in node.nags]
        words += [f"[{node.note}]" if node.note else ""]
        branches: list[tuple[int, str]] = []
        for child in node.children[1:]:
            branches += [(0, "("), (child, ""), (0, ")")]
        # The side-lines of the next move stand before it here, which is easier to write down than to read.
        todo.extend(reversed([*branches, *((child, "") for child in node.children[:1])]))
    return " ".join(filter(None, words)).replace("( ", "(").replace(" )", ")")


def problems(game: GameRead) -> list[tuple[int, int, str]]:
    return [(problem.line, problem.column, problem.message) for problem in game.problems]


@pytest.mark.parametrize(
    ("movetext", "expected"),
    [
        ("1. e4 e5 2. Nf3 *", "e4 e5 Nf3"),
        ("e4 e5 Nf3", "e4 e5 Nf3"),
        ("1.e4 1...e5 2.Nf3", "e4 e5 Nf3"),
        ("1 e4 e5 2 Nf3", "e4 e5 Nf3"),
        ("1... e4 7. e5 7... Nf3 *", "e4 e5 Nf3"),
        ("1. e4. e5 ... 2 . . Nf3", "e4 e5 Nf3"),
        ("1.e4\n\n\n  e5\t2.\nNf3", "e4 e5 Nf3"),
        ("1…e4 e5 2. Nf3", "e4 e5 Nf3"),
        ("1. e2-e4 e7e5 2. Ng1-f3 Nb8c6 3. Bf1xb5?", "e4 e5 Nf3 Nc6 Bb5 $2"),
        ("1. E4 e5 2. NF3 nc6 3. bb5", "e4 e5 Nf3 Nc6 Bb5"),
        ("1. e4 e5 2. ♘f3 ♞c6 3. ♗b5", "e4 e5 Nf3 Nc6 Bb5"),
        ("1. Pe4 d5 2. ed5 Q:d5 3. Nb1c3", "e4 d5 exd5 Qxd5 Nc3"),
        ("1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. 0-0 Nf6 5. Kg1-h1 0-0", "e4 e5 Nf3 Nc6 Bc4 Bc5 O-O Nf6 Kh1 O-O"),
        ("1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. e1g1", "e4 e5 Nf3 Nc6 Bc4 Bc5 O-O"),
        ("1. e4 a6 2. e5 d5 3. exd6e.p. *", "e4 a6 e5 d5 exd6"),
        ("1. e4 a6 2. e5 d5 3. exd6 e.p. cxd6", "e4 a6 e5 d5 exd6 cxd6"),
        ("1. e4 a6 2. e5 d5 3. exd6 ep! cxd6", "e4 a6 e5 d5 exd6 $1 cxd6"),
        ("1. e4 f5 2. Qh5 g6+ 3. Qxg6++ hxg6", "e4 f5 Qh5+ g6 Qxg6+ hxg6"),
        ("1. e4 -- 2. d4 Z0 3. c4", "e4 -- d4 -- c4"),
        ("1. e4! e5? 2. Nf3!! Nc6?? 3. Bb5!? a6?!", "e4 $1 e5 $2 Nf3 $3 Nc6 $4 Bb5 $5 a6 $6"),
        ("1. e4 ! e5 $14 $1 $14", "e4 $1 e5 $14 $1"),
        ("1. e4 e5 = 2. Nf3 +/- Nc6 += 3. Bb5+- a6 ∓", "e4 e5 $10 Nf3 $16 Nc6 $14 Bb5 $18 a6 $17"),
        ("$5 1. e4", "$5 e4"),
        ("{a} 1. e4 {b} 1... e5 {c} {d}", "[a] e4 [b] e5 [c\nd]"),
        ("1. e4 ; to the end } of the line\ne5", "e4 [to the end } of the line] e5"),
        ("1. e4 {one\n  two\nthree} e5", "e4 [one two three] e5"),
        ("1. e4 {one\n \ntwo} e5", "e4 [one\ntwo] e5"),
        ("1. e4 { {nested ( } e5", "e4 [{nested (] e5"),
        ("1. e4 {[%clk 0:01:02] quick} e5", "e4 [[%clk 0:01:02] quick] e5"),
        ("1. e4 {} e5", "e4 e5"),
        ("1. {before} e4 {after} 1... {again} e5", "<before> e4 [after] <again> e5"),
        ("1. e4 ({x} 1. d4 {y}) ({z} {w} 1. c4) 1... e5", "(<x> d4 [y]) (<z\nw> c4) e4 e5"),
        ("1. e4 (1. d4) {then} (1. c4) {at last} 1... e5", "(d4) (<then> c4) e4 <at last> e5"),
        ("1. e4 (1. d4) {no more} *", "(d4) e4 [no more]"),
        ("1. e4 ({only words}) e5", "e4 [only words] e5"),
        ("1. e4 ($1 1. d4) e5", "(d4 $1) e4 e5"),
        ("1. e4 e5 (1... c5 2. Nf3 (2. c3 d5) 2... d6) (1... e6) 2. Nf3", "e4 (c5 (c3 d5) Nf3 d6) (e6) e5 Nf3"),
        ("1. e4 e5 (1... c5) (1... c5 2. c3) (1... e5 2. f4) 2. Nf3 Nc6", "e4 (c5 c3) e5 (f4) Nf3 Nc6"),
        ("1. e4 e5 (1... e5 2. f4 a6) 2. f4 h6 (2... a6 3. a3)", "e4 e5 f4 (a6 a3) h6"),
        ("1. e4 e5 {1-0} 1-0 {resigns}", "e4 e5 [1-0\nresigns]"),
        ("1. e4 (1. d4 1-0) e5 1/2", "(d4 [1-0]) e4 e5"),
        ("%hidden\n1. e4\n% not ( this\ne5", "e4 e5"),
        ("1. e4 {100\n% sure} e5", "e4 [100 % sure] e5"),
        ("(1. d4) 1. e4", "(d4) e4"),
    ],
)
def test_movetext_is_read_as_people_write_it(movetext, expected):
    game = read(f'[Event "x"]\n\n{movetext}\n')
    assert tree(game) == expected
    if not movetext.startswith("("):
        assert problems(game) == []


@pytest.mark.parametrize(
    ("movetext", "expected", "place", "sentence"),
    [
        ("1. e4 e5 2. Bb6 a6 {x} (2. d4) 1-0", "e4 e5 [2. Bb6 a6 {x} (2. d4)]", (3, 10), "“2. Bb6” is not a legal"),
        ("1. e4 e5\n2. Nf9 d6 *", "e4 e5 [2. Nf9 d6]", (4, 1), "“2. Nf9” is not a legal move here."),
        ("1. e4 (1. Qd4 e5 (1... a6)) e5", "e4 [(1. Qd4 e5 (1... a6))] e5", (3, 8), "The rest of this variation was"),
        ("1. e4 (1. d4 d4 2. c4) e5", "(d4 [d4 2. c4]) e4 e5", (3, 14), "“1... d4” is not a legal move"),
        ("1. d4 a6 2. Nf3 a5 3. Nd2 h6 *", "d4 a6 Nf3 a5 [3. Nd2 h6]", (3, 20), "can be played from b1 and f3"),
        ("1. e4 hm e5 2. d4", "e4 [hm] e5 d4", (3, 7), "“hm” is neither a move nor a comment"),
        ("1. e4 hm 2. d4 d5", "e4 [hm 2. d4 d5]", (3, 7), "“hm” stands for a move but is none"),
        ("1. e4 {a comment", "e4 [a comment]", (3, 7), "“}” is missing"),
        ("1. e4 (1. d4 (1. c4", "(d4) (c4) e4", (3, 7), "2 variations are never closed"),
        ("1. e4 (1. d4 1-0", "(d4) e4", (3, 7), "A variation is never closed"),
        ("1. e4 ) e5", "e4 e5", (3, 7), "“)” closes no variation"),
        ("1. e4 $300 e5", "e4 [$300] e5", (3, 7), "no annotation glyph"),
        ("1. e4 $ e5", "e4 [$] e5", (3, 7), "no annotation glyph"),
        ("1. e4!!! e5", "e4 [!!!] e5", (3, 6), "no judgement"),
        ("1. e4 e5 1-0 (Nf3)", "e4 e5 [(Nf3)]", (3, 14), "neither a move nor a comment"),
        ("1. e4 [Result] e5", "e4 [[Result]] e5", (3, 7), "neither a move nor a comment"),
        ("1. e4 e5 2. Qh5 Ke7 3. -- a6", "e4 e5 Qh5 Ke7 -- a6", None, ""),
        ("1. e4 e5 2. Qh5 Ke7 3. Qxe5+ -- a6", "e4 e5 Qh5 Ke7 Qxe5# [-- a6]", (3, 30), "not a legal move"),
    ],
)  # fmt: skip
def test_what_cannot_be_read_is_kept_as_a_note_and_reported(movetext, expected, place, sentence):
    game = read(f'[Event "x"]\n\n{movetext}\n')
    assert tree(game) == expected
    assert [(line, column) for line, column, _ in problems(game)] == ([place] if place else [])
    assert all(sentence in message for _, _, message in problems(game))


PROMOTION = '[FEN "8/P6k/8/8/8/8/8/K7 w - - 0 1"]\n\n1. '


@pytest.mark.parametrize("written", ["a8=Q", "a8Q", "a8/Q", "a8(Q)", "a7-a8=q", "a7a8q", "a8=(Q)", "A8=Q"])
def test_a_promotion_is_read_however_it_is_written(written):
    assert problems(game := read(PROMOTION + written)) == []
    assert tree(game) == "a8=Q"


def test_a_promotion_to_a_knight_in_parentheses_is_no_variation():
    assert tree(read(PROMOTION + "a8(N) Kg6 (1... Kg7)")) == "a8=N (Kg7) Kg6"


def test_a_promotion_without_a_piece_becomes_a_queen_and_is_reported():
    game = read(PROMOTION + "a8 Kg6")
    assert tree(game) == "a8=Q Kg6"
    assert problems(game) == [(3, 4, "“a8” does not say what the pawn becomes: it was read as a queen.")]


def test_equal_moves_in_variations_become_one_and_keep_their_notes():
    game = read("1. e4 {a} e5 (1... c5 $1 {b}) (1... c5 $2 {c} 2. c3) *")
    assert tree(game) == "e4 [a] (c5 $1 $2 [b\nc] c3) e5"


def test_ids_count_up_in_the_order_of_reading():
    study = read("1. e4 e5 (1... c5) 2. Nf3").study
    assert list(study.nodes) == [0, 1, 2, 3, 4]
    assert study.next_id == 5
    assert study.nodes[1].children == (2, 3)


@pytest.mark.parametrize(
    ("tag", "name", "value", "reported"),
    [
        ('[White "Aino Salo"]', "White", "Aino Salo", False),
        ('[white "Aino Salo"]', "White", "Aino Salo", False),
        ('  [  White\t"Aino Salo"  ]', "White", "Aino Salo", False),
        ('[White "Aino \\"Ace\\" Salo \\\\ x"]', "White", 'Aino "Ace" Salo \\ x', False),
        ('[White "Aino "Ace" Salo"]', "White", 'Aino "Ace" Salo', True),
        ('[White "Aino Salo]', "White", "Aino Salo", True),
        ('[White "Aino Salo"', "White", "Aino Salo", True),
        ("[White Aino Salo]", "White", "Aino Salo", True),
        ('[White = "Aino Salo"]', "White", "Aino Salo", True),
        ('[White ""]', "White", "", False),
        ('[Opening "' + "x" * 400 + '"]', "Opening", "x" * 400, False),
        ('[Event "{ ; ( %"]', "Event", "{ ; ( %", False),
        ('[Event "a"] [White "Aino Salo"]', "White", "Aino Salo", False),
    ],
)
def test_tags_are_read_even_when_they_are_written_badly(tag, name, value, reported):
    game = read(f'[Site "there"]\n{tag}\n[Black "Teo Marsh"]\n\n1. e4 *\n')
    assert game.study.headers[name] == value
    assert game.study.headers["Black"] == "Teo Marsh"
    assert [problem.line for problem in game.problems] == ([2] if reported else [])


def test_missing_tags_have_the_values_of_the_standard():
    headers = read("1. e4 *").study.headers
    assert list(headers.values()) == ["?", "?", "????.??.??", "?", "?", "?", "*"]


def test_a_tag_that_comes_twice_keeps_its_first_value_and_reports_the_second():
    game = read('[White "A"]\n[White "B"]\n[White "A"]\n\n*')
    assert game.study.headers["White"] == "A"
    assert problems(game) == [(2, 1, "A second White tag says “B”; the first one, “A”, was kept.")]


@pytest.mark.parametrize(
    ("tag", "marker", "result", "reported"),
    [
        ("", "1-0", "1-0", False),
        ('[Result "*"]', "0-1", "0-1", False),
        ('[Result "?"]', "½-½", "1/2-1/2", False),
        ('[Result "1-0"]', "1-0", "1-0", False),
        ('[Result "1-0"]', "*", "1-0", False),
        ('[Result "1-0"]', "", "1-0", False),
        ('[Result "1-0"]', "0-1", "1-0", True),
    ],
)
def test_the_result_comes_from_the_tag_or_from_the_end_of_the_moves(tag, marker, result, reported):
    game = read(f"{tag}\n1. e4 {marker}")
    assert game.study.headers["Result"] == result
    assert bool(game.problems) == reported


def test_a_set_up_position_is_where_the_moves_begin():
    game = read('[FEN "4k3/8/8/8/8/8/4P3/4K3 b - - 3 31"]\n\n31... Kd7 32. e4 *')
    assert tree(game) == "Kd7 e4"
    assert game.study.headers["SetUp"] == "1"


@pytest.mark.parametrize("fen", ["nonsense", "9/8/8/8/8/8/8/8 w - - 0 1", "8/8/8/8/8/8/8/8 x - - 0 1"])
def test_a_position_that_is_none_is_reported_and_nothing_of_the_game_is_lost(fen):
    game = read(f'[White "A"]\n[FEN "{fen}"]\n\n1. Kd7 {{well}} Ke2 1-0\n')
    assert tree(game) == f"[FEN: {fen}\n1. Kd7 {{well}} Ke2]"
    assert game.study.headers["Result"] == "1-0"
    ((line, column, message),) = problems(game)
    assert (line, column) == (2, 1)
    assert "holds no position" in message
    assert "kept as a note" in message


@pytest.mark.parametrize("pieces", ["4k3/8/8/8/8/8/8/8", "k1K5/8/8/8/8/8/8/8", "8/8/8/8/8/8/8/8", "kk6/8/8/8/8/8/8/K7"])
def test_positions_that_break_the_rules_do_no_harm(pieces):
    game = read(f'[FEN "{pieces} w - - 0 1"]\n\n1. Kd7 Kb7 2. e4 *')
    again = read(pgn_text(game.study))
    assert tree(again) == tree(game)


@pytest.mark.parametrize("short", ["O-O", "0-0", "Ke1xf1", "e1f1", "e1g1"])
def test_chess960_castling_is_read_however_it_is_written(short):
    board = chess.Board("4k3/8/8/8/8/8/8/1R2KR2 w BF - 0 1", chess960=True)
    game = read(f'[Variant "Fischerandom"]\n[FEN "{board.fen()}"]\n\n1. O-O-O (1. {short} Ke7) 1... Ke7 *')
    assert [game.study.nodes[child].move for child in game.study.nodes[0].children] == [
        board.parse_san("O-O-O"),
        board.parse_san("O-O"),
    ]
    assert not game.problems


def test_a_variant_with_other_rules_is_reported():
    game = read('[Event "x"]\n[Variant "Atomic"]\n\n1. e4 *')
    assert [(line, "Atomic" in message) for line, _, message in problems(game)] == [(2, True)]


@pytest.mark.parametrize(
    "data",
    [
        '[White "Siân Ødegård"]\n\n1. e4 {“good”} *'.encode(),
        b"\xef\xbb\xbf" + '[White "Siân Ødegård"]\n\n1. e4 {“good”} *'.encode(),
        '[White "Siân Ødegård"]\r\n\r\n1. e4 {“good”} *\r\n'.encode(),
        '[White "Siân Ødegård"]\r\r1. e4 {“good”} *\r'.encode(),
        '[White "Siân Ødegård"]\n\n1. e4 {“good”} *'.encode("cp1252"),
        '[White "Siân Ødegård"]\n\n1. e4 {“good”} *'.encode("utf-16"),
    ],
    ids=["utf-8", "byte-order mark", "crlf", "cr", "latin-1", "utf-16"],
)
def test_names_and_notes_survive_every_encoding_in_use(data):
    game = read(data)
    assert game.study.headers["White"] == "Siân Ødegård"
    assert tree(game) == "e4 [“good”]"
    assert not game.problems


def test_a_file_in_two_encodings_is_read_game_by_game():
    data = '[White "Øre"]\n\n*\n\n'.encode() + '[White "Øre"]\n\n*\n'.encode("latin-1")
    assert [game.study.headers["White"] for game in read_games(data)] == ["Øre", "Øre"]


def test_the_place_of_a_problem_counts_lines_of_the_whole_file_and_characters_not_bytes():
    text = '[White "é"]\r\n\r\n1. e4 *\r\n\r\n[White "é"]\r\n\r\n1. e4 {éé} e9 *\r\n'
    games = list(read_games(text.encode()))
    assert [(p.game_number, p.line, p.column) for game in games for p in game.problems] == [(2, 7, 12)]


def test_words_before_the_first_tag_go_with_the_first_game():
    games = list(
        read_games('Games of the spring cup\n; collected by hand\n\n[White "A"]\n\n1. e4 *\n\n[White "B"]\n\n*')
    )
    assert [game.study.headers["White"] for game in games] == ["A", "B"]
    assert tree(games[0]) == "[Games of the spring cup\ncollected by hand] e4"
    assert [(p.line, p.column) for p in games[0].problems] == [(1, 1)]


def test_an_empty_file_holds_no_games():
    assert [list(read_games(empty)) for empty in ("", " \n\n", b"\xef\xbb\xbf\n", "\t")] == [[], [], [], []]


def test_a_missing_file_is_reported_in_a_sentence(tmp_path):
    with pytest.raises(StudyboardError, match=r"nothing\.pgn cannot be read"):
        next(read_games(tmp_path / "nothing.pgn"))


def test_three_thousand_nested_variations_are_read_and_written():
    # Each variation replaces the second move of the one around it.
    board = chess.Board()
    words: list[str] = []
    for _ in range(3_001):
        quiet = sorted(
            (move for move in board.legal_moves if board.piece_type_at(move.from_square) == chess.KNIGHT),
            key=lambda move: move.uci(),
        )
        words.append(f"{board.san(quiet[0])} ({board.san(quiet[1])}")
        board.push(quiet[1])
    game = read(" ".join(words) + ")" * 3_001)
    assert not game.problems
    assert len(game.study.nodes) == 6_003
    again = read(pgn_text(game.study, spoken=False))
    assert [node.move for node in again.study.branch(0)] == [node.move for node in game.study.branch(0)]


@given(st.binary(max_size=400))
def test_no_bytes_make_the_reader_stumble(data):
    for game in read_games(data):
        pgn_text(game.study)


_SCRAPS = [
    "e4", "e5", "Nf3", "Nc6", "d4", "exd4", "O-O", "0-0", "Qh5", "g6", "1.", "2...", "3", "1-0", "1/2-1/2", "*",
    "(", ")", "(", ")", "{", "}", "{a b}", "; x\n", ";", "\n", "\n\n", "$1", "$300", "!", "??", "foo", "+-", "=", "--",
    '[Event "x"]', '\n[Event "x"]\n', '\n\n[White "y"]\n', '\n[FEN "8/8/8/8/8/8/8/K1k5 w - - 0 1"]\n', '[FEN "bad"]\n',
    '\n[Variant "Chess960"]\n', "[", '"', "e.p.", "e8(Q)", "\ufeff", "\r\n", ".", "½-½", "\x00", "é", "\t", "Nf9", "h6",
]  # fmt: skip


_FULL_WIDTH = str.maketrans("{}", "｛｝")


def as_written(tree: str) -> str:
    """Braces in notes are written full-width, because PGN has no way to keep them."""
    return tree.replace("{", "｛").replace("}", "｝")


@given(st.lists(st.sampled_from(_SCRAPS), max_size=40), st.sampled_from(["", " "]))
def test_whatever_was_read_is_read_again_from_what_is_written(scraps, between):
    for game in read_games(between.join(scraps)):
        again = read(pgn_text(game.study))
        # A comment cannot hold a closing brace: it is written full-width.
        assert tree(again).translate(_FULL_WIDTH) == tree(game).translate(_FULL_WIDTH)
        assert again.study.headers == game.study.headers


@given(st.integers(0, 1 << 32))
def test_no_word_or_comment_of_a_broken_file_is_dropped_silently(seed):
    chance = random.Random(seed)
    shapes = ["{%s}", "%s", "; %s\n", "{%s\nx}", '[Foo "%s"]\n', '\n[Zoo%s "1"]\n', "(%s)", "e4%s", "%s)", "{%s", '"%s']
    pieces: list[str] = []
    words: list[str] = []
    for _ in range(chance.randint(1, 40)):
        if chance.random() < 0.3:
            words.append(f"qq{len(words)}q")
            pieces.append(chance.choice(shapes) % words[-1])
        else:
            pieces.append(chance.choice(_SCRAPS))
    text = "".join(piece + chance.choice(["", " ", " "]) for piece in pieces)
    kept = "".join(
        pgn_text(game.study) + " ".join(problem.message for problem in game.problems) for game in read_games(text)
    )
    assert [word for word in words if word not in kept] == []
