"""Reads the movetext of one game into a draft of its tree, keeping everything that it does not understand."""

from __future__ import annotations

from collections.abc import Iterator
from re import Match

import chess

from studyboard.notation.pgn_draft import Draft
from studyboard.notation.pgn_tokens import (
    BETWEEN,
    CLOSES,
    COMMENT,
    EN_PASSANT,
    END,
    ESCAPED,
    GLYPH,
    LIKE_A_MOVE,
    LINE_COMMENT,
    MOVE,
    NUMBER,
    NUMBERED,
    OPENS,
    OTHER,
    RESULT,
    SIGN_AFTER_MOVE,
    SIGNS,
    STRAY_TAG,
    SUFFIX,
    SUFFIXES,
    TOKEN,
    comment_text,
)
from studyboard.notation.quick_board import QuickBoard, Undo
from studyboard.notation.rules_board import RulesBoard, candidates, reading_board
from studyboard.notation.written_move import WrittenMove, readings
from studyboard.translation import tr

_RESULTS = {"1/2": "1/2-1/2", "½": "1/2-1/2", "½-½": "1/2-1/2"}


class _Line:
    """The line that is being read: the main line or a variation.

    board, node, ply: after its last move; undo: takes that move back, None before the first one
    leads: this line made the node it stands on, so that its next move goes first
    ahead: a comment here belongs to the move that follows
    comments, nags: waiting for that move
    opened: where in the text it began
    """

    __slots__ = ("ahead", "board", "comments", "leads", "nags", "node", "opened", "ply", "undo")

    def __init__(self, board: QuickBoard | RulesBoard, node: int, ply: int, opened: int, main: bool) -> None:
        self.board = board
        self.node = node
        self.ply = ply
        self.opened = opened
        self.leads = main
        self.ahead = not main
        self.undo: Undo | None = None
        self.comments: list[str] = []
        self.nags: list[int] = []


