"""How far a pawn is from queening, and who has the opposition."""

import pytest

from studyboard.reading.read_through import judge

#: Black to move; the kings face each other, a white pawn on c4, a black one on a2.
FACING = "8/8/8/4k3/2P5/4K3/p7/8 b - - 0 1"

TRUE = [
    "White has the opposition.",
    "White takes the direct opposition.",
    "The opposition is White's.",
    "The pawn on c4 needs four moves to queen.",
    "The c-pawn is four steps away from promotion.",
    "The white pawn needs four more moves.",
    "Black needs one move to promote.",
    "The a-pawn is a single step from the queening square.",
]
FALSE = [
    "Black has the opposition.",
    "The opposition belongs to Black.",
    "The pawn on c4 needs three moves to queen.",
    "The pawn on c4 is five squares from queening.",
    "The white pawn needs two more moves.",
    "The a-pawn is two steps away from queening.",
]


@pytest.mark.parametrize("said", TRUE)
def test_what_is_true_is_confirmed(said):
    found = judge(FACING, said)
    assert not found.queries
    assert found.confirmed


@pytest.mark.parametrize("said", FALSE)
def test_what_is_false_is_queried(said):
    assert judge(FACING, said).queries


@pytest.mark.parametrize(
    "said",
    [
        "Black would like to have the opposition.",
        "If it were White's move, Black would have the opposition.",
        "The rook needs two moves to get to the king.",
        "White needs one more move.",
    ],
)
def test_what_is_wished_or_counts_something_else_is_left_alone(said):
    assert judge(FACING, said).queries == ()


def test_a_pawn_at_home_may_take_two_steps_at_once():
    home = "4k3/8/8/8/8/8/2P5/4K3 w - - 0 1"
    assert judge(home, "The pawn on c2 needs five moves to queen.").queries == ()
    assert judge(home, "The pawn on c2 needs four moves to queen.").queries


#: White has just gone the wrong way; Black, to move, takes the opposition and draws.
DRAWN = "8/8/3k4/8/8/4PK2/8/8 b - - 2 2"
#: White to move; four king moves win.
WON = "8/5k2/8/4K3/8/4P3/8/8 w - - 5 4"


@pytest.mark.parametrize(
    ("fen", "said"),
    [
        (WON, "White wins."),
        (WON, "White will win even so."),
        (WON, "Four moves win here."),
        (DRAWN, "It's a draw."),
        (DRAWN, "Only two moves draw."),
        (DRAWN, "Now the result is a draw."),
    ],
)
def test_what_the_table_confirms(fen, said):
    assert not judge(fen, said).queries


@pytest.mark.parametrize(
    ("fen", "said"),
    [
        (DRAWN, "White still wins."),
        (DRAWN, "White will win all the same."),
        (WON, "Only one move wins."),
        (WON, "Now just two moves win."),
        (DRAWN, "Only one move draws."),
        (WON, "Now it's a draw."),
    ],
)
def test_what_the_table_contradicts(fen, said):
    assert judge(fen, said).queries
