-- Who may use the service. A token's secret stands nowhere; a revoked token stays, for the audit names it.

CREATE TABLE token (
    id              BIGINT PRIMARY KEY,
    name            TEXT NOT NULL,
    sha256          TEXT COLLATE "C" NOT NULL UNIQUE,  -- of the secret, in hex
    scopes          TEXT NOT NULL,              -- words with a blank between
    created         TEXT NOT NULL,
    created_by      TEXT NOT NULL,
    expires         TEXT NOT NULL,
    revoked         TEXT,
    revoked_by      TEXT
);
