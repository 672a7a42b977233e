"""A spoken line with its cues in braces, as plain text that people can write."""

from __future__ import annotations

import re

from studyboard.model.errors import StudyboardError
from studyboard.model.positions import Positions
from studyboard.model.script import Cue, SpokenLine, words
from studyboard.model.study import Study
from studyboard.notation.labels import move_number
from studyboard.translation import tr

_BRACES = re.compile(r"\{\{|\}\}|\{([^{}]*)\}|[{}]")
_MARK = re.compile(r"mark\s+([0-9]{1,6})")
_MOVE = re.compile(r"(?:([0-9]+\s*\.(?:\.\.)?)\s*)?(.*?)[+#!?]*")


class CuedTextError(StudyboardError):
    """A cue in braces that names no move and no mark of its node."""


def parse_cued(study: Study, positions: Positions, node_id: int, text: str) -> SpokenLine:
    """The line that *text* describes for this node.

    “{Nf3}” stands before the word at which that move is played, a move on the way to this node or its own;
    “{mark 2}” before the word at which the node's second mark appears; after the last word, either comes with the
    line's end. A brace itself is written twice. Of a move that was played several times on the way the latest is
    meant, unless its number is given: “{3.Nf3}”. Raises CuedTextError for a cue that names none.
    """
    path = study.path(node_id)
    marks = len(study.nodes[node_id].marks)
    plain: list[str] = []
    cues: list[Cue] = []
    at = 0
    for found in _BRACES.finditer(text):
        plain.append(text[at : found.start()])
        at = found.end()
        whole = found.group()
        if whole in ("{{", "}}"):
            plain.append(whole[0])
        elif found[1] is None:
            raise CuedTextError(
                tr("A brace stands alone in “{text}”; write it twice to say it.", text=_near(text, found.start()))
            )
        else:
            cues.append(_cue(found[1].strip(), _words_before(plain), path, positions, marks))
    plain.append(text[at:])
    said = "".join(plain)
    if cues and cues[-1].word == len(words(said)):
        # The space before a cue that follows the last word belongs to the cue.
        said = said.removesuffix(" ")
    return SpokenLine(said, tuple(cues)).sorted()


def write_cued(study: Study, positions: Positions, node_id: int) -> str:
    """The node's spoken line with its cues in braces, as parse_cued reads it.

    Cues that name nothing any more are left out.
    """
    line = study.nodes[node_id].spoken.sorted()
    names = _names(study, positions, node_id)
    tags: dict[int, str] = {}
    for cue in line.cues:
        name = names.get((cue.node, cue.mark))
        if name is not None:
            tags[cue.word] = f"{tags.get(cue.word, '')}{{{name}}}"
    pieces: list[str] = []
    word = 0
    for piece in re.findall(r"\S+|\s+", line.text):
        if not piece.isspace():
            pieces.append(tags.pop(word, ""))
            word += 1
        pieces.append(piece.replace("{", "{{").replace("}", "}}"))
    after = "".join(tags.values())
    return "".join((*pieces, " " if after and pieces else "", after))


def _names(study: Study, positions: Positions, node_id: int) -> dict[tuple[int | None, int | None], str]:
    """What the moves and marks that this node's line may cue are called."""
    names: dict[tuple[int | None, int | None], str] = {
        (None, mark): tr("mark {mark}", mark=mark + 1) for mark in range(len(study.nodes[node_id].marks))
    }
    taken: set[str] = set()
    for step in reversed(study.path(node_id)[1:]):
        san = positions.san(step)
        plain = san.rstrip("+#")
        names[step, None] = f"{move_number(positions, step)}{san}" if plain in taken else san
        taken.add(plain)
    return names


def _cue(name: str, word: int, path: list[int], positions: Positions, marks: int) -> Cue:
    if found := _MARK.fullmatch(name):
        number = int(found[1])
        if not 1 <= number <= marks:
            have = tr("no marks") if not marks else tr("one mark") if marks == 1 else tr("{marks} marks", marks=marks)
            raise CuedTextError(
                tr("There is no mark {number} here: this position has {have}.", number=number, have=have)
            )
        return Cue(word, mark=number - 1)
    move = _MOVE.fullmatch(name)
    assert move is not None
    number_text = re.sub(r"\s", "", move[1] or "")
    san = re.sub(r"0(?=-)|(?<=-)0", "O", move[2])
    for step in reversed(path[1:]):
        if positions.san(step).rstrip("+#") == san and number_text in ("", move_number(positions, step)):
            return Cue(word, node=step)
    raise CuedTextError(tr("“{{{name}}}” is no move on the way to this position, and no mark either.", name=name))


def _words_before(plain: list[str]) -> int:
    """Index of the word that begins after what was read; a cue inside a word belongs to that word."""
    text = "".join(plain)
    count = len(words(text))
    return count - 1 if text and not text[-1].isspace() else count


def _near(text: str, at: int) -> str:
    return text[max(0, at - 12) : at + 12]
