"""Claims about who attacks, guards or looks at what."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Final

import chess

from studyboard.board.naming import listed, sentence, side, square_words, the_piece, their_piece
from studyboard.board.relations import Sight, attack_words, attackers, view
from studyboard.reading.claim import Claim, Judge, Judgement, contradicted, undecided
from studyboard.reading.findings import Topic, Verdict
from studyboard.reading.mentions import Mention, Named
from studyboard.reading.referents import named_before, no_king, referents, royal, salient, squares_before

#: Does the piece on the first square stand in this relation to the second square?
Relation = Callable[[chess.Board, chess.Square, chess.Square], bool]


def attacks(board: chess.Board, by: chess.Square, target: chess.Square) -> bool:
    """Could *by* take on *target*, at once or behind a piece of its own on the same line?"""
    if board.piece_at(by) is None or board.color_at(target) == board.color_at(by):
        return False
    return view(board, by, target).sight in (Sight.DIRECT, Sight.THROUGH)


def defends(board: chess.Board, by: chess.Square, target: chess.Square) -> bool:
    """Does *by* guard *target*: its own piece, or a square?"""
    if by == target or board.piece_at(by) is None:
        return False
    seen = view(board, by, target)
    # A square behind the enemy king is covered all the same: the king cannot go there.
    behind = seen.sight is Sight.BLOCKED and seen.between == (board.king(not board.color_at(by)),)
    return behind or seen.sight in (Sight.DIRECT, Sight.THROUGH)


def guards_own(board: chess.Board, by: chess.Square, target: chess.Square) -> bool:
    """Does *by* guard a piece of its own on *target*?"""
    return board.color_at(target) == board.color_at(by) and defends(board, by, target)


def guards_own_or_square(board: chess.Board, by: chess.Square, target: chess.Square) -> bool:
    """Does the piece protect what stands there, one of its own side, or the empty square?"""
    return (guards_own if board.piece_at(target) else defends)(board, by, target)


def looks(board: chess.Board, by: chess.Square, target: chess.Square) -> bool:
    """Is *target* where *by* could go if nothing stood between?"""
    return board.piece_at(by) is not None and view(board, by, target).sight is not Sight.NEVER


def judge_attacks(claim: Claim) -> list[Judgement]:
    """“… attacks the rook on f6”."""
    return _judge_relation(claim, "attacks", lambda _: attacks)


def judge_eyes(claim: Claim) -> list[Judgement]:
    """“… looks at h7”."""
    return _judge_relation(claim, "looks at", lambda _: looks)


def judge_defends(claim: Claim) -> list[Judgement]:
    """“… protects the knight on e4”, “… covers g7”."""
    things = claim.things()
    if any(thing.kind == chess.KING for thing in things):
        return undecided(Topic.ATTACK, claim.quote(), "A king is not guarded as other pieces are.")
    reason = _why_barred(claim)
    if reason:
        return reason
    return _judge_relation(
        claim,
        "guards",
        lambda thing: defends if thing.what is Named.SQUARE else guards_own_or_square if thing.pronoun else guards_own,
    )


def _why_barred(claim: Claim) -> list[Judgement]:
    """“The king can't go to f1 because the bishop covers it”: a bishop of the other side, if it has one."""
    found, groups = claim.scene.words.hints["barred_before"].search(claim.before()), claim.subjects()
    if found is None or len(groups) != 1 or len(groups[0]) != 1:
        return []
    by, board = groups[0][0], claim.boards()[0]
    if by.what is not Named.PIECE or not by.kind or not by.definite or by.plural or by.vague or by.colour is not None:
        return []
    barred = _side_barred(claim, claim.scene.mentions[int(found["who"])])
    if barred is None or board.pieces_mask(by.kind, not barred):
        return []
    why = f"{side(not barred)} has no {chess.piece_name(by.kind)} here."
    return contradicted(Topic.PIECE, claim.quote(), why)


def _side_barred(claim: Claim, who: Mention) -> chess.Color | None:
    """Whose piece it is that cannot do something; None where it can be either side's."""
    board = claim.boards()[0]
    if who.colour is not None:
        return who.colour
    if who.kind == chess.KING or royal(claim.scene, who) == chess.KING:
        kings = [m for m in claim.scene.mentions[: who.number] if m.kind == chess.KING and m.colour is not None]
        if kings and who.pronoun:
            return kings[-1].colour
        return board.turn if board.is_check() else None
    colours = {board.color_at(at) for at in salient(claim.scene, who, board)} if not who.pronoun else set()
    return next(iter(colours)) if len(colours) == 1 else None


