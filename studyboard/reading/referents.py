"""Which pieces on the board the words of a line can mean."""

from __future__ import annotations

from dataclasses import replace

import chess

from studyboard.reading.mentions import Mention, Named
from studyboard.reading.scene import Scene

_PLAYER_PRONOUNS = frozenset({"he", "she", "they", "him", "her"})


def fitting(mention: Mention, board: chess.BaseBoard) -> list[chess.Square]:
    """Squares of the pieces that have everything that is said of them, pronouns left aside."""
    if mention.square is not None and mention.what is Named.PIECE:
        mask = sum(chess.BB_SQUARES[square] for square in (mention.square, *mention.also)) & board.occupied
    else:
        mask = board.occupied
    if mention.kind is not None:
        colours = chess.COLORS if mention.colour is None else (mention.colour,)
        mask &= sum(board.pieces_mask(mention.kind, colour) for colour in colours)
    elif mention.colour is not None:
        mask &= board.occupied_co[mention.colour]
    if mention.kind is None and mention.pronoun == "" and mention.square is None:
        # "A piece" is neither king nor pawn.
        mask &= ~board.pawns & ~board.kings
    if mention.file is not None:
        mask &= chess.BB_FILES[mention.file]
    if mention.light is not None:
        mask &= chess.BB_LIGHT_SQUARES if mention.light else chess.BB_DARK_SQUARES
    return list(chess.scan_forward(mask))


def referents(scene: Scene, mention: Mention, board: chess.BaseBoard) -> list[chess.Square]:
    """Squares on *board* of the pieces that the words can mean; of a square, that square itself.

    A pronoun can mean every piece named in this sentence or the one before, and every piece that just moved; "he" and
    "she" any piece, as which player is meant is not known.
    """
    if mention.what is Named.SQUARE:
        return [] if mention.square is None else [mention.square]
    if mention.what is Named.SIDE:
        return list(chess.scan_forward(board.occupied_co[bool(mention.colour)]))
    kind = royal(scene, mention)
    if mention.pronoun in _PLAYER_PRONOUNS and kind is None:
        return list(chess.scan_forward(board.occupied))
    if mention.pronoun:
        found = {square for square in moved_to(scene, mention.start) if board.piece_at(square)}
        named = named_before(scene, mention.start)
        for earlier in named:
            found.update(salient(scene, earlier, board))
        if mention.pronoun in _PLAYER_PRONOUNS:
            moved = {square for square in moved_to(scene, mention.start) if board.piece_type_at(square) == kind}
            alike = [square for square in found if board.piece_type_at(square) == kind]
            return sorted(
                moved
                or alike
                or (at for c in chess.COLORS for at in chess.scan_forward(board.pieces_mask(kind or 0, c)))
            )
        found.update(square for square in squares_before(scene, mention.start) if board.piece_at(square))
        # Without a name before it in the line, it can be anything that an earlier line spoke of.
        return sorted(found) if named else list(chess.scan_forward(board.occupied))
    if mention.comes_from is not None:
        came = [
            step.landed
            for step in scene.steps
            if step.move is not None and step.move.from_square == mention.comes_from and step.landed is not None
        ]
        standing = [square for square in came if square in fitting(mention, board)]
        return standing or fitting(mention, board)
    pointed_at = _pointed_at(scene, mention, board)
    if pointed_at:
        return pointed_at
    alone = mention.kind == chess.PAWN and not mention.plural
    if alone and mention.file is not None and isinstance(board, chess.Board):
        # “The d-pawn recaptures and attacks …”: it has left its file.
        steps = [s for s in scene.steps if s.move and chess.square_file(s.move.from_square) == mention.file]
        left = {s.landed for s in steps}
        plain = replace(mention, file=None)
        return sorted({*fitting(mention, board), *(at for at in fitting(plain, board) if at in left)})
    return fitting(mention, board)


