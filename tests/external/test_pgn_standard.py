"""The rules of the PGN standard: “Standard: Portable Game Notation Specification and Implementation Guide”,
S. J. Edwards (coordinator), revised 1994-03-12. The rules are those listed in the project's references; the numbers
of their sections are from memory.
"""

from __future__ import annotations

import re
from itertools import pairwise

import chess
import pytest

from studyboard.model.edits import ChangeNode, add_move, apply
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.notation.pgn_reader import GameRead, read_games
from studyboard.notation.pgn_writer import pgn_text


def read(text: str | bytes) -> GameRead:
    (game,) = read_games(text)
    return game


def moves(game: GameRead) -> list[str]:
    positions = Positions(game.study)
    return [positions.san(node) for node in game.study.main_line()][1:]


def movetext(text: str) -> str:
    return text.split("\n\n", 1)[1]


# --- 3.1, import format: data prepared by hand is read even where it is written loosely ------------------------------


@pytest.mark.parametrize(
    "loose",
    [
        "1.e4 e5 2.Nf3 Nc6",
        "e4 e5 Nf3 Nc6 *",
        "1. e4 1... e5 2. Nf3 2... Nc6 *",
        "1 e4 e5 2 Nf3 Nc6 *",
        "17. e4 e5 3. Nf3 Nc6 *",
        "1. e4\n\ne5 2.\n    Nf3\n\t\tNc6\n*",
        "1. e4 " + " " * 300 + "e5 2. Nf3 Nc6 *",
        "1. Pe4 Pe5 2. Ng1f3 Nb8-c6 *",
    ],
)
def test_loosely_written_movetext_is_read(loose):
    game = read(loose)
    assert moves(game) == ["e4", "e5", "Nf3", "Nc6"]
    assert not game.problems


# --- 4.1: ISO 8859-1; files today are UTF-8 (common practice) --------------------------------------------------------


def test_latin_1_is_read_and_text_is_not_limited_to_it():
    assert read('[White "Müller, Zoë"]\n\n*'.encode("latin-1")).study.headers["White"] == "Müller, Zoë"
    assert read('[White "Łucja Żak"]\n\n*'.encode()).study.headers["White"] == "Łucja Żak"


# --- 5, comments: braces do not nest; a semicolon comments out the rest of its line ----------------------------------


def test_brace_comments_do_not_nest():
    game = read("1. e4 {one { two} e5 *")
    assert game.study.nodes[1].note == "one { two"
    assert moves(game) == ["e4", "e5"]


def test_signs_of_one_kind_of_comment_mean_nothing_in_the_other():
    game = read("1. e4 {a ; b} e5 ; c { d\n2. Nf3 *")
    assert game.study.nodes[1].note == "a ; b"
    assert game.study.nodes[2].note == "c { d"
    assert moves(game) == ["e4", "e5", "Nf3"]


# --- 6, escape: a percent sign in the first column hides its line, anywhere else it does not -------------------------


def test_a_percent_sign_in_column_one_hides_the_line_and_elsewhere_it_does_not():
    game = read("1. e4\n%hidden {\ne5 %odd\n*")
    assert moves(game) == ["e4", "e5"]
    assert game.study.nodes[2].note == "%odd"
    assert [(problem.line, problem.column) for problem in game.problems] == [(3, 4)]


# --- 7, strings: quote and backslash are escaped; at most 255 characters ---------------------------------------------


def test_quotes_and_backslashes_in_tags_are_escaped():
    study = Study({"White": 'A "B" \\ C'})
    assert '[White "A \\"B\\" \\\\ C"]\n' in pgn_text(study)
    assert read(pgn_text(study)).study.headers["White"] == 'A "B" \\ C'


def test_longer_strings_than_the_standard_allows_are_read():
    assert len(read(f'[Opening "{"x" * 1000}"]\n\n*').study.headers["Opening"]) == 1000


# --- 8.1, tag pairs --------------------------------------------------------------------------------------------------


