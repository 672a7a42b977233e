"""Seconds as a presenter reads them."""

from __future__ import annotations

from studyboard.translation import tr


def clock(seconds: float) -> str:
    """Minutes and seconds, “4:05”; with hours from 60 minutes on; a minus sign before negative times."""
    whole = round(abs(seconds))
    hours, rest = divmod(whole, 3600)
    minutes, rest = divmod(rest, 60)
    text = f"{hours}:{minutes:02d}:{rest:02d}" if hours else f"{minutes}:{rest:02d}"
    return f"−{text}" if seconds < 0 and whole else text


def over_or_under(over: float) -> str:
    """How far a talk is from its slot, in words: “14 s under”, “1:10 over”, “to the second”."""
    whole = round(abs(over))
    if not whole:
        return tr("to the second")
    amount = tr("{seconds} s", seconds=whole) if whole < 60 else clock(whole)
    return tr("{amount} over", amount=amount) if over > 0 else tr("{amount} under", amount=amount)
