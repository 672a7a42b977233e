"""What a study is called in print, in a heading and in a file name."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Mapping
from typing import Final

from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.notation.openings import opening_of
from studyboard.translation import tr_later

_MONTHS: Final = (
    tr_later("January"),
    tr_later("February"),
    tr_later("March"),
    tr_later("April"),
    tr_later("May"),
    tr_later("June"),
    tr_later("July"),
    tr_later("August"),
    tr_later("September"),
    tr_later("October"),
    tr_later("November"),
    tr_later("December"),
)
_DAY: Final = tr_later("{day} {month} {year}")
_ROUND: Final = tr_later("Round {round}")
_RESULTS: Final = {"1-0": "1–0", "0-1": "0–1", "1/2-1/2": "½–½"}
_LONGEST_NAME: Final = 80

# Names that Windows keeps for devices, with or without an extension.
_RESERVED: Final = re.compile(r"(?i)^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])$")


def _in_english(text: str, **values: object) -> str:
    return text.format(**values) if values else text


def known(headers: Mapping[str, str], tag: str) -> str:
    """The value of a tag, empty where it is missing or the PGN standard's sign for "not known"."""
    value = " ".join(headers.get(tag, "").split())
    return "" if not value.strip("?-.* ") and tag != "Result" else value


def surname(name: str) -> str:
    """``"Halvorse"`` of ``"Halvorse, Maja"``; the whole name where it has no comma."""
    return name.split(",")[0].strip() or name.strip()


def full_name(name: str) -> str:
    """``"Maja Halvorse"`` of ``"Halvorse, Maja"``."""
    last, comma, first = (part.strip() for part in name.partition(","))
    return f"{first} {last}" if comma and first and last else name.strip(" ,")


def players(headers: Mapping[str, str]) -> str:
    """``"Halvorse – Nduka"``; empty where neither player is known."""
    white, black = known(headers, "White"), known(headers, "Black")
    if not white and not black:
        return ""
    return f"{surname(white) or 'White'} – {surname(black) or 'Black'}"


def study_title(headers: Mapping[str, str]) -> str:
    """What the study is called: the players and the event, or what is known of them."""
    parts = [part for part in (players(headers), known(headers, "Event")) if part]
    return ", ".join(parts) or "Study"


def occasion(headers: Mapping[str, str], say: Callable[..., str] = _in_english) -> list[str]:
    """Where and when the game was played, as far as it is known: event, round, site, date in words.

    say: puts words into another language, as `tr` does
    """
    number = known(headers, "Round")
    parts = (
        known(headers, "Event"),
        say(_ROUND, round=number) if number else "",
        known(headers, "Site"),
        date_in_words(known(headers, "Date"), say),
    )
    return [part for part in parts if part]


def opening(study: Study, positions: Positions) -> list[str]:
    """Code and name of the opening: the author's tags, and what they leave open from the positions of the game."""
    headers = study.headers
    eco, name, variation = (known(headers, tag) for tag in ("ECO", "Opening", "Variation"))
    if not name and (found := opening_of(study, positions)) is not None:
        eco, name = eco or found[0].eco, found[0].name
    return [part for part in (eco, name, variation) if part]


def result(headers: Mapping[str, str]) -> str:
    """The result as it is printed, such as ``"½–½"``; empty where the game has none."""
    return _RESULTS.get(headers.get("Result", "").strip(), "")


def date_in_words(date: str, say: Callable[..., str] = _in_english) -> str:
    """``"17 May 2024"`` of the PGN date ``"2024.05.17"``, as far as it is known; other text comes back as it is.

    say: puts words into another language, as `tr` does
    """
    match = re.fullmatch(r"(\d{4})[.\-/](\d{2}|\?\?)[.\-/](\d{2}|\?\?)", date.strip())
    if match is None:
        return date.strip("?. ")
    year, month, day = match.groups()
    if not month.isdigit() or not 1 <= int(month) <= 12:
        return year
    name = say(_MONTHS[int(month) - 1])
    if day.isdigit() and 1 <= int(day) <= 31:
        return say(_DAY, day=int(day), month=name, year=year)
    return f"{name} {year}"


def file_stem(title: str) -> str:
    """A file name without its extension that every file system takes, and that a shell need not quote.

    Letters of any script stay; everything else becomes a hyphen.
    """
    text = unicodedata.normalize("NFC", title)
    text = re.sub(r"[’']", "", text)
    text = re.sub(r"[^\w.]+|_+", "-", text)
    text = re.sub(r"-?\.+-?(?=$|-)|^\.+|\.{2,}", "-", text)
    text = re.sub(r"-{2,}", "-", text).strip("-.")
    while len(text.encode("utf-8", "ignore")) > _LONGEST_NAME:
        text = text[:-1]
    text = text.strip("-.")
    if not text or not text.encode("utf-8", "ignore"):
        return "study"
    head = text.partition(".")[0]
    return f"study-{text}" if _RESERVED.match(head) else text
