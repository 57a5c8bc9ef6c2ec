package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.lab.Access;
import surfeit.lab.AuditEntry;
import surfeit.lab.IssuedToken;
import surfeit.lab.Occasion;
import surfeit.lab.PageRequest;
import surfeit.lab.Problem;
import surfeit.lab.Token;
import surfeit.lab.TokenRequest;
import surfeit.lab.TokenScope;
import surfeit.lab.TokenSecret;

/** Tokens on a real file: made once, kept as a hash, checked, expired, revoked. */
@OnBothEngines
class AccessTest {
    private static final Instant NOON = LabBench.NOON;

    @Parameter
    RecordEngine engine;
    @TempDir
    Path folder;
    private LabBench bench;
    private Access access;

    @BeforeEach
    void open() {
        bench = LabBench.in(engine, folder);
        access = bench.laboratory().access();
    }

    @AfterEach
    void close() {
        bench.close();
    }

    private IssuedToken issue(String name, int seed, TokenScope... scopes) {
        byte[] random = new byte[TokenSecret.RANDOM_BYTES];
        Arrays.fill(random, (byte) seed);
        return access.issue(new TokenRequest(name, Set.of(scopes), Optional.empty()), random, LabBench.ANNA);
    }

    @Test
    void a_record_is_open_until_the_first_token_is_made_and_never_again() {
        assertThat(access.isOpen()).isTrue();
        IssuedToken issued = issue("bench", 1, TokenScope.READ);
        assertThat(access.isOpen()).isFalse();
        access.revoke(issued.token().id(), LabBench.ANNA);
        assertThat(access.isOpen()).isFalse();
        assertThat(access.hasValidToken(NOON)).isFalse();
    }

    @Test
    void a_token_is_the_prefix_and_its_random_bytes() {
        IssuedToken issued = issue("bench", 0, TokenScope.READ);
        assertThat(issued.secret()).isEqualTo("lab_" + "A".repeat(43));
        assertThat(issued.token()).returns("tok_0001", Token::id).returns("bench", Token::name)
            .returns(NOON.plus(Duration.ofDays(365)), Token::expires);
        assertThat(issued.toString()).doesNotContain(issued.secret());
    }

    @Test
    void a_token_admits_until_it_expires_also_after_the_record_was_opened_again() {
        String secret = issue("bench", 1, TokenScope.READ, TokenScope.WRITE).secret();
        bench.close();
        open();
        Instant end = NOON.plus(Duration.ofDays(365));
        assertThat(access.admit(secret, end.minusSeconds(1)).scopes()).containsExactly(TokenScope.READ,
            TokenScope.WRITE);
        assertThat(LabBench.assertRefused(() -> access.admit(secret, end), Problem.TOKEN_REJECTED).detail())
            .isEqualTo("The token \"bench\" expired at " + end + ".");
    }

