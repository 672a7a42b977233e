"""The moves that a spoken line names, each with the moves of the tree or of the rules that it can mean."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import chess

from studyboard.board.moves import captured_square, landing_square
from studyboard.notation.narration.cues import Context, contexts_of
from studyboard.notation.narration.forms import Form, Phrase
from studyboard.notation.narration.lexicon import lexicon
from studyboard.notation.narration.phrases import phrases_of
from studyboard.notation.narration.tokens import Token
from studyboard.notation.narration.units import units_of
from studyboard.reading.words import claim_words

#: A phrase may be this far from plain speech before it is taken for something else than a move.
_PLAIN = 0.5
#: What hearing “the” as the letter d costs in a phrase, and what leaving that letter out does.
_ARTICLE, _LETTER_LEFT_OUT = 0.45, 0.7
_ANCHORS = frozenset({"square", "piece", "capture", "written", "castles"})


@dataclass(frozen=True, slots=True)
class Said:
    """Words that name a move.

    phrase: the words and what they demand; context: what the words around make of them
    whole: they say which move it is, not only that something moves
    placed: they say where it goes
    """

    phrase: Phrase
    context: Context
    whole: bool

    @property
    def placed(self) -> bool:
        """Do the words say where the move goes?"""
        return self.whole and (self.phrase.form.to is not None or bool(self.phrase.form.castles))


def moves_said(tokens: Sequence[Token]) -> tuple[Said, ...]:
    """The phrases that name moves, the longest at each place, in order of their words."""
    heard_words = lexicon("en")
    units = units_of(tokens, heard_words)
    anchors = [any(unit.kind in _ANCHORS for unit in here) for here in units]
    contexts = contexts_of(tokens, anchors, heard_words)
    found: list[Said] = []
    for here in phrases_of(tokens, units, heard_words):
        for heard in here:
            phrase = _with_article(heard, tokens)
            if _misheard_file(phrase, tokens):
                words = [token.text for token in tokens[phrase.start : phrase.end]]
                named = any(word in claim_words().names.pieces for word in words)
                if not named or any(word in chess.FILE_NAMES for word in words):
                    continue
                phrase = replace(phrase, form=replace(phrase.form, from_file=None))
            if _passes_a_file(phrase, tokens) or _joins_two(phrase, tokens) or _keeps_for(phrase, tokens):
                continue
            if phrase.cost <= _PLAIN or (phrase.form.capture and phrase.cost < 1.05):
                found.append(Said(phrase, contexts[phrase.anchor], is_whole(phrase.form)))
    return tuple(sorted(found, key=lambda said: (said.phrase.start, -said.phrase.end, said.phrase.cost)))


def _with_article(phrase: Phrase, tokens: Sequence[Token]) -> Phrase:
    """The phrase as it is written: an article at its head or before it is no misheard letter of a file."""
    articles = claim_words().names.definite
    start = phrase.start
    if phrase.form.from_file is not None and tokens[start].text in articles:
        plain = replace(phrase.form, from_file=None)
        return replace(phrase, form=plain, cost=max(0.0, phrase.cost - _ARTICLE))
    if start and not tokens[start].broken and tokens[start - 1].text in articles and phrase.cost >= _LETTER_LEFT_OUT:
        return replace(phrase, cost=phrase.cost - _LETTER_LEFT_OUT)
    return phrase


def _misheard_file(phrase: Phrase, tokens: Sequence[Token]) -> bool:
    """Does the phrase name a file that no word of it is written with: “with the b-pawn” heard as “with d b-pawn”?"""
    file = phrase.form.from_file
    if file is None:
        return False
    letter = chess.FILE_NAMES[file]
    articles = claim_words().names.definite
    written = [token for token in tokens[phrase.start : phrase.end] if token.text not in articles]
    # “He took” is not “e took”: the letter stands alone or at the head of a move (“exd5”).
    return not any(token.text == letter or re.match(rf"{letter}[x1-8a-h]?[x1-8]", token.text) for token in written)


def _passes_a_file(phrase: Phrase, tokens: Sequence[Token]) -> bool:
    """Is a file said before a piece, as in “the b-pawn”, and not heard?"""
    form = phrase.form
    if form.from_file is not None or form.target_file is not None or form.from_square is not None:
        return False
    pieces = claim_words().names.pieces
    span = range(phrase.start, phrase.end - 1)
    return any(tokens[at].text in "bcdefgh" and tokens[at + 1].text in pieces for at in span)


def _joins_two(phrase: Phrase, tokens: Sequence[Token]) -> bool:
    """Does “and” stand before the square, so that two things are told: “the rook swings over and b3 is hit”?"""
    return any(tokens[at].text == "and" for at in range(max(phrase.start + 1, phrase.end - 2), phrase.end))


def _keeps_for(phrase: Phrase, tokens: Sequence[Token]) -> bool:
    """Is a square kept for a piece: “makes room on g2 for the bishop”?"""
    names = claim_words().names
    for at in range(phrase.start + 1, phrase.end - 1):
        behind = at + 2 if tokens[at + 1].text in names.determiners else at + 1
        if tokens[at].text == "for" and phrase.form.to is not None and behind < phrase.end:
            return tokens[behind].text in names.pieces
    return False


def is_whole(form: Form) -> bool:
    """Do the words say which move is meant, so that another move would be a slip?"""
    if form.castles:
        return form.castles in ("short", "long")
    if form.vague:
        return False
    if form.to is None:
        return (form.capture and form.piece is not None) or form.promotion is not None
    return form.piece is not None or form.bare


def means(form: Form, board: chess.Board, move: chess.Move) -> bool:
    """Can the words mean this move, legal on *board*? A check or mate that is said is left aside."""
    piece = board.piece_type_at(move.from_square)
    if not move or piece is None:
        return False
    if form.castles or board.is_castling(move):
        if not form.castles:
            return form.piece == chess.KING and form.to == landing_square(board, move)
        if not board.is_castling(move):
            return False
        return form.castles in ("castles", "short" if board.is_kingside_castling(move) else "long")
    taken = captured_square(board, move)
    return (
        form.to in (None, move.to_square)
        and form.piece in (None, piece)
        and form.from_square in (None, move.from_square)
        and form.from_file in (None, chess.square_file(move.from_square))
        and form.from_rank in (None, chess.square_rank(move.from_square))
        and not (form.capture and taken is None)
        and (form.target is None or (taken is not None and board.piece_type_at(taken) == form.target))
        and form.target_file in (None, chess.square_file(move.to_square))
        and not (form.promotes and not move.promotion)
        and form.promotion in (None, move.promotion)
        and form.white in (None, board.turn)
    )


def without_side(form: Form) -> Form:
    """The same demands, whoever moves."""
    return Form(
        form.piece,
        form.from_file,
        form.from_rank,
        form.from_square,
        form.to,
        form.to_file,
        form.bare,
        form.capture,
        form.again,
        form.target,
        form.target_file,
        form.promotion,
        form.promotes,
        form.castles,
        form.check,
        form.mate,
        form.back,
        form.vague,
        form.exact,
    )


def legal_meanings(form: Form, board: chess.Board) -> list[chess.Move]:
    """The legal moves that the words can mean."""
    mask = chess.BB_ALL if form.to is None or form.castles else chess.BB_SQUARES[form.to]
    if form.piece == chess.KING or form.castles:
        mask = chess.BB_ALL
    return [move for move in board.generate_legal_moves(chess.BB_ALL, mask) if means(form, board, move)]


def stands(form: Form, board: chess.BaseBoard) -> bool:
    """Do the words name a piece that stands on that square?"""
    if form.to is None or form.castles:
        return False
    return board.piece_type_at(form.to) is not None and form.piece in (None, board.piece_type_at(form.to))


def overlapping(said: Sequence[Said], start: int, end: int) -> Iterator[Said]:
    """The phrases that share words with *start* to *end*."""
    return (one for one in said if one.phrase.start < end and start < one.phrase.end)
