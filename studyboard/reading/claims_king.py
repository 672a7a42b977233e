"""Claims about check, mate, stalemate, castling and moves that have to be played."""

from __future__ import annotations

import re
from typing import Final

import chess

from studyboard.board.exchange import exchange_after
from studyboard.board.facts import check_fact
from studyboard.board.mates import mate_in, mates_at_once
from studyboard.board.naming import counted, listed, sentence, side
from studyboard.board.rights import castling, only_move
from studyboard.board.tactics import turned
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.findings import Topic, Verdict
from studyboard.reading.mentions import Named
from studyboard.reading.moves_said import legal_meanings
from studyboard.reading.referents import referents
from studyboard.reading.scene import Step

#: Mates longer than this are not looked for; shorter ones take well under a second as a line is typed.
_LONGEST_MATE, _QUICK_MATE = 4, 2
_NOT_A_CHECK = re.compile(r"(?:let's|lets|to|double|and|of|for|please|we|you|must|should|can|cross|reality|sound) check$|(?:for|giving|gives|more|of|all|some|any|with|the|no|knight|queen|rook|bishop|his|her) checks$")
_CHECK_WITH_OBJECT = re.compile(r"(?:the|that|this|it|out|whether|if|what|how|all|every|each|your|my|for|again|in with|his notes|her notes)\b")
_REFERS = re.compile(r"(?:the|that|this|his|her|its|of|from|to|answer|answers|block|blocks|escape|escapes|out of|step out of|stop|stops|no|without|next|first|last|perpetual|every|any|other|of) $")


def judge_check(claim: Claim) -> list[Judgement]:
    """“Check”, “with check”, “gives check”, “in check”."""
    word = claim.said("check")
    before, after = claim.before(), claim.after()
    if _NOT_A_CHECK.search(f"{before} {word}") or _CHECK_WITH_OBJECT.match(after) and word in ("check", "checks", "checked"):
        return []
    if word == "checks" and not re.search(r"(?:§[pc]\d+|who|which|that|and)(?: §s\d+)?$", before):
        return []
    topic = Topic.CHECK
    refers = bool(_REFERS.search(f"{before} ")) and not re.search(r"(?:with|in|gives|is) (?:the )?$", f"{before} ")
    boards = claim.boards()
    for board in [*boards, *_before_moves(claim)] if refers or before.endswith(("in", "out of")) else boards:
        if board.is_check():
            fact = check_fact(board)
            return confirmed(topic, claim.quote(), fact.words if fact else "", *(fact.squares if fact else ()), exact=True)
    imagined = _imagined(claim)
    for board, move in imagined:
        if board.gives_check(move):
            return confirmed(topic, claim.quote(), f"{board.san(move)} gives check.", move.to_square)
    if refers:
        return undecided(topic, claim.quote(), "It may be a check that was or could be given.")
    if imagined:
        board, move = imagined[0]
        return contradicted(topic, claim.quote(), f"{board.san(move)} gives no check.", move.to_square)
    steps = claim.scene.played_near(claim.start)
    if not steps and not re.search(r"\bin$|§[pc]\d+ (?:is|are) (?:now )?in$|it's$|it is$|is$", before):
        return undecided(topic, claim.quote(), "No move is played here.")
    if steps:
        return contradicted(topic, claim.quote(), f"{_san(steps[0])} gives no check.", *_landed(steps[0]))
    return contradicted(topic, claim.quote(), f"{side(boards[0].turn)} is not in check.")


def judge_double_check(claim: Claim) -> list[Judgement]:
    """“Double check”."""
    for board in claim.boards():
        if len(board.checkers()) > 1:
            fact = check_fact(board)
            return confirmed(Topic.CHECK, claim.quote(), fact.words if fact else "", exact=True)
    steps = claim.scene.played_near(claim.start)
    if not steps:
        return undecided(Topic.CHECK, claim.quote(), "No move is played here.")
    fact = check_fact(steps[0].board)
    return contradicted(Topic.CHECK, claim.quote(), fact.words if fact else f"{_san(steps[0])} gives no check.")