def test_the_seven_tag_roster_comes_first_in_its_order_then_the_others_in_ascii_order():
    headers = {"Zulu": "1", "ECO": "C50", "Result": "1-0", "White": "A", "Annotator": "B", "eCO2": "x", "Event": "E"}
    names = re.findall(r"^\[(\w+) ", pgn_text(Study(headers)), re.MULTILINE)
    assert names == [
        "Event", "Site", "Date", "Round", "White", "Black", "Result", "Annotator", "ECO", "Zulu", "eCO2",
    ]  # fmt: skip


def test_unknown_values_are_question_marks_and_an_unknown_result_an_asterisk():
    assert pgn_text(Study({})) == (
        '[Event "?"]\n[Site "?"]\n[Date "????.??.??"]\n[Round "?"]\n[White "?"]\n[Black "?"]\n[Result "*"]\n\n*\n\n'
    )


def test_several_tags_on_a_line_and_spaces_inside_them_are_read():
    headers = read('[ White\t"A" ] [Black "B"]\n[Round "3"] 1. e4 *').study.headers
    assert (headers["White"], headers["Black"], headers["Round"]) == ("A", "B", "3")


# --- 8.2.1, lines; 8.2.2, move numbers -------------------------------------------------------------------------------


def shuffled(plies: int) -> Study:
    """Knights going out and home again, as often as it takes."""
    study = Study()
    at = study.root
    for number in range(plies):
        edit = add_move(study, at, chess.Move.from_uci(("g1f3", "b8c6", "f3g1", "c6b8")[number % 4]))
        apply(study, edit)
        at = edit.node
    return study


def test_movetext_lines_are_under_eighty_characters_left_justified_and_full():
    study = shuffled(120)
    for node in range(1, 120, 7):
        apply(study, ChangeNode(node, "note", "a comment of quite some length, so that it has to be broken somewhere"))
    lines = movetext(pgn_text(study)).rstrip("\n").split("\n")
    assert all(len(line) < 80 and line == line.strip() for line in lines)
    # None could have taken the first word of the line after it.
    assert all(len(line) + 1 + len(after.split(" ")[0]) >= 80 for line, after in pairwise(lines))


def test_one_empty_line_follows_the_tags_and_one_the_movetext():
    text = pgn_text(shuffled(3)) + pgn_text(shuffled(2))
    assert [block[:1] for block in text.split("\n\n")] == ["[", "1", "[", "1", ""]
    assert text.endswith(" *\n\n")


def test_black_move_numbers_appear_only_after_a_comment_or_a_variation_and_at_the_start():
    game = read("1. e4 e5 2. Nf3 {x} Nc6 3. Bb5 (3. Bc4 Bc5) 3... a6 4. Ba4 $1 Nf6 (4... b5) 5. O-O *")
    assert movetext(pgn_text(game.study)).split() == (
        [
            "1.",
            "e4",
            "e5",
            "2.",
            "Nf3",
            "{x}",
            "2...",
            "Nc6",
            "3.",
            "Bb5",
            "(3.",
            "Bc4",
            "Bc5)",
            "3...",
            "a6",
            "4.",
            "Ba4",
            "$1",
            "Nf6",
            "(4...",
            "b5)",
            "5.",
            "O-O",
            "*",
        ]
    )
    black_first = read('[SetUp "1"]\n[FEN "4k3/8/8/8/8/8/8/4K3 b - - 0 7"]\n\n7... Ke7 8. Ke2 *')
    assert movetext(pgn_text(black_first.study)) == "7... Ke7 8. Ke2 *\n\n"


