"""Who moves, what is taken and with what, where the words right at a cue say so: “{Bxf3}the bishop takes it”."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import chess

from studyboard.board.moves import captured_square
from studyboard.board.naming import side
from studyboard.reading.findings import Finding, Fix, Topic, Verdict
from studyboard.reading.fixes import piece_fix, square_fix
from studyboard.reading.imagined import san_of
from studyboard.reading.mentions import Mention, Named
from studyboard.reading.moods import Mood
from studyboard.reading.motions import elsewhere
from studyboard.reading.moves_said import overlapping
from studyboard.reading.scene import Scene, Sentence, Step
from studyboard.reading.standing import Known

#: Hints of words at a cue that say what goes where.
_TO_A_SQUARE = ("to_after_comma", "any_at_cue", "sent_at_cue", "to_home", "where_it_goes", "in_goes")
#: A clause of so few words may belong to the cue before it.
_SHORT = 4


@dataclass(frozen=True, slots=True)
class _Told:
    """A move and the words from its cue to the next one.

    steps: the moves that are played at that word; code: the words, names replaced by marks
    follows: moves that may be told as well, since they come right after; near: every move of the tree near by
    """

    scene: Scene
    steps: tuple[Step, ...]
    sentence: Sentence
    code: str
    follows: tuple[Known, ...]
    near: Sequence[Known]

    def mention(self, found: re.Match[str] | None, group: str) -> Mention | None:
        """What a group of a hint names."""
        mark = None if found is None else found.groupdict().get(group)
        return None if mark is None else self.scene.mentions[int(mark)]

    def find(self, *hints: str) -> re.Match[str] | None:
        """The first of these hints that stands at the head of these words."""
        tried = (self.scene.words.hints[hint].search(self.code) for hint in hints)
        return next((found for found in tried if found is not None), None)

    @property
    def step(self) -> Step:
        return self.steps[0]


def doers(scene: Scene, near: Sequence[Known]) -> Iterator[Finding]:
    """Sides and pieces said to make a move that others make, and pieces said to be taken that are not."""
    for told in _told(scene, near):
        for judge in (_side, _piece, _taken, _tool, _square, _becomes, _wing):
            finding = judge(told)
            if finding is not None:
                yield finding
                break


def _told(scene: Scene, near: Sequence[Known]) -> Iterator[_Told]:
    moves = [step for step in scene.steps if step.cued and step.move and step.before is not None]
    for token in sorted({step.token for step in moves}):
        here = tuple(step for step in moves if step.token == token)
        if token >= len(scene.tokens) or elsewhere(scene, token):
            continue
        start, end = scene.sentence(token)
        if start == token and end < len(scene.tokens) and not _names_anything(scene, start, end):
            # “{Kd2}And what did you do? You put the king in between.”
            token = end
            start, end = scene.sentence(token)
        # “White {exd5}takes”: the name may stand before the cue.
        named = next((m for m in scene.mentions if m.end == token and m.start >= start), None)
        first = named.start if named is not None and not scene.tokens[token].broken else token
        later = min((step.token for step in moves if step.token > token), default=end)
        sentence = next(s for s in scene.sentences if s.start == start)
        places = [place for place, at in sentence.places if at >= first]
        stop = next((place for place, at in sentence.places if at >= later), len(sentence.code))
        if not places:
            continue
        ahead = [step for step in moves if step.token > token]
        breath = ahead and not any(scene.tokens[at].broken for at in range(token + 1, min(later + 1, end)))
        after = [Known(s.before, s.move) for s in ahead[:1] if breath and s.before is not None and s.move is not None]
        after += [] if ahead else [known for known in near if known.board == here[-1].board]
        yield _Told(scene, here, sentence, sentence.code[places[0] : stop], tuple(after), near)


def _names_anything(scene: Scene, start: int, end: int) -> bool:
    return (
        any(start <= m.start < end for m in scene.mentions)
        or any(s.cued and start < s.token <= end for s in scene.steps)
        or any(True for _ in overlapping(scene.said, start, end))
    )


def _plain(told: _Told, mention: Mention) -> bool:
    mood = told.scene.mood(mention.start) | told.scene.mood(min(mention.end, told.sentence.end - 1))
    return not mood & ~Mood.PAST


def _side(told: _Told) -> Finding | None:
    """“{Bxf3}White takes”, where Black does."""
    mention = told.mention(told.find("side_at_cue"), "side")
    if mention is None or mention.colour is None or not _plain(told, mention):
        return None
    if any(step.before is not None and step.before.turn == mention.colour for step in told.steps):
        return None
    scene = told.scene
    if any(_acts_next(scene, mention, step) for step in scene.steps if step.token > told.step.token):
        return None
    why = f"It is {side(not mention.colour)} who plays {san_of(told.step)}."
    return _finding(scene, mention.start, mention.end + 1, Topic.COLOUR, why, "Name the other side.")


def _acts_next(scene: Scene, mention: Mention, step: Step) -> bool:
    """Is the side that is named the one that plays the next move, in the same breath: “Black replies {c5}c5”?"""
    if not step.cued or step.before is None or not step.move or step.before.turn != mention.colour:
        return False
    return not any(scene.tokens[at].broken for at in range(mention.end, min(step.token + 1, len(scene.tokens))))


def _piece(told: _Told) -> Finding | None:
    """“{Be7}The king blocks”, where a bishop does."""
    found = told.find("piece_at_cue", "inverted_at_cue", "put_at_cue", "to_home", "where_it_goes")
    mention = told.mention(found, "piece")
    if found is None or mention is None or not _names_one(mention) or not _plain(told, mention):
        return None
    if mention.square is not None or mention.other:
        return None
    if told.scene.words.hint("moves_later_after", told.code[found.end() :].lstrip()):
        return None
    if any(_moves(mention, step.before, step.move) for step in told.steps):
        return None
    # “{Nxf6}the rook goes”: it is taken.
    if any(_takes(mention, step.before, step.move) for step in told.steps):
        return None
    if any(_moves(mention, known.board, known.move) for known in told.follows):
        return None
    step = told.step
    if step.before is None or step.move is None or mention.colour not in (None, step.before.turn):
        return None
    kind = step.before.piece_type_at(step.move.from_square) or chess.PAWN
    if mention.comes_from is not None and kind == mention.kind:
        why = f"It comes from {chess.square_name(step.move.from_square)}: {san_of(step)}."
        at_fix = square_fix(told.scene, mention.start, mention.end, mention.comes_from, step.move.from_square)
        return _finding(told.scene, mention.start, mention.end, Topic.SQUARE, why, "Say where it comes from.", at_fix)
    fix = piece_fix(told.scene, mention.start, mention.end, mention.kind, kind) if kind != mention.kind else None
    file = f"{chess.FILE_NAMES[chess.square_file(step.move.from_square)]}-" if kind == chess.PAWN else ""
    why = f"It is the {file}{chess.piece_name(kind)} that moves: {san_of(step)}."
    return _finding(told.scene, mention.start, mention.end + 1, Topic.PIECE, why, "Say the move that is played.", fix)


def _moves(mention: Mention, board: chess.Board | None, move: chess.Move | None) -> bool:
    """Can the mention be what makes this move?"""
    if board is None or not move:
        return True
    kinds = {board.piece_type_at(move.from_square)}
    if board.is_castling(move):
        kinds = {chess.KING, chess.ROOK}
    file = mention.file in (None, chess.square_file(move.from_square), chess.square_file(move.to_square))
    origin = mention.comes_from in (None, move.from_square)
    return mention.kind in kinds and mention.colour in (None, board.turn) and file and origin


def _taken(told: _Told) -> Finding | None:
    """“{Nxe5}the knight takes the bishop”, “{Qxc3}and the c-pawn falls”: is that what was taken?"""
    found = told.find("taken_at_cue", "falls_at_cue", "taking_behind_comma", "falls_to")
    mention = told.mention(found, "taken")
    if mention is None or not _names_one(mention) or not _plain(told, mention):
        return None
    if any(_takes(mention, step.before, step.move) for step in told.steps):
        return None
    if any(_takes(mention, known.board, known.move) for known in told.follows):
        return None
    if told.scene.words.hint("took", told.code) and any(_takes(mention, k.board, k.move) for k in told.near):
        return None
    step = told.step
    if step.before is None or step.move is None:
        return None
    at = captured_square(step.before, step.move)
    kind = None if at is None else step.before.piece_type_at(at)
    if at is None or kind is None:
        why = f"Nothing is taken: {san_of(step)}."
    elif kind == mention.kind:
        why = f"It is {side(bool(step.before.color_at(at)))}'s pawn on {chess.square_name(at)} that is taken."
        why = why.replace("pawn", chess.piece_name(kind))
    else:
        why = f"What is taken is a {chess.piece_name(kind)}: {san_of(step)}."
    fix = (
        None if kind in (None, mention.kind) else piece_fix(told.scene, mention.start, mention.end, mention.kind, kind)
    )
    return _finding(told.scene, mention.start, mention.end, Topic.PIECE, why, "Say what is taken.", fix)


def _takes(mention: Mention, board: chess.Board | None, move: chess.Move | None) -> bool:
    """Can the mention be what this move takes?"""
    if board is None or not move:
        return True
    at = captured_square(board, move)
    if at is None:
        return False
    alike = board.piece_type_at(at) == mention.kind and mention.colour in (None, board.color_at(at))
    return alike and mention.file in (None, chess.square_file(at)) and mention.square in (None, at)


def _tool(told: _Told) -> Finding | None:
    """“{Qd3}White blocks with the rook”."""
    found = told.find("tool_at_cue", "helper_at_cue", "falls_to", "with_piece_at_cue")
    mention = told.mention(found, "tool")
    if mention is None or not _names_one(mention) or not _plain(told, mention) or mention.square is not None:
        return None
    if any(_moves(mention, step.before, step.move) for step in told.steps):
        return None
    step = told.step
    if step.before is None or step.move is None or mention.colour not in (None, step.before.turn):
        return None
    kind = step.before.piece_type_at(step.move.from_square) or chess.PAWN
    fix = piece_fix(told.scene, mention.start, mention.end, mention.kind, kind) if kind != mention.kind else None
    file = f"{chess.FILE_NAMES[chess.square_file(step.move.from_square)]}-" if kind == chess.PAWN else ""
    why = f"It is the {file}{chess.piece_name(kind)} that moves: {san_of(step)}."
    return _finding(told.scene, mention.start, mention.end, Topic.PIECE, why, "Say the move that is played.", fix)


def _square(told: _Told) -> Finding | None:
    """“{Qe5}White's to d5”, “{c5}Black strikes with c6”."""
    to = told.mention(told.find("to_at_cue", "takes_on_at_cue"), "square") or _goes(told)
    to = to or told.mention(told.find("to_behind_comma"), "square")
    pawn = told.mention(told.find("pawn_at_cue"), "square")
    mention = to or pawn
    step = told.step
    if mention is None or mention.square is None or step.before is None or step.move is None:
        return None
    if not _plain(told, mention) or any(step.landed == mention.square for step in told.steps):
        return None
    kind = step.before.piece_type_at(step.move.from_square) or chess.PAWN
    reached = [known.move.to_square for known in told.follows]
    if step.landed is None or mention.square in reached or (to is None and kind != chess.PAWN):
        return None
    fix = square_fix(told.scene, mention.start, mention.end, mention.square, step.landed)
    why = f"The {chess.piece_name(kind)} goes to {chess.square_name(step.landed)}: {san_of(step)}."
    return _finding(told.scene, mention.start, mention.end, Topic.SQUARE, why, "Say the move that is played.", fix)