def judge_behind(claim: Claim) -> list[Judgement]:
    """“He can't take her, because the bishop is behind her”: it guards what it is behind."""
    who = claim.mention("piece")
    before = claim.before()
    if who is None or not claim.scene.words.hint("cannot_take_before", before):
        return []
    things = [thing for thing in claim.things() if thing.kind != chess.KING]
    return [_judge_one(claim, "guards", thing, guards_own, [[who]]) for thing in things[:1]]


def _judge_relation(claim: Claim, verb: str, relation_to: Callable[[Mention], Relation]) -> list[Judgement]:
    if claim.hinted("who_before"):
        # “Ask yourself who is guarding h7.”
        return []
    if claim.hinted("counted_things_before"):
        # “Two things protect it, the pawn and the knight”: told as that it is protected by them.
        return []
    things = [thing for thing in claim.things() if not _is_role(claim, thing)]
    if verb == "guards":
        things = [no_king(claim.scene, _square_meant(claim, thing)) for thing in things]
    found = [_judge_one(claim, verb, thing, relation_to(thing)) for thing in things]
    if len(things) > 1 and found[-1].verdict is Verdict.CONTRADICTED and claim.hinted("too_after"):
        # “Guards the pawn, the queen as well”: the queen is guarded, or guards it.
        found[-1] = _judge_one(claim, verb, things[0], relation_to(things[0]), [things[-1:]])
    return found


def _is_role(claim: Claim, thing: Mention) -> bool:
    """Is it named by what it does: “the a-pawn holds the attacker”?"""
    return thing.kind is None and claim.scene.tokens[thing.end - 1].text in claim.scene.words.names.roles


def _square_meant(claim: Claim, thing: Mention) -> Mention:
    """The square that “it” means where no piece is named that it could be: “a6 is free, and the queen covers it”."""
    if thing.pronoun != "it" or _named_besides(claim, thing):
        return thing
    doing = {mention.square for group in claim.subjects() for mention in group}
    squares = [square for square in squares_before(claim.scene, thing.start) if square not in doing]
    return replace(thing, what=Named.SQUARE, pronoun="", square=squares[-1]) if squares else thing


def _groups(claim: Claim) -> list[list[Mention]]:
    """Who does it, those named behind it among them: “protecting b7 with the queen”."""
    groups = claim.subjects()
    found = claim.scene.words.hints["with_doer_after"].search(claim.after())
    if found is None:
        return groups
    return [[*(mention for group in groups for mention in group), claim.scene.mentions[int(found["doer"])]]]


def _judge_one(
    claim: Claim, verb: str, thing: Mention, relation: Relation, by_whom: list[list[Mention]] | None = None
) -> Judgement:
    groups = _groups(claim) if by_whom is None else by_whom
    boards = claim.boards()
    said = claim.quote()
    missing: list[tuple[list[chess.Square], list[chess.Square]]] = []
    for group in groups or [[]]:
        found = None
        for board in boards:
            pairs = list(_pairs(claim, board, group, thing, verb == "guards"))
            found = next(((board, by, at) for by, at in pairs if relation(board, by, at)), None)
            if found:
                break
        if found is None:
            bys = doers(claim, boards[0], group)
            missing.append((bys, referents(claim.scene, thing, boards[0])))
            continue
        board, by, at = found
        if len(groups) < 2:
            why = sentence(f"{the_piece(board, by)} {verb} {target_words(board, at)}")
            one_board = len(boards) == 1
            exact = (
                one_board and len(doers(claim, board, group)) == 1 and len(referents(claim.scene, thing, board)) == 1
            )
            return Judgement(Verdict.CONFIRMED, Topic.ATTACK, said, why, (by, at), exact=exact)
    if not missing:
        return Judgement(Verdict.CONFIRMED, Topic.ATTACK, said, "All of them do.")
    bys, targets = missing[0]
    board = boards[0]
    if thing.pronoun and not _named_besides(claim, thing):
        return Judgement(Verdict.UNDECIDED, Topic.ATTACK, said, "What is meant stands in an earlier line.")
    if len(bys) == 1 and not targets and thing.kind is not None and thing.definite and is_nowhere(claim, thing):
        return Judgement(Verdict.CONTRADICTED, Topic.ATTACK, said, no_such(thing), tuple(bys))
    nowhere = _doer_is_nowhere(claim, groups)
    if nowhere and targets and not thing.pronoun:
        return Judgement(Verdict.CONTRADICTED, Topic.ATTACK, said, nowhere, tuple(targets[:1]))
    if bys and not targets and (other := _another_there(thing, boards)):
        return Judgement(Verdict.CONTRADICTED, Topic.PIECE, said, other, tuple(bys[:1]))
    if not bys or not targets:
        return Judgement(Verdict.UNDECIDED, Topic.ATTACK, said, "It is not clear which pieces are meant.")
    doing = [mention for group in groups for mention in group]
    clear = verb == "guards" and thing.pronoun in ("it", "her", "him") and len(targets) < 3
    clear = clear and all(mention.kind for mention in doing)
    if (thing.pronoun or any(m.vague for m in doing) or thing.vague) and len(bys) > 1 and not clear:
        return Judgement(Verdict.UNDECIDED, Topic.ATTACK, said, "It is not clear which pieces are meant.")
    if _done_by_another(claim, boards, groups, thing, relation):
        return Judgement(Verdict.UNDECIDED, Topic.ATTACK, said, "It is true of another one of them.")
    why = _what_it_does(board, bys, verb) if len(bys) == 1 else _who_does(board, targets)
    return Judgement(Verdict.CONTRADICTED, Topic.ATTACK, said, why, (*bys[:1], *targets[:1]))


