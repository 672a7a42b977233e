"""The tree that grows while movetext is read: equal moves meet, and the line that came first leads."""

from __future__ import annotations

import chess

from studyboard.notation.pgn_draft import Draft

E4, D4, C4 = (chess.Move.from_uci(uci) for uci in ("e2e4", "d2d4", "c2c4"))


def test_a_new_move_goes_last_and_its_line_leads_from_there():
    draft = Draft()
    assert draft.join(0, E4, leads=True) == (1, True)
    assert draft.join(0, D4, leads=False) == (2, True)
    assert draft.children[0] == [1, 2]
    assert draft.parents == [-1, 0, 0]


def test_a_move_that_is_there_is_met_again_and_stays_behind_those_before_it():
    draft = Draft()
    for move in (E4, D4):
        draft.join(0, move, leads=False)
    assert draft.join(0, D4, leads=False) == (2, False)
    assert draft.children[0] == [1, 2]


def test_the_line_that_leads_puts_its_move_first_whether_new_or_met_again():
    draft = Draft()
    draft.join(0, E4, leads=False)
    assert draft.join(0, D4, leads=True) == (2, True)
    assert draft.children[0] == [2, 1]
    assert draft.join(0, E4, leads=True) == (1, True)
    assert draft.children[0] == [1, 2]


def test_glyphs_are_kept_once_in_the_order_in_which_they_came():
    draft = Draft()
    draft.add_nags(0, (3, 1, 3))
    draft.add_nags(0, (1, 2))
    assert draft.nags == {0: [3, 1, 2]}


def test_nothing_added_leaves_no_trace():
    draft = Draft()
    draft.add_notes(0, ())
    draft.add_notes_before(0, ())
    assert (draft.notes, draft.before) == ({}, {})
