"""Which of the system's shared libraries are missing, and the Debian packages that bring them."""

from __future__ import annotations

import os
import platform
import re
import shutil
import subprocess
import sys
from collections.abc import Iterable, Sequence
from pathlib import Path

from studyboard.translation import tr

#: Packages of Debian and Ubuntu by the library that they bring: what PySide6 and cairosvg need and wheels leave out.
DEBIAN_PACKAGE_OF: dict[str, str] = {
    "libEGL.so.1": "libegl1",
    "libGL.so.1": "libgl1",
    "libGLX.so.0": "libglx0",
    "libGLdispatch.so.0": "libglvnd0",
    "libOpenGL.so.0": "libopengl0",
    "libGLESv2.so.2": "libgles2",
    "libICE.so.6": "libice6",
    "libSM.so.6": "libsm6",
    "libX11-xcb.so.1": "libx11-xcb1",
    "libX11.so.6": "libx11-6",
    "libXext.so.6": "libxext6",
    "libXrandr.so.2": "libxrandr2",
    "libXrender.so.1": "libxrender1",
    "libasound.so.2": "libasound2",
    "libbrotlicommon.so.1": "libbrotli1",
    "libbrotlidec.so.1": "libbrotli1",
    "libbz2.so.1.0": "libbz2-1.0",
    "libcairo.so.2": "libcairo2",
    "libdbus-1.so.3": "libdbus-1-3",
    "libdrm.so.2": "libdrm2",
    "libenchant-2.so.2": "libenchant-2-2",
    "libexpat.so.1": "libexpat1",
    "libfontconfig.so.1": "libfontconfig1",
    "libfreetype.so.6": "libfreetype6",
    "libgcc_s.so.1": "libgcc-s1",
    "libglib-2.0.so.0": "libglib2.0-0",
    "libgobject-2.0.so.0": "libglib2.0-0",
    "libgio-2.0.so.0": "libglib2.0-0",
    "libgthread-2.0.so.0": "libglib2.0-0",
    "libgssapi_krb5.so.2": "libgssapi-krb5-2",
    "liblzma.so.5": "liblzma5",
    "libpng16.so.16": "libpng16-16",
    "libpulse-mainloop-glib.so.0": "libpulse-mainloop-glib0",
    "libpulse-simple.so.0": "libpulse0",
    "libpulse.so.0": "libpulse0",
    "libstdc++.so.6": "libstdc++6",
    "libva-drm.so.2": "libva-drm2",
    "libva-x11.so.2": "libva-x11-2",
    "libva.so.2": "libva2",
    "libwayland-client.so.0": "libwayland-client0",
    "libwayland-cursor.so.0": "libwayland-cursor0",
    "libwayland-egl.so.1": "libwayland-egl1",
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxcb-glx.so.0": "libxcb-glx0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-image.so.0": "libxcb-image0",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxcb-randr.so.0": "libxcb-randr0",
    "libxcb-render-util.so.0": "libxcb-render-util0",
    "libxcb-render.so.0": "libxcb-render0",
    "libxcb-shape.so.0": "libxcb-shape0",
    "libxcb-shm.so.0": "libxcb-shm0",
    "libxcb-sync.so.1": "libxcb-sync1",
    "libxcb-util.so.1": "libxcb-util1",
    "libxcb-xfixes.so.0": "libxcb-xfixes0",
    "libxcb-xinerama.so.0": "libxcb-xinerama0",
    "libxcb-xinput.so.0": "libxcb-xinput0",
    "libxcb-xkb.so.1": "libxcb-xkb1",
    "libxcb.so.1": "libxcb1",
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
    "libxkbcommon.so.0": "libxkbcommon0",
    "libz.so.1": "zlib1g",
    "libzstd.so.1": "libzstd1",
}

#: These got another name when their time of day grew to 64 bits: Debian 13, Ubuntu 24.04 (common practice).
_RENAMED = {"libglib2.0-0": "libglib2.0-0t64", "libasound2": "libasound2t64", "libpng16-16": "libpng16-16t64"}

_LIBRARY = re.compile(r"lib[\w+-]+(?:\.\d+)*[\w+-]*\.so(?:\.\d+)*")
_NOT_FOUND = re.compile(r"^\s*(\S+) => not found", re.MULTILINE)
_SECONDS = 30


def missing_libraries(files: Iterable[Path]) -> tuple[str, ...]:
    """Every library that these program files need, directly or through others, and that the system lacks.

    Asks the system's own loader (`ldd`), so that all are found at once: an import names only the first one. Empty
    where there is no such program, as on macOS and Windows, whose wheels bring what they need.
    """
    there = [str(path) for path in files]
    loader = shutil.which("ldd")
    if not there or loader is None or not sys.platform.startswith("linux"):
        return ()
    plain = {**os.environ, "LC_ALL": "C"}
    try:
        asked = subprocess.run([loader, *there], capture_output=True, text=True, env=plain, timeout=_SECONDS)
    except (OSError, subprocess.SubprocessError):
        return ()
    return tuple(sorted(set(_NOT_FOUND.findall(asked.stdout))))


def named_library(reason: BaseException | str) -> str | None:
    """The library that an error of the loader is about; None where it names none."""
    match = _LIBRARY.search(str(reason))
    return None if match is None else match.group()


def debian_packages(libraries: Iterable[str]) -> tuple[str, ...]:
    """The packages of Debian and Ubuntu that bring these libraries, each once, in the order of the alphabet."""
    renamed = _RENAMED if _long_times() else {}
    known = {DEBIAN_PACKAGE_OF[library] for library in libraries if library in DEBIAN_PACKAGE_OF}
    return tuple(sorted(renamed.get(package, package) for package in known))


def remedy(libraries: Sequence[str]) -> str:
    """What to do about these missing libraries, in one line, with the exact packages where they are known."""
    if sys.platform == "darwin":
        return (
            tr("With Homebrew: brew install cairo")
            if "cairo" in " ".join(libraries)
            else tr("Install the package again.")
        )
    if not sys.platform.startswith("linux"):
        return tr("Install the package again with pip.")
    packages = debian_packages(libraries)
    unknown = [library for library in libraries if library not in DEBIAN_PACKAGE_OF]
    found = [tr("On Debian and Ubuntu: {command}", command=install_line(packages))] if packages else []
    if unknown or not packages:
        wanted = tr(" and ").join(unknown) or tr("the library that is named here")
        found.append(tr("Install what brings {libraries} on this system.", libraries=wanted))
    return " ".join(found)


def install_line(packages: Sequence[str]) -> str:
    """The command that installs these Debian packages."""
    return f"apt install {' '.join(packages)}"


def _long_times() -> bool:
    try:
        release = platform.freedesktop_os_release()
        version = tuple(int(part) for part in release.get("VERSION_ID", "").split(".") if part.isdigit())
    except OSError:
        return False
    return version >= {"debian": (13,), "ubuntu": (24, 4)}.get(release.get("ID", ""), (999,))
