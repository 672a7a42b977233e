"""How large a page is, how long it takes to make, to open and to step: python -m tests.bench.bench_page [nodes].

Opening and stepping are measured in Chromium where it is installed.
"""

from __future__ import annotations

import gzip
import random
import statistics
import sys
import tempfile
import time
from pathlib import Path

from studyboard.delivery.page.page import page_html
from studyboard.example import example_study
from studyboard.model.edits import ChangeNode, add_move, apply
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.positions import Positions
from studyboard.model.script import SpokenLine
from studyboard.model.study import Study
from studyboard.timing.plan import plan
from tests.delivery.page.browser import Browser, missing_packages

_LINE = "Here the knight comes to f3 and White is a little better, because the bishop on c4 looks at f7."

_STEP = """
const button = document.getElementById("on"), times = [];
for (let step = 0; step < 200; step++) {
  const began = performance.now();
  button.click();
  document.body.offsetHeight;
  times.push(performance.now() - began);
}
return times;
"""


def many_nodes(nodes: int) -> Study:
    """A random game of 160 half-moves with side-lines: every third node speaks, every twentieth is marked."""
    chance = random.Random(7)
    study = Study({"White": "Halvorse, Maja", "Black": "Nduka, Ade", "Event": "Bench", "Result": "*"})
    positions = Positions(study)

    def play(after: int, count: int) -> list[int]:
        made: list[int] = []
        for _ in range(count):
            move = chance.choice(sorted(positions.board(after).legal_moves, key=str) or [None])
            if move is None or positions.child_by_move(after, move) is not None:
                break
            edit = add_move(study, after, move)
            apply(study, edit)
            after = edit.node
            made.append(after)
        return made

    order = play(study.root, 160)
    while len(study.nodes) < nodes:
        order += play(chance.choice(order), chance.randint(3, 24))
    for number, node in enumerate(order):
        if number % 3 == 0:
            apply(study, ChangeNode(node, "spoken", SpokenLine(_LINE)))
        if number % 20 == 0:
            squares = (chance.randrange(32), chance.randrange(32, 64))
            apply(study, ChangeNode(node, "marks", (Mark(MarkKind.THREAT, squares),)))
    return study


def measure(name: str, study: Study, browser: Browser | None, folder: Path) -> None:
    """Print what there is to say of one study."""
    positions, timeline = Positions(study), plan(study)
    times = []
    for _ in range(5):
        start = time.process_time()
        html = page_html(study, positions, timeline)
        times.append(time.process_time() - start)
    packed = len(gzip.compress(html, mtime=0))
    print(f"{name}, {len(study.nodes)} nodes: {len(html) / 1e6:.3f} MB, {packed / 1e6:.3f} MB compressed by gzip")
    print(f"  made in {statistics.median(times):.3f} s of the processor (median of 5)")
    if browser is None:
        return
    page = folder / "page.html"
    page.write_bytes(html)
    browser.open(page, width=1440, height=900, calm=False)
    opened = browser.run("return performance.getEntriesByType('navigation')[0].domContentLoadedEventEnd")
    steps = sorted(browser.run(_STEP))
    middle, slow = steps[len(steps) // 2], steps[round(len(steps) * 0.95)]
    print(f"  opened in {opened / 1000:.2f} s; a step, laid out: {middle:.1f} ms, 95th percentile {slow:.1f} ms")


def main() -> None:
    """Measure the example and a large study."""
    nodes = int(sys.argv[1]) if len(sys.argv) > 1 else 5000
    with tempfile.TemporaryDirectory() as folder:
        browser = None if missing_packages() else Browser(Path(folder) / "browser")
        try:
            measure("the example", example_study(), browser, Path(folder))
            measure("a large study", many_nodes(nodes), browser, Path(folder))
        finally:
            if browser is not None:
                browser.end()


if __name__ == "__main__":
    main()