def _pointed_at(scene: Scene, mention: Mention, board: chess.BaseBoard) -> list[chess.Square]:
    """The piece of its kind that was named last before it, in another clause: “… the pawn on f7. That pawn is pinned.”

    Beside it any that is named for certain in the same clause. One of that kind that has moved since is meant instead.
    Empty where the name points at nothing.
    """
    if mention.kind is None or mention.plural or mention.square is not None or mention.file is not None:
        return []
    if scene.tokens[mention.start].text not in scene.words.names.pointing:
        return []
    last = next((m for m in reversed(scene.mentions[: mention.number]) if _fits_kind(m, mention, board)), None)
    if last is None or last.plural or scene.clause_of[last.start] == scene.clause_of[mention.start]:
        return []
    clause = scene.clause_of[last.start]
    earlier = [m for m in scene.mentions[: last.number] if scene.clause_of[m.start] == clause]
    together = [m for m in earlier if m.kind == mention.kind]
    if last.what is Named.SQUARE and any(step.landed == last.square for step in scene.steps):
        # “The bishop comes to f5. That bishop …”, but “up comes c3, and that pawn is attacked” of another one.
        told = bool(together) or scene.sentence_of[last.start] != scene.sentence_of[mention.start]
        return [last.square] if told and last.square in fitting(mention, board) else []
    since = [step.landed for step in scene.steps if last.end <= step.token <= mention.start]
    moved = [at for at in since if at is not None and at in fitting(mention, board)]
    if moved:
        return moved[-1:]
    # “That pawn is attacked by the pawn on c4. That pawn …”: one or the other.
    certain = [found[0] for m in together if len(found := salient(scene, m, board)) == 1]
    return sorted({*certain, *salient(scene, last, board)}.intersection(fitting(mention, board)))


def _fits_kind(earlier: Mention, mention: Mention, board: chess.BaseBoard) -> bool:
    """Does a name, or the square on which a piece stands, name one of the kind of *mention*?"""
    if earlier.what is Named.SQUARE:
        return earlier.square is not None and board.piece_type_at(earlier.square) == mention.kind
    return earlier.what is Named.PIECE and earlier.kind == mention.kind


def salient(scene: Scene, mention: Mention, board: chess.BaseBoard) -> list[chess.Square]:
    """The pieces that a name without a square can mean when it says who does or suffers something.

    Those of its kind that moved last in the line so far, or were named with their square before; all of its kind
    where there are none.
    """
    found = referents(scene, mention, board)
    bare = mention.square is None and mention.colour is None and not mention.other and not mention.pronoun
    if mention.what is not Named.PIECE or not mention.kind or not bare or mention.plural or not mention.definite:
        return found
    here = scene.board_index(mention.start)
    moved = [
        step.landed
        for step in scene.steps[: here + 1]
        if step.landed is not None and step.board.piece_type_at(step.landed) == mention.kind
    ]
    chosen: set[chess.Square] = set(moved[-1:])
    for earlier in scene.mentions[: mention.number]:
        named = earlier.kind == mention.kind or earlier.what is Named.SQUARE
        if named and earlier.square is not None and earlier.square in found:
            chosen.add(earlier.square)
    return sorted(chosen.intersection(found)) or found


def named_before(scene: Scene, token: int) -> list[Mention]:
    """Pieces named earlier in this sentence, or in the one before where this one names none yet."""
    start, _ = scene.sentence(token)
    here = [m for m in scene.mentions if m.what is Named.PIECE and not m.pronoun and start <= m.start < token]
    if start == 0:
        return here
    before, _ = scene.sentence(start - 1)
    return here + [m for m in scene.mentions if m.what is Named.PIECE and not m.pronoun and before <= m.start < start]


def moved_to(scene: Scene, token: int) -> list[chess.Square]:
    """Where the pieces stand that moved in the sentence of *token* or just before."""
    start, end = scene.sentence(token)
    first, last = scene.board_index(start), scene.board_index(max(start, end - 1))
    return [landed for step in scene.steps[max(0, first) : last + 1] if (landed := step.landed) is not None]


def squares_before(scene: Scene, token: int) -> list[chess.Square]:
    """Squares named alone earlier in this sentence or in the one before: “attacks e5, and the knight protects it”."""
    start, _ = scene.sentence(token)
    before = scene.sentence(start - 1)[0] if start else 0
    return [
        m.square
        for m in scene.mentions
        if m.what is Named.SQUARE and m.square is not None and before <= m.start < token
    ]


def royal(scene: Scene, mention: Mention) -> chess.PieceType | None:
    """The king or queen that “he” or “she” means: named, and no player after it, in this sentence or the one before."""
    kind = {"she": chess.QUEEN, "her": chess.QUEEN, "he": chess.KING, "him": chess.KING}.get(mention.pronoun)
    if kind is None:
        return None
    alike = ("she", "her") if kind == chess.QUEEN else ("he", "him")
    start, _ = scene.sentence(mention.start)
    first = scene.sentence(start - 1)[0] if start else 0
    named = [
        m
        for m in scene.mentions
        if first <= m.start < mention.start and (m.what is Named.SIDE or m.kind == kind or m.pronoun in alike)
    ]
    if not named and kind == chess.QUEEN and "she" not in scene.players.pronouns:
        # “{Qxf7}Mate. The king cannot take her”: the queen that has just moved.
        here = scene.board_index(mention.start)
        landed = scene.steps[here].landed if here >= 0 else None
        moved = landed is not None and scene.steps[here].board.piece_type_at(landed) == chess.QUEEN
        return kind if moved else None
    if named and named[-1].pronoun:
        return royal(scene, named[-1])
    return kind if named and named[-1].what is Named.PIECE else None


