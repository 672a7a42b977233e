"""A sound server of the tests' own: a microphone into which a test can speak, a loudspeaker that it can hear."""

from __future__ import annotations

import atexit
import os
import shutil
import subprocess
import tempfile
import threading
import wave
from pathlib import Path
from typing import IO

import pytest

#: The Debian package that brings each program.
PACKAGES = {
    "pulseaudio": "pulseaudio",
    "pactl": "pulseaudio-utils",
    "paplay": "pulseaudio-utils",
    "parec": "pulseaudio-utils",
    "espeak-ng": "espeak-ng",
}

_NAMED = "source_properties=device.description="
_SCRIPT = """
load-module module-native-protocol-unix socket={socket} auth-anonymous=1
load-module module-null-sink sink_name=mouth rate=48000 channels=1
load-module module-remap-source source_name=microphone master=mouth.monitor {named}Microphone
load-module module-null-sink sink_name=loudspeaker rate=48000 channels=1
set-default-source microphone
set-default-sink loudspeaker
"""


def missing_packages() -> list[str]:
    """The Debian packages that must be installed before a test can speak and hear."""
    return sorted({package for program, package in PACKAGES.items() if shutil.which(program) is None})


class SoundServer:
    """A PulseAudio daemon that nobody else uses: what is played into the sink `mouth` is heard by `microphone`.

    State: the running daemon and the folder with its socket.
    """

    def __init__(self) -> None:
        self._folder = Path(tempfile.mkdtemp(prefix="sound-"))
        self._ready = threading.Event()
        socket = self._folder / "native"
        script = self._folder / "daemon.pa"
        script.write_text(_SCRIPT.format(socket=socket, named=_NAMED), encoding="utf-8")
        self.address = f"unix:{socket}"
        self._said: list[str] = []
        # It ends by itself half an hour after a test run that was killed.
        arguments = ["-n", "--daemonize=no", "--use-pid-file=no", "--exit-idle-time=1800", "--disallow-exit"]
        self._daemon = subprocess.Popen(
            ["pulseaudio", *arguments, "--log-level=info", "--log-target=stderr", "-F", str(script)],
            env=os.environ | dict.fromkeys(("HOME", "XDG_RUNTIME_DIR", "PULSE_RUNTIME_PATH"), str(self._folder)),
            stderr=subprocess.PIPE,
            text=True,
        )
        assert self._daemon.stderr is not None
        threading.Thread(target=self._listen, args=(self._daemon.stderr,), daemon=True).start()
        if not self._ready.wait(20):
            self.stop()
            raise RuntimeError("PulseAudio did not start:\n" + "".join(self._said[-20:]))

    @property
    def environment(self) -> dict[str, str]:
        """What a program needs in its environment to use this server and no other."""
        return {"PULSE_SERVER": self.address}

    @property
    def whole_environment(self) -> dict[str, str]:
        """The environment of a program that uses this server."""
        return os.environ | self.environment

    def control(self, *arguments: str) -> str:
        """Have `pactl` do something."""
        environment = self.whole_environment
        done = subprocess.run(["pactl", *arguments], env=environment, capture_output=True, text=True, check=True)
        return done.stdout.strip()

    def plug_in(self, name: str) -> str:
        """One more microphone that hears what is played into `mouth`; returns what `unplug` wants."""
        return self.control(
            "load-module",
            "module-remap-source",
            f"source_name={name}",
            "master=mouth.monitor",
            f"{_NAMED}{name}",
        )

    def plug_in_hum(self, name: str, hertz: int) -> str:
        """A microphone that hears nothing but a sine; returns what `unplug` wants.

        It is also the most awkward one: two seconds of sound come at once, in pieces of one period.
        """
        return self.control(
            "load-module", "module-sine-source", f"source_name={name}", f"frequency={hertz}", "rate=48000"
        )

    def plug_in_late(self, name: str, milliseconds: int) -> tuple[str, ...]:
        """A microphone that hears the loudspeaker, but so much later; returns what `unplug` wants, one by one."""
        far = f"far_{name}"
        sink = self.control("load-module", "module-null-sink", f"sink_name={far}", "rate=48000", "channels=1")
        # Without its adjusting of the rate, the delay stays what it was at the beginning.
        way = ("source=loudspeaker.monitor", f"sink={far}", f"latency_msec={milliseconds}", "adjust_time=0")
        loop = self.control("load-module", "module-loopback", *way)
        heard = ("module-remap-source", f"source_name={name}", f"master={far}.monitor", f"{_NAMED}{name}")
        return self.control("load-module", *heard), loop, sink

    def unplug(self, module: str) -> None:
        """Take a microphone away again."""
        self.control("unload-module", module)

    def stop(self) -> None:
        """End the daemon."""
        self._daemon.kill()
        self._daemon.wait()
        shutil.rmtree(self._folder, ignore_errors=True)

    def _listen(self, stream: IO[str]) -> None:
        for line in stream:
            self._said.append(line)
            del self._said[:-200]
            if "Daemon startup complete" in line:
                self._ready.set()


_running: SoundServer | None = None


def running() -> SoundServer:
    """The one server of this process, started when it is first asked for; Qt and all programs of the tests use it.

    Qt looks for a server only once, so this must come before anything else that has to do with sound.
    """
    global _running
    if _running is None:
        _running = SoundServer()
        os.environ.update(_running.environment)
        atexit.register(end)
    return _running


def end() -> None:
    """End the server of this process, if one was started."""
    global _running
    if _running is not None:
        _running.stop()
        _running = None


@pytest.fixture(scope="session")
def sound_server() -> SoundServer:
    """The tests' own PulseAudio; without its packages the test is skipped, but fails in CI, which must have them."""
    packages = missing_packages()
    if packages:
        reason = f"needs {' and '.join(packages)}: apt install {' '.join(packages)}"
        if os.environ.get("CI"):
            pytest.fail(reason)
        pytest.skip(reason)
    return running()


def write_track(path: Path, samples: bytes, rate: int) -> Path:
    """16-bit mono sound as a file that can be played."""
    with wave.open(str(path), "wb") as track:
        track.setnchannels(1)
        track.setsampwidth(2)
        track.setframerate(rate)
        track.writeframes(samples)
    return path
