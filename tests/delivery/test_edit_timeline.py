"""The edit timeline, read back by OpenTimelineIO's own reader."""

from __future__ import annotations

import json
import sys
import wave
from collections.abc import Callable, Iterator
from pathlib import Path
from urllib.parse import unquote

import av
import numpy as np
import opentimelineio as otio
import pytest

from studyboard.delivery.deliver import deliver
from studyboard.delivery.errors import DeliveryError
from studyboard.delivery.items.timeline import TimelineOptions
from studyboard.delivery.product import Item
from studyboard.delivery.video.options import VideoOptions
from studyboard.model.edits import ChangeLeft, ChangePace, apply
from studyboard.model.left_query import LeftQuery
from studyboard.model.positions import Positions
from studyboard.model.script import Pace
from studyboard.model.takes import SoundTime, TakeEvent
from studyboard.notation.labels import move_label
from studyboard.reading.read_through import read_through
from studyboard.sound.narration import TalkNarration
from studyboard.store.study_file import StudyFile
from studyboard.timing.plan import plan
from studyboard.timing.recorded import recorded_talk, talk
from studyboard.timing.timeline import Happening, Source, Timeline

RATE = 48_000
ALONE = frozenset({Item.TIMELINE})


def read(folder: Path) -> otio.schema.Timeline:
    (path,) = folder.glob("*.otio")
    found = otio.adapters.read_from_file(str(path))
    assert isinstance(found, otio.schema.Timeline)
    return found


def markers(timeline: otio.schema.Timeline, kind: str) -> list[otio.schema.Marker]:
    board = timeline.video_tracks()[0][0]
    found = [*timeline.tracks.markers, *board.markers]
    return [one for one in found if one.metadata["studyboard"]["is"] == kind]


@pytest.fixture
def recorded(author, tmp_path) -> Iterator[tuple[Timeline, TalkNarration, bytes]]:
    """The author's study, recorded in one go twice as fast as planned: its timeline and its sound."""
    planned = plan(author.study)
    noise = np.random.default_rng(5).integers(-9000, 9000, round(planned.seconds * 0.5 * RATE) + 777)
    sound = noise.astype("<i2").tobytes()
    with StudyFile.create(tmp_path / "talk.studyboard", author.study) as file:
        take = file.sound.begin_take("Take 1", RATE, "2030-02-17T20:00:00+00:00")
        events = []
        for stretch in planned.stretches:
            shown = stretch.events or ()
            node = shown[0].node if shown else stretch.node
            events.append(TakeEvent(SoundTime(round(stretch.start * 0.5 * RATE), RATE), node, stretch.key))
            events += [
                TakeEvent(SoundTime(round(one.at * 0.5 * RATE), RATE), one.node, stretch.key)
                for one in shown[1:]
                if one.what in (Happening.MOVE, Happening.BACK)
            ]
        for first in range(0, len(sound), 2 * RATE):
            file.sound.append_sound(take, sound[first : first + 2 * RATE], events if first == 0 else ())
        author.study.takes[take] = file.sound.finish_take(take)
        assembly = recorded_talk(author.study)
        assert assembly is not None
        narration = TalkNarration(file.sound, author.study.takes, assembly, None)
        yield talk(author.study), narration, b"".join(narration.chunks())


def test_the_library_reads_it_and_knows_everything_in_it(author, tmp_path):
    deliver(author.study, tmp_path, ALONE)
    timeline = read(tmp_path)
    (path,) = tmp_path.glob("*.otio")
    plain = json.loads(path.read_text(encoding="utf-8"))
    versions = otio.core.type_version_map()
    kinds = set()

    def look(value: object) -> None:
        if isinstance(value, dict):
            if "OTIO_SCHEMA" in value:
                kinds.add(value["OTIO_SCHEMA"])
            for inner in value.values():
                look(inner)
        elif isinstance(value, list):
            for inner in value:
                look(inner)

    look(plain)
    times = {"RationalTime.1", "TimeRange.1"}
    assert kinds - times <= {f"{name}.{version}" for name, version in versions.items()}
    assert "UnknownSchema.1" not in kinds
    again = otio.adapters.read_from_string(otio.adapters.write_to_string(timeline, "otio_json"), "otio_json")
    assert again.is_equivalent_to(timeline)


