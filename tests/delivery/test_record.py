"""delivery.json: what was made of which version, what is kept, and what of the user's is never lost."""

from __future__ import annotations

import json
from datetime import datetime
from hashlib import sha256
from pathlib import Path

import pytest

from studyboard.delivery.deliver import deliver
from studyboard.delivery.items.sheet import SheetOptions
from studyboard.delivery.product import Item
from studyboard.delivery.record import read_record
from studyboard.model.edits import ChangeHeaders, ChangePace, apply
from studyboard.model.script import Pace
from studyboard.timing.plan import plan

STEM = "Halvorse-Nduka-Harbour-Club-Winter-Evening"
TEXTS = frozenset({Item.SHEET, Item.CAPTIONS, Item.GAME, Item.CHAPTERS})


def kept(delivered) -> set[str]:
    return {one.item.value for one in delivered if one.kept}


def made(delivered) -> set[str]:
    return {one.item.value for one in delivered if not one.kept}


def record_in(folder: Path) -> dict:
    return json.loads((folder / "delivery.json").read_text(encoding="utf-8"))


def test_it_lists_every_file_with_its_size_checksum_and_length(author, tmp_path):
    delivered = deliver(author.study, tmp_path)
    record = record_in(tmp_path)
    listed = {file["name"]: file for item in record["items"] for file in item["files"]}
    assert set(listed) == {one.path.name for one in delivered}
    for name, file in listed.items():
        content = (tmp_path / name).read_bytes()
        assert file["bytes"] == len(content)
        assert file["sha256"] == sha256(content).hexdigest()
    talk = plan(author.study)
    assert record["study"]["seconds"] == talk.seconds
    assert record["study"]["source"] == "planned"
    assert listed[f"{STEM}-chapters.vtt"]["seconds"] == talk.seconds
    assert listed[f"{STEM}.srt"]["seconds"] == pytest.approx(talk.stretches[-1].speech_end, abs=1)
    assert listed[f"{STEM}.pgn"]["seconds"] is None
    assert {item["study"] for item in record["items"]} == {record["study"]["version"]}
    for item in record["items"]:
        assert datetime.fromisoformat(item["made_at"]).tzinfo is not None


def test_delivering_again_keeps_what_is_unchanged_byte_by_byte(author, tmp_path):
    first = deliver(author.study, tmp_path)
    before = {path.name: (path.read_bytes(), path.stat().st_mtime_ns) for path in tmp_path.iterdir()}
    second = deliver(author.study, tmp_path)
    assert [one.path for one in second] == [one.path for one in first]
    assert made(second) == set()
    assert {path.name: (path.read_bytes(), path.stat().st_mtime_ns) for path in tmp_path.iterdir()} == before


def test_everything_is_made_again_on_request(author, tmp_path):
    deliver(author.study, tmp_path, TEXTS)
    assert kept(deliver(author.study, tmp_path, TEXTS, again=True)) == set()


def test_one_changed_line_changes_all_that_is_made_of_it(author, tmp_path):
    deliver(author.study, tmp_path)
    before = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    author.put(6, spoken="Black offers a pawn, and I would take a long look. Do you take it?")
    assert kept(deliver(author.study, tmp_path)) == set()
    after = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    assert {name for name in after if after[name] == before[name]} == {f"{STEM}.png"}


def test_another_pace_makes_anew_only_what_has_times_in_it(author, tmp_path):
    deliver(author.study, tmp_path)
    version = record_in(tmp_path)["study"]["version"]
    apply(author.study, ChangePace(Pace(syllables_per_second=3.0)))
    again = deliver(author.study, tmp_path)
    assert made(again) == {"captions", "chapters", "text", "page"}
    assert kept(again) == {"sheet", "game", "still"}
    assert record_in(tmp_path)["study"]["version"] != version


def test_another_option_makes_anew_only_what_has_it(author, tmp_path):
    deliver(author.study, tmp_path, TEXTS)
    again = deliver(author.study, tmp_path, TEXTS, options={Item.SHEET: SheetOptions("letter")})
    assert made(again) == {"sheet"}


def test_what_is_missing_is_made_again(author, tmp_path):
    deliver(author.study, tmp_path, TEXTS)
    (tmp_path / f"{STEM}.srt").unlink()
    assert made(deliver(author.study, tmp_path, TEXTS)) == {"captions"}
    assert (tmp_path / f"{STEM}.srt").exists()


