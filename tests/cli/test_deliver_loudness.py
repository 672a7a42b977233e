"""How loud a recorded voice is delivered, chosen on the command line and measured in what was delivered."""

from __future__ import annotations

import json
import wave
from pathlib import Path

import chess
import numpy as np
import pytest
from pyloudnorm import Meter

from studyboard.cli.main import main
from studyboard.model.edits import ChangeNode, PutTake, add_move
from studyboard.model.script import SpokenLine
from studyboard.model.takes import SoundTime, TakeEvent
from studyboard.store.study_file import StudyFile

pytest.importorskip("opentimelineio")
RATE = 48_000


@pytest.fixture
def recorded(tmp_path: Path) -> Path:
    """A study with one spoken line and a take of it, ten seconds of noise at some -38 LUFS."""
    path = tmp_path / "talk.studyboard"
    with StudyFile.create(path) as file:
        file.do(add_move(file.study, 0, chess.Move.from_uci("e2e4")))
        file.do(ChangeNode(1, "spoken", SpokenLine("The king's pawn goes first, as it does so often in this club.")))
        noise = np.random.default_rng(2).normal(0, 0.01, 10 * RATE)
        take = file.sound.begin_take("Take 1", RATE, "2030-02-17T20:00:00+00:00")
        event = TakeEvent(SoundTime(0, RATE), 1, 1)
        file.sound.append_sound(take, np.rint(noise * 32_768).astype("<i2").tobytes(), (event,))
        file.do(PutTake(file.sound.finish_take(take)))
    return path


def loudness_of(folder: Path) -> float:
    """By pyloudnorm, a mono file heard from two loudspeakers being 3.01 LU louder than its one channel."""
    (path,) = folder.glob("*-narration.wav")
    with wave.open(str(path)) as sound:
        rate, pcm = sound.getframerate(), sound.readframes(sound.getnframes())
    return float(Meter(rate).integrated_loudness(np.frombuffer(pcm, "<i2") / 32_768)) + 3.01


@pytest.mark.parametrize(
    ("asked", "wanted"), [((), -18.0), (("--loudness", "-18"), -18.0), (("--loudness", "-23"), -23.0)]
)
def test_the_voice_is_delivered_at_the_loudness_that_was_asked_for(
    recorded: Path, tmp_path: Path, asked: tuple[str, ...], wanted: float
) -> None:
    assert main(["deliver", str(recorded), "--to", str(tmp_path / "out"), "--timeline", *asked]) == 0
    # 0.2 LU: the meters of both libraries and the fades at the ends.
    assert loudness_of(tmp_path / "out") == pytest.approx(wanted, abs=0.2)


def test_a_voice_can_be_left_as_it_was_spoken_and_another_loudness_is_another_delivery(
    recorded: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    deliver = ["deliver", str(recorded), "--to", str(tmp_path / "out"), "--timeline", "--json", "--loudness"]
    assert main([*deliver, "as-spoken"]) == 0
    spoken = loudness_of(tmp_path / "out")
    assert -42 < spoken < -30
    capsys.readouterr()
    assert main([*deliver, "as-spoken"]) == 0
    assert all(one["kept"] for one in json.loads(capsys.readouterr().out)["delivered"])
    assert main([*deliver, "-18"]) == 0
    assert not any(one["kept"] for one in json.loads(capsys.readouterr().out)["delivered"])
    assert loudness_of(tmp_path / "out") == pytest.approx(-18.0, abs=0.2)


def test_another_loudness_than_these_is_refused(recorded: Path, tmp_path: Path) -> None:
    with pytest.raises(SystemExit) as refused:
        main(["deliver", str(recorded), "--to", str(tmp_path), "--loudness", "-3"])
    assert refused.value.code == 2
