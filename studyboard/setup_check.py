"""What is installed and what is missing, with the exact package that brings it."""

from __future__ import annotations

import ctypes
import ctypes.util
import importlib
import importlib.util
import os
import re
import sys
from dataclasses import dataclass
from importlib import metadata
from pathlib import Path

#: Debian and Ubuntu packages that bring the shared libraries which Qt, cairo and the sound server's client need.
DEBIAN_PACKAGE_OF: dict[str, str] = {
    "libcairo.so": "libcairo2",
    "libEGL.so": "libegl1",
    "libGL.so": "libgl1",
    "libGLX.so": "libglx0",
    "libOpenGL.so": "libopengl0",
    "libGLESv2.so": "libgles2",
    "libxkbcommon.so": "libxkbcommon0",
    "libxkbcommon-x11.so": "libxkbcommon-x11-0",
    "libdbus-1.so": "libdbus-1-3",
    "libfontconfig.so": "libfontconfig1",
    "libfreetype.so": "libfreetype6",
    "libglib-2.0.so": "libglib2.0-0",
    "libgthread-2.0.so": "libglib2.0-0",
    "libgssapi_krb5.so": "libgssapi-krb5-2",
    "libz.so": "zlib1g",
    "libX11.so": "libx11-6",
    "libX11-xcb.so": "libx11-xcb1",
    "libSM.so": "libsm6",
    "libICE.so": "libice6",
    "libxcb.so": "libxcb1",
    "libxcb-cursor.so": "libxcb-cursor0",
    "libxcb-icccm.so": "libxcb-icccm4",
    "libxcb-image.so": "libxcb-image0",
    "libxcb-keysyms.so": "libxcb-keysyms1",
    "libxcb-randr.so": "libxcb-randr0",
    "libxcb-render.so": "libxcb-render0",
    "libxcb-render-util.so": "libxcb-render-util0",
    "libxcb-shape.so": "libxcb-shape0",
    "libxcb-shm.so": "libxcb-shm0",
    "libxcb-sync.so": "libxcb-sync1",
    "libxcb-util.so": "libxcb-util1",
    "libxcb-xfixes.so": "libxcb-xfixes0",
    "libxcb-xinerama.so": "libxcb-xinerama0",
    "libxcb-xkb.so": "libxcb-xkb1",
    "libpulse.so": "libpulse0",
    "libpulse-mainloop-glib.so": "libpulse-mainloop-glib0",
    "libasound.so": "libasound2",
    "libva.so": "libva2",
    "libva-drm.so": "libva-drm2",
    "libva-x11.so": "libva-x11-2",
    "libXrandr.so": "libxrandr2",
    "libXext.so": "libxext6",
    "libdrm.so": "libdrm2",
}

_LIBRARY = re.compile(r"(lib[\w.+-]+?\.so)(?:\.\d+)*")


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing that the program needs.

    name: what it is
    good: whether it is there
    needed_for: what does not work without it
    detail: its version where it is there, else what is wrong
    remedy: the command that brings it; empty where it is there
    essential: False where the rest of the program works without it
    """

    name: str
    good: bool
    needed_for: str
    detail: str
    remedy: str = ""
    essential: bool = True

    def sentence(self) -> str:
        """What is missing and what to do, in one line."""
        return f"{self.name} is missing ({self.detail}): {self.needed_for}. {self.remedy}"


def check_setup() -> list[Finding]:
    """Everything that the program needs, in the order of the day's work."""
    return [
        _python(),
        _package("chess", "chess", "the rules of the game"),
        _import("Qt (PySide6-Essentials)", "PySide6.QtWidgets", "PySide6-Essentials", "the desk and its windows"),
        _import("SVG for Qt", "PySide6.QtSvg", "PySide6-Essentials", "drawing the pieces on screen"),
        screen(),
        _package("typst", "typst", "the study sheet"),
        cairo(),
        _package("platformdirs", "platformdirs", "finding the folders of this platform"),
        _package("filelock", "filelock", "keeping two windows from one file"),
        _package("rich", "rich", "progress bars on the terminal"),
        _import(
            "Sound for Qt (PySide6-Addons)",
            "PySide6.QtMultimedia",
            "PySide6-Addons",
            "recording and playing takes",
            essential=False,
        ),
    ]


def missing_library(reason: BaseException | str) -> str | None:
    """The system package that brings the shared library which *reason* says is missing; None where it names none."""
    match = _LIBRARY.search(str(reason))
    if match is None:
        return None
    return DEBIAN_PACKAGE_OF.get(match.group(1))


def library_remedy(reason: BaseException | str) -> str:
    """What to do about a shared library that cannot be loaded, with the exact package where it is known."""
    package = missing_library(reason)
    if sys.platform.startswith("linux"):
        if package is not None:
            return f"On Debian and Ubuntu: apt install {package}"
        match = _LIBRARY.search(str(reason))
        wanted = match.group() if match else "the library named here"
        return f"Install the package of your distribution that has {wanted}."
    if sys.platform == "darwin":
        return "With Homebrew: brew install cairo" if "cairo" in str(reason) else "Install the package again with pip."
    return "Install the package again with pip."


