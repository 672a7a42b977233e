"""Claims about pins, forks, skewers, discovered attacks and trapped pieces."""

from __future__ import annotations

import re
from typing import Final

import chess

from studyboard.board.lines import Lined, lined_up, uncovered
from studyboard.board.naming import counted, listed, sentence, squares_listed, the_piece
from studyboard.board.relations import worth
from studyboard.board.rights import king_squares
from studyboard.board.tactics import safe_squares, shut_in, trapped_words, turned
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.claims_relations import attacks, is_nowhere
from studyboard.reading.findings import Topic
from studyboard.reading.imagined import before_moves
from studyboard.reading.mentions import Mention, Named
from studyboard.reading.referents import named_before, referents, royal

#: A piece with so many squares is not shut in, in any sense.
_MANY = 4


def judge_pins(claim: Claim) -> list[Judgement]:
    """“The bishop pins the knight to the king”, “the knight is pinned by …”."""
    things = claim.things() or claim.mentions("piece")
    by = claim.mention("by")
    behind = claim.mention("to") or claim.mention("against")
    if claim.has("bare") and behind is not None:
        return _judge_pin_to(claim, behind)
    active = bool(claim.things()) and not _as_adjective(claim)
    found: list[Judgement] = []
    for thing in things[:1] if behind else things:
        if thing.what is not Named.PIECE or thing.kind == chess.KING:
            continue
        if thing.kind is None and not thing.definite and not thing.pronoun:
            # “A pinned piece may still take.”
            continue
        found += _judge_pin(claim, thing, by, behind, active)
    return found


def _judge_pin_to(claim: Claim, behind: Mention) -> list[Judgement]:
    """“A pin against the queen”: is anything pinned to it?"""
    for board in claim.boards():
        for line in lined_up(board):
            if _is_pin(board, line) and line.behind in referents(claim.scene, behind, board):
                words = _pin_words(board, line)
                return confirmed(Topic.PIN, claim.quote(), words, line.front, line.by, line.behind)
    if not claim.scene.played_near(claim.start):
        return undecided(Topic.PIN, claim.quote(), "It may be a pin that is to come.")
    return contradicted(Topic.PIN, claim.quote(), "Nothing is pinned to that.")


def _as_adjective(claim: Claim) -> bool:
    """“The pinned rook”, not “pinned the rook”."""
    thing = claim.things()[0]
    words = claim.scene.tokens[thing.start].text
    return claim.scene.words.hint("pin_as_adjective", claim.match.group()) and (
        words not in claim.scene.words.names.determiners and not thing.pronoun
    )


def _judge_pin(
    claim: Claim, thing: Mention, by: Mention | None, behind: Mention | None, active: bool
) -> list[Judgement]:
    scene = claim.scene
    group = claim.subjects()[0] if active and claim.subjects() else []
    pinned: list[tuple[chess.Board, Lined]] = []
    named = False
    for board in claim.boards():
        targets = referents(scene, thing, board)
        named = named or bool(targets)
        for line in lined_up(board):
            if line.front in targets and _is_pin(board, line):
                pinned.append((board, line))
                if by is not None and line.by not in referents(scene, by, board):
                    continue
                if behind is not None and line.behind not in referents(scene, behind, board):
                    continue
                if (
                    group
                    and not any(line.by in referents(scene, m, board) for m in group)
                    and line.by not in claim.movers()
                ):
                    continue
                exact = by is None and behind is None and len(targets) == 1 and len(claim.boards()) == 1
                words = _pin_words(board, line)
                return confirmed(Topic.PIN, claim.quote(), words, line.front, line.by, line.behind, exact=exact)
    if not named or (thing.pronoun and not pinned and thing.pronoun in ("he", "she", "they", "one", "this")):
        return undecided(Topic.PIN, claim.quote(), "It is not clear which piece is meant.")
    if pinned:
        board, line = pinned[0]
        return contradicted(Topic.PIN, claim.quote(), _pin_words(board, line), line.front, line.by, line.behind)
    return contradicted(Topic.PIN, claim.quote(), f"Nothing pins {_one(claim, thing)} here.")


def _is_pin(board: chess.Board, line: Lined) -> bool:
    """A line-up that one may call a pin: what is behind is a king, or worth more than what is in front, or loose."""
    owner = board.color_at(line.front)
    if board.color_at(line.by) == owner or board.color_at(line.behind) != owner:
        return False
    if worth(board, line.behind) > worth(board, line.front):
        return True
    return (
        not board.attackers_mask(bool(owner), line.behind) & ~chess.BB_SQUARES[line.front]
        and worth(board, line.behind) > 1
    )


