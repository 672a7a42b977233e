"""The log of rehearsals: how long each beat took from time to time, where the presenter stumbles, how the pace goes."""

from __future__ import annotations

from datetime import datetime

from PySide6.QtCore import QSize, Qt, QThreadPool, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QDialog,
    QHBoxLayout,
    QLabel,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from studyboard.desk.acting_button import ActingButton
from studyboard.desk.focus_frame import FocusFrame
from studyboard.desk.look import Look
from studyboard.desk.moments import moment
from studyboard.desk.ruler_talk import beat_label
from studyboard.desk.session import Session
from studyboard.desk.work_beside import WorkBeside
from studyboard.model.edits import ChangePace
from studyboard.model.errors import StudyboardError
from studyboard.model.heard_take import tellings
from studyboard.model.rehearsals import DropRehearsal
from studyboard.model.script import BeatKey
from studyboard.model.takes import Take
from studyboard.sound.silences import STUMBLE, longest_silences
from studyboard.store.sound import TakeSound
from studyboard.timing.clock import clock
from studyboard.timing.pace_fit import fit_pace
from studyboard.timing.recorded import kept_takes
from studyboard.timing.rehearsal_log import BeatHistory, Told, beat_histories, drift, rehearsal_log, rehearsed_lines
from studyboard.translation import tr, tr_later, written_number

#: So many of the latest times have a column.
_SHOWN = 6
#: Columns before them, and the one that says over or under.
_LEADING, _OVER = 7, 3


