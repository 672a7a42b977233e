"""Recording through a microphone that is real to the program: PulseAudio, with the test at the other end."""

from __future__ import annotations

import time
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
import shiboken6
from pytestqt.qtbot import QtBot

from studyboard.model.edits import PutTake
from studyboard.model.script import Part
from studyboard.model.takes import Take
from studyboard.sound.devices import inputs
from studyboard.sound.errors import NoMicrophoneError
from studyboard.sound.levels import SILENCE
from studyboard.sound.pcm import RATE, samples_of
from studyboard.sound.recorder import Recorder, RecorderState
from studyboard.store.study_file import StudyFile
from tests.sound.hearing import Mouth, Tap
from tests.sound.spoken import onsets, speech
from tests.sound.virtual_microphone import SoundServer, write_track

#: How long anything that must happen may take (ms).
PATIENCE = 20_000
#: How far an event of the board may lie from the sound that it belongs to (s): about a picture of video and a half.
ALLOWED = 0.050


def begin(recorder: Recorder, qtbot: QtBot, name: str = "Take 1") -> None:
    with qtbot.waitSignal(recorder.running, timeout=PATIENCE):
        recorder.start(name)


def record_until(recorder: Recorder, qtbot: QtBot, seconds: float) -> None:
    qtbot.waitUntil(lambda: recorder.samples >= seconds * RATE, timeout=PATIENCE)


def end(recorder: Recorder, qtbot: QtBot) -> Take:
    with qtbot.waitSignal(recorder.stopped, timeout=PATIENCE) as stopped:
        recorder.stop()
    take = stopped.args[0]
    assert isinstance(take, Take)
    return take


def sine(path: Path, seconds: float, hertz: float = 997.0, peak: float = 12_000) -> Path:
    moments = np.arange(round(seconds * RATE)) / RATE
    return write_track(path, (peak * np.sin(2 * np.pi * hertz * moments)).astype("<i2").tobytes(), RATE)


def phase_jumps(samples: np.ndarray, hertz: float = 997.0, block: int = 480) -> np.ndarray:
    """By how much the phase of a sine leaps from block to block (rad): one lost sample at 997 Hz is 0.13."""
    usable = len(samples) // block * block
    turning = np.exp(-2j * np.pi * hertz * np.arange(usable) / RATE) * samples[:usable]
    weights = np.hanning(block)
    phases = np.angle((turning.reshape(-1, block) * weights).sum(axis=1))
    return np.abs(np.angle(np.exp(1j * np.diff(phases))))


def test_board_events_lie_within_50_ms_of_the_words_at_which_they_were_triggered(
    recorder: Recorder, sound_server: SoundServer, study_file: StudyFile, study_path: Path, tmp_path: Path, qtbot: QtBot
) -> None:
    words = speech(tmp_path)
    tap = Tap(sound_server, "mouth")
    tap.onset.connect(lambda: recorder.stamp(tap.onsets, None))
    qtbot.waitUntil(lambda: tap.listening, timeout=PATIENCE)
    begin(recorder, qtbot)

    mouth = Mouth(sound_server, words.path)
    qtbot.waitUntil(lambda: tap.onsets == len(words.onsets) and not mouth.speaking, timeout=PATIENCE)
    take = end(recorder, qtbot)
    tap.stop()
    study_file.do(PutTake(take))
    study_file.close()

    with StudyFile.open(study_path) as again:
        kept = again.study.takes[take.id]
        sound = np.frombuffer(again.sound.read_sound(take.id), "<i2")
    heard = onsets(sound, RATE)
    assert len(heard) == len(words.onsets), "every word is in the recording, and nothing else"
    spacing = np.diff(heard) / RATE - np.diff(words.onsets)
    assert np.abs(spacing).max() < 0.100, "the words lie as far apart as they were said, but for stutters of the player"
    assert [event.node for event in kept.events] == list(range(1, len(heard) + 1))
    errors = [(event.at.samples - word) / RATE for event, word in zip(kept.events, heard, strict=True)]
    assert max(map(abs, errors)) <= ALLOWED, [f"{error * 1000:.1f} ms" for error in errors]


def test_nothing_is_lost_while_the_window_is_too_busy_to_listen(
    hum: str, recorder: Recorder, study_file: StudyFile, qtbot: QtBot
) -> None:
    with qtbot.waitSignal(recorder.running, timeout=PATIENCE):
        recorder.start("Take 1", hum)
    record_until(recorder, qtbot, 1.0)
    first, began = recorder.samples, time.monotonic()
    assert hold_the_interpreter() > 0.7
    record_until(recorder, qtbot, 5.0)
    heard = (recorder.samples - first) / RATE
    assert heard == pytest.approx(time.monotonic() - began, abs=2.2), "the sine comes in pieces of two seconds"
    take = end(recorder, qtbot)

    sound = np.frombuffer(study_file.sound.read_sound(take.id), "<i2")
    assert len(sound) / RATE > 5.0
    assert np.abs(sound.astype(int)).max() > 10_000
    assert phase_jumps(sound).max() < 0.03


