package surfeit.intake;

/** What can be wrong with an upload, each with the code that answers carry. */
public enum FaultCode {
    /** The table's form is broken: no header, unequal columns, a column twice, an open quote, unknown characters. */
    UNREADABLE_TABLE("unreadable-table"),
    /** Two decimal marks in one upload, or a thousands separator. */
    MIXED_DECIMAL_MARKS("mixed-decimal-marks"),
    /** The same spot twice in one upload with other values. */
    DUPLICATE_SPOT("duplicate-spot"),
    /** The same spot is stored already with other values; raised by whoever stores, through the same fault list. */
    SPOT_ALREADY_RECORDED("spot-already-recorded"),
    /** A label, particle, feature or session that is empty, too long, or holds control characters. */
    NAME_INVALID("name-invalid"),
    /** A text where an element symbol should stand. */
    UNKNOWN_ELEMENT("unknown-element"),
    /** A value its field cannot hold: no number, outside the possible range, or no word of the field. */
    VALUE_OUT_OF_RANGE("value-out-of-range"),
    /** At% or wt% is not stated, or stated twice and differently. */
    UNIT_MISSING("unit-missing"),
    /** A local time that no offset and no time zone settles. */
    TIME_WITHOUT_ZONE("time-without-zone"),
    /** The composition of a reference piece does not reach 100 %, or is missing. */
    NOMINAL_INCOMPLETE("nominal-incomplete"),
    /** A spot without a single value, or a reference composition without elements. */
    TOO_FEW_ELEMENTS("too-few-elements"),
    /** More rows, columns, elements or characters than the settings allow. */
    UPLOAD_TOO_LARGE("upload-too-large"),
    /** A key that no spot has; raised by readers of JSON documents, through the same fault list. */
    UNKNOWN_PARAMETER("unknown-parameter"),
    /** A value of another kind, a key twice, a key missing, or no JSON at all; likewise. */
    MALFORMED_JSON("malformed-json");

    private final String text;

    FaultCode(String text) {
        this.text = text;
    }

    /** The code as answers carry it, for example {@code mixed-decimal-marks}. */
    public String text() {
        return text;
    }

    @Override
    public String toString() {
        return text;
    }
}
