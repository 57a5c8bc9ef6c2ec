package surfeit.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.composition.AlloyCatalogue;
import surfeit.element.Element;
import surfeit.lab.Recount;
import surfeit.lab.Recounted;
import surfeit.lab.SpotFilter;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.blocks.SpotPlaces;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/** What the answer for a million spots costs, beside that for a thousand and beside the engine's own sums. Invented numbers. */
@Tag("bench")
class SegregationBenchmarkTest {
    private static final int MANY = Integer.getInteger("surfeit.bench.spots", 1_000_000);
    private static final int FEW = 1000;
    private static final int PARTICLES = 20;
    private static final int ROUNDS = 5;
    private static BenchService service;

    @TempDir
    static Path folder;

    @BeforeAll
    static void record() {
        service = new BenchService();
        for (int spots : new int[] {FEW, MANY}) {
            service.put("/v1/samples/of" + spots, BenchService.SAMPLE);
            service.post("/v1/samples/of" + spots + "/spots", "text/csv", BenchService.table("s", spots, PARTICLES));
        }
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    private static double millis(Runnable work) {
        long start = System.nanoTime();
        work.run();
        return (System.nanoTime() - start) / 1e6;
    }

    private static double read(int spots) {
        return millis(() -> service.get("/v1/samples/of" + spots + "/segregation"));
    }

    /** All sums kept of a sample, made again from its spots and compared, as the command does it. */
    private static void recount() {
        List<Recounted> found = new ArrayList<>();
        service.store().read(access -> {
            new Recount(AlloyCatalogue.packaged(), MethodSettings.DEFAULT_DETECTION_LIMIT_MASS_FRACTION)
                .of(access, "of" + MANY, found::add);
            return found;
        });
        assertThat(found).hasSize(GroupBy.values().length).allMatch(one -> one.spotCount() == MANY && one.isRight());
    }

    /** The answer from every spot, read one by one, whatever the service keeps beside them. */
    private static Interpretation fromEverySpot(int spots) {
        String name = "of" + spots;
        return service.laboratory().interpret(service.laboratory().sample(name).sample(), new SpotSource() {
            @Override
            public List<Spot> references() {
                return List.of();
            }

            @Override
            public void forEachPlace(SpotPlaces places) {
                long[] place = {0};
                service.laboratory().forEachSpot(name, SpotFilter.ALL, stored ->
                    places.next(++place[0], stored.spot(), true));
            }
        }, GroupBy.FEATURE).interpretation();
    }

    @Test
    void an_answer_for_many_spots_beside_one_for_few() throws Exception {
        InTurns turns = InTurns.of(ROUNDS, () -> read(FEW), () -> read(MANY));
        Goal.SEGREGATION.measured(InTurns.digits(turns.ceiling()) + " ms", InTurns.digits(turns.ours()) + " ms",
            InTurns.digits(turns.ratio()), turns.ratio() <= 1.2);
        double difference = difference(service.laboratory().segregation("of" + MANY, GroupBy.FEATURE).interpretation(),
            fromEverySpot(MANY));
        Goal.RECOUNT_EQUAL.measured("", InTurns.digits(difference), "", difference <= 1e-9);
        assertThat(difference).isFinite();
    }

    private static double difference(Interpretation one, Interpretation other) {
        double[] these = numbers(one);
        double[] those = numbers(other);
        assertThat(these).hasSameSizeAs(those);
        double largest = 0;
        for (int i = 0; i < these.length; i++) {
            largest = Math.max(largest, Math.abs(these[i] - those[i]) / Math.max(Math.abs(those[i]), 1e-300));
        }
        return largest;
    }

    private static double[] numbers(Interpretation interpretation) {
        List<Double> all = new ArrayList<>();
        for (GroupFinding group : interpretation.groups()) {
            for (ElementFinding element : group.elements()) {
                all.addAll(List.of(element.outcome().mean(), element.outcome().low(), element.outcome().high(),
                    element.outcome().uncertainty(), element.outcome().uncertaintyRandom()));
            }
        }
        return all.stream().mapToDouble(Double::doubleValue).toArray();
    }

    @Test
    void a_full_recount_beside_the_group_by_of_the_engine() throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("rows.db"))) {
            writeRows(connection);
            InTurns turns = InTurns.of(ROUNDS, () -> millis(() -> groupBy(connection)), () -> millis(SegregationBenchmarkTest::recount));
            Goal.RECOUNT.measured(InTurns.digits(turns.ceiling()) + " ms", InTurns.digits(turns.ours()) + " ms",
                InTurns.digits(turns.ratio()), turns.ratio() <= 0.2);
            assertThat(turns.ours()).isPositive();
        }
    }

    /** The same spots with a row for every element. */
    private static void writeRows(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("CREATE TABLE reading (spot INTEGER, feature TEXT, particle TEXT, element TEXT, value REAL)");
        }
        connection.setAutoCommit(false);
        try (PreparedStatement insert = connection.prepareStatement("INSERT INTO reading VALUES (?, ?, ?, ?, ?)")) {
            int[] number = {0};
            service.laboratory().forEachSpot("of" + MANY, SpotFilter.ALL, stored -> {
                try {
                    number[0]++;
                    for (Map.Entry<Element, ReportedValue> value : stored.spot().values().entrySet()) {
                        insert.setInt(1, number[0]);
                        insert.setString(2, stored.spot().feature().orElse(""));
                        insert.setString(3, stored.spot().particle().orElse(""));
                        insert.setString(4, value.getKey().symbol());
                        insert.setDouble(5, ((ReportedValue.Measured) value.getValue()).fraction());
                        insert.addBatch();
                    }
                    if (number[0] % 1000 == 0) {
                        insert.executeBatch();
                    }
                } catch (SQLException e) {
                    throw new IllegalStateException(e);
                }
            });
            insert.executeBatch();
        }
        connection.commit();
    }

    private static void groupBy(Connection connection) {
        try (Statement statement = connection.createStatement(); ResultSet groups = statement.executeQuery(
            "SELECT feature, particle, element, count(*), avg(value), sum(value * value) FROM reading"
                + " GROUP BY feature, particle, element")) {
            int count = 0;
            while (groups.next()) {
                count++;
            }
            assertThat(count).isEqualTo(2 * PARTICLES);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
