"""Finding the statements of a line that the board can judge, and judging them in the mood in which they are said."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Final

from studyboard.board.work import never_cancelled
from studyboard.reading import (
    claims_able,
    claims_attacked,
    claims_bishops,
    claims_castling,
    claims_check,
    claims_checks_given,
    claims_compared,
    claims_counted,
    claims_endgame,
    claims_files,
    claims_forced,
    claims_game,
    claims_hanging,
    claims_inventory,
    claims_lines,
    claims_listed,
    claims_look_back,
    claims_mate,
    claims_material,
    claims_moved,
    claims_pawns,
    claims_places,
    claims_possible,
    claims_presupposed,
    claims_quantified,
    claims_relations,
    claims_relative,
    claims_share,
    claims_sole,
    claims_tactics,
    claims_wins,
)
from studyboard.reading.asides import without_asides
from studyboard.reading.carried_on import carried_on
from studyboard.reading.claim import Claim, Judge, Judgement
from studyboard.reading.doubts import doubt
from studyboard.reading.findings import Finding, Topic, Verdict
from studyboard.reading.moods import Mood
from studyboard.reading.plain_form import in_plain_words
from studyboard.reading.scene import Scene, Sentence

JUDGES: Final[dict[str, Judge]] = {
    **claims_able.JUDGES,
    **claims_relations.JUDGES,
    **claims_attacked.JUDGES,
    **claims_relative.JUDGES,
    **claims_sole.JUDGES,
    **claims_quantified.JUDGES,
    **claims_hanging.JUDGES,
    **claims_lines.JUDGES,
    **claims_listed.JUDGES,
    **claims_counted.JUDGES,
    **claims_tactics.JUDGES,
    **claims_check.JUDGES,
    **claims_checks_given.JUDGES,
    **claims_presupposed.JUDGES,
    **claims_mate.JUDGES,
    **claims_castling.JUDGES,
    **claims_endgame.JUDGES,
    **claims_forced.JUDGES,
    **claims_places.JUDGES,
    **claims_bishops.JUDGES,
    **claims_inventory.JUDGES,
    **claims_compared.JUDGES,
    **claims_material.JUDGES,
    **claims_wins.JUDGES,
    **claims_pawns.JUDGES,
    **claims_files.JUDGES,
    **claims_share.JUDGES,
    **claims_game.JUDGES,
    **claims_possible.JUDGES,
    **claims_moved.JUDGES,
    **claims_look_back.JUDGES,
}

#: What can be said of the whole game, in a line that belongs to no move.
_OF_THE_GAME = frozenset({"game_length", "miniature", "result", "end_move"})
#: What is told in the past as a rule.
_OF_THE_END = frozenset({"game_length", "result", "end_move", "moves_played", "king_ended", "made_of_pawn", "mated_on"})
#: Claims whose words, where they turn out to mean something else, are left to the patterns that follow.
_GIVES_WAY = frozenset(
    {"ordinal_piece", "count_pieces", "nobody_attacks", "castling_right", "castled_wings", "only_piece", "empty_file"}
    | {"along_line", "mated_on", "on_file", "relies", "listed_guards", "listed_attackers"}
    | set(claims_bishops.JUDGES)
    | set(claims_able.JUDGES)
    | set(claims_inventory.JUDGES)
    | set(claims_compared.JUDGES)
    | set(claims_possible.JUDGES)
    | set(claims_moved.JUDGES)
    | set(claims_look_back.JUDGES)
    | set(claims_checks_given.JUDGES)
    | set(claims_presupposed.JUDGES)
    | set(claims_sole.JUDGES)
    | set(claims_quantified.JUDGES)
    | set(claims_listed.JUDGES)
    | set(claims_share.JUDGES)
    | {"count_open_files", "on_open_file", "wing", "unguarded"}
    | {
        "defends_behind",
        "attacks_so_many",
        "does_nothing",
        "holds_file",
        "material_both",
        "squares",
        "gives_a_poke",
        "material_side",
        "passed",
        "isolated",
        "doubled",
        "backward",
        "material_bare",
        "material_ahead",
        "material_for",
        "turn",
        "must_take",
        "must_move",
        "must_block",
        "no_choice",
        "sorts_of_moves",
        "steps_to_queen",
        "opposition",
        "move_number",
        "moves_played",
        "end_move",
        "game_length",
        "result",
        "majority",
        "count_feature",
        "queens_off",
        "winning",
    }
)
#: Claims that may be told one right behind the other, so that one is found where the next begins.
_IN_LISTS = frozenset({"versus"})
#: Claims of what is there now, in which “left” and “no longer” say nothing of the past.
_OF_NOW = (
    frozenset(claims_inventory.JUDGES)
    | set(claims_compared.JUDGES)
    | {
        "material_level",
        "no_check_given",
        "side_times",
        "bishop_shade",
        "material_ahead",
        "bishop_pair",
        "squares",
        "passed",
        "count_feature",
        "empty_file",
        "open_file",
        "count_open_files",
        "on_open_file",
        "share",
        "sole_feature",
        "so_many_given",
    }
)
#: Claims that speak of another time or of nothing by their own words.
_ANY_MOOD = frozenset(
    {
        "able",
        "replies",
        "castling_right",
        "threatens_mate",
        "mate_in",
        "miniature",
        "trapped",
        "gone",
        "only_piece",
        "can_put",
        "reply_listed",
        "gives_a_poke",
        "can_push",
        "relies",
        "moved_times",
        "time_of_moving",
        "in_corner",
    }
)
#: What a piece does from where it stands.
_SEEN_FROM = frozenset({"eyes", "attacks", "gives_a_poke", "defends"})
#: Claims in whose words “can” and “may” are what is claimed.
_OWN_WORDS = frozenset(
    {
        "castling_right",
        "only_piece",
        "can_push",
        "in_corner",
        "can_put",
        "reply_listed",
        "relies",
    }
)
#: Claims whose own words may sound like another time: “is left hanging”, “can be taken for free”.
_OWN_MOOD = frozenset({"unguarded", "hanging", "trapped"})
#: What a closing word looks back on, as it was at some moment of the game.
_OF_A_MOMENT = frozenset(
    {"mate_in", "mate", "threatens_mate", "check", "double_check", "discovered_check", "only_move"}
    | {"so_many", "only_one", "attacks_so_many", "does_nothing", "holds_file", "can_put", "reply_listed"}
)
#: Claims whose plainer words stand for some that would set a mood of their own: “can be taken for nothing”.
_REWORDED = frozenset({"threatens_mate", "mate_in", "hanging", "unguarded", "nobody_guards", "trapped"})
#: What is said of single pieces, and in a closing word told in the past is said of an earlier moment.
_OF_PIECES = frozenset({Topic.ATTACK, Topic.PIN, Topic.FORK, Topic.HANGING, Topic.TRAPPED})
_DENIED_ITSELF = frozenset(
    {
        "no_choice",
        "no_check_given",
        "does_nothing",
        "must_take",
        "must_move",
        "must_block",
        "material_level",
        "bishop_pair",
        "holds",
        "on_board",
        "versus",
        "gone",
        "empty_file",
        "count_open_files",
        "share",
        "nobody_guards",
        "nobody_attacks",
        "in_corner",
        "mated_next",
        "sole",
        "none_of",
        "one_of_squares",
        "listed_guards",
        "listed_attackers",
    }
) | frozenset({"no_check", "unguarded", "trapped", "castling_right", "queens_off", "guarded", "only_move", "able"})


def statements(scene: Scene, *, deep: bool = False, cancelled: Callable[[], bool] = never_cancelled) -> list[Finding]:
    """Every statement of the line that was found, judged. deep: with searches that take up to a few seconds.

    Raises WorkCancelledError in the middle of a search that nobody wants any more.
    """
    # A greeting comes before a game that is told from the start, but beside a position that is set up.
    kinds = _OF_THE_GAME if scene.talk.part == "greeting" and scene.talk.first is not None else frozenset(JUDGES)
    found: list[Finding] = []
    heard: set[int] = set()
    for sentence in (*scene.sentences, *carried_on(scene), *without_asides(scene)):
        for words, findings in _claimed(scene, sentence, set(), kinds, deep, cancelled):
            if any(finding.verdict is not Verdict.UNDECIDED for finding in findings):
                heard |= words
            found += findings
    # What was not heard as it was said may be heard in plainer words.
    for sentence in in_plain_words(scene):
        for _, findings in _claimed(scene, sentence, set(heard), kinds, deep, cancelled):
            found += findings
    return found


def _claimed(
    scene: Scene,
    sentence: Sentence,
    taken: set[int],
    kinds: frozenset[str],
    deep: bool,
    cancelled: Callable[[], bool],
) -> Iterator[tuple[set[int], list[Finding]]]:
    """The claims of one sentence, the more specific pattern first and none over words that are taken.

    Of each its words that name nothing, and how it is judged.
    """
    for kind, pattern in scene.words.patterns:
        if kind not in kinds:
            continue
        at, code = 0, sentence.code
        while (match := pattern.search(code, at)) is not None:
            at = max(match.end(), match.start() + 1)
            if sentence.seam >= 0 and not match.start() < sentence.seam < match.end():
                continue
            start = _first(scene, sentence, match.start())
            end = _end(scene, sentence.token_at(max(match.start(), match.end() - 1)))
            words = {n for n in range(start, end) if not any(m.start <= n < m.end for m in scene.mentions)}
            # “Two pawns for the bishop, eight pawns against seven”: where this is none, the next may begin within it.
            within = code.find(" ", match.start(), at) + 1 if kind in _IN_LISTS else 0
            if words & taken or start >= end:
                at = within or at
                continue
            claim = Claim(scene, sentence, kind, match, start, end, deep, cancelled)
            judgements = JUDGES[kind](claim)
            if judgements or kind not in _GIVES_WAY:
                taken |= words
                yield words, [_finding(claim, judgement) for judgement in judgements]
            else:
                at = within or at


def _first(scene: Scene, sentence: Sentence, place: int) -> int:
    """The word at a place of the code; of the verb in “the rook's hitting it”, the word behind the name."""
    at, token = max((one for one in sentence.places if one[0] <= place), default=(0, sentence.start))
    named = next((m for m in scene.mentions if m.start == token), None)
    verb = named is not None and sentence.code[at:place] == f"§{named.what}{named.number} "
    return named.end if named is not None and verb and not sentence.plain else token


