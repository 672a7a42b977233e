"""What each frame of a video shows."""

from __future__ import annotations

from dataclasses import replace

from studyboard.delivery.video.pictures import Card, PictureTrack
from studyboard.delivery.video.strip import Strip
from studyboard.example import example_study
from studyboard.model.positions import Positions
from studyboard.timing.plan import plan
from studyboard.timing.timeline import Happening

RATE = 30


def test_every_board_event_is_in_the_picture_within_half_a_frame():
    timeline = plan(example_study())
    track = PictureTrack(timeline, RATE)
    shown = [
        event
        for event, after in zip(timeline.events, [*timeline.events[1:], None], strict=True)
        if event.what is Happening.MOVE and (after is None or after.at > event.at + 1 / RATE)
    ]
    assert len(shown) > 50
    for event in shown:
        frame = round(event.at * RATE)
        assert abs(frame / RATE - event.at) <= 0.5 / RATE
        assert track.at(frame).node == event.node
        assert frame == 0 or track.at(frame - 1).node != event.node


def test_the_changes_are_all_that_ever_changes():
    track = PictureTrack(plan(example_study()), RATE)
    changes = dict(track.changes())
    assert 0 in changes
    current = changes[0]
    for frame in range(track.frames):
        current = changes.get(frame, current)
        assert track.at(frame) == current, frame


def test_a_think_pause_counts_whole_seconds_down_to_one():
    study = example_study()
    timeline = plan(study)
    track = PictureTrack(timeline, RATE)
    pause = next(stretch for stretch in timeline.stretches if stretch.think)
    left = [picture.think for frame in range(track.frames) if (picture := track.at(frame)).think is not None]
    asked = round(pause.think)
    assert sorted(set(left[: asked * RATE]), reverse=True) == list(range(asked, 0, -1))
    assert left[: asked * RATE] == sorted(left[: asked * RATE], reverse=True)


def test_the_title_stands_while_the_audience_is_greeted_and_a_card_while_it_is_thanked():
    track = PictureTrack(plan(example_study()), RATE)
    assert track.at(0).card is Card.TITLE
    assert track.at(0).cover == 1.0
    assert track.at(track.frames - 1).card is Card.CLOSING
    assert track.at(track.frames // 2).card is None


def test_a_piece_is_on_its_way_for_a_fifth_of_a_second():
    timeline = plan(example_study())
    track = PictureTrack(timeline, RATE)
    event = next(e for e in timeline.events if e.what is Happening.MOVE and e.at > 20)
    first = round(event.at * RATE)
    moving = [track.at(first + age).progress for age in range(7)]
    assert moving[:6] == sorted(moving[:6])
    assert all(0 < share < 1 for share in moving[:6])
    assert moving[6] == 1.0
    still = PictureTrack(timeline, RATE, still_moves=True)
    assert still.at(first).progress == 1.0


def test_the_strip_never_shows_a_move_before_it_is_told():
    study = example_study()
    track = PictureTrack(plan(study), RATE)
    strip = Strip(study, Positions(study), track.steps)
    seen: set[int] = set()
    for step, node in enumerate(track.steps):
        seen.update(study.path(node))
        rows = strip.rows(step, node, 14, 3)
        assert {row.node for row in rows} <= seen
        if node != study.root:
            assert [row.node for row in rows if row.current] == [node]


def test_a_line_inside_a_line_leaves_the_moves_that_lead_to_it_in_sight():
    study = example_study()
    track = PictureTrack(plan(study), RATE)
    strip = Strip(study, Positions(study), track.steps)
    for step, node in enumerate(track.steps):
        for columns in (1, 2, 3):
            rows = {row.node: row for row in strip.rows(step, node, 14, columns)}
            assert all(row.column < columns for row in rows.values())
            if columns == 3 and node != study.root:
                parent = study.nodes[node].parent
                assert parent == study.root or parent in rows
                assert all(row.lit == (row.node in study.path(node)) for row in rows.values())


def test_a_move_at_the_moment_of_a_return_is_shown_as_a_return():
    study = example_study()
    timeline = plan(study)
    for place, stretch in enumerate(timeline.stretches):
        for back in stretch.events:
            was = timeline.node_at(back.at - 0.01)
            children = study.nodes[back.node].children
            if back.what is Happening.BACK and children and children[0] != was and not study.on_main_line(was):
                together = stretch.showing((back, replace(back, what=Happening.MOVE, node=children[0])), stretch.end)
                told = (*timeline.stretches[:place], together)
                picture = PictureTrack(replace(timeline, stretches=told), RATE).at(round(back.at * RATE) + 1)
                assert (picture.node, picture.came_from, picture.returned) == (children[0], was, True)
                return
    raise AssertionError("the example comes back from a side-line")
