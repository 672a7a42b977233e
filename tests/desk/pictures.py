"""Makes the pictures of the README: `python tests/desk/pictures.py [FOLDER]`, examples/pictures by default.

The windows are the real ones on the example talk, drawn into memory. For the picture of a recording it starts a sound
server of its own and speaks into it with espeak-ng; without those the booth is pictured as it is without a microphone.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from io import BytesIO
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "sound"))

from PIL import Image
from PySide6.QtCore import QElapsedTimer, QSettings
from PySide6.QtWidgets import QApplication, QWidget

from studyboard.delivery.sheet import sheet_pictures
from studyboard.delivery.still import still_pictures
from studyboard.delivery.still_options import StillDesign, StillOptions
from studyboard.delivery.video.film import Frames
from studyboard.delivery.video.options import VideoOptions
from studyboard.desk.application import make_application
from studyboard.desk.deliver_window import DeliverWindow
from studyboard.desk.look import Look
from studyboard.desk.main_window import MainWindow
from studyboard.example import example_study
from studyboard.model.script import Part
from studyboard.store.study_file import StudyFile
from studyboard.timing.plan import plan

_SHOWN = "21. Ng5"
_FILMED = 195.0
_ROOM = 12
_CLOSE = (
    StillOptions(design=StillDesign.BAND, at="23. Nxh5", headline="The knight from b1"),
    StillOptions(design=StillDesign.CORNER, at="21. Ng5", headline="Which pawn is holding on?", theme="dark"),
)
_SPOKEN = (
    "Good evening, and welcome to the Sail Loft. Last round of the winter league tonight, and it all comes down to "
    "board one. Anton Garvey has five and a half points out of six."
)


def main() -> None:
    """Make every picture."""
    to = Path(sys.argv[1]) if len(sys.argv) > 1 else Path(__file__).resolve().parents[2] / "examples" / "pictures"
    to.mkdir(parents=True, exist_ok=True)
    study = example_study()
    frame, _ = Frames(study, plan(study), VideoOptions(lines=720, captions=True)).at(_FILMED)
    frame.surface.write_to_png(str(to / "video.png"))
    pages = sheet_pictures(study, ppi=64)
    _beside_each_other([pages[0], *pages[-2:]]).convert("L").save(to / "sheet.png", optimize=True)
    designs = (StillOptions(design=StillDesign.PAGE), *_CLOSE)
    stills = [still_pictures(study, options=options)[0].png for options in designs]
    _beside_each_other(stills, width=480).save(to / "still.png", optimize=True)
    with tempfile.TemporaryDirectory() as folder, _sound_server() as server:
        os.environ["STUDYBOARD_STATE_DIR"] = folder
        application = make_application()
        settings = QSettings(str(Path(folder) / "settings.ini"), QSettings.Format.IniFormat)
        look = Look()
        look.reduce_motion(True)
        file = StudyFile.create(Path(folder) / "Sail Loft.studyboard", example_study())
        desk = MainWindow(file, look, settings)
        desk.resize(1366, 768)
        desk.show()
        _show_move(desk, _SHOWN)
        for theme, name in (("light", "desk.png"), ("dark", "desk-dark.png")):
            look.choose_theme(theme)
            _save(desk, to / name)
        look.choose_theme("light")
        _rehearse(desk)
        _save(desk, to / "rehearse.png")
        _record(application, desk, server)
        _save(desk, to / "record.png")
        desk.start_or_stop()
        _wait(application, lambda: not desk.recording)
        desk.write_stage()
        window = DeliverWindow(desk.session, settings, desk)
        window.folder.setText("Documents/Sail Loft delivery")
        window.show()
        _save(window, to / "deliver.png")
        window.close()
        desk.close()


def _beside_each_other(pngs: list[bytes], width: int | None = None) -> Image.Image:
    """Pictures of one size in a row, with a little room around them."""
    pictures = [Image.open(BytesIO(png)).convert("RGB") for png in pngs]
    if width is not None:
        pictures = [one.resize((width, width * one.height // one.width), Image.Resampling.LANCZOS) for one in pictures]
    wide, tall = pictures[0].size
    row = Image.new("RGB", (len(pictures) * (wide + _ROOM) + _ROOM, tall + 2 * _ROOM), "#DDD8CC")
    for place, one in enumerate(pictures):
        row.paste(one, (_ROOM + place * (wide + _ROOM), _ROOM))
    return row


def _show_move(desk: MainWindow, label: str) -> None:
    from studyboard.notation.labels import move_label

    session = desk.session
    session.show(next(n for n in session.study.main_line() if move_label(session.positions, n) == label))


def _rehearse(desk: MainWindow) -> None:
    """Half of the talk told, every beat somewhat slower than planned."""
    now = [0.0]
    desk.rehearse_stage()
    desk.performance.start(clock=lambda: now[0])
    run = desk.performance.run
    target = next(n for n, beat in enumerate(run.beats) if beat.key == desk.lanes.current or _is(desk, beat.key))
    while run.beat < target or not run.stop or not run.stop.last_of_beat:
        now[0] += run.planned[run.beat] * 1.03 / sum(stop.beat == run.beat for stop in run.stops)
        desk.performance.advance()
    now[0] += 6.0
    desk.performance.ticked.emit()


def _is(desk: MainWindow, key: int | Part) -> bool:
    from studyboard.notation.labels import move_label

    return not isinstance(key, Part) and move_label(desk.session.positions, key) == _SHOWN


def _record(application: QApplication, desk: MainWindow, server: object | None) -> None:
    desk.performance.stop()
    desk.record_stage()
    if server is None:
        return
    with tempfile.TemporaryDirectory() as folder:
        sound = Path(folder) / "spoken.wav"
        subprocess.run(["espeak-ng", "-s", "165", "-w", str(sound), _SPOKEN], check=True)
        speaking = subprocess.Popen(["paplay", "-d", "mouth", str(sound)], env=os.environ)
        desk.start_or_stop()
        _wait(application, lambda: desk.performance.active)
        _wait(application, lambda: "Recording 0:06" in desk.booth.status.text())
        desk.performance.advance()
        _wait(application, lambda: "Recording 0:07" in desk.booth.status.text())
        speaking.kill()
        speaking.wait()


@contextmanager
def _sound_server() -> Iterator[object | None]:
    from virtual_microphone import SoundServer, missing_packages

    if missing_packages():
        print("Without a microphone: apt install", *missing_packages(), file=sys.stderr)
        yield None
        return
    server = SoundServer()
    os.environ.update(server.environment)
    try:
        yield server
    finally:
        server.stop()


def _wait(application: QApplication, reached: Callable[[], bool], seconds: float = 30.0) -> None:
    clock = QElapsedTimer()
    clock.start()
    while not reached():
        application.processEvents()
        if clock.elapsed() > seconds * 1000:
            raise TimeoutError("A window did not come into the state that was to be pictured.")


def _save(window: QWidget, path: Path) -> None:
    clock = QElapsedTimer()
    clock.start()
    while clock.elapsed() < 600:
        QApplication.processEvents()
    window.grab().save(str(path))
    print(path)


if __name__ == "__main__":
    main()
