"""A talk written as data becomes the study that it describes."""

from __future__ import annotations

import pytest

from studyboard.model.marks import Mark, MarkKind
from studyboard.model.node import Place
from studyboard.model.positions import Positions
from studyboard.model.script import Cue, Part
from studyboard.model.study import Study
from studyboard.notation.pgn_reader import read_games
from studyboard.notation.talk_file import TalkFileError, read_talk

TALK = """
slot = 480
language = "en_GB"

[lines]
greeting = "Good evening."
closing = "That was it."

[[node]]
path = ""
spoken = "Here we start."

[[node]]
path = "e4 e5"
spoken = "{e4}A pawn, and {mark 1}another."
marks = ["threat d8 h4", "target e5", "route f3 g5 f7", "key d5", "key square d4", "guard e1 e8"]
note = "For print."
nags = [1, 14]
think = 6
intended = 9.5

[[node]]
path = "e4 c5"
spoken = "Or {c5}this."
telling = "before"
name = "The other way"

[[node]]
path = "e4 c5 Nf3 d6"
telling = "hidden"
"""


def game() -> Study:
    return next(read_games('[White "Aino Salo"]\n\n1. e4 e5 2. Nf3 *')).study


def test_a_talk_is_laid_over_its_game():
    given = game()
    talk = read_talk(TALK, given)
    assert len(given.nodes) == 4
    assert talk.headers == given.headers
    assert talk.slot == 480.0
    assert talk.language == "en_GB"
    assert talk.line(Part.GREETING).spoken.text == "Good evening."
    assert talk.line(Part.THANKS).spoken.text == ""
    assert talk.nodes[0].spoken.text == "Here we start."
    e5 = talk.nodes[2]
    assert e5.spoken.text == "A pawn, and another."
    assert e5.spoken.cues == (Cue(0, node=1), Cue(3, mark=0))
    assert (e5.note, e5.nags, e5.think, e5.intended) == ("For print.", (1, 14), 6.0, 9.5)
    assert e5.marks == (
        Mark(MarkKind.THREAT, (59, 31)), Mark(MarkKind.TARGET, (36,)), Mark(MarkKind.ROUTE, (21, 38, 53)),
        Mark(MarkKind.KEY_SQUARE, (35,)), Mark(MarkKind.KEY_SQUARE, (27,)), Mark(MarkKind.GUARD, (4, 60)),
    )  # fmt: skip


def test_moves_that_are_not_in_the_game_become_side_lines():
    talk = read_talk(TALK, game())
    positions = Positions(talk)
    assert [positions.san(node.id) for node in talk.branch(talk.root)][1:] == ["e4", "e5", "Nf3", "c5", "Nf3", "d6"]
    c5 = talk.nodes[talk.nodes[1].children[1]]
    assert (c5.name, c5.telling.place) == ("The other way", Place.BEFORE)
    assert talk.next_id == len(talk.nodes)


def test_an_empty_talk_changes_nothing():
    talk = read_talk("", game())
    assert talk.nodes == game().nodes
    assert talk.slot is None
    assert talk.language == ""


@pytest.mark.parametrize(
    ("toml", "sentence"),
    [
        ("slot = ", "not valid TOML"),
        ("language = 3", "“language” should be"),
        ("slot = -3", "“slot” should be a number of seconds"),
        ("slot = true", "“slot” should be a number of seconds"),
        ('slot = "long"', "“slot” should be a number of seconds"),
        ("sloot = 3", "nothing called “sloot”"),
        ("lines = 3", "“lines” should be a table"),
        ('[lines]\nhello = "x"', "“lines” has nothing called “hello”"),
        ("[lines]\ngreeting = 3", "“greeting” should be a text"),
        ("node = 3", "“node” should be written as [[node]]"),
        ("node = [3]", "“node” should be a table"),
        ('[[node]]\npath = "e4 e9"', "“e9” is not a legal move after 1. e4."),
        ('[[node]]\npath = "e4 d4"', "at “e4 d4”: “d4” is not a legal move after 1. e4."),
        ('[[node]]\npath = "e4"\nsays = "x"', "A node has nothing called “says”"),
        ('[[node]]\npath = "e4"\nspoken = "{e5}x"', "“{e5}” is no move on the way"),
        ('[[node]]\npath = "e4"\nspoken = 3', "“spoken” should be a text"),
        ('[[node]]\npath = "e4"\nmarks = "threat e4 e5"', "“marks” should be written as"),
        ('[[node]]\npath = "e4"\nmarks = ["arrow e4 e5"]', "“arrow e4 e5” is no mark"),
        ('[[node]]\npath = "e4"\nmarks = ["threat e4 e9"]', "names “e9”, which is no square"),
        ('[[node]]\npath = "e4"\nmarks = ["threat e4"]', "cannot have 1 squares"),
        ('[[node]]\npath = "e4"\nnags = [256]', "numbers from 0 to 255"),
        ('[[node]]\npath = "e4"\nthink = -1', "“think” should be a number of seconds"),
        ('[[node]]\npath = "e4"\nintended = 0', "“intended” should be a number of seconds"),
        ('[[node]]\npath = "e4"\ntelling = "moved"', "“telling” should be “after” or “before” or “hidden”"),
        ('[[node]]\npath = "e4"\ntelling = []', "“telling” should be"),
    ],
)
def test_a_mistake_in_a_talk_is_told_in_a_sentence_with_its_place(toml, sentence):
    with pytest.raises(TalkFileError) as refused:
        read_talk(toml, game())
    assert sentence in str(refused.value)


def test_a_move_that_can_be_two_is_asked_about():
    study = next(read_games("1. d4 d5 2. Nf3 a6 *")).study
    with pytest.raises(TalkFileError, match="“Nd2” can be several moves after"):
        read_talk('[[node]]\npath = "d4 d5 Nf3 a6 Nd2"', study)
