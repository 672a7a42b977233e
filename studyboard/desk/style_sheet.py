"""The style sheet of the desk, made from the theme."""

from __future__ import annotations

from PySide6.QtGui import QFontMetrics

from studyboard.desk.look import Look
from studyboard.resources_path import resource

_TEMPLATE = """
QWidget {{ color: {ink}; }}
QMainWindow, QDialog, #paper {{ background: {paper}; }}
QFrame#card {{ background: {surface}; border: 1px solid {rule}; border-radius: 8px; }}
QLabel#quiet, QLabel[quiet="true"] {{ color: {ink_quiet}; }}
QLabel#over {{ color: {over}; }}
QLabel#heading {{ font-weight: 600; }}
QMenuBar {{ background: {paper}; border: none; padding: 2px 8px; }}
QMenuBar::item {{ padding: 4px 10px; border-radius: 4px; background: transparent; }}
QMenuBar::item:selected {{ background: {accent_soft}; }}
QMenu {{ background: {surface}; border: 1px solid {rule}; padding: 6px; }}
QMenu::item {{ padding: 5px 24px 5px 12px; border-radius: 4px; }}
QMenu::item:selected {{ background: {accent_soft}; }}
QMenu::item:disabled {{ color: {rail}; }}
QMenu::separator {{ height: 1px; background: {rule}; margin: 5px 8px; }}
QPushButton {{ background: {surface}; border: 1px solid {rail}; border-radius: 6px; padding: 5px 14px; outline: none; }}
QPushButton:hover {{ background: {accent_soft}; }}
QPushButton:focus {{ border: 2px solid {focus}; padding: 4px 13px; }}
QPushButton:disabled {{ color: {rail}; border-color: {rule}; }}
QPushButton:default, QPushButton[primary="true"] {{
    background: {accent}; color: {on_accent}; border: 1px solid {accent}; min-width: 64px; }}
QPushButton:default:disabled, QPushButton[primary="true"]:disabled {{
    background: {track}; color: {rail}; border-color: {rule}; }}
QPushButton:default:focus, QPushButton[primary="true"]:focus {{ border: 2px solid {focus}; }}
QPushButton[mode="true"] {{
    border-radius: 13px; padding: 5px 18px; min-height: 18px; border-color: {rule}; font-weight: 600; }}
QPushButton[mode="true"]:checked {{ background: {accent}; color: {on_accent}; border-color: {accent}; }}
QPushButton[recording="true"] {{
    background: {recording}; color: {surface}; border: 1px solid {recording}; font-weight: 600; }}
QToolButton {{ background: transparent; border: 1px solid transparent; border-radius: 6px; padding: 4px; }}
QToolButton:hover {{ background: {accent_soft}; }}
QToolButton:checked {{ background: {accent_soft}; border-color: {accent}; }}
QToolButton:focus {{ border-color: {focus}; }}
QLineEdit, QPlainTextEdit, QTextEdit, QSpinBox, QDoubleSpinBox {{
    background: {surface}; border: 1px solid {rail}; border-radius: 5px; padding: 4px 6px;
    selection-background-color: {selection}; selection-color: {ink}; placeholder-text-color: {ink_quiet}; }}
QLineEdit:focus, QPlainTextEdit:focus, QTextEdit:focus, QSpinBox:focus, QDoubleSpinBox:focus {{
    border: 2px solid {focus}; padding: 3px 5px; }}
QLineEdit:disabled, QSpinBox:disabled, QDoubleSpinBox:disabled {{ color: {rail}; border-color: {rule}; }}
QAbstractSpinBox::up-button, QAbstractSpinBox::down-button {{ width: 0; border: none; }}
QTableView, QListView, QTreeView {{ background: {surface}; border: 1px solid {rule}; border-radius: 6px;
    gridline-color: {rule}; selection-background-color: {accent_soft}; selection-color: {ink};
    alternate-background-color: {paper}; }}
QTableView, QListView, QTreeView {{ outline: none; }}
QTableView::item {{ padding: 2px 5px; border: 1px solid transparent; }}
QTableView::item:hover, QListView::item:hover {{ background: {paper}; color: {ink}; }}
QTableView::item:selected, QListView::item:selected {{ background: {accent_soft}; color: {ink}; }}
QTableView::item:focus {{ border-color: {focus}; }}
QListView:focus {{ border-color: {focus}; }}
QHeaderView::section {{ background: {paper}; color: {ink_quiet}; border: none; border-bottom: 1px solid {rule};
    padding: 5px 8px; font-weight: 600; }}
QProgressBar {{ background: {track}; border: none; border-radius: 4px; height: 8px; text-align: center; }}
QProgressBar::chunk {{ background: {accent}; border-radius: 4px; }}
QSlider:horizontal {{ min-height: 20px; }}
QSlider::groove:horizontal {{ background: {track}; height: 4px; border-radius: 2px; }}
QSlider::sub-page:horizontal {{ background: {accent}; height: 4px; border-radius: 2px; }}
QSlider::handle:horizontal {{
    background: {surface}; border: 1px solid {rail}; border-radius: 8px; width: 14px; height: 14px; margin: -6px 0; }}
QSlider::handle:horizontal:focus {{ background: {focus}; border: 1px solid {focus}; }}
QScrollBar:vertical {{ background: transparent; width: 10px; margin: 0; }}
QScrollBar:horizontal {{ background: transparent; height: 10px; margin: 0; }}
QScrollBar::handle {{ background: {rail}; border-radius: 4px; min-height: 28px; min-width: 28px; margin: 1px; }}
QScrollBar::add-line, QScrollBar::sub-line, QScrollBar::add-page, QScrollBar::sub-page {{
    background: transparent; width: 0; height: 0; }}
QAbstractScrollArea::corner {{ background: transparent; border: none; }}
QSplitter::handle {{ background: transparent; }}
QStatusBar {{ background: {paper}; color: {ink_quiet}; }}
QStatusBar::item {{ border: none; }}
QToolTip {{ background: {surface}; color: {ink}; border: 1px solid {rail}; padding: 5px; }}
QCheckBox, QRadioButton {{ spacing: 8px; padding: 2px; }}
QCheckBox:focus, QRadioButton:focus {{ outline: none; color: {focus}; }}
QCheckBox:disabled, QRadioButton:disabled {{ color: {rail}; }}
QCheckBox::indicator, QRadioButton::indicator {{
    width: {box}px; height: {box}px; border: 1px solid {rail}; background: {surface}; }}
QCheckBox::indicator {{ border-radius: 4px; }}
QRadioButton::indicator {{ border-radius: {round}px; }}
QCheckBox::indicator:checked {{ background: {accent}; border-color: {accent}; image: url("{tick}"); }}
QRadioButton::indicator:checked {{
    width: {dot}px; height: {dot}px; border: {ring}px solid {accent}; background: {on_accent}; }}
QCheckBox::indicator:focus, QRadioButton::indicator:focus {{ border-color: {focus}; }}
QCheckBox::indicator:disabled {{ background: {paper}; border: 1px dashed {rail}; }}
QCheckBox::indicator:checked:disabled {{ background: {rail}; }}
QComboBox {{ background: {surface}; border: 1px solid {rail}; border-radius: 5px; padding: 4px 8px; }}
QComboBox:focus {{ border: 2px solid {focus}; padding: 3px 7px; }}
QComboBox:disabled {{ color: {rail}; border-color: {rule}; }}
QComboBox::drop-down {{ border: none; width: {drop}px; }}
QComboBox::down-arrow {{ image: url("{caret}"); width: {caret_side}px; height: {caret_side}px; }}
"""


def style_sheet(look: Look) -> str:
    """Qt style sheet for the whole application in the colours of *look*, at the present size of text."""
    theme = look.theme
    tokens = {name: getattr(theme, name) for name in theme.__dataclass_fields__}
    shapes = {name: resource("controls", f"{name}-{theme.name}.svg").as_posix() for name in ("tick", "caret")}
    return _TEMPLATE.format(**tokens, **shapes, **_sizes(QFontMetrics(look.ui_font()).height()))


def _sizes(line: int) -> dict[str, int]:
    """Sides of what is drawn beside words (px), which grows with the height of a line of them (px)."""
    # A circle in a style sheet is a square with corners as round as half its side, so the side is even.
    box = max(14, round(0.9 * line) // 2 * 2)
    ring = max(4, box // 3)
    return {
        "box": box,
        "round": box // 2 + 1,
        "ring": ring,
        "dot": box + 2 - 2 * ring,
        "caret_side": max(12, round(0.7 * line)),
        "drop": max(24, round(1.3 * line)),
    }
