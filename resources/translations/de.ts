<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de_DE">
<context>
    <name></name>
    <message>
        <source>&amp;Study</source>
        <translation>&amp;Studie</translation>
    </message>
    <message>
        <source>&amp;Edit</source>
        <translation>&amp;Bearbeiten</translation>
    </message>
    <message>
        <source>&amp;Lines</source>
        <translation>Va&amp;rianten</translation>
    </message>
    <message>
        <source>S&amp;cript</source>
        <translation>S&amp;kript</translation>
    </message>
    <message>
        <source>&amp;Go</source>
        <translation>&amp;Gehe zu</translation>
    </message>
    <message>
        <source>&amp;Talk</source>
        <translation>&amp;Vortrag</translation>
    </message>
    <message>
        <source>&amp;View</source>
        <translation>&amp;Ansicht</translation>
    </message>
    <message>
        <source>&amp;Help</source>
        <translation>&amp;Hilfe</translation>
    </message>
    <message>
        <source>&amp;New study</source>
        <translation>Neue &amp;Studie</translation>
    </message>
    <message>
        <source>Begin with the start position.</source>
        <translation>Mit der Grundstellung beginnen.</translation>
    </message>
    <message>
        <source>New from a &amp;position…</source>
        <translation>&amp;Neu aus einer Stellung…</translation>
    </message>
    <message>
        <source>&amp;Open…</source>
        <translation>Öffn&amp;en…</translation>
    </message>
    <message>
        <source>Open a study, or games in PGN.</source>
        <translation>Eine Studie oder Partien in PGN öffnen.</translation>
    </message>
    <message>
        <source>Save &amp;as…</source>
        <translation>Speichern &amp;unter…</translation>
    </message>
    <message>
        <source>Go on with a copy under another name.</source>
        <translation>Mit einer Kopie unter anderem Namen weiterarbeiten.</translation>
    </message>
    <message>
        <source>&amp;Headers…</source>
        <translation>&amp;Kopfdaten…</translation>
    </message>
    <message>
        <source>Players, event, date and the other tags.</source>
        <translation>Spieler, Turnier, Datum und die übrigen Tags.</translation>
    </message>
    <message>
        <source>&amp;Deliver…</source>
        <translation>&amp;Ausspielen…</translation>
    </message>
    <message>
        <source>&amp;Quit</source>
        <translation>&amp;Beenden</translation>
    </message>
    <message>
        <source>Everything is stored already.</source>
        <translation>Alles ist bereits gespeichert.</translation>
    </message>
    <message>
        <source>&amp;Undo</source>
        <translation>Rü&amp;ckgängig</translation>
    </message>
    <message>
        <source>Take the last change back.</source>
        <translation>Die letzte Änderung zurücknehmen.</translation>
    </message>
    <message>
        <source>&amp;Redo</source>
        <translation>&amp;Wiederholen</translation>
    </message>
    <message>
        <source>Do again what was taken back.</source>
        <translation>Das Zurückgenommene noch einmal ausführen.</translation>
    </message>
    <message>
        <source>Cu&amp;t branch</source>
        <translation>Zweig &amp;ausschneiden</translation>
    </message>
    <message>
        <source>Take this move and all after it away, to paste it elsewhere.</source>
        <translation>Diesen Zug und alles danach wegnehmen, um es anderswo einzufügen.</translation>
    </message>
    <message>
        <source>&amp;Copy branch</source>
        <translation>Zweig &amp;kopieren</translation>
    </message>
    <message>
        <source>Copy this move and all after it.</source>
        <translation>Diesen Zug und alles danach kopieren.</translation>
    </message>
    <message>
        <source>&amp;Paste branch</source>
        <translation>Zweig &amp;einfügen</translation>
    </message>
    <message>
        <source>Put the copied branch after this move.</source>
        <translation>Den kopierten Zweig nach diesem Zug einsetzen.</translation>
    </message>
    <message>
        <source>&amp;Delete branch</source>
        <translation>&amp;Zweig löschen</translation>
    </message>
    <message>
        <source>Copy game as P&amp;GN</source>
        <translation>&amp;Partie als PGN kopieren</translation>
    </message>
    <message>
        <source>The whole annotated game as text.</source>
        <translation>Die ganze kommentierte Partie als Text.</translation>
    </message>
    <message>
        <source>Copy position as &amp;FEN</source>
        <translation>&amp;Stellung als FEN kopieren</translation>
    </message>
    <message>
        <source>Choose the whol&amp;e line</source>
        <translation>&amp;Ganze Linie wählen</translation>
    </message>
    <message>
        <source>Find in the l&amp;anes…</source>
        <translation>&amp;In den Spuren suchen…</translation>
    </message>
    <message>
        <source>&amp;Promote side-line</source>
        <translation>&amp;Nebenvariante aufwerten</translation>
    </message>
    <message>
        <source>This side-line changes places with the line before it.</source>
        <translation>Diese Nebenvariante tauscht mit der Linie davor den Platz.</translation>
    </message>
    <message>
        <source>&amp;Demote line</source>
        <translation>&amp;Linie abwerten</translation>
    </message>
    <message>
        <source>This line changes places with the side-line after it.</source>
        <translation>Diese Linie tauscht mit der Nebenvariante danach den Platz.</translation>
    </message>
    <message>
        <source>Make this the &amp;main line</source>
        <translation>&amp;Zur Hauptlinie machen</translation>
    </message>
    <message>
        <source>Every move up to here becomes a main move.</source>
        <translation>Jeder Zug bis hierher wird ein Zug der Hauptlinie.</translation>
    </message>
    <message>
        <source>&amp;Name side-line…</source>
        <translation>Nebenvariante &amp;benennen…</translation>
    </message>
    <message>
        <source>A heading for its lane.</source>
        <translation>Eine Überschrift für ihre Spur.</translation>
    </message>
    <message>
        <source>Tell it &amp;after the main move</source>
        <translation>Nach &amp;dem Hauptzug erzählen</translation>
    </message>
    <message>
        <source>The usual place of a side-line.</source>
        <translation>Der übliche Platz einer Nebenvariante.</translation>
    </message>
    <message>
        <source>Tell it &amp;before the main move</source>
        <translation>&amp;Vor dem Hauptzug erzählen</translation>
    </message>
    <message>
        <source>Side-line first.</source>
        <translation>Die Nebenvariante zuerst.</translation>
    </message>
    <message>
        <source>Tell it &amp;later…</source>
        <translation>&amp;Später erzählen…</translation>
    </message>
    <message>
        <source>Choose the move after which this side-line is told.</source>
        <translation>Den Zug wählen, nach dem diese Nebenvariante erzählt wird.</translation>
    </message>
    <message>
        <source>&amp;Hide it from the talk</source>
        <translation>&amp;Aus dem Vortrag ausblenden</translation>
    </message>
    <message>
        <source>Printed, not told.</source>
        <translation>Gedruckt, nicht erzählt.</translation>
    </message>
    <message>
        <source>&amp;Spoken line</source>
        <translation>S&amp;prechtext</translation>
    </message>
    <message>
        <source>Write what is said here.</source>
        <translation>Schreiben, was hier gesprochen wird.</translation>
    </message>
    <message>
        <source>&amp;Note for print</source>
        <translation>Notiz &amp;für den Druck</translation>
    </message>
    <message>
        <source>Write what is printed here.</source>
        <translation>Schreiben, was hier gedruckt wird.</translation>
    </message>
    <message>
        <source>Insert &amp;cue</source>
        <translation>Stichw&amp;ort setzen</translation>
    </message>
    <message>
        <source>Play a move at the word where the cursor is.</source>
        <translation>Einen Zug bei dem Wort ausführen, an dem die Schreibmarke steht.</translation>
    </message>
    <message>
        <source>Turn this note into the spoken line</source>
        <translation>&amp;Diese Notiz zum Sprechtext machen</translation>
    </message>
    <message>
        <source>Turn &amp;all notes into spoken lines</source>
        <translation>Alle Notizen zu Sprechtexten &amp;machen</translation>
    </message>
    <message>
        <source>Where nothing is said yet.</source>
        <translation>Wo noch nichts gesprochen wird.</translation>
    </message>
    <message>
        <source>&amp;Read-through…</source>
        <translation>D&amp;urchsicht…</translation>
    </message>
    <message>
        <source>Every statement of the script that the board contradicts.</source>
        <translation>Jede Aussage des Skripts, der das Brett widerspricht.</translation>
    </message>
    <message>
        <source>Ne&amp;xt query</source>
        <translation>Näc&amp;hste Rückfrage</translation>
    </message>
    <message>
        <source>The next statement that the board contradicts.</source>
        <translation>Die nächste Aussage, der das Brett widerspricht.</translation>
    </message>
    <message>
        <source>&amp;Fix as the query says</source>
        <translation>Beheben, &amp;wie die Rückfrage sagt</translation>
    </message>
    <message>
        <source>Where it is certain how.</source>
        <translation>Wo feststeht, wie.</translation>
    </message>
    <message>
        <source>Lea&amp;ve the query</source>
        <translation>&amp;Rückfrage abweisen</translation>
    </message>
    <message>
        <source>It is not put again; undo brings it back.</source>
        <translation>Sie wird nicht wieder gestellt; Rückgängig holt sie zurück.</translation>
    </message>
    <message>
        <source>Add the &amp;move that is said</source>
        <translation>Gesagten &amp;Zug hinzufügen</translation>
    </message>
    <message>
        <source>A move in the line that is not on the tree yet.</source>
        <translation>Ein Zug im Sprechtext, der noch nicht im Baum steht.</translation>
    </message>
    <message>
        <source>&amp;Greeting</source>
        <translation>&amp;Begrüßung</translation>
    </message>
    <message>
        <source>What is said before the first move.</source>
        <translation>Was vor dem ersten Zug gesprochen wird.</translation>
    </message>
    <message>
        <source>C&amp;losing</source>
        <translation>S&amp;chluss</translation>
    </message>
    <message>
        <source>What is said after the last move.</source>
        <translation>Was nach dem letzten Zug gesprochen wird.</translation>
    </message>
    <message>
        <source>&amp;Thanks</source>
        <translation>Dan&amp;k</translation>
    </message>
    <message>
        <source>What is said at the very end.</source>
        <translation>Was ganz am Ende gesprochen wird.</translation>
    </message>
    <message>
        <source>Set the sl&amp;ot…</source>
        <translation>Ze&amp;itfenster festlegen…</translation>
    </message>
    <message>
        <source>The length that the talk should have.</source>
        <translation>Die Länge, die der Vortrag haben soll.</translation>
    </message>
    <message>
        <source>Suggested cuts…</source>
        <translation>Vorschläge zum Kürzen …</translation>
    </message>
    <message>
        <source>&amp;Forward</source>
        <translation>Vor&amp;wärts</translation>
    </message>
    <message>
        <source>The main move after this one.</source>
        <translation>Der Hauptzug nach diesem.</translation>
    </message>
    <message>
        <source>&amp;Back</source>
        <translation>Zu&amp;rück</translation>
    </message>
    <message>
        <source>The move before this one.</source>
        <translation>Der Zug vor diesem.</translation>
    </message>
    <message>
        <source>&amp;Into the side-line</source>
        <translation>&amp;In die Nebenvariante</translation>
    </message>
    <message>
        <source>The line beside this move.</source>
        <translation>Die Linie neben diesem Zug.</translation>
    </message>
    <message>
        <source>&amp;Out of it</source>
        <translation>&amp;Aus ihr heraus</translation>
    </message>
    <message>
        <source>Back towards the main line.</source>
        <translation>Zurück in Richtung Hauptlinie.</translation>
    </message>
    <message>
        <source>To the &amp;start</source>
        <translation>&amp;Zum Anfang</translation>
    </message>
    <message>
        <source>The start position.</source>
        <translation>Die Anfangsstellung.</translation>
    </message>
    <message>
        <source>To the &amp;end of the line</source>
        <translation>Zum &amp;Ende der Linie</translation>
    </message>
    <message>
        <source>The last move of this line.</source>
        <translation>Der letzte Zug dieser Linie.</translation>
    </message>
    <message>
        <source>&amp;Next beat</source>
        <translation>&amp;Nächste Station</translation>
    </message>
    <message>
        <source>The next stop of the talk.</source>
        <translation>Der nächste Halt des Vortrags.</translation>
    </message>
    <message>
        <source>&amp;Previous beat</source>
        <translation>Vorige &amp;Station</translation>
    </message>
    <message>
        <source>The stop before this one.</source>
        <translation>Der Halt vor diesem.</translation>
    </message>
    <message>
        <source>&amp;Write</source>
        <translation>S&amp;chreiben</translation>
    </message>
    <message>
        <source>Lanes, board and the spoken line.</source>
        <translation>Spuren, Brett und Sprechtext.</translation>
    </message>
    <message>
        <source>&amp;Rehearse</source>
        <translation>&amp;Proben</translation>
    </message>
    <message>
        <source>Click through the talk while reading it.</source>
        <translation>Den Vortrag beim Lesen durchklicken.</translation>
    </message>
    <message>
        <source>Re&amp;cord</source>
        <translation>&amp;Aufnehmen</translation>
    </message>
    <message>
        <source>Record the narration against the board.</source>
        <translation>Den Kommentar zum Brett aufnehmen.</translation>
    </message>
    <message>
        <source>&amp;Go on</source>
        <translation>&amp;Weiter</translation>
    </message>
    <message>
        <source>Rehearsing: the next thing on the board.</source>
        <translation>Beim Proben: das Nächste auf dem Brett.</translation>
    </message>
    <message>
        <source>Go &amp;back</source>
        <translation>&amp;Einen Schritt zurück</translation>
    </message>
    <message>
        <source>Rehearsing: the thing before.</source>
        <translation>Beim Proben: das Vorige.</translation>
    </message>
    <message>
        <source>Come back to the &amp;talk</source>
        <translation>&amp;Zurück zum Vortrag</translation>
    </message>
    <message>
        <source>From wherever you wandered off to.</source>
        <translation>Von jedem Abstecher aus.</translation>
    </message>
    <message>
        <source>&amp;Start or stop</source>
        <translation>&amp;Starten oder anhalten</translation>
    </message>
    <message>
        <source>The rehearsal or the recording.</source>
        <translation>Die Probe oder die Aufnahme.</translation>
    </message>
    <message>
        <source>&amp;Flip the board</source>
        <translation>&amp;Brett drehen</translation>
    </message>
    <message>
        <source>&amp;Words</source>
        <translation>&amp;Wörter</translation>
    </message>
    <message>
        <source>&amp;Board</source>
        <translation>Bre&amp;tt</translation>
    </message>
    <message>
        <source>Set up the position to begin with, or paste it as FEN.</source>
        <translation>Die Anfangsstellung aufbauen oder als FEN einfügen.</translation>
    </message>
    <message>
        <source>Change the start posi&amp;tion…</source>
        <translation>An&amp;fangsstellung ändern…</translation>
    </message>
    <message>
        <source>As long as no move stands on the tree.</source>
        <translation>Solange kein Zug im Baum steht.</translation>
    </message>
    <message>
        <source>Make video, captions, sheet, page and more.</source>
        <translation>Video, Untertitel, Blatt, Seite und mehr machen.</translation>
    </message>
    <message>
        <source>&amp;History…</source>
        <translation>&amp;Verlauf…</translation>
    </message>
    <message>
        <source>Every edit in words, to go back to.</source>
        <translation>Jede Änderung in Worten, um dorthin zurückzukehren.</translation>
    </message>
    <message>
        <source>Delete this move and all after it, or every chosen one.</source>
        <translation>Diesen Zug und alles danach löschen, oder jeden gewählten.</translation>
    </message>
    <message>
        <source>Every row of this line; once more, with all that branches off it. Shift and arrows choose single rows.</source>
        <translation>Jede Zeile dieser Linie; noch einmal: auch alles, was davon abzweigt. Umschalt und Pfeiltasten wählen einzelne Zeilen.</translation>
    </message>
    <message>
        <source>Copy &amp;words and moves</source>
        <translation>Text &amp;und Züge kopieren</translation>
    </message>
    <message>
        <source>What is said at the chosen rows, with their moves, as text.</source>
        <translation>Was in den gewählten Zeilen gesprochen wird, mit den Zügen, als Text.</translation>
    </message>
    <message>
        <source>Copy &amp;line as PGN</source>
        <translation>&amp;Linie als PGN kopieren</translation>
    </message>
    <message>
        <source>The way to this move and all after it; of several chosen rows, only those.</source>
        <translation>Den Weg zu diesem Zug und alles danach; bei mehreren gewählten Zeilen nur diese.</translation>
    </message>
    <message>
        <source>The position on the board, or those of all chosen rows, as text.</source>
        <translation>Die Stellung auf dem Brett oder die aller gewählten Zeilen als Text.</translation>
    </message>
    <message>
        <source>Copy p&amp;icture of the board</source>
        <translation>&amp;Bild des Bretts kopieren</translation>
    </message>
    <message>
        <source>The board with its marks, or those of all chosen rows below each other.</source>
        <translation>Das Brett mit seinen Markierungen, oder die Bretter aller gewählten Zeilen untereinander.</translation>
    </message>
    <message>
        <source>A move, words of the script, or a position.</source>
        <translation>Ein Zug, Wörter des Skripts oder eine Stellung.</translation>
    </message>
    <message>
        <source>Find &amp;next</source>
        <translation>Wei&amp;tersuchen</translation>
    </message>
    <message>
        <source>The next match of what was sought.</source>
        <translation>Der nächste Treffer der Suche.</translation>
    </message>
    <message>
        <source>Find pre&amp;vious</source>
        <translation>&amp;Rückwärts suchen</translation>
    </message>
    <message>
        <source>The match before.</source>
        <translation>Der Treffer davor.</translation>
    </message>
    <message>
        <source>Find this p&amp;osition elsewhere</source>
        <translation>&amp;Diese Stellung anderswo suchen</translation>
    </message>
    <message>
        <source>Every move of the tree that leads to the position on the board.</source>
        <translation>Jeder Zug des Baums, der zur Stellung auf dem Brett führt.</translation>
    </message>
    <message>
        <source>T&amp;ype the next move</source>
        <translation>&amp;Nächsten Zug eintippen</translation>
    </message>
    <message>
        <source>It is played at the word where the cursor is.</source>
        <translation>Er wird bei dem Wort ausgeführt, an dem die Schreibmarke steht.</translation>
    </message>
    <message>
        <source>Cue one word &amp;back</source>
        <translation>Stichwort &amp;ein Wort zurück</translation>
    </message>
    <message>
        <source>The cue at the cursor comes one word earlier.</source>
        <translation>Das Stichwort an der Schreibmarke kommt ein Wort früher.</translation>
    </message>
    <message>
        <source>Cue one &amp;word on</source>
        <translation>S&amp;tichwort ein Wort weiter</translation>
    </message>
    <message>
        <source>The cue at the cursor comes one word later.</source>
        <translation>Das Stichwort an der Schreibmarke kommt ein Wort später.</translation>
    </message>
    <message>
        <source>&amp;Played moves become cues</source>
        <translation>&amp;Gespielte Züge werden Stichwörter</translation>
    </message>
    <message>
        <source>While the cursor is in the line, the next move on the board is played at its word.</source>
        <translation>Steht die Schreibmarke im Sprechtext, wird der nächste Zug auf dem Brett bei ihrem Wort ausgeführt.</translation>
    </message>
    <message>
        <source>Clear the spoken line</source>
        <translation>&amp;Sprechtext leeren</translation>
    </message>
    <message>
        <source>Nothing is said any more at this move, or at every chosen one.</source>
        <translation>Bei diesem Zug, oder bei jedem gewählten, wird nichts mehr gesprochen.</translation>
    </message>
    <message>
        <source>Where nothing is said here yet; also for every chosen row.</source>
        <translation>Wo hier noch nichts gesprochen wird; auch für jede gewählte Zeile.</translation>
    </message>
    <message>
        <source>Fit the talk to the slot</source>
        <translation>&amp;Vortrag ins Zeitfenster einpassen</translation>
    </message>
    <message>
        <source>Over or under is spread over the beats that are not locked.</source>
        <translation>Was zu viel oder zu wenig ist, wird auf die nicht fixierten Stationen verteilt.</translation>
    </message>
    <message>
        <source>Side-lines to leave out, by their seconds and by what depends on them.</source>
        <translation>Nebenvarianten zum Weglassen, nach ihren Sekunden und nach dem, was an ihnen hängt.</translation>
    </message>
    <message>
        <source>Lock or unlock this length</source>
        <translation>Diese &amp;Länge fixieren oder freigeben</translation>
    </message>
    <message>
        <source>A locked beat keeps its length when the talk is fitted; also for every chosen row.</source>
        <translation>Eine fixierte Station behält beim Einpassen ihre Länge; auch für jede gewählte Zeile.</translation>
    </message>
    <message>
        <source>Unlock every length</source>
        <translation>&amp;Alle Längen freigeben</translation>
    </message>
    <message>
        <source>All may be fitted again.</source>
        <translation>Alle dürfen wieder eingepasst werden.</translation>
    </message>
    <message>
        <source>The script as one &amp;text</source>
        <translation>&amp;Das Skript als ein Text</translation>
    </message>
    <message>
        <source>The whole talk from the greeting to the thanks, edited in place.</source>
        <translation>Der ganze Vortrag von der Begrüßung bis zum Dank, an Ort und Stelle bearbeitet.</translation>
    </message>
    <message>
        <source>&amp;Find and replace in the script…</source>
        <translation>&amp;Im Skript suchen und ersetzen…</translation>
    </message>
    <message>
        <source>In every spoken line, in greeting, closing and thanks, and in notes if you like.</source>
        <translation>In jedem Sprechtext, in Begrüßung, Schluss und Dank, auf Wunsch auch in Notizen.</translation>
    </message>
    <message>
        <source>&amp;Insert snippet…</source>
        <translation>Textbaustein &amp;einfügen…</translation>
    </message>
    <message>
        <source>A greeting, thanks or credits that recur, filled with the names of this game.</source>
        <translation>Begrüßung, Dank oder Mitwirkende, die wiederkehren, mit den Namen dieser Partie gefüllt.</translation>
    </message>
    <message>
        <source>S&amp;nippets…</source>
        <translation>&amp;Textbausteine…</translation>
    </message>
    <message>
        <source>Write the texts that recur, and choose the file with names.</source>
        <translation>Wiederkehrende Texte schreiben und die Datei mit Namen wählen.</translation>
    </message>
    <message>
        <source>&amp;Spelling…</source>
        <translation>&amp;Rechtschreibung…</translation>
    </message>
    <message>
        <source>Whether it is checked, in which language, and which words are right besides.</source>
        <translation>Ob sie geprüft wird, in welcher Sprache und welche Wörter außerdem richtig sind.</translation>
    </message>
    <message>
        <source>Next &amp;misspelt word</source>
        <translation>&amp;Nächstes falsch geschriebenes Wort</translation>
    </message>
    <message>
        <source>The next word of the script that no dictionary has.</source>
        <translation>Das nächste Wort des Skripts, das in keinem Wörterbuch steht.</translation>
    </message>
    <message>
        <source>How a &amp;word is said…</source>
        <translation>&amp;Aussprache eines Worts…</translation>
    </message>
    <message>
        <source>The prompter shows it behind the word.</source>
        <translation>Der Prompter zeigt sie hinter dem Wort.</translation>
    </message>
    <message>
        <source>Show it from the other side.</source>
        <translation>Von der anderen Seite zeigen.</translation>
    </message>
    <message>
        <source>Only the &amp;board</source>
        <translation>&amp;Nur das Brett</translation>
    </message>
    <message>
        <source>The board alone on the whole screen; the keys go on working, Escape leaves.</source>
        <translation>Das Brett allein auf dem ganzen Bildschirm; die Tasten wirken weiter, Esc führt zurück.</translation>
    </message>
    <message>
        <source>Show &amp;where a piece may go</source>
        <translation>Mögliche Felder &amp;einer Figur zeigen</translation>
    </message>
    <message>
        <source>As soon as it is picked up.</source>
        <translation>Sobald sie aufgenommen wird.</translation>
    </message>
    <message>
        <source>What this &amp;piece does</source>
        <translation>Was diese &amp;Figur leistet</translation>
    </message>
    <message>
        <source>What it attacks and guards, what attacks and guards it, and its safe squares.</source>
        <translation>Was sie angreift und deckt, wovon sie angegriffen und gedeckt wird, und ihre sicheren Felder.</translation>
    </message>
    <message>
        <source>What the &amp;last move changed</source>
        <translation>&amp;Was der letzte Zug änderte</translation>
    </message>
    <message>
        <source>Squares covered and given up, lines opened, and what hangs now.</source>
        <translation>Gedeckte und aufgegebene Felder, geöffnete Linien und was jetzt hängt.</translation>
    </message>
    <message>
        <source>&amp;Describe the position</source>
        <translation>&amp;Stellung beschreiben</translation>
    </message>
    <message>
        <source>Every piece, whose move it is, and the marks, told in words and by a screen reader.</source>
        <translation>Jede Figur, wer am Zug ist und die Markierungen, in Worten und für den Screenreader.</translation>
    </message>
    <message>
        <source>Tell f&amp;urther facts</source>
        <translation>Weitere &amp;Tatsachen nennen</translation>
    </message>
    <message>
        <source>Forks, lines, guards, pawns and castling beside the board, besides what hangs and what is pinned.</source>
        <translation>Gabeln, Linien, Deckungen, Bauern und Rochade neben dem Brett, zusätzlich zu dem, was hängt und gefesselt ist.</translation>
    </message>
    <message>
        <source>&amp;Marking</source>
        <translation>Mar&amp;kieren</translation>
    </message>
    <message>
        <source>Draw marks on the board.</source>
        <translation>Markierungen auf das Brett zeichnen.</translation>
    </message>
    <message>
        <source>&amp;Number the marks</source>
        <translation>Ma&amp;rkierungen nummerieren</translation>
    </message>
    <message>
        <source>1, 2, 3 in the order in which they were drawn; once more takes the numbers off.</source>
        <translation>1, 2, 3 in der Reihenfolge des Zeichnens; noch einmal nimmt die Nummern weg.</translation>
    </message>
    <message>
        <source>&amp;Copy marks to the next move</source>
        <translation>Markierungen in &amp;den nächsten Zug kopieren</translation>
    </message>
    <message>
        <source>They are drawn there too, and the board goes there.</source>
        <translation>Sie werden auch dort gezeichnet, und das Brett geht dorthin.</translation>
    </message>
    <message>
        <source>Copy marks to &amp;all moves after this</source>
        <translation>Markierungen &amp;in alle weiteren Züge kopieren</translation>
    </message>
    <message>
        <source>To the end of this line.</source>
        <translation>Bis zum Ende dieser Linie.</translation>
    </message>
    <message>
        <source>Copy marks from the move befor&amp;e</source>
        <translation>&amp;Markierungen aus dem Zug davor kopieren</translation>
    </message>
    <message>
        <source>They are drawn here too.</source>
        <translation>Sie werden auch hier gezeichnet.</translation>
    </message>
    <message>
        <source>Wipe all ma&amp;rks</source>
        <translation>&amp;Alle Markierungen wegwischen</translation>
    </message>
    <message>
        <source>Of this position; undo brings them back.</source>
        <translation>Die dieser Stellung; Rückgängig holt sie zurück.</translation>
    </message>
    <message>
        <source>Next &amp;unwritten move</source>
        <translation>Nächster Zug ohne &amp;Text</translation>
    </message>
    <message>
        <source>Where the talk stops and nothing is said yet.</source>
        <translation>Wo der Vortrag anhält und noch nichts gesprochen wird.</translation>
    </message>
    <message>
        <source>Previous unwritten &amp;move</source>
        <translation>Voriger Zug &amp;ohne Text</translation>
    </message>
    <message>
        <source>The one before.</source>
        <translation>Der davor.</translation>
    </message>
    <message>
        <source>Next &amp;think pause</source>
        <translation>Nächste &amp;Denkpause</translation>
    </message>
    <message>
        <source>Where the viewer is asked to find the next move.</source>
        <translation>Wo die Zuschauer den nächsten Zug finden sollen.</translation>
    </message>
    <message>
        <source>Previous think p&amp;ause</source>
        <translation>&amp;Vorige Denkpause</translation>
    </message>
    <message>
        <source>T&amp;akes…</source>
        <translation>Takes w&amp;ählen…</translation>
    </message>
    <message>
        <source>Which take is heard for each beat; cut takes, say words again, take in sound files.</source>
        <translation>Welcher Take für jede Station zu hören ist; Takes schneiden, Worte neu sprechen, Tondateien einlesen.</translation>
    </message>
    <message>
        <source>&amp;Hear the plan…</source>
        <translation>Den Plan an&amp;hören …</translation>
    </message>
    <message>
        <source>A speech synthesiser of the system speaks it, and the board follows.</source>
        <translation>Eine Sprachausgabe des Systems spricht ihn, und das Brett folgt.</translation>
    </message>
    <message>
        <source>Rehearsa&amp;ls…</source>
        <translation>Pr&amp;otokoll der Proben …</translation>
    </message>
    <message>
        <source>How long each beat took from time to time, and where it went wrong.</source>
        <translation>Wie lange jede Station von Mal zu Mal dauerte und wo es hakte.</translation>
    </message>
    <message>
        <source>Room chec&amp;k…</source>
        <translation>Rau&amp;mprüfung …</translation>
    </message>
    <message>
        <source>Noise, hum and level of the microphone, told before the first take.</source>
        <translation>Rauschen, Brummen und Pegel des Mikrofons, gesagt vor dem ersten Take.</translation>
    </message>
    <message>
        <source>Measure the &amp;delay…</source>
        <translation>&amp;Verzögerung messen …</translation>
    </message>
    <message>
        <source>How late the microphone is, so that moves stand at their words.</source>
        <translation>Wie spät das Mikrofon ist, damit Züge bei ihren Wörtern stehen.</translation>
    </message>
    <message>
        <source>Let the board follow the &amp;voice…</source>
        <translation>Brett der Stimme &amp;folgen lassen …</translation>
    </message>
    <message>
        <source>A take is listened to, and its moves come at their words.</source>
        <translation>Ein Take wird abgehört, und seine Züge kommen bei ihren Wörtern.</translation>
    </message>
    <message>
        <source>&amp;Stage</source>
        <translation>Bü&amp;hne</translation>
    </message>
    <message>
        <source>A window with only the board, for capture.</source>
        <translation>Ein Fenster nur mit dem Brett, zum Abfilmen.</translation>
    </message>
    <message>
        <source>&amp;Prompter</source>
        <translation>&amp;Prompter</translation>
    </message>
    <message>
        <source>A window with only the lines to read.</source>
        <translation>Ein Fenster nur mit den Sprechtexten.</translation>
    </message>
    <message>
        <source>&amp;Wave of the take</source>
        <translation>We&amp;lle des Takes</translation>
    </message>
    <message>
        <source>Its sound below the ruler with beats, moves and words, to go through by hand.</source>
        <translation>Sein Ton unter dem Lineal mit Stationen, Zügen und Wörtern, zum Durchgehen von Hand.</translation>
    </message>
    <message>
        <source>F&amp;ull screen</source>
        <translation>&amp;Vollbild</translation>
    </message>
    <message>
        <source>The desk on the whole screen.</source>
        <translation>Das Pult auf dem ganzen Bildschirm.</translation>
    </message>
    <message>
        <source>F&amp;old all side-lines</source>
        <translation>Alle &amp;Nebenvarianten einklappen</translation>
    </message>
    <message>
        <source>All but those on the way to this move; minus in the lanes folds one.</source>
        <translation>Alle außer denen auf dem Weg zu diesem Zug; Minus in den Spuren klappt eine ein.</translation>
    </message>
    <message>
        <source>U&amp;nfold all side-lines</source>
        <translation>&amp;Alle Nebenvarianten ausklappen</translation>
    </message>
    <message>
        <source>Every lane is shown; plus in the lanes unfolds one.</source>
        <translation>Jede Spur wird gezeigt; Plus in den Spuren klappt eine aus.</translation>
    </message>
    <message>
        <source>&amp;Larger text</source>
        <translation>&amp;Größere Schrift</translation>
    </message>
    <message>
        <source>For the whole desk.</source>
        <translation>Für das ganze Pult.</translation>
    </message>
    <message>
        <source>S&amp;maller text</source>
        <translation>&amp;Kleinere Schrift</translation>
    </message>
    <message>
        <source>&amp;Reduce motion</source>
        <translation>&amp;Weniger Bewegung</translation>
    </message>
    <message>
        <source>Nothing slides or sweeps.</source>
        <translation>Nichts gleitet oder schwenkt.</translation>
    </message>
    <message>
        <source>&amp;Find an action…</source>
        <translation>&amp;Aktion suchen…</translation>
    </message>
    <message>
        <source>Type what you want to do.</source>
        <translation>Eintippen, was zu tun ist.</translation>
    </message>
    <message>
        <source>&amp;What is this?</source>
        <translation>&amp;Was ist das?</translation>
    </message>
    <message>
        <source>Point at something of the desk, or choose an action, and it is explained.</source>
        <translation>Auf etwas im Pult zeigen oder eine Aktion wählen, und es wird erklärt.</translation>
    </message>
    <message>
        <source>&amp;Quick start</source>
        <translation>S&amp;chnelleinstieg</translation>
    </message>
    <message>
        <source>The day in seven steps.</source>
        <translation>Der Tag in sieben Schritten.</translation>
    </message>
    <message>
        <source>&amp;Keys</source>
        <translation>&amp;Tasten</translation>
    </message>
    <message>
        <source>Every action with its keys.</source>
        <translation>Jede Aktion mit ihren Tasten.</translation>
    </message>
    <message>
        <source>&amp;Check the set-up</source>
        <translation>&amp;Einrichtung prüfen</translation>
    </message>
    <message>
        <source>What is installed and what is missing.</source>
        <translation>Was installiert ist und was fehlt.</translation>
    </message>
    <message>
        <source>&amp;About Studyboard</source>
        <translation>Über &amp;Studyboard</translation>
    </message>
    <message>
        <source>Version, licence and cautions.</source>
        <translation>Version, Lizenz und Hinweise zur Vorsicht.</translation>
    </message>
    <message>
        <source>Move to play</source>
        <translation>Zug, der gespielt werden soll</translation>
    </message>
    <message>
        <source>Nf3, exd5, O-O, g1f3 or knight f3</source>
        <translation>Nf3, exd5, O-O, g1f3 oder knight f3</translation>
    </message>
    <message>
        <source>Move</source>
        <translation>Zug</translation>
    </message>
    <message>
        <source>Board</source>
        <translation>Brett</translation>
    </message>
    <message>
        <source>What is about to happen: drag from the piece to its aim.</source>
        <translation>Was gleich geschieht: von der Figur zu ihrem Ziel ziehen.</translation>
    </message>
    <message>
        <source>What is aimed at: click its square.</source>
        <translation>Worauf gezielt wird: das Feld anklicken.</translation>
    </message>
    <message>
        <source>The way of a piece: drag from stop to stop.</source>
        <translation>Der Weg einer Figur: von Halt zu Halt ziehen.</translation>
    </message>
    <message>
        <source>The square that matters: click it.</source>
        <translation>Das Feld, auf das es ankommt: anklicken.</translation>
    </message>
    <message>
        <source>What protects what: drag from the guard to what it guards.</source>
        <translation>Was wen deckt: vom Deckenden zum Gedeckten ziehen.</translation>
    </message>
    <message>
        <source>Marks</source>
        <translation>Markierungen</translation>
    </message>
    <message>
        <source>Number marks as they are drawn</source>
        <translation>Markierungen beim Zeichnen nummerieren</translation>
    </message>
    <message>
        <source>Number marks as they are drawn: 1, 2, 3.
