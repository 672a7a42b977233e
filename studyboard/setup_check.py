"""What is installed and what is missing, with the exact package that brings it."""

from __future__ import annotations

import ctypes
import importlib
import importlib.util
import os
import sys
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from importlib import metadata
from pathlib import Path

from studyboard.shared_libraries import debian_packages, missing_libraries, named_library, remedy
from studyboard.sound.synthesiser import find_synthesiser
from studyboard.translation import tr

_LINUX = sys.platform.startswith("linux")

#: Parts of PySide6 which load system libraries, seen from its folder: the desk's, each kind of screen's, sound's.
_DESK_FILES = ("QtCore.abi3.so", "QtGui.abi3.so", "QtWidgets.abi3.so", "QtSvg.abi3.so", "QtSvgWidgets.abi3.so")
_XCB_FILES = ("Qt/plugins/platforms/libqxcb.so",)
_WAYLAND_FILES = ("Qt/plugins/platforms/libqwayland.so", "Qt/plugins/platforms/libqwayland-generic.so")
_SOUND_FILES = ("QtMultimedia.abi3.so", "Qt/plugins/multimedia/libffmpegmediaplugin.so")

#: How many missing libraries are named in a line that people read.
_NAMED = 4


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing that the program needs.

    name: what it is
    good: whether it is there
    needed_for: what needs it
    detail: its version where it is there, else what is wrong
    remedy: what to do, empty where it is there
    essential: False where the rest of the program works without it
    libraries: the shared libraries that the system lacks
    packages: the Debian packages that bring them
    """

    name: str
    good: bool
    needed_for: str
    detail: str
    remedy: str = ""
    essential: bool = True
    libraries: tuple[str, ...] = ()
    packages: tuple[str, ...] = ()

    def sentence(self) -> str:
        """What is missing and what to do, in one line."""
        return f"{self.name}: {self.detail}. {self.remedy}"


def check_setup() -> list[Finding]:
    """Everything that the program needs, in the order of the day's work."""
    return [
        _python(),
        _package("chess", tr("the rules of the game")),
        qt(),
        screen(),
        _package("typst", tr("the study sheet")),
        _package("jinja2", tr("the page to click through, and the text beside a video")),
        cairo(),
        sound(),
        _package("numpy", tr("recording from microphones of every form"), essential=False),
        _package("soundfile", tr("takes in less room, and reading such takes"), essential=False),
        _package("av", tr("the video, and sound that was recorded elsewhere"), essential=False),
        _package("opentimelineio", tr("the edit timeline"), essential=False),
        _package("pyloudnorm", tr("loudness and true peak, heard and delivered"), essential=False),
        _package("soxr", tr("recording from microphones of another rate than 48 kHz"), essential=False),
        _package("pocketsphinx", tr("finding the words of the script in a recording"), essential=False),
        *([_package("pulsectl", tr("noticing that a microphone was unplugged"), essential=False)] if _LINUX else []),
        spelling(),
        scratch_voice(),
        _package("platformdirs", tr("remembering the studies that were open last")),
        _package("filelock", tr("keeping two windows from one file")),
        _package("rich", tr("tables and progress bars on the terminal")),
    ]


def qt() -> Finding:
    """Qt's windows, with which the desk is built."""
    return _qt("Qt", tr("the desk"), "PySide6-Essentials", ("QtWidgets", "QtSvg"), _DESK_FILES)


def sound() -> Finding:
    """Qt's sound, which records and plays takes."""
    need = tr("recording and playing takes")
    found = _qt(tr("Sound"), need, "PySide6-Addons", ("QtMultimedia",), _SOUND_FILES, essential=False)
    lacking = _lacking(_SOUND_FILES[1:]) if found.good else ()
    return _without(tr("Sound"), need, lacking, essential=False) if lacking else found


def cairo() -> Finding:
    """cairo, which turns single diagrams into pictures."""
    need = tr("stills and single diagrams as PNG")
    if importlib.util.find_spec("cairosvg") is None:
        return Finding(
            "cairo",
            False,
            need,
            tr("{package} is not installed", package="cairosvg"),
            "pip install cairosvg",
            essential=False,
        )
    try:
        importlib.import_module("cairosvg")
    except (OSError, ImportError) as reason:
        # cairocffi tries several names, so its message does not say which library it is.
        library = "libcairo.so.2" if "cairo" in str(reason) else named_library(reason) or "libcairo.so.2"
        return _without("cairo", need, [library], essential=False)
    return Finding("cairo", True, need, f"cairosvg {metadata.version('cairosvg')}", essential=False)