def _becomes(told: _Told) -> Finding | None:
    """“{exf1=B}takes the rook and asks for a knight”, where the pawn becomes a bishop."""
    found = told.find("becomes")
    mention = told.mention(found, "becomes")
    made = {step.move.promotion for step in told.steps if step.move is not None and step.move.promotion}
    if mention is None or not made or mention.kind in (None, chess.PAWN, chess.KING, *made) or mention.plural:
        return None
    if mention.definite or mention.pronoun or not _plain(told, mention):
        return None
    kind = next(iter(made))
    assert kind is not None
    fix = piece_fix(told.scene, mention.start, mention.end, mention.kind, kind)
    why = f"The pawn becomes a {chess.piece_name(kind)}: {san_of(told.step)}."
    return _finding(told.scene, mention.start, mention.end, Topic.PIECE, why, "Say what it becomes.", fix)


def _wing(told: _Told) -> Finding | None:
    """“{O-O-O}tucks her king in beside the h-rook”: the other side of the board."""
    scene = told.scene
    step = next((s for s in told.steps if s.before is not None and s.move and s.before.is_castling(s.move)), None)
    if step is None or step.before is None or step.move is None:
        return None
    kingside = step.before.is_kingside_castling(step.move)
    wrong, right = ("to_queen_wing", "to_king_wing") if kingside else ("to_king_wing", "to_queen_wing")
    later = min((s.token for s in scene.steps if s.token > step.token), default=len(scene.tokens))
    at = step.token
    stop = told.sentence.end
    if stop < len(scene.tokens):
        # “Castles! Long side.” “Castles! Long side, rook pops out.”
        ends = scene.sentence(stop)[1], scene.clause(stop)[1]
        stop = next((end for end in ends if end - stop <= _SHORT), stop)
    while at < min(later, stop):
        start, end = max(at, scene.clause(at)[0]), min(scene.clause(at)[1], later)
        text = scene.quote(start, end).lower().replace("’", "'")
        hint = scene.words.hint
        told_here = hint("castling_told", text) and hint(wrong, text) and not hint(right, text)
        whole = any(
            s.whole and s.phrase.form.castles and start <= s.phrase.start and s.phrase.end <= end
            for s in overlapping(scene.said, start, end)
        )
        alone = not whole and _wing_alone(scene, text) not in (None, kingside)
        if (told_here or alone) and not scene.mood(start):
            wing = "kingside" if kingside else "queenside"
            why = f"{side(step.before.turn)} castles {wing} here."
            return _finding(scene, start, end, Topic.CASTLING, why, "Say the side on which it is.")
        at = end
    return None


