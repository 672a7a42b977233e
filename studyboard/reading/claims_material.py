"""Claims about material: who is up what, what was given for what, level material."""

from __future__ import annotations

from collections import Counter
from typing import Final

import chess

from studyboard.board.exchange import PIECE_VALUES, best_exchange
from studyboard.board.material import material_words
from studyboard.board.moves import captured_square
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.claims_inventory import holder
from studyboard.reading.counted_things import is_plain
from studyboard.reading.findings import Topic
from studyboard.reading.mentions import Named

#: What is said of a knight or bishop, and of a rook for one of them.
MINOR, EXCHANGE = "piece", "exchange"
KINDS: Final = {name: kind for kind, name in enumerate(chess.PIECE_NAMES) if name}


def amounts(claim: Claim, *, definite: bool = False) -> list[tuple[int, str]]:
    """What is counted, each with its number: a kind of piece, “piece” for knight or bishop, or “exchange”.

    definite: count “the queen” as well as “a queen”
    """
    found = []
    for group in ("amount", "amount2", "amount3"):
        said = claim.said(group)
        if not said:
            continue
        named = claim.mentions(group)
        numbers = [m.value for m in named if m.what is Named.NUMBER]
        pieces = [m for m in named if m.what is Named.PIECE]
        if pieces and (pieces[0].square is not None or pieces[0].pronoun or not is_plain(claim, pieces[0])):
            continue
        if pieces and pieces[0].kind == chess.KING:
            continue
        thing = EXCHANGE if not pieces else MINOR if pieces[0].kind is None else chess.piece_name(pieces[0].kind)
        words = [] if not pieces else claim.scene.tokens[pieces[0].start : pieces[0].end]
        if (
            pieces
            and pieces[0].definite
            and not definite
            and not any(token.text in ("extra", "both") for token in words)
        ):
            continue
        inside = next((_numbers(claim).index(t.text) for t in words[1:] if t.text in _numbers(claim)), 1)
        count = numbers[0] if numbers else 2 if any(token.text == "both" for token in words) else inside
        if pieces and pieces[0].plural and count == 1:
            continue
        if any(token.text == "no" for token in words):
            count = 0
        found.append((count, thing))
    return found


def _numbers(claim: Claim) -> tuple[str, ...]:
    return claim.scene.words.names.numbers


def says(claim: Claim, group: str, *words: str) -> bool:
    """Does what a group names hold one of these words?"""
    tokens = claim.scene.tokens
    named = [token.text for m in claim.mentions(group) for token in tokens[m.start : m.end]]
    return any(word in named or f" {word} " in f" {claim.said(group)} " for word in words)


def settled(claim: Claim) -> list[chess.Board]:
    """The positions that are spoken of; where one comes from a capture, also what becomes of it if that is answered."""
    found: list[chess.Board] = []
    for board in claim.boards():
        found.append(board)
        for step in claim.scene.steps:
            if step.board is not board or step.before is None or not step.move or step.landed is None:
                continue
            exchange = best_exchange(board, step.landed) if step.before.is_capture(step.move) else None
            if exchange is not None and exchange.gain > 0:
                after = board.copy(stack=False)
                for move in exchange.moves:
                    after.push(move)
                found.append(after)
    return found


def after_best_capture(board: chess.Board) -> list[chess.Board]:
    """The position, and what becomes of it when the side to move makes its most profitable exchange, if it has one."""
    best, target = None, 0
    for square in chess.scan_forward(board.occupied_co[not board.turn] & ~board.kings):
        exchange = best_exchange(board, square)
        if exchange.gain > target:
            best, target = exchange, exchange.gain
    if best is None:
        return [board]
    after = board.copy(stack=False)
    for move in best.moves:
        after.push(move)
    return [board, after]


