"""One picture of a video, painted; its words are English."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import Final

import chess

from studyboard.delivery.title import full_name, known, occasion, opening, result
from studyboard.delivery.video.layout import Box, Places, places
from studyboard.delivery.video.options import VideoOptions
from studyboard.delivery.video.pictures import Card, Picture
from studyboard.delivery.video.strip import Strip, StripRow
from studyboard.model.positions import Positions
from studyboard.model.study import Study
from studyboard.notation.labels import figurine, move_number
from studyboard.picture.lettering import LINE, Letterer, Lettering
from studyboard.picture.marks import ground_marks_scene, marks_scene
from studyboard.picture.motion import Way, arriving, moving_pieces, step_between, unwound
from studyboard.picture.palette import board_palette, theme
from studyboard.picture.primitives import PieceAt
from studyboard.picture.raster import Canvas
from studyboard.picture.scene import indication_scene, pieces_scene, squares_scene

_ROW: Final = 46


def cards_with_words(study: Study, positions: Positions) -> frozenset[Card]:
    """The cards that have anything to say; of a bare position nothing is known, and the board stays in sight."""
    headers = study.headers
    both = [*occasion(headers), known(headers, "White"), known(headers, "Black")]
    own = {
        Card.TITLE: opening(study, positions),
        Card.CLOSING: [result(headers), known(headers, "Annotator")],
    }
    return frozenset(card for card, texts in own.items() if any((*both, *texts)))


class Painter:
    """Paints the pictures of one talk.

    State: the last of everything that stays when only the pieces move: the ground with header and moves, the board
    with what is at rest, and each card.
    """

    def __init__(
        self, study: Study, positions: Positions, strip: Strip, options: VideoOptions, label: str = ""
    ) -> None:
        """label: what stands in the upper right corner of every picture"""
        self._study = study
        self._label = label
        self._positions = positions
        self._strip = strip
        self._options = options
        self._look = theme(options.theme)
        self._palette = board_palette(options.palette)
        self._places = places(options)
        self._letterer = Letterer()
        self._canvas = self._new_canvas(*options.size)
        self._ground = self._new_canvas(*options.size)
        self._ground_key: object = None
        self._rest = self._new_canvas(self._places.board.width, self._places.board.height)
        self._rest_key: object = None
        self._squares: Canvas | None = None
        self._cards: dict[Card, Canvas] = {}

    @property
    def places(self) -> Places:
        """Where things are."""
        return self._places

    def paint(self, picture: Picture) -> Canvas:
        """The picture; the same canvas every time, painted over by the next one."""
        canvas = self._canvas
        if picture.card is not None and picture.cover >= 1.0:
            canvas.copy(self._card(picture.card))
            return self._labelled(self._captioned(canvas, picture))
        ground_key = (picture.step, picture.node, picture.think, picture.returned, picture.caption)
        if ground_key != self._ground_key:
            self._paint_ground(picture)
            self._ground_key = ground_key
        canvas.copy(self._ground)
        self._paint_board(canvas, picture)
        if picture.card is not None:
            canvas.copy(self._card(picture.card), opacity=picture.cover)
            self._captioned(canvas, picture)
        return self._labelled(canvas)

    def _captioned(self, canvas: Canvas, picture: Picture) -> Canvas:
        """The same with what is said above the card: who reads the words reads the greeting and the thanks too."""
        if self._places.band is not None and picture.caption:
            self._paint_caption(canvas, picture.caption, self._places.band)
        return canvas

    def _labelled(self, canvas: Canvas) -> Canvas:
        """The same with the label in its corner, on a ground of its own so that it is read on anything."""
        if self._label:
            lettering = Lettering(self._label, self._px(26), self._look.paper, bold=True)
            width, height = self._letterer.size(lettering)
            pad = self._px(12)
            x, y = canvas.width - width - 3 * pad, 2 * pad
            canvas.box(x - pad, y - pad / 2, width + 2 * pad, height + pad, self._look.over, radius=self._px(8))
            canvas.text(lettering, x, y)
        return canvas

    def prepare(self, pictures: Iterable[Picture]) -> None:
        """Set the texts of these pictures at once, which is thirty times as quick as one by one."""
        wanted: dict[Lettering, None] = {}
        before: tuple[int, tuple[str, ...]] | None = None
        for picture in pictures:
            if (picture.step, picture.caption) == before:
                continue
            before = picture.step, picture.caption
            wanted.update(dict.fromkeys(self._caption_lettering(picture.caption)))
            for row in self._rows(picture):
                wanted.update(dict.fromkeys(self._row_letterings(row)))
        self._letterer.prepare(wanted)

    # ---- the board --------------------------------------------------------------------------------------------------

    def _paint_board(self, canvas: Canvas, picture: Picture) -> None:
        box, side = self._places.board, self._places.board.width / 8
        flipped = self._options.flipped
        node = self._study.nodes[picture.node]
        board = self._positions.board(node.id)
        step = None
        if picture.came_from is not None:
            before = self._positions.board(picture.came_from)
            step = step_between(self._study, picture.came_from, node.id, before, board)
        rest_key = (node.id, picture.came_from, picture.marks if not picture.fresh else ())
        if rest_key != self._rest_key:
            self._paint_rest(picture, board, frozenset() if step is None else arriving(step.change))
            self._rest_key = rest_key
        canvas.copy(self._rest, box.x, box.y)
        if picture.fresh:
            settled = [node.marks[mark] for mark in picture.marks if mark not in picture.fresh]
            everything = [node.marks[mark] for mark in picture.marks]
            canvas.scene(marks_scene(settled, flipped=flipped), box.x, box.y, side)
            fresh = [node.marks[mark] for mark in picture.fresh]
            canvas.scene(ground_marks_scene(fresh, flipped=flipped), box.x, box.y, side, opacity=picture.freshness)
            canvas.scene(marks_scene(everything, flipped=flipped), box.x, box.y, side, opacity=picture.freshness)
        if step is not None and picture.came_from is not None:
            before = self._positions.board(picture.came_from)
            for piece in moving_pieces(step.change, before, board, picture.progress, flipped=flipped):
                at = PieceAt(piece.x, piece.y, piece.piece, self._palette.piece_halo)
                canvas.scene((at,), box.x, box.y, side, opacity=piece.opacity)
            if step.way is not Way.ON:
                self._paint_unwinding(canvas, picture.progress)

    def _paint_rest(self, picture: Picture, board: chess.Board, moving: frozenset[chess.Square]) -> None:
        side, flipped = self._places.board.width / 8, self._options.flipped
        node = self._study.nodes[picture.node]
        marks = [] if picture.fresh else [node.marks[mark] for mark in picture.marks]
        rest = self._rest
        if self._squares is None:
            self._squares = self._new_canvas(rest.width, rest.height)
            self._squares.scene(squares_scene(flipped=flipped, palette=self._palette), 0, 0, side)
        rest.copy(self._squares)
        rest.scene(ground_marks_scene(marks, flipped=flipped), 0, 0, side)
        last = node.move
        rest.scene(indication_scene(board, flipped=flipped, last_move=last, palette=self._palette), 0, 0, side)
        rest.scene(pieces_scene(board, flipped=flipped, without=moving, palette=self._palette), 0, 0, side)
        rest.scene(marks_scene(marks, flipped=flipped), 0, 0, side)

    def _paint_unwinding(self, canvas: Canvas, progress: float) -> None:
        """A line around the board that unwinds against the clock while it goes back to the line before."""
        box = self._places.board
        out = self._px(10)
        side = box.width + 2 * out
        points = [(box.x - out + x * side, box.y - out + y * side) for x, y in unwound(progress)]
        canvas.line(points, self._look.accent, self._px(8))

    # ---- what stands beside it --------------------------------------------------------------------------------------

    def _paint_ground(self, picture: Picture) -> None:
        canvas, look = self._ground, self._look
        canvas.fill(look.paper)
        self._paint_frame(canvas, picture)
        if self._places.header is not None:
            self._paint_header(canvas, self._places.header)
        self._paint_notice(canvas, picture)
        if self._places.strip is not None:
            self._paint_strip(canvas, picture, self._places.strip)
        if self._places.band is not None and picture.caption:
            self._paint_caption(canvas, picture.caption, self._places.band)

    def _paint_frame(self, canvas: Canvas, picture: Picture) -> None:
        """A line around the board; in a side-line another one, so that nobody takes it for the game."""
        box, look = self._places.board, self._look
        out = self._px(3)
        canvas.outline(box.x - out, box.y - out, box.width + 2 * out, box.height + 2 * out, look.rule, self._px(2))
        if not self._study.on_main_line(picture.node):
            out = self._px(12)
            canvas.outline(
                box.x - out,
                box.y - out,
                box.width + 2 * out,
                box.height + 2 * out,
                look.side_line,
                self._px(5),
                radius=self._px(8),
                dash=(self._px(22), self._px(12)),
            )

    def _paint_header(self, canvas: Canvas, box: Box) -> None:
        headers, look = self._study.headers, self._look
        y = float(box.y)
        size = self._px(44)
        for colour in (chess.WHITE, chess.BLACK):
            tag = "White" if colour else "Black"
            name = full_name(known(headers, tag)) or tag
            rating = known(headers, f"{tag}Elo")
            king = self._px(56)
            canvas.scene((PieceAt(0, 0, chess.Piece(chess.KING, colour)),), box.x - self._px(6), y, king)
            room = box.width - king
            lettering = self._fitting(name, size, look.ink, room - self._px(90), bold=True)
            width, _ = canvas.text(lettering, box.x + king + self._px(4), y + (king - LINE * lettering.size) / 2)
            if rating:
                canvas.text(
                    Lettering(rating, self._px(30), look.ink_quiet),
                    box.x + king + self._px(18) + width,
                    y + (king - LINE * self._px(30)) / 2 + self._px(4),
                )
            y += self._px(58)
        where = self._fitting(" · ".join(occasion(headers)), self._px(28), look.ink_quiet, box.width)
        if box.height > 2 * (y - box.y):
            # There is room for several lines.
            where = replace(where, text=" · ".join(occasion(headers)), size=self._px(28), width=box.width)
        canvas.text(where, box.x, y + self._px(6))

    def _paint_notice(self, canvas: Canvas, picture: Picture) -> None:
        box, look = self._places.notice, self._look
        node = picture.node
        if picture.think is not None:
            turn = "White" if self._positions.board(node).turn else "Black"
            text, colour = f"{turn} to move. What would you play?", look.think
            self._paint_countdown(canvas, picture)
        elif picture.returned:
            text, colour = "Back to where the side-line began", look.accent
        elif not self._study.on_main_line(node):
            name = self._study.nodes[self._study.line_start(node)].name.strip()
            text, colour = (f"Side-line: {name}" if name else "Side-line"), look.side_line
        else:
            text, colour = self._move_text(node), look.ink_quiet
        lettering = self._fitting(text, self._px(32), colour, box.width, bold=picture.think is not None)
        width, height = self._letterer.size(lettering)
        x = box.x + (box.width - width) // 2 if self._places.centred else box.x
        canvas.text(lettering, x, box.y + (box.height - height) // 2)

    def _paint_countdown(self, canvas: Canvas, picture: Picture) -> None:
        """A bar below the board that is as long as the time that is left; it moves once a second."""
        box, look = self._places.board, self._look
        if not picture.asked or picture.think is None:
            return
        height, y = self._px(8), box.bottom + self._px(10)
        canvas.box(box.x, y, box.width, height, look.think_soft, radius=height / 2)
        canvas.box(box.x, y, box.width * picture.think / picture.asked, height, look.think, radius=height / 2)

    def _paint_strip(self, canvas: Canvas, picture: Picture, box: Box) -> None:
        look, px = self._look, self._px
        row_height, gutter = px(_ROW), px(76)
        lane = (box.width - gutter) // self._columns(box)
        for row in self._rows(picture):
            x, y = box.x + gutter + row.column * lane, box.y + row.level * row_height
            side_line = row.column > 0 or row.first
            if row.current:
                ground = look.side_line_soft if side_line else look.accent_soft
                canvas.box(x - px(10), y + px(2), lane - px(16), row_height - px(4), ground, radius=px(8))
                bar = look.side_line if side_line else look.accent
                canvas.box(x - px(10), y + px(2), px(6), row_height - px(4), bar, radius=px(3))
            if side_line and not row.first:
                canvas.line(((x - px(13), y), (x - px(13), y + row_height)), look.rail, px(2))
            if row.first and row.column:
                # Past a lane that lies between, the line starts at its far side, so as not to run through its moves.
                left = box.x + gutter + (row.column - 1) * lane + lane - px(40)
                middle = y + row_height / 2
                turn = x - px(13)
                canvas.line(((left, middle), (turn, middle), (turn, y + row_height)), look.rail, px(2))
                canvas.disc(left, middle, px(4), look.rail)
            number, text = self._row_letterings(row)
            if row.column == 0 and not row.first:
                canvas.text(number, box.x, y + px(4))
                canvas.text(text, x + px(6), y + px(2))
            else:
                width, _ = canvas.text(number, x + px(6), y + px(4))
                canvas.text(text, x + px(6) + (width + px(8) if row.number else 0), y + px(2))

    def _columns(self, strip: Box) -> int:
        return max(1, min(3, strip.width // self._px(230)))

    def _rows(self, picture: Picture) -> tuple[StripRow, ...]:
        box = self._places.strip
        if box is None:
            return ()
        count = max(1, box.height // self._px(_ROW))
        return self._strip.rows(picture.step, picture.node, count, self._columns(box))

    def _paint_caption(self, canvas: Canvas, lines: tuple[str, ...], box: Box) -> None:
        letterings = self._caption_lettering(lines)
        height = sum(self._letterer.size(one)[1] for one in letterings)
        y = box.y + max(0, (box.height - height) // 2)
        for one in letterings:
            width, tall = canvas.letterer.size(one)
            canvas.text(one, box.x + (box.width - width) // 2, y)
            y += tall

    # ---- cards ------------------------------------------------------------------------------------------------------

    def _card(self, card: Card) -> Canvas:
        if card not in self._cards:
            width, height = self._options.size
            canvas = self._new_canvas(width, height)
            canvas.fill(self._look.paper)
            self._paint_card(canvas, card)
            self._cards[card] = canvas
        return self._cards[card]

    def _paint_card(self, canvas: Canvas, card: Card) -> None:
        look, headers, px = self._look, self._study.headers, self._px
        width, height = self._options.size
        room = round(0.84 * width)
        names = [full_name(known(headers, tag)) for tag in ("White", "Black")]
        texts: list[tuple[str, float, str, bool, float]] = []
        if card is Card.TITLE:
            texts.append((" · ".join(occasion(headers)), px(36), look.ink_quiet, False, px(36)))
        for place, name in enumerate(names):
            if name:
                texts.append((name, px(92), look.ink, True, px(2)))
            if place == 0 and all(names):
                texts.append(("–", px(60), look.ink_quiet, False, px(2)))
        if card is Card.TITLE:
            texts.append((", ".join(opening(self._study, self._positions)), px(36), look.ink_quiet, False, 0))
        else:
            texts.append((result(headers), px(84), look.accent, True, px(24)))
            told = full_name(known(headers, "Annotator"))
            texts.append((f"Told by {told}" if told else "", px(36), look.ink_quiet, False, 0))
            texts.append((" · ".join(occasion(headers)), px(32), look.ink_quiet, False, 0))
        letterings = [
            (self._fitting(text, size, colour, room, bold=bold), gap) for text, size, colour, bold, gap in texts if text
        ]
        tall = sum(self._letterer.size(one)[1] + gap for one, gap in letterings)
        y = (height - tall) / 2
        for one, gap in letterings:
            wide, high = self._letterer.size(one)
            canvas.text(one, (width - wide) / 2, y)
            y += high + gap
        line = round(0.18 * width)
        canvas.line((((width - line) / 2, y + px(34)), ((width + line) / 2, y + px(34))), look.accent, px(5))

    # ---- texts ------------------------------------------------------------------------------------------------------

    def _move_text(self, node: int) -> str:
        if self._study.nodes[node].move is None:
            return ""
        return f"{move_number(self._positions, node).replace('...', '…')} {figurine(self._positions.san(node))}"

    def _caption_lettering(self, lines: tuple[str, ...]) -> list[Lettering]:
        band = self._places.band
        if band is None:
            return []
        size = min(self._px(46), int(band.height / max(2, len(lines)) / LINE))
        return [self._fitting(line, size, self._look.ink, band.width) for line in lines]

    def _row_letterings(self, row: StripRow) -> tuple[Lettering, Lettering]:
        ink = self._look.ink if row.lit else self._look.ink_quiet
        return (
            Lettering(row.number, self._px(30), self._look.ink_quiet),
            Lettering(row.text, self._px(34), ink, bold=row.current),
        )

    def _fitting(self, text: str, size: float, colour: str, room: int, *, bold: bool = False) -> Lettering:
        """The text in one line, smaller where it would be wider than the room, at the end cut with an ellipsis."""
        # An em of this face is about twice as wide as its average letter; only longer texts are measured.
        if len(text) * size * 0.62 <= room:
            return Lettering(text, size, colour, bold=bold)
        for share in (1.0, 0.9, 0.8, 0.7, 0.6):
            lettering = Lettering(text, round(size * share, 1), colour, bold=bold)
            if self._letterer.size(lettering)[0] <= room:
                return lettering
        smallest = round(size * 0.6, 1)
        while len(text) > 4 and self._letterer.size(Lettering(f"{text}…", smallest, colour, bold=bold))[0] > room:
            text = text[: int(len(text) * 0.92)].rstrip()
        return Lettering(f"{text}…", smallest, colour, bold=bold)

    def _px(self, value: float) -> int:
        return max(1, round(value * self._places.unit)) if value else 0

    def _new_canvas(self, width: int, height: int) -> Canvas:
        return Canvas(width, height, piece_set=self._options.piece_set, letterer=self._letterer)
