package surfeit.http;

import java.util.Locale;
import java.util.Random;

/** Invented lots of a powder lab: Ag-Cu brazing powder, Sn-Bi solder spheres, Al-Si powder, of every verdict. */
final class InventedLots {
    private static final String[][] KINDS = {{"ag-cu-eutectic", "Ag", "Cu", "59.75", "braze", "brazing powder 20-45 um"},
        {"bi58sn42", "Sn", "Bi", "56.0", "solder", "solder spheres 300 um"},
        {"al-si-eutectic", "Al", "Si", "87.8", "alsi", "powder 20-63 um"}};
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
        StringBuilder table = new StringBuilder("label;particle;feature;session;" + kind[1] + " at%;" + kind[2] + " at%\n");
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

    /** Puts so many lots on record over HTTP. */
    static void record(RunningService service, int count) {
        for (int number = 1; number <= count; number++) {
            Lot lot = lot(number);
            service.put("/v1/samples/" + lot.name(), lot.sample());
            service.post("/v1/samples/" + lot.name() + "/spots", "text/csv", lot.table());
        }
    }
}
