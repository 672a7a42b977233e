<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de_DE">
<context>
    <name></name>
    <message>
        <source>&amp;Study</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Edit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Lines</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>S&amp;cript</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Go</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Talk</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;View</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Help</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;New study</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Begin with the start position.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>New from a &amp;position…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Begin with a position given as FEN.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Open…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a study, or games in PGN.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save &amp;as…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go on with a copy under another name.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Headers…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Players, event, date and the other tags.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Deliver…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write captions, the sheet and the annotated game.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Quit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Everything is stored already.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Undo</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take the last change back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Redo</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Do again what was taken back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cu&amp;t branch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take this move and all after it away, to paste it elsewhere.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Copy branch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Copy this move and all after it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Paste branch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put the copied branch after this move.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Delete branch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Delete this move and all after it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Copy game as P&amp;GN</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The whole annotated game as text.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Copy position as &amp;FEN</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The position on the board as text.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Promote side-line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This side-line changes places with the line before it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Demote line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This line changes places with the side-line after it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Make this the &amp;main line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every move up to here becomes a main move.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Name side-line…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A heading for its lane.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tell it &amp;after the main move</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The usual place of a side-line.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tell it &amp;before the main move</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Side-line first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tell it &amp;later…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose the move after which this side-line is told.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Hide it from the talk</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Printed, not told.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Spoken line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write what is said here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Note for print</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write what is printed here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Insert &amp;cue</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Play a move at the word where the cursor is.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn this note into the spoken line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where nothing is said here yet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn &amp;all notes into spoken lines</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where nothing is said yet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Read-through…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every statement of the script that the board contradicts.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ne&amp;xt query</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The next statement that the board contradicts.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Fix as the query says</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where it is certain how.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lea&amp;ve the query</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It is not put again; undo brings it back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add the &amp;move that is said</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A move in the line that is not on the tree yet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Greeting</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is said before the first move.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>C&amp;losing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is said after the last move.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Thanks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is said at the very end.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set the sl&amp;ot…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The length that the talk should have.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Forward</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The main move after this one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The move before this one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Into the side-line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The line beside this move.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Out of it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Back towards the main line.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>To the &amp;start</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The start position.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>To the &amp;end of the line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The last move of this line.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Next beat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The next stop of the talk.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Previous beat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The stop before this one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Write</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lanes, board and the spoken line.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Rehearse</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Click through the talk while reading it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Re&amp;cord</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Record the narration against the board.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Go on</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rehearsing: the next thing on the board.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go &amp;back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rehearsing: the thing before.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Come back to the &amp;talk</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From wherever you wandered off to.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Start or stop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The rehearsal or the recording.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Flip the board</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show it from the other side.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Marking</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Draw marks on the board.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Stage</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A window with only the board, for capture.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Prompter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A window with only the lines to read.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>F&amp;ull screen</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The desk on the whole screen.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Larger text</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>For the whole desk.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>S&amp;maller text</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Reduce motion</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing slides or sweeps.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Quick start</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The day in seven steps.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Keys</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every action with its keys.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Check the set-up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is installed and what is missing.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;About Studyboard</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Version, licence and cautions.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Move to play</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nf3, exd5, O-O or g1f3</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Move</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Board</source>
        <extracomment>Least side of the whole widget (px).</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is about to happen: drag from the piece to its aim.</source>
        <extracomment>What each kind of mark is for, in one sentence.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is aimed at: click its square.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The way of a piece: drag from stop to stop.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The square that matters: click it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What protects what: drag from the guard to what it guards.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Marks</source>
        <extracomment>Space between two buttons, and at the sides of a button&apos;s sample, name and key (px). A sample is drawn no higher than this, however large the text is (px).</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wipe all marks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wipe all marks of this position away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wipe all</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wipe</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Draw a {kind}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{purpose} Key {number} on the board.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{text}. {purpose}
