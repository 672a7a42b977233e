"""Sentences that recur from talk to talk, with places in them that the game and a list of names fill."""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from studyboard.resources_path import resource
from studyboard.translation import tr
from studyboard.writing.kept_text import NotKeptError, config_folder, read_text, write_text

_PLACE = re.compile(r"\{(\w+)\}")
_ENGLISH = "January February March April May June July August September October November December"
_GERMAN = "Januar Februar März April Mai Juni Juli August September Oktober November Dezember"
_MONTHS = {"en": _ENGLISH.split(), "de": _GERMAN.split()}
_AND = {"en": "and", "de": "und"}

#: What may stand between braces, each with the tag of the game that fills it; the names come from a file.
PLACES: Mapping[str, str] = {
    "white": "White",
    "black": "Black",
    "event": "Event",
    "site": "Site",
    "round": "Round",
    "date": "Date",
    "names": "",
}


@dataclass(frozen=True, slots=True)
class Snippet:
    """One recurring text: what it is called in the menu, and its words with places such as ``{white}``."""

    name: str
    text: str


@dataclass(frozen=True, slots=True)
class Filled:
    """A snippet with its places filled.

    missing: the places for which nothing is known; they stand in the text as they were written
    """

    text: str
    missing: tuple[str, ...] = ()


def fill(text: str, headers: Mapping[str, str], names: Sequence[str] = (), language: str = "en") -> Filled:
    """*text* with its places filled; names and dates in the words of *language*."""
    missing: list[str] = []

    def filled(place: re.Match[str]) -> str:
        value = _value(place[1].lower(), headers, names, language.split("_")[0])
        if value:
            return value
        if place[1] not in missing:
            missing.append(place[1])
        return place[0]

    return Filled(_PLACE.sub(filled, text), tuple(missing))


def listed(names: Sequence[str], language: str = "en") -> str:
    """Names as they are read out: ``"Ada, Bo and Cy"``."""
    if len(names) < 2:
        return "".join(names)
    return f"{', '.join(names[:-1])} {_AND.get(language.split('_')[0], _AND['en'])} {names[-1]}"


def spoken_name(name: str) -> str:
    """A player's name as it is said: ``"Garvey, Anton"`` becomes ``"Anton Garvey"``; "?" becomes nothing."""
    family, _, given = (part.strip() for part in name.partition(","))
    said = f"{given} {family}".strip()
    return "" if said.strip("?") == "" else said


def spoken_date(date: str, language: str = "en") -> str:
    """A date of PGN as it is said: ``"2030.05.17"`` becomes ``"17 May 2030"``; what is unknown is left out."""
    year, month, day = (*date.split("."), "", "")[:3]
    months = _MONTHS.get(language.split("_")[0], _MONTHS["en"])
    parts: list[str] = []
    if month.isdigit() and 1 <= int(month) <= 12:
        if day.isdigit():
            parts.append(f"{int(day)}." if months is _MONTHS["de"] else str(int(day)))
        parts.append(months[int(month) - 1])
    if year.isdigit():
        parts.append(year)
    return " ".join(parts)


def snippets_file() -> Path:
    """Where the user's snippets are kept."""
    return config_folder() / "snippets.json"


def read_snippets(language: str = "en") -> tuple[Snippet, ...]:
    """The user's snippets; those that the program brings, in *language*, until there are any.

    Raises NotKeptError where the file cannot be read, with its place.
    """
    path = snippets_file()
    text = read_text(path)
    if not text.strip():
        folder = resource("snippets")
        brought = folder / f"{language.split('_')[0]}.json"
        text = (brought if brought.is_file() else folder / "en.json").read_text(encoding="utf-8")
    try:
        plain = json.loads(text)
        return tuple(Snippet(str(one["name"]), str(one["text"])) for one in plain)
    except (ValueError, TypeError, KeyError, RecursionError) as reason:
        raise NotKeptError(
            tr("“{path}” holds no snippets ({reason}). Mend it, or move it away.", path=path, reason=reason)
        ) from reason


def keep_snippets(snippets: Iterable[Snippet]) -> None:
    """Replace the user's snippets. Raises NotKeptError with the old ones still there."""
    plain = [{"name": snippet.name, "text": snippet.text} for snippet in snippets]
    write_text(snippets_file(), json.dumps(plain, ensure_ascii=False, indent=1) + "\n")


def _value(place: str, headers: Mapping[str, str], names: Sequence[str], language: str) -> str:
    if place == "names":
        return listed(names, language)
    tag = PLACES.get(place)
    value = headers.get(tag, "") if tag else ""
    say: dict[str, Callable[[str], str]] = {
        "white": spoken_name,
        "black": spoken_name,
        "date": lambda date: spoken_date(date, language),
    }
    said = say.get(place, str)(value)
    return "" if said.strip("?-. ") == "" else said
