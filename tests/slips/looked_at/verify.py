"""Check the talks of this folder: quotes found once, and every claim true or wrong on the board as it is marked.

Beside each talk stands a file of claims. A line `[…]` names a spoken line (SAN from the start, or greeting, closing,
thanks); each line under it is `quote :: statement`, and `! quote :: statement` for a slip, whose statement must be
false. A statement is judged after the last move cued before the quote; `^2` before it goes two half-moves back, and
`@ SAN …` plays moves from there. Several statements are joined by `&`; `not` turns one round.
"""

from __future__ import annotations

import io
import re
import sys
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import chess
import chess.pgn
from statements import STATEMENTS

CUE = re.compile(r"\{[^}]*\}")
SENTENCE = re.compile(r"[.!?]+(?:\s|$)")
FREE_LINES = ("greeting", "closing", "thanks")
KINDS = {
    "square", "piece", "colour", "castling", "move", "check", "mate", "material", "attack", "pin", "fork", "hanging",
    "trapped", "pawns", "forced", "number", "turn", "result", "branch", "think",
}  # fmt: skip


class Talk:
    """One talk: its start, its game, its spoken lines by path or part."""

    def __init__(self, data: dict[str, Any]) -> None:
        self.start = chess.Board(data.get("fen", chess.STARTING_FEN))
        self.main: list[str] = []
        self.children: dict[tuple[str, ...], dict[str, None]] = {}
        if "pgn" in data:
            game = chess.pgn.read_game(io.StringIO(data["pgn"]))
            assert game is not None
            assert not game.errors
            board = game.board()
            self.start = board.copy()
            for move in game.mainline_moves():
                self.main.append(board.san(move))
                board.push(move)
            if game.headers["Result"] != "*":
                assert board.result() in ("*", game.headers["Result"])
        self.lines = dict(data.get("lines", {}))
        self.thinks = {entry["path"] for entry in data.get("node", []) if "think" in entry}
        for entry in data.get("node", []):
            self.lines[entry["path"]] = entry.get("spoken", "")
        for path in [" ".join(self.main), *(entry["path"] for entry in data.get("node", []))]:
            sans = path.split()
            self.board(sans)
            for length in range(len(sans)):
                self.children.setdefault(tuple(sans[:length]), {})[sans[length]] = None
        while following := self.children.get(tuple(self.main)):
            self.main.append(next(iter(following)))

    def board(self, sans: list[str]) -> chess.Board:
        board = self.start.copy()
        for san in sans:
            move = board.parse_san(san)
            if board.san(move) != san:
                raise ValueError(f"{san} should be written {board.san(move)}")
            board.push(move)
        return board

    def position(self, where: str, quote: str, back: int) -> chess.Board:
        """The position at the quote: after the last move cued before it."""
        text = self.lines[where]
        if where in FREE_LINES:
            return self.board(self.main if where != "greeting" else [])
        sans = where.split()
        cued = [match for match in CUE.finditer(text) if not match.group().startswith("{mark")]
        for match, san in zip(reversed(cued), reversed(sans), strict=False):
            if re.sub(r"^\d+\.+", "", match.group()[1:-1]) != san:
                raise ValueError(f"cue {match.group()} where {san} is played")
        # The place of the quote is found in the text with cues blanked out, so that quotes may run across cues.
        bare = ""
        before = 0
        last = 0
        starts = []
        for match in cued:
            bare += text[last : match.start()]
            starts.append(len(bare))
            last = match.end()
        bare += text[last:]
        place = bare.index(quote)
        if cued:
            end = place + len(quote)
            before = len(cued) - sum(start < end for start in starts)
        return self.board(sans[: len(sans) - before - back])


def claims_of(text: str) -> Iterator[tuple[str, bool, str, str]]:
    """(where, is a slip, quote, statement) of a file of claims."""
    where = ""
    for line in text.splitlines():
        if line.startswith("["):
            where = line[1:-1]
        elif line.strip():
            quote, _, rest = line.partition(" :: ")
            yield where, quote.startswith("! "), quote.removeprefix("! "), rest


def holds(talk: Talk, where: str, quote: str, rest: str) -> bool:
    """Whether all statements of a claim are true."""
    for part in rest.split(" & "):
        back = 0
        if match := re.match(r"\^(\d+) ", part):
            back = int(match.group(1))
            part = part[match.end() :]
        board = talk.position(where, quote, back)
        if match := re.match(r"@ ([^:]*): ", part):
            for san in match.group(1).split():
                board.push_san(san)
            part = part[match.end() :]
        name, *words = part.split()
        negated = name == "not"
        if negated:
            name, *words = words
        if name == "branches":
            true = len(talk.children.get(tuple(where.split()[:-1]), ())) < int(words[0])
        else:
            true = STATEMENTS[name](board, *words)
        if true == negated:
            return False
    return True


def main(folder: Path) -> int:
    """Print each talk's counts and faults; 1 if there are faults."""
    wrong = 0
    totals = [0, 0, 0]
    kinds: dict[str, int] = {}
    for path in sorted(folder.glob("*.toml")):
        data = tomllib.loads(path.read_text(encoding="utf-8"))
        talk = Talk(data)
        bare = {where: CUE.sub("", line) for where, line in talk.lines.items()}
        faults = []
        slips = {}
        for slip in data["slip"]:
            where = slip.get("part", slip.get("path"))
            slips[where, slip["quote"]] = slip["kind"]
            kinds[slip["kind"]] = kinds.get(slip["kind"], 0) + 1
            if slip["kind"] not in KINDS:
                faults.append(f"slip “{slip['quote']}”: no such kind")
            if bare[where].count(slip["quote"]) != 1:
                faults.append(f"slip “{slip['quote']}”: found {bare[where].count(slip['quote'])} times")
        true = 0
        judged = set()
        for where, is_slip, quote, rest in claims_of(path.with_suffix(".claims").read_text(encoding="utf-8")):
            if bare.get(where, "").count(quote) != 1:
                faults.append(f"claim “{quote}”: found {bare.get(where, '').count(quote)} times in [{where}]")
                continue
            if is_slip != ((where, quote) in slips):
                faults.append(f"claim “{quote}”: marked differently in the two files")
            try:
                if holds(talk, where, quote, rest) == is_slip:
                    faults.append(f"claim “{quote}”: {rest} is {'true' if is_slip else 'false'}")
            except (ValueError, KeyError, TypeError) as reason:
                faults.append(f"claim “{quote}”: {rest}: {reason!r}")
            true += not is_slip
            if is_slip:
                judged.add((where, quote))
        for where, quote in slips.keys() - judged:
            faults.append(f"slip “{quote}” in [{where}]: not judged")
        spoken = " ".join(bare.values())
        counts = [len(SENTENCE.findall(spoken)), true, len(slips)]
        totals = [total + count for total, count in zip(totals, counts, strict=True)]
        print(f"{path.stem:24} {counts[0]:4} sentences, {counts[1]:4} true claims, {counts[2]:3} slips")
        for fault in faults:
            wrong += 1
            print(f"    {fault}")
    print(f"{'all':24} {totals[0]:4} sentences, {totals[1]:4} true claims, {totals[2]:3} slips; {wrong} faults")
    print(", ".join(f"{kind} {count}" for kind, count in sorted(kinds.items())))
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]) if len(sys.argv) > 1 else Path(__file__).parent))
