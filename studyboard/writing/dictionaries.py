"""The dictionaries of the system, opened through the enchant library."""

from __future__ import annotations

import importlib
import locale
from types import ModuleType
from typing import Protocol

from studyboard.model.errors import StudyboardError
from studyboard.translation import tr

#: What brings a dictionary of each language on Debian and Ubuntu (from memory); others are called likewise.
_PACKAGES = {
    "en_US": "hunspell-en-us",
    "en_GB": "hunspell-en-gb",
    "de_DE": "hunspell-de-de",
    "de_AT": "hunspell-de-at",
    "de_CH": "hunspell-de-ch",
}
_USUAL = {"en": "en_US", "de": "de_DE"}


class NoDictionaryError(StudyboardError):
    """Spelling cannot be checked; the sentence says what to install."""


class Dictionary(Protocol):
    """The words of one language."""

    def check(self, word: str) -> bool:
        """True where the word is spelt right."""
        ...

    def suggest(self, word: str) -> list[str]:
        """Words that may be meant, the likeliest first."""
        ...


def languages() -> tuple[str, ...]:
    """The languages that the system has dictionaries of, such as ("de_DE", "en_US"); none without the library."""
    try:
        enchant = _enchant()
    except NoDictionaryError:
        return ()
    return tuple(sorted(enchant.list_languages()))


def open_dictionary(language: str) -> Dictionary:
    """The dictionary of this language; reading it in takes some 0.1 s.

    Raises NoDictionaryError with a sentence that says what to install.
    """
    enchant = _enchant()
    if not enchant.dict_exists(language):
        package = _PACKAGES.get(language, f"hunspell-{language.lower().replace('_', '-')}")
        raise NoDictionaryError(
            tr(
                "There is no dictionary of “{language}” on this system: apt install {package}",
                language=language,
                package=package,
            )
        )
    try:
        dictionary: Dictionary = enchant.Dict(language)
    except enchant.errors.Error as reason:
        raise NoDictionaryError(
            tr("The dictionary of “{language}” cannot be read: {reason}.", language=language, reason=reason)
        ) from reason
    return dictionary


def closest(wanted: str, there: tuple[str, ...]) -> str:
    """Which of the languages that are there serves best where *wanted* is asked for; *wanted* itself where none does.

    "en" is served by the system's own kind of English, else by the usual one, else by any.
    """
    if wanted in there:
        return wanted
    short = wanted.split("_")[0]
    kinds = [language for language in there if language.split("_")[0] == short]
    own = locale.getlocale()[0] or ""
    for preferred in (own, _USUAL.get(short, "")):
        if preferred in kinds:
            return preferred
    return kinds[0] if kinds else _USUAL.get(short, wanted)


def _enchant() -> ModuleType:
    try:
        return importlib.import_module("enchant")
    except ModuleNotFoundError as reason:
        raise NoDictionaryError(tr("Spelling needs pyenchant: pip install pyenchant")) from reason
    except ImportError as reason:
        raise NoDictionaryError(tr("Spelling needs the enchant library: apt install libenchant-2-2")) from reason
