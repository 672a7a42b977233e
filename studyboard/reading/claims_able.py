"""Claims about who can do what next: take, go somewhere, block a check, give one; who alone can, and who cannot."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

import chess

from studyboard.board.moves import captured_square, landing_square
from studyboard.board.naming import counted, listed, sentence, side, square_words, the_piece
from studyboard.board.tactics import turned
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.findings import Topic
from studyboard.reading.imagined import before_moves
from studyboard.reading.mentions import Mention, Named
from studyboard.reading.referents import fitting, moved_to, named_before, referents, royal, salient, side_meant
from studyboard.reading.supposed import supposed

#: A pronoun that can mean more pieces than this is held against none of them.
_FEW: Final = 3
_ANYBODY: Final[tuple[Mention | None, ...]] = (None,)
#: So many moves are named in a reason.
_LISTED: Final = 4
_DEEDS: Final = ("take", "go", "block", "check", "move")
_NEXT_DOER: Final = re.compile(r" , | and | or ")
_JOINED: Final = re.compile(r" (?:and|or|nor|as well as|or even|and also) §p\d+$")
_MARK: Final = re.compile(r"§p\d+")


@dataclass(frozen=True, slots=True)
class _Deed:
    """What is said to be possible.

    how: one of _DEEDS; aim: what is taken, or where the move goes; None where it is not said
    """

    how: str
    aim: Mention | None


@dataclass(frozen=True, slots=True)
class _Ways:
    """The moves of one side that do a deed.

    board: with that side to move; moves: without those that the named piece does not make; aims: squares of the deed
    """

    board: chess.Board
    moves: tuple[chess.Move, ...]
    aims: tuple[chess.Square, ...] = ()


def judge_able(claim: Claim) -> list[Judgement]:
    """“The knight or the queen can take it”, “only the king can block”, “nobody can take on f3”, “it can go to e4”."""
    positions, doers = _positions(claim), _doers(claim)
    deeds, doers = _deeds(claim, doers)
    if claim.hinted("aimed_at_before"):
        return undecided(_topic(claim), claim.quote(), "It is said of what could be.")
    if not deeds or positions is None or claim.hinted("moves_later_after") or not _all_meant(claim, doers):
        return []
    if claim.has("unable") and (claim.has("move") or _for_a_reason(claim, doers)):
        return []
    return _judged(claim, positions, deeds, doers)


def _topic(claim: Claim) -> Topic:
    """What it is said of: a piece and what it reaches, or a move."""
    return Topic.ATTACK if claim.has("take") or claim.has("go") else Topic.MOVE


def _for_a_reason(claim: Claim, doers: list[Mention]) -> bool:
    """“The rook can't take, because it would be mated”: it could by the rules, as a king that cannot take could not."""
    return claim.hinted("not_so_after") and any(doer.kind != chess.KING for doer in doers)


def judge_replies(claim: Claim) -> list[Judgement]:
    """“If the rook takes on f6, the king takes back”: can it, where that has been played?"""
    positions, doers = supposed(claim), _doers(claim)
    deeds, doers = _deeds(claim, doers)
    start, end = claim.scene.clause(claim.start)
    if not positions or not deeds or any(step.cued and start <= step.token <= end for step in claim.scene.steps):
        return []
    if not _all_meant(claim, doers):
        return []
    return _able(claim, positions, deeds, doers)


def _judged(claim: Claim, positions: list[chess.Board], deeds: list[_Deed], doers: list[Mention]) -> list[Judgement]:
    if claim.has("none") or _none_named(claim, doers):
        return _by_nobody(claim, positions, deeds)
    if claim.has("number"):
        return _so_many(claim, positions, deeds)
    role = claim.mention("role")
    if role is not None:
        words = " ".join(token.text for token in claim.scene.tokens[role.start : role.end])
        return _alone(claim, positions, deeds, doers) if claim.scene.words.hint("sole_before", words) else []
    if claim.has("last") and deeds[0].how == "go":
        return _nowhere_else(claim, positions, deeds, doers)
    if claim.has("sole") or claim.has("last"):
        return _alone(claim, positions, deeds, doers)
    if claim.has("unable") or claim.has("neither"):
        return _unable(claim, positions, deeds, doers)
    return _able(claim, positions, deeds, doers)


