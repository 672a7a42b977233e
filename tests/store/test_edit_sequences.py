"""Whatever is done, taken back, done again and opened again, the file and the study say the same."""

from __future__ import annotations

import tempfile
from datetime import UTC, datetime, timedelta
from pathlib import Path

import chess
from hypothesis import HealthCheck, assume, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule

from studyboard.model import edits, pasting
from studyboard.model.errors import EditRefusedError
from studyboard.model.marks import SQUARES_OF, Mark, MarkKind
from studyboard.model.node import Place, Telling
from studyboard.model.rehearsals import AddRehearsal, BeatTold, DropRehearsal, Rehearsal
from studyboard.model.script import Cue, FreeLine, Pace, Part, SpokenLine
from studyboard.model.takes import SoundTime, Take, TakeEvent
from studyboard.store.study_file import StudyFile

TEXT = st.text(st.characters(exclude_categories=("Cs",)), max_size=20)
SECONDS = st.floats(0, 1e6)
NUMBER = st.integers(0, 2**40)
SQUARES = st.integers(0, 63)
CUE = st.one_of(st.builds(Cue, NUMBER, node=NUMBER), st.builds(Cue, NUMBER, mark=NUMBER))
SPOKEN = st.builds(SpokenLine, TEXT, st.lists(CUE, max_size=3).map(tuple))
BEAT = st.one_of(NUMBER, st.sampled_from(Part))
TOLD = st.lists(st.builds(BeatTold, BEAT, st.floats(0, 99), st.floats(0, 99), st.integers(0, 5)), max_size=3).map(tuple)
TELLING = st.one_of(
    st.sampled_from([place for place in Place if place is not Place.MOVED]).map(Telling),
    NUMBER.map(lambda anchor: Telling(Place.MOVED, anchor)),
)


@st.composite
def marks(draw):
    kind = draw(st.sampled_from(MarkKind))
    least, most = SQUARES_OF[kind]
    return Mark(
        kind, tuple(draw(st.lists(SQUARES, min_size=least, max_size=most or 6))), draw(st.none() | st.integers(1, 30))
    )


FIELDS = {
    "spoken": SPOKEN,
    "note_before": TEXT,
    "note": TEXT,
    "marks": st.lists(marks(), max_size=3).map(tuple),
    "nags": st.lists(st.integers(0, 255), max_size=3).map(tuple),
    "intended": st.none() | SECONDS,
    "think": SECONDS,
    "telling": TELLING,
    "name": TEXT,
}
EVENT = st.builds(TakeEvent, st.builds(SoundTime, NUMBER, st.just(48_000)), NUMBER, st.none() | BEAT)
TAKE = st.builds(
    Take,
    st.integers(1, 5),
    TEXT,
    st.sampled_from([8_000, 48_000]),
    NUMBER,
    TEXT,
    st.lists(EVENT, max_size=3).map(tuple),
    st.booleans(),
    st.booleans(),
)
PLAIN_EDIT = st.one_of(
    st.builds(edits.ChangeHeaders, st.dictionaries(TEXT, TEXT, max_size=4).map(lambda tags: tuple(tags.items()))),
    st.builds(edits.ChangeLine, st.sampled_from(Part), st.builds(FreeLine, SPOKEN, st.none() | SECONDS, st.booleans())),
    st.builds(edits.ChangeSlot, st.none() | st.floats(0.1, 80_000)),
    st.builds(edits.ChangePace, st.builds(Pace, st.floats(0.1, 20), *[SECONDS] * 5)),
    st.builds(edits.PutTake, TAKE),
    st.builds(edits.ChangePronunciations, st.lists(st.tuples(TEXT, st.none() | TEXT), max_size=3).map(tuple)),
    st.builds(AddRehearsal, st.builds(Rehearsal, st.sampled_from(["2030-05-17", "2030-05-18"]), TOLD)),
    st.builds(DropRehearsal, st.sampled_from(["2030-05-17", "2030-05-18"])),
    st.builds(edits.ChangeLanguage, st.sampled_from(["", "en_GB", "de_DE"])),
    st.builds(edits.ChangeWords, st.lists(TEXT, max_size=3).map(tuple)),
    st.builds(edits.DropTake, st.integers(1, 5)),
    st.builds(edits.ChangeRehearsed, st.lists(st.tuples(BEAT, st.none() | SECONDS), max_size=3).map(tuple)),
)


def content(study):
    return {
        "headers": list(study.headers.items()),
        "root": study.root,
        "nodes": dict(study.nodes),
        "lines": [study.line(part) for part in Part],
        "slot": study.slot,
        "pace": study.pace,
        "takes": dict(study.takes),
        "rehearsed": dict(study.rehearsed),
        "rehearsals": study.rehearsals,
        "left": study.left,
        "pronunciations": dict(study.pronunciations),
        "language": study.language,
        "words": study.words,
    }