def difference(board: chess.BaseBoard, colour: chess.Color) -> Counter[str]:
    """What *colour* has more (or less) of, by name of the piece; “piece” for knights and bishops together."""
    found: Counter[str] = Counter()
    for name, kind in KINDS.items():
        found[name] = len(board.pieces(kind, colour)) - len(board.pieces(kind, not colour))
    found[MINOR] = found["knight"] + found["bishop"]
    return found


def points(board: chess.BaseBoard, colour: chess.Color) -> int:
    """By how many points *colour* is ahead."""
    more = difference(board, colour)
    return sum(more[name] * PIECE_VALUES[kind] for name, kind in KINDS.items() if kind != chess.KING)


def is_up(board: chess.BaseBoard, colour: chess.Color, things: list[tuple[int, str]]) -> bool:
    """Would one say that *colour* is these things up? The count of each has to fit, or one thing the points."""
    more, ahead = difference(board, colour), points(board, colour)
    if len(things) == 1 and things[0][1] in ("rook", "queen") and more[MINOR] < 0 and ahead < 4 * things[0][0]:
        return False
    if ahead <= 0 and not (len(things) == 1 and things[0][1] == EXCHANGE):
        return False
    if len(things) == 1:
        count, thing = things[0]
        if thing == EXCHANGE:
            return more["rook"] >= count and more[MINOR] <= -count
        if thing == "pawn":
            return (more["pawn"] == count and more["rook"] == more["queen"] == 0 == more[MINOR]) or ahead == count
        if thing == MINOR and more[MINOR] == count:
            return True
        other = {"knight": "bishop", "bishop": "knight"}.get(thing)
        if other is not None and more[thing] <= 0 and more[other] == count and ahead == 3 * count:
            # A knight up is no bishop up.
            return False
        if thing in ("rook", "queen") and not more["rook"] and not more["queen"]:
            # A knight and two pawns are no rook.
            return False
        return more[thing] == count or ahead == count * PIECE_VALUES[KINDS.get(thing, chess.KNIGHT)]
    return all(more[thing] == count for count, thing in things if thing != EXCHANGE)


def has_more(board: chess.BaseBoard, colour: chess.Color, things: list[tuple[int, str]]) -> bool:
    """Has *colour* just so many more of these, whatever the other side has for it?"""
    more = difference(board, colour)
    return all(more[thing] == count for count, thing in things)


def judge_up(claim: Claim) -> list[Judgement]:
    """“White is a pawn up”, “the exchange down”, “with two extra pawns”, “nobody is a pawn up”."""
    things = amounts(claim)
    if not things or claim.hinted("in_return_before") or claim.hinted("not_up_before"):
        return []
    inside = range(claim.start + 1, claim.end)
    if claim.mention("side") is None and any(step.cued and step.token in inside for step in claim.scene.steps):
        # “Some write down … a rook”: the move is told from there on.
        return []
    if claim.hinted("not_up_after") or (claim.mention("side") is None and claim.hinted("would_be_after")):
        return []
    if claim.match.group().endswith(("behind", "in front")) and claim.hinted("behind_something_after"):
        # “The c-pawn has a pawn behind it.”
        return []
    if claim.has("extra") and not says(claim, "amount", "extra", "additional", "spare"):
        return []
    if claim.has("neither"):
        return _nobody_up(claim, things)
    down = claim.has("down")
    if claim.kind == "material_bare" and claim.hinted("placed_before") and things == [(1, things[0][1])]:
        # “King in front, queen behind.”
        return []
    who = claim.mention("side") or claim.mention("piece")
    if who is not None and (who.kind is not None or (who.plural and not who.pronoun)):
        return []
    colours = list(holder(claim) or chess.COLORS)
    more = claim.hinted("more_of_it") or says(claim, "amount", "extra", "additional", "spare")
    boards = settled(claim)
    for board in boards:
        for colour in colours:
            if is_up(board, colour != down, things) or (more and has_more(board, colour != down, things)):
                return confirmed(Topic.MATERIAL, claim.quote(), material_words(board), exact=who is not None)
    if who is None and _told_against(claim, boards, things, down=down):
        return undecided(Topic.MATERIAL, claim.quote(), material_words(claim.boards()[0]))
    soon = [after for board in claim.boards() for after in after_best_capture(board)]
    if len(things) == 1 and any(is_up(board, colour != down, things) for board in soon for colour in colours):
        return undecided(Topic.MATERIAL, claim.quote(), "What can be taken next may be counted already.")
    return contradicted(Topic.MATERIAL, claim.quote(), material_words(claim.boards()[0]))


