"""What was learned about the words around moves makes the right understanding cheaper."""

from __future__ import annotations

import math

import pytest

from studyboard.notation.narration.hints import (
    ACTIONS,
    BRANCH,
    MAIN,
    PASSED,
    RETURN,
    Hints,
    anchors_of,
    features_of,
    hints,
)
from studyboard.notation.narration.lexicon import lexicon
from studyboard.notation.narration.prepared import prepared


def costs_of_last_move(text: str) -> tuple[float, ...]:
    model = hints("en")
    assert model is not None
    said = prepared(text, lexicon("en"))
    found = features_of(said.tokens, said.contexts, anchors_of(said.phrases))
    return model.costs(found[max(found)])


def test_a_language_without_training_has_no_hints() -> None:
    assert hints("de") is None


def test_words_that_were_never_met_change_nothing() -> None:
    model = Hints({}, [math.log(1 / len(ACTIONS))] * len(ACTIONS), 1.0)
    assert model.costs(["< never", "> heard"]) == pytest.approx([0.0] * len(ACTIONS))


def test_half_the_trust_is_half_the_cost() -> None:
    weights = {"< if": [0.0, 0.0, 2.0, 0.0, 0.0, 0.0]}
    usual = [math.log(1 / len(ACTIONS))] * len(ACTIONS)
    whole, half = (Hints(weights, usual, trust).costs(["< if"]) for trust in (1.0, 0.5))
    assert half == pytest.approx([cost / 2 for cost in whole])
    assert min(range(len(ACTIONS)), key=whole.__getitem__) == BRANCH


@pytest.mark.parametrize(
    ("unlike", "like", "action"),
    [
        ("White played knight f3.", "If White had played knight f3", BRANCH),
        ("e4, e5, knight f3.", "That would be nice. But in the game he played knight f3.", RETURN),
        ("e4, e5, knight f3.", "White wants to play knight f3.", PASSED),
        ("What about knight f3?", "e4. Knight f3.", MAIN),
    ],
)
def test_the_words_around_a_move_speak_for_what_is_done_with_it(unlike: str, like: str, action: int) -> None:
    assert costs_of_last_move(like)[action] < costs_of_last_move(unlike)[action]
