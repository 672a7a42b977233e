"""Edits of takes: which one is heard for a beat, and what is left out of one."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Any

from studyboard.model.edits import Edit, PutTake, Several
from studyboard.model.errors import EditRefusedError
from studyboard.model.script import BeatKey
from studyboard.model.study import Changed, Study
from studyboard.model.takes import Events, SaidLine, Span, Take, TakeEvent
from studyboard.translation import tr, tr_later

#: What of a take may be changed once it is recorded.
TAKE_FIELDS = frozenset({"name", "note", "kept", "left_out", "room_tone", "events", "said"})


@dataclass(frozen=True, slots=True)
class ChooseTake:
    """Let a beat be heard in this take; None leaves it to the program, which takes the newest one."""

    beat: BeatKey
    take: int | None
    label: str = tr_later("Choose a take")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        if self.take is not None and self.take not in study.takes:
            raise EditRefusedError(tr("There is no such take."))
        was = study.chosen.pop(self.beat, None)
        if self.take is not None:
            study.chosen[self.beat] = self.take
        changed.choices = True
        return ChooseTake(self.beat, was, self.label)


@dataclass(frozen=True, slots=True)
class ChangeTake:
    """Set one field of a take (see TAKE_FIELDS) to another value."""

    take: int
    field: str
    value: Any
    label: str = tr_later("Change a take")

    def apply(self, study: Study, changed: Changed) -> Edit:
        """See Edit."""
        if self.field not in TAKE_FIELDS:
            raise EditRefusedError(tr("A take has nothing called “{field}” that could be set.", field=self.field))
        take = study.takes.get(self.take)
        if take is None:
            raise EditRefusedError(tr("There is no such take."))
        if take.samples:  # of one whose sound was deleted, cuts can be undone too, to come past them in the history
            _check(take, self.field, self.value)
        study.takes[take.id] = replace(take, **{self.field: self.value})
        changed.takes.add(take.id)
        return ChangeTake(take.id, self.field, getattr(take, self.field), self.label)


def without_sound(study: Study) -> Several | None:
    """The edit after which discarded takes have no sound any more, before it is deleted for good; None for nothing.

    They stay in the study, so that the history still knows what it speaks of.
    """
    gone = [take for _, take in sorted(study.takes.items()) if not take.kept and take.samples]
    label = tr_later("Delete discarded sound")
    edits = tuple(PutTake(replace(take, samples=0, left_out=(), room_tone=None), label) for take in gone)
    return Several(edits, label) if edits else None


def discard(take: Take) -> ChangeTake:
    """The edit after which a take is heard nowhere; its sound stays in the study until it is purged."""
    return ChangeTake(take.id, "kept", False, tr_later("Discard a take"))


def take_back(take: Take) -> ChangeTake:
    """The edit after which a discarded take may be heard again."""
    return ChangeTake(take.id, "kept", True, tr_later("Take a take back"))


def write_note(take: Take, note: str) -> ChangeTake:
    """The edit that sets what the presenter wants to remember about a take."""
    return ChangeTake(take.id, "note", note, tr_later("Note on a take"))


def rename(take: Take, name: str) -> ChangeTake:
    """The edit that gives a take another name. Raises EditRefusedError where that is empty."""
    if not name.strip():
        raise EditRefusedError(tr("A take needs a name."))
    return ChangeTake(take.id, "name", name.strip(), tr_later("Rename a take"))


def leave_out(take: Take, span: Span) -> ChangeTake:
    """The edit after which this stretch is not heard. Raises EditRefusedError where nothing would be left."""
    return _leaving(take, (*take.left_out, _within(take, span)), tr_later("Leave out a stretch"))


def bring_back(take: Take, span: Span) -> ChangeTake:
    """The edit after which this stretch is heard again. Raises EditRefusedError where it is heard already."""
    within = _within(take, span)
    left: list[Span] = []
    for out in take.left_out:
        if out.start < min(out.end, within.start):
            left.append(Span(out.start, min(out.end, within.start)))
        if max(out.start, within.end) < out.end:
            left.append(Span(max(out.start, within.end), out.end))
    if tuple(left) == take.left_out:
        raise EditRefusedError(tr("All of this stretch is heard."))
    return ChangeTake(take.id, "left_out", tuple(left), tr_later("Bring a stretch back"))


def trim(take: Take, span: Span) -> ChangeTake:
    """The edit after which a take is heard from the start of this stretch to its end.

    What is left out inside stays so. Raises EditRefusedError where nothing would be left.
    """
    kept = _within(take, span)
    inside = [Span(max(out.start, kept.start), min(out.end, kept.end)) for out in take.left_out if out.meets(kept)]
    ends = [Span(0, kept.start)] if kept.start else []
    ends += [Span(kept.end, take.samples)] if kept.end < take.samples else []
    return _leaving(take, (*ends, *inside), tr_later("Trim a take"))


def set_room_tone(take: Take, span: Span | None) -> ChangeTake:
    """The edit that says where in a take nobody speaks; None lets the program look for it."""
    value = None if span is None else _within(take, span)
    return ChangeTake(take.id, "room_tone", value, tr_later("Set the room tone"))


def follow_the_voice(take: Take, events: Events, said: tuple[SaidLine, ...]) -> Edit:
    """The edit after which the board of a take changes at these moments, and its words have these times."""
    label = tr_later("Let the board follow the voice")
    return Several((ChangeTake(take.id, "events", events, label), ChangeTake(take.id, "said", said, label)), label)


def joined(spans: Iterable[Span]) -> tuple[Span, ...]:
    """Stretches in the order of time, those that touch made one. O(n log n)."""
    found: list[Span] = []
    for span in sorted(spans, key=lambda one: one.start):
        if found and span.start <= found[-1].end:
            found[-1] = Span(found[-1].start, max(found[-1].end, span.end))
        else:
            found.append(span)
    return tuple(found)


def _leaving(take: Take, spans: Iterable[Span], label: str) -> ChangeTake:
    out = joined(spans)
    if sum(span.samples for span in out) >= take.samples:
        raise EditRefusedError(tr("Nothing would be left of this take. Discard it instead."))
    return ChangeTake(take.id, "left_out", out, label)


def _within(take: Take, span: Span) -> Span:
    start, end = span.start, min(span.end, take.samples)
    if start >= end:
        raise EditRefusedError(tr("This stretch lies behind the end of the take."))
    return Span(start, end)


def _check(take: Take, field: str, value: object) -> None:
    """Raises EditRefusedError for a value that makes no sense; one that comes from a file may be anything."""
    spans: tuple[object, ...] = ()
    if field == "left_out":
        spans = value if isinstance(value, tuple) else (value,)
        good = all(isinstance(span, Span) for span in spans) and joined(spans) == spans  # type: ignore[arg-type]
        good = good and sum(span.samples for span in spans) < max(1, take.samples)  # type: ignore[attr-defined]
    elif field == "room_tone":
        spans = () if value is None else (value,)
        good = all(isinstance(span, Span) for span in spans)
    elif field == "kept":
        good = isinstance(value, bool)
    elif field in ("events", "said"):
        kind = TakeEvent if field == "events" else SaidLine
        good = isinstance(value, tuple) and all(isinstance(item, kind) for item in value)
    else:
        good = isinstance(value, str)
    if not good or any(isinstance(span, Span) and span.end > take.samples for span in spans):
        raise EditRefusedError(tr("This makes no sense for a take of this length."))