def _done_by_another(
    claim: Claim, boards: list[chess.Board], groups: list[list[Mention]], thing: Mention, relation: Relation
) -> bool:
    """“The knight attacks d5”, where not the one that moved last does: it may be the one that is meant."""
    named = [m for group in groups for m in group]
    if len(groups) != 1 or not all(m.kind and m.square is None and not m.pronoun for m in named):
        return False
    colours = {board.color_at(by) for board in boards for by in doers(claim, board, named)}
    # “{Qc2}Queen to c2. {Nf8}The knight drops back, and the queen protects d5”: that of the side that moved last.
    colours.update(step.before.turn for step in claim.scene.played_near(claim.start)[:1] if step.before is not None)
    return any(
        by != at and board.color_at(by) in colours and relation(board, by, at)
        for board in boards
        for m in named
        for by in referents(claim.scene, m, board)
        for at in referents(claim.scene, thing, board)
    )


def _doer_is_nowhere(claim: Claim, groups: list[list[Mention]]) -> str:
    """Words for a piece that is said to do something and is not on the board; empty where it may be."""
    if len(groups) != 1 or len(groups[0]) != 1:
        return ""
    who = groups[0][0]
    placed = _from_square(claim, groups[0])
    if placed is not None and who.kind is not None:
        there = [claim.scene.start, *(step.board for step in claim.scene.steps)]
        if not any(board.piece_type_at(placed) == who.kind for board in there):
            return sentence(f"no {chess.piece_name(who.kind)} is on {chess.square_name(placed)}")
    named = who.what is Named.PIECE and who.kind is not None and who.definite and not who.vague and not who.pronoun
    return no_such(who) if named and is_nowhere(claim, who) else ""


def _another_there(thing: Mention, boards: list[chess.Board]) -> str:
    """Words for what stands on the square of a piece that is named with it, in each position; empty for none."""
    at = thing.square
    if at is None or thing.kind is None or not thing.definite or thing.plural or thing.moves_to:
        return ""
    if not all(board.piece_type_at(at) not in (None, thing.kind) for board in boards):
        return ""
    return sentence(f"{their_piece(boards[0], at)} stands there")


def no_such(who: Mention) -> str:
    return f"There is no such {chess.piece_name(who.kind or chess.PAWN)} on the board."


def is_nowhere(claim: Claim, thing: Mention) -> bool:
    """Is there no piece of that kind (and side) at any moment of the line, its square left aside?"""
    boards = [claim.scene.start, *(step.board for step in claim.scene.steps)]
    colours = chess.COLORS if thing.colour is None else (thing.colour,)
    kind = thing.kind or chess.PAWN
    return not any(board.pieces_mask(kind, colour) for board in boards for colour in colours)


def _named_besides(claim: Claim, thing: Mention) -> bool:
    """Does the line name something that a pronoun can mean, besides who does it?"""
    doing = {mention.number for group in claim.subjects() for mention in group}
    return any(mention.number not in doing for mention in named_before(claim.scene, thing.start))


