"""Claims about which pieces there are: what a side has, what stands against what, what is gone, which ending it is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

import chess

from studyboard.board.naming import counted, listed, sentence, side
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.counted_things import (
    AT_FIRST,
    Thing,
    cut_short,
    is_number,
    listed_last,
    things_named,
    words_for,
)
from studyboard.reading.findings import Topic
from studyboard.reading.mentions import Named

_KINGSIDE: Final = chess.BB_FILE_E | chess.BB_FILE_F | chess.BB_FILE_G | chess.BB_FILE_H
_BOTH: Final = (chess.WHITE, chess.BLACK)


def wing_of(claim: Claim) -> int | None:
    """The wing that is named behind or right before the claim; all squares where none is; None for another place."""
    hint = claim.scene.words.hint
    for text in (claim.said("where"), claim.before()):
        ending = text == claim.before()
        if hint("queen_wing", text) and (not ending or hint("wing_before", text)):
            return ~_KINGSIDE & chess.BB_ALL
        if hint("king_wing", text) and (not ending or hint("wing_before", text)):
            return _KINGSIDE
        if text and (not ending or hint("place_before", text)):
            return None
    return chess.BB_ALL


def holder(claim: Claim) -> tuple[chess.Color, ...] | None:
    """Who has it: both sides or one of them; empty where it can be either; None where no side is spoken of."""
    if claim.has("both") or claim.has("neither"):
        return _BOTH
    who = claim.mention("side") or claim.mention("piece")
    if who is None:
        return one_side_before(claim) or side_after_with(claim)
    if who.colour is not None and (who.kind is None or who.kind == chess.KING):
        return (who.colour,)
    if who.kind is not None or who.square is not None:
        return None
    if who.pronoun in ("he", "she") and claim.scene.players.speaker is not None:
        return _other_player(claim, claim.scene.players.speaker)
    return one_side_before(claim) if who.pronoun in ("he", "she", "they") else () if not who.pronoun else None


def _other_player(claim: Claim, speaker: chess.Color) -> tuple[chess.Color, ...]:
    """Whom one of the players means by “he”: the other one, where the sentence names nobody else."""
    tokens, me = claim.scene.tokens, claim.scene.words.names.me
    named = [m for m in claim.scene.mentions if m.what is Named.SIDE and claim.sentence.start <= m.start < claim.start]
    others = {m.colour for m in named if tokens[m.start].text not in me}
    return (not speaker,) if others <= {not speaker} else ()


def one_side_before(claim: Claim) -> tuple[chess.Color, ...]:
    """The one side that is named before the claim in its sentence, or begins the clause; empty where none is."""
    named = [m for m in claim.scene.mentions if m.what is Named.SIDE and claim.sentence.start <= m.start < claim.start]
    colours = {m.colour for m in named if m.colour is not None}
    return tuple(colours) if len(colours) == 1 and not _owns(claim, named[-1].end - 1) else ()


def side_after_with(claim: Claim) -> tuple[chess.Color, ...]:
    """“With two rooks, White …”: the side that is named next in the sentence."""
    if not claim.hinted("with_before") and not claim.match.group().startswith("with "):
        return ()
    after = [m for m in claim.scene.mentions if claim.end <= m.start < claim.sentence.end and m.what is Named.SIDE]
    named = bool(after) and after[0].colour is not None and not _owns(claim, after[0].end - 1)
    return (bool(after[0].colour),) if named else ()


def _owns(claim: Claim, token: int) -> bool:
    return claim.scene.tokens[token].text.endswith(("'s", "'"))


def judge_holds(claim: Claim) -> list[Judgement]:
    """“White has two rooks and five pawns”, “Black has no knights left”, “each side has a queen”."""
    things = things_named(claim, "list")
    colours = holder(claim)
    area = wing_of(claim)
    if not things or colours is None or area is None or claim.hinted("not_all_after"):
        return []
    if claim.hinted("compensation_before") or (claim.has("neither") and claim.has("none")):
        return []
    whole = claim.hinted("counted_after") or cut_short(claim, "list", things)
    if not whole:
        things = things[: len(things) - listed_last(claim, "list")]
        whole = bool(listed_last(claim, "list"))
    if claim.has("none"):
        things = [replace(thing, count=0, exact=True) for thing in things]
        whole = True
    if not things or not whole or (claim.hinted("in_return_before") and not claim.has("side")):
        return []
    if all(not thing.exact for thing in things) and not (claim.has("both") or claim.has("neither") or len(things) > 1):
        return _holds_one(claim, things[0], colours, area)
    neither = claim.has("neither")
    boards = claim.boards()
    sides = colours or _BOTH
    for board in boards:
        if neither:
            right = not any(all(thing.fits(board, [c], area) for thing in things) for c in _BOTH)
        elif claim.has("both"):
            right = all(thing.fits(board, [c], area) for thing in things for c in _BOTH)
        else:
            right = any(all(thing.fits(board, [c], area) for thing in things) for c in sides)
        if right:
            return confirmed(
                Topic.NUMBER, claim.quote(), holdings_words(board, things, sides, area), exact=len(things) == 1
            )
    why = holdings_words(boards[0], things, sides, area)
    if not colours:
        return undecided(Topic.NUMBER, claim.quote(), f"It is not clear who is meant. {why}")
    return contradicted(Topic.NUMBER, claim.quote(), why)


def _holds_one(claim: Claim, thing: Thing, colours: tuple[chess.Color, ...], area: int) -> list[Judgement]:
    """“Black has a bishop”: at least one."""
    if len(colours) != 1 or not claim.hinted("counted_exactly_after"):
        return []
    boards = claim.boards()
    if any(thing.fits(board, colours, area) for board in boards):
        return confirmed(Topic.NUMBER, claim.quote(), holdings_words(boards[0], [thing], colours, area), exact=True)
    return contradicted(Topic.NUMBER, claim.quote(), holdings_words(boards[0], [thing], colours, area))


def holdings_words(board: chess.BaseBoard, things: Sequence[Thing], colours: Sequence[chess.Color], area: int) -> str:
    """“White has two rooks and five pawns.”"""
    where = "" if area == chess.BB_ALL else f" on the {'kingside' if area == _KINGSIDE else 'queenside'}"
    ordered = [colour for colour in _BOTH if colour in colours]
    return " ".join(f"{side(c)} has {words_for(board, things, [c], area)}{where}." for c in ordered)


def judge_on_board(claim: Claim) -> list[Judgement]:
    """“There are four rooks on the board”, “all eight pawns are still there”, “no minor pieces are left”."""
    things = things_named(claim, "list")
    area = wing_of(claim)
    file = claim.mention("on_file")
    if not things or area is None or (file is None and claim.hinted("not_all_after")):
        return []
    if file is None and claim.hinted("file_where_before"):
        file = next((m for m in reversed(claim.scene.mentions) if m.end <= claim.start and m.file is not None), None)
    if file is not None:
        things = [replace(thing, file=file.file) for thing in things]
    sure = claim.has("sure") or area != chess.BB_ALL or any(thing.file is not None for thing in things)
    if not sure and not claim.hinted("counted_after"):
        return []
    if claim.has("none"):
        things = [replace(thing, count=0, exact=True) for thing in things]
    if all(not thing.exact for thing in things) and not sure:
        return []
    colours = one_side_before(claim) if things[0].colour is None and claim.has("of_side") else ()
    boards = claim.boards()
    for board in boards:
        if all(_on_board(thing, board, colours, area) for thing in things):
            return confirmed(Topic.NUMBER, claim.quote(), _total_words(board, things, area), exact=True)
    why = _total_words(boards[0], things, area)
    most = [max(thing.tallies(boards[0], _colours(thing, ()), area)) for thing in things]
    too_many = any(thing.count > had for thing, had in zip(things, most, strict=True))
    if not sure and not too_many:
        return undecided(Topic.NUMBER, claim.quote(), why)
    whole_board = area == chess.BB_ALL and all(thing.file is None for thing in things)
    if (
        whole_board
        and any(not thing.count and thing.colour is None for thing in things)
        and _other_side_has_none(boards[0], things)
    ):
        return undecided(Topic.NUMBER, claim.quote(), f"It is not clear whose they are. {why}")
    return contradicted(Topic.NUMBER, claim.quote(), why)


def _other_side_has_none(board: chess.BaseBoard, things: Sequence[Thing]) -> bool:
    return any(max(thing.tallies(board, [c])) == 0 for thing in things for c in _BOTH)


def _colours(thing: Thing, colours: Sequence[chess.Color]) -> Sequence[chess.Color]:
    return (thing.colour,) if thing.colour is not None else colours or _BOTH


def _on_board(thing: Thing, board: chess.BaseBoard, colours: Sequence[chess.Color], area: int) -> bool:
    """Is the number right of both sides together, or where all of them are meant, of one side?"""
    either = _colours(thing, colours)
    if thing.every and thing.colour is None:
        found = max(thing.tallies(board, _BOTH, area))
        per_side = [max(thing.tallies(board, [c], area)) for c in either]
        full = 0 if thing.kind is None else AT_FIRST[thing.kind]
        return found in (thing.count, 2 * full) or thing.count in per_side
    return thing.fits(board, either, area)


def _total_words(board: chess.BaseBoard, things: Sequence[Thing], area: int) -> str:
    told = []
    for thing in things:
        colours = _colours(thing, ())
        number = max(thing.tallies(board, colours, area))
        owner = "" if thing.colour is None else f"{chess.COLOR_NAMES[thing.colour]} "
        told.append(f"{'is' if number == 1 else 'are'} {counted(number, owner + thing.name)}")
    return f"There {listed(told)} on the board."


def judge_versus(claim: Claim) -> list[Judgement]:
    """“Four pawns against three”, “White has a rook for two knights”, “six against seven” where pawns are counted."""
    area = wing_of(claim)
    if area is None or not claim.hinted("versus_after"):
        return []
    first = things_named(claim, "list")
    if not first and is_number(claim, "list"):
        counts = _pawns_meant(claim, area)
        if counts is None:
            return []
        first = [counts]
    if not first:
        return []
    second = things_named(claim, "list2", like=first[-1])
    if not second:
        return []
    colours = _first_side(claim, first)
    boards = claim.boards()
    for board in boards:
        for colour in colours or _BOTH:
            if _against(board, colour, first, second, area):
                return confirmed(Topic.NUMBER, claim.quote(), _versus_words(board, first, second, colour, area))
    shown = (colours or _BOTH)[0]
    why = _versus_words(boards[0], first, second, shown, area)
    numbers = [thing for thing in (*first, *second) if thing.exact]
    clear = len(numbers) > 1 or (numbers and len(first) + len(second) > 2)
    told = (
        claim.has("holds")
        or not claim.before()
        or claim.hinted("told_before")
        or claim.hinted("wing_before")
        or claim.before().endswith(",")
    )
    if not numbers or not told or (not colours and not clear):
        return undecided(Topic.NUMBER, claim.quote(), why)
    return contradicted(Topic.NUMBER, claim.quote(), why)


def _pawns_meant(claim: Claim, area: int) -> Thing | None:
    """What a number alone counts: pawns, where a wing is named or pawns are spoken of before."""
    number = claim.mentions("list")[0]
    begins = claim.scene.sentence(claim.sentence.start - 1)[0] if claim.sentence.start else 0
    pawns = any(m.kind == chess.PAWN and begins <= m.start < claim.start for m in claim.scene.mentions)
    bare = all(not board.occupied & ~board.kings & ~board.pawns for board in claim.boards())
    if not pawns and area == chess.BB_ALL and not bare:
        return None
    return Thing(chess.PAWN, "", number.value, True, plural=True)


def _first_side(claim: Claim, first: Sequence[Thing]) -> tuple[chess.Color, ...]:
    """Whose the pieces are that are named first."""
    second = next((m.colour for m in claim.mentions("list2") if m.colour is not None), None)
    second = next((m.colour for m in claim.mentions("other") if m.colour is not None), second)
    who = claim.mention("side")
    if who is not None and who.colour is not None:
        return (who.colour,)
    owned = next((thing.colour for thing in first if thing.colour is not None), None)
    if owned is not None:
        return (owned,)
    if second is not None:
        return (not second,)
    return one_side_before(claim) if claim.has("holds") else ()


def _against(
    board: chess.BaseBoard, colour: chess.Color, first: Sequence[Thing], second: Sequence[Thing], area: int
) -> bool:
    """Has this side the first and the other side the second, all of it or over and above what both have?"""
    if all(t.fits(board, [colour], area) for t in first) and all(t.fits(board, [not colour], area) for t in second):
        return True
    if area != chess.BB_ALL:
        return False
    mine = [_more(board, colour, thing) for thing in first]
    theirs = [_more(board, not colour, thing) for thing in second]
    return all(n == t.count for n, t in zip((*mine, *theirs), (*first, *second), strict=True)) and any(mine)


def _more(board: chess.BaseBoard, colour: chess.Color, thing: Thing) -> int:
    return max(thing.tallies(board, [colour])) - max(thing.tallies(board, [not colour]))


def _versus_words(
    board: chess.BaseBoard, first: Sequence[Thing], second: Sequence[Thing], colour: chess.Color, area: int
) -> str:
    return f"{holdings_words(board, first, [colour], area)} {holdings_words(board, second, [not colour], area)}"


def judge_same_number(claim: Claim) -> list[Judgement]:
    """“Both sides have the same number of pawns”, “the pawns are level”."""
    things = things_named(claim, "list") or [_plain(m.kind) for m in claim.mentions("piece")]
    area = wing_of(claim)
    if len(things) != 1 or area is None or (not things[0].plural and things[0].kind is not None):
        return []
    thing = things[0]
    boards = claim.boards()
    for board in boards:
        if max(thing.tallies(board, [chess.WHITE], area)) == max(thing.tallies(board, [chess.BLACK], area)):
            return confirmed(Topic.NUMBER, claim.quote(), holdings_words(board, things, _BOTH, area), exact=True)
    return contradicted(Topic.NUMBER, claim.quote(), holdings_words(boards[0], things, _BOTH, area))


def _plain(kind: chess.PieceType | None) -> Thing:
    return Thing(kind, "", 1, False, plural=True)


def judge_more_things(claim: Claim) -> list[Judgement]:
    """“White has more pawns”, “Black has fewer pawns than White”."""
    things = things_named(claim, "list")
    colours, area = holder(claim), wing_of(claim)
    if len(things) != 1 or not colours or area is None or not claim.hinted("more_after"):
        return []
    thing = things[0]
    boards = claim.boards()
    sign = -1 if claim.has("fewer") else 1
    found = []
    for board in boards:
        numbers = [max(thing.tallies(board, [c], area)) for c in (chess.WHITE, chess.BLACK)]
        ahead = (numbers[0] - numbers[1]) * (1 if colours[0] else -1) * sign
        found.append(numbers[0] == numbers[1] if claim.has("neither") else ahead > 0)
    words = holdings_words(boards[0], things, _BOTH, area)
    if any(found):
        return confirmed(Topic.NUMBER, claim.quote(), words, exact=True)
    return contradicted(Topic.NUMBER, claim.quote(), words)


def judge_men(claim: Claim) -> list[Judgement]:
    """“You see six men”: kings and pawns are men too."""
    number = claim.mention("number")
    if number is None:
        return []
    counts = [chess.popcount(board.occupied) for board in claim.boards()]
    why = f"There are {counts[0]} men on the board."
    if number.value in counts:
        return confirmed(Topic.NUMBER, claim.quote(), why)
    return contradicted(Topic.NUMBER, claim.quote(), why)


def judge_gone(claim: Claim) -> list[Judgement]:
    """“Both rooks have left the board”, “the queens are still on”."""
    thing = claim.mention("piece")
    if thing is None or thing.square is not None or not thing.plural or thing.file is not None or thing.pronoun:
        return []
    named = things_named(claim, "piece")
    group = "minor" if "minor" in claim.quote().lower().split() else ""
    sort = named[0] if named else Thing(thing.kind, group, 0, True, light=thing.light, plural=True)
    if sort.kind is None and sort.group != "minor":
        return []
    colours = list(_BOTH) if thing.colour is None else [thing.colour]
    both = "both" in claim.quote().lower().split()
    boards = claim.boards()
    left = [[sort.tallies(board, [c])[0] for c in colours] for board in boards]
    name = sort.name if thing.colour is None else f"{chess.COLOR_NAMES[thing.colour]} {sort.name}"
    total = sum(left[0])
    why = f"There {'is' if total == 1 else 'are'} {counted(total, name)} on the board."
    if claim.has("on"):
        if any(sum(counts) > (sum(counts) == 1 and both) for counts in left):
            return confirmed(Topic.NUMBER, claim.quote(), why, exact=True)
        return contradicted(Topic.NUMBER, claim.quote(), why)
    if any(not sum(counts) for counts in left):
        return confirmed(Topic.NUMBER, claim.quote(), f"There is no {name} on the board.", exact=True)
    everything = claim.hinted("every_one")
    event = (
        claim.hinted("of_exchange")
        and not everything
        and (not claim.hinted("has_been") or max(left[0]) < AT_FIRST.get(sort.kind or 0, 0))
    )
    if event or (0 in left[0] and len(colours) > 1 and (not both or total > 1)):
        return undecided(Topic.NUMBER, claim.quote(), f"It is not clear whose they are. {why}")
    return contradicted(Topic.NUMBER, claim.quote(), why)


def judge_keeps(claim: Claim) -> list[Judgement]:
    """“Black still has his queen”, “both sides kept their rooks”: at least one of them."""
    thing, colours = claim.mention("kept"), holder(claim)
    if thing is None or not thing.definite or not thing.kind or thing.square is not None or not colours:
        return []
    if thing.kind in (chess.KING, chess.PAWN) or (not claim.has("both") and thing.plural):
        return []
    sort = _plain(thing.kind)
    boards = claim.boards()
    words = holdings_words(boards[0], [sort], colours, chess.BB_ALL)
    if any(all(board.pieces_mask(thing.kind, colour) for colour in colours) for board in boards):
        return confirmed(Topic.NUMBER, claim.quote(), words)
    return contradicted(Topic.NUMBER, claim.quote(), words)


def judge_lost_count(claim: Claim) -> list[Judgement]:
    """“Each side has lost one pawn”: since the beginning, or more than the other side."""
    things, colours = things_named(claim, "list") or _his_queen(claim), holder(claim)
    if not things or not colours or any(t.kind is None for t in things) or not claim.hinted("counted_exactly_after"):
        return []
    if len(colours) == 1 and not any(thing.exact for thing in things):
        return []
    boards = claim.boards()
    for board in boards:
        since = any(
            all(_lost(begin, board, colour, thing) == thing.count for thing in things for colour in colours)
            for begin in (chess.Board(), claim.scene.talk.root or chess.Board())
        )
        net = len(colours) == 1 and all(-_more(board, colours[0], thing) == thing.count for thing in things)
        if since or net:
            return confirmed(Topic.NUMBER, claim.quote(), holdings_words(board, things, colours, chess.BB_ALL))
    return contradicted(Topic.NUMBER, claim.quote(), holdings_words(boards[0], things, colours, chess.BB_ALL))


def _his_queen(claim: Claim) -> list[Thing]:
    named = claim.mentions("list")
    alone = len(named) == 1 and named[0].kind == chess.QUEEN and named[0].square is None and not named[0].plural
    return [Thing(chess.QUEEN, "", 1, True)] if alone else []


def _lost(begin: chess.BaseBoard, board: chess.BaseBoard, colour: chess.Color, thing: Thing) -> int:
    return max(thing.tallies(begin, [colour])) - max(thing.tallies(board, [colour]))


def judge_ending(claim: Claim) -> list[Judgement]:
    """“It is a rook ending”, “a pawn ending”, “rook and pawn against rook”."""
    named = [m for m in claim.mentions("kinds") if m.kind is not None or m.vague]
    if not named or any(m.square is not None or m.pronoun for m in named):
        return []
    kinds = {m.kind for m in named if m.kind is not None}
    minor = not kinds or any(m.kind is None for m in named)
    boards = claim.boards()
    allowed = kinds | {chess.KING, chess.PAWN} | ({chess.BISHOP, chess.KNIGHT} if minor else set())
    why = _pieces_words(boards[0])
    for board in boards:
        there = {piece.piece_type for piece in board.piece_map().values()}
        needed = kinds - {chess.PAWN, chess.KING}
        if there <= allowed and needed <= there and (not minor or there & {chess.BISHOP, chess.KNIGHT}):
            return confirmed(Topic.NUMBER, claim.quote(), _pieces_words(board), exact=True)
    return contradicted(Topic.NUMBER, claim.quote(), why)


def judge_only_kinds(claim: Claim) -> list[Judgement]:
    """“Only kings and pawns are left”, “rooks and bishops only”."""
    named = claim.mentions("kinds")
    if any(m.kind is None or m.square is not None or not m.plural or m.definite for m in named):
        return []
    kinds = {m.kind for m in named if m.kind is not None}
    boards = claim.boards()
    for board in boards:
        there = {piece.piece_type for piece in board.piece_map().values()} - {chess.KING, chess.PAWN}
        if there == kinds - {chess.KING, chess.PAWN}:
            return confirmed(Topic.NUMBER, claim.quote(), _pieces_words(board))
    return contradicted(Topic.NUMBER, claim.quote(), _pieces_words(boards[0]))


def _pieces_words(board: chess.BaseBoard) -> str:
    """What is on the board besides kings and pawns, in one sentence."""
    kinds = [
        kind
        for kind in (chess.QUEEN, chess.ROOK, chess.BISHOP, chess.KNIGHT)
        if board.pieces_mask(kind, True) or board.pieces_mask(kind, False)
    ]
    if not kinds:
        return "There are only kings and pawns on the board."
    told = [
        counted(chess.popcount(board.pieces_mask(k, True) | board.pieces_mask(k, False)), chess.piece_name(k))
        for k in kinds
    ]
    return sentence(f"there {'is' if told[0].startswith('one ') else 'are'} {listed(told)} on the board")


def judge_bishop_shade(claim: Claim) -> list[Judgement]:
    """“Both bishops run on light squares”, “White's bishop is dark-squared”."""
    thing = claim.mention("piece")
    if thing is None or thing.kind != chess.BISHOP or thing.square is not None or thing.other:
        return []
    mask = chess.BB_LIGHT_SQUARES if claim.has("light") else chess.BB_DARK_SQUARES
    boards = claim.boards()
    for board in boards:
        bishops = board.bishops if thing.colour is None else board.pieces_mask(chess.BISHOP, thing.colour)
        if bishops and (not bishops & ~mask if thing.plural else bishops & mask):
            return confirmed(Topic.MATERIAL, claim.quote(), _shades(board), *chess.scan_forward(bishops), exact=True)
    return contradicted(Topic.MATERIAL, claim.quote(), _shades(boards[0]))


def _shades(board: chess.BaseBoard) -> str:
    told = []
    for colour in _BOTH:
        for at in board.pieces(chess.BISHOP, colour):
            shade = "light" if chess.BB_SQUARES[at] & chess.BB_LIGHT_SQUARES else "dark"
            told.append(f"the bishop on {chess.square_name(at)} moves on {shade} squares")
    return sentence(listed(told)) if told else "There is no bishop on the board."


JUDGES: Final[dict[str, Judge]] = {
    "holds": judge_holds,
    "on_board": judge_on_board,
    "versus": judge_versus,
    "same_number": judge_same_number,
    "more_things": judge_more_things,
    "gone": judge_gone,
    "men": judge_men,
    "lost_count": judge_lost_count,
    "ending": judge_ending,
    "only_kinds": judge_only_kinds,
    "keeps": judge_keeps,
    "bishop_shade": judge_bishop_shade,
}
