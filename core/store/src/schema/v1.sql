CREATE TABLE store (
    id   INTEGER PRIMARY KEY CHECK (id = 1),
    uuid TEXT NOT NULL,
    -- Version of the rows derived from the log; 0 when they are to be made anew.
    history INTEGER NOT NULL
) STRICT;

CREATE TABLE event (
    seq        INTEGER PRIMARY KEY CHECK (seq > 0),
    tap        INTEGER NOT NULL CHECK (tap BETWEEN 1 AND seq),
    kind       TEXT NOT NULL,
    version    INTEGER NOT NULL,
    wall_ms    INTEGER NOT NULL,
    offset_min INTEGER NOT NULL,
    body       TEXT NOT NULL,
    checksum   INTEGER NOT NULL
) STRICT;

CREATE TRIGGER event_is_never_changed BEFORE UPDATE ON event
BEGIN SELECT RAISE(ABORT, 'events are never changed'); END;

CREATE TRIGGER event_is_never_deleted BEFORE DELETE ON event
BEGIN SELECT RAISE(ABORT, 'events are never deleted'); END;

CREATE TABLE standing (
    key  TEXT PRIMARY KEY,
    body TEXT NOT NULL,
    seq  INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- Changes to the tables below that were not carried out yet: taps only add at its end, and a quiet
-- moment carries them out.
CREATE TABLE pending (
    id     INTEGER PRIMARY KEY,
    change TEXT NOT NULL
) STRICT;

CREATE TABLE session (
    session   INTEGER PRIMARY KEY,
    day       INTEGER NOT NULL,
    title     TEXT NOT NULL,
    plan      INTEGER,
    week      INTEGER,
    number    INTEGER,
    week_kind TEXT NOT NULL,
    seconds   INTEGER,
    owed      INTEGER,
    done      INTEGER,
    volume    TEXT
) STRICT;

CREATE INDEX session_by_day ON session (day);
CREATE INDEX session_by_place ON session (plan, week, number) WHERE plan IS NOT NULL;

CREATE TABLE week_volume (
    week   INTEGER PRIMARY KEY,
    volume TEXT NOT NULL
) STRICT;

CREATE TABLE done_set (
    session   INTEGER NOT NULL,
    entry     INTEGER NOT NULL,
    number    INTEGER NOT NULL,
    day       INTEGER NOT NULL,
    exercise  TEXT NOT NULL,
    kind      TEXT NOT NULL,
    "row"     INTEGER NOT NULL,
    round     INTEGER NOT NULL,
    side      TEXT,
    asked     TEXT NOT NULL,
    target    TEXT,
    meant_ng  INTEGER,
    figure_ng INTEGER,
    counting  TEXT NOT NULL,
    moved_ng  INTEGER,
    bands     TEXT,
    technique TEXT,
    set_up    TEXT,
    kit       TEXT,
    reps      INTEGER,
    seconds   INTEGER,
    mm        INTEGER,
    parts     TEXT,
    left_halves INTEGER,
    helped    INTEGER NOT NULL,
    ending    TEXT NOT NULL,
    PRIMARY KEY (session, entry, number)
) STRICT, WITHOUT ROWID;

CREATE INDEX done_set_by_exercise ON done_set (exercise, session);

CREATE TABLE record (
    exercise TEXT NOT NULL,
    apart    TEXT NOT NULL,
    measure  TEXT NOT NULL,
    value    INTEGER NOT NULL,
    session  INTEGER NOT NULL,
    entry    INTEGER NOT NULL,
    number   INTEGER NOT NULL,
    day      INTEGER NOT NULL,
    PRIMARY KEY (exercise, apart, measure)
) STRICT, WITHOUT ROWID;
