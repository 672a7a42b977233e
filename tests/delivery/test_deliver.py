"""Publishing into a folder: all of it or nothing."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pypdf
import pytest
import webvtt

from studyboard.delivery.deliver import Delivered, deliver
from studyboard.delivery.errors import DeliveryCancelledError, DeliveryError
from studyboard.delivery.product import Item
from studyboard.model.edits import ChangeHeaders, apply
from studyboard.model.errors import StudyboardError
from studyboard.model.study import Study
from studyboard.timing.plan import plan

STEM = "Halvorse-Nduka-Harbour-Club-Winter-Evening"

RECORD = "delivery.json"

MADE = (".pdf", ".vtt", ".srt", ".pgn", ".png", "-chapters.txt", "-chapters.vtt", "-description.txt", ".html")


def everything_under(folder: Path) -> set[str]:
    return {str(path.relative_to(folder)) for path in folder.rglob("*")}


def test_everything_is_delivered_under_the_name_of_the_study(author, tmp_path):
    to = tmp_path / "talks" / "january"
    delivered = deliver(author.study, to)
    assert everything_under(to) == {RECORD, *(f"{STEM}{ending}" for ending in MADE)}
    assert delivered == [
        Delivered(Item.SHEET, to / f"{STEM}.pdf"),
        Delivered(Item.CAPTIONS, to / f"{STEM}.vtt"),
        Delivered(Item.CAPTIONS, to / f"{STEM}.srt"),
        Delivered(Item.GAME, to / f"{STEM}.pgn"),
        Delivered(Item.STILL, to / f"{STEM}.png"),
        Delivered(Item.CHAPTERS, to / f"{STEM}-chapters.txt"),
        Delivered(Item.CHAPTERS, to / f"{STEM}-chapters.vtt"),
        Delivered(Item.TEXT, to / f"{STEM}-description.txt"),
        Delivered(Item.PAGE, to / f"{STEM}.html"),
    ]
    assert pypdf.PdfReader(to / f"{STEM}.pdf").pages


def test_only_what_was_asked_for_is_delivered(author, tmp_path):
    deliver(author.study, tmp_path, frozenset({Item.GAME}))
    assert everything_under(tmp_path) == {RECORD, f"{STEM}.pgn"}


def test_captions_say_every_word_of_the_plan_in_its_time(author, tmp_path):
    deliver(author.study, tmp_path, frozenset({Item.CAPTIONS}))
    read = webvtt.read(tmp_path / f"{STEM}.vtt")
    script = [word.text for beat in plan(author.study).stretches for word in beat.words]
    assert len(script) > 20
    assert " ".join(cue.text for cue in read).split() == script
    assert read[-1].end_in_seconds <= plan(author.study).seconds


def test_without_words_no_captions_are_made_and_the_presenter_is_told(tmp_path):
    told = []
    made = deliver(Study(), tmp_path, frozenset({Item.CAPTIONS, Item.GAME}), remark=told.append)
    assert [one.item for one in made] == [Item.GAME]
    assert everything_under(tmp_path) == {RECORD, made[0].path.name}
    assert told == ["Nothing is said yet, so there are no captions. Write spoken lines first."]


def test_a_delivery_that_is_what_was_asked_for_needs_no_remark(author, tmp_path):
    told = []
    deliver(author.study, tmp_path, remark=told.append)
    assert told == []


def test_a_recorded_timeline_gives_its_own_times(author, tmp_path, talk):
    deliver(author.study, tmp_path, frozenset({Item.CAPTIONS}), timeline=talk("Said otherwise."))
    assert [cue.text for cue in webvtt.read(tmp_path / f"{STEM}.vtt")] == ["Said otherwise."]


def test_a_second_delivery_replaces_the_first(author, tmp_path):
    deliver(author.study, tmp_path)
    before = (tmp_path / f"{STEM}.pgn").read_text()
    author.put(1, note="Added later.")
    deliver(author.study, tmp_path)
    after = (tmp_path / f"{STEM}.pgn").read_text()
    assert "Added later." not in before
    assert "Added later." in after
    assert len(everything_under(tmp_path)) == len(MADE) + 1


def test_progress_is_told_item_by_item_up_to_the_end(author, tmp_path):
    told = []
    deliver(author.study, tmp_path, progress=lambda *step: told.append(step))
    assert list(dict.fromkeys(item for item, _, _ in told)) == [
        Item.SHEET,
        Item.CAPTIONS,
        Item.GAME,
        Item.STILL,
        Item.CHAPTERS,
        Item.TEXT,
        Item.PAGE,
    ]
    for one in {item for item, _, _ in told}:
        shares = [share for item, share, _ in told if item is one]
        assert (shares[0], shares[-1]) == (0.0, 1.0)
    whole = [share for _, _, share in told]
    assert whole == sorted(whole)
    assert (whole[0], whole[-1]) == (0.0, 1.0)


@pytest.mark.parametrize("after", [0, 1, 2, 3, 4])
def test_a_stopped_delivery_leaves_the_folder_as_it_was(author, tmp_path, after):
    (tmp_path / f"{STEM}.pgn").write_text("an older game")
    asked = []

    def stop() -> bool:
        asked.append(True)
        return len(asked) > after

    with pytest.raises(DeliveryCancelledError, match="nothing was changed"):
        deliver(author.study, tmp_path, cancelled=stop)
    assert everything_under(tmp_path) == {f"{STEM}.pgn"}
    assert (tmp_path / f"{STEM}.pgn").read_text() == "an older game"


def test_folders_that_were_made_for_nothing_are_taken_away_again(author, tmp_path):
    with pytest.raises(DeliveryCancelledError):
        deliver(author.study, tmp_path / "a" / "b", cancelled=lambda: True)
    assert everything_under(tmp_path) == set()


def test_a_file_where_the_folder_should_be_is_named(author, tmp_path):
    (tmp_path / "out").write_text("mine")
    with pytest.raises(StudyboardError, match=r"out.*: there is a file where the folder should be") as refused:
        deliver(author.study, tmp_path / "out" / "deeper")
    assert "\n" not in str(refused.value)
    assert (tmp_path / "out").read_text() == "mine"
    with pytest.raises(DeliveryError, match="there is a file where the folder should be"):
        deliver(author.study, tmp_path / "out")


def test_a_folder_where_a_file_should_be_is_named(author, tmp_path):
    (tmp_path / f"{STEM}.srt").mkdir()
    with pytest.raises(DeliveryError, match="there is a folder of that name"):
        deliver(author.study, tmp_path)
    assert everything_under(tmp_path) == {f"{STEM}.srt"}


@pytest.mark.skipif(not Path("/proc/self").exists(), reason="needs a place where nobody may write")
def test_a_place_where_nobody_may_write_is_one_clear_sentence(author):
    with pytest.raises(DeliveryError, match=r"Nothing could be delivered to /proc/talks: \w") as refused:
        deliver(author.study, Path("/proc/talks"))
    assert str(refused.value).endswith(".")


def test_two_deliveries_into_one_folder_do_not_mix(author, tmp_path):
    inside = []

    def deliver_there_too(item: Item, _: float, share: float) -> None:
        if not inside:
            inside.append(item)
            with pytest.raises(DeliveryError, match="Another delivery into"):
                deliver(author.study, tmp_path, {Item.GAME})

    deliver(author.study, tmp_path, {Item.GAME, Item.CHAPTERS}, progress=deliver_there_too)
    assert inside
    assert everything_under(tmp_path) == {RECORD, f"{STEM}.pgn", f"{STEM}-chapters.txt", f"{STEM}-chapters.vtt"}


FULL = """
import resource, signal, sys
from pathlib import Path
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
from studyboard.delivery.deliver import deliver
from studyboard.delivery.errors import DeliveryError
from studyboard.model.study import Study
resource.setrlimit(resource.RLIMIT_FSIZE, (4000, 4000))
try:
    deliver(Study(), Path(sys.argv[1]))