def test_every_beat_has_a_marker_with_its_first_words_in_its_time(author, tmp_path):
    deliver(author.study, tmp_path, ALONE, options={Item.TIMELINE: TimelineOptions(rate=25)})
    timeline = read(tmp_path)
    found = [one for kind in ("part", "beat", "side-line") for one in markers(timeline, kind)]
    found.sort(key=lambda one: one.marked_range.start_time.value)
    stretches = plan(author.study).stretches
    assert [one.marked_range.start_time for one in found] == [
        otio.opentime.RationalTime(round(stretch.start * 25), 25) for stretch in stretches
    ]
    for one, stretch in zip(found, stretches, strict=True):
        assert one.comment == stretch.spoken.text
        if stretch.spoken.text:
            assert stretch.spoken.text.startswith(one.name.removesuffix(" …"))
        end = one.marked_range.end_time_exclusive().value
        assert end == round(stretch.end * 25)
    assert {one.color for one in markers(timeline, "part")} == {"WHITE"}
    assert {one.color for one in markers(timeline, "beat")} == {"GREEN"}
    assert {one.color for one in markers(timeline, "side-line")} == {"ORANGE"}


def test_every_move_has_a_marker_on_the_board_at_its_frame(author, tmp_path):
    deliver(author.study, tmp_path, ALONE)
    board = read(tmp_path).video_tracks()[0][0]
    positions = Positions(author.study)
    moves = [one for one in plan(author.study).events if one.what is Happening.MOVE]
    backs = [one for one in plan(author.study).events if one.what is Happening.BACK]
    expected = [(round(one.at * 30), move_label(positions, one.node)) for one in moves]
    expected += [(round(one.at * 30), f"back to {move_label(positions, one.node)}") for one in backs]
    assert len(backs) >= 1
    assert sorted((int(one.marked_range.start_time.value), one.name) for one in board.markers) == sorted(expected)
    assert {one.color for one in board.markers} == {"BLUE"}
    assert all(one.marked_range.duration.value == 1 for one in board.markers)


def test_the_think_pause_is_marked_as_long_as_it_lasts(author, tmp_path):
    deliver(author.study, tmp_path, ALONE)
    (pause,) = markers(read(tmp_path), "think")
    assert pause.name == "Find the move: White to move"
    assert pause.color == "YELLOW"
    assert pause.marked_range.duration.to_seconds() == pytest.approx(6.0, abs=1 / 30)


def test_queries_are_marked_at_their_words_and_can_be_left_out(author, tmp_path):
    author.put(2, spoken="Black is a rook up here, as everybody sees.")
    (query,) = read_through(author.study).queries
    deliver(author.study, tmp_path / "a", ALONE)
    (marked,) = markers(read(tmp_path / "a"), "query")
    assert marked.name == f"“{query.quote}”"
    assert marked.color == "RED"
    assert query.why in marked.comment
    stretch = next(one for one in plan(author.study).stretches if one.key == query.beat)
    said = [word for word in stretch.words if word.text.strip(".,") in query.quote.split()]
    assert marked.marked_range.start_time.value == round(said[0].at * 30)
    deliver(author.study, tmp_path / "b", ALONE, options={Item.TIMELINE: TimelineOptions(queries=False)})
    assert markers(read(tmp_path / "b"), "query") == []
    apply(author.study, ChangeLeft((LeftQuery(query.beat, query.kind.value, query.quote),)))
    (again,) = deliver(author.study, tmp_path / "a", ALONE)
    assert not again.kept
    assert markers(read(tmp_path / "a"), "query") == []


def test_what_is_not_there_is_a_gap_that_says_so(author, tmp_path):
    told: list[str] = []
    deliver(author.study, tmp_path, ALONE, remark=told.append)
    timeline = read(tmp_path)
    (video,), (sound,) = timeline.video_tracks()[0], timeline.audio_tracks()[0]
    assert (type(video), video.name) == (otio.schema.Gap, "The video was not delivered.")
    assert (type(sound), sound.name) == (otio.schema.Gap, "The talk was not recorded.")
    assert timeline.duration() == otio.opentime.RationalTime(round(plan(author.study).seconds * 30), 30)
    assert told == [
        "The video is not delivered, so its place in the edit timeline is empty.",
        "The talk is not recorded, so the edit timeline has no narration.",
    ]


def test_the_narration_lies_beside_it_and_is_cut_at_the_beats_to_the_sample(author, recorded, tmp_path):
    timeline, narration, sound = recorded
    assert timeline.source is Source.RECORDED
    folder = tmp_path / "out"
    deliver(author.study, folder, ALONE, timeline=timeline, narration=narration)
    clips = list(read(folder).audio_tracks()[0])
    assert [clip.source_range.start_time.rate for clip in clips] == [RATE] * len(clips)
    starts = [int(clip.source_range.start_time.value) for clip in clips]
    lengths = [int(clip.source_range.duration.value) for clip in clips]
    assert starts == [round(stretch.start * RATE) for stretch in timeline.stretches]
    assert starts[1:] == [start + length for start, length in zip(starts, lengths, strict=True)][:-1]
    (path,) = {folder / unquote(clip.media_reference.target_url) for clip in clips}
    with wave.open(str(path), "rb") as file:
        assert (file.getnchannels(), file.getsampwidth(), file.getframerate()) == (1, 2, RATE)
        assert file.readframes(file.getnframes()) == sound
        assert sum(lengths) == file.getnframes()
        assert {int(clip.available_range().duration.value) for clip in clips} == {file.getnframes()}


