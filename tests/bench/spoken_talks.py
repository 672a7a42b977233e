"""Timed talks with known answers: texts spoken clause by clause by a synthesiser, with the silences of a presenter.

Where the words are a machine's, the silences are drawn at random: after commas, sentences and paragraphs, around
moves, and where somebody looks for a word. The talk comes back as a transcript of one of the common kinds.
"""

from __future__ import annotations

import random
import re
import subprocess
import tempfile
import wave
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

import numpy as np

_CLAUSE = re.compile(r"[^,;:–—.?!…]+[,;:–—.?!…\"'”’)]*")
_SENTENCE = re.compile(r"(?<=[.!?])[\"'”’)]*\s+")
_PIECES = {"king": "K", "queen": "Q", "rook": "R", "bishop": "B", "knight": "N"}
_MOVE_IN_WORDS = re.compile(r"\b(king|queen|rook|bishop|knight) (takes |to )?(?:on )?([a-h][1-8])\b", re.IGNORECASE)
_MOVE = re.compile(r"\b[KQRBN]?x?[a-h][1-8]\b")
#: The level below which the synthesiser is silent (share of full scale).
_SILENT = 0.004


@dataclass(frozen=True)
class Presenter:
    """How somebody speaks. voice, speed: of the synthesiser (words/min); the others in s, or shares.

    clause, sentence, paragraph, around_move: silences (s); vary: of each silence (share); strays: of the rate of a
    clause and of a paragraph; stumbles: how many clauses have a silence where none belongs; drift: how much slower
    the end is told than the beginning
    """

    name: str
    voice: str
    speed: int
    clause: float = 0.25
    sentence: float = 0.6
    paragraph: float = 1.1
    around_move: float = 0.12
    vary: float = 0.45
    strays: tuple[float, float] = (0.06, 0.04)
    stumbles: float = 0.03
    drift: float = 0.0


PRESENTERS = (
    Presenter("measured", "en-gb", 150, 0.3, 0.8, 1.4),
    Presenter("brisk", "en-us", 185, 0.18, 0.4, 0.8),
    Presenter("slow at moves", "en-gb-scotland", 170, 0.25, 0.6, 1.0, around_move=0.35),
    Presenter("breathless", "en-us", 200, 0.06, 0.2, 0.4),
    Presenter("uneven", "en-gb", 170, 0.3, 0.6, 1.0, vary=0.7, strays=(0.1, 0.06), stumbles=0.06),
    Presenter("slower at the end", "en-gb", 165, drift=0.12),
    Presenter("faster at the end", "en-us", 165, drift=-0.12),
)


@dataclass(frozen=True)
class Said:
    """One clause with its times (s); paragraph: which one it stands in."""

    text: str
    at: float
    until: float
    paragraph: int


def paragraphs_of(text: str, chance: random.Random, least: int = 25, most: int = 90) -> list[str]:
    """The sentences of a text in paragraphs of many lengths (words)."""
    found: list[str] = []
    piece: list[str] = []
    wanted = chance.randint(least, most)
    for sentence in _cut(_SENTENCE.split(" ".join(text.split())), most):
        piece.append(sentence)
        if sum(len(part.split()) for part in piece) >= wanted:
            found.append(" ".join(piece))
            piece, wanted = [], chance.randint(least, most)
    if piece and len(" ".join(piece).split()) < least and found:
        found[-1] = " ".join([found[-1], *piece])
        return found
    return [*found, " ".join(piece)] if piece else found


def _cut(sentences: list[str], most: int) -> Iterator[str]:
    """The sentences; one without an end in sight is cut anywhere."""
    for sentence in sentences:
        words = sentence.split()
        if len(words) <= most:
            yield sentence
        else:
            yield from (" ".join(words[at : at + 15]) for at in range(0, len(words), 15))


