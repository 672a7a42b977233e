"""The page as readers meet it, in a real browser: by clicks, keys and touch, with script and without."""

from __future__ import annotations

import json
import re

import chess
import pytest
from selenium.webdriver.common.keys import Keys

from studyboard.delivery.page.shots import ShotKind, shots
from studyboard.model.positions import Positions
from studyboard.notation.spoken import describe_move
from studyboard.picture.describe import describe_board
from studyboard.timing.plan import plan
from tests.desk.lane_studies import study_of

SIZES = [(320, 640), (390, 844), (844, 390), (768, 1024), (1024, 700), (1440, 900)]


@pytest.fixture(scope="module")
def steps(example):
    return shots(plan(example))


@pytest.fixture(scope="module")
def positions(example):
    return Positions(example)


def standing(board: chess.Board) -> dict[str, str]:
    return {
        chess.square_name(square): ("w" if piece.color else "b") + piece.symbol().upper()
        for square, piece in board.piece_map().items()
    }


def test_it_begins_at_the_beginning_without_a_complaint_or_a_request(browser, page, positions, example):
    browser.open(page)
    assert browser.board() == standing(positions.board(example.root))
    assert browser.text("#now-move") == "The start position"
    assert browser.text("h1") == "Pell – Garvey"
    assert browser.complaints() == []
    assert browser.requests() == [page.as_uri()]


def test_the_right_arrow_goes_through_the_whole_talk(browser, page, positions, steps):
    """Every position of the talk, as the rules of chess have it, is on the board when its turn comes."""
    browser.open(page)
    for number, shot in enumerate(steps):
        if number:
            browser.press(Keys.ARROW_RIGHT)
        assert browser.board() == standing(positions.board(shot.node)), number
    browser.press(Keys.ARROW_RIGHT)
    assert browser.board() == standing(positions.board(steps[-1].node))
    assert browser.complaints() == []
    assert browser.requests() == [page.as_uri()]


def test_every_step_is_told_in_words(browser, page, positions, example, steps):
    """The words are those of the desk, though the page finds them by itself."""
    browser.open(page)
    for number, shot in enumerate(steps):
        if shot.kind is not ShotKind.MOVE:
            continue
        browser.run("location.hash = arguments[0]", f"#a{number}")
        node = example.nodes[shot.node]
        words = describe_move(positions.board(node.parent), node.move)
        browser.wait(lambda words=words: words in browser.run("return document.getElementById('said').textContent"))


SPECIAL = {
    "castling short and long": "1. e4 e5 2. Nf3 Nc6 3. Bc4 Qf6 4. O-O d6 5. d3 Bd7 6. c3 O-O-O *",
    "in passing": "1. e4 a6 2. e5 d5 3. exd6 b5 4. d7+ Kxd7 5. a3 b4 6. c4 bxc3 *",
    "promoting by taking, to a knight with check": (
        '[FEN "1n2k3/P7/8/8/8/8/3p2p1/4N2K w - - 0 40"]\n[SetUp "1"]\n\n40. axb8=Q+ Kf7 41. Nd3 d1=N 42. Kxg2 *'
    ),
    "castling where king and rook change places": (
        '[Variant "Chess960"]\n[FEN "4k3/8/8/8/8/8/8/5KR1 w G - 0 1"]\n[SetUp "1"]\n\n1. O-O Kd7 *'
    ),
    "passing the turn": "1. e4 -- 2. d4 *",
    "mate": "1. f3 e5 2. g4 Qh4# *",
}