def judge_discovered_check(claim: Claim) -> list[Judgement]:
    """“Discovered check”: a check by a piece that did not move."""
    steps = claim.scene.played_near(claim.start)
    if not steps:
        return undecided(Topic.CHECK, claim.quote(), "No move is played here.")
    for step in steps:
        if any(square != step.landed for square in step.board.checkers()):
            fact = check_fact(step.board)
            return confirmed(Topic.CHECK, claim.quote(), fact.words if fact else "", exact=True)
    fact = check_fact(steps[0].board)
    return contradicted(Topic.CHECK, claim.quote(), fact.words if fact else f"{_san(steps[0])} gives no check.")


def judge_mate(claim: Claim) -> list[Judgement]:
    """“Checkmate”, “is mate”."""
    topic = Topic.MATE
    before, after = claim.before(), claim.after()
    for board in claim.boards():
        if board.is_checkmate():
            return confirmed(topic, claim.quote(), f"{side(board.turn)} is checkmated.", exact=True)
    if re.match(r"(?:in|on|threat|next|follows|is coming|cannot|can't|comes|net|with)\b", after):
        return undecided(topic, claim.quote(), "It may be a mate that is to come.")
    imagined = _imagined(claim)
    for board, move in imagined:
        if _mates(board, move):
            return confirmed(topic, claim.quote(), f"{board.san(move)}.", move.to_square)
    tells = bool(re.search(r"(?:is|it's|that's|already|is already|now|§[ps]\d+|check|and|with|,)$", before)) or not before
    if re.search(r"(?:the|a|no|for|of|any|back rank|get|gets|be|being|or|who|avoid|avoids|from|stop|stops|smothered)$", before):
        tells = False
    if imagined and tells:
        board, move = imagined[0]
        return contradicted(topic, claim.quote(), f"{board.san(move)} is not mate{_way_out(board, move)}.", move.to_square)
    steps = claim.scene.played_near(claim.start)
    if not steps or not tells:
        return undecided(topic, claim.quote(), "It may be a mate that is to come.")
    board = steps[0].board
    if not board.is_check() and mate_in(board, 1) is not None:
        return undecided(topic, claim.quote(), "It is mate on the next move.")
    ways = listed([board.san(move) for move in list(board.legal_moves)[:3]], "or")
    why = f"{_san(steps[0])} is not mate: {ways} can be played." if board.is_check() else f"{_san(steps[0])} is not mate, nor check."
    return contradicted(topic, claim.quote(), why, *_landed(steps[0]))


def judge_mate_in(claim: Claim) -> list[Judgement]:
    """“Mate in two”, by a complete search."""
    number = claim.mention("number")
    moves = 1 if claim.has("one") else 0 if number is None else number.value
    topic = Topic.MATE
    if not 1 <= moves <= (_LONGEST_MATE if claim.deep else _QUICK_MATE):
        return undecided(topic, claim.quote(), "This search takes longer than a line is looked at.")
    shorter = None
    boards = [*claim.boards(), *_before_moves(claim)]
    for board in boards:
        mate = mate_in(board, moves)
        after = mate_for_waiting(board, moves - 1) if mate is None and moves > 1 else None
        if mate is not None and mate.moves == moves:
            return [Judgement(Verdict.CONFIRMED, topic, claim.quote(), _line(board, mate.line), (), sans(board, mate.line), True)]
        if after == moves - 1 or after == moves:
            return confirmed(topic, claim.quote(), f"Whatever {side(board.turn)} plays, mate follows.")
        shorter = shorter or (None if mate is None else (board, mate))
    if shorter is not None:
        board, mate = shorter
        why = f"It is mate in {counted(mate.moves, 'move')} already: {_line(board, mate.line)}"
        return [Judgement(Verdict.CONTRADICTED, topic, claim.quote(), why, (), sans(board, mate.line))]
    return contradicted(topic, claim.quote(), f"{side(boards[0].turn)} has no mate in {counted(moves, 'move')} here: every move was tried.")


