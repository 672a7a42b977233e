"""The window that lets the board of a take follow the voice, with a take that was spoken for it."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import chess
import numpy as np
import pytest
from PySide6.QtCore import Qt

from studyboard.desk.listen_window import ListenWindow
from studyboard.desk.session import Session
from studyboard.model.edits import ChangeLine, ChangeNode, PutTake, add_move
from studyboard.model.script import Cue, FreeLine, Part, SpokenLine
from studyboard.model.takes import SoundTime, TakeEvent
from studyboard.store.study_file import StudyFile
from tests.sound import known_words
from tests.sound.known_words import RATE, KnownSpeech, joined, speak

pytest.importorskip("pocketsphinx")
pytestmark = pytest.mark.skipif(not known_words.available(), reason="libespeak-ng is not installed")

GREETING = "Good evening, and welcome to the harbour club."
FIRST = "White opens with the king's pawn, and black answers with a pawn to e5 at once."
LEFT_OUT = "This sentence about the weather was left out by the presenter."


@pytest.fixture(scope="module")
def speech() -> KnownSpeech:
    return joined([speak(line, "en-gb", 160) for line in (GREETING, FIRST)], 0.6)


@pytest.fixture
def session(tmp_path: Path, speech: KnownSpeech) -> Iterator[Session]:
    """A talk of three lines with a take that tells two of them; its moves were clicked late."""
    with StudyFile.create(tmp_path / "talk.studyboard") as file:
        for parent, uci in ((0, "e2e4"), (1, "e7e5"), (2, "g1f3")):
            file.do(add_move(file.study, parent, chess.Move.from_uci(uci)))
        file.do(ChangeLine(Part.GREETING, FreeLine(SpokenLine(GREETING))))
        file.do(ChangeNode(2, "spoken", SpokenLine(FIRST, (Cue(1, node=1), Cue(8, node=2)))))
        file.do(ChangeNode(3, "spoken", SpokenLine(LEFT_OUT)))
        take = file.sound.begin_take("Evening", RATE, "2030-05-17T21:30:00+02:00")
        file.sound.append_sound(take, np.asarray(speech.sound, "<i2").tobytes(), _clicked())
        file.keep(PutTake(file.sound.finish_take(take)))
        yield Session(file)


def _clicked() -> tuple[TakeEvent, ...]:
    clicks = ((0.0, 0, Part.GREETING), (5.0, 1, 2), (7.9, 2, 2), (8.0, 3, 3))
    return tuple(TakeEvent(SoundTime(round(at * RATE), RATE), node, beat) for at, node, beat in clicks)


@pytest.fixture
def window(qtbot, session: Session) -> ListenWindow:
    window = ListenWindow(session)
    qtbot.addWidget(window)
    window.show()
    return window


def test_the_board_follows_the_voice_and_undo_brings_the_clicks_back(qtbot, window, session, speech) -> None:
    with qtbot.waitSignal(window.heard, timeout=120_000):
        window.listen_button.click()
    assert "moves at their words" in window.summary.text()
    places = [window.list.item(row).text() for row in range(window.list.count())]
    assert any("not said" in place and "weather" in place for place in places)
    window.follow_button.click()
    (take,) = session.study.takes.values()
    at = {event.node: event.at.seconds for event in take.events}
    assert at[2] == pytest.approx(speech.words[len(GREETING.split()) + 8], abs=0.15)
    assert not window.follow_button.isEnabled()
    session.undo()
    assert session.study.takes[take.id].events == _clicked()


def test_choosing_a_place_leads_to_its_line(qtbot, window) -> None:
    with qtbot.waitSignal(window.heard, timeout=120_000):
        window.listen_button.click()
    row = next(row for row in range(window.list.count()) if "weather" in window.list.item(row).text())
    with qtbot.waitSignal(window.chosen) as chosen:
        window.list.itemActivated.emit(window.list.item(row))
    assert chosen.args == [3]


def test_listening_can_be_stopped_and_nothing_has_changed(qtbot, window, session) -> None:
    before = dict(session.study.takes)
    window.listen_button.click()
    assert window.listening
    with qtbot.waitSignal(window.failed, timeout=60_000) as told:
        window.listen_button.click()
    assert "nothing has changed" in told.args[0]
    assert session.study.takes == before
    assert window.listen_button.isEnabled()


def test_escape_stops_listening_too(qtbot, window) -> None:
    window.listen_button.click()
    with qtbot.waitSignal(window.failed, timeout=60_000) as told:
        qtbot.keyClick(window, Qt.Key.Key_Escape)
    assert not window.isVisible()
    assert "nothing has changed" in told.args[0]


def test_without_a_take_it_says_how_to_come_by_one(qtbot, tmp_path) -> None:
    with StudyFile.create(tmp_path / "empty.studyboard") as file:
        window = ListenWindow(Session(file))
        qtbot.addWidget(window)
        assert "no take" in window.summary.text()
        assert not window.listen_button.isEnabled()
