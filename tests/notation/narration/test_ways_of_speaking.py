"""Ways in which people say moves, each in a short talk."""

from __future__ import annotations

import pytest

from studyboard.notation.narration.narration import Narration
from studyboard.notation.narration.reading import read_narration


def _main(narration: Narration) -> str:
    return " ".join(narration.main_line)


def _sides(narration: Narration) -> list[tuple[str, str]]:
    return [(" ".join(s.after), " ".join(s.line)) for s in narration.side_lines]


@pytest.mark.parametrize(
    ("fen", "text", "main"),
    [
        ("4k3/8/8/8/8/8/8/R4RK1 w - - 0 1", "The a1 rook comes over to e1, check.", "Rae1+"),
        ("3qk3/8/8/8/8/8/8/3QK3 w - - 0 1", "White trades the queens, and the king takes back.", "Qxd8+ Kxd8"),
        ("3qk3/8/8/8/8/8/8/3QK3 w - - 0 1", "The queens come off. King e2.", "Qxd8+ Kxd8 Ke2"),
        ("4k3/8/3n4/4P3/8/8/8/4K3 w - - 0 1", "The knight is taken by the pawn.", "exd6"),
        (None, "King's pawn, e4, and Black does the same. Knight f3.", "e4 e5 Nf3"),
        (None, "Out comes a knight to f3, mine to f6.", "Nf3 Nf6"),
        ("4k3/8/8/8/8/8/1P5P/3QK3 w - - 0 1", "She goes to d3.", "Qd3"),
    ],
)
def test_a_move_may_be_said_in_many_ways(fen: str | None, text: str, main: str) -> None:
    assert _main(read_narration(text, fen=fen)) == main


def test_a_written_number_says_where_the_talk_is() -> None:
    narration = read_narration("1.e4 e5 2.Nf3 Nc6 (2...Nf6 3.Nxe5 is another opening) and White develops by 3.Bb5.")
    assert _main(narration) == "e4 e5 Nf3 Nc6 Bb5"
    assert _sides(narration) == [("e4 e5 Nf3", "Nf6 Nxe5")]


def test_instead_of_a_move_means_in_its_place() -> None:
    text = "e4, e5, knight f3, knight c6. Black could try bishop c5 instead of knight c6. Bishop b5, knight f6."
    assert _sides(read_narration(text))[0] == ("e4 e5 Nf3", "Bc5")


def test_two_moves_against_each_other_are_a_line_and_one_is_a_mention() -> None:
    told = "e4, e5, knight f3, knight c6. Black would like to meet bishop b5 with a6. White plays bishop c4."
    assert ("e4 e5 Nf3 Nc6", "Bb5 a6") in _sides(read_narration(told))
    assert not read_narration("e4, e5, knight f3, knight c6, ready to meet bishop b5. Bishop c4.").side_lines


def test_a_piece_that_goes_back_is_not_a_speaker_who_does() -> None:
    text = "e4, e5, knight f3, knight f6. If knight takes e5, then d6, and the knight goes back to f3. In the game d4."
    narration = read_narration(text)
    assert _main(narration) == "e4 e5 Nf3 Nf6 d4"
    assert _sides(narration) == [("e4 e5 Nf3 Nf6", "Nxe5 d6 Nf3")]


@pytest.mark.parametrize(
    "text",
    [
        "e4, e5, knight f3, knight c6. Here bishop b5 was simply strong. White played bishop c4.",
        "e4, e5, knight f3, knight c6. There are famous games with bishop b5 in this position. He played bishop c4.",
        "e4, e5, knight f3, knight c6. In the books you find bishop b5 here. He played bishop c4.",
        "e4, e5, knight f3, knight c6. My first thought was bishop b5. I played bishop c4.",
        "e4, e5, knight f3, knight c6. He thought for ten minutes about bishop b5. He played bishop c4.",
        "e4, e5, knight f3, knight c6. White should probably have played bishop b5. He played bishop c4.",
    ],
)
def test_what_others_play_or_somebody_thought_of_here_is_a_side_line(text: str) -> None:
    narration = read_narration(text)
    assert _main(narration) == "e4 e5 Nf3 Nc6 Bc4"
    assert _sides(narration) == [("e4 e5 Nf3 Nc6", "Bb5")]


def test_another_game_is_not_told_here() -> None:
    text = "e4, e5, knight f3, knight c6. Last year somebody played bishop b5 against me. He played bishop c4."
    assert not read_narration(text).side_lines


def test_a_corner_is_whichever_one_the_king_can_go_to() -> None:
    text = "e4, e5, knight f3, knight c6, bishop c4, bishop c5, castles, knight f6. I step into the corner. Castles."
    assert _main(read_narration(text)).endswith("Nf6 Kh1 O-O")
    asleep = "e4, e5, knight f3, knight c6. The rook in the corner sleeps. Bishop c4."
    assert _main(read_narration(asleep)) == "e4 e5 Nf3 Nc6 Bc4"


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("e4, e5, knight f3, knight c6. Black did something against queen h5. Bishop c4.", "queen h5"),
        ("e4, e5. He must be careful with queen h5 sorts of ideas. Knight f3.", "queen h5"),
        ("e4, e5. He has heard of bishop c4 and the quick mate. Knight f3.", "bishop c4"),
    ],
)
def test_moves_that_are_only_talked_about_are_mentions(text: str, named: str) -> None:
    narration = read_narration(text)

    start = text.index(named)
    assert not any(move.start < start + len(named) and move.end > start for move in narration.moves)
    assert any(mention.quote.startswith(named) for mention in narration.mentions)