def test_what_was_changed_by_hand_is_made_again_and_the_change_is_not_lost(author, tmp_path):
    deliver(author.study, tmp_path, TEXTS)
    path = tmp_path / f"{STEM}-chapters.txt"
    original = path.read_text(encoding="utf-8")
    path.write_text("0:00 My own words\n", encoding="utf-8")
    told: list[str] = []
    assert made(deliver(author.study, tmp_path, TEXTS, remark=told.append)) == {"chapters"}
    assert path.read_text(encoding="utf-8") == original
    other = tmp_path / f"{STEM}-chapters (changed).txt"
    assert other.read_text(encoding="utf-8") == "0:00 My own words\n"
    (sentence,) = told
    assert path.name in sentence
    assert other.name in sentence
    path.write_text("once more", encoding="utf-8")
    deliver(author.study, tmp_path, TEXTS)
    assert (tmp_path / f"{STEM}-chapters (changed 2).txt").read_text(encoding="utf-8") == "once more"
    assert other.read_text(encoding="utf-8") == "0:00 My own words\n"


def test_files_that_are_no_longer_made_stay_and_are_told_once(author, tmp_path):
    deliver(author.study, tmp_path, {Item.GAME})
    apply(author.study, ChangeHeaders((("Event", "Harbour Club Spring Evening"),)))
    told: list[str] = []
    deliver(author.study, tmp_path, {Item.GAME}, remark=told.append)
    assert told == [f"No longer made, and left where they are: {STEM}.pgn."]
    assert (tmp_path / f"{STEM}.pgn").exists()
    assert [one["name"] for one in record_in(tmp_path)["left"]] == [f"{STEM}.pgn"]
    deliver(author.study, tmp_path, {Item.GAME}, remark=told.append)
    assert len(told) == 1
    (tmp_path / f"{STEM}.pgn").unlink()
    author.put(1, note="Something new.")
    deliver(author.study, tmp_path, {Item.GAME})
    assert record_in(tmp_path)["left"] == []


def test_what_was_not_asked_for_and_is_of_an_earlier_version_is_told(author, tmp_path):
    deliver(author.study, tmp_path, {Item.SHEET, Item.GAME})
    author.put(1, note="Something new.")
    told: list[str] = []
    deliver(author.study, tmp_path, {Item.GAME}, remark=told.append)
    assert told == [f"Made of an earlier version of the study, and not made again: {STEM}.pdf."]
    versions = {item["item"]: item["study"] for item in record_in(tmp_path)["items"]}
    assert versions["sheet"] != versions["game"] == record_in(tmp_path)["study"]["version"]


def test_remarks_about_kept_files_are_told_again(author, tmp_path):
    apply(author.study, ChangeHeaders((("Annotator", "Long " * 60),)))
    first: list[str] = []
    second: list[str] = []
    deliver(author.study, tmp_path, {Item.GAME}, remark=first.append)
    assert made(deliver(author.study, tmp_path, {Item.GAME}, remark=second.append)) == set()
    assert first == second
    assert len(first) == 1


@pytest.mark.parametrize("content", ["", "[1, 2", '{"format": "somebody else\'s"}', "[]"])
def test_a_delivery_json_of_somebody_else_is_not_lost(author, tmp_path, content):
    (tmp_path / "delivery.json").write_text(content, encoding="utf-8")
    assert read_record(tmp_path) is None
    told: list[str] = []
    deliver(author.study, tmp_path, {Item.GAME}, remark=told.append)
    assert (tmp_path / "delivery (changed).json").read_text(encoding="utf-8") == content
    assert "delivery (changed).json" in told[0]
    assert record_in(tmp_path)["format"] == "studyboard delivery"


def test_the_same_study_gives_the_same_bytes_in_another_folder(author, tmp_path):
    deliver(author.study, tmp_path / "a")
    deliver(author.study.snapshot(), tmp_path / "b")
    names = {path.name for path in (tmp_path / "a").iterdir()} - {"delivery.json"}
    assert len(names) == 9
    for name in names:
        assert (tmp_path / "a" / name).read_bytes() == (tmp_path / "b" / name).read_bytes(), name


def test_the_order_of_the_files_and_the_version_say_nothing_of_the_clock(author, tmp_path):
    deliver(author.study, tmp_path / "a", TEXTS)
    deliver(author.study, tmp_path / "b", TEXTS)
    one, other = record_in(tmp_path / "a"), record_in(tmp_path / "b")
    for record in (one, other):
        for item in record["items"]:
            del item["made_at"]
    assert one == other
