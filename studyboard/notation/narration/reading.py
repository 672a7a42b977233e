"""Reading a talk: from its text to the moves, side-lines, beats and mentions in it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import chess

from studyboard.model.study import Study, start_board
from studyboard.notation.narration.beats import told_beats
from studyboard.notation.narration.costs import COSTS
from studyboard.notation.narration.cues import Context, contexts_of
from studyboard.notation.narration.errors import NarrationRefusedError
from studyboard.notation.narration.forms import Form, Phrase
from studyboard.notation.narration.lexicon import Lexicon, Saying, lexicon
from studyboard.notation.narration.narration import Narration
from studyboard.notation.narration.passed_over import passed_over
from studyboard.notation.narration.phrases import phrases_of
from studyboard.notation.narration.search import Talk
from studyboard.notation.narration.tokens import Break, Token, tokens_of
from studyboard.notation.narration.transcripts import transcript
from studyboard.notation.narration.understood import main_line, moves_told, side_lines
from studyboard.notation.narration.units import Unit, units_of

_COLOUR_BEFORE = 4


def read_narration(text: str, *, game: Study | None = None, fen: str | None = None, language: str = "en") -> Narration:
    """Read a talk of any kind of file.

    game: the game that is told, where it is known; its main line is then followed
    fen: the position from which a talk without a game starts, in Forsyth-Edwards notation
    language: of the words, by its two-letter code

    Raises NarrationRefusedError where the position makes no sense, NoSuchLanguageError where there are no words of
    the language. Any text can be read; where it has no moves, none are found.
    """
    words = lexicon(language)
    start, moves = _start(game, fen)
    if game is not None:
        words = with_names(words, game)
    talk = transcript(text)
    tokens = tokens_of(talk.text)
    units = units_of(tokens, words)
    contexts = contexts_of(tokens, anchors(units), words)
    phrases = coloured(phrases_of(tokens, units, words), tokens, units)
    search = Talk(tokens, phrases, contexts, passing_costs(units, contexts), start, moves)
    reading = search.best_reading()
    told = moves_told(reading, tokens)
    mentions, unread = passed_over(talk.text, reading, tokens, units, phrases, contexts)
    return Narration(
        text=talk.text,
        fen=start.fen(),
        main_line=main_line(search, reading),
        side_lines=side_lines(told),
        beats=told_beats(talk, tokens, told),
        mentions=mentions,
        unread=unread,
        moves=told,
    )


def anchors(units: Sequence[Sequence[Unit]]) -> list[int]:
    """For each word: 2 where it, plainly read, holds a square or a whole move, 1 for a piece or a capture, else 0."""
    found = [0] * len(units)
    for here in units:
        for unit in here:
            if unit.kind in ("square", "written", "castles") and unit.cost < 0.7:
                found[unit.start : unit.end] = [2] * (unit.end - unit.start)
            elif unit.kind in ("piece", "capture") and unit.cost < 0.4:
                found[unit.start] = max(found[unit.start], 1)
            elif unit.kind == "letter" and unit.cost == 0 and unit.end < len(units):
                if any(further.kind == "capture" for further in units[unit.end]):
                    found[unit.start] = max(found[unit.start], 1)
    return found


def passing_costs(units: Sequence[Sequence[Unit]], contexts: Sequence[Context]) -> list[float]:
    """For each word what it costs not to understand it as part of a move."""
    costs: list[float] = []
    for here, context in zip(units, contexts, strict=True):
        most = 0.0
        for unit in here:
            plain = _PASSING.get(unit.kind, 0.0)
            if unit.kind == "capture" and unit.value == "loosely":
                plain = COSTS.capture_loosely
            most = max(most, plain * max(0.12, 1.0 - 1.3 * unit.cost))
        costs.append(most * context.passing)
    return costs


_PASSING = {
    "square": COSTS.square,
    "piece": COSTS.piece,
    "capture": COSTS.capture,
    "castles": COSTS.castles,
    "written": COSTS.written,
    "check": COSTS.check,
    "mate": COSTS.check,
    "promotes": COSTS.promotes,
}


def coloured(
    phrases: Sequence[Sequence[Phrase]], tokens: Sequence[Token], units: Sequence[Sequence[Unit]]
) -> list[tuple[Phrase, ...]]:
    """The phrases with the colour that is named just ahead of them, as in "White's knight takes", and numbered."""
    found: list[tuple[Phrase, ...]] = []
    numbers: dict[Form, int] = {}
    for at, here in enumerate(phrases):
        white = _colour_before(at, tokens, units) if here else None
        numbered: list[Phrase] = []
        for phrase in here:
            form = phrase.form if white is None else replace(phrase.form, white=white)
            numbered.append(replace(phrase, form=form, form_number=numbers.setdefault(form, len(numbers))))
        found.append(tuple(numbered))
    return found


def _colour_before(at: int, tokens: Sequence[Token], units: Sequence[Sequence[Unit]]) -> bool | None:
    for before in range(at - 1, max(-1, at - 1 - _COLOUR_BEFORE), -1):
        if tokens[before + 1].broken >= Break.CLAUSE:
            return None
        for unit in units[before]:
            if unit.kind == "colour":
                return unit.value == "white"
            if unit.kind in ("square", "piece", "capture", "written") and unit.cost < 0.3:
                return None
    return None


def with_names(words: Lexicon, game: Study) -> Lexicon:
    """The words with the names of the players as further words for their colours."""
    sayings = dict(words.sayings)
    for colour in ("White", "Black"):
        for name in game.headers.get(colour, "").replace(",", " ").lower().split():
            if len(name) > 2 and name.isalpha() and name not in sayings:
                sayings[name] = (Saying((name,), "colour", colour.lower()),)
    return replace(words, sayings=sayings)


def _start(game: Study | None, fen: str | None) -> tuple[chess.Board, list[chess.Move] | None]:
    if game is not None:
        moves = [game.nodes[node].move for node in game.main_line()]
        if fen is not None:
            raise NarrationRefusedError("A talk starts from a game or from a position, not from both.")
        return start_board(game.headers), [move for move in moves if move is not None]
    if fen is None:
        return chess.Board(), None
    try:
        board = chess.Board(fen)
    except ValueError as reason:
        raise NarrationRefusedError(f"“{fen}” is no position ({reason}).") from reason
    if not board.is_valid():
        raise NarrationRefusedError(
            f"“{fen}” is no position in which a game can be: the kings, pawns or checks are wrong."
        )
    return board, None
