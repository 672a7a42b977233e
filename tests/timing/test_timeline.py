"""The timeline: who is on the board at which second."""

from studyboard.model.script import SILENT
from studyboard.timing.timeline import BoardEvent, Happening, Source, Stretch, Timeline


def _stretch(node: int, start: float, end: float) -> Stretch:
    event = BoardEvent(start + 0.5, Happening.MOVE, node)
    return Stretch(node, start, end, end, 0.0, node, 0, SILENT, (), (event,))


TALK = Timeline(Source.PLANNED, 0, (_stretch(1, 0.0, 4.0), _stretch(2, 4.0, 6.0), _stretch(3, 6.0, 10.0)))


def test_the_talk_is_as_long_as_its_last_beat_says() -> None:
    assert TALK.seconds == 10.0


def test_the_beat_that_is_told_is_found_by_the_second() -> None:
    assert [TALK.stretch_at(second) for second in (0.0, 3.99, 4.0, 6.0, 99.0)] == [0, 0, 1, 2, 2]


def test_the_board_shows_the_last_move_that_was_played() -> None:
    assert [TALK.node_at(second) for second in (0.0, 0.5, 4.4, 4.5, 99.0)] == [0, 1, 1, 2, 3]


def test_an_empty_talk_has_no_beat_and_shows_where_it_opens() -> None:
    empty = Timeline(Source.PLANNED, 7, ())
    assert empty.seconds == 0.0
    assert empty.stretch_at(1.0) is None
    assert empty.node_at(1.0) == 7
