"""Listening in another process: it can be stopped, tells how far it is, and leaves no process behind."""

from __future__ import annotations

import multiprocessing

import numpy as np
import pytest

from studyboard.sound.alignment.beside import listen_beside
from studyboard.sound.alignment.listening import ListeningStoppedError
from studyboard.sound.alignment.script_words import line_words
from tests.sound.known_words import joined, speak

TEXT = "White opens with the king's pawn, and black answers at once."


def test_it_finds_the_words_and_the_process_is_gone() -> None:
    speech = joined([speak(TEXT, "en-gb", 160)], 0.5)
    told: list[float] = []
    found = listen_beside(line_words(1, TEXT), speech.sound, told.append, lambda: False)
    off = np.abs(np.array([word.start for word in found.words]) - np.array(speech.words))
    assert np.nanmax(off) < 0.15
    assert told[-1] == pytest.approx(1.0)
    assert not multiprocessing.active_children()


def test_it_can_be_stopped_and_the_process_is_gone() -> None:
    speech = joined([speak(TEXT, "en-gb", 160)] * 4, 0.5)
    with pytest.raises(ListeningStoppedError):
        listen_beside(line_words(1, TEXT), speech.sound, lambda _: None, lambda: True)
    assert not multiprocessing.active_children()
