"""Written moves, squares and numbers as a presenter says them."""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from functools import cache
from typing import Any

import chess

from studyboard.resources_path import resource

_NUMBERED = re.compile(r"\d+\.(?:\.\.)?(?=[A-Za-z])")
_MOVE = re.compile(
    r"(?P<piece>[KQRBN])(?P<from_file>[a-h])?(?P<from_rank>[1-8])?(?P<takes>x)?(?P<file>[a-h])(?P<rank>[1-8])"
    r"(?P<sign>[+#])?"
)
_PAWN = re.compile(
    r"(?:(?P<from_file>[a-h])(?P<takes>x))?(?P<file>[a-h])(?P<rank>[1-8])(?:=(?P<promotion>[QRBN]))?(?P<sign>[+#])?"
)
_CASTLES = re.compile(r"[O0]-[O0](?P<long>-[O0])?(?P<sign>[+#])?")
_TOKEN = re.compile(r"\S+")
_LEAD = re.compile(r"[(\[{\"'“‘„«—–-]*")
_TAIL = re.compile(r"[^\w½#+]*$")
_JUDGEMENT = re.compile(r"(?:[!?]{1,2}|[+#][!?]{1,2})$")
_NUMBER = re.compile(r"(?P<minus>[-−])?(?P<whole>\d[\d,]*)(?:\.(?P<part>\d+))?(?P<half>½)?(?P<rest>(?:st|nd|rd|th|s)?)")


@dataclass(frozen=True, slots=True)
class SpokenTable:
    """The words of one language, from resources/spoken."""

    pieces: dict[str, str]
    ranks: dict[str, str]
    words: dict[str, str]
    results: dict[str, str]
    small: tuple[str, ...]
    tens: tuple[str, ...]


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
        tuple(numbers["small"]),
        tuple(numbers["tens"]),
    )


def speak_move(san: str, table: SpokenTable | None = None) -> str:
    """A move in standard algebraic notation as it is said: “Nf3” is “knight f three”.

    What is no move comes back unchanged.
    """
    table = spoken_table() if table is None else table
    bare = _JUDGEMENT.sub(lambda found: found.group()[0] if found.group()[0] in "+#" else "", san)
    words = table.words
    if found := _CASTLES.fullmatch(bare):
        said = words["castles_long"] if found["long"] else words["castles_short"]
    elif found := _MOVE.fullmatch(bare):
        said = " ".join(
            filter(
                None,
                (
                    table.pieces[found["piece"]],
                    found["from_file"],
                    table.ranks[found["from_rank"]] if found["from_rank"] else "",
                    words["takes"] if found["takes"] else "",
                    found["file"],
                    table.ranks[found["rank"]],
                ),
            )
        )
    elif found := _PAWN.fullmatch(bare):
        said = " ".join(
            filter(
                None,
                (
                    f"{found['from_file']} {words['takes']}" if found["takes"] else "",
                    found["file"],
                    table.ranks[found["rank"]],
                    f"{words['promotes']} {table.pieces[found['promotion']]}" if found["promotion"] else "",
                ),
            )
        )
    else:
        return san
    sign = found["sign"]
    return f"{said} {words['mate' if sign == '#' else 'check']}" if sign else said


def speak_text(text: str, table: SpokenTable | None = None) -> str:
    """A line as it is said: moves, squares, results and numbers in words, everything else as it stands."""
    table = spoken_table() if table is None else table
    return _TOKEN.sub(lambda found: _speak_token(found.group(), table), text)


def speak_number(number: int, table: SpokenTable | None = None) -> str:
    """A whole number in words; four figures from 1100 to 2099 as years are said, “eighteen fifty”."""
    table = spoken_table() if table is None else table
    if number < 0:
        return f"{table.words['minus']} {speak_number(-number, table)}"
    if 1100 <= number < 2100 and number % 100 >= 10 and not 2000 <= number < 2010:
        return f"{_below_hundred(number // 100, table)} {_below_hundred(number % 100, table)}"
    if number >= 1_000_000:
        return " ".join(table.small[int(figure)] for figure in str(number))
    parts: list[str] = []
    thousands, rest = divmod(number, 1000)
    if thousands:
        parts.append(f"{speak_number(thousands, table)} {table.words['thousand']}")
    hundreds, rest = divmod(rest, 100)
    if hundreds:
        parts.append(f"{table.small[hundreds]} {table.words['hundred']}")
    if rest or not parts:
        if parts:
            parts.append(table.words["and"])
        parts.append(_below_hundred(rest, table))
    return " ".join(parts)


def describe_move(board: chess.Board, move: chess.Move) -> str:
    """A legal move in a full sentence's words, for those who hear the board: “white knight from g1 to f3, check”."""
    if not move:
        return "the turn is passed"
    piece = board.piece_at(move.from_square)
    if piece is None:
        return move.uci()
    side = "white" if piece.color else "black"
    name = chess.piece_name(piece.piece_type)
    from_name, to_name = chess.square_name(move.from_square), chess.square_name(move.to_square)
    if board.is_castling(move):
        said = f"{side} castles {'queenside' if board.is_queenside_castling(move) else 'kingside'}"
    elif board.is_capture(move):
        taken = "pawn" if board.is_en_passant(move) else chess.piece_name(board.piece_type_at(move.to_square) or 1)
        said = f"{side} {name} from {from_name} takes the {taken} on {to_name}"
        if board.is_en_passant(move):
            said += " in passing"
    else:
        said = f"{side} {name} from {from_name} to {to_name}"
    if move.promotion:
        said += f", promotes to a {chess.piece_name(move.promotion)}"
    after = board.copy(stack=False)
    after.push(move)
    if after.is_checkmate():
        return f"{said}, checkmate"
    return f"{said}, check" if after.is_check() else said


def _speak_token(token: str, table: SpokenTable) -> str:
    if not any(character.isdigit() or character in "O½" for character in token):
        return token
    lead = _LEAD.match(token)
    start = lead.end() if lead and lead.end() < len(token) else 0
    tail = _TAIL.search(token, start)
    end = tail.start() if tail else len(token)
    core = token[start:end]
    numbered = _NUMBERED.match(core)
    if numbered:
        core = core[numbered.end() :]
    if core in table.results:
        said = table.results[core]
    elif re.fullmatch(r"\d+\.(?:\.\.)?", token[start:]) and token.endswith(("...", ".")) and len(token) > end:
        said = _number(core, table) if not token.endswith("...") else ""
    else:
        said = speak_move(core, table)
        if said == core:
            said = _number(core, table)
    return f"{token[:start]}{said}{token[end:]}"


def _number(core: str, table: SpokenTable) -> str:
    found = _NUMBER.fullmatch(core)
    if found is None:
        return core
    said = speak_number(int(found["whole"].replace(",", "")), table)
    if found["minus"]:
        said = f"{table.words['minus']} {said}"
    if found["part"]:
        figures = " ".join(table.small[int(figure)] for figure in found["part"])
        said = f"{said} {table.words['point']} {figures}"
    if found["half"]:
        said = f"{said} {table.words['and']} {table.words['half']}"
    return said


def _below_hundred(number: int, table: SpokenTable) -> str:
    if number < len(table.small):
        return table.small[number]
    tens, ones = divmod(number, 10)
    return f"{table.tens[tens]}-{table.small[ones]}" if ones else table.tens[tens]