@pytest.mark.parametrize("kind", SPECIAL)
def test_moves_of_every_kind_are_played_and_told_as_the_rules_have_them(browser, written, kind):
    study = study_of(SPECIAL[kind])
    positions = Positions(study)
    browser.open(written(study))
    for shot in shots(plan(study)):
        if shot.kind is ShotKind.MOVE:
            node = study.nodes[shot.node]
            words = describe_move(positions.board(node.parent), node.move)
            browser.wait(lambda words=words: words in browser.run("return document.getElementById('said').textContent"))
            assert browser.board() == standing(positions.board(shot.node))
            spoken = browser.run("return document.getElementById('board-now').getAttribute('aria-label')")
            assert spoken == f"Board. {describe_board(positions.board(shot.node))}"
        browser.press(Keys.ARROW_RIGHT)
    assert browser.complaints() == []


def test_keys_go_back_and_to_both_ends(browser, page, positions, steps):
    browser.open(page)
    browser.press(Keys.END)
    assert browser.board() == standing(positions.board(steps[-1].node))
    browser.press(Keys.ARROW_LEFT, Keys.HOME, Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ARROW_LEFT)
    assert browser.board() == standing(positions.board(steps[1].node))


def test_a_move_in_the_text_is_clicked(browser, page, positions, steps):
    browser.open(page)
    number = next(place for place, shot in enumerate(steps) if shot.kind is ShotKind.MOVE and place > 6)
    browser.click(f"#a{number}")
    assert browser.board() == standing(positions.board(steps[number].node))
    assert browser.run("return document.querySelector('.stop [aria-current]').id") == f"a{number}"


def test_a_move_in_the_lanes_is_clicked_and_lit(browser, page, positions, steps):
    browser.open(page)
    number = next(place for place, shot in enumerate(steps) if shot.kind is ShotKind.MOVE and place > 6)
    browser.click(f".lanes a[href='#a{number}']")
    assert browser.board() == standing(positions.board(steps[number].node))
    assert browser.run("return document.querySelector('.lanes [aria-current]').hash") == f"#a{number}"


def test_a_side_line_is_framed_and_the_return_is_told(browser, page, steps):
    browser.open(page)
    number = next(place for place, shot in enumerate(steps) if shot.kind is ShotKind.BACK)
    back = next(
        place
        for place, shot in enumerate(steps)
        if shot.kind is ShotKind.BACK and place > number and steps[place - 1].kind is ShotKind.MOVE
    )
    browser.click(f".lanes a[href='#a{number + 1}']")
    assert browser.text("#now-where").startswith("Side-line A")
    assert "in-side-line" in browser.run("return document.getElementById('stage').className")
    browser.click("#first")
    browser.press(*[Keys.ARROW_RIGHT] * number)
    assert browser.text("#now-where") == "Stepping back"
    browser.press(*[Keys.ARROW_RIGHT] * (back - number))
    assert browser.text("#now-where") == "Back in the game"
    assert "in-side-line" not in browser.run("return document.getElementById('stage').className")
    browser.wait(
        lambda: browser.run("return document.getElementById('said').textContent").startswith("Back in the game")
    )


def test_a_think_pause_hides_what_follows_until_it_is_asked_for(browser, page, steps):
    browser.open(page)
    asked = next(place for place, shot in enumerate(steps) if shot.kind is ShotKind.THINK)
    hidden = f".lanes a[href='#a{asked + 1}']"
    assert not browser.shown(f"#a{asked + 1}")
    assert not browser.shown(hidden)
    browser.click(f"#a{asked - 1}")
    browser.press(Keys.ARROW_RIGHT)
    assert re.fullmatch("(White|Black) to move: find the move", browser.text("#now-where"))
    assert not browser.shown(f"#a{asked + 1}")
    browser.press(Keys.ARROW_RIGHT)
    assert browser.shown(f"#a{asked + 1}")
    assert browser.shown(hidden)


def test_who_opens_the_answer_sees_it_in_the_lanes_too(browser, page, steps):
    browser.open(page)
    asked = next(place for place, shot in enumerate(steps) if shot.kind is ShotKind.THINK)
    browser.click("details.part summary")
    browser.wait(lambda: browser.shown(f".lanes a[href='#a{asked + 1}']"))
    assert browser.shown(f"#a{asked + 1}")


