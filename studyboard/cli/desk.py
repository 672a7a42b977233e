"""The verbs that open the desk: open and tour."""

from __future__ import annotations

import gc
import sys
from pathlib import Path

from studyboard.model.errors import StudyboardError
from studyboard.setup_check import cairo, draws_into_memory, qt, screen


def open_desk(file: Path | None, *, from_menu: bool = False) -> int:
    """Open the desk, on this study or PGN file if one is named; from a menu, what is wrong is shown in a window.

    Raises StudyboardError where there is no screen, or the file cannot be opened.
    """
    _require_screen()
    # Nothing that is made on the way to the first picture is garbage; the desk turns the collector on again.
    gc.disable()
    from studyboard.desk.application import run, run_from_menu

    return run_from_menu(file) if from_menu else run(file)


def tour() -> int:
    """The demo: the desk on the example. With no screen: says so and delivers it, but for its video, into ./tour."""
    seen = screen()
    if seen.good:
        gc.disable()
        from studyboard.desk.application import run_tour

        return run_tour()
    print(f"No screen: {seen.detail}. {seen.remedy}", file=sys.stderr)
    to = Path("tour")
    print(f"The example is delivered into ./{to} instead.", file=sys.stderr)
    from studyboard.cli.deliver_verb import deliver_with_progress
    from studyboard.cli.timing_verb import print_timing
    from studyboard.delivery.deliver import QUICK
    from studyboard.delivery.product import Item
    from studyboard.example import example_study
    from studyboard.store.study_file import StudyFile
    from studyboard.timing.report import timing_report

    study = example_study()
    to.mkdir(exist_ok=True)
    print_timing(study, timing_report(study))
    with StudyFile.create(to / "example.studyboard", study, overwrite=True) as file:
        print(to / file.path.name)
    wanted = QUICK
    drawing = cairo()
    if not drawing.good:
        wanted -= {Item.STILL}
        print(f"studyboard: {drawing.sentence()}", file=sys.stderr)
    for one in deliver_with_progress(study, to, wanted):
        print(one.path)
    return 0


def _require_screen() -> None:
    if draws_into_memory() and qt().good:
        # A screen in memory is no mistake when somebody asks for it by name, as tests and pictures of the desk do.
        return
    seen = screen()
    if not seen.good:
        raise StudyboardError(f"The desk cannot be opened: {seen.detail}. {seen.remedy}")
