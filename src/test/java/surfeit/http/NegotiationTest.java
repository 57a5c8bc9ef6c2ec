package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Which form a client gets for what it accepts; the cases follow RFC 9110, section 12.5.1. */
class NegotiationTest {
    private static final List<Form> OFFERED = List.of(Form.JSON, Form.CSV, Form.MARKDOWN);

    @Test
    void without_a_wish_the_preferred_form_is_given() {
        assertThat(Negotiation.choose(OFFERED, null)).contains(Form.JSON);
        assertThat(Negotiation.choose(OFFERED, "")).contains(Form.JSON);
        assertThat(Negotiation.choose(OFFERED, "*/*")).contains(Form.JSON);
    }

    @Test
    void the_highest_quality_wins_and_the_order_of_the_offer_decides_between_equals() {
        assertThat(Negotiation.choose(OFFERED, "text/csv;q=0.9, text/markdown")).contains(Form.MARKDOWN);
        assertThat(Negotiation.choose(OFFERED, "text/markdown, text/csv")).contains(Form.CSV);
        assertThat(Negotiation.choose(OFFERED, "text/*;q=0.5, application/json;q=0.4")).contains(Form.CSV);
    }

    @Test
    void the_closest_range_counts_for_a_form_even_where_a_wider_one_is_kinder() {
        assertThat(Negotiation.choose(OFFERED, "*/*, application/json;q=0")).contains(Form.CSV);
        assertThat(Negotiation.choose(OFFERED, "text/*, text/csv;q=0.1, application/json;q=0.5"))
            .contains(Form.MARKDOWN);
    }

    @Test
    void a_browser_gets_a_page_where_there_is_one() {
        String browser = "text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8";
        assertThat(Negotiation.choose(List.of(Form.JSON, Form.HTML), browser)).contains(Form.HTML);
        assertThat(Negotiation.choose(OFFERED, browser)).contains(Form.JSON);
    }

    @Test
    void nothing_is_given_where_nothing_fits() {
        assertThat(Negotiation.choose(OFFERED, "image/png")).isEmpty();
        assertThat(Negotiation.choose(OFFERED, "application/json;q=0")).isEmpty();
        assertThat(Negotiation.choose(OFFERED, "application/json;q=broken")).isEmpty();
        assertThat(Negotiation.choose(OFFERED, ";;,/,")).isEmpty();
    }

    @Test
    void letters_and_blanks_do_not_matter() {
        assertThat(Negotiation.choose(OFFERED, " Text/CSV ; Q=1 ")).contains(Form.CSV);
    }
}
