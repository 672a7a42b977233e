"""Trains what words say about moves: python tests/bench/narration_training.py [--try] FOLDER [FOLDER ...]

Each talk is read with its moves known; what happened to each group of words that may say a move is then learned from
the words around it, by a log-linear model with a penalty on its weights. --try prints how well the model foretells
talks that it was not trained on, three times with another third left out, and writes nothing; without it,
resources/narration/en.hints.json is written. Needs scipy.
"""

from __future__ import annotations

import json
import random
import sys
import tomllib
from collections import Counter
from pathlib import Path
from typing import Any, Final

import chess
import numpy as np
from narration_accuracy import sans
from scipy.optimize import minimize
from scipy.sparse import csr_matrix

from studyboard.notation.narration.hints import (
    ACTIONS,
    BRANCH,
    MAIN,
    NAMED,
    PASSED,
    RETURN,
    SIDE,
    anchors_of,
    features_of,
)
from studyboard.notation.narration.lexicon import lexicon
from studyboard.notation.narration.prepared import prepared
from studyboard.notation.narration.readings import Heard, How
from studyboard.notation.narration.search import Talk
from studyboard.notation.narration.transcripts import transcript
from studyboard.notation.narration.understood import heard_in_order

LANGUAGE: Final = "en"
WRITTEN_TO: Final = Path(__file__).resolve().parents[2] / "resources" / "narration" / f"{LANGUAGE}.hints.json"
#: How strongly large weights are held back, in how many talks a feature must occur, and what the search believes of it.
PENALTY, LEAST_TALKS, TRUST = 10.0, 3, 0.4
_NEGLIGIBLE = 0.04
_STEPS_OF_FITTING = 60

#: What is known of one group of words, and what happened to it.
Example = tuple[list[str], int]
Model = tuple[dict[str, int], Any, Any]


def moves_of(fen: str, line: list[str]) -> list[chess.Move]:
    """A line in SAN as moves."""
    board = chess.Board(fen)
    return [board.push_san(san) for san in line]


def examples_of(path: Path) -> list[Example]:
    """What happened in one talk; nothing for a talk in another language."""
    truth = tomllib.loads(path.read_text(encoding="utf-8"))
    if truth.get("language", LANGUAGE) != LANGUAGE:
        return []
    fen = truth.get("fen", chess.STARTING_FEN)
    lines = [sans(truth["main_line"])]
    lines += [sans(side["after"]) + sans(side["line"]) for side in truth.get("side_lines", [])]
    said = prepared(transcript(truth["text"]).text, lexicon(LANGUAGE))
    reading = Talk(said, chess.Board(fen)).reading_of([moves_of(fen, line) for line in lines])
    decided: dict[int, Heard] = {}
    for heard in heard_in_order(reading):
        if heard.how is not How.UNSAID:
            decided.update((word, heard) for word in range(heard.phrase.start, heard.phrase.end))
    found: list[Example] = []
    for at, features in features_of(said.tokens, said.contexts, anchors_of(said.phrases)).items():
        heard_here = decided.get(at)
        if heard_here is None:
            found.append((features, PASSED))
        elif heard_here.phrase.anchor == at:
            found.append((features, action_of(heard_here)))
    return found


def action_of(heard: Heard) -> int:
    """What was done with the words, by its place in ACTIONS."""
    if heard.how is How.GOES_ON:
        return SIDE if heard.depth else MAIN
    return {How.BRANCHES: BRANCH, How.RETURNS: RETURN, How.NAMED: NAMED}[heard.how]


def trained(talks: list[list[Example]]) -> Model:
    """Features by number, their weights for each action, and how often each action is right (as logarithms)."""
    in_talks = Counter(feature for talk in talks for feature in {f for features, _ in talk for f in features})
    numbers = {f: n for n, f in enumerate(f for f, count in in_talks.items() if count >= LEAST_TALKS)}
    examples = [example for talk in talks for example in talk]
    places = [(row, numbers[f]) for row, (features, _) in enumerate(examples) for f in features if f in numbers]
    rows, columns = zip(*places, strict=True)
    given = csr_matrix((np.ones(len(places)), (rows, columns)), shape=(len(examples), len(numbers)))
    right = np.array([action for _, action in examples])
    wanted = np.eye(len(ACTIONS))[right]

    def misfit(flat: Any) -> tuple[float, Any]:
        weights = flat.reshape(len(numbers), len(ACTIONS))
        scores = given @ weights
        scores -= scores.max(axis=1, keepdims=True)
        chances = np.exp(scores)
        chances /= chances.sum(axis=1, keepdims=True)
        loss = -np.log(chances[np.arange(len(right)), right] + 1e-12).sum() + PENALTY / 2 * (weights**2).sum()
        return loss, np.asarray(given.T @ (chances - wanted) + PENALTY * weights).ravel()

    start = np.zeros(len(numbers) * len(ACTIONS))
    fitted = minimize(misfit, start, jac=True, method="L-BFGS-B", options={"maxiter": _STEPS_OF_FITTING})
    return numbers, fitted.x.reshape(len(numbers), len(ACTIONS)), np.log(wanted.mean(axis=0))


def foretold(model: Model, talks: list[list[Example]]) -> str:
    """How well the model foretells talks: right guesses, and its loss beside that of knowing nothing."""
    numbers, weights, usual = model
    loss = ignorant = 0.0
    right = count = 0
    for features, action in (example for talk in talks for example in talk):
        scores = weights[[numbers[f] for f in features if f in numbers]].sum(axis=0)
        loss += float(np.log(np.exp(scores - scores.max()).sum()) + scores.max() - scores[action])
        ignorant -= float(usual[action])
        right += int(scores.argmax() == action)
        count += 1
    losses = f"loss {loss / count:.3f}, without words {ignorant / count:.3f}"
    return f"{count} decisions: {right / count:.1%} right, {losses}"


def main() -> None:
    """Train, and write the model or print how good it is."""
    folders = [name for name in sys.argv[1:] if name != "--try"]
    talks = [examples_of(path) for folder in folders for path in sorted(Path(folder).glob("*.toml"))]
    talks = [talk for talk in talks if talk]
    if not talks:
        sys.exit(__doc__)
    if "--try" in sys.argv:
        random.Random(1).shuffle(talks)
        for part in range(3):
            rest = [talk for at, talk in enumerate(talks) if at % 3 != part]
            print(foretold(trained(rest), talks[part::3]))
        return
    numbers, weights, usual = trained(talks)
    kept = {
        feature: [round(float(w), 2) for w in weights[number]]
        for feature, number in sorted(numbers.items())
        if np.abs(weights[number]).max() > _NEGLIGIBLE
    }
    table = {"trust": TRUST, "usual": [round(float(u), 3) for u in usual], "weights": kept}
    WRITTEN_TO.write_text(
        json.dumps(table, ensure_ascii=False, separators=(",", ":")).replace("],", "],\n") + "\n", encoding="utf-8"
    )
    print(f"{len(kept)} features in {WRITTEN_TO.name}")


if __name__ == "__main__":
    main()
