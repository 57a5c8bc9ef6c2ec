package surfeit.http.board;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** A time for eyes: to the minute, in UTC and saying so; the script turns it to the reader's own zone. */
final class Moment {
    private static final DateTimeFormatter SHOWN = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT)
        .withZone(ZoneOffset.UTC);

    private Moment() {
    }

    static void write(Instant time, Markup page) {
        page.element("time", SHOWN.format(time) + " UTC", "datetime", time.toString());
    }
}