@pytest.fixture
def hum(sound_server: SoundServer, qtbot: QtBot) -> Iterator[str]:
    module = sound_server.plug_in_hum("hum", 997)
    qtbot.waitUntil(lambda: _can_choose("hum"), timeout=PATIENCE)
    yield "hum"
    sound_server.unplug(module)


def hold_the_interpreter() -> float:
    """Let no other thread of Python run, which is worse than any window does; returns for how long (s)."""
    turns = 1_000_000
    while True:
        began = time.monotonic()
        sum(range(turns))
        if (took := time.monotonic() - began) > 0.7:
            return took
        turns *= 2


def test_a_take_has_as_many_samples_as_the_clock_says(recorder: Recorder, study_file: StudyFile, qtbot: QtBot) -> None:
    begin(recorder, qtbot)
    first, began = recorder.samples, time.monotonic()
    record_until(recorder, qtbot, 6.0)
    stamped = recorder.stamp(1, None)
    elapsed = time.monotonic() - began
    take = end(recorder, qtbot)

    assert stamped is not None
    assert elapsed > 5.5
    assert (stamped - first) / RATE == pytest.approx(elapsed, abs=0.06)
    assert stamped <= take.samples < stamped + RATE // 2
    assert study_file.sound.length(take.id) == take.samples


def test_what_is_said_in_a_pause_is_not_in_the_take(
    recorder: Recorder, sound_server: SoundServer, study_file: StudyFile, tmp_path: Path, qtbot: QtBot
) -> None:
    begin(recorder, qtbot)
    record_until(recorder, qtbot, 0.5)
    recorder.pause()
    at_pause = recorder.stamp(1, None)
    with qtbot.waitSignal(recorder.level, timeout=PATIENCE, check_params_cb=lambda peak, rms: peak > -20):
        mouth = Mouth(sound_server, sine(tmp_path / "aside.wav", 0.5))
    qtbot.waitUntil(lambda: not mouth.speaking, timeout=PATIENCE)
    with qtbot.waitSignal(recorder.level, timeout=PATIENCE, check_params_cb=lambda peak, rms: peak < -60):
        pass
    assert recorder.stamp(2, None) == at_pause
    recorder.resume()
    record_until(recorder, qtbot, 1.0)
    take = end(recorder, qtbot)

    sound = samples_of(study_file.sound.read_sound(take.id))
    assert 1.0 <= take.length.seconds < 1.5
    assert max(sound) == 0
    assert [event.at.samples for event in take.events] == [at_pause, at_pause]


def test_a_listening_microphone_shows_its_level_and_a_take_begins_at_once(
    hum: str, recorder: Recorder, qtbot: QtBot
) -> None:
    with qtbot.waitSignal(recorder.level, timeout=PATIENCE) as loud:
        recorder.listen(hum)
    assert loud.args[0] == pytest.approx(-6.02, abs=0.05), "the hum has half of full scale"
    assert loud.args[1] == pytest.approx(-6.02 - 3.01, abs=0.05)
    with qtbot.waitSignal(recorder.level, timeout=PATIENCE, check_params_cb=lambda peak, rms: peak < -20) as silent:
        recorder.listen()
    assert silent.args == [SILENCE, SILENCE]

    asked = time.monotonic()
    begin(recorder, qtbot)
    assert time.monotonic() - asked < 0.3
    take = end(recorder, qtbot)
    assert take is not None
    assert recorder.state is RecorderState.LISTENING


def test_a_microphone_that_is_driven_too_hard_is_told(
    recorder: Recorder, sound_server: SoundServer, tmp_path: Path, qtbot: QtBot
) -> None:
    track = write_track(tmp_path / "square.wav", _square(), RATE)
    with qtbot.waitSignal(recorder.level, timeout=PATIENCE):
        recorder.listen()
    with qtbot.waitSignal(recorder.clipped, timeout=PATIENCE):
        mouth = Mouth(sound_server, track)
    mouth.shut()


def _square() -> bytes:
    return np.tile(np.repeat(np.array([32_767, -32_768], "<i2"), 50), 480).tobytes()


def test_an_event_before_the_first_sound_belongs_to_the_first_sample(recorder: Recorder, qtbot: QtBot) -> None:
    with qtbot.waitSignal(recorder.running, timeout=PATIENCE):
        recorder.start("Take 1")
        assert recorder.stamp(7, Part.GREETING) == 0
    take = end(recorder, qtbot)
    assert [(event.at.samples, event.node, event.beat) for event in take.events] == [(0, 7, Part.GREETING)]


