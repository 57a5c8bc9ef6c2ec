package surfeit.http.json;

/** The three keys of a value with the ends of its interval. */
record EstimateNames(String value, String low, String high) {
    static final EstimateNames FACTOR = of("factor");
    static final EstimateNames ENRICHMENT_FACTOR = of("enrichment_factor");
    static final EstimateNames LOG2_ENRICHMENT_FACTOR = of("log2_enrichment_factor");
    static final EstimateNames DIFFERENCE = of("difference_atomic_percent");
    static final EstimateNames ODDS_RATIO = of("odds_ratio");

    private static EstimateNames of(String name) {
        return new EstimateNames(name, name + "_low", name + "_high");
    }
}
