"""How a word is pronounced that the dictionary of the acoustic model does not have: by rule."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import lru_cache

#: Phones are those of the CMU Pronouncing Dictionary without stress. Rules are tried from the top; the first that fits
#: the letters from here on is taken. "^" is the start of the word, "$" its end. From the common spellings of English,
#: with those of names from other languages that English speakers know; written for this program.
_RULES = """
^kn N;^gn N;^ps S;^wr R;^x Z;^mc M AH K;^tch CH
tsch CH;sch SH;tch CH;ght T;dge JH;cz CH;sz SH;zh ZH;ph F;sh SH;th TH;ch CH;ck K;qu K W;wh W;ng$ NG;ngs$ NG Z;nk NG K
tion SH AH N;sion ZH AH N;ssion SH AH N;cious SH AH S;tious SH AH S;cial SH AH L;tial SH AH L;ture CH ER;sure ZH ER
augh AO;ough AO;eigh EY;igh AY
eau OW;eer IY R;ear IH R;air EH R;are$ EH R;ire$ AY R;ore$ AO R;ure$ Y UH R;oor AO R;our AW ER
ar$ AA R;er$ ER;ir ER;or$ AO R;ur ER;ar AA R;er ER;or AO R
ee IY;ea IY;ai EY;ay EY;ei AY;ey$ IY;ey EY;ie$ IY;ie IY;oa OW;oe OW;oo UW;ou AW;ow$ OW;ow AW;oi OY;oy OY;ui UW;ue UW
au AO;aw AO;ew Y UW;eu Y UW;ia IY AH;io IY OW;iu IY UH;ii IY;ae AY;aa AA;uo UW OW;ua W AA;yo Y OW;ya Y AA;ye Y EH
le$ AH L;les$ AH L Z;ism IH Z AH M
c(?=[eiy]) S;g(?=[eiy]) JH;gg G;cc K;bb B;dd D;ff F;ll L;mm M;nn N;pp P;rr R;ss S;tt T;zz Z;kk K;vv V
mb$ M;ed$ D;es$ Z;e$
a(?=[^aeiouyw]e$) EY;e(?=[^aeiouyw]e$) IY;i(?=[^aeiouyw]e$) AY;o(?=[^aeiouyw]e$) OW;u(?=[^aeiouyw]e$) UW
a$ AH;i$ IY;o$ OW;u$ UW;y$ IY;^y Y;y(?=[aeiou]) Y
a(?=[^aeiouy][aeiouy]) AA;o(?=[^aeiouy][aeiouy]) OW;u(?=[^aeiouy][aeiouy]) UW
a AE;e EH;i IH;o AA;u AH;y IH
b B;c K;d D;f F;g G;h HH;j JH;k K;l L;m M;n N;p P;q K;r R;s S;t T;v V;w W;x K S;z Z
"""
_LETTERS = {
    "a": "EY", "b": "B IY", "c": "S IY", "d": "D IY", "e": "IY", "f": "EH F", "g": "JH IY", "h": "EY CH", "i": "AY",
    "j": "JH EY", "k": "K EY", "l": "EH L", "m": "EH M", "n": "EH N", "o": "OW", "p": "P IY", "q": "K Y UW",
    "r": "AA R", "s": "EH S", "t": "T IY", "u": "Y UW", "v": "V IY", "w": "D AH B AH L Y UW", "x": "EH K S",
    "y": "W AY", "z": "Z IY",
}  # fmt: skip
_HISSES = frozenset({"S", "Z", "SH", "ZH", "CH", "JH"})
_VOICELESS = frozenset({"P", "T", "K", "F", "TH"})
_VOWELS = frozenset("aeiouy")


def _compiled() -> tuple[tuple[re.Pattern[str], tuple[str, ...]], ...]:
    rules = []
    for rule in _RULES.replace("\n", ";").split(";"):
        if rule:
            letters, *phones = rule.split()
            rules.append((re.compile(letters.removeprefix("^")), tuple(phones), letters.startswith("^")))
    # A rule for the start of a word is only tried there: `match` with a place takes "^" for that place.
    return tuple((pattern if not first else re.compile(rf"(?<![a-z]){pattern.pattern}"), phones)
                 for pattern, phones, first in rules)  # fmt: skip


_PATTERNS = _compiled()


def pronunciation(word: str, known: Callable[[str], str | None]) -> str:
    """The phones of a word in letters from a to z, parted by blanks.

    known: what the dictionary says of a word, None where it does not have it. What it has is taken as it is; a word
    with an ending, or one that is two others, is made from those; any other is read by the rules.
    """
    plain = word.strip("'")
    found = known(word) or known(plain)
    if found is not None:
        return found
    if len(plain) == 1 or not _VOWELS & set(plain):
        return " ".join(_LETTERS[letter] for letter in plain if letter in _LETTERS) or "AH"
    return _with_ending(plain, known) or _of_two(plain, known) or by_rule(plain)


@lru_cache(maxsize=4096)
def by_rule(word: str) -> str:
    """The phones of a word as its letters are read."""
    letters = word.replace("'", "")
    phones: list[str] = []
    at = 0
    while at < len(letters):
        for pattern, sounds in _PATTERNS:
            match = pattern.match(letters, at)
            if match is not None and match.end() > at:
                phones += sounds
                at = match.end()
                break
        else:
            at += 1
    return " ".join(phones) or "AH"


def _with_ending(word: str, known: Callable[[str], str | None]) -> str | None:
    if word.endswith("'s"):
        return _plural(pronunciation(word[:-2], known))
    for ending, added in (("ing", "IH NG"), ("ly", "L IY"), ("er", "ER"), ("less", "L AH S"), ("ness", "N AH S")):
        if word.endswith(ending) and (stem := _stem(word[: -len(ending)], known)) is not None:
            return f"{stem} {added}"
    if word.endswith("ed") and (stem := _stem(word[:-2], known)) is not None:
        last = stem.split()[-1]
        return f"{stem} {'AH D' if last in ('T', 'D') else 'T' if last in _VOICELESS | {'S', 'SH', 'CH'} else 'D'}"
    if word.endswith("s") and (stem := known(word[:-1])) is not None:
        return _plural(stem)
    return None


def _stem(stem: str, known: Callable[[str], str | None]) -> str | None:
    """The word before an ending, also where it has lost an e or doubled its last letter."""
    if len(stem) < 2:
        return None
    found = known(stem) or known(f"{stem}e")
    if found is None and stem[-1] == stem[-2]:
        found = known(stem[:-1])
    if found is None and stem[-1] == "i":
        found = known(f"{stem[:-1]}y")
    return found or _of_two(stem, known) or _of_two(f"{stem}e", known)


def _plural(phones: str) -> str:
    last = phones.split()[-1]
    return f"{phones} {'AH Z' if last in _HISSES else 'S' if last in _VOICELESS else 'Z'}"


def _of_two(word: str, known: Callable[[str], str | None]) -> str | None:
    """Two words of the dictionary written together, as in “queenside”; the halves as even as can be."""
    places = sorted(range(3, len(word) - 2), key=lambda place: abs(place - len(word) / 2))
    for place in places:
        first, second = known(word[:place]), known(word[place:])
        if first is not None and second is not None:
            return f"{first} {second}"
    return None
