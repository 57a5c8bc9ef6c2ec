package surfeit.intake;

import java.math.BigDecimal;
import java.nio.charset.Charset;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import surfeit.element.Element;
import surfeit.element.Spelling;
import surfeit.fuzz.PlainTable;
import surfeit.spot.Conditions;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/** Holds what was made of a table against the table itself, read a second time as a {@link PlainTable}. */
final class TableOracle {
    private static final Pattern PLAIN_HEADER = Pattern.compile("(Ag|Cu|Sn|Bi|Al|Si|Zn|O|C) (at|wt)%");

    private final IntakeOptions options;
    private final TableFuzz.Heard heard;
    private final IntakeReport report;
    private final PlainTable table;
    private final Set<Character> marks = new HashSet<>();

    TableOracle(byte[] bytes, IntakeOptions options, TableFuzz.Heard heard, IntakeReport report) {
        this.options = options;
        this.heard = heard;
        this.report = report;
        this.table = report.dialect().map(dialect -> PlainTable.of(text(bytes, dialect.charset()), dialect.delimiter()))
            .orElse(PlainTable.of("", ','));
    }

    private static String text(byte[] bytes, Charset charset) {
        String text = new String(bytes, charset);
        return text.startsWith("\uFEFF") ? text.substring(1) : text;
    }

    void check() {
        require(report.acceptedCount() == heard.spots().size(), "the count of spots");
        require(report.isClean() == report.faults().isEmpty(), "the count of faults");
        require(report.acceptedCount() + report.faultCount() > 0, "neither a spot nor a fault");
        require(heard.spots().isEmpty() || report.dialect().isPresent(), "spots of no dialect");
        if (report.tableRefused()) {
            return; // nothing of it may be kept, whatever was handed on before
        }
        if (isTurned()) {
            TurnedOracle.check(heard, report, table);
        }
        heard.spots().forEach(this::checkSpot);
        require(marks.size() < 2, "two decimal marks in one table");
        if (!isTurned()) {
            checkEveryRowIsAccountedFor();
        }
        RejectedRows.check(heard, report, table);
    }

    private boolean isTurned() {
        return report.dialect().flatMap(CsvDialect::layout).equals(Optional.of(CsvDialect.Layout.TURNED));
    }

    private void checkSpot(ReadSpot read) {
        List<CsvRow> rows = isTurned() ? List.of() : read.rows();
        rows.forEach(row -> require(table.row(row.line()).equals(row.cells()), "the cells of line " + row.line()));
        List<String> cells = Stream.concat(rows.stream().flatMap(row -> table.row(row.line()).stream()),
            isTurned() ? TurnedOracle.column(read, table) : Stream.of()).map(PlainTable::stripped).toList();
        Spot spot = read.spot();
        Stream.of(Optional.of(spot.label()), spot.particle(), spot.feature(), spot.session()).flatMap(Optional::stream)
            .forEach(name -> require(cells.stream().map(Spelling::composed).anyMatch(cell -> cell.equals(name)
                || cell.equals("'" + name)), "the name " + name));
        spot.values().values().forEach(value -> checkValue(value, cells));
        Conditions conditions = spot.conditions();
        Stream.of(conditions.beamEnergyKev(), conditions.liveTimeS(), conditions.featureSizeUm(), conditions.tiltDeg())
            .forEach(number -> requireNumber(number, cells));
        requirePercent(conditions.rawTotal(), cells, 1);
        spot.acquiredTime().ifPresent(time -> require(cells.stream().anyMatch(cell ->
            cell.contains(String.valueOf(time.getYear())) && cell.contains(String.format("%02d:%02d", time.getHour(),
                time.getMinute()))), "the time " + time));
        checkPlainColumns(read);
    }

