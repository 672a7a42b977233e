import chess

from studyboard.board.marking import clear_marks, drawn_mark, remove_mark, toggle_mark
from studyboard.model.edits import Edit, apply
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.node import Node
from studyboard.model.script import Cue, SpokenLine
from studyboard.model.study import Study

THREAT = Mark(MarkKind.THREAT, (chess.D8, chess.H4))
TARGET = Mark(MarkKind.TARGET, (chess.E5,))


def node(*marks: Mark, spoken: SpokenLine | None = None) -> Node:
    return Node(0, None, None, marks=marks, spoken=spoken or SpokenLine())


def after(start: Node, edit: Edit) -> Node:
    study = Study()
    study.nodes[0] = start
    inverse, _ = apply(study, edit)
    result = study.nodes[0]
    apply(study, inverse)
    assert study.nodes[0] == start
    return result


def test_a_line_needs_two_squares_and_a_square_mark_is_where_the_drawing_ends():
    assert drawn_mark(MarkKind.THREAT, chess.D8, chess.H4) == THREAT
    assert drawn_mark(MarkKind.GUARD, chess.D8, chess.D8) is None
    assert drawn_mark(MarkKind.ROUTE, chess.D8, None) is None
    assert drawn_mark(MarkKind.TARGET, chess.E5, None) == TARGET
    assert drawn_mark(MarkKind.TARGET, chess.A1, chess.E5) == TARGET


def test_the_same_mark_again_wipes_it_away():
    drawn = after(node(TARGET), toggle_mark(node(TARGET), THREAT))
    assert drawn.marks == (TARGET, THREAT)
    assert after(drawn, toggle_mark(drawn, TARGET)).marks == (THREAT,)


def test_a_route_goes_on_from_its_end_and_gives_up_its_last_leg():
    short = node(Mark(MarkKind.ROUTE, (chess.B1, chess.C3)))
    leg = Mark(MarkKind.ROUTE, (chess.C3, chess.D5))
    longer = after(short, toggle_mark(short, leg))
    assert longer.marks == (Mark(MarkKind.ROUTE, (chess.B1, chess.C3, chess.D5)),)
    assert after(longer, toggle_mark(longer, leg)) == short
    assert after(short, toggle_mark(short, short.marks[0])).marks == ()


def test_a_route_from_elsewhere_is_another_route():
    first = node(Mark(MarkKind.ROUTE, (chess.B1, chess.C3)))
    other = Mark(MarkKind.ROUTE, (chess.G1, chess.F3))
    assert after(first, toggle_mark(first, other)).marks == (*first.marks, other)


def test_cues_follow_their_marks_when_one_goes():
    line = SpokenLine("first this then that", (Cue(0, mark=0), Cue(1, node=7), Cue(3, mark=1)))
    left = after(node(THREAT, TARGET, spoken=line), remove_mark(node(THREAT, TARGET, spoken=line), 0))
    assert left.marks == (TARGET,)
    assert left.spoken.cues == (Cue(1, node=7), Cue(3, mark=0))


def test_wiping_all_marks_leaves_the_cues_of_moves():
    line = SpokenLine("first this then that", (Cue(0, mark=0), Cue(1, node=7)))
    start = node(THREAT, spoken=line)
    left = after(start, clear_marks(start))
    assert left.marks == ()
    assert left.spoken.cues == (Cue(1, node=7),)
