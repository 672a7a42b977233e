"""How a page names what it plays."""

from __future__ import annotations

from pathlib import Path

import pytest

from studyboard.delivery.deliver import deliver
from studyboard.delivery.errors import DeliveryError
from studyboard.delivery.items.page import PageOptions
from studyboard.delivery.page.media import media_beside, media_inside, media_named
from studyboard.delivery.product import Item
from studyboard.delivery.video.options import VideoOptions
from studyboard.model.edits import ChangePace, apply
from studyboard.model.script import Pace


@pytest.mark.parametrize(
    ("name", "address"),
    [
        ("talk.mp4", "talk.mp4"),
        ("a b#c?.m4a", "a%20b%23c%3F.m4a"),
        ("http:x.mp3", "http%3Ax.mp3"),
        ("é.wav", "%C3%A9.wav"),
    ],
)
def test_a_file_is_named_so_that_no_browser_takes_it_for_something_else(name, address):
    assert media_named(name).address == address


def test_a_file_elsewhere_is_named_from_the_page(tmp_path):
    sound = tmp_path / "sound" / "talk 1.m4a"
    assert media_beside(sound, tmp_path / "out").address == "../sound/talk%201.m4a"
    assert media_beside(tmp_path / "out" / "talk.mp4", tmp_path / "out").address == "talk.mp4"


def test_what_browsers_do_not_play_is_refused_with_what_they_do(author, tmp_path):
    with pytest.raises(DeliveryError, match=r"A page cannot play talk\.doc; it can play aac, flac"):
        media_beside(Path("talk.doc"), Path("."))
    options = {Item.PAGE: PageOptions(plays=tmp_path / "nowhere.mp3", inside=True)}
    with pytest.raises(DeliveryError, match="cannot be read"):
        deliver(author.study, tmp_path / "out", {Item.PAGE}, options=options)
    assert not (tmp_path / "out").exists()


def test_a_video_of_other_times_is_not_played_and_the_presenter_is_told(author, tmp_path):
    options = {Item.VIDEO: VideoOptions(lines=720, constant=False)}
    deliver(author.study, tmp_path, {Item.VIDEO}, options=options)
    told: list[str] = []
    (page,) = deliver(author.study, tmp_path, {Item.PAGE}, options=options, remark=told.append)
    assert 'src="Halvorse-Nduka-Harbour-Club-Winter-Evening.mp4"' in page.path.read_text(encoding="utf-8")
    assert told == []
    apply(author.study, ChangePace(Pace(syllables_per_second=3.0)))
    (page,) = deliver(author.study, tmp_path, {Item.PAGE}, options=options, remark=told.append)
    assert "<video" not in page.path.read_text(encoding="utf-8")
    assert "is of an earlier version of the study: the page does not play it." in told[0]


def test_a_file_of_the_users_is_played_from_where_it_lies_or_taken_in(author, tmp_path):
    sound = tmp_path / "mine.wav"
    sound.write_bytes(b"RIFF")
    options = {Item.PAGE: PageOptions(plays=sound)}
    (page,) = deliver(author.study, tmp_path / "out", {Item.PAGE}, options=options)
    assert 'src="../mine.wav"' in page.path.read_text(encoding="utf-8")
    options = {Item.PAGE: PageOptions(plays=sound, inside=True)}
    (page,) = deliver(author.study, tmp_path / "out", {Item.PAGE}, options=options)
    assert 'src="data:audio/wav;base64,UklGRg=="' in page.path.read_text(encoding="utf-8")
    assert media_inside(b"RIFF", "mine.wav").inside