def judge_both(claim: Claim) -> list[Judgement]:
    """“He is a rook down and a pawn up”: both halves of one side."""
    things = amounts(claim)
    if len(things) != 2:
        return []
    signs = [-1 if claim.has(name) else 1 for name in ("down", "down2")]
    who = claim.mention("side") or claim.mention("piece")
    if who is None or who.kind is not None:
        return []
    told = [(count * sign, thing) for (count, thing), sign in zip(things, signs, strict=True)]
    colours = holder(claim) or chess.COLORS
    boards = settled(claim)
    if any(has_more(board, colour, told) for board in boards for colour in colours):
        return confirmed(Topic.MATERIAL, claim.quote(), material_words(boards[0]))
    return contradicted(Topic.MATERIAL, claim.quote(), material_words(boards[0]))


def _told_against(claim: Claim, boards: list[chess.Board], things: list[tuple[int, str]], *, down: bool) -> bool:
    """“A knight behind … and two pawns ahead”: is it one half of what stands against each other?"""
    fits = any(has_more(board, colour != down, things) for board in boards for colour in chess.COLORS)
    return fits and claim.before().endswith(("and", ",", "but"))


def _nobody_up(claim: Claim, things: list[tuple[int, str]]) -> list[Judgement]:
    boards = claim.boards()
    words = material_words(boards[0])
    if any(not any(is_up(board, colour, things) for colour in chess.COLORS) for board in boards):
        return confirmed(Topic.MATERIAL, claim.quote(), words)
    return contradicted(Topic.MATERIAL, claim.quote(), words)


def _exchanges(more: Counter[str]) -> int:
    """How many rooks stand against how many minor pieces."""
    rooks = more["rook"]
    return rooks if rooks * more[MINOR] < 0 else 0


def judge_ahead(claim: Claim) -> list[Judgement]:
    """“White is ahead in material”, “has a material advantage”, “is three points up”."""
    colours = list(holder(claim) or ())
    if not colours:
        return []
    number = claim.mention("number")
    boards = settled(claim)
    balance = [points(board, colours[0]) * (-1 if claim.has("down") else 1) for board in boards]
    words = material_words(claim.boards()[0])
    if claim.has("neither"):
        right = 0 in balance
    elif number is not None:
        right = number.value in balance
    else:
        right = max(balance) > 0
    if right:
        return confirmed(Topic.MATERIAL, claim.quote(), words, exact=True)
    return contradicted(Topic.MATERIAL, claim.quote(), words)


def judge_for(claim: Claim) -> list[Judgement]:
    """“Three pawns for a rook”."""
    things = amounts(claim, definite=True)
    if len(things) < 2 or len({thing for _, thing in things}) < len(things):
        # “Gave up the d-pawn for the c-pawn” leaves no difference.
        return []
    given, *taken = things
    boards = settled(claim)
    named = [m for m in claim.scene.mentions if m.start == claim.start and m.what is Named.SIDE]
    sides = [not m.colour if claim.has("gave") else bool(m.colour) for m in named] or list(chess.COLORS)
    if claim.sentence.plain and not named:
        return []
    for board in boards:
        for colour in sides:
            more = difference(board, colour)
            more[EXCHANGE] = _exchanges(more)
            whole = more[given[1]] == given[0] and all(more[thing] == -count for count, thing in taken)
            if whole or _pawns_for_minor(more, given, taken):
                return confirmed(Topic.MATERIAL, claim.quote(), material_words(board))
    if claim.has("gave") and any(_taken_here(claim, not colour, given, taken) for colour in sides):
        return confirmed(Topic.MATERIAL, claim.quote(), "These are the pieces that the moves of the line take.")
    if not claim.hinted("has_before") and not claim.has("has"):
        return undecided(Topic.MATERIAL, claim.quote(), material_words(boards[0]))
    return contradicted(Topic.MATERIAL, claim.quote(), material_words(claim.boards()[0]))


