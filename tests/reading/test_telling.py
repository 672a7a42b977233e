"""Moves told wrong are queried at the words that are wrong, and mended where only one thing can be meant."""

import pytest

from studyboard.notation.pgn_reader import read_games
from studyboard.notation.talk_file import read_talk
from studyboard.reading.findings import Topic
from studyboard.reading.read_through import read_through

GAME = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. O-O Nf6 5. d3 d6 6. Bg5 h6 7. Bxf6 Qxf6"


def queries(path, spoken, game=GAME):
    study = next(read_games(f"{game} *")).study
    told = read_talk(f'[[node]]\npath = "{path}"\nspoken = """{spoken}"""\n', study)
    return read_through(told).queries


@pytest.mark.parametrize(
    ("path", "spoken", "kind", "quote"),
    [
        ("e4 e5 Nf3", "{Nf3}Knight f4, and the knight attacks e5.", Topic.SQUARE, "Knight f4"),
        ("e4 e5 Nf3", "Knight g3 is the natural move.", Topic.SQUARE, "Knight g3"),
        ("e4 e5 Nf3 Nc6", "{Nc6}Bishop c6 protects the pawn.", Topic.PIECE, "Bishop c6"),
        ("e4 e5 Nf3 Nc6 Bc4 Bc5 O-O", "{O-O}White castles queenside.", Topic.CASTLING, "castles queenside"),
        ("e4 e5 Nf3 Nc6 Bc4 Bc5 O-O", "{O-O}Black castles.", Topic.COLOUR, "Black castles"),
        ("e4 e5 Nf3 Nc6 Bc4", "{Bc4}White's bishop, which looks at the knight on f7.", Topic.PIECE, "the knight on f7"),
        ("e4 e5 Nf3 Nc6 Bc4", "{Bc4}A bishop eyes f7. The knight on c3 is happy.", Topic.SQUARE, "The knight on c3"),
        (
            "e4 e5 Nf3 Nc6 Bc4 Bc5 O-O Nf6 d3 d6 Bg5 h6 Bxf6 Qxf6",
            "{Qxf6}Pawn takes, and Black has the bishop pair.",
            Topic.PIECE,
            "Pawn takes",
        ),
    ],
)
def test_a_slip_is_found_where_it_is_said(path, spoken, kind, quote):
    found = queries(path, spoken)
    assert [(query.kind, query.quote) for query in found] == [(kind, quote)]
    assert found[0].why
    assert found[0].do


@pytest.mark.parametrize(
    ("path", "spoken"),
    [
        ("e4 e5 Nf3", "{Nf3}Knight f3 hits e5, and White wants bishop c4 next."),
        ("e4 e5 Nf3", "There is an old game with f4 here. {Nf3}Our game goes knight f3."),
        ("e4 e5 Nf3 Nc6 Bc4", "Bishop b5 would be the Spanish, but the bishop goes to c4."),
        ("e4 e5 Nf3 Nc6 Bc4 Bc5 O-O Nf6 d3 d6 Bg5", "{Bg5}The knight is pinned, stopping knight g4."),
        (
            "e4 e5 Nf3 Nc6 Bc4 Bc5 O-O Nf6 d3 d6 Bg5 h6 Bxf6",
            "The bishop takes the knight on f6, and the queen will take back.",
        ),
        ("e4 e5 Nf3 Nc6 Bc4 Bc5", "{Bc5}The bishops mirror each other on c4 and c5."),
        ("e4", "e4, best by test, as people like to say."),
    ],
)
def test_what_others_might_play_is_no_slip(path, spoken):
    assert queries(path, spoken) == ()


def test_a_wrong_square_is_mended_by_one_key():
    (query,) = queries("e4 e5 Nf3", "{Nf3}Knight f4, says the voice.")
    assert query.fix is not None
    text = "Knight f4, says the voice."
    assert text[: query.fix.start] + query.fix.text + text[query.fix.end :] == "Knight f3, says the voice."


def test_a_wrong_piece_keeps_its_capital():
    (query,) = queries("e4 e5 Nf3 Nc6", "{Nc6}Bishop c6.")
    assert query.fix is not None
    assert query.fix.text == "Knight"


def test_several_moves_of_one_line_are_each_held_against_their_cue():
    found = queries("e4 e5 Nf3 Nc6", "{e4}Pawn to e4, {e5}pawn to d5, {Nf3}knight f3, {Nc6}knight c6.")
    assert [query.quote for query in found] == ["pawn to d5"]
