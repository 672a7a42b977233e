"""A text falls into words that know where they stand."""

from studyboard.notation.narration.tokens import Break, tokens_of


def words(text: str) -> list[str]:
    return [token.text for token in tokens_of(text)]


def test_words_keep_their_places_in_the_text() -> None:
    text = "Knight f3, and Black's reply: e5!"
    assert [text[token.start : token.end] for token in tokens_of(text)] == [
        "Knight",
        "f3",
        "and",
        "Black's",
        "reply",
        "e5",
    ]


def test_case_and_kind_of_apostrophe_do_not_matter() -> None:
    assert words("LET’S Say") == ["let's", "say"]


def test_hyphens_part_words_but_not_castling() -> None:
    assert words("the h-pawn e2-e4 O-O-O 0-0") == ["the", "h", "pawn", "e2", "e4", "o-o-o", "0-0"]


def test_written_moves_stay_whole() -> None:
    assert words("Nxe5 exd5 Raxd1+ c8=Q Nbd7 bc4 e2e4") == [
        "nxe5", "exd5", "raxd1", "+", "c8=q", "nbd7", "bc4", "e2", "e4",
    ]  # fmt: skip


def test_what_stands_between_words_is_remembered() -> None:
    breaks = [token.broken for token in tokens_of("one two, three. Four\n\nfive – six")]
    assert breaks == [
        Break.PARAGRAPH, Break.NONE, Break.CLAUSE, Break.SENTENCE, Break.PARAGRAPH, Break.CLAUSE,
    ]  # fmt: skip


def test_the_number_of_a_move_ends_no_sentence() -> None:
    one, e4, _, two, knight = tokens_of("1. e4 e5 2. Nf3")
    assert one.numbered
    assert two.numbered
    assert e4.broken < Break.SENTENCE
    assert knight.broken < Break.SENTENCE


def test_the_rank_of_a_spelled_square_is_no_number_of_a_move() -> None:
    assert not any(token.numbered for token in tokens_of("pawn to e 4. g 6. pawn h 3."))


def test_brackets_are_remembered() -> None:
    e4, c5, e5 = tokens_of("e4 (c5) e5")
    assert c5.opens
    assert e5.closes
    assert not e4.opens
