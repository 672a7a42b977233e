"""What is found in a study: moves, words, positions."""

from __future__ import annotations

from dataclasses import replace

import chess
import pytest

from studyboard.model.positions import Positions
from studyboard.model.script import FreeLine, Part, SpokenLine
from studyboard.model.study import Study
from studyboard.notation.finding import Sought, UnreadablePositionError, find, find_position, plain
from studyboard.notation.labels import move_label
from studyboard.notation.pgn_reader import read_games

GAME = (
    "1. e4 e5 2. Nf3 Nc6 (2... d6 3. d4 exd4 4. Nxd4 Nf6) 3. d4 exd4 4. Nxd4 Nf6 (4... Qh4) 5. Nxc6 bxc6 6. Be2 Bc5 "
    "7. O-O O-O (7... d5 8. exd5) *"
)


@pytest.fixture
def study() -> Study:
    return next(read_games(GAME)).study


def found(study: Study, text: str, sought: Sought = Sought.ANYTHING) -> list[str]:
    positions = Positions(study)
    matches = find(study, positions, text, sought)
    return [m.key.value if isinstance(m.key, Part) else move_label(positions, m.key) for m in matches]


@pytest.mark.parametrize("text", ["Nxd4", "Nd4", "nxd4", "N3xd4", "Nfd4", "♘xd4", "Nxd4+", "Nxd4!?", "knight d4"])
def test_a_move_is_found_however_it_is_written(study: Study, text: str) -> None:
    assert found(study, text) == ["4. Nxd4", "4. Nxd4"]


@pytest.mark.parametrize("text", ["knight takes d4", "Knight takes d four", "knight captures on d4 check"])
def test_a_move_is_found_as_it_is_said(study: Study, text: str) -> None:
    assert found(study, text) == ["4. Nxd4", "4. Nxd4"]


@pytest.mark.parametrize("text", ["castles", "castles kingside", "castles short", "0-0", "O-O"])
def test_castling_is_found(study: Study, text: str) -> None:
    assert found(study, text) == ["7. O-O", "7... O-O"]


def test_castling_to_the_other_side_is_another_move(study: Study) -> None:
    assert found(study, "castles queenside") == found(study, "O-O-O") == []


def test_a_number_tells_one_of_several_moves_apart(study: Study) -> None:
    assert found(study, "d4") == ["3. d4", "3. d4"]
    assert found(study, "3.d4") == found(study, "3. d4") == ["3. d4", "3. d4"]
    assert found(study, "4. d4") == []
    assert found(study, "4... Nf6") == ["4... Nf6", "4... Nf6"]
    assert found(study, "4. Nf6") == []


def test_a_pawn_move_is_that_of_its_own_file_and_a_capture_only_captures(study: Study) -> None:
    assert found(study, "exd4") == found(study, "e takes d4") == ["3... exd4", "3... exd4"]
    assert found(study, "pawn takes c6") == ["5... bxc6"]
    assert found(study, "c6") == []
    assert found(study, "Nxf3") == []


def test_a_small_b_is_the_pawn_where_there_is_one_and_else_the_bishop(study: Study) -> None:
    assert found(study, "bxc6") == ["5... bxc6"]
    assert found(study, "bc5") == ["6... Bc5"]


def test_words_are_found_in_lines_notes_and_names_without_regard_to_case_and_accents(study: Study) -> None:
    line = list(study.main_line())
    study.nodes[line[2]] = replace(study.nodes[line[2]], spoken=SpokenLine("The café was\nclosed that “Sunday”."))
    study.nodes[line[4]] = replace(study.nodes[line[4]], note="[%clk 0:10] Café again.")
    side = study.nodes[line[3]].children[1]
    study.nodes[side] = replace(study.nodes[side], name="The Cafe line")
    study.lines[Part.CLOSING] = FreeLine(SpokenLine("Back to the café."))
    assert found(study, "CAFE") == ["1... e5", "2... Nc6", "2... d6", "closing"]
    assert found(study, 'closed that "sunday"') == ["1... e5"]
    assert found(study, "clk") == []


def test_a_move_that_is_typed_is_found_on_the_board_and_in_words(study: Study) -> None:
    first = list(study.main_line())[1]
    study.nodes[first] = replace(study.nodes[first], note="Later comes Qh4.")
    assert found(study, "Qh4") == ["1. e4", "4... Qh4"]
    assert found(study, "Qh4", Sought.MOVE) == ["4... Qh4"]
    assert found(study, "Qh4", Sought.WORDS) == ["1. e4"]


def test_a_position_is_found_wherever_it_arises(study: Study) -> None:
    transposing = next(read_games("1. d4 d5 (1... Nf6 2. c4 d5) 2. c4 Nf6 3. Nc3 *")).study
    fen = "rnbqkb1r/ppp1pppp/5n2/3p4/2PP4/8/PP2PPPP/RNBQKBNR w KQkq - 1 3"
    assert found(transposing, fen) == ["2... d5", "2... Nf6"], "whatever the counters of moves say"
    assert found(transposing, fen.replace(" w ", " b ")) == []
    assert found(transposing, fen.replace("KQkq", "KQ")) == [], "castling belongs to the position"
    assert found(transposing, fen.split()[0]) == ["2... d5", "2... Nf6"], "a placement leaves open who is to move"
    board = chess.Board(fen)
    assert [match.key for match in find_position(transposing, board)] == [
        match.key for match in find(transposing, Positions(transposing), fen, Sought.POSITION)
    ]


def test_en_passant_counts_only_where_it_can_be_played(study: Study) -> None:
    game = next(read_games("1. e4 Nf6 (1... Nc6 2. e5 d5) 2. e5 d5 *")).study
    with_square = "rnbqkb1r/ppp1pppp/5n2/3pP3/8/8/PPPP1PPP/RNBQKBNR w KQkq d6 0 3"
    assert found(game, with_square) == ["2... d5"]
    assert found(game, with_square.replace(" d6 ", " - ")) == []
    start = "rnbqkbnr/pppppppp/8/8/4P3/8/PPPP1PPP/RNBQKBNR b KQkq e3 0 1"
    assert found(game, start) == found(game, start.replace("e3", "-")) == ["1. e4"]


def test_what_looks_like_a_position_and_is_none_is_refused(study: Study) -> None:
    with pytest.raises(UnreadablePositionError, match="no position in FEN"):
        find(study, Positions(study), "9/8/8/8/8/8/8/8 w", Sought.POSITION)
    with pytest.raises(UnreadablePositionError):
        find(study, Positions(study), "the bishop", Sought.POSITION)


def test_nothing_is_found_for_nothing(study: Study) -> None:
    assert find(study, Positions(study), "  ") == ()


def test_words_are_compared_without_what_keyboards_differ_in() -> None:
    assert plain("  “Ça va”–\nÉTÉ ") == '"ca va"- ete'
