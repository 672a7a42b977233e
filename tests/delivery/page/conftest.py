"""The example as a page, and the browser that shows pages."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from studyboard.delivery.page.media import Media
from studyboard.example import example_study
from studyboard.model.study import Study
from tests.delivery.page.browser import Browser, browsers
from tests.delivery.page.pages import html_of


@pytest.fixture(scope="session")
def browser(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Browser]:
    """A real browser without a screen."""
    yield from browsers(tmp_path_factory)


@pytest.fixture(scope="session")
def example() -> Study:
    """The shipped talk."""
    return example_study()


@pytest.fixture(scope="session")
def page(example: Study, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Its page."""
    path = tmp_path_factory.mktemp("page") / "talk.html"
    path.write_bytes(html_of(example))
    return path


@pytest.fixture
def written(tmp_path: Path) -> Callable[..., Path]:
    """Writes the page of any study."""

    def write(study: Study, media: Media | None = None, *, flipped: bool = False) -> Path:
        path = tmp_path / "page.html"
        path.write_bytes(html_of(study, media, flipped=flipped))
        return path

    return write
