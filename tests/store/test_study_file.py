"""A study and its file: what is done is on the disk, and can be taken back for ever."""

from __future__ import annotations

import os
import sqlite3
import threading
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass

import chess
import pytest

from studyboard.model.edits import AddMove, ChangeNode, ChangeRehearsed, ChangeSlot, InsertBranch, RemoveBranch, Several
from studyboard.model.errors import EditRefusedError
from studyboard.model.node import Node
from studyboard.model.script import SpokenLine
from studyboard.model.study import Study
from studyboard.store.errors import (
    DamagedStudyError,
    ReadOnlyStudyError,
    StudyClosedError,
    StudyExistsError,
    StudyFileError,
    StudyInUseError,
    StudyMissingError,
    StudyNotStoredError,
)
from studyboard.store.study_file import StudyFile


def test_a_new_file_holds_all_of_the_study_that_it_was_made_from(path, study, content):
    with StudyFile.create(path, study) as file:
        assert content(file.study) == content(study)
    with StudyFile.open(path) as file:
        assert content(file.study) == content(study)
        assert not file.can_undo


def test_a_new_file_without_a_study_holds_an_empty_one(path, content):
    with StudyFile.create(path) as file:
        assert content(file.study) == content(Study())


def test_making_a_file_does_not_take_the_given_study_over(path, study):
    with StudyFile.create(path, study) as file:
        file.do(ChangeSlot(60.0))
        assert study.slot == 540.0


def test_every_kind_of_edit_is_there_again_after_closing(path, edits, content):
    with StudyFile.create(path) as file:
        for edit in edits:
            file.do(edit)
        done = content(file.study)
    with StudyFile.open(path) as file:
        assert content(file.study) == done


def test_an_edit_is_on_the_disk_when_do_returns(path, edits, content):
    with StudyFile.create(path) as file:
        for edit in edits:
            file.do(edit)
            with StudyFile.open(path, read_only=True) as seen:
                assert content(seen.study) == content(file.study)


def test_do_says_what_was_touched(path):
    with StudyFile.create(path) as file:
        changed = file.do(AddMove(0, chess.Move.from_uci("e2e4"), 1))
        assert changed.nodes == {0, 1}
        assert file.undo().nodes == {0, 1}
        assert file.redo().nodes == {0, 1}


def test_undo_goes_all_the_way_back_after_closing_and_redo_all_the_way_forth(path, edits, clock, content):
    seen = []
    with StudyFile.create(path, clock=clock) as file:
        seen.append(content(file.study))
        for edit in edits:
            file.do(edit)
            seen.append(content(file.study))
    with StudyFile.open(path) as file:
        for earlier in reversed(seen[:-1]):
            file.undo()
            assert content(file.study) == earlier
        assert not file.can_undo
    with StudyFile.open(path) as file:
        for later in seen[1:]:
            file.redo()
            assert content(file.study) == later
        assert not file.can_redo


def test_an_edit_after_an_undo_replaces_what_was_taken_back(path):
    with StudyFile.create(path) as file:
        file.do(ChangeSlot(60.0))
        file.do(ChangeSlot(120.0))
        file.undo()
        assert file.can_redo
        file.do(ChangeSlot(180.0))
        assert not file.can_redo
        file.undo()
        assert file.study.slot == 60.0
        assert len(file.history()) == 2


def test_the_menu_can_say_what_undo_and_redo_would_do(path):
    with StudyFile.create(path) as file:
        assert (file.undo_label, file.redo_label) == (None, None)
        file.do(AddMove(0, chess.Move.from_uci("e2e4"), 1))
        file.do(ChangeSlot(60.0))
        assert (file.undo_label, file.redo_label) == ("Set the slot", None)
        file.undo()
        assert (file.undo_label, file.redo_label) == ("Add a move", "Set the slot")


def test_undo_and_redo_with_nothing_to_do_say_so(path):
    with StudyFile.create(path) as file:
        with pytest.raises(EditRefusedError, match="nothing to undo"):
            file.undo()
        with pytest.raises(EditRefusedError, match="nothing to redo"):
            file.redo()