def cairo() -> Finding:
    """cairo, which turns single diagrams into pictures."""
    need = "stills and single diagrams as PNG cannot be written"
    if importlib.util.find_spec("cairosvg") is None:
        return Finding("cairosvg", False, need, "not installed", "pip install cairosvg", essential=False)
    try:
        importlib.import_module("cairosvg")
    except (OSError, ImportError) as reason:
        detail = "the system library cairo cannot be loaded"
        remedy = library_remedy("libcairo.so.2") if "cairo" in str(reason) else library_remedy(reason)
        return Finding("cairo", False, need, detail, remedy, essential=False)
    return Finding("cairo", True, need, f"cairosvg {metadata.version('cairosvg')}", essential=False)


def screen() -> Finding:
    """A screen on which Qt can open windows."""
    need = "the desk cannot be opened; everything on the command line works"
    problem = _screen_problem()
    if problem is None:
        return Finding("Screen", True, need, _screen_name(), essential=False)
    detail, remedy = problem
    return Finding("Screen", False, need, detail, remedy, essential=False)


def _screen_name() -> str:
    for variable in ("QT_QPA_PLATFORM", "WAYLAND_DISPLAY", "DISPLAY"):
        if os.environ.get(variable):
            return f"{variable}={os.environ[variable]}"
    return sys.platform


def _screen_problem() -> tuple[str, str] | None:
    try:
        importlib.import_module("PySide6.QtGui")
    except ImportError as reason:
        if importlib.util.find_spec("PySide6") is None:
            return "PySide6-Essentials is not installed", "pip install PySide6-Essentials"
        return f"Qt cannot be loaded: {reason}", library_remedy(reason)
    platform = os.environ.get("QT_QPA_PLATFORM", "").partition(":")[0]
    if platform in ("offscreen", "minimal"):
        return f"QT_QPA_PLATFORM={platform} draws into memory only", "Unset QT_QPA_PLATFORM to see the desk."
    if not sys.platform.startswith("linux"):
        return None
    if platform == "wayland" or (not platform and os.environ.get("WAYLAND_DISPLAY")):
        return None
    if not os.environ.get("DISPLAY"):
        return (
            "neither DISPLAY nor WAYLAND_DISPLAY is set",
            "Start it from a desktop session, or under a virtual screen: xvfb-run studyboard",
        )
    plugin = _xcb_plugin()
    if plugin is not None:
        try:
            ctypes.CDLL(str(plugin))
        except OSError as reason:
            return f"Qt's window plugin cannot be loaded: {reason}", library_remedy(reason)
    return _x_server_problem()


def _xcb_plugin() -> Path | None:
    spec = importlib.util.find_spec("PySide6")
    if spec is None or spec.origin is None:
        return None
    path = Path(spec.origin).parent / "Qt" / "plugins" / "platforms" / "libqxcb.so"
    return path if path.exists() else None


def _x_server_problem() -> tuple[str, str] | None:
    """Ask the X server for a connection: Qt would end the whole program where there is none."""
    try:
        xcb = ctypes.CDLL("libxcb.so.1")
    except OSError as reason:
        return f"libxcb.so.1 cannot be loaded: {reason}", library_remedy("libxcb.so.1")
    xcb.xcb_connect.restype = ctypes.c_void_p
    xcb.xcb_connect.argtypes = [ctypes.c_char_p, ctypes.c_void_p]
    xcb.xcb_connection_has_error.argtypes = [ctypes.c_void_p]
    xcb.xcb_disconnect.argtypes = [ctypes.c_void_p]
    connection = xcb.xcb_connect(None, None)
    failed = xcb.xcb_connection_has_error(connection)
    xcb.xcb_disconnect(connection)
    if failed:
        display = os.environ.get("DISPLAY", "")
        return f"no X server answers at DISPLAY={display}", "Start one, or set DISPLAY to the one that runs."
    return None


def _python() -> Finding:
    version = ".".join(map(str, sys.version_info[:3]))
    good = sys.version_info >= (3, 11)
    return Finding("Python", good, "everything", version, "" if good else "Install Python 3.11 or later.")


def _package(module: str, package: str, needed_for: str) -> Finding:
    if importlib.util.find_spec(module) is None:
        return Finding(package, False, needed_for, "not installed", f"pip install {package}")
    return Finding(package, True, needed_for, _version(package))


def _import(name: str, module: str, package: str, needed_for: str, *, essential: bool = True) -> Finding:
    """Qt's modules load system libraries, so only importing one tells whether it works."""
    try:
        importlib.import_module(module)
    except ModuleNotFoundError:
        return Finding(name, False, needed_for, "not installed", f"pip install {package}", essential)
    except ImportError as reason:
        return Finding(name, False, needed_for, str(reason), library_remedy(reason), essential)
    return Finding(name, True, needed_for, _version(package), essential=essential)


def _version(package: str) -> str:
    try:
        return metadata.version(package)
    except metadata.PackageNotFoundError:
        return "installed"
