"""What rows hold comes back as it was."""

from __future__ import annotations

from pathlib import Path

from studyboard.model.edits import PutTake
from studyboard.model.take_edits import follow_the_voice
from studyboard.model.takes import SaidLine, SoundTime, Take, TakeEvent
from studyboard.store.study_file import StudyFile


def test_the_times_of_words_are_stored_with_the_take_that_has_them(tmp_path: Path) -> None:
    path = tmp_path / "talk.studyboard"
    said = SaidLine(1, "She opens with “the” king's pawn.", (0, 20, None, 45), (18, 44, None, 90))
    with StudyFile.create(path) as file:
        file.do(PutTake(Take(1, "with words", 48_000, 100, "2030-05-17T21:30:00+02:00")))
        file.do(follow_the_voice(file.study.takes[1], (TakeEvent(SoundTime(3, 48_000), 0, None),), (said,)))
    with StudyFile.open(path) as file:
        assert file.study.takes[1].said == (said,)
        file.undo()
        assert (file.study.takes[1].said, file.study.takes[1].events) == ((), ())
        file.redo()
    with StudyFile.open(path) as file:
        assert file.study.takes[1].said == (said,)
        assert file.study.takes[1].events[0].at.samples == 3
