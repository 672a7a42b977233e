"""The lanes: the main line and every side-line beside the move that it replaces, row by row."""

from __future__ import annotations

from html import escape
from typing import Any

from PySide6.QtCore import QEasingCurve, QEvent, QPoint, QPointF, QRect, QRectF, QSize, Qt, QTimer, QVariantAnimation
from PySide6.QtCore import Signal as QtSignal
from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QAccessibleEvent,
    QContextMenuEvent,
    QFocusEvent,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QAbstractScrollArea, QToolTip, QWidget

from studyboard.desk.lane_layout import ENDING, OPENING, LaneLayout, LaneLine, lay_out, unfolded_for
from studyboard.desk.lanes_geometry import Box, LaneGeometry, lane_geometry, part_in_row
from studyboard.desk.lanes_paint import CellState, LanePainter, text_left
from studyboard.desk.lanes_rows import (
    RowText,
    heading_name,
    node_row,
    part_name,
    part_row,
    short_seconds,
    telling_in_words,
)
from studyboard.desk.lanes_times import LaneTimes, RowTime
from studyboard.desk.look import Look
from studyboard.desk.session import Session
from studyboard.model import stepping
from studyboard.model.node import Place
from studyboard.model.script import BeatKey, Part
from studyboard.model.study import Changed
from studyboard.timing.timeline import Timeline

#: How long the lanes take to bring a row into view (ms).
_GLIDE = 140
