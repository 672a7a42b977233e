"""Move numbers, lengths and results in many words, in a game of thirty-four moves that Black won."""

import itertools
import tomllib
from pathlib import Path

import pytest

from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.notation.pgn_reader import read_games
from studyboard.notation.talk_file import read_talk
from studyboard.reading.findings import Verdict
from studyboard.reading.read_through import read_through

TALK = tomllib.loads((Path(__file__).parents[1] / "slips" / "tuning" / "long_walk.toml").read_text(encoding="utf-8"))
TALK_OF_BLACK = tomllib.loads(
    (Path(__file__).parents[1] / "slips" / "tuning" / "two_queens_gone.toml").read_text(encoding="utf-8")
)
FOURTEENTH = 27


def queries(said: str, ply: int = 0) -> list[str]:
    """What is queried in a line: of the node so many half-moves into the game, of the closing for 0."""
    study = next(read_games(TALK["pgn"])).study
    if not ply:
        return [q.quote for q in read_through(read_talk(f"[lines]\nclosing = {said!r}\n", study)).queries]
    path = " ".join(_sans(study)[:ply])
    talk = read_talk(f"[[node]]\npath = {path!r}\nspoken = {said!r}\n", study)
    return [q.quote for q in read_through(talk).queries]


def _sans(study: Study) -> list[str]:
    positions, line = Positions(study), list(study.main_line())
    return [
        positions.board(before).san(move)
        for before, node in itertools.pairwise(line)
        if (move := study.nodes[node].move) is not None
    ]


NUMBERS = "On move {}, this happens.|It is move {}.|This is move {}.|This is move number {}.|We are on move {}.|We have reached move {}.|Move {}, and nobody has castled.|At move {} White steps back.|Here, at move {}, the king steps back.|Now it is move {} already.|In move {} the king goes back.|It is only move {}.|And so to move {}."  # noqa: E501
ORDINALS = "This is the {} move.|With his {} move, White steps back.|White's {} move.|It's the {} move of the game.|On the {} move the king goes back."  # noqa: E501
PLAYED = "After {} moves the position is this.|{} moves have been played.|We are {} moves into the game.|We're only {} moves in."  # noqa: E501
WON = "{0} won.|{0} won the game.|{0} wins.|And {0} won.|The game went to {0}.|A win for {0}.|A fine win for {0}.|The point went to {0}.|The full point goes to {0}.|Victory for {0}.|{0} is the winner.|The winner is {0}.|{0} beat {1}.|{0} took the point.|The title went to {0}.|A point for {0}, then.|{1} resigned.|Here {1} resigned.|{1} gave up.|{1} threw in the towel.|{1} stopped the clocks.|{1} lost.|{0} won the race by a tempo."  # noqa: E501
DRAWN = "The game was drawn.|A draw.|It ended in a draw.|They agreed a draw.|Draw agreed.|Peace was signed."
LENGTHS = "The game lasted {} moves.|The game took {} moves.|{} moves in all.|It was over after {} moves.|It was over in {} moves.|White resigned on move {}.|On move {} White resigned.|The end came on move {}.|That was move {}.|It ended on move {}.|A game of {} moves.|Black won in {} moves."  # noqa: E501


@pytest.mark.parametrize("said", [s.format("fourteen") for s in NUMBERS.split("|")] + [s.format("fourteenth") for s in ORDINALS.split("|")])  # fmt: skip  # noqa: E501
def test_the_right_number_of_the_move_is_not_queried(said):
    assert queries(said, FOURTEENTH) == []


@pytest.mark.parametrize("said", [s.format("twelve") for s in NUMBERS.split("|")] + [s.format("sixteenth") for s in ORDINALS.split("|")])  # fmt: skip  # noqa: E501
def test_a_wrong_number_of_the_move_is_queried(said):
    assert queries(said, FOURTEENTH)


@pytest.mark.parametrize("said", PLAYED.split("|"))
def test_how_many_moves_have_been_played_is_counted(said):
    assert queries(said.format("Thirteen").capitalize(), FOURTEENTH) == []
    assert queries(said.format("sixteen").capitalize(), FOURTEENTH)


@pytest.mark.parametrize("said", WON.split("|"))
def test_who_won_is_known_from_the_result(said):
    assert queries(said.format("Black", "White")) == []
    assert queries(said.format("Thea Marsh", "Osric Vane")) == []
    assert queries(said.format("White", "Black"))
    assert queries(said.format("Osric Vane", "Thea Marsh"))


@pytest.mark.parametrize("said", DRAWN.split("|"))
def test_a_draw_that_was_none_is_queried(said):
    assert queries(said)


@pytest.mark.parametrize("said", LENGTHS.split("|"))
def test_the_length_of_the_game_is_counted(said):
    assert queries(said.format("thirty-four")) == []
    assert queries(said.format("twenty-nine"))


