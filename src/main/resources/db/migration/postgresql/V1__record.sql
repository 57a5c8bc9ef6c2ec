-- The record of a lab. What was measured is never overwritten: a change is a further revision.
-- Texts that lists are sorted by, or that stand in a key, are compared byte by byte, whatever the database's language.

-- One row. Whoever holds it locked writes; all others wait for their turn, so that what is numbered is numbered in the
-- order of the commits. No part of the record.
CREATE TABLE turn (
    id              BIGINT PRIMARY KEY CHECK (id = 1),
    last_event      BIGINT NOT NULL             -- number of the newest event there ever was
);

INSERT INTO turn (id, last_event) VALUES (1, 0);

-- Passes for event streams that were not used yet, so that one taken from one program opens a stream of another. No part
-- of the record.
CREATE TABLE event_ticket (
    sha256          TEXT COLLATE "C" PRIMARY KEY,
    token           TEXT,                       -- id of the token it was taken with; absent where none was asked for
    issued          TIMESTAMPTZ NOT NULL DEFAULT now()
);

CREATE TABLE sample (
    id              BIGINT PRIMARY KEY,
    name            TEXT COLLATE "C" NOT NULL UNIQUE,
    revision        BIGINT NOT NULL,            -- the present one; grows with its description and its spots
    alloy           TEXT,                       -- of the present description, for lists
    search          TEXT NOT NULL               -- name and description in small letters, for lists
);

CREATE TABLE sample_revision (
    sample          BIGINT NOT NULL REFERENCES sample (id),
    n               BIGINT NOT NULL,
    what            TEXT NOT NULL,              -- described | spots imported | spot corrected | spot withdrawn
    who             TEXT NOT NULL,
    recorded        TEXT NOT NULL,
    link            TEXT,                       -- public id of the import or spot
    described       BIGINT NOT NULL,            -- the revision whose description is in force
    spot_count      BIGINT NOT NULL,            -- without withdrawn ones
    description     BYTEA,                      -- where what = described
    PRIMARY KEY (sample, n)
);

CREATE TABLE import (
    id              BIGINT PRIMARY KEY,
    sample          BIGINT NOT NULL REFERENCES sample (id),
    sample_revision BIGINT NOT NULL,            -- after it
    who             TEXT NOT NULL,
    recorded        TEXT NOT NULL,
    accepted_count  BIGINT NOT NULL DEFAULT 0,
    unchanged_count BIGINT NOT NULL DEFAULT 0,
    rejected_count  BIGINT NOT NULL DEFAULT 0,
    fault_count     BIGINT NOT NULL DEFAULT 0,
    media_type      TEXT NOT NULL DEFAULT '',
    file_name       TEXT,
    byte_count      BIGINT NOT NULL DEFAULT 0,
    sha256          TEXT NOT NULL DEFAULT '',
    charset         TEXT,                       -- from here on: how it was read, where there was something to decide
    delimiter       TEXT,
    decimal_mark    TEXT,
    time_zone       TEXT,
    unit            TEXT,
    layout          TEXT,
    decided_by      TEXT
);

CREATE TABLE import_file (
    import          BIGINT NOT NULL REFERENCES import (id),
    kind            TEXT NOT NULL,              -- original | rejected
    part            BIGINT NOT NULL,            -- from 0, a mebibyte each
    bytes           BYTEA NOT NULL,
    PRIMARY KEY (import, kind, part)
);

CREATE TABLE import_left_out (
    import          BIGINT NOT NULL REFERENCES import (id),
    n               BIGINT NOT NULL,
    pointer         TEXT,
    line            BIGINT,
    column_number   BIGINT,
    column_name     TEXT,
    reason          TEXT NOT NULL,
    label           TEXT,
    PRIMARY KEY (import, n)
);

