"""What the video will show at a moment of one's choice."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, QThread
from PySide6.QtGui import QImage, QPixmap, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QSlider, QVBoxLayout, QWidget

from studyboard.delivery.video.options import VideoOptions
from studyboard.model.errors import StudyboardError
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.notation.labels import move_label
from studyboard.timing.clock import clock
from studyboard.timing.timeline import Timeline
from studyboard.translation import tr

if TYPE_CHECKING:
    from studyboard.delivery.video.film import Frames

_LINES = 720
"""The size in which the frame is painted, whatever that of the video: what is shown here is smaller than both."""

_PER_SECOND = 10
"""Steps of the slider in a second: finer than anything on the board happens."""

_WIDTH, _HEIGHT = 440, 248


class _Painting(QThread):
    """One frame, painted off the window's thread; `image` and `problem` say what came of it.

    frames: what paints it, None where that is to be made; the next frame with the same options takes it over
    """

    def __init__(
        self,
        study: Study,
        timeline: Timeline,
        seconds: float,
        options: VideoOptions,
        frames: Frames | None,
        parent: QObject,
    ) -> None:
        super().__init__(parent)
        self._study, self._timeline, self._seconds = study, timeline, seconds
        self.options, self.frames = options, frames
        self.image: QImage | None = None
        self.problem = ""

    def run(self) -> None:
        """Paint it."""
        from studyboard.delivery.video.film import Frames

        try:
            if self.frames is None:
                self.frames = Frames(self._study, self._timeline, self.options)
            canvas, _ = self.frames.at(self._seconds)
            image = QImage(canvas.bgra(), canvas.width, canvas.height, QImage.Format.Format_RGB32)
            # The picture's memory goes with its canvas.
            self.image = image.copy()
        except StudyboardError as reason:
            self.problem = str(reason)
        except Exception as reason:
            self.problem = tr("The frame cannot be shown: {reason}.", reason=reason)


class VideoPreview(QWidget):
    """A frame and a slider through the talk.

    State: the moment, the frame that is shown, and the work on the next one; only the latest wish is worked on.
    """

    def __init__(
        self,
        study: Study,
        timeline: Timeline,
        options: Callable[[], VideoOptions],
        seconds: float = 0.0,
        parent: QWidget | None = None,
    ) -> None:
        """study: a snapshot; options: asked for whenever a frame is painted; seconds: the moment to begin with."""
        super().__init__(parent)
        self._study, self._timeline, self._options = study, timeline, options
        self._positions = Positions(study)
        self._work: _Painting | None = None
        self._last: _Painting | None = None
        self._wanted = False
        self._image: QImage | None = None
        self.picture = QLabel()
        self.picture.setMinimumSize(_WIDTH, _HEIGHT)
        self.picture.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.picture.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Ignored)
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.slider.setRange(0, max(0, round(timeline.seconds * _PER_SECOND) - 1))
        self.slider.setSingleStep(_PER_SECOND)
        self.slider.setPageStep(10 * _PER_SECOND)
        self.slider.setValue(round(seconds * _PER_SECOND))
        self.slider.setAccessibleName(tr("Moment of the frame"))
        self.moment = QLabel()
        self.moment.setObjectName("quiet")
        below = QHBoxLayout()
        below.addWidget(self.slider, 1)
        below.addWidget(self.moment)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 4, 0, 0)
        layout.addWidget(self.picture, 1)
        layout.addLayout(below)
        self.slider.valueChanged.connect(lambda _: self.refresh())
        self._tell_moment()

    @property
    def seconds(self) -> float:
        """The moment that is chosen (s)."""
        return self.slider.value() / _PER_SECOND

    @property
    def busy(self) -> bool:
        """A frame is being painted."""
        return self._work is not None

    def refresh(self) -> None:
        """Paint the frame of this moment with the options as they are now, as soon as it is seen."""
        self._tell_moment()
        if not self.isVisible():
            return
        if self._work is not None:
            self._wanted = True
            return
        self._wanted = False
        try:
            options = replace(self._options(), lines=_LINES)
        except StudyboardError as reason:
            self._show_problem(str(reason))
            return
        last = self._last
        frames = last.frames if last is not None and last.options == options else None
        self._work = _Painting(self._study, self._timeline, self.seconds, options, frames, self)
        self._work.finished.connect(self._painted)
        self._work.start()

    def finish(self) -> None:
        """Wait for a frame that is being painted; the window closes."""
        if self._work is not None:
            self._work.finished.disconnect(self._painted)
            self._work.wait()
            self._work = None

    def showEvent(self, event: QShowEvent) -> None:
        """What was chosen while nobody looked is painted now."""
        super().showEvent(event)
        self.refresh()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The frame keeps its shape."""
        super().resizeEvent(event)
        self._scale()

    def _painted(self) -> None:
        work, self._work = self._work, None
        if work is None:
            # Its word was on the way already when the window was closed.
            return
        if work.problem:
            self._show_problem(work.problem)
        elif work.image is not None:
            self._image = work.image
            self._scale()
        if self._last is not None:
            self._last.deleteLater()
        self._last = work
        if self._wanted:
            self.refresh()

    def _scale(self) -> None:
        if self._image is None:
            return
        ratio = self.devicePixelRatioF()
        size = self.picture.size() * ratio
        scaled = self._image.scaled(
            size, Qt.AspectRatioMode.KeepAspectRatio, Qt.TransformationMode.SmoothTransformation
        )
        scaled.setDevicePixelRatio(ratio)
        self.picture.setPixmap(QPixmap.fromImage(scaled))

    def _show_problem(self, sentence: str) -> None:
        self._image = None
        self.picture.setText(sentence)
        self.picture.setWordWrap(True)

    def _tell_moment(self) -> None:
        node = self._timeline.node_at(self.seconds)
        label = move_label(self._positions, node) if self._study.nodes[node].move is not None else ""
        text = f"{clock(self.seconds)}  {label}".rstrip()
        self.moment.setText(text)
        self.picture.setAccessibleName(tr("Frame of the video at {moment}", moment=text))