@pytest.mark.parametrize(
    "said",
    [
        "The other game was drawn.",
        "Last year White won.",
        "White could have won.",
        "Black would have lost.",
        "He gave up a pawn.",
        "White lost a tempo, then another.",
        "It takes ten moves to see why.",
        "In two moves everything had changed.",
    ],
)
def test_other_games_and_other_numbers_are_left_alone(said):
    assert queries(said) == []


def test_a_game_without_a_result_is_judged_by_its_last_position():
    study = next(read_games("1. f3 e5 2. g4 Qh4#")).study
    talk = read_talk('[lines]\nclosing = "White won."\n', study)
    found = read_through(talk)
    assert [query.verdict for query in found.queries] == [Verdict.CONTRADICTED]


def test_i_am_the_player_whom_the_greeting_names():
    study = next(read_games("1. e4 d5 2. exd5 Nf6")).study
    lines = '[lines]\ngreeting = "I was Black."\n[[node]]\npath = "e4 d5 exd5"\nspoken = "{exd5}I am a pawn down."\n'
    assert read_through(read_talk(lines, study)).queries == ()
    study = next(read_games("1. e4 d5 2. exd5 Nf6")).study
    wrong = lines.replace("I was Black", "I had the white pieces")
    assert [query.quote for query in read_through(read_talk(wrong, study)).queries] == ["I am a pawn down"]


@pytest.mark.parametrize(
    ("true", "false"),
    [
        ("I'm a pawn up.", "I'm a pawn down."),
        ("I've got eight pawns now.", "I've got seven pawns now."),
        ("He's a pawn down.", "He's a pawn up."),
        ("He's got seven pawns now.", "He's got eight pawns now."),
        ("We're a pawn up.", "We're a pawn down."),
        ("They've got seven pawns left.", "They've got eight pawns left."),
    ],
)
def test_a_name_joined_with_its_verb_gives_the_side(true, false):
    for said, wrong in ((true, False), (false, True)):
        study = next(read_games("1. e4 d5 2. exd5 Nf6")).study
        node = f'[[node]]\npath = "e4 d5 exd5"\nspoken = "{{exd5}}I take. {said}"\n'
        talk = read_talk(f'[lines]\ngreeting = "I was White."\n{node}', study)
        assert bool(read_through(talk).queries) is wrong, said


@pytest.mark.parametrize(
    ("who", "wrong"),
    [("played Black", []), ("had White", ["I'm a pawn down"]), ("had the white pieces", ["I'm a pawn down"])],
)
def test_i_am_the_guest_whom_the_greeting_gives_a_side(who, wrong):
    study = next(read_games("1. e4 d5 2. exd5 Nf6")).study
    greeting = f"I'm Ada Quill, and with me is Bo Farrow, who {who}."
    node = '[[node]]\npath = "e4 d5 exd5"\nspoken = "{exd5}But for now I\'m a pawn down."\n'
    talk = read_talk(f'[lines]\ngreeting = "{greeting}"\n{node}', study)
    assert [query.quote for query in read_through(talk).queries] == wrong


def test_what_is_told_in_the_past_is_judged_by_the_board_then():
    study = next(read_games("1. e4 d5 2. exd5 Nf6")).study
    node = '[[node]]\npath = "e4 d5 exd5"\nspoken = "{exd5}White took on d5 and was two pawns up."\n'
    assert [query.quote for query in read_through(read_talk(node, study)).queries] == ["two pawns up"]


MINE = [
    "I still have two rooks, he has one.",
    "He has only one rook now.",
    "I haven't castled.",
    "It's his move now.",
    "I was a rook and a pawn up.",
]
NOT_MINE = [
    "He has both rooks, I have one.",
    "I still have two rooks, he has two.",
    "I had castled.",
    "It's my move now.",
    "I'm the exchange to the good.",
    "I had lost the right to castle.",
    "White took the pawn, I took the rook, and had two queens.",
]
GAMBIT = "e4 e5 Nf3 Nc6 Bc4 Bc5 b4 Bxb4 c3 Ba5 d4 exd4 O-O Bb6 cxd4 d6 Ba3 Bg4 e5 Bxd4 exd6 Bxa1"


def own_queries(said: str) -> list[str]:
    """What is queried after a rook was won, in a talk by the player of the black pieces."""
    study = next(read_games(TALK_OF_BLACK["pgn"])).study
    node = f"[lines]\ngreeting = 'I was Black.'\n[[node]]\npath = '{GAMBIT}'\nspoken = {'{Bxa1}' + said!r}\n"
    return [query.quote for query in read_through(read_talk(node, study)).queries]


@pytest.mark.parametrize("said", MINE)
def test_a_player_may_say_i_and_he(said):
    assert own_queries(said) == []


@pytest.mark.parametrize("said", NOT_MINE)
def test_a_player_who_says_i_is_held_to_it(said):
    assert own_queries(said)
