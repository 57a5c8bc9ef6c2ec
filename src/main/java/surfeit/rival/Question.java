package surfeit.rival;

/**
 * One cause to be weighed: its code, and the words that are the same whenever it is named.
 *
 * @param code         the cause
 * @param howToRuleOut what to measure or check
 * @param source       where the estimate comes from
 */
record Question(Cause code, String howToRuleOut, String source) {
}