def _positions(claim: Claim) -> list[chess.Board] | None:
    """The positions of which it may be said; None where it is said of one that is not known."""
    later = supposed(claim)
    if claim.on_condition() or later is None or claim.hinted("with_gone_before"):
        return later or None
    could = claim.scene.words.hint("could", claim.match.group())
    earlier = before_moves(claim)
    if could and claim.has("go") and (checked := [board for board in earlier if board.is_check()]):
        # “I blocked, but the king could go to h1”: another answer to the check.
        return checked
    # Where a piece can go is said of what is shown; what could be done, of before the move as well.
    return [*later, *claim.boards(), *([] if claim.has("go") and not could else earlier)]


def _doers(claim: Claim) -> list[Mention]:
    """Who is said to do it, without what ends the clause before: “takes a pawn, and the rook can take it”."""
    if claim.has("same"):
        return _named_before(claim)
    named = claim.mentions("doers")
    before = claim.match.string[: claim.match.start("doers")].rstrip() if named else ""
    if len(named) > 1 and not _JOINED.search(claim.said("doers")):
        # “With the queen on a2, the king can …”: two clauses.
        named = named[-1:]
    elif len(named) > 1 and before and not claim.scene.words.hint("begins_clause_before", before):
        parts = _NEXT_DOER.split(claim.said("doers"))
        named = named[-len(_MARK.findall(parts[-1])) :]
    return named + claim.mentions("tool")


def _named_before(claim: Claim) -> list[Mention]:
    """Who it is where the verb has no name of its own: “…, which can take”; behind “and” the only one named before."""
    here = [m for m in claim.scene.mentions if claim.sentence.start <= m.start < claim.start]
    here = [m for m in here if m.what in (Named.PIECE, Named.SIDE)]
    if claim.said("same") in ("and", "but", "or"):
        return here if len(here) == 1 and not here[0].pronoun else []
    return [m for m in here[-1:] if m.end == claim.start and not m.plural]


def _deeds(claim: Claim, doers: list[Mention]) -> tuple[list[_Deed], list[Mention]]:
    """What is said to be done, and who does it: “block with the rook on d7” may say where it goes."""
    how = next((name for name in _DEEDS if claim.has(name)), "")
    aims = claim.mentions("target") + claim.mentions("to")
    if any(m.plural or (m.what is Named.PIECE and m.kind is None and not m.pronoun and m.square is None) for m in aims):
        return [], doers
    placed = len(doers) == 1 and doers[0].square is not None and not aims and how == "block"
    if placed and not any(fitting(doers[0], board) for board in claim.boards()):
        return [_Deed(how, doers[0])], [replace(doers[0], square=None)]
    if not how or (how == "go" and not aims):
        return [], doers
    return [_Deed(how, aim) for aim in aims] or [_Deed(how, None)], doers


def _all_meant(claim: Claim, doers: list[Mention]) -> bool:
    """Is it known of every doer what it is?"""
    if claim.has("same") and not doers:
        return False
    for m in doers:
        if m.what is Named.SIDE:
            continue
        if m.pronoun and m.pronoun != "it" and royal(claim.scene, m) is None and side_meant(claim.scene, m) is None:
            return False
        if m.pronoun == "it" and not named_before(claim.scene, m.start):
            return False
        bare = m.kind is None and m.square is None and not m.pronoun
        if m.vague or (m.what is Named.SQUARE) or (bare and not _none_named(claim, doers)):
            return False
    return bool(doers) or any(claim.has(group) for group in ("none", "side", "passive", "number"))


def _none_named(claim: Claim, doers: list[Mention]) -> bool:
    """“No black piece can take it”."""
    return len(doers) == 1 and claim.scene.tokens[doers[0].start].text == "no"


