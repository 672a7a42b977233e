"""The narrations with known answers that the reader was made with are read no worse than they were."""

from __future__ import annotations

import importlib.util
import sys
from pathlib import Path
from types import ModuleType

import pytest

TESTS = Path(__file__).resolve().parents[2]
NARRATIONS = sorted((TESTS / "narrations" / "tuning").glob("*.toml"))


@pytest.fixture(scope="module")
def bench() -> ModuleType:
    spec = importlib.util.spec_from_file_location("narration_accuracy", TESTS / "bench" / "narration_accuracy.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module
    spec.loader.exec_module(module)
    return module


@pytest.mark.parametrize(("with_game", "main", "side"), [(False, 0.98, 0.91), (True, 0.995, 0.94)])
def test_moves_and_mentions_are_told_apart(bench: ModuleType, with_game: bool, main: float, side: float) -> None:
    scores = [bench.measure(path, with_game) for path in NARRATIONS]
    assert len(scores) >= 12
    assert sum(s.main_right for s in scores) >= main * sum(s.main_all for s in scores)
    assert sum(s.side_right for s in scores) >= side * sum(s.side_all for s in scores)
    assert sum(s.mentions_right for s in scores) >= 0.98 * sum(s.mentions_all for s in scores)