def no_king(scene: Scene, mention: Mention) -> Mention:
    """What “he” or “him” means where no king can be: “behind him sits the king, but the pawn protects him”."""
    return replace(mention, pronoun="it") if royal(scene, mention) == chess.KING else mention


def side_meant(scene: Scene, mention: Mention) -> chess.Color | None:
    """The side that a name means, or “he” and “she” where the talk has told who they are; None for a piece."""
    if mention.colour is not None:
        return mention.colour if mention.kind in (None, chess.KING) else None
    word = {"him": "he", "her": "she"}.get(mention.pronoun, mention.pronoun)
    if word not in scene.players.pronouns or royal(scene, mention) is not None:
        return None
    return scene.players.pronouns[word]


def _subject_of_first_verb(scene: Scene, before: list[Mention], token: int) -> Mention | None:
    """Whose verb stands in the same row as the one at *token*: “it protects e4 and looks at d4”."""
    for mention in reversed(before):
        after = [scene.tokens[at].text for at in range(mention.end, token)]
        if mention.what is not Named.PIECE or mention.plural or not scene.words.hint("acts_first", " ".join(after)):
            continue
        leading = " ".join(token.text for token in scene.tokens[max(0, mention.start - 2) : mention.start])
        if scene.words.hint("kept_before", leading) and scene.words.hint("kept_so_after", " ".join(after)):
            # “She keeps the knight protected and gives f4 a guard.”
            continue
        if any(scene.tokens[at].broken for at in range(mention.end, token - 1)):
            return None
        return mention if scene.words.hint("acts_then", " ".join(after)) else None
    return None


def _is_named_loosely(scene: Scene, square: Mention) -> bool:
    """Does a square belong to a noun that is no piece's name: “his colleague on b7”?"""
    at = square.start - 2
    if at < 1 or scene.tokens[square.start - 1].text != "on" or any(m.start <= at < m.end for m in scene.mentions):
        return False
    return scene.tokens[at - 1].text in scene.words.names.determiners and not scene.tokens[at].text.endswith(
        ("ed", "s")
    )


def _between(scene: Scene, first: Mention, second: Mention) -> str:
    return " ".join(token.text for token in scene.tokens[first.end : second.start])


def subjects(scene: Scene, sentence_start: int, token: int) -> list[list[Mention]]:
    """Who does what the word at *token* says: groups of mentions, of each of which one has to do it.

    Names right before a verb in the plural are one group each; a name right before one in the singular is the only
    group. Where nothing stands right before, every piece named earlier in the sentence is in one group. Empty where
    nothing is named: then it is whatever moved last.
    """
    before = [m for m in scene.mentions if sentence_start <= m.start < token and m.what in (Named.PIECE, Named.SIDE)]
    placed = [m for m in scene.mentions if m.end == token and m.what is Named.SQUARE and m.start >= sentence_start]
    led = placed and scene.words.hint("led_by", " ".join(t.text for t in scene.tokens[: placed[0].start][-2:]))
    if placed and led and _is_named_loosely(scene, placed[0]):
        # “Its brother on b7 looks at g2.”
        return [placed]
    if placed and not led and not scene.tokens[token].broken:
        # “G7 keeps watch over f6”.
        return [placed]
    if not before:
        return []
    close = before[-1]
    gap = " ".join(scene.tokens[at].text for at in range(close.end, token))
    broken = any(scene.tokens[at].broken for at in range(close.end, token + 1))
    if broken or not scene.words.hint("between_subject_and_verb", gap):
        first = _subject_of_first_verb(scene, before, token)
        if first is None and len(before) == 1 and not (close.definite or close.moves_to or close.pronoun):
            # “A pawn, and a double attack on …”: it is not the pawn that attacks.
            return [before] if close.what is Named.SIDE else []
        return [before] if first is None else [[first]]
    group = [close]
    verb = scene.tokens[token].text
    if scene.words.hint("plural_verb", gap) or not verb.endswith(("s", "ing", "ed")):
        for earlier in reversed(before[:-1]):
            words = [scene.tokens[at].text for at in range(earlier.end, group[0].start)]
            if words != ["and"] or earlier.pronoun or scene.tokens[group[0].start - 1].broken:
                break
            group.insert(0, earlier)
    elif (
        len(before) > 1
        and not before[-2].pronoun
        and scene.words.hint("joins_doers", _between(scene, before[-2], close))
    ):
        # “The knight together with the queen attacks it.”
        group.insert(0, before[-2])
    if len(group) > 1:
        return [[member] for member in group]
    return [group]