class OneStudy(RuleBasedStateMachine):
    """One study file that is worked on; `seen` holds what it said after each edit that is in its history."""

    def __init__(self):
        super().__init__()
        self.folder = tempfile.TemporaryDirectory()
        self.path = Path(self.folder.name) / "a.studyboard"
        self.time = datetime(2030, 5, 17, tzinfo=UTC)
        self.position = 0

    @initialize()
    def create(self):
        self.file = StudyFile.create(self.path, clock=lambda: self.time)
        self.seen = [content(self.file.study)]

    def do(self, edit, rest=60.0):
        self.time += timedelta(seconds=rest)
        before, ids = content(self.file.study), (self.file.study.next_id, self.file.study.next_take)
        entries = len(self.file.history()) if self.position == len(self.seen) - 1 else self.position
        try:
            self.file.do(edit)
        except EditRefusedError:
            assert content(self.file.study) == before
            assert (self.file.study.next_id, self.file.study.next_take) == ids
            return
        if len(self.file.history()) == entries:
            assert rest <= 2, "an edit that is no burst of typing must be in the history"
            self.seen[-1] = content(self.file.study)
            return
        del self.seen[self.position + 1 :]
        self.seen.append(content(self.file.study))
        self.position += 1

    def node(self, data):
        return data.draw(st.sampled_from(sorted(self.file.study.nodes)))

    @rule(data=st.data())
    def play_a_move(self, data):
        study, parent = self.file.study, self.node(data)
        board = chess.Board()
        for step in study.path(parent):
            if study.nodes[step].move is not None:
                board.push(study.nodes[step].move)
        moves = [chess.Move.null(), *board.legal_moves]
        self.do(edits.add_move(study, parent, data.draw(st.sampled_from(moves))))

    @rule(data=st.data(), field=st.sampled_from(sorted(FIELDS)), rest=st.sampled_from([0.5, 60.0]))
    def change_a_node(self, data, field, rest):
        self.do(edits.ChangeNode(self.node(data), field, data.draw(FIELDS[field])), rest)

    @rule(edit=PLAIN_EDIT, rest=st.sampled_from([0.5, 60.0]))
    def change_something_else(self, edit, rest):
        self.do(edit, rest)

    @rule(several=st.lists(PLAIN_EDIT, max_size=3).map(tuple))
    def change_several_things(self, several):
        self.do(edits.Several(several))

    @rule(data=st.data())
    def delete_a_branch(self, data):
        self.do(edits.RemoveBranch(self.node(data)))

    @rule(data=st.data(), place=st.integers(0, 2))
    def reorder(self, data, place):
        self.do(edits.MoveChild(self.node(data), place))

    @rule(data=st.data(), how=st.sampled_from([edits.promote, edits.demote, edits.make_main_line]))
    def promote_or_demote(self, data, how):
        try:
            edit = how(self.file.study, self.node(data))
        except EditRefusedError:
            return
        self.do(edit)

    @rule(data=st.data(), how=st.sampled_from(["copy", "cut"]))
    def paste(self, data, how):
        study, node, parent = self.file.study, self.node(data), self.node(data)
        try:
            if how == "copy":
                edit = pasting.paste(study, tuple(study.branch(node)), parent)
            else:
                edit = pasting.cut_and_paste(study, node, parent)
        except EditRefusedError:
            return
        self.do(edit)

    @precondition(lambda self: self.position > 0)
    @rule()
    def undo(self):
        self.file.undo()
        self.position -= 1

    @precondition(lambda self: self.position < len(self.seen) - 1)
    @rule()
    def redo(self):
        self.file.redo()
        self.position += 1

    @rule()
    def open_again(self):
        known = content(self.file.study), self.file.study.next_id, self.file.study.next_take
        self.file.close()
        self.file = StudyFile.open(self.path, clock=lambda: self.time)
        assert (content(self.file.study), self.file.study.next_id, self.file.study.next_take) == known

    @rule()
    def undo_and_redo_everything(self):
        assume(len(self.seen) > 1)
        for at in range(self.position - 1, -1, -1):
            self.file.undo()
            assert content(self.file.study) == self.seen[at]
        for at in range(1, self.position + 1):
            self.file.redo()
            assert content(self.file.study) == self.seen[at]

    @invariant()
    def the_study_is_what_it_was_at_this_point_of_its_history(self):
        if hasattr(self, "seen"):
            assert content(self.file.study) == self.seen[self.position]
            assert self.file.can_undo == (self.position > 0)
            assert self.file.can_redo == (self.position < len(self.seen) - 1)

    @invariant()
    def the_file_says_the_same_as_the_study(self):
        if hasattr(self, "seen"):
            with StudyFile.open(self.path, read_only=True) as reader:
                assert content(reader.study) == content(self.file.study)

    def teardown(self):
        if hasattr(self, "file"):
            self.file.close()
        self.folder.cleanup()


TestOneStudy = OneStudy.TestCase
TestOneStudy.settings = settings(
    max_examples=40, stateful_step_count=30, deadline=None, suppress_health_check=[HealthCheck.too_slow]
)
