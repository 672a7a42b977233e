"""What can be chosen of a product, as a form made from its controls, and remembered for the next time."""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from PySide6.QtCore import QSettings, Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QFileDialog,
    QFormLayout,
    QHBoxLayout,
    QLineEdit,
    QPushButton,
    QWidget,
)

from studyboard.delivery.product import Choice, Control, OwnFile, Product, Tick, Word, plain_options
from studyboard.model.errors import StudyboardError
from studyboard.translation import tr

_KEY = "deliver/options"


class ProductChoices(QWidget):
    """One row for each control; `options` is what is chosen.

    changed: something else has been chosen
    """

    changed = Signal()

    def __init__(self, product: Product, options: Any, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._product = product
        self.fields: dict[str, QComboBox | QCheckBox | QLineEdit] = {}
        self._rows: dict[str, QHBoxLayout] = {}
        self._form = QFormLayout(self)
        self._form.setContentsMargins(0, 0, 0, 0)
        self._form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapAllRows)
        for control in product.controls:
            self._add(control)
        self.show_options(options)

    def options(self) -> Any:
        """What is chosen. Raises StudyboardError where it does not go together."""
        return self._product.options(**{control.field: self._value(control) for control in self._product.controls})

    def show_options(self, options: Any) -> None:
        """Choose these."""
        for control in self._product.controls:
            value, field = getattr(options, control.field), self.fields[control.field]
            match control, field:
                case Choice(), QComboBox():
                    field.setCurrentIndex(max(0, [one for one, _ in control.values].index(value)))
                case Tick(), QCheckBox():
                    field.setChecked(value == control.ticked)
                case _, QLineEdit():
                    field.setText("" if value is None else str(value))

    def choose(self, field: str, value: Any) -> None:
        """Choose one value of one control."""
        combo = self.fields[field]
        assert isinstance(combo, QComboBox)
        combo.setCurrentIndex(combo.findData(value))

    def add_beside(self, field: str, button: QPushButton, words: str) -> None:
        """Put a button beside a field of words, which writes these into it."""
        line = self.fields[field]
        assert isinstance(line, QLineEdit)
        button.clicked.connect(lambda: line.setText(words))
        self._rows[field].addWidget(button)

    def _add(self, control: Control) -> None:
        name = tr(control.label)
        if isinstance(control, Tick):
            check = QCheckBox(name)
            check.toggled.connect(lambda _: self.changed.emit())
            self.fields[control.field] = check
            self._form.addRow(check)
            return
        field: QComboBox | QLineEdit
        if isinstance(control, Choice):
            field = QComboBox()
            for value, label in control.values:
                field.addItem(tr(label), value)
            field.currentIndexChanged.connect(lambda _: self.changed.emit())
        else:
            field = QLineEdit()
            field.textChanged.connect(lambda _: self.changed.emit())
        field.setAccessibleName(name)
        self.fields[control.field] = field
        holder = QWidget()
        row = QHBoxLayout(holder)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(field, 1)
        self._rows[control.field] = row
        if isinstance(control, OwnFile):
            button = QPushButton(tr("Choose…"))
            button.setAccessibleName(tr("{name}: choose a file", name=name))
            button.clicked.connect(lambda: self._choose_file(control))
            row.addWidget(button)
        self._form.addRow(name, holder)

    def _choose_file(self, control: OwnFile) -> None:
        path, _ = QFileDialog.getOpenFileName(self, tr(control.label), "", f"{control.pattern};;*")
        field = self.fields[control.field]
        if path and isinstance(field, QLineEdit):
            field.setText(path)

    def _value(self, control: Control) -> Any:
        match control, self.fields[control.field]:
            case Choice(), QComboBox() as combo:
                return control.values[combo.currentIndex()][0]
            case Tick(), QCheckBox() as check:
                return check.isChecked() == control.ticked
            case OwnFile(), QLineEdit() as line:
                return Path(line.text()) if line.text().strip() else None
            case _, QLineEdit() as line:
                return line.text().strip()
            case _:
                raise AssertionError(f"a field for {control} of another kind")


def remembered_options(settings: QSettings | None, product: Product) -> Any:
    """What was chosen of a product the last time, else the usual. Words are of one study and are not remembered."""
    try:
        kept = dict(json.loads(str(settings.value(f"{_KEY}/{product.item}", "{}")))) if settings is not None else {}
    except (ValueError, TypeError):
        kept = {}
    words = {control.field for control in product.controls if isinstance(control, Word)}
    return options_from(product, {field: value for field, value in kept.items() if field not in words})


def options_from(product: Product, kept: Mapping[str, Any]) -> Any:
    """Options from plain values; what is not among them, or no longer to be had, is as usual."""
    found: dict[str, Any] = {}
    for control in product.controls:
        value = kept.get(control.field)
        match control:
            case Choice():
                known = {str(one): one for one, _ in control.values}
                if str(value) in known:
                    found[control.field] = known[str(value)]
            case Tick() if isinstance(value, bool):
                found[control.field] = value
            case OwnFile() if value and Path(str(value)).exists():
                found[control.field] = Path(str(value))
            case Word() if isinstance(value, str):
                found[control.field] = value
    try:
        return product.options(**found)
    except StudyboardError:
        return product.options()


def remember_options(settings: QSettings | None, product: Product, options: Any) -> None:
    """Keep what is chosen for the next time."""
    if settings is not None:
        words = {control.field for control in product.controls if isinstance(control, Word)}
        kept = {field: value for field, value in plain_options(options).items() if field not in words}
        settings.setValue(f"{_KEY}/{product.item}", json.dumps(kept))