def _end(scene: Scene, token: int) -> int:
    return next((m.end for m in scene.mentions if m.start <= token < m.end), token + 1)


def _finding(claim: Claim, judgement: Judgement) -> Finding:
    scene = claim.scene
    verdict, why = judgement.verdict, judgement.why
    trigger = _trigger(claim)
    mood = scene.mood(trigger)
    if claim.kind in _DENIED_ITSELF or any(claim.has(group) for group in ("neither", "none", "uneven")):
        mood &= ~Mood.NEGATIVE
    if claim.kind == "attacked" and claims_attacked.done_by_none(claim):
        mood &= ~Mood.NEGATIVE
    if claim.kind in _SEEN_FROM and scene.words.hint("past_verb", scene.tokens[trigger].text):
        # “What did that pawn do? It covered g5.”
        mood |= Mood.PAST
    if claim.kind in _OF_NOW and not scene.words.hint("was_before", _clause_code(claim)):
        mood &= ~Mood.PAST
    if claim.kind in _OF_THE_END:
        mood &= ~Mood.PAST
        if claim.said("lost").startswith("stop"):
            mood &= ~Mood.NEGATIVE
    if claim.kind in _ANY_MOOD:
        own_words = claim.kind in claims_able.JUDGES or (
            claim.kind in _OWN_WORDS and (claim.hinted("wish_before") or not claim.on_condition())
        )
        mood &= ~(Mood.HYPOTHETICAL | Mood.PAST) if own_words else ~Mood.PAST
    here = scene.words.hint("from_where_before", claim.before()) and not scene.words.hint("could", claim.before())
    if claim.kind in _SEEN_FROM and here and not claim.on_condition():
        # “From there it can look at g7” is said of the square on which it stands.
        mood &= ~Mood.HYPOTHETICAL
    if claim.kind == "threatens_mate" and not claim.on_condition() and not _supposed_before(claim):
        # The words of the threat are no wish: “White threatens to mate on g7”.
        mood &= ~Mood.HYPOTHETICAL
    if claim.kind in _REWORDED and claim.sentence.plain and not _supposed_before(claim):
        mood &= ~(Mood.HYPOTHETICAL | Mood.NEGATIVE)
    if claim.kind == "takes_mate" and scene.words.hint("one_more_before", claim.before()) and not claim.on_condition():
        mood &= ~Mood.HYPOTHETICAL
    if claim.kind == "mate_in" and scene.words.hint("can_before", claim.before()) and not claim.on_condition():
        mood &= ~Mood.HYPOTHETICAL
    if (
        claim.kind == "threatens_mate"
        and not claim.on_condition()
        and scene.words.hint("threat_is", claim.match.group())
    ):
        # “The threat is mate on h7” is no wish.
        mood &= ~Mood.HYPOTHETICAL
    if claim.kind == "winning" and judgement.exact and not claim.on_condition():
        # “White will win” says it of now where the ending is known.
        mood &= ~Mood.HYPOTHETICAL
    if claim.kind == "mate" and scene.words.hint("threat_before", claim.before()):
        mood |= Mood.HYPOTHETICAL
    if claim.kind == "mate" and claim.hinted("threatened_mate_before") and not claim.on_condition():
        # “He threatens queen to c4, which would be mate.”
        mood &= ~Mood.HYPOTHETICAL
    if claim.kind in _OWN_MOOD and not claim.on_condition() and scene.words.hint("own_mood", claim.match.group()):
        mood &= Mood.NEGATIVE | Mood.QUESTION
    if claim.kind == "turn" and not scene.words.hint("asks_before", " ".join(_words_before(claim))):
        # “White to play: what would you do?”
        mood &= ~Mood.QUESTION
    if claim.has("never") and not claim.on_condition():
        mood = Mood.PLAIN
    if scene.words.hint("on_condition_after", claim.after()):
        # “The pawn hangs if the king leaves it.”
        mood |= Mood.HYPOTHETICAL
    if mood & Mood.PAST and (scene.words.hint("no_longer", claim.match.group()) or claim.hinted("no_longer_after")):
        # “Is no longer pinned” is said of now.
        mood &= ~Mood.PAST
    if scene.talk.part == "closing" and scene.words.hint("in_the_end", _clause_code(claim)):
        mood &= ~Mood.PAST
    if mood == Mood.PAST and verdict is Verdict.CONTRADICTED and _told_of_here(claim):
        # In a talk that is told in the past, “was a pawn up” is said of the board as it is shown, or just before.
        again = JUDGES[claim.kind](replace(claim, earlier=True))
        if again and all(one.verdict is Verdict.CONTRADICTED for one in again):
            mood = Mood.PLAIN
    if mood & Mood.NEGATIVE:
        if verdict is Verdict.CONFIRMED and judgement.exact and mood is Mood.NEGATIVE and _denies(claim, trigger):
            verdict = Verdict.CONTRADICTED
        elif verdict is Verdict.CONTRADICTED and _denies(claim, trigger) and mood is Mood.NEGATIVE:
            verdict = Verdict.CONFIRMED
        else:
            verdict, why = Verdict.UNDECIDED, f"It is denied, or said of something else. {why}"
    elif mood and verdict is Verdict.CONTRADICTED:
        verdict, why = Verdict.UNDECIDED, f"It is spoken of, not said of this position. {why}"
    if verdict is Verdict.CONTRADICTED and (reason := doubt(claim, judgement.topic)):
        verdict, why = Verdict.UNDECIDED, f"{reason} {why}"
    looks_back = claim.kind in _OF_A_MOMENT or (judgement.topic in _OF_PIECES and _told_as_past(claim))
    if scene.talk.part == "closing" and looks_back and verdict is Verdict.CONTRADICTED:
        verdict, why = Verdict.UNDECIDED, f"It may be said of an earlier moment. {why}"
    first, behind = judgement.reach or (claim.start, claim.last())
    start, end = scene.span(min(first, claim.start), max(behind, claim.last()))
    do = "" if verdict is not Verdict.CONTRADICTED else _advice(judgement)
    return Finding(
        claim.quote(),
        judgement.topic,
        verdict,
        judgement.claimed,
        why,
        do,
        scene.key,
        start,
        end,
        judgement.squares,
        judgement.line,
        judgement.fix,
    )


