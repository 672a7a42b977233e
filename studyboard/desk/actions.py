"""The table of actions: menus, shortcuts and their help are all made from it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from studyboard.desk.session import Session
from studyboard.translation import tr_later


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


def _can_delete(session: Session) -> bool:
    return bool(session.chosen) or _off_root(session)


def _can_tell_elsewhere(session: Session) -> bool:
    return bool(session.chosen) or _in_side_line(session)


def _no_moves(session: Session) -> bool:
    return not session.study.node(session.study.root).children


def _has_marks(session: Session) -> bool:
    return bool(session.study.node(session.node).marks)


def _goes_on(session: Session) -> bool:
    return bool(session.study.node(session.node).children)


MENUS: tuple[str, ...] = (
    tr_later("&Study"),
    tr_later("&Edit"),
    tr_later("&Lines"),
    tr_later("S&cript"),
    tr_later("&Words"),
    tr_later("&Board"),
    tr_later("&Go"),
    tr_later("&Talk"),
    tr_later("&View"),
    tr_later("&Help"),
)

ACTIONS: tuple[ActionSpec, ...] = (
    ActionSpec(
        "new_study", "&Study", tr_later("&New study"), ("Ctrl+N",), tr_later("Begin with the start position."), "plus"
    ),
    ActionSpec(
        "new_from_position",
        "&Study",
        tr_later("New from a &position…"),
        (),
        tr_later("Set up the position to begin with, or paste it as FEN."),
    ),
    ActionSpec(
        "change_start",
        "&Study",
        tr_later("Change the start posi&tion…"),
        (),
        tr_later("As long as no move stands on the tree."),
        when=_no_moves,
    ),
    ActionSpec(
        "open_file", "&Study", tr_later("&Open…"), ("Ctrl+O",), tr_later("Open a study, or games in PGN."), "open"
    ),
    ActionSpec(
        "save_as",
        "&Study",
        tr_later("Save &as…"),
        ("Ctrl+Shift+S",),
        tr_later("Go on with a copy under another name."),
        apart=True,
    ),
    ActionSpec(
        "edit_headers",
        "&Study",
        tr_later("&Headers…"),
        ("Ctrl+H",),
        tr_later("Players, event, date and the other tags."),
    ),
    ActionSpec(
        "deliver",
        "&Study",
        tr_later("&Deliver…"),
        ("Ctrl+4",),
        tr_later("Make video, captions, sheet, page and more."),
        "deliver",
    ),
    ActionSpec(
        "close_window", "&Study", tr_later("&Quit"), ("Ctrl+Q",), tr_later("Everything is stored already."), apart=True
    ),
    ActionSpec("undo", "&Edit", tr_later("&Undo"), ("Ctrl+Z",), tr_later("Take the last change back."), "undo"),
    ActionSpec(
        "redo",
        "&Edit",
        tr_later("&Redo"),
        ("Ctrl+Shift+Z", "Ctrl+Y"),
        tr_later("Do again what was taken back."),
        "redo",
    ),
    ActionSpec(
        "show_history",
        "&Edit",
        tr_later("&History…"),
        ("Ctrl+Alt+Z",),
        tr_later("Every edit in words, to go back to."),
    ),
    ActionSpec(
        "cut_branch",
        "&Edit",
        tr_later("Cu&t branch"),
        ("Ctrl+Shift+X",),
        tr_later("Take this move and all after it away, to paste it elsewhere."),
        when=_off_root,
        apart=True,
    ),
    ActionSpec(
        "copy_branch",
        "&Edit",
        tr_later("&Copy branch"),
        ("Ctrl+Shift+C",),
        tr_later("Copy this move and all after it."),
        when=_off_root,
    ),
    ActionSpec(
        "paste_branch",
        "&Edit",
        tr_later("&Paste branch"),
        ("Ctrl+Shift+V",),
        tr_later("Put the copied branch after this move."),
    ),
    ActionSpec(
        "delete_branch",
        "&Edit",
        tr_later("&Delete branch"),
        ("Ctrl+Delete",),
        tr_later("Delete this move and all after it, or every chosen one."),
        when=_can_delete,
    ),
    ActionSpec(
        "choose_line",
        "&Edit",
        tr_later("Choose the whol&e line"),
        ("Ctrl+A",),
        tr_later(
            "Every row of this line; once more, with all that branches off it. Shift and arrows choose single rows."
        ),
        apart=True,
    ),
    ActionSpec(
        "copy_words",
        "&Edit",
        tr_later("Copy &words and moves"),
        ("Ctrl+C",),
        tr_later("What is said at the chosen rows, with their moves, as text."),
    ),
    ActionSpec(
        "copy_rows_pgn",
        "&Edit",
        tr_later("Copy &line as PGN"),
        ("Ctrl+Alt+C",),
        tr_later("The way to this move and all after it; of several chosen rows, only those."),
    ),
    ActionSpec(
        "copy_fen",
        "&Edit",
        tr_later("Copy position as &FEN"),
        ("Ctrl+Alt+F",),
        tr_later("The position on the board, or those of all chosen rows, as text."),
    ),
    ActionSpec(
        "copy_picture",
        "&Edit",
        tr_later("Copy p&icture of the board"),
        ("Ctrl+Alt+P",),
        tr_later("The board with its marks, or those of all chosen rows below each other."),
    ),
    ActionSpec("copy_pgn", "&Edit", tr_later("Copy game as P&GN"), (), tr_later("The whole annotated game as text.")),
    ActionSpec(
        "find",
        "&Edit",
        tr_later("Find in the l&anes…"),
        ("Ctrl+F",),
        tr_later("A move, words of the script, or a position."),
        "search",
        apart=True,
    ),
    ActionSpec("find_next", "&Edit", tr_later("Find &next"), ("F3",), tr_later("The next match of what was sought.")),
    ActionSpec(
        "find_previous",
        "&Edit",
        tr_later("Find pre&vious"),
        ("Shift+F3",),
        tr_later("The match before."),
    ),
    ActionSpec(
        "find_position",
        "&Edit",
        tr_later("Find this p&osition elsewhere"),
        ("Ctrl+Shift+F",),
        tr_later("Every move of the tree that leads to the position on the board."),
    ),
    ActionSpec(
        "promote",
        "&Lines",
        tr_later("&Promote side-line"),
        ("Ctrl+Shift+Up",),
        tr_later("This side-line changes places with the line before it."),
        when=_in_side_line,
    ),
    ActionSpec(
        "demote",
        "&Lines",
        tr_later("&Demote line"),
        ("Ctrl+Shift+Down",),
        tr_later("This line changes places with the side-line after it."),
        when=_has_sibling_below,
    ),
    ActionSpec(
        "make_main_line",
        "&Lines",
        tr_later("Make this the &main line"),
        (),
        tr_later("Every move up to here becomes a main move."),
        when=_in_side_line,
    ),
    ActionSpec(
        "name_side_line",
        "&Lines",
        tr_later("&Name side-line…"),
        (),
        tr_later("A heading for its lane."),
        when=_in_side_line,
    ),
    ActionSpec(
        "tell_after",
        "&Lines",
        tr_later("Tell it &after the main move"),
        (),
        tr_later("The usual place of a side-line."),
        when=_can_tell_elsewhere,
        apart=True,
    ),
    ActionSpec(
        "tell_before",
        "&Lines",
        tr_later("Tell it &before the main move"),
        (),
        tr_later("Side-line first."),
        when=_can_tell_elsewhere,
    ),
    ActionSpec(
        "tell_later",
        "&Lines",
        tr_later("Tell it &later…"),
        (),
        tr_later("Choose the move after which this side-line is told."),
        when=_in_side_line,
    ),
    ActionSpec(
        "hide_side_line",
        "&Lines",
        tr_later("&Hide it from the talk"),
        (),
        tr_later("Printed, not told."),
        when=_can_tell_elsewhere,
    ),
    ActionSpec(
        "edit_line", "S&cript", tr_later("&Spoken line"), ("Ctrl+L",), tr_later("Write what is said here."), "pencil"
    ),
    ActionSpec(
        "edit_note", "S&cript", tr_later("&Note for print"), ("Ctrl+Shift+L",), tr_later("Write what is printed here.")
    ),
    ActionSpec(
        "insert_cue",
        "S&cript",
        tr_later("Insert &cue"),
        ("Ctrl+K",),
        tr_later("Play a move at the word where the cursor is."),
    ),
    ActionSpec(
        "type_cue",
        "S&cript",
        tr_later("T&ype the next move"),
        ("Ctrl+J",),
        tr_later("It is played at the word where the cursor is."),
    ),
    ActionSpec(
        "cue_back",
        "S&cript",
        tr_later("Cue one word &back"),
        ("Alt+Shift+Left",),
        tr_later("The cue at the cursor comes one word earlier."),
    ),
    ActionSpec(
        "cue_on",
        "S&cript",
        tr_later("Cue one &word on"),
        ("Alt+Shift+Right",),
        tr_later("The cue at the cursor comes one word later."),
    ),
    ActionSpec(
        "played_cues",
        "S&cript",
        tr_later("&Played moves become cues"),
        (),
        tr_later("While the cursor is in the line, the next move on the board is played at its word."),
        checkable=True,
    ),
    ActionSpec(
        "clear_line",
        "S&cript",
        tr_later("Clear the spoken line"),
        ("Ctrl+Shift+Delete",),
        tr_later("Nothing is said any more at this move, or at every chosen one."),
    ),
    ActionSpec(
        "note_to_line",
        "S&cript",
        tr_later("Turn this note into the spoken line"),
        (),
        tr_later("Where nothing is said here yet; also for every chosen row."),
        apart=True,
    ),
    ActionSpec(
        "notes_to_lines",
        "S&cript",
        tr_later("Turn &all notes into spoken lines"),
        (),
        tr_later("Where nothing is said yet."),
    ),
    ActionSpec(
        "read_through",
        "S&cript",
        tr_later("&Read-through…"),
        ("F7",),
        tr_later("Every statement of the script that the board contradicts."),
        "check",
        apart=True,
    ),
    ActionSpec(
        "next_query",
        "S&cript",
        tr_later("Ne&xt query"),
        ("F6",),
        tr_later("The next statement that the board contradicts."),
    ),
    ActionSpec(
        "fix_query", "S&cript", tr_later("&Fix as the query says"), ("Ctrl+.",), tr_later("Where it is certain how.")
    ),
    ActionSpec(
        "leave_query",
        "S&cript",
        tr_later("Lea&ve the query"),
        ("Ctrl+,",),
        tr_later("It is not put again; undo brings it back."),
    ),
    ActionSpec(
        "add_said_move",
        "S&cript",
        tr_later("Add the &move that is said"),
        ("Ctrl+Return",),
        tr_later("A move in the line that is not on the tree yet."),
    ),
    ActionSpec(
        "edit_greeting",
        "S&cript",
        tr_later("&Greeting"),
        (),
        tr_later("What is said before the first move."),
        apart=True,
    ),
    ActionSpec("edit_closing", "S&cript", tr_later("C&losing"), (), tr_later("What is said after the last move.")),
    ActionSpec("edit_thanks", "S&cript", tr_later("&Thanks"), (), tr_later("What is said at the very end.")),
    ActionSpec(
        "set_slot",
        "S&cript",
        tr_later("Set the sl&ot…"),
        ("Ctrl+T",),
        tr_later("The length that the talk should have."),
        apart=True,
    ),
    ActionSpec(
        "fit_to_slot",
        "S&cript",
        tr_later("Fit the talk to the slot"),
        ("Ctrl+Shift+T",),
        tr_later("Over or under is spread over the beats that are not locked."),
    ),
    ActionSpec(
        "suggest_cuts",
        "S&cript",
        tr_later("Suggested cuts…"),
        (),
        tr_later("Side-lines to leave out, by their seconds and by what depends on them."),
    ),
    ActionSpec(
        "lock_length",
        "S&cript",
        tr_later("Lock or unlock this length"),
        ("Ctrl+Shift+K",),
        tr_later("A locked beat keeps its length when the talk is fitted; also for every chosen row."),
    ),
    ActionSpec("unlock_lengths", "S&cript", tr_later("Unlock every length"), (), tr_later("All may be fitted again.")),
    ActionSpec(
        "show_script",
        "&Words",
        tr_later("The script as one &text"),
        ("Ctrl+5",),
        tr_later("The whole talk from the greeting to the thanks, edited in place."),
    ),
    ActionSpec(
        "replace_in_script",
        "&Words",
        tr_later("&Find and replace in the script…"),
        ("Ctrl+R",),
        tr_later("In every spoken line, in greeting, closing and thanks, and in notes if you like."),
        "search",
    ),
    ActionSpec(
        "insert_snippet",
        "&Words",
        tr_later("&Insert snippet…"),
        ("Ctrl+Shift+I",),
        tr_later("A greeting, thanks or credits that recur, filled with the names of this game."),
        apart=True,
    ),
    ActionSpec(
        "edit_snippets",
        "&Words",
        tr_later("S&nippets…"),
        (),
        tr_later("Write the texts that recur, and choose the file with names."),
    ),
    ActionSpec(
        "spelling",
        "&Words",
        tr_later("&Spelling…"),
        (),
        tr_later("Whether it is checked, in which language, and which words are right besides."),
        apart=True,
    ),
    ActionSpec(
        "next_misspelling",
        "&Words",
        tr_later("Next &misspelt word"),
        ("Shift+F6",),
        tr_later("The next word of the script that no dictionary has."),
    ),
    ActionSpec(
        "pronounce",
        "&Words",
        tr_later("How a &word is said…"),
        ("Ctrl+Shift+H",),
        tr_later("The prompter shows it behind the word."),
        apart=True,
    ),
    ActionSpec(
        "flip", "&Board", tr_later("&Flip the board"), ("Ctrl+B",), tr_later("Show it from the other side."), "flip"
    ),
    ActionSpec(
        "board_only",
        "&Board",
        tr_later("Only the &board"),
        ("Shift+F11",),
        tr_later("The board alone on the whole screen; the keys go on working, Escape leaves."),
        checkable=True,
    ),
    ActionSpec(
        "legal_targets",
        "&Board",
        tr_later("Show &where a piece may go"),
        (),
        tr_later("As soon as it is picked up."),
        checkable=True,
    ),
    ActionSpec(
        "ask_piece",
        "&Board",
        tr_later("What this &piece does"),
        ("F2",),
        tr_later("What it attacks and guards, what attacks and guards it, and its safe squares."),
        apart=True,
    ),
    ActionSpec(
        "ask_move",
        "&Board",
        tr_later("What the &last move changed"),
        ("Shift+F2",),
        tr_later("Squares covered and given up, lines opened, and what hangs now."),
    ),
    ActionSpec(
        "describe_position",
        "&Board",
        tr_later("&Describe the position"),
        ("Ctrl+D",),
        tr_later("Every piece, whose move it is, and the marks, told in words and by a screen reader."),
    ),
    ActionSpec(
        "further_facts",
        "&Board",
        tr_later("Tell f&urther facts"),
        ("Ctrl+Shift+B",),
        tr_later("Forks, lines, guards, pawns and castling beside the board, besides what hangs and what is pinned."),
        checkable=True,
    ),
    ActionSpec(
        "marking",
        "&Board",
        tr_later("&Marking"),
        ("Ctrl+M",),
        tr_later("Draw marks on the board."),
        apart=True,
        checkable=True,
    ),
    ActionSpec(
        "number_marks",
        "&Board",
        tr_later("&Number the marks"),
        (),
        tr_later("1, 2, 3 in the order in which they were drawn; once more takes the numbers off."),
        when=_has_marks,
    ),
    ActionSpec(
        "copy_marks_on",
        "&Board",
        tr_later("&Copy marks to the next move"),
        ("Ctrl+Shift+M",),
        tr_later("They are drawn there too, and the board goes there."),
        when=_has_marks,
    ),
    ActionSpec(
        "copy_marks_along",
        "&Board",
        tr_later("Copy marks to &all moves after this"),
        (),
        tr_later("To the end of this line."),
        when=_has_marks,
    ),
    ActionSpec(
        "copy_marks_here",
        "&Board",
        tr_later("Copy marks from the move befor&e"),
        ("Ctrl+Alt+M",),
        tr_later("They are drawn here too."),
        when=_off_root,
    ),
    ActionSpec(
        "wipe_marks",
        "&Board",
        tr_later("Wipe all ma&rks"),
        (),
        tr_later("Of this position; undo brings them back."),
        when=_has_marks,
    ),
    ActionSpec(
        "forward",
        "&Go",
        tr_later("&Forward"),
        ("Alt+Down",),
        tr_later("The main move after this one."),
        "forward",
        _goes_on,
    ),
    ActionSpec("back", "&Go", tr_later("&Back"), ("Alt+Up",), tr_later("The move before this one."), "back", _off_root),
    ActionSpec(
        "into_side_line",
        "&Go",
        tr_later("&Into the side-line"),
        ("Alt+Right",),
        tr_later("The line beside this move."),
        "into-side-line",
    ),
    ActionSpec(
        "out_of_side_line",
        "&Go",
        tr_later("&Out of it"),
        ("Alt+Left",),
        tr_later("Back towards the main line."),
        "out-of-side-line",
    ),
    ActionSpec(
        "to_start", "&Go", tr_later("To the &start"), ("Alt+Home",), tr_later("The start position."), apart=True
    ),
    ActionSpec(
        "to_end", "&Go", tr_later("To the &end of the line"), ("Alt+End",), tr_later("The last move of this line.")
    ),
    ActionSpec(
        "next_beat", "&Go", tr_later("&Next beat"), ("Alt+PgDown",), tr_later("The next stop of the talk."), apart=True
    ),
    ActionSpec(
        "previous_beat", "&Go", tr_later("&Previous beat"), ("Alt+PgUp",), tr_later("The stop before this one.")
    ),
    ActionSpec(
        "next_unwritten",
        "&Go",
        tr_later("Next &unwritten move"),
        ("Ctrl+U",),
        tr_later("Where the talk stops and nothing is said yet."),
        apart=True,
    ),
    ActionSpec(
        "previous_unwritten",
        "&Go",
        tr_later("Previous unwritten &move"),
        ("Ctrl+Shift+U",),
        tr_later("The one before."),
    ),
    ActionSpec(
        "next_think",
        "&Go",
        tr_later("Next &think pause"),
        ("Ctrl+P",),
        tr_later("Where the viewer is asked to find the next move."),
    ),
    ActionSpec(
        "previous_think", "&Go", tr_later("Previous think p&ause"), ("Ctrl+Shift+P",), tr_later("The one before.")
    ),
    ActionSpec(
        "write", "&Talk", tr_later("&Write"), ("Ctrl+1",), tr_later("Lanes, board and the spoken line."), "pencil"
    ),
    ActionSpec(
        "rehearse",
        "&Talk",
        tr_later("&Rehearse"),
        ("Ctrl+2",),
        tr_later("Click through the talk while reading it."),
        "prompter",
    ),
    ActionSpec(
        "record",
        "&Talk",
        tr_later("Re&cord"),
        ("Ctrl+3",),
        tr_later("Record the narration against the board."),
        "microphone",
    ),
    ActionSpec(
        "advance",
        "&Talk",
        tr_later("&Go on"),
        ("PgDown",),
        tr_later("Rehearsing: the next thing on the board."),
        apart=True,
    ),
    ActionSpec("retreat", "&Talk", tr_later("Go &back"), ("PgUp",), tr_later("Rehearsing: the thing before.")),
    ActionSpec(
        "come_back",
        "&Talk",
        tr_later("Come back to the &talk"),
        ("Backspace",),
        tr_later("From wherever you wandered off to."),
    ),
    ActionSpec(
        "start_or_stop",
        "&Talk",
        tr_later("&Start or stop"),
        ("Ctrl+Space",),
        tr_later("The rehearsal or the recording."),
    ),
    ActionSpec(
        "show_takes",
        "&Talk",
        tr_later("T&akes…"),
        ("Ctrl+6",),
        tr_later("Which take is heard for each beat; cut takes, say words again, take in sound files."),
        apart=True,
    ),
    ActionSpec(
        "hear_plan",
        "&Talk",
        tr_later("&Hear the plan…"),
        (),
        tr_later("A speech synthesiser of the system speaks it, and the board follows."),
    ),
    ActionSpec(
        "show_rehearsals",
        "&Talk",
        tr_later("Rehearsa&ls…"),
        (),
        tr_later("How long each beat took from time to time, and where it went wrong."),
    ),
    ActionSpec(
        "check_room",
        "&Talk",
        tr_later("Room chec&k…"),
        (),
        tr_later("Noise, hum and level of the microphone, told before the first take."),
    ),
    ActionSpec(
        "measure_delay",
        "&Talk",
        tr_later("Measure the &delay…"),
        (),
        tr_later("How late the microphone is, so that moves stand at their words."),
    ),
    ActionSpec(
        "follow_voice",
        "&Talk",
        tr_later("Let the board follow the &voice…"),
        ("Ctrl+Alt+V",),
        tr_later("A take is listened to, and its moves come at their words."),
    ),
    ActionSpec(
        "show_stage",
        "&View",
        tr_later("&Stage"),
        ("F9",),
        tr_later("A window with only the board, for capture."),
        "stage",
    ),
    ActionSpec(
        "show_prompter",
        "&View",
        tr_later("&Prompter"),
        ("F8",),
        tr_later("A window with only the lines to read."),
        "prompter",
    ),
    ActionSpec(
        "show_wave",
        "&View",
        tr_later("&Wave of the take"),
        ("Ctrl+Alt+W",),
        tr_later("Its sound below the ruler with beats, moves and words, to go through by hand."),
        checkable=True,
    ),
    ActionSpec("full_screen", "&View", tr_later("F&ull screen"), ("F11",), tr_later("The desk on the whole screen.")),
    ActionSpec(
        "fold_all",
        "&View",
        tr_later("F&old all side-lines"),
        ("Ctrl+G",),
        tr_later("All but those on the way to this move; minus in the lanes folds one."),
        "fold",
        apart=True,
    ),
    ActionSpec(
        "unfold_all",
        "&View",
        tr_later("U&nfold all side-lines"),
        ("Ctrl+Shift+G",),
        tr_later("Every lane is shown; plus in the lanes unfolds one."),
        "unfold",
    ),
    ActionSpec(
        "larger_text",
        "&View",
        tr_later("&Larger text"),
        ("Ctrl+=", "Ctrl++"),
        tr_later("For the whole desk."),
        apart=True,
    ),
    ActionSpec("smaller_text", "&View", tr_later("S&maller text"), ("Ctrl+-",), tr_later("For the whole desk.")),
    ActionSpec(
        "reduce_motion", "&View", tr_later("&Reduce motion"), (), tr_later("Nothing slides or sweeps."), checkable=True
    ),
    ActionSpec(
        "find_action",
        "&Help",
        tr_later("&Find an action…"),
        ("F4",),
        tr_later("Type what you want to do."),
        "search",
    ),
    ActionSpec(
        "what_is_this",
        "&Help",
        tr_later("&What is this?"),
        ("Shift+F1",),
        tr_later("Point at something of the desk, or choose an action, and it is explained."),
    ),
    ActionSpec("quick_start", "&Help", tr_later("&Quick start"), ("F1",), tr_later("The day in seven steps.")),
    ActionSpec("shortcuts", "&Help", tr_later("&Keys"), ("Ctrl+F1",), tr_later("Every action with its keys.")),
    ActionSpec(
        "check_setup", "&Help", tr_later("&Check the set-up"), (), tr_later("What is installed and what is missing.")
    ),
    ActionSpec("about", "&Help", tr_later("&About Studyboard"), (), tr_later("Version, licence and cautions.")),
)
