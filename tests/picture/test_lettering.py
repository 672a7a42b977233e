"""Texts as pictures."""

from __future__ import annotations

from studyboard.picture import lettering
from studyboard.picture.lettering import Letterer, Lettering


def test_a_text_is_as_wide_as_it_needs_and_has_its_colour():
    letterer = Letterer()
    short, long = (Lettering(text, 40, "#ff0000") for text in ("Rook", "Rook and queen"))
    assert 0 < letterer.size(short)[0] < letterer.size(long)[0]
    picture = letterer.picture(short)
    data = bytes(picture.get_data())
    # Premultiplied, blue first: nothing but red and transparent.
    assert max(data[2::4]) == 255
    assert max(data[0::4]) == max(data[1::4]) == 0


def test_lines_are_broken_where_a_width_is_given():
    letterer = Letterer()
    one = Lettering("a rook and a bishop against the queen", 30, "#000000")
    several = Lettering(one.text, 30, "#000000", width=200)
    assert letterer.size(several)[0] == 200
    assert letterer.size(several)[1] > 2 * letterer.size(one)[1]


def test_nothing_to_see_has_no_picture():
    assert Letterer().picture(Lettering("  ", 30, "#000000")) is None
    assert Letterer().size(Lettering("", 30, "#000000")) == (0, 0)


def test_texts_that_were_not_used_for_long_are_forgotten(monkeypatch):
    monkeypatch.setattr(lettering, "KEPT", 300_000)
    letterer = Letterer()
    first = Lettering("first", 60, "#000000")
    letterer.prepare([first])
    for number in range(40):
        letterer.prepare([Lettering(f"another text, number {number}", 60, "#000000")])
    assert letterer._bytes <= 300_000 + 600_000
    assert first not in letterer._pictures
    assert letterer.size(first)[0] > 0