Key {number} on the board; Escape ends it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Marking on</source>
        <extracomment>Free space around the board, in which the focus is shown (px).</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Marking off</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Move {move}. {ended}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Back to the start. {turn}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Back to move {move}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Booth</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Microphone</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the level means</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Record</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the booth is doing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Takes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Play</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Discard</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is nothing to tell yet: play a move or write a line first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take {next_take}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Discard a take</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take a take back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No microphone</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Speak to see the level. Record begins with the first beat on the board.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing was recorded.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name} ({length}) could not be put into the list; its sound is in the study and comes back when the study is opened again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{problem} {name} is kept: {length}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name} is kept: {length}. Play it, discard it, or record another.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Recording {time}. Space goes on, Ctrl+Space stops.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pause</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source> · cut off, kept to its last second</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>1 beat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{beats} beats</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Taken back: {label}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Done again: {label}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The branch goes away here when it is pasted elsewhere.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No branch has been cut or copied yet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>1 move</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{size} moves</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Deleted {label}, {moves}. Ctrl+Z brings it back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The game is on the clipboard.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Quick start</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keys</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set-up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>About Studyboard</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Name the side-line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Heading of its lane</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Name a side-line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is no later move after which it could be told.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tell the side-line later</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>After the move</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Change the running order</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>New from a position</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>FEN of the position</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A take is being recorded: stop it first (Ctrl+Space).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Studies and games (*.studyboard *.pgn);;All files (*)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save as</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Studies (*.studyboard)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Study sheet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>PDF to print: the game, its side-lines, notes and diagrams</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Captions</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>WebVTT and SRT, two lines at a time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Annotated game</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>PGN with the spoken lines as comments</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Still</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>PNG of the first think pause, else of the final position</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The delivery failed: {reason}. Nothing was changed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Deliver</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A4 paper</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Letter paper</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Paper of the sheet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Folder to write into</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Into</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Progress of the delivery</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Names, photographs and sponsors&apos; material are the publisher&apos;s responsibility.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What was delivered</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open the folder</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Close</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing is ticked.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stopping …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{stem} delivery</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Deliver into</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing was made.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hangs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pinned</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Check</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>End</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Facts of the position</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hanging is judged by the captures on that square alone. Point at a square&apos;s name to see it on the board.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Games in {name}</source>
        <extracomment>Widths of the columns, in heights of a line of text; the event takes what is left.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Find by player, event, result …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Find games</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Games</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open this game</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{total:,} games</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{shown:,} of {total:,} games</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Headers</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The tags of the game, as PGN has them. Empty values are left out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tags of the game</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tag</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Value</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add a tag</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a game</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drop a PGN file on the desk or choose Study › Open. A study is made of it and stored at once.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Place it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fill in players, event and date under Study › Headers; they head the sheet and the captions.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add side-lines</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Play another move on the board: it becomes a side-line in a lane of its own.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write</source>
        <extracomment>The stages of the day: name of the action, label.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Each move has its spoken line on the right. Ctrl+K puts a cue at the cursor: the word at which a move is played. Greeting, closing and thanks are under Script.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Time it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set the slot with Ctrl+T. The ruler below shows the talk to scale and how much it is over or under.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rehearse and record</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ctrl+2 and Ctrl+3. Space begins and goes on, Ctrl+Space stops; move pieces to wander off, Backspace comes back. Takes are stored second by second while you speak.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ctrl+4 writes captions, the study sheet and the annotated game, all from the same timeline.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A position-study board with a timed script.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Free software under the GNU General Public License, version 3 or later. It comes without any warranty.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&lt;b&gt;Fair play.&lt;/b&gt; Engine and archive help is for finished games: the event&apos;s and the arbiter&apos;s rules come first, and live rounds may have a broadcast delay.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&lt;b&gt;Rights.&lt;/b&gt; Names, photographs and sponsors&apos; material are the publisher&apos;s responsibility.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lanes</source>
        <extracomment>What is kept in view beside the current row (px). How far the pointer moves before a side-line is dragged (px).</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing is said here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fold side-lines</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show side-lines</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>drag to reorder</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Main line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing is said here yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>think {seconds}</source>
        <extracomment>How long a time bar is in a cell of at least that width, and how high, in heights of a line of text. The height of a line of text for which signs, discs and knobs are drawn (px); they grow and shrink with it. Radius of the disc of a move on its rail, of a knob, and the most of them that a rail has room for (px).</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>think</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Greeting</source>
        <extracomment>As much of a spoken line as a row could ever show (characters). Glyphs that print for numeric annotation glyphs usually has; the numbers are those of the PGN standard (1994), section 10, and of its common extension (22 and up), from memory. What stands in for glyphs that a font lacks.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Closing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Thanks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{seconds} seconds</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{text}, {over} over</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{estimated:.1f} s estimated</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{intended:g} s intended, {estimated:.1f} s estimated</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Side-line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not told</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>told first</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>told after {move}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Microphone level</source>
        <extracomment>Peaks above this are about to be cut off, RMS below the other is lost in room noise (dBFS): common practice. Size of the figures of the scale, in sizes of controls.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>too loud: the sound is cut off</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>very loud</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>too quiet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>good</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write the spoken line</source>
        <extracomment>How long typing must rest before it is stored (ms).</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write a note</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Length of the line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What do you say here?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Intended length of this beat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>as estimated</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Think pause after the line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>none</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How long this beat should take. Empty: as long as the words take at your pace.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Silence after the line in which the viewer is asked to find the move.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cue</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put a cue at the cursor: a move is played, or a mark appears, at the word that follows.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every move and mark of this beat has its cue already.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set the intended length</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set the think pause</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a glyph</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No move or mark here</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{part}: said {when}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Note for print</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Spoken line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Note for print •</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Note for print, written</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Note for print, empty</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>move not there</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>mark not there</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the start</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Think pause</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>before the first move</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>after the last move</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at the very end</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>1 word</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{words} words</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>, {over:.1f} s too short</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>set to {seconds} s{over}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>think {seconds} s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Note before the move</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Before the move: what leads up to it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Note</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What should stand in print, not in the talk?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The move</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The position</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Before</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Glyphs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name}: annotation glyph</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name}, as a numeric annotation glyph of the PGN standard</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name}: no sign</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name}, in seconds</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cue: {words}</source>
        <extracomment>Distance of lines (% of the usual).</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Recent</source>
        <extracomment>The desk is on the screen before it begins to read the script (ms).</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>“{name}” is what is on the desk.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Going on in “{name}”.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Prompter</source>
        <extracomment>The next line is shown where the present one stays at least that large (sizes of controls). How many words of the next line are shown, with room and without. A prompter lower than so many lines of text keeps everything but the line small. How often it is fitted at most where fitting changes its size. At both ends of a tag, so that its ground reaches beyond its letters.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{title} – Studyboard</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rehearsed in {length}{against}. The seconds of each beat are kept beside the plan.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What could not be read</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Theme</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>As the &amp;system</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Light</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Dark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Board colours</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lan&amp;guage</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The desk speaks the language that was chosen when it is started next.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Notice</source>
        <extracomment>How long a notice is shown that needs no answer (ms).</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show all</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Got it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The last recording was cut off. {names} was kept up to its last second; it is in the booth.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>line {line}, column {column}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One place of the game could not be read ({where}): {message}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count} places of the game could not be read; the first at {where}: {message}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>“{name}” lies where nothing can be written, so it is open to be read only. Study › Save as goes on with a copy.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The folder for new studies cannot be made: {reason}. Set the environment variable STUDYBOARD_STUDIES to another one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>“{name}” cannot be opened: {reason}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>“{name}” cannot be read: {reason}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>“{name}” holds no game: a PGN file has tags in square brackets, then moves.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Promote the pawn to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Promote to {piece}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Elapsed and planned time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ahead of or behind the plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Time of this beat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the talk is</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the next press does</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The line after that</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing to tell yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write a spoken line, then come back to rehearse it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{label} · side-line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>think pause, {seconds:.0f} s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Off the running order: Backspace comes back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Space begins</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Space begins the take</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{what} here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Space ends the run-through.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Next on the board: {what}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>nothing moves; {value}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>back to {label}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>planned {distance}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>on time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>this beat {seconds:.0f} of {planned:.0f} s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The line to say now</source>
        <extracomment>Largest and smallest type (times the size of controls), and the step between two sizes that are tried. Where the words that are due stand in a line that moves (share of the height), and how long it takes to move (ms). Space around the text (px).</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The read-through has no query.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{label} is on the tree now. Ctrl+Z takes it off again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Read-through</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Queries</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Read again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Leave it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No query</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One query</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count} queries</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>, {left} left</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count}{also}. The board confirms {confirmed} statements; {unchecked} it cannot decide.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Next</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fix</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{label} is not on the tree yet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ctrl+Return adds it as a side-line.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take {id}</source>
        <extracomment>Side-lines deeper than this are drawn in the deepest row.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>slot {length}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Slot</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>for example 8:30; empty for none</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Length of the slot in minutes and seconds</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The length that the talk should have. It is planned at {length}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write minutes and seconds, as in 8:30.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stage</source>
        <extracomment>The board&apos;s share of the picture&apos;s shorter side.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Flip the board</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Full screen (F11)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Free</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wide</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tall</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Square</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What will you tell today?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a game or study…</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take the tour: a finished talk</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Begin with an empty board</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Or go on with</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A PGN file can be dropped here too.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What went wrong</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The folder for studies cannot be made: {reason}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Time ruler</source>
        <extracomment>Space at both ends (px). How much one notch of the wheel, or one key, zooms.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No beat is told here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From {start}, {seconds} seconds.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Beat {index} of {total}: {told} {when} {slot_label}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing is told yet: play a move or write a line.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>, of it {think:g} s to think</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rehearse</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Study</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Length of the talk against its slot</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>planned {length}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{planned} · no slot set</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Slot {slot} · {planned} · {distance}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Slot {slot} · {distance}</source>
        <translation type="unfinished"></translation>
    </message>
</context>
</TS>
