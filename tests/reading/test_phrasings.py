"""Each kind of claim in the many words that people have for it: true ones are never queried, false ones always are."""

# ruff: noqa: E501  (lists of phrases, one kind of claim a line)

import pytest

from studyboard.reading.read_through import judge

ITALIAN = "r1bqkb1r/ppp2ppp/2np1n2/4p1B1/2B1P3/5N2/PPPP1PPP/RN1QK2R w KQkq - 0 5"
PAWN_UP = "6k1/5ppp/8/r7/8/8/4PPPP/R5K1 w - - 0 1"
PAWNS = "6k1/p4ppp/8/3P4/8/P1P5/2P2PPP/6K1 w - - 0 1"
ROOK_HANGS = "6k1/5ppp/8/r7/8/8/8/Q5K1 w - - 0 1"
TO_MOVE = "rnbqkbnr/ppp2ppp/8/3pp3/2P5/2N5/PP1PPPPP/R1BQKBNR b KQkq - 1 3"
RIGHTS = "r3k2r/ppp2ppp/2np1n2/2b1p3/2B1P3/2NP1N2/PPP2PPP/R1BQ1RK1 b kq - 0 7"
NO_RIGHTS = RIGHTS.replace(" kq ", " - ")
ROYAL_FORK = "r3k3/2N5/8/8/8/8/6PP/6K1 b - - 0 1"
LONELY = "6k1/5ppp/8/8/8/2B5/5PPP/6K1 w - - 0 1"

ATTACKS = "hits|eyes|attacks|targets|is hitting|is attacking|bears down on|is aimed at|has its eye on|takes aim at|is looking at|stares at|puts pressure on|presses against|leans on|is pointed at|points at|threatens|harasses|is bothering|goes after|pressures|launches an attack on"
GUARDS = "protects|defends|guards|covers|supports|backs up|takes care of|looks after|is guarding|is protecting|is defending|watches over|minds|is there to protect|props up|provides cover for|is responsible for|stands guard over|gives protection to"
ATTACKED = "is attacked|is under attack|is hit|is under fire|stands under attack|is threatened|is being attacked|has been attacked|comes under attack|is under pressure|is exposed to attack"
GUARDED = "is protected|is defended|is guarded|is covered|is supported|is backed up|is well protected|is solidly defended|is looked after|is kept safe"
LOOSE = "is hanging|is loose|is undefended|is unprotected|has no defender|is without a defender|hangs|is en prise|is left without protection|is not protected|isn't defended|is completely unprotected|is left hanging|can be taken for free|is just hanging|is up for grabs|is not defended by anything|is defended by nothing|lacks a defender|lacks protection"
PINNED = "is pinned|is pinned to the queen|is in a pin|is caught in a pin|is stuck in a pin|is under a pin|is pinned against the queen|is pinned down"
TRAPPED = "is trapped|has nowhere to go|has no squares|cannot escape|has no way out|has no escape|is out of squares|has no retreat|is boxed in|is locked in|is shut in|cannot get out|has no safe square|is entombed|is buried alive|has run out of squares|has no moves|cannot move|is imprisoned|is hemmed in|has no square to go to|does not have a square|has not a single safe square"
TURN = "It is {} to move.|It is {}'s move.|It's {}'s turn.|{} to move.|{} to play.|{} is to move.|{} has the move.|It is {}'s turn to move.|The move is {}'s.|{} is on move.|{} moves next.|Now it is {} to play.|It falls to {} to move.|And {}'s to move.|The turn is {}'s.|It is up to {} to move.|With {} to move, everything is clear."
CANNOT_CASTLE = "Black can no longer castle.|Black has lost the right to castle.|Black cannot castle any more.|Black may not castle.|Black's castling rights are gone.|Black has lost his castling rights.|Black is not allowed to castle.|Black has no castling rights.|Black has forfeited the right to castle.|Castling is no longer possible for Black.|The king on e8 can no longer castle.|Black can't castle anymore."
CAN_CASTLE = "Black can castle.|Black may still castle.|Black can castle queenside.|Black still has the right to castle.|Castling is still possible for Black.|Black is free to castle.|Black can castle long.|Black keeps his castling rights."

