from studyboard.board.assessments import MOVE_GLYPHS, POSITION_GLYPHS, glyph_words, with_glyph


def test_glyphs_say_what_the_standard_says():
    """PGN standard (1994), section 10, table of numeric annotation glyphs; from memory."""
    assert glyph_words(1) == "!  good move"
    assert glyph_words(2) == "?  poor move"
    assert glyph_words(3) == "!!  very good move"
    assert glyph_words(4) == "??  very poor move"
    assert glyph_words(5) == "!?  speculative move"
    assert glyph_words(6) == "?!  questionable move"
    assert glyph_words(146) == "$146"


def test_choosing_a_glyph_leaves_the_others_in_their_order():
    assert with_glyph((36, 1, 16), 4, MOVE_GLYPHS) == (36, 4, 16)
    assert with_glyph((36, 1, 16), 0, MOVE_GLYPHS) == (36, 16)
    assert with_glyph((36, 1), 10, POSITION_GLYPHS) == (36, 1, 10)
    assert with_glyph((1, 36, 2), 3, MOVE_GLYPHS) == (3, 36)
    assert with_glyph((), 0, MOVE_GLYPHS) == ()


def test_every_glyph_that_can_be_chosen_has_words():
    assert all(not glyph_words(nag).startswith("$") for nag in (*MOVE_GLYPHS, *POSITION_GLYPHS))
    assert not set(MOVE_GLYPHS) & set(POSITION_GLYPHS)