Key 6 on the board.</source>
        <translation>Markierungen beim Zeichnen nummerieren: 1, 2, 3.
Taste 6 auf dem Brett.</translation>
    </message>
    <message>
        <source>Wipe a {kind}</source>
        <translation>{kind} wegwischen</translation>
    </message>
    <message>
        <source>Move a {kind}</source>
        <translation>{kind} verschieben</translation>
    </message>
    <message>
        <source>Shorten a route</source>
        <translation>Weg verkürzen</translation>
    </message>
    <message>
        <source>Lengthen a route</source>
        <translation>Weg verlängern</translation>
    </message>
    <message>
        <source>Wipe all marks</source>
        <translation>Alle Markierungen wegwischen</translation>
    </message>
    <message>
        <source>A mark cannot go from a square to itself.</source>
        <translation>Eine Markierung kann nicht von einem Feld zu demselben gehen.</translation>
    </message>
    <message>
        <source>A {kind} goes from one square to another: draw it anew.</source>
        <translation>{kind} geht von einem Feld zu einem anderen: neu zeichnen.</translation>
    </message>
    <message>
        <source>Change what a mark means</source>
        <translation>Bedeutung einer Markierung ändern</translation>
    </message>
    <message>
        <source>There are no marks here to be numbered.</source>
        <translation>Hier sind keine Markierungen, die nummeriert werden könnten.</translation>
    </message>
    <message>
        <source>Take the numbers off the marks</source>
        <translation>Nummern der Markierungen entfernen</translation>
    </message>
    <message>
        <source>Number the marks</source>
        <translation>Markierungen nummerieren</translation>
    </message>
    <message>
        <source>Take the number off a mark</source>
        <translation>Nummer einer Markierung entfernen</translation>
    </message>
    <message>
        <source>Number a mark</source>
        <translation>Markierung nummerieren</translation>
    </message>
    <message>
        <source>There are no marks here to be copied.</source>
        <translation>Hier sind keine Markierungen, die kopiert werden könnten.</translation>
    </message>
    <message>
        <source>There is no move here to copy the marks to.</source>
        <translation>Hier ist kein Zug, in den die Markierungen kopiert werden könnten.</translation>
    </message>
    <message>
        <source>These marks are drawn there already.</source>
        <translation>Diese Markierungen sind dort bereits gezeichnet.</translation>
    </message>
    <message>
        <source>Copy marks</source>
        <translation>Markierungen kopieren</translation>
    </message>
    <message>
        <source>The same mark is drawn there already.</source>
        <translation>Dieselbe Markierung ist dort bereits gezeichnet.</translation>
    </message>
    <message>
        <source>Wipe all marks of this position away</source>
        <translation>Alle Markierungen dieser Stellung wegwischen</translation>
    </message>
    <message>
        <source>Wipe all</source>
        <translation>Alle wegwischen</translation>
    </message>
    <message>
        <source>Wipe</source>
        <translation>Leer</translation>
    </message>
    <message>
        <source>Draw a {kind}</source>
        <translation>{kind} zeichnen</translation>
    </message>
    <message>
        <source>{purpose} Key {number} on the board.</source>
        <translation>{purpose} Taste {number} auf dem Brett.</translation>
    </message>
    <message>
        <source>{text}. {purpose}
Key {number} on the board; Escape ends it.</source>
        <translation>{text}. {purpose}
