"""The text beside a video: what it says, and templates of the user's."""

from __future__ import annotations

from pathlib import Path

import chess.pgn
import pytest
from markdown_it import MarkdownIt

from studyboard.delivery.chapters import chapter_lines, chapters
from studyboard.delivery.deliver import deliver
from studyboard.delivery.description import description, description_context
from studyboard.delivery.errors import DeliveryError
from studyboard.delivery.items.text import TextForm, TextOptions
from studyboard.delivery.product import Item
from studyboard.model.edits import ChangeHeaders, apply
from studyboard.model.positions import Positions
from studyboard.model.script import Part
from studyboard.model.study import Study
from studyboard.resources_path import resource
from studyboard.timing.plan import plan
from studyboard.writing.kept_text import NotKeptError

STEM = "Halvorse-Nduka-Harbour-Club-Winter-Evening"
SHIPPED = {form: resource("description", f"description.{form}.jinja") for form in ("txt", "md")}


def context(study: Study, names=()) -> dict:
    return description_context(study, Positions(study), plan(study), names)


@pytest.fixture
def template(tmp_path):
    """Makes a template of the user's."""

    def write(text: str, name: str = "mine.txt.jinja") -> Path:
        path = tmp_path / name
        path.write_text(text, encoding="utf-8")
        return path

    return write


def test_it_sums_up_the_game_and_the_talk(author):
    lines = description(context(author.study), SHIPPED["txt"]).splitlines()
    assert lines[0] == "Halvorse – Nduka, Harbour Club Winter Evening"
    summary = " ".join(lines[2 : lines.index("Chapters")])
    assert "Maja Halvorse (2104) against Ade Nduka (2088), Harbour Club Winter Evening, Round 3" in summary
    assert "42 seconds: 7 moves, 2 side-lines and 1 pause to find the move." in summary


def test_its_chapters_are_those_of_the_video_to_the_second(author):
    study = author.study
    text = description(context(study), SHIPPED["txt"])
    listed = chapter_lines(chapters(study, Positions(study), plan(study)))
    assert listed.count("\n") >= 2
    assert f"Chapters\n{listed}\n" in text


def test_its_moves_are_those_of_the_game(author, tmp_path):
    text = description(context(author.study), SHIPPED["txt"])
    moves = text.partition("The game\n")[2].partition("\n\n")[0]
    assert all(len(line) <= 78 for line in moves.splitlines())
    path = tmp_path / "game.pgn"
    path.write_text(f"{moves}\n", encoding="utf-8")
    with path.open(encoding="utf-8") as file:
        game = chess.pgn.read_game(file)
    assert game is not None
    assert game.errors == []
    played = [author.study.nodes[node].move for node in author.study.main_line()][1:]
    assert list(game.mainline_moves()) == played
    assert game.headers["Result"] == "0-1"


def test_a_move_stays_on_the_line_of_its_number(author):
    text = description(context(author.study), SHIPPED["txt"])
    assert not [line for line in text.splitlines() if line.endswith(".") and line.rstrip(".")[-1:].isdigit()]


def test_credits_come_from_the_tags_and_thanks_from_the_script_and_a_list(author, tmp_path):
    apply(author.study, ChangeHeaders((*author.study.headers.items(), ("Annotator", "Marlow, Ines"))))
    names = tmp_path / "names.csv"
    names.write_text("Name,Town\nAda Holm,Saltern\nBo Lind,Saltern\n", encoding="utf-8")
    deliver(author.study, tmp_path, {Item.TEXT}, options={Item.TEXT: TextOptions(names=names)})
    text = (tmp_path / f"{STEM}-description.txt").read_text(encoding="utf-8")
    assert "Credits\nTold by: Ines Marlow\n" in text
    assert text.endswith("Thanks\nThank you for listening.\nAda Holm, Bo Lind\n")
    record = (tmp_path / "delivery.json").read_text(encoding="utf-8")
    assert '"names": "names.csv"' in record
    assert str(tmp_path) not in record, "what is published says nothing of the user's folders"


def test_what_there_is_nothing_of_has_no_heading():
    text = description(context(Study()), SHIPPED["txt"])
    assert text == "Study\n"


def test_a_german_talk_has_german_headings_and_chapters(author):
    author.study.language = "de_DE"
    text = description(context(author.study), SHIPPED["txt"])
    assert "Maja Halvorse (2104) gegen Ade Nduka (2088)" in text
    assert "17. Januar 2024" in text.replace("\n", " ")
    assert "7 Züge, 2 Nebenvarianten und 1 Pause, um den Zug zu finden." in text.replace("\n", " ")
    headings = [line for line in text.splitlines() if line in ("Kapitel", "Die Partie", "Dank", "Chapters", "The game")]
    assert headings == ["Kapitel", "Die Partie", "Dank"]
    titles = [one.title for one in chapters(author.study, Positions(author.study), plan(author.study))]
    assert "Nebenvariante: The quiet way" in titles