def test_space_plays_and_stops(browser, page):
    browser.open(page)
    browser.press(" ")
    assert browser.run("return document.getElementById('play').getAttribute('aria-label')") == "Stop"
    browser.wait(lambda: browser.text("#clock").startswith("0:01"))
    browser.press(" ")
    assert browser.run("return document.getElementById('play').getAttribute('aria-label')") == "Play"


def test_a_finger_swipes_and_taps(browser, page, positions, steps):
    browser.open(page, width=390, height=844, phone=True)

    def touch(*shares):
        """Put a finger down, drag it, lift it: places as shares of the board's width, in the middle of its height."""
        x, y, side = browser.run(
            "const b = document.getElementById('board-now').getBoundingClientRect(); return [b.x, b.y, b.width]"
        )
        first, *rest = [{"x": x + side * share, "y": y + side / 2} for share in shares]
        browser.tell("Input.dispatchTouchEvent", type="touchStart", touchPoints=[first])
        for point in rest:
            browser.tell("Input.dispatchTouchEvent", type="touchMove", touchPoints=[point])
        browser.tell("Input.dispatchTouchEvent", type="touchEnd", touchPoints=[])

    def shows(step):
        browser.wait(lambda: browser.board() == standing(positions.board(steps[step].node)))

    touch(0.8, 0.6, 0.3)
    shows(1)
    touch(0.8)
    shows(2)
    touch(0.2, 0.4, 0.7)
    shows(1)
    touch(0.1)
    shows(0)


def test_the_board_can_be_turned(browser, page):
    browser.open(page)
    browser.press("f")
    turned = browser.board()
    assert (turned["a8"], turned["d8"], turned["e8"], turned["a1"]) == ("wR", "wK", "wQ", "bR")
    assert browser.run("return document.getElementById('turn').getAttribute('aria-pressed')") == "true"


def test_a_link_to_a_move_opens_there(browser, page, positions, steps):
    browser.open(page, hash="#a9")
    assert browser.board() == standing(positions.board(steps[9].node))


def test_a_link_to_a_move_opens_below_the_board_of_a_phone(browser, page):
    browser.open(page, width=390, height=844, phone=True, hash="#a60")
    places = """
        const low = document.getElementById("stage").getBoundingClientRect().bottom;
        const here = document.getElementById("a60").getBoundingClientRect();
        return low <= here.top && here.bottom <= innerHeight;
    """
    browser.wait(lambda: browser.run(places))


def test_marks_stand_on_the_board_where_the_talk_has_them(browser, page, example, steps):
    browser.open(page)
    number = next(place for place, shot in enumerate(steps) if len(shot.marks) > 1)
    browser.run("location.hash = arguments[0]", f"#a{number}")
    marks = {mark for _, mark in steps[number].marks}
    browser.wait(lambda: browser.run("return document.querySelectorAll('#over use').length") == len(marks))


def test_a_move_slides_and_a_return_winds_its_frame_up(browser, page, example, steps):
    browser.open(page, calm=False)
    moving = """
        document.getElementById("on").click();
        return document.getElementById(arguments[0]).getAnimations({subtree: true})
            .map((one) => one.effect.getTiming().duration);
    """
    assert browser.run(moving, "pieces") == [200]
    back = next(
        place
        for place, shot in enumerate(steps)
        if shot.kind is ShotKind.BACK and not example.on_main_line(steps[place - 1].node)
    )
    browser.run("location.hash = arguments[0]", f"#a{back - 1}")
    browser.wait(lambda: browser.run("return Number(document.getElementById('place').value)") == back - 1)
    browser.wait(lambda: not browser.run("return document.getAnimations().length"))
    assert browser.run(moving, "line-frame") == [420]
    assert browser.run("return document.getElementById('pieces').getAnimations({subtree: true}).length") > 0


def test_nothing_moves_for_those_who_want_no_motion(browser, page):
    browser.open(page, calm=True)
    for _ in range(20):
        browser.run("document.getElementById('on').click()")
        assert browser.run("return document.getAnimations().length") == 0