class RehearsalsWindow(QDialog):
    """A row for each beat, a column for each of the latest rehearsals and takes; choosing a row shows it on the desk.

    State: the log as it was last read.

    silences: the longest silence of each beat of the latest take was found; carries a dict; from another thread
    """

    silences = Signal(object)

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._look = look
        self._log: tuple[Told, ...] = ()
        self._rows: tuple[BeatHistory, ...] = ()
        self._silent: dict[BeatKey, float] = {}
        self.setWindowTitle(tr("Rehearsals"))
        line = self.fontMetrics().height()
        self.resize(QSize(56 * line, 34 * line).boundedTo(self.screen().availableSize() * 0.95))
        self.told = QLabel("")
        self.told.setWordWrap(True)
        self.table = QTableWidget(0, 0)
        self.table.setAccessibleName(tr("Beats and how long they took"))
        self.table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.table.setTabKeyNavigation(False)
        self.table.setWordWrap(False)
        self.table.verticalHeader().hide()
        FocusFrame(self.table, look)
        self.pace_button = ActingButton(tr("Learn my pace from this"))
        self.pace_button.setToolTip(tr("The plan then counts with the pace at which you rehearse; undo takes it back"))
        self.forget_button = ActingButton(tr("Forget this rehearsal"))
        self.forget_button.setToolTip(tr("The one in whose column the keyboard is; takes stay"))
        close = ActingButton(tr("Close"))
        foot = QHBoxLayout()
        foot.addWidget(self.pace_button)
        foot.addWidget(self.forget_button)
        foot.addStretch(1)
        foot.addWidget(close)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(20, 18, 20, 18)
        layout.setSpacing(10)
        layout.addWidget(self.told)
        layout.addWidget(self.table, 1)
        layout.addLayout(foot)
        self.pace_button.clicked.connect(self.learn)
        self.forget_button.clicked.connect(self.forget)
        close.clicked.connect(self.close)
        self.table.currentCellChanged.connect(lambda *_: self._show_buttons())
        self.table.cellActivated.connect(self._go)
        self.silences.connect(self._take_silences)
        session.changed.connect(self._fill)
        look.changed.connect(self._fill)
        self._fill()
        self._look_for_silences()

    def learn(self) -> None:
        """Set the pace of the study to the one of the rehearsals."""
        try:
            fit = fit_pace(rehearsed_lines(self._session.study, self._log))
        except StudyboardError as reason:
            self.told.setText(str(reason))
            return
        if self._session.do(ChangePace(fit.pace, tr_later("Set the pace"))):
            self.told.setText(
                tr(
                    "The plan now counts with {rate} words a minute, from {lines} beats. Edit › Undo takes it back.",
                    rate=round(fit.words_per_minute),
                    lines=fit.lines,
                )
            )

    def forget(self) -> None:
        """Take the chosen rehearsal out of the log."""
        chosen = self._chosen()
        if chosen is not None:
            self._session.do(DropRehearsal(chosen.at))

    def _chosen(self) -> Told | None:
        """The rehearsal in whose column the keyboard is."""
        number = self.table.currentColumn() - _LEADING
        shown = self._shown()
        return shown[number] if 0 <= number < len(shown) and shown[number].take is None else None

    def _fill(self) -> None:
        study = self._session.study
        self._log = rehearsal_log(study)
        self._rows = beat_histories(study, self._log) if self._log else ()
        heads = [tr("Beat"), tr("Plan"), tr("Usually"), tr("Over or under"), tr("Trend"), tr("Begun anew")]
        heads += [tr("Silent"), *map(self._head, self._shown())]
        self.table.setColumnCount(len(heads))
        self.table.setHorizontalHeaderLabels(heads)
        self.table.setRowCount(len(self._rows))
        for number, row in enumerate(self._rows):
            self._fill_row(number, row)
        self.table.resizeColumnsToContents()
        self.told.setText(self._summary())
        self._show_buttons()

    def _shown(self) -> tuple[Told, ...]:
        """What has a column, the latest first."""
        return self._log[: -_SHOWN - 1 : -1]

    def _fill_row(self, number: int, row: BeatHistory) -> None:
        silent = self._silent.get(row.beat.key, 0.0)
        texts = [self._name(row.beat.key), _seconds(row.planned), _seconds(row.usual)]
        texts.append(_signed(row.over) if row.off else "")
        texts.append(_signed(row.trend) if row.trend is not None and abs(row.trend) >= 0.5 else "")
        texts.append(str(row.restarts) if row.restarts else "")
        texts.append(_seconds(silent) if silent >= STUMBLE else "")
        texts += map(_seconds, row.seconds[: -_SHOWN - 1 : -1])
        for column, text in enumerate(texts):
            item = QTableWidgetItem(text)
            if column:
                item.setTextAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
            if row.off and text and column == _OVER:
                item.setForeground(self._look.color("over" if (row.over or 0) > 0 else "accent"))
            self.table.setItem(number, column, item)

    def _summary(self) -> str:
        if not self._log:
            return tr("Nothing has been rehearsed yet. Rehearse (Ctrl+2) the talk once, and its beats stand here.")
        last = self._log[-1]
        count, length, planned = len(self._log), clock(last.seconds), clock(last.planned)
        sentences = [
            tr("Told once, in {length}; planned were {planned}.", length=length, planned=planned)
            if count == 1
            else tr(
                "Told {count} times; the last time in {length}, planned were {planned}.",
                count=count,
                length=length,
                planned=planned,
            )
        ]
        over = [self._name(row.beat.key) for row in self._rows if row.off and (row.over or 0) > 0]
        if over:
            named = ", ".join(over[:5]) + ("…" if len(over) > 5 else "")
            sentences.append(tr("Running over: {beats}.", beats=named))
        found = drift(last)
        if found is not None and found.matters:
            share = abs(round(100 * found.share))
            sentences.append(
                tr("The end was told {share} % slower than the beginning.", share=share)
                if found.share > 0
                else tr("The end was told {share} % faster than the beginning.", share=share)
            )
        return " ".join(sentences)

    def _head(self, told: Told) -> str:
        # In two lines, so that more columns have room.
        when = "\n".join(moment(datetime.fromisoformat(told.at)).rsplit(" ", 1))
        return when if told.take is None else "\n".join((tr("Take {number}", number=told.take), when))

    def _name(self, key: BeatKey) -> str:
        return beat_label(self._session.positions, key)

    def _go(self, row: int, _: int) -> None:
        self._session.show(self._rows[row].beat.node)

    def _show_buttons(self) -> None:
        self.pace_button.setEnabled(bool(self._log))
        self.forget_button.setEnabled(self._chosen() is not None)

    # ---- where there is sound ---------------------------------------------------------------------------------------

    def _look_for_silences(self) -> None:
        """Beside the desk's thread: the sound of a long take is long."""
        takes = kept_takes(self._session.study)
        if not takes:
            return
        shelf, take = self._session.file.sound_writer(), takes[-1]
        QThreadPool.globalInstance().start(WorkBeside(lambda: self.silences.emit(_silences(shelf, take))))

    def _take_silences(self, found: dict[BeatKey, float]) -> None:
        self._silent = found
        self._fill()


def _silences(shelf: TakeSound, take: Take) -> dict[BeatKey, float]:
    told = tellings(take)
    try:
        found = longest_silences(
            shelf.sound_chunks(take.id), [(one.span.start, one.span.end) for one in told], take.rate
        )
    except StudyboardError:
        return {}
    finally:
        shelf.close()
    longest: dict[BeatKey, float] = {}
    for one, (_, seconds) in zip(told, found, strict=True):
        if one.beat is not None:
            longest[one.beat] = max(longest.get(one.beat, 0.0), seconds)
    return longest


def _seconds(seconds: float | None) -> str:
    return "" if seconds is None else written_number(seconds, ".1f")


def _signed(seconds: float | None) -> str:
    if seconds is None:
        return ""
    return ("+" if seconds > 0 else "−") + written_number(abs(seconds), ".1f")
