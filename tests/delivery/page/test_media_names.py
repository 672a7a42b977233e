"""How a page names what it plays."""

from __future__ import annotations

from pathlib import Path

import pytest

from studyboard.delivery.deliver import deliver
from studyboard.delivery.errors import DeliveryError
from studyboard.delivery.items.page import PageOptions
from studyboard.delivery.page.media import media_beside, media_inside, media_named
from studyboard.delivery.product import Item


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
