"""Prints how many phrasings of tests/reading/corpus are confirmed where true, queried where false, and left alone.

    python tests/bench/phrasings_accuracy.py [WORD] [--all]

WORD: only sets with this word in their name or file. --all prints every sentence that is not understood.
"""

from __future__ import annotations

import sys

from studyboard.reading.read_through import judge
from tests.reading.corpus_reader import CORPUS, QUIET, innocent, phrasings, read


def main() -> None:
    wanted = [word for word in sys.argv[1:] if not word.startswith("--")]
    total = [0, 0, 0, 0]
    for path in sorted(CORPUS.glob("*.toml")):
        counts: dict[str, list[int]] = {}
        for one in phrasings(path):
            if wanted and wanted[0] not in (one.name, path.stem):
                continue
            found = read(one)
            count = counts.setdefault(one.name, [0, 0, 0, 0])
            right = bool(found.confirmed) if one.true else bool(found.queries)
            count[0 if one.true else 2] += right and not (one.true and found.queries)
            count[1 if one.true else 3] += 1
            if "--all" in sys.argv and one.true and found.queries:
                print(f"    FALSE QUERY  {one.text}  <{found.queries[0].quote}: {found.queries[0].why}>")
            elif "--all" in sys.argv and not right:
                print(f"    {'not heard  ' if one.true else 'missed     '}  {one.text}")
        for name, (heard, true, queried, false) in counts.items():
            print(f"{name:34} true heard {heard:3} of {true:3}   false queried {queried:3} of {false:3}")
            total = [a + b for a, b in zip(total, (heard, true, queried, false), strict=True)]
    print(f"{'all':34} true heard {total[0]:3} of {total[1]:3}   false queried {total[2]:3} of {total[3]:3}")
    idle = innocent()
    queried = [(line, query) for line in idle for query in judge(QUIET, line).queries]
    print(f"innocent: {len(queried)} queries in {len(idle)} sentences")
    for line, query in queried:
        print(f"    {line}  <{query.quote}: {query.why}>")


if __name__ == "__main__":
    main()
