CREATE TABLE store (
    id   INTEGER PRIMARY KEY CHECK (id = 1),
    uuid TEXT NOT NULL
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