# --- 8.2.3, standard algebraic notation ------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("fen", "uci", "san"),
    [
        # File, else rank, else both.
        ("4k3/8/8/8/8/8/8/N3K1N1 w - - 0 1", "a1b3", "Nb3"),
        ("4k3/8/8/8/8/5N2/8/1N2K3 w - - 0 1", "b1d2", "Nbd2"),
        ("4k3/8/8/N7/8/8/8/N3K3 w - - 0 1", "a1b3", "N1b3"),
        ("4k3/8/8/8/8/R6R/8/4K3 w - - 0 1", "a3d3", "Rad3"),
        ("1k6/8/8/8/Q6Q/8/8/4K2Q w - - 0 1", "h4e4", "Qh4e4"),
        # A pinned piece needs no telling apart.
        ("4k3/4r3/8/8/8/8/4N3/4K1N1 w - - 0 1", "g1f3", "Nf3"),
        # Captures, en passant without any sign, promotion with an equals sign, castling with the letter O.
        ("4k3/8/8/3p4/4P3/8/8/4K3 w - - 0 1", "e4d5", "exd5"),
        ("4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 1", "e5d6", "exd6"),
        ("8/P6k/8/8/8/8/8/K7 w - - 0 1", "a7a8q", "a8=Q"),
        ("4k3/8/8/8/8/8/8/4K2R w K - 0 1", "e1g1", "O-O"),
        ("4k3/8/8/8/8/8/8/R3K3 w Q - 0 1", "e1c1", "O-O-O"),
        # Check and mate.
        ("4k3/8/8/8/8/8/8/R3K3 w - - 0 1", "a1a8", "Ra8+"),
        ("6k1/5ppp/8/8/8/8/8/R3K3 w - - 0 1", "a1a8", "Ra8#"),
    ],
)
def test_moves_are_written_as_the_standard_wants_them(fen, uci, san):
    study = Study({"FEN": fen})
    apply(study, add_move(study, study.root, chess.Move.from_uci(uci)))
    assert movetext(pgn_text(study)) == f"1. {san} *\n\n"
    assert moves(read(pgn_text(study))) == [san]


def test_suffixes_are_read_as_glyphs_and_written_as_glyphs():
    game = read("1. e4! e5? 2. Nf3!! Nc6?? 3. Bb5!? a6?! *")
    assert [game.study.nodes[node].nags for node in range(1, 7)] == [(1,), (2,), (3,), (4,), (5,), (6,)]
    assert movetext(pgn_text(game.study)) == "1. e4 $1 e5 $2 2. Nf3 $3 Nc6 $4 3. Bb5 $5 a6 $6 *\n\n"


# --- 8.2.4, glyphs $0 to $255; 8.2.5, variations; 8.2.6, how a game ends ---------------------------------------------


def test_every_glyph_is_read_and_written():
    glyphs = " ".join(f"${number}" for number in range(256))
    game = read(f"1. e4 {glyphs} *")
    assert game.study.nodes[1].nags == tuple(range(256))
    assert read(pgn_text(game.study)).study.nodes[1].nags == tuple(range(256))


def test_a_variation_is_an_alternative_to_the_move_just_before_it_and_may_hold_others():
    game = read("1. e4 e5 2. Nf3 (2. f4 exf4 (2... d5 3. exd5) 3. Nf3) 2... Nc6 *")
    study, positions = game.study, Positions(game.study)
    by_parent = {
        positions.san(node.id): [positions.san(child) for child in node.children] for node in study.nodes.values()
    }
    assert by_parent["e5"] == ["Nf3", "f4"]
    assert by_parent["f4"] == ["exf4", "d5"]
    assert by_parent["d5"] == ["exd5"]


@pytest.mark.parametrize("marker", ["1-0", "0-1", "1/2-1/2", "*"])
def test_the_game_ends_with_its_result_and_the_tag_says_the_same(marker):
    game = read(f'[Result "{marker}"]\n\n1. e4 {marker}')
    assert game.study.headers["Result"] == marker
    text = pgn_text(game.study)
    assert f'[Result "{marker}"]' in text
    assert movetext(text) == f"1. e4 {marker}\n\n"


# --- 9.7, positions that are set up ----------------------------------------------------------------------------------


def test_a_fen_tag_goes_with_a_setup_tag():
    study = Study({"FEN": "4k3/8/8/8/8/8/4P3/4K3 w - - 0 1"})
    text = pgn_text(study)
    assert '[SetUp "1"]\n' in text
    assert '[FEN "4k3/8/8/8/8/8/4P3/4K3 w - - 0 1"]\n' in text
    assert moves(read(text.replace("*\n\n", "1. e4 *\n\n"))) == ["e4"]
