CREATE TABLE store (
    id       INTEGER PRIMARY KEY CHECK (id = 1),
    uuid     TEXT NOT NULL,
    -- The format's version again: the header's own may be what is damaged.
    format   INTEGER NOT NULL,
    -- Version of the rows derived from the log; 0 when they are to be made anew.
    history  INTEGER NOT NULL,
    -- How far the log went, for certain, when it was sealed.
    sealed     INTEGER NOT NULL,
    sealed_sum INTEGER NOT NULL,
    -- Somebody has the file: there is a write-ahead log beside it, and which one.
    in_use   INTEGER NOT NULL,
    token    INTEGER NOT NULL,
    log_born INTEGER,
    -- The last event of a file that was being taken in, in one transaction; 0 where none is.
    coming   INTEGER NOT NULL,
    sum      INTEGER NOT NULL
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

-- The row without a key says how many others there are, and the sum of their digests.
CREATE TABLE standing (
    key  TEXT PRIMARY KEY,
    body TEXT NOT NULL,
    seq  INTEGER NOT NULL,
    sum  INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- Changes to the tables below that were not carried out yet: taps only add at its end, and a quiet
-- moment carries them out.
CREATE TABLE pending (
    id     INTEGER PRIMARY KEY,
    change TEXT NOT NULL,
    sum    INTEGER NOT NULL
) STRICT;

-- How many rows each of the tables below has, and the sum of their digests.
CREATE TABLE total (
    name TEXT PRIMARY KEY,
    rows INTEGER NOT NULL,
    sum  INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE session (
    session   INTEGER PRIMARY KEY,
    day       INTEGER NOT NULL,
    title     TEXT NOT NULL,
    -- 0 where it stands in no plan.
    plan      INTEGER NOT NULL,
    week      INTEGER NOT NULL,
    number    INTEGER NOT NULL,
    week_kind TEXT NOT NULL,
    seconds   INTEGER,
    owed      INTEGER,
    done      INTEGER,
    volume    TEXT,
    sum       INTEGER NOT NULL,
    -- Its number among all, by each of the orders that they are read in, without gaps: a row that is
    -- not found is missed.
    nth          INTEGER NOT NULL,
    nth_by_day   INTEGER NOT NULL,
    nth_by_place INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE INDEX session_by_day ON session (day);
CREATE INDEX session_by_place ON session (plan, week, number);

CREATE TABLE week_volume (
    week   INTEGER PRIMARY KEY,
    volume TEXT NOT NULL,
    sum    INTEGER NOT NULL,
    nth    INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

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
    sum       INTEGER NOT NULL,
    -- Its number among all sets, and among those of its exercise, without gaps.
    nth       INTEGER NOT NULL,
    nth_of_exercise INTEGER NOT NULL,
    PRIMARY KEY (session, entry, number)
) STRICT, WITHOUT ROWID;

CREATE INDEX done_set_by_exercise ON done_set (exercise, day, session);

-- Exercises that have a history: how many sets and records, and the day of the last set.
CREATE TABLE exercise (
    exercise TEXT PRIMARY KEY,
    sets     INTEGER NOT NULL,
    records  INTEGER NOT NULL,
    day      INTEGER NOT NULL,
    sum      INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE record (
    exercise TEXT NOT NULL,
    apart    TEXT NOT NULL,
    measure  TEXT NOT NULL,
    value    INTEGER NOT NULL,
    session  INTEGER NOT NULL,
    entry    INTEGER NOT NULL,
    number   INTEGER NOT NULL,
    day      INTEGER NOT NULL,
    sum      INTEGER NOT NULL,
    PRIMARY KEY (exercise, apart, measure)
) STRICT, WITHOUT ROWID;
