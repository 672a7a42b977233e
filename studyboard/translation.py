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
from functools import cache
from string import Formatter


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


_as_written: ContextVar[bool] = ContextVar("as_written", default=False)


def translate_by(translate: Callable[[str], str], thousands: str = ",", decimal: str = ".") -> None:
    """Let `tr` translate by this function from now on; it returns the text itself where it knows no other.

    thousands, decimal: the signs that figures have in that language
    """
    _Language.translate = staticmethod(translate)
    _Language.signs = (thousands, decimal)


def written_number(value: object, spec: str) -> str:
    """A number as `format` writes it, with the signs for thousands and decimals of the desk's language."""
    text = format(value, spec)
    if _Language.signs == (",", ".") or _as_written.get() or not isinstance(value, int | float):
        return text
    thousands, decimal = _Language.signs
    return text.translate({ord(","): thousands, ord("."): decimal})


def tr(text: str, /, **values: object) -> str:
    """*text* in the language of the desk, its `{name}` filled with *values* as by str.format."""
    translated = text if _as_written.get() else _Language.translate(text)
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
    token = _as_written.set(True)
    try:
        yield
    finally:
        _as_written.reset(token)


def tr_later(text: str, /) -> str:
    """*text* as it is; marks it as one that `tr` is asked for later."""
    return text
