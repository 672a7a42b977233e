"""Captions among the products."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from pathlib import Path

from studyboard.delivery.caption_lines import Caption, captions
from studyboard.delivery.caption_translation import translation_file
from studyboard.delivery.errors import DeliveryError
from studyboard.delivery.language_tag import language_tag
from studyboard.delivery.making import Making
from studyboard.delivery.product import Choice, Ingredient, Item, Product, Word
from studyboard.delivery.srt import srt_text
from studyboard.delivery.webvtt import webvtt_text
from studyboard.notation.labels import with_figurines
from studyboard.translation import tr, tr_later


class CaptionMoves(StrEnum):
    """How moves stand in captions that are written as “Nf3”."""

    TEXT = "text"
    FIGURINES = "figurines"


@dataclass(frozen=True, slots=True)
class CaptionOptions:
    """moves: as they are written, or with figurines; into: a language to be translated into, "" for none.

    Raises DeliveryError for what is no tag of a language.
    """

    moves: CaptionMoves = CaptionMoves.TEXT
    into: str = ""

    def __post_init__(self) -> None:
        if self.into and language_tag(self.into) != self.into:
            raise DeliveryError(
                tr("“{tag}” is no language; “fr” is French and “pt-BR” the Portuguese of Brazil.", tag=self.into)
            )


def _make(making: Making, options: CaptionOptions) -> None:
    cues = captions(making.talk.timeline)
    if not cues:
        making.remark(tr("Nothing is said yet, so there are no captions. Write spoken lines first."))
        return
    if options.moves is CaptionMoves.FIGURINES:
        cues = tuple(_with_figurines(cue) for cue in cues)
    seconds = cues[-1].end / 1000
    making.write(".vtt", webvtt_text(cues, title=making.talk.title), seconds=seconds)
    making.write(".srt", srt_text(cues), seconds=seconds)
    if options.into:
        ending = f"-{options.into}.vtt"
        before = _read(making.to / f"{making.talk.stem}{ending}")
        made = translation_file(cues, title=making.talk.title, before=before)
        making.write(ending, made.text, seconds=seconds)
        if made.missing:
            making.remark(
                tr(
                    "Captions left to be translated into “{language}”: {count} of {all}.",
                    language=options.into,
                    count=made.missing,
                    all=len(cues),
                )
            )


def _with_figurines(cue: Caption) -> Caption:
    return replace(cue, lines=tuple(with_figurines(line) for line in cue.lines))


def _read(path: Path) -> str:
    """What was filled in; an unreadable file is put aside as any that was changed, so nothing of it is lost."""
    try:
        return path.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError):
        return ""


PRODUCT = Product(
    Item.CAPTIONS,
    tr_later("Captions"),
    tr_later("WebVTT and SRT, two lines at a time"),
    "captions (WebVTT and SRT)",
    CaptionOptions,
    _make,
    frozenset({Ingredient.SCRIPT, Ingredient.TIMES}),
    (
        Choice(
            "moves",
            "--caption-moves",
            tr_later("Moves"),
            "how moves stand in the captions",
            (
                (CaptionMoves.TEXT, tr_later("As they are written: Nf3")),
                (CaptionMoves.FIGURINES, tr_later("With figurines: ♘f3")),
            ),
        ),
        Word(
            "into",
            "--translate-into",
            tr_later("A second file to translate into (such as “fr”)"),
            "a second file of captions, with translations into this language left to fill in",
            "LANGUAGE",
        ),
    ),
)