def _pairs(
    claim: Claim, board: chess.Board, group: list[Mention], thing: Mention, guards: bool
) -> Iterator[tuple[chess.Square, chess.Square]]:
    movers = claim.movers()
    targets = sorted(referents(claim.scene, thing, board), key=lambda at: at not in movers)
    if guards and thing.pronoun == "it":
        # “The king cannot go back to f6: the rook covers it.”
        targets += [at for at in squares_before(claim.scene, thing.start) if board.piece_at(at) is None]
        # A king is not guarded as other pieces are.
        targets = [at for at in targets if board.piece_type_at(at) != chess.KING]
    bys = set(doers(claim, board, group))
    if guards and len(group) == 1 and thing.what is Named.PIECE and not group[0].pronoun:
        # Only a piece of the same side can guard, whichever of its kind has moved last.
        colours = {board.color_at(at) for at in targets}
        bys.update(at for at in referents(claim.scene, group[0], board) if board.color_at(at) in colours)
    for by in sorted(bys, key=lambda by: by not in movers):
        for at in targets:
            if by != at and board.piece_at(by):
                yield by, at


def doers(claim: Claim, board: chess.Board, group: list[Mention]) -> list[chess.Square]:
    """Squares of the pieces that a group of mentions can mean; of none, of what moved."""
    if not group:
        movers = [square for square in claim.movers() if board.piece_at(square)]
        return movers or list(chess.scan_forward(board.occupied))
    found: set[chess.Square] = set()
    placed = _from_square(claim, group)
    if placed is not None and board.piece_at(placed):
        # “From d7 the king also protects b6”, where a knight is on d7: nothing that does it.
        return [placed] if group[0].kind in (None, board.piece_type_at(placed)) else []
    several = len(group) > 1
    for mention in group:
        found.update(_doer(claim, mention, board))
    if several:
        found.update(square for square in claim.movers() if board.piece_at(square))
    return sorted(found)


def _from_square(claim: Claim, group: list[Mention]) -> chess.Square | None:
    """The square with which the sentence begins: “From c8 she also protects …”."""
    first = next((m for m in claim.scene.mentions if m.start >= claim.sentence.start), None)
    if first is None or first.what is not Named.SQUARE or first.start != claim.sentence.start + 1:
        return None
    origin = (claim.scene.tokens[claim.sentence.start].text,)
    if origin not in claim.scene.words.names.origin or len(group) != 1 or group[0].square is not None:
        return None
    return first.square


def _doer(claim: Claim, mention: Mention, board: chess.Board) -> list[chess.Square]:
    """A piece said without its square is the one that has just moved, if such a one has."""
    if mention.pronoun == "it":
        # “{Nc4}It drops back to c4, from where it attacks …”: one piece is spoken of, the one that moves.
        start, end = claim.scene.sentence(mention.start)
        here = [s for s in claim.scene.steps if s.cued and s.landed is not None and start <= s.token < end]
        named = [m for m in claim.scene.mentions if m.what is Named.PIECE and start <= m.start < mention.start]
        if len(here) == 1 and here[0].token <= start + 1 and named and all(m.pronoun == "it" for m in named):
            landed = here[0].landed
            return [landed] if landed is not None and board.piece_at(landed) else []
    return salient(claim.scene, mention, board)


def target_words(board: chess.Board, at: chess.Square) -> str:
    return the_piece(board, at) if board.piece_at(at) else square_words(at)


def _what_it_does(board: chess.Board, bys: list[chess.Square], verb: str) -> str:
    by = bys[0]
    colour = board.color_at(by)
    own = verb == "guards"
    others = [
        at
        for at in chess.scan_forward(board.attacks_mask(by) & board.occupied)
        if (board.color_at(at) == colour) == own
    ]
    verb = "attacks" if verb == "looks at" else verb
    if not others:
        return sentence(f"{the_piece(board, by)} {verb} no {'piece of its own' if own else 'enemy piece'} there")
    return sentence(f"{the_piece(board, by)} {verb} {listed([the_piece(board, at) for at in others])}, and not that")


def _who_does(board: chess.Board, targets: list[chess.Square]) -> str:
    at = targets[0]
    if board.piece_at(at):
        return attack_words(board, at)
    colours = [listed([the_piece(board, by) for by in attackers(board, colour, at)]) for colour in chess.COLORS]
    seen = listed([names for names in colours if names])
    return sentence(f"{square_words(at)} is covered by {seen}" if seen else f"nothing covers {square_words(at)}")


JUDGES: Final[dict[str, Judge]] = {
    "attacks": judge_attacks,
    "gives_a_poke": judge_attacks,
    "defends_behind": judge_behind,
    "eyes": judge_eyes,
    "defends": judge_defends,
}
