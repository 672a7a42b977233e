"""Chapters among the products."""

from __future__ import annotations

from studyboard.delivery.chapters import chapter_lines, chapters
from studyboard.delivery.making import Making
from studyboard.delivery.product import Ingredient, Item, NoOptions, Product
from studyboard.delivery.webvtt import chapter_cues
from studyboard.translation import tr, tr_later


def _make(making: Making, options: NoOptions) -> None:
    talk = making.talk
    found = chapters(talk.study, talk.positions, talk.timeline)
    if not found:
        making.remark(tr("Nothing is told yet, so there are no chapters."))
        return
    making.write("-chapters.txt", chapter_lines(found))
    making.write("-chapters.vtt", chapter_cues(found, title=talk.title), seconds=found[-1].end)


PRODUCT = Product(
    Item.CHAPTERS,
    tr_later("Chapters"),
    tr_later("Lines of text and WebVTT, none shorter than ten seconds"),
    "chapters (lines of text and WebVTT)",
    NoOptions,
    _make,
    frozenset({Ingredient.SCRIPT, Ingredient.TIMES}),
)
