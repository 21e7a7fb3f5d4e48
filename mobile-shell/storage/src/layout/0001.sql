-- Layout 1: the table of facts, the files that belong to them, and what is this device's own business.

-- One row is one fact: this field of this record got this value. The present state is the row with the greatest stamp.
CREATE TABLE change (
    project TEXT NOT NULL,                               -- the bike
    kind    TEXT NOT NULL,                               -- kind of record, as 'job'
    record  TEXT NOT NULL,                               -- the record's mark
    field   TEXT NOT NULL,
    value   TEXT NOT NULL CHECK (json_valid(value)),     -- JSON; null means 'not known any more'
    stamp   TEXT NOT NULL CHECK (                        -- hexadecimal: milliseconds since 1970 (UTC), counter, device
        length(stamp) = 42 AND substr(stamp, 17, 1) = '-' AND substr(stamp, 26, 1) = '-'
        AND stamp NOT GLOB '*-*-*-*' AND stamp NOT GLOB '*[^0-9a-f-]*'),
    seen    TEXT,                                        -- stamp of the value that the author saw and replaced
    batch   TEXT NOT NULL,                               -- the command that wrote it
    device  TEXT GENERATED ALWAYS AS (substr(stamp, 27)) VIRTUAL,
    PRIMARY KEY (project, kind, record, field, stamp)
) STRICT, WITHOUT ROWID;

-- Adding a fact that is there already does nothing, in whatever way it is added (INSERT OR REPLACE included).
CREATE TRIGGER change_is_added_once BEFORE INSERT ON change
WHEN EXISTS (SELECT 1 FROM change WHERE (project, kind, record, field, stamp) = (NEW.project, NEW.kind, NEW.record, NEW.field, NEW.stamp))
BEGIN SELECT RAISE(IGNORE); END;

CREATE TRIGGER change_is_never_rewritten BEFORE UPDATE ON change
BEGIN SELECT RAISE(ABORT, 'a change is a fact: it is never rewritten'); END;

CREATE TRIGGER change_is_never_deleted BEFORE DELETE ON change
BEGIN SELECT RAISE(ABORT, 'a change is a fact: it is never deleted'); END;

-- Photographs and papers, each once. Records name them by hash.
CREATE TABLE attachment (
    hash  TEXT NOT NULL PRIMARY KEY CHECK (length(hash) = 64),   -- SHA-256 of the bytes, hexadecimal
    media TEXT NOT NULL,                                         -- media type, as 'image/jpeg'
    bytes BLOB NOT NULL
) STRICT;

CREATE TRIGGER attachment_is_added_once BEFORE INSERT ON attachment
WHEN EXISTS (SELECT 1 FROM attachment WHERE hash = NEW.hash)
BEGIN SELECT RAISE(IGNORE); END;

CREATE TRIGGER attachment_is_never_rewritten BEFORE UPDATE ON attachment
BEGIN SELECT RAISE(ABORT, 'an attachment is never rewritten'); END;

CREATE TRIGGER attachment_is_never_deleted BEFORE DELETE ON attachment
BEGIN SELECT RAISE(ABORT, 'an attachment is never deleted'); END;

-- This device's own business: neither merged nor exported.
CREATE TABLE meta    (name TEXT NOT NULL PRIMARY KEY, value TEXT NOT NULL) STRICT, WITHOUT ROWID;
CREATE TABLE setting (name TEXT NOT NULL PRIMARY KEY, value TEXT NOT NULL) STRICT, WITHOUT ROWID;
