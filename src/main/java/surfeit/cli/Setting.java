package surfeit.cli;

import java.time.Duration;
import java.util.Locale;

/**
 * One setting of the program: its name, what it means, and how its text is read.
 *
 * <p>A setting is given as a flag ({@code --port 8080}), in the environment ({@code SURFEIT_PORT=8080}), in the
 * configuration file ({@code port = 8080}), or keeps its default; the first of these wins.
 */
enum Setting {
    HOST("host", "127.0.0.1", "address", "address to listen on"),
    PORT("port", "8420", "0 to 65535", "port to listen on; 0 takes a free one") {
        @Override
        void check(String text) {
            whole(text, 0, 65_535);
        }
    },
    DATA("data", "surfeit-data", "folder", "folder of the file store; serve makes it where it is missing"),
    DETECTION_LIMIT_MASS_PERCENT("detection-limit-mass-percent", "0.3", "mass %", "limit taken for \"not detected\" without a stated limit") {
        @Override
        void check(String text) {
            number(text, 0, 10);
        }
    },
    UPLOAD_BYTES_MAX("upload-bytes-max", "67108864", "bytes", "largest table or NDJSON upload, after inflation") {
        @Override
        void check(String text) {
            whole(text, 1, Integer.MAX_VALUE);
        }
    },
    JSON_BYTES_MAX("json-bytes-max", "8388608", "bytes", "largest JSON body, after inflation") {
        @Override
        void check(String text) {
            whole(text, 1, Integer.MAX_VALUE);
        }
    },
    UPLOAD_ROWS_MAX("upload-rows-max", "1000000", "rows", "most rows of one upload") {
        @Override
        void check(String text) {
            whole(text, 1, Integer.MAX_VALUE);
        }
    },
    BODY_STALL_S("body-stall-s", "60", "seconds", "longest pause within a request body") {
        @Override
        void check(String text) {
            whole(text, 1, 86_400);
        }
    },
    BODY_TOTAL_S("body-total-s", "600", "seconds", "longest time for a whole request body") {
        @Override
        void check(String text) {
            whole(text, 1, 86_400);
        }
    };

    private final String key;
    private final String standard;
    private final String unit;
    private final String meaning;

    Setting(String key, String standard, String unit, String meaning) {
        this.key = key;
        this.standard = standard;
        this.unit = unit;
        this.meaning = meaning;
    }

    String key() {
        return key;
    }

    /** The value it has unless it is set. */
    String standard() {
        return standard;
    }

    String unit() {
        return unit;
    }

    String meaning() {
        return meaning;
    }

    /** The name of its environment variable. */
    String variable() {
        return "SURFEIT_" + key.toUpperCase(Locale.ROOT).replace('-', '_');
    }

    /** Refuses a text that cannot be this setting's value. @throws IllegalArgumentException saying what was expected */
    void check(String text) {
        if (text.isBlank()) {
            throw new IllegalArgumentException("expected " + unit + ", got nothing");
        }
    }

    private static void whole(String text, long least, long most) {
        try {
            long value = Long.parseLong(text.strip());
            if (value >= least && value <= most) {
                return;
            }
        } catch (NumberFormatException e) {
            // told below, with the same words as a number out of range
        }
        throw new IllegalArgumentException("expected a whole number from " + least + " to " + most + ", got \"" + text + "\"");
    }

    private static void number(String text, double above, double below) {
        try {
            double value = Double.parseDouble(text.strip());
            if (value > above && value < below) {
                return;
            }
        } catch (NumberFormatException e) {
            // told below, with the same words as a number out of range
        }
        throw new IllegalArgumentException("expected a number above " + above + " and below " + below + ", got \"" + text + "\"");
    }

    static Duration seconds(String text) {
        return Duration.ofSeconds(Long.parseLong(text.strip()));
    }
}
