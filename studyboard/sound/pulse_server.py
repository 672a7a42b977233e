"""What is plugged into PulseAudio now, because Qt does not notice when something is unplugged.

Seen with Qt 6.11.3 and 6.12.0: QMediaDevices goes on listing a source that PulseAudio has removed, and the recording
goes on with another source, often one that hears nothing but silence.
"""

from __future__ import annotations

import importlib
import os
from contextlib import suppress
from typing import Any


class PulseServer:
    """A connection to the sound server for asking, used from one thread.

    State: the connection, made when it is first needed, and anew after it was lost.
    """

    def __init__(self) -> None:
        self._pulse: Any = None

    def names(self) -> frozenset[str] | None:
        """What its sources and sinks are called, as Qt calls them too; None without PulseAudio or its bindings."""
        try:
            pulsectl = importlib.import_module("pulsectl")
        except (ImportError, OSError):
            # No bindings, or no libpulse for them: Qt's own list is all that there is.
            return None
        try:
            if self._pulse is None:
                self._pulse = pulsectl.Pulse("studyboard", connect=False)
                self._pulse.connect(autospawn=False)
            return frozenset(str(end.name) for end in (*self._pulse.source_list(), *self._pulse.sink_list()))
        except pulsectl.PulseError:
            self.close()
            return None

    def playing_latency(self) -> float | None:
        """How long what this program plays is under way from the server's queue to the loudspeaker (s), as it knows.

        None without PulseAudio, or where nothing is played.
        """
        if self.names() is None:
            return None
        try:
            playing = self._pulse.sink_input_list()
        except Exception:
            return None
        ours = [one for one in playing if one.proplist.get("application.process.id") == str(os.getpid())]
        return max(((one.buffer_usec + one.sink_usec) / 1e6 for one in ours), default=None)

    def close(self) -> None:
        """Give the connection back."""
        pulse, self._pulse = self._pulse, None
        if pulse is not None:
            with suppress(Exception):
                pulse.close()
