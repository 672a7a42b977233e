"""Speaks one text with the library of espeak-ng: sound and word events, from a process that has spoken nothing before.

    python espeak_once.py VOICE SPEED PITCH < text

What the library says depends on what it has said before in the same process, so each text gets a process of its own.
Standard output: a line of JSON (rate in Hz; words as place in the text in characters and second), then 16-bit samples.
"""

from __future__ import annotations

import ctypes
import json
import sys
from ctypes.util import find_library

#: From speak_lib.h of espeak-ng 1.51.
_RETRIEVAL, _WORD = 1, 1
_UTF_8, _END_PAUSE, _SPEED, _PITCH = 1, 0x1000, 1, 3


class _Event(ctypes.Structure):
    _fields_ = (
        ("type", ctypes.c_int),
        ("unique_identifier", ctypes.c_uint),
        ("text_position", ctypes.c_int),
        ("length", ctypes.c_int),
        ("audio_position", ctypes.c_int),
        ("sample", ctypes.c_int),
        ("user_data", ctypes.c_void_p),
        ("id", ctypes.c_char * 8),
    )


_CALLBACK = ctypes.CFUNCTYPE(ctypes.c_int, ctypes.POINTER(ctypes.c_short), ctypes.c_int, ctypes.POINTER(_Event))


def main(voice: str, speed: int, pitch: int, text: str) -> None:
    """Write what is spoken to standard output."""
    library = ctypes.CDLL(find_library("espeak-ng"))
    rate = library.espeak_Initialize(_RETRIEVAL, 0, None, 0)
    sound = bytearray()
    words: list[tuple[int, float]] = []

    @_CALLBACK
    def hear(wav, count, happened):  # type: ignore[no-untyped-def]
        if count > 0:
            sound.extend(ctypes.string_at(wav, 2 * count))
        place = 0
        while happened[place].type:
            if happened[place].type == _WORD:
                words.append((happened[place].text_position - 1, happened[place].sample / rate))
            place += 1
        return 0

    library.espeak_SetSynthCallback(hear)
    library.espeak_SetVoiceByName(voice.encode())
    library.espeak_SetParameter(_SPEED, speed, 0)
    library.espeak_SetParameter(_PITCH, pitch, 0)
    data = text.encode()
    library.espeak_Synth(data, len(data) + 1, 0, 1, 0, _UTF_8 | _END_PAUSE, None, None)
    library.espeak_Synchronize()
    sys.stdout.buffer.write(json.dumps({"rate": rate, "words": words}).encode() + b"\n" + bytes(sound))


if __name__ == "__main__":
    main(sys.argv[1], int(sys.argv[2]), int(sys.argv[3]), sys.stdin.buffer.read().decode())
