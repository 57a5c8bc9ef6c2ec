package surfeit.storage;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import surfeit.lab.KeptToken;
import surfeit.lab.Occasion;
import surfeit.lab.PublicId;
import surfeit.lab.Token;
import surfeit.lab.TokenScope;

/** Tokens in the database, each known by the SHA-256 of its secret. Bound to one transaction; not thread-safe. */
final class SqlTokens {
    private static final String BETWEEN_SCOPES = " ";

    private final Handle handle;

    SqlTokens(Handle handle) {
        this.handle = handle;
    }

    List<KeptToken> list() {
        return PlainSql.list(handle, "SELECT * FROM token ORDER BY id", SqlTokens::token);
    }

    /** Hashes are hex digits, so that those which begin alike stand between the beginning and the same with a {@code g}. */
    Optional<KeptToken> find(String hashBeginning) {
        return PlainSql.find(handle, "SELECT * FROM token WHERE sha256 >= ? AND sha256 < ?", SqlTokens::token,
            hashBeginning, hashBeginning + "g");
    }

    boolean exist() {
        return PlainSql.number(handle, "SELECT count(*) FROM (SELECT id FROM token LIMIT 1) AS one") > 0;
    }

    Token add(String name, Set<TokenScope> scopes, Instant expires, String sha256, Occasion occasion) {
        long id = handle.createQuery("SELECT coalesce(max(id), 0) + 1 FROM token").mapTo(Long.class).one();
        handle.createUpdate("""
                INSERT INTO token (id, name, sha256, scopes, created, created_by, expires)
                VALUES (:id, :name, :sha256, :scopes, :created, :by, :expires)""")
            .bind("id", id).bind("name", name).bind("sha256", sha256)
            .bind("scopes", new TreeSet<>(scopes).stream().map(TokenScope::word)
            .collect(Collectors.joining(BETWEEN_SCOPES)))
            .bind("created", occasion.when().toString()).bind("by", occasion.who()).bind("expires", expires.toString())
            .execute();
        return new Token(PublicId.of(PublicId.TOKEN, id), name, scopes, occasion, expires, Optional.empty());
    }

    void revoke(long number, Occasion occasion) {
        handle.createUpdate("UPDATE token SET revoked = :when, revoked_by = :by WHERE id = :id")
            .bind("id", number).bind("when", occasion.when().toString()).bind("by", occasion.who()).execute();
    }

    private static KeptToken token(ResultSet row) throws SQLException {
        Set<TokenScope> scopes = Arrays.stream(row.getString("scopes").split(BETWEEN_SCOPES))
            .map(word -> TokenScope.ofWord(word).orElseThrow()).collect(Collectors.toSet());
        String revoked = row.getString("revoked");
        return new KeptToken(new Token(PublicId.of(PublicId.TOKEN, row.getLong("id")), row.getString("name"), scopes,
            new Occasion(row.getString("created_by"), Instant.parse(row.getString("created"))),
            Instant.parse(row.getString("expires")),
            revoked == null ? Optional.empty() : Optional.of(new Occasion(row.getString("revoked_by"),
            Instant.parse(revoked)))),
            row.getString("sha256"));
    }
}