def mate_for_waiting(board: chess.Board, moves: int) -> int | None:
    """In how many moves (at most *moves*) the side to move is mated whatever it plays; None where it is not."""
    longest = 0
    replies = list(board.legal_moves)
    if not replies or moves < 1:
        return None
    for reply in replies:
        after = board.copy(stack=False)
        after.push(reply)
        mate = mate_in(after, moves)
        if mate is None:
            return None
        longest = max(longest, mate.moves)
    return longest


def judge_threatens_mate(claim: Claim) -> list[Judgement]:
    """“Threatens mate on f7”: mate at once, if it were the other side's turn again."""
    where = claim.mention("square") or claim.mention("on")
    square = None if where is None else where.square
    topic = Topic.MATE
    checked = False
    for board in claim.boards():
        for facing in (turned(board, not board.turn), board):
            if facing is None:
                continue
            checked = True
            for move in mates_at_once(facing):
                if square is None or move.to_square == square:
                    return confirmed(topic, claim.quote(), f"The threat is {facing.san(move)}.", move.to_square, exact=True)
    if not checked or claim.boards()[0].is_check():
        return undecided(topic, claim.quote(), "A check has to be answered first.")
    if square is None:
        waiting = turned(claim.boards()[0], not claim.boards()[0].turn)
        if waiting is not None and mate_in(waiting, 2) is not None:
            return undecided(topic, claim.quote(), "The threat is a mate in two.")
    place = "" if square is None else f" on {chess.square_name(square)}"
    return contradicted(topic, claim.quote(), f"If nothing were done, no move would give mate{place}.")


def judge_stalemate(claim: Claim) -> list[Judgement]:
    """“Stalemate”."""
    for board in claim.boards():
        if board.is_stalemate():
            return confirmed(Topic.RESULT, claim.quote(), f"{side(board.turn)} is stalemated.", exact=True)
    for board, move in _imagined(claim):
        after = board.copy(stack=False)
        after.push(move)
        if after.is_stalemate():
            return confirmed(Topic.RESULT, claim.quote(), f"{board.san(move)} is stalemate.")
    if not re.search(r"(?:is|it's|that's|into|§p\d+|and|,)$", claim.before()) or not claim.scene.played_near(claim.start):
        return undecided(Topic.RESULT, claim.quote(), "It may be a stalemate that could come.")
    board = claim.boards()[0]
    ways = listed([board.san(move) for move in list(board.legal_moves)[:3]], "or")
    return contradicted(Topic.RESULT, claim.quote(), f"{side(board.turn)} can move: {ways}.")


def judge_castling_right(claim: Claim) -> list[Judgement]:
    """“Black can no longer castle”, “White can still castle kingside”, “has not castled”."""
    topic = Topic.CASTLING
    who = claim.mention("side") or claim.mention("piece")
    board = claim.boards()[0]
    wings = {"kingside": [True], "short": [True], "queenside": [False], "long": [False]}.get(claim.said("wing"), [True, False])
    if claim.has("nobody"):
        colours = list(chess.COLORS)
    elif who is None or who.colour is None and who.what is Named.SIDE:
        return []
    else:
        colours = _colours(claim, who.colour, who.kind)
    if not colours:
        return undecided(topic, claim.quote(), "It is not clear who is meant.")
    if claim.has("notyet") or claim.has("done"):
        castled = [claim.scene.castled(colour, claim.start) for colour in colours]
        if any(known is None for known in castled):
            return undecided(topic, claim.quote(), "The moves before this position are not known.")
        said = claim.has("done")
        wing = claim.said("wing")
        right = all(bool(known) == said and (not wing or (known == "k") == wings[0] or not known) for known in castled)
        why = f"{side(colours[0])} {'has castled' if castled[0] else 'has not castled'}{_wing(castled[0])}."
        return confirmed(topic, claim.quote(), why) if right else contradicted(topic, claim.quote(), why)
    states = [castling(board, colour, wing) for colour in colours for wing in wings]
    denied = claim.has("no") or claim.has("nobody")
    if denied:
        if any(state.now for state in states):
            return contradicted(topic, claim.quote(), next(state.why for state in states if state.now))
        if not any(state.right for state in states) or claim.has("no"):
            return confirmed(topic, claim.quote(), states[0].why)
        return undecided(topic, claim.quote(), states[0].why)
    if any(state.now for state in states):
        return confirmed(topic, claim.quote(), next(state.why for state in states if state.now))
    if any(state.right for state in states):
        return undecided(topic, claim.quote(), next(state.why for state in states if state.right))
    return contradicted(topic, claim.quote(), states[0].why)


