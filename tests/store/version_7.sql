-- The same study as the seventh schema of the file stored it.
PRAGMA application_id = 1400128100;
PRAGMA user_version = 7;
BEGIN TRANSACTION;
CREATE TABLE header (position INTEGER PRIMARY KEY, name TEXT NOT NULL, value TEXT NOT NULL);
INSERT INTO "header" VALUES(0,'Event','Club evening');
INSERT INTO "header" VALUES(1,'Site','Room above the bakery');
INSERT INTO "header" VALUES(2,'Date','2030.05.17');
INSERT INTO "header" VALUES(3,'Round','3');
INSERT INTO "header" VALUES(4,'White','Ortwin, Hanne');
INSERT INTO "header" VALUES(5,'Black','Vale, Piers');
INSERT INTO "header" VALUES(6,'Result','1-0');
CREATE TABLE history (
    seq INTEGER PRIMARY KEY, label TEXT NOT NULL, at TEXT NOT NULL, forward TEXT NOT NULL, inverse TEXT NOT NULL
);
INSERT INTO "history" VALUES(1,'Change the headers','2030-05-17T19:30:10+00:00','{"is":"ChangeHeaders","headers":[["Event","Club evening"],["Site","Room above the bakery"],["Date","2030.05.17"],["Round","3"],["White","Ortwin, Hanne"],["Black","Vale, Piers"],["Result","1-0"]],"label":"Change the headers"}','{"is":"ChangeHeaders","headers":[["Event","?"],["Site","?"],["Date","????.??.??"],["Round","?"],["White","?"],["Black","?"],["Result","*"]],"label":"Change the headers"}');
INSERT INTO "history" VALUES(2,'Add a move','2030-05-17T19:30:20+00:00','{"is":"AddMove","parent":0,"move":{"is":"Move","uci":"e2e4"},"node":1,"place":-1,"label":"Add a move"}','{"is":"RemoveBranch","node":1,"label":"Insert a branch"}');
INSERT INTO "history" VALUES(3,'Add a move','2030-05-17T19:30:30+00:00','{"is":"AddMove","parent":1,"move":{"is":"Move","uci":"e7e5"},"node":2,"place":-1,"label":"Add a move"}','{"is":"RemoveBranch","node":2,"label":"Insert a branch"}');
INSERT INTO "history" VALUES(4,'Add a move','2030-05-17T19:30:40+00:00','{"is":"AddMove","parent":2,"move":{"is":"Move","uci":"g1f3"},"node":3,"place":-1,"label":"Add a move"}','{"is":"RemoveBranch","node":3,"label":"Insert a branch"}');
INSERT INTO "history" VALUES(5,'Add a move','2030-05-17T19:30:50+00:00','{"is":"AddMove","parent":2,"move":{"is":"Move","uci":"f2f4"},"node":4,"place":-1,"label":"Add a move"}','{"is":"RemoveBranch","node":4,"label":"Insert a branch"}');
INSERT INTO "history" VALUES(6,'Change a node','2030-05-17T19:31:00+00:00','{"is":"ChangeNode","node":1,"field":"spoken","value":{"is":"SpokenLine","text":"She opens with the king''s pawn.","cues":[{"is":"Cue","word":3,"node":1,"mark":null},{"is":"Cue","word":6,"node":null,"mark":0}]},"label":"Change a node"}','{"is":"ChangeNode","node":1,"field":"spoken","value":{"is":"SpokenLine","text":"","cues":[]},"label":"Change a node"}');
INSERT INTO "history" VALUES(7,'Change a node','2030-05-17T19:31:10+00:00','{"is":"ChangeNode","node":1,"field":"marks","value":[{"is":"Mark","kind":{"is":"MarkKind","value":"key square"},"squares":[28]},{"is":"Mark","kind":{"is":"MarkKind","value":"route"},"squares":[6,21,36]}],"label":"Change a node"}','{"is":"ChangeNode","node":1,"field":"marks","value":[],"label":"Change a node"}');
INSERT INTO "history" VALUES(8,'Change a node','2030-05-17T19:31:20+00:00','{"is":"ChangeNode","node":3,"field":"nags","value":[1,14],"label":"Change a node"}','{"is":"ChangeNode","node":3,"field":"nags","value":[],"label":"Change a node"}');
INSERT INTO "history" VALUES(9,'Change a node','2030-05-17T19:31:30+00:00','{"is":"ChangeNode","node":3,"field":"note","value":"The usual move.","label":"Change a node"}','{"is":"ChangeNode","node":3,"field":"note","value":"","label":"Change a node"}');
INSERT INTO "history" VALUES(10,'Change a node','2030-05-17T19:31:40+00:00','{"is":"ChangeNode","node":4,"field":"telling","value":{"is":"Telling","place":{"is":"Place","value":"moved"},"anchor":3},"label":"Change a node"}','{"is":"ChangeNode","node":4,"field":"telling","value":{"is":"Telling","place":{"is":"Place","value":"after"},"anchor":null},"label":"Change a node"}');
INSERT INTO "history" VALUES(11,'Change a node','2030-05-17T19:31:50+00:00','{"is":"ChangeNode","node":3,"field":"think","value":6.0,"label":"Change a node"}','{"is":"ChangeNode","node":3,"field":"think","value":0.0,"label":"Change a node"}');
INSERT INTO "history" VALUES(12,'Change a node','2030-05-17T19:32:00+00:00','{"is":"ChangeNode","node":3,"field":"intended","value":12.5,"label":"Change a node"}','{"is":"ChangeNode","node":3,"field":"intended","value":null,"label":"Change a node"}');
INSERT INTO "history" VALUES(13,'Change the script','2030-05-17T19:32:10+00:00','{"is":"ChangeLine","part":{"is":"Part","value":"greeting"},"line":{"is":"FreeLine","spoken":{"is":"SpokenLine","text":"Good evening.","cues":[]},"intended":2.0},"label":"Change the script"}','{"is":"ChangeLine","part":{"is":"Part","value":"greeting"},"line":{"is":"FreeLine","spoken":{"is":"SpokenLine","text":"","cues":[]},"intended":null},"label":"Change the script"}');
INSERT INTO "history" VALUES(14,'Set the slot','2030-05-17T19:32:20+00:00','{"is":"ChangeSlot","slot":540.0,"label":"Set the slot"}','{"is":"ChangeSlot","slot":null,"label":"Set the slot"}');
INSERT INTO "history" VALUES(15,'Set the pace','2030-05-17T19:32:30+00:00','{"is":"ChangePace","pace":{"is":"Pace","syllables_per_second":5.1,"clause_pause":0.22,"sentence_pause":0.5,"paragraph_pause":0.9,"move_time":1.2,"back_time":0.8},"label":"Set the pace"}','{"is":"ChangePace","pace":{"is":"Pace","syllables_per_second":4.9,"clause_pause":0.22,"sentence_pause":0.5,"paragraph_pause":0.9,"move_time":1.2,"back_time":0.8},"label":"Set the pace"}');
INSERT INTO "history" VALUES(16,'Keep a take','2030-05-17T19:32:40+00:00','{"is":"PutTake","take":{"is":"Take","id":1,"name":"first try","rate":48000,"samples":100,"started":"2030-05-17T21:30:00+02:00","events":[{"is":"TakeEvent","at":{"is":"SoundTime","samples":0,"rate":48000},"node":0,"beat":{"is":"Part","value":"greeting"}},{"is":"TakeEvent","at":{"is":"SoundTime","samples":60,"rate":48000},"node":1,"beat":1}],"kept":true,"complete":true},"label":"Keep a take"}','{"is":"DropTake","take":1,"label":"Keep a take"}');
INSERT INTO "history" VALUES(17,'Delete a branch','2030-05-17T19:32:50+00:00','{"is":"RemoveBranch","node":3,"label":"Delete a branch"}','{"is":"InsertBranch","nodes":[{"is":"Node","id":3,"parent":2,"move":{"is":"Move","uci":"g1f3"},"children":[],"spoken":{"is":"SpokenLine","text":"","cues":[]},"note_before":"","note":"The usual move.","marks":[],"nags":[1,14],"intended":12.5,"think":6.0,"telling":{"is":"Telling","place":{"is":"Place","value":"after"},"anchor":null},"name":""}],"place":0,"label":"Delete a branch"}');
CREATE TABLE left_query (
                beat, kind TEXT NOT NULL, quote TEXT NOT NULL, PRIMARY KEY (beat, kind, quote)
            ) WITHOUT ROWID
        ;
