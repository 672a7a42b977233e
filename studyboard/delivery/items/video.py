"""The video among the products."""

from __future__ import annotations

from studyboard.delivery.making import Making
from studyboard.delivery.product import Choice, Ingredient, Item, Product, Tick
from studyboard.delivery.video.options import LINES, RATES, Composition, Shape, VideoOptions
from studyboard.translation import tr_later

#: The share of the work that bringing the voice to its loudness is, about.
_LEVELLING = 0.05


def _make(making: Making, options: VideoOptions) -> None:
    # Only the video needs its libraries.
    from studyboard.delivery.video.film import write_video

    talk = making.talk
    before = 0.0
    if talk.narration is not None:
        before = _LEVELLING
        talk.narration.level(making.remark, lambda share: making.ask(_LEVELLING * share))
    write_video(
        talk.study,
        talk.timeline,
        making.place(".mp4", seconds=talk.timeline.seconds),
        options,
        narration=talk.narration,
        positions=talk.positions,
        progress=lambda share: making.ask(before + (1 - before) * share),
        cancelled=making.cancelled,
    )


PRODUCT = Product(
    Item.VIDEO,
    tr_later("Video"),
    tr_later("MP4: board, moves and the recorded voice; takes minutes"),
    "the video (MP4); takes minutes, so it is made only if named",
    VideoOptions,
    _make,
    frozenset({Ingredient.SCRIPT, Ingredient.TIMES, Ingredient.SOUND}),
    (
        Choice(
            "shape",
            "--shape",
            tr_later("Shape"),
            "shape of the video's picture",
            ((Shape.WIDE, tr_later("Wide, 16:9")), (Shape.TALL, tr_later("Tall, 9:16"))),
        ),
        Choice(
            "lines",
            "--lines",
            tr_later("Lines"),
            "its shorter side in pixels",
            tuple((lines, str(lines)) for lines in LINES),
        ),
        Choice(
            "rate",
            "--rate",
            tr_later("Frames a second"),
            "its frames a second",
            tuple((rate, str(rate)) for rate in RATES),
        ),
        Choice(
            "composition",
            "--picture",
            tr_later("Beside the board"),
            "what is in it beside the board",
            (
                (Composition.LANES, tr_later("The moves told so far")),
                (Composition.WORDS, tr_later("What is said")),
                (Composition.BOARD, tr_later("Nothing")),
            ),
        ),
        Choice(
            "theme",
            "--theme",
            tr_later("Colours around the board"),
            "colours around the board",
            (("light", tr_later("Light")), ("dark", tr_later("Dark"))),
        ),
        Tick(
            "captions",
            "--words-in-picture",
            tr_later("Captions in the picture"),
            "captions are written into the picture",
        ),
        Tick(
            "constant",
            "--changes-only",
            tr_later("Only frames that change: quicker and smaller"),
            "variable frame rate: quicker, and a smaller file",
            ticked=False,
        ),
        Tick(
            "still_moves",
            "--still-moves",
            tr_later("Pieces are put down without sliding"),
            "pieces are put down without sliding",
        ),
        Tick(
            "flipped",
            "--from-black",
            tr_later("Seen from Black's side"),
            "the board of the video and the page seen from Black's side",
        ),
    ),
    quick=False,
)
