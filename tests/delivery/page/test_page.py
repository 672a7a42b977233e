"""The page as a file: valid, self-contained, the same each time, and safe whatever the texts hold."""

from __future__ import annotations

import base64
import hashlib
import json
import re

import html5lib
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from studyboard.delivery.page.media import media_inside, media_named
from studyboard.example import example_study
from studyboard.model.edits import ChangeHeaders, ChangeNode, apply
from studyboard.model.marks import Mark, MarkKind
from studyboard.model.node import Place, Telling
from studyboard.model.script import Part, SpokenLine
from studyboard.model.study import Study
from tests.delivery.page.pages import html_of
from tests.desk.lane_studies import studies

HOSTILE = (
    "</script><script>window.owned = 1</script>",
    "<img src=x onerror='window.owned = 1'>",
    "{{ 7 * 7 }} {% raw %} &lt; &amp;amp; \u202egnp.exe",
    "' onclick='window.owned = 1' x='\" onclick=\"window.owned = 1\"",
    "<!-- <script> ]]> --!> \x00 \x0b \ufffe \ud800 \U0001ffff",
    "javascript:window.owned=1 <svg/onload=window.owned=1><style>*{display:none}</style>",
)


def hostile(author) -> Study:
    """A study every text of which wants to be more than a text."""
    study = author.study
    apply(study, ChangeHeaders(tuple((tag, HOSTILE[place % 6]) for place, tag in enumerate(study.headers))))
    for place, node in enumerate(list(study.nodes)):
        author.put(node, spoken=HOSTILE[place % 6], note=HOSTILE[(place + 1) % 6], note_before=HOSTILE[(place + 2) % 6])
        author.put(node, name=HOSTILE[(place + 3) % 6])
    for place, part in enumerate(Part):
        author.say(part, HOSTILE[place])
    study.language = '"><script>window.owned = 1</script>'
    return study


def parsed(html: bytes):
    """The page as the standard's own parsing rules have it; raises where the standard calls anything an error."""
    return html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(html.decode("utf-8"))


def test_the_standards_parser_finds_no_error(page):
    document = parsed(page.read_bytes())
    assert document.find("head/title").text == "Pell – Garvey, Sail Loft Evening League"


def test_ids_are_there_once_and_every_reference_leads_somewhere(page):
    document = parsed(page.read_bytes())
    ids = [element.get("id") for element in document.iter() if element.get("id")]
    assert len(ids) == len(set(ids))
    for element in document.iter():
        for name in ("href", "aria-labelledby"):
            value = element.get(name) or ""
            if name == "aria-labelledby" and value:
                assert value in ids
            elif value.startswith("#"):
                assert value[1:] in ids, value


def test_hostile_texts_stay_texts(author, browser, written):
    study = hostile(author)
    parsed(html_of(study))
    page = written(study)
    for script in (True, False):
        browser.open(page, script=script)
        browser.press("\ue010", "\ue012")
        assert browser.complaints() == []
        assert browser.requests() == [page.as_uri()]
        assert browser.run("return window.owned") is None
        assert "<img src=x onerror=" in browser.run("return document.querySelector('#text').textContent")
        assert browser.run("return document.querySelectorAll('#text img, #text script, #text style').length") == 0
        assert browser.shown("#text p")


def test_long_words_and_names_stay_in_a_narrow_window(author, browser, written):
    long = "Donaudampfschifffahrtsgesellschaftskapitänswitwenrentenauszahlungsstelle" * 2
    apply(author.study, ChangeHeaders((("White", long), ("Black", long), ("Event", long), ("Opening", long))))
    for node in list(author.study.nodes):
        author.put(node, spoken=long, note=long, name=long)
    browser.open(written(author.study), width=320, height=640)
    browser.press("\ue010")
    assert browser.run("return document.documentElement.scrollWidth") <= 320


