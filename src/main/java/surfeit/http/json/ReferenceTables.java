package surfeit.http.json;

import surfeit.element.ElementTable;

/** Names the tables an answer was made with, so that it can be made again. */
final class ReferenceTables {
    private ReferenceTables() {
    }

    static String atomicWeights(ElementTable table) {
        return ElementTable.WEIGHTS_YEAR + " sha256:" + table.sha256();
    }
}
