"""Putting files into a folder: all of them or none, made beside their place and renamed into it."""

from __future__ import annotations

import errno
import os
import shutil
import tempfile
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
from itertools import chain, count
from pathlib import Path
from typing import Final

from filelock import FileLock, Timeout

from studyboard.delivery.errors import DeliveryError
from studyboard.translation import tr

_PREFIX: Final = ".studyboard-"
_LOCK: Final = ".studyboard.lock"


@contextmanager
def workshop(to: Path) -> Iterator[Path]:
    """A folder inside the target in which files are made; whatever is left in it at the end is thrown away.

    So is what a killed process has left there: the system lets go of its lock when a process ends, however that ends.
    Raises DeliveryError where nothing can be made there, or another delivery is going on.
    """
    made = [folder for folder in (to, *to.parents) if not folder.exists()]
    try:
        with explained(to):
            to.mkdir(parents=True, exist_ok=True)
        with _alone_in(to):
            with explained(to):
                shop = Path(tempfile.mkdtemp(prefix=_PREFIX, dir=to))
            try:
                yield shop
            finally:
                shutil.rmtree(shop, ignore_errors=True)
        made.clear()
    finally:
        for folder in made:
            # Only folders that were made here; one into which something came meanwhile does not let itself be removed.
            with suppress(OSError):
                folder.rmdir()


@contextmanager
def _alone_in(to: Path) -> Iterator[None]:
    """No other delivery into this folder meanwhile; what killed ones have left there is thrown away."""
    path = to / _LOCK
    lock = FileLock(path, timeout=0, thread_local=False)
    try:
        lock.acquire()
    except Timeout:
        raise DeliveryError(
            tr("Another delivery into {to} is going on. Wait for it, or choose another folder.", to=to)
        ) from None
    except (OSError, NotImplementedError) as reason:
        if isinstance(reason, OSError) and reason.errno in (errno.EACCES, errno.EPERM, errno.EROFS, errno.ENOSPC):
            raise DeliveryError(_sentence(to, reason)) from reason
        # Where a file system knows no locks, what a killed process leaves is not swept away either.
        yield
        return
    try:
        for left in to.glob(f"{_PREFIX}*/"):
            shutil.rmtree(left, ignore_errors=True)
        yield
    finally:
        # While it is still held: whoever waits for it then finds that this file is gone, and makes another.
        with suppress(OSError):
            path.unlink()
        lock.release()


def put_in_place(shop: Path, to: Path, names: Sequence[str], *, aside: Mapping[str, str]) -> None:
    """Move these files from the workshop into the folder, over what is there.

    aside: what the user has changed there, by its name, and the free name under which it is kept

    Raises DeliveryError, with the folder as it was.
    """
    for name in names:
        if (to / name).is_dir():
            raise DeliveryError(
                tr(
                    "“{name}” cannot be written to {to}: there is a folder of that name. Move it away.",
                    name=name,
                    to=to,
                )
            )
    before: dict[str, Path] = {}
    placed: list[str] = []
    copies: list[str] = []
    try:
        for name, other in aside.items():
            _keep(to / name, to / other)
            copies.append(other)
        for name in names:
            if (to / name).exists():
                _keep(to / name, shop / f"before-{name}")
                before[name] = shop / f"before-{name}"
        for name in names:
            os.replace(shop / name, to / name)
            placed.append(name)
    except OSError as reason:
        for name in copies:
            with suppress(OSError):
                (to / name).unlink()
        for name in placed:
            with suppress(OSError):
                if name in before:
                    os.replace(before[name], to / name)
                else:
                    (to / name).unlink()
        raise DeliveryError(_sentence(to, reason)) from reason


def free_name(to: Path, name: str) -> str:
    """A name in this folder under which a changed file can be kept: "talk (changed).txt"."""
    path = Path(name)
    word = tr("changed")
    numbers = chain([""], (f" {number}" for number in count(2)))
    candidates = (f"{path.stem} ({word}{number}){path.suffix}" for number in numbers)
    return next(other for other in candidates if not (to / other).exists())


def _keep(path: Path, copy: Path) -> None:
    try:
        os.link(path, copy)
    except OSError:  # not every file system has links
        shutil.copy2(path, copy)


@contextmanager
def explained(to: Path) -> Iterator[None]:
    """Turns what the system says of a folder into a sentence."""
    try:
        yield
    except OSError as reason:
        raise DeliveryError(_sentence(to, reason)) from reason


def _sentence(to: Path, reason: OSError) -> str:
    """Why a folder could not be written to, in words."""
    match reason.errno:
        case errno.ENOSPC | errno.EDQUOT:
            why = tr("the disk is full. Make room or choose another folder.")
        case errno.EFBIG:
            why = tr("the file would be larger than is allowed there.")
        case errno.EACCES | errno.EPERM:
            why = tr("you may not write there, or one of the files is open in another program.")
        case errno.EROFS:
            why = tr("the disk can only be read.")
        case errno.ENOTDIR | errno.EEXIST:
            why = tr("there is a file where the folder should be.")
        case errno.ENAMETOOLONG:
            why = tr("the name is too long for this disk.")
        case _:
            why = f"{(reason.strerror or str(reason)).lower()}."
    return tr("Nothing could be delivered to {to}: {why}", to=to, why=why)