def _pin_words(board: chess.Board, line: Lined) -> str:
    return sentence(
        f"{the_piece(board, line.by)} pins {the_piece(board, line.front)} to {the_piece(board, line.behind)}"
    )


def _one(claim: Claim, thing: Mention) -> str:
    board = claim.boards()[0]
    squares = referents(claim.scene, thing, board)
    return the_piece(board, squares[0]) if len(squares) == 1 else "such a piece"


def judge_forks(claim: Claim) -> list[Judgement]:
    """“… forks king and rook”, “a fork”."""
    scene = claim.scene
    things = claim.things()
    if len(things) == 1 and claim.has("of") and not things[0].plural:
        things = []
    passive = claim.has("passive")
    if claim.has("together") and len(things) < 2:
        return []
    if passive and len(things) == 1 and not things[0].plural:
        return []
    if things:
        by_whom = claim.mention("by")
        group = [by_whom] if by_whom else claim.subjects()[0] if claim.subjects() and not passive else []
        for board in claim.boards():
            doers = {sq for m in group for sq in referents(scene, m, board)}
            doers |= set() if passive else set(claim.movers())
            for by in sorted(doers or chess.scan_forward(board.occupied)):
                hit = [
                    [at for at in referents(scene, thing, board) if board.piece_at(by) and attacks(board, by, at)]
                    for thing in things
                ]
                plural = len(things) == 1 and things[0].plural
                if len(set().union(*hit)) < sum(2 if _both(claim, thing) else 1 for thing in things):
                    continue
                if all(hit) and (len(things) > 1 or not plural or len(hit[0]) > 1):
                    if len(things) == 1 and not plural:
                        if claim.has("with") and by in claim.movers():
                            return confirmed(Topic.FORK, claim.quote(), _fork_words(board, by), by, *hit[0])
                        continue
                    return confirmed(
                        Topic.FORK, claim.quote(), _fork_words(board, by), by, *(at for h in hit for at in h)
                    )
        if len(things) == 1 and not things[0].plural and not claim.has("with"):
            return undecided(Topic.FORK, claim.quote(), "A fork has two targets, and one is named.")
    if claim.has("royal") and not claim.hinted("of_sorts_after"):
        return _royal_fork(claim)
    boards = claim.boards()
    movers = claim.movers()
    if not things and claim.hinted("fork_not_after"):
        return undecided(Topic.FORK, claim.quote(), "It may be a fork that is to come.")
    if not things:
        for step in claim.scene.played_near(claim.start):
            if step.landed is None or step.move is None or step.before is None:
                continue
            total = _targets(step.board, step.landed)
            total += [line.behind for line in uncovered(step.before, step.move)]
            if len(set(total)) > 1:
                return confirmed(Topic.FORK, claim.quote(), _fork_words(step.board, step.landed), step.landed, *total)
    if passive and not any(thing.pronoun for thing in things):
        named = all(referents(scene, thing, boards[0]) or is_nowhere(claim, thing) for thing in things)
        judged = contradicted if named else undecided
        return judged(Topic.FORK, claim.quote(), "No piece attacks all of them.")
    if not things and (not claim.hinted("noun_told_before") or _of_unplayed(claim)):
        return undecided(Topic.FORK, claim.quote(), "It may be a fork that is to come.")
    if things and not claim.scene.played_near(claim.start):
        group = claim.subjects()[0] if claim.subjects() else []
        by_now = {sq for m in group for sq in referents(scene, m, boards[0])}
        if len(by_now) == 1 and not any(m.pronoun for m in group):
            by = next(iter(by_now))
            return contradicted(Topic.FORK, claim.quote(), _fork_words(boards[0], by), by)
    if not movers or not claim.scene.played_near(claim.start):
        return undecided(Topic.FORK, claim.quote(), "It is not clear which piece is meant.")
    step = claim.scene.played_near(claim.start)[0]
    if step.landed is None:
        return undecided(Topic.FORK, claim.quote(), "It is not clear which piece is meant.")
    board = step.board if things else boards[0]
    return contradicted(Topic.FORK, claim.quote(), _fork_words(step.board, step.landed), step.landed)


def _both(claim: Claim, thing: Mention) -> bool:
    """“The king and both rooks”: are two of them meant?"""
    word = claim.scene.tokens[max(0, thing.start - 1)].text
    return thing.plural and "both" in (word, claim.scene.tokens[thing.start].text)


