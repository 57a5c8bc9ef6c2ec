package surfeit.cli;

import java.util.Locale;

/**
 * One setting of the program: its name, what it means, and how its text is read.
 *
 * <p>A setting is given as a flag ({@code --port 8080}), in the environment ({@code SURFEIT_PORT=8080}), in the
 * configuration file ({@code port = 8080}), or keeps its default; the first of these wins.
 */
enum Setting {
    HOST(Part.ADDRESS, "host", "127.0.0.1", "address", "address to listen on", SettingCheck.notBlank("address")),
    PORT(Part.ADDRESS, "port", "8420", "0 to 65535", "port to listen on; 0 takes a free one",
        SettingCheck.whole(0, 65_535)),
    DATA(Part.RECORD, "data", "surfeit-data", "folder", "folder of the file store; serve makes it where it is missing",
        SettingCheck.notBlank("folder")),
    DATABASE_URL(Part.RECORD, "database-url", "none", "address",
        "PostgreSQL database that holds the record in place of a folder: jdbc:postgresql://host:5432/database",
        SettingCheck.databaseUrl()),
    DATABASE_USER(Part.RECORD, "database-user", "none", "name", "whom to ask the database as",
        SettingCheck.notBlank("name")),
    DATABASE_PASSWORD(Part.RECORD, "database-password", "none", "text", "the database's password; never a flag",
        SettingCheck.notBlank("text")),
    DATABASE_CONNECTIONS(Part.RECORD, "database-connections", "10", "connections",
        "most connections to the database, of each program on it", SettingCheck.whole(4, 1_000)),
    NO_AUTH(Part.SERVICE, "no-auth", "false", "true or false", "ask nobody for a token, whoever can reach the address",
        SettingCheck.trueOrFalse()),
    TRUSTED_PROXIES(Part.SERVICE, "trusted-proxies", "none", "addresses",
        "machines whose X-Forwarded-For, -Proto and -Host are believed; addresses or networks with commas between",
        SettingCheck.proxies()),
    DETECTION_LIMIT_MASS_PERCENT(Part.METHOD, "detection-limit-mass-percent", "0.3", "mass %",
        "limit taken for \"not detected\" without a stated limit", SettingCheck.number(0, 10)),
    UPLOAD_BYTES_MAX(Part.SERVICE, "upload-bytes-max", "67108864", "bytes",
        "largest table or NDJSON upload, after inflation", SettingCheck.whole(1, Integer.MAX_VALUE)),
    JSON_BYTES_MAX(Part.SERVICE, "json-bytes-max", "8388608", "bytes", "largest JSON body, after inflation",
        SettingCheck.whole(1, Integer.MAX_VALUE)),
    JSON_DEPTH_MAX(Part.SERVICE, "json-depth-max", "20", "levels", "deepest nesting of JSON",
        SettingCheck.whole(6, 1_000)),
    UPLOAD_ROWS_MAX(Part.TABLES, "upload-rows-max", "1000000", "rows", "most rows, or spots, of one upload",
        SettingCheck.whole(1, Integer.MAX_VALUE)),
    ELEMENTS_PER_SPOT_MAX(Part.TABLES, "elements-per-spot-max", "64", "elements", "most elements of one spot",
        SettingCheck.whole(1, 64)),
    LABEL_LENGTH_MAX(Part.TABLES, "label-length-max", "200", "characters",
        "longest label, particle, feature or session", SettingCheck.whole(1, 200)),
    CELL_LENGTH_MAX(Part.TABLES, "cell-length-max", "32767", "characters", "longest cell of a table",
        SettingCheck.whole(1, 1_000_000)),
    COLUMNS_MAX(Part.TABLES, "columns-max", "1000", "columns", "most columns of a table",
        SettingCheck.whole(1, 10_000)),
    HEADER_BYTES_MAX(Part.SERVICE, "header-bytes-max", "16384", "bytes",
        "longest address and header fields of a request together", SettingCheck.whole(1_024, 1 << 20)),
    BODY_STALL_S(Part.SERVICE, "body-stall-s", "60", "seconds", "longest pause within a request body",
        SettingCheck.whole(1, 86_400)),
    BODY_TOTAL_S(Part.SERVICE, "body-total-s", "600", "seconds", "longest time for a whole request body",
        SettingCheck.whole(1, 86_400)),
    REQUESTS_PER_SECOND_MAX(Part.SERVICE, "requests-per-second-max", "100", "requests",
        "most requests a second of one token", SettingCheck.whole(1, 1_000_000)),
    OPEN_STREAMS_MAX(Part.SERVICE, "open-streams-max", "1024", "streams", "most event streams open at the same time",
        SettingCheck.whole(1, 100_000)),
    ARRIVING_BODIES_MAX(Part.SERVICE, "arriving-bodies-max", "100", "bodies",
        "most request bodies on their way at the same time", SettingCheck.whole(1, 120)),
    LARGE_ANSWERS_MAX(Part.SERVICE, "large-answers-max", "100", "answers",
        "most answers above 65536 bytes on their way at the same time", SettingCheck.whole(1, 120)),
    WRITES_WAITING_MAX(Part.SERVICE, "writes-waiting-max", "1024", "changes",
        "most changes that wait to be recorded at the same time; more are refused with 503",
        SettingCheck.whole(1, 100_000)),
    EVENTS_KEPT_DAYS(Part.SERVICE, "events-kept-days", "90", "days",
        "how long events can be read again; results are kept for ever", SettingCheck.whole(1, 36_500));

    /** What a setting is about; a command takes those it has a use for. */
    enum Part {
        /** Where the service listens. */
        ADDRESS,
        /** Where the record is kept. */
        RECORD,
        /** How spots are interpreted. */
        METHOD,
        /** How large a table may be. */
        TABLES,
        /** Whom the service answers, and how much at a time. */
        SERVICE
    }

    private final Part part;
    private final String key;
    private final String standard;
    private final String unit;
    private final String meaning;
    private final SettingCheck check;

    Setting(Part part, String key, String standard, String unit, String meaning, SettingCheck check) {
        this.part = part;
        this.key = key;
        this.standard = standard;
        this.unit = unit;
        this.meaning = meaning;
        this.check = check;
    }

    Part part() {
        return part;
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

    /** True where the flag alone says yes: {@code --no-auth}. */
    boolean isYesOrNo() {
        return standard.equals("false");
    }

    /** True where the value, or a part of it, is for nobody else's eyes. */
    boolean isSecret() {
        return this == DATABASE_PASSWORD || this == DATABASE_URL;
    }

    /** False where everybody on the machine could read it from the list of programs. */
    boolean isFlag() {
        return this != DATABASE_PASSWORD;
    }

    /** The name of its environment variable. */
    String variable() {
        return "SURFEIT_" + key.toUpperCase(Locale.ROOT).replace('-', '_');
    }

    /** Refuses a text that cannot be this setting's value. @throws IllegalArgumentException saying what was expected */
    void check(String text) {
        check.check(text);
    }
}