def test_the_same_study_gives_the_same_text(author):
    assert description(context(author.study), SHIPPED["md"]) == description(
        context(author.study.snapshot()), SHIPPED["md"]
    )


def test_a_template_of_the_users_takes_its_place(author, template, tmp_path):
    mine = template(
        "{{ players }}: {{ talk.length }}\n{% for one in chapters %}\n* {{ one.title }}\n{% endfor %}\n", "a.md.j2"
    )
    deliver(author.study, tmp_path / "out", {Item.TEXT}, options={Item.TEXT: TextOptions(template=mine)})
    text = (tmp_path / "out" / f"{STEM}-description.md").read_text(encoding="utf-8")
    assert text.startswith("Halvorse – Nduka: 0:")
    assert text.count("\n* ") == len(chapters(author.study, Positions(author.study), plan(author.study)))


def test_a_template_that_was_changed_makes_the_text_anew(author, template, tmp_path):
    options = {Item.TEXT: TextOptions(template=template("{{ title }}"))}
    deliver(author.study, tmp_path / "out", {Item.TEXT}, options=options)
    (kept,) = deliver(author.study, tmp_path / "out", {Item.TEXT}, options=options)
    template("{{ result }}")
    (made,) = deliver(author.study, tmp_path / "out", {Item.TEXT}, options=options)
    assert (kept.kept, made.kept) == (True, False)
    assert made.path.read_text(encoding="utf-8") == "0–1\n"


@pytest.mark.parametrize(
    ("text", "line", "why"),
    [
        ("{{ title }}\n{{ tilte }}\n", 2, "'tilte' is undefined"),
        ("{{ title }}\n\n{{ white.nmae }}", 3, "nmae"),
        ("{{ title }}\n{% for a in chapters %}\n{{ a.title }}\n", 3, "endfor"),
        ("{{ title | shout }}", 1, "shout"),
        ("\n\n{{ 1 / 0 }}", 3, "division by zero"),
        ("{{ title + 1 }}", 1, "str"),
    ],
)
def test_what_is_wrong_in_a_template_is_told_with_its_line(author, template, text, line, why):
    mine = template(text)
    with pytest.raises(DeliveryError) as refused:
        description(context(author.study), mine)
    assert str(refused.value).startswith(f"{mine}:{line}: ")
    assert why in str(refused.value)
    assert "\n" not in str(refused.value)


@pytest.mark.parametrize(
    "text",
    [
        "{{ title.__class__.__mro__ }}",
        "{{ ''.__class__.__base__.__subclasses__() }}",
        "{{ cycler.__init__.__globals__.os.system('true') }}",
        "{{ chapters.__init__.__globals__ }}",
        "{% include '/etc/hostname' %}",
        "{% import 'os' as os %}",
        "{{ range(100000000) | list }}",
    ],
)
def test_a_template_reaches_nothing_but_what_it_is_given(author, template, text):
    with pytest.raises(DeliveryError):
        description(context(author.study), template(text))


def test_a_template_that_is_not_there_is_named(author, tmp_path):
    options = {Item.TEXT: TextOptions(template=tmp_path / "gone.jinja")}
    with pytest.raises(DeliveryError, match=r"gone\.jinja cannot be read: No such file"):
        deliver(author.study, tmp_path / "out", {Item.TEXT}, options=options)
    assert not (tmp_path / "out").exists()


def test_a_list_without_names_is_refused(author, tmp_path):
    (tmp_path / "names.txt").write_text("# nobody\n", encoding="utf-8")
    with pytest.raises(NotKeptError, match="holds no name"):
        deliver(author.study, tmp_path, {Item.TEXT}, options={Item.TEXT: TextOptions(names=tmp_path / "names.txt")})


def test_markdown_shows_every_sign_as_it_was_written(author, tmp_path):
    """Read by markdown-it-py, a CommonMark reader of others."""
    awkward = "*Open* <b> [Cup] #2 & 1_000 `x` \\ ~~no~~ | 1. e4"
    apply(author.study, ChangeHeaders((*author.study.headers.items(), ("Event", awkward))))
    author.say(Part.THANKS, "1. Thanks to *all* <of> you_and_me &amp; #everyone.")
    deliver(author.study, tmp_path, {Item.TEXT}, options={Item.TEXT: TextOptions(TextForm.MARKDOWN)})
    (path,) = tmp_path.glob("*-description.md")
    tokens = MarkdownIt("commonmark").parse(path.read_text(encoding="utf-8"))
    shown = ["".join(part.content or "\n" for part in one.children or ()) for one in tokens if one.type == "inline"]
    assert shown[0] == f"Halvorse – Nduka, {awkward}"
    assert shown[-1].replace("\n", " ") == "1. Thanks to *all* <of> you_and_me &amp; #everyone."
    listed = [one for one in tokens if one.type == "list_item_open"]
    assert len(listed) == len(chapters(author.study, Positions(author.study), plan(author.study)))
