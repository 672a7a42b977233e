"""The table of actions: menus, shortcuts and their help are all made from it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from studyboard.desk.session import Session


@dataclass(frozen=True, slots=True)
class ActionSpec:
    """One thing that the user can do.

    name: the method of Commands that does it
    menu: the menu that lists it
    text: its label, with & before the letter that chooses it
    keys: shortcuts, the first one is shown
    help: one sentence for the status line and the list of shortcuts
    icon: name of an icon under resources/icons, or empty
    when: whether it makes sense now
    apart: True where a line divides it from the action above
    checkable: True for an action that is on or off
    """

    name: str
    menu: str
    text: str
    keys: tuple[str, ...] = ()
    help: str = ""
    icon: str = ""
    when: Callable[[Session], bool] | None = None
    apart: bool = False
    checkable: bool = False


def _off_root(session: Session) -> bool:
    return session.node != session.study.root


def _in_side_line(session: Session) -> bool:
    return not session.study.on_main_line(session.node)


def _has_sibling_below(session: Session) -> bool:
    parent = session.study.node(session.node).parent
    return parent is not None and session.study.node(parent).children[-1] != session.node


def _goes_on(session: Session) -> bool:
    return bool(session.study.node(session.node).children)


MENUS: tuple[str, ...] = ("&Study", "&Edit", "&Lines", "S&cript", "&Go", "&Talk", "&View", "&Help")

ACTIONS: tuple[ActionSpec, ...] = (
    ActionSpec("new_study", "&Study", "&New study", ("Ctrl+N",), "Begin with the start position.", "plus"),
    ActionSpec("new_from_position", "&Study", "New from a &position…", (), "Begin with a position given as FEN."),
    ActionSpec("open_file", "&Study", "&Open…", ("Ctrl+O",), "Open a study, or games in PGN.", "open"),
    ActionSpec(
        "save_as", "&Study", "Save &as…", ("Ctrl+Shift+S",), "Go on with a copy under another name.", apart=True
    ),
    ActionSpec("edit_headers", "&Study", "&Headers…", ("Ctrl+H",), "Players, event, date and the other tags."),
    ActionSpec(
        "deliver", "&Study", "&Deliver…", ("Ctrl+4",), "Write captions, the sheet and the annotated game.", "deliver"
    ),
    ActionSpec("close_window", "&Study", "&Quit", ("Ctrl+Q",), "Everything is stored already.", apart=True),
    ActionSpec("undo", "&Edit", "&Undo", ("Ctrl+Z",), "Take the last change back.", "undo"),
    ActionSpec(
        "redo",
        "&Edit",
        "&Redo",
        ("Ctrl+Shift+Z", "Ctrl+Y"),
        "Do again what was taken back.",
        "redo",
    ),
    ActionSpec(
        "cut_branch",
        "&Edit",
        "Cu&t branch",
        ("Ctrl+Shift+X",),
        "Take this move and all after it away, to paste it elsewhere.",
        when=_off_root,
        apart=True,
    ),
    ActionSpec(
        "copy_branch", "&Edit", "&Copy branch", ("Ctrl+Shift+C",), "Copy this move and all after it.", when=_off_root
    ),
    ActionSpec("paste_branch", "&Edit", "&Paste branch", ("Ctrl+Shift+V",), "Put the copied branch after this move."),
    ActionSpec(
        "delete_branch",
        "&Edit",
        "&Delete branch",
        ("Ctrl+Delete",),
        "Delete this move and all after it.",
        when=_off_root,
    ),
    ActionSpec("copy_pgn", "&Edit", "Copy game as P&GN", (), "The whole annotated game as text.", apart=True),
    ActionSpec("copy_fen", "&Edit", "Copy position as &FEN", (), "The position on the board as text."),
    ActionSpec(
        "promote",
        "&Lines",
        "&Promote side-line",
        ("Ctrl+Shift+Up",),
        "This side-line changes places with the line before it.",
        when=_in_side_line,
    ),
    ActionSpec(
        "demote",
        "&Lines",
        "&Demote line",
        ("Ctrl+Shift+Down",),
        "This line changes places with the side-line after it.",
        when=_has_sibling_below,
    ),
    ActionSpec(
        "make_main_line",
        "&Lines",
        "Make this the &main line",
        (),
        "Every move up to here becomes a main move.",
        when=_in_side_line,
    ),
    ActionSpec("name_side_line", "&Lines", "&Name side-line…", (), "A heading for its lane.", when=_in_side_line),
    ActionSpec(
        "tell_after",
        "&Lines",
        "Tell it &after the main move",
        (),
        "The usual place of a side-line.",
        when=_in_side_line,
        apart=True,
    ),
    ActionSpec("tell_before", "&Lines", "Tell it &before the main move", (), "Side-line first.", when=_in_side_line),
    ActionSpec(
        "tell_later",
        "&Lines",
        "Tell it &later…",
        (),
        "Choose the move after which this side-line is told.",
        when=_in_side_line,
    ),
    ActionSpec("hide_side_line", "&Lines", "&Hide it from the talk", (), "Printed, not told.", when=_in_side_line),
    ActionSpec("edit_line", "S&cript", "&Spoken line", ("Ctrl+L",), "Write what is said here.", "pencil"),
    ActionSpec("edit_note", "S&cript", "&Note for print", ("Ctrl+Shift+L",), "Write what is printed here."),
    ActionSpec("insert_cue", "S&cript", "Insert &cue", ("Ctrl+K",), "Play a move at the word where the cursor is."),
    ActionSpec(
        "note_to_line",
        "S&cript",
        "Turn this note into the spoken line",
        (),
        "Where nothing is said here yet.",
        apart=True,
    ),
    ActionSpec("notes_to_lines", "S&cript", "Turn &all notes into spoken lines", (), "Where nothing is said yet."),
    ActionSpec(
        "read_through",
        "S&cript",
        "&Read-through…",
        ("F7",),
        "Every statement of the script that the board contradicts.",
        "check",
        apart=True,
    ),
    ActionSpec("next_query", "S&cript", "Ne&xt query", ("F6",), "The next statement that the board contradicts."),
    ActionSpec("fix_query", "S&cript", "&Fix as the query says", ("Ctrl+.",), "Where it is certain how."),
    ActionSpec("leave_query", "S&cript", "Lea&ve the query", ("Ctrl+,",), "It is not put again; undo brings it back."),
    ActionSpec(
        "add_said_move",
        "S&cript",
        "Add the &move that is said",
        ("Ctrl+Return",),
        "A move in the line that is not on the tree yet.",
    ),
    ActionSpec("edit_greeting", "S&cript", "&Greeting", (), "What is said before the first move.", apart=True),
    ActionSpec("edit_closing", "S&cript", "C&losing", (), "What is said after the last move."),
    ActionSpec("edit_thanks", "S&cript", "&Thanks", (), "What is said at the very end."),
    ActionSpec(
        "set_slot", "S&cript", "Set the sl&ot…", ("Ctrl+T",), "The length that the talk should have.", apart=True
    ),
    ActionSpec("forward", "&Go", "&Forward", ("Alt+Down",), "The main move after this one.", "forward", _goes_on),
    ActionSpec("back", "&Go", "&Back", ("Alt+Up",), "The move before this one.", "back", _off_root),
    ActionSpec(
        "into_side_line", "&Go", "&Into the side-line", ("Alt+Right",), "The line beside this move.", "into-side-line"
    ),
    ActionSpec(
        "out_of_side_line", "&Go", "&Out of it", ("Alt+Left",), "Back towards the main line.", "out-of-side-line"
    ),
    ActionSpec("to_start", "&Go", "To the &start", ("Alt+Home",), "The start position.", apart=True),
    ActionSpec("to_end", "&Go", "To the &end of the line", ("Alt+End",), "The last move of this line."),
    ActionSpec("next_beat", "&Go", "&Next beat", ("Alt+PgDown",), "The next stop of the talk.", apart=True),
    ActionSpec("previous_beat", "&Go", "&Previous beat", ("Alt+PgUp",), "The stop before this one."),
    ActionSpec("write", "&Talk", "&Write", ("Ctrl+1",), "Lanes, board and the spoken line.", "pencil"),
    ActionSpec("rehearse", "&Talk", "&Rehearse", ("Ctrl+2",), "Click through the talk while reading it.", "prompter"),
    ActionSpec("record", "&Talk", "Re&cord", ("Ctrl+3",), "Record the narration against the board.", "microphone"),
    ActionSpec("advance", "&Talk", "&Go on", ("PgDown",), "Rehearsing: the next thing on the board.", apart=True),
    ActionSpec("retreat", "&Talk", "Go &back", ("PgUp",), "Rehearsing: the thing before."),
    ActionSpec("come_back", "&Talk", "Come back to the &talk", ("Backspace",), "From wherever you wandered off to."),
    ActionSpec("start_or_stop", "&Talk", "&Start or stop", ("Ctrl+Space",), "The rehearsal or the recording."),
    ActionSpec("flip", "&View", "&Flip the board", ("Ctrl+B",), "Show it from the other side.", "flip"),
    ActionSpec("marking", "&View", "&Marking", ("Ctrl+M",), "Draw marks on the board.", checkable=True),
    ActionSpec("show_stage", "&View", "&Stage", ("F9",), "A window with only the board, for capture.", "stage"),
    ActionSpec("show_prompter", "&View", "&Prompter", ("F8",), "A window with only the lines to read.", "prompter"),
    ActionSpec("full_screen", "&View", "F&ull screen", ("F11",), "The desk on the whole screen."),
    ActionSpec("larger_text", "&View", "&Larger text", ("Ctrl+=", "Ctrl++"), "For the whole desk.", apart=True),
    ActionSpec("smaller_text", "&View", "S&maller text", ("Ctrl+-",), "For the whole desk."),
    ActionSpec("reduce_motion", "&View", "&Reduce motion", (), "Nothing slides or sweeps.", checkable=True),
    ActionSpec("quick_start", "&Help", "&Quick start", ("F1",), "The day in seven steps."),
    ActionSpec("shortcuts", "&Help", "&Keys", ("Ctrl+F1",), "Every action with its keys."),
    ActionSpec("check_setup", "&Help", "&Check the set-up", (), "What is installed and what is missing."),
    ActionSpec("about", "&Help", "&About Studyboard", (), "Version, licence and cautions."),
)
