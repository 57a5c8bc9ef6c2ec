package surfeit.intake;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import surfeit.element.Spelling;

/**
 * Reads the time a spot was measured: RFC 3339 with an offset, or a local time in the stated zone.
 *
 * <p>Local times are {@code 2026-11-20T14:03:00}, with a blank in place of the T and without seconds too, and
 * {@code 20.11.2026 14:03}; dates with slashes are refused, since day and month cannot be told apart. A local time
 * without a zone is refused, and so is one that the zone's change of clocks skips or repeats. Thread-safe.
 */
public final class TimeReader {
    /** Before the first electron probe, and past any clock's excuse. */
    private static final int YEAR_MIN = 1900;
    private static final int YEAR_MAX = 2200;
    private static final Pattern OFFSET = Pattern.compile("(.*\\d)\\s?(Z|z|[+-]\\d\\d:\\d\\d)");
    private static final Pattern ISO = Pattern.compile("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d(:\\d\\d(\\.\\d{1,9})?)?");
    private static final Pattern BLANKS = Pattern.compile("[ t\u00A0]+");
    private static final DateTimeFormatter DAY_FIRST =
        DateTimeFormatter.ofPattern("d.M.uuuu'T'HH:mm[:ss]", Locale.ROOT).withResolverStyle(ResolverStyle.STRICT);

    private final Optional<ZoneId> zone;

    public TimeReader(Optional<ZoneId> zone) {
        this.zone = zone;
    }

    /** The time a text says. @throws Refusal if it is none, or local without a zone */
    public OffsetDateTime time(String raw) {
        String text = CellText.strip(raw);
        Matcher offset = OFFSET.matcher(text);
        if (offset.matches()) {
            LocalDateTime local = local(text, offset.group(1));
            try {
                return local.atOffset(ZoneOffset.of(offset.group(2).toUpperCase(Locale.ROOT)));
            } catch (DateTimeException e) {
                throw unreadable(text);
            }
        }
        LocalDateTime local = local(text, text);
        ZoneId id = zone.orElseThrow(() -> Refusal.expected(FaultCode.TIME_WITHOUT_ZONE,
            "a time with an offset, or a stated time zone", "the local time " + Spelling.quoted(text)));
        List<ZoneOffset> offsets = id.getRules().getValidOffsets(local);
        if (offsets.size() != 1) {
            throw Refusal.expected(FaultCode.TIME_WITHOUT_ZONE, "a time that is clear in " + id.getId(),
                Spelling.quoted(text) + ", which the change of clocks there "
                    + (offsets.isEmpty() ? "skips" : "repeats") + "; give it with its offset");
        }
        return local.atOffset(offsets.get(0));
    }

    private static LocalDateTime local(String whole, String text) {
        String withT = BLANKS.matcher(text).replaceFirst("T");
        try {
            LocalDateTime time =
                ISO.matcher(withT).matches() ? LocalDateTime.parse(withT) : LocalDateTime.parse(withT, DAY_FIRST);
            if (time.getYear() >= YEAR_MIN && time.getYear() <= YEAR_MAX) {
                return time;
            }
        } catch (DateTimeException e) {
            throw unreadable(whole);
        }
        throw Refusal.expected(FaultCode.VALUE_OUT_OF_RANGE, "a time in the years " + YEAR_MIN + " to " + YEAR_MAX,
            Spelling.quoted(whole));
    }

    private static Refusal unreadable(String text) {
        return Refusal.expected(FaultCode.VALUE_OUT_OF_RANGE, "a time such as 2026-11-20T14:03:00+01:00",
            Spelling.quoted(text));
    }
}
