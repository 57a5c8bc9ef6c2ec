package surfeit.intake;

import surfeit.spot.Spot;

/**
 * How large an upload may be; every refusal names the setting that raises the limit.
 *
 * @param rowsMax            rows of a table, or spots of a document
 * @param elementsPerSpotMax elements one spot may list
 * @param labelLengthMax     characters of a label, particle, feature or session
 * @param cellLengthMax      characters of one cell
 * @param columnsMax         columns of a table
 */
public record IntakeLimits(int rowsMax, int elementsPerSpotMax, int labelLengthMax, int cellLengthMax, int columnsMax) {
    public static final String ROWS_SETTING = "upload-rows-max";
    public static final String ELEMENTS_SETTING = "elements-per-spot-max";
    public static final String LABEL_SETTING = "label-length-max";
    public static final String CELL_SETTING = "cell-length-max";
    public static final String COLUMNS_SETTING = "columns-max";

    /**
     * A million rows; {@link Spot#ELEMENTS_MAX} elements; names of 200 characters and 1000 columns (judgement); a cell
     * as long as a spreadsheet can hold (32 767 characters, the limit of ECMA-376 spreadsheets in common programs).
     */
    public static final IntakeLimits DEFAULT = new IntakeLimits(1_000_000, Spot.ELEMENTS_MAX, 200, 32_767, 1_000);

    public IntakeLimits {
        requirePositive(ROWS_SETTING, rowsMax, Integer.MAX_VALUE);
        requirePositive(ELEMENTS_SETTING, elementsPerSpotMax, Spot.ELEMENTS_MAX);
        requirePositive(LABEL_SETTING, labelLengthMax, 10_000);
        requirePositive(CELL_SETTING, cellLengthMax, 1_000_000);
        requirePositive(COLUMNS_SETTING, columnsMax, 10_000);
    }

    private static void requirePositive(String setting, int value, int most) {
        if (value < 1 || value > most) {
            throw new IllegalArgumentException(setting + " lies between 1 and " + most + ", got " + value + ".");
        }
    }
}
