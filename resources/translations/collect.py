"""Collects the texts of the desk for translation and compiles them: `python resources/translations/collect.py`.

Every language has a file of Qt's translation format (.ts) here, to be edited by hand or with Qt's own tool, and what
the desk loads (.qm). Texts that are gone are dropped, new ones come in as unfinished. Needs PySide6's tools.
"""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent
PACKAGE = HERE.parents[1] / "studyboard"
_TEXT = re.compile(r"\btr(_later)?\(")


def _tool(name: str) -> str:
    """A tool of Qt's, beside the Python that runs this or wherever the system finds it."""
    beside = Path(sys.executable).parent
    return shutil.which(name, path=str(beside)) or name


def collect(to: Path) -> None:
    """Bring one .ts file up to the texts of the program."""
    sources = sorted(str(path) for path in PACKAGE.rglob("*.py") if _TEXT.search(path.read_text(encoding="utf-8")))
    alias = ["-tr-function-alias", "QT_TR_NOOP+=tr_later"]
    subprocess.run(
        [_tool("pyside6-lupdate"), *alias, "-no-obsolete", "-locations", "none", *sources, "-ts", str(to)],
        check=True,
        stdout=subprocess.DEVNULL,
    )
    # Qt takes the comment before a text for a hint to translators; ours are about the code.
    texts = re.sub(r"\n *<extracomment>[^<]*</extracomment>", "", to.read_text(encoding="utf-8"))
    to.write_text(texts, encoding="utf-8")


def compile_(ts: Path, to: Path) -> None:
    """What the desk loads, made from one .ts file."""
    subprocess.run([_tool("pyside6-lrelease"), str(ts), "-qm", str(to)], check=True, stdout=subprocess.DEVNULL)


if __name__ == "__main__":
    for ts in [Path(name) for name in sys.argv[1:]] or sorted(HERE.glob("*.ts")):
        collect(ts)
        compile_(ts, ts.with_suffix(".qm"))
