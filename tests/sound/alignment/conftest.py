"""What the tests of listening need: speech of which the times of the words are known."""

from __future__ import annotations

import importlib.util
import os

import pytest

from tests.sound import known_words


@pytest.fixture(scope="session", autouse=True)
def speech() -> None:
    """Skip where speech cannot be made or listened to; fail where nothing may be skipped."""
    missing = [] if known_words.available() else ["libespeak-ng"]
    missing += [] if importlib.util.find_spec("pocketsphinx") else ["pocketsphinx"]
    if missing and os.environ.get("CI"):
        pytest.fail(f"{', '.join(missing)} cannot be missing here")
    if missing:
        pytest.skip(f"{', '.join(missing)} is not installed")
