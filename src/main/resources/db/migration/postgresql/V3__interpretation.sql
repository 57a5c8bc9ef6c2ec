-- Answers a lab froze. A row is never changed; that an input changed since is a row of its own.

CREATE TABLE interpretation (
    id              BIGINT PRIMARY KEY,         -- from 1, without gaps
    sample          BIGINT NOT NULL REFERENCES sample (id),
    sample_revision BIGINT NOT NULL,            -- the revision it was made from: it says which spots entered
    alloy           TEXT COLLATE "C",           -- whose nominal was used; absent where the sample stated its own
    alloy_revision  BIGINT,                     -- 0 for the program's own statement
    grouped_by      TEXT NOT NULL,
    who             TEXT NOT NULL,
    recorded        TEXT NOT NULL,
    method          TEXT NOT NULL,
    method_version  BIGINT NOT NULL,
    program_version TEXT NOT NULL,
    tables          BYTEA NOT NULL,             -- SHA-256 of each reference table
    checksums       BYTEA NOT NULL              -- SHA-256 of the answer in each form
);

CREATE INDEX interpretation_by_sample ON interpretation (sample, id);

CREATE TABLE interpretation_text (
    interpretation  BIGINT NOT NULL REFERENCES interpretation (id),
    form            TEXT NOT NULL,              -- json | csv | md
    bytes           BYTEA NOT NULL,             -- the answer, UTF-8
    PRIMARY KEY (interpretation, form)
);

-- The first change of an input: a revision of the sample, or of the alloy.
CREATE TABLE interpretation_stale (
    interpretation  BIGINT PRIMARY KEY REFERENCES interpretation (id),
    sample_revision BIGINT,
    alloy_revision  BIGINT
);
