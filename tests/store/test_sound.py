"""Sound is safe a second after it was spoken, whoever else is working on the study."""

from __future__ import annotations

import random
import sqlite3
import threading

import pytest

from studyboard.model.edits import ChangeNode, DropTake, PutTake
from studyboard.model.script import Part
from studyboard.model.takes import SoundTime, Take, TakeEvent
from studyboard.store.errors import SoundMissingError, StudyClosedError
from studyboard.store.study_file import StudyFile

RATE = 8_000
STARTED = "2030-05-17T21:30:00.250+02:00"


def samples(first, count):
    """Sound in which every sample is its own number."""
    return b"".join((number % 65_536).to_bytes(2, "little") for number in range(first, first + count))


def noise(count):
    """Sound that nothing can make smaller."""
    return random.Random(7).randbytes(2 * count)


def event(at, node, beat=None):
    return TakeEvent(SoundTime(at, RATE), node, beat)


def record(sound, seconds=3, name="one"):
    take = sound.begin_take(name, RATE, STARTED)
    for second in range(seconds):
        at = second * RATE
        sound.append_sound(take, samples(at, RATE), (event(at + 5, second, second),))
    return take


@pytest.fixture
def file(path):
    with StudyFile.create(path) as file:
        yield file


def test_a_finished_take_knows_its_length_and_its_events(file):
    take = record(file.sound)
    finished = file.sound.finish_take(take)
    events = (event(5, 0, 0), event(RATE + 5, 1, 1), event(2 * RATE + 5, 2, 2))
    assert finished == Take(take, "one", RATE, 3 * RATE, STARTED, events)


def test_the_events_of_a_take_may_belong_to_a_part_or_to_no_beat(file):
    take = file.sound.begin_take("one", RATE, STARTED)
    events = (event(0, 0, Part.GREETING), event(4, 7, None))
    file.sound.append_sound(take, samples(0, 8), events)
    file.do(PutTake(file.sound.finish_take(take)))
    assert file.study.takes[take].events == events


def test_any_stretch_of_sound_can_be_read(file):
    take = record(file.sound)
    assert file.sound.read_sound(take) == samples(0, 3 * RATE)
    for start, count in [(0, 1), (RATE - 1, 2), (RATE, RATE), (10, 2 * RATE), (3 * RATE - 1, 1), (5, 0)]:
        assert file.sound.read_sound(take, start, count) == samples(start, count)
    assert file.sound.read_sound(take, 2 * RATE + 7) == samples(2 * RATE + 7, RATE - 7)


def test_reading_beyond_the_end_gives_what_is_there(file):
    take = record(file.sound, seconds=1)
    assert file.sound.read_sound(take, RATE - 2, 100) == samples(RATE - 2, 2)
    assert file.sound.read_sound(take, RATE, 100) == b""
    assert file.sound.read_sound(take, RATE + 50, 100) == b""


def test_pieces_of_any_length_can_be_stored(file):
    take = file.sound.begin_take("one", RATE, STARTED)
    at = 0
    for count in (1, 700, 0, 13, 9_000):
        file.sound.append_sound(take, samples(at, count))
        at += count
    assert file.sound.length(take) == at
    assert b"".join(file.sound.sound_chunks(take)) == samples(0, at)
    assert file.sound.read_sound(take, 695, 30) == samples(695, 30)


def test_half_of_a_sample_is_refused(file):
    take = file.sound.begin_take("one", RATE, STARTED)
    with pytest.raises(ValueError, match="sample"):
        file.sound.append_sound(take, b"\1\2\3")
    assert file.sound.length(take) == 0


def test_takes_get_ids_that_were_never_used(file):
    first = record(file.sound, 1)
    second = record(file.sound, 1)
    assert second == first + 1
    file.do(PutTake(file.sound.finish_take(second)))
    file.undo()
    file.sound.purge_discarded()
    assert record(file.sound, 1) == second + 1


def test_a_take_enters_the_study_by_an_edit_and_leaves_it_by_undo(file, path):
    take = record(file.sound)
    file.do(PutTake(file.sound.finish_take(take)))
    assert file.study.takes[take].complete
    file.undo()
    assert take not in file.study.takes
    file.redo()
    file.close()
    with StudyFile.open(path) as again:
        assert again.recovered == ()
        assert again.study.takes[take].samples == 3 * RATE
        assert again.sound.read_sound(take, 4, 2) == samples(4, 2)


def test_a_take_can_be_renamed_and_discarded_without_losing_its_events(file, path):
    take = record(file.sound)
    finished = file.sound.finish_take(take)
    file.do(PutTake(finished))
    discarded = Take(take, "the good one", RATE, 3 * RATE, STARTED, finished.events, kept=False)
    file.do(PutTake(discarded))
    file.close()
    with StudyFile.open(path) as again:
        assert again.study.takes[take] == discarded


