-- The record of a lab. What was measured is never overwritten: a change is a further revision.

CREATE TABLE sample (
    id              INTEGER PRIMARY KEY,
    name            TEXT NOT NULL UNIQUE,
    revision        INTEGER NOT NULL,           -- the present one; grows with its description and its spots
    alloy           TEXT,                       -- of the present description, for lists
    search          TEXT NOT NULL               -- name and description in small letters, for lists
) STRICT;

CREATE TABLE sample_revision (
    sample          INTEGER NOT NULL REFERENCES sample (id),
    n               INTEGER NOT NULL,
    what            TEXT NOT NULL,              -- described | spots imported | spot corrected | spot withdrawn
    who             TEXT NOT NULL,
    recorded        TEXT NOT NULL,
    link            TEXT,                       -- public id of the import or spot
    described       INTEGER NOT NULL,           -- the revision whose description is in force
    spot_count      INTEGER NOT NULL,           -- without withdrawn ones
    description     BLOB,                       -- where what = described
    PRIMARY KEY (sample, n)
) STRICT, WITHOUT ROWID;

CREATE TABLE import (
    id              INTEGER PRIMARY KEY,
    sample          INTEGER NOT NULL REFERENCES sample (id),
    sample_revision INTEGER NOT NULL,           -- after it
    who             TEXT NOT NULL,
    recorded        TEXT NOT NULL,
    accepted_count  INTEGER NOT NULL DEFAULT 0,
    unchanged_count INTEGER NOT NULL DEFAULT 0,
    rejected_count  INTEGER NOT NULL DEFAULT 0,
    fault_count     INTEGER NOT NULL DEFAULT 0,
    media_type      TEXT NOT NULL DEFAULT '',
    file_name       TEXT,
    byte_count      INTEGER NOT NULL DEFAULT 0,
    sha256          TEXT NOT NULL DEFAULT '',
    charset         TEXT,                       -- from here on: how it was read, where there was something to decide
    delimiter       TEXT,
    decimal_mark    TEXT,
    time_zone       TEXT,
    unit            TEXT,
    layout          TEXT,
    decided_by      TEXT
) STRICT;

CREATE TABLE import_file (
    import          INTEGER NOT NULL REFERENCES import (id),
    kind            TEXT NOT NULL,              -- original | rejected
    part            INTEGER NOT NULL,           -- from 0, a mebibyte each
    bytes           BLOB NOT NULL,
    PRIMARY KEY (import, kind, part)
) STRICT;

CREATE TABLE import_left_out (
    import          INTEGER NOT NULL REFERENCES import (id),
    n               INTEGER NOT NULL,
    pointer         TEXT,
    line            INTEGER,
    column_number   INTEGER,
    column_name     TEXT,
    reason          TEXT NOT NULL,
    label           TEXT,
    PRIMARY KEY (import, n)
) STRICT, WITHOUT ROWID;

CREATE TABLE import_fault (
    import          INTEGER NOT NULL REFERENCES import (id),
    n               INTEGER NOT NULL,
    code            TEXT NOT NULL,
    detail          TEXT NOT NULL,
    pointer         TEXT,
    line            INTEGER,
    column_number   INTEGER,
    column_name     TEXT,
    value           TEXT,
    spot            TEXT,
    PRIMARY KEY (import, n)
) STRICT, WITHOUT ROWID;

CREATE TABLE spot (
    id              INTEGER PRIMARY KEY,        -- in the order of record
    sample          INTEGER NOT NULL REFERENCES sample (id),
    session         TEXT NOT NULL,              -- '' where none is stated
    label           TEXT NOT NULL,
    acquired        INTEGER NOT NULL,           -- ns since 1970 UTC; the least number where none is stated
    import          INTEGER NOT NULL REFERENCES import (id),
    UNIQUE (sample, session, label, acquired)
) STRICT;

-- Clustered by sample, so that one sample's spots are read in one sweep. Who and when stand at the sample's revision.
CREATE TABLE spot_revision (
    sample          INTEGER NOT NULL REFERENCES sample (id),
    spot            INTEGER NOT NULL REFERENCES spot (id),
    n               INTEGER NOT NULL,
    from_revision   INTEGER NOT NULL,           -- revision of the sample that it made
    until_revision  INTEGER,                    -- revision of the sample that replaced it
    reason          TEXT,
    withdrawn       INTEGER NOT NULL,
    reference       INTEGER NOT NULL,           -- 1 for a spot on a piece of known composition
    feature         TEXT,
    particle        TEXT,
    payload         BLOB NOT NULL,              -- every field of the spot
    PRIMARY KEY (sample, spot, n)
) STRICT, WITHOUT ROWID;

CREATE TABLE alloy (
    id              TEXT PRIMARY KEY,
    revision        INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE alloy_revision (
    alloy           TEXT NOT NULL REFERENCES alloy (id),
    n               INTEGER NOT NULL,
    who             TEXT NOT NULL,
    recorded        TEXT NOT NULL,
    payload         BLOB NOT NULL,
    PRIMARY KEY (alloy, n)
) STRICT, WITHOUT ROWID;

CREATE TABLE event (
    id              INTEGER PRIMARY KEY AUTOINCREMENT,  -- never given twice, also after old ones are gone
    type            TEXT NOT NULL,
    recorded        TEXT NOT NULL,
    sample          TEXT,
    subject         TEXT,                       -- public id of the import or spot, or id of the alloy
    accepted_count  INTEGER
) STRICT;

CREATE TABLE audit (
    id              INTEGER PRIMARY KEY,        -- from 1, without gaps
    recorded        TEXT NOT NULL,
    who             TEXT NOT NULL,
    what            TEXT NOT NULL,
    sample          TEXT,
    detail          TEXT NOT NULL,
    hash            TEXT NOT NULL               -- SHA-256 over the hash before and this row
) STRICT;

CREATE TABLE idempotency (
    who             TEXT NOT NULL,
    repeat_key      TEXT NOT NULL,
    fingerprint     TEXT NOT NULL,
    recorded        INTEGER NOT NULL,           -- s since 1970 UTC
    status          INTEGER NOT NULL,
    headers         BLOB NOT NULL,
    body            BLOB NOT NULL,
    PRIMARY KEY (who, repeat_key)
) STRICT;

CREATE INDEX idempotency_by_age ON idempotency (recorded);

-- How the record ended when copies of it were made. A backup holds a row for itself; the record restored from it keeps it.
CREATE TABLE backup (
    id              INTEGER PRIMARY KEY,
    made            TEXT NOT NULL,
    restored        TEXT,                       -- absent in the backup itself
    audit_count     INTEGER NOT NULL,
    audit_hash      TEXT NOT NULL,
    audit_broken    INTEGER                     -- first audit row that was broken already
) STRICT;

CREATE TABLE backup_count (
    backup          INTEGER NOT NULL REFERENCES backup (id),
    name            TEXT NOT NULL,              -- of a table
    row_count       INTEGER NOT NULL,
    PRIMARY KEY (backup, name)
) STRICT, WITHOUT ROWID;
