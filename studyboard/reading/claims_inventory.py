"""Claims about which pieces there are: what a side has, what stands against what, what is gone, which ending it is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import product
from typing import Final

import chess

from studyboard.board.naming import counted, listed, sentence, side
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.counted_things import (
    AT_FIRST,
    Thing,
    cut_short,
    listed_last,
    things_behind_comma,
    things_named,
    words_for,
)
from studyboard.reading.findings import Topic
from studyboard.reading.mentions import Mention, Named
from studyboard.reading.parts_of_board import part_words, parts_meant
from studyboard.reading.referents import side_meant

#: Either side.
BOTH: Final = (chess.WHITE, chess.BLACK)


def holder(claim: Claim) -> tuple[chess.Color, ...] | None:
    """Who has it: both sides or one of them; empty where it can be either; None where no side is spoken of."""
    if claim.has("both") or claim.has("neither"):
        # “Both of them”, but not “both of the rooks”.
        named = (*claim.mentions("both"), *claim.mentions("neither"))
        return BOTH if all(m.what is Named.SIDE or m.pronoun for m in named) else None
    who = claim.mention("side") or claim.mention("piece")
    if who is None:
        return _joined_before(claim) or one_side_before(claim) or side_after_with(claim)
    if who.colour is not None and (who.kind is None or who.kind == chess.KING):
        return (who.colour,)
    if who.kind is not None or who.square is not None:
        return None
    player = side_meant(claim.scene, who)
    if player is not None:
        return (player,)
    if who.pronoun == "they" and claim.match.group().endswith((" each", " apiece")):
        return BOTH
    if who.pronoun in ("he", "she", "they") and claim.scene.players.speaker is not None:
        return _other_player(claim, claim.scene.players.speaker)
    if who.pronoun in ("he", "she", "they"):
        return one_side_before(claim) or _subject_before(claim)
    return () if not who.pronoun else None


def _joined_before(claim: Claim) -> tuple[chess.Color, ...]:
    """“He's a pawn up”, “we're a pawn up”, where the speaker is one of the players: whom the word before means."""
    speaker = claim.scene.players.speaker
    if speaker is None or not claim.start:
        return ()
    word = claim.scene.tokens[claim.start - 1].text
    if word in claim.scene.words.names.us:
        return (speaker,)
    who = next((m for m in claim.scene.mentions if m.end == claim.start and m.pronoun in ("he", "she", "they")), None)
    return _other_player(claim, speaker) if who is not None and word != who.pronoun else ()


def _subject_before(claim: Claim) -> tuple[chess.Color, ...]:
    """“White is in check. He can castle”: the side with which the sentence before begins, where it names no other."""
    scene, begins = claim.scene, claim.sentence.start
    if not begins or any(m.what is Named.SIDE and begins <= m.start < claim.start for m in scene.mentions):
        return ()
    first, end = scene.sentence(begins - 1)
    named = [m for m in scene.mentions if m.what is Named.SIDE and first <= m.start < end]
    if not named or named[0].start > first + 1 or len({m.colour for m in named}) > 1 or named[0].colour is None:
        return ()
    return (named[0].colour,)


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
    areas = parts_meant(claim)
    if not things or colours is None or not areas or claim.hinted("not_all_after"):
        return []
    if (
        claim.hinted("compensation_before")
        or claim.hinted("parted_with_before")
        or claim.hinted("where_before")
        or (claim.has("neither") and claim.has("none"))
    ):
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
        return _holds_one(claim, things[0], colours, areas)
    neither = claim.has("neither")
    # “Neither side has any knights”: none that is counted as such.
    any_of_them = any(not thing.count for thing in things)
    boards = claim.boards()
    sides = colours or BOTH
    for board, area in product(boards, areas):
        if neither and not any_of_them:
            right = not any(all(thing.fits(board, [c], area) for thing in things) for c in BOTH)
        elif claim.has("both") or neither:
            right = all(thing.fits(board, [c], area) for thing in things for c in BOTH)
        else:
            right = any(all(thing.fits(board, [c], area) for thing in things) for c in sides)
        if right:
            return confirmed(
                Topic.NUMBER, claim.quote(), holdings_words(board, things, sides, area), exact=len(things) == 1
            )
    why = holdings_words(boards[0], things, sides, areas[0])
    if not colours:
        return undecided(Topic.NUMBER, claim.quote(), f"It is not clear who is meant. {why}")
    return contradicted(Topic.NUMBER, claim.quote(), why)


def _holds_one(claim: Claim, thing: Thing, colours: tuple[chess.Color, ...], areas: Sequence[int]) -> list[Judgement]:
    """“Black has a bishop”: at least one."""
    if len(colours) != 1 or not claim.hinted("counted_exactly_after"):
        return []
    boards = claim.boards()
    why = holdings_words(boards[0], [thing], colours, areas[0])
    if any(thing.fits(board, colours, area) for board, area in product(boards, areas)):
        return confirmed(Topic.NUMBER, claim.quote(), why, exact=True)
    return contradicted(Topic.NUMBER, claim.quote(), why)


def holdings_words(board: chess.BaseBoard, things: Sequence[Thing], colours: Sequence[chess.Color], area: int) -> str:
    """“White has two rooks and five pawns.”"""
    ordered = [colour for colour in BOTH if colour in colours]
    return " ".join(f"{side(c)} has {words_for(board, things, [c], area)}{part_words(area)}." for c in ordered)


def judge_on_board(claim: Claim) -> list[Judgement]:
    """“There are four rooks on the board”, “all eight pawns are still there”, “no minor pieces are left”."""
    things = things_named(claim, "list") or things_behind_comma(claim, "list")
    areas = parts_meant(claim)
    file = claim.mention("on_file")
    if not things or not areas or (file is None and claim.hinted("not_all_after")) or claim.hinted("object_before"):
        return []
    if claim.hinted("exception_before"):
        # “All but two pawns are still on the board.”
        return []
    if file is None and claim.hinted("file_where_before"):
        file = next((m for m in reversed(claim.scene.mentions) if m.end <= claim.start and m.file is not None), None)
    if file is not None:
        things = [replace(thing, file=file.file) for thing in things]
    area = areas[0]
    sure = claim.has("sure") or area != chess.BB_ALL or any(thing.file is not None for thing in things)
    if not sure and not claim.hinted("counted_after"):
        return []
    if claim.has("none"):
        things = [replace(thing, count=0, exact=True) for thing in things]
    if all(not thing.exact for thing in things) and not sure:
        return []
    colours = one_side_before(claim) if things[0].colour is None and claim.has("of_side") else ()
    boards = claim.boards()
    for board, within in product(boards, areas):
        if all(_on_board(thing, board, colours, within) for thing in things):
            return confirmed(Topic.NUMBER, claim.quote(), _total_words(board, things, within), exact=True)
    why = _total_words(boards[0], things, area)
    if len(things) == 1 and things[0].kind is None and things[0].count in _men(boards[0]):
        men = chess.popcount(boards[0].occupied)
        return confirmed(Topic.NUMBER, claim.quote(), f"There are {men} men on the board, counting the kings.")
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


def _men(board: chess.BaseBoard) -> tuple[int, ...]:
    """How many men there are: “four pieces, counting the kings”."""
    return chess.popcount(board.occupied), chess.popcount(board.occupied & ~board.kings)


def _other_side_has_none(board: chess.BaseBoard, things: Sequence[Thing]) -> bool:
    return any(max(thing.tallies(board, [c])) == 0 for thing in things for c in BOTH)


def _colours(thing: Thing, colours: Sequence[chess.Color]) -> Sequence[chess.Color]:
    return (thing.colour,) if thing.colour is not None else colours or BOTH


def _on_board(thing: Thing, board: chess.BaseBoard, colours: Sequence[chess.Color], area: int) -> bool:
    """Is the number right of both sides together, or where all of them are meant, of one side?"""
    either = _colours(thing, colours)
    if thing.every and thing.colour is None:
        found = max(thing.tallies(board, BOTH, area))
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
    return f"There {listed(told)}{part_words(area) or ' on the board'}."


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
    if claim.hinted("exception_before"):
        # “Everything but the rooks is gone.”
        return []
    if thing.kind == chess.KING or (not claim.has("on") and claim.hinted("goes_somewhere_after")):
        # “The kings have gone to the same side.”
        return []
    named = things_named(claim, "piece")
    group = "minor" if "minor" in claim.quote().lower().split() else ""
    sort = named[0] if named else Thing(thing.kind, group, 0, True, light=thing.light, plural=True)
    if sort.kind is None and sort.group != "minor":
        return []
    colours = list(BOTH) if thing.colour is None else [thing.colour]
    both = "both" in claim.quote().lower().split()
    boards = claim.boards()
    left = [[sort.tallies(board, [c])[0] for c in colours] for board in boards]
    name = sort.name if thing.colour is None else f"{chess.COLOR_NAMES[thing.colour]} {sort.name}"
    total = sum(left[0])
    why = f"There {'is' if total == 1 else 'are'} {counted(total, name)} on the board."
    if claim.has("on"):
        full = AT_FIRST[sort.kind] if sort.kind is not None else 2 * AT_FIRST[chess.KNIGHT]
        every = "all" in [*claim.before().split()[-1:], *claim.quote().lower().split()]
        if every and all(sum(counts) < full * len(colours) for counts in left):
            return contradicted(Topic.NUMBER, claim.quote(), why)
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
    sort = Thing.several(thing.kind)
    boards = claim.boards()
    words = holdings_words(boards[0], [sort], colours, chess.BB_ALL)
    if any(all(board.pieces_mask(thing.kind, colour) for colour in colours) for board in boards):
        return confirmed(Topic.NUMBER, claim.quote(), words)
    return contradicted(Topic.NUMBER, claim.quote(), words)


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
    if claim.has("inside") and not _only_inside(claim, named[0]):
        return []
    if any(m.kind is None or m.square is not None or not m.plural or m.definite for m in named):
        return []
    kinds = {m.kind for m in named if m.kind is not None}
    boards = claim.boards()
    for board in boards:
        there = {piece.piece_type for piece in board.piece_map().values()} - {chess.KING, chess.PAWN}
        if there == kinds - {chess.KING, chess.PAWN}:
            return confirmed(Topic.NUMBER, claim.quote(), _pieces_words(board))
    return contradicted(Topic.NUMBER, claim.quote(), _pieces_words(boards[0]))


def _only_inside(claim: Claim, first: Mention) -> bool:
    """“There are only bishops and pawns”: does the word belong to the name of the first of them?"""
    return any(token.text == "only" for token in claim.scene.tokens[first.start : first.end])


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


JUDGES: Final[dict[str, Judge]] = {
    "holds": judge_holds,
    "on_board": judge_on_board,
    "gone": judge_gone,
    "men": judge_men,
    "ending": judge_ending,
    "only_kinds": judge_only_kinds,
    "keeps": judge_keeps,
}
