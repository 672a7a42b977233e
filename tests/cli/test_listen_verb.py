"""A talk that is read aloud once: its words, its moves, and the take whose board follows the voice."""

from __future__ import annotations

import json
import wave
from pathlib import Path

import chess
import numpy as np
import pytest

from studyboard.cli.main import main
from studyboard.model.edits import ChangeLanguage, ChangeLine, ChangeNode, add_move
from studyboard.model.script import Cue, FreeLine, Part, SpokenLine
from studyboard.store.study_file import StudyFile
from studyboard.timing.recorded import recorded_talk
from tests.sound import known_words
from tests.sound.known_words import RATE, joined, speak

pytest.importorskip("pocketsphinx")
pytestmark = pytest.mark.skipif(not known_words.available(), reason="libespeak-ng is not installed")

GREETING = "Good evening, and welcome to the harbour club."
FIRST = "White opens with the king's pawn, and black answers with a pawn to e5 at once."
SECOND = "The knight comes out to f3, where it looks at the pawn."


@pytest.fixture
def study(tmp_path: Path) -> Path:
    """Three moves with two lines and a greeting; black's move has a cue in the first line."""
    path = tmp_path / "talk.studyboard"
    with StudyFile.create(path) as file:
        for parent, uci in ((0, "e2e4"), (1, "e7e5"), (2, "g1f3")):
            file.do(add_move(file.study, parent, chess.Move.from_uci(uci)))
        file.do(ChangeLine(Part.GREETING, FreeLine(SpokenLine(GREETING))))
        file.do(ChangeNode(2, "spoken", SpokenLine(FIRST, (Cue(1, node=1), Cue(8, node=2)))))
        file.do(ChangeNode(3, "spoken", SpokenLine(SECOND, (Cue(4, node=3),))))
    return path


@pytest.fixture
def recording(tmp_path: Path) -> tuple[Path, tuple[float, ...]]:
    """The three lines read aloud, and when each of their words begins."""
    speech = joined([speak(line, "en-us", 150) for line in (GREETING, FIRST, SECOND)], 0.6)
    path = tmp_path / "read aloud.wav"
    with wave.open(str(path), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(RATE)
        file.writeframes(speech.sound.tobytes())
    return path, speech.words


def test_each_move_is_found_at_its_word(study, recording, capsys) -> None:
    sound, known = recording
    assert main(["listen", str(study), str(sound), "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert [word["word"] for word in found["words"]] == " ".join((GREETING, FIRST, SECOND)).split()
    off = np.abs(np.array([word["start"] for word in found["words"]]) - np.array(known))
    assert np.nanmax(off) < 0.15
    assert [move["san"] for move in found["moves"]] == ["e4", "e5", "Nf3"]
    first = len(GREETING.split())
    expected = [known[first + 1], known[first + 8], known[first + len(FIRST.split()) + 4]]
    assert [move["at"] for move in found["moves"]] == pytest.approx(expected, abs=0.15)
    assert found["unmatched"] == []


def test_a_line_that_was_not_said_is_among_the_unmatched_and_not_among_the_words(study, tmp_path, capsys) -> None:
    speech = joined([speak(line, "en-us", 150) for line in (GREETING, SECOND)], 0.6)
    sound = tmp_path / "without the second line.wav"
    with wave.open(str(sound), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(RATE)
        file.writeframes(speech.sound.tobytes())
    assert main(["listen", str(study), str(sound), "--json"]) == 1
    found = json.loads(capsys.readouterr().out)
    assert "answers" not in [word["word"] for word in found["words"]]
    assert "knight" in [word["word"] for word in found["words"]]
    assert any(one["kind"] == "skipped" and "answers" in one["text"] for one in found["unmatched"])


def test_the_recording_becomes_a_take_whose_board_follows_the_voice(study, recording, capsys) -> None:
    sound, known = recording
    assert main(["listen", str(study), str(sound), "--keep"]) == 0
    assert "1... e5" in capsys.readouterr().out
    with StudyFile.open(study) as file:
        (take,) = file.study.takes.values()
        assert take.origin == "read aloud.wav"
        assert [line.text for line in take.said] == [GREETING, FIRST, SECOND]
        assert recorded_talk(file.study).told
        shown = {event.node: event.at.seconds for event in take.events}
        assert shown[2] == pytest.approx(known[len(GREETING.split()) + 8], abs=0.15)


def test_the_board_of_a_take_follows_the_voice(study, recording, capsys) -> None:
    sound, _ = recording
    assert main(["takes", str(study), "--add", str(sound)]) == 0
    with StudyFile.open(study) as file:
        (before,) = file.study.takes.values()
    assert main(["listen", str(study), "--take", "1", "--keep"]) == 0
    with StudyFile.open(study) as file:
        (after,) = file.study.takes.values()
        assert after.events != before.events
        assert after.said
        file.undo()
        assert file.study.takes[1] == before


def test_what_cannot_be_listened_to_is_told_in_a_line(study, recording, tmp_path, capsys) -> None:
    sound, _ = recording
    noise = tmp_path / "no sound.txt"
    noise.write_text("This is a text.")
    for arguments in ([], [str(sound), "--take", "1"], [str(noise)], ["--take", "7"], [str(tmp_path / "gone.wav")]):
        assert main(["listen", str(study), *arguments]) == 2
        told = capsys.readouterr().err
        assert told.startswith("studyboard: ")
        assert told.count("\n") == 1


def test_a_script_in_another_language_is_not_listened_for(study, recording, capsys) -> None:
    with StudyFile.open(study) as file:
        file.do(ChangeLanguage("de_DE"))
    assert main(["listen", str(study), str(recording[0])]) == 2
    assert "Only English" in capsys.readouterr().err
