"""The whole video: its pictures looked through for flashes, then painted and written."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any, Final, TypeAlias

import cairocffi
import numpy as np
from numpy.typing import NDArray

from studyboard.delivery.caption_lines import captions
from studyboard.delivery.chapters import chapters
from studyboard.delivery.errors import DeliveryCancelledError, DeliveryError
from studyboard.delivery.title import full_name, known, study_title
from studyboard.delivery.video.encoder import Encoder, load_av
from studyboard.delivery.video.flashes import CELLS, first_flashing
from studyboard.delivery.video.narration import Narration
from studyboard.delivery.video.options import PREVIEW_LINES, Shape, VideoOptions
from studyboard.delivery.video.painter import Painter, cards_with_words
from studyboard.delivery.video.pictures import Picture, PictureTrack
from studyboard.delivery.video.strip import Strip
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.picture.raster import Canvas
from studyboard.timing.timeline import Timeline
from studyboard.translation import tr

#: Told which share of the work is done (0.0 to 1.0).
Share: TypeAlias = Callable[[float], None]

_LOOKING: Final = 0.12
#: So many pictures have their texts set at a time: each text by itself takes thirty times as long.
_TEXTS_AT_ONCE: Final = 200


def write_video(
    study: Study,
    timeline: Timeline,
    path: Path,
    options: VideoOptions | None = None,
    *,
    narration: Narration | None = None,
    positions: Positions | None = None,
    progress: Share | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> None:
    """Write the talk as an MP4 file: H.264 in 4:2:0, tagged BT.709, and AAC where there is narration.

    timeline: what the picture follows; its second 0 is that of the narration
    progress, cancelled: called from time to time

    Every frame lies within half a frame of the moment in the timeline. The pictures are looked through for flashes
    (WCAG 2.2, 2.3.1) before anything is written. Memory does not grow with the length of the talk, but for what is
    known of each of its pictures. Raises DeliveryError where the talk has no length, where it would flash, or where
    the video library is missing, and DeliveryCancelledError where *cancelled* said so; the file is then not whole.
    """
    options = options or VideoOptions()
    positions = positions or Positions(study)
    load_av()
    if timeline.seconds <= 0:
        raise DeliveryError(tr("The talk has no length yet, so there is no video. Play a move or write a line first."))
    words = captions(timeline) if options.worded else ()
    cards = cards_with_words(study, positions)
    track = PictureTrack(timeline, options.rate, captions=words, still_moves=options.still_moves, cards=cards)
    changes = list(track.changes())
    strip = Strip(study, positions, track.steps)

    def ask(share: float) -> None:
        if cancelled is not None and cancelled():
            raise DeliveryCancelledError(tr("The delivery was stopped; nothing was changed."))
        if progress is not None:
            progress(share)

    _refuse_flashes(study, positions, strip, options, changes, lambda share: ask(share * _LOOKING))
    notice = "" if narration is None else narration.notice
    painter = Painter(study, positions, strip, options, notice)
    tags = {**_tags(study), **({"comment": notice} if notice else {})}
    with Encoder(path, options, narration, chapters(study, positions, timeline), tags) as encoder:
        for place, (frame, picture) in enumerate(changes):
            until = changes[place + 1][0] if place + 1 < len(changes) else track.frames
            if place % _TEXTS_AT_ONCE == 0:
                painter.prepare(later for _, later in changes[place : place + _TEXTS_AT_ONCE])
            canvas = painter.paint(picture)
            # Long stretches of one picture are written in parts, so that stopping does not have to wait for them.
            for first in range(frame, until, options.rate * 2):
                ask(_LOOKING + (1 - _LOOKING) * first / track.frames)
                if first == frame:
                    encoder.show(canvas, frame, min(until, first + options.rate * 2))
                else:
                    encoder.go_on(first, min(until, first + options.rate * 2))
        encoder.finish(track.frames)
    ask(1.0)


class Frames:
    """Single frames of a video, for a preview of it.

    State: the pieces and texts that were drawn for the frames so far, so that the next one is quicker.
    """

    def __init__(self, study: Study, timeline: Timeline, options: VideoOptions | None = None) -> None:
        options = options or VideoOptions()
        positions = Positions(study)
        words = captions(timeline) if options.worded else ()
        self._rate = options.rate
        cards = cards_with_words(study, positions)
        self._track = PictureTrack(timeline, options.rate, captions=words, still_moves=options.still_moves, cards=cards)
        self._painter = Painter(study, positions, Strip(study, positions, self._track.steps), options)

    def at(self, seconds: float) -> tuple[Canvas, Picture]:
        """What the video shows at a second. The canvas is good until the next one is asked for."""
        picture = self._track.at(max(0, min(self._track.frames - 1, round(seconds * self._rate))))
        self._painter.prepare((picture,))
        return self._painter.paint(picture), picture


def _refuse_flashes(
    study: Study,
    positions: Positions,
    strip: Strip,
    options: VideoOptions,
    changes: list[tuple[int, Picture]],
    share: Share,
) -> None:
    small = replace(options, lines=PREVIEW_LINES)
    painter = Painter(study, positions, strip, small)

    def looked_through() -> Iterator[tuple[float, NDArray[np.uint8]]]:
        for place, (frame, picture) in enumerate(changes):
            if place % _TEXTS_AT_ONCE == 0:
                share(place / len(changes))
                painter.prepare(later for _, later in changes[place : place + _TEXTS_AT_ONCE])
            yield frame / options.rate, _reduced(painter.paint(picture), options.shape)

    found = first_flashing(looked_through())
    if found is not None:
        raise DeliveryError(
            tr(
                "The video was not written: about second {seconds} it would flash more than three times within a "
                "second, which can hurt people with photosensitive epilepsy (WCAG 2.2, 2.3.1). Give the moves there "
                "more time, or let the pieces be put down without sliding.",
                seconds=round(found.at),
            )
        )


def _reduced(canvas: Canvas, shape: Shape) -> NDArray[np.uint8]:
    rows, columns = CELLS if shape is Shape.WIDE else CELLS[::-1]
    surface = cairocffi.ImageSurface(cairocffi.FORMAT_RGB24, columns, rows)
    context = cairocffi.Context(surface)
    context.scale(columns / canvas.width, rows / canvas.height)
    context.set_source_surface(canvas.surface)
    context.get_source().set_filter(cairocffi.FILTER_GOOD)
    context.paint()
    surface.flush()
    pixels: NDArray[Any] = np.frombuffer(surface.get_data(), np.uint8).reshape(rows, surface.get_stride())
    # The surface's memory goes with the surface.
    return pixels[:, : 4 * columns].reshape(rows, columns, 4).copy()


def _tags(study: Study) -> dict[str, str]:
    tags = {"title": study_title(study.headers)}
    told = full_name(known(study.headers, "Annotator"))
    if told:
        tags["artist"] = told
    date = known(study.headers, "Date").replace(".", "-")
    if date:
        tags["date"] = date
    return tags