CREATE TABLE node (
    id INTEGER PRIMARY KEY,
    parent INTEGER,
    move TEXT,
    children TEXT NOT NULL,
    spoken TEXT NOT NULL,
    cues TEXT NOT NULL,
    note TEXT NOT NULL,
    marks TEXT NOT NULL,
    nags TEXT NOT NULL,
    intended REAL,
    think REAL NOT NULL,
    place TEXT NOT NULL,
    anchor INTEGER
, note_before TEXT NOT NULL DEFAULT '', name TEXT NOT NULL DEFAULT '', locked INTEGER NOT NULL DEFAULT 0, mark_numbers TEXT NOT NULL DEFAULT '');
INSERT INTO "node" VALUES(0,NULL,NULL,'1','','','','','',NULL,0.0,'after',NULL,'','',0,'');
INSERT INTO "node" VALUES(1,0,'e2e4','2','She opens with the king''s pawn.','[[3,1,null],[6,null,0]]','','[["key square",28],["route",6,21,36]]','',NULL,0.0,'after',NULL,'','',0,'');
INSERT INTO "node" VALUES(2,1,'e7e5','3 4','','','','','',NULL,0.0,'after',NULL,'','',0,'');
INSERT INTO "node" VALUES(3,2,'g1f3','','','','The usual move.','','1 14',12.5,6.0,'after',NULL,'','',1,'');
INSERT INTO "node" VALUES(4,2,'f2f4','','','','','','',NULL,0.0,'moved',3,'','',0,'');
CREATE TABLE part (
    part TEXT PRIMARY KEY, spoken TEXT NOT NULL, cues TEXT NOT NULL, intended REAL
, locked INTEGER NOT NULL DEFAULT 0) WITHOUT ROWID;
INSERT INTO "part" VALUES('greeting','Good evening.','',2.0,1);
CREATE TABLE pronunciation (word TEXT PRIMARY KEY, said TEXT NOT NULL) WITHOUT ROWID
        ;
