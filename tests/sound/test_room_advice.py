"""What is wrong with a room is said in sentences, the worst first, with what to do about it."""

from __future__ import annotations

from dataclasses import replace

from studyboard.sound.levels import SILENCE
from studyboard.sound.loudness import Loudness
from studyboard.sound.room import Hum, RoomSound
from studyboard.sound.room_advice import Weight, room_advice, voice_advice, worst

GOOD_ROOM = RoomSound(5.0, -66.0, -66.0, None, 0, 0.0, False, 0.0)
GOOD_VOICE = Loudness(-24.0, -9.0, -20.0, -22.0, 6.0)


def test_a_quiet_room_and_a_well_placed_voice_are_praised() -> None:
    assert [str(one.weight) for one in room_advice(GOOD_ROOM, 48_000)] == ["good"]
    assert [one.says for one in voice_advice(GOOD_ROOM, GOOD_VOICE)] == [
        "The voice is well placed: −24 LUFS, peaks −9 dBTP."
    ]


def test_loud_noise_comes_before_the_clicks_in_it() -> None:
    found = room_advice(replace(GOOD_ROOM, noise=-44.0, clicks=2), 48_000)
    assert [one.weight for one in found] == [Weight.BAD, Weight.MIND]
    assert found[0].says == "The noise of the room is −44 dBFS: it is heard in every pause."
    assert found[1].says == "There were 2 clicks."
    assert worst(found) is Weight.BAD


def test_hum_is_told_with_its_mains_and_its_strongest_line() -> None:
    found = room_advice(replace(GOOD_ROOM, noise=-52.0, hum=Hum(50.0, -53.0, 100.0)), 48_000)
    assert any(one.says == "The mains hum at 50 Hz: −53 dBFS, strongest at 100 Hz." for one in found)
    assert all(one.do for one in found)


def test_hum_below_the_smallest_step_of_a_sample_is_not_told() -> None:
    found = room_advice(replace(GOOD_ROOM, noise=-75.0, hum=Hum(50.0, -120.0, 50.0)), 48_000)
    assert [one.says for one in found] == ["The room is quiet: −75 dBFS."]


def test_a_dead_microphone_is_all_that_is_said_of_it() -> None:
    (only,) = room_advice(replace(GOOD_ROOM, noise=SILENCE, without_hum=SILENCE), 48_000)
    assert only.weight is Weight.BAD
    assert "muted" in only.do


def test_a_telephone_s_rate_is_told() -> None:
    first = room_advice(GOOD_ROOM, 16_000)[0]
    assert first.says == "The microphone delivers 16000 samples a second, as a telephone does."
    assert worst(room_advice(GOOD_ROOM, 44_100)) is Weight.GOOD


def test_a_voice_at_the_edge_and_a_faint_one_are_told_what_to_turn() -> None:
    hot = voice_advice(GOOD_ROOM, replace(GOOD_VOICE, true_peak=-1.0))
    assert hot[0].weight is Weight.BAD
    assert hot[0].do == "Turn its gain down by about 8 dB."
    faint = voice_advice(replace(GOOD_ROOM, noise=-85.0), Loudness(-46.0, -30.0, -42.0, -44.0, 6.0))
    assert faint[0].weight is Weight.MIND
    assert faint[0].do == "Come nearer, or turn the microphone's gain up by about 21 dB."


def test_the_room_behind_a_voice_is_told_as_it_will_be_published() -> None:
    found = voice_advice(replace(GOOD_ROOM, noise=-52.0), replace(GOOD_VOICE, integrated=-30.0))
    assert found[0].says == "Published at −18 LUFS, the room behind the voice will stand at −40 dBFS."
    assert found[0].weight is Weight.BAD


def test_where_nobody_spoke_that_is_said() -> None:
    silent = Loudness(None, SILENCE, SILENCE, SILENCE, 6.0)
    assert voice_advice(GOOD_ROOM, silent)[0].says == "No voice was heard above the noise of the room."
    assert voice_advice(replace(GOOD_ROOM, noise=-40.0), replace(GOOD_VOICE, integrated=-38.0))[0].weight is Weight.BAD
