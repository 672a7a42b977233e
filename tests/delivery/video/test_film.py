"""The video as a file, read back by the libraries of FFmpeg."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import av
import numpy as np
import pytest

from studyboard.delivery.errors import DeliveryCancelledError, DeliveryError
from studyboard.delivery.video.film import Frames, write_video
from studyboard.delivery.video.options import Composition, Shape, VideoOptions
from studyboard.delivery.video.pictures import Card
from studyboard.example import example_study
from studyboard.model.edits import ChangeHeaders, ChangeLine, apply
from studyboard.model.script import FreeLine, Part, SpokenLine
from studyboard.model.study import Study
from studyboard.timing.plan import plan
from studyboard.timing.timeline import Happening, Source, Timeline

SMALL = VideoOptions(lines=720, rate=25)


@pytest.fixture(scope="module")
def opening():
    """The study of the example and the first beats of its plan, without the greeting."""
    study = example_study()
    stretches = plan(study).stretches[1:6]
    start = stretches[0].start
    moved = [replace(_from_zero(one), since=0.0).moved(one.start - start) for one in stretches]
    return study, Timeline(Source.PLANNED, study.root, tuple(moved))


def _from_zero(stretch):
    return replace(
        stretch,
        start=0.0,
        speech_end=stretch.speech_end - stretch.start,
        end=stretch.end - stretch.start,
        said=tuple(
            replace(word, at=word.at - stretch.start, until=word.until - stretch.start) for word in stretch.words
        ),
        shown=tuple(replace(event, at=event.at - stretch.start) for event in stretch.events),
    )


class Clicks:
    """Silence with a click at each of these seconds."""

    rate = 48_000
    notice = ""

    def __init__(self, seconds: float, clicks: list[float]) -> None:
        self.sound = np.zeros(round(seconds * self.rate), "<i2")
        for at in clicks:
            place = round(at * self.rate)
            self.sound[place : place + 960] = 20_000 * np.sin(np.arange(960) * 0.3)

    def chunks(self):
        for first in range(0, len(self.sound), 30_000):
            yield self.sound[first : first + 30_000].tobytes()


def test_the_video_has_the_length_the_size_and_the_tags_that_were_asked_for(opening, tmp_path):
    study, timeline = opening
    write_video(study, timeline, tmp_path / "talk.mp4", SMALL)
    with av.open(str(tmp_path / "talk.mp4")) as film:
        stream = film.streams.video[0]
        frames = list(film.decode(stream))
        assert stream.codec_context.name == "h264"
        assert (stream.width, stream.height, stream.pix_fmt) == (1280, 720, "yuv420p")
        assert (frames[0].colorspace, frames[0].color_primaries, frames[0].color_trc) == (1, 1, 1)
        assert abs(len(frames) / 25 - timeline.seconds) <= 1 / 25
        steps = {after.pts - before.pts for before, after in pairwise(frames)}
        assert len(steps) == 1
        assert film.metadata["title"].startswith("Pell – Garvey")
        assert not film.streams.audio
    head = (tmp_path / "talk.mp4").read_bytes()
    assert head.index(b"moov") < head.index(b"mdat")


def test_sound_and_picture_change_at_the_same_frame(opening, tmp_path):
    study, timeline = opening
    moves = [event.at for event in timeline.events if event.what is Happening.MOVE]
    options = replace(SMALL, still_moves=True, composition=Composition.BOARD)
    write_video(study, timeline, tmp_path / "talk.mp4", options, narration=Clicks(timeline.seconds, moves))
    with av.open(str(tmp_path / "talk.mp4")) as film:
        changed, before = [], None
        for frame in film.decode(film.streams.video[0]):
            grey = frame.to_ndarray(format="gray8")[::4, ::4].astype(int)
            # A pawn that goes to another square changes some thousandths of the picture.
            if before is not None and (abs(grey - before) > 30).mean() > 0.001:
                changed.append(float(frame.time))
            before = grey
    with av.open(str(tmp_path / "talk.mp4")) as film:
        pieces = [(frame.time, frame.to_ndarray()[0]) for frame in film.decode(film.streams.audio[0])]
    start = pieces[0][0]
    sound = np.concatenate([samples for _, samples in pieces])
    loud = np.flatnonzero(abs(sound) > 0.2)
    heard = [start + loud[0] / 48_000]
    heard += [start + after / 48_000 for last, after in pairwise(loud) if after - last > 4_800]
    assert len(heard) == len({round(at * 25) for at in moves})
    # The first move is on the board from the first frame on.
    assert abs(heard[0]) <= 1 / 25
    for at in heard[1:]:
        assert min(abs(at - seen) for seen in changed) <= 1 / 25


def test_only_changes_are_written_where_the_frame_rate_may_vary(opening, tmp_path):
    study, timeline = opening
    write_video(study, timeline, tmp_path / "all.mp4", SMALL)
    write_video(study, timeline, tmp_path / "some.mp4", replace(SMALL, constant=False))
    counts, ends = [], []
    for name in ("all.mp4", "some.mp4"):
        with av.open(str(tmp_path / name)) as film:
            times = [float(frame.time) for frame in film.decode(film.streams.video[0])]
            counts.append(len(times))
            ends.append(times[-1])
    assert counts[1] < counts[0] / 2
    assert abs(ends[0] - ends[1]) < 1 / 25


def test_chapters_are_in_the_file(tmp_path):
    study = example_study()
    timeline = plan(study)
    short = Timeline(timeline.source, timeline.opening_node, timeline.stretches[:12])
    write_video(study, short, tmp_path / "talk.mp4", replace(SMALL, constant=False))
    with av.open(str(tmp_path / "talk.mp4")) as film:
        found = film.chapters()
    assert found[0]["start"] == 0
    assert len(found) >= 2


def test_stopping_ends_it_at_once(opening, tmp_path):
    study, timeline = opening
    told = []
    with pytest.raises(DeliveryCancelledError):
        write_video(
            study, timeline, tmp_path / "talk.mp4", SMALL, progress=told.append, cancelled=lambda: len(told) > 3
        )
    assert told == sorted(told)


def test_a_talk_without_length_has_no_video_and_says_why(tmp_path):
    with pytest.raises(DeliveryError, match="no length yet"):
        write_video(Study(), Timeline(Source.PLANNED, 0, ()), tmp_path / "talk.mp4")


@pytest.mark.parametrize("shape", list(Shape))
@pytest.mark.parametrize("composition", list(Composition))
def test_everything_lies_inside_the_picture_and_nothing_over_the_board(shape, composition):
    from studyboard.delivery.video.layout import places

    for captions in (False, True):
        options = VideoOptions(shape=shape, composition=composition, captions=captions)
        width, height = options.size
        lie = places(options)
        assert lie.board.width == lie.board.height
        assert lie.board.width % 8 == 0
        for box in (lie.board, lie.header, lie.notice, lie.strip, lie.band):
            if box is not None:
                assert 0 <= box.x < box.right <= width
                assert 0 <= box.y < box.bottom <= height
        for box in (lie.header, lie.notice, lie.strip, lie.band):
            if box is not None:
                apart = box.right <= lie.board.x or box.y >= lie.board.bottom or box.bottom <= lie.board.y
                assert apart, (shape, composition, captions, box)


def test_a_preview_shows_the_board_of_its_second():
    study = example_study()
    timeline = plan(study)
    canvas, picture = Frames(study, timeline, SMALL).at(200.0)
    assert picture.node == timeline.node_at(200.0)
    assert len(set(bytes(canvas.bgra()[:: 4 * 97]))) > 10


def _ink_below(canvas) -> float:
    """How much of the lowest eighth of a picture is not paper."""
    pixels = np.frombuffer(canvas.bgra(), np.uint8).reshape(canvas.height, canvas.width, 4)
    grey = pixels[:, :, :3].astype(int).mean(axis=2)
    band = grey[-grey.shape[0] // 8 :]
    return float((abs(band - band[0, 0]) > 40).mean())


def test_words_in_the_picture_stand_on_the_title_and_the_closing_card_too():
    study = example_study()
    timeline = plan(study)
    for seconds in (1.0, timeline.stretches[-1].start + 2.0):
        worded, picture = Frames(study, timeline, replace(SMALL, captions=True)).at(seconds)
        assert picture.card is not None
        assert picture.cover == 1.0
        assert picture.caption
        assert _ink_below(worded) > 0.002
        silent, _ = Frames(study, timeline, SMALL).at(seconds)
        assert _ink_below(silent) == 0.0


def test_where_nothing_is_known_of_a_game_the_board_stays_in_place_of_an_empty_card():
    study = Study()
    bare = (("SetUp", "1"), ("FEN", "6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - - 0 1"), ("White", "?"), ("Event", "?"))
    apply(study, ChangeHeaders(bare))
    apply(study, ChangeLine(Part.CLOSING, FreeLine(SpokenLine("The rook gives mate on the back rank."))))
    timeline = plan(study)
    _, picture = Frames(study, timeline, SMALL).at(timeline.seconds / 2)
    assert picture.card is None
    apply(study, ChangeHeaders((*bare[:2], ("White", "Halvorse, Maja"))))
    _, picture = Frames(study, timeline, SMALL).at(timeline.seconds / 2)
    assert picture.card is Card.CLOSING