def test_a_refused_edit_leaves_study_file_and_history_as_they_were(path, content):
    refused = Several((AddMove(0, chess.Move.from_uci("d2d4"), 7), RemoveBranch(99)))
    with StudyFile.create(path) as file:
        before, next_id = content(file.study), file.study.next_id
        with pytest.raises(EditRefusedError):
            file.do(refused)
        assert (content(file.study), file.study.next_id) == (before, next_id)
        assert not file.can_undo


@dataclass(frozen=True, slots=True)
class _Broken:
    """An edit that comes apart in the middle."""

    label: str = "Broken"

    def apply(self, study, changed):
        study.nodes.clear()
        study.slot = 1.0
        raise ZeroDivisionError


def test_an_edit_that_breaks_in_the_middle_does_no_harm(path, study, content):
    with StudyFile.create(path, study) as file:
        same = file.study
        with pytest.raises(ZeroDivisionError):
            file.do(_Broken())
        assert content(file.study) == content(study)
        assert file.study is same


def test_text_that_cannot_be_stored_is_refused_with_a_sentence(path):
    with StudyFile.create(path) as file:
        with pytest.raises(StudyNotStoredError, match="half of a character"):
            file.do(ChangeNode(0, "note", "broken \ud83d here"))
        assert file.study.nodes[0].note == ""
        broken = Node(file.study.next_id, 0, chess.Move.from_uci("e2e4"), note="\udc00")
        with pytest.raises(StudyNotStoredError):
            file.do(InsertBranch((broken,)))
        assert (list(file.study.nodes), file.study.next_id) == ([0], 1)
        file.do(ChangeNode(0, "note", "whole 🙂 here"))
    with StudyFile.open(path) as file:
        assert file.study.nodes[0].note == "whole 🙂 here"


def test_ids_are_not_given_twice_after_an_undo(path):
    with StudyFile.create(path) as file:
        file.do(AddMove(0, chess.Move.from_uci("e2e4"), 1))
        file.undo()
    with StudyFile.open(path) as file:
        assert file.study.next_id == 2


def test_three_thousand_nested_side_lines_are_kept_and_taken_back(path, content):
    depth = 3_000
    nodes = [Node(1, 0, chess.Move.from_uci("e2e4"), (2, 3))]
    for level in range(1, depth):
        top = 2 * level
        nodes.append(Node(top, top - 1, chess.Move.from_uci("a2a3")))
        nodes.append(Node(top + 1, top - 1, chess.Move.from_uci("h2h3"), (top + 2, top + 3)))
    nodes[-1] = Node(nodes[-1].id, nodes[-1].parent, nodes[-1].move)
    with StudyFile.create(path) as file:
        empty = content(file.study)
        file.do(InsertBranch(tuple(nodes)))
        full = content(file.study)
    with StudyFile.open(path) as file:
        assert content(file.study) == full
        file.undo()
        assert content(file.study) == empty
        file.redo()
        assert content(file.study) == full


# Typing


def type_text(file, clock, *words, rest=0.3, node=0, field="note"):
    text = ""
    for word in words:
        text = f"{text} {word}".strip()
        file.do(ChangeNode(node, field, SpokenLine(text) if field == "spoken" else text))
        clock.wait(rest)


def test_one_undo_takes_a_burst_of_typing_back(path, clock):
    with StudyFile.create(path, clock=clock) as file:
        type_text(file, clock, "The", "knight", "cannot", "go", "back")
        assert [entry.label for entry in file.history()] == ["Change a node"]
        file.undo()
        assert file.study.nodes[0].note == ""
        file.redo()
        assert file.study.nodes[0].note == "The knight cannot go back"


def test_a_rest_of_more_than_two_seconds_begins_a_new_entry(path, clock):
    with StudyFile.create(path, clock=clock) as file:
        type_text(file, clock, "First", "thought")
        clock.wait(2.0)
        file.do(ChangeNode(0, "note", "First thought, then another"))
        file.undo()
        assert file.study.nodes[0].note == "First thought"