def _ways(claim: Claim, positions: list[chess.Board], deed: _Deed, doer: Mention | None) -> Iterator[_Ways]:
    """The moves that do it, position by position, of each side that may be meant, or of one doer."""
    who = claim.mention("side")
    for position in positions:
        for colour in chess.COLORS:
            facing = turned(position, colour)
            if facing is None or (who is not None and who.colour not in (None, colour)):
                continue
            if doer is not None and (player := side_meant(claim.scene, doer)) is not None and player != colour:
                continue
            from_mask = chess.BB_ALL
            if doer is not None and side_meant(claim.scene, doer) is None:
                from_mask = sum(chess.BB_SQUARES[at] for at in referents(claim.scene, doer, position))
            aims = _aims(claim, deed, facing)
            if aims is None or not from_mask & facing.occupied_co[colour]:
                continue
            moves = [move for move in facing.generate_legal_moves(from_mask) if _does(facing, move, deed, aims)]
            yield _Ways(facing, tuple(moves), tuple(aims))


def _aims(claim: Claim, deed: _Deed, facing: chess.Board) -> list[chess.Square] | None:
    """The squares that the deed can be aimed at, none for any; None where on this board there is no such aim."""
    aim = deed.aim
    if deed.how == "block" and not facing.is_check():
        return None
    if deed.how != "take":
        return [] if aim is None or aim.square is None else [aim.square]
    if aim is None or aim.pronoun:
        last = [*_moved_last(claim, facing), *facing.checkers()]
        doing = claim.mentions("doers") + claim.mentions("tool")
        named = [m for m in named_before(claim.scene, claim.end) if m not in doing] if aim is not None else []
        if aim is not None and not named and not any(step.cued for step in claim.scene.steps):
            # Another line has told what it is.
            return None
        if aim is not None:
            # “White could take it, {Nxe5}”: what is taken next.
            steps = [step for step in claim.scene.steps if step.before is not None and step.move]
            last += [s.move.to_square for s in steps if s.move and s.before and s.before.fen() == facing.fen()]
        meant = [*last, *(at for m in named for at in salient(claim.scene, m, facing))]
    else:
        meant = referents(claim.scene, aim, facing)
    return sorted({at for at in meant if facing.color_at(at) == (not facing.turn)}) or None


def _moved_last(claim: Claim, facing: chess.Board) -> list[chess.Square]:
    """Where the pieces stand that moved last: by the move that is supposed, in the line, or right before it."""
    scene = claim.scene
    moved = moved_to(scene, claim.start)
    here = [step.landed for step in scene.steps if step.landed in moved and _stands_on(step.board, facing, step.landed)]
    moves = [*scene.talk.history[-1:], *(step.move for step in scene.steps)]
    led_here = [scene.start if not scene.steps or scene.steps[0].before is None else scene.steps[0].before]
    led_here += [step.board for step in scene.steps]
    pairs = zip(led_here[-len(moves) :], moves, strict=False)
    came = [move for board, move in pairs if board.board_fen() == facing.board_fen()]
    return [at for at in here if at is not None] + [move.to_square for move in (*facing.move_stack[-1:], *came) if move]


def _stands_on(board: chess.Board, facing: chess.Board, at: chess.Square | None) -> bool:
    """Does the same piece stand there on both boards?"""
    return at is not None and board.piece_at(at) == facing.piece_at(at)


def _does(facing: chess.Board, move: chess.Move, deed: _Deed, aims: list[chess.Square]) -> bool:
    if deed.how == "take":
        return captured_square(facing, move) in aims
    if aims and landing_square(facing, move) not in aims:
        return False
    if deed.how == "block":
        kind = facing.piece_type_at(move.from_square)
        return facing.is_check() and kind != chess.KING and captured_square(facing, move) is None
    return deed.how in ("go", "move") or facing.gives_check(move)


def _able(claim: Claim, positions: list[chess.Board], deeds: list[_Deed], doers: list[Mention]) -> list[Judgement]:
    found: list[Judgement] = []
    for doer in doers or _ANYBODY:
        for deed in deeds:
            ways = list(_ways(claim, positions, deed, doer))
            move = next(((way.board, move) for way in ways for move in way.moves), None)
            if move is not None:
                found += confirmed(_topic(claim), claim.quote(), f"{move[0].san(move[1])}.", move[1].to_square)
                continue
            if not ways and (wrong := _named_wrongly(claim, positions, deed, doer)):
                return wrong
            if not ways or _too_many(claim, ways, deed, doer) or not _is_taking(claim, deed, positions):
                return undecided(_topic(claim), claim.quote(), "It is not clear what is meant.")
            judged = contradicted(_topic(claim), claim.quote(), _why_not(claim, ways, deed, doer))
            last = deed.aim if len(deeds) > 1 else doer
            reach = None if last is None or last.start > claim.end else (claim.start, max(claim.end, last.end))
            return [replace(one, reach=reach) for one in judged]
    return found[:1]


