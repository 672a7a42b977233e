"""Prints what the read-through queries in talks that were written without slips: nearly all of it is wrong.

    python tests/bench/readthrough_true_talks.py [tuning | looked_at]

The talks are those of tests/narrations/tuning or looked_at, with the moves that the reader of spoken moves finds in
them; so a query may also come from a move that was misread, or from a slip of the writer that nobody noticed.
"""

from __future__ import annotations

import sys
import tomllib
from pathlib import Path

from narration_accuracy import sans, study_of

from studyboard.notation.narration.reading import read_narration
from studyboard.notation.narration.study_of import narration_study
from studyboard.reading.read_through import read_through

_TALKS = Path(__file__).resolve().parent.parent / "narrations" / (sys.argv[1] if len(sys.argv) > 1 else "tuning")


def main() -> None:
    queries = confirmed = 0
    for path in sorted(_TALKS.glob("*.toml")):
        truth = tomllib.loads(path.read_text(encoding="utf-8"))
        if truth.get("language", "en") != "en":
            continue
        game = study_of(truth.get("fen"), sans(truth.get("game", truth["main_line"])))
        study = narration_study(read_narration(truth["text"], game=game), game)
        found = read_through(study)
        queries += len(found.queries)
        confirmed += len(found.confirmed)
        print(f"{path.stem:30} {len(found.queries):4} queries {len(found.confirmed):5} confirmed")
        for query in found.queries:
            assert isinstance(query.beat, int)
            line = study.nodes[query.beat].spoken.text
            around = f"{line[max(0, query.start - 60) : query.start]}«{line[query.start : query.end]}»"
            print(f"    {query.kind}: {' '.join(around.split())}: {query.why}")
    print(f"{'all':30} {queries:4} queries {confirmed:5} confirmed")


if __name__ == "__main__":
    main()