def test_typing_elsewhere_begins_a_new_entry(path, clock):
    with StudyFile.create(path, clock=clock) as file:
        type_text(file, clock, "Printed", field="note")
        type_text(file, clock, "Spoken", field="spoken")
        type_text(file, clock, "Printed", "again", field="note")
        assert len(file.history()) == 3


def test_typing_after_an_undo_and_a_redo_begins_a_new_entry(path, clock):
    with StudyFile.create(path, clock=clock) as file:
        type_text(file, clock, "One", "two")
        file.undo()
        file.redo()
        file.do(ChangeNode(0, "note", "One two three"))
        assert len(file.history()) == 2


def test_typing_after_an_undo_begins_a_new_entry(path, clock):
    with StudyFile.create(path, clock=clock) as file:
        type_text(file, clock, "One", "two")
        file.undo()
        file.do(ChangeNode(0, "note", "Three"))
        assert len(file.history()) == 1
        file.undo()
        file.redo()
        assert file.study.nodes[0].note == "Three"


def test_typing_after_opening_again_begins_a_new_entry(path, clock):
    with StudyFile.create(path, clock=clock) as file:
        type_text(file, clock, "Yesterday", rest=0.0)
    with StudyFile.open(path, clock=clock) as file:
        file.do(ChangeNode(0, "note", "Yesterday, today"))
        assert len(file.history()) == 2


def test_a_burst_that_is_typed_back_to_where_it_began_can_still_be_undone_past(path, clock):
    with StudyFile.create(path, clock=clock) as file:
        file.do(ChangeSlot(60.0))
        type_text(file, clock, "x")
        file.do(ChangeNode(0, "note", ""))
        file.undo()
        file.undo()
        assert (file.study.nodes[0].note, file.study.slot) == ("", None)


def test_history_tells_when_and_whether_each_edit_is_done(path, clock):
    with StudyFile.create(path, clock=clock) as file:
        file.do(ChangeSlot(60.0))
        clock.wait(60)
        file.do(ChangeSlot(90.0))
        file.undo()
        first, second = file.history()
        assert (first.seq, second.seq) == (1, 2)
        assert (first.done, second.done) == (True, False)
        assert second.when == clock.time
        assert (second.when - first.when).total_seconds() == 60


# One window at a time


def test_a_second_window_on_the_same_file_is_refused(path):
    with StudyFile.create(path), pytest.raises(StudyInUseError, match="already open in this program"):
        StudyFile.open(path)


def test_a_second_window_is_refused_through_a_link_and_a_relative_name(path, tmp_path, monkeypatch):
    link = tmp_path / "link.studyboard"
    link.symlink_to(path)
    monkeypatch.chdir(tmp_path)
    with StudyFile.create(path):
        with pytest.raises(StudyInUseError):
            StudyFile.open(link)
        with pytest.raises(StudyInUseError):
            StudyFile.open(os.path.join(".", path.name))


def test_the_file_can_be_opened_again_once_it_is_closed(path):
    StudyFile.create(path).close()
    with StudyFile.open(path) as file:
        file.do(ChangeSlot(60.0))


def test_nothing_is_left_beside_a_closed_file(path, edits):
    with StudyFile.create(path) as file:
        for edit in edits:
            file.do(edit)
        with StudyFile.open(path, read_only=True):
            pass
    with StudyFile.open(path, read_only=True):
        pass
    assert os.listdir(path.parent) == [path.name]


def test_a_file_that_is_only_read_is_not_changed(path, study):
    StudyFile.create(path, study).close()
    before = path.read_bytes(), path.stat().st_mtime_ns
    with StudyFile.open(path, read_only=True) as file:
        assert file.read_only
        assert not file.can_undo
        with pytest.raises(ReadOnlyStudyError):
            file.do(ChangeSlot(60.0))
        with pytest.raises(ReadOnlyStudyError):
            file.sound.begin_take("one", 48_000, "2030-05-17T21:30:00+02:00")
        assert file.study.slot == 540.0
    assert (path.read_bytes(), path.stat().st_mtime_ns) == before