def test_the_tabulator_goes_from_the_text_link_over_the_board_to_moves_and_words(browser, page):
    browser.open(page)
    visited = []
    for _ in range(14):
        browser.press(Keys.TAB)
        visited.append(browser.run("const e = document.activeElement; return e.id || e.className || e.localName"))
    assert visited[:12] == [
        "skip",
        "theme",
        "place",
        "first",
        "back",
        "play",
        "on",
        "last",
        "turn",
        "summary",
        "scroll",
        "a",
    ]


def test_the_first_link_skips_to_the_text(browser, page):
    browser.open(page)
    browser.press(Keys.TAB, Keys.ENTER)
    assert browser.run("return document.activeElement.id") == "text"


def test_whoever_steps_with_a_button_keeps_it_at_the_end(browser, page):
    browser.open(page)
    browser.click("#last")
    assert browser.run("return document.activeElement.id") == "last"
    assert browser.run("return document.getElementById('on').getAttribute('aria-disabled')") == "true"


def test_on_paper_there_is_the_article_with_hatched_diagrams(browser, page):
    browser.open(page)
    browser.run("dispatchEvent(new Event('beforeprint'))")
    browser.prefer(printed=True)
    assert not browser.shown("#stage")
    assert not browser.shown(".lanes")
    assert browser.shown(".diagram svg")
    assert browser.shown("details.part p")
    assert browser.run("return getComputedStyle(document.querySelector('.hatching')).display") == "inline"
    assert browser.run("return getComputedStyle(document.querySelector('.dark')).fill") == "rgb(255, 255, 255)"
    browser.prefer()
    browser.run("dispatchEvent(new Event('afterprint'))")
    assert not browser.shown("details.part p")


@pytest.mark.parametrize("dark", [False, True])
def test_light_and_dark_follow_the_system_and_the_switch(browser, page, dark):
    browser.open(page, dark=dark)
    ground = "return getComputedStyle(document.documentElement).backgroundColor"
    light_first = browser.run(ground)
    browser.click("#theme")
    assert browser.text("#theme") == ("Dark" if dark else "Light")
    assert browser.run(ground) != light_first
    browser.run("localStorage.clear()")


@pytest.mark.parametrize("dark", [False, True], ids=["light", "dark"])
@pytest.mark.parametrize(("width", "height"), [(390, 844), (1440, 900)])
def test_the_accessibility_engine_finds_nothing(browser, page, dark, width, height):
    browser.open(page, width=width, height=height, dark=dark)
    browser.press(*[Keys.ARROW_RIGHT] * 16)
    assert browser.findings() == []
    browser.press(Keys.END)
    assert browser.findings() == []


@pytest.mark.parametrize("dark", [False, True], ids=["light", "dark"])
def test_the_accessibility_engine_finds_nothing_without_script(browser, page, tmp_path, dark):
    # The engine is a script itself: so the page's own is taken out instead.
    html, count = re.subn(r"<script>.*</script>", "", page.read_text(encoding="utf-8"), flags=re.DOTALL)
    assert count == 1
    (tmp_path / "plain.html").write_text(html, encoding="utf-8")
    browser.open(tmp_path / "plain.html", dark=dark)
    assert not browser.shown("#stage")
    assert browser.findings() == []


@pytest.mark.parametrize(("width", "height"), SIZES)
def test_nothing_is_wider_than_the_window(browser, page, width, height):
    browser.open(page, width=width, height=height)
    browser.press(*[Keys.ARROW_RIGHT] * 20)
    browser.press(Keys.END)
    assert browser.run("return document.documentElement.scrollWidth") <= width
    for selector in ("#board-now", "#place", ".stop.now"):
        left, right = browser.run(
            "const b = document.querySelector(arguments[0]).getBoundingClientRect(); return [b.left, b.right]", selector
        )
        assert left >= 0
        assert right <= width


