"""Claims about open files: which are, how many there are, who stands on one."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

import chess

from studyboard.board.naming import listed, sentence, side, the_piece
from studyboard.board.pawns import is_half_open_file, is_open_file
from studyboard.reading.claim import Claim, Judge, Judgement, confirmed, contradicted, undecided
from studyboard.reading.claims_inventory import BOTH, holder
from studyboard.reading.findings import Topic
from studyboard.reading.referents import referents


def judge_empty_file(claim: Claim) -> list[Judgement]:
    """“There is no pawn on the b-file”, “no black pawn on the d-file”, “the g-file has no pawns”."""
    thing = claim.mention("piece")
    file = claim.mention("file")
    if thing is None or thing.kind != chess.PAWN:
        return []
    on = file.file if file is not None else thing.file
    if on is None or (claim.scene.tokens[thing.start].text != "no" and not claim.has("none")):
        return []
    who = claim.mention("side")
    owner = who.colour if who is not None else thing.colour
    # “He has no pawn on the f-file”: one side, whoever he is.
    of_one = owner is None and claim.hinted("somebody_before")
    colours = BOTH if owner is None else (owner,)
    boards = claim.boards(wide=True)
    left: list[chess.Square] = []
    for board in boards:
        there = {colour: board.pieces_mask(chess.PAWN, colour) & chess.BB_FILES[on] for colour in colours}
        without = [colour for colour in colours if not there[colour]]
        if len(without) == len(colours):
            return confirmed(Topic.PAWNS, claim.quote(), f"There is none on the {chess.FILE_NAMES[on]}-file.")
        if without and of_one:
            why = f"{side(without[0])} has none on the {chess.FILE_NAMES[on]}-file."
            return confirmed(Topic.PAWNS, claim.quote(), why)
        left = left or list(chess.scan_forward(sum(there.values())))
    names = listed([the_piece(boards[0], at) for at in left if boards[0].piece_at(at)])
    return contradicted(Topic.PAWNS, claim.quote(), sentence(f"there is {names}"), *left)


def judge_open_file(claim: Claim) -> list[Judgement]:
    """“The open c-file”, “the d-file is half open for White”, “the e-file and the b-file are open”."""
    files = [m for m in claim.mentions("files") or claim.mentions("file") if m.file is not None]
    if not files:
        return []
    half = claim.has("half") or claim.hinted("half_before") or claim.hinted("half")
    half = half or claim.hinted("open_for_after") or claim.has("for_both") or claim.mention("for_side") is not None
    sides = [m.colour for m in claim.mentions("for_side") if m.colour is not None]
    boards = claim.boards(wide=True)
    for board in boards:
        if all(_opened(board, m.file or 0, half=half, sides=sides, both=claim.has("for_both")) for m in files):
            return confirmed(Topic.PAWNS, claim.quote(), _file_words(board, [m.file or 0 for m in files]), exact=True)
    board = boards[0]
    pawns = [at for m in files for at in chess.scan_forward(board.pawns & chess.BB_FILES[m.file or 0])]
    return contradicted(Topic.PAWNS, claim.quote(), _file_words(board, [m.file or 0 for m in files]), *pawns)


def _opened(board: chess.BaseBoard, file: int, *, half: bool, sides: Sequence[chess.Color], both: bool) -> bool:
    if both:
        return is_open_file(board, file)
    if sides:
        return is_half_open_file(board, file, sides[0]) or is_open_file(board, file)
    return is_open_file(board, file) or (half and any(is_half_open_file(board, file, c) for c in chess.COLORS))


def _file_words(board: chess.BaseBoard, files: Sequence[int]) -> str:
    told = []
    for file in files:
        letter = chess.FILE_NAMES[file]
        pawns = list(chess.scan_forward(board.pawns & chess.BB_FILES[file]))
        names = listed([f"{side(bool(board.color_at(at)))}'s pawn on {chess.square_name(at)}" for at in pawns])
        told.append(f"On the {letter}-file there is {names}." if pawns else f"There is no pawn on the {letter}-file.")
    return " ".join(told)


def judge_closed_file(claim: Claim) -> list[Judgement]:
    """“The e-file is closed”: both sides have a pawn on it."""
    file = claim.mention("file")
    if file is None or file.file is None:
        return []
    boards = claim.boards(wide=True)
    for board in boards:
        on_it = [board.pieces_mask(chess.PAWN, c) & chess.BB_FILES[file.file] for c in chess.COLORS]
        if all(on_it):
            return confirmed(Topic.PAWNS, claim.quote(), _file_words(board, [file.file]), exact=True)
        if any(on_it):
            return undecided(Topic.PAWNS, claim.quote(), _file_words(board, [file.file]))
    return contradicted(Topic.PAWNS, claim.quote(), _file_words(boards[0], [file.file]))


def judge_count_open_files(claim: Claim) -> list[Judgement]:
    """“There is no open file”, “two files are open, the b-file and the d-file”, “the only open file is the e-file”."""
    number = claim.mention("number")
    named = [m.file for m in claim.mentions("files") if m.file is not None]
    if claim.has("none"):
        wanted = 0
    elif claim.has("sole"):
        wanted = 1
    elif number is not None:
        wanted = number.value
    else:
        return []
    colours = holder(claim) if claim.has("half") else ()
    boards = claim.boards(wide=True)
    for board in boards:
        for files in _files_open(board, colours or (), half=claim.has("half")):
            if len(files) == wanted and set(named) <= set(files):
                return confirmed(Topic.PAWNS, claim.quote(), _files_words(files, half=claim.has("half")))
    files = next(_files_open(boards[0], colours or (), half=claim.has("half")))
    return contradicted(Topic.PAWNS, claim.quote(), _files_words(files, half=claim.has("half")))


def _files_open(board: chess.BaseBoard, colours: Sequence[chess.Color], *, half: bool) -> Iterator[list[int]]:
    """The files that are open; of half-open ones those of these sides, or of both and of either where none is named."""
    if not half:
        yield [file for file in range(8) if is_open_file(board, file)]
        return
    for sides in (colours,) if colours else (BOTH, (chess.WHITE,), (chess.BLACK,)):
        yield [file for file in range(8) if any(is_half_open_file(board, file, c) for c in sides)]


def _files_words(files: Sequence[int], *, half: bool) -> str:
    what = "half-open" if half else "open"
    if not files:
        return f"No file is {what}."
    names = listed([f"the {chess.FILE_NAMES[file]}-file" for file in files])
    return sentence(f"{names} {'is' if len(files) == 1 else 'are'} {what}")


def judge_on_open_file(claim: Claim) -> list[Judgement]:
    """“White's rook has an open file”, “neither rook stands on a half-open file”."""
    thing = claim.mention("piece")
    if thing is None or thing.kind not in (chess.ROOK, chess.QUEEN) or thing.square is not None or thing.pronoun:
        return []
    if not thing.definite and thing.colour is None:
        return []
    seen: list[tuple[chess.Board, list[chess.Square]]] = []
    for board in claim.boards():
        squares = referents(claim.scene, thing, board)
        on = [at for at in squares if _stands_open(board, at, half=claim.has("half"))]
        if on and (not thing.plural or len(on) == len(squares)):
            return confirmed(Topic.PAWNS, claim.quote(), sentence(f"{the_piece(board, on[0])} does"), *on, exact=True)
        seen.append((board, squares))
    board, squares = seen[0]
    if not squares:
        return undecided(Topic.PAWNS, claim.quote(), "It is not clear which piece is meant.")
    return contradicted(
        Topic.PAWNS, claim.quote(), _file_words(board, sorted({chess.square_file(at) for at in squares})), *squares
    )


def _stands_open(board: chess.BaseBoard, at: chess.Square, *, half: bool) -> bool:
    file, colour = chess.square_file(at), bool(board.color_at(at))
    return is_half_open_file(board, file, colour) if half else is_open_file(board, file)


JUDGES: Final[dict[str, Judge]] = {
    "open_file": judge_open_file,
    "closed_file": judge_closed_file,
    "empty_file": judge_empty_file,
    "count_open_files": judge_count_open_files,
    "on_open_file": judge_on_open_file,
}
