"""The look of the desk: theme colours as Qt colours, fonts that follow the system's, and how much may move."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QSettings, Qt, Signal
from PySide6.QtGui import QColor, QFont, QFontDatabase, QGuiApplication, QIcon, QPainter, QPalette, QPixmap
from PySide6.QtSvg import QSvgRenderer

from studyboard.picture.palette import BoardPalette, Theme, board_palette, strong, theme
from studyboard.picture.pieces import DEFAULT_SET, PIECE_SETS
from studyboard.resources_path import resource

if TYPE_CHECKING:
    from PySide6.QtGui import QAccessibilityHints

#: Serif faces for spoken text, the first that the machine has.
_SERIFS = ("Libertinus Serif", "Source Serif 4", "Charter", "Georgia", "Noto Serif", "DejaVu Serif")


class Look(QObject):
    """Colours, fonts and motion of every window.

    State: the chosen theme ("light", "dark" or "system"), the board palette, the set of pieces, and whether motion
    is reduced; all
    of it is remembered in the platform's settings.

    changed: something of it is different now; windows repaint
    """

    changed = Signal()

    def __init__(self, settings: QSettings | None = None, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._settings = settings
        self._choice = str(self._remembered("look/theme", "system"))
        self._board = board_palette(str(self._remembered("look/board", "mist")))
        pieces = str(self._remembered("look/pieces", DEFAULT_SET))
        self._pieces = pieces if pieces in dict(PIECE_SETS) else DEFAULT_SET
        self._reduced_motion = str(self._remembered("look/reduced_motion", "false")) == "true"
        self._theme = self._themed()
        self._colors: dict[str, QColor] = {}
        self._icons: dict[tuple[str, str, int], QIcon] = {}
        self._serif = next((f for f in _SERIFS if QFontDatabase.hasFamily(f)), "serif")
        hints = QGuiApplication.styleHints()
        if hints is not None:
            hints.colorSchemeChanged.connect(self._follow_system)
        wishes = _wishes()
        if wishes is not None:
            wishes.contrastPreferenceChanged.connect(self._follow_system)

    @property
    def theme(self) -> Theme:
        """The theme that is in force."""
        return self._theme

    @property
    def theme_choice(self) -> str:
        """What the user chose: "light", "dark" or "system"."""
        return self._choice

    @property
    def dark(self) -> bool:
        """True where the dark theme is in force."""
        return self._theme.name == "dark"

    @property
    def board_palette(self) -> BoardPalette:
        """The colours of the board."""
        return self._board

    @property
    def piece_set(self) -> str:
        """The set of pieces on the board: the name of its folder."""
        return self._pieces

    @property
    def reduced_motion(self) -> bool:
        """True where nothing on the desk may slide, sweep or scroll by itself."""
        return self._reduced_motion

    def choose_theme(self, name: str) -> None:
        """Use the theme "light", "dark", or what the system has."""
        self._choice = name
        self._remember("look/theme", name)
        self._follow_system()

    def choose_board(self, name: str) -> None:
        """Use the board palette with this name."""
        self._board = board_palette(name)
        self._remember("look/board", name)
        self.changed.emit()

    def choose_pieces(self, name: str) -> None:
        """Use the set of pieces with this name."""
        self._pieces = name
        self._remember("look/pieces", name)
        self.changed.emit()

    def reduce_motion(self, reduced: bool) -> None:
        """Let nothing move by itself, or let it again."""
        self._reduced_motion = reduced
        self._remember("look/reduced_motion", "true" if reduced else "false")
        self.changed.emit()

    def color(self, token: str) -> QColor:
        """The colour of a theme token (see Theme). Raises AttributeError where there is no such token."""
        found = self._colors.get(token)
        if found is None:
            found = self._colors[token] = QColor(getattr(self._theme, token))
        return found

    def ui_font(self, factor: float = 1.0) -> QFont:
        """The system's own font for controls, *factor* times its size."""
        font = QFont(QGuiApplication.font())
        _scale(font, factor)
        return font

    def spoken_font(self, factor: float = 1.15) -> QFont:
        """The serif for what is said, *factor* times the size of controls."""
        font = QFont(self._serif)
        font.setStyleHint(QFont.StyleHint.Serif)
        font.setPointSizeF(QGuiApplication.font().pointSizeF() if QGuiApplication.font().pointSizeF() > 0 else 10.0)
        _scale(font, factor)
        return font

    def move_font(self, factor: float = 1.0) -> QFont:
        """The font of moves: the one for controls, set stronger."""
        font = self.ui_font(factor)
        font.setWeight(QFont.Weight.DemiBold)
        return font

    def icon(self, name: str, token: str = "ink", size: int = 24) -> QIcon:
        """One of the program's line icons (resources/icons), in a colour of the theme."""
        key = (name, token, size)
        found = self._icons.get(key)
        if found is None:
            found = QIcon()
            for ink, mode in ((token, QIcon.Mode.Normal), ("rail", QIcon.Mode.Disabled)):
                for scale in (1, 2, 3):
                    found.addPixmap(self._pixmap(name, self.color(ink).name(), size * scale), mode)
            self._icons[key] = found
        return found

    def palette(self) -> QPalette:
        """The theme as a Qt palette, for controls that draw themselves."""
        palette = QPalette()
        roles = {
            QPalette.ColorRole.Window: "paper",
            QPalette.ColorRole.WindowText: "ink",
            QPalette.ColorRole.Base: "surface",
            QPalette.ColorRole.AlternateBase: "paper",
            QPalette.ColorRole.Text: "ink",
            QPalette.ColorRole.Button: "surface",
            QPalette.ColorRole.ButtonText: "ink",
            QPalette.ColorRole.Highlight: "selection",
            QPalette.ColorRole.HighlightedText: "ink",
            QPalette.ColorRole.ToolTipBase: "surface",
            QPalette.ColorRole.ToolTipText: "ink",
            QPalette.ColorRole.PlaceholderText: "ink_quiet",
            QPalette.ColorRole.Link: "accent",
            QPalette.ColorRole.Accent: "accent",
            QPalette.ColorRole.Mid: "rule",
            QPalette.ColorRole.Midlight: "rule",
            QPalette.ColorRole.Dark: "rail",
        }
        for role, token in roles.items():
            palette.setColor(role, self.color(token))
        for role in (QPalette.ColorRole.Text, QPalette.ColorRole.ButtonText, QPalette.ColorRole.WindowText):
            palette.setColor(QPalette.ColorGroup.Disabled, role, self.color("rail"))
        return palette

    def _pixmap(self, name: str, ink: str, size: int) -> QPixmap:
        svg = _drawing(name).replace("currentColor", ink)
        pixmap = QPixmap(size, size)
        pixmap.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixmap)
        QSvgRenderer(svg.encode()).render(painter)
        painter.end()
        return pixmap

    def _resolved(self) -> str:
        if self._choice in ("light", "dark"):
            return self._choice
        hints = QGuiApplication.styleHints()
        return "dark" if hints is not None and hints.colorScheme() == Qt.ColorScheme.Dark else "light"

    def _themed(self) -> Theme:
        """The theme, with stronger lines and no quiet ink where the system asks for more contrast."""
        found, wishes = theme(self._resolved()), _wishes()
        asked = wishes is not None and wishes.contrastPreference() == Qt.ContrastPreference.HighContrast
        return strong(found) if asked else found

    def _follow_system(self) -> None:
        self._theme = self._themed()
        self._colors.clear()
        self._icons.clear()
        self.changed.emit()

    def _remembered(self, key: str, default: str) -> object:
        return default if self._settings is None else self._settings.value(key, default)

    def _remember(self, key: str, value: str) -> None:
        if self._settings is not None:
            self._settings.setValue(key, value)


@cache
def _drawing(icon: str) -> str:
    return resource("icons", f"{icon}.svg").read_text(encoding="utf-8")


#: Python's sight of Qt's hints ends with the last name for them, and with it that of what they hand out.
_KEPT: list[object] = []


def _wishes() -> QAccessibilityHints | None:
    """What the system asks for on behalf of who uses it; None where this Qt (before 6.10) does not say."""
    hints = QGuiApplication.styleHints()
    if hints is None or not hasattr(hints, "accessibility"):
        return None
    if not _KEPT:
        _KEPT.extend((hints, hints.accessibility()))
    return hints.accessibility()


def _scale(font: QFont, factor: float) -> None:
    if font.pointSizeF() > 0:
        font.setPointSizeF(font.pointSizeF() * factor)
    else:
        font.setPixelSize(round(font.pixelSize() * factor))
