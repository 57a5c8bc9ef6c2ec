-- Answers a lab froze. A row is never changed; that an input changed since is a row of its own.

CREATE TABLE interpretation (
    id              INTEGER PRIMARY KEY,        -- from 1, without gaps
    sample          INTEGER NOT NULL REFERENCES sample (id),
    sample_revision INTEGER NOT NULL,           -- the revision it was made from: it says which spots entered
    alloy           TEXT,                       -- the sample names, for its nominal or its phases
    alloy_revision  INTEGER,                    -- 0 for the program's own statement
    grouped_by      TEXT NOT NULL,
    who             TEXT NOT NULL,
    recorded        TEXT NOT NULL,
    method          TEXT NOT NULL,
    method_version  INTEGER NOT NULL,
    program_version TEXT NOT NULL,
    tables          BLOB NOT NULL,              -- SHA-256 of each reference table
    checksums       BLOB NOT NULL               -- SHA-256 of the answer in each form
) STRICT;

CREATE INDEX interpretation_by_sample ON interpretation (sample, id);

CREATE TABLE interpretation_text (
    interpretation  INTEGER NOT NULL REFERENCES interpretation (id),
    form            TEXT NOT NULL,              -- json | csv | md
    bytes           BLOB NOT NULL,              -- the answer, UTF-8
    PRIMARY KEY (interpretation, form)
) STRICT;

-- The first change of an input: a revision of the sample, or of the alloy.
CREATE TABLE interpretation_stale (
    interpretation  INTEGER PRIMARY KEY REFERENCES interpretation (id),
    sample_revision INTEGER,
    alloy_revision  INTEGER
) STRICT;
