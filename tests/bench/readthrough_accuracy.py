"""Prints how many planted slips the read-through finds and how many of its queries are right.

    python tests/bench/readthrough_accuracy.py [FOLDER] [--all]

FOLDER holds narrations as described in tests/slips/README.md; tests/slips/tuning by default. --all prints every query
and every slip that was missed, --unchecked what was found and left to the author.
"""

from __future__ import annotations

import re
import sys
import time
import tomllib
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from studyboard.model.positions import Positions
from studyboard.model.script import BeatKey, Part
from studyboard.model.study import Study
from studyboard.notation.pgn_reader import read_games
from studyboard.notation.talk_file import read_talk
from studyboard.reading.findings import Finding
from studyboard.reading.read_through import read_through

_SLIPS = Path(__file__).resolve().parent.parent / "slips"
_GAME = re.compile(r'^(?:pgn|fen)\s*=\s*(?:""".*?"""|".*?")', re.DOTALL | re.MULTILINE)
_ANYWHERE = ("branch", "think")


@dataclass
class Score:
    """Counts of one narration, or of several."""

    queries: int = 0
    right: int = 0
    slips: int = 0
    met: int = 0
    same_kind: int = 0
    confirmed: int = 0
    unchecked: int = 0
    seconds: float = 0.0
    false_queries: list[Finding] = field(default_factory=list)
    missed: list[dict[str, Any]] = field(default_factory=list)

    def add(self, other: Score) -> None:
        for name in ("queries", "right", "slips", "met", "same_kind", "confirmed", "unchecked", "seconds"):
            setattr(self, name, getattr(self, name) + getattr(other, name))

    def line(self, name: str) -> str:
        precision = 100 * self.right / self.queries if self.queries else 100.0
        recall = 100 * self.met / self.slips if self.slips else 100.0
        return (
            f"{name:30} {self.slips:5} {self.met:5} {recall:7.1f} % {self.queries:8} {self.right:6} {precision:8.1f} %"
            f" {self.same_kind:6} {self.confirmed:10} {self.unchecked:10} {self.seconds:8.2f} s"
        )


def load(path: Path) -> tuple[Study, list[dict[str, Any]]]:
    """The study of a narration with slips, and its slips."""
    text = path.read_text(encoding="utf-8")
    plain = tomllib.loads(text)
    if "pgn" in plain:
        study = next(read_games(str(plain["pgn"]))).study
    else:
        study = Study({"SetUp": "1", "FEN": str(plain["fen"])} if "fen" in plain else None)
    # What a talk file does not know is taken out: the game at its head, the slips at its end.
    talk = _GAME.sub("", text.split("\n[[slip]]")[0])
    return read_talk(talk, study), list(plain.get("slip", []))


def key_of(study: Study, positions: Positions, slip: dict[str, Any]) -> BeatKey:
    if "part" in slip:
        return Part(slip["part"])
    node = study.root
    for san in str(slip.get("path", "")).split():
        child = positions.child_by_move(node, positions.board(node).parse_san(san))
        if child is None:
            raise SystemExit(f"no such node: {slip}")
        node = child
    return node


def score(path: Path) -> Score:
    study, slips = load(path)
    positions = Positions(study)
    begun = time.perf_counter()
    found = read_through(study)
    result = Score(len(found.queries), 0, len(slips), 0, 0, len(found.confirmed), len(found.unchecked))
    result.seconds = time.perf_counter() - begun
    met: set[int] = set()
    places = []
    for slip in slips:
        key = key_of(study, positions, slip)
        text = study.line(key).spoken.text if isinstance(key, Part) else study.nodes[key].spoken.text
        at = text.find(str(slip["quote"]))
        if at < 0:
            raise SystemExit(f"{path.name}: the line has no “{slip['quote']}”: {text}")
        whole = slip["kind"] in _ANYWHERE
        places.append((key, 0 if whole else at, len(text) if whole else at + len(str(slip["quote"]))))
    for query in found.queries:
        hits = [n for n, (key, a, b) in enumerate(places) if query.beat == key and query.start < b and a < query.end]
        if hits:
            result.right += 1
            for n in hits:
                result.same_kind += n not in met and slips[n]["kind"] == query.kind
            met.update(hits)
        else:
            result.false_queries.append(query)
    result.met = len(met)
    result.missed = [slip for n, slip in enumerate(slips) if n not in met]
    return result


def main() -> None:
    arguments = [word for word in sys.argv[1:] if not word.startswith("--")]
    folder = Path(arguments[0]) if arguments else _SLIPS / "tuning"
    total = Score()
    head = ("slips", "found", "recall", "queries", "right", "precision", "kind", "confirmed", "unchecked", "time")
    print(
        f"{'narration':30} {head[0]:>5} {head[1]:>5} {head[2]:>9} {head[3]:>8} {head[4]:>6} {head[5]:>10} "
        f"{head[6]:>6} {head[7]:>10} {head[8]:>10} {head[9]:>10}"
    )
    for path in sorted(folder.glob("*.toml")):
        one = score(path)
        total.add(one)
        print(one.line(path.stem))
        if "--all" in sys.argv:
            for query in one.false_queries:
                print(f"    wrong query  {query.kind}: “{query.quote}”: {query.why}")
            for slip in one.missed:
                print(f"    missed       {slip['kind']}: “{slip['quote']}” ({slip.get('true', '')})")
    print(total.line("all"))


if __name__ == "__main__":
    main()
