"""Which position stands for a study."""

from __future__ import annotations

import pytest

from studyboard.delivery.errors import DeliveryError
from studyboard.delivery.still_crop import Crop, decisive_crop
from studyboard.delivery.still_moment import node_at, still_node
from studyboard.model.marks import MarkKind
from studyboard.model.positions import Positions
from studyboard.model.study import Study


def chosen(study: Study, **options: bool) -> int:
    return still_node(study, Positions(study), **options)


def test_the_first_think_pause_else_the_most_marks(author, mark):
    main = list(author.study.main_line())
    assert chosen(author.study) == main[6]
    author.put(main[6], think=0.0)
    assert chosen(author.study) == main[8]
    author.put(main[4], marks=(mark(MarkKind.TARGET, "f7"), mark(MarkKind.KEY_SQUARE, "d4")))
    assert chosen(author.study) == main[4]


def bare(author) -> list[int]:
    for node in list(author.study.nodes.values()):
        author.put(node.id, think=0.0, marks=(), nags=())
    return list(author.study.main_line())


def test_without_either_it_is_before_the_brilliant_move_or_after_the_blunder(author):
    main = bare(author)
    author.put(main[8], nags=(3,))
    assert chosen(author.study) == main[7]
    author.put(main[8], nags=())
    author.put(main[7], nags=(4,))
    assert chosen(author.study) == main[7]


def test_without_glyphs_it_is_before_the_greatest_gain_that_lasts(author):
    quiet = type(author)({})
    main = quiet.play(0, "e4 e5 Nf3 d6 Nxe5 dxe5 Bc4 Bg4 Qxg4 Nf6 Qg3 Nxe4 Qxe5+")
    # 3. Nxe5 takes a pawn and is taken; 5. Qxg4 takes a bishop for good.
    assert chosen(quiet.study) == main[7]


def test_a_quiet_game_is_shown_late(author):
    quiet = type(author)({})
    main = quiet.play(0, "Nf3 Nf6 g3 g6 Bg2 Bg7 O-O O-O d3 d6")
    assert chosen(quiet.study) == main[5]


def test_the_end_of_the_game_is_only_shown_where_it_may_be(author, mark):
    main = bare(author)
    author.put(main[-1], marks=(mark(MarkKind.TARGET, "e1"),))
    assert chosen(author.study) != main[-1]
    assert chosen(author.study, spoilers=True) == main[-1]


def test_a_study_of_one_position_shows_that(author):
    assert chosen(Study()) == 0
    assert chosen(Study({"FEN": "7k/5Q2/6K1/8/8/8/8/8 b - - 0 1", "SetUp": "1"})) == 0


@pytest.mark.parametrize("move", ["3... Nd4", "3…Nd4", "Nd4", "knight d4"])
def test_a_position_is_chosen_by_its_move_as_one_writes_or_says_it(author, move):
    assert node_at(author.study, Positions(author.study), move) == list(author.study.main_line())[6]


def test_a_move_of_the_main_line_comes_before_one_of_a_side_line(author):
    side = author.play(0, "d4 d5 Nf3")
    assert node_at(author.study, Positions(author.study), "Nf3") == list(author.study.main_line())[3]
    assert node_at(author.study, Positions(author.study), "d4") == side[0]
    with pytest.raises(DeliveryError, match=r"Write it with its number, such as “24\. Qh6\+”"):
        node_at(author.study, Positions(author.study), "a4")


def test_a_close_picture_shows_what_is_marked_and_turns_with_the_board(author, mark):
    main = list(author.study.main_line())
    positions = Positions(author.study)
    author.put(main[2], marks=(mark(MarkKind.TARGET, "a1"), mark(MarkKind.TARGET, "b2")))
    node, board = author.study.nodes[main[2]], positions.board(main[2])
    assert decisive_crop(board, node, 400, 400, (100,)).row == 4
    assert decisive_crop(board, node, 200, 200, (100,)) == Crop(0, 6, 100)
    assert decisive_crop(board, node, 200, 200, (100,), flipped=True) == Crop(6, 0, 100)
    assert decisive_crop(board, node, 800, 800, (100,)) == Crop(0, 0, 100)


def test_a_picture_comes_no_closer_than_shows_most_of_what_matters(author):
    position = type(author)({"FEN": "7k/8/8/8/8/8/8/K7 w - - 0 1", "SetUp": "1"})
    board, node = Positions(position.study).board(0), position.study.nodes[0]
    assert decisive_crop(board, node, 800, 800, (200, 160, 100)).side == 100
    crowded = Positions(author.study).board(0)
    assert decisive_crop(crowded, author.study.nodes[0], 800, 800, (400, 100)) == Crop(0, 0, 100)


def test_what_does_not_fit_in_whole_squares_is_cut_at_one_side(author, mark):
    main = list(author.study.main_line())
    author.put(main[2], marks=(mark(MarkKind.TARGET, "h1"), mark(MarkKind.TARGET, "g1")))
    node, board = author.study.nodes[main[2]], Positions(author.study).board(main[2])
    crop = decisive_crop(board, node, 500, 500, (200,))
    assert (crop.column, crop.row) == (5.5, 5.5)


def test_the_king_in_danger_is_looked_at(author):
    """Two kings far apart and nothing else that matters: the close picture is of one of them."""
    bare = type(author)({"FEN": "7k/8/8/8/8/8/8/K7 w - - 0 1", "SetUp": "1"})
    assert decisive_crop(Positions(bare.study).board(0), bare.study.nodes[0], 300, 300, (100,)) == Crop(5, 0, 100)
    (moved,) = bare.play(0, "Kb1")
    assert decisive_crop(Positions(bare.study).board(moved), bare.study.nodes[moved], 200, 200, (100,)).row == 0
