"""Pieces said to have gone where they did not, in any verb of motion: “it retreats to h5”, “the bishop comes to c5”."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import chess

from studyboard.board.moves import captured_square
from studyboard.board.naming import side
from studyboard.reading.findings import Finding, Fix, Topic, Verdict
from studyboard.reading.fixes import piece_fix, square_fix
from studyboard.reading.mentions import Mention, Named
from studyboard.reading.moods import Mood
from studyboard.reading.scene import Scene, Step
from studyboard.reading.standing import Known

#: So many words may stand between who moves and where to.
_GAP = 8
#: So many words between commas are no more than a remark: “, naturally,”.
_ASIDE = 3
#: The same where they begin with “which” or “in”.
_RELATIVE = 10
#: A cue may come so many words behind the first word of the clause that tells its move.
_AHEAD = 4


@dataclass(frozen=True, slots=True)
class Motion:
    """Words that say who went where.

    who: what moves; to: the square; start, end: the words from who to where, end excluded
    noun: told as something that was: “its jump to d4”
    """

    who: Mention
    to: chess.Square
    start: int
    end: int
    noun: bool = False


def motions(scene: Scene, near: Sequence[Known]) -> Iterator[Finding]:
    """Motions that no move of the line or of the tree near it makes, and takers that took nothing."""
    for motion in _motions_in(scene):
        finding = _judged(scene, motion, near)
        if finding is not None:
            yield finding
    yield from _takers(scene, near)
    yield from _movers(scene)


def _motions_in(scene: Scene) -> Iterator[Motion]:
    words = scene.words
    for mention in scene.mentions:
        if mention.what not in (Named.PIECE, Named.SIDE) or mention.plural:
            continue
        if mention.moves_to and mention.square is not None:
            # “The bishop comes to c5”; a piece with its square alone is a move as it is read out.
            if mention.end - mention.start > 3 and not mention.also:
                yield Motion(mention, mention.square, mention.start, mention.end)
            continue
        if mention.what is Named.SIDE or (mention.square is not None and not mention.comes_from):
            continue
        later = (m for m in scene.mentions[mention.number + 1 :] if m.start >= mention.end)
        target = next((m for m in later if m.what is not Named.NUMBER), None)
        if target is None or target.what is not Named.SQUARE or target.square is None:
            continue
        gap = _gap(scene, mention.end, target)
        if not gap or len(gap) > _GAP:
            continue
        behind = " ".join(token.text for token in scene.tokens[max(0, mention.start - 4) : mention.start])
        # “Brings out the knight, to c6”.
        brought = len(gap) == 1 and words.hint("motion_to", gap[0]) and words.hint("moves_piece_before", behind)
        told = brought or words.hint("motion_gap", " ".join(gap))
        told = told and gap[-1] != "and" and not words.hint("leaves_square", " ".join(gap))
        if told:
            yield Motion(mention, target.square, mention.start, target.end)
    for target in scene.mentions:
        if target.what is Named.SQUARE and target.square is not None and target.start >= 3:
            before = [scene.tokens[at].text for at in range(target.start - 3, target.start)]
            joined = not any(scene.tokens[at].broken for at in range(target.start - 1, target.end))
            if joined and words.hint("motion_noun", " ".join(before)):
                who = [m for m in scene.mentions[: target.number] if m.what is Named.PIECE and m.kind is not None]
                if who and scene.sentence_of[who[-1].start] == scene.sentence_of[target.start]:
                    yield Motion(who[-1], target.square, target.start - 3, target.end, noun=True)


def _gap(scene: Scene, start: int, target: Mention) -> list[str]:
    """The words up to a square, without what stands between two commas; empty where they do not hang together."""
    broken = [at for at in range(start, target.end) if scene.tokens[at].broken]
    at = range(start, target.start)
    if broken == [target.start - 1] and scene.words.hint("motion_to", scene.tokens[target.start - 1].text):
        # “The knight goes to the rim, to a4”.
        pass
    elif len(broken) == 2 and broken[0] == start and _is_aside(scene, *broken) and broken[1] < target.start:
        at = range(broken[1], target.start)
    elif broken:
        return []
    return [scene.tokens[word].text for word in at]


def _is_aside(scene: Scene, start: int, end: int) -> bool:
    """Is it no more than a remark between commas: “, naturally,”, “, which had two squares to choose from,”?"""
    if any(start < step.token <= end for step in scene.steps if step.cued):
        return False
    return end - start <= (_RELATIVE if scene.words.hint("aside", scene.tokens[start].text) else _ASIDE)


def _judged(scene: Scene, motion: Motion, near: Sequence[Known]) -> Finding | None:
    who, to = motion.who, motion.to
    played = [Known(s.before, s.move) for s in scene.steps if s.before is not None and s.move is not None and s.move]
    step = _step_of(scene, motion)
    if step is not None and step.cued and _at(step, motion):
        # The words at a cue tell the move of that cue, even where an earlier one went to the same square.
        played = [
            Known(s.before, s.move)
            for s in scene.steps
            if s.before is not None and s.move and motion.start - 2 <= s.token < motion.end
        ]
    if any(_fits(who, known) and known.move.to_square == to for known in played):
        return None
    # At the word at which a move is played, only that move or another one in its place can be meant.
    beside = [known for known in near if step is None or not _at(step, motion) or known.board == step.before]
    if any(_fits(who, known) and known.move.to_square == to for known in beside):
        return None
    if any(known.board.is_castling(known.move) for known in played) and who.kind in (None, chess.KING, chess.ROOK):
        return _castled(scene, motion)
    mood = scene.mood(motion.start) | scene.mood(motion.end - 1) | scene.mood((motion.start + motion.end) // 2)
    after = " ".join(token.text for token in scene.tokens[motion.end : motion.end + 3])
    if elsewhere(scene, motion.start) or scene.words.hint("no_move_after", after):
        return None
    if motion.noun:
        mood = Mood.PLAIN if scene.talk.part and near else Mood.HYPOTHETICAL
    if mood & ~Mood.PAST or scene.words.hint("moves_later_after", after):
        return None
    if motion.noun:
        return _finding(scene, motion, Topic.MOVE, f"No piece of that kind ever goes to {chess.square_name(to)}.", None)
    if step is None or step.before is None or step.move is None:
        return None
    board, landed = step.before, step.landed
    kind = board.piece_type_at(step.move.from_square)
    if kind is None or landed is None:
        return None
    if who.comes_from is not None and who.comes_from != step.move.from_square:
        return None
    alike = who.kind in (None, kind)
    ours = who.colour in (None, board.turn)
    if alike and ours and landed != to:
        # Another piece of the kind may be said to have got there before.
        left = to == step.move.from_square
        if who.kind is not None and not left and any(_stands(who, step.board, to) for step in scene.steps):
            return None
        fix = square_fix(scene, motion.start, motion.end, to, landed)
        why = f"The {chess.piece_name(kind)} goes to {chess.square_name(landed)}: {board.san(step.move)}."
        return _finding(scene, motion, Topic.SQUARE, why, fix)
    if landed == to and not alike and ours:
        fix = piece_fix(scene, who.start, who.end, who.kind, kind)
        why = f"It is a {chess.piece_name(kind)} that goes to {chess.square_name(to)}: {board.san(step.move)}."
        return _finding(scene, motion, Topic.PIECE, why, fix)
    if landed == to and not ours:
        return _finding(
            scene, motion, Topic.COLOUR, f"It is {side(board.turn)} who plays {board.san(step.move)}.", None
        )
    return None


def _castled(scene: Scene, motion: Motion) -> Finding | None:
    """“{O-O-O}Castling; the king comes to rest on b1”, where it stands on c1."""
    told = [s for s in scene.steps if s.cued and s.token <= motion.end and s.before is not None and s.move]
    step = told[-1] if told else None
    if step is None or step.before is None or not step.move or not step.before.is_castling(step.move):
        return None
    if motion.who.kind is None or scene.mood(motion.start) or scene.mood(motion.end - 1):
        return None
    landed = {
        at for at in chess.SQUARES if step.board.piece_at(at) and step.board.piece_at(at) != step.before.piece_at(at)
    }
    if motion.to in landed:
        return None
    right = next((at for at in landed if step.board.piece_type_at(at) == motion.who.kind), None)
    if right is None or not step.cued or scene.sentence_of[motion.start] - scene.sentence_of[step.token] > 1:
        return None
    fix = square_fix(scene, motion.start, motion.end, motion.to, right)
    why = f"The {chess.piece_name(motion.who.kind)} goes to {chess.square_name(right)}: {step.before.san(step.move)}."
    return _finding(scene, motion, Topic.SQUARE, why, fix)


def _at(step: Step, motion: Motion) -> bool:
    """Do the words begin where the move is played, or at the head of a line without cues?"""
    if not step.cued:
        return motion.start <= 1
    return motion.start - 2 <= step.token < motion.end


def elsewhere(scene: Scene, token: int) -> bool:
    """Does the sentence begin by naming another game or opening: “In the Spanish the bishop …”?"""
    start, _ = scene.sentence(token)
    head = scene.tokens[start : min(token, start + 4)]
    words = " ".join(t.text for t in head)
    named = next((t for t in head[1:] if t.written[:1].isupper()), None)
    return scene.words.hint("elsewhere_head", words) or (
        named is not None and scene.words.hint("elsewhere_in", words) and not scene.words.hint("elsewhere_not", words)
    )


def _stands(who: Mention, board: chess.Board, at: chess.Square) -> bool:
    return board.piece_type_at(at) == who.kind and who.colour in (None, board.color_at(at))


def _fits(who: Mention, known: Known) -> bool:
    kind = known.board.piece_type_at(known.move.from_square)
    return who.kind in (None, kind) and who.colour in (None, known.board.turn)


def _step_of(scene: Scene, motion: Motion) -> Step | None:
    """The move that the words can only tell: the last one played in their clause or right before it."""
    cued = [step for step in scene.steps if step.cued and step.move is not None]
    if not cued:
        told = [step for step in scene.steps if step.move is not None]
        first = scene.sentence_of[motion.start] == 0
        return told[0] if len(told) == 1 and first else None
    start, end = scene.sentence(motion.start)
    here = [step for step in cued if start <= step.token < end]
    inside = [step for step in here if motion.start - _AHEAD <= step.token < motion.end]
    if inside:
        return inside[-1]
    before = [step for step in here if step.token <= motion.start]
    if len(cued) == 1 and not here and cued[0].token < start and cued[0].landed == motion.to:
        # The one move of the line, told a sentence later.
        return cued[0]
    last = [step for step in cued if step.token < start]
    if last and not here and scene.sentence_of[last[-1].token] == scene.sentence_of[motion.start] - 1:
        # “{Kd4}So the king has to hurry. He comes to e4”: told only now.
        return last[-1] if _untold(scene, last[-1]) and _is_mover(scene, motion, last[-1]) else None
    # The one move of the sentence, said after something else: “{Nf3}White develops, and the knight comes to g3”.
    return before[-1] if len(here) == 1 and before and motion.start - before[-1].token <= 2 * _GAP else None


def _untold(scene: Scene, step: Step) -> bool:
    """Does the sentence in which the move is played not say where it goes?"""
    start, end = scene.sentence(step.token)
    squares = [m for m in scene.mentions if start <= m.start < end and m.square is not None]
    return not squares and not any(s.placed and start <= s.phrase.start < end for s in scene.said)


def _is_mover(scene: Scene, motion: Motion, step: Step) -> bool:
    """Does the motion speak of the piece that moved, by its name or by “he”, “she”, “it”?"""
    if step.before is None or step.move is None:
        return False
    kind = step.before.piece_type_at(step.move.from_square)
    if motion.who.kind is not None:
        return motion.who.kind == kind
    meant = {"he": chess.KING, "she": chess.QUEEN}.get(motion.who.pronoun)
    if meant is None:
        return motion.who.pronoun == "it"
    start, end = scene.sentence(step.token)
    return meant == kind and any(m.kind == meant for m in scene.mentions if start <= m.start < end)


def _takers(scene: Scene, near: Sequence[Known]) -> Iterator[Finding]:
    """“Takes back with the a-pawn”, “the a-pawn recaptures”: is that the pawn which took?"""
    for mention in scene.mentions:
        if mention.what is not Named.PIECE or mention.kind is None or mention.plural:
            continue
        behind = " ".join(t.text for t in scene.tokens[max(0, mention.start - 6) : mention.start])
        ahead = " ".join(t.text for t in scene.tokens[mention.end : mention.end + 3])
        tool = scene.words.hint("takes_with_before", behind)
        doer = mention.definite and scene.words.hint("takes_after", ahead)
        if not (tool or doer) or scene.mood(mention.start) & ~Mood.PAST or mention.square is not None:
            continue
        start, end = scene.clause(mention.start)
        here = [s for s in scene.steps if s.cued and s.move is not None and start - 1 <= s.token < end]
        if len(here) != 1:
            continue
        step = here[0]
        if step.before is None or step.move is None or captured_square(step.before, step.move) is None:
            continue
        every = [Known(s.before, s.move) for s in scene.steps if s.before is not None and s.move is not None]
        if any(_took(mention, known) for known in [*every, *near]):
            continue
        if mention.colour is not None and mention.colour != step.before.turn:
            continue
        name = chess.piece_name(step.before.piece_type_at(step.move.from_square) or chess.PAWN)
        file = f"{chess.FILE_NAMES[chess.square_file(step.move.from_square)]}-" if name == "pawn" else ""
        fix = _file_fix(scene, mention, step.move) if name == "pawn" and mention.kind == chess.PAWN else None
        why = f"It is the {file}{name} that takes: {step.before.san(step.move)}."
        who = Motion(mention, step.move.to_square, mention.start - bool(tool), mention.end)
        yield _finding(scene, who, Topic.PIECE, why, fix)


def _movers(scene: Scene) -> Iterator[Finding]:
    """“White develops the knight”, where the line moves a bishop and nothing else."""
    steps = [step for step in scene.steps if step.move is not None and step.before is not None]
    for mention in scene.mentions:
        if mention.what is not Named.PIECE or not mention.kind or mention.plural or mention.square is not None:
            continue
        behind = " ".join(t.text for t in scene.tokens[max(0, mention.start - 4) : mention.start])
        ahead = " ".join(t.text for t in scene.tokens[mention.end : mention.end + 3])
        active = scene.words.hint("moves_piece_before", behind) and not scene.words.hint("moves_piece_not_after", ahead)
        if not active or scene.mood(mention.start) or elsewhere(scene, mention.start):
            continue
        here = [s for s in steps if s.cued and mention.start - _AHEAD <= s.token <= mention.start]
        if len(here) != 1 or any(scene.tokens[at].broken for at in range(here[0].token + 1, mention.end)):
            continue
        before, move = here[0].before, here[0].move
        if before is None or move is None or before.is_castling(move) or mention.vague:
            continue
        if mention.colour not in (None, before.turn) or any(
            s.before is not None
            and s.move is not None
            and s.before.turn == before.turn
            and s.before.piece_type_at(s.move.from_square) == mention.kind
            and mention.file in (None, chess.square_file(s.move.from_square))
            for s in steps
        ):
            continue
        kind = before.piece_type_at(move.from_square) or chess.PAWN
        why = f"It is a {chess.piece_name(kind)} that moves: {before.san(move)}."
        fix = piece_fix(scene, mention.start, mention.end, mention.kind, kind)
        yield _finding(scene, Motion(mention, move.to_square, mention.start, mention.end), Topic.PIECE, why, fix)


def _took(mention: Mention, known: Known) -> bool:
    return (
        known.board.is_capture(known.move)
        and _fits(mention, known)
        and mention.file in (None, chess.square_file(known.move.from_square))
    )


def _file_fix(scene: Scene, mention: Mention, move: chess.Move) -> Fix | None:
    if mention.file is None:
        return None
    letter = chess.FILE_NAMES[mention.file]
    token = next((t for t in scene.tokens[mention.start : mention.end] if t.text == letter), None)
    return None if token is None else Fix(token.start, token.end, chess.FILE_NAMES[chess.square_file(move.from_square)])


def _finding(scene: Scene, motion: Motion, topic: Topic, why: str, fix: Fix | None) -> Finding:
    start, end = scene.span(motion.start, motion.end)
    quote = scene.quote(motion.start, motion.end)
    do = f"Say “{fix.text}”." if fix else "Say the move that is played."
    return Finding(quote, topic, Verdict.CONTRADICTED, quote, why, do, scene.key, start, end, (), (), fix)