def test_one_who_only_reads_sees_one_moment_while_another_writes(path, study, content):
    with StudyFile.create(path, study) as file, StudyFile.open(path, read_only=True) as reader:
        before = content(reader.study)
        file.do(ChangeSlot(60.0))
        assert content(reader.study) == before
        with StudyFile.open(path, read_only=True) as later:
            assert later.study.slot == 60.0


def test_one_who_opens_in_the_middle_of_the_writing_sees_whole_edits(path):
    def edit(number):
        seconds = float(number)
        return Several((ChangeSlot(seconds), ChangeNode(0, "think", seconds), ChangeRehearsed(((0, seconds),))))

    with StudyFile.create(path) as file:
        file.do(edit(1))
        seen = []

        def look():
            while not done.is_set():
                with StudyFile.open(path, read_only=True) as reader:
                    seen.append((reader.study.slot, reader.study.nodes[0].think, reader.study.rehearsed[0]))

        done = threading.Event()
        thread = threading.Thread(target=look)
        thread.start()
        number = 1
        while len(seen) < 100 and thread.is_alive():
            number += 1
            file.do(edit(number))
        done.set()
        thread.join()
    assert len({slot for slot, _, _ in seen}) > 10
    assert [found for found in seen if len(set(found)) != 1] == []


def test_an_edit_waits_for_no_other_program_for_ever(path, monkeypatch):
    monkeypatch.setattr("studyboard.store.connection.PATIENCE", 0.05)
    with StudyFile.create(path) as file:
        other = sqlite3.connect(path, isolation_level=None)
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(StudyInUseError, match="Another program"):
            file.do(ChangeSlot(60.0))
        assert file.study.slot is None
        other.execute("ROLLBACK")
        other.close()
        file.do(ChangeSlot(60.0))


# Making and copying


def test_an_existing_file_is_not_replaced_by_a_new_one(path, study, content):
    StudyFile.create(path, study).close()
    with pytest.raises(StudyExistsError, match="already"):
        StudyFile.create(path)
    with StudyFile.open(path) as file:
        assert content(file.study) == content(study)


def test_an_existing_file_is_replaced_where_that_is_wanted(path, study):
    StudyFile.create(path, study).close()
    with StudyFile.create(path, overwrite=True) as file:
        assert len(file.study.nodes) == 1
    assert os.listdir(path.parent) == [path.name]


def test_a_file_that_is_open_is_not_replaced(path, study, content):
    with StudyFile.create(path, study) as file:
        with pytest.raises(StudyInUseError):
            StudyFile.create(path, overwrite=True)
        file.do(ChangeSlot(60.0))
    with StudyFile.open(path) as file:
        assert file.study.slot == 60.0


def test_a_folder_that_is_not_there_is_named(tmp_path):
    with pytest.raises(StudyMissingError, match="no folder"):
        StudyFile.create(tmp_path / "nowhere" / "a.studyboard")
    assert os.listdir(tmp_path) == []


def test_a_copy_has_the_history_and_the_sound(path, tmp_path, edits, content):
    with StudyFile.create(path) as file:
        for edit in edits:
            file.do(edit)
        take = file.sound.begin_take("second try", 48_000, "2030-05-17T21:40:00+02:00")
        file.sound.append_sound(take, b"\1\2" * 500)
        file.sound.finish_take(take)
        with file.save_as(tmp_path / "copy.studyboard") as copy:
            assert copy.path == tmp_path / "copy.studyboard"
            assert copy.sound.read_sound(take) == b"\1\2" * 500
            assert len(copy.history()) == len(edits)
            copy.undo()
            copy.do(ChangeSlot(60.0))
        assert file.study.slot == 540.0
        file.do(ChangeSlot(90.0))


