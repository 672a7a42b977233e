"""Captions among the products."""

from __future__ import annotations

from studyboard.delivery.caption_lines import captions
from studyboard.delivery.making import Making
from studyboard.delivery.product import Ingredient, Item, NoOptions, Product
from studyboard.delivery.srt import srt_text
from studyboard.delivery.webvtt import webvtt_text
from studyboard.translation import tr, tr_later


def _make(making: Making, options: NoOptions) -> None:
    cues = captions(making.talk.timeline)
    if not cues:
        making.remark(tr("Nothing is said yet, so there are no captions. Write spoken lines first."))
        return
    seconds = cues[-1].end / 1000
    making.write(".vtt", webvtt_text(cues, title=making.talk.title), seconds=seconds)
    making.write(".srt", srt_text(cues), seconds=seconds)


PRODUCT = Product(
    Item.CAPTIONS,
    tr_later("Captions"),
    tr_later("WebVTT and SRT, two lines at a time"),
    "captions (WebVTT and SRT)",
    NoOptions,
    _make,
    frozenset({Ingredient.SCRIPT, Ingredient.TIMES}),
)