def _supposed_before(claim: Claim) -> bool:
    """Is anything before the claim in its clause said to be no more than supposed?"""
    start, _ = claim.scene.clause(claim.start)
    return any(claim.scene.mood(at) & Mood.HYPOTHETICAL for at in range(start, claim.start))


def _told_as_past(claim: Claim) -> bool:
    """Is its clause told in the past, and not of the end of the game: “it turned on one loose rook”?"""
    hint, words = claim.scene.words.hint, _clause_code(claim)
    return not hint("in_the_end", words) and any(hint("past_verb", word) for word in words.split())


def _told_of_here(claim: Claim) -> bool:
    """Is what is told in the past said of the board as it is shown, or just before, and not of long ago?"""
    return not claim.scene.words.hint("long_ago", _clause_code(claim)) and claim.scene.talk.part != "closing"


def _clause_code(claim: Claim) -> str:
    """The words of the clause, and of the claim where it runs over several."""
    start, end = claim.scene.clause(claim.start)
    return " ".join(token.text for token in claim.scene.tokens[start : max(end, claim.end)])


def _words_before(claim: Claim) -> list[str]:
    return [token.text for token in claim.scene.tokens[claim.sentence.start : claim.start]]


def _trigger(claim: Claim) -> int:
    """The word that makes the claim: the first of the pattern that names nothing."""
    named = {at for m in claim.scene.mentions for at in range(m.start, m.end)}
    return next((at for at in range(claim.start, claim.end) if at not in named), claim.start)


def _denies(claim: Claim, trigger: int) -> bool:
    """Does a word of denial stand right before the claim, so that it can mean nothing else?"""
    negatives = claim.scene.words.moods.get("negative", frozenset())
    words = [token.text for token in claim.scene.tokens]
    near = range(max(claim.sentence.start, trigger - 2), claim.end)
    if any((words[at],) in negatives or tuple(words[at : at + 2]) in negatives for at in near):
        return True
    # “does not have a passed pawn”
    further = trigger - 3
    between = " ".join(words[further + 1 : trigger])
    return (
        further >= claim.sentence.start and (words[further],) in negatives and claim.scene.words.hint("have_a", between)
    )


def _advice(judgement: Judgement) -> str:
    if judgement.fix is not None:
        return f"Say “{judgement.fix.text}”."
    if judgement.topic in (Topic.CHECK, Topic.MATE):
        return "Leave it out, or play the move that it is said of."
    return "Say what is on the board, or leave it out."
