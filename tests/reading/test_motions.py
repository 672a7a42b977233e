"""Verbs of motion are held against the move at which they are said, in all the words that people have for moving."""

# ruff: noqa: E501  (a list of verbs)

import pytest

from studyboard.notation.pgn_reader import read_games
from studyboard.notation.talk_file import read_talk
from studyboard.reading.read_through import read_through

GAME = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. O-O Nf6 5. d3 d6 6. Bg5 h6 7. Bxf6 Qxf6"
PATH = "e4 e5 Nf3 Nc6 Bc4"

VERBS = [
    "comes to", "goes to", "drops to", "retreats to", "lands on", "arrives on", "heads to", "heads for", "hops to", "jumps to",
    "swings to", "slides to", "develops to", "steps to", "moves to", "lifts to", "advances to", "returns to", "comes out to",
    "swings over to", "slides across to", "settles on", "takes up a post on", "is developed to", "glides to", "reaches",
    "makes its way to", "finds its way to", "goes straight to", "travels to", "ends up on", "went to", "came to", "is placed on",
    ", naturally, goes to",
]  # fmt: skip


def queries(spoken, path=PATH):
    study = next(read_games(f"{GAME} *")).study
    told = read_talk(f'[[node]]\npath = "{path}"\nspoken = """{spoken}"""\n', study)
    return read_through(told).queries


@pytest.mark.parametrize("cue", ["{Bc4}", ""])
@pytest.mark.parametrize("verb", VERBS)
def test_a_wrong_square_is_a_query_with_its_fix_and_the_right_one_is_none(verb, cue):
    assert queries(f"{cue}The bishop {verb} c4, as everybody expects.".replace(" ,", ",")) == ()
    (query,) = queries(f"{cue}The bishop {verb} c5, as everybody expects.".replace(" ,", ","))
    assert query.fix is not None
    assert query.fix.text == "c4"


@pytest.mark.parametrize(
    ("spoken", "kind"),
    [
        ("{Bc4}It comes to c5.", "square"),
        ("{Bc4}Out comes the bishop to b5.", "square"),
        ("{Bc4}White slides the bishop over to b5.", "square"),
        ("{Bc4}The black bishop comes out to c4.", "colour"),
        ("{Bc4}The knight comes out to c4.", "piece"),
        ("{Bc4}White develops a knight.", "piece"),
        ("{Bc4}Black brings out the bishop.", "colour"),
    ],
)
def test_a_wrong_piece_or_side_is_a_query(spoken, kind):
    assert [query.kind for query in queries(spoken)] == [kind]


@pytest.mark.parametrize(
    "spoken",
    [
        "{Bc4}The bishop could have gone to b5.",
        "{Bc4}The bishop develops. Black's own bishop will come to c5.",
        "{Bc4}The bishop is developed, and the knight goes to c3 next.",
        "{Bc4}In the Spanish the bishop goes to b5.",
        "{Bc4}Not to b5: the bishop goes to c4.",
        "{Bc4}The bishop goes out. If the knight goes to d4 it is a trade.",
        "{Bc4}Many players take the bishop to b5.",
        "{Bc4}Would you have played the bishop to b5?",
        "{Bc4}The bishop does not go to b5.",
        "{Bc4}The move with the bishop to b5 is called the Spanish.",
        "{Bc4}My students move the bishop to b5 here.",
        "{Bc4}Last year the bishop went to b5.",
        "{Bc4}The bishop points to f7.",
        "{Bc4}The bishop opens the way to g1 for the king.",
        "{Bc4}The bishop came from f1.",
        "{Bc4}A black bishop on e7 would help.",
    ],
)
def test_what_goes_elsewhere_or_later_is_left_alone(spoken):
    assert queries(spoken) == ()


@pytest.mark.parametrize(
    ("spoken", "found"),
    [
        ("{Bxf6}The bishop takes the knight, {Qxf6}and Black takes back with the queen.", 0),
        ("{Bxf6}The bishop takes the knight, {Qxf6}and Black takes back with the g-pawn.", 1),
        ("{Bxf6}The bishop takes the knight, {Qxf6}and the g-pawn recaptures.", 1),
        ("{Bxf6}The bishop takes the knight, {Qxf6}and the queen recaptures; the g-pawn could do so too.", 0),
    ],
)
def test_who_takes_back_is_checked(spoken, found):
    path = "e4 e5 Nf3 Nc6 Bc4 Bc5 O-O Nf6 d3 d6 Bg5 h6 Bxf6 Qxf6"
    assert len(queries(spoken, path)) == found
