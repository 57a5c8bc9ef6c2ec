-- The sums of a sample's spots are kept in blocks of consecutive spots: those of the open block, which grows, stand in
-- kept_sums; those of the full ones before it here. A corrected or withdrawn spot has one block read again.

CREATE TABLE kept_block (
    sample          BIGINT NOT NULL REFERENCES sample (id),
    grouped_by      TEXT NOT NULL,
    block           BIGINT NOT NULL,            -- from 1; 0 for all full blocks together
    last_spot       BIGINT NOT NULL,            -- the last spot in it
    sha256          TEXT NOT NULL,              -- of the fields above and the sums
    bytes           BYTEA NOT NULL,             -- the sums
    PRIMARY KEY (sample, grouped_by, block)
);