Taste {number} auf dem Brett; Esc beendet es.</translation>
    </message>
    <message>
        <source>Marking on</source>
        <translation>Markieren ein</translation>
    </message>
    <message>
        <source>Marking off</source>
        <translation>Markieren aus</translation>
    </message>
    <message>
        <source>Move {move}. {ended}</source>
        <translation>Zug {move}. {ended}</translation>
    </message>
    <message>
        <source>Back to the start. {turn}</source>
        <translation>Zurück zum Anfang. {turn}</translation>
    </message>
    <message>
        <source>Back to move {move}.</source>
        <translation>Zurück zu Zug {move}.</translation>
    </message>
    <message>
        <source>Booth</source>
        <translation>Sprecherkabine</translation>
    </message>
    <message>
        <source>Microphone</source>
        <translation>Mikrofon</translation>
    </message>
    <message>
        <source>What the level means</source>
        <translation>Was der Pegel bedeutet</translation>
    </message>
    <message>
        <source>Room check …</source>
        <translation>Raumprüfung …</translation>
    </message>
    <message>
        <source>Noise, hum and level, told before the first take</source>
        <translation>Rauschen, Brummen und Pegel, gesagt vor dem ersten Take</translation>
    </message>
    <message>
        <source>Record</source>
        <translation>Aufnehmen</translation>
    </message>
    <message>
        <source>What the booth is doing</source>
        <translation>Was die Sprecherkabine gerade tut</translation>
    </message>
    <message>
        <source>Takes</source>
        <translation>Takes</translation>
    </message>
    <message>
        <source>Play</source>
        <translation>Abspielen</translation>
    </message>
    <message>
        <source>Discard</source>
        <translation>Verwerfen</translation>
    </message>
    <message>
        <source>Takes …</source>
        <translation>Takes …</translation>
    </message>
    <message>
        <source>Choose a take for each beat, cut, say words again, take in sound files</source>
        <translation>Für jede Station einen Take wählen, schneiden, Worte neu sprechen, Tondateien einlesen</translation>
    </message>
    <message>
        <source>Recording {time}. Ctrl+Space stops.</source>
        <translation>Aufnahme {time}. Strg+Leertaste hält an.</translation>
    </message>
    <message>
        <source>There is nothing to tell yet: play a move or write a line first.</source>
        <translation>Noch gibt es nichts zu erzählen: einen Zug spielen oder einen Text schreiben.</translation>
    </message>
    <message>
        <source>Listen, and go on speaking where it ends.</source>
        <translation>Zuhören und weitersprechen, wo es endet.</translation>
    </message>
    <message>
        <source>Space begins at once.</source>
        <translation>Die Leertaste beginnt sofort.</translation>
    </message>
    <message>
        <source>Take {next_take}</source>
        <translation>Take {next_take}</translation>
    </message>
    <message>
        <source>Discard a take</source>
        <translation>Take verwerfen</translation>
    </message>
    <message>
        <source>Take a take back</source>
        <translation>Take zurückholen</translation>
    </message>
    <message>
        <source>No microphone</source>
        <translation>Kein Mikrofon</translation>
    </message>
    <message>
        <source>Speak to see the level. Record begins with the first beat on the board.</source>
        <translation>Sprechen, um den Pegel zu sehen. Die Aufnahme beginnt mit der ersten Station auf dem Brett.</translation>
    </message>
    <message>
        <source>Before the first take, check the room.</source>
        <translation>Vor dem ersten Take den Raum prüfen.</translation>
    </message>
    <message>
        <source>Nothing was recorded.</source>
        <translation>Es wurde nichts aufgenommen.</translation>
    </message>
    <message>
        <source>Pickup {number}</source>
        <translation>Nachsprecher {number}</translation>
    </message>
    <message>
        <source>{name} ({length}) could not be put into the list; its sound is in the study and comes back when the study is opened again.</source>
        <translation>{name} ({length}) ließ sich nicht in die Liste setzen; der Ton liegt in der Studie und kommt zurück, wenn sie wieder geöffnet wird.</translation>
    </message>
    <message>
        <source>{name} is kept: {length}.</source>
        <translation>{name} ist behalten: {length}.</translation>
    </message>
    <message>
        <source>{problem} {name} is kept: {length}.</source>
        <translation>{problem} {name} ist behalten: {length}.</translation>
    </message>
    <message>
        <source>{name} is kept: {length}. Play it, discard it, or record another.</source>
        <translation>{name} ist behalten: {length}. Abspielen, verwerfen oder noch einen aufnehmen.</translation>
    </message>
    <message>
        <source>Recording {time}. Space goes on, Ctrl+Space stops.</source>
        <translation>Aufnahme {time}. Leertaste geht weiter, Strg+Leertaste hält an.</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Anhalten</translation>
    </message>
    <message>
        <source>Pause</source>
        <translation>Pause</translation>
    </message>
    <message>
        <source>Take back</source>
        <translation>Zurückholen</translation>
    </message>
    <message>
        <source>1 beat</source>
        <translation>1 Station</translation>
    </message>
    <message>
        <source>{beats} beats</source>
        <translation>{beats} Stationen</translation>
    </message>
    <message>
        <source>Taken back: {label}.</source>
        <translation>Rückgängig gemacht: {label}.</translation>
    </message>
    <message>
        <source>Done again: {label}.</source>
        <translation>Wiederholt: {label}.</translation>
    </message>
    <message>
        <source>The branch goes away here when it is pasted elsewhere.</source>
        <translation>Der Zweig verschwindet hier, sobald er anderswo eingefügt wird.</translation>
    </message>
    <message>
        <source>No branch has been cut or copied yet.</source>
        <translation>Es wurde noch kein Zweig ausgeschnitten oder kopiert.</translation>
    </message>
    <message>
        <source>Deleted {moves}. Ctrl+Z brings them back.</source>
        <translation>Gelöscht: {moves}. Strg+Z holt sie zurück.</translation>
    </message>
    <message>
        <source>No move has led to this position yet.</source>
        <translation>Zu dieser Stellung hat noch kein Zug geführt.</translation>
    </message>
    <message>
        <source>The marks are drawn here too.</source>
        <translation>Die Markierungen sind auch hier gezeichnet.</translation>
    </message>
    <message>
        <source>There is no move before this position.</source>
        <translation>Vor dieser Stellung steht kein Zug.</translation>
    </message>
    <message>
        <source>The marks of the move before are drawn here too.</source>
        <translation>Die Markierungen des Zugs davor sind auch hier gezeichnet.</translation>
    </message>
    <message>
        <source>1 move</source>
        <translation>1 Zug</translation>
    </message>
    <message>
        <source>{size} moves</source>
        <translation>{size} Züge</translation>
    </message>
    <message>
        <source>The marks are drawn on {moves} more. Ctrl+Z takes them back.</source>
        <translation>Die Markierungen sind auch bei weiteren Zügen gezeichnet: {moves}. Strg+Z nimmt sie zurück.</translation>
    </message>
    <message>
        <source>Deleted {label}, {moves}. Ctrl+Z brings it back.</source>
        <translation>Gelöscht: {label}, {moves}. Strg+Z holt es zurück.</translation>
    </message>
    <message>
        <source>{rows} rows are chosen. Escape lets them go.</source>
        <translation>{rows} Zeilen sind gewählt. Esc lässt sie los.</translation>
    </message>
    <message>
        <source>{rows} boards are too many for one picture: choose at most {most}.</source>
        <translation>{rows} Bretter sind zu viele für ein Bild: höchstens {most} wählen.</translation>
    </message>
    <message>
        <source>The board is on the clipboard</source>
        <translation>Das Brett ist in der Zwischenablage</translation>
    </message>
    <message>
        <source>{boards} boards</source>
        <translation>{boards} Bretter</translation>
    </message>
    <message>
        <source>On the clipboard as a picture: {boards}.</source>
        <translation>Als Bild in der Zwischenablage: {boards}.</translation>
    </message>
    <message>
        <source>There is nothing to copy here: no move, and nothing is said.</source>
        <translation>Hier gibt es nichts zu kopieren: kein Zug, und nichts wird gesprochen.</translation>
    </message>
    <message>
        <source>1 row is on the clipboard.</source>
        <translation>1 Zeile ist in der Zwischenablage.</translation>
    </message>
    <message>
        <source>{rows} rows are on the clipboard.</source>
        <translation>{rows} Zeilen sind in der Zwischenablage.</translation>
    </message>
    <message>
        <source>The game is on the clipboard.</source>
        <translation>Die Partie ist in der Zwischenablage.</translation>
    </message>
    <message>
        <source>The game is being written …</source>
        <translation>Die Partie wird geschrieben …</translation>
    </message>
    <message>
        <source>This position stands nowhere else on the tree.</source>
        <translation>Diese Stellung kommt sonst nirgends im Baum vor.</translation>
    </message>
    <message>
        <source>Other moves that lead to this position: {count}. F3 goes to the next.</source>
        <translation>Weitere Züge, die zu dieser Stellung führen: {count}. F3 geht zum nächsten.</translation>
    </message>
    <message>
        <source>“{text}” is not found.</source>
        <translation>„{text}“ wurde nicht gefunden.</translation>
    </message>
    <message>
        <source>Quick start</source>
        <translation>Schnelleinstieg</translation>
    </message>
    <message>
        <source>Keys</source>
        <translation>Tasten</translation>
    </message>
    <message>
        <source>Set-up</source>
        <translation>Einrichtung</translation>
    </message>
    <message>
        <source>About Studyboard</source>
        <translation>Über Studyboard</translation>
    </message>
    <message>
        <source>Name the side-line</source>
        <translation>Nebenvariante benennen</translation>
    </message>
    <message>
        <source>Heading of its lane</source>
        <translation>Überschrift ihrer Spur</translation>
    </message>
    <message>
        <source>Name a side-line</source>
        <translation>Nebenvariante benennen</translation>
    </message>
    <message>
        <source>There is no later move after which it could be told.</source>
        <translation>Es gibt keinen späteren Zug, nach dem sie erzählt werden könnte.</translation>
    </message>
    <message>
        <source>Tell the side-line later</source>
        <translation>Nebenvariante später erzählen</translation>
    </message>
    <message>
        <source>After the move</source>
        <translation>Nach dem Zug</translation>
    </message>
    <message>
        <source>The start position cannot be deleted.</source>
        <translation>Die Anfangsstellung lässt sich nicht löschen.</translation>
    </message>
    <message>
        <source>No move is chosen that could be deleted.</source>
        <translation>Es ist kein Zug gewählt, der gelöscht werden könnte.</translation>
    </message>
    <message>
        <source>Delete branches</source>
        <translation>Zweige löschen</translation>
    </message>
    <message>
        <source>Clear spoken lines</source>
        <translation>Sprechtexte leeren</translation>
    </message>
    <message>
        <source>Nothing is said here that could be cleared.</source>
        <translation>Hier wird nichts gesprochen, was geleert werden könnte.</translation>
    </message>
    <message>
        <source>No side-line is chosen: the main line is always told.</source>
        <translation>Es ist keine Nebenvariante gewählt: die Hauptlinie wird immer erzählt.</translation>
    </message>
    <message>
        <source>Change the running order</source>
        <translation>Ablauf ändern</translation>
    </message>
    <message>
        <source>It is not told as it is.</source>
        <translation>Sie wird ohnehin nicht erzählt.</translation>
    </message>
    <message>
        <source>It is told there already.</source>
        <translation>Sie wird dort bereits erzählt.</translation>
    </message>
    <message>
        <source>New from a position</source>
        <translation>Neu aus einer Stellung</translation>
    </message>
    <message>
        <source>Begin a study here</source>
        <translation>Hier eine Studie beginnen</translation>
    </message>
    <message>
        <source>Change the start position</source>
        <translation>Anfangsstellung ändern</translation>
    </message>
    <message>
        <source>Begin here</source>
        <translation>Hier beginnen</translation>
    </message>
    <message>
        <source>A take is being recorded: stop it first (Ctrl+Space).</source>
        <translation>Ein Take wird gerade aufgenommen: erst anhalten (Strg+Leertaste).</translation>
    </message>
    <message>
        <source>Studies and games (*.studyboard *.pgn);;All files (*)</source>
        <translation>Studien und Partien (*.studyboard *.pgn);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Open</source>
        <translation>Öffnen</translation>
    </message>
    <message>
        <source>Save as</source>
        <translation>Speichern unter</translation>
    </message>
    <message>
        <source>Studies (*.studyboard)</source>
        <translation>Studien (*.studyboard)</translation>
    </message>
    <message>
        <source>No font of this computer holds some of the letters: they are boxes on the sheet, and it is not PDF/UA.</source>
        <translation>Einige Buchstaben enthält keine Schrift dieses Rechners: Auf dem Blatt stehen dafür Kästchen, und es ist nicht PDF/UA.</translation>
    </message>
    <message>
        <source>Study sheet</source>
        <translation>Studienblatt</translation>
    </message>
    <message>
        <source>PDF to print: the game, its side-lines, notes and diagrams</source>
        <translation>PDF zum Drucken: Partie, Nebenvarianten, Notizen und Diagramme</translation>
    </message>
    <message>
        <source>Text</source>
        <translation>Text</translation>
    </message>
    <message>
        <source>Notes and what is said</source>
        <translation>Notizen und Gesprochenes</translation>
    </message>
    <message>
        <source>Notes alone</source>
        <translation>Nur Notizen</translation>
    </message>
    <message>
        <source>Lines to write on</source>
        <translation>Zeilen zum Schreiben</translation>
    </message>
    <message>
        <source>Large print: 18 points, one column</source>
        <translation>Großdruck: 18 Punkt, einspaltig</translation>
    </message>
    <message>
        <source>Told right through, without exercises</source>
        <translation>Durcherzählt, ohne Aufgaben</translation>
    </message>
    <message>
        <source>Marks in their colours, not in greys</source>
        <translation>Zeichen in ihren Farben, nicht in Grau</translation>
    </message>
    <message>
        <source>“{tag}” is no language; “fr” is French and “pt-BR” the Portuguese of Brazil.</source>
        <translation>„{tag}“ ist keine Sprache; „fr“ ist Französisch und „pt-BR“ brasilianisches Portugiesisch.</translation>
    </message>
    <message>
        <source>Captions left to be translated into “{language}”: {count} of {all}.</source>
        <translation>Noch in „{language}“ zu übersetzende Untertitel: {count} von {all}.</translation>
    </message>
    <message>
        <source>Captions</source>
        <translation>Untertitel</translation>
    </message>
    <message>
        <source>WebVTT and SRT, two lines at a time</source>
        <translation>WebVTT und SRT, zwei Zeilen auf einmal</translation>
    </message>
    <message>
        <source>As they are written: Nf3</source>
        <translation>Wie geschrieben: Nf3</translation>
    </message>
    <message>
        <source>With figurines: ♘f3</source>
        <translation>Mit Figurinen: ♘f3</translation>
    </message>
    <message>
        <source>A second file to translate into (such as “fr”)</source>
        <translation>Eine zweite Datei zum Übersetzen (etwa „fr“)</translation>
    </message>
    <message>
        <source>Annotated game</source>
        <translation>Kommentierte Partie</translation>
    </message>
    <message>
        <source>PGN with the spoken lines as comments</source>
        <translation>PGN mit den Sprechtexten als Kommentaren</translation>
    </message>
    <message>
        <source>Still</source>
        <translation>Standbild</translation>
    </message>
    <message>
        <source>Chapters</source>
        <translation>Kapitel</translation>
    </message>
    <message>
        <source>Lines of text and WebVTT, none shorter than ten seconds</source>
        <translation>Textzeilen und WebVTT, keines kürzer als zehn Sekunden</translation>
    </message>
    <message>
        <source>Video</source>
        <translation>Video</translation>
    </message>
    <message>
        <source>MP4: board, moves and the recorded voice; takes minutes</source>
        <translation>MP4: Brett, Züge und die aufgenommene Stimme; dauert Minuten</translation>
    </message>
    <message>
        <source>Shape</source>
        <translation>Format</translation>
    </message>
    <message>
        <source>Wide, 16:9</source>
        <translation>Breit, 16:9</translation>
    </message>
    <message>
        <source>Tall, 9:16</source>
        <translation>Hoch, 9:16</translation>
    </message>
    <message>
        <source>Lines</source>
        <translation>Zeilen</translation>
    </message>
    <message>
        <source>Frames a second</source>
        <translation>Bilder je Sekunde</translation>
    </message>
    <message>
        <source>Beside the board</source>
        <translation>Neben dem Brett</translation>
    </message>
    <message>
        <source>The moves told so far</source>
        <translation>Die bisher erzählten Züge</translation>
    </message>
    <message>
        <source>What is said</source>
        <translation>Was gesagt wird</translation>
    </message>
    <message>
        <source>Nothing</source>
        <translation>Nichts</translation>
    </message>
    <message>
        <source>The headline or a name is too long for the still, and ends with an ellipsis there.</source>
        <translation>Die Überschrift oder ein Name ist zu lang für das Standbild und endet dort mit Auslassungspunkten.</translation>
    </message>
    <message>
        <source>PNG for the title: a position, its marks, the players and a headline</source>
        <translation>PNG als Titelbild: eine Stellung, ihre Zeichen, die Spieler und eine Überschrift</translation>
    </message>
    <message>
        <source>Design</source>
        <translation>Gestaltung</translation>
    </message>
    <message>
        <source>The whole board on paper</source>
        <translation>Das ganze Brett auf Papier</translation>
    </message>
    <message>
        <source>The board above a band</source>
        <translation>Das Brett über einem Band</translation>
    </message>
    <message>
        <source>Close to where it happens</source>
        <translation>Nah am Geschehen</translation>
    </message>
    <message>
        <source>Wide, 1280 × 720</source>
        <translation>Breit, 1280 × 720</translation>
    </message>
    <message>
        <source>Tall, 1080 × 1920</source>
        <translation>Hoch, 1080 × 1920</translation>
    </message>
    <message>
        <source>One of each</source>
        <translation>Je eines</translation>
    </message>
    <message>
        <source>Headline</source>
        <translation>Überschrift</translation>
    </message>
    <message>
        <source>Colours around the board</source>
        <translation>Farben um das Brett</translation>
    </message>
    <message>
        <source>Light</source>
        <translation>Hell</translation>
    </message>
    <message>
        <source>Dark</source>
        <translation>Dunkel</translation>
    </message>
    <message>
        <source>The result may be seen</source>
        <translation>Das Ergebnis darf zu sehen sein</translation>
    </message>
    <message>
        <source>Captions in the picture</source>
        <translation>Untertitel im Bild</translation>
    </message>
    <message>
        <source>Only frames that change: quicker and smaller</source>
        <translation>Nur Bilder, die sich ändern: schneller und kleiner</translation>
    </message>
    <message>
        <source>Pieces are put down without sliding</source>
        <translation>Figuren werden gesetzt, ohne zu gleiten</translation>
    </message>
    <message>
        <source>“{name}” is of an earlier version of the study: the page does not play it.</source>
        <translation>„{name}“ stammt aus einem früheren Stand der Studie: Die Seite spielt es nicht ab.</translation>
    </message>
    <message>
        <source>The page has no sound: {reason}</source>
        <translation>Die Seite hat keinen Ton: {reason}</translation>
    </message>
    <message>
        <source>Page</source>
        <translation>Seite</translation>
    </message>
    <message>
        <source>HTML to click through: board, moves and words, with the video or the voice beside it</source>
        <translation>HTML zum Durchklicken: Brett, Züge und Worte, mit dem Video oder der Stimme daneben</translation>
    </message>
    <message>
        <source>Sound or video to play</source>
        <translation>Ton oder Video zum Abspielen</translation>
    </message>
    <message>
        <source>Sound inside the page</source>
        <translation>Ton in der Seite selbst</translation>
    </message>
    <message>
        <source>Seen from Black&apos;s side</source>
        <translation>Von Schwarz aus gesehen</translation>
    </message>
    <message>
        <source>The delivery failed: {reason}. Nothing was changed.</source>
        <translation>Das Ausspielen ist gescheitert: {reason}. Nichts wurde verändert.</translation>
    </message>
    <message>
        <source>−18 LUFS, for online (AES TD1008); peaks under −1 dBTP</source>
        <translation>−18 LUFS, für das Netz (AES TD1008); Spitzen unter −1 dBTP</translation>
    </message>
    <message>
        <source>−23 LUFS, for broadcasting (EBU R 128); peaks under −1 dBTP</source>
        <translation>−23 LUFS, für den Rundfunk (EBU R 128); Spitzen unter −1 dBTP</translation>
    </message>
    <message>
        <source>As it was spoken</source>
        <translation>Wie sie gesprochen wurde</translation>
    </message>
    <message>
        <source>Deliver</source>
        <translation>Ausspielen</translation>
    </message>
    <message>
        <source>A4 paper</source>
        <translation>Papier A4</translation>
    </message>
    <message>
        <source>Letter paper</source>
        <translation>Papier Letter</translation>
    </message>
    <message>
        <source>Folder to write into</source>
        <translation>Ordner, in den geschrieben wird</translation>
    </message>
    <message>
        <source>Choose…</source>
        <translation>Wählen…</translation>
    </message>
    <message>
        <source>Into</source>
        <translation>Nach</translation>
    </message>
    <message>
        <source>Progress of the delivery</source>
        <translation>Fortschritt des Ausspielens</translation>
    </message>
    <message>
        <source>Make everything again</source>
        <translation>Alles neu machen</translation>
    </message>
    <message>
        <source>Names, photographs and sponsors&apos; material are the publisher&apos;s responsibility.</source>
        <translation>Namen, Fotos und Material von Sponsoren verantwortet, wer veröffentlicht.</translation>
    </message>
    <message>
        <source>What was delivered</source>
        <translation>Was ausgespielt wurde</translation>
    </message>
    <message>
        <source>Enter opens a file; drag files out of here, or copy them.</source>
        <translation>Die Eingabetaste öffnet eine Datei; Dateien lassen sich von hier wegziehen oder kopieren.</translation>
    </message>
    <message>
        <source>{name} (kept)</source>
        <translation>{name} (behalten)</translation>
    </message>
    <message>
        <source>Open the folder</source>
        <translation>Ordner öffnen</translation>
    </message>
    <message>
        <source>Suggested cuts</source>
        <translation>Vorschläge zum Kürzen</translation>
    </message>
    <message>
        <source>Side-lines by the seconds they take and by how little depends on them. What is left out stays on the tree and in print.</source>
        <translation>Nebenvarianten nach den Sekunden, die sie dauern, und danach, wie wenig an ihnen hängt. Was weggelassen wird, bleibt auf dem Baum und im Druck.</translation>
    </message>
    <message>
        <source>Side-lines to leave out, the best first</source>
        <translation>Nebenvarianten zum Weglassen, die beste zuerst</translation>
    </message>
    <message>
        <source>Leave it out</source>
        <translation>Weglassen</translation>
    </message>
    <message>
        <source>Leave out what it takes</source>
        <translation>Weglassen, was nötig ist</translation>
    </message>
    <message>
        <source>All that are marked with a star, in one step</source>
        <translation>Alle mit einem Stern, in einem Schritt</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Leave side-lines out of the talk</source>
        <translation>Nebenvarianten aus dem Vortrag lassen</translation>
    </message>
    <message>
        <source>Nothing depends on it.</source>
        <translation>Nichts hängt daran.</translation>
    </message>
    <message>
        <source>{seconds:.0f} s</source>
        <translation>{seconds:.0f} s</translation>
    </message>
    <message>
        <source>No slot is set (Ctrl+T), so nothing says how much to leave out.</source>
        <translation>Kein Zeitfenster ist gesetzt (Strg+T), also sagt nichts, wie viel wegzulassen ist.</translation>
    </message>
    <message>
        <source>The talk is {distance}.</source>
        <translation>Der Vortrag: {distance}.</translation>
    </message>
    <message>
        <source>The talk is {distance}; without those with a star it is {left}.</source>
        <translation>Der Vortrag: {distance}; ohne die mit Stern: {left}.</translation>
    </message>
    <message>
        <source>&amp;Voice</source>
        <translation>&amp;Stimme</translation>
    </message>
    <message>
        <source>Loudness of the voice</source>
        <translation>Lautheit der Stimme</translation>
    </message>
    <message>
        <source>What is recorded is never changed: only what is delivered.</source>
        <translation>Was aufgenommen ist, wird nie geändert: nur, was ausgespielt wird.</translation>
    </message>
    <message>
        <source>{product}: how far it is</source>
        <translation>{product}: wie weit es ist</translation>
    </message>
    <message>
        <source>Options…</source>
        <translation>Optionen …</translation>
    </message>
    <message>
        <source>Options of “{product}”</source>
        <translation>Optionen zu „{product}“</translation>
    </message>
    <message>
        <source>Scratch voice in the video, marked in the picture</source>
        <translation>Probestimme im Video, im Bild gekennzeichnet</translation>
    </message>
    <message>
        <source>A speech synthesiser of the system speaks what is not recorded</source>
        <translation>Eine Sprachausgabe des Systems spricht, was nicht aufgenommen ist</translation>
    </message>
    <message>
        <source>Nothing is ticked.</source>
        <translation>Nichts ist angekreuzt.</translation>
    </message>
    <message>
        <source>Choose a folder to write into.</source>
        <translation>Wählen Sie einen Ordner, in den geschrieben wird.</translation>
    </message>
    <message>
        <source>waiting</source>
        <translation>wartet</translation>
    </message>
    <message>
        <source>Stopping …</source>
        <translation>Wird angehalten …</translation>
    </message>
    <message>
        <source>{length} recorded, {beats}</source>
        <translation>{length} aufgenommen, {beats}</translation>
    </message>
    <message>
        <source>{length} planned, {beats}</source>
        <translation>{length} geplant, {beats}</translation>
    </message>
    <message>
        <source>Choose: {what}</source>
        <translation>Wählen: {what}</translation>
    </message>
    <message>
        <source>Else what lies there as it would be made again is kept.</source>
        <translation>Sonst bleibt liegen, was genauso wieder herauskäme.</translation>
    </message>
    <message>
        <source>{stem} delivery</source>
        <translation>{stem} Ausspielung</translation>
    </message>
    <message>
        <source>Deliver into</source>
        <translation>Ausspielen nach</translation>
    </message>
    <message>
        <source>{percent} %</source>
        <translation>{percent} %</translation>
    </message>
    <message>
        <source>not made</source>
        <translation>nicht gemacht</translation>
    </message>
    <message>
        <source>kept</source>
        <translation>behalten</translation>
    </message>
    <message>
        <source>made</source>
        <translation>gemacht</translation>
    </message>
    <message>
        <source>1 file is in {folder}.</source>
        <translation>1 Datei liegt in {folder}.</translation>
    </message>
    <message>
        <source>{count} files are in {folder}.</source>
        <translation>{count} Dateien liegen in {folder}.</translation>
    </message>
    <message>
        <source>Nothing was made.</source>
        <translation>Es wurde nichts erzeugt.</translation>
    </message>
    <message>
        <source>Kept, as nothing of it has changed: {count}.</source>
        <translation>Unverändert behalten: {count}.</translation>
    </message>
    <message>
        <source>Hangs</source>
        <translation>Hängt</translation>
    </message>
    <message>
        <source>Pinned</source>
        <translation>Gefesselt</translation>
    </message>
    <message>
        <source>Check</source>
        <translation>Schach</translation>
    </message>
    <message>
        <source>End</source>
        <translation>Ende</translation>
    </message>
    <message>
        <source>Fork</source>
        <translation>Gabel</translation>
    </message>
    <message>
        <source>Guard</source>
        <translation>Deckung</translation>
    </message>
    <message>
        <source>Trapped</source>
        <translation>Gefangen</translation>
    </message>
    <message>
        <source>Pawns</source>
        <translation>Bauern</translation>
    </message>
    <message>
        <source>Bishops</source>
        <translation>Läufer</translation>
    </message>
    <message>
        <source>Castling</source>
        <translation>Rochade</translation>
    </message>
    <message>
        <source>Cover</source>
        <translation>Felder</translation>
    </message>
    <message>
        <source>Draw</source>
        <translation>Remis</translation>
    </message>
    <message>
        <source>Only move</source>
        <translation>Einziger Zug</translation>
    </message>
    <message>
        <source>King</source>
        <translation>König</translation>
    </message>
    <message>
        <source>Discovery</source>
        <translation>Abzug</translation>
    </message>
    <message>
        <source>Facts of the position</source>
        <translation>Tatsachen der Stellung</translation>
    </message>
    <message>
        <source>Hanging is judged by the captures on that square alone. Point at a square&apos;s name to see it on the board.</source>
        <translation>Ob etwas hängt, entscheiden allein die Schlagfälle auf dem Feld. Auf den Namen eines Felds zeigen, um es auf dem Brett zu sehen.</translation>
    </message>
    <message>
        <source>Escape ends this.</source>
        <translation>Esc beendet dies.</translation>
    </message>
    <message>
        <source>Result</source>
        <translation>Ergebnis</translation>
    </message>
    <message>
        <source>Event</source>
        <translation>Turnier</translation>
    </message>
    <message>
        <source>Round</source>
        <translation>Runde</translation>
    </message>
    <message>
        <source>Date</source>
        <translation>Datum</translation>
    </message>
    <message>
        <source>Games in {name}</source>
        <translation>Partien in {name}</translation>
    </message>
    <message>
        <source>Find by player, event, result …</source>
        <translation>Nach Spieler, Turnier, Ergebnis suchen …</translation>
    </message>
    <message>
        <source>Find games</source>
        <translation>Partien suchen</translation>
    </message>
    <message>
        <source>Games</source>
        <translation>Partien</translation>
    </message>
    <message>
        <source>Open this game</source>
        <translation>Diese Partie öffnen</translation>
    </message>
    <message>
        <source>{total:,} games</source>
        <translation>{total:,} Partien</translation>
    </message>
    <message>
        <source>{shown:,} of {total:,} games</source>
        <translation>{shown:,} von {total:,} Partien</translation>
    </message>
    <message>
        <source>Headers</source>
        <translation>Kopfdaten</translation>
    </message>
    <message>
        <source>The tags of the game, as PGN has them. Empty values are left out.</source>
        <translation>Die Tags der Partie, wie PGN sie kennt. Leere Werte werden weggelassen.</translation>
    </message>
    <message>
        <source>Tags of the game</source>
        <translation>Tags der Partie</translation>
    </message>
    <message>
        <source>Tag</source>
        <translation>Tag</translation>
    </message>
    <message>
        <source>Value</source>
        <translation>Wert</translation>
    </message>
    <message>
        <source>Add a tag</source>
        <translation>Tag hinzufügen</translation>
    </message>
    <message>
        <source>Name the opening</source>
        <translation>Eröffnung benennen</translation>
    </message>
    <message>
        <source>Fill in ECO and Opening from the positions of the game</source>
        <translation>ECO und Opening aus den Stellungen der Partie eintragen</translation>
    </message>
    <message>
        <source>Open a game</source>
        <translation>Partie öffnen</translation>
    </message>
    <message>
        <source>Drop a PGN file on the desk or choose Study › Open. A study is made of it and stored at once.</source>
        <translation>Eine PGN-Datei auf das Pult ziehen oder Studie › Öffnen wählen. Daraus entsteht eine Studie, die sofort gespeichert ist.</translation>
    </message>
    <message>
        <source>Place it</source>
        <translation>Einordnen</translation>
    </message>
    <message>
        <source>Fill in players, event and date under Study › Headers; they head the sheet and the captions.</source>
        <translation>Spieler, Turnier und Datum unter Studie › Kopfdaten eintragen; sie stehen über Studienblatt und Untertiteln.</translation>
    </message>
    <message>
        <source>Add side-lines</source>
        <translation>Nebenvarianten hinzufügen</translation>
    </message>
    <message>
        <source>Play another move on the board: it becomes a side-line in a lane of its own.</source>
        <translation>Auf dem Brett einen anderen Zug spielen: er wird eine Nebenvariante in einer eigenen Spur.</translation>
    </message>
    <message>
        <source>Write</source>
        <translation>Schreiben</translation>
    </message>
    <message>
        <source>Each move has its spoken line on the right. The next move that you play while the cursor is in the line is played at that word; drag its tag to another one, or put a cue with Ctrl+K. Greeting, closing and thanks are under Script.</source>
        <translation>Jeder Zug hat rechts seinen Sprechtext. Der nächste Zug, der gespielt wird, während die Schreibmarke im Text steht, wird bei diesem Wort ausgeführt; seine Marke lässt sich zu einem anderen ziehen, und Strg+K setzt ein Stichwort. Begrüßung, Schluss und Dank stehen unter Skript.</translation>
    </message>
    <message>
        <source>Time it</source>
        <translation>Zeit planen</translation>
    </message>
    <message>
        <source>Set the slot with Ctrl+T. The ruler below shows the talk to scale and how much it is over or under.</source>
        <translation>Mit Strg+T das Zeitfenster festlegen. Die Zeitleiste unten zeigt den Vortrag maßstäblich und um wie viel er zu lang oder zu kurz ist.</translation>
    </message>
    <message>
        <source>Rehearse and record</source>
        <translation>Proben und aufnehmen</translation>
    </message>
    <message>
        <source>Ctrl+2 and Ctrl+3. Space begins and goes on, Ctrl+Space stops; move pieces to wander off, Backspace comes back. Takes are stored second by second while you speak.</source>
        <translation>Strg+2 und Strg+3. Leertaste beginnt und geht weiter, Strg+Leertaste hält an; Figuren ziehen schweift ab, Rücktaste kommt zurück. Takes werden beim Sprechen Sekunde für Sekunde gespeichert.</translation>
    </message>
    <message>
        <source>Ctrl+4 makes video, captions, study sheet, page and more, all from the same timeline. What has not changed since the last time is kept.</source>
        <translation>Strg+4 macht Video, Untertitel, Studienblatt, Seite und mehr, alles aus derselben Zeitachse. Was sich seit dem letzten Mal nicht geändert hat, bleibt liegen.</translation>
    </message>
    <message>
        <source>There is nothing to save: every change is stored when it is made.</source>
        <translation>Zu speichern gibt es nichts: jede Änderung ist sofort gespeichert.</translation>
    </message>
    <message>
        <source>A position-study board with a timed script.</source>
        <translation>Ein Brett zum Studieren von Stellungen, mit einem Skript nach der Uhr.</translation>
    </message>
    <message>
        <source>Free software under the GNU General Public License, version 3 or later. It comes without any warranty.</source>
        <translation>Freie Software unter der GNU General Public License, Version 3 oder später. Ohne jede Gewährleistung.</translation>
    </message>
    <message>
        <source>&lt;b&gt;Fair play.&lt;/b&gt; Engine and archive help is for finished games: the event&apos;s and the arbiter&apos;s rules come first, and live rounds may have a broadcast delay.</source>
        <translation>&lt;b&gt;Fair Play.&lt;/b&gt; Hilfe von Engine und Archiv ist für beendete Partien: die Regeln des Turniers und des Schiedsrichters gehen vor, und laufende Runden können zeitversetzt übertragen werden.</translation>
    </message>
    <message>
        <source>&lt;b&gt;Rights.&lt;/b&gt; Names, photographs and sponsors&apos; material are the publisher&apos;s responsibility.</source>
        <translation>&lt;b&gt;Rechte.&lt;/b&gt; Namen, Fotos und Material von Sponsoren verantwortet, wer veröffentlicht.</translation>
    </message>
    <message>
        <source> or </source>
        <translation> oder </translation>
    </message>
    <message>
        <source>Lanes</source>
        <translation>Spuren</translation>
    </message>
    <message>
        <source>Nothing is said here.</source>
        <translation>Hier wird nichts gesprochen.</translation>
    </message>
    <message>
        <source>{rows} rows are chosen.</source>
        <translation>{rows} Zeilen sind gewählt.</translation>
    </message>
    <message>
        <source>Fold side-lines</source>
        <translation>Nebenvarianten einklappen</translation>
    </message>
    <message>
        <source>Show side-lines</source>
        <translation>Nebenvarianten zeigen</translation>
    </message>
    <message>
        <source>drag to reorder, or onto another move</source>
        <translation>ziehen, um umzuordnen oder an einen anderen Zug zu hängen</translation>
    </message>
    <message>
        <source>{move} after {other}</source>
        <translation>{move} nach {other}</translation>
    </message>
    <message>
        <source>does not fit here</source>
        <translation>passt hier nicht</translation>
    </message>
    <message>
        <source>{rows} chosen</source>
        <translation>{rows} gewählt</translation>
    </message>
    <message>
        <source>Main line</source>
        <translation>Hauptlinie</translation>
    </message>
    <message>
        <source>Nothing is said here yet</source>
        <translation>Hier wird noch nichts gesprochen</translation>
    </message>
    <message>
        <source>think {seconds}</source>
        <translation>denken {seconds}</translation>
    </message>
    <message>
        <source>think</source>
        <translation>denken</translation>
    </message>
    <message>
        <source>Greeting</source>
        <translation>Begrüßung</translation>
    </message>
    <message>
        <source>Closing</source>
        <translation>Schluss</translation>
    </message>
    <message>
        <source>Thanks</source>
        <translation>Dank</translation>
    </message>
    <message>
        <source>{seconds} seconds</source>
        <translation>{seconds} Sekunden</translation>
    </message>
    <message>
        <source>{text}, {over} over</source>
        <translation>{text}, {over} zu lang</translation>
    </message>
    <message>
        <source>Note: {note}</source>
        <translation>Notiz: {note}</translation>
    </message>
    <message>
        <source>{estimated:.1f} s estimated</source>
        <translation>{estimated:.1f} s geschätzt</translation>
    </message>
    <message>
        <source>{intended:g} s intended, {estimated:.1f} s estimated</source>
        <translation>{intended:g} s vorgesehen, {estimated:.1f} s geschätzt</translation>
    </message>
    <message>
        <source>{seconds} s</source>
        <translation>{seconds} s</translation>
    </message>
    <message>
        <source>Side-line</source>
        <translation>Nebenvariante</translation>
    </message>
    <message>
        <source>not told</source>
        <translation>nicht erzählt</translation>
    </message>
    <message>
        <source>told first</source>
        <translation>zuerst erzählt</translation>
    </message>
    <message>
        <source>told after {move}</source>
        <translation>erzählt nach {move}</translation>
    </message>
    <message>
        <source>Microphone level</source>
        <translation>Mikrofonpegel</translation>
    </message>
    <message>
        <source>cut off</source>
        <translation>abgeschnitten</translation>
    </message>
    <message>
        <source>very loud</source>
        <translation>sehr laut</translation>
    </message>
    <message>
        <source>silent</source>
        <translation>still</translation>
    </message>
    <message>
        <source>too quiet</source>
        <translation>zu leise</translation>
    </message>
    <message>
        <source>good</source>
        <translation>gut</translation>
    </message>
    <message>
        <source>Write the spoken line</source>
        <translation>Sprechtext schreiben</translation>
    </message>
    <message>
        <source>Write a note</source>
        <translation>Notiz schreiben</translation>
    </message>
    <message>
        <source>Line</source>
        <translation>Text</translation>
    </message>
    <message>
        <source>Length of the line</source>
        <translation>Länge des Sprechtexts</translation>
    </message>
    <message>
        <source>What do you say here?</source>
        <translation>Was wird hier gesprochen?</translation>
    </message>
    <message>
        <source>Intended length of this beat</source>
        <translation>Vorgesehene Länge dieser Station</translation>
    </message>
    <message>
        <source>as estimated</source>
        <translation>wie geschätzt</translation>
    </message>
    <message>
        <source>Think pause after the line</source>
        <translation>Denkpause nach dem Sprechtext</translation>
    </message>
    <message>
        <source>Put a cue at the cursor: a move is played, or a mark appears, at the word that follows. Playing the next move on the board while the cursor is in the line does the same.</source>
        <translation>Ein Stichwort an der Schreibmarke setzen: bei dem folgenden Wort wird ein Zug ausgeführt oder erscheint eine Markierung. Den nächsten Zug auf dem Brett zu spielen, während die Schreibmarke im Text steht, bewirkt dasselbe.</translation>
    </message>
    <message>
        <source>Lasts</source>
        <translation>Dauert</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>{side} has the majority on the kingside: {pawns} to {number}.</source>
        <translation>{side} hat die Mehrheit am Königsflügel: {pawns} gegen {number}.</translation>
    </message>
    <message>
        <source>{side} has the majority on the queenside: {pawns} to {number}.</source>
        <translation>{side} hat die Mehrheit am Damenflügel: {pawns} gegen {number}.</translation>
    </message>
    <message>
        <source>{owner}&apos;s pawn on {squares} is passed.</source>
        <translation>Freibauer von {owner}: {squares}.</translation>
    </message>
    <message>
        <source>{owner}&apos;s pawns on {squares} are passed.</source>
        <translation>Freibauern von {owner}: {squares}.</translation>
    </message>
    <message>
        <source>{owner}&apos;s pawn on {squares} is isolated.</source>
        <translation>Isolierter Bauer von {owner}: {squares}.</translation>
    </message>
    <message>
        <source>{owner}&apos;s pawns on {squares} are isolated.</source>
        <translation>Isolierte Bauern von {owner}: {squares}.</translation>
    </message>
    <message>
        <source>{owner}&apos;s pawn on {squares} is backward.</source>
        <translation>Rückständiger Bauer von {owner}: {squares}.</translation>
    </message>
    <message>
        <source>{owner}&apos;s pawns on {squares} are backward.</source>
        <translation>Rückständige Bauern von {owner}: {squares}.</translation>
    </message>
    <message>
        <source>{owner} has doubled pawns on the {file}-file.</source>
        <translation>{owner} hat einen Doppelbauern auf der {file}-Linie.</translation>
    </message>
    <message>
        <source>{owner} has {islands}.</source>
        <translation>{owner} hat {islands}.</translation>
    </message>
    <message>
        <source>How long this beat should take. Empty: as long as the words take at your pace.</source>
        <translation>Wie lange diese Station dauern soll. Leer: so lange, wie die Worte im eigenen Sprechtempo dauern.</translation>
    </message>
    <message>
        <source>Silence after the line in which the viewer is asked to find the move.</source>
        <translation>Stille nach dem Sprechtext, in der die Zuschauer den Zug finden sollen.</translation>
    </message>
    <message>
        <source>Cue</source>
        <translation>Stichwort</translation>
    </message>
    <message>
        <source>Every move and mark of this beat has its cue already.</source>
        <translation>Jeder Zug und jede Markierung dieser Station hat schon ein Stichwort.</translation>
    </message>
    <message>
        <source>Fit the talk to its slot</source>
        <translation>Vortrag ins Zeitfenster einpassen</translation>
    </message>
    <message>
        <source>Set the slot first: a talk is fitted to its length.</source>
        <translation>Erst das Zeitfenster festlegen: ein Vortrag wird auf seine Länge eingepasst.</translation>
    </message>
    <message>
        <source>Every beat is locked: unlock some, so that there is something to fit.</source>
        <translation>Jede Station ist fixiert: einige freigeben, damit es etwas einzupassen gibt.</translation>
    </message>
    <message>
        <source>This is not told, so it has no length to lock.</source>
        <translation>Dies wird nicht erzählt und hat keine Länge, die fixiert werden könnte.</translation>
    </message>
    <message>
        <source>Lock the length</source>
        <translation>Länge fixieren</translation>
    </message>
    <message>
        <source>Unlock the length</source>
        <translation>Länge freigeben</translation>
    </message>
    <message>
        <source>The lengths are locked already.</source>
        <translation>Die Längen sind bereits fixiert.</translation>
    </message>
    <message>
        <source>No length here is locked.</source>
        <translation>Hier ist keine Länge fixiert.</translation>
    </message>
    <message>
        <source>Lock the lengths</source>
        <translation>Längen fixieren</translation>
    </message>
    <message>
        <source>Unlock the lengths</source>
        <translation>Längen freigeben</translation>
    </message>
    <message>
        <source>Set the intended length</source>
        <translation>Vorgesehene Länge festlegen</translation>
    </message>
    <message>
        <source>No length is locked.</source>
        <translation>Es ist keine Länge fixiert.</translation>
    </message>
    <message>
        <source>There is no cue at the cursor.</source>
        <translation>An der Schreibmarke steht kein Stichwort.</translation>
    </message>
    <message>
        <source>Cue at “{word}”</source>
        <translation>Stichwort bei „{word}“</translation>
    </message>
    <message>
        <source>Cue after the last word</source>
        <translation>Stichwort nach dem letzten Wort</translation>
    </message>
    <message>
        <source>Set the think pause</source>
        <translation>Denkpause festlegen</translation>
    </message>
    <message>
        <source>Choose a glyph</source>
        <translation>Zeichen wählen</translation>
    </message>
    <message>
        <source>No move or mark here</source>
        <translation>Hier ist kein Zug und keine Markierung</translation>
    </message>
    <message>
        <source>{part}: said {when}</source>
        <translation>{part}: gesprochen {when}</translation>
    </message>
    <message>
        <source>Note for print at {label}</source>
        <translation>Notiz für den Druck bei {label}</translation>
    </message>
    <message>
        <source>Spoken line at {label}</source>
        <translation>Sprechtext bei {label}</translation>
    </message>
    <message>
        <source>Note for print</source>
        <translation>Drucknotiz</translation>
    </message>
    <message>
        <source>Note for print •</source>
        <translation>Drucknotiz •</translation>
    </message>
    <message>
        <source>Note for print, written</source>
        <translation>Notiz für den Druck, beschrieben</translation>
    </message>
    <message>
        <source>Note for print, empty</source>
        <translation>Notiz für den Druck, leer</translation>
    </message>
    <message>
        <source>move not there</source>
        <translation>Zug nicht vorhanden</translation>
    </message>
    <message>
        <source>mark not there</source>
        <translation>Markierung nicht vorhanden</translation>
    </message>
    <message>
        <source>the start</source>
        <translation>Anfang</translation>
    </message>
    <message>
        <source>Think pause</source>
        <translation>Denkpause</translation>
    </message>
    <message>
        <source>before the first move</source>
        <translation>vor dem ersten Zug</translation>
    </message>
    <message>
        <source>after the last move</source>
        <translation>nach dem letzten Zug</translation>
    </message>
    <message>
        <source>at the very end</source>
        <translation>ganz am Ende</translation>
    </message>
    <message>
        <source>1 word</source>
        <translation>1 Wort</translation>
    </message>
    <message>
        <source>{words} words</source>
        <translation>{words} Wörter</translation>
    </message>
    <message>
        <source>{seconds:.1f} s</source>
        <translation>{seconds:.1f} s</translation>
    </message>
    <message>
        <source>, {over:.1f} s too short</source>
        <translation>, {over:.1f} s zu kurz</translation>
    </message>
    <message>
        <source>set to {seconds} s{over}</source>
        <translation>auf {seconds} s gesetzt{over}</translation>
    </message>
    <message>
        <source>think {seconds} s</source>
        <translation>denken {seconds} s</translation>
    </message>
    <message>
        <source>Note before the move</source>
        <translation>Notiz vor dem Zug</translation>
    </message>
    <message>
        <source>Before the move: what leads up to it</source>
        <translation>Vor dem Zug: was zu ihm hinführt</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>What should stand in print, not in the talk?</source>
        <translation>Was soll gedruckt stehen und nicht gesprochen werden?</translation>
    </message>
    <message>
        <source>The move</source>
        <translation>Der Zug</translation>
    </message>
    <message>
        <source>The position</source>
        <translation>Die Stellung</translation>
    </message>
    <message>
        <source>Before</source>
        <translation>Davor</translation>
    </message>
    <message>
        <source>Glyphs</source>
        <translation>Zeichen</translation>
    </message>
    <message>
        <source>{name}: annotation glyph</source>
        <translation>{name}: Bewertungszeichen</translation>
    </message>
    <message>
        <source>{name}, as a numeric annotation glyph of the PGN standard</source>
        <translation>{name}, als numerisches Bewertungszeichen (NAG) des PGN-Standards</translation>
    </message>
    <message>
        <source>{name}: no sign</source>
        <translation>{name}: kein Zeichen</translation>
    </message>
    <message>
        <source>{name}, in seconds</source>
        <translation>{name}, in Sekunden</translation>
    </message>
    <message>
        <source>{seconds:g} s</source>
        <translation>{seconds:g} s</translation>
    </message>
    <message>
        <source>Cue: {words}</source>
        <translation>Stichwort: {words}</translation>
    </message>
    <message>
        <source>&amp;Recent</source>
        <translation>&amp;Zuletzt geöffnet</translation>
    </message>
    <message>
        <source>“{name}” is what is on the desk.</source>
        <translation>„{name}“ liegt bereits auf dem Pult.</translation>
    </message>
    <message>
        <source>Going on in “{name}”.</source>
        <translation>Weiter geht es in „{name}“.</translation>
    </message>
    <message>
        <source>Prompter</source>
        <translation>Prompter</translation>
    </message>
    <message>
        <source>{title} – Studyboard</source>
        <translation>{title} – Studyboard</translation>
    </message>
    <message>
        <source>, {distance}</source>
        <translation>, {distance}</translation>
    </message>
    <message>
        <source>Rehearsed in {length}{against}. The seconds of each beat are kept beside the plan.</source>
        <translation>Geprobt in {length}{against}. Die Sekunden jeder Station bleiben neben dem Plan stehen.</translation>
    </message>
    <message>
        <source>What could not be read</source>
        <translation>Was nicht gelesen werden konnte</translation>
    </message>
    <message>
        <source>Slate, high contrast</source>
        <translation>Schiefer, starker Kontrast</translation>
    </message>
    <message>
        <source>Clay</source>
        <translation>Lehm</translation>
    </message>
    <message>
        <source>Mist</source>
        <translation>Nebel</translation>
    </message>
    <message>
        <source>&amp;Theme</source>
        <translation>Fa&amp;rben</translation>
    </message>
    <message>
        <source>As the &amp;system</source>
        <translation>&amp;Wie das System</translation>
    </message>
    <message>
        <source>&amp;Light</source>
        <translation>&amp;Hell</translation>
    </message>
    <message>
        <source>&amp;Dark</source>
        <translation>&amp;Dunkel</translation>
    </message>
    <message>
        <source>&amp;Board colours</source>
        <translation>&amp;Brettfarben</translation>
    </message>
    <message>
        <source>P&amp;ieces</source>
        <translation>&amp;Figuren</translation>
    </message>
    <message>
        <source>Lan&amp;guage</source>
        <translation>&amp;Sprache</translation>
    </message>
    <message>
        <source>The desk speaks the language that was chosen when it is started next.</source>
        <translation>Das Pult spricht die gewählte Sprache, sobald es neu gestartet wird.</translation>
    </message>
    <message>
        <source>Nothing yet</source>
        <translation>Noch nichts</translation>
    </message>
    <message>
        <source>Notice</source>
        <translation>Hinweis</translation>
    </message>
    <message>
        <source>Show all</source>
        <translation>Alles zeigen</translation>
    </message>
    <message>
        <source>Got it</source>
        <translation>OK</translation>
    </message>
    <message>
        <source>The last recording was cut off. {names} was kept up to its last second; it is in the booth.</source>
        <translation>Die letzte Aufnahme ist abgerissen. {names} wurde bis zur letzten Sekunde behalten; zu finden in der Sprecherkabine.</translation>
    </message>
    <message>
        <source>line {line}, column {column}</source>
        <translation>Zeile {line}, Spalte {column}</translation>
    </message>
    <message>
        <source>One place of the game could not be read ({where}): {message}</source>
        <translation>Eine Stelle der Partie konnte nicht gelesen werden ({where}): {message}</translation>
    </message>
    <message>
        <source>{count} places of the game could not be read; the first at {where}: {message}</source>
        <translation>{count} Stellen der Partie konnten nicht gelesen werden; die erste: {where}: {message}</translation>
    </message>
    <message>
        <source>“{name}” lies where nothing can be written, so it is open to be read only. Study › Save as goes on with a copy.</source>
        <translation>„{name}“ liegt dort, wo nicht geschrieben werden kann, und ist darum nur zum Lesen geöffnet. Studie › Speichern unter geht mit einer Kopie weiter.</translation>
    </message>
    <message>
        <source>The folder for new studies cannot be made: {reason}. Set the environment variable STUDYBOARD_STUDIES to another one.</source>
        <translation>Der Ordner für neue Studien lässt sich nicht anlegen: {reason}. Die Umgebungsvariable STUDYBOARD_STUDIES nennt einen anderen.</translation>
    </message>
    <message>
        <source>“{name}” cannot be opened: {reason}.</source>
        <translation>„{name}“ lässt sich nicht öffnen: {reason}.</translation>
    </message>
    <message>
        <source>“{name}” cannot be read: {reason}.</source>
        <translation>„{name}“ lässt sich nicht lesen: {reason}.</translation>
    </message>
    <message>
        <source>“{name}” holds no game: a PGN file has tags in square brackets, then moves.</source>
        <translation>„{name}“ enthält keine Partie: eine PGN-Datei hat Tags in eckigen Klammern, danach Züge.</translation>
    </message>
    <message>
        <source>Promote the pawn to</source>
        <translation>Bauer umwandeln in</translation>
    </message>
    <message>
        <source>Promote to {piece}</source>
        <translation>In {piece} umwandeln</translation>
    </message>
    <message>
        <source>Elapsed and planned time</source>
        <translation>Vergangene und geplante Zeit</translation>
    </message>
    <message>
        <source>Ahead of or behind the plan</source>
        <translation>Vor oder hinter dem Plan</translation>
    </message>
    <message>
        <source>Time of this beat</source>
        <translation>Zeit dieser Station</translation>
    </message>
    <message>
        <source>Where the talk is</source>
        <translation>Wo der Vortrag steht</translation>
    </message>
    <message>
        <source>What the next press does</source>
        <translation>Was der nächste Tastendruck bewirkt</translation>
    </message>
    <message>
        <source>The line after that</source>
        <translation>Der Sprechtext danach</translation>
    </message>
    <message>
        <source>Nothing to tell yet</source>
        <translation>Noch nichts zu erzählen</translation>
    </message>
    <message>
        <source>Write a spoken line, then come back to rehearse it.</source>
        <translation>Einen Sprechtext schreiben und dann zum Proben zurückkommen.</translation>
    </message>
    <message>
        <source>{label} · side-line</source>
        <translation>{label} · Nebenvariante</translation>
    </message>
    <message>
        <source>think pause, {seconds:.0f} s</source>
        <translation>Denkpause, {seconds:.0f} s</translation>
    </message>
    <message>
        <source>Off the running order: Backspace comes back.</source>
        <translation>Abseits des Ablaufs: Rücktaste kommt zurück.</translation>
    </message>
    <message>
        <source>Space begins</source>
        <translation>Leertaste beginnt</translation>
    </message>
    <message>
        <source>Space begins the take</source>
        <translation>Leertaste beginnt den Take</translation>
    </message>
    <message>
        <source>{what} here.</source>
        <translation>{what} hier.</translation>
    </message>
    <message>
        <source>{what}.</source>
        <translation>{what}.</translation>
    </message>
    <message>
        <source>Space ends the run-through.</source>
        <translation>Leertaste beendet den Durchlauf.</translation>
    </message>
    <message>
        <source>Next on the board: {what}</source>
        <translation>Als Nächstes auf dem Brett: {what}</translation>
    </message>
    <message>
        <source>nothing moves; {value}</source>
        <translation>nichts zieht; {value}</translation>
    </message>
    <message>
        <source>back to {label}</source>
        <translation>zurück zu {label}</translation>
    </message>
    <message>
        <source>planned {distance}</source>
        <translation>geplant {distance}</translation>
    </message>
    <message>
        <source>{seconds:.0f} s behind</source>
        <translation>{seconds:.0f} s zurück</translation>
    </message>
    <message>
        <source>{seconds:.0f} s ahead</source>
        <translation>{seconds:.0f} s voraus</translation>
    </message>
    <message>
        <source>{time} left</source>
        <translation>noch {time}</translation>
    </message>
    <message>
        <source>on time</source>
        <translation>im Plan</translation>
    </message>
    <message>
        <source>this beat {seconds:.0f} of {planned:.0f} s</source>
        <translation>diese Station {seconds:.0f} von {planned:.0f} s</translation>
    </message>
    <message>
        <source>{seconds:.0f} of {planned:.0f} s</source>
        <translation>{seconds:.0f} von {planned:.0f} s</translation>
    </message>
    <message>
        <source>The talk ends here.</source>
        <translation>Hier endet der Vortrag.</translation>
    </message>
    <message>
        <source>The line to say now</source>
        <translation>Der Sprechtext, der jetzt dran ist</translation>
    </message>
    <message>
        <source>The read-through has no query.</source>
        <translation>Die Durchsicht hat keine Rückfrage.</translation>
    </message>
    <message>
        <source>{label} is on the tree now. Ctrl+Z takes it off again.</source>
        <translation>{label} steht jetzt im Baum. Strg+Z nimmt es wieder heraus.</translation>
    </message>
    <message>
        <source>Read-through</source>
        <translation>Durchsicht</translation>
    </message>
    <message>
        <source>Queries</source>
        <translation>Rückfragen</translation>
    </message>
    <message>
        <source>Read again</source>
        <translation>Neu durchsehen</translation>
    </message>
    <message>
        <source>Leave it</source>
        <translation>Abweisen</translation>
    </message>
    <message>
        <source>Reading …</source>
        <translation>Wird gelesen …</translation>
    </message>
    <message>
        <source>No query</source>
        <translation>Keine Rückfrage</translation>
    </message>
    <message>
        <source>One query</source>
        <translation>Eine Rückfrage</translation>
    </message>
    <message>
        <source>{count} queries</source>
        <translation>{count} Rückfragen</translation>
    </message>
    <message>
        <source>, {left} left</source>
        <translation>, {left} abgewiesen</translation>
    </message>
    <message>
        <source>{count}{also}. The board confirms {confirmed} statements; {unchecked} it cannot decide.</source>
        <translation>{count}{also}. Vom Brett bestätigt: {confirmed} Aussagen; nicht entscheidbar: {unchecked}.</translation>
    </message>
    <message>
        <source>Next</source>
        <translation>Nächste</translation>
    </message>
    <message>
        <source>Fix</source>
        <translation>Beheben</translation>
    </message>
    <message>
        <source>Add</source>
        <translation>Hinzufügen</translation>
    </message>
    <message>
        <source> ({number} of {count})</source>
        <translation> ({number} von {count})</translation>
    </message>
    <message>
        <source>{label} is not on the tree yet.</source>
        <translation>{label} steht noch nicht im Baum.</translation>
    </message>
    <message>
        <source>Ctrl+Return adds it as a side-line.</source>
        <translation>Strg+Eingabe fügt es als Nebenvariante hinzu.</translation>
    </message>
    <message>
        <source>Take {id}</source>
        <translation>Take {id}</translation>
    </message>
    <message>
        <source>slot {length}</source>
        <translation>Zeitfenster {length}</translation>
    </message>
    <message>
        <source>Slot</source>
        <translation>Zeitfenster</translation>
    </message>
    <message>
        <source>for example 8:30; empty for none</source>
        <translation>zum Beispiel 8:30; leer für keines</translation>
    </message>
    <message>
        <source>Length of the slot in minutes and seconds</source>
        <translation>Länge des Zeitfensters in Minuten und Sekunden</translation>
    </message>
    <message>
        <source>The length that the talk should have. It is planned at {length}.</source>
        <translation>Die Länge, die der Vortrag haben soll. Geplant sind {length}.</translation>
    </message>
    <message>
        <source>Write minutes and seconds, as in 8:30.</source>
        <translation>Minuten und Sekunden schreiben, wie 8:30.</translation>
    </message>
    <message>
        <source>Stage</source>
        <translation>Bühne</translation>
    </message>
    <message>
        <source>Captions below the board</source>
        <translation>Untertitel unter dem Brett</translation>
    </message>
    <message>
        <source>Safe margins</source>
        <translation>Sichere Ränder</translation>
    </message>
    <message>
        <source>Flip the board</source>
        <translation>Brett drehen</translation>
    </message>
    <message>
        <source>Mirrored (M)</source>
        <translation>Gespiegelt (M)</translation>
    </message>
    <message>
        <source>Larger type (+)</source>
        <translation>Größere Schrift (+)</translation>
    </message>
    <message>
        <source>Smaller type (−)</source>
        <translation>Kleinere Schrift (−)</translation>
    </message>
    <message>
        <source>Full screen (F11)</source>
        <translation>Vollbild (F11)</translation>
    </message>
    <message>
        <source>Wide (16:9)</source>
        <translation>Breit (16:9)</translation>
    </message>
    <message>
        <source>Tall (9:16)</source>
        <translation>Hoch (9:16)</translation>
    </message>
    <message>
        <source>Square (1:1)</source>
        <translation>Quadratisch (1:1)</translation>
    </message>
    <message>
        <source>Free</source>
        <translation>Frei</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papier</translation>
    </message>
    <message>
        <source>Green, for keying</source>
        <translation>Grün, zum Stanzen</translation>
    </message>
    <message>
        <source>Blue, for keying</source>
        <translation>Blau, zum Stanzen</translation>
    </message>
    <message>
        <source>What will you tell today?</source>
        <translation>Was wird heute erzählt?</translation>
    </message>
    <message>
        <source>Open a game or study…</source>
        <translation>Partie oder Studie öffnen…</translation>
    </message>
    <message>
        <source>Take the tour: a finished talk</source>
        <translation>Rundgang: ein fertiger Vortrag</translation>
    </message>
    <message>
        <source>Begin with an empty board</source>
        <translation>Mit leerem Brett beginnen</translation>
    </message>
    <message>
        <source>Or go on with</source>
        <translation>Oder weiter mit</translation>
    </message>
    <message>
        <source>A PGN file can be dropped here too.</source>
        <translation>Auch eine PGN-Datei lässt sich hierher ziehen.</translation>
    </message>
    <message>
        <source>What went wrong</source>
        <translation>Was schiefging</translation>
    </message>
    <message>
        <source>The folder for studies cannot be made: {reason}.</source>
        <translation>Der Ordner für Studien lässt sich nicht anlegen: {reason}.</translation>
    </message>
    <message>
        <source>Time ruler</source>
        <translation>Zeitleiste</translation>
    </message>
    <message>
        <source>No beat is told here.</source>
        <translation>Hier wird keine Station erzählt.</translation>
    </message>
    <message>
        <source>Its length is locked.</source>
        <translation>Ihre Länge ist fixiert.</translation>
    </message>
    <message>
        <source>Beat {index} of {total}: {told} From {start}, {seconds} seconds. {locked} {slot}</source>
        <translation>Station {index} von {total}: {told} Ab {start}, {seconds} Sekunden. {locked} {slot}</translation>
    </message>
    <message>
        <source>, locked</source>
        <translation>, fixiert</translation>
    </message>
    <message>
        <source>{start}, {seconds:.1f} s{think}{locked}</source>
        <translation>{start}, {seconds:.1f} s{think}{locked}</translation>
    </message>
    <message>
        <source>Nothing is told yet: play a move or write a line.</source>
        <translation>Noch wird nichts erzählt: einen Zug spielen oder einen Text schreiben.</translation>
    </message>
    <message>
        <source>, of it {think:g} s to think</source>
        <translation>, davon {think:g} s zum Nachdenken</translation>
    </message>
    <message>
        <source>Rehearse</source>
        <translation>Proben</translation>
    </message>
    <message>
        <source>Study</source>
        <translation>Studie</translation>
    </message>
    <message>
        <source>Length of the talk against its slot</source>
        <translation>Länge des Vortrags gegen sein Zeitfenster</translation>
    </message>
    <message>
        <source>planned {length}</source>
        <translation>geplant {length}</translation>
    </message>
    <message>
        <source>{planned} · no slot set</source>
        <translation>{planned} · kein Zeitfenster</translation>
    </message>
    <message>
        <source>Slot {slot} · {planned} · {distance}</source>
        <translation>Zeitfenster {slot} · {planned} · {distance}</translation>
    </message>
    <message>
        <source>Slot {slot} · {distance}</source>
        <translation>Zeitfenster {slot} · {distance}</translation>
    </message>
    <message>
        <source>it has castled</source>
        <translation>Rochade</translation>
    </message>
    <message>
        <source>{piece} has left</source>
        <translation>{piece} ist weggezogen</translation>
    </message>
    <message>
        <source>{piece} stands in the way</source>
        <translation>{piece} steht im Weg</translation>
    </message>
    <message>
        <source>{piece} has left {squares} and stands in the way of {more}</source>
        <translation>{piece} hat {squares} verlassen und verstellt {more}</translation>
    </message>
    <message>
        <source>{owner} no longer covers {squares}: {why}.</source>
        <translation>{owner} deckt {squares} nicht mehr: {why}.</translation>
    </message>
    <message>
        <source>{piece} now covers {squares}</source>
        <translation>{piece} deckt jetzt {squares}</translation>
    </message>
    <message>
        <source>a line has opened</source>
        <translation>eine Linie ist offen</translation>
    </message>
    <message>
        <source>{owner} also covers {squares} now: {why}.</source>
        <translation>{owner} deckt jetzt auch {squares}: {why}.</translation>
    </message>
    <message>
        <source>{owner} covers {squares} now: {why}.</source>
        <translation>{owner} deckt jetzt {squares}: {why}.</translation>
    </message>
    <message>
        <source>{side} no longer covers {squares}, since {other}&apos;s move.</source>
        <translation>{side} deckt {squares} seit dem Zug von {other} nicht mehr.</translation>
    </message>
    <message>
        <source>double check</source>
        <translation>Doppelschach</translation>
    </message>
    <message>
        <source>check</source>
        <translation>Schach</translation>
    </message>
    <message>
        <source>{side} is in {double} from {pieces}.</source>
        <translation>{side} steht im {double}: {pieces}.</translation>
    </message>
    <message>
        <source>{side} is checkmated.</source>
        <translation>{side} ist matt.</translation>
    </message>
    <message>
        <source>{side} is stalemated: the game is drawn.</source>
        <translation>{side} ist patt: die Partie ist remis.</translation>
    </message>
    <message>
        <source>Neither side can give mate any more: the game is drawn.</source>
        <translation>Keine Seite kann mehr mattsetzen: die Partie ist remis.</translation>
    </message>
    <message>
        <source>{piece} hangs: {taker} takes it and nothing protects it.</source>
        <translation>{piece} hängt: {taker} schlägt, nichts deckt.</translation>
    </message>
    <message>
        <source>a pawn</source>
        <translation>einen Bauern</translation>
    </message>
    <message>
        <source>{loss} points</source>
        <translation>{loss} Punkte</translation>
    </message>
    <message>
        <source>{taker} can take {piece} with profit: {owner} loses {loss} although it is protected.</source>
        <translation>{taker} kann {piece} mit Gewinn schlagen: {owner} verliert trotz Deckung {loss}.</translation>
    </message>
    <message>
        <source>{piece} is pinned to its king by {by}.</source>
        <translation>{piece} ist an den König gefesselt: {by}.</translation>
    </message>
    <message>
        <source>mates</source>
        <translation>setzt matt</translation>
    </message>
    <message>
        <source>wins a pawn</source>
        <translation>gewinnt einen Bauern</translation>
    </message>
    <message>
        <source>wins {gain} points</source>
        <translation>gewinnt {gain} Punkte</translation>
    </message>
    <message>
        <source>{side} {what} by force: {line}.</source>
        <translation>{side} {what}, erzwungen: {line}.</translation>
    </message>
    <message>
        <source>The search was stopped.</source>
        <translation>Die Suche wurde angehalten.</translation>
    </message>
    <message>
        <source>{front} is pinned to {behind} by {by}.</source>
        <translation>{front} ist an {behind} gefesselt: {by}.</translation>
    </message>
    <message>
        <source>When {front} leaves, {by} attacks {behind}.</source>
        <translation>Zieht {front} weg, greift {by} auf einmal {behind} an.</translation>
    </message>
    <message>
        <source>{by} skewers {front} and {behind} behind it.</source>
        <translation>{by} spießt {front} auf, dahinter {behind}.</translation>
    </message>
    <message>
        <source>{back} and {front} stand on one line.</source>
        <translation>{back} und {front} stehen auf einer Linie.</translation>
    </message>
    <message>
        <source>a queen</source>
        <translation>eine Dame</translation>
    </message>
    <message>
        <source>a rook</source>
        <translation>einen Turm</translation>
    </message>
    <message>
        <source>a bishop</source>
        <translation>einen Läufer</translation>
    </message>
    <message>
        <source>a knight</source>
        <translation>einen Springer</translation>
    </message>
    <message>
        <source>Material is level.</source>
        <translation>Material gleich.</translation>
    </message>
    <message>
        <source>{side} is {pieces} up.</source>
        <translation>{side} hat {pieces} mehr.</translation>
    </message>
    <message>
        <source>Material is level: {side} has {pieces} for {others}.</source>
        <translation>Material gleich: {side} hat {pieces} für {others}.</translation>
    </message>
    <message>
        <source>{side} has {pieces} for {others} ({points} points to {against}).</source>
        <translation>{side} hat {pieces} für {others} ({points} gegen {against} Punkte).</translation>
    </message>
    <message>
        <source>{side} has the exchange for {pawns}.</source>
        <translation>{side} hat die Qualität für {pawns}.</translation>
    </message>
    <message>
        <source>{side} is the exchange and {pawns} up.</source>
        <translation>{side} hat die Qualität und {pawns} mehr.</translation>
    </message>
    <message>
        <source>{side} is the exchange up.</source>
        <translation>{side} hat die Qualität mehr.</translation>
    </message>
    <message>
        <source>{side} mates in {moves}: {line}.</source>
        <translation>{side} setzt matt in {moves}: {line}.</translation>
    </message>
    <message>
        <source>no</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>one</source>
        <translation>1</translation>
    </message>
    <message>
        <source>two</source>
        <translation>zwei</translation>
    </message>
    <message>
        <source>three</source>
        <translation>drei</translation>
    </message>
    <message>
        <source>four</source>
        <translation>vier</translation>
    </message>
    <message>
        <source>five</source>
        <translation>fünf</translation>
    </message>
    <message>
        <source>six</source>
        <translation>sechs</translation>
    </message>
    <message>
        <source>seven</source>
        <translation>sieben</translation>
    </message>
    <message>
        <source>eight</source>
        <translation>acht</translation>
    </message>
    <message>
        <source>nine</source>
        <translation>neun</translation>
    </message>
    <message>
        <source>ten</source>
        <translation>zehn</translation>
    </message>
    <message>
        <source>pawn</source>
        <translation>Bauer</translation>
    </message>
    <message>
        <source>pawns</source>
        <translation>Bauern</translation>
    </message>
    <message>
        <source>knight</source>
        <translation>Springer</translation>
    </message>
    <message>
        <source>knights</source>
        <translation>Springer</translation>
    </message>
    <message>
        <source>bishop</source>
        <translation>Läufer</translation>
    </message>
    <message>
        <source>bishops</source>
        <translation>Läufer</translation>
    </message>
    <message>
        <source>rook</source>
        <translation>Turm</translation>
    </message>
    <message>
        <source>rooks</source>
        <translation>Türme</translation>
    </message>
    <message>
        <source>queen</source>
        <translation>Dame</translation>
    </message>
    <message>
        <source>queens</source>
        <translation>Damen</translation>
    </message>
    <message>
        <source>king</source>
        <translation>König</translation>
    </message>
    <message>
        <source>kings</source>
        <translation>Könige</translation>
    </message>
    <message>
        <source>move</source>
        <translation>Zug</translation>
    </message>
    <message>
        <source>moves</source>
        <translation>Zügen</translation>
    </message>
    <message>
        <source>pawn island</source>
        <translation>Bauerninsel</translation>
    </message>
    <message>
        <source>pawn islands</source>
        <translation>Bauerninseln</translation>
    </message>
    <message>
        <source>White</source>
        <translation>Weiß</translation>
    </message>
    <message>
        <source>Black</source>
        <translation>Schwarz</translation>
    </message>
    <message>
        <source>{names} and {last}</source>
        <translation>{names} und {last}</translation>
    </message>
    <message>
        <source>{names} or {last}</source>
        <translation>{names} oder {last}</translation>
    </message>
    <message>
        <source>the {piece} on {square}</source>
        <translation>{piece} {square}</translation>
    </message>
    <message>
        <source>the empty square {square}</source>
        <translation>das leere Feld {square}</translation>
    </message>
    <message>
        <source>{side}&apos;s {piece} on {square}</source>
        <translation>{piece} {square} ({side})</translation>
    </message>
    <message>
        <source>{side} has passed: nothing has changed but the turn.</source>
        <translation>{side} hat ausgesetzt: nur das Zugrecht hat gewechselt.</translation>
    </message>
    <message>
        <source>Each side covers the squares that it covered before.</source>
        <translation>Beide Seiten decken dieselben Felder wie zuvor.</translation>
    </message>
    <message>
        <source>{piece}, which is pinned to its king.</source>
        <translation>{piece}, an den König gefesselt.</translation>
    </message>
    <message>
        <source>attacks {pieces}</source>
        <translation>greift an: {pieces}</translation>
    </message>
    <message>
        <source>covers {squares}</source>
        <translation>beherrscht {squares}</translation>
    </message>
    <message>
        <source>, and </source>
        <translation>; </translation>
    </message>
    <message>
        <source>attacks nothing</source>
        <translation>greift nichts an</translation>
    </message>
    <message>
        <source>it {doing}</source>
        <translation>{doing}</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>It guards {kept}.</source>
        <translation>Deckt {kept}.</translation>
    </message>
    <message>
        <source>It is attacked by {pieces}.</source>
        <translation>Angegriffen: {pieces}.</translation>
    </message>
    <message>
        <source>It is not attacked.</source>
        <translation>Nicht angegriffen.</translation>
    </message>
    <message>
        <source>It is guarded by {pieces}.</source>
        <translation>Gedeckt: {pieces}.</translation>
    </message>
    <message>
        <source>It is not guarded.</source>
        <translation>Nicht gedeckt.</translation>
    </message>
    <message>
        <source>Where it could go is open until the check has been answered.</source>
        <translation>Wohin die Figur ziehen kann, ist offen, solange das Schach nicht beantwortet ist.</translation>
    </message>
    <message>
        <source>It</source>
        <translation>Die Figur</translation>
    </message>
    <message>
        <source>{square} is empty.</source>
        <translation>{square} ist leer.</translation>
    </message>
    <message>
        <source>{side} covers it with {names}.</source>
        <translation>{side} beherrscht es: {names}.</translation>
    </message>
    <message>
        <source>{side} does not cover it.</source>
        <translation>{side} beherrscht es nicht.</translation>
    </message>
    <message>
        <source>{foe} covers {squares} now: a line has opened.</source>
        <translation>{foe} deckt jetzt {squares}: eine Linie ist offen.</translation>
    </message>
    <message>
        <source>{piece} sees as far as {square}</source>
        <translation>{piece} sieht bis {square}</translation>
    </message>
    <message>
        <source>a line has opened: {names}</source>
        <translation>Eine Linie ist offen: {names}</translation>
    </message>
    <message>
        <source>lines have opened: {names}</source>
        <translation>Linien sind offen: {names}</translation>
    </message>
    <message>
        <source>{owner} has castled kingside.</source>
        <translation>{owner} hat kurz rochiert.</translation>
    </message>
    <message>
        <source>{owner} has castled queenside.</source>
        <translation>{owner} hat lang rochiert.</translation>
    </message>
    <message>
        <source>{owner}&apos;s {piece} has gone from {origin} to {target}.</source>
        <translation>{owner}: {piece} von {origin} nach {target}.</translation>
    </message>
    <message>
        <source>is attacked by {pieces}</source>
        <translation>angegriffen ({pieces})</translation>
    </message>
    <message>
        <source>is not attacked</source>
        <translation>nicht angegriffen</translation>
    </message>
    <message>
        <source>guarded by {pieces}</source>
        <translation>gedeckt ({pieces})</translation>
    </message>
    <message>
        <source>not guarded</source>
        <translation>nicht gedeckt</translation>
    </message>
    <message>
        <source>{piece} {hit}, but {kept}</source>
        <translation>{piece}: {hit}, aber {kept}</translation>
    </message>
    <message>
        <source>{piece} {hit} and {kept}</source>
        <translation>{piece}: {hit} und {kept}</translation>
    </message>
    <message>
        <source>{piece} (which is pinned to its king)</source>
        <translation>{piece} (an den König gefesselt)</translation>
    </message>
    <message>
        <source>kingside</source>
        <translation>kurz</translation>
    </message>
    <message>
        <source>queenside</source>
        <translation>lang</translation>
    </message>
    <message>
        <source>{who} has no right to castle {wing}: the king or that rook has moved or is gone.</source>
        <translation>{who} darf nicht mehr {wing} rochieren: König oder Turm hat gezogen oder ist weg.</translation>
    </message>
    <message>
        <source>{who} may castle {wing}.</source>
        <translation>{who} darf {wing} rochieren.</translation>
    </message>
    <message>
        <source>{who} has no king.</source>
        <translation>{who} hat keinen König.</translation>
    </message>
    <message>
        <source>{who} is in check and cannot castle.</source>
        <translation>{who} steht im Schach und kann nicht rochieren.</translation>
    </message>
    <message>
        <source>{who} cannot castle {wing} now: {between} in between.</source>
        <translation>{who} kann jetzt nicht {wing} rochieren: dazwischen {between}.</translation>
    </message>
    <message>
        <source>the king would pass over {squares}, which is attacked</source>
        <translation>der König zöge über {squares}, und das ist angegriffen</translation>
    </message>
    <message>
        <source>the king would pass over {squares}, which are attacked</source>
        <translation>der König zöge über {squares}, und die sind angegriffen</translation>
    </message>
    <message>
        <source>{who} cannot castle {wing} now: {passes}.</source>
        <translation>{who} kann jetzt nicht {wing} rochieren: {passes}.</translation>
    </message>
    <message>
        <source>{side}&apos;s king on {square}</source>
        <translation>König {square} ({side})</translation>
    </message>
    <message>
        <source>{foe} attacks {squares} beside {king}.</source>
        <translation>{foe} greift neben {king} an: {squares}.</translation>
    </message>
    <message>
        <source>{king} has no pawn of its own on the {files}file.</source>
        <translation>{king} hat auf der {files}Linie keinen eigenen Bauern.</translation>
    </message>
    <message>
        <source>{king} has no pawn of its own on the {files}file, and {foe} attacks {squares} beside it.</source>
        <translation>{king} hat auf der {files}Linie keinen eigenen Bauern, und {foe} greift daneben an: {squares}.</translation>
    </message>
    <message>
        <source>{side} has one legal move: {move}.</source>
        <translation>{side} hat nur einen legalen Zug: {move}.</translation>
    </message>
    <message>
        <source>Seventy-five moves without a capture or a pawn move: the game is drawn.</source>
        <translation>Fünfundsiebzig Züge ohne Schlagen und Bauernzug: die Partie ist remis.</translation>
    </message>
    <message>
        <source>Fifty moves without a capture or a pawn move: either side may claim a draw.</source>
        <translation>Fünfzig Züge ohne Schlagen und Bauernzug: jede Seite kann Remis reklamieren.</translation>
    </message>
    <message>
        <source>The position has come up five times: the game is drawn.</source>
        <translation>Die Stellung kam fünfmal vor: die Partie ist remis.</translation>
    </message>
    <message>
        <source>The position has come up three times: either side may claim a draw.</source>
        <translation>Die Stellung kam dreimal vor: jede Seite kann Remis reklamieren.</translation>
    </message>
    <message>
        <source>opposite colours</source>
        <translation>ungleichfarbig</translation>
    </message>
    <message>
        <source>the same colour</source>
        <translation>gleichfarbig</translation>
    </message>
    <message>
        <source>The bishops move on {colours}.</source>
        <translation>Die Läufer sind {colours}.</translation>
    </message>
    <message>
        <source>The pawn promotes on {square}: say to what, as in “{square} queen”.</source>
        <translation>Der Bauer wandelt sich auf {square} um: angeben, in was, wie in „{square} queen“.</translation>
    </message>
    <message>
        <source>More than one move fits: {names}.</source>
        <translation>Mehrere Züge passen: {names}.</translation>
    </message>
    <message>
        <source>take on {square}</source>
        <translation>auf {square} schlagen</translation>
    </message>
    <message>
        <source>take anything like that</source>
        <translation>so etwas schlagen</translation>
    </message>
    <message>
        <source>go to {square}</source>
        <translation>nach {square} ziehen</translation>
    </message>
    <message>
        <source>move like that</source>
        <translation>so ziehen</translation>
    </message>
    <message>
        <source>No {side} {name} can {doing}.</source>
        <translation>{name} ({side}) kann nicht {doing}.</translation>
    </message>
    <message>
        <source>{piece} to {squares}</source>
        <translation>{piece} nach {squares}</translation>
    </message>
    <message>
        <source>{piece} can go to {squares}</source>
        <translation>{piece} kann nach {squares}</translation>
    </message>
    <message>
        <source>Say to which side: castle kingside, or castle queenside.</source>
        <translation>Die Seite angeben: castle kingside (kurz) oder castle queenside (lang).</translation>
    </message>
    <message>
        <source>{side} cannot castle here.</source>
        <translation>{side} kann hier nicht rochieren.</translation>
    </message>
    <message>
        <source>{side} cannot castle kingside here.</source>
        <translation>{side} kann hier nicht kurz rochieren.</translation>
    </message>
    <message>
        <source>{side} cannot castle queenside here.</source>
        <translation>{side} kann hier nicht lang rochieren.</translation>
    </message>
    <message>
        <source>{piece} from {origin} to {target}</source>
        <translation>{piece} von {origin} nach {target}</translation>
    </message>
    <message>
        <source>{words}, a {piece}</source>
        <translation>{words} mit Umwandlung in {piece}</translation>
    </message>
    <message>
        <source>No position is written there.</source>
        <translation>Dort steht keine Stellung.</translation>
    </message>
    <message>
        <source>That is no position ({reason}). A position looks like “{example}”.</source>
        <translation>Das ist keine Stellung ({reason}). Eine Stellung sieht so aus: „{example}“.</translation>
    </message>
    <message>
        <source>The board is empty: put two kings on it to begin with.</source>
        <translation>Das Brett ist leer: zuerst zwei Könige aufstellen.</translation>
    </message>
    <message>
        <source>No pawn can stand on the first or the last rank: take it away from {where}.</source>
        <translation>Auf der ersten und der letzten Reihe kann kein Bauer stehen: von {where} wegnehmen.</translation>
    </message>
    <message>
        <source>{name} has no king.</source>
        <translation>{name} hat keinen König.</translation>
    </message>
    <message>
        <source>{name} has {number} kings, on {where}: leave one.</source>
        <translation>{name} hat {number} Könige, auf {where}: einen stehen lassen.</translation>
    </message>
    <message>
        <source>{name} has {number} pawns: eight are the most.</source>
        <translation>{name} hat {number} Bauern: höchstens acht sind möglich.</translation>
    </message>
    <message>
        <source>{name} has {count} pieces: sixteen are the most.</source>
        <translation>{name} hat {count} Figuren: höchstens sechzehn sind möglich.</translation>
    </message>
    <message>
        <source>{side} is in check from {by}, and it is {other}&apos;s move: let {side} move, or end the check.</source>
        <translation>{side} steht im Schach ({by}), und {other} ist am Zug: {side} ziehen lassen oder das Schach beenden.</translation>
    </message>
    <message>
        <source>{side} is in check from {by}: two pieces are the most that one move can let give check.</source>
        <translation>{side} steht im Schach ({by}): ein Zug kann höchstens zwei Figuren Schach geben lassen.</translation>
    </message>
    <message>
        <source>{side} is in check from {by}, and no move can have led to that.</source>
        <translation>{side} steht im Schach ({by}), und kein Zug kann dahin geführt haben.</translation>
    </message>
    <message>
        <source>{side} is checkmated: no move can be played.</source>
        <translation>{side} ist matt: kein Zug ist möglich.</translation>
    </message>
    <message>
        <source>{side} is stalemated: no move can be played.</source>
        <translation>{side} ist patt: kein Zug ist möglich.</translation>
    </message>
    <message>
        <source>Neither side has enough to give mate.</source>
        <translation>Keine Seite hat genug zum Mattsetzen.</translation>
    </message>
    <message>
        <source>{side} has more pieces than its missing pawns can have become; no game leads here.</source>
        <translation>{side} hat mehr Figuren, als aus den fehlenden Bauern entstanden sein können; keine Partie führt hierher.</translation>
    </message>
    <message>
        <source>{by} forks {pieces}</source>
        <translation>{by} gabelt {pieces}</translation>
    </message>
    <message>
        <source>{by} forks {pieces}, but {taker} can take it</source>
        <translation>{by} gabelt {pieces}, aber {taker} kann schlagen</translation>
    </message>
    <message>
        <source>which needs it</source>
        <translation>und das ist nötig</translation>
    </message>
    <message>
        <source>and both need it</source>
        <translation>und beide brauchen es</translation>
    </message>
    <message>
        <source>and all of them need it</source>
        <translation>und alle brauchen es</translation>
    </message>
    <message>
        <source>{piece} guards {kept}, {need}</source>
        <translation>{piece} deckt {kept}, {need}</translation>
    </message>
    <message>
        <source>{move} takes the guard of {names}.</source>
        <translation>{move} schlägt die Deckung weg von {names}.</translation>
    </message>
    <message>
        <source>{name} can safely go to {squares}.</source>
        <translation>{name} kann sicher nach {squares} ziehen.</translation>
    </message>
    <message>
        <source>{name} has no safe square.</source>
        <translation>{name} hat kein sicheres Feld.</translation>
    </message>
    <message>
        <source>it is pinned to its king and has no move</source>
        <translation>an den König gefesselt, kein Zug</translation>
    </message>
    <message>
        <source>it has no legal move</source>
        <translation>kein legaler Zug</translation>
    </message>
    <message>
        <source>{piece} is trapped: {why}</source>
        <translation>{piece} ist gefangen: {why}</translation>
    </message>
    <message>
        <source>on {square} {piece} takes it</source>
        <translation>auf {square} schlägt {piece}</translation>
    </message>
    <message>
        <source>on {square} it is lost</source>
        <translation>auf {square} verloren</translation>
    </message>
    <message>
        <source>Type a move, such as Nf3 or g1f3.</source>
        <translation>Einen Zug eintippen, etwa Nf3 oder g1f3.</translation>
    </message>
    <message>
        <source>“{text}” is not a move. Type one such as Nf3, exd5, O-O or g1f3.</source>
        <translation>„{text}“ ist kein Zug. Einen eintippen wie Nf3, exd5, O-O oder g1f3.</translation>
    </message>
    <message>
        <source>The pawn promotes on {square}: say to what, as in {example}.</source>
        <translation>Der Bauer wandelt sich auf {square} um: angeben, in was, wie in {example}.</translation>
    </message>
    <message>
        <source>The move from {origin} to {target} promotes no pawn.</source>
        <translation>Beim Zug von {origin} nach {target} wandelt sich kein Bauer um.</translation>
    </message>
    <message>
        <source>There is no piece on {square}.</source>
        <translation>Auf {square} steht keine Figur.</translation>
    </message>
    <message>
        <source>It is {side}&apos;s move; the piece on {square} is {owner}&apos;s.</source>
        <translation>{side} ist am Zug; auf {square} steht eine Figur von {owner}.</translation>
    </message>
    <message>
        <source>The {name} on {origin} cannot go to {target}: {why}.</source>
        <translation>{name} {origin} kann nicht nach {target}: {why}.</translation>
    </message>
    <message>
        <source>The {name} on {origin} cannot go to {target}.</source>
        <translation>{name} {origin} kann nicht nach {target}.</translation>
    </message>
    <message>
        <source>More than one {name} can go to {square}: say from {names}, as in {example}.</source>
        <translation>Mehrere Figuren ({name}) können nach {square}: Herkunft angeben, {names}, wie in {example}.</translation>
    </message>
    <message>
        <source>No pawn promotes on {square}.</source>
        <translation>Auf {square} wandelt sich kein Bauer um.</translation>
    </message>
    <message>
        <source>{side} has no {name}.</source>
        <translation>{side} hat diese Figur nicht: {name}.</translation>
    </message>
    <message>
        <source>{move} is not legal here.</source>
        <translation>{move} ist hier nicht legal.</translation>
    </message>
    <message>
        <source>No {name} on {file}{rank} can go to {square}.</source>
        <translation>{name} {file}{rank} kann nicht nach {square}.</translation>
    </message>
    <message>
        <source>No {name} on the {file}-file can go to {square}.</source>
        <translation>{name} auf der {file}-Linie kann nicht nach {square}.</translation>
    </message>
    <message>
        <source>No {name} on rank {rank} can go to {square}.</source>
        <translation>{name} auf der {rank}. Reihe kann nicht nach {square}.</translation>
    </message>
    <message>
        <source>The {name} cannot go to {square}: {why}.</source>
        <translation>{name} kann nicht nach {square}: {why}.</translation>
    </message>
    <message>
        <source>No {side} {name} can go to {square}.</source>
        <translation>{name} ({side}) kann nicht nach {square}.</translation>
    </message>
    <message>
        <source>the king is in check</source>
        <translation>der König steht im Schach</translation>
    </message>
    <message>
        <source>the king would be in check</source>
        <translation>der König stünde im Schach</translation>
    </message>
    <message>
        <source>The delivery was stopped; nothing was changed.</source>
        <translation>Das Ausspielen wurde angehalten; nichts wurde verändert.</translation>
    </message>
    <message>
        <source>Nothing is said yet, so there are no captions. Write spoken lines first.</source>
        <translation>Noch wird nichts gesprochen, also gibt es keine Untertitel. Erst Sprechtexte schreiben.</translation>
    </message>
    <message>
        <source>Nothing is told yet, so there are no chapters.</source>
        <translation>Noch wird nichts erzählt, darum gibt es keine Kapitel.</translation>
    </message>
    <message>
        <source>Another delivery into {to} is going on. Wait for it, or choose another folder.</source>
        <translation>Nach {to} wird gerade schon ausgespielt. Abwarten oder einen anderen Ordner wählen.</translation>
    </message>
    <message>
        <source>“{name}” cannot be written to {to}: there is a folder of that name. Move it away.</source>
        <translation>„{name}“ lässt sich nicht nach {to} schreiben: dort ist ein Ordner dieses Namens. Bitte wegräumen.</translation>
    </message>
    <message>
        <source>changed</source>
        <translation>geändert</translation>
    </message>
    <message>
        <source>the disk is full. Make room or choose another folder.</source>
        <translation>der Datenträger ist voll. Platz schaffen oder einen anderen Ordner wählen.</translation>
    </message>
    <message>
        <source>the file would be larger than is allowed there.</source>
        <translation>die Datei würde größer, als dort erlaubt ist.</translation>
    </message>
    <message>
        <source>you may not write there, or one of the files is open in another program.</source>
        <translation>dort darf nicht geschrieben werden, oder eine der Dateien ist in einem anderen Programm geöffnet.</translation>
    </message>
    <message>
        <source>the disk can only be read.</source>
        <translation>der Datenträger kann nur gelesen werden.</translation>
    </message>
    <message>
        <source>there is a file where the folder should be.</source>
        <translation>wo der Ordner sein soll, ist eine Datei.</translation>
    </message>
    <message>
        <source>the name is too long for this disk.</source>
        <translation>der Name ist zu lang für diesen Datenträger.</translation>
    </message>
    <message>
        <source>Nothing could be delivered to {to}: {why}</source>
        <translation>Nach {to} ließ sich nichts ausspielen: {why}</translation>
    </message>
    <message>
        <source>The study sheet could not be typeset: {message}.</source>
        <translation>Das Studienblatt ließ sich nicht setzen: {message}.</translation>
    </message>
    <message>
        <source>There is no paper “{paper}” here; the sheet can be printed on a4 or letter.</source>
        <translation>Papier „{paper}“ gibt es hier nicht; das Studienblatt kann auf a4 oder letter gedruckt werden.</translation>
    </message>
    <message>
        <source>An exercise has {choices} lines to write on, not {lines}.</source>
        <translation>Eine Aufgabe hat {choices} Zeilen zum Schreiben, nicht {lines}.</translation>
    </message>
    <message>
        <source>A picture needs the cairo library, which is missing here. It comes with the package libcairo2 (Debian, Ubuntu: “apt install libcairo2”; macOS: “brew install cairo”).</source>
        <translation>Für ein Bild wird die Bibliothek cairo gebraucht, die hier fehlt. Sie kommt mit dem Paket libcairo2 (Debian, Ubuntu: „apt install libcairo2“; macOS: „brew install cairo“).</translation>
    </message>
    <message>
        <source>Find an action</source>
        <translation>Aktion suchen</translation>
    </message>
    <message>
        <source>What do you want to do?</source>
        <translation>Was ist zu tun?</translation>
    </message>
    <message>
        <source>Actions</source>
        <translation>Aktionen</translation>
    </message>
    <message>
        <source>{action} (not here)</source>
        <translation>{action} (nicht hier)</translation>
    </message>
    <message>
        <source>Numbering on</source>
        <translation>Nummerieren ein</translation>
    </message>
    <message>
        <source>Numbering off</source>
        <translation>Nummerieren aus</translation>
    </message>
    <message>
        <source>No mark is drawn here.</source>
        <translation>Hier ist keine Markierung gezeichnet.</translation>
    </message>
    <message>
        <source>&amp;Ask about {square}</source>
        <translation>&amp;Nach {square} fragen</translation>
    </message>
    <message>
        <source>Make it a {kind}</source>
        <translation>In {kind} ändern</translation>
    </message>
    <message>
        <source>Number it</source>
        <translation>Nummerieren</translation>
    </message>
    <message>
        <source>Take its number off</source>
        <translation>Nummer entfernen</translation>
    </message>
    <message>
        <source>Wipe it</source>
        <translation>Wegwischen</translation>
    </message>
    <message>
        <source>Everything that is told has its words.</source>
        <translation>Alles, was erzählt wird, hat seine Worte.</translation>
    </message>
    <message>
        <source>The talk has no think pause.</source>
        <translation>Der Vortrag hat keine Denkpause.</translation>
    </message>
    <message>
        <source>{count} to go.</source>
        <translation>Noch {count}.</translation>
    </message>
    <message>
        <source>The length is unlocked.</source>
        <translation>Die Länge ist freigegeben.</translation>
    </message>
    <message>
        <source>The length is locked.</source>
        <translation>Die Länge ist fixiert.</translation>
    </message>
    <message>
        <source>The lengths are unlocked.</source>
        <translation>Die Längen sind freigegeben.</translation>
    </message>
    <message>
        <source>The lengths are locked.</source>
        <translation>Die Längen sind fixiert.</translation>
    </message>
    <message>
        <source>{beats} beats are told at {pace} % of your pace.</source>
        <translation>{beats} Stationen werden mit {pace} % des eigenen Tempos erzählt.</translation>
    </message>
    <message>
        <source>The talk fits its slot: {told}</source>
        <translation>Der Vortrag passt ins Zeitfenster: {told}</translation>
    </message>
    <message>
        <source>The talk is still {distance}: {told} Nobody is believed to speak faster; shorten a line or hide a side-line.</source>
        <translation>Der Vortrag ist noch {distance}: {told} Schneller spricht wohl niemand; einen Text kürzen oder eine Nebenvariante ausblenden.</translation>
    </message>
    <message>
        <source>The talk is still {distance}: {told} Slower would sound drawn out; add a line or a think pause.</source>
        <translation>Der Vortrag ist noch {distance}: {told} Langsamer klänge gedehnt; einen Text oder eine Denkpause hinzufügen.</translation>
    </message>
    <message>
        <source>page {page} of {pages}</source>
        <translation>Seite {page} von {pages}</translation>
    </message>
    <message>
        <source>Exercise {number}</source>
        <translation>Aufgabe {number}</translation>
    </message>
    <message>
        <source>Solution: page {page}</source>
        <translation>Lösung: Seite {page}</translation>
    </message>
    <message>
        <source>Solutions</source>
        <translation>Lösungen</translation>
    </message>
    <message>
        <source>Notes</source>
        <translation>Notizen</translation>
    </message>
    <message>
        <source>sample of the mark</source>
        <translation>Muster des Zeichens</translation>
    </message>
    <message>
        <source>The story goes on after exercise {number}.</source>
        <translation>Hier geht es nach Aufgabe {number} weiter.</translation>
    </message>
    <message>
        <source>The story goes on after exercises {numbers}.</source>
        <translation>Hier geht es nach den Aufgaben {numbers} weiter.</translation>
    </message>
    <message>
        <source>threat</source>
        <translation>Drohung</translation>
    </message>
    <message>
        <source>target</source>
        <translation>Ziel</translation>
    </message>
    <message>
        <source>route</source>
        <translation>Weg</translation>
    </message>
    <message>
        <source>key square</source>
        <translation>Schlüsselfeld</translation>
    </message>
    <message>
        <source>guard</source>
        <translation>Deckung</translation>
    </message>
    <message>
        <source>told by {name}</source>
        <translation>erzählt von {name}</translation>
    </message>
    <message>
        <source>Exercise {number}, {caption}.</source>
        <translation>Aufgabe {number}, {caption}.</translation>
    </message>
    <message>
        <source>Diagram {caption}.</source>
        <translation>Diagramm {caption}.</translation>
    </message>
    <message>
        <source>&lt;b&gt;Lanes.&lt;/b&gt; One row for each half-move: the main line in the first lane, each side-line in a lane of its own, level with the move that it replaces. The arrows step; Enter goes to the spoken line. Shift and Ctrl choose several rows; a branch is dragged to another place, or onto another move; Ctrl+F finds.</source>
        <translation>&lt;b&gt;Spuren.&lt;/b&gt; Eine Zeile für jeden Halbzug: die Hauptlinie in der ersten Spur, jede Nebenvariante in einer eigenen, auf der Höhe des Zugs, den sie ersetzt. Die Pfeiltasten gehen Schritt für Schritt; Eingabe führt zum Sprechtext. Umschalt und Strg wählen mehrere Zeilen; ein Zweig lässt sich an einen anderen Platz oder an einen anderen Zug ziehen; Strg+F sucht.</translation>
    </message>
    <message>
        <source>&lt;b&gt;Board.&lt;/b&gt; Play a move with the pointer, or type it. A move that is not on the tree yet becomes a side-line. Enter shows a cursor for the arrow keys; M draws marks; F2 shows what a piece does. A right click has what can be done with a square.</source>
        <translation>&lt;b&gt;Brett.&lt;/b&gt; Züge mit der Maus spielen oder eintippen. Ein Zug, der noch nicht im Baum steht, wird eine Nebenvariante. Eingabe zeigt einen Zeiger für die Pfeiltasten; M zeichnet Markierungen; F2 zeigt, was eine Figur leistet. Ein Rechtsklick bietet, was mit einem Feld möglich ist.</translation>
    </message>
    <message>
        <source>&lt;b&gt;Facts.&lt;/b&gt; What can be counted on the board: material, what hangs and what is pinned, with the reason.</source>
        <translation>&lt;b&gt;Tatsachen.&lt;/b&gt; Was sich auf dem Brett abzählen lässt: Material, was hängt und was gefesselt ist, mit dem Grund.</translation>
    </message>
    <message>
        <source>&lt;b&gt;Marks.&lt;/b&gt; What is drawn on the board at this move, by its meaning: the keys 1 to 5 choose, 6 numbers what is drawn. With Shift a drawn mark is put elsewhere; a right click alters or wipes it.</source>
        <translation>&lt;b&gt;Markierungen.&lt;/b&gt; Was bei diesem Zug auf das Brett gezeichnet ist, nach seiner Bedeutung: die Tasten 1 bis 5 wählen, 6 nummeriert, was gezeichnet wird. Mit Umschalt wird eine Markierung versetzt; ein Rechtsklick ändert sie oder wischt sie weg.</translation>
    </message>
    <message>
        <source>&lt;b&gt;Spoken line.&lt;/b&gt; What you say at this move. The small tags are cues: the words at which moves are played and marks appear. What the board contradicts is underlined.</source>
        <translation>&lt;b&gt;Sprechtext.&lt;/b&gt; Was bei diesem Zug gesprochen wird. Die kleinen Marken sind Stichwörter: die Worte, bei denen Züge ausgeführt werden und Markierungen erscheinen. Wem das Brett widerspricht, das ist unterstrichen.</translation>
    </message>
    <message>
        <source>&lt;b&gt;Time ruler.&lt;/b&gt; The whole talk to scale, side-lines hung below the main line, the slot as a line. Drag the end of a beat to set its length; Ctrl and the wheel, or + and −, zoom.</source>
        <translation>&lt;b&gt;Zeitleiste.&lt;/b&gt; Der ganze Vortrag maßstäblich, Nebenvarianten unter der Hauptlinie, das Zeitfenster als Strich. Das Ende einer Station ziehen legt ihre Länge fest; Strg und Mausrad oder + und − zoomen.</translation>
    </message>
    <message>
        <source>&lt;b&gt;The day.&lt;/b&gt; Write, rehearse, record and deliver, one after the other.</source>
        <translation>&lt;b&gt;Der Tag.&lt;/b&gt; Schreiben, proben, aufnehmen und ausspielen, eines nach dem anderen.</translation>
    </message>
    <message>
        <source>Find and replace in the script</source>
        <translation>Im Skript suchen und ersetzen</translation>
    </message>
    <message>
        <source>Match &amp;case</source>
        <translation>&amp;Groß- und Kleinschreibung</translation>
    </message>
    <message>
        <source>Whole &amp;words</source>
        <translation>Ganze Wö&amp;rter</translation>
    </message>
    <message>
        <source>Also in n&amp;otes for print</source>
        <translation>Auch in &amp;Notizen für den Druck</translation>
    </message>
    <message>
        <source>How many were found</source>
        <translation>Wie viele gefunden wurden</translation>
    </message>
    <message>
        <source>&amp;Next</source>
        <translation>&amp;Weiter</translation>
    </message>
    <message>
        <source>&amp;Previous</source>
        <translation>&amp;Zurück</translation>
    </message>
    <message>
        <source>&amp;Replace</source>
        <translation>&amp;Ersetzen</translation>
    </message>
    <message>
        <source>Replace &amp;all</source>
        <translation>&amp;Alle ersetzen</translation>
    </message>
    <message>
        <source>&amp;Find</source>
        <translation>&amp;Suchen</translation>
    </message>
    <message>
        <source>Replace &amp;by</source>
        <translation>Ersetzen &amp;durch</translation>
    </message>
    <message>
        <source>Replaced once. Ctrl+Z takes it back.</source>
        <translation>Einmal ersetzt. Strg+Z nimmt es zurück.</translation>
    </message>
    <message>
        <source>Replaced {count} times. Ctrl+Z takes it back in one step.</source>
        <translation>{count}-mal ersetzt. Strg+Z nimmt alles in einem Schritt zurück.</translation>
    </message>
    <message>
        <source>The whole script is searched, in the order of the talk.</source>
        <translation>Das ganze Skript wird durchsucht, in der Reihenfolge des Vortrags.</translation>
    </message>
    <message>
        <source>Not found</source>
        <translation>Nicht gefunden</translation>
    </message>
    <message>
        <source>Found once</source>
        <translation>Einmal gefunden</translation>
    </message>
    <message>
        <source>Found {count} times</source>
        <translation>{count}-mal gefunden</translation>
    </message>
    <message>
        <source>{number} of {count}</source>
        <translation>{number} von {count}</translation>
    </message>
    <message>
        <source>History</source>
        <translation>Verlauf</translation>
    </message>
    <message>
        <source>The study as it was after the edit that is chosen. Nothing is lost: what lies above it can be done again.</source>
        <translation>Die Studie, wie sie nach der gewählten Änderung war. Nichts geht verloren: was darüber liegt, lässt sich wiederholen.</translation>
    </message>
    <message>
        <source>Edits, the newest first</source>
        <translation>Änderungen, die neueste zuerst</translation>
    </message>
    <message>
        <source>As it was at first</source>
        <translation>Wie es am Anfang war</translation>
    </message>
    <message>
        <source>now</source>
        <translation>jetzt</translation>
    </message>
    <message>
        <source>taken back</source>
        <translation>zurückgenommen</translation>
    </message>
    <message>
        <source>Anything</source>
        <translation>Alles</translation>
    </message>
    <message>
        <source>Moves</source>
        <translation>Züge</translation>
    </message>
    <message>
        <source>Words</source>
        <translation>Wörter</translation>
    </message>
    <message>
        <source>Positions</source>
        <translation>Stellungen</translation>
    </message>
    <message>
        <source>Find</source>
        <translation>Suchen</translation>
    </message>
    <message>
        <source>A move, words, or a position in FEN</source>
        <translation>Ein Zug, Wörter oder eine Stellung in FEN</translation>
    </message>
    <message>
        <source>What to find in the lanes</source>
        <translation>Was in den Spuren gesucht wird</translation>
    </message>
    <message>
        <source>What kind of thing to find</source>
        <translation>Welche Art von Treffern gesucht wird</translation>
    </message>
    <message>
        <source>Previous match (Shift+F3)</source>
        <translation>Voriger Treffer (Umschalt+F3)</translation>
    </message>
    <message>
        <source>Next match (F3)</source>
        <translation>Nächster Treffer (F3)</translation>
    </message>
    <message>
        <source>Find the position on the board (Ctrl+Shift+F)</source>
        <translation>Die Stellung auf dem Brett suchen (Strg+Umschalt+F)</translation>
    </message>
    <message>
        <source>Close the find bar (Escape)</source>
        <translation>Suchleiste schließen (Esc)</translation>
    </message>
    <message>
        <source>no position</source>
        <translation>keine Stellung</translation>
    </message>
    <message>
        <source>not found</source>
        <translation>nicht gefunden</translation>
    </message>
    <message>
        <source>{place} of {count}</source>
        <translation>{place} von {count}</translation>
    </message>
    <message>
        <source>{count} found</source>
        <translation>{count} gefunden</translation>
    </message>
    <message>
        <source>Copy &amp;as</source>
        <translation>Kopieren &amp;als</translation>
    </message>
    <message>
        <source>{label} is played at “{word}”. Ctrl+Z takes it back.</source>
        <translation>{label} wird bei „{word}“ ausgeführt. Strg+Z nimmt es zurück.</translation>
    </message>
    <message>
        <source>{label} is played after the last word. Ctrl+Z takes it back.</source>
        <translation>{label} wird nach dem letzten Wort ausgeführt. Strg+Z nimmt es zurück.</translation>
    </message>
    <message>
        <source>Position</source>
        <translation>Stellung</translation>
    </message>
    <message>
        <source>White, kingside</source>
        <translation>Weiß, kurz</translation>
    </message>
    <message>
        <source>White, queenside</source>
        <translation>Weiß, lang</translation>
    </message>
    <message>
        <source>Black, kingside</source>
        <translation>Schwarz, kurz</translation>
    </message>
    <message>
        <source>Black, queenside</source>
        <translation>Schwarz, lang</translation>
    </message>
    <message>
        <source>Whether it can be played on</source>
        <translation>Ob sie spielbar ist</translation>
    </message>
    <message>
        <source>Position as FEN</source>
        <translation>Stellung als FEN</translation>
    </message>
    <message>
        <source>Write or paste a position here and press Enter.</source>
        <translation>Eine Stellung hier schreiben oder einfügen und Eingabe drücken.</translation>
    </message>
    <message>
        <source>&amp;White</source>
        <translation>W&amp;eiß</translation>
    </message>
    <message>
        <source>&amp;Black</source>
        <translation>&amp;Schwarz</translation>
    </message>
    <message>
        <source>White to move</source>
        <translation>Weiß am Zug</translation>
    </message>
    <message>
        <source>Black to move</source>
        <translation>Schwarz am Zug</translation>
    </message>
    <message>
        <source>To move</source>
        <translation>Am Zug</translation>
    </message>
    <message>
        <source>May still castle</source>
        <translation>Darf noch rochieren</translation>
    </message>
    <message>
        <source>May castle: {side}</source>
        <translation>Darf rochieren: {side}</translation>
    </message>
    <message>
        <source>&amp;En passant on</source>
        <translation>En &amp;passant auf</translation>
    </message>
    <message>
        <source>Move &amp;number</source>
        <translation>Zug&amp;nummer</translation>
    </message>
    <message>
        <source>&amp;Quiet half-moves</source>
        <translation>&amp;Ruhige Halbzüge</translation>
    </message>
    <message>
        <source>Half-moves since the last capture or pawn move.</source>
        <translation>Halbzüge seit dem letzten Schlagen oder Bauernzug.</translation>
    </message>
    <message>
        <source>&amp;Start</source>
        <translation>&amp;Grundstellung</translation>
    </message>
    <message>
        <source>The start position of a game.</source>
        <translation>Die Grundstellung einer Partie.</translation>
    </message>
    <message>
        <source>&amp;Clear</source>
        <translation>&amp;Leeren</translation>
    </message>
    <message>
        <source>Take all pieces away.</source>
        <translation>Alle Figuren wegnehmen.</translation>
    </message>
    <message>
        <source>&amp;Mirror</source>
        <translation>Sp&amp;iegeln</translation>
    </message>
    <message>
        <source>The a-file for the h-file.</source>
        <translation>Die a-Linie gegen die h-Linie.</translation>
    </message>
    <message>
        <source>E&amp;xchange</source>
        <translation>&amp;Tauschen</translation>
    </message>
    <message>
        <source>White&apos;s pieces for Black&apos;s, seen from the other side.</source>
        <translation>Die weißen Figuren gegen die schwarzen, von der anderen Seite gesehen.</translation>
    </message>
    <message>
        <source>Take the last change back (Ctrl+Z).</source>
        <translation>Die letzte Änderung zurücknehmen (Strg+Z).</translation>
    </message>
    <message>
        <source>Do again what was taken back (Ctrl+Y).</source>
        <translation>Das Zurückgenommene noch einmal ausführen (Strg+Y).</translation>
    </message>
    <message>
        <source>C&amp;opy FEN</source>
        <translation>FEN &amp;kopieren</translation>
    </message>
    <message>
        <source>Put the position on the clipboard.</source>
        <translation>Die Stellung in die Zwischenablage legen.</translation>
    </message>
    <message>
        <source>&amp;Paste FEN</source>
        <translation>FEN ein&amp;fügen</translation>
    </message>
    <message>
        <source>Take the position that is on the clipboard.</source>
        <translation>Die Stellung aus der Zwischenablage übernehmen.</translation>
    </message>
    <message>
        <source>&amp;Flip</source>
        <translation>&amp;Drehen</translation>
    </message>
    <message>
        <source>Show the board from the other side.</source>
        <translation>Das Brett von der anderen Seite zeigen.</translation>
    </message>
    <message>
        <source>Drag pieces from the tray, or choose one there and click. On the board the arrows move a cursor; K, Q, R, B, N and P put White&apos;s pieces, small letters Black&apos;s, Delete takes one away.</source>
        <translation>Figuren aus dem Kasten ziehen, oder dort eine wählen und klicken. Auf dem Brett bewegen die Pfeiltasten einen Zeiger; K, Q, R, B, N und P setzen die weißen Figuren König, Dame, Turm, Läufer, Springer und Bauer, kleine Buchstaben die schwarzen, Entf nimmt eine weg.</translation>
    </message>
    <message>
        <source>no square</source>
        <translation>kein Feld</translation>
    </message>
    <message>
        <source>This position can be played on.</source>
        <translation>Diese Stellung ist spielbar.</translation>
    </message>
    <message>
        <source>Pronunciation</source>
        <translation>Aussprache</translation>
    </message>
    <message>
        <source>The prompter shows behind the word how it is said. Write it as you read it best, such as “GAR-vee”.</source>
        <translation>Der Prompter zeigt hinter dem Wort, wie es gesprochen wird. So schreiben, wie es sich am besten liest, etwa „GAR-wi“.</translation>
    </message>
    <message>
        <source>Words with a pronunciation</source>
        <translation>Wörter mit Aussprache</translation>
    </message>
    <message>
        <source>&amp;Forget</source>
        <translation>&amp;Vergessen</translation>
    </message>
    <message>
        <source>&amp;Word</source>
        <translation>&amp;Wort</translation>
    </message>
    <message>
        <source>&amp;Said</source>
        <translation>&amp;Gesprochen</translation>
    </message>
    <message>
        <source>Set how a word is said</source>
        <translation>Aussprache eines Worts festlegen</translation>
    </message>
    <message>
        <source>Forget how a word is said</source>
        <translation>Aussprache eines Worts vergessen</translation>
    </message>
    <message>
        <source>{seconds:.1f} s ({sign}{difference:.1f})</source>
        <translation>{seconds:.1f} s ({sign}{difference:.1f})</translation>
    </message>
    <message>
        <source>The whole script</source>
        <translation>Das ganze Skript</translation>
    </message>
    <message>
        <source>Cu&amp;t</source>
        <translation>&amp;Ausschneiden</translation>
    </message>
    <message>
        <source>&amp;Copy</source>
        <translation>&amp;Kopieren</translation>
    </message>
    <message>
        <source>&amp;Paste</source>
        <translation>&amp;Einfügen</translation>
    </message>
    <message>
        <source>Spelling is turned off: Words › Spelling turns it on.</source>
        <translation>Die Rechtschreibprüfung ist aus: Wörter › Rechtschreibung schaltet sie ein.</translation>
    </message>
    <message>
        <source>No word of the script is misspelt.</source>
        <translation>Kein Wort des Skripts ist falsch geschrieben.</translation>
    </message>
    <message>
        <source>Not known and left as it is: {places}.</source>
        <translation>Nicht bekannt und so belassen: {places}.</translation>
    </message>
    <message>
        <source>How “{word}” is said…</source>
        <translation>Aussprache von „{word}“…</translation>
    </message>
    <message>
        <source>Script</source>
        <translation>Skript</translation>
    </message>
    <message>
        <source>Also stops at which nothing is &amp;said</source>
        <translation>Auch Stationen, an denen &amp;nichts gesprochen wird</translation>
    </message>
    <message>
        <source>Nothing is said yet. Tick “Also stops at which nothing is said” to begin here.</source>
        <translation>Noch wird nichts gesagt. „Auch Stationen, an denen nichts gesprochen wird“ ankreuzen, um hier anzufangen.</translation>
    </message>
    <message>
        <source>Length of the talk</source>
        <translation>Länge des Vortrags</translation>
    </message>
    <message>
        <source>{count} words · planned {length}</source>
        <translation>{count} Wörter · geplant {length}</translation>
    </message>
    <message>
        <source>&amp;Change snippets…</source>
        <translation>Text&amp;bausteine ändern…</translation>
    </message>
    <message>
        <source>Snippets</source>
        <translation>Textbausteine</translation>
    </message>
    <message>
        <source>Name of the snippet</source>
        <translation>Name des Textbausteins</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Words of the snippet</source>
        <translation>Worte des Textbausteins</translation>
    </message>
    <message>
        <source>Filled when it is inserted: {places}.</source>
        <translation>Beim Einfügen gefüllt: {places}.</translation>
    </message>
    <message>
        <source>As it will be inserted</source>
        <translation>Wie er eingefügt wird</translation>
    </message>
    <message>
        <source>&amp;Names from a file…</source>
        <translation>&amp;Namen aus einer Datei…</translation>
    </message>
    <message>
        <source>Ne&amp;w</source>
        <translation>Ne&amp;u</translation>
    </message>
    <message>
        <source>&amp;Remove</source>
        <translation>E&amp;ntfernen</translation>
    </message>
    <message>
        <source>&amp;Insert</source>
        <translation>&amp;Einfügen</translation>
    </message>
    <message>
        <source>Without a name</source>
        <translation>Ohne Namen</translation>
    </message>
    <message>
        <source>

