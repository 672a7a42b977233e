"""Figurines in captions, and captions to be translated, read by webvtt-py and pysubs2, which are not ours."""

from __future__ import annotations

from pathlib import Path

import pysubs2
import pytest
import webvtt
from hypothesis import given
from hypothesis import strategies as st

from studyboard.delivery.caption_lines import Caption, captions
from studyboard.delivery.caption_translation import UNTRANSLATED, translation_file
from studyboard.delivery.deliver import deliver
from studyboard.delivery.errors import DeliveryError
from studyboard.delivery.items.captions import CaptionMoves, CaptionOptions
from studyboard.delivery.product import Item
from studyboard.notation.labels import with_figurines

STEM = "Halvorse-Nduka-Harbour-Club-Winter-Evening"
FRENCH = {Item.CAPTIONS: CaptionOptions(into="fr")}


def made(author, folder: Path, **options) -> list[str]:
    told: list[str] = []
    deliver(author.study, folder, {Item.CAPTIONS}, options=FRENCH, remark=told.append, **options)
    return told


@pytest.mark.parametrize(
    ("written", "shown"),
    [
        ("Nf3 and then Bb5+.", "♘f3 and then ♗b5+."),
        ("12.Nxe5!? (R1e2) Ngxe5 Qh4e1#", "12.♘xe5!? (♖1e2) ♘gxe5 ♕h4e1#"),
        ("exd8=Q wins; b1=N+ draws", "exd8=♕ wins; b1=♘+ draws"),
        ("the knight goes Nf3-d4", "the knight goes ♘f3-d4"),
        ("Be careful, King's Indian, Room B2, O-O", "Be careful, King's Indian, Room B2, O-O"),
        ("Kevin Rb said NATO", "Kevin Rb said NATO"),
    ],
)
def test_only_moves_get_figurines(written, shown):
    assert with_figurines(written) == shown


def test_moves_in_captions_are_as_written_or_figurines(author, tmp_path):
    author.put(1, spoken="He could play Nf3 or Bc4 here, but exd8=Q is not to be had.")
    deliver(author.study, tmp_path / "a", {Item.CAPTIONS})
    figurines = {Item.CAPTIONS: CaptionOptions(CaptionMoves.FIGURINES)}
    deliver(author.study, tmp_path / "b", {Item.CAPTIONS}, options=figurines)
    for name, move in (("a", "Nf3"), ("b", "♘f3")):
        vtt = " ".join(cue.text for cue in webvtt.read(tmp_path / name / f"{STEM}.vtt"))
        srt = " ".join(line.plaintext for line in pysubs2.load(str(tmp_path / name / f"{STEM}.srt")))
        assert move in vtt
        assert move in srt
    one, other = (webvtt.read(tmp_path / name / f"{STEM}.vtt") for name in "ab")
    assert [(cue.start, cue.end) for cue in one] == [(cue.start, cue.end) for cue in other]
    assert "exd8=♕" in " ".join(cue.text for cue in other)


def test_the_second_file_has_every_time_and_every_word_and_waits_to_be_filled_in(author, tmp_path):
    told = made(author, tmp_path)
    first = webvtt.read(tmp_path / f"{STEM}.vtt")
    second = webvtt.read(tmp_path / f"{STEM}-fr.vtt")
    assert [(cue.start, cue.end) for cue in second] == [(cue.start, cue.end) for cue in first]
    assert {cue.text for cue in second} == {UNTRANSLATED}
    blocks = (tmp_path / f"{STEM}-fr.vtt").read_text(encoding="utf-8").split("\n\n")
    notes = [block.removeprefix("NOTE\n") for block in blocks if block.startswith("NOTE\n")]
    assert notes[1:] == [cue.text for cue in first]
    assert told == [f"Captions left to be translated into “fr”: {len(first)} of {len(first)}."]


def test_what_was_filled_in_stays_where_nothing_else_changes(author, tmp_path):
    made(author, tmp_path)
    path = tmp_path / f"{STEM}-fr.vtt"
    first = webvtt.read(tmp_path / f"{STEM}.vtt")
    text = path.read_text(encoding="utf-8")
    for number in range(len(first)):
        text = text.replace(f"\n{UNTRANSLATED}\n", f"\nPhrase {number}\nsur deux lignes\n", 1)
    path.write_text(text, encoding="utf-8")
    assert made(author, tmp_path) == []
    assert path.read_text(encoding="utf-8") == text
    assert not list(tmp_path.glob("*changed*"))
    assert [cue.text for cue in webvtt.read(path)] == [f"Phrase {n}\nsur deux lignes" for n in range(len(first))]
    kept = deliver(author.study, tmp_path, {Item.CAPTIONS}, options=FRENCH)
    assert all(one.kept for one in kept)


def test_a_translation_goes_along_with_its_words(author, tmp_path):
    made(author, tmp_path)
    path = tmp_path / f"{STEM}-fr.vtt"
    text = path.read_text(encoding="utf-8")
    assert "Thank you for listening." in text
    head, _, tail = text.rpartition(UNTRANSLATED)
    path.write_text(f"{head}Merci de votre attention.{tail}", encoding="utf-8")
    author.put(1, spoken="A whole new line stands at the beginning, and all times are others.")
    told = made(author, tmp_path)
    cues = list(webvtt.read(path))
    assert cues[-1].text == "Merci de votre attention."
    assert {cue.text for cue in cues[:-1]} == {UNTRANSLATED}
    assert f"{len(cues) - 1} of {len(cues)}" in told[0]
    # The file as it was filled in is still there too.
    assert "Merci" in (tmp_path / f"{STEM}-fr (changed).vtt").read_text(encoding="utf-8")


def test_words_that_are_said_twice_keep_both_translations():
    cues = [Caption(0, 1000, ("Check.",), 1), Caption(2000, 3000, ("Check.",), 2)]
    filled = translation_file(cues).text
    filled = filled.replace(f"\n{UNTRANSLATED}\n", "\nÉchec.\n", 1).replace(f"\n{UNTRANSLATED}\n", "\nÉchec !\n", 1)
    again = translation_file(cues, before=filled.replace("\n", "\r\n"))
    assert again.missing == 0
    assert again.text == filled


def test_a_file_that_is_no_translation_does_no_harm(author, tmp_path):
    (tmp_path / f"{STEM}-fr.vtt").write_bytes(b"\xff\xfe\x00 nonsense --> \n\nNOTE\n\n--> \n")
    made(author, tmp_path)
    assert len(webvtt.read(tmp_path / f"{STEM}-fr.vtt")) == len(webvtt.read(tmp_path / f"{STEM}.vtt"))


@pytest.mark.parametrize("tag", ["f", "français", "../x", "fr fr", "en_GB"])
def test_what_is_no_language_is_refused(tag):
    with pytest.raises(DeliveryError, match="no language"):
        CaptionOptions(into=tag)


@given(
    st.lists(st.text(st.characters(codec="utf-8"), min_size=1, max_size=30), min_size=1, max_size=6),
    st.text(max_size=200),
)
def test_any_words_can_be_read_back_and_any_file_may_lie_there(texts, before):
    cues = tuple(Caption(n * 1000, n * 1000 + 900, (text,), n) for n, text in enumerate(texts))
    made = translation_file(cues, before=before)
    again = translation_file(cues, before=made.text)
    assert again == made


def test_the_timeline_of_a_recorded_talk_is_that_of_the_translation(talk):
    cues = captions(talk("One.", "Two, three."))
    text = translation_file(cues).text
    assert text.count("-->") == len(cues) == 2