@settings(max_examples=30, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(text=st.text(max_size=60), name=st.text(max_size=20))
def test_any_text_makes_a_valid_page(text, name):
    study = example_study()
    main = list(study.main_line())
    apply(study, ChangeNode(main[3], "spoken", SpokenLine(text)))
    apply(study, ChangeNode(main[4], "note", text))
    apply(study, ChangeHeaders((("White", name), ("Event", text))))
    parsed(html_of(study))


@settings(max_examples=40)
@given(study=studies(), tellings=st.lists(st.sampled_from([Place.AFTER, Place.BEFORE, Place.HIDDEN]), max_size=20))
def test_any_tree_in_any_order_makes_a_valid_page(study, tellings):
    for node, place in zip(list(study.nodes)[1:], tellings, strict=False):
        apply(study, ChangeNode(node, "telling", Telling(place)))
    for node in list(study.nodes)[::7]:
        apply(study, ChangeNode(node, "think", 3.0))
    document = parsed(html_of(study))
    ids = {element.get("id") for element in document.iter()}
    leads = [element.get("href") for element in document.iter("a")]
    assert {lead[1:] for lead in leads if lead.startswith("#")} <= ids


def test_the_same_study_gives_the_same_bytes(example, page):
    assert html_of(example_study()) == html_of(example.snapshot()) == page.read_bytes()


def test_the_page_is_small(page):
    assert page.stat().st_size < 400_000


def test_only_this_script_and_this_style_are_allowed(page):
    html = page.read_text(encoding="utf-8")
    policy = re.search(r'http-equiv="Content-Security-Policy" content="([^"]+)"', html)
    assert policy is not None
    rules = dict(rule.strip().split(" ", 1) for rule in policy[1].replace("&#39;", "'").split(";"))
    # CSP Level 3: a hash source is that of the text between the tags.
    for name, element in (("script-src", "script"), ("style-src", "style")):
        text = re.search(rf"<{element}>(.*?)</{element}>", html, re.DOTALL)
        assert text is not None
        digest = base64.b64encode(hashlib.sha256(text[1].encode()).digest()).decode()
        assert rules[name] == f"'sha256-{digest}'"
    assert rules["default-src"] == "'none'"
    assert "media-src" not in rules
    assert not re.search(r"\son[a-z]+=|\sstyle=", re.sub(r"<script>.*?</script>", "", html, flags=re.DOTALL))
    assert not re.search(r"(?:src|href)=\"(?!#|data:)", html)


@pytest.mark.parametrize(
    ("media", "sources"),
    [
        (media_named("talk.m4a"), "'self'"),
        (media_named("talk.mp4"), "'self' data:"),
        (media_inside(b"RIFF", "talk.wav"), "data:"),
    ],
)
def test_what_is_played_is_all_that_is_allowed_besides(author, media, sources):
    html = html_of(author.study, media).decode().replace("&#39;", "'")
    assert f'; media-src {sources}"' in html
    parsed(html_of(author.study, media))


def test_a_study_with_nothing_to_tell_still_is_a_page(browser, written):
    page = written(Study())
    parsed(page.read_bytes())
    browser.open(page)
    assert browser.complaints() == []
    assert browser.text("h1") == "Study"


def test_the_language_of_the_script_is_said(author):
    author.study.language = "de_DE"
    assert '<p lang="de-DE">' in html_of(author.study).decode()
    author.study.language = ""
    assert "<p lang=" not in html_of(author.study).decode()


def test_numbered_marks_are_each_drawn_once(author, mark):
    route = Mark(MarkKind.ROUTE, mark(MarkKind.ROUTE, "g1 f3 d4").squares, 1)
    key = Mark(MarkKind.KEY_SQUARE, mark(MarkKind.KEY_SQUARE, "d4").squares, 2)
    nodes = list(author.study.main_line())
    for node in nodes[1:4]:
        author.put(node, marks=(route, key))
    html = html_of(author.study).decode()
    data = json.loads(re.search(r'id="talk">(.*?)</script>', html, re.DOTALL)[1])
    said = [words for words in data["marks"] if words]
    assert "1: route g1, f3 to d4." in said
    assert "2: key square d4." in said
    assert html.count('class="figure"') == 2
