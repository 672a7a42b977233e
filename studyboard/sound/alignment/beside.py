"""Listening in a process of its own: the recogniser lets no other thread of its process run while it works."""

from __future__ import annotations

import multiprocessing
import signal
from collections.abc import Callable, Sequence
from contextlib import suppress
from multiprocessing.connection import Connection

import numpy as np
from numpy.typing import NDArray

from studyboard.model.errors import StudyboardError
from studyboard.sound.alignment.aligned import Alignment
from studyboard.sound.alignment.listening import ListeningStoppedError, listen
from studyboard.sound.alignment.script_words import ScriptWord
from studyboard.translation import tr

#: How often whoever waits is asked whether it still wants to (s).
_ASK = 0.05
#: How long the process may take to end by itself (s).
_PATIENCE = 2.0


def listen_beside(
    script: Sequence[ScriptWord],
    sound: NDArray[np.int16],
    progress: Callable[[float], None],
    stopped: Callable[[], bool],
) -> Alignment:
    """As listening.listen, in another process; to be called in a thread that may wait.

    Raises what that raises, and StudyboardError where the process dies. When this returns, the process is gone.
    """
    context = multiprocessing.get_context("spawn")
    here, there = context.Pipe()
    process = context.Process(target=_work, args=(tuple(script), sound.tobytes(), there), daemon=True)
    process.start()
    there.close()
    try:
        while not stopped():
            if not here.poll(_ASK):
                if process.is_alive():
                    continue
                if not here.poll():
                    raise StudyboardError(tr("Listening ended before it was done. Try it once more."))
            told = here.recv()
            if isinstance(told, float):
                progress(told)
            elif isinstance(told, Alignment):
                return told
            else:
                raise StudyboardError(str(told))
        raise ListeningStoppedError(tr("Listening was stopped."))
    except EOFError as reason:
        raise StudyboardError(tr("Listening ended before it was done. Try it once more.")) from reason
    finally:
        here.close()
        if stopped():
            process.terminate()
        process.join(_PATIENCE)
        if process.is_alive():
            process.kill()
            process.join()


def _work(script: tuple[ScriptWord, ...], sound: bytes, line: Connection) -> None:
    """Listen, and send shares of the work, then the Alignment, or why there is none as a sentence."""
    # The terminal interrupts all processes at once; the one that asked for this decides what happens then.
    signal.signal(signal.SIGINT, signal.SIG_IGN)

    def stopped() -> bool:
        # Nothing is ever sent from the other end: what can be read is its end.
        try:
            return line.poll()
        except OSError:
            return True

    with suppress(OSError):
        try:
            line.send(listen(script, np.frombuffer(sound, np.int16), line.send, stopped))
        except ListeningStoppedError:
            pass
        except StudyboardError as reason:
            line.send(str(reason))
        except Exception as reason:
            line.send(f"{type(reason).__name__}: {reason}")
