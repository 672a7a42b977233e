"""The plan is spoken by the system's own synthesiser, each line at its time, and marked wherever it goes."""

from __future__ import annotations

import shutil
from pathlib import Path

import chess
import numpy as np
import pytest

from studyboard.cli.main import main
from studyboard.model.edits import ChangeNode, add_move, apply
from studyboard.model.script import SpokenLine
from studyboard.model.study import Study
from studyboard.sound.scratch_voice import ScratchVoice
from studyboard.sound.synthesiser import SynthesiserError, find_synthesiser, require_synthesiser
from studyboard.store.study_file import StudyFile
from studyboard.timing.plan import plan

pytestmark = pytest.mark.skipif(shutil.which("espeak-ng") is None, reason="needs espeak-ng: apt install espeak-ng")
RATE = 48_000
LINES = (
    "The king's pawn goes first, as it does so often in this club on a Tuesday.",
    "And black answers in the same way, with a pawn of his own.",
    "Nf3 attacks it at once, and the game has begun.",
)


@pytest.fixture
def study() -> Study:
    """Three moves with a line each, the second with a think pause of six seconds."""
    study = Study()
    node = 0
    for uci, line in zip(("e2e4", "e7e5", "g1f3"), LINES, strict=True):
        added = add_move(study, node, chess.Move.from_uci(uci))
        apply(study, added)
        node = added.node
        apply(study, ChangeNode(node, "spoken", SpokenLine(line)))
    apply(study, ChangeNode(2, "think", 6.0))
    return study


def voiced(sound: bytes, start: float, end: float) -> float:
    """The share of this stretch (s) in which somebody speaks."""
    samples = np.frombuffer(sound, "<i2")[round(start * RATE) : round(end * RATE)]
    blocks = np.abs(samples[: len(samples) // 480 * 480].reshape(-1, 480)).max(axis=1)
    return float((blocks > 300).mean())


def test_each_line_is_spoken_where_the_plan_has_it_and_as_long(study: Study) -> None:
    timeline = plan(study)
    voice = ScratchVoice(study, timeline, require_synthesiser())
    shares: list[float] = []
    remarks: list[str] = []
    voice.level(remarks.append, shares.append)
    sound = b"".join(voice.chunks())
    assert len(sound) == 2 * voice.samples
    assert voice.samples == round(timeline.seconds * RATE)
    for stretch in timeline.stretches:
        assert voiced(sound, stretch.words[0].at, stretch.speech_end) > 0.6
        assert voiced(sound, stretch.speech_end - 0.8, stretch.speech_end) > 0, "it is spoken to its end"
    assert voiced(sound, timeline.stretches[1].end - 5.0, timeline.stretches[1].end) == 0, "the think pause is silent"
    assert shares == sorted(shares)
    assert remarks == ["The voice is a scratch voice, spoken by espeak-ng: not for publishing."]
    assert voice.read_sound(1, RATE, 100) == sound[2 * RATE : 2 * RATE + 200]


def test_a_line_for_which_there_is_no_time_is_cut_and_told(study: Study) -> None:
    apply(study, ChangeNode(1, "intended", 0.8))
    timeline = plan(study)
    voice = ScratchVoice(study, timeline, require_synthesiser())
    remarks: list[str] = []
    voice.level(remarks.append)
    assert len(b"".join(voice.chunks())) == 2 * voice.samples
    assert remarks[1] == "One line could not be spoken in its planned time."


def test_the_work_can_be_stopped(study: Study) -> None:
    class EnoughError(Exception):
        """The user has had enough."""

    def stop(share: float) -> None:
        if share > 0:
            raise EnoughError

    voice = ScratchVoice(study, plan(study), require_synthesiser())
    with pytest.raises(EnoughError):
        voice.level(lambda _: None, stop)
    voice.level(lambda _: None)
    assert b"".join(voice.chunks())


def test_another_line_is_another_sound(study: Study) -> None:
    first = ScratchVoice(study, plan(study), require_synthesiser()).digest()
    assert ScratchVoice(study, plan(study), require_synthesiser()).digest() == first
    apply(study, ChangeNode(1, "spoken", SpokenLine("Something else is said here instead.")))
    assert ScratchVoice(study, plan(study), require_synthesiser()).digest() != first


def test_without_a_synthesiser_it_is_said_what_to_install(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("PATH", str(tmp_path))
    assert find_synthesiser() is None
    with pytest.raises(SynthesiserError, match="apt install espeak-ng"):
        require_synthesiser()


def test_a_synthesiser_that_breaks_is_told_in_a_sentence(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    broken = tmp_path / "espeak-ng"
    broken.write_text("#!/bin/sh\nexit 3\n")
    broken.chmod(0o755)
    monkeypatch.setenv("PATH", f"{tmp_path}:/bin:/usr/bin")
    with pytest.raises(SynthesiserError, match="did not speak"):
        require_synthesiser().say("Good evening.", "en", 160)


def test_a_video_with_a_scratch_voice_has_sound_and_says_so_in_the_picture_and_in_the_file(
    study: Study, tmp_path: Path
) -> None:
    av = pytest.importorskip("av")
    path = tmp_path / "talk.studyboard"
    StudyFile.create(path, study).close()
    asked = ["deliver", str(path), "--video", "--lines", "720", "--rate", "25", "--changes-only", "--to"]
    assert main([*asked, str(tmp_path / "silent")]) == 0
    assert main([*asked, str(tmp_path / "spoken"), "--scratch-voice"]) == 0
    (silent,), (spoken,) = ((tmp_path / name).glob("*.mp4") for name in ("silent", "spoken"))
    with av.open(str(silent)) as plain, av.open(str(spoken)) as marked:
        assert not plain.streams.audio
        assert "comment" not in plain.metadata
        assert marked.streams.audio
        assert marked.metadata["comment"] == "scratch voice"
        corners = []
        for film in (plain, marked):
            frame = next(film.decode(video=0)).to_ndarray(format="rgb24").astype(int)
            corners.append(frame[:60, -260:])
        changed = np.abs(corners[0] - corners[1]).max(axis=2) > 60
        assert changed.sum() > 2000, "the label is in the corner"


def test_a_language_that_it_does_not_speak_is_told_in_its_own_words_and_not_as_a_command() -> None:
    with pytest.raises(SynthesiserError, match=r"did not speak: .*voice does not exist\.$") as raised:
        require_synthesiser().say("Hello.", "xyzzy", 120)
    assert "--stdin" not in str(raised.value)
