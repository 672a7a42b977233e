"""One product in the delivery window: whether it is wanted, what it is, how far it is, and the way to its options."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QLabel, QWidget

from studyboard.delivery.product import Product
from studyboard.desk.acting_button import ActingButton
from studyboard.translation import tr, tr_later

STATES = (tr_later("waiting"), tr_later("made"), tr_later("kept"), tr_later("not made"))
"""What a product can be, besides under way."""


class ProductRow(QWidget):
    """A product to be ticked.

    asked: its options are to be chosen
    """

    asked = Signal()

    def __init__(self, product: Product, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        title, what = tr(product.title), tr(product.what)
        self.product = product
        self.check = QCheckBox(title)
        self.check.setChecked(product.quick)
        self.check.setAccessibleDescription(what)
        note = QLabel(what)
        note.setObjectName("quiet")
        note.setWordWrap(True)
        self.status = QLabel("")
        self.status.setObjectName("quiet")
        self.status.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        # Descriptions must not be broken anew whenever it says something else.
        self.status.setMinimumWidth(self.status.fontMetrics().horizontalAdvance(max(map(tr, STATES), key=len)))
        self.status.setAccessibleName(tr("{product}: how far it is", product=title))
        self.button = ActingButton(tr("Options…"))
        self.button.setAccessibleName(tr("Options of “{product}”", product=title))
        self.button.clicked.connect(self.asked)
        if not product.controls:
            # Its place is kept, so that all descriptions end at one edge.
            policy = self.button.sizePolicy()
            policy.setRetainSizeWhenHidden(True)
            self.button.setSizePolicy(policy)
            self.button.hide()
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.check)
        layout.addWidget(note, 1)
        layout.addWidget(self.status)
        layout.addWidget(self.button)

    def set_working(self, working: bool) -> None:
        """Nothing can be chosen while a delivery runs."""
        self.check.setEnabled(not working)
        self.button.setEnabled(not working)
