"""How near the words and cues of a script are found: speech of the example talk with known times, several voices.

`python tests/bench/alignment_accuracy.py [BEATS] [SPEED ...] [VOICE ...]`: the first BEATS lines (all by default) by
each voice at each speed (words a minute), clean, with noise (20 dB below the speech), in a room (direct sound 3 dB
above the tail, which falls by 60 dB in 0.35 s), with both, and with the microphone far away (-3 dB). Needs libespeak-ng
and pocketsphinx. Times are of the processor. Some lines of this talk were looked at while the thresholds were set.
"""

from __future__ import annotations

import resource
import sys
from collections.abc import Callable, Sequence
from time import process_time

import numpy as np
from numpy.typing import NDArray

from studyboard.example import example_study
from studyboard.model.beats import Beat, beats
from studyboard.model.order import running_order
from studyboard.sound.alignment.listening import listen
from studyboard.sound.alignment.script_words import script_words
from tests.sound.known_words import in_a_room, joined, speak, with_noise

VOICES = ("en-us", "en-gb", "en-gb-x-rp", "en-gb-scotland", "en-us+f3")
SPEEDS = (130, 160, 190)
_Sound = NDArray[np.int16]
CONDITIONS: dict[str, Callable[[_Sound], _Sound]] = {
    "clean": lambda sound: sound,
    "noise": with_noise,
    "room": in_a_room,
    "noise in a room": lambda sound: with_noise(in_a_room(sound)),
    "far in a room": lambda sound: in_a_room(sound, direct=-3.0),
}
NEAR = 0.15


def main(count: int, speeds: Sequence[int], voices: Sequence[str]) -> None:
    """Print a line for each voice, speed and condition, then the totals."""
    study = example_study()
    told = [beat for beat in beats(study, running_order(study)) if beat.spoken][:count]
    script = [word for word in script_words(study) if word.beat in {beat.key for beat in told}]
    cued = _cued(told)
    totals: dict[str, list[NDArray[np.float64]]] = {name: [] for name in CONDITIONS}
    spent = heard = 0.0
    print(f"{len(script)} words, {len(cued)} of them with cues; within {1000 * NEAR:.0f} ms:")
    for voice in voices:
        for speed in speeds:
            speech = joined([speak(beat.spoken.text, voice, speed) for beat in told])
            for name, changed in CONDITIONS.items():
                sound = changed(speech.sound)
                since = process_time()
                found = listen(script, sound)
                took = process_time() - since
                off = np.abs(np.array([word.start for word in found.words]) - np.array(speech.words))
                sure = np.array([word.sure for word in found.words])
                known = ~np.isnan(off)
                cue = np.isin(np.arange(len(off)), cued)[known]
                off, sure = off[known], sure[known]
                totals[name].append(np.stack((off, sure, cue)))
                spent, heard = spent + took, heard + found.seconds
                print(
                    f"{voice:15} {speed} words/min {name:16} words {_share(off)}  cues {_share(off[cue])}  "
                    f"median {1000 * np.median(off):3.0f} ms  sure {sure.mean():6.1%}, of those {_share(off[sure])}  "
                    f"{found.seconds / took:4.1f} x real time",
                    flush=True,
                )
    for name, rows in totals.items():
        off, sure, cue = np.concatenate(rows, axis=1)
        print(
            f"{name:16} words {_share(off)}  cues {_share(off[cue > 0])}  sure {sure.mean():6.1%}: of those "
            f"{_share(off[sure > 0])}, of the others {_share(off[sure == 0])}"
        )
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(f"{heard / spent:.1f} x real time over {heard / 60:.0f} minutes; at most {memory:.0f} MB")


def _cued(told: Sequence[Beat]) -> list[int]:
    """Places of the words that have a cue, among all words."""
    found: list[int] = []
    before = 0
    for beat in told:
        count = len(beat.spoken.text.split())
        found += sorted({before + cue.word for cue in beat.spoken.cues if cue.word < count})
        before += count
    return found


def _share(off: NDArray[np.float64]) -> str:
    return f"{np.mean(off <= NEAR):6.1%}" if len(off) else "     –"


if __name__ == "__main__":
    numbers = [int(argument) for argument in sys.argv[1:] if argument.isdigit()]
    named = [argument for argument in sys.argv[1:] if not argument.isdigit()]
    main(numbers[0] if numbers else 10_000, numbers[1:] or SPEEDS, named or VOICES)
