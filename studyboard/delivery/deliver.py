"""Publishing: everything that was asked for is made first, then put into its place at once."""

from __future__ import annotations

import errno
import os
import shutil
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path
from typing import Final, TypeAlias

from studyboard.delivery.caption_lines import captions
from studyboard.delivery.chapters import chapter_lines, chapters
from studyboard.delivery.errors import DeliveryCancelledError, DeliveryError
from studyboard.delivery.game import game_pgn
from studyboard.delivery.sheet import sheet_pdf
from studyboard.delivery.srt import srt_text
from studyboard.delivery.still import still_png
from studyboard.delivery.title import file_stem, study_title
from studyboard.delivery.video.narration import Narration
from studyboard.delivery.video.options import VideoOptions
from studyboard.delivery.webvtt import chapter_cues, webvtt_text
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.notation.pgn_writer import pgn_remarks
from studyboard.timing.plan import plan
from studyboard.timing.timeline import Timeline
from studyboard.translation import tr


class Item(StrEnum):
    """What can be published."""

    SHEET = "sheet"
    CAPTIONS = "captions"
    GAME = "game"
    STILL = "still"
    CHAPTERS = "chapters"
    VIDEO = "video"


@dataclass(frozen=True, slots=True)
class Delivered:
    """One file that was published."""

    item: Item
    path: Path


#: Told which item is being made and which share of the whole delivery is done (0.0 to 1.0).
Progress: TypeAlias = Callable[[Item, float], None]

EVERYTHING: Final = frozenset(Item)

#: What is made where nothing is named: all but the video, which takes minutes.
QUICK: Final = EVERYTHING - {Item.VIDEO}


def deliver(
    study: Study,
    to: Path,
    items: frozenset[Item] = QUICK,
    *,
    timeline: Timeline | None = None,
    paper: str = "a4",
    video: VideoOptions | None = None,
    narration: Narration | None = None,
    progress: Progress | None = None,
    cancelled: Callable[[], bool] | None = None,
    remark: Callable[[str], None] | None = None,
) -> list[Delivered]:
    """Publish *items* into the folder *to*, which is made where it does not exist; files there are replaced.

    timeline: where the times come from; the plan where it is None
    paper: "a4" or "letter"
    video: how the video is to be
    narration: the sound of the video, from second 0 of the timeline; None for a silent one
    progress, cancelled: called from time to time from the thread that delivers
    remark: told, in sentences, what could not be made (no captions without words) and what was put otherwise

    Nothing is put into the folder before everything is made, so the files there always agree with each other.
    Raises DeliveryError, in a sentence, where that is not possible, and DeliveryCancelledError where *cancelled*
    said so; both leave the folder as it was.
    """
    wanted = [item for item in Item if item in items]
    stem = file_stem(study_title(study.headers))
    positions = Positions(study)
    timeline = timeline or plan(study)
    made: list[tuple[Item, str]] = []
    remarks: list[str] = []
    with _workshop(to) as workshop:
        for place, item in enumerate(wanted):
            if cancelled is not None and cancelled():
                raise DeliveryCancelledError(tr("The delivery was stopped; nothing was changed."))
            if progress is not None:
                progress(item, place / len(wanted))
            if item is Item.VIDEO:
                # It is too large to be made in memory first, and only it needs its libraries.
                from studyboard.delivery.video.film import write_video

                made.append((item, f"{stem}.mp4"))
                share = _share_of(item, place, len(wanted), progress)
                with _explained(to):
                    write_video(
                        study,
                        timeline,
                        workshop / made[-1][1],
                        video,
                        narration=narration,
                        positions=positions,
                        progress=share,
                        cancelled=cancelled,
                    )
                continue
            for ending, content in _files(item, study, positions, timeline, paper, remarks.append):
                name = f"{stem}{ending}"
                _write(workshop / name, content, to)
                made.append((item, name))
        if cancelled is not None and cancelled():
            raise DeliveryCancelledError(tr("The delivery was stopped; nothing was changed."))
        _put_in_place(workshop, to, [name for _, name in made])
    if progress is not None and wanted:
        progress(wanted[-1], 1.0)
    if remark is not None:
        for sentence in remarks:
            remark(sentence)
    return [Delivered(item, to / name) for item, name in made]


def _files(
    item: Item,
    study: Study,
    positions: Positions,
    timeline: Timeline,
    paper: str,
    remark: Callable[[str], None],
) -> Iterator[tuple[str, bytes]]:
    """The files of one item: what their names end in, and what stands in them."""
    match item:
        case Item.SHEET:
            yield ".pdf", sheet_pdf(study, positions, paper=paper)
        case Item.CAPTIONS:
            cues = captions(timeline)
            if not cues:
                remark(tr("Nothing is said yet, so there are no captions. Write spoken lines first."))
                return
            yield ".vtt", webvtt_text(cues, title=study_title(study.headers)).encode()
            yield ".srt", srt_text(cues).encode()
        case Item.GAME:
            for sentence in pgn_remarks(study):
                remark(sentence)
            yield ".pgn", game_pgn(study, positions)
        case Item.STILL:
            yield ".png", still_png(study, positions)
        case Item.CHAPTERS:
            found = chapters(study, positions, timeline)
            if not found:
                remark(tr("Nothing is told yet, so there are no chapters."))
                return
            yield "-chapters.txt", chapter_lines(found).encode()
            yield "-chapters.vtt", chapter_cues(found, title=study_title(study.headers)).encode()


def _share_of(item: Item, place: int, count: int, progress: Progress | None) -> Callable[[float], None]:
    """What tells the share of one item as that of the whole delivery."""

    def tell(done: float) -> None:
        if progress is not None:
            progress(item, (place + done) / count)

    return tell


@contextmanager
def _workshop(to: Path) -> Iterator[Path]:
    """A folder inside the target in which files are made; whatever is left in it at the end is thrown away."""
    made = [folder for folder in (to, *to.parents) if not folder.exists()]
    workshop: Path | None = None
    try:
        try:
            to.mkdir(parents=True, exist_ok=True)
            workshop = Path(tempfile.mkdtemp(prefix=".studyboard-", dir=to))
        except OSError as reason:
            raise DeliveryError(_sentence(to, reason)) from reason
        yield workshop
        made.clear()
    finally:
        if workshop is not None:
            shutil.rmtree(workshop, ignore_errors=True)
        for folder in made:
            # Only folders that were made here; one into which something came meanwhile does not let itself be removed.
            with suppress(OSError):
                folder.rmdir()


def _write(path: Path, content: bytes, to: Path) -> None:
    with _explained(to), path.open("wb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())


@contextmanager
def _explained(to: Path) -> Iterator[None]:
    """Turns what the system says of a folder into a sentence."""
    try:
        yield
    except OSError as reason:
        raise DeliveryError(_sentence(to, reason)) from reason


def _put_in_place(workshop: Path, to: Path, names: list[str]) -> None:
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
    try:
        for name in names:
            if (to / name).exists():
                _keep(to / name, workshop / f"before-{name}")
                before[name] = workshop / f"before-{name}"
        for name in names:
            os.replace(workshop / name, to / name)
            placed.append(name)
    except OSError as reason:
        for name in placed:
            with suppress(OSError):
                if name in before:
                    os.replace(before[name], to / name)
                else:
                    (to / name).unlink()
        raise DeliveryError(_sentence(to, reason)) from reason


def _keep(path: Path, copy: Path) -> None:
    try:
        os.link(path, copy)
    except OSError:  # not every file system has links
        shutil.copy2(path, copy)


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