def _named_wrongly(claim: Claim, positions: list[chess.Board], deed: _Deed, doer: Mention | None) -> list[Judgement]:
    """“May take the bishop on f6”, where what it can take there is a knight."""
    aim = deed.aim
    if deed.how != "take" or aim is None or aim.square is None or aim.kind is None or aim.moves_to:
        return []
    there = replace(aim, kind=None, colour=None, also=())
    for way in _ways(claim, positions, replace(deed, aim=there), doer):
        if way.moves and way.board.piece_type_at(aim.square) != aim.kind:
            why = sentence(f"{the_piece(way.board, aim.square)} is what it can take there")
            found = contradicted(Topic.PIECE, claim.quote(), why, aim.square)
            return [replace(one, reach=(claim.start, max(claim.end, aim.end))) for one in found]
    return []


def _too_many(claim: Claim, ways: list[_Ways], deed: _Deed, doer: Mention | None) -> bool:
    """Does a pronoun stand for more pieces than it can be held against?"""
    if deed.aim is not None and deed.aim.pronoun and any(len(set(way.aims)) > _FEW for way in ways):
        return True
    if doer is None or not doer.pronoun or side_meant(claim.scene, doer) is not None:
        return False
    return royal(claim.scene, doer) is None and any(len(referents(claim.scene, doer, w.board)) > _FEW for w in ways)


def _is_taking(claim: Claim, deed: _Deed, positions: list[chess.Board]) -> bool:
    """Is it said what can be taken, or has something just been taken or given check, which then is meant?"""
    if deed.how != "take" or deed.aim is not None or any(board.is_check() for board in positions):
        return True
    near = claim.scene.played_near(claim.start)
    taken = any(step.before is not None and step.move and step.before.is_capture(step.move) for step in near)
    return taken or bool(supposed(claim))


def _unable(claim: Claim, positions: list[chess.Board], deeds: list[_Deed], doers: list[Mention]) -> list[Judgement]:
    now = positions if claim.on_condition() else claim.boards()
    for doer in doers or _ANYBODY:
        for deed in deeds:
            ways = list(_ways(claim, now, deed, doer))
            if not ways:
                return undecided(_topic(claim), claim.quote(), "It is not clear what is meant.")
            every = [(way.board, way.moves[0]) for way in ways if way.moves]
            if not every:
                continue
            vague = deed.how == "take" and (deed.aim is None or deed.aim.pronoun)
            sure = all(set(way.aims) <= {move.to_square for move in way.moves} for way in ways)
            if vague and not sure:
                return undecided(_topic(claim), claim.quote(), "It is not clear what is meant.")
            board, move = every[0]
            return contradicted(_topic(claim), claim.quote(), f"{board.san(move)} is possible.", move.to_square)
    return confirmed(_topic(claim), claim.quote(), "No such move is legal.")


def _by_nobody(claim: Claim, positions: list[chess.Board], deeds: list[_Deed]) -> list[Judgement]:
    colour = next((m.colour for m in claim.mentions("doers") if m.colour is not None), None)
    for deed in deeds:
        ways = [way for way in _ways(claim, positions, deed, None) if colour in (None, way.board.turn)]
        if not ways:
            return undecided(_topic(claim), claim.quote(), "It is not clear what is meant.")
        if not any(not way.moves for way in ways):
            board, move = ways[0].board, ways[0].moves[0]
            return contradicted(_topic(claim), claim.quote(), f"{board.san(move)} is possible.", move.to_square)
    return confirmed(_topic(claim), claim.quote(), "No such move is legal.")


