package surfeit.http;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import surfeit.http.json.SampleJson;
import surfeit.intake.IntakeOptions;
import surfeit.lab.Expectation;
import surfeit.lab.ImportOptions;
import surfeit.lab.KeptAnswer;
import surfeit.lab.Laboratory;
import surfeit.lab.Occasion;
import surfeit.lab.RepeatKey;
import surfeit.lab.Upload;

/** Invented lots of a powder lab: Ag-Cu brazing powder, Sn-Bi solder spheres, Al-Si powder, of every verdict. */
final class InventedLots {
    private static final String[][] KINDS = {{"ag-cu-eutectic", "Ag", "Cu", "59.75", "braze",
        "brazing powder 20-45 um"},
        {"bi58sn42", "Sn", "Bi", "56.0", "solder", "solder spheres 300 um"},
        {"al-si-eutectic", "Al", "Si", "87.8", "alsi", "powder 20-63 um"}};
    private static final int LOTS_AT_ONCE = 1000;
    private static final String[] FEATURES = {"matrix", "dark patch", "rim", "satellite"};

    private InventedLots() {
    }

    /** One lot: its name, its description as JSON, its spots as a table; the same number gives the same lot. */
    record Lot(String name, String sample, String table) {
    }

    static Lot lot(int number) {
        Random random = new Random(20_261_120L + number);
        String[] kind = KINDS[number % KINDS.length];
        String sample = "{\"alloy\": \"" + kind[0] + "\", \"beam_energy_kev\": " + (10 + 5 * random.nextInt(3))
            + ", \"accuracy_class\": \"" + (random.nextBoolean() ? "standardless" : "standards-based")
            + "\", \"description\": \"invented: " + kind[5] + "\"}";
        StringBuilder table = new StringBuilder("label;particle;feature;session;" + kind[1] + " at%;" + kind[2]
            + " at%\n");
        double nominal = Double.parseDouble(kind[3]);
        int features = 1 + random.nextInt(FEATURES.length);
        int particles = 1 + random.nextInt(5);
        int label = 0;
        for (int feature = 0; feature < features; feature++) {
            double shift = feature == 0 ? 0.02 * random.nextGaussian() : 0.3 * random.nextGaussian();
            for (int particle = 1; particle <= particles; particle++) {
                for (int spot = 0; spot < 2; spot++) {
                    double share = Math.max(1, Math.min(99, nominal * (1 + shift) + 1.2 * random.nextGaussian()));
                    table.append(String.format(Locale.ROOT, "%d;P%d;%s;s1;%.2f;%.2f%n", ++label, particle,
                        FEATURES[feature], share, 100 - share));
                }
            }
        }
        return new Lot(String.format(Locale.ROOT, "%s-lot-%04d", kind[4], number), sample,
            table.toString().replace("\r", ""));
    }

    /**
     * Puts many lots on record in a few large transactions; only those after the first {@code withoutSpots} have spots.
     */
    static void recordMany(Laboratory laboratory, int count, int withoutSpots, Instant when) {
        for (int from = 1; from <= count; from += LOTS_AT_ONCE) {
            int first = from;
            laboratory.once(new RepeatKey("test", "lots-" + from, "lots"), new Occasion("test", when), lab -> {
                for (int number = first; number < first + LOTS_AT_ONCE && number <= count; number++) {
                    record(lab, lot(number), number > withoutSpots, new Occasion("test", when.plusMillis(number)));
                }
                return new KeptAnswer(200, Map.of(), new byte[0]);
            });
        }
    }

    private static void record(Laboratory lab, Lot lot, boolean spots, Occasion occasion) {
        try {
            lab.describe(lot.name(), SampleJson.read(new ByteArrayInputStream(bytes(lot.sample()))), Expectation.NONE,
                occasion);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (!spots) {
            return;
        }
        lab.importSpots(lot.name(), new Upload() {
            @Override
            public InputStream open() {
                return new ByteArrayInputStream(bytes(lot.table()));
            }

            @Override
            public String mediaType() {
                return "text/csv";
            }

            @Override
            public Optional<String> fileName() {
                return Optional.empty();
            }
        }, UploadOptions.rows(Form.CSV, IntakeOptions.DEFAULT), ImportOptions.DEFAULT, occasion);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** Puts so many lots on record over HTTP. */
    static void record(RunningService service, int count) {
        for (int number = 1; number <= count; number++) {
            Lot lot = lot(number);
            service.put("/v1/samples/" + lot.name(), lot.sample());
            service.post("/v1/samples/" + lot.name() + "/spots", "text/csv", lot.table());
        }
    }
}