CREATE TABLE recording (
    take INTEGER PRIMARY KEY, name TEXT NOT NULL, rate INTEGER NOT NULL, started TEXT NOT NULL,
    finished INTEGER NOT NULL
, origin TEXT NOT NULL DEFAULT '', replaces TEXT NOT NULL DEFAULT '');
CREATE TABLE rehearsed (beat PRIMARY KEY, seconds REAL NOT NULL) WITHOUT ROWID
        ;
CREATE TABLE setting (name TEXT PRIMARY KEY, value) WITHOUT ROWID;
INSERT INTO "setting" VALUES('history position',16);
INSERT INTO "setting" VALUES('next node',5);
INSERT INTO "setting" VALUES('next take',2);
INSERT INTO "setting" VALUES('pace back_time',0.8);
INSERT INTO "setting" VALUES('pace clause_pause',0.22);
INSERT INTO "setting" VALUES('pace move_time',1.2);
INSERT INTO "setting" VALUES('pace paragraph_pause',0.9);
INSERT INTO "setting" VALUES('pace sentence_pause',0.5);
INSERT INTO "setting" VALUES('pace syllables_per_second',5.1);
INSERT INTO "setting" VALUES('root',0);
INSERT INTO "setting" VALUES('slot',540.0);
CREATE TABLE sound (
    take INTEGER NOT NULL, start INTEGER NOT NULL, samples INTEGER NOT NULL, data BLOB NOT NULL, coding TEXT NOT NULL DEFAULT 'pcm',
    PRIMARY KEY (take, start)
);
INSERT INTO "sound" VALUES(1,0,100,X'000102030405060708090A0B0C0D0E0F101112131415161718191A1B1C1D1E1F202122232425262728292A2B2C2D2E2F303132333435363738393A3B3C3D3E3F404142434445464748494A4B4C4D4E4F505152535455565758595A5B5C5D5E5F606162636465666768696A6B6C6D6E6F707172737475767778797A7B7C7D7E7F808182838485868788898A8B8C8D8E8F909192939495969798999A9B9C9D9E9FA0A1A2A3A4A5A6A7A8A9AAABACADAEAFB0B1B2B3B4B5B6B7B8B9BABBBCBDBEBFC0C1C2C3C4C5C6C7','pcm');
CREATE TABLE take (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL,
    rate INTEGER NOT NULL,
    samples INTEGER NOT NULL,
    started TEXT NOT NULL,
    kept INTEGER NOT NULL,
    complete INTEGER NOT NULL
, note TEXT NOT NULL DEFAULT '', origin TEXT NOT NULL DEFAULT '', left_out TEXT NOT NULL DEFAULT '', replaces TEXT NOT NULL DEFAULT '', room_tone TEXT NOT NULL DEFAULT '', said TEXT NOT NULL DEFAULT '');
INSERT INTO "take" VALUES(1,'first try',48000,100,'2030-05-17T21:30:00+02:00',1,1,'','','','','','');
CREATE TABLE take_choice (beat PRIMARY KEY, take INTEGER NOT NULL) WITHOUT ROWID;
CREATE TABLE take_event (
    take INTEGER NOT NULL, position INTEGER NOT NULL, samples INTEGER NOT NULL, rate INTEGER NOT NULL,
    node INTEGER NOT NULL, beat, PRIMARY KEY (take, position)
) WITHOUT ROWID;
INSERT INTO "take_event" VALUES(1,0,0,48000,0,'greeting');
INSERT INTO "take_event" VALUES(1,1,60,48000,1,1);
COMMIT;
