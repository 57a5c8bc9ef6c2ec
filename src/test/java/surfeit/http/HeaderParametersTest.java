package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Parameters of header fields; the cases follow RFC 9110, section 5.6.6, and RFC 6266, section 5. */
class HeaderParametersTest {

    @Test
    void a_parameter_is_found_with_and_without_quotes_in_any_letters() {
        assertThat(HeaderParameters.of("text/csv; header=present; Charset = utf-8", "charset")).contains("utf-8");
        assertThat(HeaderParameters.of("text/csv;charset=\"utf-8\"", "charset")).contains("utf-8");
        assertThat(HeaderParameters.of("text/csv; charset=", "charset")).isEmpty();
        assertThat(HeaderParameters.of("text/csv; charset", "charset")).isEmpty();
        assertThat(HeaderParameters.of("charset=utf-8", "charset")).isEmpty();
        assertThat(HeaderParameters.of(null, "charset")).isEmpty();
    }

    @Test
    void quotes_may_hold_what_parts_parameters() {
        String field = "attachment; a=\"x; filename=no\"; filename=\"lot 7; a=b \\\"c\\\".csv\"; z=1";
        assertThat(HeaderParameters.fileName(field)).contains("lot 7; a=b \"c\".csv");
        assertThat(HeaderParameters.of(field, "z")).contains("1");
        assertThat(HeaderParameters.fileName("attachment; filename=\"C:\\lab\\7.csv\"")).contains("C:\\lab\\7.csv");
        assertThat(HeaderParameters.fileName("attachment; filename=\"open.csv")).contains("\"open.csv");
    }

    @Test
    void a_name_in_utf_8_goes_first_where_it_can_be_read() {
        assertThat(HeaderParameters.fileName("attachment; filename=\"rates.csv\"; filename*=UTF-8''%e2%82%ac%20rates+.csv"))
            .contains("\u20ac rates+.csv");
        assertThat(HeaderParameters.fileName("attachment; filename*=UTF-8''a%0ab.csv; filename=\"plain.csv\""))
            .contains("plain.csv");
        assertThat(HeaderParameters.fileName("attachment; filename*=UTF-8''%zz; filename=\"plain.csv\"")).contains("plain.csv");
        assertThat(HeaderParameters.fileName("attachment; filename*=iso-8859-1'en'%A3.csv")).isEmpty();
    }
}