def judge_only_move(claim: Claim) -> list[Judgement]:
    """“The only legal move”, “has only one legal move”."""
    topic = Topic.FORCED
    number = claim.mention("number")
    wanted = 1 if number is None else number.value
    legal = "legal" in claim.match.group() or "possible" in claim.match.group() or claim.has("forced")
    boards = [*claim.boards(), *_before_moves(claim)]
    for board in boards:
        count = board.legal_moves.count()
        if count == wanted:
            move = only_move(board)
            why = f"{side(board.turn)} has {counted(count, 'legal move')}{'' if move is None else ': ' + board.san(move)}."
            return confirmed(topic, claim.quote(), why)
    board = _before_moves(claim)[0] if _before_moves(claim) else boards[0]
    count = board.legal_moves.count()
    if legal:
        ways = listed([board.san(move) for move in list(board.legal_moves)[:3]])
        return contradicted(topic, claim.quote(), f"{side(board.turn)} has {counted(count, 'legal move')}: {ways}{' …' if count > 3 else ''}.")
    step = next(iter(claim.scene.played_near(claim.start)), None)
    if step is None or step.before is None or step.move is None or not step.before.is_check():
        return undecided(topic, claim.quote(), "Whether another move is as good, the board alone does not say.")
    best = exchange_after(step.before, step.move)
    for move in step.before.legal_moves:
        after = step.before.copy(stack=False)
        after.push(move)
        if move != step.move and exchange_after(step.before, move) >= max(0, best) and mate_in(after, 2) is None:
            if _loses_nothing(after):
                why = f"{step.before.san(move)} is possible as well, and loses nothing at once."
                return contradicted(topic, claim.quote(), why, move.to_square)
    return undecided(topic, claim.quote(), "Whether another move is as good, the board alone does not say.")


def judge_only_piece(claim: Claim) -> list[Judgement]:
    """“Only the queen can block”, “only the king can take”."""
    thing, verb = claim.mention("piece"), claim.said("verb")
    if thing is None or thing.kind is None:
        return []
    topic = Topic.FORCED
    seen: tuple[chess.Board, chess.Move] | None = None
    for board in claim.boards():
        moves = list(board.legal_moves)
        if verb in ("block", "interpose"):
            moves = [m for m in moves if board.is_check() and not board.is_capture(m) and m.from_square != board.king(board.turn)]
        elif verb != "move":
            square = next((step.landed for step in claim.scene.played_near(claim.start)), None)
            moves = [m for m in moves if m.to_square == square and board.is_capture(m)]
        kinds = {board.piece_type_at(move.from_square) for move in moves}
        if kinds == {thing.kind}:
            return confirmed(topic, claim.quote(), f"{board.san(moves[0])} is the only such move.")
        other = next((move for move in moves if board.piece_type_at(move.from_square) != thing.kind), None)
        if other is not None and seen is None:
            seen = (board, other)
    if seen is None:
        return undecided(topic, claim.quote(), "It is not clear which moves are meant.")
    board, other = seen
    return contradicted(topic, claim.quote(), f"{board.san(other)} is possible.", other.from_square, other.to_square)


