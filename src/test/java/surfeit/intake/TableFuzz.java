package surfeit.intake;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import surfeit.fuzz.Spent;

/**
 * A table of any bytes: reading ends soon and in bounded memory; what is taken stands in the table, and every row is
 * taken, refused or left out.
 *
 * <p>An input may begin with a line of what the sender states: {@code ?delimiter=;&decimal=,&unit=at%}.
 */
public final class TableFuzz {
    private static final String QUOTED = "\"[^\"]*\"|\\d+";

    private TableFuzz() {
    }

    /** Everything an intake was told of one upload. */
    static final class Heard implements SpotSink {
        private final List<ReadSpot> spots = new ArrayList<>();
        private final List<RejectedSpot> rejected = new ArrayList<>();
        private final StringBuilder givenBack = new StringBuilder();
        private final List<RejectedTable> table = new ArrayList<>();

        @Override
        public void begin(TableHead head) {
            table.add(new RejectedTable(head));
            givenBack.append(table.get(0).header());
        }

        @Override
        public void accept(ReadSpot spot) {
            spots.add(spot);
        }

        @Override
        public void reject(RejectedSpot spot) {
            rejected.add(spot);
            givenBack.append(table.get(0).lines(spot));
        }

        List<ReadSpot> spots() {
            return spots;
        }

        List<RejectedSpot> rejected() {
            return rejected;
        }

        String givenBack() {
            return givenBack.toString();
        }
    }

    /** Where the search is guided by what it reaches, it begins here. */
    public static void fuzzerTestOneInput(byte[] input) throws Exception {
        run(input);
    }

    static Set<String> run(byte[] input) throws Exception {
        int end = input.length > 0 && input[0] == '?' ? lineEnd(input) : 0;
        byte[] table = Arrays.copyOfRange(input, end, input.length);
        IntakeOptions options;
        try {
            options = options(new String(input, 0, end, StandardCharsets.UTF_8).strip());
        } catch (IllegalArgumentException e) {
            return Set.of("stated what cannot be: " + e.getMessage().replaceAll(QUOTED, "…"));
        }
        Heard heard = new Heard();
        SpotIntake intake = new SpotIntake(options.limits(), heard);
        Spent spent = new Spent();
        SpotTable.read(Upload.of(table), options, intake);
        spent.requireBounded(table.length);
        new TableOracle(table, options, heard, intake.report()).check();
        return outcome(heard, intake.report());
    }

    private static int lineEnd(byte[] input) {
        for (int i = 0; i < input.length; i++) {
            if (input[i] == '\n') {
                return i + 1;
            }
        }
        return input.length;
    }

    private static IntakeOptions options(String line) {
        StatedDialect stated = StatedDialect.NOTHING;
        IntakeOptions options = IntakeOptions.DEFAULT;
        for (String statement : line.isEmpty() ? new String[0] : line.substring(1).split("&")) {
            int equals = statement.indexOf('=');
            String value = statement.substring(equals + 1);
            switch (statement.substring(0, Math.max(equals, 0))) {
                case "delimiter" -> stated = stated.withDelimiter(value);
                case "decimal" -> stated = stated.withDecimal(value);
                case "charset" -> stated = stated.withCharset(value);
                case "time_zone" -> stated = stated.withTimeZone(value);
                case "unit" -> stated = stated.withUnit(value);
                case "u_level" -> options = options.withULevel(value.equals("3") ? 3 : value.equals("2") ? 2 : 1);
                default -> { }
            }
        }
        return options.withStated(stated);
    }

    /** What was seen, without what differs from one table to the next of the same kind. */
    private static Set<String> outcome(Heard heard, IntakeReport report) {
        TreeSet<String> words = new TreeSet<>();
        report.faults().forEach(fault -> words.add(fault.code() + " " + fault.detail().replaceAll(QUOTED, "…")));
        report.leftOut().forEach(part -> words.add(part.reason().replaceAll(QUOTED, "…")));
        heard.spots().forEach(spot -> spot.spot().values().values()
            .forEach(value -> words.add(value.getClass().getSimpleName())));
        report.dialect().ifPresent(dialect -> words.add(report.tableRefused() + " " + dialect.charset() + " "
            + dialect.delimiter() + dialect.decimal() + dialect.layout()));
        return words;
    }
}
