"""A real browser without a screen: what it shows, what it complains about, and what it asks the network for."""

from __future__ import annotations

import base64
import json
import os
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any, TypeVar

import axe_core_python
import pytest
from selenium.webdriver import Chrome, ChromeOptions
from selenium.webdriver.chrome.service import Service
from selenium.webdriver.common.action_chains import ActionChains
from selenium.webdriver.support.ui import WebDriverWait

#: The Debian package that brings each program.
PACKAGES = {"chromium": "chromium", "chromedriver": "chromium-driver"}

_FLAGS = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--autoplay-policy=no-user-gesture-required",
)

_T = TypeVar("_T")


def missing_packages() -> list[str]:
    """The Debian packages that must be installed before a test can look at a page."""
    return sorted(package for program, package in PACKAGES.items() if shutil.which(program) is None)


class Browser:
    """One browser that is used for many pages, each of which begins with nothing switched over."""

    def __init__(self, folder: Path) -> None:
        options = ChromeOptions()
        options.binary_location = str(shutil.which("chromium"))
        for flag in (*_FLAGS, f"--user-data-dir={folder}"):
            options.add_argument(flag)
        options.set_capability("goog:loggingPrefs", {"browser": "ALL", "performance": "ALL"})
        self.driver = Chrome(options=options, service=Service(str(shutil.which("chromedriver"))))
        self.driver.set_page_load_timeout(60)

    def tell(self, command: str, **values: Any) -> Any:
        """One command of the browser's own protocol."""
        return self.driver.execute_cdp_cmd(command, values)

    def open(
        self,
        path: Path,
        *,
        width: int = 1280,
        height: int = 900,
        phone: bool = False,
        script: bool = True,
        dark: bool = False,
        calm: bool = True,
        hash: str = "",
    ) -> Browser:
        """Show a page. calm: the reader wants no motion, so that everything is in its place at once."""
        self.driver.get("about:blank")
        self.tell("Emulation.setScriptExecutionDisabled", value=not script)
        self.tell("Emulation.setTouchEmulationEnabled", enabled=phone)
        self.resize(width, height, phone=phone)
        self.prefer(dark=dark, calm=calm)
        self.driver.get_log("browser")
        self.driver.get_log("performance")
        self.driver.get(path.as_uri() + hash)
        return self

    def resize(self, width: int, height: int, *, phone: bool = False) -> None:
        """Give the page this room (px)."""
        self.tell(
            "Emulation.setDeviceMetricsOverride",
            width=width,
            height=height,
            deviceScaleFactor=2 if phone else 1,
            mobile=phone,
        )

    def prefer(self, *, dark: bool = False, calm: bool = True, printed: bool = False) -> None:
        """What the reader's system prefers."""
        features = [
            {"name": "prefers-color-scheme", "value": "dark" if dark else "light"},
            {"name": "prefers-reduced-motion", "value": "reduce" if calm else "no-preference"},
        ]
        self.tell("Emulation.setEmulatedMedia", media="print" if printed else "", features=features)

    def run(self, script: str, *values: Any) -> Any:
        """What a script in the page returns; it is the test's own, the page's policy does not bind it."""
        return self.driver.execute_script(script, *values)

    def text(self, selector: str) -> str:
        """The visible text of the first element that matches."""
        return str(self.driver.find_element("css selector", selector).text)

    def texts(self, selector: str) -> list[str]:
        """The visible texts of all that match."""
        return [one.text for one in self.driver.find_elements("css selector", selector) if one.is_displayed()]

    def shown(self, selector: str) -> bool:
        """Whether something that matches can be seen."""
        return any(one.is_displayed() for one in self.driver.find_elements("css selector", selector))

    def click(self, selector: str) -> None:
        """Click the first element that matches, where it can be seen."""
        element = self.driver.find_element("css selector", selector)
        self.run("arguments[0].scrollIntoView({block: 'center'})", element)
        element.click()

    def press(self, *keys: str) -> None:
        """Press keys one after the other."""
        for key in keys:
            ActionChains(self.driver).send_keys(key).perform()

    def wait(self, what: Callable[[], _T]) -> _T:
        """What comes of it as soon as it is true."""
        return WebDriverWait(self.driver, 10, poll_frequency=0.02).until(lambda _: what())

    def board(self) -> dict[str, str]:
        """What stands where on the board, as one sees it: {"e4": "wP", …}."""
        return dict(
            self.run(
                """
                const board = document.getElementById("board-now").getBoundingClientRect(), found = [];
                const side = board.width / 852;
                for (const piece of document.querySelectorAll("#pieces use")) {
                  const place = piece.getScreenCTM();
                  const file = Math.round(((place.e - board.left) / side - 26) / 100);
                  const row = Math.round(((place.f - board.top) / side - 26) / 100);
                  found.push(["abcdefgh"[file] + (8 - row), piece.getAttribute("href").slice(1)]);
                }
                return found;
                """
            )
        )

    def complaints(self) -> list[str]:
        """Everything that the page has written on the console since it was opened."""
        return [entry["message"] for entry in self.driver.get_log("browser")]

    def requests(self) -> list[str]:
        """The addresses that were asked for since the page was opened, but for those inside the page."""
        found = []
        for entry in self.driver.get_log("performance"):
            message = json.loads(entry["message"])["message"]
            if message["method"] == "Network.requestWillBeSent":
                url = message["params"]["request"]["url"]
                if not url.startswith("data:"):
                    found.append(url)
        return found

    def findings(self) -> list[str]:
        """What the accessibility engine finds, from minor to critical."""
        engine = Path(axe_core_python.__file__).with_name("axe.min.js").read_text(encoding="utf-8")
        self.driver.execute_script(engine)
        report = self.driver.execute_async_script(
            "const done = arguments[0]; axe.run().then(done, (reason) => done({failed: String(reason)}))"
        )
        assert "failed" not in report, report
        return [
            f"{one['impact']}: {one['help']}: {node['html'][:160]}"
            for one in report["violations"]
            for node in one["nodes"]
        ]

    def picture(self, path: Path, *, whole: bool = False) -> Path:
        """A picture of what is seen, or of the whole page."""
        shot = self.tell("Page.captureScreenshot", captureBeyondViewport=whole)
        path.write_bytes(base64.b64decode(shot["data"]))
        return path

    def end(self) -> None:
        """Close it."""
        self.driver.quit()


def browsers(factory: pytest.TempPathFactory) -> Iterator[Browser]:
    """The browser of a test run; skipped with a reason where there is none, failing where CI is set."""
    missing = missing_packages()
    if missing:
        reason = f"no browser: apt install {' '.join(missing)}"
        if os.environ.get("CI"):
            pytest.fail(reason)
        pytest.skip(reason)
    browser = Browser(factory.mktemp("browser"))
    yield browser
    browser.end()