def judge_must_take(claim: Claim) -> list[Judgement]:
    """“Has to take”, “has to move the king”."""
    topic = Topic.FORCED
    boards = [*_before_moves(claim), *claim.boards()]
    king = claim.has("king")
    if not king and not claim.has("take"):
        return []
    for board in boards:
        moves = list(board.legal_moves)
        if moves and all(
            board.piece_type_at(move.from_square) == chess.KING if king else board.is_capture(move) for move in moves
        ):
            return confirmed(topic, claim.quote(), f"{side(board.turn)} has no other legal move.")
    if king:
        for board in boards:
            others = [move for move in board.legal_moves if board.piece_type_at(move.from_square) != chess.KING]
            if board.is_check() and others:
                return contradicted(topic, claim.quote(), f"{board.san(others[0])} is legal too.", others[0].to_square)
        return undecided(topic, claim.quote(), "Nobody is in check.")
    if not any(any(board.generate_legal_captures()) for board in boards):
        return contradicted(topic, claim.quote(), f"There is nothing that {side(boards[0].turn)} could take.")
    return undecided(topic, claim.quote(), "Other moves are legal; whether they are as good, the board alone does not say.")


def _loses_nothing(board: chess.Board) -> bool:
    """Can the side to move win nothing by captures?"""
    return all(exchange_after(board, move) <= 0 for move in board.generate_legal_captures())


def _before_moves(claim: Claim) -> list[chess.Board]:
    """The positions before the moves that are played around the claim."""
    return [step.before for step in claim.scene.played_near(claim.start) if step.before is not None]


def _imagined(claim: Claim) -> list[tuple[chess.Board, chess.Move]]:
    """Moves named right before the claim that are not the ones played there, each with the position where it is legal."""
    start, _ = claim.scene.sentence(claim.start)
    named = [
        said
        for said in claim.scene.said
        if said.placed and start <= said.phrase.start < claim.start and claim.start - said.phrase.end < 4
    ]
    if not named:
        return []
    last = max(named, key=lambda said: (said.phrase.end, -said.phrase.start))
    boards = [*claim.boards(), *_before_moves(claim)]
    if last.context.against:
        # What is threatened is played if the other side does nothing.
        boards += [waiting for board in boards if (waiting := turned(board, not board.turn)) is not None]
    for board in boards:
        moves = legal_meanings(last.phrase.form, board)
        if len(moves) == 1:
            return [(board, moves[0])]
    return []


def _mates(board: chess.Board, move: chess.Move) -> bool:
    after = board.copy(stack=False)
    after.push(move)
    return after.is_checkmate()


def _way_out(board: chess.Board, move: chess.Move) -> str:
    after = board.copy(stack=False)
    after.push(move)
    if not after.is_check():
        return ", nor check"
    first = next(iter(after.legal_moves), None)
    return "" if first is None else f": {after.san(first)} can be played"


def sans(board: chess.Board, line: tuple[chess.Move, ...]) -> tuple[str, ...]:
    """The moves of a line in SAN."""
    after, found = board.copy(stack=False), []
    for move in line:
        found.append(after.san(move))
        after.push(move)
    return tuple(found)


def _line(board: chess.Board, line: tuple[chess.Move, ...]) -> str:
    return sentence(" ".join(sans(board, line)))


def _san(step: Step) -> str:
    assert step.before is not None and step.move is not None
    return step.before.san(step.move)


def _landed(step: Step) -> tuple[chess.Square, ...]:
    return () if step.landed is None else (step.landed,)


def _colours(claim: Claim, colour: chess.Color | None, kind: chess.PieceType | None) -> list[chess.Color]:
    """Whose castling is spoken of: the side named, or the one that can be meant by "he" or "the king"."""
    if colour is not None:
        return [colour]
    who = claim.mention("piece")
    if who is not None and kind == chess.KING:
        board = claim.boards()[0]
        kings = referents(claim.scene, who, board)
        if len(kings) == 1:
            return [bool(board.color_at(kings[0]))]
    return []


def _wing(castled: str | None) -> str:
    return {"k": " kingside", "q": " queenside"}.get(castled or "", "")


JUDGES: Final[dict[str, Judge]] = {
    "check": judge_check,
    "double_check": judge_double_check,
    "discovered_check": judge_discovered_check,
    "mate": judge_mate,
    "mate_in": judge_mate_in,
    "threatens_mate": judge_threatens_mate,
    "stalemate": judge_stalemate,
    "castling_right": judge_castling_right,
    "only_move": judge_only_move,
    "only_piece": judge_only_piece,
    "must_take": judge_must_take,
}
