"""Material, pawns, castling and forced moves in many words: true ones are never queried, false ones always are."""

import tomllib
from pathlib import Path

import pytest

from studyboard.reading.read_through import judge

SAID = tomllib.loads((Path(__file__).parent / "phrasings.toml").read_text(encoding="utf-8"))


@pytest.mark.parametrize("family", SAID)
def test_what_is_true_or_not_said_of_the_board_is_never_queried(family):
    fen = SAID[family]["fen"]
    wrong = {said: [q.why for q in judge(fen, said).queries] for said in SAID[family]["true"]}
    assert {said: whys for said, whys in wrong.items() if whys} == {}


@pytest.mark.parametrize("family", [name for name, family in SAID.items() if family["false"]])
def test_what_is_false_is_queried(family):
    fen = SAID[family]["fen"]
    assert [said for said in SAID[family]["false"] if not judge(fen, said).queries] == []
