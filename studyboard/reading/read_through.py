"""The read-through: a whole study, one line of it, or any text beside a position, checked against the board."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

import chess

from studyboard.board.work import WorkCancelledError, never_cancelled
from studyboard.model.beats import Beat, beats
from studyboard.model.order import Visit, VisitKind, running_order
from studyboard.model.positions import Positions
from studyboard.model.script import BeatKey, Part, word_spans
from studyboard.model.study import Study, start_board
from studyboard.reading.findings import Finding, ReadThrough, Topic, Verdict, sorted_out
from studyboard.reading.mentions import Players, players_of, with_speaker
from studyboard.reading.pronouns import with_pronouns, with_sides_heard
from studyboard.reading.scene import Scene, Step, Talk, make_scene
from studyboard.reading.standing import Known
from studyboard.reading.statements import statements
from studyboard.reading.structure import branch_finding, think_finding
from studyboard.reading.telling import Telling
from studyboard.reading.words import claim_words
from studyboard.translation import as_written

#: How far along the lines a talk may refer to moves: half-moves back, half-moves ahead.
_BACK, _AHEAD = 8, 6
#: What is found by the words of a move and by its verb alike.
_OF_A_MOVE = frozenset({Topic.SQUARE, Topic.PIECE, Topic.COLOUR, Topic.MOVE})
#: How many nodes a greeting or a closing word may refer to.
_WHOLE_GAME = 500


@as_written()
def read_through(
    study: Study,
    *,
    progress: Callable[[float], None] | None = None,
    cancelled: Callable[[], bool] = never_cancelled,
) -> ReadThrough:
    """Check the whole script. progress gets shares of 0 to 1. Raises WorkCancelledError.

    A second or two for a talk of ten minutes, more where mates in three or four are claimed.
    """
    positions = Positions(study)
    players = _players(study)
    told = beats(study, running_order(study))
    found: list[Finding] = []
    for number, beat in enumerate(told):
        if cancelled():
            raise WorkCancelledError("The read-through was stopped.")
        found += _read_beat(study, positions, players, beat, deep=True, cancelled=cancelled)
        if progress is not None:
            progress((number + 1) / len(told))
    return sorted_out(found)


@as_written()
def read_line(study: Study, positions: Positions, key: BeatKey) -> ReadThrough:
    """Check one spoken line as it stands in the study: of a node, or of a part of the talk. Some 20 ms.

    Empty for a line that is not told: hidden, silent, or of a node that is gone.
    """
    beat = next((beat for beat in beats(study, running_order(study)) if beat.key == key), None)
    if beat is None:
        beat = _beat_alone(study, key)
    if beat is None:
        return ReadThrough()
    return sorted_out(_read_beat(study, positions, _players(study), beat, deep=False, cancelled=never_cancelled))


@as_written()
def judge(board: chess.Board | str, text: str, *, deep: bool = True) -> ReadThrough:
    """Check any text beside a position (or its FEN). Raises ValueError where the FEN describes none."""
    position = chess.Board(board) if isinstance(board, str) else board
    scene = make_scene(text, position, [(Step(position, 0), None)], talk=Talk())
    found = statements(scene, deep=deep) + Telling(scene).findings()
    return sorted_out(_in_order(found))


def _read_beat(
    study: Study,
    positions: Positions,
    players: Players,
    beat: Beat,
    *,
    deep: bool,
    cancelled: Callable[[], bool],
) -> list[Finding]:
    found: list[Finding] = []
    if beat.spoken:
        scene = scene_of(study, positions, players, beat)
        near, earlier = _around(study, positions, beat)
        found += statements(scene, deep=deep, cancelled=cancelled) + Telling(scene, near, earlier).findings()
        branch = branch_finding(study, positions, beat, scene)
        found += [] if branch is None else [branch]
    if beat.think > 0 and deep:
        think = think_finding(study, positions, beat, cancelled=cancelled)
        found += [] if think is None else [think]
    return _in_order(found)


def _players(study: Study) -> Players:
    """Who had which side, and which of them speaks."""
    opening = f"{study.line(Part.GREETING).spoken.text} {study.nodes[study.root].spoken.text}"
    players = players_of(study.headers)
    if players.words:
        lines = [node.spoken.text for node in study.nodes.values() if node.spoken.text]
        lines += [study.line(part).spoken.text for part in Part]
        players = with_pronouns(players, lines, _acting(study))
    words = claim_words()
    return with_sides_heard(with_speaker(players, opening, words), _acting(study), words.names)


def _acting(study: Study) -> Iterator[tuple[str, chess.Color]]:
    """The words at which moves are played, with the side that plays them."""
    nodes = study.nodes
    movers = {study.root: not start_board(study.headers).turn}
    for node in study.branch(study.root):
        if node.parent is not None:
            movers[node.id] = not movers[node.parent]
    for node in nodes.values():
        spans = word_spans(node.spoken.text) if node.spoken.cues else []
        for cue in node.spoken.cues:
            if cue.node is not None and cue.word < len(spans) and cue.node in movers:
                start, end = spans[cue.word]
                yield node.spoken.text[start:end], movers[cue.node]


def scene_of(study: Study, positions: Positions, players: Players, beat: Beat) -> Scene:
    """The line of a beat with the board beside it, as the timeline shows it."""
    nodes = study.nodes
    cues = _cues(study, positions, beat)
    steps: list[tuple[Step, int | None]] = []
    told = [visit for visit in beat.visits if visit.kind is not VisitKind.BACK]
    first = told[0].node if told else beat.visits[0].node
    before: list[int] = []
    if beat.visits[0].kind is not VisitKind.LINE:
        # The line may cue moves that were played before a side-line, and tell them only now.
        path = study.path(first)
        cued_before = [at for at, node in enumerate(path[:-1]) if node in cues]
        before = path[min(cued_before) : -1] if cued_before else []
        first = before[0] if before else first
    parent = nodes[first].parent
    start = positions.board(first if parent is None or beat.visits[0].kind is VisitKind.LINE else parent)
    # Returns at the very end of the talk come after the line.
    shown = beat.visits[: max((n for n, v in enumerate(beat.visits) if v.kind is not VisitKind.BACK), default=0) + 1]
    for visit in (*(Visit(node, VisitKind.TELL, beat.depth) for node in before), *shown):
        node = nodes[visit.node]
        board = positions.board(visit.node)
        if visit.kind is not VisitKind.TELL or node.parent is None or node.move is None:
            if visit.kind is not VisitKind.BACK or visit.node != nodes[first].parent:
                steps.append((Step(board, 0, visit.node), None))
            continue
        step = Step(board, 0, visit.node, node.move, positions.board(node.parent))
        steps.append((step, cues.get(visit.node)))
    return make_scene(
        beat.spoken.text,
        start,
        steps,
        key=beat.key,
        players=players,
        depth=beat.depth,
        talk=_talk(study, positions, beat, first),
    )


def _cues(study: Study, positions: Positions, beat: Beat) -> dict[int, int]:
    """The word of each move that the line plays.

    Where one move is cued twice, the first time may be meant for the same move of the other side, played before:
    "castles, castles".
    """
    found: dict[int, int] = {}
    for cue in sorted((c for c in beat.spoken.cues if c.node is not None), key=lambda cue: -cue.word):
        assert cue.node is not None
        if cue.node not in found:
            found[cue.node] = cue.word
            continue
        san = positions.san(cue.node).rstrip("+#")
        path = study.path(cue.node)
        same = [node for node in path[:-1] if node not in found and positions.san(node).rstrip("+#") == san]
        if same:
            found[same[-1]] = cue.word
    return found


def _talk(study: Study, positions: Positions, beat: Beat, first: int) -> Talk:
    *_, last = study.main_line()
    plies = study.ply(last)
    board = start_board(study.headers)
    moves = (plies + (0 if board.turn else 1) + 1) // 2
    path = study.path(first)
    history = tuple(move for node in path if node != first and (move := study.nodes[node].move) is not None)
    whole = board == chess.Board() or board.chess960
    return Talk(
        moves=moves,
        result=_result(study, positions.board(last)),
        part=beat.key.value if isinstance(beat.key, Part) else "",
        ends_game=beat.node == last,
        history=history,
        first=board if whole else None,
        think=beat.think,
        root=board,
        game=tuple(move for node in study.main_line() if (move := study.nodes[node].move) is not None and move),
    )


def _result(study: Study, last: chess.Board) -> str:
    """The Result tag; where it says nothing, what the last position of the main line makes of it."""
    told = study.headers.get("Result", "*")
    return last.result() if told == "*" else told


def _around(study: Study, positions: Positions, beat: Beat) -> tuple[list[Known], list[chess.Board]]:
    """Moves of the tree near a beat, and the positions before it."""
    nodes = study.nodes
    path = study.path(beat.node)
    centre = path[-_BACK:]
    wanted: dict[int, None] = {}
    for node in (*centre, *(visit.node for visit in beat.visits)):
        wanted.setdefault(node)
        for child in nodes[node].children:
            wanted.setdefault(child)
            at = child
            for _ in range(2):
                if not nodes[at].children:
                    break
                at = nodes[at].children[0]
                wanted.setdefault(at)
    if isinstance(beat.key, Part):
        # Greeting and closing look at the whole game.
        wanted |= dict.fromkeys(list(nodes)[:_WHOLE_GAME])
    at = beat.node
    for _ in range(_AHEAD):
        if not nodes[at].children:
            break
        for child in nodes[at].children:
            wanted.setdefault(child)
        at = nodes[at].children[0]
    near: list[Known] = []
    for node in wanted:
        move, parent = nodes[node].move, nodes[node].parent
        if move is not None and parent is not None and move:
            near.append(Known(positions.board(parent), move))
    return near, [positions.board(node) for node in reversed(path)]


def _beat_alone(study: Study, key: BeatKey) -> Beat | None:
    """The beat of a line that no running order tells: a hidden side-line's."""
    if isinstance(key, Part) or key not in study.nodes:
        return None
    node = study.nodes[key]
    return Beat(key, (Visit(key, VisitKind.TELL, 1),), node.spoken, node.intended, node.think, 1)


def _in_order(found: Iterable[Finding]) -> list[Finding]:
    """In the order of the words; of two findings over the same words about the same thing, the first one."""
    kept: list[Finding] = []
    for finding in sorted(found, key=lambda f: (f.start, f.end)):
        if any(_same(finding, other) for other in kept):
            continue
        double = next((n for n, other in enumerate(kept) if _told_twice(finding, other)), None)
        if double is None:
            kept.append(finding)
        elif kept[double].fix is None and finding.fix is not None:
            kept[double] = finding
    return kept


def _told_twice(one: Finding, other: Finding) -> bool:
    """Two queries of one kind over the same words."""
    both = one.verdict is other.verdict is Verdict.CONTRADICTED and one.kind is other.kind
    return both and one.kind in _OF_A_MOVE and one.start < other.end and other.start < one.end


def _same(one: Finding, other: Finding) -> bool:
    return one.kind is other.kind and one.verdict is other.verdict and one.start == other.start and one.end == other.end
