"""Written moves, squares and numbers as a presenter says them."""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from functools import cache
from re import Match
from typing import Any

import chess

from studyboard.notation.spoken_numbers import NumberWords, decade_words, figures, number_words, ordinal_words
from studyboard.resources_path import resource
from studyboard.translation import tr

_MOVE = r"""
    (?: (?P<castles>[O0]-[O0](?P<long>-[O0])?)
      | (?P<piece>[KQRBN])(?P<from_file>[a-h])?(?P<from_rank>[1-8])?(?P<takes>x)?(?P<file>[a-h])(?P<rank>[1-8])
      | (?:(?P<pawn_file>[a-h])(?P<pawn_takes>x))?(?P<pawn_to_file>[a-h])(?P<pawn_rank>[1-8])
        (?:=?(?P<promotion>[QRBN]))? )
    (?P<sign>[+\#]{1,2})? [!?]*
"""
_ONE_MOVE = re.compile(_MOVE, re.VERBOSE)
_SAID = re.compile(
    rf"""
    (?<![\w½])
    (?: (?P<result> 1-0 | 0-1 | 1/2-1/2 | ½-½ ) (?![\w½/-])
      | (?: [0-9]+ \.(?:\.\.)? )? (?P<move> {_MOVE} ) (?![\w])
      | (?P<en_passant> e\.p\. )
      | (?P<numbering> [0-9]+ ) (?:\.\.\.|…)
      | (?P<number> (?P<plus>[+−-])? (?P<whole> [0-9]+ (?:,[0-9]{{3}})*+ ) (?:\.(?P<part>[0-9]+))? (?P<half>½)?
            (?P<ending> (?:st|nd|rd|th|s)\b )? (?P<percent>\s?%)? (?P<range> [–/:-](?=[0-9]) )? )
      | (?P<only_half> ½ )
    )
    """,
    re.VERBOSE,
)


@dataclass(frozen=True, slots=True)
class SpokenTable:
    """The words of one language, from resources/spoken."""

    pieces: dict[str, str]
    ranks: dict[str, str]
    words: dict[str, str]
    results: dict[str, str]
    numbers: NumberWords


@cache
def spoken_table(language: str = "en") -> SpokenTable:
    """The table of a language. Raises FileNotFoundError where the program ships none."""
    plain: dict[str, Any] = tomllib.loads(resource("spoken", f"{language}.toml").read_text(encoding="utf-8"))
    numbers = plain["numbers"]
    return SpokenTable(
        plain["pieces"],
        plain["ranks"],
        plain["words"],
        plain["results"],
        NumberWords(
            tuple(numbers["small"]), tuple(numbers["tens"]), plain["words"], plain["ordinals"], plain["decades"]
        ),
    )


def speak_move(san: str, table: SpokenTable | None = None) -> str:
    """A move in standard algebraic notation as it is said: “Nf3” is “knight f three”.

    What is no move comes back unchanged.
    """
    found = _ONE_MOVE.fullmatch(san)
    return san if found is None else _move(found, spoken_table() if table is None else table)


def speak_text(text: str, table: SpokenTable | None = None) -> str:
    """A line as it is said: moves, squares, results and numbers in words, everything else as it stands.

    A move's own number is not said (“15...Bd6” is “bishop d six”), nor are judgements such as “!?”.
    """
    said = spoken_table() if table is None else table
    return _SAID.sub(lambda found: _say(found, said), text)


def speak_number(number: int, table: SpokenTable | None = None) -> str:
    """A whole number in words; see spoken_numbers.number_words."""
    return number_words(number, (spoken_table() if table is None else table).numbers)


def describe_move(board: chess.Board, move: chess.Move) -> str:
    """A legal move in a full sentence's words, for those who hear the board: “white knight from g1 to f3, check”."""
    if not move:
        return tr("white passes the turn") if board.turn else tr("black passes the turn")
    piece = board.piece_at(move.from_square)
    if piece is None:
        return move.uci()
    kind = tr(chess.piece_name(piece.piece_type))
    name = tr("white {piece}", piece=kind) if piece.color else tr("black {piece}", piece=kind)
    origin, target = chess.square_name(move.from_square), chess.square_name(move.to_square)
    if board.is_castling(move):
        said = _castling_words(piece.color, board.is_kingside_castling(move))
    elif board.is_en_passant(move):
        said = tr(
            "{piece} from {origin} takes the pawn in passing, to {target}", piece=name, origin=origin, target=target
        )
    elif board.is_capture(move):
        taken = tr(chess.piece_name(board.piece_type_at(move.to_square) or chess.PAWN))
        said = tr(
            "{piece} from {origin} takes the {taken} on {target}", piece=name, origin=origin, taken=taken, target=target
        )
    else:
        said = tr("{piece} from {origin} to {target}", piece=name, origin=origin, target=target)
    if move.promotion:
        said = tr("{move}, promotes to a {piece}", move=said, piece=tr(chess.piece_name(move.promotion)))
    after = board.copy(stack=False)
    after.push(move)
    if after.is_checkmate():
        return tr("{move}, checkmate", move=said)
    return tr("{move}, check", move=said) if after.is_check() else said


def _castling_words(colour: chess.Color, short: bool) -> str:
    if colour:
        return tr("white castles kingside") if short else tr("white castles queenside")
    return tr("black castles kingside") if short else tr("black castles queenside")


def _say(found: Match[str], table: SpokenTable) -> str:
    if found["move"]:
        return _move(found, table)
    if found["result"]:
        return table.results[found["result"]]
    if found["en_passant"]:
        return table.words["en_passant"]
    if found["numbering"]:
        return ""
    return table.words["half"] if found["only_half"] else _number(found, table)


def _move(found: Match[str], table: SpokenTable) -> str:
    words = table.words
    ranks = table.ranks
    if found["castles"]:
        said = [words["castles_long" if found["long"] else "castles_short"]]
    elif found["piece"]:
        said = [table.pieces[found["piece"]]]
        said += [found["from_file"]] if found["from_file"] else []
        said += [ranks[found["from_rank"]]] if found["from_rank"] else []
        said += [words["takes"]] if found["takes"] else []
        said += [found["file"], ranks[found["rank"]]]
    else:
        said = [found["pawn_file"], words["takes"]] if found["pawn_takes"] else []
        said += [found["pawn_to_file"], ranks[found["pawn_rank"]]]
        said += [words["promotes"], table.pieces[found["promotion"]]] if found["promotion"] else []
    if found["sign"]:
        said.append(words["mate" if "#" in found["sign"] else "check"])
    return " ".join(said)


def _number(found: Match[str], table: SpokenTable) -> str:
    say = table.numbers
    words = table.words
    digits = found["whole"].replace(",", "")
    if len(digits) > 9 or (digits[0] == "0" and len(digits) > 1):
        said = figures(digits, say)
    elif found["ending"]:
        said = (decade_words if found["ending"] == "s" else ordinal_words)(int(digits), say)
    else:
        said = number_words(int(digits), say, in_pairs="," not in found["whole"])
    if found["plus"]:
        said = f"{words['plus' if found['plus'] == '+' else 'minus']} {said}"
    if found["part"]:
        said = f"{said} {words['point']} {figures(found['part'], say)}"
    if found["half"]:
        said = f"{said} {words['and']} {words['half']}" if digits != "0" else words["half"]
    if found["percent"]:
        said = f"{said} {words['percent']}"
    if found["range"]:
        return f"{said} {words['to']} " if found["range"] == "–" else f"{said} "
    return f"{said} " if found.string[found.end() : found.end() + 1].isalpha() else said
