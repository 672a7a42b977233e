"""The title picture among the products."""

from __future__ import annotations

from studyboard.delivery.making import Making
from studyboard.delivery.product import Choice, Ingredient, Item, Product, Tick, Word
from studyboard.delivery.still_options import StillDesign, StillOptions, StillShape
from studyboard.translation import tr, tr_later

_ENDINGS = {StillShape.WIDE: ".png", StillShape.TALL: "-tall.png"}


def _make(making: Making, options: StillOptions) -> None:
    # Typst is loaded where text is set, and nowhere else.
    from studyboard.delivery.still import still_pictures

    pictures = still_pictures(making.talk.study, making.talk.positions, options)
    for picture in pictures:
        making.write(_ENDINGS[picture.shape], picture.png)
    if any(picture.shortened for picture in pictures):
        making.remark(tr("The headline or a name is too long for the still, and ends with an ellipsis there."))


PRODUCT = Product(
    Item.STILL,
    tr_later("Still"),
    tr_later("PNG for the title: a position, its marks, the players and a headline"),
    "a title picture (PNG): a position, its marks, the players and a headline",
    StillOptions,
    _make,
    frozenset({Ingredient.SCRIPT}),
    (
        Choice(
            "design",
            "--still-design",
            tr_later("Design"),
            "the whole board beside the headline, a part of it above a band, or the corner where it happens",
            (
                (StillDesign.PAGE, tr_later("The whole board on paper")),
                (StillDesign.BAND, tr_later("The board above a band")),
                (StillDesign.CORNER, tr_later("Close to where it happens")),
            ),
        ),
        Choice(
            "shape",
            "--still-shape",
            tr_later("Shape"),
            "1280 x 720 pixels, 1080 x 1920, or one of each",
            (
                (StillShape.WIDE, tr_later("Wide, 1280 × 720")),
                (StillShape.TALL, tr_later("Tall, 1080 × 1920")),
                (StillShape.BOTH, tr_later("One of each")),
            ),
        ),
        Word(
            "headline",
            "--headline",
            tr_later("Headline"),
            "what stands on the still largest; the event if nothing is said",
            "TEXT",
        ),
        Word(
            "at",
            "--still-at",
            tr_later("After the move"),
            "the move after which the position is shown; else the first think pause, or the most marks",
            "MOVE",
        ),
        Choice(
            "theme",
            "--theme",
            tr_later("Colours around the board"),
            "colours around the board of still and video",
            (("light", tr_later("Light")), ("dark", tr_later("Dark"))),
        ),
        Tick(
            "result",
            "--still-result",
            tr_later("The result may be seen"),
            "the result is on the still, and the end of the game may be",
        ),
        Tick(
            "flipped",
            "--from-black",
            tr_later("Seen from Black's side"),
            "the boards of sheet, still, video and page seen from Black's side",
        ),
    ),
)
