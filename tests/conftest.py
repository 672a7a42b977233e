"""What every test can count on: no screen is needed, nothing of the user's is touched, runs in CI can be repeated."""

from __future__ import annotations

import os
from collections.abc import Iterator

import pytest
from hypothesis import settings

# Before anything imports Qt. Somebody who wants to watch the tests sets it to the platform of the screen.
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

settings.register_profile("desk", deadline=None)
settings.register_profile("ci", deadline=None, derandomize=True, print_blob=True)
settings.load_profile("ci" if os.environ.get("CI") else "desk")


@pytest.fixture(scope="session", autouse=True)
def _own_folders(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Recent files, settings and new studies lie in folders of this run, also for the programs that tests start."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("STUDYBOARD_STATE_DIR", str(tmp_path_factory.mktemp("state")))
        patch.setenv("STUDYBOARD_STUDIES", str(tmp_path_factory.mktemp("studies")))
        patch.setenv("XDG_CONFIG_HOME", str(tmp_path_factory.mktemp("config")))
        yield


def pytest_collection_finish(session: pytest.Session) -> None:
    """Start the sound server before the first test, where one speaks or listens: Qt looks for one only once."""
    from tests.sound import virtual_microphone

    wanted = any("sound_server" in getattr(item, "fixturenames", ()) for item in session.items)
    if wanted and not session.config.option.collectonly and not virtual_microphone.missing_packages():
        virtual_microphone.running()


def pytest_sessionfinish() -> None:
    """End the sound server."""
    from tests.sound import virtual_microphone

    virtual_microphone.end()
