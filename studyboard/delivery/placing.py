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
_LOCK: Final = "lock"


@contextmanager
def workshop(to: Path) -> Iterator[Path]:
    """A folder inside the target in which files are made; whatever is left in it at the end is thrown away.

    So is what a killed process has left there: the system lets go of the lock in it when its process ends, however
    that ends. Raises DeliveryError where nothing can be made there.
    """
    made = [folder for folder in (to, *to.parents) if not folder.exists()]
    shop: Path | None = None
    lock: FileLock | None = None
    try:
        with explained(to):
            to.mkdir(parents=True, exist_ok=True)
            _sweep(to)
            shop = Path(tempfile.mkdtemp(prefix=_PREFIX, dir=to))
            # Where a file system knows no locks, what a killed process leaves is not swept away either.
            with suppress(OSError, NotImplementedError):
                lock = FileLock(shop / _LOCK, timeout=0, thread_local=False)
                lock.acquire()
        yield shop
        made.clear()
    finally:
        if lock is not None:
            lock.release()
        if shop is not None:
            shutil.rmtree(shop, ignore_errors=True)
        for folder in made:
            # Only folders that were made here; one into which something came meanwhile does not let itself be removed.
            with suppress(OSError):
                folder.rmdir()


def _sweep(to: Path) -> None:
    """Throw away what killed deliveries have left."""
    for left in to.glob(f"{_PREFIX}*"):
        if not (left / _LOCK).is_file():
            continue
        lock = FileLock(left / _LOCK, timeout=0, thread_local=False)
        try:
            lock.acquire()
        except (Timeout, OSError, NotImplementedError):
            continue
        lock.release()
        shutil.rmtree(left, ignore_errors=True)


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
