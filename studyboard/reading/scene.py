"""One spoken line with the board beside it: which position each word speaks of."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

import chess

from studyboard.board.moves import landing_square
from studyboard.model.script import BeatKey, word_spans
from studyboard.notation.narration.tokens import Break, Token, tokens_of
from studyboard.reading.mentions import Mention, Named, Players, mentions_of
from studyboard.reading.moods import Mood, moods_of
from studyboard.reading.moves_said import Said, moves_said
from studyboard.reading.words import ClaimWords, claim_words

#: What is told in the past may be said of so many half-moves before the line.
_LOOKS_BACK = 4
#: Verbs that are joined to a name: “she's”.
_VERBS = {"s": " is", "re": " are", "ve": " have"}


@dataclass(frozen=True, slots=True)
class Step:
    """The board changing while a line is said.

    board: the position from then on; token: the word from which it is shown
    node, move: the node and its move, None where no move is played (a return, a position)
    before: the position before the move
    cued: True where the author tied the move to the word
    """

    board: chess.Board
    token: int
    node: int | None = None
    move: chess.Move | None = None
    before: chess.Board | None = None
    cued: bool = False

    @property
    def landed(self) -> chess.Square | None:
        """Where the piece that moved stands now."""
        if self.move is None or self.before is None or not self.move:
            return None
        return landing_square(self.before, self.move)


@dataclass(frozen=True, slots=True)
class Sentence:
    """One sentence, with names replaced by marks so that patterns can be laid over it.

    start, end: which words; code: the coded text; places: where in the code each word or mention begins
    seam: where something was taken out of the code, of which only a statement across that place is sought; -1: nowhere
    plain: whether the words are other, plainer ones than those that are said
    """

    start: int
    end: int
    code: str
    places: tuple[tuple[int, int], ...]
    seam: int = -1
    plain: bool = False

    def token_at(self, place: int) -> int:
        """The word to which a place of the code belongs."""
        found = self.start
        for at, token in self.places:
            if at > place:
                break
            found = token
        return found


@dataclass(frozen=True, slots=True)
class Talk:
    """What is known of the talk around a line.

    moves: full moves of the main line; result: the Result tag; part: which part of the talk, "" for a node's line
    ends_game: the last node of the main line
    history: the moves that lead to the line, from the start position; first: the start position
    root: the position with which the talk begins, whatever it is; game: the moves of the main line from there
    """

    moves: int = 0
    result: str = "*"
    part: str = ""
    ends_game: bool = False
    history: tuple[chess.Move, ...] = ()
    first: chess.Board | None = None
    think: float = 0.0
    root: chess.Board | None = None
    game: tuple[chess.Move, ...] = ()


@dataclass(slots=True)
class Scene:
    """A line that is being checked.

    State: nothing changes after it was built.

    key: the beat; text: the line; steps: the board, in order, the first one shown from the first word on
    start: the position shown before the line begins
    """

    text: str
    key: BeatKey | None
    start: chess.Board
    steps: tuple[Step, ...]
    words: ClaimWords
    players: Players
    depth: int = 0
    tokens: tuple[Token, ...] = ()
    mentions: tuple[Mention, ...] = ()
    sentences: tuple[Sentence, ...] = ()
    moods: tuple[Mood, ...] = ()
    clause_of: tuple[int, ...] = ()
    sentence_of: tuple[int, ...] = ()
    said: tuple[Said, ...] = ()
    talk: Talk = field(default_factory=Talk)

    def castled(self, colour: chess.Color, token: int) -> str | None:
        """Whether this side has castled when *token* is said: "k", "q" or ""; None where it is not known."""
        board = self.talk.first
        if board is None:
            # A king that may still castle has not done so.
            there = self.board(self.board_index(token))
            return "" if there.has_castling_rights(colour) else None
        board = board.copy(stack=False)
        moves = [*self.talk.history, *(s.move for s in self.steps[: self.board_index(token) + 1] if s.move is not None)]
        found = "" if board.king(colour) == (chess.E1 if colour else chess.E8) else None
        for move in moves:
            if not board.is_legal(move) and move:
                return None
            if board.turn == colour and board.is_castling(move):
                found = "k" if board.is_kingside_castling(move) else "q"
            board.push(move)
        return found

    def positions_before(self) -> list[chess.Board]:
        """The positions of the few moves before the line, the latest first; empty where they are not known."""
        if self.talk.root is None:
            return []
        board, found = self.talk.root.copy(stack=False), []
        for move in self.talk.history:
            if move and not board.is_legal(move):
                return []
            found.append(board.copy(stack=False))
            board.push(move)
        return found[: -_LOOKS_BACK - 1 : -1]

    def board_index(self, token: int) -> int:
        """Which step is shown at this word; -1 before the first."""
        found = -1
        for number, step in enumerate(self.steps):
            if step.token <= token:
                found = number
        return found

    def board(self, index: int) -> chess.Board:
        """The position of a step; of -1, the one before the line."""
        return self.start if index < 0 else self.steps[index].board

    def clause(self, token: int) -> tuple[int, int]:
        """The words of the clause around this one, end excluded."""
        return _run(self.clause_of, token)

    def sentence(self, token: int) -> tuple[int, int]:
        """The words of the sentence around this one, end excluded."""
        return _run(self.sentence_of, token)

    def window(self, token: int, *, wide: bool = False) -> list[chess.Board]:
        """Positions of which the words around *token* may speak, the one that is shown at that word first.

        Those that come up within its clause; with *wide* all of its sentence and the one before that.
        """
        start, end = self.sentence(token) if wide else self.clause(token)
        here = self.board_index(token)
        first, last = self.board_index(start), self.board_index(max(start, end - 1))
        if wide:
            first = max(-1, first - 1)
        order = [here, *(index for index in range(last, first - 1, -1) if index != here)]
        return [self.board(index) for index in order]

    def played_near(self, token: int) -> list[Step]:
        """The moves that are played within the clause of *token*, the latest shown one first."""
        start, end = self.clause(token)
        here = self.board_index(token)
        last, first = self.board_index(max(start, end - 1)), self.board_index(start)
        while first > 0 and self.steps[first].move is None and self.steps[first - 1].token == self.steps[first].token:
            # The board is set up anew at the word at which a move is played.
            first -= 1
        order = [here, *(index for index in range(last, first - 1, -1) if index != here)]
        return [self.steps[index] for index in order if index >= 0 and self.steps[index].move is not None]

    def span(self, start: int, end: int) -> tuple[int, int]:
        """Characters of the words from *start* to *end*, end excluded."""
        return self.tokens[start].start, self.tokens[max(start, end - 1)].end

    def quote(self, start: int, end: int) -> str:
        """The words as they are written."""
        a, b = self.span(start, end)
        return " ".join(self.text[a:b].split())

    def mood(self, token: int) -> Mood:
        """How the word is said."""
        return self.moods[token] if token < len(self.moods) else Mood.PLAIN


def make_scene(
    text: str,
    start: chess.Board,
    steps: Sequence[tuple[Step, int | None]],
    *,
    key: BeatKey | None = None,
    players: Players | None = None,
    depth: int = 0,
    talk: Talk | None = None,
    words: ClaimWords | None = None,
) -> Scene:
    """A line with the board beside it. steps: each with the index of the word at which it happens, None for uncued.

    An uncued move is played at the start of the line, and no move before the one that precedes it.
    """
    tokens = tokens_of(text)
    table = claim_words() if words is None else words
    known = Players() if players is None else players
    spans = word_spans(text)
    placed: list[Step] = []
    at = 0
    for step, word in steps:
        if word is not None:
            char = spans[word][0] if word < len(spans) else len(text)
            # A sign alone may stand where the word is counted.
            at = max(at, next((n for n, token in enumerate(tokens) if token.end > char), len(tokens)))
        placed.append(Step(step.board, at, step.node, step.move, step.before, word is not None))
    cued = {step.token for step in placed if step.cued}
    mentions = mentions_of(text, tokens, table.names, known, cued)
    scene = Scene(text, key, start, tuple(placed), table, known, depth, tokens, mentions)
    every = moves_said(tokens)
    scene.said = tuple(said for said in every if not _runs_over(said, every, cued))
    scene.talk = Talk() if talk is None else talk
    scene.sentence_of = tuple(_numbered(tokens, Break.SENTENCE))
    scene.clause_of = tuple(_numbered(tokens, Break.CLAUSE))
    scene.sentences = tuple(_coded(scene))
    scene.moods = tuple(moods_of(scene))
    return scene


def _runs_over(said: Said, every: Sequence[Said], cued: set[int]) -> bool:
    """Does the phrase go on behind a word at which a move is played, although a whole one ends right before it?"""
    inside = [at for at in cued if said.phrase.start < at < said.phrase.end]
    return any(other.placed and other.phrase.end == at for at in inside for other in every)


def _numbered(tokens: Sequence[Token], least: Break) -> Iterator[int]:
    number = 0
    for at, token in enumerate(tokens):
        if at and token.broken >= least:
            number += 1
        yield number


def _run(numbers: Sequence[int], at: int) -> tuple[int, int]:
    at = min(at, len(numbers) - 1)
    start = end = at
    while start > 0 and numbers[start - 1] == numbers[at]:
        start -= 1
    while end < len(numbers) and numbers[end] == numbers[at]:
        end += 1
    return start, end


def _coded(scene: Scene, *, expanded: bool = False) -> Iterator[Sentence]:
    """The sentences with marks for what they name; expanded: “it's” as a name with its verb, too."""
    tokens = scene.tokens
    begins = {mention.start: mention for mention in scene.mentions}
    at = 0
    while at < len(tokens):
        start, end = scene.sentence(at)
        code = ""
        places: list[tuple[int, int]] = []
        token = start
        while token < end:
            if token > start and tokens[token].broken >= Break.CLAUSE:
                code += " ,"
            if code:
                code += " "
            places.append((len(code), token))
            mention = begins.get(token)
            contracted = tokens[mention.end - 1].text.partition("'")[2] if mention is not None else ""
            if mention is not None and (expanded or not mention.pronoun or not contracted):
                code += f"§{mention.what}{mention.number}"
                if mention.what in (Named.PIECE, Named.FILE) or contracted == "ve":
                    code += _VERBS.get(contracted, "")
                token = mention.end
            else:
                word, _, verb = tokens[token].text.partition("'")
                code += word if verb in _VERBS and word in scene.words.names.indefinite else tokens[token].text
                token += 1
        yield Sentence(start, end, code, tuple(places))
        at = end


def expanded_sentences(scene: Scene) -> Iterator[Sentence]:
    """The sentences of a line with “it's”, “she's” and “they're” as names with their verbs."""
    return _coded(scene, expanded=True)
