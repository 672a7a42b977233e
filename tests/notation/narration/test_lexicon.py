"""The words of a language come from its file."""

import chess
import pytest

from studyboard.notation.narration.errors import NoSuchLanguageError
from studyboard.notation.narration.lexicon import lexicon, parsed_lexicon


@pytest.mark.parametrize("language", ["en", "de"])
def test_a_language_has_every_piece_file_and_rank(language: str) -> None:
    said = [saying for group in lexicon(language).sayings.values() for saying in group if saying.cost == 0]
    assert {saying.value for saying in said if saying.kind == "piece"} == set(chess.PIECE_TYPES)
    assert {saying.value for saying in said if saying.kind == "digit"} == set(range(8))
    assert {saying.value for saying in lexicon(language).sayings["a"] if saying.kind == "letter"} == {0}


@pytest.mark.parametrize("language", ["xx", "../en", "", "en/../de"])
def test_a_language_without_a_file_is_named(language: str) -> None:
    with pytest.raises(NoSuchLanguageError, match="there is no file of its words"):
        lexicon(language)


def test_a_misheard_word_is_dearer_than_the_word_itself() -> None:
    (knight,) = (saying for saying in lexicon("en").sayings["knight"] if saying.kind == "piece")
    (night,) = (saying for saying in lexicon("en").sayings["night"] if saying.kind == "piece")
    assert knight.value == night.value == chess.KNIGHT
    assert knight.cost < night.cost


def test_a_language_is_data_alone() -> None:
    words = parsed_lexicon(
        {
            "language": "made up",
            "piece": {"knight": ["zip"]},
            "cues": {"threat": {"weight": 2.0, "reach": 5, "before": ["zap zap"], "weak": ["zop"]}},
        }
    )
    assert words.sayings["zip"][0].value == chess.KNIGHT
    assert words.cues["zap"][0].weight == 2.0
    assert 0 < words.cues["zop"][0].weight < 2.0
