-- The log: one row an entry, in the order of arrival. The body is the whole
-- entry but for its note. n has no gaps, since nothing is ever removed. It has
-- no index, so that a tap writes one page: see run and filed.
CREATE TABLE entry (
    n    INTEGER PRIMARY KEY,
    id   TEXT NOT NULL,
    body TEXT NOT NULL
) STRICT;

CREATE TRIGGER entry_stays BEFORE DELETE ON entry BEGIN
    SELECT RAISE(ABORT, 'entries are never removed: log a correction');
END;

CREATE TRIGGER entry_unchanged BEFORE UPDATE ON entry BEGIN
    SELECT RAISE(ABORT, 'entries are never changed: log a correction');
END;

-- INSERT OR REPLACE would remove a row without asking the trigger above.
CREATE TRIGGER entry_not_replaced BEFORE INSERT ON entry
WHEN EXISTS (SELECT 1 FROM entry WHERE n = NEW.n) BEGIN
    SELECT RAISE(ABORT, 'entries are never replaced: log a correction');
END;

-- The text of notes, apart from the log so that it can be blanked. A blank
-- may come in before the entry it blanks, so nothing refers to entry here.
CREATE TABLE note (
    entry TEXT PRIMARY KEY,
    text  TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TRIGGER note_stays BEFORE DELETE ON note BEGIN
    SELECT RAISE(ABORT, 'notes are never removed: blank the text');
END;

CREATE TRIGGER note_only_blanked BEFORE UPDATE ON note
WHEN NEW.text <> '' OR NEW.entry <> OLD.entry BEGIN
    SELECT RAISE(ABORT, 'the text of a note can be blanked, not changed');
END;

CREATE TRIGGER note_once BEFORE INSERT ON note
WHEN EXISTS (SELECT 1 FROM note WHERE entry = NEW.entry) BEGIN
    SELECT RAISE(IGNORE);
END;

-- Where the scene changes from one entry to the next, and every so often
-- besides: entries from n on are of this scene, and before n the log held
-- these entries of each device.
CREATE TABLE run (
    n      INTEGER PRIMARY KEY,
    scene  TEXT NOT NULL,
    vector TEXT NOT NULL
) STRICT;

CREATE INDEX run_scene ON run (scene);

-- The ids of all entries but those of the last run, filed when a run ends.
CREATE TABLE filed (
    id TEXT PRIMARY KEY
) STRICT, WITHOUT ROWID;

CREATE TABLE setting (
    key   TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- Folds kept so as not to do them again. Any row may be dropped at any time.
CREATE TABLE balance (
    key    TEXT PRIMARY KEY,
    covers INTEGER NOT NULL,
    wall   INTEGER NOT NULL,
    count  INTEGER NOT NULL,
    device TEXT NOT NULL,
    vector TEXT NOT NULL,
    blob   BLOB NOT NULL
) STRICT;

CREATE INDEX balance_stamp ON balance (wall, count, device);

-- For the sqlite3 command line: the log in columns, and the books. What is
-- where is SELECT sum(quantity) of move by to_place less the same by
-- from_place.
CREATE VIEW act AS
SELECT n, id, body ->> '$.stamp.w' AS wall, coalesce(body ->> '$.stamp.c', 0) AS count,
       body ->> '$.stamp.d' AS device, body ->> '$.scene' AS scene, body ->> '$.verb' AS verb,
       body ->> '$.by' AS by, body ->> '$.item' AS item, body ->> '$.reply.word' AS reply,
       (SELECT text FROM note WHERE note.entry = entry.id) AS note
FROM entry;

-- A ground, which tells the places of two open scenes apart, stands after
-- char(31) and is left off.
CREATE VIEW move AS
SELECT e.id AS entry, e.body ->> '$.scene' AS scene, e.body ->> '$.stamp.w' AS wall,
       m.value ->> '$.item' AS item, m.value ->> '$.n' AS quantity,
       substr(m.value ->> '$.from', 1, instr((m.value ->> '$.from') || char(31), char(31)) - 1) AS from_place,
       substr(m.value ->> '$.to', 1, instr((m.value ->> '$.to') || char(31), char(31)) - 1) AS to_place
FROM entry AS e, json_each(e.body, '$.moves') AS m
WHERE e.body ->> '$.reply.word' <> 'refused';
