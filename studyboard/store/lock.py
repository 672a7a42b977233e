"""The lock that keeps a second instance from working on the same study file."""

from __future__ import annotations

import os
import socket
from contextlib import suppress
from pathlib import Path

from filelock import FileLock, Timeout

from studyboard.store.errors import ReadOnlyStudyError, StudyInUseError
from studyboard.translation import tr

#: Windows locks the first byte of the file, so who holds it is written behind that byte.
_BEHIND = 1


class StudyLock:
    """The right to change one study file, held from its making until `release`.

    State: a lock file beside the study. The operating system lets go of it when the process ends, however it
    ends, so one that was left behind by a crash keeps nobody out.

    Raises StudyInUseError where somebody else has it, ReadOnlyStudyError where no file can be made.
    """

    __slots__ = ("_lock", "path")

    def __init__(self, study: Path) -> None:
        study = study.resolve()
        self.path = study.with_name(f".{study.name}.lock")
        # Read first: some versions of the library empty the file when they try for it in vain.
        holder = _holder(self.path)
        self._lock = FileLock(self.path, timeout=0, thread_local=False)
        try:
            self._lock.acquire()
        except Timeout:
            raise StudyInUseError(
                tr(
                    "“{name}” is already open{holder}. Go on there, or close it there first.",
                    name=study.name,
                    holder=holder or _holder(self.path),
                )
            ) from None
        except (OSError, NotImplementedError) as reason:
            raise ReadOnlyStudyError(
                tr(
                    "“{name}” cannot be worked on where it lies ({reason}). Copy it to a folder of your own, "
                    "or open it to be read only.",
                    name=study.name,
                    reason=reason,
                )
            ) from reason
        with suppress(OSError), self.path.open("r+b", buffering=0) as file:
            file.seek(_BEHIND)
            file.write(f"{os.getpid()} {socket.gethostname()}\n".encode())

    def release(self) -> None:
        """Let others work on the study. Does nothing the second time."""
        if self._lock.is_locked:
            # While it is still held: whoever waits for it then finds that this file is gone, and makes another.
            with suppress(OSError):
                self.path.unlink()
            self._lock.release()


def _holder(path: Path) -> str:
    """Who wrote themselves into the lock file, as the end of a sentence; nothing where that is not known."""
    try:
        with path.open("rb", buffering=0) as file:
            file.seek(_BEHIND)
            number, host = file.read(300).decode().split("\n", 1)[0].split(" ", 1)
    except (OSError, ValueError):
        return ""
    if host != socket.gethostname():
        return tr(" on the computer {host}", host=host)
    if number == str(os.getpid()):
        return tr(" in this program")
    return tr(" in another window of Studyboard (process {number})", number=number)