def test_a_stamp_that_is_made_late_belongs_to_the_moment_of_the_key(recorder: Recorder, qtbot: QtBot) -> None:
    begin(recorder, qtbot)
    record_until(recorder, qtbot, 1.0)
    pressed = time.monotonic()
    place = recorder.sample_at(pressed)
    record_until(recorder, qtbot, recorder.samples / RATE + 0.5)
    assert recorder.stamp(3, None, pressed) == pytest.approx(place, abs=0.005 * RATE)
    assert recorder.sample_at() >= place + 0.4 * RATE
    take = end(recorder, qtbot)
    assert recorder.sample_at() == 0
    assert [event.at.samples for event in take.events] == [pytest.approx(place, abs=0.005 * RATE)]


def test_outside_a_take_the_board_is_not_stamped(recorder: Recorder) -> None:
    assert recorder.stamp(1, None) is None


def test_several_takes_follow_each_other(recorder: Recorder, study_file: StudyFile, qtbot: QtBot) -> None:
    takes = []
    for name in ("Opening", "Opening again"):
        begin(recorder, qtbot, name)
        record_until(recorder, qtbot, 0.3)
        takes.append(end(recorder, qtbot))
        study_file.do(PutTake(takes[-1]))
    assert [take.name for take in study_file.study.takes.values()] == ["Opening", "Opening again"]
    assert all(study_file.sound.length(take.id) == take.samples for take in takes)


def test_a_take_that_is_stopped_before_any_sound_leaves_nothing_behind(
    recorder: Recorder, study_file: StudyFile, qtbot: QtBot
) -> None:
    with qtbot.waitSignal(recorder.stopped, timeout=PATIENCE) as stopped:
        recorder.start("Take 1")
        recorder.stop()
    assert stopped.args == [None]
    assert not study_file.study.takes


def test_closing_ends_a_running_take_with_all_that_was_heard(
    recorder: Recorder, study_file: StudyFile, qtbot: QtBot
) -> None:
    begin(recorder, qtbot)
    record_until(recorder, qtbot, 0.5)
    told: list[Take] = []
    recorder.stopped.connect(told.append)
    heard = recorder.samples
    recorder.close()
    assert recorder.state is RecorderState.CLOSED
    assert [take.complete for take in told] == [True]
    assert study_file.sound.length(told[0].id) >= heard


def test_a_recorder_that_is_thrown_away_keeps_what_was_heard(
    sound_server: SoundServer, study_path: Path, qtbot: QtBot
) -> None:
    with StudyFile.create(study_path) as file:
        recorder = Recorder(file.sound_writer)
        begin(recorder, qtbot)
        record_until(recorder, qtbot, 0.5)
        heard = recorder.samples
        shiboken6.delete(recorder)
    with StudyFile.open(study_path) as again:
        (take,) = again.study.takes.values()
        assert take.complete
        assert take.samples >= heard


def test_a_microphone_that_is_unplugged_ends_the_take_with_what_is_there(
    recorder: Recorder, sound_server: SoundServer, study_file: StudyFile, qtbot: QtBot
) -> None:
    spare = sound_server.plug_in("spare")
    qtbot.waitUntil(lambda: _can_choose("spare"), timeout=PATIENCE)
    with qtbot.waitSignal(recorder.running, timeout=PATIENCE):
        recorder.start("Take 1", "spare")
    record_until(recorder, qtbot, 0.5)
    sentences: list[str] = []
    recorder.failed.connect(sentences.append)
    with qtbot.waitSignal(recorder.stopped, timeout=PATIENCE) as stopped:
        sound_server.unplug(spare)
    take = stopped.args[0]
    assert len(sentences) == 1
    assert sentences[0].startswith("The microphone “spare” has been unplugged. The take ends here;")
    assert take.samples >= 0.5 * RATE
    assert study_file.sound.length(take.id) == take.samples
    assert recorder.state is RecorderState.CLOSED
    with pytest.raises(NoMicrophoneError, match="spare is not plugged in"):
        recorder.start("Take 2", "spare")


def _can_choose(name: str) -> bool:
    return name in {device.id for device in inputs()}


def test_a_microphone_that_falls_silent_for_good_ends_the_take(
    recorder: Recorder, sound_server: SoundServer, qtbot: QtBot
) -> None:
    begin(recorder, qtbot)
    record_until(recorder, qtbot, 0.3)
    sentences: list[str] = []
    recorder.failed.connect(sentences.append)
    try:
        with qtbot.waitSignal(recorder.stopped, timeout=PATIENCE) as stopped:
            sound_server.control("suspend-source", "microphone", "1")
    finally:
        sound_server.control("suspend-source", "microphone", "0")
    assert [sentence for sentence in sentences if "has stopped delivering sound" in sentence] == sentences != []
    assert stopped.args[0].samples >= 0.3 * RATE
