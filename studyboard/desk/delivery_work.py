"""One delivery off the window's thread."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from threading import Event
from typing import Any

from PySide6.QtCore import QObject, QThread, Signal

from studyboard.delivery.deliver import Delivered, deliver
from studyboard.delivery.errors import DeliveryCancelledError
from studyboard.delivery.product import Item
from studyboard.delivery.video.narration import Narration
from studyboard.model.errors import StudyboardError
from studyboard.model.study import Study
from studyboard.timing.recorded import talk
from studyboard.translation import tr


class DeliveryWork(QThread):
    """A thread that delivers; what came of it is in `delivered`, `remarks`, `problem` and `cancelled`.

    State: the wish to stop, and what came of it.

    progressed: carries the item, the share of it that is done, and that of the whole (0.0 to 1.0)
    """

    progressed = Signal(str, float, float)

    def __init__(
        self,
        study: Study,
        to: Path,
        items: frozenset[Item],
        options: Mapping[Item, Any],
        narration: Narration | None,
        parent: QObject,
        *,
        again: bool = False,
    ) -> None:
        """study: a snapshot; the others as `deliver` has them."""
        super().__init__(parent)
        self._study, self._to, self._options = study, to, options
        self._narration, self._again = narration, again
        self.items = items
        self.stop = Event()
        self.delivered: list[Delivered] = []
        self.remarks: list[str] = []
        self.problem = ""
        self.cancelled = False

    def run(self) -> None:
        """Deliver."""
        try:
            self.delivered = deliver(
                self._study,
                self._to,
                self.items,
                timeline=talk(self._study),
                options=self._options,
                narration=self._narration,
                again=self._again,
                progress=lambda item, done, share: self.progressed.emit(str(item), done, share),
                cancelled=self.stop.is_set,
                remark=self.remarks.append,
            )
        except DeliveryCancelledError as reason:
            self.cancelled, self.problem = True, str(reason)
        except StudyboardError as reason:
            self.problem = str(reason)
        except Exception as reason:
            self.problem = tr("The delivery failed: {reason}. Nothing was changed.", reason=reason)
