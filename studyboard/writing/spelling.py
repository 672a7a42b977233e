"""Which words of the script no dictionary has, and what may be meant instead."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache

from studyboard.model.study import Study
from studyboard.resources_path import resource
from studyboard.writing.dictionaries import Dictionary
from studyboard.writing.kept_text import config_folder, read_text, write_text
from studyboard.writing.written_words import WrittenWord, names_in, written_words

#: Tags whose values are no words that anybody says.
_NO_NAMES = frozenset({"FEN", "SetUp", "Result", "Date", "Round", "ECO", "TimeControl", "UTCDate", "UTCTime"})
#: How many suggestions are offered.
MOST = 6


class Speller:
    """Checks words against a dictionary, the words of the trade, the user's, the study's, and the names of the game.

    State: those words, and which words were asked about before, with the answer.
    """

    def __init__(self, dictionary: Dictionary, language: str) -> None:
        self._dictionary = dictionary
        self._trade = trade_words(language)
        self._own: frozenset[str] = frozenset()
        self._asked: dict[str, bool] = {}

    def learn(self, words: Iterable[str]) -> None:
        """Take these words for right from now on, and no others that were learnt before."""
        own = frozenset(_folded(word) for word in words)
        if own != self._own:
            self._own = own
            self._asked.clear()

    def knows(self, word: str) -> bool:
        """True where the word is right."""
        found = self._asked.get(word)
        if found is None:
            found = self._asked[word] = self._look_up(word)
        return found

    def unknown(self, text: str) -> tuple[WrittenWord, ...]:
        """The words of *text* that are not known, in its order."""
        return tuple(word for word in written_words(text) if not self.knows(word.text))

    def suggestions(self, word: str) -> tuple[str, ...]:
        """What may be meant, the likeliest first; asking takes some ten milliseconds."""
        return tuple(self._dictionary.suggest(word.replace("’", "'"))[:MOST])

    def _look_up(self, word: str) -> bool:
        plain = word.replace("’", "'")
        if self._is_own(plain) or self._dictionary.check(plain):
            return True
        stem = plain.removesuffix("'s")
        return stem != plain and (self._is_own(stem) or self._dictionary.check(stem))

    def _is_own(self, word: str) -> bool:
        folded = _folded(word)
        return folded in self._own or folded in self._trade


def known_words(study: Study, more: Iterable[str] = ()) -> frozenset[str]:
    """What the study itself says is right: names from its headers, its own words, words with a pronunciation.

    more: further names, such as those to be thanked
    """
    tags = (value for name, value in study.headers.items() if name not in _NO_NAMES)
    return names_in((*tags, *study.pronunciations, *more)) | study.words


def own_words() -> frozenset[str]:
    """The words that the user has added for all studies. Raises NotKeptError."""
    return frozenset(read_text(config_folder() / "words.txt").split())


def keep_own_words(words: Iterable[str]) -> None:
    """Replace the user's words. Raises NotKeptError with the old ones still there."""
    write_text(config_folder() / "words.txt", "".join(f"{word}\n" for word in sorted(set(words), key=str.casefold)))


@cache
def trade_words(language: str) -> frozenset[str]:
    """Words of chess and of the desk that general dictionaries lack, in this language."""
    path = resource("spelling") / f"{language.split('_')[0]}.txt"
    if not path.is_file():
        return frozenset()
    lines = path.read_text(encoding="utf-8").splitlines()
    return frozenset(_folded(word) for line in lines if not line.startswith("#") for word in line.split())


def _folded(word: str) -> str:
    return word.replace("’", "'").casefold()
