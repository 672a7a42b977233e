"""Dates and times of day as the language of the desk writes them."""

from __future__ import annotations

from datetime import datetime

from PySide6.QtCore import QDate, QDateTime, QLocale, QTime


def moment(when: datetime) -> str:
    """A moment of today by its time, any other with its date; in the time zone of the system."""
    local = when.astimezone()
    time = QTime(local.hour, local.minute)
    locale, short = QLocale(), QLocale.FormatType.ShortFormat
    if local.date() == datetime.now().astimezone().date():
        return locale.toString(time, short)
    return locale.toString(QDateTime(QDate(local.year, local.month, local.day), time), short)
