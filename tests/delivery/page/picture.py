"""Makes the picture of the page in the README: `python tests/delivery/page/picture.py`; needs Chromium."""

from __future__ import annotations

import io
import sys
import tempfile
from pathlib import Path

from PIL import Image

ROOT = Path(__file__).resolve().parents[3]
sys.path.insert(0, str(ROOT))


def main() -> None:
    """Write examples/pictures/page.png."""
    from studyboard.example import example_study
    from tests.delivery.page.browser import Browser
    from tests.delivery.page.pages import html_of

    with tempfile.TemporaryDirectory() as folder:
        page = Path(folder) / "page.html"
        page.write_bytes(html_of(example_study()))
        browser = Browser(Path(folder) / "browser")
        try:
            browser.open(page, width=1366, height=768)
            # In the first side-line, where a threat is drawn.
            browser.run("document.querySelector('.lanes a[href=\"#a17\"]').click()")
            browser.wait(lambda: browser.run("return Number(document.getElementById('place').value)") == 17)
            shot = browser.picture(Path(folder) / "page.png").read_bytes()
        finally:
            browser.end()
    image = Image.open(io.BytesIO(shot)).convert("RGB")
    image.save(ROOT / "examples" / "pictures" / "page.png", optimize=True)


if __name__ == "__main__":
    main()
