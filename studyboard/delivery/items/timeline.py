"""The edit timeline among the products."""

from __future__ import annotations

import wave
from dataclasses import dataclass

from studyboard.delivery.making import Making
from studyboard.delivery.product import Choice, Ingredient, Item, Product, Tick
from studyboard.delivery.video.narration import Narration
from studyboard.delivery.video.options import RATES, VideoOptions
from studyboard.translation import tr, tr_later

_SAMPLE_BYTES = 2


@dataclass(frozen=True, slots=True)
class TimelineOptions:
    """rate: frames a second where there is no video beside it, else the video's; queries: these have markers too."""

    rate: int = VideoOptions().rate
    queries: bool = True


def _make(making: Making, options: TimelineOptions) -> None:
    # The library and the read-through are loaded where a timeline is made, and nowhere else.
    from studyboard.delivery.edit_timeline import Media, edit_timeline, load_otio, query_marks, talk_marks

    load_otio()
    talk = making.talk
    video, rate = None, options.rate
    beside = making.beside.get(Item.VIDEO)
    if beside is not None and not beside.same_times:
        making.remark(
            tr(
                "“{name}” is of an earlier version of the study: it does not go with the edit timeline.",
                name=beside.names[0],
            )
        )
    elif beside is not None:
        rate = int(beside.options["rate"])
        video = Media(beside.names[0], max(1, round(talk.timeline.seconds * rate)), rate)
        if not beside.options["constant"]:
            making.remark(
                tr("The video beside the edit timeline has only the frames that change; most editors want all of them.")
            )
    else:
        making.remark(tr("The video is not delivered, so its place in the edit timeline is empty."))
    narration = None
    if talk.narration is None or talk.narration.notice:
        making.remark(tr("The talk is not recorded, so the edit timeline has no narration."))
    else:
        talk.narration.level(making.remark, lambda _: making.ask(0.0))
        length = _write_sound(making, talk.narration)
        narration = Media(making.files[-1].name, length, talk.narration.rate)
    marks = list(talk_marks(talk.study, talk.positions, talk.timeline))
    if options.queries:
        marks += query_marks(talk.study, talk.timeline, lambda share: making.ask(0.5 + share / 2))
    text = edit_timeline(talk.title, talk.timeline, marks, rate=rate, video=video, narration=narration)
    making.write(".otio", text, seconds=talk.timeline.seconds)


def _write_sound(making: Making, narration: Narration) -> int:
    """Write the narration as a WAV file; how many samples it has. Half of the work, as the bar tells it."""
    seconds = making.talk.timeline.seconds
    length = 0
    with wave.open(str(making.place("-narration.wav", seconds=seconds)), "wb") as sound:
        sound.setnchannels(1)
        sound.setsampwidth(_SAMPLE_BYTES)
        sound.setframerate(narration.rate)
        for chunk in narration.chunks():
            sound.writeframesraw(chunk)
            length += len(chunk) // _SAMPLE_BYTES
            making.ask(min(0.5, 0.5 * length / max(1.0, seconds * narration.rate)))
    return length


PRODUCT = Product(
    Item.TIMELINE,
    tr_later("Edit timeline"),
    tr_later("OpenTimelineIO for a video editor: the board's video, the narration in beats, markers"),
    "an edit timeline (OpenTimelineIO) with the narration (WAV); only if named",
    TimelineOptions,
    _make,
    frozenset({Ingredient.SCRIPT, Ingredient.TIMES, Ingredient.SOUND, Ingredient.QUERIES}),
    (
        Choice(
            "rate",
            "--rate",
            tr_later("Frames a second, where there is no video"),
            "frames a second of video and edit timeline",
            tuple((rate, str(rate)) for rate in RATES),
        ),
        Tick(
            "queries",
            "--no-query-markers",
            tr_later("No markers for the queries of the read-through"),
            "no markers for the queries of the read-through in the edit timeline",
            ticked=False,
        ),
    ),
    refers_to=frozenset({Item.VIDEO}),
    quick=False,
)