Not known: {places}</source>
        <translation>

Nicht bekannt: {places}</translation>
    </message>
    <message>
        <source>New snippet</source>
        <translation>Neuer Textbaustein</translation>
    </message>
    <message>
        <source>A file with names</source>
        <translation>Eine Datei mit Namen</translation>
    </message>
    <message>
        <source>Text and tables (*.txt *.csv *.tsv);;All files (*)</source>
        <translation>Text und Tabellen (*.txt *.csv *.tsv);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>No file with names has been chosen: a text with one name a line, or a table.</source>
        <translation>Es ist keine Datei mit Namen gewählt: ein Text mit einem Namen je Zeile oder eine Tabelle.</translation>
    </message>
    <message>
        <source>1 name</source>
        <translation>1 Name</translation>
    </message>
    <message>
        <source>{count} names</source>
        <translation>{count} Namen</translation>
    </message>
    <message>
        <source>{told} from {file}</source>
        <translation>{told} aus {file}</translation>
    </message>
    <message>
        <source>No suggestion</source>
        <translation>Kein Vorschlag</translation>
    </message>
    <message>
        <source>Add “{word}” to the words of this study</source>
        <translation>„{word}“ zu den Wörtern dieser Studie</translation>
    </message>
    <message>
        <source>Add “{word}” to my words</source>
        <translation>„{word}“ zu den eigenen Wörtern</translation>
    </message>
    <message>
        <source>Add a word to this study</source>
        <translation>Wort zu dieser Studie hinzufügen</translation>
    </message>
    <message>
        <source>Spelling</source>
        <translation>Rechtschreibung</translation>
    </message>
    <message>
        <source>&amp;Mark words that no dictionary has</source>
        <translation>Wörter &amp;markieren, die in keinem Wörterbuch stehen</translation>
    </message>
    <message>
        <source>Language of the script</source>
        <translation>Sprache des Skripts</translation>
    </message>
    <message>
        <source>&amp;Language of the script</source>
        <translation>S&amp;prache des Skripts</translation>
    </message>
    <message>
        <source>Words of this &amp;study</source>
        <translation>Wörter dieser &amp;Studie</translation>
    </message>
    <message>
        <source>M&amp;y words, for all studies</source>
        <translation>&amp;Eigene Wörter, für alle Studien</translation>
    </message>
    <message>
        <source>Names in the headers, moves and squares are right anyway.</source>
        <translation>Namen in den Kopfdaten, Züge und Felder sind ohnehin richtig.</translation>
    </message>
    <message>
        <source>Forget</source>
        <translation>Vergessen</translation>
    </message>
    <message>
        <source>Forget the chosen words</source>
        <translation>Die gewählten Wörter vergessen</translation>
    </message>
    <message>
        <source>As the desk ({language})</source>
        <translation>Wie das Pult ({language})</translation>
    </message>
    <message>
        <source>Forget words of this study</source>
        <translation>Wörter dieser Studie vergessen</translation>
    </message>
    <message>
        <source>Play a move at a word</source>
        <translation>Zug bei einem Wort ausführen</translation>
    </message>
    <message>
        <source>There are no words yet at which a move could be played.</source>
        <translation>Noch gibt es keine Worte, bei denen ein Zug ausgeführt werden könnte.</translation>
    </message>
    <message>
        <source>The think pause here ends this line: the next move has one of its own.</source>
        <translation>Die Denkpause hier beendet diesen Text: der nächste Zug hat einen eigenen.</translation>
    </message>
    <message>
        <source>This line shows marks of its own move: the next move has a line of its own.</source>
        <translation>Dieser Text zeigt Markierungen seines eigenen Zugs: der nächste Zug hat einen eigenen Text.</translation>
    </message>
    <message>
        <source>This move begins a side-line: it has a line of its own.</source>
        <translation>Mit diesem Zug beginnt eine Nebenvariante: er hat einen eigenen Text.</translation>
    </message>
    <message>
        <source>The move that was played has a line of its own.</source>
        <translation>Der gespielte Zug hat einen eigenen Text.</translation>
    </message>
    <message>
        <source>This move is not told right after this one: it has a line of its own.</source>
        <translation>Dieser Zug wird nicht unmittelbar danach erzählt: er hat einen eigenen Text.</translation>
    </message>
    <message>
        <source>Add a move</source>
        <translation>Zug hinzufügen</translation>
    </message>
    <message>
        <source>Insert a branch</source>
        <translation>Zweig einsetzen</translation>
    </message>
    <message>
        <source>The place where this branch belongs is not on the tree any more.</source>
        <translation>Der Platz, an den dieser Zweig gehört, ist nicht mehr im Baum.</translation>
    </message>
    <message>
        <source>This branch is on the tree already.</source>
        <translation>Dieser Zweig steht bereits im Baum.</translation>
    </message>
    <message>
        <source>This move is on the tree already.</source>
        <translation>Dieser Zug steht bereits im Baum.</translation>
    </message>
    <message>
        <source>Delete a branch</source>
        <translation>Zweig löschen</translation>
    </message>
    <message>
        <source>Reorder side-lines</source>
        <translation>Nebenvarianten umordnen</translation>
    </message>
    <message>
        <source>The start position has no place among others.</source>
        <translation>Die Anfangsstellung hat keinen Platz unter anderen.</translation>
    </message>
    <message>
        <source>There is no such place among the moves played here.</source>
        <translation>Diesen Platz gibt es unter den hier gespielten Zügen nicht.</translation>
    </message>
    <message>
        <source>Change a node</source>
        <translation>Knoten ändern</translation>
    </message>
    <message>
        <source>A node has nothing called “{field}” that could be set.</source>
        <translation>Ein Knoten hat nichts namens „{field}“, das sich setzen ließe.</translation>
    </message>
    <message>
        <source>Change the headers</source>
        <translation>Kopfdaten ändern</translation>
    </message>
    <message>
        <source>The start position cannot change while moves stand on the tree.</source>
        <translation>Die Anfangsstellung kann sich nicht ändern, solange Züge im Baum stehen.</translation>
    </message>
    <message>
        <source>Change the script</source>
        <translation>Skript ändern</translation>
    </message>
    <message>
        <source>Set the slot</source>
        <translation>Zeitfenster festlegen</translation>
    </message>
    <message>
        <source>A slot is longer than nothing and shorter than a day.</source>
        <translation>Ein Zeitfenster ist länger als nichts und kürzer als ein Tag.</translation>
    </message>
    <message>
        <source>Rehearsals</source>
        <translation>Proben</translation>
    </message>
    <message>
        <source>Beats and how long they took</source>
        <translation>Stationen und wie lange sie dauerten</translation>
    </message>
    <message>
        <source>Learn my pace from this</source>
        <translation>Das Tempo daraus lernen</translation>
    </message>
    <message>
        <source>The plan then counts with the pace at which you rehearse; undo takes it back</source>
        <translation>Der Plan rechnet dann mit dem Tempo der Proben; Rückgängig nimmt es zurück</translation>
    </message>
    <message>
        <source>Forget this rehearsal</source>
        <translation>Diese Probe vergessen</translation>
    </message>
    <message>
        <source>The one in whose column the keyboard is; takes stay</source>
        <translation>Die, in deren Spalte die Tastatur steht; Takes bleiben</translation>
    </message>
    <message>
        <source>Set the pace</source>
        <translation>Sprechtempo festlegen</translation>
    </message>
    <message>
        <source>The plan now counts with {rate} words a minute, from {lines} beats. Edit › Undo takes it back.</source>
        <translation>Der Plan rechnet jetzt mit {rate} Wörtern in der Minute, aus {lines} Stationen. Bearbeiten › Rückgängig nimmt es zurück.</translation>
    </message>
    <message>
        <source>Beat</source>
        <translation>Station</translation>
    </message>
    <message>
        <source>Plan</source>
        <translation>Plan</translation>
    </message>
    <message>
        <source>Usually</source>
        <translation>Meist</translation>
    </message>
    <message>
        <source>Over or under</source>
        <translation>Über oder unter</translation>
    </message>
    <message>
        <source>Begun anew</source>
        <translation>Neu begonnen</translation>
    </message>
    <message>
        <source>Trend</source>
        <translation>Trend</translation>
    </message>
    <message>
        <source>Silent</source>
        <translation>Stille</translation>
    </message>
    <message>
        <source>Nothing has been rehearsed yet. Rehearse (Ctrl+2) the talk once, and its beats stand here.</source>
        <translation>Noch wurde nichts geprobt. Den Vortrag einmal proben (Strg+2), dann stehen seine Stationen hier.</translation>
    </message>
    <message>
        <source>Told once, in {length}; planned were {planned}.</source>
        <translation>Einmal erzählt, in {length}; geplant waren {planned}.</translation>
    </message>
    <message>
        <source>Told {count} times; the last time in {length}, planned were {planned}.</source>
        <translation>{count}-mal erzählt; zuletzt in {length}, geplant waren {planned}.</translation>
    </message>
    <message>
        <source>Running over: {beats}.</source>
        <translation>Zu lang: {beats}.</translation>
    </message>
    <message>
        <source>The end was told {share} % slower than the beginning.</source>
        <translation>Das Ende wurde um {share} % langsamer erzählt als der Anfang.</translation>
    </message>
    <message>
        <source>The end was told {share} % faster than the beginning.</source>
        <translation>Das Ende wurde um {share} % schneller erzählt als der Anfang.</translation>
    </message>
    <message>
        <source>Take {number}</source>
        <translation>Take {number}</translation>
    </message>
    <message>
        <source>Keep a take</source>
        <translation>Take behalten</translation>
    </message>
    <message>
        <source>Drop a take</source>
        <translation>Take fallen lassen</translation>
    </message>
    <message>
        <source>There is no such take.</source>
        <translation>Diesen Take gibt es nicht.</translation>
    </message>
    <message>
        <source>Keep a rehearsal</source>
        <translation>Probe behalten</translation>
    </message>
    <message>
        <source>Leave a query</source>
        <translation>Rückfrage abweisen</translation>
    </message>
    <message>
        <source>Change a pronunciation</source>
        <translation>Aussprache ändern</translation>
    </message>
    <message>
        <source>A pronunciation belongs to a word.</source>
        <translation>Eine Aussprache gehört zu einem Wort.</translation>
    </message>
    <message>
        <source>Set the language of the script</source>
        <translation>Sprache des Skripts festlegen</translation>
    </message>
    <message>
        <source>Change the words of this study</source>
        <translation>Wörter dieser Studie ändern</translation>
    </message>
    <message>
        <source>What is added to the words of a study is one word without blanks.</source>
        <translation>Zu den Wörtern einer Studie kommt jeweils ein Wort ohne Leerzeichen.</translation>
    </message>
    <message>
        <source>Several changes</source>
        <translation>Mehrere Änderungen</translation>
    </message>
    <message>
        <source>This is the main line already.</source>
        <translation>Das ist bereits die Hauptlinie.</translation>
    </message>
    <message>
        <source>Promote a side-line</source>
        <translation>Nebenvariante aufwerten</translation>
    </message>
    <message>
        <source>There is no side-line below this one to change places with.</source>
        <translation>Unter dieser steht keine Nebenvariante, mit der sie tauschen könnte.</translation>
    </message>
    <message>
        <source>Demote a line</source>
        <translation>Linie abwerten</translation>
    </message>
    <message>
        <source>Make this the main line</source>
        <translation>Zur Hauptlinie machen</translation>
    </message>
    <message>
        <source>Try a move</source>
        <translation>Zug ausprobieren</translation>
    </message>
    <message>
        <source>No note here could become a spoken line.</source>
        <translation>Keine Notiz hier könnte ein Sprechtext werden.</translation>
    </message>
    <message>
        <source>Turn notes into spoken lines</source>
        <translation>Notizen zu Sprechtexten machen</translation>
    </message>
    <message>
        <source>This node is not on the tree any more.</source>
        <translation>Dieser Knoten ist nicht mehr im Baum.</translation>
    </message>
    <message>
        <source>A start position cannot be pasted after a move.</source>
        <translation>Eine Anfangsstellung lässt sich nicht nach einem Zug einfügen.</translation>
    </message>
    <message>
        <source>This branch does not fit here: {number_text} {squares} is not a legal move.</source>
        <translation>Dieser Zweig passt hier nicht: {number_text} {squares} ist kein legaler Zug.</translation>
    </message>
    <message>
        <source>Paste</source>
        <translation>Einfügen</translation>
    </message>
    <message>
        <source>All of this branch stands here already.</source>
        <translation>Dieser ganze Zweig steht hier bereits.</translation>
    </message>
    <message>
        <source>Paste a branch</source>
        <translation>Zweig einfügen</translation>
    </message>
    <message>
        <source>A branch cannot be pasted into itself.</source>
        <translation>Ein Zweig lässt sich nicht in sich selbst einfügen.</translation>
    </message>
    <message>
        <source>Move a branch</source>
        <translation>Zweig verschieben</translation>
    </message>
    <message>
        <source>there is no white king</source>
        <translation>der weiße König fehlt</translation>
    </message>
    <message>
        <source>there is no black king</source>
        <translation>der schwarze König fehlt</translation>
    </message>
    <message>
        <source>there are too many kings</source>
        <translation>es gibt zu viele Könige</translation>
    </message>
    <message>
        <source>White has more than eight pawns</source>
        <translation>Weiß hat mehr als acht Bauern</translation>
    </message>
    <message>
        <source>Black has more than eight pawns</source>
        <translation>Schwarz hat mehr als acht Bauern</translation>
    </message>
    <message>
        <source>a pawn stands on the first or the last rank</source>
        <translation>ein Bauer steht auf der ersten oder letzten Reihe</translation>
    </message>
    <message>
        <source>White has more than sixteen pieces</source>
        <translation>Weiß hat mehr als sechzehn Figuren</translation>
    </message>
    <message>
        <source>Black has more than sixteen pieces</source>
        <translation>Schwarz hat mehr als sechzehn Figuren</translation>
    </message>
    <message>
        <source>the castling rights do not fit kings and rooks</source>
        <translation>die Rochaderechte passen nicht zu Königen und Türmen</translation>
    </message>
    <message>
        <source>no pawn could be taken en passant there</source>
        <translation>dort könnte kein Bauer en passant geschlagen werden</translation>
    </message>
    <message>
        <source>the side that is not to move stands in check</source>
        <translation>die Seite, die nicht am Zug ist, steht im Schach</translation>
    </message>
    <message>
        <source>the board is empty</source>
        <translation>das Brett ist leer</translation>
    </message>
    <message>
        <source>the king cannot be in check from so many pieces at once</source>
        <translation>so viele Figuren können dem König nicht zugleich Schach geben</translation>
    </message>
    <message>
        <source>no legal move could have given this check</source>
        <translation>kein legaler Zug kann dieses Schach gegeben haben</translation>
    </message>
    <message>
        <source>This position cannot be played on: {reasons}.</source>
        <translation>Diese Stellung ist nicht spielbar: {reasons}.</translation>
    </message>
    <message>
        <source>it is not a legal position</source>
        <translation>sie ist keine legale Stellung</translation>
    </message>
    <message>
        <source>The FEN tag holds no position ({reason}). A position looks like “{example}”.</source>
        <translation>Der Tag FEN enthält keine Stellung ({reason}). Eine Stellung sieht so aus: „{example}“.</translation>
    </message>
    <message>
        <source>A brace stands alone in “{text}”; write it twice to say it.</source>
        <translation>In „{text}“ steht eine geschweifte Klammer allein; doppelt geschrieben wird sie gesprochen.</translation>
    </message>
    <message>
        <source>mark {mark}</source>
        <translation>Markierung {mark}</translation>
    </message>
    <message>
        <source>no marks</source>
        <translation>keine Markierungen</translation>
    </message>
    <message>
        <source>one mark</source>
        <translation>eine Markierung</translation>
    </message>
    <message>
        <source>{marks} marks</source>
        <translation>{marks} Markierungen</translation>
    </message>
    <message>
        <source>There is no mark {number} here: this position has {have}.</source>
        <translation>Markierung {number} gibt es hier nicht: diese Stellung hat {have}.</translation>
    </message>
    <message>
        <source>“{{{name}}}” is no move on the way to this position, and no mark either.</source>
        <translation>„{{{name}}}“ ist kein Zug auf dem Weg zu dieser Stellung und auch keine Markierung.</translation>
    </message>
    <message>
        <source>This is no position in FEN ({reason}). One looks like “{example}”.</source>
        <translation>Das ist keine Stellung in FEN ({reason}). Eine sieht so aus: „{example}“.</translation>
    </message>
    <message>
        <source>Start</source>
        <translation>Anfang</translation>
    </message>
    <message>
        <source>{name} has changed since its games were listed: list them again.</source>
        <translation>{name} hat sich geändert, seit die Partien aufgelistet wurden: neu auflisten.</translation>
    </message>
    <message>
        <source>Told by</source>
        <translation>Erzählt von</translation>
    </message>
    <message>
        <source>Analysis</source>
        <translation>Analyse</translation>
    </message>
    <message>
        <source>Photographs</source>
        <translation>Fotos</translation>
    </message>
    <message>
        <source>{path} cannot be read: {reason}.</source>
        <translation>{path} lässt sich nicht lesen: {reason}.</translation>
    </message>
    <message>
        <source>{path} is no text in UTF-8.</source>
        <translation>{path} ist kein Text in UTF-8.</translation>
    </message>
    <message>
        <source>The game</source>
        <translation>Die Partie</translation>
    </message>
    <message>
        <source>Credits</source>
        <translation>Mitwirkende</translation>
    </message>
    <message>
        <source>{white} against {black}</source>
        <translation>{white} gegen {black}</translation>
    </message>
    <message>
        <source>Opening: {name}.</source>
        <translation>Eröffnung: {name}.</translation>
    </message>
    <message>
        <source>{count} moves</source>
        <translation>{count} Züge</translation>
    </message>
    <message>
        <source>1 side-line</source>
        <translation>1 Nebenvariante</translation>
    </message>
    <message>
        <source>{count} side-lines</source>
        <translation>{count} Nebenvarianten</translation>
    </message>
    <message>
        <source>1 pause to find the move</source>
        <translation>1 Pause, um den Zug zu finden</translation>
    </message>
    <message>
        <source>{count} pauses to find the move</source>
        <translation>{count} Pausen, um den Zug zu finden</translation>
    </message>
    <message>
        <source>{time} minutes</source>
        <translation>{time} Minuten</translation>
    </message>
    <message>
        <source>{first} and {last}</source>
        <translation>{first} und {last}</translation>
    </message>
    <message>
        <source>{place}: the template cannot be used: {why}.</source>
        <translation>{place}: Die Vorlage ist nicht brauchbar: {why}.</translation>
    </message>
    <message>
        <source>“{word}” does not say what the pawn becomes: it was read as a queen.</source>
        <translation>„{word}“ sagt nicht, was aus dem Bauern wird: als Dame gelesen.</translation>
    </message>
    <message>
        <source>A variation is</source>
        <translation>Eine Variante wird</translation>
    </message>
    <message>
        <source>{count} variations are</source>
        <translation>{count} Varianten werden</translation>
    </message>
    <message>
        <source>{what} never closed: “)” is missing. It was closed at the end of the game.</source>
        <translation>{what} nie geschlossen: „)“ fehlt. Am Ende der Partie geschlossen.</translation>
    </message>
    <message>
        <source>A “)” closes no variation; it was left out.</source>
        <translation>Ein „)“ schließt keine Variante; weggelassen.</translation>
    </message>
    <message>
        <source>A comment is never closed: “}” is missing. It was kept whole.</source>
        <translation>Ein Kommentar wird nie geschlossen: „}“ fehlt. Ganz behalten.</translation>
    </message>
    <message>
        <source>“${number}” is no annotation glyph ($0 to $255); kept as a note.</source>
        <translation>„${number}“ ist kein Bewertungszeichen ($0 bis $255); als Notiz behalten.</translation>
    </message>
    <message>
        <source>“{suffix}” is no judgement of a move that the standard knows; kept as a note.</source>
        <translation>„{suffix}“ ist keine Bewertung eines Zugs, die der Standard kennt; als Notiz behalten.</translation>
    </message>
    <message>
        <source>A variation begins before any move that it could replace; it was read from here.</source>
        <translation>Eine Variante beginnt vor jedem Zug, den sie ersetzen könnte; ab hier gelesen.</translation>
    </message>
    <message>
        <source> and </source>
        <translation> und </translation>
    </message>
    <message>
        <source>“{label}” can be played from {squares}, and the text does not say which.</source>
        <translation>„{label}“ kann von {squares} aus gespielt werden, und der Text sagt nicht, von wo.</translation>
    </message>
    <message>
        <source>“{label}” is not a legal move here.</source>
        <translation>„{label}“ ist hier kein legaler Zug.</translation>
    </message>
    <message>
        <source>this variation</source>
        <translation>dieser Variante</translation>
    </message>
    <message>
        <source>the game</source>
        <translation>der Partie</translation>
    </message>
    <message>
        <source>{why} The rest of {rest} was kept as a note.</source>
        <translation>{why} Der Rest {rest} wurde als Notiz behalten.</translation>
    </message>
    <message>
        <source>“{text}” is neither a move nor a comment; kept as a note.</source>
        <translation>„{text}“ ist weder Zug noch Kommentar; als Notiz behalten.</translation>
    </message>
    <message>
        <source>“{text}” stands for a move but is none.</source>
        <translation>„{text}“ steht für einen Zug, ist aber keiner.</translation>
    </message>
    <message>
        <source>This tag is not written as [{name} &quot;…&quot;]; it was read as “{value}”.</source>
        <translation>Dieser Tag ist nicht als [{name} &quot;…&quot;] geschrieben; als „{value}“ gelesen.</translation>
    </message>
    <message>
        <source>A second {name} tag says “{value}”; the first one, “{found}”, was kept.</source>
        <translation>Ein zweiter Tag {name} sagt „{value}“; der erste, „{found}“, wurde behalten.</translation>
    </message>
    <message>
        <source>{reason} The moves of this game were kept as a note.</source>
        <translation>{reason} Die Züge dieser Partie wurden als Notiz behalten.</translation>
    </message>
    <message>
        <source>The Variant tag says “{variant}”; the moves were read by the rules of chess.</source>
        <translation>Der Tag Variant sagt „{variant}“; die Züge wurden nach den Regeln des Schachs gelesen.</translation>
    </message>
    <message>
        <source>The Result tag says “{result}” but the moves end with “{marker}”; the tag was kept.</source>
        <translation>Der Tag Result sagt „{result}“, aber die Züge enden mit „{marker}“; der Tag wurde behalten.</translation>
    </message>
    <message>
        <source>The {name} tag has {count} characters and PGN allows {most}: the rest was left out.</source>
        <translation>Der Tag {name} hat {count} Zeichen, und PGN erlaubt {most}: der Rest wurde weggelassen.</translation>
    </message>
    <message>
        <source>one comment</source>
        <translation>einem Kommentar</translation>
    </message>
    <message>
        <source>{braced} comments</source>
        <translation>{braced} Kommentaren</translation>
    </message>
    <message>
        <source>A “}}” would end a comment of PGN: in {places} the braces were made full-width, “｛” and “｝”.</source>
        <translation>Ein „}}“ würde einen Kommentar von PGN beenden: in {places} wurden die Klammern vollbreit, „｛“ und „｝“.</translation>
    </message>
    <message>
        <source>One move is a null move</source>
        <translation>Ein Zug ist ein Nullzug</translation>
    </message>
    <message>
        <source>{nulls} moves are null moves</source>
        <translation>{nulls} Züge sind Nullzüge</translation>
    </message>
    <message>
        <source>{moves}, written “--”: PGN knows none, and other programs may stop reading there.</source>
        <translation>{moves}, geschrieben „--“: PGN kennt keine, und andere Programme hören dort vielleicht auf zu lesen.</translation>
    </message>
    <message>
        <source>white passes the turn</source>
        <translation>Weiß setzt aus</translation>
    </message>
    <message>
        <source>black passes the turn</source>
        <translation>Schwarz setzt aus</translation>
    </message>
    <message>
        <source>white {piece}</source>
        <translation>Weiß: {piece}</translation>
    </message>
    <message>
        <source>black {piece}</source>
        <translation>Schwarz: {piece}</translation>
    </message>
    <message>
        <source>{piece} from {origin} takes the pawn in passing, to {target}</source>
        <translation>{piece} von {origin} schlägt den Bauern en passant, nach {target}</translation>
    </message>
    <message>
        <source>{piece} from {origin} takes the {taken} on {target}</source>
        <translation>{piece} von {origin} schlägt auf {target}: {taken}</translation>
    </message>
    <message>
        <source>{move}, promotes to a {piece}</source>
        <translation>{move}, Umwandlung in {piece}</translation>
    </message>
    <message>
        <source>{move}, checkmate</source>
        <translation>{move}, matt</translation>
    </message>
    <message>
        <source>{move}, check</source>
        <translation>{move}, Schach</translation>
    </message>
    <message>
        <source>white castles kingside</source>
        <translation>Weiß rochiert kurz</translation>
    </message>
    <message>
        <source>white castles queenside</source>
        <translation>Weiß rochiert lang</translation>
    </message>
    <message>
        <source>black castles kingside</source>
        <translation>Schwarz rochiert kurz</translation>
    </message>
    <message>
        <source>black castles queenside</source>
        <translation>Schwarz rochiert lang</translation>
    </message>
    <message>
        <source>Last move from {origin} to {target}.</source>
        <translation>Letzter Zug von {origin} nach {target}.</translation>
    </message>
    <message>
        <source>{side}: {pieces}.</source>
        <translation>{side}: {pieces}.</translation>
    </message>
    <message>
        <source>no pieces</source>
        <translation>keine Figuren</translation>
    </message>
    <message>
        <source>{side} to move is stalemated.</source>
        <translation>{side} am Zug ist patt.</translation>
    </message>
    <message>
        <source>{side} to move, in check.</source>
        <translation>{side} am Zug, im Schach.</translation>
    </message>
    <message>
        <source>{side} to move.</source>
        <translation>{side} am Zug.</translation>
    </message>
    <message>
        <source>{square}, empty</source>
        <translation>{square}, leer</translation>
    </message>
    <message>
        <source>white {piece} on {square}</source>
        <translation>Weiß: {piece} auf {square}</translation>
    </message>
    <message>
        <source>black {piece} on {square}</source>
        <translation>Schwarz: {piece} auf {square}</translation>
    </message>
    <message>
        <source>{number}: {mark}</source>
        <translation>{number}: {mark}</translation>
    </message>
    <message>
        <source>Threat from {origin} to {target}.</source>
        <translation>Drohung von {origin} nach {target}.</translation>
    </message>
    <message>
        <source>Target on {square}.</source>
        <translation>Ziel auf {square}.</translation>
    </message>
    <message>
        <source>Route {stops} to {last}.</source>
        <translation>Weg {stops} nach {last}.</translation>
    </message>
    <message>
        <source>Key square {square}.</source>
        <translation>Schlüsselfeld {square}.</translation>
    </message>
    <message>
        <source>{guard} guards {square}.</source>
        <translation>{guard} deckt {square}.</translation>
    </message>
    <message>
        <source>Turned</source>
        <translation>Gedrechselt</translation>
    </message>
    <message>
        <source>Bold</source>
        <translation>Kräftig</translation>
    </message>
    <message>
        <source>the rules of the game</source>
        <translation>die Regeln des Spiels</translation>
    </message>
    <message>
        <source>the study sheet</source>
        <translation>das Studienblatt</translation>
    </message>
    <message>
        <source>recording from microphones of every form</source>
        <translation>Aufnehmen mit Mikrofonen jeder Bauart</translation>
    </message>
    <message>
        <source>takes in less room, and reading such takes</source>
        <translation>Takes mit weniger Platz zu speichern und solche zu lesen</translation>
    </message>
    <message>
        <source>the edit timeline</source>
        <translation>die Schnittliste</translation>
    </message>
    <message>
        <source>loudness and true peak, heard and delivered</source>
        <translation>Lautheit und True Peak, gehört und ausgespielt</translation>
    </message>
    <message>
        <source>recording from microphones of another rate than 48 kHz</source>
        <translation>Aufnehmen mit Mikrofonen mit einer anderen Rate als 48 kHz</translation>
    </message>
    <message>
        <source>finding the words of the script in a recording</source>
        <translation>die Wörter des Sprechtextes in einer Aufnahme finden</translation>
    </message>
    <message>
        <source>noticing that a microphone was unplugged</source>
        <translation>bemerken, dass ein Mikrofon abgezogen wurde</translation>
    </message>
    <message>
        <source>the page to click through, and the text beside a video</source>
        <translation>die Seite zum Durchklicken und der Text neben einem Video</translation>
    </message>
    <message>
        <source>the video, and sound that was recorded elsewhere</source>
        <translation>das Video und anderswo aufgenommener Ton</translation>
    </message>
    <message>
        <source>remembering the studies that were open last</source>
        <translation>merken, welche Studien zuletzt offen waren</translation>
    </message>
    <message>
        <source>keeping two windows from one file</source>
        <translation>zwei Fenster von derselben Datei fernhalten</translation>
    </message>
    <message>
        <source>tables and progress bars on the terminal</source>
        <translation>Tabellen und Fortschrittsbalken im Terminal</translation>
    </message>
    <message>
        <source>the desk</source>
        <translation>das Pult</translation>
    </message>
    <message>
        <source>recording and playing takes</source>
        <translation>Takes aufnehmen und abspielen</translation>
    </message>
    <message>
        <source>Sound</source>
        <translation>Ton</translation>
    </message>
    <message>
        <source>stills and single diagrams as PNG</source>
        <translation>Standbilder und einzelne Diagramme als PNG</translation>
    </message>
    <message>
        <source>{package} is not installed</source>
        <translation>{package} ist nicht installiert</translation>
    </message>
    <message>
        <source>underlining misspelt words of the script</source>
        <translation>falsch geschriebene Wörter des Skripts unterstreichen</translation>
    </message>
    <message>
        <source>this system has no dictionaries</source>
        <translation>dieses System hat keine Wörterbücher</translation>
    </message>
    <message>
        <source>pyenchant {version} with {languages}</source>
        <translation>pyenchant {version} mit {languages}</translation>
    </message>
    <message>
        <source>hearing the plan before it is recorded</source>
        <translation>den Plan anhören, bevor er aufgenommen ist</translation>
    </message>
    <message>
        <source>Scratch voice</source>
        <translation>Probestimme</translation>
    </message>
    <message>
        <source>no speech synthesiser was found</source>
        <translation>keine Sprachausgabe wurde gefunden</translation>
    </message>
    <message>
        <source>the desk; everything on the command line works without it</source>
        <translation>das Pult; auf der Kommandozeile geht alles auch ohne</translation>
    </message>
    <message>
        <source>{problem}, and {lack}</source>
        <translation>{problem}, und {lack}</translation>
    </message>
    <message>
        <source>Screen</source>
        <translation>Bildschirm</translation>
    </message>
    <message>
        <source>QT_QPA_PLATFORM={platform} draws into memory only</source>
        <translation>QT_QPA_PLATFORM={platform} zeichnet nur in den Speicher</translation>
    </message>
    <message>
        <source>Unset QT_QPA_PLATFORM to see the desk.</source>
        <translation>QT_QPA_PLATFORM nicht setzen, um das Pult zu sehen.</translation>
    </message>
    <message>
        <source>neither DISPLAY nor WAYLAND_DISPLAY is set</source>
        <translation>weder DISPLAY noch WAYLAND_DISPLAY ist gesetzt</translation>
    </message>
    <message>
        <source>Start it from a desktop session, or on a virtual screen: xvfb-run studyboard (apt install xvfb xauth)</source>
        <translation>Aus einer Arbeitsumgebung starten, oder auf einem virtuellen Bildschirm: xvfb-run studyboard (apt install xvfb xauth)</translation>
    </message>
    <message>
        <source>no X server answers at DISPLAY={display}</source>
        <translation>kein X-Server antwortet unter DISPLAY={display}</translation>
    </message>
    <message>
        <source>Start one, or set DISPLAY to the one that runs.</source>
        <translation>Einen starten, oder DISPLAY auf den setzen, der läuft.</translation>
    </message>
    <message>
        <source>everything</source>
        <translation>alles</translation>
    </message>
    <message>
        <source>Install Python 3.11 or later.</source>
        <translation>Python 3.11 oder neuer installieren.</translation>
    </message>
    <message>
        <source>not installed</source>
        <translation>nicht installiert</translation>
    </message>
    <message>
        <source>this system lacks {libraries}</source>
        <translation>diesem System fehlt {libraries}</translation>
    </message>
    <message>
        <source>this system lacks {libraries} and {more} more libraries</source>
        <translation>diesem System fehlen {libraries} und {more} weitere Bibliotheken</translation>
    </message>
    <message>
        <source>installed</source>
        <translation>installiert</translation>
    </message>
    <message>
        <source>With Homebrew: brew install cairo</source>
        <translation>Mit Homebrew: brew install cairo</translation>
    </message>
    <message>
        <source>Install the package again.</source>
        <translation>Das Paket neu installieren.</translation>
    </message>
    <message>
        <source>Install the package again with pip.</source>
        <translation>Das Paket mit pip neu installieren.</translation>
    </message>
    <message>
        <source>On Debian and Ubuntu: {command}</source>
        <translation>Unter Debian und Ubuntu: {command}</translation>
    </message>
    <message>
        <source>the library that is named here</source>
        <translation>die hier genannte Bibliothek</translation>
    </message>
    <message>
        <source>Install what brings {libraries} on this system.</source>
        <translation>Installieren, was {libraries} auf dieses System bringt.</translation>
    </message>
    <message>
        <source>The microphone {wanted} is not plugged in. Plug it in, or choose another one.</source>
        <translation>Das Mikrofon {wanted} ist nicht angeschlossen. Anschließen, oder ein anderes wählen.</translation>
    </message>
    <message>
        <source>No microphone was found, and no loudspeaker either: probably no sound server is running. On Debian and Ubuntu, apt install pipewire-pulse (or pulseaudio) and log in again; everything but recording works without.</source>
        <translation>Es wurde kein Mikrofon gefunden und auch kein Lautsprecher: wahrscheinlich läuft kein Tonserver. Unter Debian und Ubuntu apt install pipewire-pulse (oder pulseaudio) und neu anmelden; außer dem Aufnehmen geht alles auch ohne.</translation>
    </message>
    <message>
        <source>No microphone was found. Plug one in, or switch it on in the system&apos;s sound settings, and try again; everything but recording works without.</source>
        <translation>Es wurde kein Mikrofon gefunden. Eines anschließen oder in den Toneinstellungen des Systems einschalten und noch einmal versuchen; außer dem Aufnehmen geht alles auch ohne.</translation>
    </message>
    <message>
        <source>Sound needs the Python package {package}, which is not installed: pip install {package}</source>
        <translation>Für Ton wird das Python-Paket {package} gebraucht, das nicht installiert ist: pip install {package}</translation>
    </message>
    <message>
        <source>Sound cannot be used: {reason}.</source>
        <translation>Ton ist nicht verfügbar: {reason}.</translation>
    </message>
    <message>
        <source>Sound needs {library}, which this system lacks. {remedy}</source>
        <translation>Für Ton wird {library} gebraucht, was diesem System fehlt. {remedy}</translation>
    </message>
    <message>
        <source>The microphone {description} could not be opened.</source>
        <translation>Das Mikrofon {description} ließ sich nicht öffnen.</translation>
    </message>
    <message>
        <source>The microphone is open but no sound arrives from it. Choose another one, or plug it in again.</source>
        <translation>Das Mikrofon ist offen, aber es kommt kein Ton. Ein anderes wählen oder neu anschließen.</translation>
    </message>
    <message>
        <source>The microphone has stopped delivering sound. Is it still plugged in?</source>
        <translation>Das Mikrofon liefert keinen Ton mehr. Ist es noch angeschlossen?</translation>
    </message>
    <message>
        <source>The microphone could not be opened. Perhaps another program has it, or access is not allowed.</source>
        <translation>Das Mikrofon ließ sich nicht öffnen. Vielleicht hat es ein anderes Programm, oder der Zugriff ist nicht erlaubt.</translation>
    </message>
    <message>
        <source>The microphone has gone away. Is it still plugged in?</source>
        <translation>Das Mikrofon ist weg. Ist es noch angeschlossen?</translation>
    </message>
    <message>
        <source>The microphone delivers sound in a form that is not known. Choose another microphone.</source>
        <translation>Das Mikrofon liefert Ton in einer unbekannten Form. Ein anderes Mikrofon wählen.</translation>
    </message>
    <message>
        <source>No loudspeaker was found: the take is played silently, and the board follows all the same.</source>
        <translation>Es wurde kein Lautsprecher gefunden: der Take läuft stumm, und das Brett folgt trotzdem.</translation>
    </message>
    <message>
        <source>{reason} The take is played silently.</source>
        <translation>{reason} Der Take läuft stumm.</translation>
    </message>
    <message>
        <source>The loudspeaker has gone away: the take goes on silently, and the board still follows.</source>
        <translation>Der Lautsprecher ist weg: der Take läuft stumm weiter, und das Brett folgt noch.</translation>
    </message>
    <message>
        <source>The microphone “{description}” has been unplugged.</source>
        <translation>Das Mikrofon „{description}“ wurde abgezogen.</translation>
    </message>
    <message>
        <source>The take ends here; its {seconds:.1f} seconds are kept.</source>
        <translation>Der Take endet hier; seine {seconds:.1f} Sekunden sind behalten.</translation>
    </message>
    <message>
        <source>Nothing of this take could be kept.</source>
        <translation>Von diesem Take ließ sich nichts behalten.</translation>
    </message>
    <message>
        <source>The take ends here; its first {seconds:.1f} seconds are kept.</source>
        <translation>Der Take endet hier; seine ersten {seconds:.1f} Sekunden sind behalten.</translation>
    </message>
    <message>
        <source>The take ends here; its first {seconds:.1f} seconds are stored and will be among the takes when the study is opened again.</source>
        <translation>Der Take endet hier; seine ersten {seconds:.1f} Sekunden sind gespeichert und stehen unter den Takes, wenn die Studie wieder geöffnet wird.</translation>
    </message>
    <message>
        <source>The sound could not be stored: {reason}.</source>
        <translation>Der Ton ließ sich nicht speichern: {reason}.</translation>
    </message>
    <message>
        <source>{path} could not be written: {reason}.</source>
        <translation>{path} ließ sich nicht schreiben: {reason}.</translation>
    </message>
    <message>
        <source>There is no folder “{parent}”. Make it first, or choose another.</source>
        <translation>Den Ordner „{parent}“ gibt es nicht. Erst anlegen, oder einen anderen wählen.</translation>
    </message>
    <message>
        <source>There is a “{name}” in this folder already. Choose another name.</source>
        <translation>„{name}“ gibt es in diesem Ordner bereits. Einen anderen Namen wählen.</translation>
    </message>
    <message>
        <source>“{name}” is a folder. Choose a .studyboard file inside it.</source>
        <translation>„{name}“ ist ein Ordner. Eine .studyboard-Datei darin wählen.</translation>
    </message>
    <message>
        <source>There is no file “{path}”. Check the name, or look where it was moved to.</source>
        <translation>Die Datei „{path}“ gibt es nicht. Den Namen prüfen, oder nachsehen, wohin sie verschoben wurde.</translation>
    </message>
    <message>
        <source>“{name}” is empty: nothing was ever stored in it, or copying it failed. Copy it again.</source>
        <translation>„{name}“ ist leer: nie wurde etwas darin gespeichert, oder das Kopieren ist gescheitert. Noch einmal kopieren.</translation>
    </message>
    <message>
        <source>“{name}” is not a study. If it holds games in PGN, import it; a study has the ending .studyboard.</source>
        <translation>„{name}“ ist keine Studie. Enthält sie Partien in PGN, dann importieren; eine Studie hat die Endung .studyboard.</translation>
    </message>
    <message>
        <source>“{name}” has been cut short: {size:,} of {expected:,} bytes are there. Copy it again, or open a back-up.</source>
        <translation>„{name}“ ist abgeschnitten: {size:,} von {expected:,} Bytes sind da. Noch einmal kopieren, oder eine Sicherungskopie öffnen.</translation>
    </message>
    <message>
        <source>“{name}” is the database of another program, not a study.</source>
        <translation>„{name}“ ist die Datenbank eines anderen Programms, keine Studie.</translation>
    </message>
    <message>
        <source>“{name}” was written by a later version of Studyboard (its schema is {version}, this program knows up to {VERSION}). Update Studyboard to open it; the file was not touched.</source>
        <translation>„{name}“ wurde von einer neueren Version von Studyboard geschrieben (Schema {version}, dieses Programm kennt sie bis {VERSION}). Studyboard aktualisieren, um sie zu öffnen; die Datei blieb unberührt.</translation>
    </message>
    <message>
        <source>“{name}” does not say which schema it has. Open a back-up of it.</source>
        <translation>„{name}“ sagt nicht, welches Schema sie hat. Eine Sicherungskopie öffnen.</translation>
    </message>
    <message>
        <source>“{name}” was not closed properly, and nothing can be written where it lies. Copy it to a folder of your own, together with “{beside}”, and open the copy.</source>
        <translation>„{name}“ wurde nicht richtig geschlossen, und wo sie liegt, kann nicht geschrieben werden. Zusammen mit „{beside}“ in einen eigenen Ordner kopieren und die Kopie öffnen.</translation>
    </message>
    <message>
        <source>This text holds half of a character, which cannot be stored. Delete the character and type it again.</source>
        <translation>Dieser Text enthält ein halbes Schriftzeichen, das sich nicht speichern lässt. Das Zeichen löschen und neu tippen.</translation>
    </message>
    <message>
        <source>“{name}” can only be read now, so the change was not stored. Save the study under another name, in a folder of your own.</source>
        <translation>„{name}“ kann jetzt nur gelesen werden, darum wurde die Änderung nicht gespeichert. Die Studie unter anderem Namen in einem eigenen Ordner speichern.</translation>
    </message>
    <message>
        <source>Another program is holding “{name}”. Close it there and try again.</source>
        <translation>Ein anderes Programm hält „{name}“ fest. Dort schließen und noch einmal versuchen.</translation>
    </message>
    <message>
        <source>“{name}” is not a study, or no longer one. Open a back-up of it.</source>
        <translation>„{name}“ ist keine Studie, oder keine mehr. Eine Sicherungskopie öffnen.</translation>
    </message>
    <message>
        <source>“{name}” is damaged ({reason}). Open a back-up of it.</source>
        <translation>„{name}“ ist beschädigt ({reason}). Eine Sicherungskopie öffnen.</translation>
    </message>
    <message>
        <source>“{name}” cannot be opened where it lies. Copy it to a folder of your own first.</source>
        <translation>„{name}“ lässt sich nicht öffnen, wo sie liegt. Erst in einen eigenen Ordner kopieren.</translation>
    </message>
    <message>
        <source>The disk that holds “{name}” does not answer as it should ({reason}). Save the study under another name, on another disk.</source>
        <translation>Der Datenträger, auf dem „{name}“ liegt, antwortet nicht richtig ({reason}). Die Studie unter anderem Namen auf einem anderen Datenträger speichern.</translation>
    </message>
    <message>
        <source>“{name}” could not be used: {reason}.</source>
        <translation>„{name}“ konnte nicht benutzt werden: {reason}.</translation>
    </message>
    <message>
        <source>The disk that holds “{name}” is full, so the change was not stored. Free some space and try again; everything up to here is safe.</source>
        <translation>Der Datenträger, auf dem „{name}“ liegt, ist voll, darum wurde die Änderung nicht gespeichert. Platz schaffen und noch einmal versuchen; alles bis hierher ist sicher.</translation>
    </message>
    <message>
        <source>“{name}” is already open{holder}. Go on there, or close it there first.</source>
        <translation>„{name}“ ist bereits geöffnet{holder}. Dort weiterarbeiten, oder dort erst schließen.</translation>
    </message>
    <message>
        <source>“{name}” cannot be worked on where it lies ({reason}). Copy it to a folder of your own, or open it to be read only.</source>
        <translation>„{name}“ lässt sich nicht bearbeiten, wo sie liegt ({reason}). In einen eigenen Ordner kopieren, oder nur zum Lesen öffnen.</translation>
    </message>
    <message>
        <source> on the computer {host}</source>
        <translation> auf dem Computer {host}</translation>
    </message>
    <message>
        <source> in this program</source>
        <translation> in diesem Programm</translation>
    </message>
    <message>
        <source> in another window of Studyboard (process {number})</source>
        <translation> in einem anderen Fenster von Studyboard (Prozess {number})</translation>
    </message>
    <message>
        <source>“{name}” can only be read. Open it to be read only, or copy it and work on the copy.</source>
        <translation>„{name}“ kann nur gelesen werden. Nur zum Lesen öffnen, oder kopieren und mit der Kopie arbeiten.</translation>
    </message>
    <message>
        <source>the start position is missing</source>
        <translation>die Anfangsstellung fehlt</translation>
    </message>
    <message>
        <source>node {number} is not where node {id} expects it</source>
        <translation>Knoten {number} ist nicht dort, wo Knoten {id} ihn erwartet</translation>
    </message>
    <message>
        <source>{count} nodes belong nowhere</source>
        <translation>{count} Knoten gehören nirgendwohin</translation>
    </message>
    <message>
        <source>ids of nodes would be given twice</source>
        <translation>Nummern von Knoten würden doppelt vergeben</translation>
    </message>
    <message>
        <source>Take {take} was never begun, or is in the study already.</source>
        <translation>Take {take} wurde nie begonnen, oder ist bereits in der Studie.</translation>
    </message>
    <message>
        <source>The sound of take {take} is not in “{name}”: it was never recorded, or purged.</source>
        <translation>Der Ton von Take {take} ist nicht in „{name}“: nie aufgenommen, oder bereinigt.</translation>
    </message>
    <message>
        <source>“{name}” has been closed.</source>
        <translation>„{name}“ wurde geschlossen.</translation>
    </message>
    <message>
        <source>There is nothing to undo.</source>
        <translation>Es gibt nichts rückgängig zu machen.</translation>
    </message>
    <message>
        <source>There is nothing to redo.</source>
        <translation>Es gibt nichts zu wiederholen.</translation>
    </message>
    <message>
        <source>This is “{name}” already, and every change is in it. Choose another name.</source>
        <translation>Das ist bereits „{name}“, und jede Änderung ist darin. Einen anderen Namen wählen.</translation>
    </message>
    <message>
        <source>A take is being recorded into this study. Stop the recording, then save a copy.</source>
        <translation>In diese Studie wird gerade ein Take aufgenommen. Die Aufnahme anhalten, dann eine Kopie speichern.</translation>
    </message>
    <message>
        <source>“{name}” is damaged: {reason}. Open a back-up of it.</source>
        <translation>„{name}“ ist beschädigt: {reason}. Eine Sicherungskopie öffnen.</translation>
    </message>
    <message>
        <source>The history of “{name}” cannot be read here ({reason}); the study itself is whole.</source>
        <translation>Der Verlauf von „{name}“ lässt sich hier nicht lesen ({reason}); die Studie selbst ist heil.</translation>
    </message>
    <message>
        <source>“{name}” is open to be read only. Save it under another name to change it.</source>
        <translation>„{name}“ ist nur zum Lesen geöffnet. Unter anderem Namen speichern, um sie zu ändern.</translation>
    </message>
    <message>
        <source>“{name}” has been moved, replaced or deleted while it was open, so the change was not stored. Save the study under another name to go on.</source>
        <translation>„{name}“ wurde verschoben, ersetzt oder gelöscht, während sie offen war, darum wurde die Änderung nicht gespeichert. Die Studie unter anderem Namen speichern, um weiterzuarbeiten.</translation>
    </message>
    <message>
        <source>to the second</source>
        <translation>auf die Sekunde genau</translation>
    </message>
    <message>
        <source>{amount} over</source>
        <translation>{amount} zu lang</translation>
    </message>
    <message>
        <source>{amount} under</source>
        <translation>{amount} zu kurz</translation>
    </message>
    <message>
        <source>A pace is learnt from {least} timed lines at least, and there are {count}. Times are written as [m:ss] before each paragraph, or come with WebVTT or SRT.</source>
        <translation>Ein Sprechtempo lernt sich aus mindestens {least} Texten mit Zeiten, und es gibt {count}. Zeiten stehen als [m:ss] vor jedem Absatz, oder kommen mit WebVTT oder SRT.</translation>
    </message>
    <message>
        <source>There is no dictionary of “{language}” on this system: apt install {package}</source>
        <translation>Für „{language}“ gibt es auf diesem System kein Wörterbuch: apt install {package}</translation>
    </message>
    <message>
        <source>The dictionary of “{language}” cannot be read: {reason}.</source>
        <translation>Das Wörterbuch für „{language}“ lässt sich nicht lesen: {reason}.</translation>
    </message>
    <message>
        <source>Spelling needs pyenchant: pip install pyenchant</source>
        <translation>Für die Rechtschreibung wird pyenchant gebraucht: pip install pyenchant</translation>
    </message>
    <message>
        <source>Spelling needs the enchant library: apt install libenchant-2-2</source>
        <translation>Für die Rechtschreibung wird die Bibliothek enchant gebraucht: apt install libenchant-2-2</translation>
    </message>
    <message>
        <source>Nothing was found that could be replaced.</source>
        <translation>Es wurde nichts gefunden, was ersetzt werden könnte.</translation>
    </message>
    <message>
        <source>Replace in the script</source>
        <translation>Im Skript ersetzen</translation>
    </message>
    <message>
        <source>“{path}” cannot be read: {reason}.</source>
        <translation>„{path}“ lässt sich nicht lesen: {reason}.</translation>
    </message>
    <message>
        <source>“{path}” cannot be written: {reason}.</source>
        <translation>„{path}“ lässt sich nicht schreiben: {reason}.</translation>
    </message>
    <message>
        <source>There is no file “{path}” with names.</source>
        <translation>Die Datei „{path}“ mit Namen gibt es nicht.</translation>
    </message>
    <message>
        <source>“{path}” is no text file.</source>
        <translation>„{path}“ ist keine Textdatei.</translation>
    </message>
    <message>
        <source>“{path}” holds no name.</source>
        <translation>„{path}“ enthält keinen Namen.</translation>
    </message>
    <message>
        <source>“{path}” holds no snippets ({reason}). Mend it, or move it away.</source>
        <translation>„{path}“ enthält keine Textbausteine ({reason}). In Ordnung bringen oder wegräumen.</translation>
    </message>
    <message>
        <source>Add {move} as it was said</source>
        <translation>{move} hinzufügen, wie gesagt</translation>
    </message>
    <message>
        <source>A video needs PyAV, which is missing here. Install it with “pip install &apos;studyboard[media]&apos;”.</source>
        <translation>Ein Video braucht PyAV, das hier fehlt. Installieren Sie es mit „pip install &apos;studyboard[media]&apos;“.</translation>
    </message>
    <message>
        <source>The talk has no length yet, so there is no video. Play a move or write a line first.</source>
        <translation>Der Vortrag hat noch keine Länge, darum gibt es kein Video. Spielen Sie erst einen Zug oder schreiben Sie eine Zeile.</translation>
    </message>
    <message>
        <source>The video was not written: about second {seconds} it would flash more than three times within a second, which can hurt people with photosensitive epilepsy (WCAG 2.2, 2.3.1). Give the moves there more time, or let the pieces be put down without sliding.</source>
        <translation>Das Video wurde nicht geschrieben: Um Sekunde {seconds} würde es öfter als dreimal in einer Sekunde blitzen, was Menschen mit fotosensibler Epilepsie schaden kann (WCAG 2.2, 2.3.1). Geben Sie den Zügen dort mehr Zeit, oder lassen Sie die Figuren ohne Gleiten hinstellen.</translation>
    </message>
    <message>
        <source>A video has {sizes} lines, not {lines}.</source>
        <translation>Ein Video hat {sizes} Zeilen, nicht {lines}.</translation>
    </message>
    <message>
        <source>A video has {rates} frames a second, not {rate}.</source>
        <translation>Ein Video hat {rates} Bilder in der Sekunde, nicht {rate}.</translation>
    </message>
    <message>
        <source>{first} or {last}</source>
        <translation>{first} oder {last}</translation>
    </message>
    <message>
        <source>Loudness</source>
        <translation>Lautheit</translation>
    </message>
    <message>
        <source>Loudness of the latest three seconds (ITU-R BS.1770), and the highest true peak so far</source>
        <translation>Lautheit der letzten drei Sekunden (ITU-R BS.1770) und die höchste echte Spitze bisher</translation>
    </message>
    <message>
        <source>{loudness} LUFS, peaks {peak} dBTP</source>
        <translation>{loudness} LUFS, Spitzen {peak} dBTP</translation>
    </message>
    <message>
        <source>A take of {rate} samples a second keeps the loudness that it was spoken with.</source>
        <translation>Ein Take mit {rate} Abtastwerten in der Sekunde behält die Lautheit, mit der er gesprochen wurde.</translation>
    </message>
    <message>
        <source>Nothing is in the way of a good recording.</source>
        <translation>Einer guten Aufnahme steht nichts im Weg.</translation>
    </message>
    <message>
        <source>It can be recorded like this; better is possible.</source>
        <translation>So kann aufgenommen werden; besser ist möglich.</translation>
    </message>
    <message>
        <source>Mend this before the first take.</source>
        <translation>Das vor dem ersten Take beheben.</translation>
    </message>
    <message>
        <source>Room check</source>
        <translation>Raumprüfung</translation>
    </message>
    <message>
        <source>First five seconds of silence, for the noise of the room and the hum of the mains; then eight seconds of speech, as loud as in the talk. Nothing of it is kept.</source>
        <translation>Zuerst fünf Sekunden Stille, für das Rauschen des Raums und das Brummen des Stromnetzes; dann acht Sekunden Sprache, so laut wie im Vortrag. Nichts davon wird behalten.</translation>
    </message>
    <message>
        <source>What to do now</source>
        <translation>Was jetzt zu tun ist</translation>
    </message>
    <message>
        <source>Progress of the room check</source>
        <translation>Fortschritt der Raumprüfung</translation>
    </message>
    <message>
        <source>The take is listened to word by word. Moves then come at the words that they belong to, captions and marks too. Where a word is not found for certain, what was clicked stays.</source>
        <translation>Der Take wird Wort für Wort abgehört. Züge kommen dann bei den Wörtern, zu denen sie gehören, Untertitel und Markierungen ebenso. Wo ein Wort nicht sicher gefunden wird, bleibt, was geklickt wurde.</translation>
    </message>
    <message>
        <source>Take</source>
        <translation>Take</translation>
    </message>
    <message>
        <source>&amp;Take:</source>
        <translation>&amp;Take:</translation>
    </message>
    <message>
        <source>Progress of listening</source>
        <translation>Fortschritt des Abhörens</translation>
    </message>
    <message>
        <source>What was found</source>
        <translation>Was gefunden wurde</translation>
    </message>
    <message>
        <source>Places to look at</source>
        <translation>Stellen zum Ansehen</translation>
    </message>
    <message>
        <source>&amp;Listen</source>
        <translation>&amp;Abhören</translation>
    </message>
    <message>
        <source>Let the board &amp;follow</source>
        <translation>Brett &amp;folgen lassen</translation>
    </message>
    <message>
        <source>Only English can be listened for, and this script is in another language.</source>
        <translation>Nur Englisch lässt sich abhören, und dieser Sprechtext ist in einer anderen Sprache.</translation>
    </message>
    <message>
        <source>There is no spoken line that could be listened for.</source>
        <translation>Es gibt keinen Sprechtext, nach dem sich suchen ließe.</translation>
    </message>
    <message>
        <source>Listening …</source>
        <translation>Wird abgehört …</translation>
    </message>
    <message>
        <source>The board of {name} follows the voice. Undo brings back what was clicked.</source>
        <translation>Das Brett von {name} folgt der Stimme. Rückgängig bringt zurück, was geklickt wurde.</translation>
    </message>
    <message>
        <source>Listening was stopped; nothing has changed.</source>
        <translation>Das Abhören wurde angehalten; nichts ist verändert.</translation>
    </message>
    <message>
        <source>{certain} of {words} words are found for certain, and {at_words} of {moves} moves at their words.</source>
        <translation>{certain} von {words} Wörtern sind sicher gefunden, und {at_words} von {moves} Zügen bei ihren Wörtern.</translation>
    </message>
    <message>
        <source>Nothing of the script was found in this take: is it the right one?</source>
        <translation>Nichts vom Sprechtext wurde in diesem Take gefunden: Ist es der richtige?</translation>
    </message>
    <message>
        <source>{at}  Until {end} something is said that is not in the script.</source>
        <translation>{at}  Bis {end} wird etwas gesagt, das nicht im Sprechtext steht.</translation>
    </message>
    <message>
        <source>{at}  {where}: not said: “{text}”</source>
        <translation>{at}  {where}: nicht gesagt: „{text}“</translation>
    </message>
    <message>
        <source>{at}  {where}: said once more: “{text}”</source>
        <translation>{at}  {where}: noch einmal gesagt: „{text}“</translation>
    </message>
    <message>
        <source>{at}  {where}: not certain where this is said: “{text}”</source>
        <translation>{at}  {where}: nicht sicher, wo das gesagt wird: „{text}“</translation>
    </message>
    <message>
        <source>There is no take yet: record one, or take in a sound file.</source>
        <translation>Es gibt noch keinen Take: einen aufnehmen oder eine Tondatei übernehmen.</translation>
    </message>
    <message>
        <source>&amp;Stop</source>
        <translation>&amp;Anhalten</translation>
    </message>
    <message>
        <source>Broken off; nothing was judged.</source>
        <translation>Abgebrochen; nichts wurde beurteilt.</translation>
    </message>
    <message>
        <source>Measure the delay</source>
        <translation>Verzögerung messen</translation>
    </message>
    <message>
        <source>Through the air: the microphone hears the loudspeaker</source>
        <translation>Durch die Luft: Das Mikrofon hört den Lautsprecher</translation>
    </message>
    <message>
        <source>By a cable from the output to the input</source>
        <translation>Über ein Kabel vom Ausgang zum Eingang</translation>
    </message>
    <message>
        <source>How late is “{name}”? Five rising tones are played; moves are stamped by what is found.</source>
        <translation>Wie spät ist „{name}“? Fünf ansteigende Töne werden gespielt; nach dem Ergebnis werden Züge gestempelt.</translation>
    </message>
    <message>
        <source>By tapping: the space bar, pressed eight times beside the microphone</source>
        <translation>Durch Tippen: die Leertaste, achtmal neben dem Mikrofon gedrückt</translation>
    </message>
    <message>
        <source>Take headphones off and turn the volume low first. Where the microphone is played through the loudspeaker, switch that off: it may howl.</source>
        <translation>Zuerst Kopfhörer abnehmen und die Lautstärke niedrig stellen. Wo das Mikrofon über den Lautsprecher mitgehört wird, das ausschalten: Es kann pfeifen.</translation>
    </message>
    <message>
        <source>Progress of the measurement</source>
        <translation>Fortschritt der Messung</translation>
    </message>
    <message>
        <source>Measure</source>
        <translation>Messen</translation>
    </message>
    <message>
        <source>What was measured</source>
        <translation>Was gemessen wurde</translation>
    </message>
    <message>
        <source> ms</source>
        <translation> ms</translation>
    </message>
    <message>
        <source>Delay of the microphone in milliseconds</source>
        <translation>Verzögerung des Mikrofons in Millisekunden</translation>
    </message>
    <message>
        <source>Nothing was measured for this microphone yet: 0 ms are counted with.</source>
        <translation>Für dieses Mikrofon wurde noch nichts gemessen: Gerechnet wird mit 0 ms.</translation>
    </message>
    <message>
        <source>This is what is counted with now.</source>
        <translation>Damit wird jetzt gerechnet.</translation>
    </message>
    <message>
        <source>De&amp;lay</source>
        <translation>&amp;Verzögerung</translation>
    </message>
    <message>
        <source>Broken off; nothing was measured.</source>
        <translation>Abgebrochen; nichts wurde gemessen.</translation>
    </message>
    <message>
        <source>Break off</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Press the space bar eight times, firmly and not too fast, close to the microphone.</source>
        <translation>Die Leertaste achtmal drücken, fest und nicht zu schnell, nahe am Mikrofon.</translation>
    </message>
    <message>
        <source>Five tones are played: be silent for six seconds.</source>
        <translation>Fünf Töne werden gespielt: sechs Sekunden still sein.</translation>
    </message>
    <message>
        <source>The key was not heard well enough. Press it harder, or bring the microphone nearer.</source>
        <translation>Die Taste war nicht gut genug zu hören. Fester drücken oder das Mikrofon näher bringen.</translation>
    </message>
    <message>
        <source>The tones were not heard well enough. Turn the loudspeaker up, or bring the microphone nearer.</source>
        <translation>Die Töne waren nicht gut genug zu hören. Den Lautsprecher lauter stellen oder das Mikrofon näher bringen.</translation>
    </message>
    <message>
        <source>The microphone is {late:.1f} ms late; {count} of them agree within {spread:.1f} ms. OK counts with it.</source>
        <translation>Das Mikrofon ist {late:.1f} ms zu spät; {count} davon stimmen auf {spread:.1f} ms überein. Mit OK wird damit gerechnet.</translation>
    </message>
    <message>
        <source>Be silent now: the room is being listened to.</source>
        <translation>Jetzt still sein: Der Raum wird abgehört.</translation>
    </message>
    <message>
        <source>Now speak, as loud as in the talk: how does the game begin?</source>
        <translation>Jetzt sprechen, so laut wie im Vortrag: Wie beginnt die Partie?</translation>
    </message>
    <message>
        <source>Judging …</source>
        <translation>Wird beurteilt …</translation>
    </message>
    <message>
        <source>Levels are those of the microphone: nothing is turned up or down in a take.</source>
        <translation>Die Pegel sind die des Mikrofons: In einem Take wird nichts lauter oder leiser gemacht.</translation>
    </message>
    <message>
        <source>Check again</source>
        <translation>Noch einmal prüfen</translation>
    </message>
    <message>
        <source>Nothing arrives from the microphone since {moment}: is it muted?</source>
        <translation>Seit {moment} kommt vom Mikrofon nichts an: Ist es stumm geschaltet?</translation>
    </message>
    <message>
        <source>The voice is too quiet since {moment}: come nearer, or turn the microphone up.</source>
        <translation>Seit {moment} ist die Stimme zu leise: näher herangehen oder das Mikrofon lauter stellen.</translation>
    </message>
    <message>
        <source>Cut off at {moments}: too loud for the microphone.</source>
        <translation>Abgeschnitten bei {moments}: zu laut für das Mikrofon.</translation>
    </message>
    <message>
        <source>Too quiet from {moments} on.</source>
        <translation>Zu leise ab {moments}.</translation>
    </message>
    <message>
        <source>Nothing arrived at {moments}.</source>
        <translation>Nichts kam an bei {moments}.</translation>
    </message>
    <message>
        <source>Warnings of the sound</source>
        <translation>Warnungen zum Ton</translation>
    </message>
    <message>
        <source>{named} and {more} more</source>
        <translation>{named} und {more} weiteren Stellen</translation>
    </message>
    <message>
        <source>Nothing at all arrives from the microphone.</source>
        <translation>Vom Mikrofon kommt gar nichts an.</translation>
    </message>
    <message>
        <source>Is it muted, by a switch on it or in the system&apos;s sound settings? Or is it another one?</source>
        <translation>Ist es stumm geschaltet, durch einen Schalter daran oder in den Toneinstellungen des Systems? Oder ist es ein anderes?</translation>
    </message>
    <message>
        <source>Sound was cut off although nobody spoke.</source>
        <translation>Ton wurde abgeschnitten, obwohl niemand sprach.</translation>
    </message>
    <message>
        <source>Turn the microphone&apos;s gain far down, and look at its cable.</source>
        <translation>Das Mikrofon viel leiser stellen und sein Kabel ansehen.</translation>
    </message>
    <message>
        <source>The noise of the room is {level} dBFS: it is heard in every pause.</source>
        <translation>Das Rauschen des Raums liegt bei {level} dBFS: Es ist in jeder Pause zu hören.</translation>
    </message>
    <message>
        <source>Switch off fans, shut the windows, come nearer to the microphone and turn its gain down.</source>
        <translation>Lüfter ausschalten, Fenster schließen, näher ans Mikrofon gehen und es leiser stellen.</translation>
    </message>
    <message>
        <source>The noise of the room is {level} dBFS: good headphones hear it in the pauses.</source>
        <translation>Das Rauschen des Raums liegt bei {level} dBFS: Gute Kopfhörer hören es in den Pausen.</translation>
    </message>
    <message>
        <source>Come nearer to the microphone and turn its gain down.</source>
        <translation>Näher ans Mikrofon gehen und es leiser stellen.</translation>
    </message>
    <message>
        <source>The room is quiet: {level} dBFS.</source>
        <translation>Der Raum ist leise: {level} dBFS.</translation>
    </message>
    <message>
        <source>The mains hum at {mains} Hz: {level} dBFS, strongest at {strongest} Hz.</source>
        <translation>Das Stromnetz brummt mit {mains} Hz: {level} dBFS, am stärksten bei {strongest} Hz.</translation>
    </message>
    <message>
        <source>Run a laptop from its battery, keep the cable away from power supplies, or use another socket.</source>
        <translation>Ein Notebook vom Akku betreiben, das Kabel von Netzteilen fernhalten oder eine andere Steckdose nehmen.</translation>
    </message>
    <message>
        <source>There was a click.</source>
        <translation>Es gab ein Knacken.</translation>
    </message>
    <message>
        <source>There were {count} clicks.</source>
        <translation>Es knackte {count}-mal.</translation>
    </message>
    <message>
        <source>Look at the cable and its plugs, and put telephones away.</source>
        <translation>Das Kabel und seine Stecker ansehen und Telefone weglegen.</translation>
    </message>
    <message>
        <source>For {seconds:.1f} s something was much louder than the room.</source>
        <translation>Für {seconds:.1f} s war etwas viel lauter als der Raum.</translation>
    </message>
    <message>
        <source>If that was you, or a door, check again.</source>
        <translation>War das ein Husten oder eine Tür, noch einmal prüfen.</translation>
    </message>
    <message>
        <source>The sound stands off the middle by {share:.0f} % of its range.</source>
        <translation>Der Ton liegt um {share:.0f} % seines Umfangs neben der Mitte.</translation>
    </message>
    <message>
        <source>That is the sound card&apos;s fault; loud words are cut off sooner. Another input may be better.</source>
        <translation>Das ist ein Fehler der Soundkarte; laute Wörter werden eher abgeschnitten. Ein anderer Eingang ist vielleicht besser.</translation>
    </message>
    <message>
        <source>The microphone delivers {rate} samples a second, as a telephone does.</source>
        <translation>Das Mikrofon liefert {rate} Abtastwerte in der Sekunde, wie ein Telefon.</translation>
    </message>
    <message>
        <source>A headset without a cable does that while its microphone is open: use another microphone.</source>
        <translation>Ein Headset ohne Kabel tut das, solange sein Mikrofon offen ist: ein anderes Mikrofon nehmen.</translation>
    </message>
    <message>
        <source>No voice was heard above the noise of the room.</source>
        <translation>Über dem Rauschen des Raums war keine Stimme zu hören.</translation>
    </message>
    <message>
        <source>Speak as you will in the talk, and check again; is this the right microphone?</source>
        <translation>So sprechen wie im Vortrag und noch einmal prüfen; ist es das richtige Mikrofon?</translation>
    </message>
    <message>
        <source>The voice is too loud for the microphone: {figures}.</source>
        <translation>Die Stimme ist zu laut für das Mikrofon: {figures}.</translation>
    </message>
    <message>
        <source>Turn its gain down by about {decibels} dB.</source>
        <translation>Es um etwa {decibels} dB leiser stellen.</translation>
    </message>
    <message>
        <source>The voice is faint: {figures}.</source>
        <translation>Die Stimme ist leise: {figures}.</translation>
    </message>
    <message>
        <source>Come nearer, or turn the microphone&apos;s gain up by about {decibels} dB.</source>
        <translation>Näher herangehen oder das Mikrofon um etwa {decibels} dB lauter stellen.</translation>
    </message>
    <message>
        <source>The voice is well placed: {figures}.</source>
        <translation>Die Stimme liegt gut: {figures}.</translation>
    </message>
    <message>
        <source>Published at {target} LUFS, the room behind the voice will stand at {level} dBFS.</source>
        <translation>Veröffentlicht mit {target} LUFS wird der Raum hinter der Stimme bei {level} dBFS liegen.</translation>
    </message>
    <message>
        <source>Half the distance to the microphone brings 6 dB.</source>
        <translation>Der halbe Abstand zum Mikrofon bringt 6 dB.</translation>
    </message>
    <message>
        <source>Made of an earlier version of the study, and not made again: {names}.</source>
        <translation>Aus einem früheren Stand der Studie und nicht neu gemacht: {names}.</translation>
    </message>
    <message>
        <source>No longer made, and left where they are: {names}.</source>
        <translation>Nicht mehr gemacht und liegen gelassen: {names}.</translation>
    </message>
    <message>
        <source>“{name}” had been changed since it was delivered: what you changed is kept as “{other}”.</source>
        <translation>„{name}“ war seit dem Ausspielen geändert worden: Das Geänderte liegt jetzt unter „{other}“.</translation>
    </message>
    <message>
        <source>Choose a take</source>
        <translation>Take wählen</translation>
    </message>
    <message>
        <source>Change a take</source>
        <translation>Take ändern</translation>
    </message>
    <message>
        <source>A take has nothing called “{field}” that could be set.</source>
        <translation>Ein Take hat nichts namens „{field}“, das sich setzen ließe.</translation>
    </message>
    <message>
        <source>Note on a take</source>
        <translation>Notiz zu einem Take</translation>
    </message>
    <message>
        <source>A take needs a name.</source>
        <translation>Ein Take braucht einen Namen.</translation>
    </message>
    <message>
        <source>Rename a take</source>
        <translation>Take umbenennen</translation>
    </message>
    <message>
        <source>Leave out a stretch</source>
        <translation>Stelle auslassen</translation>
    </message>
    <message>
        <source>All of this stretch is heard.</source>
        <translation>Diese Stelle ist schon ganz zu hören.</translation>
    </message>
    <message>
        <source>Bring a stretch back</source>
        <translation>Stelle zurückholen</translation>
    </message>
    <message>
        <source>Trim a take</source>
        <translation>Take beschneiden</translation>
    </message>
    <message>
        <source>Set the room tone</source>
        <translation>Raumton festlegen</translation>
    </message>
    <message>
        <source>Let the board follow the voice</source>
        <translation>Brett der Stimme folgen lassen</translation>
    </message>
    <message>
        <source>Nothing would be left of this take. Discard it instead.</source>
        <translation>Von diesem Take bliebe nichts übrig. Ihn stattdessen verwerfen.</translation>
    </message>
    <message>
        <source>This stretch lies behind the end of the take.</source>
        <translation>Diese Stelle liegt hinter dem Ende des Takes.</translation>
    </message>
    <message>
        <source>This makes no sense for a take of this length.</source>
        <translation>Das ergibt bei einem Take dieser Länge keinen Sinn.</translation>
    </message>
    <message>
        <source>This sound is stored as “{coding}”, which is unknown here.</source>
        <translation>Dieser Ton ist als „{coding}“ gespeichert, was hier unbekannt ist.</translation>
    </message>
    <message>
        <source>The sound of this study is compressed (FLAC), and what reads it is not installed: pip install soundfile. The study itself is whole.</source>
        <translation>Der Ton dieser Studie ist komprimiert (FLAC), und was ihn liest, ist nicht installiert: pip install soundfile. Die Studie selbst ist unversehrt.</translation>
    </message>
    <message>
        <source>A piece of this sound is damaged ({reason}).</source>
        <translation>Ein Stück dieses Tons ist beschädigt ({reason}).</translation>
    </message>
    <message>
        <source>Summary, chapters, the moves, credits and thanks, to stand beside a video</source>
        <translation>Zusammenfassung, Kapitel, die Züge, Mitwirkende und Dank, neben ein Video zu stellen</translation>
    </message>
    <message>
        <source>Form</source>
        <translation>Form</translation>
    </message>
    <message>
        <source>Plain text</source>
        <translation>Reiner Text</translation>
    </message>
    <message>
        <source>Markdown</source>
        <translation>Markdown</translation>
    </message>
    <message>
        <source>Template of your own</source>
        <translation>Eigene Vorlage</translation>
    </message>
    <message>
        <source>List of names to thank</source>
        <translation>Liste von Namen für den Dank</translation>
    </message>
    <message>
        <source>No move “{move}” is in the study. Write it with its number, such as “24. Qh6+”.</source>
        <translation>Einen Zug „{move}“ gibt es in der Studie nicht. Mit seiner Nummer schreiben, etwa „24. Qh6+“.</translation>
    </message>
    <message>
        <source>{path} cannot be told from {folder}: put it there.</source>
        <translation>{path} lässt sich von {folder} aus nicht angeben: Legen Sie es dorthin.</translation>
    </message>
    <message>
        <source>A page cannot play {path}; it can play {kinds}.</source>
        <translation>Eine Seite kann {path} nicht abspielen; sie kann {kinds} abspielen.</translation>
    </message>
    <message>
        <source>The import was stopped; nothing of it was kept.</source>
        <translation>Das Einlesen wurde abgebrochen; nichts davon wurde behalten.</translation>
    </message>
    <message>
        <source>No sound could be read from “{name}”: it is empty or damaged.</source>
        <translation>Aus „{name}“ ließ sich kein Ton lesen: Die Datei ist leer oder beschädigt.</translation>
    </message>
    <message>
        <source>“{name}” is damaged: {seconds:.1f} of its {length:.1f} seconds could be read, and are kept.</source>
        <translation>„{name}“ ist beschädigt: {seconds:.1f} von {length:.1f} Sekunden ließen sich lesen und sind behalten.</translation>
    </message>
    <message>
        <source>“{name}” is damaged: pieces of it could not be read ({reason}); the rest, {seconds:.1f} seconds, is kept.</source>
        <translation>„{name}“ ist beschädigt: Stücke davon ließen sich nicht lesen ({reason}); der Rest, {seconds:.1f} Sekunden, ist behalten.</translation>
    </message>
    <message>
        <source>There is no file “{path}”. Check its name.</source>
        <translation>Es gibt keine Datei „{path}“. Den Namen prüfen.</translation>
    </message>
    <message>
        <source>“{name}” cannot be read as sound or video: {reason}.</source>
        <translation>„{name}“ lässt sich weder als Ton noch als Video lesen: {reason}.</translation>
    </message>
    <message>
        <source>There is no sound in “{name}”. Choose a sound file, or a video that was made with sound.</source>
        <translation>In „{name}“ ist kein Ton. Eine Tondatei wählen, oder ein Video, das mit Ton gemacht wurde.</translation>
    </message>
    <message>
        <source>This beat is not told in the talk.</source>
        <translation>Diese Station wird im Vortrag nicht erzählt.</translation>
    </message>
    <message>
        <source>The last beat comes before the first one.</source>
        <translation>Die letzte Station kommt vor der ersten.</translation>
    </message>
    <message>
        <source>The edit timeline cannot be read back as it was written; it was not delivered.</source>
        <translation>Die Schnittliste lässt sich nicht so zurücklesen, wie sie geschrieben wurde; sie wurde nicht ausgespielt.</translation>
    </message>
    <message>
        <source>An edit timeline needs OpenTimelineIO, which is missing here. Install it with “pip install &apos;studyboard[editing]&apos;”.</source>
        <translation>Eine Schnittliste braucht OpenTimelineIO, das hier fehlt. Es kommt mit „pip install &apos;studyboard[editing]&apos;“.</translation>
    </message>
    <message>
        <source>“{name}” is of an earlier version of the study: it does not go with the edit timeline.</source>
        <translation>„{name}“ ist aus einem früheren Stand der Studie und passt nicht zur Schnittliste.</translation>
    </message>
    <message>
        <source>The video beside the edit timeline has only the frames that change; most editors want all of them.</source>
        <translation>Das Video neben der Schnittliste hat nur die Bilder, die sich ändern; die meisten Schnittprogramme wollen alle.</translation>
    </message>
    <message>
        <source>The video is not delivered, so its place in the edit timeline is empty.</source>
        <translation>Das Video ist nicht ausgespielt, sein Platz in der Schnittliste bleibt deshalb leer.</translation>
    </message>
    <message>
        <source>The talk is not recorded, so the edit timeline has no narration.</source>
        <translation>Der Vortrag ist nicht aufgenommen, die Schnittliste hat deshalb keine Sprechstimme.</translation>
    </message>
    <message>
        <source>Edit timeline</source>
        <translation>Schnittliste</translation>
    </message>
    <message>
        <source>OpenTimelineIO for a video editor: the board&apos;s video, the narration in beats, markers</source>
        <translation>OpenTimelineIO für Schnittprogramme: Brett, Stimme, Marken</translation>
    </message>
    <message>
        <source>Frames a second, where there is no video</source>
        <translation>Bilder je Sekunde, wo es kein Video gibt</translation>
    </message>
    <message>
        <source>No markers for the queries of the read-through</source>
        <translation>Keine Marken für die Rückfragen der Durchsicht</translation>
    </message>
    <message>
        <source>{name}: choose a file</source>
        <translation>{name}: Datei wählen</translation>
    </message>
    <message>
        <source>Page {number}</source>
        <translation>Seite {number}</translation>
    </message>
    <message>
        <source>Whole board</source>
        <translation>Ganzes Brett</translation>
    </message>
    <message>
        <source>Band</source>
        <translation>Band</translation>
    </message>
    <message>
        <source>Corner</source>
        <translation>Ecke</translation>
    </message>
    <message>
        <source>Preview</source>
        <translation>Vorschau</translation>
    </message>
    <message>
        <source>As usual</source>
        <translation>Wie üblich</translation>
    </message>
    <message>
        <source>As on the board</source>
        <translation>Wie auf dem Brett</translation>
    </message>
    <message>
        <source>The position that stands on the desk now</source>
        <translation>Die Stellung, die gerade auf dem Brett steht</translation>
    </message>
    <message>
        <source>Being made …</source>
        <translation>Entsteht …</translation>
    </message>
    <message>
        <source>There is no preview: {reason}.</source>
        <translation>Es gibt keine Vorschau: {reason}.</translation>
    </message>
    <message>
        <source>The tones do not agree about the delay: the machine is busy. Close other programs and measure again.</source>
        <translation>Die Töne sind sich über die Verzögerung nicht einig: Der Rechner ist beschäftigt. Andere Programme schließen und noch einmal messen.</translation>
    </message>
    <message>
        <source>The loudspeaker did not play the signals.</source>
        <translation>Der Lautsprecher hat die Töne nicht gespielt.</translation>
    </message>
    <message>
        <source>The microphone “{name}” is gone. Plug it in again, or choose another one.</source>
        <translation>Das Mikrofon „{name}“ ist weg. Es wieder einstecken oder ein anderes wählen.</translation>
    </message>
    <message>
        <source>The microphone “{name}” is gone. Plug it in again, or choose another one: Space then records this beat anew, in a following take.</source>
        <translation>Das Mikrofon „{name}“ ist weg. Es wieder einstecken oder ein anderes wählen: Die Leertaste nimmt diese Station dann neu auf, in einem folgenden Take.</translation>
    </message>
    <message>
        <source>The microphone “{name}” is back.</source>
        <translation>Das Mikrofon „{name}“ ist wieder da.</translation>
    </message>
    <message>
        <source>The microphone “{name}” is back. Space records this beat anew, in a following take.</source>
        <translation>Das Mikrofon „{name}“ ist wieder da. Die Leertaste nimmt diese Station neu auf, in einem folgenden Take.</translation>
    </message>
    <message>
        <source>Leave a side-line out of the talk</source>
        <translation>Eine Nebenvariante aus dem Vortrag lassen</translation>
    </message>
    <message>
        <source>No side-line is told, so there is nothing to leave out but lines of the main line.</source>
        <translation>Keine Nebenvariante wird erzählt, also gibt es nichts wegzulassen als Texte der Hauptlinie.</translation>
    </message>
    <message>
        <source>The line at {move} refers to it.</source>
        <translation>Der Text bei {move} bezieht sich darauf.</translation>
    </message>
    <message>
        <source>It answers the think pause at {move}.</source>
        <translation>Sie beantwortet die Denkpause bei {move}.</translation>
    </message>
    <message>
        <source>It has a think pause.</source>
        <translation>Sie hat eine Denkpause.</translation>
    </message>
    <message>
        <source>The side-line {move} is told after it.</source>
        <translation>Die Nebenvariante {move} wird nach ihr erzählt.</translation>
    </message>
    <message>
        <source>Its position stands again at {move}.</source>
        <translation>Ihre Stellung steht bei {move} wieder.</translation>
    </message>
    <message>
        <source>Something is marked in it.</source>
        <translation>Darin ist etwas markiert.</translation>
    </message>
    <message>
        <source>The frame cannot be shown: {reason}.</source>
        <translation>Das Bild lässt sich nicht zeigen: {reason}.</translation>
    </message>
    <message>
        <source>Moment of the frame</source>
        <translation>Zeitpunkt des Bildes</translation>
    </message>
    <message>
        <source>Frame of the video at {moment}</source>
        <translation>Bild des Videos bei {moment}</translation>
    </message>
    <message>
        <source>Let the board follow the voice …</source>
        <translation>Brett der Stimme folgen lassen …</translation>
    </message>
    <message>
        <source>Place in the take</source>
        <translation>Stelle im Take</translation>
    </message>
    <message>
        <source>The wave is being measured …</source>
        <translation>Die Welle wird gemessen …</translation>
    </message>
    <message>
        <source>beat {label}</source>
        <translation>Station {label}</translation>
    </message>
    <message>
        <source>on the board {label}</source>
        <translation>auf dem Brett {label}</translation>
    </message>
    <message>
        <source>about “{word}”</source>
        <translation>etwa „{word}“</translation>
    </message>
    <message>
        <source>Wave of the take</source>
        <translation>Welle des Takes</translation>
    </message>
    <message>
        <source>Arrows: a second, with Alt a tenth. Ctrl: word by word. Page keys: move by move. Ctrl and page keys: beat by beat. + and - zoom, 0 shows all. Space plays.</source>
        <translation>Pfeile: eine Sekunde, mit Alt eine Zehntelsekunde. Strg: Wort für Wort. Bildtasten: Zug für Zug. Strg und Bildtasten: Station für Station. + und − zoomen, 0 zeigt alles. Leertaste spielt ab.</translation>
    </message>
    <message>
        <source>No take yet</source>
        <translation>Noch kein Take</translation>
    </message>
    <message>
        <source>Words are seen from closer by (+)</source>
        <translation>Wörter sind aus größerer Nähe zu sehen (+)</translation>
    </message>
    <message>
        <source>Listening ended before it was done. Try it once more.</source>
        <translation>Das Abhören endete, bevor es fertig war. Noch einmal versuchen.</translation>
    </message>
    <message>
        <source>Listening was stopped.</source>
        <translation>Das Abhören wurde angehalten.</translation>
    </message>
    <message>
        <source>How to record</source>
        <translation>Wie aufgenommen wird</translation>
    </message>
    <message>
        <source>In one go</source>
        <translation>In einem Zug</translation>
    </message>
    <message>
        <source>Line by line</source>
        <translation>Zeile für Zeile</translation>
    </message>
    <message>
        <source>Line by line, each spoken line is a take of its own, which Space begins and ends.</source>
        <translation>Zeile für Zeile ist jede gesprochene Zeile ein eigener Take, den die Leertaste beginnt und beendet.</translation>
    </message>
    <message>
        <source>First beat to record</source>
        <translation>Erste Station der Aufnahme</translation>
    </message>
    <message>
        <source>Last beat to record</source>
        <translation>Letzte Station der Aufnahme</translation>
    </message>
    <message>
        <source>Pre-roll</source>
        <translation>Vorlauf</translation>
    </message>
    <message>
        <source>First hear the seconds before, as they were recorded, then go on speaking. Use headphones.</source>
        <translation>Erst die Sekunden davor hören, wie sie aufgenommen wurden, dann weitersprechen. Mit Kopfhörern.</translation>
    </message>
    <message>
        <source>Beats</source>
        <translation>Stationen</translation>
    </message>
    <message>
        <source>to</source>
        <translation>bis</translation>
    </message>
    <message>
        <source>The file could not be taken in: {reason}.</source>
        <translation>Die Datei ließ sich nicht einlesen: {reason}.</translation>
    </message>
    <message>
        <source>Take in a sound file</source>
        <translation>Tondatei einlesen</translation>
    </message>
    <message>
        <source>“{name}” becomes a take. What does it tell?</source>
        <translation>„{name}“ wird ein Take. Was erzählt er?</translation>
    </message>
    <message>
        <source>What the sound tells</source>
        <translation>Was der Ton erzählt</translation>
    </message>
    <message>
        <source>This beat alone: {beat}</source>
        <translation>Nur diese Station: {beat}</translation>
    </message>
    <message>
        <source>From this beat to the end: {beat}</source>
        <translation>Von dieser Station bis zum Ende: {beat}</translation>
    </message>
    <message>
        <source>The whole talk</source>
        <translation>Der ganze Vortrag</translation>
    </message>
    <message>
        <source>Where it tells several beats, they are spread over it as the plan has them. You may publish only sound that you have the right to.</source>
        <translation>Erzählt er mehrere Stationen, so werden sie darüber verteilt, wie der Plan sie hat. Veröffentlicht werden darf nur Ton, an dem man das Recht hat.</translation>
    </message>
    <message>
        <source>Progress of the reading</source>
        <translation>Fortschritt des Einlesens</translation>
    </message>
    <message>
        <source>Take it in</source>
        <translation>Einlesen</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Sound of the take</source>
        <translation>Ton des Takes</translation>
    </message>
    <message>
        <source>At {seconds:.2f} s. Shift and the arrows choose a stretch.</source>
        <translation>Bei {seconds:.2f} s. Umschalt und die Pfeile wählen eine Stelle.</translation>
    </message>
    <message>
        <source>Chosen: {start:.2f} to {end:.2f} s, {length:.2f} s long.</source>
        <translation>Gewählt: {start:.2f} bis {end:.2f} s, {length:.2f} s lang.</translation>
    </message>
    <message>
        <source>some words</source>
        <translation>einige Worte</translation>
    </message>
    <message>
        <source>heard, chosen</source>
        <translation>zu hören, gewählt</translation>
    </message>
    <message>
        <source>heard</source>
        <translation>zu hören</translation>
    </message>
    <message>
        <source>tells no beat yet</source>
        <translation>erzählt noch keine Station</translation>
    </message>
    <message>
        <source>not recorded</source>
        <translation>nicht aufgenommen</translation>
    </message>
    <message>
        <source>silent, not recorded</source>
        <translation>stumm, nicht aufgenommen</translation>
    </message>
    <message>
        <source>from {file}</source>
        <translation>aus {file}</translation>
    </message>
    <message>
        <source>cut</source>
        <translation>geschnitten</translation>
    </message>
    <message>
        <source>cut off, kept to its last second</source>
        <translation>abgerissen, bis zur letzten Sekunde behalten</translation>
    </message>
    <message>
        <source>discarded</source>
        <translation>verworfen</translation>
    </message>
    <message>
        <source>Every line is told: {length}.</source>
        <translation>Jede Zeile ist erzählt: {length}.</translation>
    </message>
    <message>
        <source>{count} spoken lines are in no take.</source>
        <translation>{count} gesprochene Zeilen sind in keinem Take.</translation>
    </message>
    <message>
        <source>{name} is taken in.</source>
        <translation>{name} ist eingelesen.</translation>
    </message>
    <message>
        <source>Leave it open</source>
        <translation>Offen lassen</translation>
    </message>
    <message>
        <source>Delete discarded sound</source>
        <translation>Verworfenen Ton löschen</translation>
    </message>
    <message>
        <source>The sound of {names} is deleted for good. That cannot be undone.</source>
        <translation>Der Ton von {names} wird endgültig gelöscht. Das lässt sich nicht rückgängig machen.</translation>
    </message>
    <message>
        <source>Delete</source>
        <translation>Löschen</translation>
    </message>
    <message>
        <source>{megabytes:.1f} MB are free again.</source>
        <translation>{megabytes:.1f} MB sind wieder frei.</translation>
    </message>
    <message>
        <source>Choose</source>
        <translation>Wählen</translation>
    </message>
    <message>
        <source>Say it again</source>
        <translation>Neu sprechen</translation>
    </message>
    <message>
        <source>Sound and video ({kinds});;All files (*)</source>
        <translation>Ton und Video ({kinds});;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Beats of the talk</source>
        <translation>Stationen des Vortrags</translation>
    </message>
    <message>
        <source>Takes of this beat</source>
        <translation>Takes dieser Station</translation>
    </message>
    <message>
        <source>Name of this take</source>
        <translation>Name dieses Takes</translation>
    </message>
    <message>
        <source>Note on this take</source>
        <translation>Notiz zu diesem Take</translation>
    </message>
    <message>
        <source>What has happened</source>
        <translation>Was geschehen ist</translation>
    </message>
    <message>
        <source>The beat is heard in this take; else in the newest one.</source>
        <translation>Die Station ist in diesem Take zu hören; sonst im neuesten.</translation>
    </message>
    <message>
        <source>Trim to it</source>
        <translation>Darauf kürzen</translation>
    </message>
    <message>
        <source>Only the chosen stretch of the take is heard.</source>
        <translation>Nur die gewählte Stelle des Takes ist zu hören.</translation>
    </message>
    <message>
        <source>The chosen stretch is not heard; nothing is deleted.</source>
        <translation>Die gewählte Stelle ist nicht zu hören; gelöscht wird nichts.</translation>
    </message>
    <message>
        <source>Bring it back</source>
        <translation>Zurückholen</translation>
    </message>
    <message>
        <source>Record the chosen words anew; they are heard in place of these.</source>
        <translation>Die gewählten Worte neu aufnehmen; zu hören sind dann die neuen.</translation>
    </message>
    <message>
        <source>Room tone</source>
        <translation>Raumton</translation>
    </message>
    <message>
        <source>The chosen stretch is the silence of the room that gaps are filled with.</source>
        <translation>Die gewählte Stelle ist die Stille des Raums, mit der Lücken gefüllt werden.</translation>
    </message>
    <message>
        <source>Play the talk</source>
        <translation>Vortrag abspielen</translation>
    </message>
    <message>
        <source>From this beat on, as it is put together from its takes.</source>
        <translation>Von dieser Station an, wie er aus seinen Takes zusammengesetzt ist.</translation>
    </message>
    <message>
        <source>Take in a file …</source>
        <translation>Datei einlesen …</translation>
    </message>
    <message>
        <source>Delete discarded …</source>
        <translation>Verworfene löschen …</translation>
    </message>
    <message>
        <source>Deletes the sound of discarded takes for good, to free room on the disk.</source>
        <translation>Löscht den Ton verworfener Takes endgültig, um Platz zu schaffen.</translation>
    </message>
    <message>
        <source>Take a rehearsal out of the log</source>
        <translation>Eine Probe aus dem Protokoll nehmen</translation>
    </message>
    <message>
        <source>the start position, White to move</source>
        <translation>Ausgangsstellung, Weiß am Zug</translation>
    </message>
    <message>
        <source>the start position, Black to move</source>
        <translation>Ausgangsstellung, Schwarz am Zug</translation>
    </message>
    <message>
        <source>White to move: find the move.</source>
        <translation>Weiß am Zug: Welcher Zug ist es?</translation>
    </message>
    <message>
        <source>Black to move: find the move.</source>
        <translation>Schwarz am Zug: Welcher Zug ist es?</translation>
    </message>
    <message>
        <source>side-line {label}, after {move}</source>
        <translation>Variante {label}, nach {move}</translation>
    </message>
    <message>
        <source>after {move}</source>
        <translation>nach {move}</translation>
    </message>
    <message>
        <source>final position, after {move}</source>
        <translation>Schlussstellung, nach {move}</translation>
    </message>
    <message>
        <source>(pass)</source>
        <translation>(setzt aus)</translation>
    </message>
    <message>
        <source>January</source>
        <translation>Januar</translation>
    </message>
    <message>
        <source>February</source>
        <translation>Februar</translation>
    </message>
    <message>
        <source>March</source>
        <translation>März</translation>
    </message>
    <message>
        <source>April</source>
        <translation>April</translation>
    </message>
    <message>
        <source>May</source>
        <translation>Mai</translation>
    </message>
    <message>
        <source>June</source>
        <translation>Juni</translation>
    </message>
    <message>
        <source>July</source>
        <translation>Juli</translation>
    </message>
    <message>
        <source>August</source>
        <translation>August</translation>
    </message>
    <message>
        <source>September</source>
        <translation>September</translation>
    </message>
    <message>
        <source>October</source>
        <translation>Oktober</translation>
    </message>
    <message>
        <source>November</source>
        <translation>November</translation>
    </message>
    <message>
        <source>December</source>
        <translation>Dezember</translation>
    </message>
    <message>
        <source>{day} {month} {year}</source>
        <translation>{day}. {month} {year}</translation>
    </message>
    <message>
        <source>Round {round}</source>
        <translation>Runde {round}</translation>
    </message>
    <message>
        <source>Hear the plan</source>
        <translation>Den Plan anhören</translation>
    </message>
    <message>
        <source>How much of it is spoken</source>
        <translation>Wie viel davon gesprochen ist</translation>
    </message>
    <message>
        <source>Where in the talk (seconds)</source>
        <translation>Wo im Vortrag (Sekunden)</translation>
    </message>
    <message>
        <source>The plan is being spoken …</source>
        <translation>Der Plan wird gesprochen …</translation>
    </message>
    <message>
        <source>Scratch voice: {at} of {length}</source>
        <translation>Probestimme: {at} von {length}</translation>
    </message>
    <message>
        <source>The voice is a scratch voice, spoken by {name}: not for publishing.</source>
        <translation>Die Stimme ist eine Probestimme, gesprochen von {name}: nicht zum Veröffentlichen.</translation>
    </message>
    <message>
        <source>One line could not be spoken in its planned time.</source>
        <translation>Ein Text konnte nicht in seiner geplanten Zeit gesprochen werden.</translation>
    </message>
    <message>
        <source>{count} lines could not be spoken in their planned time.</source>
        <translation>{count} Texte konnten nicht in ihrer geplanten Zeit gesprochen werden.</translation>
    </message>
    <message>
        <source>The speech synthesiser {name} did not speak: {reason}.</source>
        <translation>Die Sprachausgabe {name} hat nicht gesprochen: {reason}.</translation>
    </message>
    <message>
        <source>No speech synthesiser was found, so there is no scratch voice. On Debian: apt install espeak-ng</source>
        <translation>Keine Sprachausgabe wurde gefunden, also gibt es keine Probestimme. Unter Debian: apt install espeak-ng</translation>
    </message>
    <message>
        <source>it took longer than {seconds} s</source>
        <translation>es dauerte länger als {seconds} s</translation>
    </message>
    <message>
        <source>exit status {status}</source>
        <translation>Rückgabewert {status}</translation>
    </message>
    <message>
        <source>Introduction</source>
        <translation>Einführung</translation>
    </message>
    <message>
        <source>Side-line: {line}</source>
        <translation>Nebenvariante: {line}</translation>
    </message>
    <message>
        <source>The game again: {move}</source>
        <translation>Wieder die Partie: {move}</translation>
    </message>
    <message>
        <source>The first moves</source>
        <translation>Die ersten Züge</translation>
    </message>
    <message>
        <source>The new move: {move}</source>
        <translation>Der neue Zug: {move}</translation>
    </message>
    <message>
        <source>Find the move: White to move</source>
        <translation>Den Zug finden: Weiß am Zug</translation>
    </message>
    <message>
        <source>Find the move: Black to move</source>
        <translation>Den Zug finden: Schwarz am Zug</translation>
    </message>
    <message>
        <source>The finish: {move}</source>
        <translation>Das Ende: {move}</translation>
    </message>
    <message>
        <source>The taps do not agree about the delay. Press firmly, and not too fast.</source>
        <translation>Die Anschläge sind sich über die Verzögerung nicht einig. Fest drücken, und nicht zu schnell.</translation>
    </message>
</context>
</TS>