def spelling() -> Finding:
    """enchant and the dictionaries of the system, which find misspelt words of the script."""
    need = tr("underlining misspelt words of the script")
    if importlib.util.find_spec("enchant") is None:
        return Finding(
            tr("Spelling"),
            False,
            need,
            tr("{package} is not installed", package="pyenchant"),
            "pip install pyenchant",
            essential=False,
        )
    try:
        enchant = importlib.import_module("enchant")
    except ImportError:
        # pyenchant searches for the library by itself and only says that it found none.
        return _without(tr("Spelling"), need, ["libenchant-2.so.2"], essential=False)
    found = sorted(enchant.list_languages())
    if not found:
        return Finding(
            tr("Spelling"),
            False,
            need,
            tr("this system has no dictionaries"),
            "apt install hunspell-en-us",
            essential=False,
            packages=("hunspell-en-us",),
        )
    return Finding(
        tr("Spelling"),
        True,
        need,
        tr("pyenchant {version} with {languages}", version=_version("pyenchant"), languages=", ".join(found)),
        essential=False,
    )


def scratch_voice() -> Finding:
    """A speech synthesiser of the system, which speaks a plan before anybody has recorded it."""
    need = tr("hearing the plan before it is recorded")
    found = find_synthesiser()
    if found is not None:
        return Finding(tr("Scratch voice"), True, need, found.name, essential=False)
    return Finding(
        tr("Scratch voice"),
        False,
        need,
        tr("no speech synthesiser was found"),
        "apt install espeak-ng",
        essential=False,
        packages=("espeak-ng",),
    )


def screen() -> Finding:
    """A screen on which Qt can open windows."""
    need = tr("the desk; everything on the command line works without it")
    windows = qt()
    plugins = () if draws_into_memory() else _WAYLAND_FILES if _wayland() else _XCB_FILES
    lacking = _lacking(plugins if windows.good else (*_DESK_FILES, *plugins))
    nowhere = _nowhere_to_show()
    if lacking:
        what = tr("{problem}, and {lack}", problem=nowhere[0], lack=_lack(lacking)) if nowhere else ""
        return _without(tr("Screen"), need, lacking, what, essential=False)
    if not windows.good:
        return Finding(tr("Screen"), False, need, windows.detail, windows.remedy, essential=False)
    problem = nowhere or _x_server_problem()
    if problem is not None:
        return Finding(tr("Screen"), False, need, *problem, essential=False)
    return Finding(tr("Screen"), True, need, _screen_name(), essential=False)


def all_packages(findings: Iterable[Finding]) -> tuple[str, ...]:
    """All Debian packages that these findings ask for, each once."""
    return tuple(sorted({package for finding in findings for package in finding.packages}))


def draws_into_memory() -> bool:
    """True where Qt was told to draw into memory, as tests and pictures of the desk do."""
    return _platform() in ("offscreen", "minimal", "vnc")


def _platform() -> str:
    return os.environ.get("QT_QPA_PLATFORM", "").partition(":")[0].partition(";")[0]


def _wayland() -> bool:
    platform = _platform()
    return platform.startswith("wayland") or (not platform and bool(os.environ.get("WAYLAND_DISPLAY")))


def _x11() -> bool:
    return _LINUX and _platform() in ("", "xcb") and not _wayland()


def _screen_name() -> str:
    for variable in ("QT_QPA_PLATFORM", "WAYLAND_DISPLAY", "DISPLAY"):
        if os.environ.get(variable):
            return f"{variable}={os.environ[variable]}"
    return sys.platform


def _nowhere_to_show() -> tuple[str, str] | None:
    """What is wrong where nobody could see a window, and what to do."""
    if draws_into_memory():
        return tr("QT_QPA_PLATFORM={platform} draws into memory only", platform=_platform()), tr(
            "Unset QT_QPA_PLATFORM to see the desk."
        )
    if _x11() and not os.environ.get("DISPLAY"):
        return (
            tr("neither DISPLAY nor WAYLAND_DISPLAY is set"),
            tr("Start it from a desktop session, or on a virtual screen: xvfb-run studyboard (apt install xvfb xauth)"),
        )
    return None