def _so_many(claim: Claim, positions: list[chess.Board], deeds: list[_Deed]) -> list[Judgement]:
    number = claim.mention("number")
    ways = [way for way in _ways(claim, positions, deeds[0], None) if way.moves]
    if number is None or not ways or len(deeds) > 1:
        return undecided(Topic.NUMBER, claim.quote(), "It is not clear what is meant.")
    for way in ways:
        if number.value in (len(way.moves), len({move.from_square for move in way.moves})):
            return confirmed(Topic.NUMBER, claim.quote(), _these_can(way))
    return contradicted(Topic.NUMBER, claim.quote(), _these_can(ways[0]))


def _alone(claim: Claim, positions: list[chess.Board], deeds: list[_Deed], doers: list[Mention]) -> list[Judgement]:
    """“Only the bishop and the queen can take”."""
    if not doers:
        return []
    seen = [way for way in _ways(claim, positions, deeds[0], None) if _may_be_theirs(claim, way.board, doers)]
    for way in seen:
        each = [set(referents(claim.scene, doer, way.board)) for doer in doers]
        those = {move.from_square for move in way.moves}
        if those and those <= set().union(*each) and all(those & one for one in each):
            return confirmed(Topic.FORCED, claim.quote(), _these_can(way))
    able = next((way for way in seen if way.moves), None)
    if able is None and (not seen or deeds[0].how != "take"):
        return undecided(Topic.FORCED, claim.quote(), "It is not clear what is meant.")
    return contradicted(Topic.FORCED, claim.quote(), _these_can(able or seen[0]))


def _may_be_theirs(claim: Claim, board: chess.Board, doers: list[Mention]) -> bool:
    return all(doer.colour in (None, board.turn) for doer in doers)


def _nowhere_else(
    claim: Claim, positions: list[chess.Board], deeds: list[_Deed], doers: list[Mention]
) -> list[Judgement]:
    """“The king can only go to e2”: of a king all its squares; of any other piece there may be some that lose it."""
    named = {deed.aim.square for deed in deeds if deed.aim is not None}
    if len(doers) != 1 or None in named:
        return []
    seen: list[tuple[_Ways, set[chess.Square]]] = []
    for way in _ways(claim, positions, _Deed("go", None), doers[0]):
        reached = {landing_square(way.board, move) for move in way.moves if not way.board.is_castling(move)}
        kings = {way.board.piece_type_at(move.from_square) == chess.KING for move in way.moves}
        if named == reached or (kings == {False} and named <= reached):
            return confirmed(Topic.TRAPPED, claim.quote(), _reaches(way, reached))
        seen.append((way, reached))
    seen = [one for one in seen if one[0].moves] or seen
    # Of two kings, the one whose turn it is.
    seen = [one for one in seen if one[0].board.turn == positions[0].turn] or seen
    if not seen or len({way.board.turn for way, _ in seen}) > 1:
        return undecided(Topic.TRAPPED, claim.quote(), "It is not clear which piece is meant.")
    return contradicted(Topic.TRAPPED, claim.quote(), _reaches(*seen[0]))


def _reaches(way: _Ways, reached: set[chess.Square]) -> str:
    if not way.moves:
        return "It has no move."
    return sentence(f"{the_piece(way.board, way.moves[0].from_square)} can go to {_names(sorted(reached))}")


def _names(squares: list[chess.Square]) -> str:
    return listed([square_words(at) for at in squares])


def _these_can(way: _Ways) -> str:
    if not way.moves:
        return sentence(f"{side(way.board.turn)} has no such move")
    few = [way.board.san(move) for move in way.moves[:_LISTED]]
    named = listed(few) if len(few) == len(way.moves) else f"{', '.join(few)} …"
    return sentence(f"{side(way.board.turn)} has {counted(len(way.moves), 'such move')}: {named}")


def _why_not(claim: Claim, ways: list[_Ways], deed: _Deed, doer: Mention | None) -> str:
    others = [way for way in _ways(claim, [way.board for way in ways], deed, None) if way.moves]
    if doer is not None and others:
        return _these_can(others[0])
    return "No such move is legal."


JUDGES: Final[dict[str, Judge]] = {"able": judge_able, "replies": judge_replies}
