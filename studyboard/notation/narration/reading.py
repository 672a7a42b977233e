"""Reading a talk: from its text to the moves, side-lines, beats and mentions in it."""

from __future__ import annotations

from dataclasses import replace

import chess

from studyboard.model.study import Study, start_board
from studyboard.notation.narration.beats import told_beats
from studyboard.notation.narration.errors import NarrationRefusedError
from studyboard.notation.narration.gaps import without_gaps
from studyboard.notation.narration.hints import hints
from studyboard.notation.narration.lexicon import Lexicon, Saying, lexicon
from studyboard.notation.narration.narration import Narration
from studyboard.notation.narration.passed_over import passed_over
from studyboard.notation.narration.prepared import prepared
from studyboard.notation.narration.search import Talk
from studyboard.notation.narration.transcripts import transcript
from studyboard.notation.narration.understood import main_line, moves_told, side_lines


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
    words_said = prepared(talk.text, words, hints(language))
    search = Talk(words_said, start, moves)
    reading = without_gaps(search, words_said, search.best_reading())
    told = moves_told(reading, words_said.tokens)
    mentions, unread = passed_over(talk.text, reading, words_said)
    return Narration(
        text=talk.text,
        fen=start.fen(),
        main_line=main_line(search, reading),
        side_lines=side_lines(told),
        beats=told_beats(talk, words_said.tokens, told),
        mentions=mentions,
        unread=unread,
        moves=told,
    )


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
