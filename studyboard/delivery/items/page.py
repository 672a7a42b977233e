"""The page among the products."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from studyboard.delivery.errors import DeliveryError
from studyboard.delivery.making import Making
from studyboard.delivery.page.media import Media, media_beside, media_inside, media_named
from studyboard.delivery.page.sound import SOUND, write_sound
from studyboard.delivery.product import Ingredient, Item, OwnFile, Product, Tick
from studyboard.delivery.video.encoder import load_av
from studyboard.translation import tr, tr_later


@dataclass(frozen=True, slots=True)
class PageOptions:
    """How a page is to be.

    plays: sound or video that begins with the talk; where there is none, the video that is delivered too, else the
        voice of the take
    inside: what it plays is part of the page itself, in place of lying beside it
    flipped: the board is seen from Black's side at first
    """

    plays: Path | None = None
    inside: bool = False
    flipped: bool = False


def _make(making: Making, options: PageOptions) -> None:
    # Its template library is loaded where a page is made.
    from studyboard.delivery.page.page import page_html

    talk = making.talk
    media = _media(making, options)
    making.write(".html", page_html(talk.study, talk.positions, talk.timeline, media=media, flipped=options.flipped))


def _media(making: Making, options: PageOptions) -> Media | None:
    """What the page plays, None where it plays nothing."""
    if options.plays is not None:
        if not options.inside:
            return media_beside(options.plays, making.to)
        try:
            return media_inside(options.plays.read_bytes(), options.plays.name)
        except OSError as reason:
            raise DeliveryError(
                tr("{path} cannot be read: {reason}.", path=options.plays, reason=reason.strerror or reason)
            ) from reason
    video = making.beside.get(Item.VIDEO)
    if video is not None and video.same_times:
        return media_named(video.names[0])
    if video is not None:
        making.remark(
            tr("“{name}” is of an earlier version of the study: the page does not play it.", name=video.names[0])
        )
    return _voice(making, inside=options.inside)


def _voice(making: Making, *, inside: bool) -> Media | None:
    """The sound of the take, where there is one."""
    narration = making.talk.narration
    # What is no real voice is for the video alone, which says so in its picture.
    if narration is None or narration.notice:
        return None
    try:
        load_av()
    except DeliveryError as reason:
        making.remark(tr("The page has no sound: {reason}", reason=reason))
        return None
    narration.level(making.remark, lambda _: making.ask(0.0))
    seconds = making.talk.timeline.seconds
    if not inside:
        path = making.place(SOUND, seconds=seconds)
        write_sound(narration, path, seconds, making.ask)
        return media_named(path.name)
    with TemporaryDirectory(prefix="studyboard-") as folder:
        path = Path(folder) / f"sound{SOUND}"
        write_sound(narration, path, seconds, making.ask)
        return media_inside(path.read_bytes(), path.name)


PRODUCT = Product(
    Item.PAGE,
    tr_later("Page"),
    tr_later("HTML to click through: board, moves and words, with the video or the voice beside it"),
    "a page to click through (HTML), with the video or the recorded voice",
    PageOptions,
    _make,
    frozenset({Ingredient.SCRIPT, Ingredient.TIMES, Ingredient.SOUND}),
    (
        OwnFile(
            "plays",
            "--plays",
            tr_later("Sound or video to play"),
            "sound or video that begins with the talk, for the page to play",
            "*.mp4 *.m4a *.mp3 *.wav *.ogg *.opus *.flac *.webm",
        ),
        Tick(
            "inside",
            "--media-inside",
            tr_later("Sound inside the page"),
            "what the page plays is part of it, in place of lying beside it",
        ),
        Tick(
            "flipped",
            "--from-black",
            tr_later("Seen from Black's side"),
            "the board of the video and the page seen from Black's side",
        ),
    ),
    refers_to=frozenset({Item.VIDEO}),
)