def test_it_points_at_the_video_beside_it_frame_by_frame(author, recorded, tmp_path):
    timeline, narration, _ = recorded
    folder = tmp_path / "out"
    items = {Item.VIDEO, Item.TIMELINE}
    options = {Item.VIDEO: VideoOptions(lines=720, rate=25)}
    told: list[str] = []
    deliver(author.study, folder, items, options=options, timeline=timeline, narration=narration, remark=told.append)
    assert told == []
    found = read(folder)
    (clip,) = found.video_tracks()[0]
    assert clip.source_range == clip.available_range()
    assert clip.source_range.start_time == otio.opentime.RationalTime(0, 25)
    with av.open(str(folder / unquote(clip.media_reference.target_url))) as video:
        assert clip.source_range.duration == otio.opentime.RationalTime(sum(1 for _ in video.decode(video=0)), 25)
    sound = found.audio_tracks()[0].duration().to_seconds()
    assert clip.source_range.duration.to_seconds() == pytest.approx(sound, abs=1 / 25)
    kept = deliver(author.study, folder, items, options=options, timeline=timeline, narration=narration)
    assert all(one.kept for one in kept)
    # A video that comes later is taken up; one that is there from before is pointed at without being made again.
    (folder / next(one.path.name for one in kept if one.item is Item.VIDEO)).unlink()
    made = deliver(author.study, folder, ALONE, timeline=timeline, narration=narration)
    assert not any(one.kept for one in made)
    assert isinstance(read(folder).video_tracks()[0][0], otio.schema.Gap)


class Quiet(TalkNarration):
    """A voice that cannot be brought to its loudness."""

    def level(self, remark: Callable[[str], None], ask: Callable[[float], None] | None = None) -> None:
        remark("The voice keeps its loudness.")


def test_what_page_and_edit_timeline_both_say_of_the_voice_is_told_once(author, recorded, tmp_path):
    timeline, _, _ = recorded
    told: list[str] = []
    with StudyFile.open(tmp_path / "talk.studyboard", read_only=True) as file:
        voice = Quiet(file.sound, author.study.takes, recorded_talk(author.study))
        items = {Item.PAGE, Item.TIMELINE}
        deliver(author.study, tmp_path / "out", items, timeline=timeline, narration=voice, remark=told.append)
    assert told.count("The voice keeps its loudness.") == 1


def test_a_video_of_other_times_is_left_out_and_the_presenter_is_told(author, tmp_path):
    options = {Item.VIDEO: VideoOptions(lines=720, constant=False)}
    deliver(author.study, tmp_path, {Item.VIDEO}, options=options)
    apply(author.study, ChangePace(Pace(syllables_per_second=3.0)))
    told: list[str] = []
    deliver(author.study, tmp_path, ALONE, options=options, remark=told.append)
    assert isinstance(read(tmp_path).video_tracks()[0][0], otio.schema.Gap)
    assert "is of an earlier version of the study: it does not go with the edit timeline." in told[0]


def test_names_that_are_no_address_are_written_as_one(author, tmp_path):
    author.study.headers["Event"] = "Größter Pokal 100 % & mehr"
    (tmp_path / "out").mkdir()
    deliver(author.study, tmp_path / "out", ALONE)
    assert next((tmp_path / "out").glob("*.otio")).name == "Halvorse-Nduka-Größter-Pokal-100-mehr.otio"


def test_the_same_talk_gives_the_same_bytes(author, tmp_path):
    deliver(author.study, tmp_path / "a", ALONE)
    deliver(author.study.snapshot(), tmp_path / "b", ALONE)
    one, other = (next((tmp_path / name).glob("*.otio")).read_bytes() for name in "ab")
    assert one == other


def test_without_the_library_the_package_is_named(author, tmp_path, monkeypatch):
    monkeypatch.setitem(sys.modules, "opentimelineio", None)
    with pytest.raises(DeliveryError, match=r"pip install 'studyboard\[editing\]'"):
        deliver(author.study, tmp_path / "out", ALONE)
    assert not (tmp_path / "out").exists()
