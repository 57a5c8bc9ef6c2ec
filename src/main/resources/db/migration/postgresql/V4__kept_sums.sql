-- Sums of a sample's spots up to one of them, kept in the transaction that records the spots, so that an answer reads
-- the later spots only. They follow from the record and can be made anew from it.

CREATE TABLE kept_sums (
    sample          BIGINT NOT NULL REFERENCES sample (id),
    grouped_by      TEXT NOT NULL,
    sample_revision BIGINT NOT NULL,            -- the revision they stand at
    last_spot       BIGINT NOT NULL,            -- every spot of the sample up to this one is in them
    spot_count      BIGINT NOT NULL,            -- on record at that revision, reference spots too
    particle_count  BIGINT NOT NULL,
    sha256          TEXT NOT NULL,              -- of the fields above and the sums
    notes           BYTEA NOT NULL,             -- elements and negative values of each group, where groups are few
    sums            BYTEA,                      -- absent where the sample has too many particles for sums to be kept
    PRIMARY KEY (sample, grouped_by)
);

-- Reference spots are few, and every answer needs them all.
CREATE INDEX reference_spot_revision ON spot_revision (sample, reference, spot) WHERE reference = 1;
