"""A page that plays sound or video: board and words follow it, and moves are places in it."""

from __future__ import annotations

import math
from collections.abc import Iterator

import chess
import numpy as np
import pytest

from studyboard.delivery.deliver import deliver
from studyboard.delivery.items.page import PageOptions
from studyboard.delivery.page.media import media_inside, media_named
from studyboard.delivery.page.shots import ShotKind, shots
from studyboard.delivery.page.sound import write_sound
from studyboard.delivery.product import Item
from studyboard.delivery.video.options import VideoOptions
from studyboard.model.positions import Positions
from studyboard.timing.plan import plan
from tests.delivery.page.test_page_in_browser import standing


class Hum:
    """A narration that hums for some seconds."""

    rate = 48_000

    def __init__(self, seconds: float) -> None:
        self._seconds = seconds

    notice = ""

    def level(self, remark: object, ask: object = None) -> None:
        """It is level already."""

    def digest(self) -> str:
        """It is always the same."""
        return "hum"

    def chunks(self) -> Iterator[bytes]:
        """A second at a time."""
        wave = (4000 * np.sin(np.arange(self.rate) * 2 * math.pi * 220 / self.rate)).astype("<i2").tobytes()
        for _ in range(math.ceil(self._seconds)):
            yield wave


@pytest.fixture(params=["beside", "inside"])
def playing(request, author, written, tmp_path):
    """The page of a short talk with its sound beside it or inside."""
    write_sound(Hum(plan(author.study).seconds), tmp_path / "hum.m4a", 20.0)
    if request.param == "inside":
        return written(author.study, media_inside((tmp_path / "hum.m4a").read_bytes(), "hum.m4a"))
    return written(author.study, media_named("hum.m4a"))


@pytest.fixture
def steps(author):
    return shots(plan(author.study))


def now(browser) -> float:
    return float(browser.run("return document.getElementById('media').currentTime"))


def loaded(browser, page) -> None:
    browser.open(page)
    browser.wait(lambda: browser.run("return document.getElementById('media').readyState") >= 3)


def test_the_board_follows_the_sound_wherever_it_is_put(browser, playing, author, steps):
    loaded(browser, playing)
    positions = Positions(author.study)
    for number in range(len(steps) - 1, -1, -3):
        shot = steps[number]
        latest = max(place for place, other in enumerate(steps) if other.at <= shot.at + 0.06)
        browser.run("document.getElementById('media').currentTime = arguments[0]", shot.at + 0.06)
        wanted = standing(positions.board(steps[latest].node))
        browser.wait(lambda wanted=wanted: browser.board() == wanted)
    assert browser.complaints() == []


def test_clicking_a_move_puts_the_sound_there(browser, playing, steps):
    loaded(browser, playing)
    for number in (4, 2, 6):
        assert steps[number].kind is ShotKind.MOVE
        browser.click(f"#a{number}")
        browser.wait(lambda number=number: abs(now(browser) - steps[number].at) < 0.05)
        assert browser.run("return Number(document.getElementById('place').value)") == number


def test_playing_goes_on_by_itself_and_stops(browser, playing, steps):
    loaded(browser, playing)
    browser.click("#a2")
    browser.press(" ")
    browser.wait(lambda: browser.run("return Number(document.getElementById('place').value)") > 2)
    assert now(browser) >= steps[3].at - 0.05
    browser.press(" ")
    browser.wait(lambda: browser.run("return document.getElementById('media').paused"))
    browser.wait(lambda: browser.run("return document.getElementById('play').getAttribute('aria-label')") == "Play")


def test_words_are_not_read_over_the_voice(browser, playing):
    loaded(browser, playing)
    browser.click("#a2")
    browser.wait(lambda: browser.run("return document.getElementById('said').textContent") != "")
    before = browser.run("return document.getElementById('said').textContent")
    browser.press(" ")
    browser.wait(lambda: browser.run("return Number(document.getElementById('place').value)") > 2)
    assert browser.run("return document.getElementById('said').textContent") == before
    browser.press(" ")


def test_only_the_sound_beside_it_is_asked_for(browser, author, written, tmp_path):
    write_sound(Hum(5.0), tmp_path / "hum.m4a", 5.0)
    page = written(author.study, media_named("hum.m4a"))
    loaded(browser, page)
    assert set(browser.requests()) == {page.as_uri(), (tmp_path / "hum.m4a").as_uri()}


def test_without_script_the_sound_can_be_heard(browser, playing):
    browser.open(playing, script=False)
    assert browser.driver.find_element("id", "media").is_displayed()


def test_a_sound_that_is_missing_leaves_a_page_to_click_through(browser, author, written, steps):
    browser.open(written(author.study, media_named("nowhere.m4a")))
    browser.click("#a4")
    positions = Positions(author.study)
    browser.wait(lambda: browser.board() == standing(positions.board(steps[4].node)))
    assert not browser.shown("#media")
    browser.press(" ")
    browser.wait(lambda: browser.run("return Number(document.getElementById('place').value)") > 4)
    browser.press(" ")


def test_the_video_that_is_delivered_too_is_played(browser, author, tmp_path, steps):
    options = {Item.VIDEO: VideoOptions(lines=720, constant=False)}
    deliver(author.study, tmp_path, {Item.PAGE, Item.VIDEO}, options=options)
    (page,) = tmp_path.glob("*.html")
    loaded(browser, page)
    assert browser.run("return document.getElementById('media').localName") == "video"
    assert browser.run("return document.getElementById('media').videoWidth") == 1280
    browser.click("#a3")
    browser.wait(lambda: abs(now(browser) - steps[3].at) < 0.05)
    tracks = "return [...document.getElementById('media').textTracks].map((track) => track.kind)"
    assert browser.run(tracks) == ["captions"]
    browser.run("document.getElementById('media').textTracks[0].mode = 'showing'")
    cues = "return document.getElementById('media').textTracks[0].cues.length"
    browser.wait(lambda: browser.run(cues) > 2)
    assert browser.findings() == []
    assert browser.complaints() == []


def test_a_take_is_played_from_a_file_beside_the_page(browser, author, tmp_path):
    seconds = plan(author.study).seconds
    made = deliver(author.study, tmp_path, {Item.PAGE}, narration=Hum(seconds))
    assert sorted(one.path.suffix for one in made) == [".html", ".m4a"]
    loaded(browser, next(tmp_path.glob("*.html")))
    length = browser.run("return document.getElementById('media').duration")
    # AAC is written in blocks of 1024 samples, 21 ms at 48 kHz.
    assert length == pytest.approx(math.ceil(seconds), abs=0.03)


def test_a_take_goes_inside_the_page_on_request(browser, author, tmp_path):
    options = {Item.PAGE: PageOptions(inside=True)}
    made = deliver(author.study, tmp_path, {Item.PAGE}, narration=Hum(3.0), options=options)
    assert [one.path.suffix for one in made] == [".html"]
    loaded(browser, made[0].path)
    assert browser.requests() == [made[0].path.as_uri()]


def test_the_board_can_begin_from_blacks_side(browser, author, written):
    browser.open(written(author.study, flipped=True))
    turned = {
        chess.square_name(chess.parse_square(square) ^ 63): piece for square, piece in standing(chess.Board()).items()
    }
    assert browser.board() == turned
