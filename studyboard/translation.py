"""The words that the user reads, in the language of the desk.

Texts are written in English where they are shown, inside `tr("…")`; Qt's tools collect them from there, and
resources/translations has what they are in other languages (DEVELOPERS.md says how). A text that stands in a table is
marked with `tr_later("…")` there and translated with `tr(…)` where it is shown. The desk says at its start how texts
are translated (`translate_by`); without a desk everything is English, so nothing here needs Qt.
"""

from __future__ import annotations

from collections.abc import Callable


class _Language:
    """The language of this process, as that of a locale: one for all threads."""

    translate: Callable[[str], str] = staticmethod(str)


def translate_by(translate: Callable[[str], str]) -> None:
    """Let `tr` translate by this function from now on; it returns the text itself where it knows no other."""
    _Language.translate = staticmethod(translate)


def tr(text: str, /, **values: object) -> str:
    """*text* in the language of the desk, its `{name}` filled with *values* as by str.format."""
    translated = _Language.translate(text)
    return translated.format(**values) if values else translated


def tr_later(text: str, /) -> str:
    """*text* as it is; marks it as one that `tr` is asked for later."""
    return text
