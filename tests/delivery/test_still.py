"""A single picture of a position."""

from __future__ import annotations

import io
import subprocess
import sys

from PIL import Image

from studyboard.delivery.still import still_node, still_png
from studyboard.model.positions import Positions
from studyboard.model.study import Study

WITHOUT_CAIRO = """
import ctypes.util, cffi
ctypes.util.find_library = lambda name: None

class Missing(cffi.FFI):
    def dlopen(self, *names):
        raise OSError("cannot load library")

cffi.FFI = Missing
from studyboard.delivery.errors import DeliveryError
from studyboard.delivery.still import still_png
from studyboard.model.positions import Positions
from studyboard.model.study import Study
study = Study()
try:
    still_png(study, Positions(study))
except DeliveryError as reason:
    print(reason)
"""


def test_the_picture_has_the_size_that_was_asked_for_and_is_not_empty(author):
    image = Image.open(io.BytesIO(still_png(author.study, Positions(author.study), size=400)))
    assert image.size == (400, 400)
    assert len(image.convert("RGB").getcolors(400 * 400) or []) > 20


def test_the_picture_is_of_the_think_pause_else_of_the_last_marks_else_of_the_end(author):
    main = list(author.study.main_line())
    assert still_node(author.study) == main[6]
    author.put(main[6], think=0.0)
    assert still_node(author.study) == main[8]
    author.put(main[8], marks=())
    assert still_node(author.study) == main[-1]
    assert still_node(Study()) == 0


def test_a_node_can_be_chosen(author):
    positions = Positions(author.study)
    assert still_png(author.study, positions, 0) != still_png(author.study, positions, 3)


def test_without_cairo_the_missing_package_is_named():
    """The loader of the library is taken away in a process of its own; everything else there is real."""
    run = subprocess.run([sys.executable, "-c", WITHOUT_CAIRO], capture_output=True, text=True, check=False)
    assert "libcairo2" in run.stdout, run.stderr
    assert "Traceback" not in run.stderr
