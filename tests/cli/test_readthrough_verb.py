"""`studyboard readthrough`: what is printed, and how it ends."""

import io
import json

import pytest

from studyboard.cli.main import main

FEN = "6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1"


def test_a_text_beside_a_position_is_checked(capsys):
    assert main(["readthrough", "--fen", FEN, "--say", "Rook a8 is mate. Black is a rook up."]) == 1
    printed = capsys.readouterr().out
    assert "“Black is a rook up”" in printed
    assert "1 query" in printed


def test_a_true_text_ends_well(capsys):
    assert main(["readthrough", "--fen", FEN, "--say", "White to move. Rook a8 is mate."]) == 0
    assert "no query" in capsys.readouterr().out


def test_the_json_has_three_lists_with_quote_kind_why_and_beat(capsys):
    main(["readthrough", "--fen", FEN, "--say", "Rook a8 is mate. Black is a rook up.", "--json"])
    plain = json.loads(capsys.readouterr().out)
    assert set(plain) == {"queries", "confirmed", "unchecked"}
    (query,) = plain["queries"]
    assert query["quote"] == "Black is a rook up"
    assert query["kind"] == "material"
    assert query["why"]
    assert query["beat"] is None


def test_a_study_names_its_beats(tmp_path, capsys):
    game = tmp_path / "game.pgn"
    game.write_text("1. e4 e5 2. Nf3 *\n", encoding="utf-8")
    study = tmp_path / "talk.studyboard"
    assert main(["new", str(study), "--game", str(game)]) == 0
    capsys.readouterr()
    assert main(["readthrough", str(study), "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["queries"] == []


def test_wrong_input_is_told_in_one_line(capsys):
    assert main(["readthrough", "--fen", "nonsense", "--say", "Check."]) == 2
    assert capsys.readouterr().err.count("\n") == 1
    assert main(["readthrough", "--fen", FEN]) == 2
    assert "--say" in capsys.readouterr().err
    assert main(["readthrough"]) == 2


def test_what_is_confirmed_and_left_unchecked_is_printed_when_asked_for(capsys):
    assert main(["readthrough", "--fen", FEN, "--say", "White to move. Rook a8 is mate.", "--all"]) == 0
    printed = capsys.readouterr().out
    assert "confirmed: “Rook a8 is mate”" in printed or "confirmed: “mate”" in printed
    assert "Leave it out" not in printed


def test_the_words_can_come_from_standard_input(capsys, monkeypatch):
    monkeypatch.setattr("sys.stdin", io.StringIO("Black is a rook up."))
    assert main(["readthrough", "--fen", FEN, "--say", "-"]) == 1
    assert "“Black is a rook up”" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--fen", FEN, "--say", "  "], "nothing to check"),
        (["--fen", " ", "--say", "Check."], "--fen needs a position"),
        (["--fen", FEN, "--say", "Check.", "--number", "2"], "--number"),
        (["--fen", "8/8/8/8/8/8/8/8 w - - 0 1", "--say", "Check."], "no white king"),
        (["--fen", "4k3/8/8/8/8/8/8/4R1K1 w - - 0 1", "--say", "Check."], "not to move stands in check"),
    ],
)
def test_what_cannot_be_checked_is_refused_with_its_reason(capsys, arguments, said):
    assert main(["readthrough", *arguments]) == 2
    told = capsys.readouterr()
    assert said in told.err
    assert told.err.count("\n") == 1
    assert not told.out


def test_a_game_without_a_spoken_line_says_that_nothing_was_checked(tmp_path, capsys):
    game = tmp_path / "game.pgn"
    game.write_text("1. e4 { Black is a queen up. } e5 *\n", encoding="utf-8")
    assert main(["readthrough", str(game)]) == 0
    assert "no spoken line" in capsys.readouterr().err


def test_signs_that_look_like_digits_are_no_numbers(capsys):
    assert main(["readthrough", "--fen", FEN, "--say", "White has ² rooks, mate in ³ and ① pawn."]) in (0, 1)
    assert "left unchecked" in capsys.readouterr().out