def _taken_here(claim: Claim, giver: chess.Color, given: tuple[int, str], taken: list[tuple[int, str]]) -> bool:
    """Do the moves of the line take what is said to be given, and what is said to be got for it?"""
    lost: Counter[str] = Counter()
    for step in claim.scene.steps:
        square = None if step.before is None or not step.move else captured_square(step.before, step.move)
        if square is None or step.before is None:
            continue
        name = chess.piece_name(step.before.piece_type_at(square) or chess.PAWN)
        lost[f"{name}{step.before.color_at(square)}"] += 1
    got = all(lost[f"{thing}{not giver}"] == count for count, thing in taken)
    return got and lost[f"{given[1]}{giver}"] == given[0]


def _pawns_for_minor(more: Counter[str], given: tuple[int, str], taken: list[tuple[int, str]]) -> bool:
    """“Two pawns for the bishop”, where a bishop was given and others stand against knights: a minor piece less."""
    if given != (more["pawn"], "pawn") or len(taken) != 1 or more["rook"] or more["queen"]:
        return False
    count, thing = taken[0]
    return thing in ("bishop", "knight") and more[MINOR] == -count and more[thing] < 0


def judge_level(claim: Claim) -> list[Judgement]:
    """“Material is level”."""
    boards = settled(claim)
    even = any(points(board, chess.WHITE) == 0 for board in boards)
    words = material_words(claim.boards()[0])
    if claim.has("uneven") or claim.hinted("denied"):
        uneven = any(points(board, chess.WHITE) != 0 for board in claim.boards())
        if uneven:
            return confirmed(Topic.MATERIAL, claim.quote(), words)
        return contradicted(Topic.MATERIAL, claim.quote(), words)
    if even:
        return confirmed(Topic.MATERIAL, claim.quote(), words)
    return contradicted(Topic.MATERIAL, claim.quote(), words)


def of_kind(claim: Claim, kind: chess.PieceType) -> bool:
    """Does the claim name pieces of this kind?"""
    named = [m for group in ("kind", "kind2", "kind3", "kind4") for m in claim.mentions(group)]
    begins, ends = claim.sentence.start, claim.sentence.end
    in_sentence = any(m.kind == kind and begins <= m.start < ends for m in claim.scene.mentions)
    return bool(named) and all(m.kind == kind or (m.pronoun and in_sentence) for m in named)


def judge_queens_off(claim: Claim) -> list[Judgement]:
    """“The queens are off”."""
    if not of_kind(claim, chess.QUEEN) or not claim.mentions("kind")[0].plural:
        return []
    boards = claim.boards(wide=True)
    if any(not board.queens for board in boards):
        return confirmed(Topic.MATERIAL, claim.quote(), "There is no queen on the board.")
    queens = tuple(chess.scan_forward(boards[0].queens))
    squares = " and ".join(chess.square_name(square) for square in queens)
    if claim.hinted("of_exchange") or claim.has("aside"):
        return undecided(Topic.MATERIAL, claim.quote(), f"There are queens on {squares}.")
    return contradicted(Topic.MATERIAL, claim.quote(), f"There are queens on {squares}.", *queens)


JUDGES: Final[dict[str, Judge]] = {
    "material_side": judge_up,
    "material_bare": judge_up,
    "material_both": judge_both,
    "material_ahead": judge_ahead,
    "material_for": judge_for,
    "material_level": judge_level,
    "queens_off": judge_queens_off,
}
