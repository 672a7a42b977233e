"""Pages of studies as they are planned."""

from __future__ import annotations

from studyboard.delivery.page.media import Media
from studyboard.delivery.page.page import page_html
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.timing.plan import plan


def html_of(study: Study, media: Media | None = None, *, flipped: bool = False) -> bytes:
    """The page of a study as it is planned."""
    return page_html(study, Positions(study), plan(study), media=media, flipped=flipped)
