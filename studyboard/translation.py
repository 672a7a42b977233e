"""The words that the user reads, in the language of the desk.

Texts are written in English where they are shown, inside `tr("…")`; Qt's tools collect them from there, and
resources/translations has what they are in other languages (DEVELOPERS.md says how). A text that stands in a table is
marked with `tr_later("…")` there and translated with `tr(…)` where it is shown. The desk says at its start how texts
are translated (`translate_by`); without a desk everything is English, so nothing here needs Qt.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass
from functools import cache
from string import Formatter

from studyboard.resources_path import resource


class _Language:
    """The language of this process, as that of a locale: one for all threads.

    translate: from English; signs: what stands in figures for the English comma between thousands and decimal point
    """

    translate: Callable[[str], str] = staticmethod(str)
    signs: tuple[str, str] = (",", ".")


class _Filling(Formatter):
    """Fills texts as str.format does, with figures as the language writes them."""

    def format_field(self, value: object, format_spec: str) -> str:
        """See string.Formatter."""
        return written_number(value, format_spec)


@dataclass(frozen=True, slots=True)
class _Speaking:
    """What `tr` does in one thread for a while: how it translates, and the signs that figures have."""

    translate: Callable[[str], str]
    signs: tuple[str, str]


_ENGLISH = _Speaking(str, (",", "."))
_speaking: ContextVar[_Speaking | None] = ContextVar("speaking", default=None)


def translate_by(translate: Callable[[str], str], thousands: str = ",", decimal: str = ".") -> None:
    """Let `tr` translate by this function from now on; it returns the text itself where it knows no other.

    thousands, decimal: the signs that figures have in that language
    """
    _Language.translate = staticmethod(translate)
    _Language.signs = (thousands, decimal)


def written_number(value: object, spec: str) -> str:
    """A number as `format` writes it, with the signs for thousands and decimals of the desk's language."""
    text = format(value, spec)
    here = _speaking.get()
    thousands, decimal = _Language.signs if here is None else here.signs
    if (thousands, decimal) == (",", ".") or not isinstance(value, int | float):
        return text
    return text.translate({ord(","): thousands, ord("."): decimal})


def tr(text: str, /, **values: object) -> str:
    """*text* in the language of the desk, its `{name}` filled with *values* as by str.format."""
    here = _speaking.get()
    translated = _Language.translate(text) if here is None else here.translate(text)
    if not values:
        return translated
    # Filling in by our own rules takes several times as long, so that only figures are.
    return _FILLING.format(translated, **values) if _has_figures(translated) else translated.format(**values)


_FILLING = _Filling()


@cache
def _has_figures(text: str) -> bool:
    """Does the text say how a number is to be written?"""
    return re.search(r"\{\w+:", text) is not None


@contextmanager
def as_written() -> Iterator[None]:
    """Let `tr` leave texts in English for as long as this lasts, in this thread only: for words that belong to the
    script or go into a file, and not to the desk. Decorates functions too."""
    token = _speaking.set(_ENGLISH)
    try:
        yield
    finally:
        _speaking.reset(token)


@contextmanager
def in_language(language: str) -> Iterator[None]:
    """Let `tr` speak a language for as long as this lasts, in this thread only, and without Qt: for what is printed of
    a script in the language of that script.

    language: such as "de" or "de_AT"; English where there is no translation
    """
    token = _speaking.set(_speaker(language.replace("-", "_").split("_")[0].lower()))
    try:
        yield
    finally:
        _speaking.reset(token)


#: The signs between thousands and for the decimal point, of languages that have others than English.
_SIGNS = {"de": (".", ",")}


@cache
def _speaker(code: str) -> _Speaking:
    # Only what is printed needs it; the desk starts without.
    from xml.etree import ElementTree

    try:
        path = resource("translations", f"{code}.ts") if code.isalpha() else None
    except FileNotFoundError:
        path = None
    if path is None:
        return _ENGLISH
    known = {
        message.findtext("source", ""): message.findtext("translation", "")
        for message in ElementTree.parse(path).iter("message")
    }
    return _Speaking(lambda text: known.get(text) or text, _SIGNS.get(code, (",", ".")))


def tr_later(text: str, /) -> str:
    """*text* as it is; marks it as one that `tr` is asked for later."""
    return text