    private void checkValue(ReportedValue value, List<String> cells) {
        String text = value.asReported();
        require(text.isEmpty() == (value instanceof ReportedValue.NotReported), "the text of " + value);
        require(text.isEmpty() || cells.contains(text), "the text " + text);
        if (value instanceof ReportedValue.Measured measured) {
            BigDecimal number = PlainTable.number(withoutSign(text))
                .orElseThrow(() -> new AssertionError(text + " is no number"));
            require(measured.fraction() == PlainTable.fraction(number, 1), "the value of " + text);
            text.chars().filter(c -> c == '.' || c == ',').forEach(c -> marks.add((char) c));
            requirePercent(measured.uncertainty(), cells, 3);
            requirePercent(measured.limit(), cells, 1);
            measured.counts().ifPresent(counts -> {
                requireNumber(OptionalDouble.of(counts.net()), cells);
                requireNumber(OptionalDouble.of(counts.background()), cells);
            });
        } else if (value instanceof ReportedValue.BelowLimit below) {
            require("<\u2264".indexOf(text.charAt(0)) >= 0, "the limit " + text);
            BigDecimal number = PlainTable.number(withoutSign(text.replaceFirst("^[<\u2264]=?", ""))).orElseThrow();
            require(below.limitFraction() == PlainTable.fraction(number, 1), "the limit " + text);
        } else if (value instanceof ReportedValue.NotDetected not) {
            requirePercent(not.limitFraction(), cells, 1);
        }
    }

    /** Under a header that can mean one thing only, every cell is the value of just its element. */
    private void checkPlainColumns(ReadSpot read) {
        if (!report.dialect().orElseThrow().layout().equals(Optional.of(CsvDialect.Layout.WIDE))) {
            return;
        }
        List<String> header = headerCells();
        List<String> cells = table.row(read.rows().get(0).line());
        for (int i = 0; i < header.size(); i++) {
            String name = PlainTable.stripped(header.get(i));
            String symbol = name.split(" ")[0];
            boolean alone = header.stream().filter(other -> other.contains(symbol)).count() == 1;
            if (PLAIN_HEADER.matcher(name).matches() && alone) {
                ReportedValue value = read.spot().values().get(Element.of(symbol));
                String cell = PlainTable.stripped(cells.get(i));
                require(value != null, "nothing of " + name);
                require(value.asReported().equals(cell) || PlainTable.number(cell).isEmpty() && value.asReported().isEmpty(),
                    "the cell " + cell + " under " + name + " became " + value);
            }
        }
    }

    private List<String> headerCells() {
        List<Long> lines = table.linesAfter(0);
        Set<Long> above = report.leftOut().stream().filter(part -> Set.of("above the header",
            "units of the columns", "unit of the table").contains(part.reason())).map(part -> ((LeftOut.Row) part).line()).collect(Collectors.toSet());
        boolean sepLine = String.join("", table.row(lines.get(0))).replace("\"", "").toLowerCase(java.util.Locale.ROOT)
            .startsWith("sep=");
        return table.row(lines.subList(sepLine ? 1 : 0, lines.size()).stream().filter(line -> !above.contains(line))
            .findFirst().orElseThrow());
    }

    private void checkEveryRowIsAccountedFor() {
        if (report.leftOutCount() > report.leftOut().size()) {
            return;
        }
        Set<Long> told = new HashSet<>();
        heard.spots().forEach(spot -> spot.rows().forEach(row -> once(told, row.line())));
        heard.rejected().forEach(spot -> spot.rows().forEach(row -> once(told, row.line())));
        report.leftOut().forEach(part -> {
            if (part instanceof LeftOut.Row row) {
                once(told, row.line());
            }
        });
        List<Long> lines = table.linesAfter(0);
        long header = lines.stream().filter(line -> table.row(line).equals(headerCells())).findFirst().orElseThrow();
        for (long line : table.linesAfter(header)) {
            require(told.contains(line), "line " + line + " is lost");
        }
    }

    private static void once(Set<Long> told, long line) {
        require(told.add(line), "line " + line + " is told of twice");
    }

    private static void requireNumber(OptionalDouble number, List<String> cells) {
        require(number.isEmpty() || cells.stream().flatMap(cell -> PlainTable.number(cell).stream())
            .anyMatch(found -> found.doubleValue() == number.getAsDouble()), "the number " + number);
    }

    private static String withoutSign(String text) {
        return PlainTable.stripped(text.replaceFirst("[%\uFF05]$", ""));
    }

    private static void requirePercent(OptionalDouble fraction, List<String> cells, int levels) {
        require(fraction.isEmpty() || cells.stream().flatMap(cell -> PlainTable.number(withoutSign(cell)).stream())
            .anyMatch(found -> Stream.iterate(1, level -> level <= levels, level -> level + 1)
                .anyMatch(level -> PlainTable.fraction(found, level) == fraction.getAsDouble())),
            "the percentage " + fraction);
    }

    static void require(boolean holds, String what) {
        if (!holds) {
            throw new AssertionError(what);
        }
    }
}
