package surfeit.storage;

import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.spot.Counts;
import surfeit.spot.ReportedValue;

/** One reported value in bytes, within its spot. */
final class ValueCodec {
    private static final int KIND = 3;
    private static final int MEASURED = 0;
    private static final int BELOW_LIMIT = 1;
    private static final int NOT_DETECTED = 2;
    private static final int NOT_REPORTED = 3;

    private static final int UNCERTAINTY = 4;
    private static final int COUNTS = 8;
    private static final int LIMIT = 16;
    private static final int LINE = 32;

    private ValueCodec() {
    }

    static void write(PackedWriter out, ReportedValue value) {
        if (value instanceof ReportedValue.Measured measured) {
            out.octet(MEASURED | (measured.uncertainty().isPresent() ? UNCERTAINTY : 0)
                | (measured.counts().isPresent() ? COUNTS : 0) | (measured.limit().isPresent() ? LIMIT : 0)
                | (measured.line().isPresent() ? LINE : 0));
            out.text(measured.asReported()).real(measured.fraction()).real(measured.uncertainty());
            measured.counts().ifPresent(counts -> out.real(counts.net()).real(counts.background()));
            out.real(measured.limit()).text(measured.line());
        } else if (value instanceof ReportedValue.BelowLimit below) {
            out.octet(BELOW_LIMIT).text(below.asReported()).real(below.limitFraction());
        } else if (value instanceof ReportedValue.NotDetected absent) {
            out.octet(NOT_DETECTED | (absent.limitFraction().isPresent() ? LIMIT : 0)).text(absent.asReported())
                .real(absent.limitFraction());
        } else {
            out.octet(NOT_REPORTED);
        }
    }

    static ReportedValue read(PackedReader in) {
        int head = in.octet();
        return switch (head & KIND) {
            case MEASURED -> measured(in, head);
            case BELOW_LIMIT -> belowLimit(in);
            case NOT_DETECTED -> notDetected(in, head);
            default -> new ReportedValue.NotReported();
        };
    }

    private static ReportedValue measured(PackedReader in, int head) {
        String asReported = in.text();
        double fraction = in.real();
        OptionalDouble uncertainty = in.real((head & UNCERTAINTY) != 0);
        Optional<Counts> counts =
            (head & COUNTS) != 0 ? Optional.of(new Counts(in.real(), in.real())) : Optional.empty();
        OptionalDouble limit = in.real((head & LIMIT) != 0);
        Optional<String> line = in.text((head & LINE) != 0);
        return new ReportedValue.Measured(fraction, asReported, uncertainty, counts, limit, line);
    }

    private static ReportedValue belowLimit(PackedReader in) {
        String asReported = in.text();
        return new ReportedValue.BelowLimit(in.real(), asReported);
    }

    private static ReportedValue notDetected(PackedReader in, int head) {
        String asReported = in.text();
        return new ReportedValue.NotDetected(in.real((head & LIMIT) != 0), asReported);
    }
}
