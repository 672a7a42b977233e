"""The grammar of spoken moves: how a phrase goes on with the next word that means something."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from enum import Enum, auto
from typing import Final, TypeAlias

import chess

from studyboard.notation.narration.forms import Form
from studyboard.notation.narration.units import Unit

_ARTICLE = 0.4
_CLEARLY = 0.3


class Said(Enum):
    """How far a phrase has come."""

    NOTHING = auto()
    FILE = auto()
    PIECE = auto()
    PIECE_FROM = auto()
    SQUARE = auto()
    SQUARE_PIECE = auto()
    DESTINATION = auto()
    CAPTURE = auto()
    CAPTURE_FILE = auto()
    CAPTURED = auto()
    CAPTURED_ON = auto()
    WITH = auto()
    WITH_FILE = auto()
    ON_THE_WAY = auto()
    CHECK = auto()
    CASTLES = auto()
    SIDE = auto()
    PROMOTES = auto()
    FROM = auto()
    TRADES = auto()
    PASSIVE = auto()
    OVER = auto()


@dataclass(frozen=True, slots=True)
class Part:
    """A phrase that is still growing.

    at: the next word; end: behind the last word that mattered; strange: words so far that fit no pattern
    origin: the word "from" came before what follows; moved: a word of motion did; apart: one that opens a clause did
    """

    said: Said
    form: Form
    start: int
    at: int
    end: int
    anchor: int
    cost: float
    strange: int = 0
    origin: bool = False
    moved: bool = False
    apart: bool = False


#: Where a phrase goes on with a unit: what is said then, the form, a further cost; None where it cannot.
Step: TypeAlias = "tuple[Said, Form, float] | None"
Rule: TypeAlias = "Callable[[Part, Unit, bool], Step]"


def _nothing(part: Part, unit: Unit, _: bool) -> Step:
    match unit.kind:
        case "written":
            assert unit.form is not None
            return Said.OVER, unit.form, 0.0
        case "piece":
            return Said.PIECE, Form(piece=int(unit.value)), 0.0
        case "flank":
            return Said.PIECE, Form(piece=chess.PAWN, from_file=int(unit.value), vague=True), 0.2
        case "letter":
            return Said.FILE, Form(from_file=int(unit.value)), 0.0
        case "square":
            return Said.SQUARE, Form(to=int(unit.value), bare=True), 0.0
        case "capture" if unit.value == "passive":
            return Said.PASSIVE, Form(capture=True), 0.2
        case "capture":
            form = Form(capture=True, again=unit.value == "again")
            return Said.CAPTURE, form, 0.6 if unit.value == "loosely" else 0.0
        case "trade" if unit.value != "off":
            return Said.TRADES, Form(capture=True), 0.3 if unit.value == "loosely" else 0.0
        case "castles":
            return Said.CASTLES, Form(castles=str(unit.value)), 0.0
        case "side":
            return Said.SIDE, Form(castles=str(unit.value)), 0.0
        case "origin":
            return Said.FROM, Form(), 0.1
        case "same":
            return Said.OVER, Form(same=True, vague=True), 0.0
        case "promotes":
            return Said.PROMOTES, _promotes(Form(piece=chess.PAWN, promotes=True), unit), 0.0
        case "check" | "mate":
            return Said.CHECK, Form(check=True, mate=unit.kind == "mate", vague=True), 0.3
        case "motion" | "link" | "back":
            return Said.ON_THE_WAY, Form(back=unit.kind == "back"), 0.0 if unit.kind != "link" else 0.25
    return None


def _promotes(form: Form, unit: Unit) -> Form:
    return replace(form, promotes=True, promotion=chess.QUEEN if unit.value == "queens" else form.promotion)


def _file(part: Part, unit: Unit, adjacent: bool) -> Step:
    form = part.form
    if not adjacent:
        return None
    article = unit.kind == "piece" and part.cost > 0
    match unit.kind:
        case "capture":
            # No article stands before a verb: "a takes" is the pawn on the a-file.
            known = min(part.cost, _ARTICLE) if form.from_file == 0 else 0.0
            return Said.CAPTURE, replace(form, piece=chess.PAWN, capture=True, again=unit.value == "again"), -known
        case "piece" if not article and unit.value != chess.KING:
            return Said.PIECE, replace(form, piece=int(unit.value)), 0.0
        case "square" if part.cost == 0 and unit.cost == 0:
            return Said.OVER, replace(form, piece=chess.PAWN, to=int(unit.value), capture=True), 0.6
    return None


def _piece(part: Part, unit: Unit, adjacent: bool) -> Step:
    form = part.form
    match unit.kind:
        case "capture" if unit.value == "passive":
            return Said.PASSIVE, Form(target=form.piece, capture=True), 0.0
        case "trade" if unit.value == "off" and form.piece not in (chess.PAWN, chess.KING) and not part.origin:
            return Said.CAPTURED, replace(form, capture=True, target=form.piece, trades=True, vague=False), -part.cost
        case "capture":
            return Said.CAPTURE, replace(form, capture=True, again=unit.value == "again", vague=False), 0.0
        case "square":
            if part.origin:
                return Said.PIECE_FROM, replace(form, from_square=int(unit.value), vague=False), 0.0
            return Said.DESTINATION, replace(form, to=int(unit.value), vague=False), 0.0
        case "letter" if adjacent and form.piece != chess.PAWN and form.from_file is None and not form.vague:
            # Right behind a piece even "a" is more likely a file than an article.
            return Said.PIECE_FROM, replace(form, from_file=int(unit.value)), 0.1 - min(unit.cost, _ARTICLE)
        case "letter" if part.origin and form.piece != chess.PAWN and form.from_file is None and not form.vague:
            return Said.PIECE_FROM, replace(form, from_file=int(unit.value)), 0.0
        case "digit" if adjacent and form.piece != chess.PAWN and unit.cost == 0 and not form.vague:
            return Said.PIECE_FROM, replace(form, from_rank=int(unit.value)), 0.3
        case "motion" if not form.vague and unit.value != "loosely":
            return Said.PIECE, replace(form, vague=True), 0.2
        case "back":
            return Said.PIECE, replace(form, vague=True, back=True), 0.1
        case "promotes" if form.piece == chess.PAWN:
            return Said.PROMOTES, _promotes(replace(form, vague=False), unit), 0.0
        case "check" | "mate" if not form.vague:
            return Said.OVER, replace(form, check=True, mate=unit.kind == "mate", vague=True), 0.2
        case "written" if unit.form is not None and unit.form.piece in (form.piece, chess.PAWN):
            return Said.OVER, replace(unit.form, piece=form.piece), 0.3
    return None


def _piece_from(part: Part, unit: Unit, _: bool) -> Step:
    form = part.form
    match unit.kind:
        case "square":
            return Said.OVER, replace(form, to=int(unit.value)), 0.0
        case "capture" if unit.value == "passive":
            return Said.PASSIVE, Form(target=form.piece, to=form.from_square, capture=True), 0.0
        case "capture":
            return Said.CAPTURE, replace(form, capture=True, again=unit.value == "again"), 0.0
        case "promotes" if form.piece == chess.PAWN:
            return Said.PROMOTES, _promotes(form, unit), 0.0
    return None


def _destination(part: Part, unit: Unit, adjacent: bool) -> Step:
    """After a piece and a square."""
    form = part.form
    match unit.kind:
        case "square":
            if part.origin:
                return Said.OVER, replace(form, from_square=int(unit.value)), 0.0
            if form.to != unit.value:
                return Said.OVER, replace(form, from_square=form.to, to=int(unit.value)), 0.0
        case "capture" if form.from_square is None and unit.value == "passive":
            return Said.PASSIVE, Form(target=form.piece, to=form.to, capture=True), 0.0
        case "capture" if form.from_square is None:
            taking = replace(form, from_square=form.to, to=None, capture=True, again=unit.value == "again")
            return Said.CAPTURE, taking, 0.0
        case "piece" if form.piece == chess.PAWN and _last_rank(form) and unit.value not in (chess.PAWN, chess.KING):
            return Said.OVER, replace(form, promotion=int(unit.value)), 0.0
    return _ending(part, unit, adjacent)


def _ending(part: Part, unit: Unit, _: bool) -> Step:
    """What may stand behind a whole move."""
    form = part.form
    match unit.kind:
        case "check" if not form.check:
            return Said.OVER, replace(form, check=True), 0.0
        case "mate" if not form.mate:
            return Said.OVER, replace(form, check=True, mate=True), 0.0
        case "promotes" if form.to is not None and _last_rank(form) and not form.promotes:
            return Said.PROMOTES, _promotes(replace(form, piece=chess.PAWN, bare=False), unit), 0.0
    return None


def _over(part: Part, unit: Unit, adjacent: bool) -> Step:
    """After a whole move: where it came from, as in "takes on e5 with the knight from c6", or what it does."""
    form = part.form
    if unit.kind == "square" and part.origin and form.piece is not None and form.from_square is None and form.capture:
        return Said.OVER, replace(form, from_square=int(unit.value)), 0.0
    return _ending(part, unit, adjacent)


def _square(part: Part, unit: Unit, adjacent: bool) -> Step:
    """After a square alone."""
    form = part.form
    match unit.kind:
        case "square" if form.to != unit.value and (adjacent or part.strange == 0):
            return Said.OVER, Form(from_square=form.to, to=int(unit.value)), 0.1
        case "capture" if adjacent:
            return Said.CAPTURE, Form(from_square=form.to, capture=True, again=unit.value == "again"), 0.1
        case "piece" if _last_rank(form) and adjacent and unit.value not in (chess.PAWN, chess.KING):
            return Said.OVER, replace(form, piece=chess.PAWN, bare=False, promotion=int(unit.value)), 0.1
        case "piece" if part.strange == 0:
            return Said.SQUARE_PIECE, replace(form, piece=int(unit.value), bare=False), 0.2
    return _ending(part, unit, adjacent)


def _square_owner(part: Part, unit: Unit, adjacent: bool) -> Step:
    """After a square alone, read as where a piece stands: "the a1 rook", "the d2 knight"."""
    if unit.kind == "piece" and adjacent and part.form.bare and part.cost + unit.cost < _CLEARLY:
        return Said.PIECE_FROM, Form(piece=int(unit.value), from_square=part.form.to), 0.1
    return None


def _from(part: Part, unit: Unit, _: bool) -> Step:
    """After "from" without a piece: "the one from f3 goes to e1"."""
    match unit.kind:
        case "square" if part.form.from_square is None:
            return Said.FROM, Form(from_square=int(unit.value)), 0.0
        case "square":
            return Said.OVER, replace(part.form, to=int(unit.value)), 0.0
        case "capture" if part.form.from_square is not None:
            return Said.CAPTURE, replace(part.form, capture=True, again=unit.value == "again"), 0.0
    return None


def _trades(part: Part, unit: Unit, _: bool) -> Step:
    """After "trades", "swaps": the pieces, each of which takes its like."""
    if unit.kind in ("piece", "plural") and unit.value not in (chess.KING, chess.PAWN):
        form = replace(part.form, piece=int(unit.value), target=int(unit.value), trades=True)
        return Said.CAPTURED, form, -unit.cost
    return None


def _passive(part: Part, unit: Unit, _: bool) -> Step:
    """After "is taken by": what takes; after "is taken on": where."""
    match unit.kind:
        case "piece":
            return Said.OVER, replace(part.form, piece=int(unit.value)), 0.0
        case "square" if part.form.to is None:
            return Said.PASSIVE, replace(part.form, to=int(unit.value)), 0.0
        case "letter" if part.form.piece is None:
            return Said.WITH_FILE, replace(part.form, from_file=int(unit.value)), 0.0
    return None


def _square_piece(part: Part, unit: Unit, adjacent: bool) -> Step:
    """After a square and then a piece: "on d6 the knight takes", "to d6 goes the knight"."""
    if unit.kind == "capture" and adjacent:
        return Said.OVER, replace(part.form, capture=True, again=unit.value == "again"), 0.0
    return None


def _capture(part: Part, unit: Unit, adjacent: bool) -> Step:
    form = part.form
    match unit.kind:
        case "square":
            if part.origin:
                return Said.OVER, replace(form, from_square=int(unit.value)), 0.0
            return Said.CAPTURED_ON, replace(form, to=int(unit.value)), 0.0
        case "piece":
            return Said.CAPTURED, replace(form, target=int(unit.value)), 0.0
        case "letter" if adjacent or part.at == part.end + 1:
            return Said.CAPTURE_FILE, replace(form, target_file=int(unit.value)), 0.1
        case "back":
            return Said.CAPTURE, replace(form, again=True), 0.0
        case "with":
            return Said.WITH, form, 0.0
    return _ending(part, unit, adjacent)


def _capture_file(part: Part, unit: Unit, adjacent: bool) -> Step:
    if unit.kind == "piece" and unit.value == chess.PAWN and adjacent:
        return Said.CAPTURED, replace(part.form, target=chess.PAWN), 0.0
    return None


def _captured(part: Part, unit: Unit, adjacent: bool) -> Step:
    form = part.form
    match unit.kind:
        case "square" if form.to is None:
            return Said.CAPTURED_ON, replace(form, to=int(unit.value)), 0.0
        case "with" if form.piece is None:
            return Said.WITH, form, 0.0
        case "piece" if adjacent and form.target == chess.PAWN:
            return None
    return _ending(part, unit, adjacent)


def _captured_on(part: Part, unit: Unit, adjacent: bool) -> Step:
    form = part.form
    match unit.kind:
        case "with" if form.piece is None:
            return Said.WITH, form, 0.0
        case "square" if part.origin and form.from_square is None:
            return Said.OVER, replace(form, from_square=int(unit.value)), 0.0
        case "piece" if _last_rank(form) and adjacent and form.piece in (None, chess.PAWN):
            if unit.value not in (chess.PAWN, chess.KING):
                return Said.OVER, replace(form, piece=chess.PAWN, promotion=int(unit.value)), 0.1
    return _ending(part, unit, adjacent)


def _with(part: Part, unit: Unit, adjacent: bool) -> Step:
    form = part.form
    match unit.kind:
        case "piece" if form.piece is None:
            return Said.OVER, replace(form, piece=int(unit.value)), 0.0
        case "letter" if form.piece is None:
            return Said.WITH_FILE, replace(form, from_file=int(unit.value)), 0.0
    return _ending(part, unit, adjacent)


def _with_file(part: Part, unit: Unit, adjacent: bool) -> Step:
    if unit.kind == "piece" and adjacent:
        return Said.OVER, replace(part.form, piece=int(unit.value)), 0.0
    return None


def _on_the_way(part: Part, unit: Unit, adjacent: bool) -> Step:
    """After "goes back", "to", "pushes": a square, then perhaps the piece that goes there."""
    form = part.form
    match unit.kind:
        case "square" if form.to is None and not part.origin:
            return Said.ON_THE_WAY, replace(form, to=int(unit.value)), 0.0
        case "capture" if form.to is not None and adjacent and not part.moved:
            return Said.OVER, replace(form, capture=True, again=unit.value == "again"), 0.15
        case "piece" if form.to is not None and (part.moved or part.at > part.end):
            return Said.OVER, replace(form, piece=int(unit.value)), 0.1
    return None if form.to is None else _ending(part, unit, adjacent)


def _check(part: Part, unit: Unit, adjacent: bool) -> Step:
    """After a check of which nothing else was said: "check on c1", "checks from h6"."""
    if unit.kind == "square" and not adjacent and part.strange == 0:
        return Said.OVER, replace(part.form, to=int(unit.value), vague=False), 0.1
    return None


def _castles(part: Part, unit: Unit, adjacent: bool) -> Step:
    if unit.kind == "side" and part.form.castles in ("castles", "both"):
        both = "both " if part.form.castles == "both" else ""
        return Said.OVER, replace(part.form, castles=f"{both}{unit.value}"), 0.0
    return _ending(part, unit, adjacent)


def _side(part: Part, unit: Unit, adjacent: bool) -> Step:
    if unit.kind == "castles" and adjacent:
        return Said.OVER, replace(part.form, castles=part.form.castles), 0.0
    return None


def _promoting(part: Part, unit: Unit, adjacent: bool) -> Step:
    form = part.form
    match unit.kind:
        case "piece" if unit.value not in (chess.PAWN, chess.KING) and form.promotion is None:
            return Said.PROMOTES, replace(form, promotion=int(unit.value)), 0.0
        case "square" if form.to is None:
            return Said.PROMOTES, replace(form, to=int(unit.value)), 0.0
    return _ending(part, unit, adjacent)


def _last_rank(form: Form) -> bool:
    return form.to is not None and chess.square_rank(form.to) in (0, 7)


#: The states in which a phrase may end.
COMPLETE: Final = frozenset(
    {
        Said.SQUARE,
        Said.DESTINATION,
        Said.CAPTURE,
        Said.CAPTURED,
        Said.CAPTURED_ON,
        Said.CAPTURE_FILE,
        Said.CASTLES,
        Said.PROMOTES,
        Said.OVER,
    }
)
#: What may come next, by how far the phrase has come.
RULES: Final[dict[Said, Rule]] = {
    Said.NOTHING: _nothing,
    Said.FILE: _file,
    Said.PIECE: _piece,
    Said.PIECE_FROM: _piece_from,
    Said.SQUARE: _square,
    Said.SQUARE_PIECE: _square_piece,
    Said.DESTINATION: _destination,
    Said.CAPTURE: _capture,
    Said.CAPTURE_FILE: _capture_file,
    Said.CAPTURED: _captured,
    Said.CAPTURED_ON: _captured_on,
    Said.WITH: _with,
    Said.WITH_FILE: _with_file,
    Said.ON_THE_WAY: _on_the_way,
    Said.CHECK: _check,
    Said.CASTLES: _castles,
    Said.SIDE: _side,
    Said.PROMOTES: _promoting,
    Said.FROM: _from,
    Said.TRADES: _trades,
    Said.PASSIVE: _passive,
    Said.OVER: _over,
}
#: A second way in which it may go on.
FURTHER_RULES: Final[dict[Said, Rule]] = {Said.SQUARE: _square_owner}
