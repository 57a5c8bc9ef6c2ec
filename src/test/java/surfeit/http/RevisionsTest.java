package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import org.junit.jupiter.api.Test;
import surfeit.lab.Expectation;

/** ETags made of revisions, and what conditional requests say with them. */
class RevisionsTest {

    @Test
    void a_tag_holds_the_revisions_and_the_rest() {
        assertThat(Revisions.tag("salt", 7, 0)).isEqualTo("\"7-0.salt\"");
    }

    @Test
    void if_none_match_names_a_tag_weakly_or_strongly_alone_or_in_a_list() {
        String tag = Revisions.tag("salt", 7);
        assertThat(Revisions.namesTag(tag, tag)).isTrue();
        assertThat(Revisions.namesTag("\"x\", W/" + tag, tag)).isTrue();
        assertThat(Revisions.namesTag("*", tag)).isTrue();
        assertThat(Revisions.namesTag("\"7.other\"", tag)).isFalse();
        assertThat(Revisions.namesTag(null, tag)).isFalse();
    }

    @Test
    void if_match_names_revisions_and_a_weak_tag_never_matches() {
        assertThat(Revisions.expectation("\"7.a\", \"8-2.b\"", null)).isEqualTo(Expectation.revision(7, 8));
        assertThat(Revisions.expectation("W/\"7.a\"", null)).isEqualTo(Expectation.revision());
        assertThat(Revisions.expectation("nonsense, \"\", \"x7\", \"99999999999999999999\"", null))
            .isEqualTo(Expectation.revision());
        assertThat(Revisions.expectation("*", null)).isEqualTo(Expectation.EXISTING);
        assertThat(Revisions.expectation(null, "*")).isEqualTo(Expectation.NEW);
        assertThat(Revisions.expectation(null, null)).isEqualTo(Expectation.NONE);
    }

    @Test
    void program_settings_and_form_are_part_of_every_tag() {
        Clock clock = Clock.systemUTC();
        ServiceFacts facts = new ServiceFacts(ServerSettings.DEFAULT, clock, "1.0", () -> "limit 0.003");
        assertThat(facts.salt(Form.JSON)).isNotEqualTo(facts.salt(Form.CSV))
            .isNotEqualTo(new ServiceFacts(ServerSettings.DEFAULT, clock, "1.1", () -> "limit 0.003").salt(Form.JSON))
            .isNotEqualTo(new ServiceFacts(ServerSettings.DEFAULT, clock, "1.0", () -> "limit 0.001").salt(Form.JSON))
            .isEqualTo(new ServiceFacts(ServerSettings.DEFAULT, clock, "1.0", () -> "limit 0.003").salt(Form.JSON));
    }
}