    @Test
    void a_revoked_token_admits_no_more_and_the_others_still_do() {
        IssuedToken bench1 = issue("bench", 1, TokenScope.READ);
        IssuedToken other = issue("other", 2, TokenScope.READ);
        Token revoked = access.revoke(bench1.token().id(), new Occasion("ben", NOON.plusSeconds(5)));
        assertThat(revoked.revoked()).contains(new Occasion("ben", NOON.plusSeconds(5)));
        LabBench.assertRefused(() -> access.admit(bench1.secret(), NOON), Problem.TOKEN_REJECTED);
        assertThat(access.admit(other.secret(), NOON).name()).isEqualTo("other");
        assertThat(access.revoke(bench1.token().id(), LabBench.ANNA)).isEqualTo(revoked);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "lab_", "lab_AQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQ",
        "LAB_AQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQE",
        "lab_AQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQF", "lab_AQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQE ",
        "AQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQE"})
    void a_text_that_is_not_the_token_to_the_letter_is_rejected(String guess) {
        assertThat(issue("bench", 1, TokenScope.READ).secret())
            .isEqualTo("lab_AQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQE");
        LabBench.assertRefused(() -> access.admit(guess, NOON), Problem.TOKEN_REJECTED);
    }

    @Test
    void the_secret_stands_nowhere_in_the_record() throws Exception {
        String secret = issue("bench", 7, TokenScope.ADMIN).secret();
        assertThat(recorded()).isNotEmpty().noneMatch(text -> text.contains(secret.substring(4)));
        bench.close();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                String bytes = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
                assertThat(bytes.contains(secret.substring(4))).as(file + " holds the secret").isFalse();
            }
        }
        open();
    }

    /** Every field of every row. */
    private List<String> recorded() {
        List<String> texts = new ArrayList<>();
        bench.store().read(access -> {
            var handle = ((SqlReadAccess) access).handle;
            bench.rowCounts().keySet().forEach(table ->
                handle.createQuery("SELECT * FROM " + table).mapToMap().forEach(row -> texts.add(row.toString())));
            return texts;
        });
        return texts;
    }

    @Test
    void making_and_revoking_stand_in_the_audit_without_the_secret() {
        IssuedToken issued = issue("bench", 1, TokenScope.READ, TokenScope.CORRECT);
        access.revoke("tok_0001", new Occasion("ben", NOON));
        List<AuditEntry> rows = bench.laboratory().auditLog().page(PageRequest.first(10)).items();
        assertThat(rows).extracting(AuditEntry::who).containsExactly("anna", "ben");
        assertThat(rows).extracting(AuditEntry::what).containsExactly("token made", "token revoked");
        assertThat(rows.get(0).detail())
            .isEqualTo("tok_0001 \"bench\": scopes read, correct; expires 2027-11-20T12:00:00Z")
            .doesNotContain(issued.secret());
        assertThat(bench.laboratory().auditLog().check().broken()).isEmpty();
    }

    @Test
    void a_name_can_be_given_again_once_its_token_is_not_valid_any_more() {
        issue("bench", 1, TokenScope.READ);
        LabBench.assertRefused(() -> issue("bench", 2, TokenScope.READ), Problem.NAME_INVALID);
        access.revoke("tok_0001", LabBench.ANNA);
        assertThat(issue("bench", 2, TokenScope.READ).token().id()).isEqualTo("tok_0002");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", " bench", "anyone", "two\nlines", "an\u200Bna", "\u202Eanna", "an\u00ADna",
        "12345678901234567890123456789012345678901234567890123456789012345"})
    void a_name_that_would_mislead_in_the_record_is_refused(String name) {
        LabBench.assertRefused(() -> issue(name, 1, TokenScope.READ), Problem.NAME_INVALID);
        assertThat(access.isOpen()).isTrue();
    }

    @Test
    void a_token_without_a_scope_or_with_an_impossible_end_is_refused() {
        byte[] random = new byte[TokenSecret.RANDOM_BYTES];
        LabBench.assertRefused(() -> issue("bench", 1), Problem.VALUE_OUT_OF_RANGE);
        for (Instant end : List.of(NOON, NOON.minusSeconds(1), NOON.plus(Duration.ofDays(3651)))) {
            TokenRequest wanted = new TokenRequest("bench", Set.of(TokenScope.READ), Optional.of(end));
            LabBench.assertRefused(() -> access.issue(wanted, random, LabBench.ANNA), Problem.VALUE_OUT_OF_RANGE);
        }
    }

    @Test
    void tokens_are_listed_in_pages_in_the_order_they_were_made() {
        for (int i = 1; i <= 5; i++) {
            issue("bench " + i, i, TokenScope.READ);
        }
        var first = access.tokens(PageRequest.first(2));
        var second = access.tokens(new PageRequest(2, first.next()));
        var third = access.tokens(new PageRequest(2, second.next()));
        assertThat(Stream.of(first, second, third).flatMap(page -> page.items().stream()).map(Token::name))
            .containsExactly("bench 1", "bench 2", "bench 3", "bench 4", "bench 5");
        assertThat(third.next()).isEmpty();
        LabBench.assertRefused(() -> access.token("tok_0009"), Problem.NOT_FOUND);
        LabBench.assertRefused(() -> access.revoke("spt_0001", LabBench.ANNA), Problem.NOT_FOUND);
    }
}