except DeliveryError as reason:
    print(reason)
"""


@pytest.mark.skipif(os.name != "posix", reason="needs a limit on the size of files")
def test_a_place_without_room_keeps_what_was_there(tmp_path):
    """The system itself refuses to write on: no file of the process may become larger than 4 kB."""
    (tmp_path / "Study.pdf").write_text("an older sheet")
    run = subprocess.run([sys.executable, "-B", "-c", FULL, str(tmp_path)], capture_output=True, text=True, check=False)
    assert f"Nothing could be delivered to {tmp_path}: " in run.stdout, run.stderr
    assert len(run.stdout.splitlines()) == 1
    assert everything_under(tmp_path) == {"Study.pdf"}
    assert (tmp_path / "Study.pdf").read_text() == "an older sheet"


def test_a_title_that_is_no_file_name_becomes_one(author, tmp_path):
    apply(author.study, ChangeHeaders((("White", "A/B: <c>"), ("Black", "?"), ("Event", "..\\what?"))))
    deliver(author.study, tmp_path, frozenset({Item.GAME}))
    assert everything_under(tmp_path) == {RECORD, "A-B-c-Black-what.pgn"}


def test_letters_that_no_font_holds_are_told_where_the_sheet_shows_boxes(author, tmp_path):
    told: list[str] = []
    deliver(author.study, tmp_path / "plain", {Item.SHEET}, remark=told.append)
    assert not told
    # A code point that is set aside for private use (Unicode 16, 23.5): no font that is meant for texts has it.
    apply(author.study, ChangeHeaders((*author.study.headers.items(), ("Annotator", "Ade \U0010fff0"))))
    deliver(author.study, tmp_path / "boxes", {Item.SHEET}, remark=told.append)
    assert len(told) == 1
    assert "boxes on the sheet" in told[0]
