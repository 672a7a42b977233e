"""A statement that was found in a line, and what a judge of it says."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TypeAlias, TypeVar

import chess

from studyboard.board.work import WorkCancelledError, never_cancelled
from studyboard.reading.findings import Fix, Topic, Verdict
from studyboard.reading.mentions import Mention, Named
from studyboard.reading.referents import moved_to, referents, subjects
from studyboard.reading.scene import Scene, Sentence

#: How often a search asks whether to go on, every CANCEL_EVERY positions, before it is given up: some seconds for a
#: whole talk, a tenth of one as a line is typed.
_DEEP, _QUICK = 2000, 60
_Found = TypeVar("_Found")
_NEW_CLAUSE = re.compile(r" , (?:and|but) §p\d+$")
_NEXT_DOERS = re.compile(r" , (?:and|but) §p\d+(?: and §p\d+)+$")
_LAST_NAMED = re.compile(r"§[pc](\d+)(?: (?:is|was|are|were|and|,))*$")
_MOVE_NEXT = re.compile(r"§p\d+ , §s\d+$")
_NAMED_APART = re.compile(r"^§[ps]\d+ , §p\d+ and §p\d+$")
_APPOSED = re.compile(r"^§p\d+ , §p\d+(?: and §p\d+)*$")
_MARK = re.compile(r"§[pscnf](\d+)")


@dataclass(frozen=True, slots=True)
class Judgement:
    """What the board says to a statement.

    why: what is true, in words; claimed: what is said, in words
    reach: words around the claim that belong to it, first and behind the last: who has it
    exact: nothing about the statement can be understood otherwise, so that its opposite may be judged as well
    """

    verdict: Verdict
    topic: Topic
    claimed: str
    why: str
    squares: tuple[chess.Square, ...] = ()
    line: tuple[str, ...] = ()
    exact: bool = False
    fix: Fix | None = None
    reach: tuple[int, int] | None = None


@dataclass(frozen=True, slots=True)
class Claim:
    """A pattern that was found in a sentence.

    kind: which; start, end: the words of it; deep: whether searches that take seconds are wanted
    cancelled: whether nobody wants the result of a search any more
    earlier: whether it may as well be said of the positions before the moves of the line
    """

    scene: Scene
    sentence: Sentence
    kind: str
    match: re.Match[str]
    start: int
    end: int
    deep: bool = False
    cancelled: Callable[[], bool] = never_cancelled
    earlier: bool = False

    def said(self, group: str) -> str:
        """The text of a group of the pattern; empty where it is not part of what was found."""
        return self.match.groupdict().get(group) or ""

    def has(self, group: str) -> bool:
        """Was this group found, even without words of its own?"""
        return self.match.groupdict().get(group) is not None

    def mentions(self, group: str) -> list[Mention]:
        """What a group names, in order."""
        return [self.scene.mentions[int(found[1])] for found in _MARK.finditer(self.said(group))]

    def things(self) -> list[Mention]:
        """What the group "things" names, without a last one that begins the next clause: “…, and the queen covers”."""
        named = self.mentions("things")
        if len(named) > 1 and named[0].pronoun and _APPOSED.search(self.said("things")):
            # “One man guarding it, the knight on f3”: the one that does it.
            named = named[:1]
        if len(named) > 1 and self.runs_on():
            named = named[: -self._next_doers()]
        moves = next((n for n, m in enumerate(named) if n and (m.moves_to or self._played_at(m))), None)
        if moves is not None:
            # “With an eye on f7, bishop f5, c3”, “{c4}that hits d5, {c6}c6”: the moves that follow.
            named = named[:moves]
        if len(named) > 1 and not named[-1].definite and named[-1].kind and _NEW_CLAUSE.search(self.said("things")):
            # “Kicking the bishop, and a knight on the rim is dim.”
            named.pop()
        if len(named) > 1 and named[-1].what is Named.SQUARE and _MOVE_NEXT.search(self.said("things")):
            # “Put the question to it, h3”: the move that does it.
            named.pop()
        every = len(named) == len(self.mentions("things"))
        goes_on = bool(self.after()) and not self.hinted("too_after")
        if len(named) > 1 and every and goes_on and _NEW_CLAUSE.search(self.said("things")):
            # “Attacks that pawn, and the other knight comes out.”
            named.pop()
        if len(named) > 1 and self.hinted("counted_doers_before") and _NAMED_APART.search(self.said("things")):
            # “Two pawns protect it, the f-pawn and the h-pawn”: those that do it.
            named = named[:1]
        # "…, a second attacker" says something of what was named, and names nothing further.
        while len(named) > 1 and _is_remark(named[-1]):
            named.pop()
        return named

    def _played_at(self, mention: Mention) -> bool:
        """Does a square stand at the word at which a move to it is played?"""
        steps = self.scene.steps if mention.what is Named.SQUARE else ()
        return any(step.cued and step.token == mention.start and step.landed == mention.square for step in steps)

    def _next_doers(self) -> int:
        """How many of the last things named do what the next clause says: “…, and the bishop and the rook cover”."""
        joined = _NEXT_DOERS.search(self.said("things"))
        return 1 if joined is None else min(len(_MARK.findall(joined.group())), len(self.mentions("things")) - 1)

    def runs_on(self) -> bool:
        """Is the last of the things named the subject of a verb of its own?"""
        named = self.mentions("things")
        if named[-1].moves_to and len(named) > 1:
            return True
        after = self.after()
        if self.hinted("done_by_both_after"):
            # “Holds the pawn, and the knight and the bishop both attack it.”
            return True
        return bool(after) and not after.startswith((",", "§")) and not self.scene.words.hint("joined_after", after)

    def mention(self, group: str) -> Mention | None:
        """The first thing that a group names."""
        named = self.mentions(group)
        return named[0] if named else None

    def before(self) -> str:
        """The coded sentence before the match."""
        return self.match.string[: self.match.start()].rstrip()

    def after(self) -> str:
        """The coded sentence behind the match."""
        return self.match.string[self.match.end() :].lstrip()

    def hinted(self, name: str) -> bool:
        """Does what stands before or behind it (by the name of the hint) hold this hint?"""
        text = (
            self.before()
            if name.endswith("_before")
            else self.after()
            if name.endswith("_after")
            else self.match.group()
        )
        return self.scene.words.hint(name, text)

    def search(self, find: Callable[[Callable[[], bool]], _Found]) -> _Found | None:
        """What a search finds within the time that a line is worth; None where it would take longer.

        Raises WorkCancelledError where nobody wants it any more.
        """
        looks = 0

        def enough() -> bool:
            nonlocal looks
            looks += 1
            return looks > (_DEEP if self.deep else _QUICK) or self.cancelled()

        try:
            return find(enough)
        except WorkCancelledError:
            if self.cancelled():
                raise
            return None

    def boards(self, *, wide: bool = False) -> list[chess.Board]:
        """The positions that it may speak of, the most likely first."""
        shown = self.scene.window(self.start, wide=wide)
        if any(self.scene.words.hint("was", word) for word in self.match.group().split()):
            # “The knight was attacked, so it went to e3.”
            shown += [step.before for step in self.scene.played_near(self.start) if step.before is not None]
        if not self.earlier:
            return shown
        before = [step.before for step in self.scene.steps if step.before is not None]
        here = (*before, *(step.board for step in self.scene.steps))
        return [*shown, self.scene.start, *here, *self.scene.positions_before()]

    def standing(self, mention: Mention) -> Iterator[tuple[chess.Board, chess.Square]]:
        """The pieces that a mention can mean, in each position of which it may be said."""
        for board in self.boards():
            yield from ((board, at) for at in referents(self.scene, mention, board) if board.piece_at(at))

    def on_condition(self) -> bool:
        """Does a word of condition stand before it in its sentence: “if the rook leaves, Black can castle”?"""
        # “Had White castled, …”: the condition ends in the claim's first word.
        words = [token.text for token in self.scene.tokens[self.sentence.start : self.start + 1]]
        conditions = self.scene.words.moods.get("conditional", frozenset())
        return any(tuple(words[at : at + n]) in conditions for at in range(len(words)) for n in (1, 2, 3))

    def subjects(self) -> list[list[Mention]]:
        """Who does it: see referents.subjects."""
        if self.sentence.plain and (named := _LAST_NAMED.search(self.before())):
            return [[self.scene.mentions[int(named[1])]]]
        return subjects(self.scene, self.sentence.start, self.start)

    def movers(self) -> list[chess.Square]:
        """Where the pieces stand that moved in this sentence."""
        return moved_to(self.scene, self.start)

    def quote(self) -> str:
        """Its words as written."""
        return self.scene.quote(self.start, self.last())

    def last(self) -> int:
        """The word behind its last one, without what begins the next clause."""
        named = self.mentions("things")
        if len(named) > 1 and self.runs_on() and named[-1].end == self.end:
            return named[-1 - self._next_doers()].end
        return self.end


def _is_remark(mention: Mention) -> bool:
    bare = mention.what is Named.PIECE and mention.kind is None and mention.square is None
    return bare and (mention.other or not mention.definite) and not mention.pronoun


Judge: TypeAlias = Callable[[Claim], "list[Judgement]"]


def confirmed(topic: Topic, claimed: str, why: str, *squares: chess.Square, exact: bool = False) -> list[Judgement]:
    """One judgement: it is so."""
    return [Judgement(Verdict.CONFIRMED, topic, claimed, why, squares, exact=exact)]


def contradicted(topic: Topic, claimed: str, why: str, *squares: chess.Square) -> list[Judgement]:
    """One judgement: it is not so."""
    return [Judgement(Verdict.CONTRADICTED, topic, claimed, why, squares)]


def undecided(topic: Topic, claimed: str, why: str) -> list[Judgement]:
    """One judgement: the board cannot tell."""
    return [Judgement(Verdict.UNDECIDED, topic, claimed, why)]
