"""Lines whose times are known, from transcripts and from takes: what a pace is learnt from."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

from studyboard.model.beats import Beat
from studyboard.model.order import VisitKind
from studyboard.model.script import words
from studyboard.model.study import Study
from studyboard.notation.narration.transcripts import transcript
from studyboard.timing.plan import returns
from studyboard.timing.recorded import put_together
from studyboard.timing.spread_beats import only_spread

#: Captions, and lines as short as they (s), end anywhere in a sentence and say little about it, so they are joined
#: until they last this long and a sentence has ended, or twice as long (s). Short talks are cut into this many pieces
#: at least.
_CAPTION = 6.0
_JOINED, _PIECES = 16.0, 24
#: What is in square brackets, or in round ones by itself, is a sound that somebody describes, not speech.
_NOT_SAID = re.compile(
    r"\[[^\]]*\]|(?<![^\s])\((?:applause|laughter|laughs|music|silence|pause|coughs?)\)", re.IGNORECASE
)
#: Prose has a sign at every sixth word or so; where there is not one at every thirtieth, nobody has put any.
_SIGN, _MARKED = re.compile(r"[,;:.?!…–—][\"'”’)\]]*$"), 30
_SENTENCE_ENDS = re.compile(r"[.!?…][\"'”’)\]]*$")


@dataclass(frozen=True, slots=True)
class TimedLine:
    """A line and how long it took.

    text: what was said
    seconds: from its start to the start of the next one (s)
    closes: True where a paragraph ends with it, False for the line of a beat
    silent_moves, returns: moves that were played without a word in these seconds, and steps back from side-lines
    side_line: True where it is told in a side-line
    whole: True where its ends were written down in whole seconds
    unmarked: True where nobody has put commas and full stops, so that pauses cannot be seen
    """

    text: str
    seconds: float
    closes: bool = True
    silent_moves: int = 0
    returns: int = 0
    side_line: bool = False
    whole: bool = False
    unmarked: bool = False


def timed_lines(text: str) -> tuple[TimedLine, ...]:
    """The lines of a transcript with times (`[m:ss]`, WebVTT, SRT) that have an end. O(length).

    Captions are joined to paragraphs of a quarter of a minute and more; a caption that stays on the screen while the
    next one comes lasts until that begins.
    """
    talk = transcript(text)
    spans: list[tuple[str, float, float]] = []
    for paragraph in talk.paragraphs:
        if paragraph.at is not None and paragraph.until is not None and paragraph.until > paragraph.at:
            said = " ".join(_NOT_SAID.sub(" ", talk.text[paragraph.start : paragraph.end]).split())
            spans.append((said, paragraph.at, paragraph.until))
    whole = bool(spans) and all(at == int(at) and until == int(until) for _, at, until in spans)
    if len(spans) > 1 and ("-->" in text or median(until - at for _, at, until in spans) < _CAPTION):
        spans = _joined(spans)
    unmarked = _unmarked([said for said, _, _ in spans])
    lines = (TimedLine(said, until - at, _closes(said), whole=whole, unmarked=unmarked) for said, at, until in spans)
    return tuple(line for line in lines if words(line.text))


def recorded_lines(study: Study) -> tuple[TimedLine, ...]:
    """The beats of a study as they are heard in its takes; think pauses are taken off.

    Those that were only spread over sound from elsewhere are left out: they would teach the plan to itself.
    """
    assembly = put_together(study)
    heard = (
        one for one in assembly.beats if one.take is not None and not only_spread(study.takes[one.take], one.beat.key)
    )
    lines = (told_line(one.beat, one.samples / assembly.rate) for one in heard)
    return tuple(line for line in lines if line is not None)


def told_line(beat: Beat, seconds: float) -> TimedLine | None:
    """A beat that took so long (s), its think pause taken off; None where nothing is left, or nothing happens in it."""
    spent = seconds - beat.think
    silent = 0 if beat.spoken else sum(visit.kind is VisitKind.TELL for visit in beat.visits)
    line = TimedLine(beat.spoken.text, spent, False, silent, returns(beat), beat.depth > 0)
    return line if spent > 0 and (words(line.text) or silent or line.returns) else None


def _unmarked(texts: Sequence[str]) -> bool:
    """True where there are next to no signs between the words."""
    said = [word for text in texts for word in words(text)]
    return sum(_SIGN.search(word) is not None for word in said) * _MARKED < len(said)


def _closes(text: str) -> bool:
    return _SENTENCE_ENDS.search(text) is not None


def _joined(spans: list[tuple[str, float, float]]) -> list[tuple[str, float, float]]:
    found: list[tuple[str, float, float]] = []
    marked = not _unmarked([said for said, _, _ in spans])
    wanted = min(_JOINED, (spans[-1][2] - spans[0][1]) / _PIECES)
    is_open = False
    for said, at, until in spans:
        if is_open and found[-1][2] == at:
            before, since, _ = found[-1]
            found[-1] = (f"{before} {said}", since, until)
        else:
            found.append((said, at, until))
        long = found[-1][2] - found[-1][1]
        is_open = long < wanted or (marked and long < 2 * wanted and not _closes(said))
    return found
