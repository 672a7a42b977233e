"""What one may ask of a position: what a piece does, who looks at a square, what the last move has changed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

import chess

from studyboard.board.changes import Cover, abandoned_words, cover_after, covered_words, taken_away_words
from studyboard.board.facts import hanging, hanging_words
from studyboard.board.moves import landing_square
from studyboard.board.naming import listed, piece_name, sentence, side, squares_listed, the_piece, their_piece
from studyboard.board.relations import attackers
from studyboard.board.tactics import safe_squares, safe_words
from studyboard.translation import tr


class Aspect(StrEnum):
    """What a part of an answer is about; each is drawn in its own way."""

    SUBJECT = "subject"
    ATTACKS = "attacks"
    GUARDS = "guards"
    ATTACKED_BY = "attacked by"
    GUARDED_BY = "guarded by"
    SAFE = "safe"
    COVERED = "covered now"
    GIVEN_UP = "given up"
    FOE_COVERED = "covered by the other side now"
    FOE_GIVEN_UP = "given up by the other side"
    OPENED = "line opened"
    HANGS = "hangs now"


@dataclass(frozen=True, slots=True)
class Answer:
    """One part of an answer.

    aspect: what it is about
    words: one or two sentences
    squares: the squares that it is about; none where the words say that there is nothing
    lines: for OPENED, from each piece to the end of what it sees along its opened line
    """

    aspect: Aspect
    words: str
    squares: tuple[chess.Square, ...] = ()
    lines: tuple[tuple[chess.Square, chess.Square], ...] = ()


def square_answers(board: chess.Board, square: chess.Square) -> tuple[Answer, ...]:
    """What the piece on *square* does, or who looks at the square where none stands. Pins are told, not counted."""
    if board.piece_at(square) is None:
        return tuple(_empty_square(board, square))
    return tuple(_piece(board, square))


def move_answers(before: chess.Board, move: chess.Move) -> tuple[Answer, ...]:
    """What *move*, legal on *before*, has changed: what both sides cover, lines that opened, pieces that hang now."""
    if not move:
        return (
            Answer(Aspect.SUBJECT, tr("{side} has passed: nothing has changed but the turn.", side=side(before.turn))),
        )
    after = before.copy(stack=False)
    after.push(move)
    cover = cover_after(before, move)
    found = [
        Answer(Aspect.SUBJECT, _move_words(before, move), (cover.piece, move.from_square)),
        *_cover_answers(after, cover),
        *_opened(before, after, move),
        *_hanging_now(before, after, move),
    ]
    if len(found) == 1:
        found.append(Answer(Aspect.COVERED, tr("Each side covers the squares that it covered before.")))
    return tuple(found)


def _piece(board: chess.Board, square: chess.Square) -> Iterator[Answer]:
    colour = board.color_at(square) is True
    name, own = the_piece(board, square), board.occupied_co[colour]
    words = sentence(their_piece(board, square))
    if board.is_pinned(colour, square):
        words = tr("{piece}, which is pinned to its king.", piece=words[:-1])
    yield Answer(Aspect.SUBJECT, words, (square,))
    attacked = board.attacks_mask(square)
    taken, free = _squares(attacked & ~own & board.occupied), _squares(attacked & ~board.occupied)
    pieces = listed([the_piece(board, at) for at in taken])
    parts = [tr("attacks {pieces}", pieces=pieces)] if taken else []
    parts += [tr("covers {squares}", squares=squares_listed(free))] if free else []
    doing = tr(", and ").join(parts) or tr("attacks nothing")
    yield Answer(Aspect.ATTACKS, sentence(tr("it {doing}", doing=doing)), (*taken, *free))
    guarded = _squares(attacked & own)
    kept = listed([the_piece(board, at) for at in guarded]) or tr("nothing")
    yield Answer(Aspect.GUARDS, tr("It guards {kept}.", kept=kept), guarded)
    foes, friends = attackers(board, not colour, square), attackers(board, colour, square)
    yield Answer(
        Aspect.ATTACKED_BY, _by(tr("It is attacked by {pieces}."), board, foes) or tr("It is not attacked."), foes
    )
    if board.piece_type_at(square) != chess.KING:
        yield Answer(
            Aspect.GUARDED_BY,
            _by(tr("It is guarded by {pieces}."), board, friends) or tr("It is not guarded."),
            friends,
        )
    safe = safe_squares(board, square)
    if board.is_check() and board.turn != colour:
        yield Answer(Aspect.SAFE, tr("Where it could go is open until the check has been answered."))
    else:
        told = safe_words(board, square)
        yield Answer(Aspect.SAFE, told.replace(name[:1].upper() + name[1:], tr("It"), 1), safe)


def _empty_square(board: chess.Board, square: chess.Square) -> Iterator[Answer]:
    yield Answer(Aspect.SUBJECT, tr("{square} is empty.", square=chess.square_name(square)), (square,))
    for colour, aspect in ((board.turn, Aspect.GUARDED_BY), (not board.turn, Aspect.ATTACKED_BY)):
        found = attackers(board, colour, square)
        names = listed([the_piece(board, at) for at in found])
        words = (
            tr("{side} covers it with {names}.", side=side(colour), names=names)
            if found
            else tr("{side} does not cover it.", side=side(colour))
        )
        yield Answer(aspect, words, found)


def _cover_answers(after: chess.Board, cover: Cover) -> Iterator[Answer]:
    foe = side(after.color_at(cover.piece) is not True)
    allowed = (
        tr("{foe} covers {squares} now: a line has opened.", foe=foe, squares=squares_listed(cover.allowed))
        if cover.allowed
        else None
    )
    for aspect, words, squares in (
        (Aspect.COVERED, covered_words(after, cover), (*cover.gained, *cover.opened)),
        (Aspect.GIVEN_UP, abandoned_words(after, cover), cover.abandoned),
        (Aspect.FOE_COVERED, allowed, cover.allowed),
        (Aspect.FOE_GIVEN_UP, taken_away_words(after, cover), cover.taken_away),
    ):
        if words is not None:
            yield Answer(aspect, words, squares)


def _opened(before: chess.Board, after: chess.Board, move: chess.Move) -> Iterator[Answer]:
    """Lines of sliders that stand where they stood and see further than before."""
    stayed = before.occupied & after.occupied & ~chess.BB_SQUARES[move.to_square]
    lines, names = [], []
    for slider in chess.scan_forward(stayed & (after.bishops | after.rooks | after.queens)):
        if before.piece_at(slider) != after.piece_at(slider):
            continue
        new = after.attacks_mask(slider) & ~before.attacks_mask(slider)
        ends = [at for at in _squares(new) if not any(_beyond(slider, at, other) for other in _squares(new))]
        lines += [(slider, end) for end in ends]
        names += [
            tr("{piece} sees as far as {square}", piece=the_piece(after, slider), square=chess.square_name(end))
            for end in ends
        ]
    if lines:
        told = sentence(
            tr("a line has opened: {names}", names=listed(names))
            if len(lines) == 1
            else tr("lines have opened: {names}", names=listed(names))
        )
        yield Answer(Aspect.OPENED, told, tuple(slider for slider, _ in lines), tuple(lines))


def _hanging_now(before: chess.Board, after: chess.Board, move: chess.Move) -> Iterator[Answer]:
    hung = {hang.square for hang in hanging(before) if before.piece_at(hang.square) == after.piece_at(hang.square)}
    new = [hang for hang in hanging(after) if hang.square not in hung]
    if new:
        words = " ".join(hanging_words(after, hang) for hang in new)
        yield Answer(Aspect.HANGS, words, tuple(hang.square for hang in new))


def _move_words(before: chess.Board, move: chess.Move) -> str:
    owner = side(before.turn)
    if before.is_castling(move):
        if before.is_kingside_castling(move):
            return tr("{owner} has castled kingside.", owner=owner)
        return tr("{owner} has castled queenside.", owner=owner)
    return tr(
        "{owner}'s {piece} has gone from {origin} to {target}.",
        owner=owner,
        piece=piece_name(before.piece_type_at(move.from_square) or chess.PAWN),
        origin=chess.square_name(move.from_square),
        target=chess.square_name(landing_square(before, move)),
    )


def _beyond(slider: chess.Square, near: chess.Square, far: chess.Square) -> bool:
    return bool(chess.between(slider, far) >> near & 1)


def _by(words: str, board: chess.BaseBoard, squares: tuple[chess.Square, ...]) -> str:
    """The *words* with the pieces on *squares* in them; empty where there are none."""
    return words.format(pieces=listed([the_piece(board, at) for at in squares])) if squares else ""


def _squares(mask: chess.Bitboard) -> tuple[chess.Square, ...]:
    return tuple(chess.scan_forward(mask))