def test_a_copy_onto_itself_is_refused(path, tmp_path, study):
    link = tmp_path / "link.studyboard"
    link.symlink_to(path)
    with StudyFile.create(path, study) as file:
        for name in (path, link):
            with pytest.raises(StudyExistsError, match="already"):
                file.save_as(name, overwrite=True)
        file.do(ChangeSlot(60.0))


def test_a_copy_does_not_replace_another_file_unless_asked_to(path, tmp_path, study, content):
    other = tmp_path / "other.studyboard"
    StudyFile.create(other).close()
    with StudyFile.create(path, study) as file:
        with pytest.raises(StudyExistsError):
            file.save_as(other)
        with file.save_as(other, overwrite=True) as copy:
            assert content(copy.study) == content(study)


def test_a_file_that_was_only_read_can_be_copied_and_the_copy_changed(path, tmp_path, study):
    StudyFile.create(path, study).close()
    with StudyFile.open(path, read_only=True) as file, file.save_as(tmp_path / "copy.studyboard") as copy:
        assert not copy.read_only
        copy.do(ChangeSlot(60.0))


def test_copying_can_be_cancelled_and_leaves_nothing_behind(path, tmp_path, study):
    class CancelledError(Exception):
        pass

    def cancel(done: float) -> None:
        raise CancelledError

    with StudyFile.create(path, study) as file, pytest.raises(CancelledError):
        file.save_as(tmp_path / "copy.studyboard", progress=cancel)
    assert os.listdir(tmp_path) == [path.name]


def test_copying_tells_how_far_it_is(path, tmp_path):
    told = []
    with StudyFile.create(path) as file:
        take = file.sound.begin_take("long", 48_000, "2030-05-17T21:40:00+02:00")
        for _ in range(100):
            file.sound.append_sound(take, os.urandom(96_000))
        file.sound.finish_take(take)
        file.save_as(tmp_path / "copy.studyboard", progress=told.append).close()
    assert told == sorted(told)
    assert len(told) > 2
    assert told[-1] == 1.0


def test_no_copy_is_made_in_the_middle_of_a_recording(path, tmp_path):
    with StudyFile.create(path) as file:
        writer = file.sound_writer()
        take = writer.begin_take("one", 48_000, "2030-05-17T21:40:00+02:00")
        writer.append_sound(take, bytes(96_000))
        with pytest.raises(StudyFileError, match="Stop the recording"):
            file.save_as(tmp_path / "copy.studyboard")
        writer.finish_take(take)
        file.save_as(tmp_path / "copy.studyboard").close()


# What happens to files


def test_a_file_that_was_deleted_while_open_takes_no_edit_but_can_be_saved_elsewhere(path, tmp_path, study, content):
    with StudyFile.create(path, study) as file:
        path.unlink()
        with pytest.raises(StudyNotStoredError, match="moved, replaced or deleted"):
            file.do(ChangeSlot(60.0))
        assert file.study.slot == 540.0
        with file.save_as(tmp_path / "rescued.studyboard") as rescued:
            assert content(rescued.study) == content(study)
            rescued.do(ChangeSlot(60.0))


@pytest.mark.parametrize("goes_on", [False, True])
def test_a_file_that_was_moved_while_open_has_everything_at_its_new_place(path, tmp_path, study, content, goes_on):
    moved = tmp_path / "moved.studyboard"
    with StudyFile.create(path, study) as file:
        file.do(ChangeSlot(60.0))
        path.rename(moved)
        if goes_on:
            with pytest.raises(StudyNotStoredError, match="moved"):
                file.do(ChangeSlot(90.0))
        known = content(file.study)
    assert os.listdir(tmp_path) == [moved.name]
    with StudyFile.open(moved) as file:
        assert content(file.study) == known


