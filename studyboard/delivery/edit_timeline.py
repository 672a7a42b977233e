"""The talk as an edit timeline (OpenTimelineIO): the board's video, the narration beat by beat, markers."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from enum import Enum
from types import ModuleType
from typing import Any, Final
from urllib.parse import quote

from studyboard.delivery.errors import DeliveryError
from studyboard.delivery.printable import printable
from studyboard.model.left_query import LeftQuery
from studyboard.model.positions import Positions
from studyboard.model.script import BeatKey, Part, words
from studyboard.model.study import Study
from studyboard.notation.labels import move_label
from studyboard.reading.read_through import read_through
from studyboard.timing.timeline import Happening, Stretch, Timeline
from studyboard.translation import tr

_WORDS: Final = 7
"""So many words of a line name its beat."""


class Meaning(Enum):
    """What a marker stands for, and its colour among the eleven that OpenTimelineIO has names for."""

    #: A greeting, closing words, thanks.
    PART = "WHITE"
    #: A stop on the main line.
    BEAT = "GREEN"
    #: A stop in a side-line.
    SIDE_LINE = "ORANGE"
    #: A move is played on the board, or the board steps back.
    MOVE = "BLUE"
    #: The viewer is asked to find the move.
    THINK = "YELLOW"
    #: The read-through puts a query.
    QUERY = "RED"


@dataclass(frozen=True, slots=True)
class Mark:
    """A marker before it is put into a library's object. at, seconds: from the start of the talk, and how long (s)."""

    at: float
    seconds: float
    meaning: Meaning
    name: str
    comment: str
    metadata: dict[str, Any]


@dataclass(frozen=True, slots=True)
class Media:
    """A file beside the timeline. length: in units of its rate (frames or samples); rate: these a second."""

    name: str
    length: int
    rate: int


def edit_timeline(
    title: str,
    timeline: Timeline,
    marks: Iterable[Mark],
    *,
    rate: int,
    video: Media | None,
    narration: Media | None,
) -> str:
    """The timeline as an .otio file; the same talk gives the same text.

    rate: frames a second, of the video where there is one; everything on the board stands at a whole frame
    video, narration: the files beside it, to which it points by their names alone; None leaves a gap

    The narration is cut at the beats, at whole samples. Raises DeliveryError, which names the package, where the
    library is missing, and where it does not read back what it wrote.
    """
    otio = load_otio()
    frames = video.length if video is not None else max(1, round(timeline.seconds * rate))

    def span(start: int, length: int, per_second: int) -> Any:
        time = otio.opentime.RationalTime
        return otio.opentime.TimeRange(time(start, per_second), time(length, per_second))

    def clip(media: Media, name: str, start: int, length: int) -> Any:
        reference = otio.schema.ExternalReference(quote(media.name), span(0, media.length, media.rate))
        reference.name = media.name
        return otio.schema.Clip(name, reference, span(start, length, media.rate))

    whole = otio.schema.Timeline(title)
    whole.global_start_time = otio.opentime.RationalTime(0, rate)
    board = otio.schema.Track("Board", kind=otio.schema.TrackKind.Video)
    if video is not None:
        board.append(clip(video, "Board", 0, frames))
    else:
        board.append(otio.schema.Gap("The video was not delivered.", source_range=span(0, frames, rate)))
    voice = otio.schema.Track("Narration", kind=otio.schema.TrackKind.Audio)
    if narration is not None:
        for stretch, first, until in _cuts(timeline, narration):
            piece = clip(narration, beat_name(stretch) or "…", first, until - first)
            piece.metadata["studyboard"] = {"beat": _plain(stretch.key)}
            voice.append(piece)
    else:
        voice.append(otio.schema.Gap("The talk was not recorded.", source_range=span(0, frames, rate)))
    whole.tracks.extend([board, voice])
    # The library reads figures of sixteen digits back with another last one: microseconds are fine enough.
    for mark in sorted(marks, key=lambda one: (one.at, list(Meaning).index(one.meaning))):
        start = min(frames - 1, round(mark.at * rate))
        marker = otio.schema.Marker(
            mark.name,
            # An editor shows nothing where a marker has no length.
            span(start, max(1, min(frames, round((mark.at + mark.seconds) * rate)) - start), rate),
            getattr(otio.schema.MarkerColor, mark.meaning.value),
            {
                "studyboard": {
                    "is": mark.meaning.name.lower().replace("_", "-"),
                    "seconds": round(mark.at, 6),
                    **mark.metadata,
                }
            },
        )
        marker.comment = mark.comment
        # What the board does belongs to its picture and goes along when that is moved; the rest is about the talk.
        (board[0] if mark.meaning is Meaning.MOVE else whole.tracks).markers.append(marker)
    text: str = otio.adapters.write_to_string(whole, "otio_json")
    # What the library itself does not read back as it was written, no editor will.
    read = otio.adapters.read_from_string(text, "otio_json")
    if otio.adapters.write_to_string(read, "otio_json") != text:
        raise DeliveryError(tr("The edit timeline cannot be read back as it was written; it was not delivered."))
    return text if text.endswith("\n") else f"{text}\n"