def _royal_fork(claim: Claim) -> list[Judgement]:
    """“A royal fork”: of king and queen."""
    for step in claim.scene.played_near(claim.start):
        if step.landed is None:
            continue
        kinds = {step.board.piece_type_at(at) for at in _targets(step.board, step.landed)}
        judged = confirmed if {chess.KING, chess.QUEEN} <= kinds else contradicted
        return judged(Topic.FORK, claim.quote(), _fork_words(step.board, step.landed), step.landed)
    return []


def _targets(board: chess.Board, by: chess.Square) -> list[chess.Square]:
    piece = board.piece_at(by)
    return (
        [] if piece is None else list(chess.scan_forward(board.attacks_mask(by) & board.occupied_co[not piece.color]))
    )


def _fork_words(board: chess.Board, by: chess.Square) -> str:
    targets = _targets(board, by)
    if not targets:
        return sentence(f"{the_piece(board, by)} attacks no enemy piece")
    return sentence(f"{the_piece(board, by)} attacks {listed([the_piece(board, at) for at in targets])}")


def judge_skewers(claim: Claim) -> list[Judgement]:
    """“… skewers the king and the rook”."""
    for board in claim.boards():
        for line in lined_up(board):
            owner = board.color_at(line.by)
            if board.color_at(line.front) != owner and board.color_at(line.behind) != owner:
                things = claim.things()
                squares = (line.front, line.behind)
                if all(set(referents(claim.scene, thing, board)) & set(squares) for thing in things) and (
                    things or line.by in claim.movers()
                ):
                    words = f"{the_piece(board, line.by)} looks through {the_piece(board, line.front)}"
                    words += f" at {the_piece(board, line.behind)}"
                    return confirmed(Topic.PIN, claim.quote(), sentence(words), line.by, *squares)
    told = claim.scene.played_near(claim.start) and claim.hinted("noun_told_before") and not _of_unplayed(claim)
    if not told and not claim.things():
        return undecided(Topic.PIN, claim.quote(), "It is not clear which pieces are meant.")
    return contradicted(Topic.PIN, claim.quote(), "No line goes through the first of them to the other.")


def _of_unplayed(claim: Claim) -> bool:
    """Does a motion that the line does not play stand right before: “the rook gets to c1 with a skewer”?"""
    before = [m for m in claim.scene.mentions if claim.sentence.start <= m.start and m.end <= claim.start]
    if not before or not before[-1].moves_to or claim.start - before[-1].end > 2:
        motions = [m for m in before if m.what is Named.SQUARE and claim.start - m.end <= 2]
        return any(m.square not in claim.movers() for m in motions)
    return before[-1].square not in claim.movers()


def judge_discovered_attack(claim: Claim) -> list[Judgement]:
    """“A discovered attack on the queen”."""
    steps = claim.scene.played_near(claim.start)
    if not steps:
        return undecided(Topic.FORK, claim.quote(), "No move is played here.")
    things = claim.things()
    for step in steps:
        if step.before is None or step.move is None or not step.move:
            continue
        for line in uncovered(step.before, step.move):
            if all(line.behind in referents(claim.scene, thing, step.board) for thing in things):
                why = f"{the_piece(step.board, line.by)} now attacks {the_piece(step.board, line.behind)}"
                return confirmed(Topic.FORK, claim.quote(), sentence(why), line.by, line.behind)
    return contradicted(Topic.FORK, claim.quote(), "The move uncovers no such attack.")