def _x_server_problem() -> tuple[str, str] | None:
    """Ask the X server for a connection: Qt would end the whole program where there is none."""
    if not _x11():
        return None
    xcb = ctypes.CDLL("libxcb.so.1")
    xcb.xcb_connect.restype = ctypes.c_void_p
    xcb.xcb_connect.argtypes = [ctypes.c_char_p, ctypes.c_void_p]
    xcb.xcb_connection_has_error.argtypes = [ctypes.c_void_p]
    xcb.xcb_disconnect.argtypes = [ctypes.c_void_p]
    connection = xcb.xcb_connect(None, None)
    failed = xcb.xcb_connection_has_error(connection)
    xcb.xcb_disconnect(connection)
    if failed:
        display = os.environ.get("DISPLAY", "")
        return tr("no X server answers at DISPLAY={display}", display=display), tr(
            "Start one, or set DISPLAY to the one that runs."
        )
    return None


def _python() -> Finding:
    version = ".".join(map(str, sys.version_info[:3]))
    good = sys.version_info >= (3, 11)
    return Finding("Python", good, tr("everything"), version, "" if good else tr("Install Python 3.11 or later."))


def _package(package: str, needed_for: str, *, essential: bool = True) -> Finding:
    if importlib.util.find_spec(package) is None:
        return Finding(package, False, needed_for, tr("not installed"), f"pip install {package}", essential)
    return Finding(package, True, needed_for, _version(package), essential=essential)


def _qt(
    name: str, need: str, package: str, modules: Iterable[str], files: Sequence[str], *, essential: bool = True
) -> Finding:
    """One package of PySide6: only importing its modules tells whether they work."""
    try:
        for module in modules:
            importlib.import_module(f"PySide6.{module}")
    except ModuleNotFoundError:
        return Finding(
            name,
            False,
            need,
            tr("{package} is not installed", package=package),
            f"pip install {_matching(package)}",
            essential,
        )
    except ImportError as reason:
        # The loader stops at the first library that it misses.
        library = named_library(reason)
        lacking = missing_libraries(_qt_files(files)) or ((library,) if library else ())
        return _without(name, need, lacking, "" if lacking else str(reason), essential=essential)
    return Finding(name, True, need, f"{package} {_version(package)}", essential=essential)


def _matching(package: str) -> str:
    """The package in the version of the part of PySide6 that is there: the parts only work together in one version."""
    try:
        return f"{package}=={metadata.version('PySide6-Essentials')}"
    except metadata.PackageNotFoundError:
        return package


def _lacking(files: Sequence[str]) -> tuple[str, ...]:
    """The libraries that keep these parts of Qt from being loaded; asking for their names takes its time."""
    for path in _qt_files(files):
        try:
            ctypes.CDLL(str(path))
        except OSError as reason:
            library = named_library(reason)
            return missing_libraries(_qt_files(files)) or ((library,) if library else ())
    return ()


def _qt_files(names: Iterable[str]) -> list[Path]:
    spec = importlib.util.find_spec("PySide6")
    if spec is None or spec.origin is None:
        return []
    paths = (Path(spec.origin).parent / name for name in names)
    return [path for path in paths if path.exists()]


def _without(name: str, need: str, lacking: Sequence[str], detail: str = "", *, essential: bool) -> Finding:
    what, packages = detail or _lack(lacking), debian_packages(lacking)
    return Finding(name, False, need, what, remedy(lacking), essential, tuple(lacking), packages)


def _lack(libraries: Sequence[str]) -> str:
    """On a bare machine some thirty are missing: who has to install them needs the packages, not all these names."""
    more = len(libraries) - _NAMED
    if more <= 1:
        return tr("this system lacks {libraries}", libraries=", ".join(libraries))
    return tr(
        "this system lacks {libraries} and {more} more libraries", libraries=", ".join(libraries[:_NAMED]), more=more
    )


def _version(package: str) -> str:
    try:
        return metadata.version(package)
    except metadata.PackageNotFoundError:
        return tr("installed")
