package surfeit.segregation.sums;

import java.util.Optional;

/** Compares sums field by field with kept ones, as they come: it holds neither. Not thread-safe. */
public final class SumsCheck implements SumsOut {
    /** Sums that agree to this share of the larger one are equal: what another order of adding may move them by. */
    private static final double EQUAL_WITHIN = 1e-9;

    private final SumsIn kept;
    private String group = "";
    private String particle = "";
    private long compared;
    private Optional<String> difference = Optional.empty();

    public SumsCheck(byte[] kept) {
        this.kept = new SumsIn(kept);
    }

    @Override
    public void text(String what, String text) {
        if (what.equals("group")) {
            group = text;
            particle = "";
        } else if (what.equals("particle")) {
            particle = text;
        }
        if (goesOn()) {
            String found = kept.text();
            note(found.equals(text), what, found, text);
        }
    }

    @Override
    public void count(String what, long count) {
        if (goesOn()) {
            long found = kept.count();
            note(found == count, what, found, count);
        }
    }

    @Override
    public void real(String what, double value) {
        if (goesOn()) {
            double found = kept.real();
            note(Double.compare(found, value) == 0
                || Math.abs(found - value) <= EQUAL_WITHIN * Math.max(Math.abs(found), Math.abs(value)),
                what, found, value);
        }
    }

    @Override
    public void aside(boolean flag) {
        if (goesOn()) {
            kept.aside();
        }
    }

    /** After a difference the fields no longer stand side by side. */
    private boolean goesOn() {
        return difference.isEmpty();
    }

    private void note(boolean equal, String what, Object found, Object counted) {
        compared++;
        if (!equal) {
            difference = Optional.of(what + (group.isEmpty() ? "" : " of group \"" + group + "\"")
                + (particle.isEmpty() ? "" : ", particle \"" + particle + "\"") + " is kept as " + found
                + ", recounted as " + counted);
        }
    }

    /** Fields compared so far. */
    public long compared() {
        return compared;
    }

    /** The first field that differs, in words; to be asked after the last field. */
    public Optional<String> difference() {
        if (difference.isEmpty()) {
            kept.requireEnd();
        }
        return difference;
    }
}
