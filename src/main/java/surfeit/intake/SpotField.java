package surfeit.intake;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What a table or document says of a spot beside its elements.
 *
 * <p>A column is a field by its name, or by another spelling that can mean nothing else; case, blanks, underscores and
 * brackets do not matter. Where the name itself is there, another spelling is no field.
 */
public enum SpotField {
    LABEL("label", true, "spot", "spot label", "spot name", "spectrum", "spectrum label", "spectrum name", "point",
        "point name", "spot no", "spot number", "spot id", "spectrum no", "spectrum number", "spectrum id", "point no",
        "point number", "point id", "spektrum", "spektrum nr", "messpunkt", "messpunkt nr", "messung", "messung nr", "messstelle",
        "messstelle nr", "punkt", "punkt nr", "analysenpunkt", "spectre",
        "analysis", "measurement", "\u8C31\u56FE"),
    PARTICLE("particle", true, "particle id", "particle name", "particle no", "particle number", "partikel",
        "partikel nr", "teilchen", "teilchen nr", "particule"),
    FEATURE("feature", true, "feature name", "merkmal"),
    SESSION("session", true, "session id", "session name"),
    ACQUIRED_TIME("acquired_time", true, "acquired", "acquired at", "date time", "date and time", "timestamp"),
    BEAM_ENERGY_KEV("beam_energy_kev", false, "kv", "accelerating voltage kv", "acc voltage kv",
        "acceleration voltage kv", "beam voltage kv", "hv kv", "primary energy kev", "beschleunigungsspannung kv",
        "hochspannung kv"),
    LIVE_TIME_S("live_time_s", false, "live time sec", "live time seconds", "livezeit s"),
    FEATURE_SIZE_UM("feature_size_um", false, "feature diameter um"),
    TOTAL_PERCENT("total_percent", false, "total", "total wt%", "total at%", "total weight%", "total mass%",
        "total atomic%", "sum", "sum%", "raw total", "raw total%", "analytical total", "analytical total%", "summe",
        "summe%", "gesamt",
        "gesamt%"),
    ROLE("role", true),
    POSITION("position", true),
    TILT_DEG("tilt_deg", false, "tilt", "tilt degrees", "local tilt deg", "kippung deg", "verkippung deg", "kippwinkel deg"),
    TRUE_COMPOSITION("true_composition", true, "certified composition"),
    SAME_MATERIAL("same_material", true),
    UNIT("unit", true, "units", "einheit");

    private static final Map<String, SpotField> BY_KEY = byKey();
    /** Names that may mean anything beside a column of labels, and only the label where there is none. */
    private static final Set<String> LABEL_OF_LAST_RESORT = Set.of("no", "nr", "number", "nummer", "id", "name");

    private final String text;
    private final boolean words;
    private final List<String> otherSpellings;

    SpotField(String text, boolean words, String... otherSpellings) {
        this.text = text;
        this.words = words;
        this.otherSpellings = List.of(otherSpellings);
    }

    /** The name of the field, as in JSON and in a table's header. */
    public String text() {
        return text;
    }

    /** True where the field holds words, false where it holds a number. */
    public boolean holdsWords() {
        return words;
    }

    /** The field a column header means, by its name or by another spelling. */
    static Optional<SpotField> named(String header) {
        return Optional.ofNullable(BY_KEY.get(key(header)));
    }

    /** True for {@code No.}, {@code #}, {@code ID} and {@code Name}: the label, where no other column is. */
    static boolean isLabelOfLastResort(String header) {
        return LABEL_OF_LAST_RESORT.contains(key(header)) || CellText.strip(header).equals("#");
    }

    /** True where the header is the field's own name, not another spelling. */
    boolean isOwnName(String header) {
        return key(header).equals(key(text));
    }

    private static Map<String, SpotField> byKey() {
        Map<String, SpotField> byKey = new HashMap<>();
        for (SpotField field : values()) {
            byKey.put(key(field.text), field);
            field.otherSpellings.forEach(spelling -> byKey.put(key(spelling), field));
        }
        return byKey;
    }

    private static String key(String header) {
        StringBuilder key = new StringBuilder();
        for (char c : header.toLowerCase(Locale.ROOT).toCharArray()) {
            switch (c) {
                case '%' -> key.append("percent");
                case '\u00B0' -> key.append("deg");
                case '\u00B5', '\u03BC' -> key.append('u');
                default -> {
                    if (Character.isLetterOrDigit(c)) {
                        key.append(c);
                    }
                }
            }
        }
        return key.toString();
    }
}