class MovetextReader:
    """Reads tokens one after the other.

    State: the draft, the line that is being read, and the lines around it.
    """

    def __init__(self, text: str, board: chess.Board) -> None:
        self.draft = Draft()
        self._text = text
        self._end = len(text.rstrip(BETWEEN))
        self._line = _Line(reading_board(board), 0, 2 * board.fullmove_number - board.turn, 0, main=True)
        self._around: list[_Line] = []
        # Where a run of words that are no moves began and ended, while it lasts.
        self._strange: tuple[int, int] | None = None

    def read(self, start: int, end: int) -> None:
        """Read the text from *start* to *end*."""
        tokens = TOKEN.finditer(self._text, start, end)
        draft = self.draft
        moves, parents, children = draft.moves, draft.parents, draft.children
        for token in tokens:
            kind = token.lastindex
            if kind != MOVE:
                self._read_other(token, tokens)
                continue
            word, suffix = token.group(1, 2)
            line = self._line
            for written in readings(word):
                move = line.board.find(written)
                if move is not None:
                    break
            else:
                self._read_odd_word(token, tokens)
                continue
            if self._strange is not None and self._stood_for_a_move(token):
                self._skip_strange(tokens)
                continue
            if children[line.node]:
                line.node, line.leads = draft.join(line.node, move, line.leads)
            else:
                node = len(moves)
                moves.append(move)
                parents.append(line.node)
                children.append([])
                children[line.node].append(node)
                line.node = node
                line.leads = True
            line.undo = line.board.play(move)
            line.ply += 1
            line.ahead = False
            if line.comments or line.nags:
                self._give_to_move(line)
            if suffix:
                self._read_suffix(suffix, token.start(2))
            if move.promotion and not written.promotion:
                self.draft.report(
                    token.start(1),
                    tr("“{word}” does not say what the pawn becomes: it was read as a queen.", word=word),
                )

    def read_foreword(self, start: int, end: int) -> None:
        """Keep what stands before the tags as a note; it holds no moves."""
        self._keep_words(TOKEN.finditer(self._text, start, end))

    def leave_out(self, start: int, end: int) -> None:
        """Keep the text from *start* to *end* as a note, without its moves; only the result is read."""
        self._skip(start, TOKEN.finditer(self._text, start, end), "")

    def keep(self, note: str) -> None:
        """Add a note where the reader has arrived."""
        self._comment(note)

    def finish(self) -> Draft:
        """Close what is still open, and return the draft."""
        if self._around:
            count = len(self._around)
            opened = self._around[1].opened if count > 1 else self._line.opened
            what = tr("A variation is") if count == 1 else tr("{count} variations are", count=count)
            self.draft.report(
                opened, tr("{what} never closed: “)” is missing. It was closed at the end of the game.", what=what)
            )
        while self._around:
            self._close()
        self._keep_waiting(self._line, self._line.node)
        return self.draft

    def _read_other(self, token: Match[str], tokens: Iterator[Match[str]]) -> None:
        kind = token.lastindex
        line = self._line
        if kind == NUMBER:
            line.ahead = True
            return
        if kind in (OTHER, STRAY_TAG) and token[kind] not in SIGNS:
            self._add_strange(token, kind)
            return
        self._end_strange()
        if kind == COMMENT:
            self._read_comment(token)
        elif kind == LINE_COMMENT:
            self._comment(token[LINE_COMMENT].strip(" \t"))
        elif kind == OPENS:
            self._open(token)
        elif kind == CLOSES:
            if self._around:
                self._close()
            else:
                self.draft.report(token.start(CLOSES), tr("A “)” closes no variation; it was left out."))
        elif kind == GLYPH:
            self._read_glyph(token)
        elif kind == SUFFIX:
            self._read_suffix(token[SUFFIX], token.start(SUFFIX))
        elif kind == RESULT:
            self._read_result(token, tokens)
        elif kind == OTHER:
            self._add_nag(SIGNS[token[OTHER]])
        else:
            assert kind in (ESCAPED, END)

    def _read_comment(self, token: Match[str]) -> None:
        if not token[COMMENT]:
            self.draft.report(
                token.start(COMMENT - 1) - 1, tr("A comment is never closed: “}” is missing. It was kept whole.")
            )
        self._comment(comment_text(token[COMMENT - 1]))

    def _comment(self, text: str) -> None:
        line = self._line
        if line.ahead:
            line.comments.append(text)
        else:
            self.draft.add_notes(line.node, (text,))

    def _read_glyph(self, token: Match[str]) -> None:
        number = token[GLYPH]
        if number.isascii() and number.isdecimal() and len(number) < 6 and int(number) <= 255:
            self._add_nag(int(number))
        else:
            self.draft.report(
                token.start(GLYPH) - 1,
                tr("“${number}” is no annotation glyph ($0 to $255); kept as a note.", number=number),
            )
            self._comment(f"${number}")

    def _read_suffix(self, suffix: str, at: int) -> None:
        nag = SUFFIXES.get(suffix)
        if nag is None:
            self.draft.report(
                at, tr("“{suffix}” is no judgement of a move that the standard knows; kept as a note.", suffix=suffix)
            )
            self._comment(suffix)
        else:
            self._add_nag(nag)

    def _add_nag(self, nag: int) -> None:
        line = self._line
        if line.undo is None and self._around:
            line.nags.append(nag)
        else:
            self.draft.add_nags(line.node, (nag,))

    def _give_to_move(self, line: _Line) -> None:
        self.draft.add_notes_before(line.node, line.comments)
        if line.nags:
            self.draft.add_nags(line.node, line.nags)
        line.comments, line.nags = [], []

    def _open(self, token: Match[str]) -> None:
        line = self._line
        at = token.start(OPENS)
        if line.undo is None:
            self.draft.report(
                at, tr("A variation begins before any move that it could replace; it was read from here.")
            )
            inner = _Line(line.board.copy(), line.node, line.ply, at, main=False)
        else:
            board = line.board.before(line.undo)
            inner = _Line(board, self.draft.parents[line.node], line.ply - 1, at, main=False)
        if self._around or line.undo is not None:
            # What stands between two variations leads over to the second.
            inner.comments, line.comments = line.comments, []
        self._around.append(line)
        self._line = inner

    def _close(self) -> None:
        inner = self._line
        line = self._line = self._around.pop()
        self._keep_waiting(inner, inner.node if inner.undo is not None else line.node)
        line.ahead = True

    def _keep_waiting(self, line: _Line, node: int) -> None:
        """What waited for a move which never came stays with the last one."""
        self.draft.add_notes(node, line.comments)
        if line.nags:
            self.draft.add_nags(node, line.nags)
        line.comments, line.nags = [], []

    def _read_result(self, token: Match[str], tokens: Iterator[Match[str]]) -> None:
        word = token[RESULT]
        if self._around and token.end() < self._end:
            self._comment(word)
            return
        self.draft.result = _RESULTS.get(word, word)
        self._keep_words(tokens)

    def _keep_words(self, tokens: Iterator[Match[str]]) -> None:
        """Read comments, and keep anything else as a note."""
        line = self._line
        for token in tokens:
            kind = token.lastindex
            assert kind is not None
            if kind in (COMMENT, LINE_COMMENT):
                line.ahead = False
                self._end_strange()
                self._read_other(token, tokens)
            elif kind not in (ESCAPED, END):
                self._add_strange(token, kind)
        self._end_strange()

    def _read_odd_word(self, token: Match[str], tokens: Iterator[Match[str]]) -> None:
        """A word in the place of a move that is none, or none that can be played."""
        word = token[1]
        at = token.start(1)
        if EN_PASSANT.fullmatch(word):
            if token[2]:
                self._read_suffix(token[2], token.start(2))
            return
        if word in SIGNS:
            self._add_nag(SIGNS[word])
            return
        sign = SIGN_AFTER_MOVE.fullmatch(word)
        plain = sign[1] if sign else word.rstrip(",:")
        if plain != word:
            move = next(filter(None, map(self._line.board.find, readings(plain))), None)
            if move is not None:
                self._play(move)
                if sign:
                    self._add_nag(SIGNS[sign[2]])
                if token[2]:
                    self._read_suffix(token[2], token.start(2))
                return
        meant = readings(word)
        if not meant and not LIKE_A_MOVE.fullmatch(word):
            self._add_strange(token, MOVE)
            return
        if self._strange is not None and self._stood_for_a_move(token):
            self._skip_strange(tokens)
            return
        number = NUMBERED.match(self._text, token.start())
        self._skip(number.start(1) if number else at, tokens, self._why(word, meant))

    def _play(self, move: chess.Move) -> None:
        line = self._line
        line.node, line.leads = self.draft.join(line.node, move, line.leads)
        line.undo = line.board.play(move)
        line.ply += 1
        line.ahead = False
        self._give_to_move(line)

    def _why(self, word: str, meant: tuple[WrittenMove, ...]) -> str:
        """Why the word cannot be played here."""
        line = self._line
        label = f"{(line.ply + 1) // 2}{'.' if line.ply % 2 else '...'} {word}"
        found = candidates(line.board.as_board(), meant[0]) if meant else []
        if len(found) > 1:
            squares = tr(" and ").join(sorted(chess.square_name(move.from_square) for move in found))
            return tr(
                "“{label}” can be played from {squares}, and the text does not say which.", label=label, squares=squares
            )
        return tr("“{label}” is not a legal move here.", label=label)

    def _skip(self, at: int, tokens: Iterator[Match[str]], why: str) -> None:
        """Leave out the rest of this line from *at* on; its text becomes a note."""
        text = self._text
        depth = 0
        end = len(text)
        last: Match[str] | None = None
        for token in tokens:
            kind = token.lastindex
            if kind == OPENS:
                depth += 1
            elif kind == CLOSES and depth:
                depth -= 1
            elif (kind == CLOSES and self._around) or (
                kind == RESULT and (token.end() >= self._end or not (self._around or depth))
            ):
                last = token
                end = token.start(kind)
                break
            elif kind == END:
                end = token.start(END)
        unread = comment_text(text[at:end].strip(BETWEEN.replace(".", "").replace("…", "")))
        line = self._line
        inside = self._around and line.undo is None
        if why:
            rest = tr("this variation") if self._around else tr("the game")
            self.draft.report(at, tr("{why} The rest of {rest} was kept as a note.", why=why, rest=rest))
        if inside:
            self._comment(f"({unread})")
        elif unread:
            self._keep_waiting(line, line.node)
            line.ahead = False
            self._comment(unread)
        if last is not None:
            self._read_other(last, tokens)

    def _add_strange(self, token: Match[str], kind: int) -> None:
        start = token.start(1 if kind == MOVE else kind)
        self._strange = (start if self._strange is None else self._strange[0], token.end())

    def _end_strange(self) -> None:
        if self._strange is not None:
            start, end = self._strange
            self._strange = None
            words = comment_text(self._text[start:end].strip())
            self.draft.report(
                start, tr("“{text}” is neither a move nor a comment; kept as a note.", text=_short(words))
            )
            self._comment(words)

    def _stood_for_a_move(self, token: Match[str]) -> bool:
        """Does the number of the move after strange words say that one of them was the move before it?

        Where it does not, the words are kept as a note.
        """
        number = NUMBERED.match(self._text, token.start())
        ply = self._line.ply
        if number is None or (int(number[1]) == (ply + 1) // 2 and (number[2].count(".") == 1) == bool(ply % 2)):
            self._end_strange()
            return False
        return True

    def _skip_strange(self, tokens: Iterator[Match[str]]) -> None:
        assert self._strange is not None
        start, end = self._strange
        self._strange = None
        self._skip(start, tokens, tr("“{text}” stands for a move but is none.", text=_short(self._text[start:end])))


def _short(words: str) -> str:
    words = " ".join(words.split())
    return words if len(words) <= 40 else words[:39] + "…"
