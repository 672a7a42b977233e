"""Statements that leave out what the clause before has said: “…, and so is the pawn on e5”, “…, White three”."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import replace

from studyboard.reading.mentions import Mention, Named
from studyboard.reading.scene import Scene, Sentence

_SO_IS = re.compile(
    r"(?<!\S)(?:so|as) (is|are|was|were) ((?:(?:all|both) )?(?:§n\d+ )?§p\d+)(?= ,| too|$| and| as well)"
)
_SO_HAS = re.compile(r"(?<!\S)(?:so|as) (?:does|has|did|had|do|have) (§c\d+)(?= ,| too|$| and| as well)")
_HAS_IT = re.compile(
    r"§c\d+(?: still| now| only| just| also)* ((?:has|had|have|owns|keeps) [^,]+?)(?= ,| and so| as does| as has|$)"
)
_SAME_GOES = re.compile(r"the same (?:goes for|is true of|is true for|can be said of|applies to|holds for) (§p\d+)")
_PREDICATE = re.compile(r"(§p\d+) (?:is|are|was|were|stand|stands|remain|remains) ([^,]+?)(?= ,| and |$)")
_HOLDS = r"(?:has|have|had|with|counts|owns|keeps|retains|possesses)"
_LISTED = re.compile(
    rf"§c\d+(?: still| now| only| just)* ({_HOLDS}) .*? ,"
    r"(?: and| but| while| whereas)? (§c\d+)(?: has)?(?: only| just| still)* "
    r"((?:(?:a|both|all) )*(?:§n\d+ )?§p\d+(?:(?: ,| and| , and) (?:§n\d+ )?§p\d+)*)(?= ,| left|$)"
)
_PASSIVE = re.compile(r"(§[ps]\d+)(?: ,)? (?:which |that )?(?:is|are|was|were|'s)\b")
_BY = re.compile(r"\bby (?:§[ps]\d+(?: ,)?(?: and)?(?: by)? ?)+")
_NEXT_SIDE = r"(?: and| but| while| whereas) §c\d+"
_HAS = re.compile(
    rf"(§c\d+)(?: still| now| only| just)* ({_HOLDS})(?: still| now| only| just)* (§n\d+) "
    rf"([a-z§][^,]*?)(?= ,|{_NEXT_SIDE}|$)"
)
_BISHOP_SHADE = re.compile(r"§p\d+ [^,]*\b(?:light|dark|white|black|colours?|colors?|squares)\b")
_SHADE_TOO = re.compile(
    r"(?:,|and|while|but) (§c\d+)(?: is| runs| lives| moves| has| a| one)*(?: on)?(?: the)? "
    r"((?:light|dark|white|black)(?: coloured| squared)?)(?= ones?| squares| ,|$)"
)
_MARK = re.compile(r"§p(\d+)")
_GAP = re.compile(
    r"(?:(?<=, )|(?<=and )|(?<=but )|(?<=while )|(?<=whereas ))(§[cp]\d+)"
    r" (?:has |had |only |just |but |also )*(§n\d+)(?= ?,| as well| too| also| (?:and|but) |$)"
)
_OF_THEM = re.compile(r"(§n\d+) of (?:§p\d+|which|those)(?: is| are| being)? (§c\d+)(?= ,|$| and)")
_COUNTED = re.compile(r"§n\d+ (§p\d+)")
_SOME_OF_THEM = re.compile(
    r"(§c\d+) (?:has|have|had|owns|keeps|got)(?: still| only| just)* (§n\d+) of (?:§p\d+|those)(?= ,|$| and)"
)
_OF_WHICH = re.compile(
    r"(§n\d+|none|all|half) of (?:§p\d+|which|those) ((?:is|are|was|were|stand|stands|sit) [^,]+)(?= ,|$)"
)
_ON_IT = re.compile(r"(?<= on )§p(\d+)")
_NEITHER = re.compile(
    r"(?<!\S)(?:neither|nor) (?:has|does|had|did|have|do|is|are|was|were) (§[cp]\d+)(?= ,|$| either| and)"
)
_DENIED = re.compile(
    r"§[cp]\d+ ((?:(?:has|have|had|is|are|was|were) (?:no|not|(?P<thing>§p\d+))"
    r"|hasn't|haven't|hadn't|doesn't|does not|isn't|aren't|wasn't)(?: [^,]+?)?)(?= ,| and (?:neither|nor)|$)"
)


def carried_on(scene: Scene) -> Iterator[Sentence]:
    """Sentences made whole with the words that they leave out, their places those of the words that are there."""
    for number, sentence in enumerate(scene.sentences):
        code = sentence.code
        for found, said in _with_last(code, _SO_IS, _PREDICATE):
            yield _whole(sentence, found.start(2), f"{found[2]} {found[1]} {said[2]}")
        for found, said in _with_last(code, _SO_HAS, _HAS_IT):
            yield _whole(sentence, found.start(1), f"{found[1]} {said[1]}")
        for found, said in _with_last(code, _NEITHER, _DENIED, lambda one: _is_denied(scene, one)):
            yield _whole(sentence, found.start(1), f"{found[1]} {said[1]}")
        for found, said in _with_last(code, _OF_THEM, _COUNTED):
            # “Three knights are left, two of them Black's.”
            yield _whole(sentence, found.start(1), f"{found[2]} has {found[1]} {said[1]}")
        yield from _of_those(scene, sentence)
        yield from _on_that_file(scene, sentence)
        yield from _shades(sentence)
        yield from _done_too(scene, sentence)
        yield from _its_sole(scene, number)
        yield from _answered(scene, number)
        yield from _passives(scene, sentence)
        yield from _states(scene, sentence)
        same = _SAME_GOES.search(code)
        if same is not None:
            before = scene.sentences[number - 1].code if number else ""
            told = list(_PREDICATE.finditer(code, 0, same.start())) or list(_PREDICATE.finditer(before))
            if told:
                yield _whole(sentence, same.start(1), f"{same[1]} is {told[-1][2]}")
        listed = _LISTED.search(code)
        if listed is not None and " has " not in code[listed.start(2) : listed.end()]:
            head = f"{listed[2]} {listed[1]} "
            shift = listed.start(3) - len(head)
            places = tuple(
                (at - shift, token) for at, token in sentence.places if listed.start(3) <= at < listed.end(3)
            )
            first = (0, sentence.token_at(listed.start(2)))
            yield Sentence(sentence.start, sentence.end, head + listed[3], (first, *places))
        yield from _numbers(scene, sentence)


def _with_last(
    code: str,
    shortened: re.Pattern[str],
    full: re.Pattern[str],
    fits: Callable[[re.Match[str]], bool] = lambda _: True,
) -> Iterator[tuple[re.Match[str], re.Match[str]]]:
    """What is said shortly, each with the last clause before it that says all of it and fits."""
    for found in shortened.finditer(code):
        said = [one for one in full.finditer(code, 0, found.start()) if fits(one)]
        if said:
            yield found, said[-1]


def _of_those(scene: Scene, sentence: Sentence) -> Iterator[Sentence]:
    """“Eight pawns are left, six of which are on the kingside”, “Black has no rooks, White has two of them”."""
    code = sentence.code
    for pattern in (_SOME_OF_THEM, _OF_WHICH):
        for found in pattern.finditer(code):
            before = [scene.mentions[int(mark[1])] for mark in _MARK.finditer(code, 0, found.start())]
            those = next((m for m in reversed(before) if m.plural and not m.pronoun), None)
            if those is None:
                continue
            mark = f"§p{those.number}"
            has = pattern is _SOME_OF_THEM
            whole = f"{found[1]} has {found[2]} {mark}" if has else f"of {mark} , {found[1]} {found[2]}"
            yield _whole(sentence, found.start(1), whole)


def _on_that_file(scene: Scene, sentence: Sentence) -> Iterator[Sentence]:
    """“The d-file is open, and a rook stands on it”: the file in place of the pronoun."""
    code = sentence.code
    for found in _ON_IT.finditer(code):
        it = scene.mentions[int(found[1])]
        before = [m for m in scene.mentions if sentence.start <= m.start < it.start]
        file = next((m for m in reversed(before) if m.what in (Named.FILE, Named.SQUARE)), None)
        if it.pronoun != "it" or file is None or file.what is not Named.FILE:
            continue
        comma = code.rfind(" , ", 0, found.start())
        begins = 0 if comma < 0 else comma + 3
        mark = f"§f{file.number}"
        shift = len(mark) - len(found.group())
        places = tuple(
            (at + (shift if at > found.start() else 0) - begins, token) for at, token in sentence.places if at >= begins
        )
        rest = code[begins : found.start()] + mark + code[found.end() :]
        yield Sentence(sentence.start, sentence.end, rest, places)


def _is_denied(scene: Scene, said: re.Match[str]) -> bool:
    """Does a clause deny what it says, if only by the “no” before the thing that is had?"""
    thing = said["thing"]
    return thing is None or scene.tokens[scene.mentions[int(thing[2:])].start].text == "no"


def _numbers(scene: Scene, sentence: Sentence) -> Iterator[Sentence]:
    """“White has four pawns and Black three”: the second half made whole, with the wing that is named before both."""
    code = sentence.code
    has = _HAS.search(code)
    gap = None if has is None else _GAP.search(code, has.end())
    if has is None or gap is None or has[1] == gap[1]:
        return
    before = code[: has.start()].rstrip()
    wing = f"{before} " if scene.words.hint("wing_before", before) else ""
    places = [
        (len(wing), sentence.token_at(gap.start(1))),
        (len(wing) + len(gap[1]) + 1, sentence.token_at(gap.start(2))),
    ]
    if wing:
        places.insert(0, (0, sentence.start))
    yield Sentence(sentence.start, sentence.end, f"{wing}{gap[1]} {has[2]} {gap[2]} {has[4]}", tuple(places))


def _its_sole(scene: Scene, number: int) -> Iterator[Sentence]:
    """“The knight goes to e4. Its only guard is the queen”: of the one piece that is named before it."""
    sentence = scene.sentences[number]
    for found in scene.words.hints["its_sole"].finditer(sentence.code):
        doer = "doer" if found["doer"] else "doing"
        noun = found["noun"] or _role_of_it(scene, scene.mentions[int(found["role"][2:])])
        before = sentence.code[: found.start()]
        codes = [before, scene.sentences[number - 1].code] if number else [before]
        named = next((marks for code in codes if (marks := set(_MARK.findall(code)))), set())
        if len(named) == 1 and noun:
            does = "guards" if scene.words.hint("counts_guards", noun) else "attacks"
            code = f"only {found[doer]} {does} §p{named.pop()}"
            yield replace(_whole(sentence, found.start(doer), code), plain=True)


def _role_of_it(scene: Scene, mention: Mention) -> str:
    """The noun of “its only attacker”; empty for any other name."""
    words = [token.text for token in scene.tokens[mention.start : mention.end]]
    owned = words[0] in scene.words.names.owning and scene.words.hint("sole_before", " ".join(words[1:-1]))
    return words[-1] if owned and words[-1] in scene.words.names.roles else ""


def _done_too(scene: Scene, sentence: Sentence) -> Iterator[Sentence]:
    """“The rook attacks the pawn, and so does the queen”, “…, and the queen is the second attacker”."""
    for found in scene.words.hints["done_too"].finditer(sentence.code):
        doer = next(name for name in ("doer", "noun_of", "beside") if found[name])
        yield replace(_whole(sentence, found.start(doer), f"{found[doer]} {found['did']}"), plain=True)


def _answered(scene: Scene, number: int) -> Iterator[Sentence]:
    """“What guards the pawn? The king and the rook.”: the question with its answer in it."""
    if number + 1 >= len(scene.sentences):
        return
    answer = scene.sentences[number + 1]
    asked = scene.words.hints["asks_who"].search(scene.sentences[number].code)
    given = scene.words.hints["answers_who"].search(answer.code)
    if asked is None or given is None:
        return
    for doer in _MARK.finditer(given["doers"]):
        place = given.start("doers") + doer.start()
        yield replace(_whole(answer, place, f"{doer[0]} {asked['did']}"), plain=True)


def _shades(sentence: Sentence) -> Iterator[Sentence]:
    """“White's bishop lives on light squares, Black's on the dark ones”: the second half made whole."""
    for found in _SHADE_TOO.finditer(sentence.code):
        first = _BISHOP_SHADE.search(sentence.code, 0, found.start())
        if first is not None:
            yield Sentence(
                sentence.start,
                sentence.end,
                f"{found[1]} shade {found[2]}",
                ((0, sentence.token_at(found.start(1))), (len(found[1]) + 1, sentence.token_at(found.start(2)))),
            )


def _states(scene: Scene, sentence: Sentence) -> Iterator[Sentence]:
    """“The knight goes to e4, and it's protected”: what is said of the one piece that the sentence names before."""
    code = sentence.code
    for found in scene.words.hints["its_state"].finditer(code):
        named = [scene.mentions[int(mark)] for mark in _MARK.findall(code, 0, found.start())]
        if len(named) != 1 or named[0].plural or named[0].pronoun or not (named[0].definite or named[0].moves_to):
            continue
        head = f"§p{named[0].number} is "
        at = found.end()
        places = [(0, sentence.token_at(found.start()))]
        places += [(place - at + len(head), token) for place, token in sentence.places if place >= at]
        yield Sentence(sentence.start, sentence.end, head + code[at:], tuple(places))


def _passives(scene: Scene, sentence: Sentence) -> Iterator[Sentence]:
    """“The knight is attacked by the bishop, defended by the queen”: what the second participle says of the knight."""
    code = sentence.code
    for found in scene.words.hints["passive_again"].finditer(code):
        first = _PASSIVE.match(code) or next(_PASSIVE.finditer(code, 0, found.start()), None)
        if first is None or first.end() > found.start():
            continue
        if "§p" in _BY.sub("", code[first.end() : found.start()]):
            # Another piece is named between, of which it may be said.
            continue
        head = f"{first[1]} is "
        at = found.start("rest")
        places = [(0, sentence.token_at(first.start(1)))]
        places += [(place - at + len(head), token) for place, token in sentence.places if place >= at]
        yield Sentence(sentence.start, sentence.end, head + code[at:], tuple(places))


def _whole(sentence: Sentence, place: int, code: str) -> Sentence:
    """A sentence whose words all belong to the thing named at *place*, so that a finding marks that."""
    return Sentence(sentence.start, sentence.end, code, ((0, sentence.token_at(place)),))
