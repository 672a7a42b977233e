"""A side said to play a move that the other one plays: “Black takes” where White does."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from studyboard.board.naming import side
from studyboard.notation.narration.lexicon import lexicon
from studyboard.reading.findings import Finding, Topic, Verdict
from studyboard.reading.mentions import Mention, Named
from studyboard.reading.moves_said import means
from studyboard.reading.scene import Scene
from studyboard.reading.standing import Known, known_after

#: A cue may stand this many words before the phrase that tells its move.
_REACH = 4
#: A verb of moving or taking has to be plain.
_SURE = 0.12


def sides_told(scene: Scene, near: Sequence[Known]) -> Iterator[Finding]:
    """A side said to play a move that the other one plays: “Black takes” where White does."""
    for mention in scene.mentions:
        if mention.what is not Named.SIDE or scene.mood(mention.start):
            continue
        if scene.tokens[mention.end - 1].text.endswith("'s"):
            continue
        if _speaks_of_themselves(scene, mention):
            continue
        if not acts(scene, mention.end) and not _first_after_cry(scene, mention):
            continue
        later = min((s.token for s in scene.steps if s.cued and s.token > mention.start), default=len(scene.tokens))
        steps = [
            s for s in scene.steps if s.cued and s.move and s.before and -2 <= mention.start - s.token <= _REACH
        ] or [s for s in scene.steps if s.cued and s.move and s.before and s.token == later <= mention.start + 3]
        if not any(s.cued for s in scene.steps) and len(scene.steps) == 1 and mention.start <= 2:
            steps = [s for s in scene.steps if s.move and s.before]
        if not steps or _moves_in_sentence(scene, mention):
            continue
        verb = scene.tokens[mention.end].text if mention.end < len(scene.tokens) else ""
        after = next((s for s in scene.steps if s.token > mention.start and s.before is not None and s.move), None)
        answers = after is None or (after.before is not None and after.before.turn == mention.colour)
        if answers and steps[-1].token < mention.start and scene.words.hint("answers", verb):
            # “{e4}White begins with e4, and Black answers”: in the next line.
            continue
        step = steps[-1]
        if step.before is None or step.move is None or _plays(scene, near, mention):
            continue
        if step.before.turn == mention.colour:
            continue
        start, end = scene.span(mention.start, mention.end + 1)
        why = f"It is {side(step.before.turn)} who plays {step.before.san(step.move)}."
        yield Finding(
            scene.quote(mention.start, mention.end + 1),
            Topic.COLOUR,
            Verdict.CONTRADICTED,
            scene.quote(mention.start, mention.end + 1),
            why,
            "Name the other side.",
            scene.key,
            start,
            end,
        )


def _first_after_cry(scene: Scene, mention: Mention) -> bool:
    """Does the name begin a sentence behind one that names nothing and holds the cue: “{d5}Oh my word! White …”?"""
    at = mention.start
    if scene.sentence(at)[0] != at or at == 0:
        return False
    first, end = scene.sentence(at - 1)
    after = " ".join(token.text for token in scene.tokens[mention.end : mention.end + 3])
    named = any(first <= m.start < end for m in scene.mentions)
    cued = any(step.cued and first <= step.token < end for step in scene.steps)
    return cued and not named and scene.words.hint("side_here", after)


def _moves_in_sentence(scene: Scene, mention: Mention) -> bool:
    """Does the side that is named play a move within this sentence or right after it?"""
    start, end = scene.sentence(mention.start)
    steps = [s for s in scene.steps if s.before is not None and s.before.turn == mention.colour]
    clause = scene.clause(mention.start)
    near = clause if any(clause[0] <= s.token < clause[1] for s in scene.steps) else (start, end)
    loose = not any(scene.tokens[at].broken for at in range(start + 1, end))
    loose = loose and not any(s.cued and s.token == mention.start for s in scene.steps)
    return any((start if loose else near[0]) <= s.token < (end + 1 if loose else near[1]) for s in steps)


def _plays(scene: Scene, near: Sequence[Known], mention: Mention) -> bool:
    """Does the line play a move of this side that the words behind its name can mean?"""
    forms = [s.phrase.form for s in scene.said if mention.end <= s.phrase.start <= mention.end + 1]
    played = [Known(s.before, s.move) for s in scene.steps if s.before is not None and s.move is not None]
    played += [known for known in near if known_after(known) == scene.start]
    return any(
        known.board.turn == mention.colour and any(means(form, known.board, known.move) for form in forms)
        for known in played
    )


def _speaks_of_themselves(scene: Scene, mention: Mention) -> bool:
    """“I've got a queen”, “but then I take”: of the speaker, and not at the word at which a move is played."""
    word = scene.tokens[mention.start].text
    at_cue = any(step.cued and step.token in (mention.start, mention.end) for step in scene.steps)
    return word in scene.words.names.me and (word.endswith("'ve") or not at_cue)


def acts(scene: Scene, at: int) -> bool:
    """Is the word at *at* a verb of moving or taking, right behind the word before?"""
    if at >= len(scene.tokens) or scene.tokens[at].broken:
        return False
    sayings = lexicon("en").sayings.get(scene.tokens[at].text, ())
    return any(
        saying.kind in ("motion", "capture", "castles") and len(saying.words) == 1 and saying.cost < _SURE
        for saying in sayings
    ) and not any(saying.kind in ("piece", "link") for saying in sayings)