def test_purging_deletes_the_sound_of_discarded_and_dropped_takes_alone(file, path):
    kept, discarded, dropped = (record(file.sound, name=name) for name in ("kept", "discarded", "dropped"))
    for take in (kept, discarded, dropped):
        file.do(PutTake(file.sound.finish_take(take)))
    running = record(file.sound, name="running")
    take = file.study.takes[discarded]
    file.do(PutTake(Take(take.id, take.name, take.rate, take.samples, take.started, take.events, kept=False)))
    file.do(DropTake(dropped))
    assert 0 < file.sound.purge_discarded() < 2 * 3 * RATE * 2
    assert file.sound.purge_discarded() == 0
    for take in (kept, running):
        assert file.sound.read_sound(take) == samples(0, 3 * RATE)
    for take in (discarded, dropped):
        with pytest.raises(SoundMissingError, match="purged"):
            file.sound.read_sound(take)
    while file.can_undo:
        file.undo()


def test_purging_gives_the_room_on_the_disk_back(file, path):
    take = file.sound.begin_take("one", RATE, STARTED)
    for _ in range(40):
        file.sound.append_sound(take, noise(RATE))
    file.do(PutTake(file.sound.finish_take(take)))
    file.close()
    full = path.stat().st_size
    with StudyFile.open(path) as again:
        again.do(DropTake(take))
        again.sound.purge_discarded()
    assert path.stat().st_size < full - 30 * RATE * 2


def test_finishing_a_take_that_was_never_begun_is_refused(file):
    with pytest.raises(SoundMissingError, match="never begun"):
        file.sound.finish_take(5)


def test_sound_of_a_take_that_is_not_there_is_refused(file):
    with pytest.raises(SoundMissingError):
        file.sound.read_sound(3)
    with pytest.raises(SoundMissingError):
        list(file.sound.sound_chunks(3))


# Two at once


def test_one_thread_records_while_another_edits(path):
    with StudyFile.create(path) as file:
        writer = file.sound_writer()
        taken = []
        failed = []

        def work():
            try:
                take = record(writer, seconds=60)
                taken.append(writer.finish_take(take))
            except Exception as reason:
                failed.append(reason)

        thread = threading.Thread(target=work)
        thread.start()
        edits = 0
        while thread.is_alive() or edits < 60:
            file.do(ChangeNode(0, "nags", (edits % 256,)))
            edits += 1
        thread.join()
        writer.close()
        assert failed == []
        file.do(PutTake(taken[0]))
        assert file.sound.read_sound(taken[0].id) == samples(0, 60 * RATE)
        assert len(file.history()) == edits + 1


def test_one_sound_may_be_read_by_several_threads(file):
    take = record(file.sound, seconds=5)
    wrong = []

    def work(start):
        for at in range(start, 4 * RATE, 997):
            if file.sound.read_sound(take, at, 300) != samples(at, 300):
                wrong.append(at)

    threads = [threading.Thread(target=work, args=(start,)) for start in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert wrong == []


def test_closing_the_file_stops_a_writer_with_a_sentence(path):
    file = StudyFile.create(path)
    writer = file.sound_writer()
    take = record(writer)
    file.close()
    assert writer.closed
    with pytest.raises(StudyClosedError, match="closed"):
        writer.append_sound(take, samples(0, 5))


# After a crash


def test_a_take_that_was_cut_off_is_kept_up_to_its_last_stored_second(path, content):
    with StudyFile.create(path) as file:
        take = record(file.sound)
    with StudyFile.open(path) as file:
        (recovered,) = file.recovered
        assert (recovered.id, recovered.samples, recovered.complete, recovered.kept) == (take, 3 * RATE, False, True)
        assert file.study.takes == {take: recovered}
        assert len(recovered.events) == 3
        assert not file.can_undo
        assert file.study.next_take == take + 1
        known = content(file.study)
    with StudyFile.open(path) as file:
        assert file.recovered == ()
        assert content(file.study) == known


def test_a_take_that_was_finished_but_not_put_into_the_study_is_kept_whole(path):
    with StudyFile.create(path) as file:
        finished = file.sound.finish_take(record(file.sound))
    with StudyFile.open(path) as file:
        assert file.recovered == (finished,)
        assert file.study.takes[finished.id].complete


def test_a_take_without_any_sound_is_not_kept(path):
    with StudyFile.create(path) as file:
        take = file.sound.begin_take("silence", RATE, STARTED)
        file.sound.append_sound(take, b"", (event(0, 0),))
    with StudyFile.open(path) as file:
        assert file.recovered == ()
        assert file.study.takes == {}
        record(file.sound, 1)
    connection = sqlite3.connect(path)
    assert connection.execute("SELECT count(*) FROM take_event WHERE samples = 0").fetchone() == (0,)
    connection.close()


def test_a_recovered_take_survives_undoing_everything(path):
    with StudyFile.create(path) as file:
        file.do(ChangeNode(0, "note", "before"))
        take = record(file.sound)
    with StudyFile.open(path) as file:
        file.undo()
        assert take in file.study.takes


def test_one_who_only_reads_leaves_a_running_take_alone(path):
    with StudyFile.create(path) as file:
        take = record(file.sound)
        with StudyFile.open(path, read_only=True) as reader:
            assert reader.recovered == ()
            assert reader.study.takes == {}
            assert reader.sound.length(take) == 3 * RATE
        file.do(PutTake(file.sound.finish_take(take)))