def tell(paragraphs: list[str], who: Presenter, chance: random.Random) -> list[Said]:
    """The talk as this presenter tells it, clause by clause."""
    said: list[Said] = []
    at = 0.0
    clauses = [(number, clause) for number, text in enumerate(paragraphs) for clause in _CLAUSE.findall(text)]
    slower = [chance.lognormvariate(0.0, who.strays[1]) for _ in paragraphs]
    for place, (number, clause) in enumerate(clauses):
        text = clause.strip()
        drifted = 1.0 + who.drift * (place / len(clauses) - 0.5)
        rate = slower[number] * chance.lognormvariate(0.0, who.strays[0]) * drifted
        seconds = speech_seconds(text, who.voice, who.speed) * rate
        seconds += sum(2 * who.around_move * _varied(chance, who) for _ in _MOVE.findall(text))
        if chance.random() < who.stumbles:
            seconds += chance.uniform(0.5, 1.8)
        said.append(Said(text, at, at + seconds, number))
        last = place + 1 == len(clauses) or clauses[place + 1][0] != number
        bare = text.rstrip("\"'”’)")
        pause = who.paragraph if last else who.sentence if bare[-1:] in ".?!…" else who.clause
        at += seconds + pause * _varied(chance, who) * drifted
    return said


def _varied(chance: random.Random, who: Presenter) -> float:
    return chance.lognormvariate(-(who.vary**2) / 2, who.vary)


@cache
def speech_seconds(text: str, voice: str, speed: int) -> float:
    """How long the synthesiser speaks, silence at both ends left out (s)."""
    if not re.search(r"\w", text):
        return 0.0
    with tempfile.NamedTemporaryFile(suffix=".wav") as sound:
        command = ["espeak-ng", "-z", "-v", voice, "-s", str(speed), "-w", sound.name, text]
        subprocess.run(command, check=True)
        with wave.open(sound.name) as heard:
            samples = np.frombuffer(heard.readframes(heard.getnframes()), dtype="<i2")
            loud = np.flatnonzero(np.abs(samples) > _SILENT * 32768)
            return float(loud[-1] - loud[0]) / heard.getframerate() if len(loud) else 0.0


def timed_paragraphs(said: list[Said]) -> str:
    """Lines with `[m:ss]`, whole seconds."""
    lines: list[str] = []
    for number, group in _grouped(said):
        at = int(group[0].at)
        lines.append(f"[{at // 60}:{at % 60:02}] {' '.join(clause.text for clause in group)}")
        assert number == len(lines) - 1
    end = int(said[-1].until + 1.0)
    return "\n".join([*lines, f"[{end // 60}:{end % 60:02}] Thanks."])


def in_san(text: str) -> str:
    """Moves in words as they are written: “Nxf6” for “knight takes f6”."""

    def written(found: re.Match[str]) -> str:
        takes = "x" if (found.group(2) or "").startswith("takes") else ""
        return _PIECES[found.group(1).lower()] + takes + found.group(3)

    return _MOVE_IN_WORDS.sub(written, text)


def _grouped(said: list[Said]) -> Iterator[tuple[int, list[Said]]]:
    for number in range(said[-1].paragraph + 1):
        group = [clause for clause in said if clause.paragraph == number]
        if group:
            yield number, group


def captions(said: list[Said], *, srt: bool = False, rolling: bool = False, plain: bool = False) -> str:
    """Captions of a few words each. rolling: each stays until the next but one; plain: without any punctuation."""
    cues: list[tuple[float, float, str]] = []
    for clause in said:
        words = clause.text.split()
        parts = max(1, round(len(words) / 7))
        for part in range(parts):
            first, last = len(words) * part // parts, len(words) * (part + 1) // parts
            share = (clause.until - clause.at) / len(words)
            text = " ".join(words[first:last])
            if plain:
                text = re.sub(r"[^\w\s'’-]", "", text).lower()
            cues.append((clause.at + share * first, clause.at + share * last, text))
    if rolling:
        ends = [cues[min(place + 2, len(cues) - 1)][0] for place in range(len(cues))]
        cues = [(at, max(until, end), text) for (at, until, text), end in zip(cues, ends, strict=True)]
    blocks = [
        f"{number}\n{_stamp(at, srt)} --> {_stamp(until, srt)}\n{text}\n"
        for number, (at, until, text) in enumerate(cues, 1)
    ]
    return ("" if srt else "WEBVTT\n\n") + "\n".join(blocks)


def _stamp(seconds: float, srt: bool) -> str:
    whole = round(seconds * 1000)
    comma = "," if srt else "."
    return f"{whole // 3600000:02}:{whole // 60000 % 60:02}:{whole // 1000 % 60:02}{comma}{whole % 1000:03}"