def judge_trapped(claim: Claim) -> list[Judgement]:
    """“The bishop is trapped”, “the queen has nowhere to go”."""
    thing = claim.mention("piece")
    if thing is None or claim.hinted("trapped_not_after"):
        return []
    if thing.pronoun and thing.pronoun != "it" and royal(claim.scene, thing) is None:
        return []
    topic = Topic.TRAPPED
    free: list[tuple[chess.Board, chess.Square]] = []
    kings: list[tuple[chess.Board, chess.Square]] = []
    for board in claim.boards():
        for at in referents(claim.scene, thing, board):
            if board.piece_at(at) is None:
                continue
            if board.piece_type_at(at) == chess.KING:
                squares = king_squares(board, bool(board.color_at(at)))
                if not squares:
                    return confirmed(topic, claim.quote(), "The king has no square.", at)
                if turned(board, bool(board.color_at(at))) is not None:
                    kings.append((board, at))
                continue
            if turned(board, bool(board.color_at(at))) is None:
                continue
            piece = shut_in(board, at)
            if piece is not None:
                return confirmed(topic, claim.quote(), trapped_words(board, piece), at)
            free.append((board, at))
    if (
        kings
        and thing.kind == chess.KING
        and len({at for _, at in kings}) == 1
        and "trapped" not in claim.match.group()
    ):
        board, at = kings[0]
        exits = squares_listed(king_squares(board, bool(board.color_at(at))))
        return contradicted(topic, claim.quote(), sentence(f"{the_piece(board, at)} can go to {exits}"), at)
    if thing.pronoun:
        # “It” is no pawn that has just attacked something, nor what does the trapping.
        free = [(board, at) for board, at in free if board.piece_type_at(at) != chess.PAWN and _is_attacked(board, at)]
        if len({at for _, at in free}) != 1 or not named_before(claim.scene, thing.start):
            return undecided(topic, claim.quote(), "It is not clear which piece is meant.")
    elif (thing.kind is None and thing.square is None) or not free or len({at for _, at in free}) > 2:
        return undecided(topic, claim.quote(), "It is not clear which piece is meant.")
    if thing.kind in (chess.PAWN, chess.KING):
        return undecided(topic, claim.quote(), "It is not clear which piece is meant.")
    board, at = free[0]
    if claim.scene.words.hint("shut_in", claim.match.group()) and len(safe_squares(board, at)) < _MANY:
        return undecided(topic, claim.quote(), "It has squares, but few.")
    exits = squares_listed(safe_squares(board, at))
    return contradicted(topic, claim.quote(), sentence(f"{the_piece(board, at)} can go to {exits}"), at)


def _is_attacked(board: chess.Board, at: chess.Square) -> bool:
    return board.is_attacked_by(not board.color_at(at), at)


def judge_squares(claim: Claim) -> list[Judgement]:
    """“The king has exactly one square”."""
    thing, number = claim.mention("piece"), claim.mention("number")
    if thing is None or number is None or (thing.kind is None and royal(claim.scene, thing) is None):
        return []
    kind = thing.kind or royal(claim.scene, thing)
    topic = Topic.TRAPPED
    listed_squares = _squares_after(claim)
    counts: list[tuple[chess.Board, chess.Square, int]] = []
    boards = [*claim.boards(), *before_moves(claim)]
    # A king that is in check has the squares to which it can go out of it.
    checked = [board for board in boards if kind == chess.KING and board.is_check()]
    for board in checked or boards:
        for at in referents(claim.scene, thing, board):
            facing = turned(board, bool(board.color_at(at)))
            if facing is None or (checked and board.color_at(at) != board.turn):
                continue
            reach = {move.to_square for move in facing.generate_legal_moves(chess.BB_SQUARES[at])}
            legal = len(reach)
            plain = legal if kind != chess.KING else len(king_squares(board, bool(board.color_at(at))))
            safe = legal if kind == chess.KING else len(safe_squares(board, at))
            if number.value in (legal, plain, safe) and reach.issuperset(listed_squares):
                why = sentence(f"{the_piece(board, at)} has {counted(number.value, 'square')}")
                return confirmed(topic, claim.quote(), why, at)
            counts.append((board, at, plain))
    if not counts or len({at for _, at, _ in counts}) > 2:
        return undecided(topic, claim.quote(), "It is not clear which piece is meant.")
    # Of two kings, the one whose turn it is.
    board, at, count = next((c for c in counts if c[0].turn == c[0].color_at(c[1])), counts[0])
    if listed_squares:
        exits = squares_listed(king_squares(board, bool(board.color_at(at))))
        if kind == chess.KING:
            return contradicted(topic, claim.quote(), sentence(f"{the_piece(board, at)} can go to {exits}"), at)
    return contradicted(topic, claim.quote(), sentence(f"{the_piece(board, at)} has {counted(count, 'square')}"), at)


def _squares_after(claim: Claim) -> list[chess.Square]:
    """The squares that are listed behind the number of them: “three squares, b1, b2 and c2”."""
    found = claim.scene.words.hints["squares_listed_after"].search(claim.after())
    if found is None:
        return []
    marks = [int(mark) for mark in re.findall(r"§s(\d+)", found.group())]
    return [square for mark in marks if (square := claim.scene.mentions[mark].square) is not None]


JUDGES: Final[dict[str, Judge]] = {
    "pins": judge_pins,
    "forks": judge_forks,
    "skewers": judge_skewers,
    "discovered_attack": judge_discovered_attack,
    "trapped": judge_trapped,
    "squares": judge_squares,
}