CREATE TABLE import_fault (
    import          BIGINT NOT NULL REFERENCES import (id),
    n               BIGINT NOT NULL,
    code            TEXT NOT NULL,
    detail          TEXT NOT NULL,
    pointer         TEXT,
    line            BIGINT,
    column_number   BIGINT,
    column_name     TEXT,
    value           TEXT,
    spot            TEXT,
    PRIMARY KEY (import, n)
);

CREATE TABLE spot (
    id              BIGINT PRIMARY KEY,         -- in the order of record
    sample          BIGINT NOT NULL REFERENCES sample (id),
    session         TEXT COLLATE "C" NOT NULL,  -- '' where none is stated
    label           TEXT COLLATE "C" NOT NULL,
    acquired        BIGINT NOT NULL,            -- ns since 1970 UTC; the least number where none is stated
    import          BIGINT NOT NULL REFERENCES import (id),
    UNIQUE (sample, session, label, acquired)
);

-- Clustered by sample, so that one sample's spots are read in one sweep. Who and when stand at the sample's revision.
CREATE TABLE spot_revision (
    sample          BIGINT NOT NULL REFERENCES sample (id),
    spot            BIGINT NOT NULL REFERENCES spot (id),
    n               BIGINT NOT NULL,
    from_revision   BIGINT NOT NULL,            -- revision of the sample that it made
    until_revision  BIGINT,                     -- revision of the sample that replaced it
    reason          TEXT,
    withdrawn       BIGINT NOT NULL,
    reference       BIGINT NOT NULL,            -- 1 for a spot on a piece of known composition
    feature         TEXT,
    particle        TEXT,
    payload         BYTEA NOT NULL,             -- every field of the spot
    PRIMARY KEY (sample, spot, n)
);

CREATE TABLE alloy (
    id              TEXT COLLATE "C" PRIMARY KEY,
    revision        BIGINT NOT NULL
);

CREATE TABLE alloy_revision (
    alloy           TEXT COLLATE "C" NOT NULL REFERENCES alloy (id),
    n               BIGINT NOT NULL,
    who             TEXT NOT NULL,
    recorded        TEXT NOT NULL,
    payload         BYTEA NOT NULL,
    PRIMARY KEY (alloy, n)
);

CREATE TABLE event (
    id              BIGINT PRIMARY KEY,         -- never given twice, also after old ones are gone
    type            TEXT NOT NULL,
    recorded        TEXT NOT NULL,
    sample          TEXT,
    subject         TEXT,                       -- public id of the import or spot, or id of the alloy
    accepted_count  BIGINT
);

CREATE TABLE audit (
    id              BIGINT PRIMARY KEY,         -- from 1, without gaps
    recorded        TEXT NOT NULL,
    who             TEXT NOT NULL,
    what            TEXT NOT NULL,
    sample          TEXT,
    detail          TEXT NOT NULL,
    hash            TEXT NOT NULL               -- SHA-256 over the hash before and this row
);

CREATE TABLE idempotency (
    who             TEXT NOT NULL,
    repeat_key      TEXT NOT NULL,
    fingerprint     TEXT NOT NULL,
    recorded        BIGINT NOT NULL,            -- s since 1970 UTC
    status          BIGINT NOT NULL,
    headers         BYTEA NOT NULL,
    body            BYTEA NOT NULL,
    PRIMARY KEY (who, repeat_key)
);

CREATE INDEX idempotency_by_age ON idempotency (recorded);

-- How the record ended when copies of it were made. A backup holds a row for itself; the record restored from it keeps it.
CREATE TABLE backup (
    id              BIGINT PRIMARY KEY,
    made            TEXT NOT NULL,
    restored        TEXT,                       -- absent in the backup itself
    audit_count     BIGINT NOT NULL,
    audit_hash      TEXT NOT NULL,
    audit_broken    BIGINT                      -- first audit row that was broken already
);

CREATE TABLE backup_count (
    backup          BIGINT NOT NULL REFERENCES backup (id),
    name            TEXT NOT NULL,              -- of a table
    row_count       BIGINT NOT NULL,
    PRIMARY KEY (backup, name)
);
