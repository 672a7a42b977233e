"""Languages as they are named in HTML."""

from __future__ import annotations

import re
from typing import Final

#: RFC 5646, 2.1, without tags for private use: language, then script, region and the like.
_TAG: Final = re.compile(r"[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*")


def language_tag(code: str) -> str:
    """The tag of a language, such as “en-GB” of “en_GB”; empty for what cannot be one."""
    tag = code.replace("_", "-")
    return tag if _TAG.fullmatch(tag) else ""