def _wing_alone(scene: Scene, text: str) -> bool | None:
    """Whether a clause that says no more than the side on which it is castled says the king's; None for any other."""
    words = re.sub(r"[^a-z' ]", "", text.replace("-", ""))
    found = scene.words.hints["wing_alone"].search(words)
    return None if found is None else found["wing"].startswith(("k", "s"))


def _goes(told: _Told) -> Mention | None:
    """The square of “{Bg3}and it hides on f2”, where the words at the cue speak of what moves."""
    found = told.find(*_TO_A_SQUARE)
    who, square = told.mention(found, "piece"), told.mention(found, "square")
    if who is None or (who.pronoun and who.pronoun not in ("it", "she", "he")) or who.square is not None or who.plural:
        return None
    if not who.pronoun and not any(_moves(who, step.before, step.move) for step in told.steps):
        return None
    return square


def _names_one(mention: Mention) -> bool:
    one = mention.what is Named.PIECE and mention.kind is not None and not mention.plural
    return one and not mention.pronoun and not mention.moves_to and not mention.enemy


def _finding(scene: Scene, first: int, last: int, topic: Topic, why: str, do: str, fix: Fix | None = None) -> Finding:
    start, end = scene.span(first, min(last, len(scene.tokens)))
    quote = scene.quote(first, min(last, len(scene.tokens)))
    do = f"Say “{fix.text}”." if fix else do
    return Finding(quote, topic, Verdict.CONTRADICTED, quote, why, do, scene.key, start, end, (), (), fix)