TRUE = [
    *((ITALIAN, f"The bishop on g5 {verb} the knight on f6.") for verb in ATTACKS.split("|")),
    *((ITALIAN, f"The queen on d8 {verb} the knight on f6.") for verb in GUARDS.split("|")),
    *((ITALIAN, f"The knight on f6 {verb} by the bishop.") for verb in ATTACKED.split("|")),
    *((ITALIAN, f"The knight on f6 {verb} by the queen.") for verb in GUARDED.split("|")),
    *((ROOK_HANGS, f"The rook on a5 {verb}.") for verb in LOOSE.split("|")),
    *((ITALIAN, f"The knight on f6 {verb}.") for verb in PINNED.split("|")),
    *((TO_MOVE, said.format("Black")) for said in TURN.split("|")),
    *((NO_RIGHTS, said) for said in CANNOT_CASTLE.split("|")),
    *((RIGHTS, said) for said in CAN_CASTLE.split("|")),
    *((PAWN_UP, said) for said in (
        "White is a pawn up.", "White is up a pawn.", "White has an extra pawn.", "White has a pawn more.", "Black is a pawn down.",
        "Black is missing a pawn.", "White leads by a pawn.", "Black is a pawn behind.", "White has four pawns, Black three.",
    )),
    *((PAWNS, said) for said in (
        "The pawn on d5 is passed.", "White has a passed pawn.", "The d-pawn is a passed pawn.", "White has doubled pawns.",
        "White's a-pawn is isolated.", "White has three pawn islands.", "The e-file is open.", "There is no pawn on the b-file.",
        "The pawn on d5 is passed, and so is the pawn on c3.",
    )),
    *((ROYAL_FORK, said) for said in (
        "The knight forks king and rook.", "The knight attacks both the king and the rook.", "The knight hits king and rook at once.",
    )),
]  # fmt: skip

FALSE = [
    *((ITALIAN, f"The bishop on g5 {verb} the pawn on d6.") for verb in ATTACKS.split("|")),
    *((ITALIAN, f"The queen on d8 {verb} the pawn on b7.") for verb in GUARDS.split("|")),
    *((ITALIAN, f"The pawn on d6 {verb} by the bishop on g5.") for verb in ATTACKED.split("|")),
    *((ITALIAN, f"The knight on f6 {verb} by the rook.") for verb in GUARDED.split("|")),
    *((ITALIAN, f"The pawn on e5 {verb}.") for verb in LOOSE.split("|")),
    *((ITALIAN, f"The knight on c6 {verb}.") for verb in PINNED.split("|")),
    *((LONELY, f"The bishop on c3 {verb}.") for verb in TRAPPED.split("|")),
    *((TO_MOVE, said.format("White")) for said in TURN.split("|")),
    *((RIGHTS, said) for said in CANNOT_CASTLE.split("|")),
    *((NO_RIGHTS, said) for said in CAN_CASTLE.split("|")),
    *((PAWN_UP, said) for said in (
        "Black is a pawn up.", "Black has an extra pawn.", "Black has a pawn more.", "White is two pawns up.", "Material is even.",
        "Both sides have the same material.", "Nobody is ahead in material.", "There is material equality.", "Each side has four pawns.",
        "White has four pawns, Black four.", "White is missing a pawn.",
    )),
    *((PAWNS, said) for said in (
        "The pawn on f2 is passed.", "Black has a passed pawn.", "Black has doubled pawns.", "Black's g-pawn is isolated.",
        "White has four pawn islands.", "The d-file is open.", "There is no pawn on the f-file.", "White has no passed pawn.",
        "White has no doubled pawns.", "The pawn on a3 is isolated, and so is the pawn on g2.", "Black has two pawn islands, White two.",
    )),
    *((ROYAL_FORK, said) for said in (
        "The knight forks king and queen.", "The knight attacks the queen.", "The knight forks the two rooks.",
    )),
    (ITALIAN, "Nothing attacks the knight on f6."),
    (ITALIAN, "It is the third piece that protects e5."),
    (ITALIAN, "There are three attackers on f6."),
]  # fmt: skip

SILENT = [
    "If the bishop takes on f6, the knight on c6 is pinned.",
    "The knight on c6 might be pinned one day.",
    "Suppose the pawn on e5 were hanging.",
    "Is the pawn on e5 hanging?",
    "White would like to attack the pawn on d6.",
    "In some lines the pawn on e5 hangs.",
    "A moment ago the pawn on e5 was hanging.",
    "Black was a pawn up before.",
    "Soon White will be a piece up.",
    "Some say that White is a pawn up here, but that is not so.",
    "It looks as if the pawn on e5 were hanging.",
    "Many think that Black can castle long here.",
    "You may think the pawn on e5 is hanging.",
    "Do not believe that Black is in check.",
    "The knight on c6 is not pinned.",
    "The pawn on e5 is not hanging.",
    "One day the d-file will be open.",
    "White dreams of a passed pawn on d5.",
    "Let us ask whether the bishop on c4 is trapped.",
    "The bishop on c4 is far from trapped.",
    "Had White castled, he would be safe.",
    "White wants one thing: the pawn on e5 hanging, the knight on c6 pinned.",
    "There is a fork in the road here.",
    "The knight on f6 cannot move without losing the queen.",
    "A rook on e8 would attack the pawn on e4.",
]


@pytest.mark.parametrize(("fen", "said"), TRUE)
def test_what_is_true_is_never_queried(fen, said):
    assert judge(fen, said).queries == ()


@pytest.mark.parametrize(("fen", "said"), FALSE)
def test_what_is_false_is_queried_with_the_truth(fen, said):
    found = judge(fen, said).queries
    assert found
    assert all(query.why for query in found)


@pytest.mark.parametrize("said", SILENT)
def test_what_is_wished_feared_asked_or_over_is_left_alone(said):
    assert judge(ITALIAN, said).queries == ()
