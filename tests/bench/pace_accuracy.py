"""How well a pace foretells: talks spoken by a synthesiser in several voices and speeds, each paragraph timed.

    python tests/bench/pace_accuracy.py FOLDER      talks of tests/narrations, at least twelve paragraphs long

The synthesiser is no presenter, but its times are real: the first half of each talk is learnt, the second foretold.
Times are rounded to whole seconds as in transcripts. Needs espeak-ng.
"""

from __future__ import annotations

import re
import subprocess
import sys
import tempfile
import tomllib
import wave
from pathlib import Path

from studyboard.notation.narration.transcripts import transcript
from studyboard.timing.pace_fit import held_out
from studyboard.timing.timed_lines import timed_lines

VOICES = (("en-gb", 150), ("en-us", 175), ("en-gb-scotland", 200))


def paragraphs(text: str) -> list[str]:
    """The paragraphs of a talk; a long one is cut at its sentences into pieces of some forty words."""
    talk = transcript(text)
    pieces: list[str] = []
    for paragraph in talk.paragraphs:
        piece: list[str] = []
        for sentence in re.split(r"(?<=[.!?])\s+", talk.text[paragraph.start : paragraph.end]):
            piece.append(sentence)
            if sum(len(part.split()) for part in piece) >= 40:
                pieces.append(" ".join(piece))
                piece = []
        if piece:
            pieces.append(" ".join(piece))
    return pieces


def spoken_seconds(text: str, voice: str, speed: int) -> float:
    """How long the synthesiser takes (s)."""
    with tempfile.NamedTemporaryFile(suffix=".wav") as sound:
        subprocess.run(["espeak-ng", "-v", voice, "-s", str(speed), "-w", sound.name, text], check=True)
        with wave.open(sound.name) as heard:
            return heard.getnframes() / heard.getframerate()


def main() -> None:
    """Speak the talks and print what was foretold."""
    print(f"{'talk':26}{'voice':>16}{'lines':>6}{'mean':>9}{'line':>8}{'constant':>10}{'total':>8}")
    sums = [0.0, 0.0, 0.0]
    count = 0
    for path in sorted(Path(sys.argv[1]).glob("*.toml")):
        pieces = paragraphs(tomllib.loads(path.read_text(encoding="utf-8"))["text"])
        if len(pieces) < 12 or sum(len(piece.split()) for piece in pieces) < 400:
            continue
        for voice, speed in VOICES:
            at, lines = 0.0, []
            for piece in pieces:
                lines.append(f"[{round(at) // 60}:{round(at) % 60:02}] {piece}")
                at += spoken_seconds(piece, voice, speed)
            lines.append(f"[{round(at) // 60}:{round(at) % 60:02}] end")
            found = held_out(timed_lines("\n".join(lines)))
            print(
                f"{path.stem:26}{voice:>16}{found.lines:6}{found.mean_abs_error_s:7.2f} s{found.relative_error:8.1%}"
                f"{found.constant_rate_error:10.1%}{found.total_error:+8.1%}"
            )
            sums = [
                a + b
                for a, b in zip(
                    sums, (found.relative_error, found.constant_rate_error, abs(found.total_error)), strict=True
                )
            ]
            count += 1
    if count:
        print(f"{'mean':26}{'':16}{'':6}{'':9}{sums[0] / count:8.1%}{sums[1] / count:10.1%}{sums[2] / count:8.1%}")


if __name__ == "__main__":
    main()
