"""`studyboard readthrough`: what is printed, and how it ends."""

import json

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
