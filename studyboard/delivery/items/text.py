"""The description among the products."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path

from studyboard.delivery.making import Making
from studyboard.delivery.product import Choice, Ingredient, Item, OwnFile, Product
from studyboard.resources_path import resource
from studyboard.translation import tr_later


class TextForm(StrEnum):
    """What the template that is shipped makes."""

    PLAIN = "plain"
    MARKDOWN = "markdown"


_ENDINGS = {TextForm.PLAIN: ".txt", TextForm.MARKDOWN: ".md"}


@dataclass(frozen=True, slots=True)
class TextOptions:
    """form: which template that is shipped; template: one of the user's instead; names: a file of names to thank."""

    form: TextForm = TextForm.PLAIN
    template: Path | None = None
    names: Path | None = None


def _make(making: Making, options: TextOptions) -> None:
    # Jinja is loaded where a template is filled, and nowhere else.
    from studyboard.delivery.description import description, description_context
    from studyboard.writing.names_file import read_names

    talk = making.talk
    names = read_names(options.names) if options.names is not None else ()
    context = description_context(talk.study, talk.positions, talk.timeline, names)
    ending = _ENDINGS[options.form]
    template = options.template or resource("description", f"description{ending}.jinja")
    if options.template is not None:
        # "mine.md.jinja" makes a ".md"; one that does not say makes a text.
        ending = Path(template.name.removesuffix(".jinja").removesuffix(".j2")).suffix or ".txt"
    making.write(f"-description{ending}", description(context, template))


PRODUCT = Product(
    Item.TEXT,
    tr_later("Text"),
    tr_later("Summary, chapters, the moves, credits and thanks, to stand beside a video"),
    "a text to stand beside a video: summary, chapters, moves, credits, thanks",
    TextOptions,
    _make,
    frozenset({Ingredient.SCRIPT, Ingredient.TIMES}),
    (
        Choice(
            "form",
            "--text-form",
            tr_later("Form"),
            "form of the text",
            ((TextForm.PLAIN, tr_later("Plain text")), (TextForm.MARKDOWN, tr_later("Markdown"))),
        ),
        OwnFile(
            "template",
            "--text-template",
            tr_later("Template of your own"),
            "a Jinja template of your own for it",
            "*.jinja *.j2 *.txt *.md",
        ),
        OwnFile(
            "names",
            "--thanks-to",
            tr_later("List of names to thank"),
            "names to thank: a text with one in each line, or a table (CSV)",
            "*.txt *.csv *.tsv",
        ),
    ),
)
