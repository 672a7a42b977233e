"""Finding moves, words and positions in a study."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import StrEnum

import chess

from studyboard.model.notes import plain_text
from studyboard.model.positions import Positions
from studyboard.model.reading_order import rows_in_order
from studyboard.model.script import BeatKey, Part
from studyboard.model.study import Study, start_board
from studyboard.notation.spoken_moves import written
from studyboard.notation.written_move import ANY_PIECE, CASTLES_LONG, CASTLES_SHORT, PASSES, WrittenMove, readings
from studyboard.translation import tr

_NUMBER = re.compile(r"(?P<number>[0-9]{1,4})\s*(?P<dots>\.\.\.|…|\.)\s*(?P<move>\S.*)")
_PLACEMENT = re.compile(r"[pnbrqkPNBRQK1-8]{1,8}(?:/[pnbrqkPNBRQK1-8]{1,8}){7}")
_SIGNS = re.compile(r"[+#!?†‡]+$")
_ALIKE = str.maketrans({"‘": "'", "’": "'", "“": '"', "”": '"', "„": '"', "‚": "'", "–": "-", "—": "-", "−": "-"})


class Sought(StrEnum):
    """What a search looks for."""

    ANYTHING = "anything"
    MOVE = "move"
    WORDS = "words"
    POSITION = "position"


@dataclass(frozen=True, slots=True)
class Match:
    """A row that was found.

    key: id of the node, or the part of the talk
    what: what was found in it; of several, the first of move, position and words
    """

    key: BeatKey
    what: Sought


class UnreadablePositionError(ValueError):
    """A position was sought and what was typed describes none; carries a sentence for the user."""


def find(study: Study, positions: Positions, text: str, sought: Sought = Sought.ANYTHING) -> tuple[Match, ...]:
    """The rows in which *text* is found, in reading order; none for an empty text. O(size of the tree).

    A move is written in any common way or said (“Nf3”, “12... Nxe5”, “knight takes e five”); with a number, only that
    move is meant, with a capture, only captures. Words are those of spoken lines, notes and names of side-lines,
    without regard to case, accents and line breaks. A position is a FEN, and every move that leads to it is found;
    of its placement alone, whoever is to move. ANYTHING is a position where it looks like one, else moves and words.
    Raises UnreadablePositionError where a position is sought and the text holds none.
    """
    text = text.strip()
    if not text:
        return ()
    if sought is Sought.POSITION or (sought is Sought.ANYTHING and _PLACEMENT.match(text)):
        holds = _position_test(study, text)
        return tuple(Match(node, Sought.POSITION) for node in _nodes_with(study, holds))
    moves = _moves(study, positions, text) if sought is not Sought.WORDS else frozenset()
    found: list[Match] = []
    test = _words_test(study, text) if sought is not Sought.MOVE else _nowhere
    for key in rows_in_order(study):
        if key in moves:
            found.append(Match(key, Sought.MOVE))
        elif test(key):
            found.append(Match(key, Sought.WORDS))
    return tuple(found)


def find_position(study: Study, board: chess.Board) -> tuple[Match, ...]:
    """Every row with the same position: placement, who is to move, castling and en passant. In reading order.

    FIDE Laws of Chess, 9.2.3, say when two positions are the same; from memory.
    """
    wanted = _key(board)
    return tuple(
        Match(node, Sought.POSITION) for node in _nodes_with(study, lambda at: _alike(at, wanted, _key(board)[:8]))
    )


def plain(text: str) -> str:
    """A text as it is compared: without case, accents, kinds of quotes and dashes, and doubled spaces."""
    if text.isascii():
        return " ".join(text.lower().split())
    letters = unicodedata.normalize("NFKD", text.translate(_ALIKE).casefold())
    return " ".join("".join(letter for letter in letters if not unicodedata.combining(letter)).split())


# -- moves


def _moves(study: Study, positions: Positions, text: str) -> frozenset[BeatKey]:
    numbered = _NUMBER.fullmatch(text)
    number, white = (int(numbered["number"]), numbered["dots"] == ".") if numbered else (0, True)
    asked = written((numbered["move"] if numbered else text).strip())
    bare = _SIGNS.sub("", asked)
    takes = "x" in bare or "×" in bare
    for reading in readings(bare):
        found = frozenset(
            node.id
            for node in study.nodes.values()
            if node.move is not None
            and node.parent is not None
            and _could_be(reading, node.move)
            and _is(reading, takes, node.move, positions.board(node.parent))
            and (not number or _numbered(positions.board(node.parent), number, white))
        )
        if found:
            return found
    return frozenset()


def _could_be(reading: WrittenMove, move: chess.Move) -> bool:
    """What can be said without the board, which takes longer."""
    if reading.piece == PASSES or not move:
        return reading.piece == PASSES and not move
    if reading.piece in (CASTLES_SHORT, CASTLES_LONG):
        return chess.square_rank(move.from_square) == chess.square_rank(move.to_square) in (0, 7)
    return move.to_square == reading.to and (reading.origins is None or move.from_square in reading.origins)


def _is(reading: WrittenMove, takes: bool, move: chess.Move, board: chess.Board) -> bool:
    if reading.piece == PASSES:
        return True
    if reading.piece in (CASTLES_SHORT, CASTLES_LONG):
        castles = board.is_kingside_castling if reading.piece == CASTLES_SHORT else board.is_queenside_castling
        return board.is_castling(move) and castles(move)
    if board.is_castling(move) or reading.piece not in (ANY_PIECE, board.piece_type_at(move.from_square)):
        return False
    if takes and not board.is_capture(move):
        return False
    if reading.piece == chess.PAWN and not takes and chess.square_file(move.from_square) != _file(reading):
        return False
    return not reading.promotion or reading.promotion == move.promotion


def _file(reading: WrittenMove) -> int:
    """From which file a pawn comes: its own, where none is written."""
    return reading.file if reading.file >= 0 else chess.square_file(reading.to)


def _numbered(before: chess.Board, number: int, white: bool) -> bool:
    return before.fullmove_number == number and before.turn == white


# -- words


def _words_test(study: Study, text: str) -> Callable[[BeatKey], bool]:
    wanted = plain(text)

    def holds(key: BeatKey) -> bool:
        if isinstance(key, Part):
            texts: tuple[str, ...] = (study.line(key).spoken.text,)
        else:
            node = study.nodes[key]
            texts = (node.spoken.text, node.note, node.note_before, node.name)
        return any(text and wanted in plain(plain_text(text) if "[%" in text else text) for text in texts)

    return holds


def _nowhere(_: BeatKey) -> bool:
    return False


# -- positions


def _position_test(study: Study, text: str) -> Callable[[chess.Board], bool]:
    fields = text.split()
    board = chess.Board(None, chess960=start_board(study.headers).chess960)
    try:
        if len(fields) == 1:
            board.set_board_fen(fields[0])
        else:
            board.set_fen(text)
    except ValueError as reason:
        raise UnreadablePositionError(
            tr(
                "This is no position in FEN ({reason}). One looks like “{example}”.",
                reason=reason,
                example=chess.STARTING_FEN,
            )
        ) from reason
    wanted = _key(board)
    if len(fields) == 1:
        return lambda at: _placement(at) == wanted[:8]
    return lambda at: _alike(at, wanted, wanted[:8])


def _nodes_with(study: Study, holds: Callable[[chess.Board], bool]) -> Iterator[int]:
    """The nodes whose position it *holds* for, in reading order; every move is played once."""
    found: set[int] = set()
    board = start_board(study.headers)
    todo: list[int | None] = [study.root]
    while todo:
        node_id = todo.pop()
        if node_id is None:
            board.pop()
            continue
        node = study.nodes[node_id]
        if node.move is not None:
            board.push(node.move)
            todo.append(None)
        if holds(board):
            found.add(node_id)
        todo.extend(node.children)
    return (key for key in rows_in_order(study) if not isinstance(key, Part) and key in found)


def _placement(board: chess.Board) -> tuple[int, ...]:
    white, black = board.occupied_co[chess.WHITE], board.occupied_co[chess.BLACK]
    return (board.pawns, board.knights, board.bishops, board.rooks, board.queens, board.kings, white, black)


def _key(board: chess.Board) -> tuple[int, ...]:
    en_passant = board.ep_square if board.has_legal_en_passant() else None
    rest = (int(board.turn), board.clean_castling_rights(), -1 if en_passant is None else en_passant)
    return (*_placement(board), *rest)


def _alike(board: chess.Board, wanted: tuple[int, ...], placement: tuple[int, ...]) -> bool:
    """The placement first: it is told apart sooner."""
    return _placement(board) == placement and _key(board) == wanted