def beat_name(stretch: Stretch) -> str:
    """What a beat is called: the first words of its line."""
    said = words(printable(stretch.spoken.text))
    return " ".join(said[:_WORDS]) + (" …" if len(said) > _WORDS else "")


def talk_marks(study: Study, positions: Positions, timeline: Timeline) -> Iterator[Mark]:
    """Markers of beats, moves and think pauses."""
    for stretch in timeline.stretches:
        meaning = _meaning(study, stretch)
        label = stretch.key.value if isinstance(stretch.key, Part) else move_label(positions, stretch.node)
        text = printable(stretch.spoken.text)
        beat = {"beat": _plain(stretch.key)}
        yield Mark(stretch.start, stretch.seconds, meaning, beat_name(stretch) or label, text, beat)
        for event in stretch.events:
            if event.what in (Happening.MOVE, Happening.BACK):
                name = move_label(positions, event.node)
                back = event.what is Happening.BACK
                board = {"node": event.node, "fen": positions.board(event.node).fen()}
                yield Mark(event.at, 0.0, Meaning.MOVE, f"back to {name}" if back else name, "", board)
        if stretch.think > 0:
            turn = "White" if positions.board(stretch.node).turn else "Black"
            start = stretch.end - stretch.think
            yield Mark(start, stretch.think, Meaning.THINK, f"Find the move: {turn} to move", "", beat)


def query_marks(study: Study, timeline: Timeline, told: Callable[[float], None] = lambda _: None) -> Iterator[Mark]:
    """Markers of the queries of the read-through that the author does not leave, at the words that they are about."""
    stretches = {stretch.key: stretch for stretch in timeline.stretches}
    for query in read_through(study, progress=told).queries:
        stretch = stretches.get(query.beat) if query.beat is not None else None
        if query.beat is None or stretch is None:
            continue
        if LeftQuery(query.beat, query.kind.value, query.quote) in study.left:
            continue
        text = stretch.spoken.text
        first = len(words(text[: query.start] + ".")) - 1
        last = max(first, len(words(text[: query.end])) - 1)
        said = [word for word in stretch.words if first <= word.word <= last]
        at = said[0].at if said else stretch.start
        until = said[-1].until if said else stretch.speech_end
        comment = f"{query.why} {query.do}".strip()
        yield Mark(at, until - at, Meaning.QUERY, f"“{query.quote}”", comment, {"beat": _plain(query.beat)})


def load_otio() -> ModuleType:
    """The library. Raises DeliveryError, which names the package, where it is missing."""
    try:
        import opentimelineio
    except ImportError as reason:
        raise DeliveryError(
            tr(
                "An edit timeline needs OpenTimelineIO, which is missing here. Install it with "
                "“pip install 'studyboard[editing]'”."
            )
        ) from reason
    module: ModuleType = opentimelineio
    return module


def _cuts(timeline: Timeline, narration: Media) -> Iterator[tuple[Stretch, int, int]]:
    """Each beat with the samples in which it is told; what the sound has behind the last one belongs to that."""
    at = 0
    last = len(timeline.stretches) - 1
    for place, stretch in enumerate(timeline.stretches):
        until = narration.length if place == last else min(narration.length, round(stretch.end * narration.rate))
        if until > at:
            yield stretch, at, until
            at = until


def _meaning(study: Study, stretch: Stretch) -> Meaning:
    if isinstance(stretch.key, Part):
        return Meaning.PART
    return Meaning.BEAT if study.on_main_line(stretch.node) else Meaning.SIDE_LINE


def _plain(key: BeatKey) -> int | str:
    return key.value if isinstance(key, Part) else key