@pytest.mark.parametrize(("width", "height"), [(390, 844), (844, 390), (1024, 700), (1366, 768), (1440, 900)])
def test_the_board_and_its_buttons_are_seen_at_once(browser, page, width, height):
    browser.open(page, width=width, height=height)
    top = browser.run("return document.getElementById('board-now').getBoundingClientRect().top")
    bottom = browser.run("return document.getElementById('play').getBoundingClientRect().bottom")
    assert top >= 0
    assert bottom <= height


@pytest.mark.parametrize(("width", "height"), SIZES)
def test_board_and_words_are_seen_together(browser, page, width, height):
    browser.open(page, width=width, height=height)
    browser.press(*[Keys.ARROW_RIGHT] * 24)
    board, here = browser.run(
        """
        const sides = ["top", "bottom", "left", "right"];
        const box = (element) => sides.map((side) => element.getBoundingClientRect()[side]);
        return [box(document.getElementById("board-now")), box(document.querySelector(".stop [aria-current]"))];
        """
    )
    assert board[0] >= -1
    assert board[1] <= height
    assert here[0] >= 0
    assert here[1] <= height
    covered = here[0] < board[1] and here[1] > board[0] and here[2] < board[3] and here[3] > board[2]
    assert not covered


def test_without_script_it_is_an_article_with_diagrams(browser, page, example):
    browser.open(page, script=False)
    assert not browser.driver.find_element("id", "stage").is_displayed()
    assert not browser.driver.find_element("id", "theme").is_displayed()
    assert browser.driver.find_element("css selector", ".diagram svg").is_displayed()
    assert "Imani opens with the king’s pawn" in browser.text("#text")
    browser.click(".lanes summary")
    assert browser.shown(".lanes td a")
    for summary in browser.driver.find_elements("css selector", "details.part > summary"):
        summary.click()
    assert "So Imani Pell wins the game" in browser.text("#text")
    assert browser.complaints() == []
    assert browser.requests() == [page.as_uri()]


def test_every_diagram_is_told_in_words_and_drawn_as_its_position(browser, page):
    browser.open(page, script=False)
    diagrams = browser.driver.find_elements("css selector", ".diagram svg")
    assert len(diagrams) > 5
    for diagram in diagrams:
        words = diagram.get_attribute("aria-label")
        pieces = len(diagram.find_elements("css selector", "use[href^='#w'], use[href^='#b']:not([href='#board'])"))
        assert words.startswith("White: king ")
        named = re.sub(r"(Threat|Target|Route|Key square|[a-h][1-8] guards).*", "", words)
        assert len(re.findall(r"\b[a-h][1-8]\b", named)) == pieces


def test_the_policy_forbids_what_is_not_the_pages_own(browser, page):
    browser.open(page)
    browser.run(
        """
        window.refused = [];
        document.addEventListener("securitypolicyviolation", (event) => refused.push(event.effectiveDirective));
        const picture = document.createElement("img"), style = document.createElement("style");
        picture.src = "https://example.org/x.png";
        style.textContent = "body { visibility: hidden }";
        document.body.append(picture, style);
        document.body.setAttribute("style", "visibility: hidden");
        try { document.body.setAttribute("onclick", "1"); } catch (refusal) { refused.push(refusal.name); }
        try { document.body.innerHTML = "<b>x</b>"; } catch (refusal) { refused.push(refusal.name); }
        """
    )
    found = {"img-src", "style-src-elem", "style-src-attr", "TypeError"}
    browser.wait(lambda: found <= set(browser.run("return refused")))
    assert browser.run("return getComputedStyle(document.body).visibility") == "visible"


def test_what_the_script_knows_is_plain_data(page):
    html = page.read_text(encoding="utf-8")
    data = re.search(r'<script type="application/json" id="talk">(.*?)</script>', html, re.DOTALL)
    assert data is not None
    assert json.loads(data[1])["length"] > 400
