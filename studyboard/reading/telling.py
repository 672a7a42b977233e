"""Slips in telling moves: a square, piece, side or wing that is not that of the move played, a move never played."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

import chess

from studyboard.board.moves import captured_square, landing_square
from studyboard.board.naming import side
from studyboard.reading.doers import doers
from studyboard.reading.findings import Finding, Fix, Topic, Verdict
from studyboard.reading.fixes import piece_fix, square_fix
from studyboard.reading.mentions import Named
from studyboard.reading.moods import Mood
from studyboard.reading.motions import elsewhere, motions
from studyboard.reading.moves_said import Said, legal_meanings, means, overlapping, stands, without_side
from studyboard.reading.scene import Scene, Step
from studyboard.reading.sides_told import sides_told
from studyboard.reading.standing import Known, standing

#: A cue may stand this many words before the phrase that tells its move.
_REACH = 4
_SPOKEN_OF = 0.5
#: A phrase without a square has to be said plainly to be held against the board.
_SURE = 0.12
#: The same for one that begins with the verb: “takes back with the knight”.
_SURE_BEHIND = 1.05
#: A longer phrase is meant instead of a shorter one inside it where it costs at most so much more.
_AS_PLAIN = 0.1


@dataclass(slots=True)
class Telling:
    """How a line tells its moves.

    State: the phrases that were explained, as indices into the scene's phrases.

    near: moves of the tree that the line may speak of besides its own
    earlier: positions before the line, the latest first
    """

    scene: Scene
    near: Sequence[Known] = ()
    earlier: Sequence[chess.Board] = ()
    explained: set[int] = field(default_factory=set)

    def findings(self) -> list[Finding]:
        """Moves told right and wrong, and pieces said to stand where they do not."""
        found: list[Finding] = []
        if self.scene.talk.part == "greeting" and self.scene.talk.first is not None:
            return found
        found += self._played()
        found += self._others()
        found += doers(self.scene, self.near)
        found += sides_told(scene=self.scene, near=self.near)
        found += motions(self.scene, self.near)
        found += standing(self.scene, self.near, self.earlier)
        return found

    def _played(self) -> Iterator[Finding]:
        """Each move that the line plays, against the words at its cue."""
        scene = self.scene
        for step in scene.steps:
            if step.move is None or step.before is None or not step.move:
                continue
            phrases = list(self._told_by(step))
            right = [said for said in phrases if means(said.phrase.form, step.before, step.move)]
            # "The bishop comes" fits, but not as a part of "the bishop comes to b5".
            right = [
                said for said in right if not any(_says_more(other, said) and other not in right for other in phrases)
            ]
            if right:
                whole = [said for said in right if said.whole]
                said = (whole or right)[0]
                for other in phrases:
                    if other.phrase.start < said.phrase.end and said.phrase.start < other.phrase.end:
                        self._explain(other)
                if whole:
                    yield self._finding(
                        said, Verdict.CONFIRMED, Topic.MOVE, f"{step.before.san(step.move)} is played here."
                    )
                continue
            for said in phrases:
                if said.whole and self._is_slip(said, step):
                    self._explain(said)
                    yield self._slip(said, step)
                    break
                around = said.placed and said.phrase.start < step.token < said.phrase.end
                if around and scene.mood(said.phrase.start) & Mood.HYPOTHETICAL:
                    # The words around the cue tell it, and not for certain: what follows is another move.
                    break

    def _told_by(self, step: Step) -> Iterator[Said]:
        """The phrases that may tell the move of this step: at its cue, or anywhere for an uncued one."""
        scene = self.scene
        if not step.cued:
            first_cue = min((other.token for other in scene.steps if other.cued), default=len(scene.tokens))
            yield from (said for said in scene.said if said.phrase.start < max(first_cue, 1))
            return
        later = [other.token for other in scene.steps if other.cued and other.token > step.token]
        end = min([step.token + _REACH + 1, *later])
        if step.token < len(scene.tokens):
            end = min(end, scene.sentence(step.token)[1])
        for said in scene.said:
            holds = said.phrase.start <= step.token < said.phrase.end
            if holds or step.token <= said.phrase.start < end or self._set_apart(said, step, later):
                yield said
        earlier = [other.token for other in scene.steps if other.cued and other.token < step.token]
        if not scene.said or not any(s.whole and step.token <= s.phrase.start < end for s in scene.said):
            first = max([*earlier, 0])
            yield from (
                s for s in scene.said if s.whole and first < s.phrase.start + 1 and 0 <= step.token - s.phrase.end <= 1
            )

    def _set_apart(self, said: Said, step: Step, later: Sequence[int]) -> bool:
        """Is it a clause of its own behind the cue, the only move that is told up to the next one: “…, pawn to c5.”?"""
        scene, start = self.scene, said.phrase.start
        if not said.whole or not said.placed or said.phrase.form.bare or step.token >= start:
            return False
        first, end = scene.sentence(step.token)
        if not first <= start < end or any(token <= start for token in later):
            return False
        begins, ends = scene.clause(start)
        led = scene.words.hint("introduces_move", scene.tokens[start - 1].text)
        alone = begins == start and said.phrase.end == ends and led
        others = (s for s in scene.said if s.placed and step.token <= s.phrase.start < end)
        return alone and all(said.phrase.start <= s.phrase.start and s.phrase.end <= said.phrase.end for s in others)

    def _is_slip(self, said: Said, step: Step) -> bool:
        scene, form = self.scene, said.phrase.form
        if not said.placed and not self._clear(said):
            return False
        if any(
            scene.tokens[at].broken and not scene.words.hint("goes_on_to", scene.tokens[at].text)
            for at in range(said.phrase.start + 1, said.phrase.end)
        ):
            # “The knight, to e2” is told in one breath all the same.
            return False
        if elsewhere(scene, said.phrase.start):
            return False
        words = " ".join(token.text for token in scene.tokens[said.phrase.start : said.phrase.end])
        if form.castles and "the king" in words:
            # “Tucks the king away” names no side of the board.
            return False
        if any(
            s.cued and s.token != step.token and said.phrase.start <= s.token < said.phrase.end for s in scene.steps
        ):
            # “He {exf4}takes the pawn {Nf3}knight f3”, without a stop: words of two moves.
            return False
        after = " ".join(token.text for token in scene.tokens[said.phrase.end : said.phrase.end + 2])
        if scene.words.hint("no_move_after", after):
            return False
        if scene.words.hint("no_move", words):
            return False
        article = scene.tokens[said.phrase.start - 1].text if said.phrase.start else ""
        if scene.words.hint("no_move", f"{article} {words}") and not scene.tokens[said.phrase.start].broken:
            # “A capture and a check”: a noun.
            return False
        head = any(scene.mood(at) & Mood.HYPOTHETICAL for at in range(said.phrase.start, said.phrase.end))
        led = " ".join(token.text for token in scene.tokens[max(0, said.phrase.start - 2) : said.phrase.start])
        spoken_of = said.context.against >= _SPOKEN_OF and not (step.cued and scene.words.hint("told_as", led))
        if spoken_of or self._mood(said) & ~Mood.PAST or head:
            return False
        if (form.bare and not self._is_pawn_move(said, step)) or (form.promotes and form.promotion is None):
            return False
        if not step.cued:
            first = next((s for s in scene.said if s.whole and not s.phrase.form.bare), None)
            first = said if form.bare else first
            if first is None or first.phrase.start < said.phrase.start or scene.sentence_of[said.phrase.start] > 0:
                return False
            if self._names_a_place(said):
                return False
        return not self._explained(said, own=step)

    def _mood(self, said: Said) -> Mood:
        """How the phrase is said; a denial counts only where it stands right before it."""
        scene = self.scene
        mood = scene.mood(said.phrase.anchor)
        if mood & Mood.NEGATIVE:
            words = {token.text for token in scene.tokens[max(0, said.phrase.start - 3) : said.phrase.end]}
            if not any(phrase[0] in words for phrase in scene.words.moods.get("negative", ())):
                mood &= ~Mood.NEGATIVE
        return mood

    def _clear(self, said: Said) -> bool:
        """Is a capture or promotion without a square said so that nothing else can be meant: “pawn takes,”?"""
        scene, phrase = self.scene, said.phrase
        begins = any(m.what is Named.PIECE and m.start <= phrase.start < m.end for m in scene.mentions)
        if phrase.cost > (_SURE if begins else _SURE_BEHIND) or phrase.end - phrase.start < 2:
            return False
        if phrase.end >= len(scene.tokens) or scene.tokens[phrase.end].broken:
            return True
        return phrase.form.promotion is not None or scene.tokens[phrase.end].text in scene.words.names.after_capture

    def _is_pawn_move(self, said: Said, step: Step) -> bool:
        """Can a square alone only be the pawn's move that the line tells: “{f6}f5 protects …”, “asks with h6.”?"""
        scene, start = self.scene, said.phrase.start
        assert step.before is not None
        assert step.move is not None
        assert said.phrase.form.to is not None
        if step.cued and start == step.token and self._alone(said):
            return True
        if step.before.piece_type_at(step.move.from_square) != chess.PAWN:
            return False
        if step.cued:
            same_file = chess.square_file(said.phrase.form.to) == chess.square_file(step.move.to_square)
            return start == step.token and same_file
        return start > 0 and scene.tokens[start - 1].text in scene.words.names.before_square

    def _alone(self, said: Said) -> bool:
        """Is the square all that is said between two signs?"""
        start, end = self.scene.clause(said.phrase.start)
        return end - start <= 2 and said.phrase.start == start

    def _names_a_place(self, said: Said) -> bool:
        """Do the words say where something stands, not where it goes: “the knight on f6”?"""
        for mention in self.scene.mentions:
            if mention.what is Named.PIECE and mention.start <= said.phrase.anchor < mention.end:
                return mention.definite or not mention.moves_to
        return False

    def _explained(self, said: Said, own: Step | None = None) -> bool:
        """Can the words mean another move of the tree near by, or a piece that stands there?"""
        form = said.phrase.form
        steps = [step for step in self.scene.steps if step.move is not None and step is not own]
        if any(
            step.before is not None and step.move is not None and means(form, step.before, step.move) for step in steps
        ):
            return True
        near = self.near if own is None else [known for known in self.near if self._beside(known, own, said.placed)]
        if any(means(form, known.board, known.move) for known in near):
            return True
        boards = [self.scene.start, *(step.board for step in self.scene.steps)]
        return form.from_square is None and not form.capture and any(stands(form, board) for board in boards)

    def _beside(self, known: Known, own: Step, placed: bool) -> bool:
        """Is the move played from the same position as the step's, or, said with its square, after the line?"""
        if known.move == own.move and known.board == own.before:
            return False
        return known.board == own.before or (placed and known.board == self.scene.steps[-1].board)

    def _explain(self, said: Said) -> None:
        self.explained.update(at for at in range(said.phrase.start, said.phrase.end))

    def _slip(self, said: Said, step: Step) -> Finding:
        assert step.before is not None
        assert step.move is not None
        form, board, move = said.phrase.form, step.before, step.move
        played = board.piece_type_at(move.from_square) or chess.PAWN
        fix: Fix | None = None
        to = landing_square(board, move)
        if means(without_side(form), board, move):
            topic, why = Topic.COLOUR, f"It is {side(board.turn)} who plays {board.san(move)}."
        elif form.castles:
            topic, why = Topic.CASTLING, f"{board.san(move)} is played here."
            if board.is_castling(move):
                wing = "kingside" if board.is_kingside_castling(move) else "queenside"
                why = f"{side(board.turn)} castles {wing} here."
        elif form.to is not None and form.to != to and form.piece in (None, played):
            topic = Topic.SQUARE
            why = f"The {chess.piece_name(played)} goes to {chess.square_name(to)}: {board.san(move)}."
            fix = square_fix(self.scene, said.phrase.start, said.phrase.end, form.to, to)
        elif form.promotion is not None and move.promotion and form.promotion != move.promotion:
            topic = Topic.PIECE
            why = f"The pawn becomes a {chess.piece_name(move.promotion)}: {board.san(move)}."
            fix = piece_fix(self.scene, said.phrase.start, said.phrase.end, form.promotion, move.promotion)
        elif form.to is None and form.capture and form.piece not in (None, played):
            topic = Topic.PIECE
            why = f"It is a {chess.piece_name(played)} that takes: {board.san(move)}."
            fix = piece_fix(self.scene, said.phrase.start, said.phrase.end, form.piece, played)
        elif form.to == to:
            topic = Topic.PIECE
            taken = captured_square(board, move)
            if form.piece == played and form.target is not None:
                kind = board.piece_type_at(taken) if taken is not None else None
                thing = "nothing" if kind is None else f"a {chess.piece_name(kind)}"
                why = f"What is taken is {thing}: {board.san(move)}."
            else:
                why = f"It is a {chess.piece_name(played)} that goes to {chess.square_name(to)}: {board.san(move)}."
                fix = piece_fix(self.scene, said.phrase.start, said.phrase.end, form.piece, played)
        else:
            topic, why = Topic.MOVE, f"{board.san(move)} is played here."
        return self._finding(said, Verdict.CONTRADICTED, topic, why, (to,), fix)

    def _castled_before(self, said: Said) -> bool:
        """“White went long”: told in the past, it may be any move before."""
        words = [token.text for token in self.scene.tokens[said.phrase.start : said.phrase.end]]
        return bool(said.phrase.form.castles) and any(self.scene.words.hint("past_verb", word) for word in words)

    def _others(self) -> Iterator[Finding]:
        """Whole moves that are told as played although nothing like them is on the tree or on the board."""
        scene = self.scene
        for said in scene.said:
            phrase = said.phrase
            if (
                not said.placed
                or phrase.form.bare
                or _perfect(scene, said)
                or self._castled_before(said)
                or any(at in self.explained for at in range(phrase.start, phrase.end))
            ):
                continue
            longer = [s for s in overlapping(scene.said, phrase.start, phrase.end) if s.placed]
            if any(s.phrase.end - s.phrase.start > phrase.end - phrase.start for s in longer):
                continue
            if self._names_a_place(said) or any(self._explained(s) for s in longer):
                continue
            boards = [scene.start, *(step.board for step in scene.steps)]
            if any(legal_meanings(s.phrase.form, board) for s in longer for board in boards):
                self._explain(said)
                yield self._finding(said, Verdict.UNDECIDED, Topic.MOVE, "It is legal here, and not on the tree.")
                continue
            if said.context.against >= _SPOKEN_OF or said.context.branch >= _SPOKEN_OF or scene.mood(phrase.anchor):
                self._explain(said)
                continue
            head = range(scene.sentence(phrase.start)[0], phrase.start)
            if any(scene.mood(at) & Mood.HYPOTHETICAL for at in head):
                # “… would be an error: a4, c6, and queen f3”: a line that is not played to its end.
                continue
            if not self._tells(said) or self._goes_on(said):
                continue
            before = " ".join(token.text for token in scene.tokens[max(0, phrase.start - 2) : phrase.start])
            if scene.words.hint("planned_move_before", before):
                continue
            self._explain(said)
            why = "No such move can be played here, and none is on the tree."
            fix = None
            guess = self._meant(said)
            if guess is not None:
                why = f"{why} {guess.board.san(guess.move)} is."
            yield self._finding(said, Verdict.CONTRADICTED, Topic.MOVE, why, (), fix)

    def _goes_on(self, said: Said) -> bool:
        """Does it follow a move named before it in the sentence that the line does not play: “…: a4, c6, queen f3”?"""
        start, _ = self.scene.sentence(said.phrase.start)
        steps = [step for step in self.scene.steps if step.before is not None and step.move is not None]
        before = [
            s for s in self.scene.said if s.placed and start <= s.phrase.start and s.phrase.end <= said.phrase.start
        ]
        return any(
            not self._names_a_place(other)
            and not any(s.before and s.move and means(other.phrase.form, s.before, s.move) for s in steps)
            and not any(step.token in range(other.phrase.start - 2, other.phrase.end) for step in steps)
            for other in before
        )

    def _tells(self, said: Said) -> bool:
        """Do the words tell a move, not name a square: a piece and the square right behind it, or a capture?"""
        form = said.phrase.form
        if form.castles:
            return True
        mention = next((m for m in self.scene.mentions if m.start <= said.phrase.anchor < m.end), None)
        return form.piece is not None and mention is not None and mention.moves_to

    def _meant(self, said: Said) -> Known | None:
        """The move of this line that shares most with the words."""
        form = said.phrase.form
        for step in self.scene.steps:
            if step.before is None or step.move is None:
                continue
            kind = step.before.piece_type_at(step.move.from_square)
            if form.to == step.move.to_square or (form.piece == kind and form.piece != chess.PAWN):
                return Known(step.before, step.move)
        return None

    def _finding(
        self,
        said: Said,
        verdict: Verdict,
        topic: Topic,
        why: str,
        squares: tuple[chess.Square, ...] = (),
        fix: Fix | None = None,
    ) -> Finding:
        scene = self.scene
        start, end = scene.span(said.phrase.start, said.phrase.end)
        quote = scene.quote(said.phrase.start, said.phrase.end)
        do = (
            ""
            if verdict is not Verdict.CONTRADICTED
            else f"Say “{fix.text}”."
            if fix
            else "Say the move that is played."
        )
        return Finding(quote, topic, verdict, quote, why, do, scene.key, start, end, squares, (), fix)


def _says_more(longer: Said, shorter: Said) -> bool:
    """Does one phrase hold all the words of the other, and more of a move?"""
    a, b = longer.phrase, shorter.phrase
    if not (a.start <= b.start and b.end <= a.end) or a.end - a.start == b.end - b.start or a.form.bare:
        return False
    return longer.whole and (a.cost <= b.cost + _AS_PLAIN if longer.placed else not shorter.whole)


def _perfect(scene: Scene, said: Said) -> bool:
    """Is it told that somebody has castled, not that it happens now?"""
    return bool(said.phrase.form.castles) and scene.tokens[said.phrase.start].text.endswith("ed")
