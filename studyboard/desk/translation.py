"""The words of the desk in the language of its user.

Texts are written in English where they are shown, inside `tr("…")`; Qt's tools collect them from there
(`pyside6-lupdate`), and a translation of them lies in resources/translations. A text that stands in a table is marked
with `tr_later("…")` there and translated with `tr(…)` where it is shown.
"""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication


def tr(text: str, /, **values: object) -> str:
    """*text* in the language of the desk, its `{name}` filled with *values* as by str.format."""
    translated = QCoreApplication.translate("", text)
    return translated.format(**values) if values else translated


def tr_later(text: str, /) -> str:
    """*text* as it is; marks it as one that `tr` is asked for later."""
    return text
