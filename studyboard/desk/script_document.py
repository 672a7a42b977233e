"""A text document that holds the whole script: a heading for each stop, and below it what is said there."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from PySide6.QtGui import QTextBlock, QTextBlockFormat, QTextCharFormat, QTextCursor, QTextDocument, QTextFormat

from studyboard.desk.line_cues import Cued, Run, line_of, runs_of
from studyboard.desk.line_tags import TAG_TYPE, LineTags, Tag, cued_by, tag_format
from studyboard.desk.look import Look
from studyboard.model.script import SpokenLine

_OBJECT = "\ufffc"
_LINE_BREAK = "\u2028"
#: Where a block's format keeps which section it belongs to, and whether it is its heading.
_SECTION = QTextFormat.Property.UserProperty + 11
_HEADING = QTextFormat.Property.UserProperty + 12
#: Distance of lines (% of the usual), and of a heading from what is above it (heights of its text).
_LEADING = 125
_ABOVE = 1.1
#: How far each depth of side-lines is set in (heights of text).
_INDENT = 1.6


class _ScriptTags(LineTags):
    """Tags that know whose line they stand in, since marks are counted by the node that has the line."""

    def __init__(self, look: Look, tag: Callable[[Cued, int], Tag], parent: QTextDocument) -> None:
        super().__init__(look, lambda cued: Tag("?", gone=True), parent)
        self._tag_in = tag

    def _shown(self, character: QTextFormat) -> Tag:
        cued, section = cued_by(character), character.property(_SECTION)
        return Tag("?", gone=True) if cued is None or section is None else self._tag_in(cued, int(section))


class ScriptDocument(QTextDocument):
    """Writes sections into itself and reads their lines back; a section is known by its number.

    State: nothing but what is written; each block's format says to which section it belongs, so that it stays right
    while the user breaks lines.
    """

    def __init__(self, look: Look, tag: Callable[[Cued, int], Tag]) -> None:
        super().__init__()
        self._look = look
        self.setUndoRedoEnabled(False)
        self.setDocumentMargin(12)
        self._tags = _ScriptTags(look, tag, self)
        self.documentLayout().registerHandler(TAG_TYPE, self._tags)

    def write(self, parts: Sequence[tuple[str, int, SpokenLine]]) -> None:
        """Replace all: heading, depth and line of each section. O(length of the script)."""
        self.setDefaultFont(self._look.spoken_font(1.15))
        self.clear()
        cursor = QTextCursor(self)
        cursor.beginEditBlock()
        for number, (title, depth, line) in enumerate(parts):
            form = self._block_format(number, depth, heading=True)
            if number:
                cursor.insertBlock(form)
            else:
                cursor.setBlockFormat(form)
            cursor.insertText(title, self._heading_format())
            cursor.insertBlock(self._block_format(number, depth, heading=False), QTextCharFormat())
            self.insert(cursor, runs_of(line))
        cursor.endEditBlock()

    def insert(self, cursor: QTextCursor, runs: Sequence[Run]) -> None:
        """Put words and tags at the cursor, into the section in which it stands."""
        number = section_of(cursor.block())
        for run in runs:
            if isinstance(run, Cued):
                form = tag_format(run)
                form.setProperty(_SECTION, number)
                cursor.insertText(_OBJECT, form)
            else:
                cursor.insertText(run.replace(_OBJECT, ""), QTextCharFormat())

    def body(self, number: int) -> tuple[int, int]:
        """First and last place of the cursor in what is said in a section. Raises KeyError where there is none."""
        block = self._heading(number)
        first = block.next()
        last = first
        while last.next().isValid() and not is_heading(last.next()):
            last = last.next()
        return first.position(), last.position() + last.length() - 1

    def line(self, number: int) -> SpokenLine:
        """What is written in a section."""
        return line_of(run for _, run in self.placed(number))

    def placed(self, number: int) -> Iterator[tuple[int, Run]]:
        """Words and tags of a section, each with the place of the cursor before it."""
        start, end = self.body(number)
        block = self.findBlock(start)
        while block.isValid() and block.position() <= end and not is_heading(block):
            if block.position() > start:
                yield block.position() - 1, "\n"
            part = block.begin()
            while not part.atEnd():
                fragment = part.fragment()
                cued = cued_by(fragment.charFormat())
                if cued is None:
                    yield fragment.position(), fragment.text().replace(_LINE_BREAK, "\n").replace(_OBJECT, " ")
                else:
                    for more in range(fragment.length()):
                        yield fragment.position() + more, cued
                part += 1
            block = block.next()

    def set_line(self, number: int, line: SpokenLine) -> None:
        """Replace what is said in a section."""
        cursor = QTextCursor(self)
        start, end = self.body(number)
        cursor.beginEditBlock()
        cursor.setPosition(start)
        cursor.setPosition(end, QTextCursor.MoveMode.KeepAnchor)
        cursor.removeSelectedText()
        self.insert(cursor, runs_of(line))
        cursor.endEditBlock()

    def set_heading(self, number: int, title: str) -> None:
        """Replace the heading of a section, where it reads differently."""
        block = self._heading(number)
        if block.text() != title:
            cursor = QTextCursor(block)
            cursor.movePosition(QTextCursor.MoveOperation.EndOfBlock, QTextCursor.MoveMode.KeepAnchor)
            cursor.insertText(title, self._heading_format())

    def remove(self, start: int, end: int) -> set[int]:
        """Delete what is said between two places, headings left out; the sections that were touched."""
        numbers: set[int] = set()
        block = self.findBlock(end)
        while block.isValid() and block.position() + block.length() > start:
            if not is_heading(block):
                numbers.add(section_of(block))
            block = block.previous()
        for number in sorted(numbers, reverse=True):
            first, last = self.body(number)
            cursor = QTextCursor(self)
            cursor.setPosition(max(first, start))
            cursor.setPosition(max(min(last, end), max(first, start)), QTextCursor.MoveMode.KeepAnchor)
            cursor.removeSelectedText()
        return numbers

    def place_of(self, number: int, character: int) -> int:
        """The place of the cursor before this character of a section's line, behind the tags that stand there."""
        passed = 0
        place = self.body(number)[0]
        for start, run in self.placed(number):
            if isinstance(run, Cued):
                place = start + 1
                continue
            if passed + len(run) > character:
                return start + length_of(run[: character - passed])
            passed += len(run)
            place = start + length_of(run)
        return place

    def character_of(self, place: int) -> int:
        """The character of its section's line before this place of the cursor."""
        passed = 0
        for start, run in self.placed(section_of(self.findBlock(place))):
            if isinstance(run, Cued):
                continue
            if start + length_of(run) > place:
                fits = (n for n in range(len(run) + 1) if start + length_of(run[:n]) >= place)
                return passed + (next(fits) if place > start else 0)
            passed += len(run)
        return passed

    def _heading(self, number: int) -> QTextBlock:
        """Found by halving: the numbers of the sections go up through the text."""
        low, high = 0, self.blockCount() - 1
        while low < high:
            middle = (low + high) // 2
            if section_of(self.findBlockByNumber(middle)) < number:
                low = middle + 1
            else:
                high = middle
        block = self.findBlockByNumber(low)
        if section_of(block) != number or not is_heading(block):
            raise KeyError(number)
        return block

    def _block_format(self, number: int, depth: int, *, heading: bool) -> QTextBlockFormat:
        form = QTextBlockFormat()
        form.setProperty(_SECTION, number)
        form.setProperty(_HEADING, heading)
        height = self._look.ui_font().pointSizeF() * 1.6
        form.setLeftMargin(_INDENT * height * depth)
        if heading:
            form.setTopMargin(_ABOVE * height if number else 0)
            form.setHeadingLevel(2)
        else:
            form.setLineHeight(_LEADING, QTextBlockFormat.LineHeightTypes.ProportionalHeight.value)
        return form

    def _heading_format(self) -> QTextCharFormat:
        form = QTextCharFormat()
        font = self._look.ui_font(0.92)
        form.setFont(font)
        form.setForeground(self._look.color("ink_quiet"))
        return form


def section_of(block: QTextBlock) -> int:
    """The number of the section to which a block belongs."""
    number = block.blockFormat().property(_SECTION)
    return 0 if number is None else int(number)


def is_heading(block: QTextBlock) -> bool:
    """True for the heading of a section."""
    return bool(block.blockFormat().property(_HEADING))


def length_of(text: str) -> int:
    """How many places of Qt's cursor a text takes."""
    return len(text.encode("utf-16-le")) // 2