def test_a_link_stays_a_link_when_the_study_behind_it_is_replaced(path, tmp_path, study, content):
    real = tmp_path / "elsewhere" / "real.studyboard"
    real.parent.mkdir()
    path.symlink_to(real)
    StudyFile.create(path).close()
    StudyFile.create(path, study, overwrite=True).close()
    assert path.is_symlink()
    with StudyFile.open(real) as file:
        assert content(file.study) == content(study)


def test_a_file_may_be_opened_and_copied_in_one_thread_and_used_in_another(path, tmp_path, study):
    with ThreadPoolExecutor(1) as worker:
        file = worker.submit(StudyFile.create, path, study).result()
        file.do(ChangeSlot(60.0))
        copy = worker.submit(file.save_as, tmp_path / "copy.studyboard").result()
        copy.do(ChangeSlot(90.0))
        worker.submit(copy.close).result()
        file.close()
    assert sorted(os.listdir(tmp_path)) == ["copy.studyboard", path.name]


def test_a_study_can_be_edited_while_it_is_copied(path, tmp_path):
    with StudyFile.create(path) as file:
        take = file.sound.begin_take("long", 48_000, "2030-05-17T21:40:00+02:00")
        for _ in range(100):
            file.sound.append_sound(take, os.urandom(96_000))
        file.sound.finish_take(take)
        going = threading.Event()
        edited = threading.Event()

        def wait_for_an_edit(_):
            going.set()
            edited.wait(10)

        with ThreadPoolExecutor(1) as worker:
            copying = worker.submit(file.save_as, tmp_path / "copy.studyboard", progress=wait_for_an_edit)
            going.wait(10)
            file.do(ChangeSlot(60.0))
            edited.set()
            with copying.result() as copy:
                assert copy.study.slot == 60.0
                assert copy.sound.length(take) == 100 * 48_000


def test_a_closed_file_says_so(path):
    file = StudyFile.create(path)
    file.close()
    file.close()
    for use in (file.undo, file.redo, file.history, file.sound_writer, lambda: file.do(ChangeSlot(60.0))):
        with pytest.raises(StudyClosedError, match="closed"):
            use()
    with pytest.raises(StudyClosedError, match="closed"):
        file.sound.length(1)


@pytest.mark.parametrize(
    "harm",
    [
        "DELETE FROM node WHERE id = 0",
        "DELETE FROM node WHERE id = 3",
        "UPDATE node SET move = 'e9e4' WHERE id = 1",
        "UPDATE node SET parent = 4 WHERE id = 5",
        "UPDATE node SET marks = '[[\"flag\",3]]' WHERE id = 1",
        "UPDATE node SET cues = 'nonsense' WHERE id = 1",
        "UPDATE node SET children = '2 2' WHERE id = 1",
        "UPDATE node SET place = 'somewhere' WHERE id = 4",
        "UPDATE header SET value = 'rubbish', name = 'FEN' WHERE position = 0",
        "UPDATE part SET part = 'interval'",
        "UPDATE setting SET value = 2 WHERE name = 'next node'",
        "DELETE FROM setting WHERE name = 'root'",
        "DROP TABLE take_event",
    ],
)
def test_rows_that_do_not_add_up_are_called_damage(path, study, harm):
    StudyFile.create(path, study).close()
    with sqlite3.connect(path) as connection:
        connection.execute(harm)
    connection.close()
    for read_only in (False, True):
        with pytest.raises(DamagedStudyError, match="back-up"):
            StudyFile.open(path, read_only=read_only)
    assert os.listdir(path.parent) == [path.name]


def test_a_damaged_history_entry_leaves_the_study_usable(path):
    with StudyFile.create(path) as file:
        file.do(ChangeSlot(60.0))
    with sqlite3.connect(path) as connection:
        connection.execute('UPDATE history SET inverse = \'{"is":"Gone"}\'')
    connection.close()
    with StudyFile.open(path) as file:
        with pytest.raises(DamagedStudyError, match="history"):
            file.undo()
        assert file.study.slot == 60.0
        file.do(ChangeSlot(90.0))
        file.undo()
        assert file.study.slot == 60.0
