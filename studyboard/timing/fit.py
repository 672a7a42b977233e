"""Fitting the talk to its slot: the time that is over or under, spread over the beats that are not locked."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from studyboard.model.beats import Beat, beats
from studyboard.model.edits import ChangeLine, ChangeNode, Edit, Several
from studyboard.model.errors import EditRefusedError
from studyboard.model.order import running_order
from studyboard.model.script import Part
from studyboard.model.study import Study
from studyboard.timing.plan import estimate_beat, returns
from studyboard.translation import tr, tr_later

#: How much shorter or longer than at the presenter's own pace a beat may be told, as a share of its speech. A fluent
#: chess presenter speaks single paragraphs at 140 to 235 words a minute around a mean of 185 (common practice).
FASTEST = 185 / 235
SLOWEST = 185 / 140

_LABEL = tr_later("Fit the talk to its slot")


@dataclass(frozen=True, slots=True)
class Fit:
    """What fitting comes to.

    edit: sets the intended seconds of every beat that is not locked
    factor: how long their speech takes, as a share of the estimate; inside FASTEST to SLOWEST
    left: what remains of the difference (s): positive for over, negative for under, 0.0 where it fits
    beats: how many beats are fitted
    """

    edit: Edit
    factor: float
    left: float
    beats: int


def fit_to_slot(study: Study, told: Sequence[Beat] | None = None) -> Fit:
    """Spread the difference between plan and slot over the speech of the beats that are not locked.

    All of them become shorter or longer by the same share, as if the presenter spoke faster or slower throughout;
    think pauses and returns keep their length. Where the slot asks for a pace that nobody believes, the fit stops at
    the fastest or slowest one and says what is left. Raises EditRefusedError without a slot, or where every beat is
    locked. O(length of the script).

    told: the beats of the study, where they are known
    """
    if study.slot is None:
        raise EditRefusedError(tr("Set the slot first: a talk is fitted to its length."))
    told = beats(study, running_order(study)) if told is None else told
    free = [beat for beat in told if not beat.locked]
    fixed = {beat.key: _fixed(study, beat) for beat in free}
    speech = {beat.key: estimate_beat(study.pace, beat) - fixed[beat.key] for beat in free}
    elastic = sum(speech.values())
    if elastic <= 0:
        raise EditRefusedError(tr("Every beat is locked: unlock some, so that there is something to fit."))
    locked = sum(_planned(study, beat) for beat in told if beat.locked)
    asked = (study.slot - locked - sum(fixed.values())) / elastic
    factor = min(max(asked, FASTEST), SLOWEST)
    seconds = {key: round(fixed[key] + speech[key] * factor, 1) for key in speech}
    if factor == asked:
        # Tenths of seconds do not add up to the slot: the longest beat takes what they leave.
        longest = max(speech, key=lambda key: speech[key])
        seconds[longest] += study.slot - locked - sum(seconds.values())
    edits = tuple(_intend(study, beat, seconds[beat.key]) for beat in free)
    left = locked + sum(seconds.values()) - study.slot
    return Fit(Several(edits, _LABEL), factor, 0.0 if abs(left) < 0.05 else left, len(free))


def lock(study: Study, key: int | Part, locked: bool, told: Sequence[Beat] | None = None) -> Edit:
    """The edit that locks the length of a beat, at what the plan says where none was intended, or unlocks it.

    told: the beats of the study, where they are known
    Raises EditRefusedError where the beat is not told.
    """
    told = beats(study, running_order(study)) if told is None else told
    beat = next((beat for beat in told if beat.key == key), None)
    if beat is None:
        raise EditRefusedError(tr("This is not told, so it has no length to lock."))
    return _lock(study, beat, locked)


def _lock(study: Study, beat: Beat, locked: bool) -> Edit:
    key = beat.key
    label = tr_later("Lock the length") if locked else tr_later("Unlock the length")
    seconds = round(_planned(study, beat), 1)
    if isinstance(key, Part):
        line = replace(study.line(key), locked=locked)
        return ChangeLine(key, replace(line, intended=seconds) if locked else line, label)
    changes: list[Edit] = [ChangeNode(key, "locked", locked, label)]
    if locked and beat.intended is None:
        changes.insert(0, ChangeNode(key, "intended", seconds, label))
    return changes[0] if len(changes) == 1 else Several(tuple(changes), label)


def lock_several(study: Study, keys: Iterable[int | Part], locked: bool) -> Edit:
    """The edit that locks or unlocks the lengths of these beats; rows that are not told are passed by.

    Raises EditRefusedError where none of them is told, or all are so already.
    """
    told = {beat.key: beat for beat in beats(study, running_order(study))}
    rows = [key for key in keys if key in told]
    if not rows:
        raise EditRefusedError(tr("This is not told, so it has no length to lock."))
    edits = tuple(_lock(study, told[key], locked) for key in rows if told[key].locked != locked)
    if not edits:
        raise EditRefusedError(tr("The lengths are locked already.") if locked else tr("No length here is locked."))
    return (
        edits[0]
        if len(edits) == 1
        else Several(edits, tr_later("Lock the lengths") if locked else tr_later("Unlock the lengths"))
    )


def all_locked(study: Study, keys: Iterable[int | Part]) -> bool:
    """True where the lengths of all these rows that are told are locked."""
    wanted = set(keys)
    return all(beat.locked for beat in beats(study, running_order(study)) if beat.key in wanted)


def intend(study: Study, key: int | Part, seconds: float | None) -> Edit:
    """The edit that sets how long a beat should take (s) and locks it there, or leaves it to the estimate again."""
    label = tr_later("Set the intended length")
    if isinstance(key, Part):
        return ChangeLine(key, replace(study.line(key), intended=seconds, locked=seconds is not None), label)
    length = ChangeNode(key, "intended", seconds, label)
    if study.nodes[key].locked == (seconds is not None):
        return length
    return Several((length, ChangeNode(key, "locked", seconds is not None, label)), label)


def unlock_all(study: Study) -> Edit:
    """The edit that unlocks every beat. Raises EditRefusedError where none is locked."""
    label = tr_later("Unlock every length")
    edits: list[Edit] = [ChangeNode(node.id, "locked", False, label) for node in study.nodes.values() if node.locked]
    edits += [ChangeLine(part, replace(line, locked=False), label) for part, line in study.lines.items() if line.locked]
    if not edits:
        raise EditRefusedError(tr("No length is locked."))
    return Several(tuple(edits), label)


def _planned(study: Study, beat: Beat) -> float:
    return estimate_beat(study.pace, beat) if beat.intended is None else beat.intended


def _fixed(study: Study, beat: Beat) -> float:
    """What does not stretch: the think pause and the board's steps back (s)."""
    return returns(beat) * study.pace.back_time + beat.think


def _intend(study: Study, beat: Beat, seconds: float) -> Edit:
    if isinstance(beat.key, Part):
        return ChangeLine(beat.key, replace(study.line(beat.key), intended=seconds), _LABEL)
    return ChangeNode(beat.key, "intended", seconds, _LABEL)
