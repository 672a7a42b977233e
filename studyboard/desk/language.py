"""The language of the desk: chosen by the user, else that of the system where there is a translation."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QLibraryInfo, QLocale, QSettings, QTranslator

from studyboard.resources_path import resource
from studyboard.translation import translate_by

#: The languages that there are, each under its own name.
LANGUAGES: tuple[tuple[str, str], ...] = (("en", "English"), ("de", "Deutsch"))
#: What the settings say where the language is that of the system.
SYSTEM = "system"

_KEY = "look/language"


def chosen_language(settings: QSettings) -> str:
    """What the user chose: the code of a language, or SYSTEM."""
    chosen = str(settings.value(_KEY, SYSTEM))
    return chosen if chosen in dict(LANGUAGES) else SYSTEM


def choose_language(settings: QSettings, language: str) -> None:
    """Keep the choice; the desk speaks it when it is started next."""
    settings.setValue(_KEY, language)


def language_in_use(settings: QSettings) -> str:
    """The code of the language that the desk speaks."""
    chosen = chosen_language(settings)
    if chosen != SYSTEM:
        return chosen
    languages = dict(LANGUAGES)
    wanted = (name.split("-")[0] for name in QLocale.system().uiLanguages())
    return next((name for name in wanted if name in languages), "en")


def speak(application: QCoreApplication, language: str) -> None:
    """Let the desk, and the dialogs that Qt itself makes, speak this language from now on."""
    _write_by(language)
    if language == "en":
        translate_by(str)
        return
    for path, name in (
        (str(resource("translations")), language),
        (QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath), f"qtbase_{language}"),
    ):
        translator = QTranslator(application)
        if translator.load(name, path):
            application.installTranslator(translator)
    locale = QLocale(language)
    translate_by(lambda text: QCoreApplication.translate("", text), locale.groupSeparator(), locale.decimalPoint())


def _write_by(language: str) -> None:
    """Dates and numbers follow the language; the system says how, where it has a locale of that language."""
    system = QLocale.system()
    if QLocale(language).language() != system.language() and not (language == "en" and system.name() == "C"):
        QLocale.setDefault(QLocale(language))
