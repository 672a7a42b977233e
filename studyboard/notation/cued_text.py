"""A spoken line with its cues in braces, as plain text that people can write."""

from __future__ import annotations

import re

from studyboard.model.errors import StudyboardError
from studyboard.model.positions import Positions
from studyboard.model.script import Cue, SpokenLine, words
from studyboard.model.study import Study

_BRACES = re.compile(r"\{\{|\}\}|\{([^{}]*)\}|[{}]")
_MARK = re.compile(r"mark\s+(\d+)")


class CuedTextError(StudyboardError):
    """A cue in braces that names no move and no mark of its node."""


def parse_cued(study: Study, positions: Positions, node_id: int, text: str) -> SpokenLine:
    """The line that *text* describes for this node.

    “{Nf3}” stands before the word at which that move is played, a move on the way to this node or its own;
    “{mark 2}” before the word at which the node's second mark appears; a brace itself is written twice. Of a move
    that was played several times on the way, the latest is meant. Raises CuedTextError for a cue that names none.
    """
    moves = {positions.san(step): step for step in study.path(node_id)}
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
            continue
        if found[1] is None:
            raise CuedTextError(f"A brace stands alone in “{_near(text, found.start())}”; write it twice to say it.")
        cues.append(_cue(found[1].strip(), _words_before(plain), moves, marks))
    plain.append(text[at:])
    return SpokenLine("".join(plain), tuple(cues)).sorted()


def write_cued(study: Study, positions: Positions, node_id: int) -> str:
    """The node's spoken line with its cues in braces; cues that name nothing any more are left out."""
    line = study.nodes[node_id].spoken.sorted()
    path = set(study.path(node_id))
    tags: dict[int, str] = {}
    for cue in line.cues:
        if cue.mark is not None and cue.mark < len(study.nodes[node_id].marks):
            name = f"mark {cue.mark + 1}"
        elif cue.node in path and cue.node is not None:
            name = positions.san(cue.node)
        else:
            continue
        tags[cue.word] = f"{tags.get(cue.word, '')}{{{name}}}"
    pieces: list[str] = []
    word = 0
    for piece in re.findall(r"\S+|\s+", line.text):
        if not piece.isspace():
            pieces.append(tags.pop(word, ""))
            word += 1
        pieces.append(piece.replace("{", "{{").replace("}", "}}"))
    pieces += [f" {tag}" if pieces and not pieces[-1].isspace() else tag for _, tag in sorted(tags.items())]
    return "".join(pieces)


def _cue(name: str, word: int, moves: dict[str, int], marks: int) -> Cue:
    if found := _MARK.fullmatch(name):
        number = int(found[1])
        if not 1 <= number <= marks:
            raise CuedTextError(f"There is no mark {number} here: this position has {marks}.")
        return Cue(word, mark=number - 1)
    node = moves.get(name) if name else None
    if node is None:
        raise CuedTextError(f"“{{{name}}}” is no move on the way to this position.")
    return Cue(word, node=node)


def _words_before(plain: list[str]) -> int:
    """Index of the word that begins after what was read; a cue inside a word belongs to that word."""
    text = "".join(plain)
    count = len(words(text))
    return count - 1 if text and not text[-1].isspace() else count


def _near(text: str, at: int) -> str:
    return text[max(0, at - 12) : at + 12]
