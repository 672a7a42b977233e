"""Lines told as a presenter tells them, with cues: the wrong words of each are queried, and nothing else is."""

import re
from pathlib import Path

import pytest

from studyboard.model.study import Study
from studyboard.notation.talk_file import read_talk
from studyboard.reading.read_through import read_through

POSITIONS = {
    "start": None,
    "italian": "r1bqkb1r/ppp2ppp/2np1n2/4p1B1/2B1P3/5N2/PPPP1PPP/RN1QK2R w KQkq - 0 5",
    "fork": "r3k3/2N5/8/8/8/8/6PP/6K1 b - - 0 1",
    "before_fork": "r3k3/8/8/1N6/8/8/6PP/6K1 w - - 0 1",
    "back_rank": "6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - - 0 1",
    "skewer": "4q3/8/4k3/8/8/8/8/R5K1 w - - 0 1",
    "smothered": "6rk/6pp/7N/8/8/8/8/6K1 w - - 0 1",
    "trapped": "r1bq1rk1/B1p2ppp/1p6/8/8/8/5PPP/6K1 w - - 0 1",
    "middlegame": "r1bq1rk1/pp2bppp/2n1pn2/3p4/2PP4/2N2N2/PP2BPPP/R1BQ1RK1 w - - 0 9",
    "discovered": "3q2k1/5ppp/8/8/3B4/8/5PPP/3R2K1 w - - 0 1",
    "rooks": "r3r1k1/pp3ppp/2p5/8/3P4/2P2N2/P4PPP/R3R1K1 w - - 0 1",
    "queens": "6k1/5ppp/8/3q4/8/8/1B3PPP/3Q2K1 w - - 0 1",
    "rook_ending": "8/5pk1/4p1p1/R6p/P6P/6P1/r4PK1/8 w - - 0 40",
    "bishop_given": "r2q1rk1/ppp2ppp/2n2n2/8/8/2N3P1/PP3PB1/R1BQ1RK1 b - - 0 12",
    "battery_on_b7": "k2r3r/pR6/2p5/8/8/8/8/2Q3K1 w - - 0 30",
    "lone_d_pawn": "4k3/p4ppp/1p6/3P4/8/8/P4PPP/4K3 w - - 0 30",
    "two_rooks": "r3k3/8/4r3/1N6/8/8/6PP/6K1 w - - 0 1",
    "mate_on_g7": "6k1/5p1p/8/8/8/2B5/3Q1PPP/6K1 b - - 0 30",
    "last_bishop": "r2q1rk1/pppb1ppp/2n2n2/8/8/2N3P1/PPP2PBP/R1BQ1RK1 w - - 0 12",
    "chain": "4k3/p4ppp/8/3P4/2P5/8/P4PPP/4K3 w - - 0 30",
    "guarded_passer": "4k3/8/8/P7/3P4/2P5/8/4K3 w - - 0 1",
    "doubled_rooks": "r2r2k1/5ppp/8/8/8/3R4/3R1PPP/6K1 w - - 0 1",
    "two_checks": "4k3/8/8/8/8/5B2/1P6/4K3 w - - 0 1",
    "exchange_down": "r4r1k/ppp1q1pp/2n5/2p5/2P1p1b1/1P2PNP1/PB1Q1PBP/3R2K1 w - - 0 22",
    "two_for_a_rook": "2r2rk1/p4ppp/1p6/3p4/3N4/2P1B3/P4PPP/3R2K1 w - - 0 27",
    "two_shades": "8/5pk1/3b2p1/p7/P1B4p/7P/5PP1/6K1 w - - 0 38",
    "rooks_and_passers": "8/R7/4pkp1/P6p/1Pp4P/1r3PP1/5K2/8 b - - 0 41",
    "both_castle": "r4rk1/1pp2ppp/p1nb4/3qp1B1/8/P2P1N2/1PP1QPPP/R3K2R w KQ - 0 14",
    "locked_pawns": "8/5k2/R4p2/4pPp1/4K1P1/8/1r6/8 w - - 0 50",
    "knight_checks": "r4r1k/ppp3pp/8/4N3/1q6/1Q6/PP3PPP/4R1K1 w - - 0 20",
    "checked": "4k3/8/8/8/8/8/4r3/R3K2R w KQ - 0 1",
}


def lines_of(name):
    """The lines of a file, each with its position."""
    lines = (Path(__file__).parent / name).read_text(encoding="utf-8").splitlines()
    return [tuple(line.split(": ", 1)) for line in lines if line and not line.startswith("#")]


LINES, IN_GAMES = lines_of("told_lines.txt"), lines_of("told_in_games.txt")


def told(position, text):
    """A study in which the moves of the cues are played and the text is said."""
    fen = POSITIONS[position]
    study = Study(None if fen is None else {"FEN": fen, "SetUp": "1"})
    path = " ".join(re.findall(r"\{([^}]*)\}", text))
    return read_talk(f'[[node]]\npath = "{path}"\nspoken = "{text}"\n', study)


def told_in_a_game(position, text):
    """The same, with the moves before the last of the first cues in a line of their own."""
    first = re.match(r"(\{[^}]*\})*", text).group()
    *before, last = re.findall(r"\{[^}]*\}", first) or [""]
    if not before:
        return told(position, text)
    study = told(position, f"{''.join(before)}Well.")
    path = " ".join(re.findall(r"\{([^}]*)\}", text))
    return read_talk(f'[[node]]\npath = "{path}"\nspoken = "{last}{text[len(first) :]}"\n', study)


def marked(text):
    """The text without cues and brackets, and where the words in brackets are."""
    plain = ""
    places, begun = [], 0
    for part in re.split(r"(\[\[|\]\])", re.sub(r"\{[^}]*\}", "", text)):
        if part == "[[":
            begun = len(plain)
        elif part == "]]":
            places.append((begun, len(plain)))
        else:
            plain += part
    return plain, places


@pytest.mark.parametrize(
    ("make", "position", "text"),
    [*((told, *line) for line in LINES), *((told_in_a_game, *line) for line in IN_GAMES)],
)
def test_the_wrong_words_are_queried_and_nothing_else(make, position, text):
    plain, wrong = marked(text)
    queries = read_through(make(position, text.replace("[[", "").replace("]]", ""))).queries
    missed = [plain[a:b] for a, b in wrong if not any(query.start < b and a < query.end for query in queries)]
    false = [query.quote for query in queries if not any(query.start < b and a < query.end for a, b in wrong)]
    assert (missed, false) == ([], [])
